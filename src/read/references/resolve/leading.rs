//! Reports records that lead to each other in a circle: withdrawn ones that name each other to be seen instead, and
//! holders that are said to have taken each other over. No reader of either would arrive.

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::place::{Place, Placed};
use crate::model::standing::RecordStanding;

/// The circles of a catalogue, each reported once, at the first of its records.
pub(super) fn circles(catalogue: &Catalogue) -> Vec<Finding> {
    let mut findings = successors(catalogue);
    let designs = catalogue.designs.values();
    let withdrawn = designs.flat_map(|design| {
        let sheets = design.impressions.values();
        let sheets = sheets.map(|sheet| (Target::Impression(sheet.key.clone()), &sheet.standing));
        std::iter::once((Target::Design(design.key.clone()), &design.standing)).chain(sheets)
    });
    for (record, standing) in withdrawn.filter(|(_, standing)| standing.is_withdrawn()) {
        let circle = standing.see.iter().find_map(|see| {
            let target = see.value.parse().ok()?;
            let found = came_back(catalogue, &record, target)?;
            Some((see.place, found))
        });
        if let Some((place, others)) =
            circle.filter(|(_, others)| others.iter().all(|o| record <= *o))
        {
            findings.push(of_withdrawn(&record, place, &others));
        }
    }
    findings
}

fn of_withdrawn(record: &Target, place: Place, others: &BTreeSet<Target>) -> Finding {
    let others = others.iter().filter(|other| *other != record);
    let others: Vec<String> = others.map(|other| format!("`{other}`")).collect();
    let message = if others.is_empty() {
        format!("the withdrawn record `{record}` is to be seen instead of itself")
    } else {
        format!(
            "the withdrawn record `{record}` is to be seen instead of {}, and that instead of it",
            others.join(", ")
        )
    };
    Finding::new(Code::SeeCircle, place, message).help("name a record that stands, or remove `see`")
}

/// The withdrawn records on a way from `target` back to `record`; `None` where no way leads back.
fn came_back(catalogue: &Catalogue, record: &Target, target: Target) -> Option<BTreeSet<Target>> {
    let mut passed = BTreeSet::new();
    let mut open = vec![target];
    while let Some(at) = open.pop() {
        let standing = standing(catalogue, &at).filter(|standing| standing.is_withdrawn());
        let Some(standing) = standing else { continue };
        if passed.insert(at) {
            let further = standing.see.iter();
            open.extend(further.filter_map(|see| see.value.parse().ok()));
        }
    }
    passed.contains(record).then_some(passed)
}

fn standing<'c>(catalogue: &'c Catalogue, target: &Target) -> Option<&'c RecordStanding> {
    match target {
        Target::Design(key) => Some(&catalogue.designs.get(key)?.standing),
        Target::Impression(key) => Some(&catalogue.impression(key)?.standing),
        Target::Series(key) => Some(&catalogue.series.get(key)?.standing),
        _ => None,
    }
}

fn successors(catalogue: &Catalogue) -> Vec<Finding> {
    let next = |key: &Key| -> Option<&Placed<Key>> {
        let successor = catalogue.holders.get(key)?.successor.as_ref()?;
        Some(&successor.holder)
    };
    let mut findings = Vec::new();
    for key in catalogue.holders.keys() {
        let Some(first) = next(key) else { continue };
        let mut passed = BTreeSet::from([&first.value]);
        let mut at = &first.value;
        while at != key
            && let Some(further) = next(at)
            && passed.insert(&further.value)
        {
            at = &further.value;
        }
        if at == key && passed.iter().all(|other| key <= *other) {
            let message = format!(
                "`{}` is recorded as the successor of `{key}`, and `{key}` as its successor",
                first.value
            );
            findings.push(
                Finding::new(Code::SuccessorCircle, first.place, message)
                    .help("remove `successor` from the one that exists now"),
            );
        }
    }
    findings
}
