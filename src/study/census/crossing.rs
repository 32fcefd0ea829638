//! States crossed with printings: which pairs of state and printing a sheet can be of.
//!
//! In: a reading of a sheet. Out: the pairs of state and printing it allows.
//! Definitions: `docs/definitions.md, "Rows of the census"`. Not here: counting them (`count`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::crossing::can_be;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "dark" }, { key = "moonlit" }]
//! printings = [{ key = "own", kind = "artist", states = ["dark"] }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let [dark, moonlit, own] = ["dark", "moonlit", "own"].map(|key| key.parse().unwrap());
//! assert!(can_be(design, &dark, &own) && !can_be(design, &moonlit, &own));
//! ```

use std::collections::BTreeSet;

use super::readings::{or_nothing, readings, states_of};
use keyblock_model::design::Design;
use keyblock_model::impression::Identification;
use keyblock_model::key::Key;

/// A state and a printing; `None` for one that the reading does not name.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct StateAndPrinting {
    /// The state.
    pub state: Option<Key>,
    /// The printing.
    pub printing: Option<Key>,
}

impl StateAndPrinting {
    /// Whether the two are a candidate, or one of them is not named.
    pub(super) fn is_known(&self, design: &Design) -> bool {
        match (&self.state, &self.printing) {
            (Some(state), Some(printing)) => can_be(design, state, printing),
            _ => true,
        }
    }
}

/// Whether a printing was made in a state: whether the two are a candidate.
#[must_use]
pub fn can_be(design: &Design, state: &Key, printing: &Key) -> bool {
    let printing = design.printing(printing);
    printing.is_some_and(|printing| printing.states.contains(state))
}

/// The pairs that one reading allows. A reading such as "ii or iii, the first printing or the second"
/// allows only the pairs that are candidates of the design; where none is, it allows all, because the
/// reading itself is then in doubt.
fn of_reading(design: &Design, reading: &Identification) -> BTreeSet<StateAndPrinting> {
    let printings = or_nothing(reading.printing.iter().map(|p| p.value.clone()).collect());
    let states = states_of(reading);
    let all: BTreeSet<StateAndPrinting> = states
        .into_iter()
        .flat_map(|state| {
            printings.iter().map(move |printing| StateAndPrinting {
                state: state.clone(),
                printing: printing.clone(),
            })
        })
        .collect();
    let known = all.iter().filter(|pair| pair.is_known(design));
    let known: BTreeSet<StateAndPrinting> = known.cloned().collect();
    if known.is_empty() { all } else { known }
}

/// The pairs that a record allows, whichever of its readings is right.
pub(super) fn of_record(
    design: &Design,
    identified: &Identification,
) -> BTreeSet<StateAndPrinting> {
    let readings = readings(identified);
    readings.flat_map(|r| of_reading(design, r)).collect()
}
