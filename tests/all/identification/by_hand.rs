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
fn a_recut_and_a_printing_without_states_are_candidates_without_a_state() {
    let recut = design(
        "states = [{ key = \"a\" }, { key = \"b\" }]\nprintings = [{ key = \"copy\", kind = \"recut\", states = [\"a\"] }]",
    );
    assert_eq!(names(&table(&[&recut])), ["a/–", "b/–", "–/copy"]);
    let without = design(
        "printings = [{ key = \"own\", kind = \"artist\" }, { key = \"later\", kind = \"restrike\" }]",
    );
    let table = table(&[&without]);
    assert_eq!(names(&table), ["–/own", "–/later"]);
    assert_eq!((table.states.len(), table.printings.len()), (1, 2));
    assert_eq!(table.states[0].key, None);
}

/// "Every printing of a design none of whose states stands is a candidate with state none and needs no `states`"
/// (docs/definitions.md, "Candidates"); its kind may be unknown.
#[test]
fn printings_are_candidates_where_no_state_stands_and_no_kind_is_known() {
    let given_up = design(
        "states = [{ key = \"a\", standing = \"withdrawn\", why = \"A flaw of the paper.\" }]\n\
         printings = [{ key = \"own\" }, { key = \"later\", states = [\"a\"] }]",
    );
    assert_eq!(names(&table(&[&given_up])), ["–/own", "–/later"]);
    let of_states =
        design("states = [{ key = \"a\" }]\nprintings = [{ key = \"own\", states = \"all\" }]");
    assert_eq!(names(&table(&[&of_states])), ["a/own"]);
}

/// Every candidate begins alike, however many sheets of each are known.
#[test]
fn known_sheets_do_not_weigh() {
    let identified = identify(&kinds(), &[]);
    for candidate in &identified.candidates {
        assert_near(candidate.weight, 1.0 / 3.0);
    }
}

#[test]
fn a_count_takes_what_states_and_printings_show_and_other() {
    let table = kinds();
    let lamps = table.point(&key("lamps")).unwrap();
    // 5 was seen on an impression, which makes it no value of its own.
    assert_eq!(lamps.scale, Scale::Counts(vec![2, 3]));
    assert_eq!(lamps.scale.len(), 3);
    assert_eq!(
        certainly(&table, "lamps", &["5"]).answer,
        Answer::OneOf([ValueAt::new(2)].into())
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
    // V = {2, 3, other}; a allows {2}, b {2, 3}, c is unknown. O = {3, other}.
    let of = likelihoods(certainly(&table, "lamps", &["3", "5"]), 0.1);
    assert_near(of[0], 0.1 * 2.0 / 2.0);
    assert_near(of[1], 0.9 * 0.5 + 0.1 * 1.0);
    assert_near(of[2], 2.0 / 3.0);
    // V = {even, graded, wiped}; the artist's printing allows two of them.
    let of = likelihoods(certainly(&table, "sky", &["even"]), 0.3);
    assert_near(of[0], 0.3);
    assert_near(of[2], 0.7);
    // An error above |V\\A|/|V| is capped: the observation says no less than nothing.
    let of = likelihoods(certainly(&table, "sky", &["even"]), 0.5);
    assert_near(of[0], 1.0 / 3.0);
    assert_near(of[2], 0.5);
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
fn weights_are_the_likelihoods_of_those_left() {
    let table = kinds();
    let observed = [
        certainly(&table, "moon", &["present"]),
        seen(&table, "lamps", &["3"], Certainty::Possible),
        certainly(&table, "sky", &["even"]),
    ];
    let identified = identify(&table, &observed);
    let weight: Vec<f64> = identified.candidates.iter().map(|c| c.weight).collect();
    // a is excluded by the moon. b: 0.99 · (0.7/2) · E, the sky's inking departing in one sheet of ten:
    // E = 1 - 0.99 · 0.9 = 0.109 of the one value it does not allow. c: 0.99 · 1/3 · (1 - 0.109), its lamps
    // unknown.
    let (b, c) = (0.99 * 0.35 * 0.109, 0.99 / 3.0 * 0.891);
    let a = &identified.candidates[CandidateAt::new(0)];
    assert_eq!(a.excluded_by, [PointAt::new(0)]);
    assert_eq!(a.against, [0, 1, 3].map(PointAt::new));
    assert_near(weight[0], 0.0);
    assert_near(weight[1], b / (b + c));
    assert_near(weight[2], c / (b + c));
}

/// A hundred observations, each unlikely for both, still weigh them.
#[test]
fn weights_do_not_vanish_under_many_observations() {
    let keys = 0..200;
    let points: Vec<String> = keys
        .clone()
        .map(|n| {
            format!("{{ key = \"p{n}\", ask = \"?\", kind = \"presence\", rests_on = \"paper\" }}")
        })
        .collect();
    let shows: Vec<String> = keys.map(|n| format!("p{n} = \"absent\"")).collect();
    let record = design(&format!(
        "points = [{}]\nprintings = [{{ key = \"one\", kind = \"artist\", shows = {{ {} }} }}, {{ key = \"other\", kind = \"restrike\", shows = {{ {} }} }}]",
        points.join(", "),
        shows.join(", "),
        shows[1..].join(", ")
    ));
    let table = table(&[&record]);
    let observed: Vec<Observed> = table
        .points
        .iter()
        .map(|p| certainly(&table, p.key.as_str(), &["present"]))
        .collect();
    let identified = identify(&table, &observed);
    let weights: Vec<f64> = identified.candidates.iter().map(|c| c.weight).collect();
    // They differ at one point: E = 1 - 0.99 · 0.95 = 0.0595 for the one, 1/2 for the other.
    assert_near(weights[0], 0.0595 / (0.0595 + 0.5));
    assert_near(weights[1], 0.5 / (0.0595 + 0.5));
}

#[test]
fn where_all_are_excluded_the_nearest_are_told_and_nothing_is_next() {
    let table = kinds();
    let observed = [
        certainly(&table, "moon", &["absent"]),
        certainly(&table, "height", &["232"]),
    ];
    let identified = identify(&table, &observed);
    assert!(identified.candidates.iter().all(|c| c.weight == 0.0));
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
