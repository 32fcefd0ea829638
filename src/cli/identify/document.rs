//! What `identify --json` prints (docs/JSON.md).

use serde::Serialize;

use super::examination::Examination;
use super::see_option::OTHER;
use crate::model::point::Value;
use crate::model::words::ClosedList;
use crate::study::index::{CandidateAt, PointAt, ValueAt};
use crate::study::numerals::numerals;
use crate::study::scale::{Answer, Scale};
use crate::study::table::DiagnosticTable;

/// What `identify --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct IdentifyDocument {
    /// The design's key.
    design: String,
    /// What was seen, in the order of the arguments.
    seen: Vec<SeenEntry>,
    /// By falling probability, then by state and printing in the record's order.
    candidates: Vec<CandidateEntry>,
    /// The points not seen, the most telling first; empty where every candidate is excluded.
    next: Vec<NextEntry>,
    separability: SeparabilityEntry,
}

#[derive(Debug, Serialize)]
struct SeenEntry {
    point: String,
    is: SeenValues,
    certainty: &'static str,
}

/// A list in the point's order, or the number measured.
#[derive(Debug, Serialize)]
#[serde(untagged)]
enum SeenValues {
    Values(Vec<ValueEntry>),
    Number(f64),
}

#[derive(Debug, Serialize)]
#[serde(untagged)]
enum ValueEntry {
    Word(String),
    Count(u32),
}

#[derive(Debug, Serialize)]
struct CandidateEntry {
    state: String,
    /// As printed: "iii/iv", "only state".
    numeral: String,
    /// Null for a state that no printing names.
    printing: Option<String>,
    probability: f64,
    excluded: bool,
    /// The points that exclude it, in the record's order.
    against: Vec<String>,
}

#[derive(Debug, Serialize)]
struct NextEntry {
    point: String,
    bits: f64,
}

#[derive(Debug, Serialize)]
struct SeparabilityEntry {
    inseparable: Vec<[CandidateName; 2]>,
    smallest_set: Vec<String>,
    /// Whether the set is known to be the smallest.
    exact: bool,
}

#[derive(Debug, Serialize)]
struct CandidateName {
    state: String,
    printing: Option<String>,
}

/// The document of an examination.
pub(super) fn of(examination: &Examination<'_>) -> IdentifyDocument {
    let table = examination.table;
    IdentifyDocument {
        design: examination.design.key.to_string(),
        seen: seen(examination),
        candidates: candidates(examination),
        next: examination
            .next
            .iter()
            .filter_map(|next| {
                Some(NextEntry {
                    point: point(table, next.point)?,
                    bits: next.bits,
                })
            })
            .collect(),
        separability: separability(examination),
    }
}

fn point(table: &DiagnosticTable, at: PointAt) -> Option<String> {
    Some(table.points.get(at)?.key.to_string())
}

fn seen(examination: &Examination<'_>) -> Vec<SeenEntry> {
    let observed = examination.observed.iter().filter_map(|observed| {
        let column = examination.table.points.get(observed.point)?;
        Some(SeenEntry {
            point: column.key.to_string(),
            is: match &observed.answer {
                Answer::Number(number) => SeenValues::Number(*number),
                Answer::OneOf(values) => {
                    SeenValues::Values(values.iter().map(|at| value(&column.scale, *at)).collect())
                }
            },
            certainty: observed.certainty.word(),
        })
    });
    observed.collect()
}

fn value(scale: &Scale, at: ValueAt) -> ValueEntry {
    match scale.value(at) {
        Some(Value::Word(word)) => ValueEntry::Word(word.to_string()),
        Some(Value::Count(n)) => ValueEntry::Count(n),
        Some(Value::Measure(_)) | None => ValueEntry::Word(OTHER.to_owned()),
    }
}

fn candidates(examination: &Examination<'_>) -> Vec<CandidateEntry> {
    let numerals = numerals(examination.design);
    let order = examination.identified.by_probability().into_iter();
    let candidates = order.filter_map(|at| {
        let row = examination.table.candidates.get(at)?;
        let weighed = examination.identified.candidates.get(at)?;
        let against = weighed.against.iter();
        Some(CandidateEntry {
            state: row.state.to_string(),
            numeral: numerals
                .get(&row.state)
                .map(ToString::to_string)
                .unwrap_or_default(),
            printing: row.printing.as_ref().map(ToString::to_string),
            probability: weighed.probability,
            excluded: weighed.is_excluded(),
            against: against
                .filter_map(|at| point(examination.table, *at))
                .collect(),
        })
    });
    candidates.collect()
}

fn separability(examination: &Examination<'_>) -> SeparabilityEntry {
    let table = examination.table;
    let named = |at: CandidateAt| {
        table.candidates.get(at).map(|row| CandidateName {
            state: row.state.to_string(),
            printing: row.printing.as_ref().map(ToString::to_string),
        })
    };
    let found = examination.separability;
    SeparabilityEntry {
        inseparable: found
            .inseparable
            .iter()
            .filter_map(|(one, other)| Some([named(*one)?, named(*other)?]))
            .collect(),
        smallest_set: found
            .smallest_set
            .iter()
            .filter_map(|at| point(table, *at))
            .collect(),
        exact: found.exact,
    }
}
