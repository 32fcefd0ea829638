//! Wear: the order in which sheets were pulled, as far as the wear of the matrices shows it.
//!
//! Wear only advances: where a crack runs further on one sheet than on another, the other was
//! pulled first. That holds for one matrix, through the states in which it did not change, because
//! a change may plug a crack or cut a worn line anew. Several stages together give a partial order; sets
//! of sheets of which each would have been pulled before the other cannot be true.
//!
//! In: a design. Out: one [`Wear`] for each matrix and each run of states in which an order follows. The
//! sheets used are those of the design's own matrices that belong to that run alone and whose observations
//! do not contradict their identification; an observation is used where it is certain and names one stage.
//! Method: `docs/definitions.md, "Order of printing"`; strongly connected sets and transitive reduction by the
//! crate `petgraph`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{index::PullAt, wear::wear};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! matrices = [{ key = "block" }]
//! points = [{ key = "crack", ask = "How far?", kind = "stage", stages = ["none", "edge"], rests_on = "matrix" }]
//! states = [{ key = "only" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! observed = { crack = "edge" }
//! -- records/designs/1/impressions/2.toml
//! status = "located"
//! observed = { crack = "none" }
//! "#);
//! let [wear] = wear(&catalogue.designs[&key("1")]).try_into().unwrap();
//! assert_eq!(wear.before, [(PullAt::new(0), PullAt::new(1))]);
//! assert_eq!(wear.pulls[PullAt::new(0)].sheets[0].to_string(), "1.2");
//! ```

use std::collections::{BTreeMap, BTreeSet};

use petgraph::algo::tarjan_scc;
use petgraph::algo::tred::{dag_to_toposorted_adjacency_list, dag_transitive_reduction_closure};
use petgraph::graph::{DiGraph, NodeIndex};
use petgraph::visit::{IntoNeighbors, NodeIndexable};

use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::model::key::{ImpressionKey, Key};
use crate::model::point::{ObservedValue, Point, PointKind, RestsOn};
use crate::model::state::State;
use crate::study::census::{is_counted, readings};
use crate::study::identification::agree::contradiction;
use crate::study::identification::candidates::candidates;
use crate::study::identification::changes::changes;
use crate::study::identification::identify::is_printed;
use crate::study::index::{Indexed, PullAt, ValueAt};
use crate::study::numerals::predecessors;

/// The order of pulling that the wear of one matrix shows, through states in which it did not change.
#[derive(Clone, Debug, PartialEq)]
pub struct Wear {
    /// The matrix; `None` where the points do not name one of several.
    pub matrix: Option<Key>,
    /// The states through which it did not change, in the record's order.
    pub states: Vec<Key>,
    /// The points of wear, in the record's order.
    pub points: Vec<Key>,
    /// The sheets, those that show the same stages together; by layer, then by record.
    pub pulls: Indexed<PullAt, Pull>,
    /// Which were pulled before which: the fewest statements from which all others follow.
    pub before: Vec<(PullAt, PullAt)>,
    /// Sets of sheets of which each would have to be pulled before the others.
    pub cycles: Vec<Vec<ImpressionKey>>,
    /// Sheets of a later state that show less wear than one of an earlier state.
    pub contradictions: Vec<WearContradiction>,
}

/// Sheets that show the same stages.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    /// The sheets, in order.
    pub sheets: Vec<ImpressionKey>,
    /// The stage seen at each of the points; `None` where that is not certain.
    pub stages: Vec<Option<ValueAt>>,
    /// How many pulls are known to have come before, one after the other: the length of the longest
    /// chain.
    pub layer: usize,
}

/// Two sheets whose wear contradicts the order of their states.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WearContradiction {
    /// The sheet of the earlier state, which shows more wear.
    pub earlier: ImpressionKey,
    /// The sheet of the later state, which shows less.
    pub later: ImpressionKey,
    /// The point that shows it.
    pub point: Key,
}

/// The orders that wear gives in a design, by matrix in the record's order, then by state.
#[must_use]
pub fn wear(design: &Design) -> Vec<Wear> {
    let mut by_matrix: Vec<(Option<Key>, Vec<&Point>)> = Vec::new();
    for point in &design.points {
        if !matches!(point.kind, PointKind::Stage(_)) || point.rests_on.value != RestsOn::Matrix {
            continue;
        }
        let matrix = matrix_of(design, point);
        match by_matrix.iter_mut().find(|(m, _)| *m == matrix) {
            Some((_, points)) => points.push(point),
            None => by_matrix.push((matrix, vec![point])),
        }
    }
    // A matrix that the design does not list, and points that name none, come last.
    by_matrix.sort_by_key(|(matrix, _)| {
        let mut matrices = design.matrices.iter();
        let listed = matrices.position(|m| Some(&m.key.value) == matrix.as_ref());
        (listed.is_none(), listed)
    });
    by_matrix
        .into_iter()
        .flat_map(|(matrix, points)| {
            let runs = unchanged_runs(design, matrix.as_ref());
            runs.into_iter()
                .filter_map(move |states| of_run(design, matrix.as_ref(), states, &points))
        })
        .collect()
}

/// The matrix that a point rests on: the one it names, or the only one there is.
fn matrix_of(design: &Design, point: &Point) -> Option<Key> {
    let named = point.matrix.as_ref().map(|m| m.value.clone());
    named.or_else(|| match design.matrices.as_slice() {
        [only] => Some(only.key.value.clone()),
        _ => None,
    })
}

/// The states that are not withdrawn, in runs through which a matrix did not change. Where a point does not
/// name its matrix, a change at it counts as a change of every matrix.
fn unchanged_runs(design: &Design, matrix: Option<&Key>) -> Vec<Vec<Key>> {
    let changes_matrix = |point: &Key| {
        design.point(point).is_some_and(|point| {
            let rests_on = matrix_of(design, point);
            !matches!(point.kind, PointKind::Stage(_))
                && (rests_on.is_none() || matrix.is_none() || rests_on.as_ref() == matrix)
        })
    };
    let mut runs: Vec<Vec<Key>> = Vec::new();
    for state in design.standing_states() {
        let key = &state.key.value;
        let mut run = vec![key.clone()];
        for change in changes(design, state) {
            let is_changed = change
                .changed
                .iter()
                .any(|c| c.tells_apart && changes_matrix(&c.point));
            if is_changed {
                continue;
            }
            if let Some(at) = runs.iter().position(|r| r.contains(&change.follows)) {
                let mut joined = runs.remove(at);
                joined.append(&mut run);
                run = joined;
            }
        }
        runs.push(run);
    }
    let place = |key: &Key| design.states.iter().position(|s| s.key.value == *key);
    for run in &mut runs {
        run.sort_by_key(place);
    }
    runs.sort_by_key(|run| run.first().and_then(place));
    runs
}

fn of_run(
    design: &Design,
    matrix: Option<&Key>,
    states: Vec<Key>,
    points: &[&Point],
) -> Option<Wear> {
    let sheets: Vec<ExaminedSheet<'_>> = design
        .impressions
        .values()
        .filter(|i| is_counted(design, i) && is_of(design, i, matrix, &states))
        // A sheet whose state is in doubt does not show in which state a stage was reached.
        .filter(|i| contradiction(design, i).is_none())
        .map(|impression| ExaminedSheet {
            impression,
            stages: points.iter().map(|p| stage(impression, p)).collect(),
        })
        .filter(|sheet| sheet.stages.iter().any(Option::is_some))
        .collect();
    let mut by_stages: BTreeMap<&[Option<ValueAt>], Vec<ImpressionKey>> = BTreeMap::new();
    for sheet in &sheets {
        let pulled = by_stages.entry(&sheet.stages).or_default();
        pulled.push(sheet.impression.key.clone());
    }
    let mut graph: DiGraph<Pull, ()> = DiGraph::new();
    for (stages, sheets) in by_stages {
        graph.add_node(Pull {
            sheets,
            stages: stages.to_vec(),
            layer: 0,
        });
    }
    let nodes: Vec<NodeIndex> = graph.node_indices().collect();
    for a in &nodes {
        for b in &nodes {
            if is_less_worn(&graph[*a], &graph[*b]) {
                graph.add_edge(*a, *b, ());
            }
        }
    }
    let cycles = take_cycles(&mut graph);
    let (pulls, before) = reduced(&graph);
    let wear = Wear {
        matrix: matrix.cloned(),
        points: points.iter().map(|p| p.key.value.clone()).collect(),
        contradictions: contradictions(design, &sheets, points),
        states,
        pulls,
        before,
        cycles,
    };
    let tells =
        !wear.before.is_empty() || !wear.cycles.is_empty() || !wear.contradictions.is_empty();
    tells.then_some(wear)
}

struct ExaminedSheet<'a> {
    impression: &'a Impression,
    stages: Vec<Option<ValueAt>>,
}

/// Whether every state that a sheet can be in, as to this matrix, is one of `states`.
fn is_of(design: &Design, impression: &Impression, matrix: Option<&Key>, states: &[Key]) -> bool {
    let possible = possible_states(design, impression, matrix);
    !possible.is_empty() && possible.iter().all(|state| states.contains(state))
}

fn possible_states(
    design: &Design,
    impression: &Impression,
    matrix: Option<&Key>,
) -> BTreeSet<Key> {
    let Some(identified) = &impression.identified else {
        return design
            .standing_states()
            .map(|s| s.key.value.clone())
            .collect();
    };
    readings(identified)
        .flat_map(|reading| -> Vec<Key> {
            match &reading.state {
                Some(StateReading::ByMatrix(by_matrix)) => by_matrix
                    .iter()
                    .filter(|(m, _)| matrix.is_none_or(|matrix| m.value == *matrix))
                    .map(|(_, state)| state.value.clone())
                    .collect(),
                Some(StateReading::OneOf(named)) if !named.is_empty() => {
                    named.iter().map(|s| s.value.clone()).collect()
                }
                _ => candidates(design)
                    .into_iter()
                    .filter(|c| c.fits(reading))
                    .filter_map(|c| c.state_key().cloned())
                    .collect(),
            }
        })
        .collect()
}

/// The one stage that was seen for certain.
fn stage(impression: &Impression, point: &Point) -> Option<ValueAt> {
    let PointKind::Stage(stages) = &point.kind else {
        return None;
    };
    if !is_printed(impression, point) {
        return None;
    }
    let observation = impression
        .observed
        .iter()
        .find(|o| o.point.value == point.key.value)?;
    let ObservedValue::OneOf(values) = &observation.seen else {
        return None;
    };
    let [one] = values.as_slice() else {
        return None;
    };
    if observation.claim.certainty() != Certainty::Certain {
        return None;
    }
    let seen = one.value.to_string();
    let at = stages.iter().position(|s| s.value.as_str() == seen);
    at.map(ValueAt::new)
}

fn is_less_worn(a: &Pull, b: &Pull) -> bool {
    a.stages
        .iter()
        .zip(&b.stages)
        .any(|(a, b)| matches!((a, b), (Some(a), Some(b)) if a < b))
}

/// Takes the strongly connected sets out of the graph.
fn take_cycles(graph: &mut DiGraph<Pull, ()>) -> Vec<Vec<ImpressionKey>> {
    let connected: Vec<Vec<NodeIndex>> = tarjan_scc(&*graph)
        .into_iter()
        .filter(|set| set.len() > 1)
        .collect();
    let mut cycles: Vec<Vec<ImpressionKey>> = connected
        .iter()
        .map(|set| {
            let sheets = set.iter().flat_map(|node| graph[*node].sheets.clone());
            let mut sheets: Vec<ImpressionKey> = sheets.collect();
            sheets.sort();
            sheets
        })
        .collect();
    cycles.sort();
    let in_cycles: BTreeSet<NodeIndex> = connected.into_iter().flatten().collect();
    graph.retain_nodes(|_, node| !in_cycles.contains(&node));
    cycles
}

/// The pulls by layer, and the transitive reduction of what is before what. The graph has no
/// cycles left.
fn reduced(graph: &DiGraph<Pull, ()>) -> (Indexed<PullAt, Pull>, Vec<(PullAt, PullAt)>) {
    let order = petgraph::algo::toposort(graph, None);
    debug_assert!(order.is_ok(), "the cycles were taken out");
    let order = order.unwrap_or_default();
    let (sorted, _) = dag_to_toposorted_adjacency_list::<_, u32>(graph, &order);
    let (reduction, _) = dag_transitive_reduction_closure(&sorted);
    let mut pulls: Indexed<PullAt, Pull> = order.iter().map(|node| graph[*node].clone()).collect();
    // The sorted list has a node for each of them, in the same order.
    let edges: Vec<(PullAt, PullAt)> = pulls
        .indexes()
        .flat_map(|from| {
            let next = reduction.neighbors(reduction.from_index(from.index()));
            let next = next.map(move |to| (from, PullAt::new(to as usize)));
            next.collect::<Vec<_>>()
        })
        .collect();
    for at in pulls.indexes() {
        let before = edges.iter().filter(|(_, to)| *to == at);
        if let Some(layer) = before.map(|(from, _)| pulls[*from].layer + 1).max() {
            pulls[at].layer = layer;
        }
    }
    let mut by_layer: Vec<PullAt> = pulls.indexes().collect();
    by_layer.sort_by_key(|at| (pulls[*at].layer, pulls[*at].sheets.clone()));
    let mut renumbered = Indexed::filled(&pulls, PullAt::new(0));
    for (new, old) in by_layer.iter().enumerate() {
        renumbered[*old] = PullAt::new(new);
    }
    let edges = edges.into_iter();
    let mut before: Vec<(PullAt, PullAt)> = edges
        .map(|(from, to)| (renumbered[from], renumbered[to]))
        .collect();
    before.sort_unstable();
    let pulls = by_layer.iter().map(|at| pulls[*at].clone()).collect();
    (pulls, before)
}

/// For each sheet, the first sheet of an earlier state that shows more wear.
fn contradictions(
    design: &Design,
    sheets: &[ExaminedSheet<'_>],
    points: &[&Point],
) -> Vec<WearContradiction> {
    let state_of = |sheet: &ExaminedSheet<'_>| {
        let states = possible_states(design, sheet.impression, None);
        let mut states = states.into_iter();
        let only = states.next().filter(|_| states.next().is_none())?;
        design.state(&only)
    };
    let states: Vec<Option<&State>> = sheets.iter().map(state_of).collect();
    let mut found = Vec::new();
    for (later, its_state) in sheets.iter().zip(&states) {
        let Some(its_state) = its_state else { continue };
        let ancestors = ancestors(design, its_state);
        let earlier = sheets.iter().zip(&states).find_map(|(earlier, state)| {
            let is_earlier = state.is_some_and(|s| ancestors.contains(&s.key.value));
            let more_worn = points
                .iter()
                .zip(earlier.stages.iter().zip(&later.stages))
                .find(|(_, stages)| matches!(stages, (Some(a), Some(b)) if a > b));
            let (point, _) = more_worn.filter(|_| is_earlier)?;
            Some((earlier, point.key.value.clone()))
        });
        if let Some((earlier, point)) = earlier {
            found.push(WearContradiction {
                earlier: earlier.impression.key.clone(),
                later: later.impression.key.clone(),
                point,
            });
        }
    }
    found
}

/// Every state that came before another, directly or not; itself left out.
fn ancestors(design: &Design, state: &State) -> BTreeSet<Key> {
    let mut found = BTreeSet::new();
    let mut to_visit = predecessors(design, state);
    while let Some(before) = to_visit.pop() {
        if before.key.value != state.key.value && found.insert(before.key.value.clone()) {
            to_visit.extend(predecessors(design, before));
        }
    }
    found
}
