//! Reports unknown and missing keys of a table.

use toml::Spanned;
use toml::de::DeString;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::shape::{KeyShape, Takes};
use crate::read::table::cursor::{Fields, in_order};
use crate::read::values;
use crate::read::values::near::nearest;

impl<'t> Fields<'_, 't> {
    /// Reports unknown keys and missing required keys.
    pub(super) fn finish(&mut self) {
        for key in self.shape.keys() {
            debug_assert!(
                key.name == "private" || self.asked.contains(&key.name),
                "nobody reads {}.{}",
                self.shape.name,
                key.name
            );
        }
        let lists_private = |node: &&Node<'_>| self.shape.private && !is_unread(node);
        if let Some(node) = self.table.get("private").filter(lists_private) {
            let (shape, table) = (self.shape, self.table);
            let listed = |name: &str| match shape.key(name) {
                Some(_) if ALWAYS_PUBLIC.contains(&name) => ListedField::AlwaysPublic,
                Some(_) => ListedField::MayBePrivate,
                None if shape.open && table.contains_key(name) => ListedField::MayBePrivate,
                None => ListedField::Unknown,
            };
            check_private(self.faults, node, &listed, || {
                let declared = shape.keys().map(|key| key.name);
                let further = table.keys().filter(|_| shape.open);
                let further = further.map(|key| key.get_ref().as_ref());
                declared.chain(further).collect()
            });
        }
        self.unknown_keys();
        for key in self.shape.keys().filter(|key| key.required) {
            if !self.table.contains_key(key.name) {
                self.lacks(key.name, key.help);
            }
        }
    }

    /// Reports a key that the table must have and lacks.
    pub(crate) fn lacks(&mut self, name: &str, help: &str) {
        let words = self.shape.key(name).map(|key| key.takes.words());
        let words = words.filter(|words| (1..=MOST_WORDS).contains(&words.len()));
        let words = words.map(|words| format!("; one of {}", words.join(", ")));
        let help = format!("add `{name}`: {help}{}", words.unwrap_or_default());
        self.missing(&[name], &format!("`{name}`"), &help);
    }

    /// Reports that the table lacks `what`, which is one of the keys `names`. A key that is misspelt, or
    /// stands below a wrong header, is reported as such instead.
    pub(crate) fn missing(&mut self, names: &[&str], what: &str, help: &str) {
        if names.iter().any(|name| self.seems_to_have(name)) {
            return;
        }
        let message = format!("{} needs {what}", self.shape.name);
        let finding = Finding::new(Code::KeyMissing, self.at, message);
        self.faults.push(finding.help(help));
    }

    /// Whether a key that the table lacks seems to be written all the same: misspelt, below a wrong header, or where the
    /// file could not be parsed.
    pub(crate) fn seems_to_have(&self, name: &str) -> bool {
        self.faults.is_broken() || self.faults.was_moved(name) || self.is_misspelt(name)
    }

    /// Whether the table seems to have the key `name`, misspelt.
    pub(crate) fn is_misspelt(&self, name: &str) -> bool {
        self.table
            .keys()
            .map(|key| key.get_ref().as_ref())
            .any(|key| self.shape.key(key).is_none() && self.meant_by(key) == Some(name))
    }

    /// The declared key that is nearest to an unknown one. Candidates are the keys that the table lacks, and
    /// lists of tables, which may have one correct header and one that is misspelt.
    fn meant_by(&self, unknown: &str) -> Option<&'static str> {
        let may_be = |key: &&KeyShape| {
            matches!(key.takes, Takes::Tables(_)) || !self.table.contains_key(key.name)
        };
        let own = self.shape.keys().filter(may_be);
        nearest(unknown, own.map(|key| key.name))
    }

    /// Reports unknown keys. Several unknown keys in a row usually follow a missing header, so they are
    /// reported as one fault.
    fn unknown_keys(&mut self) {
        if self.shape.open {
            return;
        }
        let mut run: Vec<&Spanned<DeString<'t>>> = Vec::new();
        for (key, _) in in_order(self.table) {
            let name: &str = key.get_ref();
            if self.shape.key(name).is_some() {
                self.tell_run(&std::mem::take(&mut run));
            } else if self.faults.swallowed(key, self.at, true) {
            } else if let Some(near) = self.meant_by(name) {
                self.unknown(key, "", format!("did you mean `{near}`?"));
            } else {
                run.push(key);
            }
        }
        self.tell_run(&run);
    }

    /// Reports keys in a row that resemble none of the table's own.
    fn tell_run(&mut self, run: &[&Spanned<DeString<'t>>]) {
        let all: Vec<_> = self.shape.keys().map(|key| key.name).collect();
        let takes = format!("it takes {}", all.join(", "));
        let in_braces = self
            .faults
            .text
            .get(self.at.span())
            .is_some_and(|at| at.starts_with('{'));
        match run {
            [first, rest @ ..] if !rest.is_empty() && !in_braces => {
                self.faults.lose_a_table();
                let others = match rest.len() {
                    1 => ", nor the one below it".to_owned(),
                    n => format!(", nor any of the {n} below it"),
                };
                let help = format!("is the header of another table missing above? {takes}");
                self.unknown(first, &others, help);
            }
            run => {
                for key in run {
                    self.unknown(key, "", takes.clone());
                }
            }
        }
    }

    fn unknown(&mut self, key: &Spanned<DeString<'t>>, others: &str, help: String) {
        let message = format!("{} has no key `{}`{others}", self.shape.name, key.get_ref());
        let finding = Finding::new(Code::KeyUnknown, self.faults.place(key.span()), message);
        self.faults.push(finding.help(help));
    }
}

/// The most words that are listed for a key that is missing.
const MOST_WORDS: usize = 15;

/// Keys that no table may keep private: whether a sheet exists, and whether a record stands, decides how both are
/// counted (docs/definitions.md, "Private and unpublished").
const ALWAYS_PUBLIC: [&str; 2] = ["status", "standing"];

/// A name in a list of private fields.
pub(super) enum ListedField {
    /// A key of the table.
    MayBePrivate,
    /// A key of the table that is published always.
    AlwaysPublic,
    /// No key of the table.
    Unknown,
}

/// Reports names in a list of private fields that the table does not have or that cannot be private.
pub(super) fn check_private<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    listed: &dyn Fn(&str) -> ListedField,
    names: impl Fn() -> Vec<&'t str>,
) {
    faults.key = "private";
    for name in values::several(faults, node, values::telling_text) {
        match listed(&name.value) {
            ListedField::MayBePrivate => continue,
            ListedField::AlwaysPublic => {
                let message = format!("`{}` cannot be private", name.value);
                let finding = Finding::new(Code::PrivateFieldRefused, name.place, message);
                faults.push(finding.help(format!(
                    "take `{}` off the list; a record that readers must not see has `publish = false`",
                    name.value
                )));
                continue;
            }
            ListedField::Unknown => {}
        }
        let finding = Finding::new(
            Code::PrivateFieldUnknown,
            name.place,
            format!("there is no key `{}` here to keep private", name.value),
        );
        let names = names();
        let help = match nearest(&name.value, names.iter().copied()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => "name the keys of this table as they are written".to_owned(),
        };
        faults.push(finding.help(help));
    }
}
