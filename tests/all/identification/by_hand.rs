//! Identification worked through by hand, and with a reference library.

use keyblock::model::certainty::Certainty;
use keyblock::study::identify::{Observed, identify};
use keyblock::study::index::{CandidateAt, PointAt, ValueAt};
use keyblock::study::next_point::next_points;
use keyblock::study::scale::{Answer, Scale};
use keyblock::study::table::DiagnosticTable;
use statrs::distribution::{Continuous, Normal};

use super::{assert_near, certainly, design, key, names, seen, table};

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

pub fn kinds() -> DiagnosticTable {
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
        Answer::OneOf([ValueAt::new(3)].into())
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
                    .likelihood(&observed.answer, column.allows(CandidateAt::new(c)), error)
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
                let allowed = column.allows(CandidateAt::new(candidate));
                let found = column.scale.likelihood(&answer, allowed, error);
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
    let against = &identified.candidates[CandidateAt::new(0)].against;
    assert_eq!(*against, [PointAt::new(0)]);
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
    assert_eq!(identified.nearest(), [0, 2].map(CandidateAt::new));
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
