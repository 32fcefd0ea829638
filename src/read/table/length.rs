//! Finds the first list of a record that is longer than any record needs.
//!
//! In: the tree of a file. Out: the place of the first item beyond [`MOST_ITEMS`] in a list.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::read::faults::Node;
use crate::read::limits::MOST_ITEMS;

/// The place in the file at which the first list that is too long goes beyond [`MOST_ITEMS`].
pub(crate) fn too_long(tree: &DeTable<'_>) -> Option<std::ops::Range<usize>> {
    // The order of the tree is that of its keys, not of the file.
    let places = tree.values().filter_map(beyond);
    places.min_by_key(|place| place.start)
}

fn beyond(node: &Node<'_>) -> Option<std::ops::Range<usize>> {
    match node.get_ref() {
        DeValue::Table(table) => too_long(table),
        DeValue::Array(list) => {
            let inner = list.iter().filter_map(beyond);
            let first = inner.chain(list.get(MOST_ITEMS).map(Spanned::span));
            first.min_by_key(|place| place.start)
        }
        _ => None,
    }
}
