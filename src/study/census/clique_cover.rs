//! The fewest sheets that unresolved doubts allow.
//!
//! Sheets are joined by "may be the same sheet". A set in which every two may be the same could be
//! one sheet (a clique), so the fewest sheets are the fewest cliques that cover all of them.
//!
//! A row of the census counts some of the sheets only. A clique that also holds a sheet of another value costs nothing
//! there, since it is then counted elsewhere.
//!
//! In: a graph of sheets. Out: [`Cover`].
//! Method: minimum clique cover, which is graph colouring of the complement and hard in general (Karp 1972).
//! Doubts come in small clusters, so each connected part of up to [`EXACT_UP_TO`] sheets is solved exactly by
//! branch and bound; larger ones are bounded from below by a set of which no two may be the same. Of such a set, each
//! clique holds one sheet at most, which also bounds the branches (Kuhn's algorithm finds how many the cliques at hand
//! can take).
//! Definitions: `docs/definitions.md, "Distinct sheets"` and `"Rows of the census"`.
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

    /// A lower bound for a part too large to solve: a set of vertices no two of which are joined, less one for each
    /// vertex that costs nothing; or such a set among those that are joined to none of these.
    fn bound(&self, part: &[SheetAt], free: &[SheetAt]) -> usize {
        let all = self.apart_from_each_other(part).saturating_sub(free.len());
        let beside: BTreeSet<SheetAt> = free.iter().flat_map(|v| self.joined_to(*v)).collect();
        let far = part.iter().copied().filter(|v| !beside.contains(v));
        let far: Vec<SheetAt> = far.collect();
        all.max(self.apart_from_each_other(&far))
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

/// The fewest cliques that cover a graph of at most 32 vertices, beside one for each vertex of `free` (bits), which
/// costs nothing: branch and bound. Each vertex in turn, the hardest to place first, joins a clique that it fits or
/// starts a new one; a branch that cannot beat the best found so far is left.
fn smallest_cover(rows: &[u32], free: u32) -> usize {
    let (mut cliques, mut order) = (Vec::new(), Vec::new());
    for (at, row) in rows.iter().enumerate() {
        if free & 1 << at == 0 {
            order.push(at);
        } else {
            cliques.push(row & !free);
        }
    }
    order.sort_by_key(|v| (rows[*v].count_ones(), *v));
    let cost_nothing = cliques.len();
    let mut best = cost_nothing + order.len();
    place(rows, &order, &mut cliques, &mut best);
    best - cost_nothing
}

/// Places the first vertex of `left`; `cliques` holds for each clique, as bits, the vertices that fit it.
fn place(rows: &[u32], left: &[usize], cliques: &mut Vec<u32>, best: &mut usize) {
    let Some((vertex, rest)) = left.split_first() else {
        *best = (*best).min(cliques.len());
        return;
    };
    if cliques.len() + new_cliques(rows, left, cliques) >= *best {
        return;
    }
    let (row, bit) = (rows[*vertex], 1_u32 << vertex);
    let still = rest.iter().fold(0, |bits, v| bits | 1_u32 << v);
    let mut tried = Vec::new();
    for at in 0..cliques.len() {
        let fitting = cliques[at];
        // Cliques that the vertices left fit alike are one choice.
        let like = fitting & still;
        if fitting & bit != 0 && !tried.contains(&like) {
            tried.push(like);
            cliques[at] = fitting & row;
            place(rows, rest, cliques, best);
            cliques[at] = fitting;
        }
    }
    cliques.push(row);
    place(rows, rest, cliques, best);
    cliques.pop();
}

/// How many more cliques `left` needs at the least: vertices no two of which are joined, less those that the cliques
/// at hand can take, one each.
fn new_cliques(rows: &[u32], left: &[usize], cliques: &[u32]) -> usize {
    let mut apart = Vec::new();
    let mut beside = 0_u32;
    for vertex in left {
        if beside & 1 << vertex == 0 {
            apart.push(*vertex);
            beside |= rows[*vertex];
        }
    }
    let mut taken = vec![None; cliques.len()];
    let takes = |vertex: &&usize| {
        take(
            **vertex,
            cliques,
            &mut vec![false; cliques.len()],
            &mut taken,
        )
    };
    apart.len() - apart.iter().filter(takes).count()
}

/// Finds a clique for a vertex that it fits, moving others where they fit another; `taken` holds who has each.
fn take(vertex: usize, cliques: &[u32], asked: &mut [bool], taken: &mut [Option<usize>]) -> bool {
    for (at, fitting) in cliques.iter().enumerate() {
        if fitting & 1 << vertex == 0 || asked[at] {
            continue;
        }
        asked[at] = true;
        if taken[at].is_none_or(|other| take(other, cliques, asked, taken)) {
            taken[at] = Some(vertex);
            return true;
        }
    }
    false
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
        assert_eq!(row.cover_beside(&ends, |_| false).at_least, 2);
        // The middle one may be either of the ends and not both.
        assert_eq!(row.cover_beside(&ends, |_| true).at_least, 1);
    }

    /// Every way to split all vertices into cliques; of the parts that hold one of the first `counted`, those count
    /// that hold no vertex that costs nothing (the rest of the vertices, where `free` says so).
    fn beside_by_trying_everything(graph: &Graph, counted: usize, free: &[bool]) -> usize {
        fn split(
            graph: &Graph,
            vertex: usize,
            parts: &mut Vec<Vec<usize>>,
            cost: &dyn Fn(&[usize]) -> usize,
        ) -> usize {
            if vertex == graph.0.len() {
                return parts.iter().map(|part| cost(part)).sum();
            }
            let mut best = usize::MAX;
            for at in 0..parts.len() {
                if parts[at].iter().all(|m| is_joined(graph, vertex, *m)) {
                    parts[at].push(vertex);
                    best = best.min(split(graph, vertex + 1, parts, cost));
                    parts[at].pop();
                }
            }
            parts.push(vec![vertex]);
            best = best.min(split(graph, vertex + 1, parts, cost));
            parts.pop();
            best
        }
        let cost = |part: &[usize]| {
            let counts = part.iter().any(|v| *v < counted);
            usize::from(counts && !part.iter().any(|v| *v >= counted && free[*v]))
        };
        split(graph, 0, &mut Vec::new(), &cost)
    }

    #[test]
    fn cliques_that_cost_nothing_agree_with_trying_everything() {
        let mut numbers = Lehmer(5);
        for vertices in 1..9 {
            for dense in [20, 40, 60, 80] {
                for _ in 0..12 {
                    let graph = numbers.graph(vertices, dense);
                    let counted = 1 + vertices / 2;
                    let free: Vec<bool> = (0..vertices).map(|_| numbers.percent() < 60).collect();
                    let of_row: BTreeSet<SheetAt> = (0..counted).map(SheetAt::new).collect();
                    let found = graph.cover_beside(&of_row, |at| free[at.index()]);
                    assert!(found.exact);
                    let expected = beside_by_trying_everything(&graph, counted, &free);
                    assert_eq!(found.at_least, expected, "{graph:?} {counted} {free:?}");
                }
            }
        }
    }

    /// Thirteen lost sheets each of which may be any of eleven that are located: two at the least stay lost. Trying
    /// every assignment would take hours.
    #[test]
    fn many_sheets_that_may_be_any_of_many_others_are_counted_at_once() {
        let pairs = |lost: usize, located: usize| -> Graph {
            let mut graph = Graph::unjoined(lost + located);
            for a in 0..lost {
                (lost..lost + located).for_each(|b| join(&mut graph, a, b));
            }
            graph
        };
        let lost = |n: usize| (0..n).map(SheetAt::new).collect::<BTreeSet<_>>();
        let few = pairs(13, 11).cover_beside(&lost(13), |_| true);
        assert_eq!((few.at_least, few.exact), (2, true));
        // Beyond the exact count the bound is never too high.
        let many = pairs(30, 11).cover_beside(&lost(30), |_| true);
        assert_eq!((many.at_least, many.exact), (19, false));
        let mut apart = pairs(30, 11);
        apart.0[SheetAt::new(0)].clear();
        for other in 30..41 {
            apart.0[SheetAt::new(other)].remove(&SheetAt::new(0));
        }
        assert_eq!(apart.cover_beside(&lost(30), |_| true).at_least, 19);
    }
}
