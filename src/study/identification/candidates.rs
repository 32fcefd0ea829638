//! Candidates: the states and printings that a sheet of a design can be of.
//!
//! In: a design. Out: every [`Candidate`], a state with a printing that contains it, or a state that no
//! printing names; and which of them an identification allows.
//! Definitions: `docs/definitions.md, "Candidates"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::candidates::candidates;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "dark" }, { key = "moonlit" }]
//! printings = [{ key = "own", kind = "artist", states = ["dark"] }]
//! "#);
//! let found = candidates(&catalogue.designs[&key("1")]);
//! let printings: Vec<_> = found.iter().map(|c| c.printing.map(|p| p.key.as_str())).collect();
//! assert_eq!(printings, [Some("own"), None]);   // dark in the artist's printing, moonlit alone
//! ```

use super::allowed::{both, shown_values};
use crate::model::design::Design;
use crate::model::impression::{Identification, StateReading};
use crate::model::point::{Point, Value};
use crate::model::printing::Printing;
use crate::model::state::State;
use crate::study::census::readings;

/// A state with a printing that contains it, or a state that no printing names.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// The state.
    pub state: &'a State,
    /// The printing; `None` for a state that no printing names.
    pub printing: Option<&'a Printing>,
}

impl<'a> Candidate<'a> {
    /// The values it allows at a point; `None` where neither its state nor its printing records any.
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
pub(crate) fn allowed_by<'a>(
    design: &'a Design,
    identified: &Identification,
) -> Vec<Candidate<'a>> {
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
