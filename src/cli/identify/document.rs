//! What `identify --json` prints (docs/JSON.md).

use serde::Serialize;

use super::examination::Examination;
use super::see_option::{NOT_APPLICABLE, NOT_VISIBLE, OTHER};
use crate::model::key::Key;
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
    /// By falling weight, then in the record's order; no state last.
    states: Vec<StateEntry>,
    /// By falling weight, then in the record's order; no printing last.
    printings: Vec<PrintingEntry>,
    /// By falling weight, then by state and printing in the record's order.
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
struct StateEntry {
    /// Null for a recut, a reproduction, and a printing of a design without states.
    state: Option<String>,
    /// As printed: "iii/iv", "only state".
    numeral: Option<String>,
    /// The largest of its candidates' weights; weights of states do not add up.
    weight: f64,
    /// Whether all its candidates are.
    excluded: bool,
}

#[derive(Debug, Serialize)]
struct PrintingEntry {
    /// Null for a state that no printing contains.
    printing: Option<String>,
    weight: f64,
    excluded: bool,
}

#[derive(Debug, Serialize)]
struct CandidateEntry {
    state: Option<String>,
    numeral: Option<String>,
    printing: Option<String>,
    weight: f64,
    excluded: bool,
    /// The points that exclude it, in the record's order.
    excluded_by: Vec<String>,
    /// The points against it, those that exclude it among them.
    against: Vec<String>,
    /// The points for it and against some other candidate.
    r#for: Vec<String>,
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
    state: Option<String>,
    printing: Option<String>,
}

/// The document of an examination.
pub(super) fn of(examination: &Examination<'_>) -> IdentifyDocument {
    let table = examination.table;
    IdentifyDocument {
        design: examination.design.key.to_string(),
        seen: seen(examination),
        states: states(examination),
        printings: printings(examination),
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
                Answer::NotVisible => no_value(NOT_VISIBLE),
                Answer::NotApplicable => no_value(NOT_APPLICABLE),
            },
            certainty: observed.certainty.word(),
        })
    });
    observed.collect()
}

fn no_value(word: &str) -> SeenValues {
    SeenValues::Values(vec![ValueEntry::Word(word.to_owned())])
}

fn value(scale: &Scale, at: ValueAt) -> ValueEntry {
    match scale.value(at) {
        Some(Value::Word(word)) => ValueEntry::Word(word.to_string()),
        Some(Value::Count(n)) => ValueEntry::Count(n),
        Some(Value::Measure(_)) | None => ValueEntry::Word(OTHER.to_owned()),
    }
}

fn states(examination: &Examination<'_>) -> Vec<StateEntry> {
    let identified = &examination.identified;
    let rows = identified.rows_by_weight(&examination.table.states);
    rows.into_iter()
        .map(|row| StateEntry {
            state: row.key.as_ref().map(ToString::to_string),
            numeral: numeral(examination, row.key.as_ref()),
            weight: identified.weight_of(row),
            excluded: identified.is_excluded(row),
        })
        .collect()
}

fn printings(examination: &Examination<'_>) -> Vec<PrintingEntry> {
    let identified = &examination.identified;
    let rows = identified.rows_by_weight(&examination.table.printings);
    rows.into_iter()
        .map(|row| PrintingEntry {
            printing: row.key.as_ref().map(ToString::to_string),
            weight: identified.weight_of(row),
            excluded: identified.is_excluded(row),
        })
        .collect()
}

fn numeral(examination: &Examination<'_>, state: Option<&Key>) -> Option<String> {
    numerals(examination.design)
        .get(state?)
        .map(ToString::to_string)
}

fn candidates(examination: &Examination<'_>) -> Vec<CandidateEntry> {
    let points = |points: &[PointAt]| -> Vec<String> {
        let keys = points.iter().filter_map(|at| point(examination.table, *at));
        keys.collect()
    };
    let order = examination.identified.by_weight().into_iter();
    let candidates = order.filter_map(|at| {
        let row = examination.table.candidates.get(at)?;
        let weighed = examination.identified.candidates.get(at)?;
        Some(CandidateEntry {
            state: row.state.as_ref().map(ToString::to_string),
            numeral: numeral(examination, row.state.as_ref()),
            printing: row.printing.as_ref().map(ToString::to_string),
            weight: weighed.weight,
            excluded: weighed.is_excluded(),
            excluded_by: points(&weighed.excluded_by),
            against: points(&weighed.against),
            r#for: points(&weighed.in_favour),
        })
    });
    candidates.collect()
}

fn separability(examination: &Examination<'_>) -> SeparabilityEntry {
    let table = examination.table;
    let named = |at: CandidateAt| {
        table.candidates.get(at).map(|row| CandidateName {
            state: row.state.as_ref().map(ToString::to_string),
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
