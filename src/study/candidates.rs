//! Candidates: what a sheet of a design can be, and what a state changed.
//!
//! A candidate is a state with a printing that contains it (DESIGN.md, appendix).

use crate::model::design::Design;
use crate::model::impression::{Identification, StateReading};
use crate::model::key::Key;
use crate::model::point::{Point, RestsOn, Value};
use crate::model::printing::Printing;
use crate::model::state::State;

use super::allowed::{both, is_same_set, is_told_apart, shown_values};
use super::census::readings;
use super::numerals::predecessors;

/// A state with a printing that contains it, or a state that no printing names.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// The state.
    pub state: &'a State,
    /// The printing; `None` for a state that no printing names.
    pub printing: Option<&'a Printing>,
}

impl<'a> Candidate<'a> {
    /// What it allows at a point; `None` where neither its state nor its printing says anything.
    #[must_use]
    pub fn allows(&self, point: &Point) -> Option<Vec<&'a Value>> {
        let of_printing = self.printing.and_then(|p| shown_values(&p.shows, point));
        both(shown_values(&self.state.shows, point), of_printing)
    }
}

/// Every candidate of a design, by state and printing in the record's order.
#[must_use]
pub fn candidates(design: &Design) -> Vec<Candidate<'_>> {
    let mut found = Vec::new();
    for state in design.standing_states() {
        let before = found.len();
        found.extend(
            design
                .standing_printings()
                .filter(|p| p.states.contains(&state.key.value))
                .map(|printing| Candidate {
                    state,
                    printing: Some(printing),
                }),
        );
        if found.len() == before {
            found.push(Candidate {
                state,
                printing: None,
            });
        }
    }
    found
}

/// The candidates that an identification allows, in all its readings; every candidate where it
/// names neither state nor printing. Blocks in different conditions allow each state named.
#[must_use]
pub fn allowed_by<'a>(design: &'a Design, identified: &Identification) -> Vec<Candidate<'a>> {
    candidates(design)
        .into_iter()
        .filter(|candidate| readings(identified).any(|reading| candidate.fits(reading)))
        .collect()
}

impl Candidate<'_> {
    /// Whether a reading, taken without its alternatives, allows the candidate.
    #[must_use]
    pub fn fits(&self, reading: &Identification) -> bool {
        let state = &self.state.key.value;
        let fits_state = match &reading.state {
            None => true,
            Some(StateReading::OneOf(states)) => states.iter().any(|s| s.value == *state),
            Some(StateReading::ByMatrix(by_matrix)) => {
                by_matrix.iter().any(|(_, s)| s.value == *state)
            }
        };
        let fits_printing = reading.printing.is_empty()
            || self
                .printing
                .is_some_and(|p| reading.printing.iter().any(|r| r.value == p.key.value));
        fits_state && fits_printing
    }
}

/// How a state differs, at one point, from a state it follows.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The point.
    pub point: Key,
    /// What was shown before; empty where nothing is said.
    pub before: Vec<Value>,
    /// What is shown now.
    pub after: Vec<Value>,
    /// Whether the two can be told apart there: both are known and share no value.
    pub tells_apart: bool,
}

/// What a state changed against one of the states it follows.
#[derive(Clone, Debug, PartialEq)]
pub struct Changes {
    /// The state it follows.
    pub follows: Key,
    /// The points at which something else is shown, in the record's order.
    pub changed: Vec<Change>,
}

impl Changes {
    /// Whether some point tells the two states apart.
    #[must_use]
    pub fn tell_apart(&self) -> bool {
        self.changed.iter().any(|c| c.tells_apart)
    }
}

/// What `state` changed against each state it follows; empty for a first state.
#[must_use]
pub fn changes(design: &Design, state: &State) -> Vec<Changes> {
    predecessors(design, state)
        .into_iter()
        .map(|before| Changes {
            follows: before.key.value.clone(),
            changed: design
                .points
                .iter()
                .filter(|p| p.rests_on.value == RestsOn::Matrix)
                .filter_map(|point| change_at(point, before, state))
                .collect(),
        })
        .collect()
}

fn change_at(point: &Point, before: &State, after: &State) -> Option<Change> {
    let old = shown_values(&before.shows, point);
    let new = shown_values(&after.shows, point);
    // A state that says nothing at a point has not said that it changed there.
    let new = new?;
    let tells_apart = match &old {
        Some(old) if is_same_set(old, &new) => return None,
        Some(old) => is_told_apart(point, old, &new),
        None => false,
    };
    Some(Change {
        point: point.key.value.clone(),
        before: old.into_iter().flatten().cloned().collect(),
        after: new.into_iter().cloned().collect(),
        tells_apart,
    })
}
