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

/// A small design made up at random, kept as plain lists beside its record.
pub struct MadeUp {
    /// For each point: whether it rests on the matrix, how many values it has, and its tolerance
    /// where it is a measure.
    pub points: Vec<(bool, usize, Option<f64>)>,
    /// What each state shows at each point: values, or one number.
    pub states: Vec<Vec<Option<Vec<usize>>>>,
    /// The states of each printing, and what it shows.
    pub printings: Vec<(Vec<usize>, Vec<Option<Vec<usize>>>)>,
}

impl MadeUp {
    pub fn new(numbers: &mut Lehmer) -> MadeUp {
        let points: Vec<(bool, usize, Option<f64>)> = (0..2 + numbers.below(5))
            .map(|_| {
                let is_matrix = numbers.below(3) > 0;
                let is_measure = is_matrix && numbers.below(4) == 0;
                let tolerance =
                    is_measure.then(|| f64::from(u32::try_from(1 + numbers.below(3)).unwrap()));
                (is_matrix, 2 + numbers.below(3), tolerance)
            })
            .collect();
        let states = 1 + numbers.below(4);
        let printings = numbers.below(4);
        let mut shown = |of_state: bool| -> Vec<Option<Vec<usize>>> {
            points
                .iter()
                .map(|(is_matrix, values, tolerance)| {
                    if *is_matrix != of_state || numbers.below(4) == 0 {
                        return None;
                    }
                    if tolerance.is_some() {
                        return Some(vec![100 + numbers.below(9)]);
                    }
                    let first = numbers.below(*values);
                    let second = numbers.below(*values);
                    let set: BTreeSet<usize> = [first, second].into();
                    Some(set.into_iter().collect())
                })
                .collect()
        };
        let states: Vec<_> = (0..states).map(|_| shown(true)).collect();
        let shows: Vec<_> = (0..printings).map(|_| shown(false)).collect();
        let printings = shows
            .into_iter()
            .map(|shows| {
                let some: Vec<usize> = (0..states.len())
                    .filter(|_| numbers.below(2) == 0)
                    .collect();
                (if some.is_empty() { vec![0] } else { some }, shows)
            })
            .collect();
        MadeUp {
            points,
            states,
            printings,
        }
    }

    pub fn record(&self) -> String {
        let shows = |shown: &[Option<Vec<usize>>]| -> String {
            let at = shown.iter().zip(&self.points).enumerate();
            let shows: Vec<String> = at
                .filter_map(|(p, (values, (.., tolerance)))| {
                    let values = values.as_ref()?;
                    if tolerance.is_some() {
                        return Some(format!("p{p} = {}", values[0]));
                    }
                    let words: Vec<String> = values.iter().map(|v| format!("\"v{v}\"")).collect();
                    Some(format!("p{p} = [{}]", words.join(", ")))
                })
                .collect();
            format!("{{ {} }}", shows.join(", "))
        };
        let points: Vec<String> = self
            .points
            .iter()
            .enumerate()
            .map(|(p, (is_matrix, values, tolerance))| {
                let rests_on = if *is_matrix { "matrix" } else { "inking" };
                let kind = if let Some(t) = tolerance {
                    format!("kind = \"measure\", unit = \"mm\", tolerance = {t}")
                } else {
                    let words: Vec<String> =
                        (0..*values).map(|v| format!("v{v} = \"{v}\"")).collect();
                    format!("kind = \"choice\", values = {{ {} }}", words.join(", "))
                };
                format!("{{ key = \"p{p}\", ask = \"?\", rests_on = \"{rests_on}\", {kind} }}")
            })
            .collect();
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
            .map(|(p, (states, shown))| {
                let states: Vec<String> = states.iter().map(|s| format!("\"s{s}\"")).collect();
                let states = states.join(", ");
                format!(
                    "{{ key = \"r{p}\", kind = \"artist\", states = [{states}], shows = {} }}",
                    shows(shown)
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

    /// The candidates: a state, and a printing where one contains it.
    pub fn candidates(&self) -> Vec<(usize, Option<usize>)> {
        let mut found = Vec::new();
        for state in 0..self.states.len() {
            let within: Vec<usize> = (0..self.printings.len())
                .filter(|p| self.printings[*p].0.contains(&state))
                .collect();
            if within.is_empty() {
                found.push((state, None));
            }
            found.extend(within.into_iter().map(|p| (state, Some(p))));
        }
        found
    }

    /// The values that a candidate allows. States show matrix points only and printings the others, so that
    /// the two never contradict each other.
    pub fn allows(
        &self,
        (state, printing): (usize, Option<usize>),
        point: usize,
    ) -> Option<&Vec<usize>> {
        let of_state = self.states[state][point].as_ref();
        of_state.or_else(|| self.printings[printing?].1[point].as_ref())
    }

    pub fn separates(
        &self,
        a: (usize, Option<usize>),
        b: (usize, Option<usize>),
        point: usize,
    ) -> bool {
        let (is_matrix, _, tolerance) = self.points[point];
        if !is_matrix && a.1 == b.1 {
            return false;
        }
        let (Some(one), Some(other)) = (self.allows(a, point), self.allows(b, point)) else {
            return false;
        };
        match tolerance {
            Some(tolerance) => {
                let apart = one[0].abs_diff(other[0]);
                f64::from(u32::try_from(apart).unwrap()) > 2.0 * tolerance
            }
            None => one.iter().all(|v| !other.contains(v)),
        }
    }
}
