//! Rules: a person is said to have done something before birth or after death.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Certainty, Claim, Statements};
use crate::model::codes::Code;
use crate::model::design::Maker;
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

/// Something that a person is said to have done, and its date.
struct DatedAct<'a> {
    /// "printing `own` of design 14".
    what: String,
    date: &'a Placed<Date>,
}

fn person<'a>(catalogue: &'a Catalogue, key: Option<&Placed<Key>>) -> Option<&'a Person> {
    catalogue.people.get(&key?.value)
}

/// The finding where an act is dated before the person's birth or after the death.
fn outside_life(person: &Person, act: &DatedAct) -> Option<Finding> {
    let died = firm::date(person.died.as_ref());
    let died = died.filter(|died| firm::is_before(&died.value, &act.date.value));
    match died {
        Some(died) => Some(impossible(person, act, died, "died")),
        None => before_birth(person, act),
    }
}

/// The finding where an act is dated before the person's birth.
fn before_birth(person: &Person, act: &DatedAct) -> Option<Finding> {
    let born = firm::date(person.born.as_ref())?;
    let is_earlier = firm::is_before(&act.date.value, &born.value);
    is_earlier.then(|| impossible(person, act, born, "was born"))
}

fn impossible(
    person: &Person,
    act: &DatedAct,
    limit: &Placed<Date>,
    word: &'static str,
) -> Finding {
    Finding::new(
        Code::LifeDates,
        act.date.place,
        format!(
            "{} is dated {}, but {} {word} in {}",
            act.what, act.date.value, person.name.value, limit.value
        ),
    )
    .beside(limit.place, word)
    .help("correct one of the dates, or say who else it was")
}

/// A printing by the artist, in the artist's lifetime or by a named printer is dated outside that life.
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
                design.number
            );
            let act = DatedAct { what, date };
            let printer = certain(&printing.printer).and_then(|p| person(catalogue, Some(p)));
            findings.extend(printer.and_then(|printer| outside_life(printer, &act)));
            let is_the_printer = |artist: &Person| printer.is_some_and(|p| p.key == artist.key);
            if let Some(artist) = artist.filter(|artist| !is_the_printer(artist)) {
                findings.extend(against_kind(artist, printing, &act));
            }
        }
    }
}

/// A printing is dated on the other side of the artist's death than its kind says.
fn against_kind(artist: &Person, printing: &Printing, act: &DatedAct) -> Option<Finding> {
    let kind = certain(&printing.kind)?;
    match kind.value {
        PrintingKind::Artist | PrintingKind::Lifetime => Some(
            outside_life(artist, act)?.beside(kind.place, "said to be in the artist's lifetime"),
        ),
        PrintingKind::Posthumous => {
            let died = firm::date(artist.died.as_ref())?;
            firm::is_before(&act.date.value, &died.value).then(|| {
                Finding::new(
                    Code::LifeDates,
                    act.date.place,
                    format!(
                        "{} is posthumous, but dated {}, before {} died in {}",
                        act.what, act.date.value, artist.name.value, died.value
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

/// Whether a maker is the one whose composition the print repeats, who may have been dead for centuries.
fn is_repeated(maker: &Maker) -> bool {
    let role = maker.role.as_ref();
    role.is_some_and(|role| role.value.as_str() == "after")
}

/// A design, a state or the years of a person's work are dated outside the life of the maker. The one after whose
/// composition a print was made is no such maker: prints repeat the works of the dead.
pub(super) fn makers(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for person in catalogue.people.values() {
        if let Some(date) = firm::date(person.active.as_ref()) {
            let what = format!("the work of {}", person.name.value);
            findings.extend(outside_life(person, &DatedAct { what, date }));
        }
    }
    for design in catalogue.designs.values() {
        let what = format!("design {}", design.number);
        if let Some(date) = firm::own_date(&design.date) {
            let act = DatedAct { what, date };
            let makers = design
                .makers
                .iter()
                .filter(|m| m.claim.certainty() == Certainty::Certain && !is_repeated(m))
                .filter_map(|m| person(catalogue, Some(&m.person)));
            findings.extend(makers.filter_map(|maker| outside_life(maker, &act)));
        }
        for state in design.standing_states() {
            if let (Some(date), Some(by)) = (
                firm::own_date(&state.date),
                person(catalogue, state.by.as_ref()),
            ) {
                let name = wording::state(studies, design, &state.key.value);
                let what = format!("{name} of design {}", design.number);
                findings.extend(outside_life(by, &DatedAct { what, date }));
            }
        }
    }
}

/// An acquisition, a sighting or a statement is dated outside the life of the person who made it.
pub(super) fn witnesses(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        for entry in &impression.provenance {
            // An estate may sell long after the death, but a person acquires nothing after it.
            let Party::Record(key) = &entry.party else {
                continue;
            };
            let Some(party) = catalogue.people.get(&key.value) else {
                continue;
            };
            if let (Some(date), PartyRole::Owner) = (firm::date(entry.from.as_ref()), entry.role) {
                let what = format!(
                    "the acquisition of {}",
                    catalogue.sheet_number(&impression.key)
                );
                findings.extend(outside_life(party, &DatedAct { what, date }));
            } else if let Some(date) = firm::date(entry.from.as_ref().or(entry.to.as_ref())) {
                // A firm may go on under the name of a dead person, but not before the person's birth.
                let what = format!(
                    "the entry of {} in the provenance of {}",
                    party.name.value,
                    catalogue.sheet_number(&impression.key)
                );
                findings.extend(before_birth(party, &DatedAct { what, date }));
            }
        }
        for sighting in &impression.sightings {
            let by = match &sighting.by {
                Some(Party::Record(key)) => catalogue.people.get(&key.value),
                _ => None,
            };
            if let (Some(by), Some(date)) = (by, firm::date(Some(&sighting.date))) {
                let what = format!(
                    "the sighting of {}",
                    catalogue.sheet_number(&impression.key)
                );
                findings.extend(outside_life(by, &DatedAct { what, date }));
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
                let what = format!(
                    "a statement about {}",
                    catalogue.sheet_number(&impression.key)
                );
                findings.extend(outside_life(by, &DatedAct { what, date }));
            }
        }
    }
}
