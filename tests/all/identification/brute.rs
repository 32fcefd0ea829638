//! Weights, reasons and next points of made-up designs, computed one candidate at a time from the text of
//! docs/definitions.md, and compared with what the library finds.

use std::f64::consts::PI;

use keyblock::model::certainty::Certainty;
use keyblock::study::identify::{Observed, identify};
use keyblock::study::index::{CandidateAt, PointAt, ValueAt};
use keyblock::study::next_point::next_points;
use keyblock::study::scale::Answer;
use keyblock::study::table::AxisRow;

use super::made_up::{Lehmer, MadeCandidate, MadePoint, MadeUp};
use super::{assert_near, table};

/// What was seen at a point: values, or one number.
#[derive(Clone)]
enum Seen {
    Values(Vec<usize>),
    Number(f64),
}

fn rate(certainty: Certainty) -> f64 {
    match certainty {
        Certainty::Certain => 0.01,
        Certainty::Probable => 0.1,
        Certainty::Possible => 0.3,
    }
}

fn decides(point: &MadePoint) -> bool {
    point.decides || (point.is_matrix() && !point.is_stage && point.strays.is_none())
}

fn straying(point: &MadePoint) -> f64 {
    if decides(point) {
        return 0.0;
    }
    point.strays.unwrap_or(match point.rests_on {
        "inking" => 0.10,
        "mark" => 0.20,
        _ => 0.05,
    })
}

fn count(of: impl Iterator) -> f64 {
    f64::from(u32::try_from(of.count()).unwrap())
}

/// The likelihood of what was seen for a candidate, by the definition.
fn likelihood(
    design: &MadeUp,
    candidate: MadeCandidate,
    at: usize,
    seen: &Seen,
    certainty: Certainty,
) -> f64 {
    let point = &design.points[at];
    let error = 1.0 - (1.0 - rate(certainty)) * (1.0 - straying(point));
    let allowed = design.allows(candidate, at);
    match seen {
        Seen::Number(x) => {
            let tolerance = point.tolerance.unwrap();
            let of_states = design.states.iter().filter_map(|shown| shown[at].as_ref());
            let of_printings = design.printings.iter().filter_map(|p| p.shows[at].as_ref());
            let shown: Vec<f64> = of_states.chain(of_printings).map(|v| number(v)).collect();
            if shown.is_empty() {
                return 1.0;
            }
            let low = shown.iter().copied().fold(f64::MAX, f64::min) - 3.0 * tolerance;
            let high = shown.iter().copied().fold(f64::MIN, f64::max) + 3.0 * tolerance;
            let uniform = 1.0 / (high - low);
            let Some(allowed) = allowed else {
                return uniform;
            };
            let deviation = tolerance / 2.0;
            let away = (x.max(low).min(high) - number(allowed)) / deviation;
            let normal = (-0.5 * away * away).exp() / (deviation * (2.0 * PI).sqrt());
            (1.0 - error) * normal + error * uniform
        }
        Seen::Values(seen) => {
            let all = count(0..point.values);
            let Some(allowed) = allowed else {
                return count(seen.iter()) / all;
            };
            let within = count(seen.iter().filter(|v| allowed.contains(v)));
            let without = count(seen.iter().filter(|v| !allowed.contains(v)));
            let others = all - count(allowed.iter());
            if others == 0.0 {
                return within / count(allowed.iter());
            }
            let error = error.min(others / all);
            (1.0 - error) * within / count(allowed.iter()) + error * without / others
        }
    }
}

fn number(values: &[usize]) -> f64 {
    f64::from(u32::try_from(values[0]).unwrap())
}

fn is_against(design: &MadeUp, candidate: MadeCandidate, at: usize, seen: &Seen) -> bool {
    let Some(allowed) = design.allows(candidate, at) else {
        return false;
    };
    match seen {
        Seen::Number(x) => {
            (x - number(allowed)).abs() > 2.0 * design.points[at].tolerance.unwrap() + 1e-6
        }
        Seen::Values(seen) => seen.iter().all(|v| !allowed.contains(v)),
    }
}

/// What is found for one candidate: its product, and the points that exclude it, against it and for it.
struct Found {
    product: f64,
    excluded_by: Vec<usize>,
    against: Vec<usize>,
    in_favour: Vec<usize>,
}

fn found(design: &MadeUp, seen: &[(usize, Seen, Certainty)]) -> Vec<Found> {
    let candidates = design.candidates();
    let of_candidate = |candidate: &MadeCandidate| {
        let of = |seen: &(usize, Seen, Certainty)| {
            likelihood(design, *candidate, seen.0, &seen.1, seen.2)
        };
        let against =
            |(at, seen, _): &&(usize, Seen, Certainty)| is_against(design, *candidate, *at, seen);
        let mut sorted = seen.to_vec();
        sorted.sort_by_key(|(at, ..)| *at);
        let speaks_for = |one: &&(usize, Seen, Certainty)| {
            design.allows(*candidate, one.0).is_some()
                && !against(one)
                && candidates
                    .iter()
                    .any(|other| is_against(design, *other, one.0, &one.1))
        };
        let points = |of: Vec<&(usize, Seen, Certainty)>| of.iter().map(|(at, ..)| *at).collect();
        Found {
            product: sorted.iter().map(of).product(),
            excluded_by: points(
                sorted
                    .iter()
                    .filter(against)
                    .filter(|(at, _, c)| decides(&design.points[*at]) && *c == Certainty::Certain)
                    .collect(),
            ),
            against: points(sorted.iter().filter(against).collect()),
            in_favour: points(sorted.iter().filter(speaks_for).collect()),
        }
    };
    candidates.iter().map(of_candidate).collect()
}

/// Entropy in bits.
fn entropy(shares: &[f64]) -> f64 {
    let total: f64 = shares.iter().sum();
    let shares = shares
        .iter()
        .map(|share| share / total)
        .filter(|share| *share > 0.0);
    shares.map(|share| -share * share.log2()).sum()
}

/// H(p) − Σv P(v) H(p | v), for a point of values.
fn bits(design: &MadeUp, weights: &[f64], at: usize) -> f64 {
    let candidates = design.candidates();
    let mut expected = entropy(weights);
    for value in 0..design.points[at].values {
        let seen = Seen::Values(vec![value]);
        let joint: Vec<f64> = candidates
            .iter()
            .zip(weights)
            .map(|(c, weight)| weight * likelihood(design, *c, at, &seen, Certainty::Certain))
            .collect();
        let chance: f64 = joint.iter().sum();
        if chance > 0.0 {
            expected -= chance * entropy(&joint);
        }
    }
    expected
}

fn random(design: &MadeUp, numbers: &mut Lehmer) -> Vec<(usize, Seen, Certainty)> {
    let mut seen: Vec<(usize, Seen, Certainty)> = Vec::new();
    for at in 0..design.points.len() {
        if numbers.below(2) == 0 {
            continue;
        }
        let certainty =
            [Certainty::Certain, Certainty::Probable, Certainty::Possible][numbers.below(3)];
        let point = &design.points[at];
        let what = if point.tolerance.is_some() {
            let tenths = u32::try_from(920 + numbers.below(260)).unwrap();
            Seen::Number(f64::from(tenths) / 10.0)
        } else {
            let mut values = vec![numbers.below(point.values), numbers.below(point.values)];
            values.sort_unstable();
            values.dedup();
            Seen::Values(values)
        };
        seen.push((at, what, certainty));
    }
    seen
}

fn observed(seen: &[(usize, Seen, Certainty)]) -> Vec<Observed> {
    let observed = seen.iter().rev().map(|(at, seen, certainty)| Observed {
        point: PointAt::new(*at),
        answer: match seen {
            Seen::Values(values) => {
                Answer::OneOf(values.iter().map(|v| ValueAt::new(*v)).collect())
            }
            Seen::Number(x) => Answer::Number(*x),
        },
        certainty: *certainty,
    });
    observed.collect()
}

#[test]
fn an_identification_is_what_the_definitions_give() {
    let mut numbers = Lehmer(31);
    let (mut excluded, mut without_state, mut weighed_only) = (0, 0, 0);
    for _ in 0..300 {
        let design = MadeUp::new(&mut numbers);
        let table = table(&[&design.record()]);
        let made = design.candidates();
        assert_eq!(table.candidates.len(), made.len(), "{}", design.record());
        for (row, (state, printing)) in table.candidates.iter().zip(&made) {
            let name = |letter: &str, at: &Option<usize>| at.map(|at| format!("{letter}{at}"));
            assert_eq!(
                row.state.as_ref().map(ToString::to_string),
                name("s", state)
            );
            assert_eq!(
                row.printing.as_ref().map(ToString::to_string),
                name("r", printing)
            );
            without_state += usize::from(state.is_none());
        }
        for _ in 0..3 {
            let seen = random(&design, &mut numbers);
            let identified = identify(&table, &observed(&seen));
            let found = found(&design, &seen);
            let is_left = |f: &&Found| f.excluded_by.is_empty();
            let total: f64 = found.iter().filter(is_left).map(|f| f.product).sum();
            let weight = |f: &Found| if is_left(&f) { f.product / total } else { 0.0 };
            let weights: Vec<f64> = found.iter().map(weight).collect();
            for (ours, found) in identified.candidates.iter().zip(&found) {
                let places = |points: &[PointAt]| -> Vec<usize> {
                    points.iter().map(|at| at.index()).collect()
                };
                assert_near(ours.weight, weight(found));
                assert_eq!(
                    places(&ours.excluded_by),
                    found.excluded_by,
                    "{}",
                    design.record()
                );
                assert_eq!(places(&ours.against), found.against);
                assert_eq!(places(&ours.in_favour), found.in_favour);
                excluded += usize::from(ours.is_excluded());
                weighed_only += usize::from(!ours.is_excluded() && !ours.against.is_empty());
            }
            rows_are_those_of_their_candidates(&table.states, &identified, &weights, &found);
            rows_are_those_of_their_candidates(&table.printings, &identified, &weights, &found);
            let next = next_points(&table, &identified, &observed(&seen));
            if total == 0.0 {
                assert!(next.is_empty());
                continue;
            }
            assert_eq!(next.len(), design.points.len() - seen.len());
            for next in next {
                if design.points[next.point.index()].tolerance.is_none() {
                    assert_near(
                        next.bits,
                        bits(&design, &weights, next.point.index()).max(0.0),
                    );
                }
            }
        }
    }
    assert!(
        excluded > 80 && weighed_only > 100 && without_state > 50,
        "{excluded} excluded, {weighed_only} only weighed, {without_state} without a state"
    );
}

/// The weight of a row is the largest of its candidates'; it is excluded where all of them are.
fn rows_are_those_of_their_candidates(
    rows: &[AxisRow],
    identified: &keyblock::study::identify::Identified,
    weights: &[f64],
    found: &[Found],
) {
    let mut all: Vec<CandidateAt> = Vec::new();
    for row in rows {
        let largest = row.candidates.iter().map(|at| weights[at.index()]);
        assert_near(identified.weight_of(row), largest.fold(0.0, f64::max));
        let mut candidates = row.candidates.iter();
        let excluded = candidates.all(|at| !found[at.index()].excluded_by.is_empty());
        assert_eq!(identified.is_excluded(row), excluded);
        all.extend(&row.candidates);
    }
    all.sort_unstable();
    assert_eq!(all.len(), weights.len());
}
