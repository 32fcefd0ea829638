//! Couplets: a design's diagnostic table as a key for paper.
//!
//! A key of the printed tradition asks one point at a time; each of its leads goes on to another number or
//! ends with the candidates that agree. Each number has the point that is expected to give most information
//! about the candidates left, taken as equally likely, so that a key does not change with every sheet that is
//! found. A candidate goes down every lead that it allows, and one that is not known at the point goes down
//! all of them; leads that go on to the same candidates are one. So a reader who answers correctly never loses
//! the right candidate. Candidates that no point separates end together.
//!
//! A stamp, a paper or an inking alone never ends a key: where a reader would come to an end without an answer at a
//! deciding point, one is asked first, with a lead for what agrees with no candidate. Each end names the deciding
//! points, not yet asked, that would confirm it.
//!
//! In: a diagnostic table; no observation. Out: [`Couplets`].
//! Method: a diagnostic key grown from its head, as reviewed by Payne and Preece 1980 (see `table`),
//! its points chosen by expected information (`next_point`). Parts that recur stand once and are
//! referred to. A key grows with the overlap of its candidates, so it is built breadth first and
//! stops at [`MOST_COUPLETS`]; leads that stop there are marked [`Goal::Stop`].
//! Definitions: `docs/definitions.md, "Couplets"`.
//! Not here: the leads of one point (`leads`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{Studies, couplets::{Goal, couplets}, index::CoupletAt};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! "#);
//! let key = couplets(&Studies::of(&catalogue).designs[&key("1")].table);
//! let leads = &key.couplets[CoupletAt::new(0)].leads;
//! assert_eq!((key.couplets.len(), leads.len()), (1, 2));
//! assert!(leads.iter().all(|lead| lead.goal == Goal::End && lead.candidates.len() == 1));
//! ```

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::identify::{Identified, WeighedCandidate, greater_first};
use super::leads::{Branch, all_branches, narrowing, narrows};
pub use super::leads::{LeadCondition, Range};
use super::next_point::expected_bits;
use super::scale::Allowed;
use super::table::{DiagnosticTable, PointColumn};
use crate::study::index::{CandidateAt, CoupletAt, Indexed, PointAt};

/// A key for paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Couplets {
    /// The couplets, in the order of their numbers; leads go on to later ones only. Empty where no
    /// point narrows the candidates.
    pub couplets: Indexed<CoupletAt, Couplet>,
}

/// A point with the leads from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Couplet {
    /// The point.
    pub point: PointAt,
    /// The candidates that come to it, in the table's order.
    pub candidates: Vec<CandidateAt>,
    /// The leads; two at least, no two to the same candidates.
    pub leads: Vec<Lead>,
}

/// An observation that may be made, and the couplet or candidates it leads to.
#[derive(Clone, Debug, PartialEq)]
pub struct Lead {
    /// The observation under which a reader follows it.
    pub condition: LeadCondition,
    /// The candidates that agree with it, in the table's order; none where it leads to [`Goal::Nothing`].
    pub candidates: Vec<CandidateAt>,
    /// Where it leads.
    pub goal: Goal,
    /// At an end: the deciding points that would confirm it, those of most information first. None of them is
    /// asked on the way.
    pub confirm: Vec<PointAt>,
}

/// Where a lead leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// On, to another couplet.
    Couplet(CoupletAt),
    /// To the lead's candidates, which no recorded point separates further.
    End,
    /// To the lead's candidates, which further points would tell apart; the key stops here, so as
    /// not to grow beyond what can be printed.
    Stop,
    /// To no candidate: nothing recorded agrees with this answer and those before it.
    Nothing,
}

/// The most couplets of a key, about twelve pages; a longer one is cut off.
pub const MOST_COUPLETS: usize = 120;

/// The most points that an end names to confirm it.
const MOST_CONFIRMING: usize = 3;

/// The key of a table.
#[must_use]
pub fn couplets(table: &DiagnosticTable) -> Couplets {
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
    let mut couplets = in_reading_order(grown);
    confirm(&builder.deciding, table, &mut couplets);
    Couplets { couplets }
}

/// The deciding points of a table, those first that give most information about all its candidates.
fn deciding_points(table: &DiagnosticTable, candidates: &[CandidateAt]) -> Vec<PointAt> {
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

/// Names at each end the deciding points that would confirm it: those at which something is recorded of its
/// candidates and that no way to it has asked.
fn confirm(
    deciding: &[PointAt],
    table: &DiagnosticTable,
    couplets: &mut Indexed<CoupletAt, Couplet>,
) {
    // Leads go forward only, so every way to a couplet is known when it is reached.
    let mut asked: Indexed<CoupletAt, BTreeSet<PointAt>> =
        Indexed::filled(couplets, BTreeSet::new());
    for at in couplets.indexes() {
        let couplet = &mut couplets[at];
        let mut by_here = asked[at].clone();
        by_here.insert(couplet.point);
        for lead in &mut couplet.leads {
            if let Goal::Couplet(next) = lead.goal {
                asked[next].extend(by_here.iter().copied());
                continue;
            }
            let is_recorded = |point: &PointAt| {
                let column = &table.points[*point];
                lead.candidates.iter().any(|c| could_be_against(column, *c))
            };
            let unasked = deciding.iter().filter(|point| !by_here.contains(point));
            lead.confirm = unasked
                .copied()
                .filter(is_recorded)
                .take(MOST_CONFIRMING)
                .collect();
        }
    }
}

/// Whether something could be seen at a point that is against a candidate.
fn could_be_against(column: &PointColumn, candidate: CandidateAt) -> bool {
    match (column.allows(candidate), &column.scale) {
        (Some(Allowed::AnyOf(values)), scale) => values.len() < scale.len(),
        (Some(Allowed::Number(_)), _) => true,
        (None, _) => false,
    }
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

fn equally_likely(table: &DiagnosticTable, candidates: &[CandidateAt]) -> Identified {
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

/// The couplets numbered so that every lead goes on to a later one, and a first lead to the next one where
/// possible: the reverse of the order in which a depth-first walk, leads last to first, leaves them.
fn in_reading_order(grown: Indexed<CoupletAt, Couplet>) -> Indexed<CoupletAt, Couplet> {
    let mut is_met = Indexed::filled(&grown, false);
    let mut done: Vec<CoupletAt> = Vec::new();
    // Each couplet with how many of its leads, the last first, are still to be walked.
    let mut walked: Vec<(CoupletAt, usize)> = Vec::new();
    if let Some((head, couplet)) = grown.entries().next() {
        is_met[head] = true;
        walked.push((head, couplet.leads.len()));
    }
    while let Some((at, left)) = walked.pop() {
        let Some(lead) = left.checked_sub(1) else {
            done.push(at);
            continue;
        };
        walked.push((at, lead));
        if let Goal::Couplet(next) = grown[at].leads[lead].goal
            && !is_met[next]
        {
            is_met[next] = true;
            walked.push((next, grown[next].leads.len()));
        }
    }
    debug_assert_eq!(done.len(), grown.len(), "some lead goes to every couplet");
    done.reverse();
    let mut renumbered = Indexed::filled(&grown, CoupletAt::new(0));
    for (new, old) in done.iter().enumerate() {
        renumbered[*old] = CoupletAt::new(new);
    }
    let mut numbered: Vec<(CoupletAt, Couplet)> = renumbered.iter().copied().zip(grown).collect();
    for (_, couplet) in &mut numbered {
        for lead in &mut couplet.leads {
            if let Goal::Couplet(next) = &mut lead.goal {
                *next = renumbered[*next];
            }
        }
    }
    numbered.sort_by_key(|(at, _)| *at);
    numbered.into_iter().map(|(_, couplet)| couplet).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::point::{EvidenceKind, RestsOn};
    use crate::study::identification::scale::{Allowed, Measure, Scale, ValueSet};
    use crate::study::identification::table::{CandidateRow, PointColumn};
    use crate::study::index::{ClassAt, ValueAt};

    /// Pseudo-random numbers, the same at every run (Knuth's linear congruence, MMIX).
    struct Dice(u64);

    impl Dice {
        fn below(&mut self, n: u32) -> u32 {
            self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005);
            self.0 = self.0.wrapping_add(1_442_695_040_888_963_407);
            u32::try_from(self.0 >> 33).unwrap() % n
        }
    }

    fn column(scale: Scale, of_candidates: Vec<Option<Allowed>>) -> PointColumn {
        PointColumn {
            key: "point".parse().unwrap(),
            scale,
            rests_on: RestsOn::Matrix,
            evidence: EvidenceKind::Matrix,
            is_deciding: true,
            straying: 0.0,
            matrix: None,
            class_of: (0..of_candidates.len()).map(ClassAt::new).collect(),
            classes: of_candidates.into_iter().collect(),
        }
    }

    fn table(points: Vec<PointColumn>) -> DiagnosticTable {
        let candidates = points.first().map_or(0, |p| p.class_of.len());
        let row = CandidateRow {
            state: "state".parse().ok(),
            printing: None,
        };
        DiagnosticTable {
            candidates: vec![row; candidates].into_iter().collect(),
            states: Vec::new(),
            printings: Vec::new(),
            points: points.into_iter().collect(),
        }
    }

    fn random(dice: &mut Dice) -> DiagnosticTable {
        let candidates = 1 + dice.below(9);
        let points = 1 + dice.below(7);
        let column = |dice: &mut Dice| {
            if dice.below(4) == 0 {
                let tolerance = 1.5;
                let numbers = (0..candidates)
                    .map(|_| (dice.below(5) > 0).then(|| 200.0 + f64::from(dice.below(12))));
                let numbers = numbers.map(|n| n.map(Allowed::Number)).collect();
                let span = Some((195.0, 217.0));
                return column(Scale::Measure(Measure { tolerance, span }), numbers);
            }
            let places = 2 + dice.below(3);
            let allowed = (0..candidates).map(|_| {
                let any: ValueSet = (0..places as usize)
                    .filter(|_| dice.below(3) == 0)
                    .map(ValueAt::new)
                    .collect();
                (!any.is_empty()).then_some(Allowed::AnyOf(any))
            });
            let allowed = allowed.collect();
            column(Scale::Counts((1..places).collect()), allowed)
        };
        table((0..points).map(|_| column(dice)).collect())
    }

    /// Every answer that is true of a candidate at a point, as the leads that fit it.
    fn fitting<'c>(
        column: &PointColumn,
        couplet: &'c Couplet,
        candidate: CandidateAt,
    ) -> Vec<Vec<&'c Lead>> {
        let fits = |value: Option<ValueAt>, x: f64| -> Vec<&Lead> {
            let fits = |lead: &&Lead| match &lead.condition {
                LeadCondition::AnyOf(values) => value.is_some_and(|v| values.contains(&v)),
                LeadCondition::Within(ranges) => ranges.iter().any(|r| r.contains(x)),
            };
            couplet.leads.iter().filter(fits).collect()
        };
        match (column.allows(candidate), &column.scale) {
            (Some(Allowed::AnyOf(any)), _) => any.iter().map(|p| fits(Some(*p), 0.0)).collect(),
            (Some(Allowed::Number(v)), _) => {
                let near = [-1.5, -1.2, -0.7, 0.0, 0.4, 1.1, 1.5];
                near.iter().map(|away| fits(None, v + away)).collect()
            }
            (None, Scale::Measure(_)) => [190.0, 201.3, 206.0, 230.0]
                .iter()
                .map(|x| fits(None, *x))
                .collect(),
            (None, scale) => scale.values().map(|v| fits(Some(v), 0.0)).collect(),
        }
    }

    /// Follows every true answer, and returns whether the candidate is at each end that is reached.
    fn is_never_lost(
        table: &DiagnosticTable,
        key: &Couplets,
        at: CoupletAt,
        who: CandidateAt,
    ) -> bool {
        let couplet = &key.couplets[at];
        let column = &table.points[couplet.point];
        fitting(column, couplet, who).iter().all(|leads| {
            // On a line between two ranges both leads fit; one of them must keep the candidate.
            let kept = leads.iter().filter(|lead| lead.candidates.contains(&who));
            let mut kept = kept.peekable();
            kept.peek().is_some()
                && kept.all(|lead| match lead.goal {
                    Goal::Couplet(next) => is_never_lost(table, key, next, who),
                    Goal::End | Goal::Stop => true,
                    Goal::Nothing => false,
                })
        })
    }

    #[test]
    fn whoever_answers_truly_never_loses_the_right_candidate() {
        let mut dice = Dice(3);
        let mut asked = 0;
        for _ in 0..300 {
            let table = random(&mut dice);
            let key = couplets(&table);
            asked += key.couplets.len();
            let head = CoupletAt::new(0);
            for who in table.candidates.indexes() {
                assert!(key.couplets.is_empty() || is_never_lost(&table, &key, head, who));
            }
        }
        assert!(asked > 1000, "only {asked} couplets were walked");
    }

    #[test]
    fn leads_go_forward_narrow_and_lose_nobody() {
        let mut dice = Dice(4);
        for _ in 0..300 {
            let table = random(&mut dice);
            let key = couplets(&table);
            for (at, couplet) in key.couplets.entries() {
                assert!(couplet.leads.len() > 1);
                let mut all: Vec<CandidateAt> = Vec::new();
                for lead in &couplet.leads {
                    all.extend(&lead.candidates);
                    if let Goal::Couplet(next) = lead.goal {
                        assert!(next > at, "lead from {at:?} to {next:?}");
                        assert_eq!(key.couplets[next].candidates, lead.candidates);
                    }
                }
                all.sort_unstable();
                all.dedup();
                assert_eq!(all, couplet.candidates);
            }
        }
    }

    #[test]
    fn what_ends_together_is_told_apart_by_no_point() {
        let mut dice = Dice(5);
        let mut together = 0;
        for _ in 0..300 {
            let table = random(&mut dice);
            let key = couplets(&table);
            let leads = key.couplets.iter().flat_map(|c| &c.leads);
            for lead in leads.filter(|lead| lead.goal == Goal::End) {
                together += usize::from(lead.candidates.len() > 1);
                for (one, other) in pairs(&lead.candidates) {
                    for point in &table.points {
                        let (one, other) = (point.class_of[one], point.class_of[other]);
                        assert!(!point.classes_apart(one, other));
                    }
                }
            }
        }
        assert!(together > 50, "only {together} ends hold several");
    }

    fn pairs(of: &[CandidateAt]) -> Vec<(CandidateAt, CandidateAt)> {
        let after =
            |at: usize, one: CandidateAt| of.iter().skip(at + 1).map(move |other| (one, *other));
        of.iter()
            .enumerate()
            .flat_map(|(at, one)| after(at, *one))
            .collect()
    }

    #[test]
    fn a_key_that_would_have_no_end_stops_and_says_so() {
        // Each candidate allows two of three values, so that every lead keeps most of them.
        let mut dice = Dice(6);
        let points = (0..40).map(|_| {
            let allowed = (0..40).map(|_| {
                let without = dice.below(3) as usize;
                let any = (0..3).filter(|value| *value != without);
                let any = any.map(ValueAt::new).collect();
                Some(Allowed::AnyOf(any))
            });
            column(Scale::Counts(vec![1, 2]), allowed.collect())
        });
        let table = table(points.collect());
        let key = couplets(&table);
        assert_eq!(key.couplets.len(), MOST_COUPLETS);
        let mut leads = key.couplets.iter().flat_map(|c| &c.leads);
        assert!(leads.any(|lead| lead.goal == Goal::Stop));
    }

    #[test]
    fn a_measure_is_told_in_ranges() {
        let numbers = [Some(246.0), Some(246.0), Some(232.0), None];
        let numbers = numbers.map(|n| n.map(Allowed::Number)).to_vec();
        let span = Some((226.0, 252.0));
        let scale = Scale::Measure(Measure {
            tolerance: 2.0,
            span,
        });
        let key = couplets(&table(vec![column(scale, numbers)]));
        let range = |low, high| Range { low, high };
        let ranges = |lead: &Lead| match &lead.condition {
            LeadCondition::Within(ranges) => ranges.clone(),
            LeadCondition::AnyOf(_) => Vec::new(),
        };
        let candidates =
            |lead: &Lead| -> Vec<usize> { lead.candidates.iter().map(|c| c.index()).collect() };
        let leads = &key.couplets[CoupletAt::new(0)].leads;
        assert_eq!(leads.len(), 3);
        assert_eq!(candidates(&leads[0]), [2, 3]);
        assert_eq!(ranges(&leads[0]), [range(Some(230.0), Some(234.0))]);
        assert_eq!(candidates(&leads[1]), [0, 1, 3]);
        assert_eq!(ranges(&leads[1]), [range(Some(244.0), Some(248.0))]);
        assert_eq!(candidates(&leads[2]), [3]);
        assert_eq!(
            ranges(&leads[2]),
            [
                range(None, Some(230.0)),
                range(Some(234.0), Some(244.0)),
                range(Some(248.0), None)
            ]
        );
        assert!(leads.iter().all(|lead| lead.goal == Goal::End));
    }

    #[test]
    fn one_candidate_asks_nothing() {
        let alone = column(
            Scale::Counts(vec![3]),
            vec![Some(Allowed::AnyOf([ValueAt::new(0)].into()))],
        );
        assert_eq!(couplets(&table(vec![alone])), Couplets::default());
        assert_eq!(couplets(&DiagnosticTable::default()), Couplets::default());
    }
}
