//! Parses the values of `--see`: `moon=present`, `lamps=2,3`, `sky!=even,wiped`, `image-height=211.5`, each
//! with `:probable` or `:possible`.
//!
//! In: those values, and the points of a design. Out: observations, or every fault in the values.

use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::point::{Point, PointKind, Value};
use crate::model::words::ClosedList;
use crate::read::near::nearest;
use crate::study::identify::Observed;
use crate::study::index::ValueAt;
use crate::study::scale::{Answer, Scale, ValueSet};
use crate::study::table::{DiagnosticTable, PointColumn};

/// The word for any count that is not recorded.
pub(super) const OTHER: &str = "other";

/// What is wrong with a value or an answer, and what to do.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Fault {
    pub(super) message: String,
    pub(super) help: String,
}

impl Fault {
    fn new(message: impl Into<String>, help: impl Into<String>) -> Fault {
        Fault {
            message: message.into(),
            help: help.into(),
        }
    }
}

/// The observations that the values of `--see` state.
///
/// # Errors
/// Every fault: values that are no observation, points and values that the design does not have, a
/// point given twice, several values or `!=` on a measure, an answer that leaves no value.
pub(super) fn observations(
    design: &Design,
    table: &DiagnosticTable,
    arguments: &[String],
) -> Result<Vec<Observed>, Vec<Fault>> {
    let mut observed: Vec<Observed> = Vec::new();
    let mut faults = Vec::new();
    for words in arguments {
        match observation(design, table, words) {
            Ok(new) if observed.iter().any(|o| o.point == new.point) => {
                let point = table.points.get(new.point).map(|p| p.key.to_string());
                faults.push(Fault::new(
                    format!("`{}` is given twice", point.unwrap_or_default()),
                    "say once what was seen there; several values are joined by commas",
                ));
            }
            Ok(new) => observed.push(new),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() {
        Ok(observed)
    } else {
        Err(faults)
    }
}

fn observation(design: &Design, table: &DiagnosticTable, words: &str) -> Result<Observed, Fault> {
    let Some((name, seen)) = words.split_once('=') else {
        return Err(Fault::new(
            format!("`{words}` says of no point what was seen"),
            "write POINT=VALUE, such as `moon=present`",
        ));
    };
    let (name, is_complement) = match name.strip_suffix('!') {
        Some(name) => (name, true),
        None => (name, false),
    };
    let point_at = table.points.position(|p| p.key.as_str() == name);
    let found = point_at.and_then(|at| {
        let column = table.points.get(at)?;
        Some((at, column, design.point(&column.key)?))
    });
    let Some((at, column, point)) = found else {
        return Err(no_such_point(design, table, name));
    };
    let (values, certainty) = certainty(seen)?;
    Ok(Observed {
        point: at,
        answer: answer(column, point, values, is_complement)?,
        certainty,
    })
}

fn no_such_point(design: &Design, table: &DiagnosticTable, name: &str) -> Fault {
    let keys: Vec<&str> = table.points.iter().map(|p| p.key.as_str()).collect();
    let help = if keys.is_empty() {
        "the design records no points to look at".to_owned()
    } else {
        offered(name, &keys, "points")
    };
    Fault::new(format!("design {} has no point `{name}`", design.key), help)
}

/// "the nearest is `lamps`; the points are lamps, moon".
fn offered(written: &str, keys: &[&str], what: &str) -> String {
    let all = format!("the {what} are {}", keys.join(", "));
    match nearest(written, keys.iter().copied()) {
        Some(near) => format!("the nearest is `{near}`; {all}"),
        None => all,
    }
}

/// Separates the values from the certainty that may follow them.
fn certainty(seen: &str) -> Result<(&str, Certainty), Fault> {
    let Some((values, word)) = seen.rsplit_once(':') else {
        return Ok((seen, Certainty::Certain));
    };
    match Certainty::from_word(word) {
        Some(certainty) => Ok((values, certainty)),
        None => Err(Fault::new(
            format!("`{word}` is no certainty"),
            "write `:certain`, `:probable` or `:possible`, or nothing where it is certain",
        )),
    }
}

/// An observation at a point: values joined by commas, or, with `!=`, values that were not seen.
///
/// # Errors
/// As [`observations`].
pub(super) fn answer(
    column: &PointColumn,
    point: &Point,
    values: &str,
    is_complement: bool,
) -> Result<Answer, Fault> {
    let key = &column.key;
    if let PointKind::Measure { unit, .. } = &point.kind {
        if is_complement {
            return Err(Fault::new(
                format!("`{key}` is measured; `!=` says nothing there"),
                format!("write the number measured, in {unit}"),
            ));
        }
        return values
            .trim()
            .parse::<f64>()
            .ok()
            .filter(|number| number.is_finite())
            .map(Answer::Number)
            .ok_or_else(|| {
                Fault::new(
                    format!("`{values}` is no measurement of `{key}`"),
                    format!("write one number, in {unit}, such as `{key}=211.5`"),
                )
            });
    }
    let named: ValueSet = values
        .split(',')
        .map(|value| value_at(column, value.trim()))
        .collect::<Result<_, _>>()?;
    let seen = if is_complement {
        column.scale.all_but(&named)
    } else {
        named
    };
    if seen.is_empty() {
        return Err(Fault::new(
            format!("every value of `{key}` is ruled out, so nothing is left to be seen"),
            "leave the point out where it cannot be judged",
        ));
    }
    Ok(Answer::OneOf(seen))
}

fn value_at(column: &PointColumn, value: &str) -> Result<ValueAt, Fault> {
    let key = &column.key;
    if let Some(other) = column.scale.other().filter(|_| value == OTHER) {
        return Ok(other);
    }
    match &column.scale {
        Scale::Counts(_) => value
            .parse::<u32>()
            .ok()
            .and_then(|n| column.scale.index_of(&Value::Count(n)))
            .ok_or_else(|| {
                Fault::new(
                    format!("`{value}` is no number of `{key}`"),
                    format!("write the number counted, such as `{key}=3`"),
                )
            }),
        Scale::Words(words) => words
            .iter()
            .position(|w| w.as_str() == value)
            .map(ValueAt::new)
            .ok_or_else(|| {
                let words: Vec<&str> = words.iter().map(Key::as_str).collect();
                Fault::new(
                    format!("`{key}` has no value `{value}`"),
                    offered(value, &words, "values"),
                )
            }),
        Scale::Measure(_) => Err(Fault::new(
            format!("`{value}` is no measurement of `{key}`"),
            "write one number",
        )),
    }
}
