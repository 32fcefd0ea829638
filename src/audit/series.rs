//! Rules: a series has more designs than it declares, one place is given to two designs, and a series with a record is named
//! by its title.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::series::SeriesRecord;
use crate::model::series_place::{SeriesPlace, SeriesRef};
use crate::study::Studies;
use crate::study::series::number;

/// More designs stand in a series than the largest number that any source declares.
pub(super) fn above_declared(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (key, series) in &catalogue.series {
        let largest = series
            .number
            .iter()
            .max_by_key(|declared| declared.is.value);
        let study = studies.series.get(&SeriesRef::Record(key.clone()));
        let (Some(largest), Some(study)) = (largest, study) else {
            continue;
        };
        let known = study.known();
        if usize::try_from(largest.is.value).is_ok_and(|declared| known > declared) {
            let message = format!(
                "the series `{key}` is declared to have {} designs, but {known} stand in it",
                largest.is.value
            );
            findings.push(
                Finding::new(Code::SeriesAboveDeclared, largest.is.place, message).help(
                    "correct the number, or take out of the series what does not belong to it",
                ),
            );
        }
    }
}

/// Two designs have one place in a series. Places of printings are those of their designs.
pub(super) fn position_twice(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    let mut taken: BTreeMap<(&SeriesRef, String), (&Design, &Placed<String>)> = BTreeMap::new();
    let designs = studies.order.keys().iter();
    for design in designs.filter_map(|key| catalogue.designs.get(key)) {
        if design.standing.is_set_apart() {
            continue;
        }
        for place in places(design) {
            let Some(position) = &place.position else {
                continue;
            };
            let text = position.value.trim().to_lowercase();
            let same = number(Some(&text)).map_or(text, |number| number.to_string());
            let first = taken
                .entry((&place.of.value, same))
                .or_insert((design, position));
            if first.0.key != design.key {
                let message = format!(
                    "designs {} and {} both have the place {} in the series \"{}\"",
                    first.0.number,
                    design.number,
                    position.value,
                    named(catalogue, &place.of.value)
                );
                findings.push(
                    Finding::new(Code::SeriesPositionTwice, position.place, message)
                        .beside(first.1.place, "the same place")
                        .help("correct one of the two"),
                );
            }
        }
    }
}

/// A series is named by `name` though it has a record: its designs would stand apart from those that name the record.
pub(super) fn named_by_title(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        for place in places(design) {
            let SeriesRef::Named(name) = &place.of.value else {
                continue;
            };
            let Some(series) = catalogue.series.values().find(|s| is_titled(s, name)) else {
                continue;
            };
            let key = &series.key;
            let message = format!("the series \"{name}\" has a record: `{key}`");
            findings.push(
                Finding::new(Code::SeriesNamedByTitle, place.of.place, message)
                    .beside(series.place, "the record")
                    .help(format!("write `series = \"{key}\"` in place of `name`")),
            );
        }
    }
}

/// The places of a design and its printings in series.
fn places(design: &Design) -> impl Iterator<Item = &SeriesPlace> {
    let of_printings = design.standing_printings().flat_map(|p| &p.series);
    design.series.iter().chain(of_printings)
}

fn is_titled(series: &SeriesRecord, name: &str) -> bool {
    let same = |text: &str| text.trim().to_lowercase() == name.trim().to_lowercase();
    let key: &Key = &series.key;
    same(key.as_str()) || series.titles.iter().any(|title| same(&title.text.value))
}

fn named(catalogue: &Catalogue, series: &SeriesRef) -> String {
    let record = series.key().and_then(|key| catalogue.series.get(key));
    record.map_or_else(
        || series.as_str().to_owned(),
        |record| record.name().into_owned(),
    )
}
