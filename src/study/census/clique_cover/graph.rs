//! A graph of sheets: which of them may be the same.
//!
//! In: pairs of sheets. Out: [`Graph`].

use std::collections::BTreeSet;

use crate::index::{Indexed, SheetAt};

/// A graph of sheets: for each, those it is joined to.
///
/// Invariant: symmetric, and no sheet is joined to itself.
#[derive(Clone, Debug, Default)]
pub struct Graph(pub(super) Indexed<SheetAt, BTreeSet<SheetAt>>);

impl Graph {
    /// `sheets` vertices without an edge.
    #[must_use]
    pub fn unjoined(sheets: usize) -> Graph {
        Graph(vec![BTreeSet::new(); sheets].into_iter().collect())
    }

    /// Joins two sheets of the graph. Joining one to itself does nothing.
    ///
    /// # Panics
    /// Where the graph has no such sheet.
    pub fn join(&mut self, a: SheetAt, b: SheetAt) {
        if a != b {
            self.0[a].insert(b);
            self.0[b].insert(a);
        }
    }

    /// The sheets that one is joined to.
    pub(super) fn joined_to(&self, vertex: SheetAt) -> impl Iterator<Item = SheetAt> {
        self.0[vertex].iter().copied()
    }

    /// The part as an adjacency matrix of bits, vertices renumbered in the order of `part`.
    pub(super) fn rows_of(&self, part: &[SheetAt]) -> Vec<u32> {
        part.iter()
            .map(|vertex| {
                self.joined_to(*vertex)
                    .filter_map(|other| part.binary_search(&other).ok())
                    .fold(0, |row, at| row | 1 << at)
            })
            .collect()
    }
}
