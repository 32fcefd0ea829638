//! The points that separate candidates, and the smallest sets of them.

use keyblock::study::index::CandidateAt;
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
            .map(|(a, b)| serde_json::json!([a.index(), b.index()]))
            .collect();
        assert_eq!(&Json::Array(pairs), &case["inseparable_pairs"], "{name}");
    }
}

/// Six patients, described by headache, muscle pain and temperature, each with or without flu.
const PATIENTS: [([&str; 3], &str); 6] = [
    (["present", "present", "normal"], "well"),
    (["present", "present", "high"], "flu"),
    (["present", "present", "very-high"], "flu"),
    (["absent", "present", "normal"], "well"),
    (["absent", "absent", "high"], "well"),
    (["absent", "present", "very-high"], "flu"),
];

/// The patients as states of two printings, the symptoms (by number, in that order) as points that
/// rest on inking: such a point separates printings, never two states of one.
fn patients(symptoms: &[usize]) -> String {
    let point = |symptom: &usize| match symptom {
        0 => "{ key = \"headache\", ask = \"?\", kind = \"presence\", rests_on = \"inking\" }",
        1 => "{ key = \"muscle-pain\", ask = \"?\", kind = \"presence\", rests_on = \"inking\" }",
        _ => {
            "{ key = \"temperature\", ask = \"?\", kind = \"choice\", rests_on = \"inking\", values = { normal = \"normal\", high = \"high\", very-high = \"very high\" } }"
        }
    };
    let key = |symptom: usize| ["headache", "muscle-pain", "temperature"][symptom];
    let points: Vec<&str> = symptoms.iter().map(point).collect();
    let states: Vec<String> = (1..)
        .zip(&PATIENTS)
        .map(|(n, (shown, _))| {
            let shows: Vec<String> = symptoms
                .iter()
                .map(|s| format!("{} = \"{}\"", key(*s), shown[*s]))
                .collect();
            format!("{{ key = \"e{n}\", shows = {{ {} }} }}", shows.join(", "))
        })
        .collect();
    let of = |group: &str| -> String {
        let members = (1..).zip(&PATIENTS).filter(|(_, (_, g))| *g == group);
        let members: Vec<String> = members.map(|(n, _)| format!("\"e{n}\"")).collect();
        format!(
            "{{ key = \"{group}\", kind = \"artist\", states = [{}] }}",
            members.join(", ")
        )
    };
    design(&format!(
        "points = [{}]\nstates = [{}]\nprintings = [{}, {}]",
        points.join(",\n"),
        states.join(",\n"),
        of("flu"),
        of("well")
    ))
}

/// Source: Pawlak, Grzymala-Busse, Slowinski and Ziarko 1995, "Rough sets", Communications of the
/// ACM 38 (11), the table of six patients and its two reducts, headache with temperature and muscle
/// pain with temperature; temperature is in both (from memory; the table was compared with a
/// transcription).
#[test]
fn the_published_reducts_are_the_smallest_sets() {
    let smallest = |symptoms: &[usize]| {
        let table = table(&[&patients(symptoms)]);
        let found = separability(&table);
        let group = |at: CandidateAt| table.candidates[at].printing.clone();
        let untold = found
            .inseparable
            .iter()
            .filter(|(a, b)| group(*a) != group(*b));
        let set: Vec<String> = found
            .smallest_set
            .iter()
            .map(|at| table.points[*at].key.to_string())
            .collect();
        (set, untold.count())
    };
    let reduct = |words: [&str; 2]| words.map(str::to_owned).to_vec();
    assert_eq!(
        smallest(&[0, 1, 2]),
        (reduct(["headache", "temperature"]), 0)
    );
    assert_eq!(
        smallest(&[1, 0, 2]),
        (reduct(["muscle-pain", "temperature"]), 0)
    );
    // Each reduct alone separates flu from the rest, and no set without the temperature does.
    assert_eq!(smallest(&[0, 2]).1, 0);
    assert_eq!(smallest(&[1, 2]).1, 0);
    assert!(smallest(&[0, 1]).1 > 0);
    assert!(smallest(&[2]).1 > 0);
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
        let (mut inseparable, mut undecided) = (Vec::new(), Vec::new());
        for (at, a) in candidates.iter().enumerate() {
            for (other, b) in candidates.iter().enumerate().skip(at + 1) {
                let separating: Vec<usize> = (0..made_up.points.len())
                    .filter(|point| made_up.separates(*a, *b, *point))
                    .collect();
                let decides = |point: &usize| {
                    let point = &made_up.points[*point];
                    let is_plain = !point.is_stage && point.strays.is_none();
                    point.decides || (point.is_matrix() && is_plain)
                };
                if separating.is_empty() {
                    inseparable.push((at, other));
                    continue;
                }
                if !separating.iter().any(decides) {
                    undecided.push((at, other));
                }
                pairs.push(separating);
            }
        }
        let pairs_found = found.inseparable.iter();
        let pairs_found: Vec<_> = pairs_found.map(|(a, b)| (a.index(), b.index())).collect();
        assert_eq!(pairs_found, inseparable, "{}", made_up.record());
        let only_likelier: Vec<(usize, usize)> = found
            .only_likelier
            .iter()
            .map(|(a, b)| (a.index(), b.index()))
            .collect();
        assert_eq!(only_likelier, undecided, "{}", made_up.record());
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
        let set: Vec<usize> = found.smallest_set.iter().map(|p| p.index()).collect();
        assert_eq!(set, smallest, "{}", made_up.record());
        largest = largest.max(smallest.len());
    }
    assert!(
        largest >= 3,
        "the made-up designs are too plain to test anything"
    );
}

#[test]
fn beyond_24_points_the_set_is_gathered_and_said_to_be_so() {
    // 25 points, each of which separates one state from all others.
    let matrix: Vec<Vec<Option<u64>>> = (0..26)
        .map(|s| (0..25).map(|t| Some(u64::from(s == t))).collect())
        .collect();
    let found = separability(&table(&[&items_by_tests(&matrix)]));
    assert!(!found.exact);
    assert_eq!(found.smallest_set.len(), 25);
    assert!(found.inseparable.is_empty());
}
