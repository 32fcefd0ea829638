//! The fewest sheets that unresolved doubts allow.
//!
//! Sheets are joined by "may be the same sheet". A set in which every two may be the same could be
//! one sheet (a clique), so the fewest sheets are the fewest cliques that cover all of them.
//!
//! In: a graph of sheets. Out: [`Cover`].
//! Method: minimum clique cover, which is graph colouring of the complement and hard in general (Karp 1972).
//! Doubts come in small clusters, so each connected part of up to [`EXACT_UP_TO`] sheets is solved exactly by
//! branch and bound; larger ones are bounded from below by a set of which no two may be the same.
//! Definitions: `docs/definitions.md, "Distinct sheets"`.
//! Not here: which records may be of the same sheet (`count`).
//!
//! A ring of five takes three cliques, because its complement is a ring of five too, whose chromatic number is 3:
//! ```
//! # use keyblock::study::clique_cover::{Cover, Graph};
//! # use keyblock::study::index::SheetAt;
//! let mut ring = Graph::unjoined(5);
//! for at in 0..5 {
//!     ring.join(SheetAt::new(at), SheetAt::new((at + 1) % 5));
//! }
//! assert_eq!(ring.cover(), Cover { at_least: 3, exact: true });
//! ```

use std::collections::BTreeSet;

use crate::study::index::{Indexed, SheetAt};

/// The largest connected part that is solved exactly (`docs/definitions.md, "Distinct sheets"`).
pub const EXACT_UP_TO: usize = 24;

/// A graph of sheets: for each, those it is joined to.
///
/// Invariant: symmetric, and no sheet is joined to itself.
#[derive(Clone, Debug, Default)]
pub struct Graph(Indexed<SheetAt, BTreeSet<SheetAt>>);

/// How few cliques cover a graph.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cover {
    /// The number of cliques, or a lower bound of it.
    pub at_least: usize,
    /// Whether `at_least` is the number itself.
    pub exact: bool,
}

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

    fn joined_to(&self, vertex: SheetAt) -> impl Iterator<Item = SheetAt> {
        self.0[vertex].iter().copied()
    }

    /// The fewest cliques that cover all sheets.
    #[must_use]
    pub fn cover(&self) -> Cover {
        self.cover_of(&self.0.indexes().collect())
    }

    /// The fewest cliques that cover `vertices`, with the edges among them.
    #[must_use]
    pub(crate) fn cover_of(&self, vertices: &BTreeSet<SheetAt>) -> Cover {
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
                for other in self.joined_to(vertex).filter(|v| vertices.contains(v)) {
                    if seen.insert(other) {
                        part.push(other);
                    }
                }
            }
            part.sort_unstable();
            if part.len() <= EXACT_UP_TO {
                total.at_least += smallest_cover(&self.rows_of(&part));
            } else {
                total.at_least += self.apart_from_each_other(&part);
                total.exact = false;
            }
        }
        total
    }

    /// The part as an adjacency matrix of bits, vertices renumbered in the order of `part`.
    fn rows_of(&self, part: &[SheetAt]) -> Vec<u32> {
        part.iter()
            .map(|vertex| {
                self.joined_to(*vertex)
                    .filter_map(|other| part.binary_search(&other).ok())
                    .fold(0, |row, at| row | 1 << at)
            })
            .collect()
    }

    /// The size of a set of vertices no two of which are joined, found greedily: repeatedly the vertex
    /// with the fewest neighbours left, the first among equals.
    fn apart_from_each_other(&self, part: &[SheetAt]) -> usize {
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

/// The fewest cliques that cover a graph of at most 32 vertices: branch and bound. Each vertex in
/// turn, the hardest to place first, joins a clique that it fits or starts a new one; a branch
/// that cannot beat the best found so far is left.
fn smallest_cover(rows: &[u32]) -> usize {
    let mut order: Vec<usize> = (0..rows.len()).collect();
    order.sort_by_key(|v| (rows[*v].count_ones(), *v));
    let mut best = rows.len();
    place(rows, &order, &mut Vec::new(), &mut best);
    best
}

/// Places the first vertex of `left`; `cliques` holds the members of each clique as bits.
fn place(rows: &[u32], left: &[usize], cliques: &mut Vec<u32>, best: &mut usize) {
    if cliques.len() >= *best {
        return;
    }
    let Some((vertex, rest)) = left.split_first() else {
        *best = cliques.len();
        return;
    };
    let row = rows[*vertex];
    let bit = 1_u32 << vertex;
    for at in 0..cliques.len() {
        let members = cliques[at];
        if members & !row == 0 {
            cliques[at] = members | bit;
            place(rows, rest, cliques, best);
            cliques[at] = members;
        }
    }
    cliques.push(bit);
    place(rows, rest, cliques, best);
    cliques.pop();
}

#[cfg(test)]
mod tests {
    use super::*;

    fn graph(vertices: usize, edges: &[(usize, usize)]) -> Graph {
        let mut graph = Graph::unjoined(vertices);
        for (a, b) in edges {
            join(&mut graph, *a, *b);
        }
        graph
    }

    fn join(graph: &mut Graph, a: usize, b: usize) {
        graph.join(SheetAt::new(a), SheetAt::new(b));
    }

    fn is_joined(graph: &Graph, a: usize, b: usize) -> bool {
        graph.0[SheetAt::new(a)].contains(&SheetAt::new(b))
    }

    fn fewest(graph: &Graph) -> Cover {
        graph.cover()
    }

    /// Every way to split the vertices, by the definition.
    fn by_trying_everything(graph: &Graph) -> usize {
        fn split(graph: &Graph, vertex: usize, parts: &mut Vec<Vec<usize>>) -> usize {
            if vertex == graph.0.len() {
                return parts.len();
            }
            let mut best = usize::MAX;
            for at in 0..parts.len() {
                if parts[at].iter().all(|m| is_joined(graph, vertex, *m)) {
                    parts[at].push(vertex);
                    best = best.min(split(graph, vertex + 1, parts));
                    parts[at].pop();
                }
            }
            parts.push(vec![vertex]);
            best = best.min(split(graph, vertex + 1, parts));
            parts.pop();
            best
        }
        split(graph, 0, &mut Vec::new())
    }

    /// Pseudo-random numbers, the same at every run (Lehmer's generator, Park and Miller 1988).
    struct Lehmer(u64);

    impl Lehmer {
        fn percent(&mut self) -> u64 {
            self.0 = self.0 * 48_271 % 2_147_483_647;
            self.0 % 100
        }

        fn graph(&mut self, vertices: usize, dense: u64) -> Graph {
            let mut graph = Graph::unjoined(vertices);
            for a in 0..vertices {
                for b in 0..a {
                    if self.percent() < dense {
                        join(&mut graph, a, b);
                    }
                }
            }
            graph
        }
    }

    #[test]
    fn small_graphs_agree_with_trying_everything() {
        let mut numbers = Lehmer(7);
        for vertices in 0..9 {
            for dense in [10, 30, 50, 70, 90] {
                for _ in 0..8 {
                    let graph = numbers.graph(vertices, dense);
                    let cover = fewest(&graph);
                    assert!(cover.exact);
                    assert_eq!(cover.at_least, by_trying_everything(&graph), "{graph:?}");
                }
            }
        }
    }

    /// Its complement: joined where it is not.
    fn complement(graph: &Graph) -> Graph {
        let vertices = graph.0.len();
        let mut complement = Graph::unjoined(vertices);
        for a in 0..vertices {
            for b in (0..a).filter(|b| !is_joined(graph, a, *b)) {
                join(&mut complement, a, b);
            }
        }
        complement
    }

    /// Kneser's graph: the sets of `k` of `n` things, joined where they have nothing in common.
    fn kneser(n: u32, k: u32) -> Graph {
        let sets: Vec<u32> = (0..1 << n)
            .filter(|set: &u32| set.count_ones() == k)
            .collect();
        let mut graph = Graph::unjoined(sets.len());
        for (a, one) in sets.iter().enumerate() {
            for (b, other) in sets.iter().enumerate().take(a) {
                if one & other == 0 {
                    join(&mut graph, a, b);
                }
            }
        }
        graph
    }

    /// Mycielski's construction: one colour more, and no triangle more.
    fn mycielski(graph: &Graph) -> Graph {
        let n = graph.0.len();
        let mut larger = Graph::unjoined(2 * n + 1);
        for a in 0..n {
            for b in (0..n).filter(|b| is_joined(graph, a, *b)) {
                join(&mut larger, a, b);
                join(&mut larger, a + n, b);
            }
            join(&mut larger, a + n, 2 * n);
        }
        larger
    }

    /// The fewest cliques that cover a graph are the fewest colours of its complement. Kneser's graph of n
    /// and k takes n - 2k + 2 colours (Lovász 1978); Mycielski's construction adds one (Mycielski 1955),
    /// which makes Grötzsch's graph of eleven from a ring of five.
    #[test]
    fn complements_of_named_graphs_take_as_many_as_their_colours() {
        for (n, k, colours) in [(5, 2, 3), (6, 2, 4), (7, 2, 5), (8, 1, 8)] {
            let cover = fewest(&complement(&kneser(n, k)));
            assert_eq!((cover.at_least, cover.exact), (colours, true), "{n} {k}");
        }
        let ring = graph(5, &[(0, 1), (1, 2), (2, 3), (3, 4), (4, 0)]);
        let grotzsch = mycielski(&ring);
        for (graph, vertices, colours) in [
            (ring, 5, 3),
            (grotzsch.clone(), 11, 4),
            (mycielski(&grotzsch), 23, 5),
        ] {
            assert_eq!(graph.0.len(), vertices);
            assert_eq!(fewest(&complement(&graph)).at_least, colours, "{vertices}");
        }
    }

    /// Without a triangle a clique is a pair at most, so the fewest are the vertices less the largest
    /// matching (Gallai 1959): half of them for Petersen's graph, the cube of four dimensions and Heawood's
    /// graph, which have a perfect matching.
    #[test]
    fn named_graphs_without_triangles_take_half_their_vertices() {
        let petersen = kneser(5, 2);
        let mut cube = Graph::unjoined(16);
        let mut heawood = Graph::unjoined(14);
        for a in 0..16_usize {
            for bit in [1, 2, 4, 8] {
                join(&mut cube, a, a ^ bit);
            }
        }
        for a in 0..14 {
            join(&mut heawood, a, (a + 1) % 14);
            if a % 2 == 0 {
                join(&mut heawood, a, (a + 5) % 14);
            }
        }
        for graph in [petersen, cube, heawood] {
            assert_eq!(fewest(&graph).at_least, graph.0.len() / 2, "{graph:?}");
        }
    }

    #[test]
    fn a_ring_of_five_takes_three() {
        // Its complement is a ring of five, whose chromatic number is 3.
        let ring = graph(5, &[(0, 1), (1, 2), (2, 3), (3, 4), (4, 0)]);
        assert_eq!(fewest(&ring).at_least, 3);
    }

    #[test]
    fn the_largest_exact_part_is_solved_at_once_whatever_its_density() {
        let mut numbers = Lehmer(11);
        for dense in [15, 40, 60, 85] {
            let graph = numbers.graph(EXACT_UP_TO, dense);
            let cover = fewest(&graph);
            let all: Vec<SheetAt> = graph.0.indexes().collect();
            assert!(cover.at_least >= graph.apart_from_each_other(&all));
        }
    }

    #[test]
    fn beyond_that_the_bound_is_never_too_high() {
        // 30 in a row: 15 pairs cover it, and 15 no two of which are joined exist.
        let row: Vec<(usize, usize)> = (1..30).map(|v| (v - 1, v)).collect();
        assert_eq!(
            fewest(&graph(30, &row)),
            Cover {
                at_least: 15,
                exact: false
            }
        );
    }

    #[test]
    fn what_does_not_count_joins_nothing() {
        let row = graph(3, &[(0, 1), (1, 2)]);
        let ends = BTreeSet::from([0, 2].map(SheetAt::new));
        assert_eq!(row.cover_of(&ends).at_least, 2);
    }
}
