//! The candidates that remain for a sheet: those that nothing recorded of it excludes.
//!
//! A candidate is excluded by a certain observation at a deciding point that it does not allow, and by a paper that was
//! not made before its printing had ended. These are the exclusions of `identify` and `printing_record`, without
//! weights and without a table.
//!
//! In: a design and one of its impressions. Out: the [`Candidate`]s left, in the record's order.
//! Definitions: `docs/definitions.md, "Exclusion and weight"` and `"What a sheet's page adds"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::remaining::not_excluded;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! observed = { moon = "present" }
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let left = not_excluded(design, &design.impressions[&1]);
//! let states: Vec<_> = left.iter().map(|c| c.state.unwrap().key.as_str()).collect();
//! assert_eq!(states, ["moonlit"]);
//! ```

use super::allowed::is_against;
use super::candidates::{Candidate, candidates};
use super::identify::is_printed;
use super::printing_record::{Bearing, recorded_evidence};
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::Impression;
use keyblock_model::key::Key;
use keyblock_model::point::{Observation, Point};

/// The candidates that nothing recorded of an impression excludes; none where every one is excluded.
#[must_use]
pub fn not_excluded<'a>(design: &'a Design, impression: &Impression) -> Vec<Candidate<'a>> {
    let deciding: Vec<(&Observation, &Point)> = impression
        .observed
        .iter()
        .filter(|observation| observation.claim.certainty() == Certainty::Certain)
        .filter_map(|observation| Some((observation, design.point(&observation.point.value)?)))
        .filter(|(_, point)| point.is_deciding() && is_printed(impression, point))
        .collect();
    let by_paper: Vec<Key> = recorded_evidence(design, impression)
        .into_iter()
        .filter(|evidence| evidence.bearing == Bearing::Excludes)
        .map(|evidence| evidence.printing)
        .collect();
    let is_left = |candidate: &Candidate<'_>| {
        let is_of_paper = |printing: &Key| by_paper.contains(printing);
        let contradicts = |(observation, point): &(&Observation, &Point)| {
            let allowed = candidate.allows(point);
            allowed.is_some_and(|allowed| {
                !allowed.is_empty() && is_against(point, &observation.seen, &allowed)
            })
        };
        !candidate.printing_key().is_some_and(is_of_paper) && !deciding.iter().any(contradicts)
    };
    let mut left = candidates(design);
    left.retain(is_left);
    left
}
