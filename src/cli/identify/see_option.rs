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

/// The words for a point that cannot be judged on the sheet.
pub(super) const NOT_VISIBLE: &str = "not-visible";
pub(super) const NOT_APPLICABLE: &str = "not-applicable";

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
            format!("`{word}` is not a certainty"),
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
    match values.trim() {
        NOT_VISIBLE if !is_complement => return Ok(Answer::NotVisible),
        NOT_APPLICABLE if !is_complement => return Ok(Answer::NotApplicable),
        _ => {}
    }
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
                    format!("`{values}` is not a measurement of `{key}`"),
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
            "write `not-visible` where it cannot be judged",
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
                    format!("`{value}` is not a number of `{key}`"),
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
            format!("`{value}` is not a measurement of `{key}`"),
            "write one number",
        )),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;
    use std::path::Path;

    use proptest::prelude::*;
    use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

    use super::*;
    use crate::read::{Inputs, read_inputs};
    use crate::study::Studies;

    const RECORD: &str = r#"
titles = [{ text = "The Ferry" }]
points = [
    { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
    { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
    { key = "height", ask = "How high?", kind = "measure", unit = "mm", tolerance = 1.5, rests_on = "matrix" },
]
states = [
    { key = "dark", shows = { moon = "absent", lamps = 2, height = 211.5 } },
    { key = "lit", shows = { moon = "present", lamps = [3, 4], height = 215 } },
]
"#;

    const PIECES: &[&str] = &[
        "moon",
        "lamps",
        "height",
        "=",
        "!=",
        "present",
        "absent",
        "2",
        "3",
        "other",
        ",",
        ":certain",
        ":probable",
        ":possible",
        ":",
        "211.5",
        "-1",
        "1e999",
        "nan",
        "inf",
        "not",
        " ",
        "!",
        "==",
        "4294967296",
    ];

    const SOUND: &[&str] = &[
        "moon=present",
        "lamps!=2",
        "lamps=other,3:possible",
        "height=211.5:probable",
    ];

    /// Any texts, most of them made of what `--see` takes.
    fn arguments() -> impl Strategy<Value = Vec<String>> {
        let words = prop::collection::vec(prop::sample::select(PIECES), 0..7);
        let one = prop_oneof![
            4 => words.prop_map(|words| words.concat()),
            2 => prop::sample::select(SOUND).prop_map(str::to_owned),
            1 => prop::collection::vec(any::<char>(), 0..20).prop_map(String::from_iter),
        ];
        prop::collection::vec(one, 0..5)
    }

    /// Observations are given for all arguments, or a fault with a help for those that are none, in any
    /// number and always alike. `KEYBLOCK_FUZZ=600` goes on for 600 seconds.
    #[test]
    fn any_arguments_are_observations_or_faults() {
        let record = ("records/designs/1/design.toml".to_owned(), RECORD.into());
        let inputs = Inputs::of_bytes(&BTreeMap::from([record]));
        let catalogue = read_inputs(Path::new("/nowhere-at-all"), &inputs).catalogue;
        let one: Key = "1".parse().unwrap();
        let (design, studies) = (&catalogue.designs[&one], Studies::of(&catalogue));
        let table = &studies.designs[&one].table;
        assert_eq!(table.points.len(), 3);
        let long = std::env::var("KEYBLOCK_FUZZ").ok();
        let long: Option<u64> = long.map(|seconds| seconds.parse().unwrap());
        let begun = std::time::Instant::now();
        let (mut count, is_observed) = (0_u64, std::cell::Cell::new(0_u64));
        loop {
            let config = Config {
                cases: long.map_or(2_000, |_| 20_000),
                failure_persistence: None,
                ..Config::default()
            };
            let cases = u64::from(config.cases);
            let mut runner = match long {
                None => {
                    let numbers = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
                    TestRunner::new_with_rng(config, numbers)
                }
                Some(_) => TestRunner::new(config),
            };
            let result = runner.run(&arguments(), |arguments| {
                let told = observations(design, table, &arguments);
                prop_assert_eq!(&told, &observations(design, table, &arguments));
                match told {
                    Ok(observed) => {
                        is_observed.set(is_observed.get() + 1);
                        prop_assert_eq!(observed.len(), arguments.len());
                        let identified = crate::study::identify::identify(table, &observed);
                        let all: f64 = identified.candidates.iter().map(|c| c.weight).sum();
                        prop_assert!(all == 0.0 || (all - 1.0).abs() < 1e-9, "{all}");
                    }
                    Err(faults) => {
                        prop_assert!(!faults.is_empty() && faults.len() <= arguments.len());
                        for fault in faults {
                            prop_assert!(!fault.message.is_empty() && !fault.help.is_empty());
                        }
                    }
                }
                Ok(())
            });
            if let Err(fault) = result {
                panic!("after {count} inputs: {fault}");
            }
            count += cases;
            if long.is_none_or(|seconds| begun.elapsed().as_secs() >= seconds) {
                break;
            }
        }
        assert!(
            is_observed.get() * 10 > count,
            "{} of {count}",
            is_observed.get()
        );
        println!("fuzz --see: {count} inputs in {:.0?}", begun.elapsed());
    }
}
