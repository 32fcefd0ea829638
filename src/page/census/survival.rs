//! The estimate of the sheets that could have been met, with its basis and its assumptions, or the reason why there is
//! none (`docs/definitions.md`, "Survival").

use serde::Serialize;

use crate::page::setting::book::Here;
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;
use crate::study::survival::{Estimate, MetSheets, NoEstimate};

/// The part on the page.
#[derive(Serialize)]
pub(super) struct Surviving {
    /// The estimate, or why there is none.
    said: String,
    /// Its basis.
    ground: String,
    /// Its assumptions and cautions; none without an estimate.
    cautions: Vec<String>,
}

/// The survival of a design's sheets; `None` where no sheet was ever met.
pub(super) fn surviving(here: &Here<'_>, study: &DesignStudy) -> Option<Surviving> {
    let words = here.words();
    let met = study.survival.met;
    if met.sheets == 0 {
        return None;
    }
    let ground = words.with(
        "survival-ground",
        &[
            ("n", Argument::Count(met.sheets)),
            ("once", Argument::Count(met.once)),
            ("twice", Argument::Count(met.twice)),
        ],
    );
    let (said, cautions) = match study.survival.estimate {
        Ok(estimate) => (estimate_in_words(here, estimate), cautions(here, study)),
        Err(why) => (no_estimate(here, why), Vec::new()),
    };
    Some(Surviving {
        said,
        ground,
        cautions,
    })
}

/// Why there is no estimate.
fn no_estimate(here: &Here<'_>, why: NoEstimate) -> String {
    let words = here.words();
    let id = match why {
        NoEstimate::SizeRecorded => "survival-size-recorded",
        NoEstimate::NeverMet(sheets) => return words.count("survival-never-met", sheets),
        NoEstimate::TooFew => "survival-too-few",
        NoEstimate::AllMetOnce => "survival-all-once",
        NoEstimate::TooFewMetOnce => "survival-few-once",
    };
    words.word(id).to_owned()
}

/// "Sheets that could have been met: probably at least about 24 (19 to 43; interval of 95 %) …"
fn estimate_in_words(here: &Here<'_>, estimate: Estimate) -> String {
    let whole = |n: f64| format!("{n:.0}");
    here.words().with(
        "survival-estimate",
        &[
            ("estimate", Argument::Text(&whole(estimate.sheets))),
            ("low", Argument::Text(&whole(estimate.low))),
            ("high", Argument::Text(&whole(estimate.high))),
        ],
    )
}

/// The cautions of an estimate, the most important first.
fn cautions(here: &Here<'_>, study: &DesignStudy) -> Vec<String> {
    let words = here.words();
    let mut cautions = Vec::new();
    if !study.census.sheets.is_certain() {
        cautions.push(words.word("survival-pairs-open").to_owned());
    }
    if says_little(study.survival.met) {
        cautions.push(words.word("survival-says-little").to_owned());
    }
    let always = (1..).map_while(|n| words.find(&format!("survival-caution-{n}")));
    cautions.extend(always.map(str::to_owned));
    cautions
}

/// Whether nearly every sheet was met only once. The estimate then shows little more than that there may be others
/// (`docs/definitions.md`, "Survival").
fn says_little(met: MetSheets) -> bool {
    met.twice == 0 || met.once * 5 >= met.sheets * 4
}
