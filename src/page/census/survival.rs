//! How many sheets survive: the estimate with what it rests on and what it takes
//! for granted, or the sentence why there is none.

use serde::Serialize;

use crate::model::design::Design;
use crate::page::setting::book::Here;
use crate::page::setting::words::Given;
use crate::study::DesignStudy;
use crate::study::survival::{Estimate, NoEstimate, Survival};

/// What is said of survival.
#[derive(Serialize)]
pub(super) struct Surviving {
    /// The estimate, or why there is none.
    said: String,
    /// What it rests on.
    ground: String,
    /// What it takes for granted, and what to beware of; none where there is no estimate.
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
            ("n", Given::Count(survival.sheets)),
            ("once", Given::Count(survival.seen_once)),
            ("twice", Given::Count(survival.seen_twice)),
        ],
    );
    let (said, cautions) = match (survival.estimate, survival.why_not()) {
        (Some(estimate), None) => (
            said(here, estimate),
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
fn said(here: &Here<'_>, estimate: Estimate) -> String {
    let words = here.words();
    let whole = |n: f64| format!("{n:.0}");
    let estimated = whole(estimate.sheets);
    match estimate.interval {
        Some([low, high]) => words.with(
            "survival-estimate",
            &[
                ("estimate", Given::Text(&estimated)),
                ("low", Given::Text(&whole(low))),
                ("high", Given::Text(&whole(high))),
            ],
        ),
        None => words.with(
            "survival-nothing-missing",
            &[("estimate", Given::Text(&estimated))],
        ),
    }
}

/// What stands beside an estimate, the weightiest first.
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
        let given = [("declared", Given::Text(&declared))];
        cautions.push(words.with("survival-above-declared", &given));
    }
    let always = (1..).map_while(|n| words.find(&format!("survival-caution-{n}")));
    cautions.extend(always.map(str::to_owned));
    cautions
}

/// Whether nearly every sheet was seen once only, so that the estimate says little more than that others
/// exist (CHECKS.md section 5).
fn says_little(survival: &Survival) -> bool {
    survival.seen_once > 1
        && (survival.seen_twice == 0 || survival.seen_once * 5 >= survival.sheets * 4)
}

/// How many sheets were declared to be printed in all; `None` where some printing that counts declares
/// nothing.
fn declared(design: &Design) -> Option<u32> {
    let counted = design.standing_printings().filter(|p| p.is_counted());
    let largest = counted.map(|p| p.edition.iter().map(|claim| claim.is.value).max());
    let sizes: Option<Vec<u32>> = largest.collect();
    sizes
        .filter(|sizes| !sizes.is_empty())
        .map(|sizes| sizes.iter().fold(0_u32, |sum, n| sum.saturating_add(*n)))
}
