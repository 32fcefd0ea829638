//! The leads of a point in a printed key: what may be seen there, and which candidates agree with it.
//!
//! In: a column of the diagnostic table, and the candidates that come to the couplet. Out: [`Branch`]es.
//! Values that the same candidates allow make one branch; a measure's line of numbers is cut wherever a
//! candidate's tolerance begins or ends.
//! Not here: the couplet that a lead goes on to (`couplets`).

use std::collections::BTreeSet;

use super::allowed::ROUNDING;
use super::scale::{Allowed, Scale, ValueSet};
use super::table::PointColumn;
use crate::study::index::{CandidateAt, ClassAt};

/// The observation under which a reader follows a lead.
#[derive(Clone, Debug, PartialEq)]
pub enum LeadCondition {
    /// One of these values.
    AnyOf(ValueSet),
    /// A number within one of these ranges, rising.
    Within(Vec<Range>),
}

/// A range of numbers, in the point's unit; its ends belong to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Its lower end; `None` where it has none.
    pub low: Option<f64>,
    /// Its upper end; `None` where it has none.
    pub high: Option<f64>,
}

impl Range {
    /// Whether a number lies within.
    #[must_use]
    pub fn contains(&self, number: f64) -> bool {
        self.low.is_none_or(|low| number >= low - ROUNDING)
            && self.high.is_none_or(|high| number <= high + ROUNDING)
    }
}

/// A possible observation at a point, and the candidates that agree with it, in the table's order.
pub(super) struct Branch {
    pub condition: LeadCondition,
    pub candidates: Vec<CandidateAt>,
}

/// The branches of a point, two or more; `None` where it does not narrow the candidates: all of them
/// agree with the same values. A measure must separate two of them: where their tolerances overlap, a
/// range given to the millimetre would claim more accuracy than a ruler has.
pub(super) fn narrowing(column: &PointColumn, candidates: &[CandidateAt]) -> Option<Vec<Branch>> {
    let branches = match &column.scale {
        Scale::Measure(measure) => {
            let classes: BTreeSet<ClassAt> =
                candidates.iter().map(|c| column.class_of[*c]).collect();
            let is_apart = |one: &ClassAt| {
                let mut others = classes.iter();
                others.any(|other| column.classes_apart(*one, *other))
            };
            if !classes.iter().any(is_apart) {
                return None;
            }
            by_range(column, candidates, measure.tolerance)
        }
        Scale::Words(_) | Scale::Counts(_) => by_value(column, candidates),
    };
    (branches.len() > 1).then_some(branches)
}

fn by_value(column: &PointColumn, candidates: &[CandidateAt]) -> Vec<Branch> {
    let mut branches: Vec<(ValueSet, Vec<CandidateAt>)> = Vec::new();
    for value in column.scale.values() {
        let agrees = |candidate: &&CandidateAt| match column.allows(**candidate) {
            Some(Allowed::AnyOf(values)) => values.contains(&value),
            Some(Allowed::Number(_)) => false,
            None => true,
        };
        let agreeing: Vec<CandidateAt> = candidates.iter().filter(agrees).copied().collect();
        match branches.iter_mut().find(|(_, same)| *same == agreeing) {
            _ if agreeing.is_empty() => {}
            Some((values, _)) => {
                values.insert(value);
            }
            None => branches.push((ValueSet::from([value]), agreeing)),
        }
    }
    let branches = branches.into_iter();
    branches
        .map(|(values, candidates)| Branch {
            condition: LeadCondition::AnyOf(values),
            candidates,
        })
        .collect()
}

/// The line of numbers, cut wherever a candidate's tolerance begins or ends.
fn by_range(column: &PointColumn, candidates: &[CandidateAt], tolerance: f64) -> Vec<Branch> {
    let number = |candidate: CandidateAt| match column.allows(candidate) {
        Some(Allowed::Number(number)) => Some(*number),
        _ => None,
    };
    let shown = candidates.iter().filter_map(|c| number(*c));
    let mut cuts: Vec<f64> = shown.flat_map(|v| [v - tolerance, v + tolerance]).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() <= ROUNDING);
    let agreeing = |x: f64| -> Vec<CandidateAt> {
        let agrees = |candidate: &&CandidateAt| {
            number(**candidate).is_none_or(|v| (x - v).abs() <= tolerance + ROUNDING)
        };
        candidates.iter().filter(agrees).copied().collect()
    };
    let (Some(first), Some(last)) = (cuts.first(), cuts.last()) else {
        return Vec::new();
    };
    let closed = |low: f64, high: f64| Range {
        low: Some(low),
        high: Some(high),
    };
    let mut pieces = vec![(
        Range {
            low: None,
            high: Some(*first),
        },
        agreeing(first - tolerance),
    )];
    for (cut, next) in cuts.iter().zip(cuts.iter().skip(1).map(Some).chain([None])) {
        pieces.push((closed(*cut, *cut), agreeing(*cut)));
        if let Some(next) = next {
            pieces.push((closed(*cut, *next), agreeing(cut.midpoint(*next))));
        }
    }
    pieces.push((
        Range {
            low: Some(*last),
            high: None,
        },
        agreeing(last + tolerance),
    ));
    let mut branches: Vec<(Vec<Range>, Vec<CandidateAt>)> = Vec::new();
    let mut before: Vec<CandidateAt> = Vec::new();
    for (range, agreeing) in pieces {
        let is_continued = agreeing == before;
        before.clone_from(&agreeing);
        match branches.iter_mut().find(|(_, same)| *same == agreeing) {
            _ if agreeing.is_empty() => {}
            Some((ranges, _)) => match ranges.last_mut() {
                Some(last) if is_continued => last.high = range.high,
                _ => ranges.push(range),
            },
            None => branches.push((vec![range], agreeing)),
        }
    }
    // The numbers beyond every tolerance come last: "any other".
    branches.sort_by_key(|(ranges, _)| ranges.iter().any(|r| r.low.is_none()));
    let branches = branches.into_iter();
    branches
        .map(|(ranges, candidates)| Branch {
            condition: LeadCondition::Within(ranges),
            candidates,
        })
        .collect()
}
