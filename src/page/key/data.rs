//! The data of a key for its script: the diagnostic table as numbers, and the script's words.
//!
//! The names of candidates and points are in the page's markup, in the order of the table; the script
//! reads them there.

use std::collections::BTreeMap;

use serde::Serialize;

use super::points::key_of_place;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::scale::{Allowed, Scale};
use crate::study::table::{DiagnosticTable, PointColumn};

/// The table. Points and candidates are identified by their places in it.
#[derive(Serialize)]
struct Data {
    candidates: Vec<CandidateData>,
    points: Vec<PointData>,
    words: BTreeMap<&'static str, String>,
    /// Shares in words, the largest first.
    shares: Vec<(f64, String)>,
}

#[derive(Serialize)]
struct CandidateData {
    state: String,
    printing: Option<String>,
    prior: f64,
}

#[derive(Serialize)]
struct PointData {
    key: String,
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

/// Shares in words: the id of the word, and the fraction.
const SHARES: [(&str, f64); 19] = [
    ("share-nearly-all", 0.99),
    ("share-19-20", 0.95),
    ("share-9-10", 0.9),
    ("share-4-5", 0.8),
    ("share-3-4", 0.75),
    ("share-2-3", 2.0 / 3.0),
    ("share-3-5", 0.6),
    ("share-1-2", 0.5),
    ("share-2-5", 0.4),
    ("share-1-3", 1.0 / 3.0),
    ("share-3-10", 0.3),
    ("share-1-4", 0.25),
    ("share-1-5", 0.2),
    ("share-1-6", 1.0 / 6.0),
    ("share-1-7", 1.0 / 7.0),
    ("share-1-8", 0.125),
    ("share-1-10", 0.1),
    ("share-1-20", 0.05),
    ("share-hardly", 0.01),
];

/// The words of the script, with the arguments it fills.
const WORDS: [(&str, &[&str]); 11] = [
    ("key-left-all", &["all"]),
    ("key-left-some", &["left", "all"]),
    ("key-left-one", &["all"]),
    ("key-left-none", &[]),
    ("key-next", &[]),
    ("key-next-worth", &["percent", "bits", "doubt"]),
    ("key-reason", &["ask", "shown", "seen"]),
    ("key-share-only", &[]),
    ("key-not-understood", &["what"]),
    ("key-not-these", &["values"]),
    ("or", &[]),
];

/// The data of a table.
pub(super) fn data(here: &Here<'_>, table: &DiagnosticTable) -> CleanHtml {
    let words = here.words();
    let filled = WORDS
        .iter()
        .map(|(id, places)| (*id, words.left_open(id, places)));
    CleanHtml::data(&Data {
        candidates: table
            .candidates
            .iter()
            .map(|row| CandidateData {
                state: row.state.to_string(),
                printing: row.printing.as_ref().map(ToString::to_string),
                prior: row.prior,
            })
            .collect(),
        points: table.points.iter().map(point).collect(),
        words: filled.collect(),
        shares: SHARES
            .iter()
            .map(|(id, share)| (*share, words.word(id).to_owned()))
            .collect(),
    })
}

fn point(column: &PointColumn) -> PointData {
    let measure = match &column.scale {
        Scale::Measure(measure) => Some(measure),
        Scale::Words(_) | Scale::Counts(_) => None,
    };
    let places = column.scale.values().map(|at| key_of_place(column, at));
    PointData {
        key: column.key.to_string(),
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
