//! Which state and printing a sheet can be, checked against other computations.
//!
//! The definitions are DESIGN.md's (appendix). What is computed here beside the library is written
//! from the definitions alone, candidate by candidate, with nothing of the library's but the record.

use std::collections::BTreeSet;

use keyblock::model::catalogue::Catalogue;
use keyblock::model::certainty::Certainty;
use keyblock::model::key::Key;
use keyblock::study::Studies;
use keyblock::study::identify::{Identified, Observed, identify};
use keyblock::study::next_point::{information, next_points};
use keyblock::study::scale::{Answer, Scale};
use keyblock::study::separate::separability;
use keyblock::study::table::DiagnosticTable;
use serde_json::Value as Json;
use statrs::distribution::{Categorical, Continuous, Normal};
use statrs::statistics::Distribution;

use crate::small::studied;

fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn design(toml: &str) -> String {
    format!("-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{toml}\n")
}

/// The table of the one design of a literal.
fn table(literals: &[&str]) -> DiagnosticTable {
    let (_, studies) = studied(literals);
    studies.designs[&key("1")].table.clone()
}

/// "a/own", "b/–".
fn names(table: &DiagnosticTable) -> Vec<String> {
    let name = |at: &keyblock::study::table::CandidateRow| {
        let printing = at.printing.as_ref().map_or("–", Key::as_str);
        format!("{}/{printing}", at.state)
    };
    table.candidates.iter().map(name).collect()
}

fn seen(table: &DiagnosticTable, point: &str, words: &[&str], certainty: Certainty) -> Observed {
    let at = table.points.iter().position(|p| p.key.as_str() == point);
    let at = at.unwrap();
    let answer = match &table.points[at].scale {
        Scale::Measure(_) => Answer::Number(words[0].parse().unwrap()),
        Scale::Words(of) => {
            let place = |word: &&str| of.iter().position(|w| w.as_str() == *word).unwrap();
            Answer::OneOf(words.iter().map(place).collect())
        }
        Scale::Counts(counts) => {
            let place = |word: &&str| {
                let n: u32 = word.parse().unwrap();
                counts.binary_search(&n).unwrap_or(counts.len())
            };
            Answer::OneOf(words.iter().map(place).collect())
        }
    };
    Observed {
        point: at,
        answer,
        certainty,
    }
}

fn certainly(table: &DiagnosticTable, point: &str, words: &[&str]) -> Observed {
    seen(table, point, words, Certainty::Certain)
}

fn left(table: &DiagnosticTable, observed: &[Observed]) -> Vec<String> {
    let names = names(table);
    let identified = identify(table, observed);
    identified.left().map(|at| names[at].clone()).collect()
}

#[track_caller]
fn assert_near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

// A design of every kind of point, worked through by hand and with a reference library.

const KINDS: &str = r#"
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
  { key = "height", ask = "How tall?", kind = "measure", unit = "mm", tolerance = 2, rests_on = "matrix" },
  { key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded", wiped = "wiped" } },
]
states = [
  { key = "a", shows = { moon = "absent", lamps = 2, height = 246 } },
  { key = "b", shows = { moon = "present", lamps = [2, 3], height = 246 } },
  { key = "c", shows = { moon = "present", height = 232 } },
]
printings = [
  { key = "own", kind = "artist", states = ["a", "b"], shows = { sky = ["graded", "wiped"] } },
  { key = "later", kind = "posthumous", states = ["c"], shows = { sky = "even" } },
]
"#;

const SHEETS: &str = "
-- records/designs/1/impressions/1.toml
status = \"located\"
identified = { state = \"b\", printing = \"own\", certainty = \"probable\" }
observed = { lamps = { not = 5 } }
-- records/designs/1/impressions/2.toml
status = \"located\"
identified = { state = \"b\", printing = \"own\" }
same_as = [{ impression = \"1.1\" }]
-- records/designs/1/impressions/3.toml
status = \"located\"
identified = { state = \"b\", printing = \"own\", certainty = \"possible\" }
-- records/designs/1/impressions/4.toml
status = \"located\"
identified = { state = \"c\" }
-- records/designs/1/impressions/5.toml
status = \"located\"
identified = { state = [\"a\", \"b\"], printing = \"own\" }
";

fn kinds() -> DiagnosticTable {
    table(&[&design(KINDS), SHEETS])
}

#[test]
fn a_candidate_is_a_state_with_a_printing_that_contains_it() {
    assert_eq!(names(&kinds()), ["a/own", "b/own", "c/later"]);
    let alone = design("states = [{ key = \"a\" }, { key = \"b\" }]");
    assert_eq!(names(&table(&[&alone])), ["a/–", "b/–"]);
    assert!(names(&table(&[&design("")])).is_empty());
}

#[test]
fn the_prior_counts_sheets_identified_as_exactly_that() {
    // 1.1 and 1.2 are one sheet; 1.3 is only possibly b; 1.4 names no printing, which is none, and
    // c alone is no candidate; 1.5 is a or b.
    let priors: Vec<f64> = kinds().candidates.iter().map(|c| c.prior).collect();
    assert_eq!(priors, [1.0, 2.0, 1.0]);
}

#[test]
fn a_count_takes_what_is_recorded_and_other() {
    let table = kinds();
    let lamps = table.point(&key("lamps")).unwrap();
    // 5 is recorded by an impression, under `not`.
    assert_eq!(lamps.scale, Scale::Counts(vec![2, 3, 5]));
    assert_eq!(lamps.scale.len(), 4);
    assert_eq!(
        certainly(&table, "lamps", &["7"]).answer,
        Answer::OneOf([3].into())
    );
}

#[test]
fn likelihoods_follow_the_definition_by_hand() {
    let table = kinds();
    let likelihoods = |observed: Observed, error: f64| -> Vec<f64> {
        let column = &table.points[observed.point];
        (0..3)
            .map(|c| {
                column
                    .scale
                    .likelihood(&observed.answer, column.allows(c), error)
            })
            .collect()
    };
    // V = {2, 3, 5, other}; a allows {2}, b {2, 3}, c is unknown. O = {3, 5}.
    let of = likelihoods(certainly(&table, "lamps", &["3", "5"]), 0.1);
    assert_near(of[0], 0.1 * 2.0 / 3.0);
    assert_near(of[1], 0.9 * 0.5 + 0.1 * 0.5);
    assert_near(of[2], 0.5);
    // V = {even, graded, wiped}; the artist's printing allows two of them.
    let of = likelihoods(certainly(&table, "sky", &["even"]), 0.3);
    assert_near(of[0], 0.3);
    assert_near(of[2], 0.7);
}

#[test]
fn a_measurement_is_as_likely_as_the_reference_library_says() {
    // The normal density is that of the crate `statrs`.
    let table = kinds();
    let column = table.point(&key("height")).unwrap();
    let uniform = 1.0 / ((246.0 + 6.0) - (232.0 - 6.0));
    for x in [225.0, 231.0, 238.5, 246.0, 247.9, 260.0] {
        for error in [0.01, 0.1, 0.3] {
            for (candidate, v) in [(0, 246.0), (1, 246.0), (2, 232.0)] {
                let normal = Normal::new(v, 1.0).unwrap();
                let clamped = f64::clamp(x, 226.0, 252.0);
                let expected = (1.0 - error) * normal.pdf(clamped) + error * uniform;
                let answer = Answer::Number(x);
                let found = column
                    .scale
                    .likelihood(&answer, column.allows(candidate), error);
                assert_near(found, expected);
            }
            let unknown = column.scale.likelihood(&Answer::Number(x), None, error);
            assert_near(unknown, uniform);
        }
    }
}

#[test]
fn probabilities_are_prior_times_likelihood_of_those_left() {
    let table = kinds();
    let observed = [
        certainly(&table, "moon", &["present"]),
        seen(&table, "lamps", &["3"], Certainty::Possible),
    ];
    let identified = identify(&table, &observed);
    let probability: Vec<f64> = identified
        .candidates
        .iter()
        .map(|c| c.probability)
        .collect();
    // a is excluded by the moon. b: 2 · 0.99 · (0.7/2); c: 1 · 0.99 · 1/4, its lamps unknown.
    let (b, c) = (2.0 * 0.99 * 0.35, 0.99 * 0.25);
    assert_eq!(identified.candidates[0].against, [0]);
    assert_near(probability[0], 0.0);
    assert_near(probability[1], b / (b + c));
    assert_near(probability[2], c / (b + c));
}

#[test]
fn where_all_are_excluded_the_nearest_are_told_and_nothing_is_next() {
    let table = kinds();
    let observed = [
        certainly(&table, "moon", &["absent"]),
        certainly(&table, "height", &["232"]),
    ];
    let identified = identify(&table, &observed);
    assert!(identified.candidates.iter().all(|c| c.probability == 0.0));
    assert_eq!(identified.nearest(), [0, 2]);
    assert!(next_points(&table, &identified, &observed).is_empty());
}

#[test]
fn reasons_in_different_matrices_speak_of_blocks_in_different_conditions() {
    let two_blocks = design(
        r#"
matrices = [{ key = "key" }, { key = "sky" }]
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "sky" },
  { key = "buoy", ask = "A buoy?", kind = "presence", rests_on = "matrix", matrix = "key" },
]
states = [
  { key = "a", shows = { moon = "absent", buoy = "present" } },
  { key = "b", shows = { moon = "present", buoy = "absent" } },
]"#,
    );
    let table = table(&[&two_blocks]);
    let mixed = [
        certainly(&table, "moon", &["present"]),
        certainly(&table, "buoy", &["present"]),
    ];
    assert!(identify(&table, &mixed).may_be_mixed(&table));
    assert!(!identify(&table, &mixed[..1]).may_be_mixed(&table));
}

// What the next point is expected to tell.

#[test]
fn expected_information_is_that_of_the_published_example() {
    // Source: `tests/checks/information_gain.json` (Quinlan 1986, "Induction of decision trees",
    // Table 1): the gains of four attributes on two classes.
    let example: Json =
        serde_json::from_str(include_str!("../checks/information_gain.json")).unwrap();
    let columns: Vec<&str> = strings(&example["columns"]);
    let rows: Vec<Vec<&str>> = example["rows"]
        .as_array()
        .unwrap()
        .iter()
        .map(strings)
        .collect();
    let class = columns.iter().position(|c| *c == "class").unwrap();
    let distinct = |column: usize| -> Vec<&str> {
        let values: BTreeSet<&str> = rows.iter().map(|row| row[column]).collect();
        values.into_iter().collect()
    };
    let count = |test: &dyn Fn(&Vec<&str>) -> bool| -> f64 {
        f64::from(u32::try_from(rows.iter().filter(|row| test(row)).count()).unwrap())
    };
    let all = count(&|_| true);
    let classes = distinct(class);
    let shares: Vec<f64> = classes
        .iter()
        .map(|c| count(&|row| row[class] == *c) / all)
        .collect();
    for (attribute, published) in [
        ("outlook", 0.246),
        ("humidity", 0.151),
        ("windy", 0.048),
        ("temperature", 0.029),
    ] {
        let column = columns.iter().position(|c| *c == attribute).unwrap();
        let chances: Vec<Vec<f64>> = classes
            .iter()
            .map(|c| {
                let of_class = count(&|row| row[class] == *c);
                distinct(column)
                    .iter()
                    .map(|v| count(&|row| row[class] == *c && row[column] == *v) / of_class)
                    .collect()
            })
            .collect();
        let bits = information(&shares, &chances);
        assert!((bits - published).abs() < 0.001, "{attribute}: {bits}");
    }
    // H = 0.940 bits: an answer that names the class tells all of it.
    let telling = [vec![1.0, 0.0], vec![0.0, 1.0]];
    assert!((information(&shares, &telling) - 0.940).abs() < 0.001);
}

fn strings(list: &Json) -> Vec<&str> {
    list.as_array()
        .unwrap()
        .iter()
        .map(|v| v.as_str().unwrap())
        .collect()
}

/// Entropy in bits, by the crate `statrs`, which gives it in nats.
fn entropy(weights: &[f64]) -> f64 {
    let nats = Categorical::new(weights).unwrap().entropy().unwrap();
    nats / std::f64::consts::LN_2
}

#[test]
fn expected_information_is_the_expected_fall_in_entropy() {
    // H(p) - sum over v of P(v) H(p | v), with the entropies of the crate `statrs`.
    let table = kinds();
    let observed = [seen(&table, "moon", &["present"], Certainty::Probable)];
    let identified = identify(&table, &observed);
    let p: Vec<f64> = identified
        .candidates
        .iter()
        .map(|c| c.probability)
        .collect();
    let next = next_points(&table, &identified, &observed);
    assert_eq!(next.len(), 3);
    for next in next {
        let column = &table.points[next.point];
        let answers: Vec<Answer> = match &column.scale {
            Scale::Measure(measure) => {
                // 226, 227 … 252: from 232 - 3·2 to 246 + 3·2 in steps of 2/2.
                let grid = measure.grid();
                assert_eq!(grid.len(), 27);
                assert_eq!((grid[0], grid[26]), (226.0, 252.0));
                grid.into_iter().map(Answer::Number).collect()
            }
            scale => (0..scale.len())
                .map(|v| Answer::OneOf([v].into()))
                .collect(),
        };
        let chance = |candidate: usize, answer: &Answer| -> f64 {
            let likelihood =
                |a: &Answer| column.scale.likelihood(a, column.allows(candidate), 0.01);
            let total: f64 = answers.iter().map(likelihood).sum();
            likelihood(answer) / total
        };
        let mut expected = entropy(&p);
        for answer in &answers {
            let joint: Vec<f64> = (0..3).map(|c| p[c] * chance(c, answer)).collect();
            let total: f64 = joint.iter().sum();
            expected -= total * entropy(&joint);
        }
        assert_near(next.bits, expected);
    }
}

#[test]
fn ties_stand_in_the_order_of_the_record() {
    let twins = design(
        r#"
points = [
  { key = "z", ask = "Z?", kind = "presence", rests_on = "matrix" },
  { key = "dull", ask = "Dull?", kind = "presence", rests_on = "matrix" },
  { key = "a", ask = "A?", kind = "presence", rests_on = "matrix" },
]
states = [
  { key = "one", shows = { z = "absent", a = "present" } },
  { key = "two", shows = { z = "present", a = "absent" } },
]"#,
    );
    let table = table(&[&twins]);
    let next = next_points(&table, &identify(&table, &[]), &[]);
    let order: Vec<&str> = next
        .iter()
        .map(|n| table.points[n.point].key.as_str())
        .collect();
    assert_eq!(order, ["z", "a", "dull"]);
    assert_near(next[2].bits, 0.0);
}

// What separates.

/// A design with a state an item and a choice a test, from a matrix of `tests/checks`.
fn items_by_tests(matrix: &[Vec<Option<u64>>]) -> String {
    let tests = matrix.first().map_or(0, Vec::len);
    let points: Vec<String> = (0..tests)
        .map(|t| format!("{{ key = \"t{t}\", ask = \"?\", kind = \"choice\", rests_on = \"matrix\", values = {{ v0 = \"0\", v1 = \"1\", v2 = \"2\" }} }}"))
        .collect();
    let states: Vec<String> = matrix
        .iter()
        .enumerate()
        .map(|(item, row)| {
            let shows: Vec<String> = row
                .iter()
                .enumerate()
                .filter_map(|(t, v)| Some(format!("t{t} = \"v{}\"", (*v)?)))
                .collect();
            format!(
                "{{ key = \"s{item}\", shows = {{ {} }} }}",
                shows.join(", ")
            )
        })
        .collect();
    design(&format!(
        "points = [{}]\nstates = [{}]",
        points.join(",\n"),
        states.join(",\n")
    ))
}

#[test]
fn smallest_sets_are_those_of_the_worked_cases() {
    // Source: `tests/checks/separating.json` (constructed cases with proofs or exhaustive answers;
    // the Fano plane; minimum test collection, Garey and Johnson 1979, SP6).
    let cases: Json = serde_json::from_str(include_str!("../checks/separating.json")).unwrap();
    let cases = cases["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 7);
    for case in cases {
        let matrix: Vec<Vec<Option<u64>>> = case["matrix"]
            .as_array()
            .unwrap()
            .iter()
            .map(|row| row.as_array().unwrap().iter().map(Json::as_u64).collect())
            .collect();
        let found = separability(&table(&[&items_by_tests(&matrix)]));
        let name = &case["name"];
        let minimum = usize::try_from(case["minimum"].as_u64().unwrap()).unwrap();
        assert_eq!(found.smallest_set.len(), minimum, "{name}");
        assert!(found.exact, "{name}");
        let pairs: Vec<Json> = found
            .inseparable
            .iter()
            .map(|(a, b)| serde_json::json!([a, b]))
            .collect();
        assert_eq!(&Json::Array(pairs), &case["inseparable_pairs"], "{name}");
    }
}

/// Numbers that look random and are the same at every run (Lehmer's generator, Park and Miller
/// 1988).
struct Lehmer(u64);

impl Lehmer {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        usize::try_from(self.0).unwrap() % bound
    }
}

/// A small design made up at random, kept as plain lists beside its record.
struct MadeUp {
    /// For each point: whether it rests on the matrix, how many values it has, and its tolerance
    /// where it is a measure.
    points: Vec<(bool, usize, Option<f64>)>,
    /// What each state shows at each point: values, or one number.
    states: Vec<Vec<Option<Vec<usize>>>>,
    /// The states of each printing, and what it shows.
    printings: Vec<(Vec<usize>, Vec<Option<Vec<usize>>>)>,
}

impl MadeUp {
    fn new(numbers: &mut Lehmer) -> MadeUp {
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

    fn record(&self) -> String {
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
    fn candidates(&self) -> Vec<(usize, Option<usize>)> {
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

    /// What a candidate allows. States speak of matrix points only and printings of the others, so
    /// that the two never contradict each other.
    fn allows(
        &self,
        (state, printing): (usize, Option<usize>),
        point: usize,
    ) -> Option<&Vec<usize>> {
        let of_state = self.states[state][point].as_ref();
        of_state.or_else(|| self.printings[printing?].1[point].as_ref())
    }

    fn separates(
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

#[test]
fn separability_is_what_trying_everything_finds() {
    let mut numbers = Lehmer(5);
    let mut largest = 0;
    for _ in 0..120 {
        let made_up = MadeUp::new(&mut numbers);
        let table = table(&[&made_up.record()]);
        let found = separability(&table);
        let candidates = made_up.candidates();
        assert_eq!(table.candidates.len(), candidates.len());
        let mut pairs: Vec<Vec<usize>> = Vec::new();
        let mut inseparable = Vec::new();
        for (at, a) in candidates.iter().enumerate() {
            for (other, b) in candidates.iter().enumerate().skip(at + 1) {
                let separating: Vec<usize> = (0..made_up.points.len())
                    .filter(|point| made_up.separates(*a, *b, *point))
                    .collect();
                if separating.is_empty() {
                    inseparable.push((at, other));
                } else {
                    pairs.push(separating);
                }
            }
        }
        assert_eq!(found.inseparable, inseparable, "{}", made_up.record());
        // Every set of points: the fewest, and among those the first as lists.
        let sets = (0_u32..1 << made_up.points.len()).map(|bits| -> Vec<usize> {
            (0..made_up.points.len())
                .filter(|p| bits & (1 << p) != 0)
                .collect()
        });
        let smallest = sets
            .filter(|set| {
                pairs
                    .iter()
                    .all(|pair| pair.iter().any(|p| set.contains(p)))
            })
            .min_by(|a, b| (a.len(), a).cmp(&(b.len(), b)))
            .unwrap();
        assert_eq!(found.smallest_set, smallest, "{}", made_up.record());
        largest = largest.max(smallest.len());
    }
    assert!(
        largest >= 3,
        "the made-up designs are too plain to test anything"
    );
}

#[test]
fn beyond_24_points_the_set_is_gathered_and_said_to_be_so() {
    // 25 points, each of which tells one state from all others.
    let matrix: Vec<Vec<Option<u64>>> = (0..26)
        .map(|s| (0..25).map(|t| Some(u64::from(s == t))).collect())
        .collect();
    let found = separability(&table(&[&items_by_tests(&matrix)]));
    assert!(!found.exact);
    assert_eq!(found.smallest_set.len(), 25);
    assert!(found.inseparable.is_empty());
}

// What always holds.

fn random_observation(table: &DiagnosticTable, numbers: &mut Lehmer) -> Observed {
    let point = numbers.below(table.points.len());
    let answer = match &table.points[point].scale {
        Scale::Measure(_) => {
            Answer::Number(f64::from(u32::try_from(95 + numbers.below(20)).unwrap()))
        }
        scale => {
            let places = [numbers.below(scale.len()), numbers.below(scale.len())];
            Answer::OneOf(places.into())
        }
    };
    let certainty =
        [Certainty::Certain, Certainty::Probable, Certainty::Possible][numbers.below(3)];
    Observed {
        point,
        answer,
        certainty,
    }
}

#[test]
fn what_always_holds_of_an_identification() {
    let mut numbers = Lehmer(23);
    let mut excluded_all = 0;
    for _ in 0..80 {
        let table = table(&[&MadeUp::new(&mut numbers).record()]);
        let mut observed: Vec<Observed> = Vec::new();
        let mut before = identify(&table, &observed);
        for _ in 0..6 {
            let new = random_observation(&table, &mut numbers);
            if observed.iter().any(|o| o.point == new.point) {
                continue;
            }
            let is_unknown = table.points[new.point].classes.iter().all(Option::is_none);
            let is_certain = new.certainty == Certainty::Certain;
            let least = observed.is_empty();
            observed.insert(0, new);
            let now = identify(&table, &observed);
            excluded_all += usize::from(now.left().next().is_none());
            for (before, now) in before.candidates.iter().zip(&now.candidates) {
                // Adding an observation never brings a candidate back, and only a certain one
                // excludes.
                assert!(!before.is_excluded() || now.is_excluded());
                assert!(is_certain || before.is_excluded() == now.is_excluded());
                // Nothing comes from a point where nothing is known.
                if is_unknown {
                    assert_near(before.probability, now.probability);
                }
            }
            let total: f64 = now.candidates.iter().map(|c| c.probability).sum();
            let expected = if now.left().next().is_some() {
                1.0
            } else {
                0.0
            };
            assert_near(total, expected);
            // The order of the observations does not matter, to the last digit.
            let mut turned = observed.clone();
            turned.reverse();
            assert_eq!(identify(&table, &turned), now);
            for next in next_points(&table, &now, &observed) {
                let column = &table.points[next.point];
                let most = match &column.scale {
                    Scale::Measure(measure) => measure.grid().len(),
                    scale => scale.len(),
                };
                let most = f64::from(u32::try_from(most.max(1)).unwrap()).log2();
                assert!(next.bits >= 0.0 && next.bits <= most + 1e-9);
                if column.classes.iter().all(Option::is_none) {
                    assert_near(next.bits, 0.0);
                }
            }
            assert!(!least || now.candidates.len() == table.candidates.len());
            before = now;
        }
    }
    assert!(
        excluded_all > 0,
        "no random sheet was ever excluded from everything"
    );
}

// Rules of the trade.

/// A design whose artist's printing and later printing carry one and the same seal.
const SEALED: &str = r#"
points = [
  { key = "seal", ask = "A seal?", kind = "presence", rests_on = "mark" },
  { key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } },
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
]
states = [{ key = "a", shows = { moon = "absent" } }, { key = "b", shows = { moon = "present" } }]
printings = [
  { key = "own", kind = "artist", states = "all", shows = { seal = ["present", "absent"], sky = "graded" } },
  { key = "later", kind = "posthumous", states = "all", shows = { seal = "present", sky = "even" } },
]
"#;

/// Common practice, no source: seals and stamps survive the artist and are used on later printings.
#[test]
fn a_stamp_alone_never_proves_the_artists_own_printing() {
    let table = table(&[&design(SEALED)]);
    let stamped = left(&table, &[certainly(&table, "seal", &["present"])]);
    assert_eq!(stamped, ["a/own", "a/later", "b/own", "b/later"]);
    let identified = identify(&table, &[certainly(&table, "seal", &["present"])]);
    let own = identified.candidates[0].probability + identified.candidates[2].probability;
    assert!(own < 0.5, "{own}");
}

/// Common practice, no source: ink and paper are chosen for each sheet and may recur in any order.
#[test]
fn inking_never_separates_states() {
    let table = table(&[&design(SEALED)]);
    let graded = left(&table, &[certainly(&table, "sky", &["graded"])]);
    assert_eq!(graded, ["a/own", "b/own"]);
    // Two states of one printing are separated by nothing but the matrix, whatever is recorded.
    let wrongly = design(
        r#"
points = [{ key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } }]
states = [{ key = "a", shows = { sky = "even" } }, { key = "b", shows = { sky = "graded" } }]
printings = [{ key = "own", kind = "artist", states = "all" }]"#,
    );
    let (_, studies) = studied(&[&wrongly]);
    let study = &studies.designs[&key("1")];
    assert_eq!(study.separability.inseparable, [(0, 1)]);
    assert!(study.separability.smallest_set.is_empty());
}

/// Common practice, no source: what is trimmed, mounted or framed away tells nothing.
#[test]
fn a_trimmed_or_framed_place_never_counts_as_absent() {
    let sheets = "
-- records/designs/1/impressions/1.toml
status = \"located\"
observed = { moon = \"not-visible\", seal = \"not-visible\" }
-- records/designs/1/impressions/2.toml
status = \"located\"
observed = { moon = \"absent\" }
";
    let (catalogue, studies) = studied(&[&design(SEALED), sheets]);
    assert_eq!(record_left(&catalogue, &studies, 1), 4);
    assert_eq!(record_left(&catalogue, &studies, 2), 2);
}

/// Common practice, no source: a block not printed shows nothing of the state it was in.
#[test]
fn what_belongs_to_a_block_not_printed_tells_nothing() {
    let trial = design(
        r#"
matrices = [{ key = "key" }, { key = "sky" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "sky" }]
states = [{ key = "a", shows = { moon = "absent" } }, { key = "b", shows = { moon = "present" } }]"#,
    );
    let sheet = "
-- records/designs/1/impressions/1.toml
status = \"located\"
observed = { moon = \"absent\" }
blocks = { sky = \"not-printed\" }
";
    let (catalogue, studies) = studied(&[&trial, sheet]);
    assert_eq!(record_left(&catalogue, &studies, 1), 2);
}

/// How many candidates the record of an impression of design 1 leaves.
fn record_left(catalogue: &Catalogue, studies: &Studies, impression: u32) -> usize {
    let design = &catalogue.designs[&key("1")];
    let table = &studies.designs[&key("1")].table;
    let impression = &design.impressions[&impression];
    let observed = keyblock::study::identify::observed_on(table, design, impression);
    let identified: Identified = identify(table, &observed);
    identified.left().count()
}
