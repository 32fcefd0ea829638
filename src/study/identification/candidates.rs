//! Candidates: the states and printings that a sheet of a design can be of.
//!
//! In: a design. Out: every [`Candidate`]; and which of them an identification allows. A candidate is a state with
//! a printing that contains it; a state that no printing contains; or a printing without a state: a recut, a
//! reproduction, or any printing of a design without states.
//! Definitions: `docs/definitions.md, "Candidates"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::candidates::candidates;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "dark" }, { key = "moonlit" }]
//! printings = [{ key = "own", kind = "artist", states = ["dark"] }, { key = "copy", kind = "recut" }]
//! "#);
//! let found = candidates(&catalogue.designs[&key("1")]);
//! let states: Vec<_> = found.iter().map(|c| c.state.map(|s| s.key.as_str())).collect();
//! let printings: Vec<_> = found.iter().map(|c| c.printing.map(|p| p.key.as_str())).collect();
//! assert_eq!(states, [Some("dark"), Some("moonlit"), None]);
//! assert_eq!(printings, [Some("own"), None, Some("copy")]);
//! ```

use super::allowed::{both, shown_values};
use crate::census::readings;
use keyblock_model::design::Design;
use keyblock_model::impression::{Identification, StateReading};
use keyblock_model::key::Key;
use keyblock_model::point::{Point, Value};
use keyblock_model::printing::Printing;
use keyblock_model::state::State;

/// A state, a printing, or a state with a printing that contains it.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// The state; `None` for a recut, a reproduction, and a printing of a design without states.
    pub state: Option<&'a State>,
    /// The printing; `None` for a state that no printing contains.
    pub printing: Option<&'a Printing>,
}

impl<'a> Candidate<'a> {
    /// The key of the state.
    #[must_use]
    pub(crate) fn state_key(&self) -> Option<&'a Key> {
        self.state.map(|state| &state.key.value)
    }

    /// The key of the printing.
    #[must_use]
    pub(crate) fn printing_key(&self) -> Option<&'a Key> {
        self.printing.map(|printing| &printing.key.value)
    }

    /// The values it allows at a point; `None` where neither its state nor its printing records any.
    #[must_use]
    pub fn allows(&self, point: &Point) -> Option<Vec<&'a Value>> {
        let of_state = self.state.and_then(|s| shown_values(&s.shows, point));
        let of_printing = self.printing.and_then(|p| shown_values(&p.shows, point));
        both(of_state, of_printing)
    }
}

/// Every candidate of a design, by state and printing in the record's order; those without a state last.
#[must_use]
pub fn candidates(design: &Design) -> Vec<Candidate<'_>> {
    let mut found = Vec::new();
    for state in design.standing_states() {
        let before = found.len();
        let containing = design
            .standing_printings()
            .filter(|p| p.is_counted() && p.states.contains(&state.key.value));
        found.extend(containing.map(|printing| Candidate {
            state: Some(state),
            printing: Some(printing),
        }));
        if found.len() == before {
            found.push(Candidate {
                state: Some(state),
                printing: None,
            });
        }
    }
    let has_states = !found.is_empty();
    let without_state = design
        .standing_printings()
        .filter(|p| !has_states || !p.is_counted());
    found.extend(without_state.map(|printing| Candidate {
        state: None,
        printing: Some(printing),
    }));
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
        let fits_state = match (&reading.state, self.state_key()) {
            (None, _) => true,
            (Some(StateReading::OneOf(states)), Some(state)) => {
                states.iter().any(|s| s.value == *state)
            }
            (Some(StateReading::ByMatrix(by_matrix)), Some(state)) => {
                by_matrix.iter().any(|(_, s)| s.value == *state)
            }
            // A state named with a recut is the state that it repeats.
            (Some(_), None) => !reading.printing.is_empty(),
        };
        let fits_printing = reading.printing.is_empty()
            || self
                .printing
                .is_some_and(|p| reading.printing.iter().any(|r| r.value == p.key.value));
        fits_state && fits_printing
    }
}
