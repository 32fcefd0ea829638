//! Grows a key from its head, breadth first, up to [`MOST_COUPLETS`].

use std::collections::{BTreeMap, VecDeque};

use super::deciding::{could_be_against, deciding_points, equally_likely};
use super::key::{Couplet, Goal, Lead};
use crate::identification::identify::greater_first;
use crate::identification::leads::{Branch, all_branches, narrowing, narrows};
use crate::identification::next_point::expected_bits;
use crate::identification::table::DiagnosticTable;
use crate::index::{CandidateAt, CoupletAt, Indexed, PointAt};

/// The most couplets of a key, about twelve pages; a longer one is cut off.
pub const MOST_COUPLETS: usize = 120;

/// The couplets of a table, in the order in which they were first led to, with the deciding points of the table.
pub(super) fn grow(table: &DiagnosticTable) -> (Indexed<CoupletAt, Couplet>, Vec<PointAt>) {
    let all_candidates: Vec<CandidateAt> = table.candidates.indexes().collect();
    let all_points: Vec<PointAt> = table.points.indexes().collect();
    let mut builder = KeyBuilder {
        table,
        deciding: deciding_points(table, &all_candidates),
        known: BTreeMap::new(),
        waiting: VecDeque::new(),
    };
    if all_candidates.len() > 1 {
        builder.goal(&all_candidates, &all_points, false);
    }
    let mut grown = Indexed::default();
    while let Some(stem) = builder.waiting.pop_front() {
        let couplet = builder.couplet(stem);
        grown.push(couplet);
    }
    (grown, builder.deciding)
}

/// The candidates that come to a couplet, the points that still narrow them, and whether a deciding point was
/// asked on the way.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Stem {
    candidates: Vec<CandidateAt>,
    open: Vec<PointAt>,
    is_decided: bool,
}

/// A key while it grows; couplets are grown in the order in which they were first led to.
struct KeyBuilder<'a> {
    table: &'a DiagnosticTable,
    /// The deciding points, the most informative first.
    deciding: Vec<PointAt>,
    known: BTreeMap<Stem, CoupletAt>,
    waiting: VecDeque<Stem>,
}

impl KeyBuilder<'_> {
    /// The goal of a lead with `candidates`, where only `points` have not been asked yet.
    fn goal(&mut self, candidates: &[CandidateAt], points: &[PointAt], is_decided: bool) -> Goal {
        if candidates.is_empty() {
            return Goal::Nothing;
        }
        let narrows = |point: &&PointAt| narrows(&self.table.points[**point], candidates);
        let stem = Stem {
            open: points.iter().filter(narrows).copied().collect(),
            candidates: candidates.to_vec(),
            is_decided,
        };
        if stem.open.is_empty() && self.deciding_for(&stem).is_none() {
            return Goal::End;
        }
        if let Some(at) = self.known.get(&stem) {
            return Goal::Couplet(*at);
        }
        if self.known.len() == MOST_COUPLETS {
            return Goal::Stop;
        }
        let at = CoupletAt::new(self.known.len());
        self.known.insert(stem.clone(), at);
        self.waiting.push_back(stem);
        Goal::Couplet(at)
    }

    /// The deciding point to ask before an end to which no deciding point has led; `None` where one was asked, or
    /// none is recorded of the candidates.
    fn deciding_for(&self, stem: &Stem) -> Option<PointAt> {
        if stem.is_decided {
            return None;
        }
        let is_recorded = |point: &&PointAt| {
            let column = &self.table.points[**point];
            let mut candidates = stem.candidates.iter();
            candidates.any(|candidate| could_be_against(column, *candidate))
        };
        self.deciding.iter().find(is_recorded).copied()
    }

    fn couplet(&mut self, stem: Stem) -> Couplet {
        let (point, branches) = self.question(&stem);
        let is_decided = stem.is_decided || self.table.points[point].is_deciding;
        let left: Vec<PointAt> = stem.open.iter().copied().filter(|p| *p != point).collect();
        let leads = branches.into_iter().map(|branch| Lead {
            goal: self.goal(&branch.candidates, &left, is_decided),
            condition: branch.condition,
            candidates: branch.candidates,
            confirm: Vec::new(),
        });
        Couplet {
            point,
            leads: leads.collect(),
            candidates: stem.candidates,
        }
    }

    /// The point to ask and its branches: the open point that gives most information, or, where none is open, a
    /// deciding point.
    fn question(&self, stem: &Stem) -> (PointAt, Vec<Branch>) {
        let alike = equally_likely(self.table, &stem.candidates);
        let bits = |point: PointAt| expected_bits(&self.table.points[point], &alike);
        let mut open: Vec<(PointAt, f64)> = stem.open.iter().map(|p| (*p, bits(*p))).collect();
        open.sort_by(|a, b| greater_first(a.1, b.1));
        if let Some((point, _)) = open.first() {
            let branches = narrowing(&self.table.points[*point], &stem.candidates);
            debug_assert!(branches.is_some(), "an open point narrows the candidates");
            return (*point, branches.unwrap_or_default());
        }
        let deciding = self.deciding_for(stem);
        debug_assert!(deciding.is_some(), "a couplet has something to ask");
        let point = deciding.unwrap_or(PointAt::new(0));
        (
            point,
            all_branches(&self.table.points[point], &stem.candidates),
        )
    }
}
