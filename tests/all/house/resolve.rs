//! Resolves a path to the file that defines the item it names, through imports and re-exports.

use std::collections::BTreeSet;
use std::path::PathBuf;

use super::modules::{House, Meaning, Reference};

/// Where a path leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// To a module as a whole.
    Module(usize),
    /// To something that the file of this module defines.
    ItemOf(usize),
}

/// A path, followed.
pub struct Followed {
    /// Its target; `None` for crates from outside, for local names and for the standard prelude.
    pub target: Option<Target>,
    /// The modules that the path names on its way.
    pub through: Vec<usize>,
}

/// The names that are being looked up, by module. A path that leads back to one of them has no target.
type LookedUp = BTreeSet<(usize, String, bool)>;

impl House {
    /// Follows a reference.
    pub fn follow(&self, reference: &Reference) -> Followed {
        let mut through = Vec::new();
        let path = &reference.path;
        let mut looked_up = LookedUp::new();
        let target = self.walk(reference.module, path, &mut looked_up, Some(&mut through));
        Followed { target, through }
    }

    /// The files on which a reference makes its own file depend: those that define the item it names. A
    /// reference to a module makes no dependency; paths that continue from the module do.
    pub fn depends_on(&self, reference: &Reference) -> Option<PathBuf> {
        match self.follow(reference).target {
            Some(Target::ItemOf(module)) => Some(self.modules[module].file.clone()),
            Some(Target::Module(_)) => None,
            None => {
                let [name] = reference.path.as_slice() else {
                    return None;
                };
                // Macros are in scope by their name alone after their definition.
                let files = self.macros.get(name)?;
                let own = &self.modules[reference.module].file;
                let mut others = files.iter();
                let only = others.next().filter(|_| others.next().is_none())?;
                (only != own).then(|| only.clone())
            }
        }
    }

    fn walk(
        &self,
        from: usize,
        path: &[String],
        looked_up: &mut LookedUp,
        mut through: Option<&mut Vec<usize>>,
    ) -> Option<Target> {
        let (first, rest) = path.split_first()?;
        let mut at = match first.as_str() {
            "crate" => Target::Module(self.modules[from].root),
            "self" => Target::Module(from),
            "super" => Target::Module(self.modules[from].parent?),
            "Self" => return None,
            name => self
                .look_up(from, name, !rest.is_empty(), looked_up)
                .or_else(|| self.roots.get(name).map(|root| Target::Module(*root)))?,
        };
        for (place, name) in rest.iter().enumerate() {
            let Target::Module(module) = at else {
                // A variant, an associated function: its type's file defines it.
                return Some(at);
            };
            if let Some(through) = &mut through {
                through.push(module);
            }
            at = match name.as_str() {
                "super" => Target::Module(self.modules[module].parent?),
                "self" => at,
                name => {
                    let goes_on = place + 1 < rest.len();
                    // Items that a macro defines are not found; they are taken to be where the path says.
                    self.look_up(module, name, goes_on, looked_up)
                        .unwrap_or(Target::ItemOf(module))
                }
            };
        }
        if let (Some(through), Target::Module(module)) = (&mut through, at) {
            through.push(module);
        }
        Some(at)
    }

    /// The meaning of a name in a module. Where it is both a module and an item, a path that continues means
    /// the module.
    fn look_up(
        &self,
        module: usize,
        name: &str,
        goes_on: bool,
        looked_up: &mut LookedUp,
    ) -> Option<Target> {
        let asked = (module, name.to_owned(), goes_on);
        if !looked_up.insert(asked.clone()) {
            return None;
        }
        let found = self.named(module, name, goes_on, looked_up);
        looked_up.remove(&asked);
        found
    }

    fn named(
        &self,
        module: usize,
        name: &str,
        goes_on: bool,
        looked_up: &mut LookedUp,
    ) -> Option<Target> {
        let meanings = self.modules[module].names.get(name);
        let mut found: Vec<Target> = Vec::new();
        for meaning in meanings.into_iter().flatten() {
            found.extend(match meaning {
                Meaning::Item => Some(Target::ItemOf(module)),
                Meaning::Module(inner) => Some(Target::Module(*inner)),
                Meaning::Import(path) => self.walk(module, path, looked_up, None),
            });
        }
        let is_wanted = |target: &&Target| matches!(target, Target::Module(_)) == goes_on;
        let known = found.iter().find(is_wanted).or(found.first()).copied();
        known.or_else(|| {
            let mut globs = self.modules[module].globs.iter();
            globs.find_map(|glob| match self.walk(module, glob, looked_up, None)? {
                Target::Module(inner) => self.look_up(inner, name, goes_on, looked_up),
                Target::ItemOf(_) => None,
            })
        })
    }
}
