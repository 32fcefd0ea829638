//! Which state and printing a sheet is: as properties where that is certain and one, as assignments where it is not.

use super::node::Node;
use super::parts::{display, is_certain, timespan};
use super::{concepts, ids, parts};
use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::key::Key;
use crate::page::html::CleanHtml;
use crate::page::{Here, claims, opinions, readings};
use crate::study::agree::contradiction;

/// What is certain of a sheet: one state, one printing.
#[derive(Default)]
pub(super) struct CertainReading<'a> {
    pub state: Option<&'a Key>,
    pub printing: Option<&'a Key>,
}

impl<'a> CertainReading<'a> {
    /// What the catalogue's own identification says for certain. Nothing, where another reading is possible or the
    /// sheet's own observations contradict it.
    pub fn of(design: &Design, impression: &'a Impression) -> CertainReading<'a> {
        let Some(reading) = &impression.identified else {
            return CertainReading::default();
        };
        let is_plain = is_certain(&reading.claim) && reading.or.is_empty();
        if !is_plain || contradiction(design, impression).is_some() {
            return CertainReading::default();
        }
        let one_of = |keys: &'a [crate::model::place::Placed<Key>]| match keys {
            [one] => Some(&one.value),
            _ => None,
        };
        CertainReading {
            state: match &reading.state {
                Some(StateReading::OneOf(states)) => one_of(states),
                Some(StateReading::ByMatrix(_)) | None => None,
            },
            printing: one_of(&reading.printing),
        }
    }
}

/// The assignments of readings that are not certain, of several, or made by others: of the states, as what the sheet
/// shows, and of the printings, as what its production is part of.
pub(super) fn assignments(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    certain: &CertainReading<'_>,
) -> Vec<Node> {
    let mut all = Vec::new();
    if let Some(reading) = &impression.identified {
        for one in readings::all(reading) {
            let said = readings::full(here, design, one);
            let said = readings::qualified(here, design, impression, one, &said);
            let is_own = std::ptr::eq(one, reading);
            let known = if is_own {
                (certain.state.is_some(), certain.printing.is_some())
            } else {
                (false, false)
            };
            all.extend(assigned(here, design, one, &said, known));
        }
    }
    for (opinion, said) in std::iter::zip(
        &impression.opinions,
        opinions::all(here, design, impression),
    ) {
        let known = (false, false);
        all.extend(assigned(here, design, &opinion.reading, &said, known));
    }
    all
}

/// The opinions of others that name no state and no printing of this catalogue, in words.
pub(super) fn opinions_in_words(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> Vec<Node> {
    let lines = opinions::all(here, design, impression);
    let opinions = std::iter::zip(&impression.opinions, lines);
    opinions
        .filter(|(opinion, _)| {
            let reading = &opinion.reading;
            states(reading).is_empty() && reading.printing.is_empty()
        })
        .filter_map(|(_, said)| parts::statement(concepts::EDITION, said.plain()))
        .collect()
}

/// The states that a reading names.
fn states(reading: &Identification) -> Vec<&Key> {
    match &reading.state {
        Some(StateReading::OneOf(states)) => states.iter().map(|state| &state.value).collect(),
        Some(StateReading::ByMatrix(pairs)) => {
            pairs.iter().map(|(_, state)| &state.value).collect()
        }
        None => Vec::new(),
    }
}

/// The assignments of one reading; `known` tells that its state, or its printing, is stated as a property.
fn assigned(
    here: &Here<'_>,
    design: &Design,
    reading: &Identification,
    said: &CleanHtml,
    known: (bool, bool),
) -> Vec<Node> {
    let claim = &reading.claim;
    let words = here.words();
    let states: Vec<Node> = states(reading)
        .into_iter()
        .map(|state| ids::state(here, design, state))
        .collect();
    let printings: Vec<Node> = reading
        .printing
        .iter()
        .map(|printing| ids::printing(here, design, &printing.value))
        .collect();
    let assignment = |property: Option<&str>, of: &str, things: Vec<Node>| {
        let certainty = claims::certainty(here, claim.certainty());
        let name = format!("{}: {certainty}", words.word(of));
        let statement = Node {
            content: Some(said.plain()),
            ..Node::new("LinguisticObject")
        };
        let by = claim.by.as_ref().and_then(|by| ids::agent(here, &by.value));
        let date = claim.date.as_ref();
        (!things.is_empty()).then(|| Node {
            identified_by: vec![display(name)],
            referred_to_by: vec![statement],
            carried_out_by: by.into_iter().collect(),
            timespan: date.and_then(|date| timespan(here, date)),
            assigned_property: property.map(str::to_owned),
            assigned: things,
            ..Node::new("AttributeAssignment")
        })
    };
    let state = assignment(Some("shows"), "state", states).filter(|_| !known.0);
    // What an impression is part of is a property of its production, so the property is not named.
    let printing = assignment(None, "printing", printings).filter(|_| !known.1);
    state.into_iter().chain(printing).collect()
}
