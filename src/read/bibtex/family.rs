//! The entries from which an entry takes fields, by `crossref` and `xdata`.

use std::collections::{BTreeMap, BTreeSet};

use biblatex::RawChunk;

use super::entry::Entry;
use crate::model::key::Key;

/// The keys that an entry takes fields from.
pub(super) fn parents(entry: &Entry) -> Vec<Key> {
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
pub(super) fn family(key: &Key, parents: &BTreeMap<Key, Vec<Key>>) -> Vec<Key> {
    let mut family = vec![key.clone()];
    let mut known = BTreeSet::from([key.clone()]);
    let mut next = 0;
    while let Some(of) = family.get(next).map(|key| parents.get(key)) {
        next += 1;
        for parent in of.into_iter().flatten() {
            if known.insert(parent.clone()) {
                family.push(parent.clone());
            }
        }
    }
    family
}

/// For each entry, those from which it takes fields, each once; keys that no entry has are left out.
pub(super) fn all_parents(entries: &indexmap::IndexMap<Key, Entry>) -> BTreeMap<Key, Vec<Key>> {
    let of = |entry: &Entry| {
        let mut known = BTreeSet::new();
        let parents = parents(entry).into_iter();
        parents
            .filter(|key| entries.contains_key(key) && known.insert(key.clone()))
            .collect()
    };
    entries
        .iter()
        .map(|(key, entry)| (key.clone(), of(entry)))
        .collect()
}

/// Entries that take fields from themselves, directly or through others, and those that depend on
/// them. `biblatex` would follow such links forever, so these entries are not passed to it.
pub(super) fn entries_in_circles(parents: &BTreeMap<Key, Vec<Key>>) -> BTreeSet<Key> {
    let mut open: BTreeMap<&Key, usize> = parents.iter().map(|(key, of)| (key, of.len())).collect();
    let mut children: BTreeMap<&Key, Vec<&Key>> = BTreeMap::new();
    for (key, of) in parents {
        for parent in of {
            children.entry(parent).or_default().push(key);
        }
    }
    // Repeatedly removes an entry that depends on no remaining entry. What remains are the circles and the
    // entries that depend on them.
    let free = open.iter().filter(|(_, parents)| **parents == 0);
    let mut free: Vec<&Key> = free.map(|(key, _)| *key).collect();
    while let Some(key) = free.pop() {
        open.remove(key);
        for child in children.remove(key).into_iter().flatten() {
            if let Some(left) = open.get_mut(child) {
                *left -= 1;
                if *left == 0 {
                    free.push(child);
                }
            }
        }
    }
    open.into_keys().cloned().collect()
}
