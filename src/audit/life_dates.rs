//! People who do something before they were born or after they died.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Certainty, Claim, Statements};
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::person::Person;
use crate::model::place::Placed;
use crate::model::printing::{Printing, PrintingKind};
use crate::model::provenance::{Party, PartyRole};
use crate::study::Studies;

use super::firm;
use super::wording;

/// What somebody is said to have done, and when.
struct Deed<'a> {
    /// "printing `own` of design 14".
    what: String,
    date: &'a Placed<Date>,
}

fn person<'a>(catalogue: &'a Catalogue, key: Option<&Placed<Key>>) -> Option<&'a Person> {
    catalogue.people.get(&key?.value)
}

/// What one person did outside their life.
fn outside_life(person: &Person, deed: &Deed) -> Option<Finding> {
    let died = firm::date(person.died.as_ref());
    let died = died.filter(|died| firm::is_before(&died.value, &deed.date.value));
    match died {
        Some(died) => Some(impossible(person, deed, died, "died")),
        None => before_birth(person, deed),
    }
}

/// What one person did before they were born.
fn before_birth(person: &Person, deed: &Deed) -> Option<Finding> {
    let born = firm::date(person.born.as_ref())?;
    let is_earlier = firm::is_before(&deed.date.value, &born.value);
    is_earlier.then(|| impossible(person, deed, born, "was born"))
}

fn impossible(person: &Person, deed: &Deed, limit: &Placed<Date>, word: &'static str) -> Finding {
    Finding::new(
        Code::LifeDates,
        deed.date.place,
        format!(
            "{} is dated {}, but {} {word} in {}",
            deed.what, deed.date.value, person.name.value, limit.value
        ),
    )
    .beside(limit.place, word)
    .help("correct one of the dates, or say who else it was")
}

/// Printings: those by the artist, those in the artist's lifetime, those by a named printer.
pub(super) fn printings(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let artist = person(catalogue, catalogue.settings.artist.as_ref());
    for design in catalogue.designs.values() {
        for printing in design.standing_printings() {
            let Some(date) = firm::own_date(&printing.date) else {
                continue;
            };
            let what = format!(
                "{} of design {}",
                wording::printing(&printing.key.value),
                design.key
            );
            let deed = Deed { what, date };
            let printer = certain(&printing.printer).and_then(|p| person(catalogue, Some(p)));
            findings.extend(printer.and_then(|printer| outside_life(printer, &deed)));
            let is_the_printer = |artist: &Person| printer.is_some_and(|p| p.key == artist.key);
            if let Some(artist) = artist.filter(|artist| !is_the_printer(artist)) {
                findings.extend(against_kind(artist, printing, &deed));
            }
        }
    }
}

/// A printing whose kind puts it on the other side of the artist's death.
fn against_kind(artist: &Person, printing: &Printing, deed: &Deed) -> Option<Finding> {
    let kind = certain(&printing.kind)?;
    match kind.value {
        PrintingKind::Artist | PrintingKind::Lifetime => Some(
            outside_life(artist, deed)?.beside(kind.place, "said to be in the artist's lifetime"),
        ),
        PrintingKind::Posthumous => {
            let died = firm::date(artist.died.as_ref())?;
            firm::is_before(&deed.date.value, &died.value).then(|| {
                Finding::new(
                    Code::LifeDates,
                    deed.date.place,
                    format!(
                        "{} is posthumous, but dated {}, before {} died in {}",
                        deed.what, deed.date.value, artist.name.value, died.value
                    ),
                )
                .beside(died.place, "died")
                .beside(kind.place, "said to be posthumous")
                .help("correct one of the dates, or the kind of the printing")
            })
        }
        PrintingKind::Restrike
        | PrintingKind::Recut
        | PrintingKind::Reproduction
        | PrintingKind::Proofs => None,
    }
}

fn certain<T>(statements: &Statements<T>) -> Option<&Placed<T>> {
    let own = statements.0.first()?;
    (own.claim.certainty() == Certainty::Certain).then_some(&own.is)
}

/// Makers of designs and states, and when people worked.
pub(super) fn makers(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for person in catalogue.people.values() {
        if let Some(date) = firm::date(person.active.as_ref()) {
            let what = format!("the work of {}", person.name.value);
            findings.extend(outside_life(person, &Deed { what, date }));
        }
    }
    for design in catalogue.designs.values() {
        let what = format!("design {}", design.key);
        if let Some(date) = firm::own_date(&design.date) {
            let deed = Deed { what, date };
            let makers = design
                .makers
                .iter()
                .filter(|m| m.claim.certainty() == Certainty::Certain)
                .filter_map(|m| person(catalogue, Some(&m.person)));
            findings.extend(makers.filter_map(|maker| outside_life(maker, &deed)));
        }
        for state in design.standing_states() {
            if let (Some(date), Some(by)) = (
                firm::own_date(&state.date),
                person(catalogue, state.by.as_ref()),
            ) {
                let name = wording::state(studies, design, &state.key.value);
                let what = format!("{name} of design {}", design.key);
                findings.extend(outside_life(by, &Deed { what, date }));
            }
        }
    }
}

/// Owners who acquire, and people who look and say.
pub(super) fn witnesses(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        for entry in &impression.provenance {
            // What an estate parts with, it may part with long after the death; nobody acquires
            // after it.
            let Party::Record(key) = &entry.party else {
                continue;
            };
            let Some(party) = catalogue.people.get(&key.value) else {
                continue;
            };
            if let (Some(date), PartyRole::Owner) = (firm::date(entry.from.as_ref()), entry.role) {
                let what = format!("the acquisition of {}", impression.key);
                findings.extend(outside_life(party, &Deed { what, date }));
            } else if let Some(date) = firm::date(entry.from.as_ref().or(entry.to.as_ref())) {
                // A firm may go on under the name of the dead, but nobody begins before birth.
                let what = format!(
                    "the entry of {} in the provenance of {}",
                    party.name.value, impression.key
                );
                findings.extend(before_birth(party, &Deed { what, date }));
            }
        }
        for sighting in &impression.sightings {
            let by = match &sighting.by {
                Some(Party::Record(key)) => catalogue.people.get(&key.value),
                _ => None,
            };
            if let (Some(by), Some(date)) = (by, firm::date(Some(&sighting.date))) {
                let what = format!("the sighting of {}", impression.key);
                findings.extend(outside_life(by, &Deed { what, date }));
            }
        }
        let claims: Vec<&Claim> = impression
            .identified
            .iter()
            .map(|i| &i.claim)
            .chain(impression.opinions.iter().map(|o| &o.reading.claim))
            .chain(impression.observed.iter().map(|o| &o.claim))
            .collect();
        for claim in claims {
            let by = person(catalogue, claim.by.as_ref());
            if let (Some(by), Some(date)) = (by, firm::date(claim.date.as_ref())) {
                let what = format!("a statement about {}", impression.key);
                findings.extend(outside_life(by, &Deed { what, date }));
            }
        }
    }
}
