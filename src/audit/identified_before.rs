//! A rule on sheets that an edition identified before a neighbouring state was described: the editions tell it where the
//! records give no dates (docs/definitions.md, "The register").

use super::identification::neighbours;
use super::wording;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::issued_address::IssuedAddress;
use crate::model::issued_reading::IssuedReadings;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::printing::Printing;
use crate::model::register::{Aspect, Register};
use crate::model::state::State;
use crate::study::Studies;
use crate::study::agree::contradiction;
use crate::study::candidates::candidates;

/// A sheet keeps an identification of an edition that did not know a neighbouring state, nothing says that it was looked at
/// since, and what is recorded of it leaves that state possible.
pub(super) fn look_again(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    let Some(register) = &catalogue.register else {
        return;
    };
    for (design, impression) in catalogue.impressions() {
        let Some(reading) = &impression.identified else {
            continue;
        };
        let Some((edition, state)) = unknown_then(register, design, impression, reading) else {
            continue;
        };
        let name = wording::state(studies, design, &state.key.value);
        findings.push(
            Finding::new(
                Code::LookAgain,
                reading.place,
                format!(
                    "{} has the identification that edition {edition} gave it, before {name} was described",
                    catalogue.sheet_number(&impression.key)
                ),
            )
            .beside(state.key.place, format!("{name}, not in that edition"))
            .help(format!("look whether the sheet is {name}, and date the identification")),
        );
    }
}

/// The last edition in which a neighbouring state was not known, where the sheet was identified as it is now by then; and
/// the state.
fn unknown_then<'a>(
    register: &'a Register,
    design: &'a Design,
    impression: &Impression,
    reading: &Identification,
) -> Option<(&'a str, &'a State)> {
    let address = IssuedAddress::Record(Target::Impression(impression.key.clone()));
    let said = register.entry(&address)?.said.get(&Aspect::Identified)?;
    let now = IssuedReadings::of(Some(reading)).to_string();
    let (identified, last) = said.iter().last()?;
    if last != now {
        return None;
    }
    neighbours(design, reading).into_iter().find_map(|state| {
        let key = state.key.value.clone();
        let address = IssuedAddress::Part(design.key.clone(), DesignPart::State, key);
        let first = register.entry(&address).map(|entry| entry.since.value);
        // The edition before the one that first had the state; the last where none has it yet.
        let before = first.unwrap_or(register.editions.len()).checked_sub(1)?;
        let edition = register.editions.get(before)?;
        // Where the record gives both dates, the rule on dates judges.
        let is_judged = reading.claim.date.is_some() && state.described.is_some();
        let looked_at = reading.claim.date.as_ref();
        let is_before =
            looked_at.is_none_or(|date| date.value.certainly_before(&edition.dated.value));
        let is_told = identified <= before && is_before && !is_judged;
        (is_told && may_be(design, impression, reading, state))
            .then_some((edition.edition.value.as_str(), state))
    })
}

/// Whether a sheet may be in a state: a printing that it is identified with contains the state, and no observation
/// contradicts it.
fn may_be(
    design: &Design,
    impression: &Impression,
    reading: &Identification,
    state: &State,
) -> bool {
    let of_printing = |printing: Option<&Printing>| {
        let mut printings = reading.printing.iter();
        let is_of = |printing: &Printing| printings.any(|key| key.value == printing.key.value);
        reading.printing.is_empty() || printing.is_some_and(is_of)
    };
    let mut candidates = candidates(design).into_iter();
    let is_possible = candidates.any(|candidate| {
        let is_state = candidate
            .state
            .is_some_and(|s| s.key.value == state.key.value);
        is_state && of_printing(candidate.printing)
    });
    is_possible && {
        let mut supposed = impression.clone();
        supposed.identified = Some(Identification {
            state: Some(StateReading::OneOf(vec![state.key.clone()])),
            or: Vec::new(),
            ..reading.clone()
        });
        contradiction(design, &supposed).is_none()
    }
}
