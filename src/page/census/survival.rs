//! The estimate of surviving sheets with its basis and its assumptions, or the reason why there is none
//! (`docs/definitions.md`, "Survival").

use serde::Serialize;

use crate::model::design::Design;
use crate::page::setting::book::Here;
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;
use crate::study::survival::{Estimate, NoEstimate, Survival};

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

/// The survival of a design's sheets; `None` where no sheet was ever seen.
pub(super) fn surviving(
    here: &Here<'_>,
    design: &Design,
    study: &DesignStudy,
) -> Option<Surviving> {
    let words = here.words();
    let survival = &study.survival;
    if survival.sheets == 0 {
        return None;
    }
    let ground = words.with(
        "survival-ground",
        &[
            ("n", Argument::Count(survival.sheets)),
            ("once", Argument::Count(survival.seen_once)),
            ("twice", Argument::Count(survival.seen_twice)),
        ],
    );
    let (said, cautions) = match (survival.estimate, survival.why_not()) {
        (Some(estimate), None) => (
            estimate_in_words(here, estimate),
            cautions(here, design, study, estimate),
        ),
        (_, Some(NoEstimate::AllSeenOnce)) => {
            (words.word("survival-all-once").to_owned(), Vec::new())
        }
        _ => (words.word("survival-too-few").to_owned(), Vec::new()),
    };
    Some(Surviving {
        said,
        ground,
        cautions,
    })
}

/// "Probably at least about 24 sheets (19 to 43; interval of 95 %) …"
fn estimate_in_words(here: &Here<'_>, estimate: Estimate) -> String {
    let words = here.words();
    let whole = |n: f64| format!("{n:.0}");
    let estimated = whole(estimate.sheets);
    match estimate.interval {
        Some([low, high]) => words.with(
            "survival-estimate",
            &[
                ("estimate", Argument::Text(&estimated)),
                ("low", Argument::Text(&whole(low))),
                ("high", Argument::Text(&whole(high))),
            ],
        ),
        None => words.with(
            "survival-nothing-missing",
            &[("estimate", Argument::Text(&estimated))],
        ),
    }
}

/// The cautions of an estimate, the most important first.
fn cautions(
    here: &Here<'_>,
    design: &Design,
    study: &DesignStudy,
    estimate: Estimate,
) -> Vec<String> {
    let words = here.words();
    let mut cautions = Vec::new();
    if !study.census.sheets.is_certain() {
        cautions.push(words.word("survival-pairs-open").to_owned());
    }
    if says_little(&study.survival) {
        cautions.push(words.word("survival-says-little").to_owned());
    }
    if let Some(declared) = declared(design)
        && estimate.sheets > f64::from(declared)
    {
        let declared = declared.to_string();
        let given = [("declared", Argument::Text(&declared))];
        cautions.push(words.with("survival-above-declared", &given));
    }
    let always = (1..).map_while(|n| words.find(&format!("survival-caution-{n}")));
    cautions.extend(always.map(str::to_owned));
    cautions
}

/// Whether nearly every sheet was seen only once. The estimate then shows little more than that others
/// exist (`docs/definitions.md`, "Survival").
fn says_little(survival: &Survival) -> bool {
    survival.seen_once > 1
        && (survival.seen_twice == 0 || survival.seen_once * 5 >= survival.sheets * 4)
}

/// The number of sheets declared to be printed in all; `None` where some counted printing declares
/// none.
fn declared(design: &Design) -> Option<u32> {
    let counted = design.standing_printings().filter(|p| p.is_counted());
    let largest = counted.map(|p| p.edition.iter().map(|claim| claim.is.value).max());
    let sizes: Option<Vec<u32>> = largest.collect();
    sizes
        .filter(|sizes| !sizes.is_empty())
        .map(|sizes| sizes.iter().fold(0_u32, |sum, n| sum.saturating_add(*n)))
}
