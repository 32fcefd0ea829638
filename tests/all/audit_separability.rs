//! The findings of the audit on states and printings that no point separates, on wear that would go backwards,
//! and on sheets whose observations allow a narrower identification.

use keyblock::model::codes::Code;

use crate::small::{audit_lines, codes};

fn design(toml: &str) -> String {
    format!("-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{toml}\n")
}

fn sheet(number: u32, toml: &str) -> String {
    format!("-- records/designs/1/impressions/{number}.toml\nstatus = \"untraced\"\n{toml}\n")
}

const MOON_AND_BUOY: &str = r#"
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "buoy", ask = "A buoy?", kind = "presence", rests_on = "matrix" },
]
"#;

#[test]
fn two_states_that_no_point_separates_are_doubted() {
    // c does not follow a, so no other rule compares the two; b differs from both.
    let states = |third: &str| {
        design(&format!(
            "{MOON_AND_BUOY}states = [
  {{ key = \"a\", shows = {{ moon = \"absent\" }} }},
  {{ key = \"b\", shows = {{ moon = \"present\" }} }},
  {{ key = \"c\", shows = {{ {third} }} }},
]"
        ))
    };
    assert_eq!(
        audit_lines(&[&states("moon = \"absent\"")]),
        [
            "records/designs/1/design.toml:10:11 states-inseparable: no point of design 1 separates state iii from state i"
        ]
    );
    // Three states, three pairs, and a value for each.
    let told = design(
        r#"
points = [{ key = "lamps", ask = "How many?", kind = "count", rests_on = "matrix" }]
states = [
  { key = "a", shows = { lamps = 1 } },
  { key = "b", shows = { lamps = 2 } },
  { key = "c", shows = { lamps = 3 } },
]"#,
    );
    assert_eq!(codes(&[&told]), []);
}

#[test]
fn neighbours_that_nothing_separates_are_doubted_once() {
    let record = design(&format!(
        "{MOON_AND_BUOY}states = [
  {{ key = \"a\", shows = {{ moon = \"absent\" }} }},
  {{ key = \"b\", shows = {{ moon = \"absent\" }} }},
]"
    ));
    assert_eq!(codes(&[&record]), [Code::StateNoDifference]);
}

#[test]
fn two_printings_that_no_point_separates_are_hinted_at_once_for_all_states() {
    let printings = |later: &str| {
        design(&format!(
            r#"
points = [
  {{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }},
  {{ key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = {{ even = "even", graded = "graded" }} }},
]
states = [{{ key = "a", shows = {{ moon = "absent" }} }}, {{ key = "b", shows = {{ moon = "present" }} }}]
printings = [
  {{ key = "own", kind = "artist", states = "all", shows = {{ sky = ["even", "graded"] }} }},
  {{ key = "later", kind = "restrike", states = "all", shows = {{ sky = "{later}" }} }},
]"#
        ))
    };
    assert_eq!(
        audit_lines(&[&printings("even")]),
        [
            "records/designs/1/design.toml:10:11 printings-inseparable: no point of design 1 separates printing `later` from printing `own` in state i"
        ]
    );
    let told = printings("even").replace("[\"even\", \"graded\"]", "\"graded\"");
    assert_eq!(codes(&[&told]), []);
}

#[test]
fn a_design_without_points_is_not_reproached_with_it() {
    let record = design(
        "states = [{ key = \"a\" }]\nprintings = [{ key = \"own\", kind = \"artist\", states = \"all\" }, { key = \"later\", kind = \"restrike\", states = \"all\" }]",
    );
    assert_eq!(codes(&[&record]), []);
}

// Observations that allow a narrower identification.

const SETTLED: &str = r#"
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
          { key = "paper", ask = "The paper?", kind = "choice", rests_on = "paper", values = { laid = "laid", wove = "wove" } }]
states = [{ key = "a", shows = { moon = "absent" } }, { key = "b", shows = { moon = "present" } }]
printings = [
  { key = "own", kind = "artist", states = "all", shows = { paper = "laid" } },
  { key = "later", kind = "restrike", states = "all", shows = { paper = "wove" } },
]
"#;

#[test]
fn a_sheet_whose_observations_leave_one_state_could_be_settled() {
    let lines = |sheet_toml: &str| audit_lines(&[&design(SETTLED), &sheet(1, sheet_toml)]);
    assert_eq!(
        lines("observed = { moon = \"present\" }\n[identified]\nprinting = \"own\""),
        [
            "records/designs/1/impressions/1.toml:4:12 could-be-settled: 1.1 is identified as of printing `own`, but what was seen on it leaves only state ii"
        ]
    );
    assert_eq!(
        lines(
            "observed = { moon = \"present\", paper = \"wove\" }\nidentified = { state = [\"a\", \"b\"] }"
        ),
        [
            "records/designs/1/impressions/1.toml:3:25 could-be-settled: 1.1 is identified as state i or state ii, but what was seen on it leaves only state ii"
        ]
    );
    assert_eq!(
        lines("observed = { moon = \"present\" }"),
        [
            "records/designs/1/impressions/1.toml:1:1 could-be-settled: 1.1 is not identified, but what was seen on it leaves only state ii"
        ]
    );
    // Paper can be older than the sheet was printed: it settles nothing.
    let paper: Vec<String> = lines("observed = { paper = \"laid\" }");
    assert!(paper.is_empty(), "{paper:?}");
}

#[test]
fn what_is_settled_or_not_certain_is_left_alone() {
    let found = |sheet_toml: &str| codes(&[&design(SETTLED), &sheet(1, sheet_toml)]);
    let settled = "observed = { moon = \"present\", paper = \"laid\" }\nidentified = { state = \"b\", printing = \"own\" }";
    assert_eq!(found(settled), []);
    // Only what is certain excludes.
    let probable = "[observed]\nmoon = { is = \"present\", certainty = \"probable\" }";
    assert_eq!(found(probable), []);
    assert_eq!(found("observed = { moon = \"not-visible\" }"), []);
    // A contradiction is another finding.
    let contradicted = "observed = { moon = \"present\" }\nidentified = { state = \"a\" }";
    assert_eq!(found(contradicted), [Code::IdentificationContradicted]);
}

// Marks used by two people.

fn sealed(later_shows: &str, applied_by: &str) -> Vec<Code> {
    let record = design(&format!(
        r#"
points = [{{ key = "seal", ask = "A seal?", kind = "presence", rests_on = "mark" }}]
states = [{{ key = "a" }}]
printings = [
  {{ key = "own", kind = "artist", printer = "artist", states = "all", shows = {{ seal = "present" }} }},
  {{ key = "later", kind = "posthumous", printer = "heir", states = "all", shows = {{ seal = "{later_shows}" }} }},
]"#
    ));
    let heir = "-- records/people/heir.toml\nname = \"The Heir\"\n";
    let own = sheet(
        1,
        "[[marks]]\nkind = \"seal\"\ntext = \"A\"\napplied_by = \"artist\"",
    );
    let other = sheet(
        2,
        &format!("[[marks]]\nkind = \"seal\"\ntext = \"A\"\napplied_by = \"{applied_by}\""),
    );
    codes(&[&record, heir, &own, &other])
}

/// Common practice, no source: seals and stamps survive the artist and are used on later printings.
#[test]
fn a_seal_used_by_two_people_separates_their_printings_badly() {
    assert_eq!(
        sealed("absent", "heir"),
        [Code::MarkShared, Code::PrintingsByMark]
    );
    assert_eq!(sealed("absent", "artist"), [Code::PrintingsByMark]);
    // Where the mark does not separate the printings, the rule does not apply; that nothing separates them
    // is another finding.
    assert_eq!(sealed("present", "heir"), [Code::PrintingsInseparable]);
}

// Wear.

const CRACK: &str = r#"
matrices = [{ key = "key" }, { key = "sky" }]
points = [
  { key = "buoy", ask = "A buoy?", kind = "presence", rests_on = "matrix", matrix = "key" },
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "sky" },
  { key = "crack", ask = "How far?", kind = "stage", stages = ["none", "edge", "mast"], rests_on = "matrix", matrix = "sky" },
  { key = "hole", ask = "A hole?", kind = "stage", stages = ["none", "open"], rests_on = "matrix", matrix = "sky" },
]
states = [
  { key = "a", shows = { buoy = "present", moon = "absent" } },
  { key = "b", shows = { buoy = "absent", moon = "absent" } },
  { key = "c", shows = { buoy = "absent", moon = "present" } },
]
"#;

fn worn(sheets: &[(&str, &str, &str)]) -> Vec<String> {
    let sheets: Vec<String> = (1..)
        .zip(sheets)
        .map(|(n, (state, crack, hole))| {
            sheet(
                n,
                &format!("identified = {{ state = \"{state}\" }}\nobserved = {{ crack = \"{crack}\", hole = \"{hole}\" }}"),
            )
        })
        .collect();
    audit_lines(&[&design(CRACK), &sheets.concat()])
}

#[test]
fn a_later_state_with_less_wear_is_doubted_while_the_matrix_did_not_change() {
    let found = worn(&[("a", "edge", "none"), ("b", "none", "none")]);
    assert_eq!(
        found,
        [
            "records/designs/1/impressions/2.toml:3:22 wear-backwards: 1.2 is of a later state than 1.1, but shows less wear at `crack`: `none`, not `edge`"
        ]
    );
    // The sky block was changed for state c: the crack may have been plugged.
    assert!(worn(&[("b", "edge", "none"), ("c", "none", "none")]).is_empty());
    // Within one state any order of wear is an order of pulling.
    assert!(worn(&[("a", "edge", "none"), ("a", "none", "none")]).is_empty());
}

#[test]
fn two_sheets_each_pulled_before_the_other_are_doubted() {
    let found = worn(&[
        ("a", "edge", "none"),
        ("a", "none", "open"),
        ("a", "mast", "open"),
    ]);
    assert_eq!(
        found,
        [
            "records/designs/1/impressions/1.toml:3:37 wear-backwards: by what is recorded, 1.1 was printed before 1.2 (less wear at `hole`: `none`, not `open`), and 1.2 before 1.1 (less wear at `crack`: `none`, not `edge`)"
        ]
    );
}

#[test]
fn a_sheet_whose_state_is_contradicted_says_nothing_of_wear() {
    let sheets = [
        sheet(
            1,
            "identified = { state = \"a\" }\nobserved = { crack = \"edge\" }",
        ),
        sheet(
            2,
            "identified = { state = \"b\" }\nobserved = { crack = \"none\", buoy = \"present\" }",
        ),
    ];
    assert_eq!(
        codes(&[&design(CRACK), &sheets.concat()]),
        [Code::IdentificationContradicted]
    );
}

// Marks alone.

const MARKED: &str = r#"
points = [
  { key = "stamp", ask = "A stamp?", kind = "presence", rests_on = "mark" },
  { key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } },
]
printings = [
  { key = "own", kind = "artist", shows = { stamp = "absent", sky = "graded" } },
  { key = "estate", kind = "posthumous", numbered = true, shows = { stamp = "present", sky = "even" } },
]
"#;

/// Common practice, no source: a stamp can be added to an older sheet and may be missing on a later one.
#[test]
fn an_impression_called_certain_by_a_mark_alone_is_doubted() {
    let found = |sheet_toml: &str| codes(&[&design(MARKED), &sheet(1, sheet_toml)]);
    let by_stamp = "identified = { printing = \"estate\" }\nobserved = { stamp = \"present\" }";
    assert_eq!(found(by_stamp), [Code::CertainByMark]);
    let probable = "identified = { printing = \"estate\", certainty = \"probable\" }\nobserved = { stamp = \"present\" }";
    assert_eq!(found(probable), []);
    let inked = "identified = { printing = \"estate\" }\nobserved = { stamp = \"present\", sky = \"even\" }";
    assert_eq!(found(inked), []);
    let numbered = "numbering = \"3/50\"\nidentified = { printing = \"estate\" }\nobserved = { stamp = \"present\" }";
    assert!(!found(numbered).contains(&Code::CertainByMark));
}

#[test]
fn printings_that_only_a_mark_separates_are_doubted_unless_the_editor_says_why_it_decides() {
    let alone = MARKED
        .replace(", sky = \"graded\"", "")
        .replace(", sky = \"even\"", "");
    assert_eq!(codes(&[&design(&alone)]), [Code::PrintingsByMark]);
    let deciding = alone.replace(
        "rests_on = \"mark\"",
        "rests_on = \"mark\", decides = \"The stamp was cut for this edition and destroyed with it.\"",
    );
    assert_eq!(codes(&[&design(&deciding)]), []);
    // What a sheet shows of paper, numbers or blocks separates them as well.
    let papers = alone
        .replace(
            "kind = \"artist\"",
            "kind = \"artist\", paper = [\"japan-paper\"]",
        )
        .replace(
            "kind = \"posthumous\"",
            "kind = \"posthumous\", paper = [\"wove-paper\"]",
        );
    assert_eq!(codes(&[&design(&papers)]), []);
}
