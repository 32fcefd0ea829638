//! The information that an answer at a point gives, without a sum over every answer and every class.
//!
//! A class of candidates gives all but a few answers with the same small chance, that of an error: all
//! values but those that it allows, and all numbers but those near its own. So a class is kept as that
//! chance and the answers that differ from it. The time grows with the classes and not with the answers:
//! a measure may have a hundred thousand (`MOST_STEPS`), a count as many as there are candidates.
//!
//! In: a column of the diagnostic table, and how probable each class is. Out: bits. The same sum written
//! out is [`super::next_point::information`]; a test below holds them together.

use super::assumptions::error;
use super::scale::{Allowed, Answer, Scale};
use super::table::PointColumn;
use crate::index::ValueAt;
use keyblock_model::certainty::Certainty;

/// The chance of each answer from one class; all together 1.
struct Chances {
    /// That of every answer not in `at`.
    elsewhere: f64,
    /// The answers that differ, by index, rising.
    at: Vec<(usize, f64)>,
}

/// How far from its own number, in deviations, the answers of a class are weighed. The normal density
/// there is e^-72 of its height, less than the last digit of what errors add.
const NEAR: f64 = 12.0;

/// Bits below this are what rounding leaves where an answer gives no information.
const ROUNDING: f64 = 1e-12;

impl Chances {
    fn of(column: &PointColumn, allowed: Option<&Allowed>) -> Chances {
        let scale = &column.scale;
        let answers = count(scale);
        let differing = differing(scale, allowed);
        let error = error(Certainty::Certain, column.straying);
        let likelihood = |at: usize| scale.likelihood(&answer(scale, at), allowed, error);
        // The first answer that does not differ stands for all of them.
        let mut indexes = differing.iter().copied();
        let other = (0..answers).find(|at| indexes.next() != Some(*at));
        let elsewhere = other.map_or(0.0, likelihood);
        let at: Vec<(usize, f64)> = differing.iter().map(|at| (*at, likelihood(*at))).collect();
        let known: f64 = at.iter().map(|(_, likelihood)| likelihood).sum();
        let total = known + elsewhere * as_number(answers - differing.len());
        // Chances on a scale of words or counts add up to 1 already; densities on a grid do not.
        let share = |likelihood: f64| if total > 0.0 { likelihood / total } else { 0.0 };
        Chances {
            elsewhere: share(elsewhere),
            at: at.iter().map(|(at, l)| (*at, share(*l))).collect(),
        }
    }
}

/// The information, in bits, that an answer at a point gives about the class it comes from: the mutual
/// information of the two, not below 0. `classes`: each class with its probability.
///
/// It is the sum over answers of h(v) - P(v) log2 P(v), where h(v) is the sum over classes of
/// P(c) P(v | c) log2 P(v | c). Where no class differs, all answers add the same.
pub(super) fn expected<'c>(
    column: &PointColumn,
    classes: impl Iterator<Item = (f64, Option<&'c Allowed>)>,
) -> f64 {
    let (mut chance_elsewhere, mut h_elsewhere) = (0.0, 0.0);
    // By answer: by how much its chance and its h differ from those elsewhere, a part for each class.
    let mut parts: Vec<(usize, f64, f64)> = Vec::new();
    for (share, allowed) in classes {
        let chances = Chances::of(column, allowed);
        let elsewhere = chances.elsewhere;
        chance_elsewhere += share * elsewhere;
        h_elsewhere += share * times_log(elsewhere);
        parts.extend(chances.at.iter().map(|(at, chance)| {
            let h = times_log(*chance) - times_log(elsewhere);
            (*at, share * (chance - elsewhere), share * h)
        }));
    }
    parts.sort_by_key(|(at, ..)| *at);
    let differing = parts.chunk_by(|(one, ..), (next, ..)| one == next);
    let (mut bits, mut told) = (0.0, 0);
    for parts in differing {
        let chance: f64 = parts.iter().map(|(_, chance, _)| chance).sum();
        let h: f64 = parts.iter().map(|(.., h)| h).sum();
        bits += h_elsewhere + h - times_log(chance_elsewhere + chance);
        told += 1;
    }
    let others = as_number(count(&column.scale) - told);
    bits += others * (h_elsewhere - times_log(chance_elsewhere));
    if bits < ROUNDING { 0.0 } else { bits }
}

/// How many answers there are: every value, or every step of a measure's grid.
fn count(scale: &Scale) -> usize {
    match scale {
        Scale::Measure(measure) => measure.steps().map_or(0, |steps| steps.count),
        Scale::Words(_) | Scale::Counts(_) => scale.len(),
    }
}

fn answer(scale: &Scale, at: usize) -> Answer {
    match scale {
        Scale::Measure(measure) => {
            Answer::Number(measure.steps().map_or(0.0, |steps| steps.number(at)))
        }
        Scale::Words(_) | Scale::Counts(_) => Answer::OneOf([ValueAt::new(at)].into()),
    }
}

/// The answers whose chance may differ from that of the others, by index, rising.
fn differing(scale: &Scale, allowed: Option<&Allowed>) -> Vec<usize> {
    match (scale, allowed) {
        (Scale::Measure(measure), Some(Allowed::Number(number))) => {
            let Some(steps) = measure.steps() else {
                return Vec::new();
            };
            let reach = NEAR * measure.deviation();
            (steps.at_or_after(number - reach)..steps.at_or_after(number + reach)).collect()
        }
        (_, Some(Allowed::AnyOf(values))) => values.iter().map(|value| value.index()).collect(),
        _ => Vec::new(),
    }
}

/// x log2 x, and 0 at 0.
fn times_log(x: f64) -> f64 {
    if x > 0.0 { x * libm::log2(x) } else { 0.0 }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a point has nowhere near 2^52 answers"
)]
fn as_number(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identification::next_point::information;
    use crate::identification::scale::Measure;
    use crate::index::ClassAt;
    use keyblock_model::point::{EvidenceKind, RestsOn};

    /// The same by a sum over every answer and every class, which rounds a hundred thousand times.
    fn written_out(column: &PointColumn, shares: &[f64]) -> f64 {
        let error = error(Certainty::Certain, column.straying);
        let chances = column.classes.iter().map(|allowed| {
            let answers = (0..count(&column.scale)).map(|at| answer(&column.scale, at));
            let all = answers.map(|a| column.scale.likelihood(&a, allowed.as_ref(), error));
            let all: Vec<f64> = all.collect();
            let total: f64 = all.iter().sum();
            all.iter().map(|l| l / total).collect()
        });
        information(shares, &chances.collect::<Vec<Vec<f64>>>())
    }

    fn check(scale: Scale, classes: Vec<Option<Allowed>>) {
        let column = PointColumn {
            key: "point".parse().unwrap(),
            scale,
            rests_on: RestsOn::Inking,
            evidence: EvidenceKind::Inking,
            is_deciding: false,
            straying: 0.1,
            matrix: None,
            class_of: (0..classes.len()).map(ClassAt::new).collect(),
            classes: classes.into_iter().collect(),
        };
        let weights = (1..=column.classes.len()).map(as_number);
        let total: f64 = weights.clone().sum();
        let shares: Vec<f64> = weights.map(|weight| weight / total).collect();
        let classes = column.classes.iter().map(Option::as_ref);
        let bits = expected(&column, shares.iter().copied().zip(classes));
        let written_out = written_out(&column, &shares);
        assert!(
            (bits - written_out).abs() < 1e-10,
            "{bits}, and written out {written_out}: {column:?}"
        );
    }

    #[test]
    fn the_information_is_that_of_the_sum_written_out() {
        let number = |n: f64| Some(Allowed::Number(n));
        let any = |values: &[usize]| {
            let values = values.iter().copied().map(ValueAt::new);
            Some(Allowed::AnyOf(values.collect()))
        };
        let measure = |tolerance: f64, least: f64, greatest: f64| {
            let span = Some((least - 3.0 * tolerance, greatest + 3.0 * tolerance));
            Scale::Measure(Measure { tolerance, span })
        };
        // Numbers that overlap, a class of which nothing is known, and steps wider than the tolerance.
        let numbers = || {
            vec![
                number(10.0),
                number(10.7),
                None,
                number(90.0),
                number(310.25),
            ]
        };
        check(measure(0.5, 10.0, 310.25), numbers());
        check(measure(40.0, 10.0, 310.25), numbers());
        check(measure(0.001, 10.0, 310.25), numbers());
        check(measure(1.0, 10.0, 10.0), vec![number(10.0), None]);
        check(
            Scale::Measure(Measure {
                tolerance: 1.0,
                span: None,
            }),
            vec![None],
        );
        let counts = Scale::Counts((0..30).collect());
        let all: Vec<usize> = (0..31).collect();
        let some = vec![
            any(&[0]),
            any(&[0, 1, 30]),
            None,
            any(&[7, 8, 9]),
            any(&all),
        ];
        check(counts, some);
        check(Scale::Counts(Vec::new()), vec![None, any(&[0])]);
    }
}
