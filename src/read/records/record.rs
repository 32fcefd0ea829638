//! Parses one TOML file, reads its record, and reads it again as it may be published.

use std::borrow::Cow;

use toml::de::{DeTable, DeValue};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::occurrence::{Occurrences, TextAt};
use crate::model::place::{FileId, Place};
use crate::model::redacted::PrivateText;
use crate::read::faults::{Faults, is_unread};
use crate::read::files::load::Source;
use crate::read::limits::{DEEPEST_NESTING, MOST_ITEMS};
use crate::read::records::settled::settled_doubts;
use crate::read::references::occurrences::{self, RecordOccurrences};
use crate::read::references::renewed::{Renewal, Renewed, renewed, renewed_in_each};
use crate::read::shape::Shape;
use crate::read::syntax::{self, Fault};
use crate::read::table::fields::{Fields, in_order, read_table};
use crate::read::table::length;
use crate::read::values;

/// The record of a file that is one record, with its findings.
pub(crate) struct Record<T> {
    /// The record.
    pub(crate) value: T,
    /// The record as it may be published, where that may differ.
    pub(crate) public: Option<T>,
    /// Its texts and references, and the doubts that it says are settled.
    pub(crate) occurrences: RecordOccurrences,
    /// Its private texts.
    pub(crate) texts: Vec<PrivateText>,
    /// The findings.
    pub(crate) findings: Vec<Finding>,
    /// Whether part of the file was not read, because it has syntax faults or lacks a header.
    pub(crate) broken: bool,
}

/// The records of a file that holds many.
pub(crate) struct Records<T> {
    /// The records.
    pub(crate) all: Vec<OneOfMany<T>>,
    /// Their private texts.
    pub(crate) texts: Vec<PrivateText>,
    /// The findings.
    pub(crate) findings: Vec<Finding>,
}

/// One record of a file that holds many.
pub(crate) struct OneOfMany<T> {
    /// Its key.
    pub(crate) key: Key,
    /// The record.
    pub(crate) value: T,
    /// The record without its private fields, where it has any.
    pub(crate) public: Option<T>,
    /// Its texts and references, and the doubts that it says are settled.
    pub(crate) occurrences: RecordOccurrences,
}

/// When a record is read a second time, as it may be published.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum SecondReading {
    /// Where it has private fields.
    WherePrivate,
    /// Always, because what it depends on has private fields.
    Always,
}

/// Reads a file that is one record.
pub(crate) fn one<T>(
    source: Source<'_>,
    shape: &'static Shape,
    renewal: Renewal<'_>,
    read: impl for<'a, 't> Fn(&mut Fields<'a, 't>) -> T,
) -> Record<T> {
    one_again(source, shape, renewal, SecondReading::WherePrivate, read)
}

/// The same. `again` says when `read` is called a second time, with [`Faults::redacted`] set.
pub(crate) fn one_again<T>(
    source: Source<'_>,
    shape: &'static Shape,
    renewal: Renewal<'_>,
    again: SecondReading,
    read: impl for<'a, 't> Fn(&mut Fields<'a, 't>) -> T,
) -> Record<T> {
    let start = Place::start_of(source.file);
    parsed(source, |tree, mut faults, broken| {
        let (present, renewed) = renewed(tree, shape, source.file, renewal).unzip();
        let tree = present.as_ref().unwrap_or(tree);
        let hints = renewed.iter().flatten().map(Renewed::hint);
        faults.findings.extend(hints);
        let mut of_file = Faults::new(source.file, source.text, tree, broken);
        let (value, settled) = read_table(&mut of_file, shape, tree, start, |fields| {
            (read(fields), settled_doubts(fields))
        });
        let lost_a_table = of_file.lost_a_table();
        let findings = kept(of_file.into_findings(), faults, source.text);
        let (mut occurrences, redacted) =
            occurrences::of_record(source, shape, tree, renewal.withheld);
        occurrences.settled = settled;
        let mut record = Record {
            value,
            public: None,
            occurrences,
            texts: Vec::new(),
            findings,
            broken: broken || lost_a_table,
        };
        let has_private = redacted.is_some();
        let (without_private, texts) = redacted.unwrap_or_default();
        record.texts = texts;
        if has_private || again == SecondReading::Always {
            let tree = if has_private { &without_private } else { tree };
            let mut unseen = Faults::new(source.file, source.text, tree, broken);
            unseen.redacted = true;
            record.public = Some(read_as_published(&mut unseen, shape, tree, start, &read));
        }
        record
    })
}

/// Reads a text that is one table and no record, such as a part of the settings of an intake: nothing of it is published.
pub(crate) fn alone<T>(
    text: &str,
    shape: &'static Shape,
    read: impl for<'a, 't> FnOnce(&mut Fields<'a, 't>) -> T,
) -> (T, Vec<Finding>) {
    let source = Source {
        file: FileId::default(),
        text,
        mangled: false,
    };
    parsed(source, |tree, faults, broken| {
        let mut of_file = Faults::new(source.file, text, tree, broken);
        let start = Place::start_of(source.file);
        let value = read_table(&mut of_file, shape, tree, start, |fields| read(fields));
        (value, kept(of_file.into_findings(), faults, text))
    })
}

/// Reads a file that holds many records, each a table named by its key.
pub(crate) fn many<T>(
    source: Source<'_>,
    shape: &'static Shape,
    renewal: Renewal<'_>,
    read: impl for<'a, 't> Fn(&mut Fields<'a, 't>, &Key) -> T,
) -> Records<T> {
    parsed(source, |tree, mut faults, broken| {
        let (present, renewed) = renewed_in_each(tree, shape, source.file, renewal).unzip();
        let tree = present.as_ref().unwrap_or(tree);
        let hints = renewed.iter().flatten().map(Renewed::hint);
        faults.findings.extend(hints);
        let mut of_file = Faults::new(source.file, source.text, tree, broken);
        let mut all = Vec::new();
        let mut texts = Vec::new();
        let mut is_outside = false;
        for (name, node) in in_order(tree) {
            let place = of_file.place(name.span());
            if is_unread(node) {
                continue;
            }
            of_file.key = name.get_ref();
            let DeValue::Table(table) = node.get_ref() else {
                // Several keys in a row lack the same header, so they get one finding.
                if std::mem::replace(&mut is_outside, true) {
                    continue;
                }
                let message = format!("`{}` is outside every table", name.get_ref());
                let finding = Finding::new(Code::ValueType, place, message);
                let key = Key::nearest_form(name.get_ref())
                    .filter(|key| shape.key(key.as_str()).is_none())
                    .map_or("its-key".to_owned(), |key| key.to_string());
                of_file.push(finding.help(format!(
                    "begin {} with its key in brackets: [{key}]",
                    shape.name
                )));
                continue;
            };
            is_outside = false;
            let key = values::key_from(&mut of_file, name.get_ref(), place);
            let at = of_file.of(node);
            // A record whose key is invalid is read for its findings only.
            let key_or = key.as_ref().map(|key| key.value.clone());
            let key_or = key_or.or_else(|| Key::nearest_form(name.get_ref()));
            let Some(key_or) = key_or else { continue };
            let (value, settled) = read_table(&mut of_file, shape, table, at, |fields| {
                (read(fields, &key_or), settled_doubts(fields))
            });
            let (mut occurrences, redacted) =
                occurrences::of_record(source, shape, table, renewal.withheld);
            occurrences.settled = settled;
            let named = TextAt::in_own_words("key", place, name.get_ref()).as_own_key();
            occurrences.extend(Occurrences {
                texts: vec![named],
                references: Vec::new(),
            });
            let public = redacted.map(|(table, private)| {
                texts.extend(private);
                let mut unseen = Faults::new(source.file, source.text, &table, broken);
                unseen.redacted = true;
                read_as_published(&mut unseen, shape, &table, at, |fields| {
                    read(fields, &key_or)
                })
            });
            if let Some(key) = key {
                all.push(OneOfMany {
                    key: key.value,
                    value,
                    public,
                    occurrences,
                });
            }
        }
        Records {
            all,
            texts,
            findings: kept(of_file.into_findings(), faults, source.text),
        }
    })
}

/// Reads a file that holds no records: its tree, with the findings on its syntax.
pub(crate) fn tree<R>(
    source: Source<'_>,
    read: impl for<'t> FnOnce(&'t DeTable<'t>) -> (R, Vec<Finding>),
) -> (R, Vec<Finding>) {
    parsed(source, |tree, faults, _| {
        let (value, findings) = read(tree);
        (value, kept(findings, faults, source.text))
    })
}

/// Parses a file and passes on its tree alone. Its faults are reported where its record is read.
pub(crate) fn tree_alone<R>(
    source: Source<'_>,
    read: impl for<'t> FnOnce(&'t DeTable<'t>) -> R,
) -> R {
    parsed(source, |tree, _, _| read(tree))
}

/// Reads a record as it may be published. What it says is settled is for the editors alone.
fn read_as_published<'t, T>(
    unseen: &mut Faults<'t>,
    shape: &'static Shape,
    table: &'t DeTable<'t>,
    at: Place,
    read: impl FnOnce(&mut Fields<'_, 't>) -> T,
) -> T {
    read_table(unseen, shape, table, at, |fields| {
        settled_doubts(fields);
        read(fields)
    })
}

/// Parses a file and passes on its tree with the syntax findings.
fn parsed<R>(
    source: Source<'_>,
    read: impl for<'t> FnOnce(&'t DeTable<'t>, SyntaxFaults, bool) -> R,
) -> R {
    if let Some(at) = syntax::too_deep(source.text) {
        let message =
            format!("this is nested more than {DEEPEST_NESTING} deep, so the file is not read");
        let finding = Finding::new(Code::NestedTooDeep, Place::new(source.file, at), message)
            .help("no record needs more than six levels; take tables and lists apart");
        return unread(finding, read);
    }
    let (tree, errors) = DeTable::parse_recoverable(source.text);
    if let Some(at) = length::too_long(tree.get_ref()) {
        let message =
            format!("this list has more than {MOST_ITEMS} items, so the file is not read");
        let finding = Finding::new(Code::ListTooLong, Place::new(source.file, at), message)
            .help("remove what the list repeats, or divide the record");
        return unread(finding, read);
    }
    if errors.is_empty() {
        let faults = SyntaxFaults::default();
        return read(tree.get_ref(), faults, source.mangled);
    }
    drop(tree);
    let parsable = syntax::parsable(source.text);
    let text: Cow<'_, str> = parsable.text;
    let (tree, _) = DeTable::parse_recoverable(&text);
    let told = parsable.faults.iter();
    let told = told.map(|fault| fault.finding(source.file, source.text, tree.get_ref()));
    let mut findings: Vec<Finding> = told.collect();
    if let Some(at) = parsable.more_from {
        let message = "there are more faults of syntax from here on, which are not reported";
        findings.push(
            Finding::new(Code::FindingsUntold, Place::new(source.file, at), message).help(
                "correct those that are reported; if there are too many, the file may not be TOML at all",
            ),
        );
    }
    let faults = SyntaxFaults {
        findings,
        faults: parsable.faults,
    };
    let unread = faults.faults.iter().any(|fault| fault.hides(source.text));
    let broken = source.mangled || unread;
    read(tree.get_ref(), faults, broken)
}

/// Passes on an empty tree, with the reason why the file is not read.
fn unread<R>(
    why: Finding,
    read: impl for<'t> FnOnce(&'t DeTable<'t>, SyntaxFaults, bool) -> R,
) -> R {
    let (tree, _) = DeTable::parse_recoverable("");
    let faults = SyntaxFaults {
        findings: vec![why],
        faults: Vec::new(),
    };
    read(tree.get_ref(), faults, true)
}

/// The syntax faults of one file, with the findings that report them.
#[derive(Default)]
struct SyntaxFaults {
    findings: Vec<Finding>,
    faults: Vec<Fault>,
}

/// The syntax findings and the reader's. The reader's findings on lines with faulty syntax are dropped,
/// because the parser only guessed the values there.
fn kept(findings: Vec<Finding>, syntax: SyntaxFaults, text: &str) -> Vec<Finding> {
    let lines: Vec<_> = syntax
        .faults
        .iter()
        .map(|fault| fault.reach(text))
        .collect();
    let mut kept = syntax.findings;
    kept.extend(findings.into_iter().filter(|finding| {
        let start = finding.at.place.start as usize;
        !lines.iter().any(|line| line.contains(&start))
    }));
    kept
}
