//! Points of a design, and the values that states show and that were observed on sheets.
//!
//! Points are read here. [`answers`] reads the values and checks them against the points ([`judging`]).
//! Values at a point whose own record is faulty are not checked, because that fault has a finding
//! already.

mod answers;
mod judging;

use std::collections::BTreeSet;

use toml::de::{DeTable, DeValue};

pub(crate) use self::answers::{observed, shows};
pub(crate) use self::judging::Points;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
use crate::model::point::{Point, PointKind, PointKindWord, PointValue};
use crate::read::faults::{Faults, Node};
use crate::read::table::fields::{Entry, Fields};
use crate::read::table::keyed::distinct;
use crate::read::values;

/// Reads `[[points]]` of a design: the points in the order of the record, and the same points in the
/// form in which answers are checked against them.
pub(crate) fn points(fields: &mut Fields<'_, '_>, number: &str) -> (Vec<Point>, Points) {
    let mut faulty = BTreeSet::new();
    let points = fields.keyed("points", |fields, key| {
        let point = point(fields, key.clone());
        let is_whole = point
            .as_ref()
            .is_some_and(|point| has_all_answers(fields, point));
        faulty.extend(key.filter(|_| !is_whole).map(|key| key.value));
        point
    });
    faulty.extend(points.twice);
    let by_key = points
        .all
        .iter()
        .map(|point| (point.key.value.clone(), point.clone()));
    let judging = Points {
        design: number.to_owned(),
        by_key: by_key.collect(),
        faulty,
        all_known: points.all_known && !fields.faults.is_broken(),
        states: Vec::new(),
    };
    (points.all, judging)
}

/// Whether every answer that the record names could be read.
fn has_all_answers(fields: &mut Fields<'_, '_>, point: &Point) -> bool {
    match &point.kind {
        PointKind::Choice(values) => fields.take("values").is_some_and(|node| {
            let table = node.get_ref().as_table();
            let named =
                |table: &DeTable<'_>| table.keys().filter(|k| k.get_ref() != "private").count();
            table.is_some_and(|table| named(table) == values.len())
        }),
        PointKind::Stage(stages) => fields.take("stages").is_some_and(|node| {
            node.get_ref().as_array().map_or(1, |list| list.len()) == stages.len()
        }),
        PointKind::Presence | PointKind::Count | PointKind::Measure { .. } => true,
    }
}

fn point(fields: &mut Fields<'_, '_>, key: Option<Placed<Key>>) -> Option<Point> {
    let ask = fields.text("ask");
    let word = fields.word("kind");
    let rests_on = fields.word("rests_on");
    let matrix = fields.key("matrix");
    let area = fields
        .one("box", values::percent_box)
        .map(|area| area.value);
    let decides = fields.text("decides");
    let strays = fields.fraction("strays");
    decides_or_strays(fields, decides.is_some() && strays.is_some());
    let kind = kind(fields, word.as_ref());
    Some(Point {
        key: key?,
        ask: ask?,
        kind: kind?,
        rests_on: rests_on?,
        matrix,
        area,
        decides,
        strays,
    })
}

/// Reports a point that both decides and strays: what decides never departs from what is recorded.
fn decides_or_strays(fields: &mut Fields<'_, '_>, has_both: bool) {
    let Some(place) = fields.key_place("strays").filter(|_| has_both) else {
        return;
    };
    let message = "a point that `decides` never departs from what is recorded, so it cannot stray";
    let mut finding = Finding::new(Code::DecidesAndStrays, place, message.to_owned());
    if let Some(decides) = fields.key_place("decides") {
        finding = finding.beside(decides, "said to decide");
    }
    let help = "keep `decides` if no sheet can depart from the record there, else keep `strays`";
    fields.faults.push(finding.help(help));
}

/// The kind of a point, with the keys that this kind requires. A key that belongs to another kind is a
/// fault.
fn kind(fields: &mut Fields<'_, '_>, word: Option<&Placed<PointKindWord>>) -> Option<PointKind> {
    let values = fields.map("values", point_value);
    let stages = fields.keys("stages");
    let unit = fields.words("unit");
    let tolerance = fields.one("tolerance", values::above_0);
    let word = word?.value;
    let takes: &[(&str, &str)] = match word {
        PointKindWord::Presence | PointKindWord::Count => &[],
        PointKindWord::Choice => &[("values", "each value with its description")],
        PointKindWord::Stage => &[("stages", "the stages, in the order of wear")],
        PointKindWord::Measure => &[
            ("unit", "usually \"mm\""),
            (
                "tolerance",
                "how far two measurements of one thing may differ",
            ),
        ],
    };
    for (name, help) in takes {
        if !fields.has(name) {
            fields.lacks(name, help);
        }
    }
    for name in ["values", "stages", "unit", "tolerance"] {
        // Where a header is broken, the parser adds `[points.values]` to the point before.
        if fields.faults.is_broken() {
            break;
        }
        let place = fields.key_place(name);
        if let Some(place) = place.filter(|_| !takes.iter().any(|(taken, _)| *taken == name)) {
            let finding = Finding::new(
                Code::KeyUnknown,
                place,
                format!("a point of the kind {word} has no key `{name}`"),
            );
            fields
                .faults
                .push(finding.help("remove it, or change the kind"));
        }
    }
    match word {
        PointKindWord::Presence => Some(PointKind::Presence),
        PointKindWord::Count => Some(PointKind::Count),
        PointKindWord::Choice => {
            says_something(fields, "values", values.is_empty());
            (!values.is_empty()).then_some(PointKind::Choice(values))
        }
        PointKindWord::Stage => {
            says_something(fields, "stages", stages.is_empty());
            distinct(fields.faults, "stages", &stages);
            (!stages.is_empty()).then_some(PointKind::Stage(stages))
        }
        PointKindWord::Measure => Some(PointKind::Measure {
            unit: unit?,
            tolerance: tolerance?.value,
        }),
    }
}

/// Reports a list of answers that is empty, unless a finding inside it explains that.
fn says_something(fields: &mut Fields<'_, '_>, name: &'static str, is_empty: bool) {
    let holds_nothing = |node: &Node<'_>| match node.get_ref() {
        DeValue::Table(table) => table.is_empty(),
        DeValue::Array(list) => list.is_empty(),
        _ => false,
    };
    if let Some(node) = fields
        .take(name)
        .filter(|node| is_empty && holds_nothing(node))
    {
        let finding = Finding::new(
            Code::ValueEmpty,
            fields.faults.of(node),
            format!("`{name}` names no answer"),
        );
        fields.faults.push(finding.help("name at least two"));
    }
}

fn point_value<'t>(faults: &mut Faults<'t>, header: Place, entry: Entry<'t>) -> Option<PointValue> {
    // A key with an underscore, or with a value that is not text, is not an answer: it is a key of the
    // point, written too far down.
    let name: &str = entry.key.get_ref();
    let is_answer = name.parse::<Key>().is_ok() && entry.node.get_ref().is_str();
    if !is_answer && faults.swallowed(entry.key, header, false) {
        return None;
    }
    let key = entry.read_key(faults);
    let description = values::telling_text(faults, entry.node);
    Some(PointValue {
        key: key?,
        description: description?.value,
    })
}
