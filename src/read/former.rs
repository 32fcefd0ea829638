//! Collects the former keys of all records (`was`), before any record is read, because references may name
//! them.
//!
//! In: the files. Out: [`FormerKeys`], and findings on former keys that name another thing too. A former key
//! that does not have the form of a key is reported where its record is read (`table`).
//!
//! Only files with the word `was` before an equals sign are parsed here, so a catalogue without former keys
//! costs one search of its texts. In the literature the former keys of an entry are its `ids` (the BibLaTeX manual,
//! "Special Fields": keys by which an entry can also be cited).

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::former::{FormerKey, FormerKeys, Named};
use crate::model::key::{Key, PictureKey, PictureOwner};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::place::{FileId, Place, Placed};
use crate::read::bibtex;
use crate::read::faults::Node;
use crate::read::files::kind::FileKind;
use crate::read::files::load::{Loaded, Source};
use crate::read::records::record;
use crate::read::references::private;
use crate::read::table::fields::in_order;

/// The former keys of the records in `loaded`, and findings on those that cannot be.
pub(crate) fn former_keys(loaded: &[Loaded]) -> (FormerKeys, Vec<Finding>) {
    let of_files: Vec<OfFile> = loaded
        .par_iter()
        .filter_map(|file| Some((file, file.source()?)))
        .filter(|(file, source)| may_have(&file.kind, source.text))
        .map(|(file, source)| of_file(&file.kind, source))
        .collect();
    let mut present: BTreeMap<Named, Place> = loaded.iter().filter_map(record_of).collect();
    let mut all = Vec::new();
    for of_file in of_files {
        present.extend(of_file.present);
        all.extend(of_file.former);
    }
    checked(all, &present)
}

/// The former keys that one file names, and the parts and records that it has under present keys.
#[derive(Default)]
struct OfFile {
    present: Vec<(Named, Place)>,
    former: Vec<FormerKey>,
}

/// Whether a file may name former keys.
fn may_have(kind: &FileKind, text: &str) -> bool {
    let sets = |word: &str| {
        text.match_indices(word).any(|(at, _)| {
            let rest = text.get(at + word.len()..).unwrap_or_default();
            rest.trim_start_matches(['"', '\'', ' ', '\t'])
                .starts_with('=')
        })
    };
    match kind {
        FileKind::Literature => sets("ids") || sets("IDS") || sets("Ids"),
        FileKind::Design(_)
        | FileKind::Impression(_)
        | FileKind::Holder(_)
        | FileKind::Person(_)
        | FileKind::Mark(_)
        | FileKind::Document(_)
        | FileKind::Series(_)
        | FileKind::PageRecord(_)
        | FileKind::Exhibitions => sets("was"),
        _ => false,
    }
}

/// The record that a file is, where each is one.
fn record_of(file: &Loaded) -> Option<(Named, Place)> {
    let target = match &file.kind {
        FileKind::Design(key) => Target::Design(key.clone()),
        FileKind::Holder(key) => Target::Holder(key.clone()),
        FileKind::Person(key) => Target::Person(key.clone()),
        FileKind::Mark(key) => Target::Mark(key.clone()),
        FileKind::Document(key) => Target::Document(key.clone()),
        FileKind::Series(key) => Target::Series(key.clone()),
        FileKind::Page(key) => Target::Page(key.clone()),
        _ => return None,
    };
    Some((Named::Record(target), Place::start_of(file.file)))
}

fn of_file(kind: &FileKind, source: Source<'_>) -> OfFile {
    if *kind == FileKind::Literature {
        return of_literature(source);
    }
    record::tree_alone(source, |tree| {
        let mut all = OfFile::default();
        Walk {
            file: source.file,
            found: &mut all,
        }
        .record(kind, tree);
        if let Some((published, _)) = private::without(tree, source.file) {
            let mut shown = OfFile::default();
            Walk {
                file: source.file,
                found: &mut shown,
            }
            .record(kind, &published);
            let places: BTreeSet<Place> = shown.former.iter().map(|f| f.was.place).collect();
            for former in &mut all.former {
                former.is_public = places.contains(&former.was.place);
            }
        }
        all
    })
}

fn of_literature(source: Source<'_>) -> OfFile {
    let mut found = OfFile::default();
    for entry in bibtex::other_keys(source.text, source.file) {
        let of = Named::Record(Target::Work(entry.key.value));
        let former = entry.others.into_iter().map(|was| FormerKey {
            of: of.clone(),
            was,
            is_public: true,
        });
        found.former.extend(former);
        found.present.push((of, entry.key.place));
    }
    found
}

/// Collects the keys of one file.
struct Walk<'f> {
    file: FileId,
    found: &'f mut OfFile,
}

impl Walk<'_> {
    fn record(&mut self, kind: &FileKind, tree: &DeTable<'_>) {
        match kind {
            FileKind::Design(design) => {
                self.was(&Named::Record(Target::Design(design.clone())), tree);
                let part = |part| {
                    let design = design.clone();
                    move |key: Key| Named::Part(design.clone(), part, key)
                };
                self.parts(tree, "matrices", part(DesignPart::Matrix));
                self.parts(tree, "states", part(DesignPart::State));
                self.parts(tree, "printings", part(DesignPart::Printing));
                self.parts(tree, "variants", part(DesignPart::Variant));
                self.parts(tree, "points", |key| Named::Point(design.clone(), key));
                self.pictures(tree, &PictureOwner::Design(design.clone()));
            }
            FileKind::Impression(key) => {
                self.pictures(tree, &PictureOwner::Impression(key.clone()));
            }
            FileKind::Holder(key) => self.was(&Named::Record(Target::Holder(key.clone())), tree),
            FileKind::Person(key) => self.was(&Named::Record(Target::Person(key.clone())), tree),
            FileKind::PageRecord(key) => self.was(&Named::Record(Target::Page(key.clone())), tree),
            FileKind::Mark(mark) => {
                self.was(&Named::Record(Target::Mark(mark.clone())), tree);
                self.parts(tree, "conditions", |key| {
                    Named::Condition(mark.clone(), key)
                });
            }
            FileKind::Series(key) => {
                self.was(&Named::Record(Target::Series(key.clone())), tree);
            }
            FileKind::Document(key) => {
                self.was(&Named::Record(Target::Document(key.clone())), tree);
                self.pictures(tree, &PictureOwner::Document(key.clone()));
            }
            FileKind::Exhibitions => {
                for (name, node) in in_order(tree) {
                    let (Ok(key), DeValue::Table(table)) = (name.get_ref().parse(), node.get_ref())
                    else {
                        continue;
                    };
                    let of = Named::Record(Target::Exhibition(key));
                    let place = Place::new(self.file, name.span());
                    self.found.present.push((of.clone(), place));
                    self.was(&of, table);
                }
            }
            _ => {}
        }
    }

    /// The parts of a record that have keys of their own.
    fn parts(&mut self, tree: &DeTable<'_>, list: &str, named: impl Fn(Key) -> Named) {
        each_table(tree.get(list), |table| {
            let Some(key) = table.get("key").and_then(|node| self.key(node)) else {
                return;
            };
            let of = named(key.value);
            self.found.present.push((of.clone(), key.place));
            self.was(&of, table);
        });
    }

    fn pictures(&mut self, tree: &DeTable<'_>, owner: &PictureOwner) {
        each_table(tree.get("pictures"), |table| {
            // A picture without a name is named after its side, which is the recto where nothing is said.
            let named = ["name", "side"].iter().find_map(|name| table.get(*name));
            let (name, place) = match named.and_then(|node| self.key(node)) {
                Some(key) => (Some(key.value), key.place),
                None => ("recto".parse().ok(), Place::start_of(self.file)),
            };
            let Some(name) = name else { return };
            let owner = owner.clone();
            let of = Named::Record(Target::Picture(PictureKey { owner, name }));
            self.found.present.push((of.clone(), place));
            self.was(&of, table);
        });
    }

    /// The former keys of a thing, from its table.
    fn was(&mut self, of: &Named, table: &DeTable<'_>) {
        let Some(node) = table.get("was") else {
            return;
        };
        let nodes: &[Node<'_>] = match node.get_ref() {
            DeValue::Array(list) => list,
            _ => std::slice::from_ref(node),
        };
        for node in nodes {
            let former = self.key(node).map(|was| FormerKey {
                of: of.clone(),
                was,
                is_public: true,
            });
            self.found.former.extend(former);
        }
    }

    /// A key; `None` for anything else, which is reported where the record is read.
    fn key(&self, node: &Node<'_>) -> Option<Placed<Key>> {
        let key = node.get_ref().as_str()?.parse().ok()?;
        Some(Placed::new(key, Place::new(self.file, node.span())))
    }
}

/// Calls `visit` with a table, or with each table of a list.
fn each_table<'n, 't>(node: Option<&'n Node<'t>>, mut visit: impl FnMut(&'n DeTable<'t>)) {
    match node.map(Spanned::get_ref) {
        Some(DeValue::Table(table)) => visit(table),
        Some(DeValue::Array(list)) => {
            for node in list {
                if let DeValue::Table(table) = node.get_ref() {
                    visit(table);
                }
            }
        }
        _ => {}
    }
}

/// The former keys that name one thing only, and findings on the others.
fn checked(all: Vec<FormerKey>, present: &BTreeMap<Named, Place>) -> (FormerKeys, Vec<Finding>) {
    let mut first: BTreeMap<Named, Place> = BTreeMap::new();
    let mut sound = Vec::new();
    let mut findings = Vec::new();
    for former in all {
        let was = former.of.with_key(&former.was.value);
        let (key, place) = (&former.was.value, former.was.place);
        if was == former.of {
            let message = format!("`{key}` is the key that this has now");
            findings.push(
                Finding::new(Code::WasItself, place, message)
                    .help("name only keys that it had before"),
            );
        } else if let Some(other) = present.get(&was) {
            let message = format!("`{key}` is said to be a former key, and another record has it");
            findings.push(
                Finding::new(Code::WasPresent, place, message)
                    .beside(*other, "has the key")
                    .help("take it off the list, or give the other a key that was never used"),
            );
        } else if let Some(earlier) = first.get(&was) {
            let message = format!("two records say that they had the key `{key}`");
            findings.push(
                Finding::new(Code::WasTwice, place, message)
                    .beside(*earlier, "the first")
                    .help("a key leads to one record: take it off one of the two"),
            );
        } else {
            first.insert(was, place);
            sound.push(former);
        }
    }
    (FormerKeys::new(sound), findings)
}
