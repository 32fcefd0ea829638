//! The holders, people and series of a catalogue by their names, so that cells lead to their records.
//!
//! In: the records. Out: the key of the record that has a name, written in any capitals and accents. A name that two
//! records have leads to neither, and one that none has is never made a record.

use std::collections::{BTreeMap, BTreeSet};

use super::words::{PieceKind, Words};
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;

/// Records of one kind by their names.
#[derive(Clone, Debug, Default)]
pub struct NamedRecords {
    /// Each name with its record; `None` where several have it.
    by_name: BTreeMap<String, Option<Key>>,
    keys: BTreeSet<Key>,
}

/// The records that cells can name.
#[derive(Clone, Debug, Default)]
pub struct RecordNames {
    /// The holders, by their names and former names.
    pub holders: NamedRecords,
    /// The people, by every form of their names.
    pub people: NamedRecords,
    /// The series, by their titles.
    pub series: NamedRecords,
}

impl RecordNames {
    /// The names of a catalogue's records.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> RecordNames {
        let mut names = RecordNames::default();
        for (key, holder) in &catalogue.holders {
            let all = holder.formerly.iter().map(|former| &former.name);
            for name in all.chain([&holder.name]) {
                names.holders.add(key, name);
                if let Some(town) = &holder.town {
                    names.holders.add(key, &format!("{}, {}", **name, **town));
                    names.holders.add(key, &format!("{}, {}", **town, **name));
                }
            }
        }
        for (key, person) in &catalogue.people {
            names.people.add(key, &person.name);
            for name in &person.names {
                names.people.add(key, &name.text);
            }
            if let Some(sort) = &person.sort {
                names.people.add(key, sort);
            }
        }
        for (key, series) in &catalogue.series {
            for title in &series.titles {
                names.series.add(key, &title.text);
            }
        }
        names
    }
}

impl NamedRecords {
    /// Adds a name of a record. The record is also found by its key.
    pub fn add(&mut self, key: &Key, name: &str) {
        self.keys.insert(key.clone());
        let name = folded(name);
        if name.is_empty() {
            return;
        }
        let known = self
            .by_name
            .entry(name)
            .or_insert_with(|| Some(key.clone()));
        if known.as_ref().is_some_and(|known| known != key) {
            *known = None;
        }
    }

    /// The record that a text names, by a name or by its key.
    #[must_use]
    pub fn named(&self, text: &str) -> Option<Key> {
        let by_key = text.trim().parse().ok().filter(|key| self.has(key));
        by_key.or_else(|| self.by_name.get(&folded(text)).cloned().flatten())
    }

    /// Whether there is a record with a key.
    #[must_use]
    pub fn has(&self, key: &Key) -> bool {
        self.keys.contains(key)
    }

    /// The keys of the records.
    pub fn keys(&self) -> impl Iterator<Item = &Key> {
        self.keys.iter()
    }
}

/// The words of a name as they are compared, without marks.
fn folded(name: &str) -> String {
    let words = Words::of(name);
    let words = words.pieces().iter().filter(|p| p.kind != PieceKind::Mark);
    let folded: Vec<&str> = words.map(|p| p.folded.as_str()).collect();
    folded.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_leads_to_its_record_and_a_shared_name_to_none() {
        let key = |key: &str| key.parse::<Key>().unwrap();
        let mut holders = NamedRecords::default();
        holders.add(&key("hafenmuseum"), "Hafenmuseum");
        holders.add(&key("hafenmuseum"), "Städtische Sammlung");
        holders.add(&key("city-library"), "Library, City");
        holders.add(&key("town-library"), "Library, Town");
        holders.add(&key("city-library"), "The Library");
        holders.add(&key("town-library"), "The Library");
        let named = |text| holders.named(text).map(|key| key.to_string());
        for (text, found) in [
            ("hafenmuseum", Some("hafenmuseum")),
            ("STÄDTISCHE Sammlung", Some("hafenmuseum")),
            ("library city", Some("city-library")),
            ("town-library", Some("town-library")),
            ("The Library", None),
            ("Hafen", None),
            ("", None),
        ] {
            assert_eq!(named(text).as_deref(), found, "{text}");
        }
    }
}
