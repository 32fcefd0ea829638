//! Finds the texts and references of a record by walking its tree along the declared keys.
//!
//! In: the tree of a TOML file and the [`Shape`] of its record. Out: two [`Occurrences`], one of
//! everything recorded and one of what may be published. This is the only walk over texts and
//! references: `resolve`, `audit::published`, `study::back_links` and `page` use its result, so none of
//! them can miss a declared key.
//!
//! The match over [`Takes`] is exhaustive, so the compiler asks for a decision on each new kind of
//! value. Values that cannot be read are skipped; the reader of the record reports them.
//!
//! Not here: the Markdown beside a record (`note`), and points and their values, which `points` checks
//! while it reads them.

use std::collections::BTreeSet;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::model::catalogue::{Catalogue, RecordContent};
use crate::model::document::EvidenceTarget;
use crate::model::key::Key;
use crate::model::link;
use crate::model::literature::{Cited, Work};
use crate::model::occurrence::{
    DesignPart, MentionRole, Occurrences, RecordId, Reference, Referent, TextAt,
};
use crate::model::place::Place;
use crate::model::redacted::PrivateText;
use crate::model::settled::SettledDoubt;
use crate::read::faults::{Node, is_unread};
use crate::read::files::load::Source;
use crate::read::references::{content, private, withheld};
use crate::read::shape::{
    CLAIM, FURTHER, KeyShape, MapKeys, OBSERVED, PARTY, Shape, Shown, Takes, Target,
};
use crate::read::table::fields::in_order;

/// The occurrences of one record, and the doubts that it says are settled.
#[derive(Clone, Debug, Default)]
pub(crate) struct RecordOccurrences {
    /// All of them.
    pub(crate) recorded: Occurrences,
    /// Those that may be published, where the record withholds something from readers.
    pub(crate) published: Option<Occurrences>,
    /// The doubts that the record says are settled.
    pub(crate) settled: Vec<SettledDoubt>,
    /// The digest of each of its keys, without what it keeps private.
    content: RecordContent,
    /// Whether the whole record is withheld from readers.
    is_kept_back: bool,
}

impl RecordOccurrences {
    /// Adds the occurrences of a text beside the record.
    pub(crate) fn extend(&mut self, beside: Occurrences) {
        if let Some(published) = self.published.as_mut().filter(|_| !self.is_kept_back) {
            published.extend(beside.clone());
        }
        self.recorded.extend(beside);
    }

    /// Adds them to the catalogue: the occurrences as those of `record`.
    pub(crate) fn add_to(self, catalogue: &mut Catalogue, record: RecordId) {
        if let Some(published) = self.published {
            let redacted = &mut catalogue.redacted.occurrences;
            redacted.insert(record.clone(), published);
        }
        catalogue.contents.insert(record.clone(), self.content);
        catalogue.occurrences.insert(record, self.recorded);
        catalogue.settled.extend(self.settled);
    }
}

/// A record's tree without its private fields, and the texts that were removed.
pub(crate) type Redacted<'t> = (DeTable<'t>, Vec<PrivateText>);

/// The occurrences in a record, and its tree without its private fields and without citations of documents that are
/// `withheld`, where it has any.
pub(crate) fn of_record<'t>(
    source: Source<'_>,
    shape: &'static Shape,
    tree: &DeTable<'t>,
    withheld: &BTreeSet<Key>,
) -> (RecordOccurrences, Option<Redacted<'t>>) {
    let (recorded, keeps_back) = walked(source, shape, tree, Reach::Everything);
    let redacted = private::without(tree, source.file);
    let without_private = redacted.as_ref().map_or(tree, |(tree, _)| tree);
    let redacted = match withheld::without_citations(without_private, withheld) {
        Some(tree) => Some((tree, redacted.map_or_else(Vec::new, |(_, texts)| texts))),
        None => redacted,
    };
    let published = (keeps_back || redacted.is_some()).then(|| {
        let tree = redacted.as_ref().map_or(tree, |(tree, _)| tree);
        walked(source, shape, tree, Reach::Published).0
    });
    let occurrences = RecordOccurrences {
        recorded,
        published,
        settled: Vec::new(),
        content: content::of_table(redacted.as_ref().map_or(tree, |(tree, _)| tree)),
        is_kept_back: is_kept_back(shape, tree),
    };
    (occurrences, redacted)
}

/// The texts of a work's reference. They are composed from several fields, so the place of each is the
/// place of the entry.
pub(crate) fn of_work(work: &Work) -> Occurrences {
    let texts = [&work.full, &work.short, &work.title, &work.authors];
    let texts = texts.into_iter().filter(|text| !text.trim().is_empty());
    let texts = texts.map(|text| TextAt::in_own_words("", work.place, text));
    let key = TextAt::in_own_words("", work.place, work.key.as_str()).as_own_key();
    Occurrences {
        texts: texts.chain([key]).collect(),
        references: Vec::new(),
    }
}

/// Whether a table is marked as withheld from readers.
fn is_kept_back(shape: &'static Shape, table: &DeTable<'_>) -> bool {
    shape
        .keys()
        .filter(|key| matches!(key.takes, Takes::Publish))
        .filter_map(|key| table.get(key.name))
        .any(|node| matches!(node.get_ref(), DeValue::Boolean(false)))
}

/// Which tables a walk enters.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reach {
    /// Every table.
    Everything,
    /// Every table that is not withheld from readers ([`Takes::Publish`]).
    Published,
}

/// The occurrences in a tree, and whether some table of it is withheld from readers.
fn walked(
    source: Source<'_>,
    shape: &'static Shape,
    tree: &DeTable<'_>,
    reach: Reach,
) -> (Occurrences, bool) {
    let mut walk = Walk {
        source,
        reach,
        found: Occurrences::default(),
        keeps_back: false,
    };
    walk.table(shape, tree);
    walk.found.texts.shrink_to_fit();
    walk.found.references.shrink_to_fit();
    (walk.found, walk.keeps_back)
}

struct Walk<'s> {
    source: Source<'s>,
    reach: Reach,
    found: Occurrences,
    keeps_back: bool,
}

/// The key whose value is walked.
#[derive(Clone, Copy)]
struct At<'n> {
    key: &'static KeyShape,
    /// The text of its locator: where in the work or exhibition.
    locator: Option<&'n str>,
}

impl Walk<'_> {
    fn table(&mut self, shape: &'static Shape, table: &DeTable<'_>) {
        let is_kept_back = is_kept_back(shape, table);
        self.keeps_back |= is_kept_back;
        if is_kept_back && self.reach == Reach::Published {
            return;
        }
        self.keys(shape.keys(), table);
        if shape.open {
            self.further(shape, table);
        }
    }

    /// The names and texts of the further keys of an open table.
    fn further(&mut self, shape: &'static Shape, table: &DeTable<'_>) {
        let at = At {
            key: &FURTHER,
            locator: None,
        };
        for (key, node) in in_order(table) {
            if shape.key(key.get_ref()).is_none() {
                self.text_at(at, key.get_ref(), key.span());
                self.text(at, node);
            }
        }
    }

    fn keys(&mut self, keys: impl Iterator<Item = &'static KeyShape>, table: &DeTable<'_>) {
        for key in keys {
            if let Some(node) = table.get(key.name) {
                let locator = key
                    .locator
                    .and_then(|name| table.get(name)?.get_ref().as_str());
                self.value(At { key, locator }, &key.takes, node);
            }
        }
    }

    fn value(&mut self, at: At<'_>, takes: &'static Takes, node: &Node<'_>) {
        if is_unread(node) {
            return;
        }
        let value = node.get_ref();
        match takes {
            Takes::Text | Takes::TermOrWords(_) | Takes::Web => self.text(at, node),
            Takes::TextByLanguage | Takes::TextsByLanguage => match value {
                DeValue::Table(table) => {
                    for (_, node) in in_order(table) {
                        each(node, |node| self.text(at, node));
                    }
                }
                _ => each(node, |node| self.text(at, node)),
            },
            Takes::Refers(target, role) => self.reference(at, node, |text| {
                referent(*target, *role, text)
            }),
            Takes::Part(part) => self.part(at, *part, node),
            Takes::Theme => self.reference(at, node, |text| text.parse().ok().map(Referent::Theme)),
            Takes::Term(list) => self.reference(at, node, |text| {
                let key = text.parse().ok();
                Some(key.map_or(Referent::TermInWords(*list), |key| Referent::Term(*list, key)))
            }),
            Takes::Link(role) => self.reference(at, node, |text| {
                let target = text.parse().ok()?;
                Some(Referent::Record(target, *role))
            }),
            Takes::EvidenceTarget(role) => {
                self.reference(at, node, |text| Some(evidence(&text.parse().ok()?, *role)));
            }
            Takes::HolderOrWords(role) => {
                // Text in the form of a key is read as a key.
                if value.as_str().is_some_and(|text| text.parse::<Key>().is_ok()) {
                    self.reference(at, node, |text| referent(Target::Holder, *role, text));
                } else {
                    self.text(at, node);
                }
            }
            Takes::Party(role) => match value {
                DeValue::Table(table) => self.table(&PARTY, table),
                _ => self.reference(at, node, |text| referent(Target::Party, *role, text)),
            },
            Takes::Observed => {
                if let DeValue::Table(table) = value {
                    self.table(&OBSERVED, table);
                }
            }
            Takes::StateReading => match value {
                DeValue::Table(table) => {
                    for (matrix, node) in in_order(table) {
                        self.map_key(at, matrix, DesignPart::Matrix);
                        self.part(at, DesignPart::State, node);
                    }
                }
                _ => self.part(at, DesignPart::State, node),
            },
            Takes::StatesPrinted => {
                if value.as_str() != Some("all") {
                    self.part(at, DesignPart::State, node);
                }
            }
            Takes::Several(inner) => each(node, |node| self.value(at, inner, node)),
            Takes::Statements(inner) => each(node, |node| match node.get_ref() {
                DeValue::Table(table) => self.statement(at, inner, table),
                _ => self.value(at, inner, node),
            }),
            Takes::TextOrTables(shape) => each(node, |node| match node.get_ref() {
                DeValue::Table(table) => self.table(shape, table),
                _ => self.text(at, node),
            }),
            Takes::Table(shape) | Takes::Tables(shape) => each(node, |node| {
                if let DeValue::Table(table) = node.get_ref() {
                    self.table(shape, table);
                }
            }),
            Takes::Map(keys, inner) => {
                if let DeValue::Table(table) = value {
                    self.map(at, *keys, inner, table);
                }
            }
            Takes::OwnKey => self.own_key(at, node),
            // Numbers, codes, words of closed lists.
            Takes::Flag
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
            | Takes::Word(_)
            | Takes::Ties
            // Of no record.
            | Takes::Either(_)
            // Checked against the point by `points`.
            | Takes::PointValues
            // Checked against the mark by `resolve::conditions`.
            | Takes::MarkCondition
            // The site names its pictures by key, so the path of the master is not published.
            | Takes::File => {}
        }
    }

    fn statement(&mut self, at: At<'_>, takes: &'static Takes, table: &DeTable<'_>) {
        if let Some(node) = table.get("is") {
            self.value(at, takes, node);
        }
        self.keys(CLAIM.iter(), table);
    }

    fn map(&mut self, at: At<'_>, keys: MapKeys, takes: &'static Takes, table: &DeTable<'_>) {
        for (key, node) in in_order(table) {
            if key.get_ref() == "private" {
                continue;
            }
            match keys {
                MapKeys::Headings => self.text_at(at, key.get_ref(), key.span()),
                MapKeys::Matrices => self.map_key(at, key, DesignPart::Matrix),
                MapKeys::Values => self.own_key_at(at, key.get_ref(), key.span()),
                MapKeys::Points => {}
            }
            self.value(at, takes, node);
        }
    }

    /// A key of a table that names a part of the design.
    fn map_key(&mut self, at: At<'_>, key: &Spanned<DeString<'_>>, part: DesignPart) {
        let to = key.get_ref().parse().ok();
        self.refer(at, key.span(), to.map(|key| Referent::Part(part, key)));
    }

    /// The key of a part of the design, or several.
    fn part(&mut self, at: At<'_>, part: DesignPart, node: &Node<'_>) {
        each(node, |node| {
            self.reference(at, node, |text| {
                let key = text.parse().ok()?;
                Some(Referent::Part(part, key))
            });
        });
    }

    fn reference(
        &mut self,
        at: At<'_>,
        node: &Node<'_>,
        to: impl FnOnce(&str) -> Option<Referent>,
    ) {
        if let DeValue::String(text) = node.get_ref() {
            self.refer(at, node.span(), to(text));
        }
    }

    fn refer(&mut self, at: At<'_>, span: std::ops::Range<usize>, to: Option<Referent>) {
        let locator = at.locator.filter(|text| !text.trim().is_empty());
        self.found.references.extend(to.map(|to| Reference {
            to,
            place: Place::new(self.source.file, span),
            locator: locator.map(Into::into),
        }));
    }

    fn text(&mut self, at: At<'_>, node: &Node<'_>) {
        if let DeValue::String(text) = node.get_ref() {
            self.text_at(at, text, node.span());
        }
    }

    /// A key that the record defines.
    fn own_key(&mut self, at: At<'_>, node: &Node<'_>) {
        if let DeValue::String(text) = node.get_ref() {
            self.own_key_at(at, text, node.span());
        }
    }

    fn own_key_at(&mut self, at: At<'_>, key: &str, span: std::ops::Range<usize>) {
        let before = self.found.texts.len();
        self.text_at(at, key, span);
        for text in self.found.texts.iter_mut().skip(before) {
            text.is_own_key = true;
        }
    }

    /// Adds a text that is written in the bytes `span`, quotes included.
    fn text_at(&mut self, at: At<'_>, text: &str, span: std::ops::Range<usize>) {
        if text.trim().is_empty() || at.key.shown != Shown::ToReaders {
            return;
        }
        let written = self.source.text.get(span.clone()).unwrap_or_default();
        let key = at.key.name;
        self.found.texts.push(match written.find(text) {
            Some(inside) => {
                let start = span.start + inside;
                let place = Place::new(self.source.file, start..start + text.len());
                TextAt::as_written(key, place)
            }
            None => TextAt::in_own_words(key, Place::new(self.source.file, span), text),
        });
    }
}

/// Calls `visit` with a value, or with each value of a list.
fn each<'n, 't>(node: &'n Node<'t>, mut visit: impl FnMut(&'n Node<'t>)) {
    match node.get_ref() {
        DeValue::Array(list) => list.iter().for_each(visit),
        _ => visit(node),
    }
}

/// What a document tells something of. A part is named with its design.
fn evidence(of: &EvidenceTarget, role: MentionRole) -> Referent {
    match of.part() {
        Some((design, part, key)) => Referent::PartOf(design.clone(), part, key.clone()),
        None => Referent::Record(of.record(), role),
    }
}

/// The record or part that `text` names; `None` where it does not have the form of such a key.
fn referent(target: Target, role: MentionRole, text: &str) -> Option<Referent> {
    let record = match target {
        Target::Party => return text.parse().ok().map(|key| Referent::Party(key, role)),
        Target::Design => link::Target::Design(text.parse().ok()?),
        Target::Impression => link::Target::Impression(text.parse().ok()?),
        Target::Picture => link::Target::Picture(text.parse().ok()?),
        Target::Holder => link::Target::Holder(text.parse().ok()?),
        Target::Person => link::Target::Person(text.parse().ok()?),
        Target::Work => link::Target::Work(text.parse().ok()?),
        Target::Exhibition => link::Target::Exhibition(text.parse().ok()?),
        Target::Mark => link::Target::Mark(text.parse().ok()?),
        Target::Series => link::Target::Series(text.parse().ok()?),
        Target::Cited => text.parse::<Cited>().ok()?.record(),
        Target::Page => link::Target::Page(text.parse().ok()?),
    };
    Some(Referent::Record(record, role))
}
