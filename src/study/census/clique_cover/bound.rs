//! A lower bound of the cliques that cover a part too large to be solved.
//!
//! In: a graph, some of its vertices, and those that cost nothing. Out: a number that is never too high.
//! Method: of a set of vertices no two of which are joined, each clique holds one at most.

use std::collections::BTreeSet;

use super::graph::Graph;
use crate::index::{Indexed, SheetAt};

impl Graph {
    /// A lower bound for a part too large to solve: a set of vertices no two of which are joined, less one for each
    /// vertex that costs nothing; or such a set among those that are joined to none of these.
    pub(super) fn bound(&self, part: &[SheetAt], free: &[SheetAt]) -> usize {
        let all = self.apart_from_each_other(part).saturating_sub(free.len());
        let beside: BTreeSet<SheetAt> = free.iter().flat_map(|v| self.joined_to(*v)).collect();
        let far = part.iter().copied().filter(|v| !beside.contains(v));
        let far: Vec<SheetAt> = far.collect();
        all.max(self.apart_from_each_other(&far))
    }

    /// The size of a set of vertices no two of which are joined, found greedily: repeatedly the vertex
    /// with the fewest neighbours left, the first among equals.
    pub(super) fn apart_from_each_other(&self, part: &[SheetAt]) -> usize {
        let mut left: BTreeSet<SheetAt> = part.iter().copied().collect();
        let mut degree: Indexed<SheetAt, usize> = Indexed::filled(&self.0, 0);
        let mut by_degree = BTreeSet::new();
        for vertex in part {
            degree[*vertex] = self.joined_to(*vertex).filter(|v| left.contains(v)).count();
            by_degree.insert((degree[*vertex], *vertex));
        }
        let mut size = 0;
        while let Some((_, chosen)) = by_degree.pop_first() {
            size += 1;
            left.remove(&chosen);
            let gone: Vec<SheetAt> = self
                .joined_to(chosen)
                .filter(|v| left.contains(v))
                .collect();
            for vertex in &gone {
                left.remove(vertex);
                by_degree.remove(&(degree[*vertex], *vertex));
            }
            for vertex in gone {
                for other in self.joined_to(vertex).filter(|v| left.contains(v)) {
                    by_degree.remove(&(degree[other], other));
                    degree[other] -= 1;
                    by_degree.insert((degree[other], other));
                }
            }
        }
        size
    }
}
