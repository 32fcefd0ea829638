//! The entries from which an entry takes fields, by `crossref` and `xdata`.

use std::collections::{BTreeMap, BTreeSet};

use biblatex::RawChunk;

use super::entry::Entry;
use crate::model::key::Key;

/// The keys that an entry takes fields from.
fn parents(entry: &Entry) -> Vec<Key> {
    let is_link =
        |name: &str| name.eq_ignore_ascii_case("crossref") || name.eq_ignore_ascii_case("xdata");
    let fields = entry.raw.v.fields.iter().filter(|f| is_link(f.key.v));
    fields
        .flat_map(|field| &field.value.v)
        .filter_map(|chunk| match chunk.v {
            RawChunk::Normal(text) => Some(text),
            RawChunk::Abbreviation(_) => None,
        })
        .flat_map(|text| text.split(','))
        .filter_map(|key| key.trim().parse().ok())
        .collect()
}

/// The key, and the keys of all entries from which it takes fields, nearest first.
pub(super) fn family(key: &Key, entries: &indexmap::IndexMap<Key, Entry>) -> Vec<Key> {
    let mut known = vec![key.clone()];
    let mut next = 0;
    while let Some(entry) = known.get(next).map(|key| entries.get(key)) {
        next += 1;
        for parent in entry.map(parents).unwrap_or_default() {
            if !known.contains(&parent) && entries.contains_key(&parent) {
                known.push(parent);
            }
        }
    }
    known
}

/// Entries that take fields from themselves, directly or through others, and those that depend on
/// them. `biblatex` would follow such links forever, so these entries are not passed to it.
pub(super) fn entries_in_circles(entries: &indexmap::IndexMap<Key, Entry>) -> BTreeSet<Key> {
    let mut open: BTreeMap<&Key, Vec<Key>> = entries
        .iter()
        .map(|(key, entry)| {
            (
                key,
                parents(entry)
                    .into_iter()
                    .filter(|p| entries.contains_key(p))
                    .collect(),
            )
        })
        .collect();
    // Repeatedly removes every entry that depends on no remaining entry. What remains are the circles and
    // the entries that depend on them.
    loop {
        let free: BTreeSet<Key> = open
            .iter()
            .filter(|(_, p)| p.is_empty())
            .map(|(k, _)| (*k).clone())
            .collect();
        if free.is_empty() {
            return open.keys().map(|key| (*key).clone()).collect();
        }
        open.retain(|key, _| !free.contains(*key));
        for rest in open.values_mut() {
            rest.retain(|parent| !free.contains(parent));
        }
    }
}
