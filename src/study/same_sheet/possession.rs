//! Possession: the times for which a party certainly had a sheet.
//!
//! In: an impression. Out: [`Possession`]s.
//! Method: agents handle what others own and possess nothing. An entry that is not certain, or may be of another
//! sheet, proves nothing. A museum or library that is recorded to have a sheet has it still; a private owner
//! is only known to have had one on the day of the last first-hand sighting
//! (`docs/trade.md, "One owner at a time"`).
//! Not here: comparing them (`compare::custody`).

use super::days::{STILL, TODAY, firm, met};
use super::facts::CatalogueFacts;
use super::reason::PartyIdentity;
use keyblock_model::edtf::Day;
use keyblock_model::impression::{Impression, Status};
use keyblock_model::place::Place;
use keyblock_model::provenance::{PartyRole, ProvenanceEntry};

/// A time for which a party certainly had a sheet.
pub(super) struct Possession {
    pub(super) role: PartyRole,
    pub(super) who: PartyIdentity,
    /// The days from which and until which, on any reading of the dates.
    pub(super) lasted: Option<(Day, Day)>,
    /// Spans of days on some day of each of which they certainly had it.
    pub(super) moments: Vec<(Day, Day)>,
    pub(super) place: Place,
}

/// The possessions of every party that certainly owned or kept a sheet.
pub(super) fn possessions(facts: &CatalogueFacts<'_>, impression: &Impression) -> Vec<Possession> {
    let mut possessions: Vec<Possession> =
        impression.provenance.iter().filter_map(of_entry).collect();
    if impression.status.value == Status::Located {
        for (role, who, place) in present(impression) {
            let last = possessions
                .iter_mut()
                .rfind(|possession| possession.role == role);
            let own = still(facts, impression, role, who, place, last);
            possessions.extend(own);
        }
    }
    possessions
}

fn of_entry(entry: &ProvenanceEntry) -> Option<Possession> {
    if entry.role == PartyRole::Agent || !entry.is_certain() {
        return None;
    }
    let from = firm(entry.from.as_ref());
    let to = firm(entry.to.as_ref());
    let lasted = match (from, to) {
        (Some((_, from)), Some((to, _))) if from < to => Some((from, to)),
        _ => None,
    };
    Some(Possession {
        role: entry.role,
        who: PartyIdentity::of(&entry.party)?,
        lasted,
        moments: from.into_iter().chain(to).collect(),
        place: entry.place,
    })
}

/// The owner and the keeper of a sheet now; the holder is the owner where no other is named. Joint owners are several at one
/// time, so that none of them excludes another owner.
fn present(impression: &Impression) -> Vec<(PartyRole, PartyIdentity, Place)> {
    let holder = impression
        .holder
        .as_ref()
        .map(|key| (PartyIdentity::Record(key.value.clone()), key.place));
    let owner = match impression.owners.as_slice() {
        [] => {
            let owned = holder.map(|(who, place)| (PartyRole::Owner, who, place));
            return owned.into_iter().collect();
        }
        [only] => Some(only),
        [_, _, ..] => None,
    };
    let place = impression
        .holder
        .as_ref()
        .map_or(impression.place, |h| h.place);
    let owned = owner
        .and_then(PartyIdentity::of)
        .map(|who| (PartyRole::Owner, who, place));
    let kept = holder.map(|(who, place)| (PartyRole::Keeper, who, place));
    owned.into_iter().chain(kept).collect()
}

/// Extends the last possession of the party that has the sheet now; returns a possession of its own where
/// the provenance does not end with that party.
fn still(
    facts: &CatalogueFacts<'_>,
    impression: &Impression,
    role: PartyRole,
    who: PartyIdentity,
    place: Place,
    last: Option<&mut Possession>,
) -> Option<Possession> {
    let key = match &who {
        PartyIdentity::Record(key) => Some(key),
        PartyIdentity::Named(_) => None,
    };
    let is_lasting = key.is_some_and(|key| facts.is_lasting(key));
    if !is_lasting && key.is_some_and(|key| facts.is_public(key)) {
        // A dealer sells what it has, and a museum that another took over has nothing.
        return None;
    }
    let met = met(impression);
    let until = if is_lasting { STILL } else { met?.0 };
    match last {
        Some(possession) if possession.who == who => {
            let from = possession.moments.first().map(|(_, last)| *last);
            if let Some(from) = from.filter(|from| possession.lasted.is_none() && *from < until) {
                possession.lasted = Some((from, until));
            }
            possession.moments.extend(met.filter(|_| !is_lasting));
            None
        }
        _ => Some(Possession {
            role,
            who,
            lasted: is_lasting.then_some((TODAY, STILL)),
            moments: met.into_iter().filter(|_| !is_lasting).collect(),
            place,
        }),
    }
}
