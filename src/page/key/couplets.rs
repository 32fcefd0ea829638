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
use crate::study::couplets::{Couplet, Couplets, Goal, Lead, LeadCondition, Range};
use crate::study::index::{CandidateAt, CoupletAt, PointAt};
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
                                Goal::Nothing => agrees_with_nothing(here, point),
                                _ => consistent_with(here, &named),
                            },
                            confirm: confirmed_by(here, design, table, lead),
                        }
                    })
                    .collect(),
            })
        })
        .collect()
}

/// What an end says where no candidate agrees. At a measure: up to twice the tolerance nothing speaks against a
/// candidate, though the lead begins at the tolerance.
fn agrees_with_nothing(here: &Here<'_>, point: &Point) -> CleanHtml {
    let words = here.words();
    match &point.kind {
        PointKind::Measure { unit, tolerance } => {
            let twice = CleanHtml::text(&format!("{} {unit}", 2.0 * tolerance));
            words.html("key-measured-otherwise", None, &[("twice", &twice)])
        }
        _ => CleanHtml::text(words.word("key-agrees-with-nothing")),
    }
}

/// "Confirm it by the beam or the oven door."; at an end in one printing of a state whose other printings no deciding
/// point separates from it: "Confirm the state by … . No deciding point separates this printing from …: compare the
/// stamp and the paper."
fn confirmed_by(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    lead: &Lead,
) -> CleanHtml {
    let words = here.words();
    let named = |at: PointAt| Some(here.point(design, &table.points.get(at)?.key));
    let points: Vec<CleanHtml> = lead.confirm.iter().filter_map(|at| named(*at)).collect();
    let others = match (lead.goal, lead.candidates.as_slice()) {
        (Goal::End, [only]) => only_likelier_than(here, design, table, *only),
        _ => Vec::new(),
    };
    let mut sentences = Vec::new();
    if !points.is_empty() {
        let points = enumeration::together(here, &points);
        let word = if others.is_empty() {
            "key-confirmed-by"
        } else {
            "key-state-confirmed-by"
        };
        sentences.push(words.html(word, None, &[("points", &points)]));
    }
    if let Some((_, only)) = others.first().zip(lead.candidates.first()) {
        let separating = table.points.entries().filter(|(_, column)| {
            others.iter().any(|(other, _)| {
                let allowed = column.allows(*only).zip(column.allows(*other));
                allowed.is_some_and(|(one, other)| column.scale.tells_apart(one, other))
            })
        });
        let separating: Vec<CleanHtml> = separating.filter_map(|(at, _)| named(at)).collect();
        let printings: Vec<CleanHtml> = others.iter().map(|(_, name)| name.clone()).collect();
        sentences.push(words.html(
            "key-printing-not-decided",
            None,
            &[
                ("printings", &enumeration::together(here, &printings)),
                ("points", &enumeration::together(here, &separating)),
            ],
        ));
    }
    as_sentences(&sentences)
}

/// The other printings of a candidate's state that points separate from it, but no deciding point, by name.
fn only_likelier_than(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    candidate: CandidateAt,
) -> Vec<(CandidateAt, CleanHtml)> {
    let Some(study) = here.book.studies.designs.get(&design.key) else {
        return Vec::new();
    };
    let pairs = study.separability.only_likelier.iter();
    let others = pairs.filter_map(|(one, other)| match candidate {
        at if at == *one => Some(*other),
        at if at == *other => Some(*one),
        _ => None,
    });
    others
        .filter_map(|at| {
            let (own, row) = (table.candidates.get(candidate)?, table.candidates.get(at)?);
            let printing = row.printing.as_ref().filter(|_| own.state == row.state)?;
            let name = here.printing_name(design, printing);
            Some((at, CleanHtml::text(&name)))
        })
        .collect()
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
