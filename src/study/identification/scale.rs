//! Scales: the values that a point can take, and the likelihood of an observation for a candidate.
//!
//! A choice, a presence and a stage take the values of their record, in its order; a count takes every count that
//! states and printings show, rising, and *other*, for which any other count is read; a measure takes any number.
//!
//! In: a point, and the counts or measures recorded at it. Out: a [`Scale`], on which an
//! [`Answer`] is weighed against an [`Allowed`].
//! Definitions: `docs/definitions.md, "Values"`, `"Likelihood"` and `"For and against"`.
//! Not here: which values a candidate allows (`table`).
//!
//! The likelihood of an "even" sky, seen where the printing shows it graded or wiped, at a chance of error of 0.3:
//! 0.7 · 0/2 + 0.3 · 1/1; where nothing is known, one value in three. However great the error, what was seen is no
//! likelier than where nothing is known.
//! ```
//! # use keyblock::study::index::ValueAt;
//! # use keyblock::study::scale::{Allowed, Answer, Scale};
//! let words = ["even", "graded", "wiped"].map(|word| word.parse().unwrap());
//! let sky = Scale::Words(words.to_vec());
//! let even = Answer::OneOf([ValueAt::new(0)].into());
//! let graded_or_wiped = Allowed::AnyOf([1, 2].map(ValueAt::new).into());
//! assert_eq!(sky.likelihood(&even, Some(&graded_or_wiped), 0.3), 0.3);
//! assert_eq!(sky.likelihood(&even, None, 0.3), 1.0 / 3.0);
//! assert_eq!(sky.likelihood(&even, Some(&graded_or_wiped), 0.6), 1.0 / 3.0);
//! ```

use std::collections::BTreeSet;
use std::f64::consts::PI;

use super::allowed::ROUNDING;
use crate::index::ValueAt;
use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::point::{ObservedValue, Point, PointKind, ShownPoints, Value};

/// The values a point can take.
#[derive(Clone, Debug, PartialEq)]
pub enum Scale {
    /// The words of a presence, a choice or a stage, in the point's order.
    Words(Vec<Key>),
    /// The counts that states and printings show, rising; the index after the last means any other count.
    Counts(Vec<u32>),
    /// A measured number.
    Measure(Measure),
}

/// The scale of a measure, in the point's unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// How far two measurements of one thing may lie apart; above 0.
    pub tolerance: f64,
    /// From three tolerances below the least number that states and printings show to three above
    /// the greatest; `None` where they show none.
    pub span: Option<(f64, f64)>,
}

/// A set of values on a scale of words or counts, in the scale's order.
pub type ValueSet = BTreeSet<ValueAt>;

/// The values that a candidate allows at a point.
#[derive(Clone, Debug, PartialEq)]
pub enum Allowed {
    /// Any of these values; at least one.
    AnyOf(ValueSet),
    /// One number.
    Number(f64),
}

/// An observed answer at a point, on its scale.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// One of these values; at least one.
    OneOf(ValueSet),
    /// This number.
    Number(f64),
    /// Trimmed, mounted or framed there: no information.
    NotVisible,
    /// Of a block that was not printed, or a question that makes no sense for this sheet: no information.
    NotApplicable,
}

impl Answer {
    /// Whether it gives information.
    #[must_use]
    pub fn is_telling(&self) -> bool {
        matches!(self, Answer::OneOf(_) | Answer::Number(_))
    }
}

impl Scale {
    /// The scale of a point of `design`.
    #[must_use]
    pub fn of(design: &Design, point: &Point) -> Scale {
        let shown = || {
            let states = design.states.iter().map(|s| &s.shows);
            states.chain(design.printings.iter().map(|p| &p.shows))
        };
        match &point.kind {
            PointKind::Presence => Scale::Words(
                point
                    .kind
                    .words()
                    .into_iter()
                    .flatten()
                    .filter_map(|word| word.parse().ok())
                    .collect(),
            ),
            PointKind::Choice(values) => {
                Scale::Words(values.iter().map(|v| v.key.value.clone()).collect())
            }
            PointKind::Stage(stages) => {
                Scale::Words(stages.iter().map(|s| s.value.clone()).collect())
            }
            PointKind::Count => Scale::Counts(counts(point, shown())),
            PointKind::Measure { tolerance, .. } => {
                let numbers = shown().flat_map(|shows| numbers_at(shows, point));
                let span = numbers.fold(None, |span: Option<(f64, f64)>, n| {
                    let (least, greatest) = span.unwrap_or((n, n));
                    Some((least.min(n), greatest.max(n)))
                });
                Scale::Measure(Measure {
                    tolerance: *tolerance,
                    span: span.map(|(least, greatest)| {
                        (least - 3.0 * tolerance, greatest + 3.0 * tolerance)
                    }),
                })
            }
        }
    }

    /// How many values there are, *other* among them; 0 for a measure.
    #[must_use]
    pub fn len(&self) -> usize {
        match self {
            Scale::Words(words) => words.len(),
            Scale::Counts(counts) => counts.len() + 1,
            Scale::Measure(_) => 0,
        }
    }

    /// Whether there are no values to list, as on the scale of a measure.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The indexes of the values, in order, that of *other* among them; none for a measure.
    pub fn values(&self) -> impl Iterator<Item = ValueAt> + use<> {
        (0..self.len()).map(ValueAt::new)
    }

    /// The index of a value; any count that is not recorded is *other*. `None` for a word that the
    /// point does not take, and on the scale of a measure.
    #[must_use]
    pub fn index_of(&self, value: &Value) -> Option<ValueAt> {
        let at = match (self, value) {
            (Scale::Words(words), Value::Word(word)) => words.iter().position(|w| w == word)?,
            (Scale::Counts(counts), Value::Count(n)) => {
                counts.binary_search(n).unwrap_or(counts.len())
            }
            _ => return None,
        };
        Some(ValueAt::new(at))
    }

    /// The index of *other* on a scale of counts; `None` on any other scale.
    #[must_use]
    pub fn other(&self) -> Option<ValueAt> {
        match self {
            Scale::Counts(counts) => Some(ValueAt::new(counts.len())),
            Scale::Words(_) | Scale::Measure(_) => None,
        }
    }

    /// The value at an index of this scale; `None` for *other*.
    #[must_use]
    pub fn value(&self, at: ValueAt) -> Option<Value> {
        debug_assert!(at.index() < self.len(), "{at:?} is of another scale");
        match self {
            Scale::Words(words) => words.get(at.index()).cloned().map(Value::Word),
            Scale::Counts(counts) => counts.get(at.index()).copied().map(Value::Count),
            Scale::Measure(_) => None,
        }
    }

    /// The values that are not among `values`.
    #[must_use]
    pub fn all_but(&self, values: &ValueSet) -> ValueSet {
        self.values().filter(|at| !values.contains(at)).collect()
    }

    /// An observation as an answer on this scale; `None` where it leaves no value, which is an error of the
    /// record.
    #[must_use]
    pub fn answer(&self, seen: &ObservedValue) -> Option<Answer> {
        let (values, is_complement) = match seen {
            ObservedValue::NotVisible => return Some(Answer::NotVisible),
            ObservedValue::NotApplicable => return Some(Answer::NotApplicable),
            ObservedValue::OneOf(values) => (values, false),
            ObservedValue::NoneOf(values) => (values, true),
        };
        if let Scale::Measure(_) = self {
            let number = values.first().and_then(|v| v.value.number());
            return number.filter(|_| !is_complement).map(Answer::Number);
        }
        let named = values.iter().filter_map(|v| self.index_of(&v.value));
        let named: ValueSet = named.collect();
        let seen = if is_complement {
            self.all_but(&named)
        } else {
            named
        };
        (!seen.is_empty()).then_some(Answer::OneOf(seen))
    }

    /// The allowed values, on this scale, of those that state and printing share; `None` where they share
    /// none, which is an error of the record: then the values are not known.
    #[must_use]
    pub(super) fn allowed(&self, values: &[&Value]) -> Option<Allowed> {
        if let Scale::Measure(_) = self {
            return values.first()?.number().map(Allowed::Number);
        }
        let allowed: ValueSet = values.iter().filter_map(|v| self.index_of(v)).collect();
        (!allowed.is_empty()).then_some(Allowed::AnyOf(allowed))
    }

    /// Whether an answer is against a candidate that allows `allowed`: they share no value (a measure: they
    /// lie more than two tolerances apart). What gives no information is against nothing.
    #[must_use]
    pub fn is_against(&self, answer: &Answer, allowed: &Allowed) -> bool {
        match (self, answer, allowed) {
            (_, Answer::NotVisible | Answer::NotApplicable, _) => false,
            (Scale::Measure(measure), Answer::Number(x), Allowed::Number(v)) => {
                measure.is_apart(*x, *v)
            }
            (_, Answer::OneOf(seen), Allowed::AnyOf(allowed)) => seen.is_disjoint(allowed),
            _ => {
                debug_assert!(false, "{answer:?} and {allowed:?} are of different scales");
                false
            }
        }
    }

    /// Whether two candidates that allow `one` and `other` are told apart: they share no value (a
    /// measure: they lie more than two tolerances apart, so that no number fits both).
    #[must_use]
    pub fn tells_apart(&self, one: &Allowed, other: &Allowed) -> bool {
        match (self, one, other) {
            (Scale::Measure(measure), Allowed::Number(a), Allowed::Number(b)) => {
                measure.is_apart(*a, *b)
            }
            (_, Allowed::AnyOf(a), Allowed::AnyOf(b)) => a.is_disjoint(b),
            _ => {
                debug_assert!(false, "{one:?} and {other:?} are of different scales");
                false
            }
        }
    }

    /// How likely `answer` is for a candidate that allows `allowed` (`None`: not known), where what is
    /// seen departs from what is recorded with the chance `error`. A probability on a scale of words or
    /// counts, a density in 1/unit on that of a measure; 1 for an answer that gives no information.
    ///
    /// Method: `docs/definitions.md, "Likelihood"`.
    #[must_use]
    pub fn likelihood(&self, answer: &Answer, allowed: Option<&Allowed>, error: f64) -> f64 {
        match (self, answer) {
            (_, Answer::NotVisible | Answer::NotApplicable) => 1.0,
            (Scale::Measure(measure), Answer::Number(x)) => {
                let v = match allowed {
                    Some(Allowed::Number(v)) => Some(*v),
                    _ => None,
                };
                measure.density(*x, v, error)
            }
            (_, Answer::OneOf(seen)) => {
                let Some(Allowed::AnyOf(allowed)) = allowed else {
                    return ratio(seen.len(), self.len());
                };
                let right = ratio(seen.intersection(allowed).count(), allowed.len());
                let others = self.len() - allowed.len();
                if others == 0 {
                    return right;
                }
                // An observation may come to give no information, but never the contrary.
                let error = error.min(ratio(others, self.len()));
                let wrong = ratio(seen.difference(allowed).count(), others);
                (1.0 - error) * right + error * wrong
            }
            _ => {
                debug_assert!(false, "{answer:?} is of another scale");
                1.0
            }
        }
    }
}

impl Measure {
    /// Whether two numbers lie more than two tolerances apart, so that no number fits both.
    fn is_apart(self, a: f64, b: f64) -> bool {
        (a - b).abs() > 2.0 * self.tolerance + ROUNDING
    }

    /// The density of a measured `x` where the candidate shows `v` (`None`: not known): normal
    /// about `v` with half the tolerance as its deviation, mixed with a uniform share of errors.
    /// `x` is taken to the nearer end of the span where it lies outside.
    fn density(self, x: f64, v: Option<f64>, error: f64) -> f64 {
        let Some((low, high)) = self.span else {
            // No state or printing shows a number: all candidates are equally likely.
            return 1.0;
        };
        let uniform = 1.0 / (high - low);
        let Some(v) = v else { return uniform };
        let deviation = self.deviation();
        let away = (x.clamp(low, high) - v) / deviation;
        let normal = libm::exp(-0.5 * away * away) / (deviation * (2.0 * PI).sqrt());
        (1.0 - error) * normal + error * uniform
    }

    /// The standard deviation of a measurement: half the tolerance.
    pub(super) fn deviation(self) -> f64 {
        self.tolerance / 2.0
    }

    /// The numbers a measurement may give, when the next point is chosen: from end to end of the span
    /// in steps of half the tolerance. Empty where no number is shown.
    ///
    /// Where the tolerance is so small for its span that there would be more than [`MOST_STEPS`] steps,
    /// the steps are made wider.
    #[must_use]
    pub fn grid(self) -> Vec<f64> {
        let steps = self.steps().into_iter();
        steps
            .flat_map(|steps| (0..steps.count).map(move |at| steps.number(at)))
            .collect()
    }

    /// The same numbers, not listed; `None` where no number is shown.
    pub(super) fn steps(self) -> Option<Steps> {
        let (low, high) = self.span?;
        let step = self.tolerance / 2.0;
        // A billionth of a step absorbs the rounding of the division.
        let steps = ((high - low) / step + 1e-9).floor();
        let (step, steps) = if steps > MOST_STEPS {
            ((high - low) / MOST_STEPS, MOST_STEPS)
        } else {
            (step, steps)
        };
        let count = whole(steps) + 1;
        Some(Steps { low, step, count })
    }
}

/// Numbers at equal steps.
#[derive(Clone, Copy, Debug)]
pub(super) struct Steps {
    low: f64,
    step: f64,
    /// How many numbers there are; at least one.
    pub count: usize,
}

impl Steps {
    /// The number at an index.
    #[allow(clippy::cast_precision_loss, reason = "an index is at most MOST_STEPS")]
    pub(super) fn number(self, at: usize) -> f64 {
        self.low + at as f64 * self.step
    }

    /// The index of the first number not below `number`; `count` where there is none.
    pub(super) fn at_or_after(self, number: f64) -> usize {
        whole(((number - self.low) / self.step).ceil()).min(self.count)
    }
}

/// A whole number of steps as an index; 0 for what is below.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "`as` takes what is below 0 to 0, and callers bound what is above"
)]
fn whole(steps: f64) -> usize {
    steps as usize
}

/// The most steps of a measure's grid; a metre measured to a tenth of a millimetre has 20 000.
pub const MOST_STEPS: f64 = 100_000.0;

#[allow(
    clippy::cast_precision_loss,
    reason = "a point has nowhere near 2^52 values"
)]
fn ratio(part: usize, whole: usize) -> f64 {
    debug_assert!(
        whole > 0,
        "what is allowed and what a scale lists is never empty"
    );
    part as f64 / whole as f64
}

/// Every count that states and printings show at a point; rising.
fn counts<'a>(point: &Point, shown: impl Iterator<Item = &'a ShownPoints>) -> Vec<u32> {
    let counts: BTreeSet<u32> = shown
        .filter_map(|shows| shows.at(&point.key.value))
        .flat_map(|shown| &shown.values)
        .filter_map(|placed| match placed.value {
            Value::Count(n) => Some(n),
            Value::Word(_) | Value::Measure(_) => None,
        })
        .collect();
    counts.into_iter().collect()
}

fn numbers_at(shows: &ShownPoints, point: &Point) -> Vec<f64> {
    let shown = shows.at(&point.key.value).map(|s| s.values.as_slice());
    shown
        .unwrap_or_default()
        .iter()
        .filter_map(|placed| placed.value.number())
        .collect()
}
