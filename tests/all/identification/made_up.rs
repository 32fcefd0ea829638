//! Small random designs, kept as plain lists beside their record, and the results for them, computed from
//! the definitions.

use std::collections::BTreeSet;

use super::design;

/// Numbers that look random and are the same at every run (Lehmer's generator, Park and Miller
/// 1988).
pub struct Lehmer(pub u64);

impl Lehmer {
    pub fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        usize::try_from(self.0).unwrap() % bound
    }
}

/// A point made up at random.
pub struct MadePoint {
    /// What it rests on, as the record writes it.
    pub rests_on: &'static str,
    /// How many values it has.
    pub values: usize,
    /// Its tolerance, where it is a measure.
    pub tolerance: Option<f64>,
    pub is_stage: bool,
    pub decides: bool,
    pub strays: Option<f64>,
}

impl MadePoint {
    fn new(numbers: &mut Lehmer) -> MadePoint {
        let rests_on = [
            "matrix", "matrix", "matrix", "blocks", "paper", "inking", "mark",
        ][numbers.below(7)];
        let is_matrix = rests_on == "matrix";
        let is_measure = is_matrix && numbers.below(4) == 0;
        let values = 2 + numbers.below(3);
        let is_stage = is_matrix && !is_measure && numbers.below(4) == 0;
        let decides = numbers.below(6) == 0;
        let strays = [0.02, 0.2, 0.5][numbers.below(3)];
        let strays = (!decides && numbers.below(5) == 0).then_some(strays);
        let tolerance = is_measure.then(|| f64::from(u32::try_from(1 + numbers.below(3)).unwrap()));
        MadePoint {
            rests_on,
            values,
            tolerance,
            is_stage,
            decides,
            strays,
        }
    }

    pub fn is_matrix(&self) -> bool {
        self.rests_on == "matrix"
    }

    fn record(&self, at: usize) -> String {
        let words = |between: &dyn Fn(usize) -> String| -> String {
            let words: Vec<String> = (0..self.values).map(between).collect();
            words.join(", ")
        };
        let kind = if let Some(t) = self.tolerance {
            format!("kind = \"measure\", unit = \"mm\", tolerance = {t}")
        } else if self.is_stage {
            format!(
                "kind = \"stage\", stages = [{}]",
                words(&|v| format!("\"v{v}\""))
            )
        } else {
            format!(
                "kind = \"choice\", values = {{ {} }}",
                words(&|v| format!("v{v} = \"{v}\""))
            )
        };
        let decides = if self.decides {
            ", decides = \"it was never added\""
        } else {
            ""
        };
        let strays = self
            .strays
            .map_or(String::new(), |s| format!(", strays = {s}"));
        let rests_on = self.rests_on;
        format!(
            "{{ key = \"p{at}\", ask = \"?\", rests_on = \"{rests_on}\", {kind}{decides}{strays} }}"
        )
    }
}

/// What a state or printing shows at each point: values, or one number.
pub type MadeShows = Vec<Option<Vec<usize>>>;

/// A printing made up at random.
pub struct MadePrinting {
    pub states: Vec<usize>,
    pub shows: MadeShows,
    /// Whether it is a recut, which is a candidate without a state.
    pub is_recut: bool,
}

/// A small design made up at random, kept as plain lists beside its record.
pub struct MadeUp {
    pub points: Vec<MadePoint>,
    pub states: Vec<MadeShows>,
    pub printings: Vec<MadePrinting>,
}

impl MadeUp {
    pub fn new(numbers: &mut Lehmer) -> MadeUp {
        let points: Vec<MadePoint> = (0..2 + numbers.below(5))
            .map(|_| MadePoint::new(numbers))
            .collect();
        let states = numbers.below(5);
        let printings = numbers.below(4);
        let mut shown = |shows: &dyn Fn(&MadePoint) -> bool| -> MadeShows {
            let shown = points.iter().map(|point| {
                if !shows(point) || numbers.below(4) == 0 {
                    return None;
                }
                if point.tolerance.is_some() {
                    return Some(vec![100 + numbers.below(9)]);
                }
                let first = numbers.below(point.values);
                let second = numbers.below(point.values);
                let set: BTreeSet<usize> = [first, second].into();
                Some(set.into_iter().collect())
            });
            shown.collect()
        };
        let states: Vec<_> = (0..states).map(|_| shown(&|p| p.is_matrix())).collect();
        let printings: Vec<(bool, MadeShows)> = (0..printings)
            .map(|at| {
                let is_recut = at == 2;
                (is_recut, shown(&|point| is_recut || !point.is_matrix()))
            })
            .collect();
        let printings = printings
            .into_iter()
            .map(|(is_recut, shows)| {
                let some: Vec<usize> = (0..states.len())
                    .filter(|_| numbers.below(2) == 0)
                    .collect();
                let is_empty = some.is_empty() && !states.is_empty();
                MadePrinting {
                    states: if is_empty { vec![0] } else { some },
                    shows,
                    is_recut,
                }
            })
            .collect();
        MadeUp {
            points,
            states,
            printings,
        }
    }

    pub fn record(&self) -> String {
        let shows = |shown: &MadeShows| -> String {
            let at = shown.iter().zip(&self.points).enumerate();
            let shows: Vec<String> = at
                .filter_map(|(p, (values, point))| {
                    let values = values.as_ref()?;
                    if point.tolerance.is_some() {
                        return Some(format!("p{p} = {}", values[0]));
                    }
                    let words: Vec<String> = values.iter().map(|v| format!("\"v{v}\"")).collect();
                    Some(format!("p{p} = [{}]", words.join(", ")))
                })
                .collect();
            format!("{{ {} }}", shows.join(", "))
        };
        let points = self.points.iter().enumerate();
        let points: Vec<String> = points.map(|(at, point)| point.record(at)).collect();
        let states: Vec<String> = self
            .states
            .iter()
            .enumerate()
            .map(|(s, shown)| format!("{{ key = \"s{s}\", shows = {} }}", shows(shown)))
            .collect();
        let printings: Vec<String> = self
            .printings
            .iter()
            .enumerate()
            .map(|(p, printing)| {
                let states: Vec<String> = printing
                    .states
                    .iter()
                    .map(|s| format!("\"s{s}\""))
                    .collect();
                // Some kinds are not known, and a printing of a design without states needs none of them.
                let kind = match (printing.is_recut, p) {
                    (true, _) => ", kind = \"recut\"",
                    (false, 0) => "",
                    (false, _) => ", kind = \"artist\"",
                };
                let states = match states.join(", ") {
                    none if none.is_empty() && (printing.is_recut || self.states.is_empty()) => {
                        String::new()
                    }
                    states => format!(", states = [{states}]"),
                };
                format!(
                    "{{ key = \"r{p}\"{kind}{states}, shows = {} }}",
                    shows(&printing.shows)
                )
            })
            .collect();
        design(&format!(
            "points = [{}]\nstates = [{}]\nprintings = [{}]",
            points.join(",\n"),
            states.join(",\n"),
            printings.join(",\n")
        ))
    }

    /// The candidates: a state with each printing that contains it, or alone; then the recuts, and where
    /// there are no states every printing.
    pub fn candidates(&self) -> Vec<MadeCandidate> {
        let printings = || self.printings.iter().enumerate();
        let mut found = Vec::new();
        for state in 0..self.states.len() {
            let within: Vec<usize> = printings()
                .filter(|(_, p)| !p.is_recut && p.states.contains(&state))
                .map(|(at, _)| at)
                .collect();
            if within.is_empty() {
                found.push((Some(state), None));
            }
            found.extend(within.into_iter().map(|p| (Some(state), Some(p))));
        }
        let without_state = printings().filter(|(_, p)| p.is_recut || self.states.is_empty());
        found.extend(without_state.map(|(at, _)| (None, Some(at))));
        found
    }

    /// The values that a candidate allows. Where it has a state, that shows matrix points only and its printing
    /// the others, so that the two never contradict each other.
    pub fn allows(&self, (state, printing): MadeCandidate, point: usize) -> Option<&Vec<usize>> {
        let of_state = state.and_then(|state| self.states[state][point].as_ref());
        of_state.or_else(|| self.printings[printing?].shows[point].as_ref())
    }

    pub fn separates(&self, a: MadeCandidate, b: MadeCandidate, point: usize) -> bool {
        if !self.points[point].is_matrix() && a.1 == b.1 {
            return false;
        }
        let (Some(one), Some(other)) = (self.allows(a, point), self.allows(b, point)) else {
            return false;
        };
        match self.points[point].tolerance {
            Some(tolerance) => {
                let apart = one[0].abs_diff(other[0]);
                f64::from(u32::try_from(apart).unwrap()) > 2.0 * tolerance
            }
            None => one.iter().all(|v| !other.contains(v)),
        }
    }
}

/// A candidate: the places of its state and of its printing.
pub type MadeCandidate = (Option<usize>, Option<usize>);
