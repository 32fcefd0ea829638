//! States between which a matrix did not change, as far as the points record it.
//!
//! Stages of wear are compared only through such states: a change may plug a crack or recut a worn line. States
//! are named by their index in the design's record.
//!
//! In: a design and one of its matrices. Out: [`Unchanged`].

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use crate::identification::allowed::{is_told_apart, shown_values};
use crate::numerals::predecessors;
use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::point::{Point, PointKind, RestsOn};
use keyblock_model::state::State;

/// The pairs of states between which a matrix did not change.
pub(super) struct Unchanged(BTreeSet<(usize, usize)>);

impl Unchanged {
    /// Those of one matrix. Where a point does not name its matrix, or `matrix` is `None`, a change at it counts as a
    /// change of every matrix.
    pub fn of(design: &Design, matrix: Option<&Key>) -> Unchanged {
        let points: Vec<&Point> = design
            .points
            .iter()
            .filter(|point| changes(design, point, matrix))
            .collect();
        let states: Vec<(usize, &State)> = standing(design).collect();
        let is_changed = |a: &State, b: &State| {
            let shown = |state: &State, point: &Point| shown_values(&state.shows, point).is_some();
            points.iter().any(|point| {
                shown(a, point)
                    && shown(b, point)
                    && is_told_apart(
                        point,
                        &shown_values(&a.shows, point).unwrap_or_default(),
                        &shown_values(&b.shows, point).unwrap_or_default(),
                    )
            })
        };
        let neighbours = neighbours(design);
        let mut pairs = BTreeSet::new();
        for (start, first) in &states {
            pairs.insert((*start, *start));
            // The shortest way to each state, on which no two states are told apart. Descents hardly ever branch and
            // meet again, so there is one way.
            let mut ways = VecDeque::from([vec![(*start, *first)]]);
            let mut reached = BTreeSet::from([*start]);
            while let Some(way) = ways.pop_front() {
                let at = way.last().map_or(*start, |(at, _)| *at);
                for next in neighbours.get(&at).into_iter().flatten() {
                    let Some(state) = design.states.get(*next) else {
                        continue;
                    };
                    let is_open = !way.iter().any(|(_, on_way)| is_changed(on_way, state));
                    if is_open && reached.insert(*next) {
                        pairs.extend([(*start, *next), (*next, *start)]);
                        let mut further = way.clone();
                        further.push((*next, state));
                        ways.push_back(further);
                    }
                }
            }
        }
        Unchanged(pairs)
    }

    /// Whether the matrix did not change between any state of the one list and any of the other.
    pub fn between(&self, one: &[usize], other: &[usize]) -> bool {
        let mut pairs = one.iter().flat_map(|a| other.iter().map(move |b| (*a, *b)));
        pairs.all(|pair| self.0.contains(&pair))
    }
}

/// The matrix that a point rests on: the one it names, or the only one there is.
pub(super) fn matrix_of(design: &Design, point: &Point) -> Option<Key> {
    let named = point.matrix.as_ref().map(|m| m.value.clone());
    named.or_else(|| match design.matrices.as_slice() {
        [only] => Some(only.key.value.clone()),
        _ => None,
    })
}

/// Whether a change at a point may be a change of the matrix.
fn changes(design: &Design, point: &Point, matrix: Option<&Key>) -> bool {
    let rests_on = matrix_of(design, point);
    point.rests_on.value == RestsOn::Matrix
        && !matches!(point.kind, PointKind::Stage(_))
        && (rests_on.is_none() || matrix.is_none() || rests_on.as_ref() == matrix)
}

/// The states that are not withdrawn, with their indexes in the record.
pub(super) fn standing(design: &Design) -> impl Iterator<Item = (usize, &State)> {
    let states = design.states.iter().enumerate();
    states.filter(|(_, state)| !state.standing.is_withdrawn())
}

/// The index of a state in the record.
pub fn index_of(design: &Design, key: &Key) -> Option<usize> {
    design.states.iter().position(|s| s.key.value == *key)
}

/// For each state those it was changed from and those changed from it.
fn neighbours(design: &Design) -> BTreeMap<usize, Vec<usize>> {
    let mut of: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (at, state) in standing(design) {
        for before in predecessors(design, state) {
            if let Some(before) = index_of(design, &before.key.value) {
                of.entry(at).or_default().push(before);
                of.entry(before).or_default().push(at);
            }
        }
    }
    of
}

/// For each state that is not withdrawn, every state before it along `follows`, itself left out.
pub(super) fn ancestors(design: &Design) -> BTreeMap<usize, BTreeSet<usize>> {
    let of_each = standing(design).map(|(at, state)| {
        let mut found = BTreeSet::new();
        let mut to_visit = predecessors(design, state);
        while let Some(before) = to_visit.pop() {
            let index = index_of(design, &before.key.value);
            if let Some(index) = index.filter(|index| *index != at)
                && found.insert(index)
            {
                to_visit.extend(predecessors(design, before));
            }
        }
        (at, found)
    });
    of_each.collect()
}
