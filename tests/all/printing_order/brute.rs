//! The order of random small designs, compared with one computed straight from the definition: every pair of sheets is
//! judged by the lists from which the record was written, the closure by adding steps until none is missing, the
//! reduction and the longest chains by trying every sheet between.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use keyblock::study::printing_order::{PrintingOrder, Reason};

use super::{records, study};
use crate::identification::made_up::Lehmer;

/// A date as the record writes it, and the days it covers where it orders anything.
const DATES: [(&str, Option<(u32, u32)>); 9] = [
    ("1920", Some((1920_0101, 1920_1231))),
    ("1919/1922", Some((1919_0101, 1922_1231))),
    ("1921-06", Some((1921_0601, 1921_0630))),
    ("1923/1924", Some((1923_0101, 1924_1231))),
    ("192X", Some((1920_0101, 1929_1231))),
    ("1930", Some((1930_0101, 1930_1231))),
    ("1921~", None),
    ("1925/..", None),
    ("1918?", None),
];

struct MadeState {
    /// The state that it follows: an earlier one, or none.
    follows: Option<usize>,
    is_withdrawn: bool,
    /// What it shows at the points of the first matrix, of the second, of one not said.
    shows: [Option<bool>; 3],
}

struct MadePrinting {
    date: usize,
    is_recut: bool,
}

struct MadeSheet {
    states: Vec<usize>,
    printing: Option<usize>,
    is_certain: bool,
    /// At the stage of the first matrix and at that of the second.
    stages: [Option<(usize, bool)>; 2],
    date: Option<usize>,
    same_as_first: bool,
}

struct Made {
    states: Vec<MadeState>,
    printings: Vec<MadePrinting>,
    sheets: Vec<MadeSheet>,
}

impl Made {
    fn new(numbers: &mut Lehmer) -> Made {
        let states = (0..=numbers.below(4)).map(|at| MadeState {
            follows: (at > 0 && numbers.below(6) > 0)
                .then(|| at - 1 - numbers.below(2).min(at - 1)),
            is_withdrawn: numbers.below(8) == 0,
            shows: [0, 1, 2].map(|_| match numbers.below(6) {
                0 => None,
                1 => Some(true),
                _ => Some(false),
            }),
        });
        let states: Vec<MadeState> = states.collect();
        let printings = (0..numbers.below(4)).map(|_| MadePrinting {
            date: numbers.below(DATES.len()),
            is_recut: numbers.below(6) == 0,
        });
        let printings: Vec<MadePrinting> = printings.collect();
        let sheets = (0..2 + numbers.below(6)).map(|at| MadeSheet {
            states: (0..states.len())
                .filter(|_| numbers.below(3) == 0)
                .collect(),
            printing: (!printings.is_empty() && numbers.below(2) == 0)
                .then(|| numbers.below(printings.len())),
            is_certain: numbers.below(4) > 0,
            stages: [0, 1]
                .map(|_| (numbers.below(2) == 0).then(|| (numbers.below(3), numbers.below(5) > 0))),
            date: (numbers.below(3) == 0).then(|| numbers.below(DATES.len())),
            same_as_first: at > 0 && numbers.below(8) == 0,
        });
        Made {
            sheets: sheets.collect(),
            states,
            printings,
        }
    }

    fn design(&self) -> String {
        let points = ["one", "two"].map(|matrix| {
            format!("  {{ key = \"cut-{matrix}\", ask = \"?\", kind = \"presence\", rests_on = \"matrix\", matrix = \"{matrix}\" }},\n  {{ key = \"wear-{matrix}\", ask = \"?\", kind = \"stage\", stages = [\"s0\", \"s1\", \"s2\"], rests_on = \"matrix\", matrix = \"{matrix}\" }},\n")
        });
        let states: Vec<String> = (0..)
            .zip(&self.states)
            .map(|(at, state): (usize, &MadeState)| {
                let follows = state.follows.map(|f| format!("\"s{f}\"")).unwrap_or_default();
                let withdrawn = if state.is_withdrawn { ", standing = \"withdrawn\"" } else { "" };
                let shown = ["cut-one", "cut-two", "cut"].into_iter().zip(state.shows);
                let shown: Vec<String> = shown
                    .filter_map(|(point, is)| {
                        let is = if is? { "present" } else { "absent" };
                        Some(format!("{point} = \"{is}\""))
                    })
                    .collect();
                format!(
                    "  {{ key = \"s{at}\", follows = [{follows}]{withdrawn}, shows = {{ {} }} }},\n",
                    shown.join(", ")
                )
            })
            .collect();
        let printings: Vec<String> = (0..)
            .zip(&self.printings)
            .map(|(at, printing): (usize, &MadePrinting)| {
                let kind = if printing.is_recut { "recut" } else { "lifetime" };
                format!(
                    "  {{ key = \"p{at}\", kind = \"{kind}\", states = \"all\", date = \"{}\" }},\n",
                    DATES[printing.date].0
                )
            })
            .collect();
        format!(
            "\n-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\nmatrices = [{{ key = \"one\" }}, {{ key = \"two\" }}]\npoints = [\n  {{ key = \"cut\", ask = \"?\", kind = \"presence\", rests_on = \"matrix\" }},\n{}]\nstates = [\n{}]\nprintings = [\n{}]\n",
            points.concat(),
            states.concat(),
            printings.concat()
        )
    }

    fn records(&self) -> Vec<String> {
        let of_each = self.sheets.iter().map(|sheet| {
            let mut toml = String::new();
            if sheet.same_as_first {
                toml.push_str("same_as = [{ impression = \"1.1\" }]\n");
            }
            let mut identified: Vec<String> = Vec::new();
            if !sheet.states.is_empty() {
                let states: Vec<String> =
                    sheet.states.iter().map(|s| format!("\"s{s}\"")).collect();
                identified.push(format!("state = [{}]", states.join(", ")));
            }
            if let Some(printing) = sheet.printing {
                identified.push(format!("printing = \"p{printing}\""));
            }
            if !identified.is_empty() {
                if !sheet.is_certain {
                    identified.push("certainty = \"probable\"".to_owned());
                }
                writeln!(toml, "identified = {{ {} }}", identified.join(", ")).unwrap();
            }
            let seen = ["one", "two"].into_iter().zip(sheet.stages);
            let seen: Vec<String> = seen
                .filter_map(|(matrix, stage)| {
                    let (stage, is_certain) = stage?;
                    let certainty = if is_certain { "certain" } else { "probable" };
                    Some(format!(
                        "wear-{matrix} = {{ is = \"s{stage}\", certainty = \"{certainty}\" }}"
                    ))
                })
                .collect();
            if !seen.is_empty() {
                writeln!(toml, "observed = {{ {} }}", seen.join(", ")).unwrap();
            }
            if let Some(date) = sheet.date {
                writeln!(toml, "[sheet]\ndate = \"{}\"", DATES[date].0).unwrap();
            }
            toml
        });
        of_each.collect()
    }

    fn is_standing(&self, state: usize) -> bool {
        !self.states[state].is_withdrawn
    }

    fn standing(&self) -> Vec<usize> {
        (0..self.states.len())
            .filter(|s| self.is_standing(*s))
            .collect()
    }

    /// The state from which one was changed; a withdrawn one is passed over.
    fn before(&self, state: usize) -> Option<usize> {
        let mut at = self.states[state].follows?;
        while !self.is_standing(at) {
            at = self.states[at].follows?;
        }
        Some(at)
    }

    /// The states up to the first, itself left out.
    fn ancestors(&self, state: usize) -> Vec<usize> {
        std::iter::successors(self.before(state), |s| self.before(*s)).collect()
    }

    /// Whether nothing on the way from one state to the other changed a matrix. There is one way: up to the last state
    /// that both came from, and down again.
    fn is_unchanged(&self, a: usize, b: usize, matrix: usize) -> bool {
        let line =
            |s: usize| -> Vec<usize> { std::iter::once(s).chain(self.ancestors(s)).collect() };
        let (of_a, of_b) = (line(a), line(b));
        let Some(common) = of_a.iter().find(|s| of_b.contains(s)) else {
            return false;
        };
        let up_to =
            |line: &[usize]| line[..=line.iter().position(|s| s == common).unwrap()].to_vec();
        let on_way = [up_to(&of_a), up_to(&of_b)].concat();
        [matrix, 2].iter().all(|point| {
            let shown: BTreeSet<bool> = on_way
                .iter()
                .filter_map(|s| self.states[*s].shows[*point])
                .collect();
            shown.len() < 2
        })
    }

    fn has_place(&self, sheet: &MadeSheet) -> bool {
        sheet.printing.is_none_or(|p| !self.printings[p].is_recut)
    }

    fn possible_states(&self, sheet: &MadeSheet) -> Option<Vec<usize>> {
        if sheet.states.is_empty() {
            return Some(self.standing());
        }
        let all_stand = sheet.states.iter().all(|s| self.is_standing(*s));
        all_stand.then(|| sheet.states.clone())
    }

    /// The kinds of reason why the sheet of one record was printed before that of another.
    fn reasons(&self, a: &MadeSheet, b: &MadeSheet) -> BTreeSet<String> {
        let mut found = BTreeSet::new();
        for matrix in [0, 1] {
            if let (Some((low, true)), Some((high, true))) = (a.stages[matrix], b.stages[matrix])
                && low < high
                && let (Some(of_a), Some(of_b)) = (self.possible_states(a), self.possible_states(b))
                && of_a
                    .iter()
                    .all(|s| of_b.iter().all(|t| self.is_unchanged(*s, *t, matrix)))
            {
                found.insert(format!("wear {}", ["one", "two"][matrix]));
            }
        }
        if let ([of_a], [of_b]) = (a.states.as_slice(), b.states.as_slice())
            && a.is_certain
            && b.is_certain
            && self.is_standing(*of_a)
            && self.is_standing(*of_b)
            && self.ancestors(*of_b).contains(of_a)
        {
            found.insert("states".to_owned());
        }
        let days = |sheet: &MadeSheet| -> Vec<(u32, u32)> {
            let of_printing = sheet.printing.filter(|_| sheet.is_certain);
            let of_printing = of_printing.and_then(|p| DATES[self.printings[p].date].1);
            let own = sheet.date.and_then(|d| DATES[d].1);
            own.into_iter().chain(of_printing).collect()
        };
        if days(a).iter().any(|x| days(b).iter().any(|y| x.1 < y.0)) {
            found.insert("dates".to_owned());
        }
        found
    }
}

/// For each two sheets, by their first records, the kinds of reason.
fn direct(made: &Made) -> BTreeMap<(usize, usize), BTreeSet<String>> {
    let mut direct: BTreeMap<(usize, usize), BTreeSet<String>> = BTreeMap::new();
    let placed: Vec<(usize, &MadeSheet)> = (0..)
        .zip(&made.sheets)
        .filter(|(_, s)| made.has_place(s))
        .collect();
    // The first record with a place names the sheet.
    let joined = placed.iter().find(|(at, s)| *at == 0 || s.same_as_first);
    let joined = joined.map_or(0, |(at, _)| *at);
    let name = |at: usize| {
        if at == 0 || made.sheets[at].same_as_first {
            joined
        } else {
            at
        }
    };
    for (at, a) in &placed {
        for (other, b) in &placed {
            let (one, two) = (name(*at), name(*other));
            let found = made.reasons(a, b);
            if one != two && !found.is_empty() {
                direct.entry((one, two)).or_default().extend(found);
            }
        }
    }
    direct
}

fn closure(direct: &BTreeSet<(usize, usize)>) -> BTreeSet<(usize, usize)> {
    let mut all = direct.clone();
    loop {
        let further: BTreeSet<(usize, usize)> = all
            .iter()
            .flat_map(|(a, b)| {
                all.iter()
                    .filter(move |(c, _)| b == c)
                    .map(move |(_, d)| (*a, *d))
            })
            .collect();
        let known = all.len();
        all.extend(further);
        if all.len() == known {
            return all;
        }
    }
}

/// The fewest sheets of a cycle through one of `set`, by trying ways of every length.
fn girth(direct: &BTreeSet<(usize, usize)>, set: &[usize]) -> usize {
    let mut ways: BTreeSet<(usize, usize)> = set.iter().map(|s| (*s, *s)).collect();
    for length in 1..=set.len() {
        ways = ways
            .iter()
            .flat_map(|(a, b)| {
                let next = direct
                    .iter()
                    .filter(move |(c, d)| b == c && set.contains(d));
                next.map(move |(_, d)| (*a, *d))
            })
            .collect();
        if ways.iter().any(|(a, b)| a == b) {
            return length;
        }
    }
    panic!("no cycle in {set:?}");
}

fn kind(reason: &Reason) -> String {
    match reason {
        Reason::Wear(step) => step.point.as_str().replace("wear-", "wear "),
        Reason::States { .. } => "states".to_owned(),
        Reason::Dates { .. } => "dates".to_owned(),
    }
}

fn longest(place: usize, before: &BTreeSet<(usize, usize)>) -> usize {
    let chains = before.iter().filter(|(_, b)| *b == place);
    chains
        .map(|(a, _)| longest(*a, before) + 1)
        .max()
        .unwrap_or(0)
}

/// Compares the order with the definition; gives how many steps and cycles it has.
fn check(made: &Made, order: &PrintingOrder) -> (usize, usize) {
    let reasons = direct(made);
    let direct: BTreeSet<(usize, usize)> = reasons.keys().copied().collect();
    let all = closure(&direct);
    let joined: BTreeSet<usize> = all.iter().flat_map(|(a, b)| [*a, *b]).collect();
    let places: Vec<Vec<usize>> = order
        .places
        .iter()
        .map(|place| {
            let numbers = place
                .sheets
                .iter()
                .map(|s| usize::try_from(s.number).unwrap() - 1);
            numbers.collect()
        })
        .collect();
    // Every sheet that something orders stands at one place.
    let mut placed: Vec<usize> = places.concat();
    placed.sort_unstable();
    assert_eq!(placed, joined.into_iter().collect::<Vec<_>>());
    let is_before = |a: usize, b: usize| {
        a != b
            && places[a]
                .iter()
                .all(|x| places[b].iter().all(|y| all.contains(&(*x, *y))))
    };
    let some_before = |a: usize, b: usize| {
        a != b
            && places[a]
                .iter()
                .any(|x| places[b].iter().any(|y| all.contains(&(*x, *y))))
    };
    let count = places.len();
    let pairs = (0..count).flat_map(|a| (0..count).map(move |b| (a, b)));
    let between: BTreeSet<(usize, usize)> = pairs.filter(|(a, b)| is_before(*a, *b)).collect();
    for (a, b) in (0..count).flat_map(|a| (0..count).map(move |b| (a, b))) {
        assert_eq!(
            is_before(a, b),
            some_before(a, b),
            "sheets of one place are ordered alike"
        );
        assert!(!is_before(a, b) || !is_before(b, a), "a cycle is one place");
    }
    for (at, place) in order.places.iter().enumerate() {
        let inside: BTreeSet<(usize, usize)> = all
            .iter()
            .copied()
            .filter(|(a, b)| places[at].contains(a) && places[at].contains(b))
            .collect();
        match &place.cycle {
            None => assert!(inside.is_empty(), "sheets of one place are not ordered"),
            Some(cycle) => {
                assert!(places[at].iter().all(|s| inside.contains(&(*s, *s))));
                assert_eq!(cycle.steps.len(), girth(&direct, &places[at]));
                let ends = cycle.steps.iter().skip(1).chain(cycle.steps.first());
                for (step, next) in cycle.steps.iter().zip(ends) {
                    assert_eq!(step.after, next.before);
                    let number = |n: u32| usize::try_from(n).unwrap() - 1;
                    let pair = (number(step.before.number), number(step.after.number));
                    let kinds: BTreeSet<String> = step.reasons.iter().map(kind).collect();
                    assert_eq!(kinds, reasons[&pair]);
                }
            }
        }
        assert_eq!(place.layer, longest(at, &between));
    }
    let expected: Vec<(usize, usize)> = between
        .iter()
        .copied()
        .filter(|(a, b)| {
            !(0..count).any(|c| between.contains(&(*a, c)) && between.contains(&(c, *b)))
        })
        .collect();
    let steps: Vec<(usize, usize)> = order
        .steps
        .iter()
        .map(|step| (step.before.index(), step.after.index()))
        .collect();
    assert_eq!(steps, expected);
    for step in &order.steps {
        let kinds: BTreeSet<String> = step.reasons.iter().map(kind).collect();
        let (a, b) = (&places[step.before.index()], &places[step.after.index()]);
        let given = a
            .iter()
            .flat_map(|x| b.iter().filter_map(|y| reasons.get(&(*x, *y))));
        let given: BTreeSet<String> = given.flatten().cloned().collect();
        assert_eq!(kinds, given);
        assert!(!kinds.is_empty(), "a reason on every step");
    }
    let cycles = order.places.iter().filter(|p| p.cycle.is_some()).count();
    (steps.len(), cycles)
}

#[test]
fn the_order_is_that_of_the_definition_on_random_designs() {
    let mut numbers = Lehmer(1979);
    let (mut steps, mut cycles) = (0, 0);
    for round in 0..400 {
        let made = Made::new(&mut numbers);
        let sheets = made.records();
        let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
        let design = made.design();
        let order = study(&design, &sheets).printing_order;
        let found = std::panic::catch_unwind(|| check(&made, &order));
        let Ok((more_steps, more_cycles)) = found else {
            panic!("round {round}:\n{design}\n{}\n{order:#?}", records(&sheets));
        };
        steps += more_steps;
        cycles += more_cycles;
    }
    // The comparison means something only where there is something to compare.
    assert!(steps > 300 && cycles > 20, "{steps} steps, {cycles} cycles");
}
