//! The values that a state, a printing or a sheet may show at a point, and comparisons of two such sets.
//!
//! In: points and recorded values. Out: the values that are shown, shared, ruled out or told apart. A
//! candidate allows the intersection of the values that its state and its printing show. Where a record
//! gives no value, the value is not known, and an unknown value contradicts nothing.
//! Definitions: `docs/definitions.md, "What a candidate allows"` and `"Values"`.
//!
//! ```
//! # use keyblock::model::point::Value::Count;
//! # use keyblock::study::allowed::both;
//! let (two, three) = (Count(2), Count(3));
//! // The state shows two or three lamps, the printing three; where a record is silent, the other counts.
//! assert_eq!(both(Some(vec![&two, &three]), Some(vec![&three])), Some(vec![&three]));
//! assert_eq!(both(Some(vec![&two]), None), Some(vec![&two]));
//! ```

use keyblock_model::place::Placed;
use keyblock_model::point::{ObservedValue, Point, PointKind, Value};
use keyblock_model::point::{ShownAtPoint, ShownPoints};

/// A millionth of a point's unit, which absorbs the rounding of decimal fractions: 212 - 210.1 must
/// not exceed a tolerance of 1.9.
pub(super) const ROUNDING: f64 = 1e-6;

/// Whether two values are one and the same. A measure may be written as a whole number, so numbers
/// are compared as numbers.
#[must_use]
pub(crate) fn is_same_value(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Word(a), Value::Word(b)) => a == b,
        _ => match (a.number(), b.number()) {
            (Some(a), Some(b)) => a.total_cmp(&b).is_eq(),
            _ => false,
        },
    }
}

/// The values shown at a point; `None` where none is recorded.
#[must_use]
pub fn shown_values<'a>(shows: &'a ShownPoints, point: &Point) -> Option<Vec<&'a Value>> {
    shows.at(&point.key.value).map(values_of)
}

fn values_of(shown: &ShownAtPoint) -> Vec<&Value> {
    shown.values.iter().map(|v| &v.value).collect()
}

/// The values that both allow, in the order of the first; a side without values allows every value.
/// `None` where neither has values; empty where they contradict each other.
#[must_use]
pub fn both<'a>(
    one: Option<Vec<&'a Value>>,
    other: Option<Vec<&'a Value>>,
) -> Option<Vec<&'a Value>> {
    match (one, other) {
        (Some(one), Some(other)) => Some(
            one.into_iter()
                .filter(|a| other.iter().any(|b| is_same_value(a, b)))
                .collect(),
        ),
        (one, other) => one.or(other),
    }
}

/// Whether what was seen at `point` is against every one of the `allowed` values (of which there is
/// at least one). What could not be seen is against nothing.
///
/// A measure is against a value more than two tolerances away (|x - v| > 2t), so that the two cannot be
/// measurements of one thing.
#[must_use]
pub fn is_against(point: &Point, seen: &ObservedValue, allowed: &[&Value]) -> bool {
    let differ = |values: &[Placed<Value>], allowed: &Value| {
        values
            .iter()
            .all(|v| is_told_apart(point, &[&v.value], &[allowed]))
    };
    match seen {
        ObservedValue::NotVisible | ObservedValue::NotApplicable => false,
        ObservedValue::OneOf(values) => allowed.iter().all(|a| differ(values, a)),
        ObservedValue::NoneOf(values) => allowed.iter().all(|a| !differ(values, a)),
    }
}

fn agrees(point: &Point, seen: &Value, allowed: &Value) -> bool {
    match (&point.kind, seen.number(), allowed.number()) {
        (PointKind::Measure { tolerance, .. }, Some(seen), Some(allowed)) => {
            (seen - allowed).abs() <= tolerance + ROUNDING
        }
        _ => is_same_value(seen, allowed),
    }
}

/// Whether two sets of allowed values can be told apart at `point`: they share no value (measure:
/// every two lie more than two tolerances apart, so that no measurement fits both).
#[must_use]
pub fn is_told_apart(point: &Point, one: &[&Value], other: &[&Value]) -> bool {
    let is_shared = |a: &Value, b: &Value| match (&point.kind, a.number(), b.number()) {
        (PointKind::Measure { tolerance, .. }, Some(a), Some(b)) => {
            (a - b).abs() <= 2.0 * tolerance + ROUNDING
        }
        _ => is_same_value(a, b),
    };
    !one.iter().any(|a| other.iter().any(|b| is_shared(a, b)))
}

/// Whether what was seen at `point` on two sheets cannot be one and the same: they share no value
/// (measure: every two lie more than the tolerance apart).
#[must_use]
pub fn is_seen_to_differ(point: &Point, one: &[&Value], other: &[&Value]) -> bool {
    !one.iter()
        .any(|a| other.iter().any(|b| agrees(point, a, b)))
}

/// Whether two sets of values are the same, in whatever order.
#[must_use]
pub fn is_same_set(one: &[&Value], other: &[&Value]) -> bool {
    let within = |inner: &[&Value], outer: &[&Value]| {
        inner
            .iter()
            .all(|a| outer.iter().any(|b| is_same_value(a, b)))
    };
    within(one, other) && within(other, one)
}
