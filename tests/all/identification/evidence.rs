//! The evidence as it is put to people: grades, the two axes, and what would change the answer.

use keyblock::model::certainty::Certainty;
use keyblock::model::key::Key;
use keyblock::study::evidence::{Evidence, EvidenceRow, Fit, Grade, overturning, weighs};
use keyblock::study::identify::{Observed, identify};
use keyblock::study::next_point::next_points;
use keyblock::study::table::DiagnosticTable;

use super::{certainly, design, seen, table};

/// Kass and Raftery 1995, "Bayes Factors", Journal of the American Statistical Association 90, p. 777: a
/// Bayes factor of 1 to 3 is not worth more than a bare mention, of 3 to 20 positive, of 20 to 150 strong,
/// above 150 very strong evidence (from memory).
#[test]
fn grades_are_those_of_the_published_table() {
    for (ratio, grade) in [
        (0.2, Grade::Level),
        (1.0, Grade::Level),
        (3.0, Grade::Level),
        (3.01, Grade::Behind),
        (20.0, Grade::Behind),
        (20.1, Grade::FarBehind),
        (150.0, Grade::FarBehind),
        (150.1, Grade::VeryFarBehind),
        (1e30, Grade::VeryFarBehind),
    ] {
        assert_eq!(Grade::of(ratio), grade, "{ratio}");
    }
}

const QUAY: &str = r#"
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
  { key = "crack", ask = "How far does the crack run?", kind = "stage", rests_on = "matrix", stages = ["none", "short", "long"] },
  { key = "paper", ask = "What paper?", kind = "choice", rests_on = "paper", values = { laid = "laid", wove = "wove", japan = "japan" } },
  { key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } },
  { key = "stamp", ask = "Which stamp?", kind = "choice", rests_on = "mark", values = { none = "none", estate = "the estate's", seal = "the seal" } },
]
states = [
  { key = "dark", shows = { moon = "absent", lamps = 2, crack = "none" } },
  { key = "moonlit", shows = { moon = "present", lamps = 3, crack = ["short", "long"] } },
]
printings = [
  { key = "own", kind = "artist", states = "all", shows = { paper = "laid", sky = "graded", stamp = ["none", "seal"] } },
  { key = "estate", kind = "posthumous", states = ["moonlit"], shows = { paper = "wove", sky = "even", stamp = "estate" } },
  { key = "copy", kind = "recut", shows = { moon = "present", lamps = 4 } },
]
"#;

fn quay() -> DiagnosticTable {
    table(&[&design(QUAY)])
}

fn evidence(table: &DiagnosticTable, observed: &[Observed]) -> Evidence {
    Evidence::of(table, observed, &identify(table, observed))
}

fn row<'e>(rows: &'e [EvidenceRow], key: Option<&str>) -> &'e EvidenceRow {
    let has_key = |row: &&EvidenceRow| row.key.as_ref().map(Key::as_str) == key;
    rows.iter().find(has_key).unwrap()
}

fn points(table: &DiagnosticTable, row: &[keyblock::study::index::PointAt]) -> Vec<String> {
    row.iter()
        .map(|at| table.points[*at].key.to_string())
        .collect()
}

#[test]
fn state_and_printing_are_answered_apart_and_the_strongest_evidence_stands_first() {
    let table = quay();
    let seen = [
        certainly(&table, "stamp", &["estate"]),
        certainly(&table, "paper", &["wove"]),
        certainly(&table, "moon", &["present"]),
        certainly(&table, "crack", &["long"]),
    ];
    let found = evidence(&table, &seen);
    let dark = row(&found.states, Some("dark"));
    assert_eq!(dark.fit, Fit::Excluded);
    assert_eq!(points(&table, &dark.excluded_by), ["moon"]);
    assert_eq!(points(&table, &dark.against), ["moon", "crack"]);
    let moonlit = row(&found.states, Some("moonlit"));
    // The recut, which has no state of the design, shows the moon as well.
    assert_eq!(moonlit.fit, Fit::Graded(Grade::Level));
    assert_eq!(points(&table, &moonlit.in_favour), ["moon", "crack"]);
    // Under a printing stands what it adds itself, not what its state shows.
    let estate = row(&found.printings, Some("estate"));
    assert_eq!(points(&table, &estate.in_favour), ["paper", "stamp"]);
    let own = row(&found.printings, Some("own"));
    assert_eq!(points(&table, &own.against), ["paper", "stamp"]);
    assert!(own.excluded_by.is_empty());
    assert!(matches!(own.fit, Fit::Graded(grade) if grade > Grade::Level));
    // Of a recut nothing is recorded at the marks: it is compared where something is.
    assert_eq!(
        row(&found.printings, Some("copy")).fit,
        Fit::Graded(Grade::Level)
    );
}

/// Common practice, no source: a stamp, a signature or old paper can be added or kept; none of them proves who
/// printed a sheet.
#[test]
fn a_stamp_a_signature_or_an_old_paper_alone_excludes_nothing() {
    let table = quay();
    for (point, value) in [
        ("stamp", "estate"),
        ("paper", "wove"),
        ("sky", "even"),
        ("crack", "long"),
    ] {
        let seen = [certainly(&table, point, &[value])];
        assert_eq!(identify(&table, &seen).left().count(), 4, "{point}");
        let found = evidence(&table, &seen);
        assert!(
            found
                .states
                .iter()
                .chain(&found.printings)
                .all(|row| row.fit != Fit::Excluded)
        );
    }
    let stamped = [certainly(&table, "stamp", &["estate"])];
    let own = evidence(&table, &stamped);
    // However great the ratio, marks alone put a printing no further than behind.
    assert_eq!(
        row(&own.printings, Some("own")).fit,
        Fit::Graded(Grade::Behind)
    );
    let three = ["stamp", "paper", "sky"].map(|point| {
        let value = [("stamp", "estate"), ("paper", "wove"), ("sky", "even")];
        let value = value.iter().find(|(p, _)| *p == point).unwrap().1;
        certainly(&table, point, &[value])
    });
    let own = evidence(&table, &three);
    assert_eq!(
        row(&own.printings, Some("own")).fit,
        Fit::Graded(Grade::FarBehind)
    );
}

#[test]
fn the_editors_reason_makes_a_mark_decide_and_straying_takes_it_from_the_matrix() {
    let deciding = QUAY.replace("rests_on = \"mark\"", "rests_on = \"mark\", decides = \"the stamp was cut in 1961 for this edition and lost in 1963\"");
    let table = table(&[&design(&deciding)]);
    let stamped = [certainly(&table, "stamp", &["estate"])];
    let found = evidence(&table, &stamped);
    assert_eq!(row(&found.printings, Some("own")).fit, Fit::Excluded);
    // The matrix does not exclude the dark state; there is no recorded printing of it that fits.
    assert_eq!(row(&found.states, Some("dark")).fit, Fit::NoPrintingFits);
    let straying = QUAY.replace(
        "{ key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\" }",
        "{ key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\", strays = 0.1 }",
    );
    let table = super::table(&[&design(&straying)]);
    let moon = [certainly(&table, "moon", &["present"])];
    assert!(
        identify(&table, &moon)
            .candidates
            .iter()
            .all(|c| !c.is_excluded())
    );
}

#[test]
fn what_distinguishes_nothing_is_said_and_not_graded() {
    let table = quay();
    let nothing = evidence(&table, &[]);
    assert!(!nothing.tells());
    assert!(nothing.states.iter().all(|row| row.fit == Fit::NothingTold));
    // A stamp is recorded of no state, so the states are not compared by it.
    let stamped = evidence(&table, &[certainly(&table, "stamp", &["estate"])]);
    assert!(!Evidence::distinguishes(&stamped.states));
    assert!(Evidence::distinguishes(&stamped.printings));
    assert_eq!(
        row(&stamped.states, Some("dark")).fit,
        Fit::NothingToCompare
    );
}

#[test]
fn an_only_candidate_says_where_nothing_is_recorded_of_it() {
    let table = quay();
    let seen = [
        certainly(&table, "lamps", &["4"]),
        certainly(&table, "sky", &["even"]),
    ];
    let found = evidence(&table, &seen);
    let best = found.best.unwrap();
    assert_eq!(
        table.candidates[best].printing.as_ref().unwrap().as_str(),
        "copy"
    );
    assert_eq!(points(&table, &found.unrecorded), ["sky"]);
}

#[test]
fn what_would_change_the_answer_is_named_the_deciding_points_first() {
    let table = quay();
    let seen = [
        seen(&table, "moon", &["present"], Certainty::Probable),
        certainly(&table, "stamp", &["estate"]),
    ];
    let identified = identify(&table, &seen);
    let found = Evidence::of(&table, &seen, &identified);
    let next = next_points(&table, &identified, &seen);
    let changing = overturning(&table, &seen, &found, &next);
    let named: Vec<(String, bool, bool)> = changing
        .iter()
        .map(|o| {
            (
                table.points[o.point].key.to_string(),
                o.would_exclude,
                o.is_uncertain,
            )
        })
        .collect();
    // The moon was seen, but not for certain; the lamps decide; the rest only weighs.
    assert_eq!(named[0], ("moon".to_owned(), true, true));
    assert_eq!(named[1], ("lamps".to_owned(), true, false));
    assert!(
        named[2..]
            .iter()
            .all(|(_, would_exclude, _)| !would_exclude)
    );
    assert_eq!(named.len(), 5);
}

/// A point that only weighs was not seen for certain: looked at again, it may speak against the best.
#[test]
fn every_point_that_was_not_seen_for_certain_is_to_be_looked_at_again() {
    let table = quay();
    let seen = [
        certainly(&table, "moon", &["present"]),
        seen(&table, "crack", &["short"], Certainty::Possible),
        seen(&table, "paper", &["laid"], Certainty::Probable),
    ];
    let identified = identify(&table, &seen);
    let found = Evidence::of(&table, &seen, &identified);
    let next = next_points(&table, &identified, &seen);
    let again = overturning(&table, &seen, &found, &next);
    let again = again.iter().filter(|o| o.is_uncertain);
    let again: Vec<_> = again
        .map(|o| table.points[o.point].key.to_string())
        .collect();
    assert_eq!(again, ["crack", "paper"]);
}

/// By hand: of three values two are allowed, so the chance of error is at most one in three; "possible" at a point that
/// rests on inking errs in 1 - 0.7 · 0.9 = 0.37 of the cases, and then what was seen tells nothing.
#[test]
fn an_observation_that_is_too_uncertain_is_for_or_against_without_weight() {
    let table = table(&[&design(
        r#"
points = [{ key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded", wiped = "wiped" } }]
printings = [
  { key = "own", kind = "artist", shows = { sky = ["graded", "wiped"] } },
  { key = "late", kind = "restrike", shows = { sky = "even" } },
]
"#,
    )]);
    let weighed = |value: &str, certainty: Certainty| {
        let seen = [seen(&table, "sky", &[value], certainty)];
        let candidates = table.candidates.indexes();
        let weighed = candidates.map(|at| weighs(&table, &seen[0], at));
        let against = identify(&table, &seen).candidates;
        let against = against.iter().map(|c| !c.against.is_empty());
        weighed.zip(against).collect::<Vec<(bool, bool)>>()
    };
    // Of each printing: whether it weighs, and whether it is against.
    assert_eq!(
        weighed("even", Certainty::Certain),
        [(true, true), (true, false)]
    );
    assert_eq!(
        weighed("even", Certainty::Possible),
        [(false, true), (true, false)]
    );
    assert_eq!(
        weighed("graded", Certainty::Possible),
        [(false, false), (true, true)]
    );
}

/// Two candidates of one weight: the one named first is no better.
#[test]
fn candidates_that_weigh_as_much_as_the_best_are_counted() {
    let table = quay();
    assert_eq!(
        evidence(&table, &[certainly(&table, "moon", &["absent"])]).alike,
        1
    );
    assert_eq!(
        evidence(&table, &[certainly(&table, "moon", &["present"])]).alike,
        3
    );
}
