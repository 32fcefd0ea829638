//! Covers a graph part by part: small parts exactly, larger ones by a bound.
//!
//! In: a graph. Out: [`Cover`].

use std::collections::BTreeSet;

use super::exact::smallest_cover;
use super::graph::Graph;
use crate::index::SheetAt;

/// The largest connected part that is solved exactly (`docs/definitions.md, "Distinct sheets"`).
pub const EXACT_UP_TO: usize = 24;

/// How few cliques cover a graph.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cover {
    /// The number of cliques, or a lower bound of it.
    pub at_least: usize,
    /// Whether `at_least` is the number itself.
    pub exact: bool,
}

impl Graph {
    /// The fewest cliques that cover all sheets.
    #[must_use]
    pub fn cover(&self) -> Cover {
        self.cover_beside(&self.0.indexes().collect(), |_| false)
    }

    /// The fewest cliques that cover `vertices`, beside those that hold a vertex that `costs_nothing`: each such
    /// vertex, joined to some of them, makes one clique that does not count.
    #[must_use]
    pub(crate) fn cover_beside(
        &self,
        vertices: &BTreeSet<SheetAt>,
        costs_nothing: impl Fn(SheetAt) -> bool,
    ) -> Cover {
        let mut total = Cover {
            at_least: 0,
            exact: true,
        };
        let mut seen = BTreeSet::new();
        for start in vertices.iter().copied() {
            if !seen.insert(start) {
                continue;
            }
            let mut part = vec![start];
            let mut next = 0;
            while let Some(vertex) = part.get(next).copied() {
                next += 1;
                let is_free = !vertices.contains(&vertex);
                for other in self.joined_to(vertex) {
                    let is_of_part = if vertices.contains(&other) {
                        true
                    } else {
                        // Two vertices that cost nothing need not be joined.
                        !is_free && costs_nothing(other)
                    };
                    if is_of_part && seen.insert(other) {
                        part.push(other);
                    }
                }
            }
            part.sort_unstable();
            let is_free = |vertex: &SheetAt| !vertices.contains(vertex);
            if part.len() <= EXACT_UP_TO {
                let free = (0..).zip(&part).filter(|(_, v)| is_free(v));
                let free = free.fold(0, |bits, (at, _)| bits | 1 << at);
                total.at_least += smallest_cover(&self.rows_of(&part), free);
            } else {
                let (free, part): (Vec<SheetAt>, Vec<SheetAt>) =
                    part.into_iter().partition(|v| is_free(v));
                total.at_least += self.bound(&part, &free);
                total.exact = false;
            }
        }
        total
    }
}
