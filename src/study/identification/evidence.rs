//! The evidence on a sheet as it is put to people: state and printing apart, and under each what excludes it, what
//! speaks for it and what against, the strongest kind first; how far it falls behind the best; and what would
//! change the answer.
//!
//! What rests on the matrix tells about the state. What a printing adds (blocks, paper, inking, marks, and what it
//! shows of the matrix itself) tells about the printing. No row has a percentage: the chances of error are working
//! assumptions, and only their order of size means anything.
//!
//! In: a diagnostic table, the observations, and the candidates weighed by them. Out: [`Evidence`].
//! Method: ratios of likelihoods in the grades of Kass and Raftery 1995, Journal of the American Statistical
//! Association 90, 773–795 (limits from memory). Definitions: `docs/definitions.md, "The two axes and their grades"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::model::certainty::Certainty;
//! # use keyblock::study::{Studies, identify::{Observed, identify}, index::{PointAt, ValueAt}, scale::Answer};
//! # use keyblock::study::evidence::{Evidence, Fit, Grade};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "stamp", ask = "A stamp?", kind = "presence", rests_on = "mark" }]
//! printings = [
//!   { key = "own", kind = "artist", shows = { stamp = "absent" } },
//!   { key = "estate", kind = "posthumous", shows = { stamp = "present" } },
//! ]
//! "#);
//! let table = &Studies::of(&catalogue).designs[&key("1")].table;
//! let a_stamp = [Observed {
//!     point: PointAt::new(0),
//!     answer: Answer::OneOf([ValueAt::new(0)].into()),
//!     certainty: Certainty::Certain,
//! }];
//! let evidence = Evidence::of(table, &a_stamp, &identify(table, &a_stamp));
//! let fits: Vec<_> = evidence.printings.iter().map(|row| (row.key.as_ref().unwrap().as_str(), row.fit)).collect();
//! // A stamp alone excludes nothing: the sheet may be the artist's own, stamped when the estate was sold.
//! assert_eq!(fits, [("estate", Fit::Best), ("own", Fit::Graded(Grade::Behind))]);
//! ```

use std::collections::BTreeSet;

use super::assumptions::error;
pub use super::grades::{Bearing, Fit, Grade};
use super::identify::{Identified, Observed, greater_first};
use super::next_point::NextPoint;
use super::scale::{Allowed, Scale};
use super::table::{AxisRow, DiagnosticTable};
use crate::index::{CandidateAt, PointAt};
use keyblock_model::certainty::Certainty;
use keyblock_model::key::Key;
use keyblock_model::point::RestsOn;

/// The evidence of what was seen, for every state and every printing.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// The states, by falling weight, then in the record's order.
    pub states: Vec<EvidenceRow>,
    /// The printings, likewise.
    pub printings: Vec<EvidenceRow>,
    /// The candidate of most weight, the first in the record's order among equals; `None` where all are excluded.
    pub best: Option<CandidateAt>,
    /// How many candidates weigh as much as the best, itself among them; 0 where there is none.
    pub alike: usize,
    /// Where only one candidate is left: the points seen at which nothing is recorded of it.
    pub unrecorded: Vec<PointAt>,
}

/// What was seen, for one state or one printing.
#[derive(Clone, Debug, PartialEq)]
pub struct EvidenceRow {
    /// The state or printing; `None`: no state, no printing.
    pub key: Option<Key>,
    /// Its best candidate: the one of most weight, among excluded ones that with the fewest points excluding it.
    pub best: CandidateAt,
    /// Its candidates that weigh as much as the best, in the table's order, the best among them.
    pub level: Vec<CandidateAt>,
    /// How what was seen fits it.
    pub fit: Fit,
    /// The points against all its candidates, the strongest kind of evidence first.
    pub against: Vec<PointAt>,
    /// Those of [`EvidenceRow::against`] that exclude some of its candidates.
    pub excluded_by: Vec<PointAt>,
    /// The points for its best candidate, the strongest kind of evidence first.
    pub in_favour: Vec<PointAt>,
}

/// The two answers: the state, and the printing.
#[derive(Clone, Copy, PartialEq)]
enum Axis {
    State,
    Printing,
}

impl EvidenceRow {
    /// The points that speak of it and what each says: those that exclude, those for, those against; of each the
    /// strongest kind of evidence first.
    pub fn bearings(&self) -> impl Iterator<Item = (Bearing, PointAt)> {
        let excluding = self.excluded_by.iter().map(|at| (Bearing::Excludes, *at));
        let in_favour = self.in_favour.iter().map(|at| (Bearing::For, *at));
        let against = self.against.iter();
        let against = against.filter(|at| !self.excluded_by.contains(at));
        let against = against.map(|at| (Bearing::Against, *at));
        excluding.chain(in_favour).chain(against)
    }

    /// Of a printing that contains several states: the candidates with the states that fit best; empty where all
    /// fit alike.
    #[must_use]
    pub fn with_states(&self, row: &AxisRow) -> &[CandidateAt] {
        if row.candidates.len() > 1 && self.level.len() == row.candidates.len() {
            return &[];
        }
        &self.level
    }
}

impl Evidence {
    /// Whether the observations distinguish any candidates.
    #[must_use]
    pub fn tells(&self) -> bool {
        Evidence::distinguishes(&self.states) || Evidence::distinguishes(&self.printings)
    }

    /// Whether the observations distinguish some of the rows of an axis; they do not where there is only one.
    #[must_use]
    pub fn distinguishes(rows: &[EvidenceRow]) -> bool {
        let is_silent =
            |row: &EvidenceRow| matches!(row.fit, Fit::NothingTold | Fit::NothingToCompare);
        rows.len() > 1 && !rows.iter().all(is_silent)
    }

    /// The evidence of the observations, as they weigh the candidates.
    #[must_use]
    pub fn of(table: &DiagnosticTable, observed: &[Observed], identified: &Identified) -> Evidence {
        let order = identified.by_weight();
        let is_left = |at: &CandidateAt| !identified.candidates[*at].is_excluded();
        let best = order.iter().copied().find(is_left);
        let left: Vec<CandidateAt> = identified.left().collect();
        let weighing = Weighing {
            table,
            observed,
            identified,
            best,
        };
        let rows = |axis: Axis, rows: &[AxisRow]| -> Vec<EvidenceRow> {
            let rows = identified.rows_by_weight(rows).into_iter();
            with_the_best(rows.map(|row| weighing.row(axis, row)).collect())
        };
        let weight = |at: CandidateAt| identified.candidates[at].weight;
        let is_alike = |at: &&CandidateAt| {
            best.is_some_and(|best| greater_first(weight(**at), weight(best)).is_eq())
        };
        Evidence {
            alike: left.iter().filter(is_alike).count(),
            states: rows(Axis::State, &table.states),
            printings: rows(Axis::Printing, &table.printings),
            best,
            unrecorded: match left.as_slice() {
                [only] => weighing.unrecorded(*only),
                _ => Vec::new(),
            },
        }
    }
}

/// The rows, the one that alone is level with the best called the best.
fn with_the_best(mut rows: Vec<EvidenceRow>) -> Vec<EvidenceRow> {
    let is_level = |row: &&mut EvidenceRow| row.fit == Fit::Graded(Grade::Level);
    let mut level: Vec<&mut EvidenceRow> = rows.iter_mut().filter(is_level).collect();
    if let [only] = level.as_mut_slice() {
        only.fit = Fit::Best;
    }
    rows
}

struct Weighing<'a> {
    table: &'a DiagnosticTable,
    observed: &'a [Observed],
    identified: &'a Identified,
    best: Option<CandidateAt>,
}

impl Weighing<'_> {
    fn row(&self, axis: Axis, row: &AxisRow) -> EvidenceRow {
        let best = self.best_of(row);
        let counts = |point: &PointAt| axis == Axis::Printing || self.rests_on_matrix(*point);
        let weighed = &self.identified.candidates[best];
        let against = strongest_first(
            self.table,
            weighed
                .against
                .iter()
                .copied()
                .filter(counts)
                .filter(|point| {
                    let mut all = row.candidates.iter();
                    all.all(|at| self.identified.candidates[*at].against.contains(point))
                }),
        );
        let excluding: BTreeSet<PointAt> = row
            .candidates
            .iter()
            .flat_map(|at| &self.identified.candidates[*at].excluded_by)
            .copied()
            .collect();
        let in_favour = weighed.in_favour.iter().copied().filter(counts);
        // What a state shows stands under the state; a printing adds what its own record shows.
        let is_of_row = |point: &PointAt| axis == Axis::State || row.shown.contains(point);
        let is_level = |at: &CandidateAt| {
            greater_first(self.identified.candidates[*at].weight, weighed.weight).is_eq()
        };
        EvidenceRow {
            key: row.key.clone(),
            best,
            level: row.candidates.iter().copied().filter(is_level).collect(),
            fit: self.fit(axis, row, best),
            excluded_by: against
                .iter()
                .copied()
                .filter(|p| excluding.contains(p))
                .collect(),
            against,
            in_favour: strongest_first(self.table, in_favour.filter(is_of_row)),
        }
    }

    /// The candidate of most weight; among excluded ones that which the fewest points exclude.
    fn best_of(&self, row: &AxisRow) -> CandidateAt {
        let excluded_by = |at: &CandidateAt| self.identified.candidates[*at].excluded_by.len();
        let order = self.identified.by_weight().into_iter();
        let of_row = order.filter(|at| row.candidates.contains(at));
        let best = of_row.min_by_key(excluded_by);
        debug_assert!(best.is_some(), "a row has a candidate");
        best.unwrap_or(CandidateAt::new(0))
    }

    fn fit(&self, axis: Axis, row: &AxisRow, best: CandidateAt) -> Fit {
        if self.identified.is_excluded(row) {
            let is_excluded_by_matrix = |at: &CandidateAt| {
                let mut points = self.identified.candidates[*at].excluded_by.iter();
                points.any(|point| self.rests_on_matrix(*point))
            };
            return if axis == Axis::Printing || row.candidates.iter().all(is_excluded_by_matrix) {
                Fit::Excluded
            } else {
                Fit::NoPrintingFits
            };
        }
        if self
            .identified
            .candidates
            .iter()
            .all(|c| c.against.is_empty() && c.in_favour.is_empty())
        {
            return Fit::NothingTold;
        }
        let Some(ratio) = self.best.and_then(|leader| self.ratio(axis, leader, best)) else {
            return Fit::NothingToCompare;
        };
        let against = self.identified.candidates[best].against.iter();
        let against = against
            .filter(|point| axis == Axis::Printing || self.rests_on_matrix(**point))
            .map(|point| &self.table.points[*point]);
        Fit::Graded(Grade::of(ratio).held_up_by(against))
    }

    /// How many times likelier the observations are for one candidate than for another, over the points at which
    /// something is recorded of both; `None` where there is none.
    fn ratio(&self, axis: Axis, one: CandidateAt, other: CandidateAt) -> Option<f64> {
        let factors = self.observed.iter().filter_map(|observed| {
            let column = &self.table.points[observed.point];
            let (of_one, of_other) = (column.allows(one)?, column.allows(other)?);
            let counts = axis == Axis::Printing || column.rests_on == RestsOn::Matrix;
            if !counts || !observed.answer.is_telling() {
                return None;
            }
            let error = error(observed.certainty, column.straying);
            let likelihood = |allowed: &Allowed| {
                column
                    .scale
                    .likelihood(&observed.answer, Some(allowed), error)
            };
            Some(likelihood(of_one) / likelihood(of_other))
        });
        factors.reduce(|product, factor| product * factor)
    }

    fn rests_on_matrix(&self, point: PointAt) -> bool {
        self.table.points[point].rests_on == RestsOn::Matrix
    }

    fn unrecorded(&self, only: CandidateAt) -> Vec<PointAt> {
        let telling = self.observed.iter().filter(|o| o.answer.is_telling());
        let points = telling.map(|observed| observed.point);
        points
            .filter(|point| self.table.points[*point].allows(only).is_none())
            .collect::<BTreeSet<PointAt>>()
            .into_iter()
            .collect()
    }
}

/// Points, the strongest kind of evidence first; those of one kind in the table's order.
fn strongest_first(table: &DiagnosticTable, points: impl Iterator<Item = PointAt>) -> Vec<PointAt> {
    let mut points: Vec<PointAt> = points.collect();
    points.sort_by_key(|point| (table.points[*point].evidence, *point));
    points
}

/// Whether what was seen weighs for a candidate: it is likelier, or less likely, than where nothing is recorded of it. An
/// observation that is too uncertain does not, though it is for or against.
#[must_use]
pub fn weighs(table: &DiagnosticTable, observed: &Observed, candidate: CandidateAt) -> bool {
    let column = &table.points[observed.point];
    let error = error(observed.certainty, column.straying);
    let likelihood =
        |allowed: Option<&Allowed>| column.scale.likelihood(&observed.answer, allowed, error);
    greater_first(likelihood(column.allows(candidate)), likelihood(None)).is_ne()
}

/// The most points that are listed as able to overturn the best candidate; others are counted.
pub const MOST_OVERTURNING: usize = 5;

/// A point that could overturn the best candidate.
#[derive(Clone, Debug, PartialEq)]
pub struct Overturning {
    /// The point.
    pub point: PointAt,
    /// What the best candidate allows there; anything else is against it.
    pub expected: Allowed,
    /// Whether it would be excluded, for certain: otherwise it would only weigh less.
    pub would_exclude: bool,
    /// Whether something was seen there already, but not for certain.
    pub is_uncertain: bool,
}

/// The points that could overturn the best candidate: those among `next`, and those where something was seen but not
/// for certain. Those that would exclude come first, then in the order of `next`.
#[must_use]
pub fn overturning(
    table: &DiagnosticTable,
    observed: &[Observed],
    evidence: &Evidence,
    next: &[NextPoint],
) -> Vec<Overturning> {
    let Some(best) = evidence.best else {
        return Vec::new();
    };
    let uncertain = observed
        .iter()
        .filter(|o| o.answer.is_telling() && o.certainty != Certainty::Certain)
        .map(|o| o.point);
    let uncertain: Vec<PointAt> = uncertain.collect();
    let unseen = next.iter().map(|next| next.point);
    let points = uncertain.iter().copied().chain(unseen);
    let mut found: Vec<Overturning> = points
        .filter_map(|point| {
            let column = &table.points[point];
            let expected = column.allows(best)?.clone();
            let could_be_against = match (&column.scale, &expected) {
                (Scale::Measure(_), _) => true,
                (scale, Allowed::AnyOf(values)) => values.len() < scale.len(),
                (_, Allowed::Number(_)) => false,
            };
            could_be_against.then(|| Overturning {
                point,
                expected,
                would_exclude: column.is_deciding,
                is_uncertain: uncertain.contains(&point),
            })
        })
        .collect();
    found.sort_by_key(|overturning| !overturning.would_exclude);
    found
}
