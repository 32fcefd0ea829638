//! Reads references by former keys as references to the records that have new keys now.
//!
//! In: the tree of a record, its [`Shape`], and the [`FormerKeys`] of the catalogue. Out: the tree with the
//! present key in place of each former one, and each such place ([`Renewed`]). The keys are changed in the tree, before
//! the model is made, so every declared reference is covered, and nothing later meets a former key. Every
//! value keeps its place in the file.
//!
//! Not here: links in Markdown (`note`).

use std::collections::BTreeSet;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::model::codes::Code;
use crate::model::document::EvidenceTarget;
use crate::model::finding::Finding;
use crate::model::former::{FormerKeys, Named};
use crate::model::key::Key;
use crate::model::link;
use crate::model::literature::Cited;
use crate::model::occurrence::DesignPart;
use crate::model::place::{FileId, Place};
use crate::read::faults::Node;
use crate::read::shape::{CLAIM, MapKeys, OBSERVED, PARTY, Shape, Takes, Target};

/// What references of one record may name by former keys.
#[derive(Clone, Copy)]
pub(crate) struct Renewal<'r> {
    /// The former keys of the catalogue.
    pub(crate) former: &'r FormerKeys,
    /// The design that the record is, or is an impression of: its parts are named by key alone.
    pub(crate) design: Option<&'r Key>,
    /// The documents that are not published.
    pub(crate) withheld: &'r BTreeSet<Key>,
}

/// A reference by a former key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Renewed {
    /// Where it stands, quotes included.
    pub(crate) place: Place,
    /// The reference as it is written.
    pub(crate) was: String,
    /// The reference as it should be written.
    pub(crate) now: String,
}

impl Renewed {
    /// The hint to write the present key.
    pub(crate) fn hint(&self) -> Finding {
        let message = format!("`{}` is a former key", self.was);
        Finding::new(Code::KeyFormer, self.place, message).help(format!("write `{}`", self.now))
    }
}

/// The tree with present keys, and the references by former ones; `None` where no record has a former key.
pub(crate) fn renewed<'t>(
    tree: &DeTable<'t>,
    shape: &'static Shape,
    file: FileId,
    renewal: Renewal<'_>,
) -> Option<(DeTable<'t>, Vec<Renewed>)> {
    if renewal.former.is_empty() {
        return None;
    }
    let mut tree = tree.clone();
    let mut walk = Walk {
        renewal,
        file,
        found: Vec::new(),
    };
    walk.table(shape, &mut tree);
    Some((tree, walk.found))
}

/// The same for the tree of a file of many records, each a table.
pub(crate) fn renewed_in_each<'t>(
    tree: &DeTable<'t>,
    shape: &'static Shape,
    file: FileId,
    renewal: Renewal<'_>,
) -> Option<(DeTable<'t>, Vec<Renewed>)> {
    let mut all = tree.clone();
    let mut found = Vec::new();
    for (_, node) in &mut all {
        if let DeValue::Table(table) = node.get_mut() {
            let (present, renewed) = renewed(table, shape, file, renewal)?;
            *table = present;
            found.extend(renewed);
        }
    }
    Some((all, found))
}

struct Walk<'r> {
    renewal: Renewal<'r>,
    file: FileId,
    found: Vec<Renewed>,
}

impl Walk<'_> {
    fn table(&mut self, shape: &'static Shape, table: &mut DeTable<'_>) {
        for key in shape.keys() {
            if let Some(node) = table.get_mut(key.name) {
                self.value(&key.takes, node);
            }
        }
        self.condition(shape, table);
    }

    /// The condition of a mark is a key of the mark that the same table names.
    fn condition(&mut self, shape: &'static Shape, table: &mut DeTable<'_>) {
        let takes_condition = |takes: &Takes| matches!(takes, Takes::MarkCondition);
        let Some(key) = shape.keys().find(|key| takes_condition(&key.takes)) else {
            return;
        };
        let takes_mark = |takes: &Takes| matches!(takes, Takes::Refers(Target::Mark, _));
        let mark = shape.keys().find(|key| takes_mark(&key.takes));
        let mark =
            mark.and_then(|key| table.get(key.name)?.get_ref().as_str()?.parse::<Key>().ok());
        if let (Some(mark), Some(node)) = (mark, table.get_mut(key.name)) {
            let former = self.renewal.former;
            self.text(node, |text| {
                let was = Named::Condition(mark, text.parse().ok()?);
                former.key_of(&was).map(Key::to_string)
            });
        }
    }

    fn value(&mut self, takes: &'static Takes, node: &mut Node<'_>) {
        let former = self.renewal.former;
        match takes {
            Takes::Refers(target, _) => self.text(node, |text| refers(former, *target, text)),
            Takes::HolderOrWords(_) => {
                self.text(node, |text| refers(former, Target::Holder, text));
            }
            Takes::Link(_) => self.text(node, |text| {
                let now = former.record(&text.parse().ok()?)?;
                Some(now.to_string())
            }),
            Takes::EvidenceTarget(_) => self.text(node, |text| {
                let now = present(former, &text.parse().ok()?)?;
                Some(now.to_string())
            }),
            Takes::Party(_) => match node.get_mut() {
                DeValue::Table(table) => self.table(&PARTY, table),
                _ => self.text(node, |text| refers(former, Target::Party, text)),
            },
            Takes::Part(part) => self.part(*part, node),
            Takes::StatesPrinted => self.part(DesignPart::State, node),
            Takes::StateReading => match node.get_mut() {
                DeValue::Table(table) => {
                    self.map_keys(table, |design, key| {
                        Named::Part(design, DesignPart::Matrix, key)
                    });
                    for (_, node) in table.iter_mut() {
                        self.part(DesignPart::State, node);
                    }
                }
                _ => self.part(DesignPart::State, node),
            },
            Takes::Observed => {
                if let DeValue::Table(table) = node.get_mut() {
                    self.table(&OBSERVED, table);
                }
            }
            Takes::Several(inner) => self.each(node, |walk, node| walk.value(inner, node)),
            Takes::Statements(inner) => self.each(node, |walk, node| match node.get_mut() {
                DeValue::Table(table) => {
                    if let Some(node) = table.get_mut("is") {
                        walk.value(inner, node);
                    }
                    for key in CLAIM {
                        if let Some(node) = table.get_mut(key.name) {
                            walk.value(&key.takes, node);
                        }
                    }
                }
                _ => walk.value(inner, node),
            }),
            Takes::Table(shape) | Takes::Tables(shape) | Takes::TextOrTables(shape) => self.each(node, |walk, node| {
                if let DeValue::Table(table) = node.get_mut() {
                    walk.table(shape, table);
                }
            }),
            Takes::Map(keys, inner) => {
                if let DeValue::Table(table) = node.get_mut() {
                    match keys {
                        MapKeys::Points => self.map_keys(table, Named::Point),
                        MapKeys::Matrices => self.map_keys(table, |design, key| {
                            Named::Part(design, DesignPart::Matrix, key)
                        }),
                        MapKeys::Headings | MapKeys::Values => {}
                    }
                    for (_, node) in table.iter_mut() {
                        self.value(inner, node);
                    }
                }
            }
            // They name no record and no part that may have a former key.
            Takes::Text
            | Takes::Flag
            | Takes::Publish
            | Takes::Whole(..)
            | Takes::Above0
            | Takes::From0
            | Takes::Fraction(_)
            | Takes::Date
            | Takes::Size
            | Takes::Box
            | Takes::Colour
            | Takes::Language
            | Takes::Country
            | Takes::Isil
            | Takes::Web
            | Takes::File
            | Takes::OwnKey
            | Takes::Word(_)
            | Takes::Term(_)
            | Takes::TermOrWords(_)
            // Read with its mark by `condition`.
            | Takes::MarkCondition
            | Takes::Theme
            | Takes::TextByLanguage
            | Takes::TextsByLanguage
            | Takes::Ties
            // Of no record.
            | Takes::Either(_)
            | Takes::PointValues => {}
        }
    }

    /// Calls `visit` with a value, or with each value of a list.
    fn each(&mut self, node: &mut Node<'_>, mut visit: impl FnMut(&mut Self, &mut Node<'_>)) {
        match node.get_mut() {
            DeValue::Array(list) => list.iter_mut().for_each(|node| visit(self, node)),
            _ => visit(self, node),
        }
    }

    /// The key of a part of the design, or several.
    fn part(&mut self, part: DesignPart, node: &mut Node<'_>) {
        let Renewal { former, design, .. } = self.renewal;
        let Some(design) = design else { return };
        self.each(node, |walk, node| {
            walk.text(node, |text| {
                let was = Named::Part(design.clone(), part, text.parse().ok()?);
                former.key_of(&was).map(Key::to_string)
            });
        });
    }

    /// The keys of a table that name parts of the design. A table that has the present key too keeps the former one,
    /// which is reported as unknown: nobody can say which of the two values holds.
    fn map_keys(&mut self, table: &mut DeTable<'_>, named: impl Fn(Key, Key) -> Named) {
        let Renewal { former, design, .. } = self.renewal;
        let Some(design) = design else { return };
        let names: Vec<_> = table.keys().cloned().collect();
        for name in names {
            let Ok(key) = name.get_ref().parse::<Key>() else {
                continue;
            };
            let Some(now) = former.key_of(&named(design.clone(), key)) else {
                continue;
            };
            if table.contains_key(now.as_str()) {
                continue;
            }
            if let Some(node) = table.remove(&name) {
                let place = Place::new(self.file, name.span());
                self.found.push(Renewed {
                    place,
                    was: name.get_ref().to_string(),
                    now: now.to_string(),
                });
                let renamed = Spanned::new(name.span(), now.to_string().into());
                table.insert(renamed, node);
            }
        }
    }

    fn text(&mut self, node: &mut Node<'_>, now: impl FnOnce(&str) -> Option<String>) {
        let place = Place::new(self.file, node.span());
        let DeValue::String(text) = node.get_mut() else {
            return;
        };
        if let Some(now) = now(text) {
            self.found.push(Renewed {
                place,
                was: text.to_string(),
                now: now.clone(),
            });
            *text = now.into();
        }
    }
}

/// What a document tells something of, by present keys; `None` where it is named by no former one. A part may be named by
/// a former key of its design, by one of its own, or by both.
fn present(former: &FormerKeys, was: &EvidenceTarget) -> Option<EvidenceTarget> {
    let record = former.record(&was.record());
    let Some((design, part, key)) = was.part() else {
        return match record? {
            link::Target::Design(key) => Some(EvidenceTarget::Design(key)),
            link::Target::Impression(key) => Some(EvidenceTarget::Impression(key)),
            link::Target::Person(key) => Some(EvidenceTarget::Person(key)),
            link::Target::Series(key) => Some(EvidenceTarget::Series(key)),
            _ => None,
        };
    };
    let renamed = match &record {
        Some(link::Target::Design(now)) => now.clone(),
        _ => design.clone(),
    };
    let now = former.key_of(&Named::Part(renamed.clone(), part, key.clone()));
    if record.is_none() && now.is_none() {
        return None;
    }
    let key = now.unwrap_or(key).clone();
    Some(match was {
        EvidenceTarget::Printing(..) => EvidenceTarget::Printing(renamed, key),
        _ => EvidenceTarget::State(renamed, key),
    })
}

/// The present key of a record that `text` names by a former one. A key that a person or a holder has is not
/// a former key, so a party is first looked for among the people.
fn refers(former: &FormerKeys, target: Target, text: &str) -> Option<String> {
    let record = |target: link::Target| Some(former.record(&target)?.key().to_string());
    match target {
        Target::Party => {
            let key: Key = text.parse().ok()?;
            let person = record(link::Target::Person(key.clone()));
            person.or_else(|| record(link::Target::Holder(key)))
        }
        Target::Design => record(link::Target::Design(text.parse().ok()?)),
        Target::Impression => record(link::Target::Impression(text.parse().ok()?)),
        Target::Picture => record(link::Target::Picture(text.parse().ok()?)),
        Target::Holder => record(link::Target::Holder(text.parse().ok()?)),
        Target::Person => record(link::Target::Person(text.parse().ok()?)),
        Target::Work => record(link::Target::Work(text.parse().ok()?)),
        Target::Exhibition => record(link::Target::Exhibition(text.parse().ok()?)),
        Target::Mark => record(link::Target::Mark(text.parse().ok()?)),
        Target::Series => record(link::Target::Series(text.parse().ok()?)),
        Target::Cited => {
            let now = former.record(&text.parse::<Cited>().ok()?.record())?;
            Some(match now {
                link::Target::Document(key) => Cited::Document(key).to_string(),
                work => work.key().to_string(),
            })
        }
        Target::Page => record(link::Target::Page(text.parse().ok()?)),
    }
}
