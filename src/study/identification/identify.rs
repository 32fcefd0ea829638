//! Identification: which state and printing a sheet can be, given what was seen on it.
//!
//! A certain observation that a candidate does not allow excludes it; the points at which that happens are the reasons.
//! Those left share a probability: their prior times how likely each observation is for them (Bayes), so that an
//! uncertain observation changes the probabilities without excluding a candidate.
//!
//! In: the diagnostic table of a design, and the observations. Out: [`Identified`].
//! Definitions: `docs/definitions.md, "Observations"`, `"Likelihood"` and `"Exclusion and weight"`.
//! Not here: what to look at next (`next_point`), whether a recorded identification holds (`agree`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
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
//! assert_eq!(dark.against, [PointAt::new(0)]);
//! assert_eq!(moonlit.probability, 1.0);
//! ```

use std::collections::BTreeSet;

use super::scale::{Answer, error_rate};
use super::table::DiagnosticTable;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{BlockPrinted, Impression};
use crate::model::key::Key;
use crate::model::point::Point;
use crate::study::index::{CandidateAt, ClassAt, Indexed, PointAt};

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
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedCandidate {
    /// Its probability among those not excluded; 0 for the excluded.
    pub probability: f64,
    /// The points that exclude it, in the table's order; empty: not excluded.
    pub against: Vec<PointAt>,
}

impl WeighedCandidate {
    /// Whether some observation excludes the candidate.
    #[must_use]
    pub fn is_excluded(&self) -> bool {
        !self.against.is_empty()
    }
}

/// Numbers that differ by less count as equal: the last digits depend on the order of addition.
const ALIKE: f64 = 1e-12;

/// Orders greater numbers first; those that differ by less than [`ALIKE`] are equal.
pub(super) fn greater_first(a: f64, b: f64) -> std::cmp::Ordering {
    let steps = |x: f64| (x / ALIKE).round();
    steps(b).total_cmp(&steps(a))
}

impl Identified {
    /// The candidates that are not excluded, in the table's order.
    pub fn left(&self) -> impl Iterator<Item = CandidateAt> {
        let candidates = self.candidates.entries();
        candidates.filter_map(|(at, weighed)| (!weighed.is_excluded()).then_some(at))
    }

    /// Every candidate, by falling probability, then in the table's order.
    #[must_use]
    pub(crate) fn by_probability(&self) -> Vec<CandidateAt> {
        let mut order: Vec<CandidateAt> = self.candidates.indexes().collect();
        let probability = |at: CandidateAt| self.candidates[at].probability;
        order.sort_by(|a, b| greater_first(probability(*a), probability(*b)));
        order
    }

    /// Where every candidate is excluded: those with the fewest reasons against them. Empty
    /// otherwise.
    #[must_use]
    pub fn nearest(&self) -> Vec<CandidateAt> {
        let fewest = self.candidates.iter().map(|c| c.against.len()).min();
        let Some(fewest) = fewest.filter(|fewest| *fewest > 0) else {
            return Vec::new();
        };
        let candidates = self.candidates.entries();
        let nearest = candidates.filter(|(_, c)| c.against.len() == fewest);
        nearest.map(|(at, _)| at).collect()
    }

    /// Where every candidate is excluded, and the reasons against the nearest lie in different
    /// matrices: the sheet may have been printed from blocks in different conditions.
    #[must_use]
    pub fn may_be_mixed(&self, table: &DiagnosticTable) -> bool {
        let nearest = self.nearest().into_iter();
        let reasons = nearest.flat_map(|at| &self.candidates[at].against);
        let matrices: BTreeSet<&Key> = reasons
            .filter_map(|point| table.points[*point].matrix.as_ref())
            .collect();
        matrices.len() > 1
    }
}

/// Weighs the candidates by the observations, whose order does not matter.
#[must_use]
pub fn identify(table: &DiagnosticTable, observed: &[Observed]) -> Identified {
    let mut weights: Indexed<CandidateAt, f64> = table.candidates.iter().map(|c| c.prior).collect();
    let mut against: Indexed<CandidateAt, BTreeSet<PointAt>> =
        Indexed::filled(&weights, BTreeSet::new());
    for observation in in_the_order_of_the_table(observed) {
        let column = &table.points[observation.point];
        let error = error_rate(observation.certainty);
        let is_certain = observation.certainty == Certainty::Certain;
        let of_classes: Indexed<ClassAt, (f64, bool)> = column
            .classes
            .iter()
            .map(|allowed| {
                let allowed = allowed.as_ref();
                let likelihood = column.scale.likelihood(&observation.answer, allowed, error);
                let excludes = is_certain
                    && allowed.is_some_and(|a| column.scale.rules_out(&observation.answer, a));
                (likelihood, excludes)
            })
            .collect();
        for (candidate, class) in column.class_of.entries() {
            let (likelihood, excludes) = of_classes[*class];
            weights[candidate] *= likelihood;
            if excludes {
                against[candidate].insert(observation.point);
            }
        }
    }
    let left = || weights.iter().zip(&against).filter(|(_, a)| a.is_empty());
    let total: f64 = left().map(|(weight, _)| weight).sum();
    Identified {
        candidates: weights
            .iter()
            .zip(&against)
            .map(|(weight, against)| WeighedCandidate {
                probability: if against.is_empty() && total > 0.0 {
                    weight / total
                } else {
                    0.0
                },
                against: against.iter().copied().collect(),
            })
            .collect(),
    }
}

/// The observations by point, so that their order does not change the last digits of the result.
fn in_the_order_of_the_table(observed: &[Observed]) -> Vec<&Observed> {
    let mut ordered: Vec<&Observed> = observed.iter().collect();
    ordered.sort_by_key(|o| o.point);
    ordered
}

/// The observations of an impression, on the scales of its design's table. Those that give no information
/// (not visible, or of a block that was not printed) are left out.
#[must_use]
pub fn observed_on(
    table: &DiagnosticTable,
    design: &Design,
    impression: &Impression,
) -> Vec<Observed> {
    let recorded = impression.observed.iter().filter_map(|observation| {
        let point = design.point(&observation.point.value)?;
        if !is_printed(impression, point) {
            return None;
        }
        let at = table.point_at(&observation.point.value)?;
        Some(Observed {
            point: at,
            answer: table.points[at].scale.answer(&observation.seen)?,
            certainty: observation.claim.certainty(),
        })
    });
    recorded.collect()
}

/// Whether a point can be judged on a sheet: the matrix it rests on was not left unprinted.
#[must_use]
pub(crate) fn is_printed(impression: &Impression, point: &Point) -> bool {
    let Some(matrix) = &point.matrix else {
        return true;
    };
    !impression
        .blocks
        .iter()
        .any(|(m, printed)| m.value == matrix.value && printed.value == BlockPrinted::NotPrinted)
}
