//! The points that separate the states of a design, and the states that none separates, in sentences.
//!
//! From the same study as the identification key (`docs/definitions.md`, "Separability"): for each
//! state, the points that separate it from the states it follows; for the design, the smallest set of
//! points that separates every pair that can be separated, and the pairs that no recorded point
//! separates.

use crate::model::design::Design;
use crate::model::state::State;
use crate::page::key::candidates;
use crate::page::phrases::enumeration;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::changes::changes;
use crate::study::index::CandidateAt;
use crate::study::table::DiagnosticTable;

/// The most pairs that a page prints; the rest are counted.
const MOST_PAIRS: usize = 12;

/// "Told from *i* by the beam; from *ii* by no recorded point", as sentences; empty for a first state.
pub(super) fn from_those_before(here: &Here<'_>, design: &Design, state: &State) -> CleanHtml {
    let words = here.words();
    let sentences: Vec<CleanHtml> = changes(design, state)
        .iter()
        .map(|change| {
            let before = here.numeral(&design.key, &change.follows);
            let telling: Vec<CleanHtml> = change
                .changed
                .iter()
                .filter(|c| c.tells_apart)
                .map(|c| here.point(design, &c.point))
                .collect();
            if telling.is_empty() {
                return words.html("told-by-nothing", None, &[("state", &before)]);
            }
            let points = enumeration::together(here, &telling);
            words.html("told-by", None, &[("state", &before), ("points", &points)])
        })
        .collect();
    as_sentences(&sentences)
}

/// The smallest set of points and the pairs that no point separates; empty for a design with fewer than
/// two candidates or without points.
pub(super) fn summary(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    if !candidates::has_key(design) {
        return Vec::new();
    }
    let Some(study) = here.book.studies.designs.get(&design.key) else {
        return Vec::new();
    };
    let table = &study.table;
    if table.candidates.len() < 2 {
        return Vec::new();
    }
    let words = here.words();
    let found = &study.separability;
    let mut lines = Vec::new();
    let set = found.smallest_set.iter();
    let set: Vec<_> = set.filter_map(|at| table.points.get(*at)).collect();
    let points: Vec<CleanHtml> = set.iter().map(|p| here.point(design, &p.key)).collect();
    if !points.is_empty() {
        let points = enumeration::together(here, &points);
        let which = match (found.exact, found.inseparable.is_empty()) {
            (true, true) => "smallest-set-of-all",
            (true, false) => "smallest-set",
            (false, _) => "gathered-set",
        };
        lines.push(words.html(which, None, &[("points", &points)]));
    }
    let weigh: Vec<CleanHtml> = set
        .iter()
        .filter(|point| !point.is_deciding)
        .map(|point| here.point(design, &point.key))
        .collect();
    if !weigh.is_empty() {
        let points = enumeration::together(here, &weigh);
        lines.push(words.html("set-weighs", Some(weigh.len()), &[("points", &points)]));
    }
    let mut list = |pairs: &[(CandidateAt, CandidateAt)], word: &str| {
        let named: Vec<CleanHtml> = pairs
            .iter()
            .take(MOST_PAIRS)
            .filter_map(|(one, other)| pair(here, design, table, *one, *other))
            .collect();
        if !named.is_empty() {
            let named = CleanHtml::join(&named, "; ");
            lines.push(words.html(word, None, &[("pairs", &named)]));
        }
        let beyond = pairs.len().saturating_sub(MOST_PAIRS);
        if beyond > 0 {
            lines.push(CleanHtml::text(&words.count("not-separated-more", beyond)));
        }
    };
    list(&found.inseparable, "not-separated");
    list(&found.only_likelier, "only-made-likelier");
    lines
}

/// "*iii*, Printed by the artist, from *iii*, Memorial portfolio".
fn pair(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    one: CandidateAt,
    other: CandidateAt,
) -> Option<CleanHtml> {
    let name = |at: CandidateAt| {
        let row = table.candidates.get(at)?;
        Some(candidates::candidate_name(here, design, row))
    };
    let (one, other) = (name(one)?, name(other)?);
    Some(here.words().html(
        "pair-not-separated",
        None,
        &[("one", &one), ("other", &other)],
    ))
}
