//! Covers checked against trying everything, and against graphs whose number is known.

use std::collections::BTreeSet;

use super::cover::{Cover, EXACT_UP_TO};
use super::graph::Graph;
use crate::index::SheetAt;

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
