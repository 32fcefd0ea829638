//! How a state differs from the states it follows.
//!
//! In: a design and one of its states. Out: [`StateChanges`], one for each state it follows, with the points
//! at which something else is shown. Only points that rest on the matrix count: inking, paper and marks vary
//! from sheet to sheet (`docs/trade.md, "Why the matrix alone separates states"`).
//! Definitions: `docs/definitions.md, "States and numerals"` and `"Separability"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::changes::changes;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let [change] = changes(design, &design.states[1]).try_into().unwrap();
//! assert_eq!(change.follows.as_str(), "dark");
//! assert_eq!(change.changed[0].point.as_str(), "moon");
//! assert!(change.changed[0].tells_apart);
//! ```

use super::allowed::{is_same_set, is_told_apart, shown_values};
use crate::numerals::predecessors;
use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::point::{Point, RestsOn, Value};
use keyblock_model::state::State;

/// How a state differs, at one point, from a state it follows.
#[derive(Clone, Debug, PartialEq)]
pub struct PointChange {
    /// The point.
    pub point: Key,
    /// The values shown before; empty where none is recorded.
    pub before: Vec<Value>,
    /// The values shown now.
    pub after: Vec<Value>,
    /// Whether the two can be told apart there: both are known and share no value.
    pub tells_apart: bool,
}

/// How a state differs from one of the states it follows.
#[derive(Clone, Debug, PartialEq)]
pub struct StateChanges {
    /// The state it follows.
    pub follows: Key,
    /// The points at which something else is shown, in the record's order.
    pub changed: Vec<PointChange>,
}

impl StateChanges {
    /// Whether some point tells the two states apart.
    #[must_use]
    pub fn tell_apart(&self) -> bool {
        self.changed.iter().any(|c| c.tells_apart)
    }
}

/// How `state` differs from each state it follows; empty for a first state.
#[must_use]
pub fn changes(design: &Design, state: &State) -> Vec<StateChanges> {
    predecessors(design, state)
        .into_iter()
        .map(|before| StateChanges {
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

fn change_at(point: &Point, before: &State, after: &State) -> Option<PointChange> {
    let old = shown_values(&before.shows, point);
    let new = shown_values(&after.shows, point);
    // A state that records no value at a point does not record a change there.
    let new = new?;
    let tells_apart = match &old {
        Some(old) if is_same_set(old, &new) => return None,
        Some(old) => is_told_apart(point, old, &new),
        None => false,
    };
    Some(PointChange {
        point: point.key.value.clone(),
        before: old.into_iter().flatten().cloned().collect(),
        after: new.into_iter().cloned().collect(),
        tells_apart,
    })
}
