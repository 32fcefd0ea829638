//! Rules on the provenance of a sheet: entries in the order of time, one owner at a time.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::edtf::{Date, Day};
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::place::Placed;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::study::Studies;

use super::firm;
use super::wording;

/// Entries are not in the order of time, the earliest first (docs/trade.md, "Writing provenance").
pub(super) fn order(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        let mut latest: Option<&Placed<Date>> = None;
        for entry in &impression.provenance {
            let known = firm::date(entry.from.as_ref().or(entry.to.as_ref()));
            if let (Some(date), Some(before)) = (known, latest)
                && firm::is_before(&date.value, &before.value)
            {
                let whom = wording::party(catalogue, &entry.party);
                findings.push(
                    Finding::new(
                        Code::ProvenanceOrder,
                        date.place,
                        format!(
                            "in the provenance of {}, {whom} ({}) stands after an entry of {}",
                            catalogue.sheet_number(&impression.key),
                            date.value,
                            before.value
                        ),
                    )
                    .saying("earlier")
                    .beside(before.place, "later, but it stands before")
                    .help("put the entries in chronological order, the earliest first"),
                );
                continue;
            }
            latest = firm::date(entry.from.as_ref()).or(latest);
        }
        findings.extend(ends(impression).map(|(earlier, before, to)| {
            let whom = wording::party(catalogue, &earlier.party);
            Finding::new(
                Code::ProvenanceOrder,
                to.place,
                format!(
                    "in the provenance of {}, {whom} (until {}) stands after an owner until {}",
                    catalogue.sheet_number(&impression.key),
                    to.value,
                    before.value
                ),
            )
            .saying("earlier")
            .beside(before.place, "later, but it stands before")
            .help("put the entries in chronological order, the earliest first")
        }));
    }
}

/// Owners of whom only the end date is known, each with that date and the later end date of an owner who
/// stands before.
fn ends(
    impression: &Impression,
) -> impl Iterator<Item = (&ProvenanceEntry, &Placed<Date>, &Placed<Date>)> {
    let owners = impression.provenance.iter().enumerate();
    owners.filter_map(|(at, entry)| {
        let is_owner =
            |entry: &ProvenanceEntry| entry.role == PartyRole::Owner && entry.is_certain();
        let has_only_an_end = is_owner(entry) && entry.from.is_none();
        let to = firm::date(entry.to.as_ref()).filter(|_| has_only_an_end)?;
        let before = impression.provenance.get(..at)?.iter();
        let mut before = before.filter(|before| is_owner(before));
        let later = before.find_map(|b| {
            firm::date(b.to.as_ref()).filter(|b| firm::is_before(&to.value, &b.value))
        })?;
        Some((entry, later, to))
    })
}

/// Two owners, or two keepers, certainly had one sheet at the same time, by one record of it or by two
/// (docs/definitions.md, "Spells of ownership"). Agents are left out because they handle what others
/// own; entries that may be of another sheet are left out too.
pub(super) fn overlap(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    let mut sheets: BTreeMap<ImpressionKey, Vec<Entry<'_>>> = BTreeMap::new();
    for (_, impression) in catalogue.impressions() {
        let sheet = sheets.entry(studies.groups.first_of(&impression.key));
        let entries = impression.provenance.iter();
        let entries = entries.map(|entry| (&impression.key, entry));
        sheet.or_default().extend(entries);
    }
    for entries in sheets.values() {
        for (at, later) in entries.iter().enumerate() {
            let earlier = entries.get(..at).unwrap_or_default();
            findings.extend(
                earlier
                    .iter()
                    .find(|earlier| have_it_together(catalogue, earlier.1, later.1))
                    .map(|earlier| overlapping(catalogue, *earlier, *later)),
            );
        }
    }
}

/// An entry, with the record it is in.
type Entry<'a> = (&'a ImpressionKey, &'a ProvenanceEntry);

fn overlapping(
    catalogue: &Catalogue,
    (other_record, earlier): Entry<'_>,
    (record, later): Entry<'_>,
) -> Finding {
    let number = catalogue.sheet_number(record);
    let sheet = if record == other_record {
        number
    } else {
        let other = catalogue.sheet_number(other_record);
        format!("{number}, the same sheet as {other},")
    };
    let verb = match later.role {
        PartyRole::Keeper => "kept",
        PartyRole::Owner | PartyRole::Agent => "owned",
    };
    let (one, two) = (
        wording::party(catalogue, &earlier.party),
        wording::party(catalogue, &later.party),
    );
    let place = |entry: &ProvenanceEntry, otherwise| {
        let dates = [entry.from.as_ref(), entry.to.as_ref()];
        dates
            .into_iter()
            .flatten()
            .next()
            .map_or(otherwise, |d: &Placed<Date>| d.place)
    };
    Finding::new(
        Code::ProvenanceOverlap,
        place(later, later.place),
        format!(
            "{sheet} is said to have been {verb} by {one} and by {two} at the same time"
        ),
    )
    .saying(two)
    .beside(place(earlier, earlier.place), one)
    .help("correct the dates, mark the one who only handled or kept it, or see whether two sheets are meant")
}

fn have_it_together(catalogue: &Catalogue, one: &ProvenanceEntry, two: &ProvenanceEntry) -> bool {
    one.role == two.role
        && one.role != PartyRole::Agent
        && one.is_certain()
        && two.is_certain()
        && are_different(catalogue, &one.party, &two.party)
        && (is_within(one, two) || is_within(two, one))
}

/// Whether two parties are certainly two. An undisclosed party may be anyone, and a holder that took another
/// over counts as one with it.
fn are_different(catalogue: &Catalogue, one: &Party, two: &Party) -> bool {
    match (one, two) {
        (Party::Record(one), Party::Record(two)) => !catalogue.are_one_house(one, two),
        (Party::Named(one), Party::Named(two)) => one.value != two.value,
        _ => false,
    }
}

/// Whether `one` certainly had the sheet at a moment within the time for which `two` certainly had it. The
/// first and last day of a time do not count: on these the sheet may change hands.
fn is_within(one: &ProvenanceEntry, two: &ProvenanceEntry) -> bool {
    let Some((start, end)) = certain_time(two) else {
        return false;
    };
    let is_inside = |first: Option<Day>, last: Option<Day>| matches!((first, last), (Some(first), Some(last)) if start < first && last < end);
    let at = |date: Option<&Placed<Date>>| {
        firm::date(date)
            .is_some_and(|d| is_inside(firm::first_day(&d.value), firm::last_day(&d.value)))
    };
    // Two entries of the very same time overlap though neither begins inside the other.
    let is_same_time =
        certain_time(one).is_some_and(|(from, to)| from < to && from.max(start) < to.min(end));
    at(one.from.as_ref()) || at(one.to.as_ref()) || is_same_time
}

/// The time for which the party had the sheet on any reading of the dates: first and last day.
fn certain_time(entry: &ProvenanceEntry) -> Option<(Day, Day)> {
    let from = firm::date(entry.from.as_ref())?;
    let to = firm::date(entry.to.as_ref())?;
    Some((firm::last_day(&from.value)?, firm::first_day(&to.value)?))
}
