//! How far the record of a sheet settles its identification: the candidates that its observations exclude
//! and leave, and the points to look at next.
//!
//! In: a design's diagnostic table, and one of its impressions. Out: [`Settled`]. An identification
//! may be narrower than the observations (the cataloguer knew more than was recorded) or wider: then
//! [`narrower`] gives the identification that the observations allow.
//! Definitions: `docs/definitions.md, "What a sheet's page adds"`.
//! Not here: observations that contradict the identification (`agree`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{Studies, settle::narrower};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! observed = { moon = "present" }
//! "#);
//! let one = key("1");
//! let design = &catalogue.designs[&one];
//! let table = &Studies::of(&catalogue).designs[&one].table;
//! let found = narrower(table, design, &design.impressions[&1]).unwrap();
//! assert_eq!(found.state.unwrap().as_str(), "moonlit");
//! ```

use std::collections::BTreeSet;

use super::candidates::allowed_by;
use super::identify::{Identified, Observed, identify, observed_on};
use super::next_point::{NextPoint, next_points};
use super::scale::Answer;
use super::table::DiagnosticTable;
use crate::census::readings;
use crate::index::{CandidateAt, PointAt};
use keyblock_model::design::Design;
use keyblock_model::impression::{Impression, StateReading};
use keyblock_model::key::Key;

/// How far the record of a sheet settles its identification.
#[derive(Clone, Debug, PartialEq)]
pub struct Settled {
    /// What was seen.
    pub observed: Vec<Observed>,
    /// The candidates weighed by it.
    pub identified: Identified,
    /// The candidates that the observations and the identification both leave. Empty where they
    /// contradict each other.
    pub left: Vec<CandidateAt>,
    /// The points to look at next, the most informative first: those without an observation.
    pub next: Vec<NextPoint>,
    /// The points that could not be seen as the sheet was (mounted, framed), the most informative first.
    pub hidden: Vec<NextPoint>,
}

/// Something that the observations fix and the identification leaves open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Narrower {
    /// The one state that is left, where the identification allows several.
    pub state: Option<Key>,
    /// The one printing that is left, where the identification allows several.
    pub printing: Option<Key>,
}

/// How far the record of `impression` settles its identification.
#[must_use]
pub fn settled(table: &DiagnosticTable, design: &Design, impression: &Impression) -> Settled {
    let observed = observed_on(table, design, impression);
    let identified = identify(table, &observed);
    let allowed = allowed(table, design, impression);
    let left = identified
        .left()
        .filter(|at| allowed.contains(at))
        .collect();
    let is_hidden = |o: &&Observed| o.answer == Answer::NotVisible;
    let hidden: BTreeSet<PointAt> = observed.iter().filter(is_hidden).map(|o| o.point).collect();
    let seen: Vec<Observed> = observed.iter().filter(|o| !is_hidden(o)).cloned().collect();
    let worth = next_points(table, &identified, &seen);
    let (hidden, next) = worth
        .into_iter()
        .partition(|next| hidden.contains(&next.point));
    Settled {
        observed,
        identified,
        left,
        next,
        hidden,
    }
}

/// The candidates that the identification allows; every one where there is none.
fn allowed(
    table: &DiagnosticTable,
    design: &Design,
    impression: &Impression,
) -> BTreeSet<CandidateAt> {
    match &impression.identified {
        None => table.candidates.indexes().collect(),
        Some(identified) => allowed_by(design, identified)
            .iter()
            .filter_map(|c| table.candidate_at(c.state_key(), c.printing_key()))
            .collect(),
    }
}

/// The state and printing that the observations fix and the identification leaves open; `None` where there
/// is neither. Blocks in different conditions are never one state.
#[must_use]
pub fn narrower(
    table: &DiagnosticTable,
    design: &Design,
    impression: &Impression,
) -> Option<Narrower> {
    let is_mixed = impression.identified.as_ref().is_some_and(|identified| {
        readings(identified).any(|r| matches!(r.state, Some(StateReading::ByMatrix(_))))
    });
    if is_mixed {
        return None;
    }
    // The next points, which take most of the time, are not needed here.
    let identified = identify(table, &observed_on(table, design, impression));
    let allowed = allowed(table, design, impression);
    let left: Vec<CandidateAt> = identified
        .left()
        .filter(|at| allowed.contains(at))
        .collect();
    let allowed: Vec<CandidateAt> = allowed.into_iter().collect();
    let states = |candidates: &[CandidateAt]| -> BTreeSet<Option<&Key>> {
        let rows = candidates.iter().map(|at| &table.candidates[*at]);
        rows.map(|row| row.state.as_ref()).collect()
    };
    let printings = |candidates: &[CandidateAt]| -> BTreeSet<Option<&Key>> {
        let rows = candidates.iter().map(|at| &table.candidates[*at]);
        rows.map(|row| row.printing.as_ref()).collect()
    };
    let allowed_states = states(&allowed);
    let left_states = states(&left);
    let state = left_states
        .first()
        .copied()
        .flatten()
        .filter(|_| left_states.len() == 1 && allowed_states.len() > 1);
    let allowed_printings = printings(&allowed);
    let left_printings = printings(&left);
    let printing = left_printings
        .first()
        .copied()
        .flatten()
        .filter(|_| left_printings.len() == 1 && allowed_printings.len() > 1);
    (state.is_some() || printing.is_some()).then(|| Narrower {
        state: state.cloned(),
        printing: printing.cloned(),
    })
}
