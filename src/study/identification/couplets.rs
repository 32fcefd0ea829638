//! Couplets: a design's diagnostic table as a key for paper.
//!
//! A key of the printed tradition asks one point at a time; each of its leads goes on to another
//! number or ends with the candidates that agree. At each number stands the point that is expected
//! to tell most of the candidates left, taken as equally likely, so that a key does not change with
//! every sheet that is found. A candidate goes down every lead that it allows, and one that is not
//! known at the point goes down all of them; leads that go on to the same candidates are one. So
//! whoever answers truly never loses the right one. What no point separates ends together.
//!
//! In: a diagnostic table; no observation. Out: [`Couplets`].
//! Method: a diagnostic key grown from its head, as reviewed by Payne and Preece 1980 (see `table`),
//! its points chosen by expected information (`next_point`). Parts that recur stand once and are
//! referred to. A key grows with the overlap of its candidates, so it is finished breadth first and
//! stops at [`MOST_COUPLETS`]; what is then not told apart says so.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::allowed::ROUNDING;
use super::identify::{Identified, Weighed, greater_first};
use super::next_point::expected_bits;
use super::scale::{Allowed, Places, Scale};
use super::table::{DiagnosticTable, PointColumn};

/// A key for paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Couplets {
    /// The couplets, in the order of their numbers; leads go on to later ones only. Empty where no
    /// point narrows the candidates.
    pub couplets: Vec<Couplet>,
}

/// A point with what may be seen there.
#[derive(Clone, Debug, PartialEq)]
pub struct Couplet {
    /// The point, by its place in the table.
    pub point: usize,
    /// The candidates that come to it, by their places in the table, in its order.
    pub candidates: Vec<usize>,
    /// What may be seen, and where that leads; two at least, no two to the same candidates.
    pub leads: Vec<Lead>,
}

/// Something that may be seen, and where it leads.
#[derive(Clone, Debug, PartialEq)]
pub struct Lead {
    /// What may be seen.
    pub seen: Sighted,
    /// The candidates that agree with it, by their places in the table, in its order; at least one.
    pub candidates: Vec<usize>,
    /// Where it leads.
    pub goal: Goal,
}

/// What a lead says was seen.
#[derive(Clone, Debug, PartialEq)]
pub enum Sighted {
    /// One of these places on the point's scale.
    AnyOf(Places),
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

/// Where a lead leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// On, to another couplet by its place, from 0.
    Couplet(usize),
    /// To the lead's candidates, which no recorded point separates further.
    End,
    /// To the lead's candidates, which further points would tell apart; the key stops here, so as
    /// not to grow beyond what can be printed.
    Stop,
}

/// A key longer than this is not printed to its ends: about twelve pages.
pub const MOST_COUPLETS: usize = 120;

impl Range {
    /// Whether a number lies within.
    #[must_use]
    pub fn contains(&self, number: f64) -> bool {
        self.low.is_none_or(|low| number >= low - ROUNDING)
            && self.high.is_none_or(|high| number <= high + ROUNDING)
    }
}

/// The key of a table.
#[must_use]
pub fn couplets(table: &DiagnosticTable) -> Couplets {
    let everyone: Vec<usize> = (0..table.candidates.len()).collect();
    let every_point: Vec<usize> = (0..table.points.len()).collect();
    let mut growing = Growing {
        table,
        known: BTreeMap::new(),
        waiting: VecDeque::new(),
    };
    growing.goal(&everyone, &every_point);
    let mut grown = Vec::new();
    while let Some(stem) = growing.waiting.pop_front() {
        grown.push(growing.couplet(stem));
    }
    Couplets {
        couplets: in_reading_order(grown),
    }
}

/// The candidates that come to a couplet, and the points that still narrow them.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Stem {
    candidates: Vec<usize>,
    open: Vec<usize>,
}

/// A key while it grows; couplets are grown in the order in which they were first led to.
struct Growing<'a> {
    table: &'a DiagnosticTable,
    known: BTreeMap<Stem, usize>,
    waiting: VecDeque<Stem>,
}

impl Growing<'_> {
    /// Where `candidates` lead, of whom only `points` have not been asked.
    fn goal(&mut self, candidates: &[usize], points: &[usize]) -> Goal {
        let narrows = |point: &&usize| {
            let column = self.table.points.get(**point);
            column.is_some_and(|column| narrowing(column, candidates).is_some())
        };
        let stem = Stem {
            open: points.iter().filter(narrows).copied().collect(),
            candidates: candidates.to_vec(),
        };
        if stem.open.is_empty() {
            return Goal::End;
        }
        if let Some(place) = self.known.get(&stem) {
            return Goal::Couplet(*place);
        }
        let place = self.known.len();
        if place == MOST_COUPLETS {
            return Goal::Stop;
        }
        self.known.insert(stem.clone(), place);
        self.waiting.push_back(stem);
        Goal::Couplet(place)
    }

    fn couplet(&mut self, stem: Stem) -> Couplet {
        let alike = equally_likely(self.table, &stem.candidates);
        let told = |point: usize| {
            let column = self.table.points.get(point);
            column.map_or(0.0, |column| expected_bits(column, &alike))
        };
        let mut open: Vec<(usize, f64)> = stem.open.iter().map(|p| (*p, told(*p))).collect();
        open.sort_by(|a, b| greater_first(a.1, b.1));
        let point = open.first().map_or(0, |(point, _)| *point);
        let column = self.table.points.get(point);
        let leads = column
            .and_then(|column| narrowing(column, &stem.candidates))
            .unwrap_or_default();
        let left: Vec<usize> = stem.open.iter().copied().filter(|p| *p != point).collect();
        let leads = leads.into_iter().map(|(seen, candidates)| Lead {
            goal: self.goal(&candidates, &left),
            seen,
            candidates,
        });
        Couplet {
            point,
            leads: leads.collect(),
            candidates: stem.candidates,
        }
    }
}

fn equally_likely(table: &DiagnosticTable, candidates: &[usize]) -> Identified {
    #[allow(
        clippy::cast_precision_loss,
        reason = "a design has nowhere near 2^52 candidates"
    )]
    let share = 1.0 / candidates.len().max(1) as f64;
    let weighed = (0..table.candidates.len()).map(|at| Weighed {
        probability: if candidates.binary_search(&at).is_ok() {
            share
        } else {
            0.0
        },
        against: Vec::new(),
    });
    Identified {
        candidates: weighed.collect(),
    }
}

/// What may be seen at a point, and the candidates that agree with it.
type Leads = Vec<(Sighted, Vec<usize>)>;

/// The leads of a point; `None` where it does not narrow the candidates: all of them agree with
/// whatever any of them does. A measure must separate two of them: where their tolerances overlap,
/// a range told to the millimetre would promise more than a rule can keep.
fn narrowing(column: &PointColumn, candidates: &[usize]) -> Option<Leads> {
    let leads = match &column.scale {
        Scale::Measure(measure) => {
            let met = candidates.iter().filter_map(|c| column.class_of.get(*c));
            let classes: BTreeSet<usize> = met.copied().collect();
            let is_apart = |one: &usize| {
                let mut others = classes.iter();
                others.any(|other| column.classes_apart(*one, *other))
            };
            if !classes.iter().any(is_apart) {
                return None;
            }
            by_range(column, candidates, measure.tolerance)
        }
        Scale::Words(_) | Scale::Counts(_) => by_place(column, candidates),
    };
    (leads.len() > 1).then_some(leads)
}

fn by_place(column: &PointColumn, candidates: &[usize]) -> Leads {
    let mut leads: Vec<(Places, Vec<usize>)> = Vec::new();
    for place in 0..column.scale.len() {
        let agrees = |candidate: &&usize| match column.allows(**candidate) {
            Some(Allowed::AnyOf(places)) => places.contains(&place),
            Some(Allowed::Number(_)) => false,
            None => true,
        };
        let who: Vec<usize> = candidates.iter().filter(agrees).copied().collect();
        match leads.iter_mut().find(|(_, same)| *same == who) {
            _ if who.is_empty() => {}
            Some((places, _)) => {
                places.insert(place);
            }
            None => leads.push((Places::from([place]), who)),
        }
    }
    let leads = leads.into_iter();
    leads.map(|(p, who)| (Sighted::AnyOf(p), who)).collect()
}

/// The line of numbers, cut wherever a candidate's tolerance begins or ends.
fn by_range(column: &PointColumn, candidates: &[usize], tolerance: f64) -> Leads {
    let number = |candidate: usize| match column.allows(candidate) {
        Some(Allowed::Number(number)) => Some(*number),
        _ => None,
    };
    let shown = candidates.iter().filter_map(|c| number(*c));
    let mut cuts: Vec<f64> = shown.flat_map(|v| [v - tolerance, v + tolerance]).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() <= ROUNDING);
    let agreeing = |x: f64| -> Vec<usize> {
        let agrees = |candidate: &&usize| {
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
    let mut leads: Vec<(Vec<Range>, Vec<usize>)> = Vec::new();
    let mut before: Vec<usize> = Vec::new();
    for (range, who) in pieces {
        let is_continued = who == before;
        before.clone_from(&who);
        match leads.iter_mut().find(|(_, same)| *same == who) {
            _ if who.is_empty() => {}
            Some((ranges, _)) => match ranges.last_mut() {
                Some(last) if is_continued => last.high = range.high,
                _ => ranges.push(range),
            },
            None => leads.push((vec![range], who)),
        }
    }
    // What lies beyond every tolerance is said last: "any other".
    leads.sort_by_key(|(ranges, _)| ranges.iter().any(|r| r.low.is_none()));
    let leads = leads.into_iter();
    leads.map(|(r, who)| (Sighted::Within(r), who)).collect()
}

/// The couplets numbered so that every lead goes on to a later one, and what a first lead goes on to
/// stands next where it can: backwards in the order in which a walk through all leads is done with
/// them.
fn in_reading_order(grown: Vec<Couplet>) -> Vec<Couplet> {
    let mut is_met = vec![false; grown.len()];
    let mut done: Vec<usize> = Vec::new();
    // Each couplet with how many of its leads, the last first, are still to be walked.
    let mut walked: Vec<(usize, usize)> = Vec::new();
    if let (Some(head), Some(met)) = (grown.first(), is_met.first_mut()) {
        *met = true;
        walked.push((0, head.leads.len()));
    }
    while let Some((at, left)) = walked.pop() {
        let Some(lead) = left.checked_sub(1) else {
            done.push(at);
            continue;
        };
        walked.push((at, lead));
        let goal = grown.get(at).and_then(|couplet| couplet.leads.get(lead));
        if let Some(Goal::Couplet(next)) = goal.map(|lead| lead.goal)
            && let (Some(couplet), Some(met)) = (grown.get(next), is_met.get_mut(next))
            && !*met
        {
            *met = true;
            walked.push((next, couplet.leads.len()));
        }
    }
    done.reverse();
    let mut number = vec![0; grown.len()];
    for (new, old) in done.iter().enumerate() {
        if let Some(place) = number.get_mut(*old) {
            *place = new;
        }
    }
    let mut numbered: Vec<(usize, Couplet)> = grown
        .into_iter()
        .enumerate()
        .map(|(old, mut couplet)| {
            for lead in &mut couplet.leads {
                if let Goal::Couplet(next) = &mut lead.goal {
                    *next = number.get(*next).copied().unwrap_or(*next);
                }
            }
            (number.get(old).copied().unwrap_or(old), couplet)
        })
        .collect();
    numbered.sort_by_key(|(place, _)| *place);
    numbered.into_iter().map(|(_, couplet)| couplet).collect()
}

#[cfg(test)]
mod tests {
    use super::super::scale::Measure;
    use super::super::table::CandidateRow;
    use super::*;
    use crate::model::point::RestsOn;

    /// Numbers that only look random; the same at every run (Knuth's linear congruence, MMIX).
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
            matrix: None,
            class_of: (0..of_candidates.len()).collect(),
            classes: of_candidates,
        }
    }

    fn table(points: Vec<PointColumn>) -> DiagnosticTable {
        let candidates = points.first().map_or(0, |p| p.class_of.len());
        let row = CandidateRow {
            state: "state".parse().unwrap(),
            printing: None,
            prior: 1.0,
        };
        DiagnosticTable {
            candidates: vec![row; candidates],
            points,
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
                let any: Places = (0..places as usize)
                    .filter(|_| dice.below(3) == 0)
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
        candidate: usize,
    ) -> Vec<Vec<&'c Lead>> {
        let fits = |place: Option<usize>, x: f64| -> Vec<&Lead> {
            let fits = |lead: &&Lead| match &lead.seen {
                Sighted::AnyOf(places) => place.is_some_and(|p| places.contains(&p)),
                Sighted::Within(ranges) => ranges.iter().any(|r| r.contains(x)),
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
            (None, scale) => (0..scale.len()).map(|p| fits(Some(p), 0.0)).collect(),
        }
    }

    /// Follows every true answer; whether the candidate is at each end that is come to.
    fn is_never_lost(table: &DiagnosticTable, key: &Couplets, at: usize, who: usize) -> bool {
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
            for who in 0..table.candidates.len() {
                assert!(key.couplets.is_empty() || is_never_lost(&table, &key, 0, who));
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
            for (at, couplet) in key.couplets.iter().enumerate() {
                assert!(couplet.leads.len() > 1);
                let mut all: Vec<usize> = Vec::new();
                for lead in &couplet.leads {
                    all.extend(&lead.candidates);
                    if let Goal::Couplet(next) = lead.goal {
                        assert!(next > at, "lead from {at} to {next}");
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
                        assert!(!point.classes_apart(one, other));
                    }
                }
            }
        }
        assert!(together > 50, "only {together} ends hold several");
    }

    fn pairs(of: &[usize]) -> Vec<(usize, usize)> {
        let after = |at: usize, one: usize| of.iter().skip(at + 1).map(move |other| (one, *other));
        of.iter()
            .enumerate()
            .flat_map(|(at, one)| after(at, *one))
            .collect()
    }

    #[test]
    fn a_key_that_would_have_no_end_stops_and_says_so() {
        // Everybody allows two of three values, so that every lead keeps most of them.
        let mut dice = Dice(6);
        let points = (0..40).map(|_| {
            let allowed = (0..40).map(|_| {
                let without = dice.below(3) as usize;
                let any = (0..3).filter(|place| *place != without).collect();
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
        let ranges = |lead: &Lead| match &lead.seen {
            Sighted::Within(ranges) => ranges.clone(),
            Sighted::AnyOf(_) => Vec::new(),
        };
        let leads = &key.couplets[0].leads;
        assert_eq!(leads.len(), 3);
        assert_eq!(leads[0].candidates, [2, 3]);
        assert_eq!(ranges(&leads[0]), [range(Some(230.0), Some(234.0))]);
        assert_eq!(leads[1].candidates, [0, 1, 3]);
        assert_eq!(ranges(&leads[1]), [range(Some(244.0), Some(248.0))]);
        assert_eq!(leads[2].candidates, [3]);
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
            vec![Some(Allowed::AnyOf([0].into()))],
        );
        assert_eq!(couplets(&table(vec![alone])), Couplets::default());
        assert_eq!(couplets(&DiagnosticTable::default()), Couplets::default());
    }
}
