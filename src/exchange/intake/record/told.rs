//! The parts of a record that say who told it: opinions, the acquisition, sightings.

use super::described::unplaced;
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::facts::Facts;
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::{ProposedRow, RowDoubt};
use crate::exchange::intake::reading::names::RecordNames;
use crate::model::certainty::{Basis, Claim};
use crate::model::edtf::Date;
use crate::model::impression::{Identification, Opinion, StateReading};
use crate::model::key::Key;
use crate::model::place::Place;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry, Sighting};

/// Who says what a row says: who hands in, else the holder.
pub(super) fn speaker(handing: &HandingIn, holder: Option<&Key>) -> Option<Key> {
    handing.by.clone().or_else(|| holder.cloned())
}

/// What the contributor takes the sheet to be. Without a contributor there is nobody whose opinion it is, and the words
/// stand in `[as_given]` alone.
pub(super) fn opinions(row: &ProposedRow, handing: &HandingIn, by: Option<&Key>) -> Vec<Opinion> {
    let Some(by) = by else { return Vec::new() };
    let claim = Claim {
        by: Some(unplaced(by.clone())),
        date: handing.seen.clone().map(unplaced),
        basis: row.facts.basis.map(unplaced),
        ..Claim::default()
    };
    let reading = |states: &[Key], printings: &[Key]| Identification {
        state: (!states.is_empty())
            .then(|| StateReading::OneOf(states.iter().cloned().map(unplaced).collect())),
        printing: printings.iter().cloned().map(unplaced).collect(),
        variant: None,
        kind: None,
        why: None,
        claim: claim.clone(),
        or: Vec::new(),
        place: Place::default(),
    };
    let mut opinions = Vec::new();
    let named = &row.named;
    if !named.states.is_empty() || !named.printings.is_empty() {
        opinions.push(Opinion {
            said: None,
            after: None,
            reading: reading(&named.states, &named.printings),
        });
    }
    for earlier in &named.opinions {
        opinions.push(Opinion {
            said: Some(earlier.said.clone()),
            after: Some(unplaced(earlier.after.clone())),
            reading: reading(&[], &[]),
        });
    }
    // A state by a catalogue that is not known is said in the contributor's own words.
    if named.opinions.is_empty() {
        let states = row.facts.references.iter().filter(|said| !said.is_not_in);
        for state in states.filter_map(|said| said.state.as_ref()) {
            opinions.push(Opinion {
                said: Some(state.written()),
                after: None,
                reading: reading(&[], &[]),
            });
        }
    }
    opinions
}

/// The entry for how the holder acquired the sheet, and one for the owner before who gave or left it.
///
/// Only where every word of the credit line was understood and nothing in it is doubtful; else the line says it alone. From
/// whom something was bought is no owner for certain, and joint owners are not known from a line.
pub(super) fn acquisition(
    row: &ProposedRow,
    columns: &[ColumnReading],
    holder: Option<&Key>,
    records: &RecordNames,
) -> Vec<ProvenanceEntry> {
    let credit = row.facts.credit();
    let (Some(holder), Some(how)) = (holder, &credit.how) else {
        return Vec::new();
    };
    let of_credit = columns.iter().filter(|c| c.holds == Holds::Credit);
    let of_credit: Vec<usize> = of_credit.map(|column| column.column).collect();
    if credit.is_joint || !is_certain(row, &of_credit) {
        return Vec::new();
    }
    let is_given = matches!(how.as_str(), "gift" | "bequest");
    let is_kept = matches!(how.as_str(), "loan" | "deposit");
    let mut entries = Vec::new();
    if let Some(from) = credit.from.as_ref().filter(|_| is_given) {
        let party = match party(records, from) {
            Some(key) => Party::Record(unplaced(key)),
            None => Party::Named(unplaced(from.clone())),
        };
        entries.push(entry(PartyRole::Owner, party));
    }
    let role = if is_kept {
        PartyRole::Keeper
    } else {
        PartyRole::Owner
    };
    let year = credit.year.map(|year| format!("{year:04}"));
    let year = year.and_then(|year| Date::parse(&year).ok());
    let is_from_owner = !entries.is_empty() && credit.through.is_none();
    entries.push(ProvenanceEntry {
        from: year.map(unplaced),
        how: Some(unplaced(how.clone())),
        direct: is_from_owner.then_some(true),
        ..entry(role, Party::Record(unplaced(holder.clone())))
    });
    entries
}

/// Whether every word of the credit line was read, without a doubt.
fn is_certain(row: &ProposedRow, columns: &[usize]) -> bool {
    let is_unread = row
        .unread
        .iter()
        .any(|(column, _)| columns.contains(column));
    let is_doubtful = row.doubts.iter().any(|doubt| match doubt {
        RowDoubt::Cell { column, .. } | RowDoubt::Contradiction { column, .. } => {
            columns.contains(column)
        }
        RowDoubt::Against { columns: at, .. } => at.iter().any(|at| columns.contains(at)),
        RowDoubt::Said(_) => false,
    });
    !is_unread && !is_doubtful
}

fn entry(role: PartyRole, party: Party) -> ProvenanceEntry {
    ProvenanceEntry {
        role,
        party,
        from: None,
        to: None,
        how: None,
        at_place: None,
        lot: None,
        price: None,
        direct: None,
        sold: None,
        this_sheet: None,
        claim: Claim::default(),
        place: Place::default(),
    }
}

/// That the sheet was seen or reported: on the day that the row says, else when the file was, by whom the row names, else
/// by who hands in. `named`: who saw it, in the words of the row.
pub(super) fn sightings(
    facts: &Facts,
    handing: &HandingIn,
    by: Option<&Key>,
    named: Option<&str>,
) -> Vec<Sighting> {
    let date = facts
        .seen
        .as_deref()
        .cloned()
        .or_else(|| handing.seen.clone());
    let Some(date) = date else { return Vec::new() };
    let named = match (&facts.seen_by, named) {
        (Some(key), _) => Some(Party::Record(unplaced(key.clone()))),
        (None, Some(name)) => Some(Party::Named(unplaced(name.to_owned()))),
        (None, None) => None,
    };
    let by = named.or_else(|| by.cloned().map(|by| Party::Record(unplaced(by))));
    vec![Sighting {
        date: unplaced(date),
        by,
        basis: Some(unplaced(facts.basis.unwrap_or(Basis::Report))),
        cite: None,
        at: None,
        place: Place::default(),
    }]
}

/// The holder or person of a name; `None` where no record, or one of each, has it.
fn party(records: &RecordNames, name: &str) -> Option<Key> {
    match (records.holders.named(name), records.people.named(name)) {
        (Some(key), None) | (None, Some(key)) => Some(key),
        _ => None,
    }
}

/// Numbers that the sheet had before.
pub(super) fn former_numbers(text: &str) -> impl Iterator<Item = &str> {
    let numbers = text.split([';', '\n']).map(str::trim);
    numbers.filter(|number| !number.is_empty())
}
