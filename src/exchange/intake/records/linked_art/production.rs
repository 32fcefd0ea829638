//! How an object was made: makers with their roles, techniques, dates.
//!
//! | cell | made of |
//! |---|---|
//! | `produced_by/carried_out_by` | `Name (role)` of each actor of the production and of its parts; the role is the classification of the part |
//! | `produced_by/technique` | the techniques of all of them |
//! | `produced_by/timespan` | the date in words, else `first/last day`; of the production, else of a part that is not classified |
//! | `produced_by/part[printing]/timespan` | with the verb, as the grammar of dates reads it: `printed 1925` |

use super::concepts::{self, is, label, word};
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::row::Row;

/// The deepest parts of parts.
const DEEPEST: usize = 4;

/// Reads a production with its parts.
pub(super) fn read(production: &Node, row: &mut Row) {
    activity(production, None, row);
    parts(
        production,
        production.child("timespan").is_some(),
        DEEPEST,
        row,
    );
}

fn parts(of: &Node, mut has_date: bool, depth: usize, row: &mut Row) {
    for part in of.all("part") {
        let kinds: Vec<&Node> = part.all("classified_as").collect();
        let act = kinds.iter().find_map(|kind| {
            let known = concepts::known(kind)?;
            ["printing", "publishing"].contains(&known).then_some(known)
        });
        let is_used = part.child("carried_out_by").is_some()
            || part
                .all("timespan")
                .any(|time| !date_shown(time).is_empty());
        // What neither a name nor the heading of a date would tell stays.
        let taken = kinds.iter().filter(|kind| match act {
            Some(act) => is(kind, act),
            None => is_used,
        });
        let roles: Vec<String> = taken.map(|kind| word(kind)).collect();
        let role = match act {
            Some("printing") => "printer".to_owned(),
            Some(_) => "publisher".to_owned(),
            None => roles.join(", "),
        };
        let path = match (act, roles.is_empty()) {
            (Some(act), _) => format!("produced_by/part[{act}]/timespan"),
            (None, true) if !has_date => {
                has_date |= part.child("timespan").is_some();
                "produced_by/timespan".to_owned()
            }
            (None, true) => "produced_by/part/timespan".to_owned(),
            (None, false) => format!("produced_by/part[{role}]/timespan"),
        };
        activity(part, Some((&role, act, &path)), row);
        if depth > 0 {
            parts(part, has_date, depth - 1, row);
        }
    }
}

/// An activity; of a part its role, what act it is, and the path of its date.
fn activity(node: &Node, part: Option<(&str, Option<&str>, &str)>, row: &mut Row) {
    let (role, act, path) = part.unwrap_or(("", None, "produced_by/timespan"));
    for actor in node.all("carried_out_by") {
        let name = label(actor);
        let text = match role {
            "" => name,
            role => format!("{name} ({role})"),
        };
        row.add("produced_by/carried_out_by", &text);
    }
    for technique in node.all("technique") {
        row.add("produced_by/technique", &label(technique));
    }
    let verb = match act {
        Some("printing") => "printed ",
        Some(_) => "published ",
        None => "",
    };
    for timespan in node.all("timespan") {
        let text = date(timespan);
        if !text.is_empty() {
            row.add(path, &format!("{verb}{text}"));
        }
    }
}

/// A time in words, which are taken; else its bounds as a span of days, which stay.
pub(super) fn date(timespan: &Node) -> String {
    let names: Vec<&Node> = timespan.all("identified_by").collect();
    let displayed = names.iter().find(|name| {
        name.all("classified_as")
            .any(|kind| is(kind, "display name"))
    });
    let name = displayed.or(names.first());
    let content = name.and_then(|name| name.child("content"));
    if let Some(text) = content.and_then(Node::take) {
        return text.to_owned();
    }
    if let Some(text) = timespan.child("_label").and_then(Node::take) {
        return text.to_owned();
    }
    span(timespan)
}

/// The same without taking anything.
pub(super) fn date_shown(timespan: &Node) -> String {
    let names = timespan.at(&["identified_by", "content"]);
    let name = names.first().map_or("", |name| name.peek());
    let said = [name, timespan.text_of("_label")];
    let said = said.into_iter().find(|text| !text.is_empty());
    said.map_or_else(|| span(timespan), str::to_owned)
}

/// The bounds as days: `1912-01-01/1915-12-31`, years where they are whole.
fn span(timespan: &Node) -> String {
    let day = |name: &'static str| {
        let moment = timespan.text_of(name);
        moment.split('T').next().unwrap_or(moment).to_owned()
    };
    let (from, to) = (day("begin_of_the_begin"), day("end_of_the_end"));
    let year = |day: &str, edge: &str| day.strip_suffix(edge).map(str::to_owned);
    let (from, to) = match (year(&from, "-01-01"), year(&to, "-12-31")) {
        (Some(first), Some(last)) => (first, last),
        _ => (from, to),
    };
    match (from.as_str(), to.as_str()) {
        (from, to) if from == to => from.to_owned(),
        (from, "") => format!("{from}/.."),
        ("", to) => format!("../{to}"),
        (from, to) => format!("{from}/{to}"),
    }
}
