//! A record as keys with values, and lists of tables, so that two records are compared key by key.

use std::collections::BTreeMap;

use crate::exchange::intake::record::{
    Entry, Part, RecordDraft, Sections, Withheld, dotted, sections,
};
use crate::model::impression::Impression;

/// Where a key stands in a record.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct KeyPath {
    /// The table; `None` above all tables.
    pub table: Option<&'static str>,
    /// The key.
    pub key: String,
}

impl KeyPath {
    /// As TOML writes it: `sheet.image`.
    pub fn text(&self) -> String {
        match self.table {
            None => self.key.clone(),
            Some(table) => dotted(table, &self.key),
        }
    }
}

/// A record as keys with values, and lists of tables.
#[derive(Clone, Debug, Default)]
pub(super) struct Flat {
    /// The values, in the order of the record.
    pub values: Vec<(KeyPath, String)>,
    /// The lists of tables.
    pub lists: BTreeMap<&'static str, Vec<Vec<Entry>>>,
}

impl Flat {
    /// A record as it is, whatever of it is private.
    pub fn of(impression: &Impression) -> Flat {
        Flat::of_sections(sections(impression, &Withheld::default()))
    }

    /// A proposed record as it would be written.
    pub fn as_written(draft: &RecordDraft) -> Flat {
        Flat::of_sections(sections(&draft.impression, &draft.withheld))
    }

    fn of_sections(sections: Sections) -> Flat {
        let mut flat = Flat::default();
        let mut add = |table: Option<&'static str>, entries: Vec<Entry>| {
            for Entry { key, value } in entries {
                if key != "private" {
                    flat.values.push((KeyPath { table, key }, value));
                }
            }
        };
        add(None, sections.root);
        for part in sections.parts {
            match part {
                Part::Table(name, entries) => add(Some(name), entries),
                Part::List(name, tables) => {
                    flat.lists.insert(name, tables);
                }
            }
        }
        flat
    }

    /// The value of a key.
    pub fn value(&self, path: &KeyPath) -> Option<&str> {
        let mut values = self.values.iter();
        let found = values.find(|(known, _)| known == path)?;
        Some(&found.1)
    }

    /// The tables of a list.
    pub fn list(&self, name: &str) -> &[Vec<Entry>] {
        self.lists.get(name).map_or(&[], Vec::as_slice)
    }
}

/// What a table of a list says, for comparing: an opinion and a report are the same whenever they were handed in.
pub(super) fn said(list: &str, table: &[Entry]) -> Vec<Entry> {
    let entries = table.iter().filter(|entry| {
        let is_day = list == "opinions" && entry.key == "date";
        entry.key != "private" && !is_day
    });
    entries.cloned().collect()
}
