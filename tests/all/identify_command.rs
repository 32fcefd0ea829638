//! `keyblock identify`, run as a program.

use std::path::Path;

use serde_json::{Value, json};

use crate::program::{Ran, keyblock, text};
use crate::small::lay_down;

fn demonstration() -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-site");
    text(&folder).to_owned()
}

fn identify(folder: &str, words: &[&str]) -> Ran {
    let mut all = vec!["identify"];
    all.extend(words);
    all.extend(["--in", folder]);
    keyblock(&all)
}

fn document(folder: &str, words: &[&str]) -> Value {
    let mut all = words.to_vec();
    all.push("--json");
    let ran = identify(folder, &all);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).unwrap()
}

/// The richest design narrows to one candidate in at most four answers, whichever it is, when the
/// point that is named next is the one looked at.
#[test]
fn the_richest_design_narrows_to_one_in_four_answers_by_what_is_named_next() {
    let folder = demonstration();
    // A sheet of each candidate, with the values of the candidate at each point.
    let sheets = [
        (
            "dark-sky",
            "own",
            "paper=mulberry sea=green-grey beam=absent crack=none buoy=present gulls=3",
        ),
        (
            "beam-cut",
            "own",
            "paper=mulberry sea=green-grey beam=present crack=edge buoy=present gulls=3",
        ),
        (
            "buoy-gone",
            "own",
            "paper=mulberry sea=green-grey beam=present crack=to-the-mast buoy=absent gulls=5",
        ),
        (
            "cut-down",
            "quillam",
            "paper=simili-japan sea=blue crack=to-the-mast",
        ),
        (
            "monogram-gone",
            "memorial",
            "paper=wove sea=slate crack=to-the-tower stamp=estate signature=stamped lamp=present sky=graded",
        ),
        (
            "monogram-gone",
            "rope-walk",
            "paper=wove sea=slate crack=to-the-tower stamp=none signature=none lamp=absent sky=even",
        ),
    ];
    for (state, printing, shows) in sheets {
        let mut seen: Vec<&str> = Vec::new();
        loop {
            let mut words = vec!["7"];
            if !seen.is_empty() {
                words.push("--see");
                words.extend(&seen);
            }
            let document = document(&folder, &words);
            let candidates = document["candidates"].as_array().unwrap();
            let left: Vec<&Value> = candidates
                .iter()
                .filter(|c| c["excluded"] == false)
                .collect();
            if left.len() == 1 {
                assert_eq!(left[0]["state"], state);
                assert_eq!(left[0]["printing"], printing);
                assert_eq!(left[0]["probability"], 1.0);
                break;
            }
            assert!(
                seen.len() < 4,
                "{state} in {printing} is still one of {}",
                left.len()
            );
            let asked = document["next"][0]["point"].as_str().unwrap();
            let answer = shows
                .split(' ')
                .find(|s| s.split('=').next() == Some(asked));
            seen.push(
                answer.unwrap_or_else(|| panic!("{state}: nobody said what it shows at {asked}")),
            );
        }
    }
}

const QUAY: &str = r#"
-- records/designs/1/design.toml
number = "12a"
titles = [{ text = "A Quay" }]
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
  { key = "height", ask = "How tall?", kind = "measure", unit = "mm", tolerance = 2, rests_on = "matrix" },
]
states = [
  { key = "a", shows = { moon = "absent", lamps = 2, height = 246 } },
  { key = "b", shows = { moon = "present", lamps = 3, height = 232 } },
]
"#;

#[test]
fn the_document_has_the_shape_that_is_promised() {
    let folder = lay_down(&[QUAY]);
    let document = document(
        text(folder.path()),
        &["1", "--see", "lamps!=3:probable", "--see", "height=245.5"],
    );
    assert_eq!(document["design"], "1");
    assert_eq!(
        document["seen"],
        json!([
            { "point": "lamps", "is": [2, "other"], "certainty": "probable" },
            { "point": "height", "is": 245.5, "certainty": "certain" },
        ])
    );
    assert_eq!(document["candidates"][0]["numeral"], "i/ii");
    assert_eq!(document["candidates"][0]["printing"], Value::Null);
    assert_eq!(document["candidates"][1]["excluded"], true);
    assert_eq!(document["candidates"][1]["against"], json!(["height"]));
    assert_eq!(document["next"].as_array().unwrap().len(), 1);
    assert_eq!(
        document["separability"],
        json!({ "inseparable": [], "smallest_set": ["moon"], "exact": true })
    );
}

#[test]
fn a_design_is_found_by_the_number_that_readers_see() {
    let folder = lay_down(&[QUAY]);
    assert_eq!(document(text(folder.path()), &["12a"])["design"], "1");
}

#[test]
fn every_word_that_makes_no_sense_is_told_with_what_there_is() {
    let folder = lay_down(&[QUAY]);
    let folder = text(folder.path());
    let ran = identify(
        folder,
        &[
            "1",
            "--see",
            "moom=present",
            "moon=presemt",
            "lamps=few",
            "height=1,2",
            "height!=3",
            "moon",
            "moon=present:surely",
            "moon!=present,absent",
        ],
    );
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.is_empty());
    for told in [
        "design 1 has no point `moom`",
        "the nearest is `moon`; the points are moon, lamps, height",
        "`moon` has no value `presemt`",
        "the nearest is `present`; the values are present, absent",
        "`few` is no number of `lamps`",
        "`1,2` is no measurement of `height`",
        "`height` is measured; `!=` says nothing there",
        "`moon` says of no point what was seen",
        "`surely` is no certainty",
        "every value of `moon` is ruled out",
    ] {
        assert!(ran.err.contains(told), "{told}\n{}", ran.err);
    }
    let twice = identify(
        folder,
        &["1", "--see", "moon=present", "--see", "moon=absent"],
    );
    assert_eq!(twice.code, Some(2));
    assert!(twice.err.contains("`moon` is given twice"));
    let unknown = identify(folder, &["2"]);
    assert_eq!(unknown.code, Some(2));
    assert!(unknown.err.contains("there is no design `2`"));
}

#[test]
fn people_are_told_what_it_is_consistent_with_and_never_what_it_is() {
    let folder = lay_down(&[QUAY]);
    let folder = text(folder.path());
    let told = identify(folder, &["1", "--see", "moon=present"]).out;
    assert!(told.contains("Consistent with\n 100 %  ii/ii b"), "{told}");
    assert!(
        told.contains("moon: shows absent; present was seen"),
        "{told}"
    );
    assert!(told.contains("no authentication"));
    assert!(!told.contains("genuine"));
    // All excluded is an answer, and so exit code 0.
    let none = identify(folder, &["1", "--see", "moon=present", "height=246"]);
    assert_eq!(none.code, Some(0));
    assert!(
        none.out.contains("Every state and printing is excluded"),
        "{}",
        none.out
    );
    // Nothing seen, and no terminal for the questions.
    let all = identify(folder, &["1"]).out;
    assert!(all.contains("Look next"), "{all}");
}
