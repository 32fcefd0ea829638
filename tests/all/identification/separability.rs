//! What separates candidates, and the fewest points that do.

use keyblock::study::separate::separability;
use serde_json::Value as Json;

use super::made_up::{Lehmer, MadeUp};
use super::{design, table};

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
    let cases: Json = serde_json::from_str(include_str!("../../checks/separating.json")).unwrap();
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
