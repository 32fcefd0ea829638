//! What an impression names: its holders, other sheets, and the parts of its design.

use super::Names;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::key::ImpressionKey;
use crate::model::place::Placed;
use crate::model::vocabulary::List;

pub(super) fn resolve(names: &mut Names, design: &Design, impression: &Impression) {
    whereabouts(names, impression);
    identification(names, design, impression);
    let sheet = &impression.sheet;
    names.claims(&sheet.size);
    names.claims(&sheet.image);
    names.claims(&sheet.platemark);
    names.claims(&sheet.date);
    if let Some(paper) = &sheet.paper {
        names.term(List::Papers, paper);
    }
    for mark in &impression.marks {
        for party in mark.whose.iter().chain(&mark.applied_by) {
            names.party_key(party);
        }
        names.claim(&mark.claim);
    }
    for cite in impression
        .pictures
        .iter()
        .filter_map(|picture| picture.cite.as_ref())
    {
        names.work(cite);
    }
    names.citations(&impression.literature);
    names.stands(&impression.standing);
    other_sheets(names, impression);
}

/// Who keeps and kept the sheet, and where it was seen.
fn whereabouts(names: &mut Names, impression: &Impression) {
    if let Some(holder) = &impression.holder {
        names.holder(holder);
    }
    if let Some(owner) = &impression.owner {
        names.party(owner);
    }
    for holder in impression
        .former_accessions
        .iter()
        .filter_map(|former| former.holder.as_ref())
    {
        names.holder(holder);
    }
    for entry in &impression.provenance {
        names.party(&entry.party);
        if let Some(how) = &entry.how {
            names.term(List::Transfers, how);
        }
        names.claim(&entry.claim);
    }
    for sighting in &impression.sightings {
        if let Some(by) = &sighting.by {
            names.party(by);
        }
        if let Some(cite) = &sighting.cite {
            names.work(cite);
        }
    }
    for exhibited in &impression.exhibited {
        names.exhibition(&exhibited.exhibition);
    }
}

/// What the sheet is taken to be, and what was seen on it.
fn identification(names: &mut Names, design: &Design, impression: &Impression) {
    for statement in &impression.kind {
        names.term(List::Kinds, &statement.is);
        names.claim(&statement.claim);
    }
    if let Some(identified) = &impression.identified {
        reading(names, design, identified);
    }
    for opinion in &impression.opinions {
        if let Some(after) = &opinion.after {
            names.work(after);
        }
        reading(names, design, &opinion.reading);
    }
    for observation in &impression.observed {
        names.claim(&observation.claim);
    }
    for (matrix, _) in &impression.blocks {
        names.matrix(design, matrix);
    }
}

fn reading(names: &mut Names, design: &Design, identification: &Identification) {
    match &identification.state {
        None => {}
        Some(StateReading::OneOf(states)) => {
            for state in states {
                names.state(design, state);
            }
        }
        Some(StateReading::ByMatrix(states)) => {
            for (matrix, state) in states {
                names.matrix(design, matrix);
                names.state(design, state);
            }
        }
    }
    for printing in &identification.printing {
        names.printing(design, printing);
    }
    if let Some(variant) = &identification.variant {
        names.variant(design, variant);
    }
    if let Some(kind) = &identification.kind {
        names.term(List::Kinds, kind);
    }
    names.claim(&identification.claim);
    for other in &identification.or {
        reading(names, design, other);
    }
}

fn other_sheets(names: &mut Names, impression: &Impression) {
    let same = impression
        .same_as
        .iter()
        .map(|other| (&other.impression, "the same sheet as itself"));
    let maybe = impression
        .maybe_same_as
        .iter()
        .map(|other| (&other.impression, "perhaps the same sheet as itself"));
    let not_same = impression
        .not_same_as
        .iter()
        .map(|other| (&other.impression, "another sheet than itself"));
    let shares = impression
        .shares_sheet
        .iter()
        .map(|other| (other, "on the same paper as itself"));
    let goes_with = impression
        .goes_with
        .iter()
        .map(|other| (other, "of one set with itself"));
    let taken_from = impression
        .taken_from
        .iter()
        .map(|other| (other, "taken from itself"));
    for (other, claim) in same
        .chain(maybe)
        .chain(not_same)
        .chain(shares)
        .chain(goes_with)
        .chain(taken_from)
    {
        another_sheet(names, impression, other, claim);
    }
}

fn another_sheet(
    names: &mut Names,
    impression: &Impression,
    other: &Placed<ImpressionKey>,
    claim: &str,
) {
    if other.value != impression.key {
        return names.impression(other);
    }
    let message = format!("{} is said to be {claim}", impression.key);
    names.push(
        Finding::new(Code::SameAsItself, other.place, message)
            .help("name the other impression, or remove this"),
    );
}
