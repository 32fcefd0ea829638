//! The couplets of a key in words: a question at each number, and the target of each answer.

use serde::Serialize;

use super::candidates::consistent_with;
use super::points::at_place;
use crate::model::design::Design;
use crate::model::point::{Point, PointKind};
use crate::page::phrases::enumeration;
use crate::page::phrases::values;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::words::Argument;
use crate::study::couplets::{Couplet, Couplets, Goal, LeadCondition, Range};
use crate::study::index::{CoupletAt, PointAt};
use crate::study::table::{DiagnosticTable, PointColumn};

/// A couplet.
#[derive(Serialize)]
pub(super) struct CoupletLine {
    number: usize,
    ask: String,
    rests: String,
    /// The numbers of the couplets that lead here.
    from: Vec<usize>,
    leads: Vec<LeadLine>,
}

#[derive(Serialize)]
struct LeadLine {
    seen: String,
    /// The number of the next couplet; `None` at an end.
    to: Option<usize>,
    /// At an end, the candidates that remain.
    end: CleanHtml,
    /// The word for why several candidates remain at an end.
    together: Option<&'static str>,
    /// At an end, the points that would confirm it, in a sentence.
    confirm: CleanHtml,
}

/// The couplets of a table, whose candidates have the names `names`.
pub(super) fn lines(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    key: &Couplets,
    names: &[CleanHtml],
) -> Vec<CoupletLine> {
    let leading_to = |to: CoupletAt| {
        let leads = move |(_, couplet): &(CoupletAt, &Couplet)| {
            couplet
                .leads
                .iter()
                .any(|lead| lead.goal == Goal::Couplet(to))
        };
        let couplets = key.couplets.entries();
        couplets
            .filter(leads)
            .map(|(at, _)| at.index() + 1)
            .collect()
    };
    let numbered = key.couplets.entries();
    numbered
        .filter_map(|(at, couplet)| {
            let column = table.points.get(couplet.point)?;
            let point = design.point(&column.key)?;
            Some(CoupletLine {
                number: at.index() + 1,
                ask: point.ask.value.clone(),
                rests: values::rests_on(here, design, point),
                from: leading_to(at),
                leads: couplet
                    .leads
                    .iter()
                    .map(|lead| {
                        let named = lead.candidates.iter().filter_map(|c| names.get(c.index()));
                        let named: Vec<CleanHtml> = named.cloned().collect();
                        LeadLine {
                            seen: seen(here, point, column, &lead.condition),
                            to: match lead.goal {
                                Goal::Couplet(next) => Some(next.index() + 1),
                                Goal::End | Goal::Stop | Goal::Nothing => None,
                            },
                            together: match lead.goal {
                                Goal::End if named.len() > 1 => Some("key-not-told-apart"),
                                Goal::Stop => Some("key-stops"),
                                Goal::End | Goal::Couplet(_) | Goal::Nothing => None,
                            },
                            end: match lead.goal {
                                Goal::Nothing => {
                                    CleanHtml::text(here.words().word("key-agrees-with-nothing"))
                                }
                                _ => consistent_with(here, &named),
                            },
                            confirm: confirmed_by(here, design, table, &lead.confirm),
                        }
                    })
                    .collect(),
            })
        })
        .collect()
}

/// "Confirm it by the beam or the oven door."
fn confirmed_by(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    points: &[PointAt],
) -> CleanHtml {
    let points = points
        .iter()
        .filter_map(|at| Some(&table.points.get(*at)?.key));
    let points: Vec<CleanHtml> = points.map(|key| here.point(design, key)).collect();
    if points.is_empty() {
        return CleanHtml::empty();
    }
    let points = enumeration::together(here, &points);
    as_sentences(&[here
        .words()
        .html("key-confirmed-by", None, &[("points", &points)])])
}

/// The answer of a lead: "graded or wiped", "230 to 234 mm".
fn seen(here: &Here<'_>, point: &Point, column: &PointColumn, seen: &LeadCondition) -> String {
    let said: Vec<String> = match seen {
        LeadCondition::AnyOf(values) => values
            .iter()
            .map(|at| at_place(here, point, column, *at))
            .collect(),
        LeadCondition::Within(ranges) => ranges
            .iter()
            .map(|range| in_words(here, point, *range))
            .collect(),
    };
    enumeration::either_text(here.words(), &said)
}

fn in_words(here: &Here<'_>, point: &Point, range: Range) -> String {
    let unit = match &point.kind {
        PointKind::Measure { unit, .. } => unit.as_str(),
        _ => "",
    };
    let words = here.words();
    // Sums of decimal fractions are rounded to a millionth, the precision at which they are compared.
    let number = |n: f64| ((n * 1e6).round() / 1e6).to_string();
    let unit = ("unit", Argument::Text(unit));
    match (range.low.map(number), range.high.map(number)) {
        (Some(low), Some(high)) if low == high => {
            words.with("number-exactly", &[("number", Argument::Text(&low)), unit])
        }
        (Some(low), Some(high)) => words.with(
            "number-between",
            &[
                ("low", Argument::Text(&low)),
                ("high", Argument::Text(&high)),
                unit,
            ],
        ),
        (None, Some(high)) => {
            words.with("number-below", &[("number", Argument::Text(&high)), unit])
        }
        (Some(low), None) => words.with("number-above", &[("number", Argument::Text(&low)), unit]),
        (None, None) => String::new(),
    }
}
