//! Identification: which state and printing a sheet can be, given what was seen on it.
//!
//! Only what the matrix shows excludes: a certain observation at a deciding point that a candidate does not allow.
//! Everything else varies from sheet to sheet, can be added, or was only seen so far; it weighs. Those left share a
//! weight: how likely the observations are for each. No sheet is likelier at the outset than another.
//!
//! In: the diagnostic table of a design, and the observations. Out: [`Identified`].
//! Definitions: `docs/definitions.md, "Observations"`, `"Likelihood"`, `"For and against"` and
//! `"Exclusion and weight"`.
//! Not here: what to look at next (`next_point`), how the answer is put to people (`evidence`), whether a recorded
//! identification holds (`agree`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::model::certainty::Certainty;
//! # use keyblock::study::{Studies, identify::{Observed, identify}, index::{CandidateAt, PointAt, ValueAt}, scale::Answer};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! "#);
//! let studies = Studies::of(&catalogue);
//! let table = &studies.designs[&key("1")].table;
//! let a_moon = Observed {
//!     point: PointAt::new(0),
//!     answer: Answer::OneOf([ValueAt::new(0)].into()), // a presence lists "present" first
//!     certainty: Certainty::Certain,
//! };
//! let identified = identify(table, &[a_moon]);
//! let [dark, moonlit] = [0, 1].map(|at| &identified.candidates[CandidateAt::new(at)]);
//! assert_eq!(dark.excluded_by, [PointAt::new(0)]);
//! assert_eq!(moonlit.in_favour, [PointAt::new(0)]);
//! assert_eq!(moonlit.weight, 1.0);
//! ```

use std::cmp::Ordering;
use std::collections::BTreeSet;

use super::assumptions::error;
use super::scale::{Allowed, Answer};
use super::table::{AxisRow, DiagnosticTable, PointColumn};
use crate::index::{CandidateAt, ClassAt, Indexed, PointAt};
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::{BlockPrinted, Impression};
use keyblock_model::key::Key;
use keyblock_model::point::Point;

/// An observation at a point of the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Observed {
    /// The point.
    pub point: PointAt,
    /// The answer.
    pub answer: Answer,
    /// The certainty of the observation.
    pub certainty: Certainty,
}

/// The candidates weighed by the observations.
#[derive(Clone, Debug, PartialEq)]
pub struct Identified {
    /// The candidates of the table.
    pub candidates: Indexed<CandidateAt, WeighedCandidate>,
}

/// One candidate weighed by the observations.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WeighedCandidate {
    /// How likely the observations are for it, as a share of the sum over the candidates not excluded; 0 for the
    /// excluded.
    pub weight: f64,
    /// The points that exclude it, in the table's order.
    pub excluded_by: Vec<PointAt>,
    /// The points against it, in the table's order; those that exclude it are among them.
    pub against: Vec<PointAt>,
    /// The points for it and against some other candidate, in the table's order.
    pub in_favour: Vec<PointAt>,
}

impl WeighedCandidate {
    /// Whether some observation excludes the candidate.
    #[must_use]
    pub fn is_excluded(&self) -> bool {
        !self.excluded_by.is_empty()
    }
}

/// The number rounded to the 12 significant digits to which weights and bits are compared: the last digits depend
/// on the order of the arithmetic.
#[must_use]
pub(super) fn rounded(number: f64) -> f64 {
    format!("{number:.11e}").parse().unwrap_or(number)
}

/// Orders greater numbers first, as [`rounded`] leaves them.
pub(super) fn greater_first(a: f64, b: f64) -> Ordering {
    rounded(b).total_cmp(&rounded(a))
}

impl Identified {
    /// The candidates that are not excluded, in the table's order.
    pub fn left(&self) -> impl Iterator<Item = CandidateAt> {
        let candidates = self.candidates.entries();
        candidates.filter_map(|(at, weighed)| (!weighed.is_excluded()).then_some(at))
    }

    /// Every candidate, by falling weight, then in the table's order.
    #[must_use]
    pub fn by_weight(&self) -> Vec<CandidateAt> {
        let mut order: Vec<CandidateAt> = self.candidates.indexes().collect();
        order.sort_by(|a, b| greater_first(self.candidates[*a].weight, self.candidates[*b].weight));
        order
    }

    /// The rows of an axis, by falling weight, then in the table's order.
    #[must_use]
    pub fn rows_by_weight<'t>(&self, rows: &'t [AxisRow]) -> Vec<&'t AxisRow> {
        let mut order: Vec<&AxisRow> = rows.iter().collect();
        order.sort_by(|a, b| greater_first(self.weight_of(a), self.weight_of(b)));
        order
    }

    /// The weight of a state or printing: the largest of its candidates'.
    #[must_use]
    pub fn weight_of(&self, row: &AxisRow) -> f64 {
        let weights = row.candidates.iter().map(|at| self.candidates[*at].weight);
        weights.fold(0.0, f64::max)
    }

    /// Whether all candidates of a state or printing are excluded.
    #[must_use]
    pub fn is_excluded(&self, row: &AxisRow) -> bool {
        let mut candidates = row.candidates.iter();
        candidates.all(|at| self.candidates[*at].is_excluded())
    }

    /// Where every candidate is excluded: those that the fewest points exclude. Empty otherwise.
    #[must_use]
    pub fn nearest(&self) -> Vec<CandidateAt> {
        let fewest = self.candidates.iter().map(|c| c.excluded_by.len()).min();
        let Some(fewest) = fewest.filter(|fewest| *fewest > 0) else {
            return Vec::new();
        };
        let candidates = self.candidates.entries();
        let nearest = candidates.filter(|(_, c)| c.excluded_by.len() == fewest);
        nearest.map(|(at, _)| at).collect()
    }

    /// Where every candidate is excluded, and what excludes the nearest lies in different matrices: the sheet may
    /// have been printed from blocks in different conditions.
    #[must_use]
    pub fn may_be_mixed(&self, table: &DiagnosticTable) -> bool {
        let nearest = self.nearest().into_iter();
        let reasons = nearest.flat_map(|at| &self.candidates[at].excluded_by);
        let matrices: BTreeSet<&Key> = reasons
            .filter_map(|point| table.points[*point].matrix.as_ref())
            .collect();
        matrices.len() > 1
    }
}

/// What an observation makes of the candidates that allow the same at its point.
struct Bearing {
    likelihood: f64,
    is_against: bool,
    is_known: bool,
}

impl Bearing {
    fn of(column: &PointColumn, observed: &Observed, allowed: Option<&Allowed>) -> Bearing {
        let error = error(observed.certainty, column.straying);
        Bearing {
            likelihood: column.scale.likelihood(&observed.answer, allowed, error),
            is_against: allowed.is_some_and(|a| column.scale.is_against(&observed.answer, a)),
            is_known: allowed.is_some(),
        }
    }
}

/// Products below this are scaled up, all alike, so that many observations do not make them vanish.
const SMALL: f64 = 1e-150;

/// Weighs the candidates by the observations, whose order does not matter.
#[must_use]
pub fn identify(table: &DiagnosticTable, observed: &[Observed]) -> Identified {
    let mut candidates: Indexed<CandidateAt, WeighedCandidate> =
        Indexed::filled(&table.candidates, WeighedCandidate::default());
    let mut likelihoods: Vec<Indexed<CandidateAt, f64>> = Vec::new();
    for observation in in_the_order_of_the_table(observed) {
        let point = observation.point;
        let column = &table.points[point];
        let bearings: Indexed<ClassAt, Bearing> = column
            .classes
            .iter()
            .map(|allowed| Bearing::of(column, observation, allowed.as_ref()))
            .collect();
        let excludes = column.is_deciding && observation.certainty == Certainty::Certain;
        let is_against_some = bearings.iter().any(|bearing| bearing.is_against);
        for (candidate, class) in column.class_of.entries() {
            let bearing = &bearings[*class];
            let weighed = &mut candidates[candidate];
            if bearing.is_against {
                weighed.against.push(point);
            } else if bearing.is_known && is_against_some {
                weighed.in_favour.push(point);
            }
            if bearing.is_against && excludes {
                weighed.excluded_by.push(point);
            }
        }
        let class_of = column.class_of.iter();
        likelihoods.push(class_of.map(|class| bearings[*class].likelihood).collect());
    }
    let weights = products(&candidates, &likelihoods);
    let total: f64 = weights.iter().sum();
    for (at, weight) in weights.entries() {
        candidates[at].weight = if total > 0.0 { weight / total } else { 0.0 };
    }
    Identified { candidates }
}

/// The product of the likelihoods of each candidate, up to a factor common to all; 0 for the excluded.
fn products(
    candidates: &Indexed<CandidateAt, WeighedCandidate>,
    likelihoods: &[Indexed<CandidateAt, f64>],
) -> Indexed<CandidateAt, f64> {
    let mut weights: Indexed<CandidateAt, f64> = candidates
        .iter()
        .map(|c| if c.is_excluded() { 0.0 } else { 1.0 })
        .collect();
    for of_observation in likelihoods {
        for (at, likelihood) in of_observation.entries() {
            weights[at] *= likelihood;
        }
        let greatest = weights.iter().copied().fold(0.0, f64::max);
        if greatest > 0.0 && greatest < SMALL {
            // A power of two changes no digit.
            let scale = 2.0_f64.powi(512);
            weights.iter_mut().for_each(|weight| *weight *= scale);
        }
    }
    weights
}

/// The observations by point, so that their order does not change the last digits of the result.
fn in_the_order_of_the_table(observed: &[Observed]) -> Vec<&Observed> {
    let mut ordered: Vec<&Observed> = observed.iter().collect();
    ordered.sort_by_key(|o| o.point);
    ordered
}

/// The observations of an impression, on the scales of its design's table. What was seen of a block that was not
/// printed is not applicable; an observation that leaves no value is left out.
#[must_use]
pub fn observed_on(
    table: &DiagnosticTable,
    design: &Design,
    impression: &Impression,
) -> Vec<Observed> {
    let recorded = impression.observed.iter().filter_map(|observation| {
        let point = design.point(&observation.point.value)?;
        let at = table.point_at(&observation.point.value)?;
        let answer = if is_printed(impression, point) {
            table.points[at].scale.answer(&observation.seen)?
        } else {
            Answer::NotApplicable
        };
        Some(Observed {
            point: at,
            answer,
            certainty: observation.claim.certainty(),
        })
    });
    recorded.collect()
}

/// Whether a point can be judged on a sheet: the matrix it rests on was not left unprinted.
#[must_use]
pub fn is_printed(impression: &Impression, point: &Point) -> bool {
    let Some(matrix) = &point.matrix else {
        return true;
    };
    !impression
        .blocks
        .iter()
        .any(|(m, printed)| m.value == matrix.value && printed.value == BlockPrinted::NotPrinted)
}
