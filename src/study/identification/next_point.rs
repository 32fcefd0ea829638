//! The next point to look at: the one that is expected to give most information.
//!
//! A point's worth is how much it is expected to lower the doubt about the candidates left, in
//! bits: H(p) - sum over v of P(v) H(p | v) (Shannon's information; Quinlan 1986 chooses questions
//! by it). It is computed as the mutual information of the answer and the class of candidates that
//! allow the same at the point, which is the same number and needs one logarithm for each class.
//!
//! In: a diagnostic table and the candidates weighed by the observations. Out: the points not yet seen,
//! the most informative first. Definitions: `docs/definitions.md, "Next points"`.

use super::answer_chances;
use super::identify::{Identified, Observed, greater_first};
use super::table::{DiagnosticTable, PointColumn};
use crate::index::{ClassAt, Indexed, PointAt};

/// A point and the information it is expected to give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextPoint {
    /// The point.
    pub point: PointAt,
    /// By how much it is expected to lower the doubt, in bits; not below 0.
    pub bits: f64,
}

/// The points not among `seen`, the most informative first, ties in the table's order. What is not visible or
/// not applicable was asked, and is not asked again. Empty where every candidate is excluded.
#[must_use]
pub fn next_points(
    table: &DiagnosticTable,
    identified: &Identified,
    seen: &[Observed],
) -> Vec<NextPoint> {
    if identified.left().next().is_none() {
        return Vec::new();
    }
    let unseen = table
        .points
        .entries()
        .filter(|(at, _)| seen.iter().all(|observed| observed.point != *at));
    let mut points: Vec<NextPoint> = unseen
        .map(|(point, column)| NextPoint {
            point,
            bits: expected_bits(column, identified),
        })
        .collect();
    points.sort_by(|a, b| greater_first(a.bits, b.bits));
    points
}

/// The information, in bits, that an answer at a point is expected to give.
pub(super) fn expected_bits(column: &PointColumn, identified: &Identified) -> f64 {
    let mut shares: Indexed<ClassAt, f64> = Indexed::filled(&column.classes, 0.0);
    for (candidate, weighed) in identified.candidates.entries() {
        shares[column.class_of[candidate]] += weighed.weight;
    }
    // A class without a candidate left adds nothing, so its answers are not weighed.
    let live = shares.iter().copied().zip(&column.classes);
    let live = live.filter(|(share, _)| *share > 0.0);
    answer_chances::expected(
        column,
        live.map(|(share, allowed)| (share, allowed.as_ref())),
    )
}

/// The information, in bits, that an answer gives about the class it comes from: the mutual information
/// of the two, not below 0.
///
/// `shares` holds the probability of each class, `chances` for each class the probability of each
/// answer, all rows of one length. This is the definition written out; what is expected of a point is
/// computed in `answer_chances`, in less time.
///
/// ```
/// # use keyblock::study::next_point::information;
/// // Two classes, equally probable, that never give the same answer: one bit.
/// assert_eq!(information(&[0.5, 0.5], &[vec![1.0, 0.0], vec![0.0, 1.0]]), 1.0);
/// // Quinlan 1986, Table 1: 9 days of 14 are of one class; "outlook" is sunny, overcast or rain on 2, 4
/// // and 3 of them and on 3, 0 and 2 of the others. Its published gain is 0.246 bits.
/// let shares = [9.0 / 14.0, 5.0 / 14.0];
/// let outlook = [vec![2.0 / 9.0, 4.0 / 9.0, 3.0 / 9.0], vec![3.0 / 5.0, 0.0, 2.0 / 5.0]];
/// assert!((information(&shares, &outlook) - 0.246).abs() < 0.001);
/// ```
#[must_use]
pub fn information(shares: &[f64], chances: &[Vec<f64>]) -> f64 {
    debug_assert_eq!(
        shares.len(),
        chances.len(),
        "a row of chances for each class"
    );
    let answers = chances.first().map_or(0, Vec::len);
    let mut bits = 0.0;
    for at in 0..answers {
        let joint: Vec<(f64, f64)> = shares
            .iter()
            .zip(chances)
            .map(|(share, of_class)| (*share, of_class[at]))
            .collect();
        let overall: f64 = joint.iter().map(|(share, chance)| share * chance).sum();
        for (share, chance) in joint {
            let together = share * chance;
            if together > 0.0 {
                bits += together * libm::log2(chance / overall);
            }
        }
    }
    bits.max(0.0)
}
