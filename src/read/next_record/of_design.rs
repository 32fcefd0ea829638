//! The parts of an impression's record that depend on its design: its states and printings, its points, its blocks.

use super::planned::quoted;
use super::template::{Part, with_comment};
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::point::{Point, PointKind};

/// The parts for an impression of `design`.
pub(super) fn parts(design: &Design) -> Vec<Part> {
    let keys = |keys: Vec<&Placed<Key>>| keys.into_iter().map(|key| key.to_string()).collect();
    let states: Vec<String> = keys(design.states.iter().map(|s| &s.key).collect());
    let printings: Vec<String> = keys(design.printings.iter().map(|p| &p.key).collect());
    let variants: Vec<String> = keys(design.variants.iter().map(|v| &v.key).collect());
    let matrices: Vec<String> = keys(design.matrices.iter().map(|m| &m.key).collect());
    let known = [
        ("states", &states),
        ("printings", &printings),
        ("variants", &variants),
    ];
    let known = known.into_iter().filter(|(_, keys)| !keys.is_empty());
    let notes =
        known.map(|(name, keys)| format!("# The {name} of the design: {}", keys.join(", ")));
    let example = |key, keys: &[String]| (key, keys.first().map(|first| quoted(first)));
    let examples = vec![
        example("state", &states),
        example("printing", &printings),
        example("variant", &variants),
    ];
    let blocks = matrices
        .iter()
        .map(|key| format!("#{key} = \"printed\""))
        .collect();
    vec![
        Part {
            table: "identified",
            is_given: false,
            notes: notes.collect(),
            examples: examples.clone(),
            keys: None,
        },
        Part {
            table: "opinions",
            is_given: false,
            notes: Vec::new(),
            examples,
            keys: None,
        },
        Part {
            table: "observed",
            is_given: false,
            notes: vec![
                "# not-visible: trimmed, mounted or framed there; it gives no information"
                    .to_owned(),
            ],
            examples: Vec::new(),
            keys: Some(design.points.iter().map(observation).collect()),
        },
        Part {
            table: "blocks",
            is_given: false,
            notes: Vec::new(),
            examples: Vec::new(),
            keys: Some(blocks),
        },
    ]
}

/// `#moon = "present"                    # A moon? present, absent`
fn observation(point: &Point) -> String {
    let words = point.kind.words();
    let value = match (&point.kind, words.as_ref().and_then(|words| words.first())) {
        (_, Some(word)) => quoted(word),
        (PointKind::Count, _) => "1".to_owned(),
        _ => "100.5".to_owned(),
    };
    let takes = match (&point.kind, words) {
        (_, Some(words)) => words.join(", "),
        (PointKind::Measure { unit, .. }, _) => format!("in {unit}"),
        _ => "a number".to_owned(),
    };
    let ask: String = point.ask.split_whitespace().collect::<Vec<_>>().join(" ");
    let ask: String = ask.chars().filter(|c| !c.is_control()).collect();
    let written = format!("#{} = {value}", point.key.value);
    with_comment(&written, Some(&format!("# {ask} {takes}")))
}
