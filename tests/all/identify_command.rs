//! `keyblock identify`, run as a program.

use std::path::Path;

use keyblock::model::point::EvidenceKind;
use keyblock::model::words::ClosedList;
use keyblock::study::grades::{Bearing, Fit};
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

/// On the richest design the sheet's own candidate comes to weigh most, alone, within five answers, whichever it
/// is, when the point that is named next is the one looked at; and it is never excluded.
#[test]
fn on_the_richest_design_the_right_candidate_leads_within_five_answers() {
    let folder = demonstration();
    // A sheet of each candidate, with the values of the candidate at each point.
    let sheets = [
        (
            "dark-sky",
            "own",
            "paper=mulberry sea=green-grey beam=absent crack=none buoy=present gulls=3 image-height=246 monogram=present",
        ),
        (
            "beam-cut",
            "own",
            "paper=mulberry sea=green-grey beam=present crack=edge buoy=present gulls=3 image-height=246 monogram=present",
        ),
        (
            "buoy-gone",
            "own",
            "paper=mulberry sea=green-grey beam=present crack=to-the-mast buoy=absent gulls=5 image-height=246 monogram=present",
        ),
        (
            "cut-down",
            "quillam",
            "paper=simili-japan sea=blue crack=to-the-mast image-height=232 monogram=present gulls=5 buoy=absent beam=present",
        ),
        (
            "monogram-gone",
            "memorial",
            "paper=wove sea=slate crack=to-the-tower stamp=estate signature=stamped lamp=present sky=graded image-height=232 monogram=absent gulls=5 buoy=absent beam=present",
        ),
        (
            "monogram-gone",
            "rope-walk",
            "paper=wove sea=slate crack=to-the-tower stamp=none signature=none lamp=absent sky=even image-height=232 monogram=absent gulls=5 buoy=absent beam=present",
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
            let weight = |at: usize| candidates[at]["weight"].as_f64().unwrap();
            let is_right = |c: &&Value| c["state"] == state && c["printing"] == printing;
            assert_eq!(candidates.iter().find(is_right).unwrap()["excluded"], false);
            if weight(0) > 20.0 * weight(1) {
                assert!(is_right(&&candidates[0]), "{seen:?}");
                break;
            }
            assert!(seen.len() < 5, "{state} in {printing} after {seen:?}");
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
    assert_eq!(document["candidates"][1]["excluded_by"], json!(["height"]));
    assert_eq!(
        document["candidates"][1]["against"],
        json!(["lamps", "height"])
    );
    assert_eq!(document["candidates"][1]["for"], json!([]));
    assert_eq!(document["candidates"][0]["for"], json!(["lamps", "height"]));
    assert_eq!(
        document["states"],
        json!([
            { "state": "a", "numeral": "i/ii", "weight": 1.0, "excluded": false },
            { "state": "b", "numeral": "ii/ii", "weight": 0.0, "excluded": true },
        ])
    );
    assert_eq!(
        document["printings"],
        json!([{ "printing": null, "weight": 1.0, "excluded": false }])
    );
    assert_eq!(document["next"].as_array().unwrap().len(), 1);
    assert_eq!(
        document["separability"],
        json!({ "inseparable": [], "smallest_set": ["moon"], "exact": true })
    );
}

#[test]
fn what_cannot_be_seen_weighs_nothing_and_is_not_asked_again() {
    let folder = lay_down(&[QUAY]);
    let words = [
        "1",
        "--see",
        "moon=not-visible",
        "lamps=not-applicable",
        "height=245.5",
    ];
    let document = document(text(folder.path()), &words);
    assert_eq!(document["seen"][0]["is"], json!(["not-visible"]));
    assert_eq!(document["seen"][1]["is"], json!(["not-applicable"]));
    assert_eq!(document["next"], json!([]));
    assert_eq!(document["candidates"][1]["against"], json!(["height"]));
}

/// The artist's own impression that stayed in the estate bears its stamp: the stamp alone leaves it.
#[test]
fn the_stamp_of_the_estate_leaves_the_artists_own_impressions() {
    let document = document(&demonstration(), &["7", "--see", "stamp=estate"]);
    let candidates = document["candidates"].as_array().unwrap();
    assert!(candidates.iter().all(|c| c["excluded"] == false));
    let own = |c: &&Value| c["printing"] == "own";
    assert_eq!(candidates.iter().filter(own).count(), 3);
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
        "design 1 has no point “moom”",
        "the nearest is “moon”; the points are moon, lamps, height",
        "“moon” has no value “presemt”",
        "the nearest is “present”; the values are present, absent",
        "“few” is not a number of “lamps”",
        "“1,2” is not a measurement of “height”",
        "“height” is measured; “!=” says nothing there",
        "“moon” says of no point what was seen",
        "“surely” is not a certainty",
        "every value of “moon” is ruled out",
    ] {
        assert!(ran.err.contains(told), "{told}\n{}", ran.err);
    }
    let twice = identify(
        folder,
        &["1", "--see", "moon=present", "--see", "moon=absent"],
    );
    assert_eq!(twice.code, Some(2));
    assert!(twice.err.contains("“moon” is given twice"));
    let unknown = identify(folder, &["2"]);
    assert_eq!(unknown.code, Some(2));
    assert!(unknown.err.contains("there is no design “2”"));
}

#[test]
fn people_are_told_the_evidence_and_never_what_it_is() {
    let folder = lay_down(&[QUAY]);
    let folder = text(folder.path());
    let told = identify(folder, &["1", "--see", "moon=present"]).out;
    for line in [
        "State\n  ii/ii b: fits best\n      for (matrix): A moon? present; recorded: present\n",
        "  i/ii a: excluded\n      excludes (matrix): A moon? present; recorded: absent\n",
        "What would change this\n  ii/ii b is recorded with:\n      How many lamps? 3; anything else excludes it\n",
        "It may be none of these: a recut, a reproduction, or a state or printing not yet described.",
        "not an authentication",
    ] {
        assert!(told.contains(line), "{line}\n{told}");
    }
    for never in ["%", "bits", "genuine"] {
        assert!(!told.contains(never), "{never}\n{told}");
    }
    // All excluded is an answer, and so exit code 0.
    let none = identify(folder, &["1", "--see", "moon=present", "height=246"]);
    assert_eq!(none.code, Some(0));
    assert!(none.out.contains("Nothing recorded fits"), "{}", none.out);
    // Nothing seen, and no terminal for the questions.
    let all = identify(folder, &["1"]).out;
    assert!(
        all.contains("What was seen does not distinguish the states."),
        "{all}"
    );
    assert!(all.contains("Look next"), "{all}");
    assert!(!all.contains("What would change this"), "{all}");
}

#[test]
fn a_recorded_recut_is_named_with_what_tells_it() {
    let recut = format!(
        "{QUAY}printings = [{{ key = \"copy\", name = \"The copy\", kind = \"recut\", shows = {{ lamps = 4 }} }}]\n"
    );
    let folder = lay_down(&[&recut]);
    let told = identify(text(folder.path()), &["1", "--see", "moon=present"]).out;
    assert!(
        told.contains("The copy (recut): How many lamps? 4"),
        "{told}"
    );
}

/// What the terminal says of a fit, a bearing and a kind of evidence, the English pages say too.
#[test]
fn the_terminal_and_the_english_pages_have_one_wording() {
    let words = include_str!("../../themes/laid/words/en.ftl");
    let fits = Fit::ALL
        .iter()
        .map(|(fit, ..)| (format!("fit-{}", fit.word()), fit.in_english()));
    let bearings = Bearing::ALL
        .iter()
        .map(|of| (format!("bearing-{of}"), of.word()));
    let kinds = EvidenceKind::ALL
        .iter()
        .map(|of| (format!("evidence-{of}"), of.word()));
    let weight = [("evidence-no-weight".to_owned(), "not weighed")];
    for (id, said) in fits.chain(bearings).chain(kinds).chain(weight) {
        let line = format!("{id} = {said}");
        assert!(words.lines().any(|declared| declared == line), "{line}");
    }
}
