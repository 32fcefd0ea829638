//! The data of a key for its script: the diagnostic table as numbers, and the script's words.
//!
//! The names of candidates and points are in the page's markup, in the order of the table; the script
//! reads them there.

use std::collections::BTreeMap;

use serde::Serialize;

use super::points::key_of_place;
use crate::model::point::RestsOn;
use crate::page::phrases::evidence_words;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::scale::{Allowed, Scale};
use crate::study::table::{AxisRow, DiagnosticTable, PointColumn};

/// The table. Points and candidates are identified by their places in it.
#[derive(Serialize)]
struct Data {
    candidates: Vec<CandidateData>,
    states: Vec<RowData>,
    printings: Vec<RowData>,
    points: Vec<PointData>,
    words: BTreeMap<String, String>,
}

#[derive(Serialize)]
struct CandidateData {
    state: Option<String>,
    printing: Option<String>,
}

/// A state or a printing.
#[derive(Serialize)]
struct RowData {
    key: Option<String>,
    candidates: Vec<usize>,
    /// The points at which its own record shows something.
    shown: Vec<usize>,
}

#[derive(Serialize)]
struct PointData {
    key: String,
    /// Whether it rests on the matrix.
    of_matrix: bool,
    /// Whether a certain observation there excludes.
    decides: bool,
    /// The chance that a sheet departs from what is recorded.
    straying: f64,
    /// The kind of evidence, as the word for it.
    evidence: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    matrix: Option<String>,
    /// The values as an address writes them; `None` for a measure.
    #[serde(skip_serializing_if = "Option::is_none")]
    values: Option<Vec<String>>,
    /// Whether the values are counts. Any count that is not among them is then *other*.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    counts: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    tolerance: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    span: Option<(f64, f64)>,
    classes: Vec<Option<AllowedData>>,
    of: Vec<usize>,
}

#[derive(Serialize)]
#[serde(untagged)]
enum AllowedData {
    Places(Vec<usize>),
    Number(f64),
}

/// The words of the script, with the arguments it fills. Those of evidence are added.
const WORDS: [(&str, &[&str]); 20] = [
    ("key-left-all", &["all"]),
    ("key-left-some", &["left", "all"]),
    ("key-left-one", &["all"]),
    ("key-left-none", &[]),
    ("key-next", &[]),
    ("key-next-worth", &["bits"]),
    ("key-weight", &["weight"]),
    ("key-not-understood", &["what"]),
    ("key-not-these", &["values"]),
    ("key-with-states", &["states"]),
    ("evidence-unrecorded", &["candidate", "points"]),
    ("evidence-seen-and-recorded", &["ask", "seen", "recorded"]),
    ("evidence-would-exclude", &["ask", "recorded"]),
    ("evidence-would-weigh", &["ask", "recorded"]),
    ("evidence-look-again", &[]),
    ("evidence-no-weight", &[]),
    ("evidence-first-of-alike", &["n"]),
    ("value-not-visible", &[]),
    ("value-not-applicable", &[]),
    ("or", &[]),
];

/// The data of a table.
pub(super) fn data(here: &Here<'_>, table: &DiagnosticTable) -> CleanHtml {
    let words = here.words();
    let filled = WORDS
        .iter()
        .map(|(id, places)| ((*id).to_owned(), words.left_open(id, places)));
    let of_evidence = evidence_words::all_ids().map(|id| {
        let word = words.word(&id).to_owned();
        (id, word)
    });
    CleanHtml::data(&Data {
        candidates: table
            .candidates
            .iter()
            .map(|row| CandidateData {
                state: row.state.as_ref().map(ToString::to_string),
                printing: row.printing.as_ref().map(ToString::to_string),
            })
            .collect(),
        states: table.states.iter().map(row).collect(),
        printings: table.printings.iter().map(row).collect(),
        points: table.points.iter().map(point).collect(),
        words: filled.chain(of_evidence).collect(),
    })
}

fn row(row: &AxisRow) -> RowData {
    RowData {
        key: row.key.as_ref().map(ToString::to_string),
        candidates: row.candidates.iter().map(|at| at.index()).collect(),
        shown: row.shown.iter().map(|at| at.index()).collect(),
    }
}

fn point(column: &PointColumn) -> PointData {
    let measure = match &column.scale {
        Scale::Measure(measure) => Some(measure),
        Scale::Words(_) | Scale::Counts(_) => None,
    };
    let places = column.scale.values().map(|at| key_of_place(column, at));
    PointData {
        key: column.key.to_string(),
        of_matrix: column.rests_on == RestsOn::Matrix,
        decides: column.is_deciding,
        straying: column.straying,
        evidence: format!("evidence-{}", column.evidence),
        matrix: column.matrix.as_ref().map(ToString::to_string),
        values: measure.is_none().then(|| places.collect()),
        counts: matches!(column.scale, Scale::Counts(_)),
        tolerance: measure.map(|m| m.tolerance),
        span: measure.and_then(|m| m.span),
        classes: column
            .classes
            .iter()
            .map(|class| {
                class.as_ref().map(|allowed| match allowed {
                    Allowed::AnyOf(values) => {
                        AllowedData::Places(values.iter().map(|at| at.index()).collect())
                    }
                    Allowed::Number(number) => AllowedData::Number(*number),
                })
            })
            .collect(),
        of: column.class_of.iter().map(|class| class.index()).collect(),
    }
}
