//! Conclusions from the observations of a sheet: the candidates they exclude and leave, and the points
//! that would decide more (`docs/definitions.md`, "What a sheet's page adds").

use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::page::key::candidates;
use crate::page::key::prefilled::examined;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::index::PointAt;
use crate::study::settle::{Settled, settled};
use crate::study::table::DiagnosticTable;

/// Points expected to give less than this, in bits, are not suggested.
const SETTLES: f64 = 0.01;

/// The conclusions from the observations of a sheet.
#[derive(Serialize)]
pub(super) struct Conclusions {
    /// The candidates that the sheet is consistent with.
    leaves: CleanHtml,
    /// The excluded candidates, each with the points that exclude it.
    excludes: Vec<CleanHtml>,
    /// The points to look at next; empty where none would decide more.
    next: CleanHtml,
    /// The link to the identification key, with the observations filled in.
    key: String,
}

/// The conclusions on a sheet; `None` where the design has fewer than two candidates or no points.
pub(super) fn of_sheet(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> Option<Conclusions> {
    if !candidates::has_key(design) {
        return None;
    }
    let table = candidates::table(here, design)?;
    if table.candidates.len() < 2 {
        return None;
    }
    let settled = settled(table, design, impression);
    let names: Vec<CleanHtml> = table
        .candidates
        .iter()
        .map(|row| candidates::candidate_name(here, design, row))
        .collect();
    let mut leaves = leaves(here, table, &settled, &names);
    if is_mixed(impression) {
        let mixed = CleanHtml::text(here.words().word("mixed-and-key"));
        leaves = as_sentences(&[leaves, mixed]);
    }
    Some(Conclusions {
        leaves,
        excludes: excludes(here, design, table, &settled, &names),
        next: next(here, design, table, &settled),
        key: examined(here, design, impression),
    })
}

/// Whether some reading takes the sheet to be from blocks in different conditions.
fn is_mixed(impression: &Impression) -> bool {
    let identified = impression.identified.iter();
    identified
        .flat_map(readings::all)
        .any(|reading| matches!(reading.state, Some(StateReading::ByMatrix(_))))
}

fn leaves(
    here: &Here<'_>,
    table: &DiagnosticTable,
    settled: &Settled,
    names: &[CleanHtml],
) -> CleanHtml {
    let words = here.words();
    let left: Vec<CleanHtml> = settled
        .identified
        .left()
        .filter_map(|at| names.get(at.index()).cloned())
        .collect();
    if left.is_empty() {
        let mut sentences = vec![CleanHtml::text(words.word("seen-excludes-all"))];
        if settled.identified.may_be_mixed(table) {
            sentences.push(CleanHtml::text(words.word("perhaps-mixed")));
        }
        return as_sentences(&sentences);
    }
    if settled.observed.is_empty() {
        return CleanHtml::text(words.word("seen-nothing-telling"));
    }
    if left.len() == names.len() {
        return CleanHtml::text(words.word("seen-excludes-nothing"));
    }
    let consistent = candidates::consistent_with(here, &left);
    as_sentences(&[words.html("seen-is", None, &[("consistent", &consistent)])])
}

/// The excluded candidates; those excluded by the same points stand together.
fn excludes(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    settled: &Settled,
    names: &[CleanHtml],
) -> Vec<CleanHtml> {
    let mut by_points: BTreeMap<&[PointAt], Vec<CleanHtml>> = BTreeMap::new();
    let mut order: Vec<&[PointAt]> = Vec::new();
    for (weighed, name) in settled.identified.candidates.iter().zip(names) {
        if !weighed.is_excluded() {
            continue;
        }
        let points = weighed.against.as_slice();
        if !order.contains(&points) {
            order.push(points);
        }
        by_points.entry(points).or_default().push(name.clone());
    }
    let lines = order.into_iter().filter_map(|points| {
        let excluded = enumeration::together(here, by_points.get(points)?);
        let points: Vec<CleanHtml> = points
            .iter()
            .filter_map(|at| {
                let column = table.points.get(*at)?;
                Some(here.point(design, &column.key))
            })
            .collect();
        let points = enumeration::together(here, &points);
        let line = [("candidates", &excluded), ("points", &points)];
        Some(as_sentences(&[here.words().html(
            "excluded-by",
            None,
            &line,
        )]))
    });
    lines.collect()
}

fn next(here: &Here<'_>, design: &Design, table: &DiagnosticTable, settled: &Settled) -> CleanHtml {
    let words = here.words();
    let asks: Vec<CleanHtml> = settled
        .next
        .iter()
        .filter(|next| next.bits >= SETTLES)
        .take(2)
        .filter_map(|next| {
            let column = table.points.get(next.point)?;
            Some(here.point(design, &column.key))
        })
        .collect();
    if !asks.is_empty() {
        let points = enumeration::either(here, &asks);
        return as_sentences(&[words.html("would-settle", None, &[("points", &points)])]);
    }
    if settled.identified.left().count() > 1 {
        return CleanHtml::text(words.word("nothing-would-settle"));
    }
    CleanHtml::empty()
}
