//! Holders and people: each record is a file, with a text beside it.

use std::collections::BTreeMap;

use rayon::prelude::*;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::former::FormerKeys;
use crate::model::holder::Holder;
use crate::model::key::Key;
use crate::model::note::Note;
use crate::model::occurrence::RecordId;
use crate::model::place::Place;
use crate::model::redacted::PrivateText;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::holder::holder;
use crate::read::records::person::person;
use crate::read::records::{record, unpublished};
use crate::read::references::note;
use crate::read::references::occurrences::RecordOccurrences;
use crate::read::references::renewed::Renewal;
use crate::read::shape::{HOLDER, PERSON, Shape};
use crate::read::table::fields::Fields;

/// Reads `holders/*.toml` and `holders/*.md`.
pub(crate) fn holders(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files = Kind {
        shape: &HOLDER,
        is_record: |what| match what {
            FileKind::Holder(key) => Some(key),
            _ => None,
        },
        is_note: |what| match what {
            FileKind::HolderNote(key) => Some(key),
            _ => None,
        },
        read: &holder,
        add_note: |holder, note| holder.note = note,
    };
    let read = files.read(loaded, &catalogue.former);
    findings.extend(read.findings);
    isils_used_twice(&read.all, findings);
    catalogue.redacted.texts.extend(read.texts);
    catalogue.redacted.holders.extend(read.public);
    catalogue.holders.extend(read.all);
    for (key, occurrences) in read.occurrences {
        occurrences.add_to(catalogue, RecordId::Holder(key));
    }
}

/// Reads `people/*.toml` and `people/*.md`.
pub(crate) fn people(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files = Kind {
        shape: &PERSON,
        is_record: |what| match what {
            FileKind::Person(key) => Some(key),
            _ => None,
        },
        is_note: |what| match what {
            FileKind::PersonNote(key) => Some(key),
            _ => None,
        },
        read: &person,
        add_note: |person, note| person.note = note,
    };
    let read = files.read(loaded, &catalogue.former);
    findings.extend(read.findings);
    catalogue.redacted.texts.extend(read.texts);
    catalogue.redacted.people.extend(read.public);
    catalogue.people.extend(read.all);
    for (key, occurrences) in read.occurrences {
        occurrences.add_to(catalogue, RecordId::Person(key));
    }
}

/// A kind of record that has one file for each record.
pub(super) struct Kind<'k, T> {
    /// The keys of the record.
    pub(super) shape: &'static Shape,
    /// The key of the record that a file is, if it is such a record.
    pub(super) is_record: fn(&FileKind) -> Option<&Key>,
    /// The key of the record that a text belongs to, if it is such a text.
    pub(super) is_note: fn(&FileKind) -> Option<&Key>,
    /// Reads one record.
    pub(super) read: &'k (dyn Fn(&mut Fields<'_, '_>, &Key) -> T + Sync),
    /// Adds the text beside a record to it.
    pub(super) add_note: fn(&mut T, Option<Note>),
}

/// The records of a kind, in the order of their paths.
pub(super) struct Records<T> {
    /// All of them.
    pub(super) all: Vec<(Key, T)>,
    /// The records with private fields, without those fields.
    pub(super) public: Vec<(Key, T)>,
    /// The texts and references of each.
    pub(super) occurrences: Vec<(Key, RecordOccurrences)>,
    /// The private texts of all.
    pub(super) texts: Vec<PrivateText>,
    /// The findings on all.
    pub(super) findings: Vec<Finding>,
}

impl<T: Send> Kind<'_, T> {
    /// Reads every record of the kind, with the text beside it.
    pub(super) fn read(&self, loaded: &[Loaded], former: &FormerKeys) -> Records<T> {
        let notes: BTreeMap<&Key, &Loaded> = loaded
            .iter()
            .filter_map(|file| Some(((self.is_note)(&file.kind)?, file)))
            .collect();
        let files: Vec<_> = loaded
            .iter()
            .filter_map(|file| Some(((self.is_record)(&file.kind)?, file.source()?)))
            .collect();
        let withheld = unpublished::documents(loaded);
        let read: Vec<_> = files
            .into_par_iter()
            .map(|(key, source)| {
                let renewal = Renewal {
                    former,
                    design: None,
                    withheld: &withheld,
                };
                let mut one = record::one(source, self.shape, renewal, |fields| {
                    (self.read)(fields, key)
                });
                let note = notes.get(key).and_then(|file| file.note());
                if let Some(note) = &note {
                    let (occurrences, findings) = note::read(note, former);
                    one.occurrences.extend(occurrences);
                    one.findings.extend(findings);
                }
                (key, one, note)
            })
            .collect();
        let mut records = Records {
            all: Vec::new(),
            public: Vec::new(),
            occurrences: Vec::new(),
            texts: Vec::new(),
            findings: Vec::new(),
        };
        for (key, record, note) in read {
            let with_note = |mut value: T| {
                (self.add_note)(&mut value, note.clone());
                (key.clone(), value)
            };
            records.all.push(with_note(record.value));
            records.public.extend(record.public.map(with_note));
            records.occurrences.push((key.clone(), record.occurrences));
            records.texts.extend(record.texts);
            records.findings.extend(record.findings);
        }
        records
    }
}

/// Reports holders that have the same ISIL.
fn isils_used_twice(holders: &[(Key, Holder)], findings: &mut Vec<Finding>) {
    let mut first: BTreeMap<String, Place> = BTreeMap::new();
    for isil in holders
        .iter()
        .filter_map(|(_, holder)| holder.isil.as_ref())
    {
        // ISILs are unique without regard to case (ISO 15511).
        let code = isil.value.to_ascii_lowercase();
        if let Some(earlier) = first.get(&code) {
            findings.push(
                Finding::new(
                    Code::KeyTwice,
                    isil.place,
                    format!("two holders have the ISIL {}", isil.value),
                )
                .beside(*earlier, "the first")
                .help("an ISIL belongs to one institution: correct one of the two"),
            );
        } else {
            first.insert(code, isil.place);
        }
    }
}
