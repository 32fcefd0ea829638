//! Rules on identifications, against what was seen on the sheet and what the design records.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
use crate::model::printing::{Printing, StatesPrinted};
use crate::model::state::State;
use crate::study::Studies;
use crate::study::agree::{Clash, Contradiction, ShownBy};

use super::wording;

/// The observations contradict every candidate that the identification allows (docs/definitions.md,
/// "Contradiction and departure").
pub(super) fn contradicted(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        for (number, contradiction) in &study.contradictions {
            let finding = design
                .impressions
                .get(number)
                .and_then(|i| clashing(catalogue, studies, design, i, contradiction));
            findings.extend(finding);
        }
    }
}

fn clashing(
    catalogue: &Catalogue,
    studies: &Studies,
    design: &Design,
    impression: &Impression,
    contradiction: &Contradiction,
) -> Option<Finding> {
    let identified = impression.identified.as_ref()?;
    let first = contradiction.clashes.first()?;
    let point = design.point(&first.point)?;
    let observation = impression.observed.get(first.observation.index())?;
    let more = match contradiction.clashes.len() {
        1 => String::new(),
        2 => ", and another observation contradicts it too".to_owned(),
        n => format!(", and {} other observations contradict it too", n - 1),
    };
    let message = format!(
        "{} is identified as {}, but at `{}`, where {} shows {}, {} was seen{more}",
        catalogue.sheet_number(&impression.key),
        wording::reading(studies, design, identified),
        first.point,
        shown_by(studies, design, first),
        wording::values(point, first.allowed.iter()),
        wording::seen(point, &observation.seen),
    );
    let mut finding = Finding::new(
        Code::IdentificationContradicted,
        wording::place_of_reading(identified),
        message,
    )
    .saying(wording::attributed(
        catalogue,
        &identified.claim,
        "identified",
    ));
    for clash in &contradiction.clashes {
        if let Some(observation) = impression.observed.get(clash.observation.index()) {
            let label = wording::attributed(catalogue, &observation.claim, "seen");
            finding = finding.beside(observation.place, label);
        }
    }
    if let Some(place) = first
        .shown_by
        .first()
        .and_then(|by| shown_at(design, by, &first.point))
    {
        finding = finding.beside(place, "shown here");
    }
    Some(finding.help("look again, or lower the certainty of one of the two"))
}

fn shown_by(studies: &Studies, design: &Design, clash: &Clash) -> String {
    let names = clash.shown_by.iter().map(|by| match by {
        ShownBy::State(key) => wording::state(studies, design, key),
        ShownBy::Printing(key) => wording::printing(key),
        ShownBy::Variant(key) => format!("variant `{key}`"),
    });
    let names: Vec<String> = names.collect();
    names.join(" with ")
}

fn shown_at(design: &Design, by: &ShownBy, point: &Key) -> Option<Place> {
    let shows = match by {
        ShownBy::State(key) => &design.state(key)?.shows,
        ShownBy::Printing(key) => &design.printing(key)?.shows,
        ShownBy::Variant(key) => &design.variant(key)?.shows,
    };
    Some(shows.at(point)?.place)
}

/// Every reading of every identification, with the record it is in.
fn readings(
    catalogue: &Catalogue,
) -> impl Iterator<Item = (&Design, &Impression, &Identification)> {
    catalogue.impressions().flat_map(|(design, impression)| {
        let mut to_visit: Vec<&Identification> = impression.identified.iter().collect();
        let mut readings = Vec::new();
        while let Some(reading) = to_visit.pop() {
            readings.push((design, impression, reading));
            to_visit.extend(reading.or.iter().rev());
        }
        readings
    })
}

fn states_named(reading: &Identification) -> Vec<&Placed<Key>> {
    match &reading.state {
        None => Vec::new(),
        Some(StateReading::OneOf(states)) => states.iter().collect(),
        Some(StateReading::ByMatrix(by_matrix)) => by_matrix.iter().map(|(_, s)| s).collect(),
    }
}

/// A sheet is identified with a state that is in none of the printings it is identified with.
pub(super) fn not_in_printing(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (design, impression, reading) in readings(catalogue) {
        let printings: Vec<&Printing> = reading
            .printing
            .iter()
            .filter_map(|p| design.printing(&p.value))
            .collect();
        let Some(printing) = printings.first() else {
            continue;
        };
        for state in states_named(reading) {
            let is_contained = printings.iter().any(|p| p.states.contains(&state.value));
            if is_contained || design.state(&state.value).is_none() {
                continue;
            }
            let contained = match &printing.states {
                StatesPrinted::Some(states) => states.first().map(|s| s.place),
                StatesPrinted::All => None,
            };
            let name = wording::state(studies, design, &state.value);
            let of = wording::either(printings.iter().map(|p| wording::printing(&p.key.value)));
            findings.push(
                Finding::new(
                    Code::StateNotInPrinting,
                    state.place,
                    format!(
                        "{} is identified as {name} in {of}, which does not contain that state",
                        catalogue.sheet_number(&impression.key)
                    ),
                )
                .saying(wording::attributed(catalogue, &reading.claim, "identified"))
                .beside(
                    contained.unwrap_or(printing.key.place),
                    format!("the states of {}", wording::printing(&printing.key.value)),
                )
                .help(format!(
                    "add `{}` to the printing's `states`, or correct the identification",
                    state.value
                )),
            );
        }
    }
}

/// A sheet is identified with a state or printing that was withdrawn.
pub(super) fn withdrawn(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression, reading) in readings(catalogue) {
        if impression.standing.is_withdrawn() {
            continue;
        }
        let states = states_named(reading).into_iter().filter_map(|named| {
            let state = design.state(&named.value)?;
            let is_gone = state.standing.is_withdrawn();
            is_gone.then_some(("state", named, state.key.place))
        });
        let printings = reading.printing.iter().filter_map(|named| {
            let printing = design.printing(&named.value)?;
            let is_gone = printing.standing.is_withdrawn();
            is_gone.then_some(("printing", named, printing.key.place))
        });
        for (what, named, recorded) in states.chain(printings) {
            findings.push(
                Finding::new(
                    Code::IdentifiedWithdrawn,
                    named.place,
                    format!(
                        "{} is identified with {what} `{}`, which was withdrawn",
                        catalogue.sheet_number(&impression.key),
                        named.value
                    ),
                )
                .saying(wording::attributed(catalogue, &reading.claim, "identified"))
                .beside(recorded, "withdrawn")
                .help("identify the sheet with what replaces it"),
            );
        }
    }
}

/// A sheet was identified before a neighbouring state was described, so that the difference cannot have been
/// looked for.
pub(super) fn look_again(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression, reading) in readings(catalogue) {
        let Some(identified_on) = &reading.claim.date else {
            continue;
        };
        let described_since = neighbours(design, reading)
            .into_iter()
            .filter_map(|state| Some((state, state.described.as_ref()?)))
            .find(|(_, described)| identified_on.value.certainly_before(&described.value));
        if let Some((neighbour, described)) = described_since {
            let name = wording::state(studies, design, &neighbour.key.value);
            findings.push(
                Finding::new(
                    Code::LookAgain,
                    identified_on.place,
                    format!(
                        "{} was identified in {}, before {name} was described ({})",
                        catalogue.sheet_number(&impression.key),
                        identified_on.value,
                        described.value
                    ),
                )
                .saying(wording::attributed(catalogue, &reading.claim, "identified"))
                .beside(described.place, format!("{name} described"))
                .help(format!(
                    "look whether the sheet is {name}, and date the identification anew"
                )),
            );
        }
    }
}

/// The states beside those that a reading names, and those split from them. Withdrawn states are left out, and so are the
/// named ones, which the person who named them knew.
pub(super) fn neighbours<'a>(design: &'a Design, reading: &Identification) -> Vec<&'a State> {
    let named = states_named(reading);
    let is_named = |state: &State| named.iter().any(|n| n.value == state.key.value);
    let standing: Vec<&State> = design.standing_states().collect();
    let mut found = Vec::new();
    for (at, state) in standing.iter().enumerate() {
        let is_beside = [at.checked_sub(1), Some(at + 1)]
            .into_iter()
            .flatten()
            .filter_map(|beside| standing.get(beside))
            .any(|beside| is_named(beside));
        let is_split = state
            .split_from
            .as_ref()
            .is_some_and(|from| named.iter().any(|n| n.value == from.value));
        if !is_named(state) && (is_beside || is_split) {
            found.push(*state);
        }
    }
    found
}
