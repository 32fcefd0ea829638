//! Answers to points: the values that states and printings show, and those observed on sheets.
//!
//! TOML only distinguishes text and numbers. This file checks whether a value can be an answer to its
//! point.

use toml::de::DeValue;

use super::judging::{Named, Points};
use crate::model::certainty::Claim;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::point::{
    Observation, ObservedValue, Point, PointKind, ShownAtPoint, ShownPoints, Value,
};
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::shape::OBSERVED;
use crate::read::table::fields::{Fields, read_table};
use crate::read::values;
use crate::read::values::near::nearest;

/// Reads `shows`.
pub(crate) fn shows(fields: &mut Fields<'_, '_>, points: &Points) -> ShownPoints {
    ShownPoints(fields.map("shows", |faults, header, entry| {
        let place = faults.of(entry.node);
        let point = match points.named(faults, header, entry, "shown") {
            Named::Nothing => return None,
            Named::Unjudged => None,
            Named::Point(point) => Some(point),
        };
        let values = answers(faults, entry.node, point);
        let point = entry.read_key(faults)?;
        (!values.is_empty()).then_some(ShownAtPoint {
            point,
            values,
            place,
        })
    }))
}

/// Reads `observed`.
pub(crate) fn observed(fields: &mut Fields<'_, '_>, points: &Points) -> Vec<Observation> {
    fields.map("observed", |faults, header, entry| {
        let place = faults.of(entry.node);
        let known = match points.named(faults, header, entry, "observed") {
            Named::Nothing => return None,
            Named::Unjudged => None,
            Named::Point(point) => Some(point),
        };
        let (seen, claim) = match entry.node.get_ref() {
            DeValue::Table(table) => read_table(faults, &OBSERVED, table, place, |fields| {
                let seen = seen_in_table(fields, known);
                (seen, fields.claim())
            }),
            _ => (seen(faults, entry.node, known), Claim::default()),
        };
        let point = entry.read_key(faults)?;
        Some(Observation {
            point,
            seen: seen?,
            claim,
            place,
        })
    })
}

fn seen_in_table(fields: &mut Fields<'_, '_>, point: Option<&Point>) -> Option<ObservedValue> {
    let is = fields.one("is", |faults, node| seen(faults, node, point));
    let not = fields.one("not", |faults, node| {
        if let Some(point) = point.filter(|p| matches!(p.kind, PointKind::Measure { .. })) {
            let message = format!(
                "the point `{}` is a measure, which takes no `not`",
                point.key.value
            );
            let finding = Finding::new(Code::ValueType, faults.of(node), message);
            faults.push(finding.help("write what was measured"));
            return None;
        }
        let values = answers(faults, node, point);
        (!values.is_empty()).then_some(ObservedValue::NoneOf(values))
    });
    match (fields.key_place("is"), fields.key_place("not")) {
        (Some(first), Some(second)) => {
            let finding = Finding::new(
                Code::ValueType,
                second,
                "an observation says what was seen or what was not, not both",
            )
            .beside(first, "what was seen")
            .help("keep one of the two");
            fields.faults.push(finding);
        }
        (None, None) => fields.missing(
            &["is", "not"],
            "`is` or `not`",
            "add `is`, what was seen, or `not`, what was certainly not seen",
        ),
        _ => {}
    }
    is.or(not)
}

/// An observation that is written without a table.
fn seen<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    point: Option<&Point>,
) -> Option<ObservedValue> {
    match node.get_ref().as_str() {
        Some("not-visible") => Some(ObservedValue::NotVisible),
        Some("not-applicable") => Some(ObservedValue::NotApplicable),
        _ => {
            let values = answers(faults, node, point);
            (!values.is_empty()).then_some(ObservedValue::OneOf(values))
        }
    }
}

/// The answers that a value gives to a point: one or several.
fn answers<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    point: Option<&Point>,
) -> Vec<Placed<Value>> {
    let list = match node.get_ref() {
        DeValue::Array(list) => list.as_ref(),
        _ => std::slice::from_ref(node),
    };
    if list.is_empty() {
        let message = format!("`{}` is empty", faults.key);
        let place = faults.of(node);
        faults.push(
            Finding::new(Code::ValueEmpty, place, message).help("name a value, or remove the key"),
        );
    }
    if let Some(point) =
        point.filter(|p| list.len() > 1 && matches!(p.kind, PointKind::Measure { .. }))
    {
        let message = format!(
            "the point `{}` is a measure and takes one number",
            point.key.value
        );
        let finding = Finding::new(Code::ValueType, faults.of(node), message);
        faults.push(finding.help(
            "write the one measurement; the point's tolerance says how far others may differ",
        ));
        return Vec::new();
    }
    let parsed = list.iter().filter(|node| !is_unread(node));
    parsed
        .filter_map(|node| answer(faults, node, point))
        .collect()
}

fn answer<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    point: Option<&Point>,
) -> Option<Placed<Value>> {
    let place = faults.of(node);
    let wants = point.map_or("a word in quotes or a number", |point| wants(&point.kind));
    let value = match node.get_ref() {
        DeValue::String(word) => {
            if let Some(point) = point {
                return answer_in_words(faults, node, word, point);
            }
            Value::Word(values::key_from(faults, word, place)?.value)
        }
        DeValue::Integer(_) | DeValue::Float(_) => {
            let number = values::plain_number(node);
            let in_range = number.filter(|n| *n >= 0.0);
            let Some(number) = in_range else {
                let message = format!(
                    "`{}` is not a number that can be counted or measured",
                    faults.written(node)
                );
                faults
                    .push(Finding::new(Code::ValueRange, place, message).help("check the number"));
                return None;
            };
            count(node).map_or(Value::Measure(number), Value::Count)
        }
        _ => {
            faults.wrong_type(node, wants);
            return None;
        }
    };
    match point {
        Some(point) if !point.kind.takes(&value) => {
            let message = format!(
                "the point `{}` is of the kind {} and takes {wants}",
                point.key.value,
                point.kind.word()
            );
            let finding = Finding::new(Code::ValueType, place, message)
                .beside(point.key.place, "the point")
                .help(format!("write {wants}"));
            faults.push(finding);
            None
        }
        _ => Some(Placed::new(value, place)),
    }
}

/// A whole number; `None` for any other value.
fn count(node: &Node<'_>) -> Option<u32> {
    let DeValue::Integer(number) = node.get_ref() else {
        return None;
    };
    u32::from_str_radix(number.as_str(), number.radix()).ok()
}

/// An answer in words to a given point.
fn answer_in_words<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    word: &str,
    point: &Point,
) -> Option<Placed<Value>> {
    let place = faults.of(node);
    let key = &point.key;
    let Some(words) = point.kind.words() else {
        let wants = wants(&point.kind);
        let message = format!(
            "the point `{}` is of the kind {} and takes {wants}",
            key.value,
            point.kind.word()
        );
        let finding = Finding::new(Code::ValueType, place, message).beside(key.place, "the point");
        let finding = match word.trim().parse::<f64>() {
            Ok(_) => finding.help(format!("leave out the quotes: {}", word.trim())),
            Err(_) => finding.help(format!("write {wants}")),
        };
        faults.push(finding);
        return None;
    };
    if words.contains(&word) {
        // Every word of a point has the form of a key.
        return Some(Placed::new(Value::Word(word.parse().ok()?), place));
    }
    let all = words.join(", ");
    let finding = Finding::new(
        Code::PointValueUnknown,
        place,
        format!("the point `{}` has no value \"{word}\"", key.value),
    )
    .beside(key.place, format!("its values are {all}"));
    let help = match nearest(word, words.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None if matches!(point.kind, PointKind::Presence) => format!("write one of {all}"),
        None => format!("write one of {all}, or add the value to the point"),
    };
    faults.push(finding.help(help));
    None
}

/// The form of an answer to a point of this kind, for messages.
fn wants(kind: &PointKind) -> &'static str {
    match kind {
        PointKind::Presence => "\"present\" or \"absent\"",
        PointKind::Choice(_) | PointKind::Stage(_) => "one of its values in quotes",
        PointKind::Count => "a whole number",
        PointKind::Measure { .. } => "a number",
    }
}
