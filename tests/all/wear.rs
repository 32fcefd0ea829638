//! The order in which sheets were pulled, as shown by wear (docs/definitions.md, "Order of printing").

use keyblock::model::key::Key;
use keyblock::study::index::PullAt;
use keyblock::study::wear::Wear;

use crate::small::studied;

const CRACK: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
matrices = [{ key = "key" }, { key = "sky" }]
points = [
  { key = "buoy", ask = "A buoy?", kind = "presence", rests_on = "matrix", matrix = "key" },
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "sky" },
  { key = "crack", ask = "How far?", kind = "stage", stages = ["none", "edge", "mast"], rests_on = "matrix", matrix = "sky" },
  { key = "hole", ask = "How many?", kind = "stage", stages = ["none", "one", "two"], rests_on = "matrix", matrix = "sky" },
]
states = [
  { key = "a", shows = { buoy = "present", moon = "absent" } },
  { key = "b", shows = { buoy = "absent", moon = "absent" } },
  { key = "c", shows = { buoy = "absent", moon = "present" } },
]
printings = [
  { key = "own", kind = "artist", states = "all" },
  { key = "copy", kind = "recut", states = "all" },
]
"#;

/// The wear of design 1 from sheets given as what follows their status.
fn wear(sheets: &[&str]) -> Vec<Wear> {
    let sheets: Vec<String> = (1..)
        .zip(sheets)
        .map(|(n, toml)| {
            format!("-- records/designs/1/impressions/{n}.toml\nstatus = \"located\"\n{toml}\n")
        })
        .collect();
    let (_, studies) = studied(&[CRACK, &sheets.concat()]);
    let key: Key = "1".parse().unwrap();
    studies.designs[&key].wear.clone()
}

fn seen(state: &str, observed: &str) -> String {
    format!("identified = {{ state = \"{state}\" }}\nobserved = {{ {observed} }}")
}

/// "1.1+1.4 < 1.2" for each statement that is drawn.
fn drawn(wear: &Wear) -> Vec<String> {
    let name = |at: PullAt| -> String {
        let sheets: Vec<String> = wear.pulls[at]
            .sheets
            .iter()
            .map(ToString::to_string)
            .collect();
        sheets.join("+")
    };
    let statements = wear.before.iter();
    statements
        .map(|(a, b)| format!("{} < {}", name(*a), name(*b)))
        .collect()
}

#[test]
fn wear_gives_the_fewest_statements_from_which_the_order_follows() {
    let sheets = [
        seen("a", "crack = \"none\""),
        seen("b", "crack = \"mast\""),
        seen("a", "crack = \"edge\""),
        seen("a", "crack = \"none\""),
    ];
    let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
    let wear = wear(&sheets);
    assert_eq!(wear.len(), 1);
    let wear = &wear[0];
    assert_eq!(wear.matrix.as_ref().map(Key::as_str), Some("sky"));
    // The buoy is on the key block: the sky block did not change between a and b.
    let states: Vec<&str> = wear.states.iter().map(Key::as_str).collect();
    assert_eq!(states, ["a", "b"]);
    // That none comes before mast follows.
    assert_eq!(drawn(wear), ["1.1+1.4 < 1.3", "1.3 < 1.2"]);
    let layers: Vec<usize> = wear.pulls.iter().map(|p| p.layer).collect();
    assert_eq!(layers, [0, 1, 2]);
}

#[test]
fn two_kinds_of_wear_give_a_partial_order() {
    let sheets = [
        seen("a", "crack = \"none\", hole = \"none\""),
        seen("a", "crack = \"edge\""),
        seen("a", "hole = \"one\""),
        seen("a", "crack = \"mast\", hole = \"two\""),
    ];
    let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
    let wear = wear(&sheets);
    // 1.2 and 1.3 cannot be compared.
    assert_eq!(
        drawn(&wear[0]),
        ["1.1 < 1.2", "1.1 < 1.3", "1.2 < 1.4", "1.3 < 1.4"]
    );
    assert!(wear[0].cycles.is_empty());
}

#[test]
fn sheets_each_before_the_other_are_taken_out_and_the_rest_is_drawn() {
    let sheets = [
        seen("a", "crack = \"none\", hole = \"one\""),
        seen("a", "crack = \"edge\", hole = \"none\""),
        seen("a", "crack = \"mast\""),
        seen("a", "crack = \"none\""),
    ];
    let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
    let wear = wear(&sheets);
    let cycles: Vec<Vec<String>> = wear[0]
        .cycles
        .iter()
        .map(|set| set.iter().map(ToString::to_string).collect())
        .collect();
    assert_eq!(cycles, [["1.1", "1.2"]]);
    assert_eq!(drawn(&wear[0]), ["1.4 < 1.3"]);
}

#[test]
fn a_change_to_the_matrix_and_what_is_not_certain_compare_nothing() {
    let apart = [seen("b", "crack = \"edge\""), seen("c", "crack = \"none\"")];
    assert!(wear(&[&apart[0], &apart[1]]).is_empty());
    // Either of two stages, none of some, probable, a block not printed, a state not known.
    for loose in [
        seen("a", "crack = [\"edge\", \"mast\"]"),
        seen("a", "crack = { not = \"none\" }"),
        seen("a", "crack = { is = \"mast\", certainty = \"probable\" }"),
        seen("a", "crack = \"mast\"\nblocks = { sky = \"not-printed\" }")
            .replace("\"mast\"\nblocks", "\"mast\" }\nblocks")
            .replace("not-printed\" } }", "not-printed\" }"),
        "observed = { crack = \"mast\" }".to_owned(),
        "identified = { state = \"a\", printing = \"copy\" }\nobserved = { crack = \"mast\" }"
            .to_owned(),
    ] {
        let first = seen("a", "crack = \"none\"");
        assert!(wear(&[&first, &loose]).is_empty(), "{loose}");
    }
    // As a control, the same with nothing loose.
    assert_eq!(
        wear(&[
            &seen("a", "crack = \"none\""),
            &seen("a", "crack = \"mast\"")
        ])
        .len(),
        1
    );
}
