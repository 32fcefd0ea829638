//! The deciding points of a table, and what could be seen there.

use crate::identification::identify::{Identified, WeighedCandidate, greater_first};
use crate::identification::next_point::expected_bits;
use crate::identification::scale::Allowed;
use crate::identification::table::{DiagnosticTable, PointColumn};
use crate::index::{CandidateAt, PointAt};

/// The deciding points of a table, those first that give most information about all its candidates.
pub(super) fn deciding_points(table: &DiagnosticTable, candidates: &[CandidateAt]) -> Vec<PointAt> {
    let alike = equally_likely(table, candidates);
    let deciding = table
        .points
        .entries()
        .filter(|(_, column)| column.is_deciding);
    let mut deciding: Vec<(PointAt, f64)> = deciding
        .map(|(at, column)| (at, expected_bits(column, &alike)))
        .collect();
    deciding.sort_by(|a, b| greater_first(a.1, b.1));
    deciding.into_iter().map(|(at, _)| at).collect()
}

/// Whether something could be seen at a point that is against a candidate.
pub(super) fn could_be_against(column: &PointColumn, candidate: CandidateAt) -> bool {
    match (column.allows(candidate), &column.scale) {
        (Some(Allowed::AnyOf(values)), scale) => values.len() < scale.len(),
        (Some(Allowed::Number(_)), _) => true,
        (None, _) => false,
    }
}

/// The candidates, each as likely as the others; all else excluded.
pub(super) fn equally_likely(table: &DiagnosticTable, candidates: &[CandidateAt]) -> Identified {
    #[allow(
        clippy::cast_precision_loss,
        reason = "a design has nowhere near 2^52 candidates"
    )]
    let share = 1.0 / candidates.len().max(1) as f64;
    let weighed = table.candidates.indexes().map(|at| WeighedCandidate {
        weight: if candidates.binary_search(&at).is_ok() {
            share
        } else {
            0.0
        },
        ..WeighedCandidate::default()
    });
    Identified {
        candidates: weighed.collect(),
    }
}
