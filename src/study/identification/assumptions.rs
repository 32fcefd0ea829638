//! The working assumptions of identification: how often observations err, and how often sheets depart from the
//! record.
//!
//! In: the certainty of an observation, and a point. Out: the chance of an error. The numbers are set by judgement
//! and not measured; the pages that use them say so.
//! Definitions: `docs/definitions.md, "Observations"` and `"Deciding and straying"`.
//!
//! ```
//! # use keyblock::model::certainty::Certainty::{Certain, Probable};
//! # use keyblock::study::assumptions::{error, error_rate};
//! // Where a point decides, no sheet strays, and only the observation can err.
//! assert!((error(Certain, 0.0) - error_rate(Certain)).abs() < 1e-12);
//! // A probable observation of a stamp, which a sheet may lack or have been given later.
//! assert!((error(Probable, 0.2) - 0.28).abs() < 1e-12);
//! ```

use keyblock_model::certainty::Certainty;
use keyblock_model::point::{Point, RestsOn};

/// How often an observation made with that certainty is wrong.
#[must_use]
pub fn error_rate(certainty: Certainty) -> f64 {
    match certainty {
        Certainty::Certain => 0.01,
        Certainty::Probable => 0.10,
        Certainty::Possible => 0.30,
    }
}

/// The chance that a sheet departs from what is recorded for it at a point, though rightly observed.
#[must_use]
pub(crate) fn straying(point: &Point) -> f64 {
    if point.is_deciding() {
        return 0.0;
    }
    point
        .strays
        .as_ref()
        .map_or_else(|| usual_straying(point.rests_on.value), |said| said.value)
}

fn usual_straying(rests_on: RestsOn) -> f64 {
    match rests_on {
        RestsOn::Matrix | RestsOn::Blocks | RestsOn::Paper => 0.05,
        RestsOn::Inking => 0.10,
        RestsOn::Mark => 0.20,
    }
}

/// The chance that what was seen is not what is recorded: the observation errs, or the sheet departs from the
/// record.
#[must_use]
pub fn error(certainty: Certainty, straying: f64) -> f64 {
    1.0 - (1.0 - error_rate(certainty)) * (1.0 - straying)
}
