//! Values of points in words: "present", "graded, darker towards the top edge", "204 mm".

use super::enumeration;
use super::matrices;
use crate::model::design::Design;
use crate::model::point::{ObservedValue, Point, PointKind, RestsOn, Value};
use crate::page::setting::book::Here;

/// A value of a point.
pub(crate) fn value(here: &Here<'_>, point: &Point, value: &Value) -> String {
    let words = here.words();
    match (value, &point.kind) {
        (Value::Word(word), PointKind::Presence) => words
            .find(&format!("value-{word}"))
            .unwrap_or(word.as_str())
            .to_owned(),
        (Value::Word(word), PointKind::Choice(values)) => values
            .iter()
            .find(|v| v.key.value == *word)
            .map(|v| v.description.clone())
            .filter(|text| !text.is_empty())
            .unwrap_or_else(|| word.as_str().replace('-', " ")),
        (Value::Word(word), _) => word.as_str().replace('-', " "),
        (number, PointKind::Measure { unit, .. }) => format!("{number} {unit}"),
        (number, _) => number.to_string(),
    }
}

/// Any of several values: "graded or wiped".
pub(crate) fn any_of<'v>(
    here: &Here<'_>,
    point: &Point,
    values: impl IntoIterator<Item = &'v Value>,
) -> String {
    let said: Vec<String> = values.into_iter().map(|v| value(here, point, v)).collect();
    enumeration::either_text(here.words(), &said)
}

/// The answers that a point takes, in a row; empty for a count or a measure.
pub(crate) fn answers(here: &Here<'_>, point: &Point) -> String {
    let words = match &point.kind {
        PointKind::Choice(values) => values.iter().map(|v| v.key.value.clone()).collect(),
        PointKind::Stage(stages) => stages.iter().map(|s| s.value.clone()).collect(),
        PointKind::Presence | PointKind::Count | PointKind::Measure { .. } => Vec::new(),
    };
    let said: Vec<String> = words
        .into_iter()
        .map(|word| value(here, point, &Value::Word(word)))
        .collect();
    said.join("; ")
}

/// An observation in words.
pub(crate) fn seen(here: &Here<'_>, point: &Point, seen: &ObservedValue) -> String {
    let words = here.words();
    match seen {
        ObservedValue::OneOf(values) => any_of(here, point, values.iter().map(|v| &v.value)),
        ObservedValue::NoneOf(values) => {
            let not = words.word("value-not");
            let said: Vec<String> = values
                .iter()
                .map(|v| format!("{not} {}", value(here, point, &v.value)))
                .collect();
            said.join(", ")
        }
        ObservedValue::NotVisible => words.word("value-not-visible").to_owned(),
        ObservedValue::NotApplicable => words.word("value-not-applicable").to_owned(),
    }
}

/// What a point rests on: "key block", "inking"; a stage of wear, which can only advance, is marked as
/// one.
pub(crate) fn rests_on(here: &Here<'_>, design: &Design, point: &Point) -> String {
    let words = here.words();
    let ground = match (&point.matrix, point.rests_on.value) {
        (Some(matrix), RestsOn::Matrix) => matrices::matrix_name(here, design, &matrix.value),
        (None, RestsOn::Matrix) if design.matrices.len() == 1 => design
            .matrices
            .first()
            .map(|m| matrices::matrix_name(here, design, &m.key.value))
            .unwrap_or_default(),
        (_, ground) => words.listed("rests-on", ground).to_owned(),
    };
    match point.kind {
        PointKind::Stage(_) => format!("{ground}, {}", words.word("wear")),
        _ => ground,
    }
}
