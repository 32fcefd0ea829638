//! Rule: a point separates two printings by a mark that both printers or publishers used.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::mark::MarkKind;
use crate::model::place::Place;
use crate::model::point::{Point, RestsOn};
use crate::model::printing::Printing;
use crate::study::Studies;
use crate::study::allowed::{is_told_apart, shown_values};
use crate::study::marks::{MarkIdentity, identity};

use super::wording;

/// The people said to have used a mark, each with the place that says so.
type Users<'a> = BTreeMap<&'a Key, Place>;

/// A mark and those who used it.
struct UsedMark<'a> {
    kind: Option<MarkKind>,
    /// Its number in a repertory, its text, or the key of its record.
    name: String,
    users: Users<'a>,
}

/// A point separates two printings by a mark that people of both printings are recorded to have used
/// (docs/trade.md, "Marks on a sheet").
///
/// Common practice, no source: seals and stamps survive the artist and are used on later printings.
pub(super) fn relied_on(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let marks = marks_of_several(catalogue);
    for design in catalogue.designs.values() {
        let points: Vec<&Point> = design
            .points
            .iter()
            .filter(|p| p.rests_on.value == RestsOn::Mark)
            .collect();
        for point in &points {
            let is_only = points.len() == 1;
            for (one, other) in told_apart(design, point) {
                let shared = marks.values().find_map(|mark| {
                    let is_named = mark.kind.is_some_and(|kind| speaks_of(point, kind));
                    let first = user_of(one, &mark.users)?;
                    let second = user_of(other, &mark.users)?;
                    ((is_only || is_named) && first.0 != second.0).then_some((mark, first, second))
                });
                let Some((mark, first, second)) = shared else {
                    continue;
                };
                let kind = mark
                    .kind
                    .map_or_else(|| "mark".to_owned(), |kind| kind.to_string());
                let text = &mark.name;
                let who = |key: &Key| wording::person_or_holder(catalogue, key);
                findings.push(
                    Finding::new(
                        Code::MarkShared,
                        point.key.place,
                        format!(
                            "`{}` of design {} separates {} from {}, but the {kind} \"{text}\" was used by {} and by {}",
                            point.key.value,
                            design.number,
                            wording::printing(&one.key.value),
                            wording::printing(&other.key.value),
                            who(first.0),
                            who(second.0)
                        ),
                    )
                    .beside(first.1, "used by the one")
                    .beside(second.1, "used by the other")
                    .help("let both printings show what both can bear, and rely on another point"),
                );
            }
        }
    }
}

/// Every stamp or seal that several people are recorded to have used, on sheets or in its record, with these people.
fn marks_of_several(catalogue: &Catalogue) -> BTreeMap<MarkIdentity, UsedMark<'_>> {
    let mut marks: BTreeMap<MarkIdentity, UsedMark<'_>> = BTreeMap::new();
    for record in catalogue.marks.values() {
        let text = record.text.as_ref().map(|text| text.value.as_str());
        let used = UsedMark {
            kind: record.kind.as_ref().map(|kind| kind.value),
            name: text.unwrap_or(record.key.as_str()).to_owned(),
            users: record
                .users
                .iter()
                .map(|user| (&user.person.value, user.person.place))
                .collect(),
        };
        marks.insert(MarkIdentity::Record(record.key.clone()), used);
    }
    for (_, impression) in catalogue.impressions() {
        for mark in &impression.marks {
            let described = catalogue.described_mark(mark);
            let (Some(stamp), Some(by)) = (identity(&described), &mark.applied_by) else {
                continue;
            };
            let used = marks.entry(stamp).or_insert_with(|| UsedMark {
                kind: described.kind.as_ref().map(|kind| kind.value),
                name: described
                    .number
                    .clone()
                    .or(described.text.clone())
                    .unwrap_or_default(),
                users: Users::new(),
            });
            used.users.entry(&by.value).or_insert(by.place);
        }
    }
    marks.retain(|_, mark| mark.users.len() > 1 && mark.kind != Some(MarkKind::Collector));
    marks
}

/// The pairs of printings that share no value at a point.
fn told_apart<'a>(design: &'a Design, point: &Point) -> Vec<(&'a Printing, &'a Printing)> {
    let shown: Vec<_> = design
        .standing_printings()
        .filter_map(|p| Some((p, shown_values(&p.shows, point)?)))
        .collect();
    let mut pairs = Vec::new();
    for (at, (one, a)) in shown.iter().enumerate() {
        for (other, b) in shown.iter().skip(at + 1) {
            if is_told_apart(point, a, b) {
                pairs.push((*one, *other));
            }
        }
    }
    pairs
}

/// Whether a point's key or one of its values names a kind of mark.
fn speaks_of(point: &Point, kind: MarkKind) -> bool {
    let word = kind.to_string();
    let named = |text: &str| text.split('-').any(|part| part == word);
    named(point.key.value.as_str()) || point.kind.words().into_iter().flatten().any(named)
}

/// The printer or publisher of a printing who is among the users of a mark.
fn user_of<'a>(printing: &Printing, users: &Users<'a>) -> Option<(&'a Key, Place)> {
    let people: BTreeSet<&Key> = printing
        .printer
        .iter()
        .chain(&printing.publisher)
        .map(|s| &s.is.value)
        .collect();
    users
        .iter()
        .find(|(user, _)| people.contains(*user))
        .map(|(user, place)| (*user, *place))
}
