//! The text of a record with its corrections: only the values that change are replaced, and further keys added. Comments,
//! order, spacing and everything else stay byte for byte.

use std::collections::BTreeMap;
use std::fmt;

use toml::de::DeTable;

use super::flat::{Flat, KeyPath, said};
use super::layout::{TableAt, add_tables, block, tables_of};
use crate::exchange::intake::proposal::Correction;
use crate::exchange::intake::record::{Entry, RecordDraft, written_inline};
use crate::exchange::intake::toml_text::text_value;
use crate::model::impression::Impression;
use crate::read::edits::Edits;

/// Why a record cannot be corrected in place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotApplied {
    /// The text of the record is no TOML.
    Syntax(String),
    /// A key is written in a form that is not edited in place.
    Form(String),
}

impl fmt::Display for NotApplied {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotApplied::Syntax(why) => write!(f, "the record cannot be read: {why}"),
            NotApplied::Form(key) => {
                write!(
                    f,
                    "`{key}` is written in a form that cannot be corrected in place"
                )
            }
        }
    }
}

impl std::error::Error for NotApplied {}

/// The text of a record with those corrections that are not only told.
///
/// `recorded`: the record as it was read from the text; `proposed`: that of the row, from which the corrections come.
///
/// # Errors
/// [`NotApplied`] where the text cannot be edited so that it says what is proposed, and nothing else changes.
pub fn applied(
    text: &str,
    recorded: &Impression,
    proposed: &RecordDraft,
    corrections: &[Correction],
) -> Result<String, NotApplied> {
    let tree = DeTable::parse(text).map_err(|fault| NotApplied::Syntax(fault.to_string()))?;
    let mut expected: toml::Table = text
        .parse()
        .map_err(|fault: toml::de::Error| NotApplied::Syntax(fault.to_string()))?;
    let root = TableAt::root(text, tree.get_ref());
    let mut editing = Editing {
        edits: Edits::of(text),
        end: String::new(),
        added: BTreeMap::new(),
        expected: &mut expected,
        written: Flat::as_written(proposed),
        recorded: Flat::of(recorded),
    };
    for correction in corrections.iter().filter(|correction| !correction.is_kept) {
        if editing.recorded_or_written_list(&correction.key) {
            editing.list(text, &tree, correction)?;
        } else {
            editing.value(&root, correction)?;
        }
    }
    editing.add_keys(&root);
    editing.keep_private(&root, proposed, corrections);
    let Editing { edits, end, .. } = editing;
    let mut result = edits.done();
    if !end.is_empty() {
        if !result.ends_with('\n') {
            result.push('\n');
        }
        result.push_str(&end);
    }
    let is: Option<toml::Table> = result.parse().ok();
    if is.as_ref() == Some(&expected) {
        Ok(result)
    } else {
        let key = corrections.iter().find(|correction| !correction.is_kept);
        Err(NotApplied::Form(
            key.map_or_else(String::new, |c| c.key.clone()),
        ))
    }
}

/// Edits of a text, with what its tree must be afterwards.
struct Editing<'e, 't> {
    edits: Edits<'t>,
    /// What is added at the end of the text.
    end: String,
    /// The keys to be added, by their table; "" for those above all tables.
    added: BTreeMap<&'static str, Vec<Entry>>,
    expected: &'e mut toml::Table,
    written: Flat,
    recorded: Flat,
}

impl Editing<'_, '_> {
    /// Whether a key is that of a list of tables.
    fn recorded_or_written_list(&self, key: &str) -> bool {
        self.written.lists.contains_key(key) || self.recorded.lists.contains_key(key)
    }

    /// Corrects a value, or notes that it is to be added.
    fn value(&mut self, root: &TableAt<'_, '_>, correction: &Correction) -> Result<(), NotApplied> {
        let fault = || NotApplied::Form(correction.key.clone());
        let known = self.written.values.iter().chain(&self.recorded.values);
        let path = known
            .map(|(path, _)| path)
            .find(|path| path.text() == correction.key)
            .cloned()
            .ok_or_else(fault)?;
        let value = self.written.value(&path).map(str::to_owned);
        let table = match path.table {
            None => None,
            Some(name) => root.table(name),
        };
        let within = match path.table {
            None => Some(root),
            Some(_) => table.as_ref(),
        };
        let place = within.and_then(|table| table.value(&path.key));
        self.expect(&path, value.as_deref()).ok_or_else(fault)?;
        match (value, place) {
            (Some(value), Some(place)) => self.edits.replace(place, value),
            (Some(value), None) => {
                let added = self
                    .added
                    .entry(path.table.unwrap_or_default())
                    .or_default();
                added.push(Entry::new(&path.key, value));
            }
            (None, Some(_)) => {
                if let Some(table) = within {
                    table.remove(&mut self.edits, &path.key);
                }
            }
            (None, None) => {}
        }
        Ok(())
    }

    /// Notes what the value of a key must be afterwards; `None` where there can be no such key.
    fn expect(&mut self, path: &KeyPath, value: Option<&str>) -> Option<()> {
        let table = match path.table {
            None => &mut *self.expected,
            Some(name) => {
                let entry = self.expected.entry(name);
                let table = entry.or_insert_with(|| toml::Value::Table(toml::Table::new()));
                table.as_table_mut()?
            }
        };
        match value {
            Some(value) => table.insert(path.key.clone(), parsed(value)?),
            None => table.remove(&path.key),
        };
        Some(())
    }

    /// Adds the keys that the record did not have, those of one table together.
    fn add_keys(&mut self, root: &TableAt<'_, '_>) {
        for (name, entries) in std::mem::take(&mut self.added) {
            if name.is_empty() {
                root.add(&mut self.edits, &entries);
                continue;
            }
            match root.table(name) {
                Some(table) => table.add(&mut self.edits, &entries),
                None => self.end.push_str(&block(&format!("[{name}]"), &entries)),
            }
        }
    }

    /// Corrects or adds a table of a list.
    fn list(
        &mut self,
        text: &str,
        tree: &toml::Spanned<DeTable<'_>>,
        correction: &Correction,
    ) -> Result<(), NotApplied> {
        let name = correction.key.as_str();
        let fault = || NotApplied::Form(correction.key.clone());
        let is = |table: &Vec<Entry>, words: &str| written_inline(&said(name, table)) == words;
        let Some(words) = &correction.would_be else {
            return Ok(());
        };
        let mut written = self.written.list(name).iter();
        let new = written
            .find(|table| is(table, words))
            .cloned()
            .ok_or_else(fault)?;
        let root = tree.get_ref();
        let Some(old_words) = &correction.is else {
            self.expect_table(name, None, &new).ok_or_else(fault)?;
            add_tables(&mut self.edits, &mut self.end, text, root, name, &[new]);
            return Ok(());
        };
        let mut recorded = self.recorded.list(name).iter();
        let place = recorded
            .position(|table| is(table, old_words))
            .ok_or_else(fault)?;
        let old = self.recorded.list(name)[place].clone();
        let tables = tables_of(text, root, name);
        let table = tables.get(place).ok_or_else(fault)?;
        self.expect_table(name, Some(place), &new)
            .ok_or_else(fault)?;
        let mut added = Vec::new();
        for entry in &new {
            let known = old.iter().find(|known| known.key == entry.key);
            match (known, table.value(&entry.key)) {
                (Some(known), _) if known.value == entry.value => {}
                (_, Some(place)) => self.edits.replace(place, entry.value.clone()),
                (_, None) => added.push(entry.clone()),
            }
        }
        for entry in &old {
            if !new.iter().any(|known| known.key == entry.key) {
                table.remove(&mut self.edits, &entry.key);
            }
        }
        if !added.is_empty() {
            table.add(&mut self.edits, &added);
        }
        Ok(())
    }

    /// Notes what a table of a list must be afterwards: the one at a place, or one more.
    fn expect_table(&mut self, list: &str, place: Option<usize>, new: &[Entry]) -> Option<()> {
        let entry = self.expected.entry(list);
        let all = entry.or_insert_with(|| toml::Value::Array(Vec::new()));
        if all.is_table() {
            let only = std::mem::replace(all, toml::Value::Array(Vec::new()));
            *all = toml::Value::Array(vec![only]);
        }
        let all = all.as_array_mut()?;
        let place = place.unwrap_or(all.len());
        if place == all.len() {
            all.push(toml::Value::Table(toml::Table::new()));
        }
        let table = all.get_mut(place)?.as_table_mut()?;
        let recorded = self.recorded.list(list).get(place);
        for old in recorded.into_iter().flatten() {
            if !new.iter().any(|entry| entry.key == old.key) {
                table.remove(&old.key);
            }
        }
        for entry in new {
            table.insert(entry.key.clone(), parsed(&entry.value)?);
        }
        Some(())
    }

    /// Lists as private what was added and is not published by default.
    fn keep_private(
        &mut self,
        root: &TableAt<'_, '_>,
        proposed: &RecordDraft,
        corrections: &[Correction],
    ) {
        let added = |key: &str| {
            let mut new = corrections.iter().filter(|c| !c.is_kept && c.is.is_none());
            new.any(|c| c.key == key || c.key.starts_with(&format!("{key}.")))
        };
        let listed = root.private();
        let keys = proposed.withheld.keys.iter();
        let keys: Vec<String> = keys
            .filter(|key| added(key) && !listed.contains(*key))
            .map(|key| (*key).to_owned())
            .collect();
        if !keys.is_empty() {
            self.expect_private(None, &keys);
            root.keep_private(&mut self.edits, &keys);
        }
        let given = root.table("as_given");
        let listed = given.as_ref().map(TableAt::private).unwrap_or_default();
        let names = proposed.withheld.given.iter().filter(|name| {
            let path = KeyPath {
                table: Some("as_given"),
                key: (*name).clone(),
            };
            added(&path.text()) && !listed.contains(&name.as_str())
        });
        let names: Vec<String> = names.cloned().collect();
        if names.is_empty() {
            return;
        }
        self.expect_private(Some("as_given"), &names);
        if let Some(given) = given {
            given.keep_private(&mut self.edits, &names);
        } else {
            // The table is among what is added at the end.
            let quoted: Vec<String> = names.iter().map(|name| text_value(name)).collect();
            let line = format!("[as_given]\nprivate = [{}]\n", quoted.join(", "));
            self.end = self.end.replacen("[as_given]\n", &line, 1);
        }
    }

    fn expect_private(&mut self, table: Option<&'static str>, names: &[String]) {
        let table = match table {
            None => Some(&mut *self.expected),
            Some(name) => self
                .expected
                .get_mut(name)
                .and_then(toml::Value::as_table_mut),
        };
        let Some(table) = table else { return };
        let listed = table.entry("private");
        let listed = listed.or_insert_with(|| toml::Value::Array(Vec::new()));
        if listed.is_str() {
            let only = std::mem::replace(listed, toml::Value::Array(Vec::new()));
            *listed = toml::Value::Array(vec![only]);
        }
        if let Some(listed) = listed.as_array_mut() {
            listed.extend(names.iter().map(|name| toml::Value::String(name.clone())));
        }
    }
}

fn parsed(value: &str) -> Option<toml::Value> {
    let table: toml::Table = format!("value = {value}").parse().ok()?;
    table.get("value").cloned()
}
