//! Keys of random tables: no correct answer loses the right candidate.

use super::*;
use crate::identification::scale::{Allowed, Measure, Scale, ValueSet};
use crate::identification::table::{CandidateRow, PointColumn};
use crate::index::{CandidateAt, ClassAt, CoupletAt, ValueAt};
use keyblock_model::point::{EvidenceKind, RestsOn};

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
fn is_never_lost(table: &DiagnosticTable, key: &Couplets, at: CoupletAt, who: CandidateAt) -> bool {
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
