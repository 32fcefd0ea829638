//! The leads of a point in a printed key: what may be seen there, and which candidates agree with it.
//!
//! In: a column of the diagnostic table, and the candidates that come to the couplet. Out: [`Branch`]es.
//! Values that the same candidates allow make one branch; a measure's line of numbers is cut wherever a
//! candidate's tolerance begins or ends.
//! Not here: the couplet that a lead goes on to (`couplets`).

use std::collections::BTreeMap;

use super::allowed::ROUNDING;
use super::scale::{Allowed, Scale, ValueSet};
use super::table::PointColumn;
use crate::index::CandidateAt;

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
    if !narrows(column, candidates) {
        return None;
    }
    let branches = match &column.scale {
        Scale::Measure(measure) => by_range(column, candidates, measure.tolerance),
        Scale::Words(_) | Scale::Counts(_) => by_value(column, candidates),
    };
    (branches.len() > 1).then_some(branches)
}

/// The branches of a point for candidates that it need not narrow: those that agree, and what agrees with none.
pub(super) fn all_branches(column: &PointColumn, candidates: &[CandidateAt]) -> Vec<Branch> {
    let mut branches = match &column.scale {
        Scale::Measure(measure) => by_range(column, candidates, measure.tolerance),
        Scale::Words(_) | Scale::Counts(_) => by_value(column, candidates),
    };
    branches.extend(agreeing_with_none(column, candidates));
    branches
}

/// What may be seen at a point that agrees with none of the candidates; `None` where something is recorded of not
/// all of them, or they allow everything.
fn agreeing_with_none(column: &PointColumn, candidates: &[CandidateAt]) -> Option<Branch> {
    let all_known = candidates.iter().all(|c| column.allows(*c).is_some());
    let condition = match &column.scale {
        Scale::Measure(measure) => {
            let mut numbers: Vec<f64> = candidates
                .iter()
                .filter_map(|c| column.number(*c))
                .collect();
            numbers.sort_by(f64::total_cmp);
            LeadCondition::Within(beyond(&numbers, measure.tolerance))
        }
        scale @ (Scale::Words(_) | Scale::Counts(_)) => {
            let agreeing = Agreeing::of(column, candidates);
            let none = scale.values().zip(agreeing.known_by_value());
            LeadCondition::AnyOf(
                none.filter(|(_, known)| known.is_empty())
                    .map(|(v, _)| v)
                    .collect(),
            )
        }
    };
    let is_possible = match &condition {
        LeadCondition::AnyOf(values) => !values.is_empty(),
        LeadCondition::Within(ranges) => !ranges.is_empty(),
    };
    (all_known && is_possible).then_some(Branch {
        condition,
        candidates: Vec::new(),
    })
}

/// The ranges that lie beyond the tolerance of every one of `numbers`, which rise.
fn beyond(numbers: &[f64], tolerance: f64) -> Vec<Range> {
    let (Some(first), Some(last)) = (numbers.first(), numbers.last()) else {
        return Vec::new();
    };
    let gaps = numbers.windows(2).filter_map(|pair| {
        let (low, high) = (pair[0] + tolerance, pair[1] - tolerance);
        (high - low > ROUNDING).then_some(Range {
            low: Some(low),
            high: Some(high),
        })
    });
    let below = Range {
        low: None,
        high: Some(first - tolerance),
    };
    let above = Range {
        low: Some(last + tolerance),
        high: None,
    };
    [below].into_iter().chain(gaps).chain([above]).collect()
}

/// Whether a point narrows the candidates, without making its branches: a key asks this of every point
/// that is left, at every lead.
pub(super) fn narrows(column: &PointColumn, candidates: &[CandidateAt]) -> bool {
    if candidates.len() < 2 {
        return false;
    }
    match &column.scale {
        Scale::Measure(measure) => {
            let numbers = candidates.iter().filter_map(|c| column.number(*c));
            let span = numbers.fold(None, |span: Option<(f64, f64)>, n| {
                let (least, greatest) = span.unwrap_or((n, n));
                Some((least.min(n), greatest.max(n)))
            });
            let of = Allowed::Number;
            span.is_some_and(|(least, greatest)| {
                Scale::Measure(*measure).tells_apart(&of(least), &of(greatest))
            })
        }
        Scale::Words(_) | Scale::Counts(_) => {
            let agreeing = Agreeing::of(column, candidates);
            let mut sets = agreeing.known_by_value().filter(|known| {
                // A value with which no candidate agrees makes no branch.
                !known.is_empty() || !agreeing.unknown.is_empty()
            });
            let first = sets.next();
            sets.any(|known| Some(known) != first)
        }
    }
}

/// The candidates that agree with each value of a scale of words or counts.
struct Agreeing {
    /// By the value's index: those that are known to allow it.
    known: Vec<Vec<CandidateAt>>,
    /// Those of which nothing is known; they agree with every value.
    unknown: Vec<CandidateAt>,
}

impl Agreeing {
    fn of(column: &PointColumn, candidates: &[CandidateAt]) -> Agreeing {
        let mut agreeing = Agreeing {
            known: vec![Vec::new(); column.scale.len()],
            unknown: Vec::new(),
        };
        for candidate in candidates {
            match column.allows(*candidate) {
                Some(Allowed::AnyOf(values)) => {
                    for value in values {
                        agreeing.known[value.index()].push(*candidate);
                    }
                }
                Some(Allowed::Number(_)) => {}
                None => agreeing.unknown.push(*candidate),
            }
        }
        agreeing
    }

    /// In the order of the scale, the candidates that are known to allow each value.
    fn known_by_value(&self) -> impl Iterator<Item = &[CandidateAt]> {
        self.known.iter().map(Vec::as_slice)
    }

    /// The candidates of a set that are known to agree, and those of which nothing is known, in order.
    fn with_unknown(&self, known: &[CandidateAt]) -> Vec<CandidateAt> {
        let mut all: Vec<CandidateAt> = known.iter().chain(&self.unknown).copied().collect();
        all.sort_unstable();
        all
    }
}

fn by_value(column: &PointColumn, candidates: &[CandidateAt]) -> Vec<Branch> {
    let agreeing = Agreeing::of(column, candidates);
    let mut branches: Vec<(ValueSet, &[CandidateAt])> = Vec::new();
    let mut known_sets: BTreeMap<&[CandidateAt], usize> = BTreeMap::new();
    for (value, known) in column.scale.values().zip(agreeing.known_by_value()) {
        if known.is_empty() && agreeing.unknown.is_empty() {
            continue;
        }
        let at = *known_sets.entry(known).or_insert_with(|| {
            branches.push((ValueSet::new(), known));
            branches.len() - 1
        });
        branches[at].0.insert(value);
    }
    let branches = branches.into_iter();
    branches
        .map(|(values, known)| Branch {
            condition: LeadCondition::AnyOf(values),
            candidates: agreeing.with_unknown(known),
        })
        .collect()
}

/// The line of numbers, cut wherever a candidate's tolerance begins or ends.
fn by_range(column: &PointColumn, candidates: &[CandidateAt], tolerance: f64) -> Vec<Branch> {
    let (mut known, mut unknown) = (Vec::new(), Vec::new());
    for candidate in candidates {
        match column.number(*candidate) {
            Some(number) => known.push((number, *candidate)),
            None => unknown.push(*candidate),
        }
    }
    known.sort_by(|(a, _), (b, _)| a.total_cmp(b));
    let mut cuts: Vec<f64> = known
        .iter()
        .flat_map(|(v, _)| [v - tolerance, v + tolerance])
        .collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() <= ROUNDING);
    // Those that agree with a number stand together among the numbers in order.
    let agreeing = |x: f64| -> (usize, usize) {
        let first = known.partition_point(|(v, _)| x - v > tolerance + ROUNDING);
        let end = known.partition_point(|(v, _)| v - x <= tolerance + ROUNDING);
        if first < end { (first, end) } else { (0, 0) }
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
    let mut branches: Vec<(Vec<Range>, (usize, usize))> = Vec::new();
    let mut branch_of: BTreeMap<(usize, usize), usize> = BTreeMap::new();
    let mut before = None;
    for (range, agreeing) in pieces {
        let is_continued = before == Some(agreeing);
        before = Some(agreeing);
        if agreeing == (0, 0) && unknown.is_empty() {
            continue;
        }
        if let Some(at) = branch_of.get(&agreeing) {
            let ranges = &mut branches[*at].0;
            match ranges.last_mut() {
                Some(last) if is_continued => last.high = range.high,
                _ => ranges.push(range),
            }
        } else {
            branch_of.insert(agreeing, branches.len());
            branches.push((vec![range], agreeing));
        }
    }
    // The numbers beyond every tolerance come last: "any other".
    branches.sort_by_key(|(ranges, _)| ranges.iter().any(|r| r.low.is_none()));
    let branches = branches.into_iter();
    branches
        .map(|(ranges, (first, end))| {
            let known = known.iter().map(|(_, candidate)| *candidate);
            let known = known.skip(first).take(end - first);
            let mut agreeing: Vec<CandidateAt> = known.chain(unknown.iter().copied()).collect();
            agreeing.sort_unstable();
            Branch {
                condition: LeadCondition::Within(ranges),
                candidates: agreeing,
            }
        })
        .collect()
}
