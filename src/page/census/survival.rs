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
    let mut ground = words.with(
        "survival-ground",
        &[
            ("n", Argument::Count(met.sheets)),
            ("once", Argument::Count(met.once)),
            ("twice", Argument::Count(met.twice)),
        ],
    );
    if !study.census.sheets.is_certain() {
        ground.push(' ');
        ground.push_str(words.word("open-pairs-count-twice"));
    }
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

/// "An estimated 5 to 6 impressions or more existed to be recorded … (95% interval: 5 to 13). …" The
/// whole numbers on either side of the estimate are given; the lower end of the interval is rounded down.
fn estimate_in_words(here: &Here<'_>, estimate: Estimate) -> String {
    let words = here.words();
    let whole = |n: f64| format!("{n:.0}");
    let from_to = |low: &str, high: &str| {
        if low == high {
            return low.to_owned();
        }
        let given = [("low", Argument::Text(low)), ("high", Argument::Text(high))];
        words.with("survival-from-to", &given)
    };
    let Estimate { sheets, low, high } = estimate;
    let bound = from_to(&whole(sheets.floor()), &whole(sheets.ceil()));
    let interval = from_to(&whole(low.floor()), &whole(high));
    words.with(
        "survival-estimate",
        &[
            ("estimate", Argument::Text(&bound)),
            ("interval", Argument::Text(&interval)),
        ],
    )
}

/// The cautions of an estimate, the most important first.
fn cautions(here: &Here<'_>, study: &DesignStudy) -> Vec<String> {
    let words = here.words();
    let mut cautions = Vec::new();
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
