//! The order of printing of a design's sheets (docs/definitions.md, "Order of printing").

use keyblock::model::codes::Code;
use keyblock::model::key::Key;
use keyblock::study::DesignStudy;
use keyblock::study::index::PlaceAt;
use keyblock::study::printing_order::{PrintingOrder, Reason};

use crate::pages::{page, site_of};
use crate::small::{audit_lines, codes, studied};

/// The order against the definition, on random designs.
mod brute;

const QUAY: &str = r#"
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
  { key = "own", kind = "artist", states = "all", date = "1920/1925" },
  { key = "late", kind = "posthumous", states = "all", date = "1956" },
  { key = "again", kind = "restrike", states = "all", date = "1970" },
  { key = "loose", kind = "lifetime", states = "all", date = "1930~" },
  { key = "copy", kind = "recut", date = "1990" },
]
"#;

fn records(sheets: &[&str]) -> String {
    let sheets = (1..).zip(sheets).map(|(n, toml)| {
        format!("-- records/designs/1/impressions/{n}.toml\nstatus = \"untraced\"\n{toml}\n")
    });
    sheets.collect::<Vec<String>>().concat()
}

fn study(design: &str, sheets: &[&str]) -> DesignStudy {
    let (_, studies) = studied(&[design, &records(sheets)]);
    let key: Key = "1".parse().unwrap();
    studies.designs[&key].clone()
}

fn order(sheets: &[&str]) -> PrintingOrder {
    study(QUAY, sheets).printing_order
}

fn seen(state: &str, observed: &str) -> String {
    format!("identified = {{ state = \"{state}\" }}\nobserved = {{ {observed} }}")
}

fn of_printing(printing: &str) -> String {
    format!("identified = {{ printing = \"{printing}\" }}")
}

fn dated(date: &str) -> String {
    format!("[sheet]\ndate = \"{date}\"")
}

fn in_short(reason: &Reason) -> String {
    match reason {
        Reason::Wear(step) => format!(
            "{} {}-{}",
            step.point,
            step.before.index(),
            step.after.index()
        ),
        Reason::States { before, after } => format!("state {before}-{after}"),
        Reason::Dates { before, after } => {
            let of = |by: &keyblock::study::printing_order::DatedBy| {
                let printing = by.printing.as_ref();
                format!("{}{}", printing.map_or("", Key::as_str), by.date)
            };
            format!("date {}-{}", of(before), of(after))
        }
    }
}

/// "1.1+1.4 < 1.2: crack 0-1" for each step that is drawn.
fn drawn(order: &PrintingOrder) -> Vec<String> {
    let name = |at: PlaceAt| -> String {
        let sheets = order.places[at].sheets.iter().map(ToString::to_string);
        sheets.collect::<Vec<_>>().join("+")
    };
    let steps = order.steps.iter().map(|step| {
        let reasons: Vec<String> = step.reasons.iter().map(in_short).collect();
        let (before, after) = (name(step.before), name(step.after));
        format!("{before} < {after}: {}", reasons.join(", "))
    });
    steps.collect()
}

/// "1.1 < 1.2: crack 0-1" for each step of each cycle.
fn cycles(order: &PrintingOrder) -> Vec<Vec<String>> {
    let cycles = order.places.iter().filter_map(|p| p.cycle.as_ref());
    let told = cycles.map(|cycle| {
        let steps = cycle.steps.iter().map(|step| {
            let reasons: Vec<String> = step.reasons.iter().map(in_short).collect();
            format!("{} < {}: {}", step.before, step.after, reasons.join(", "))
        });
        steps.collect()
    });
    told.collect()
}

fn of(sheets: &[String]) -> PrintingOrder {
    order(&sheets.iter().map(String::as_str).collect::<Vec<_>>())
}

#[test]
fn steps_are_the_fewest_from_which_the_order_follows() {
    let found = of(&[
        seen("a", "crack = \"none\""),
        seen("a", "crack = \"mast\""),
        seen("a", "crack = \"edge\""),
        seen("a", "crack = \"none\""),
    ]);
    // That none comes before mast follows.
    assert_eq!(
        drawn(&found),
        ["1.1+1.4 < 1.3: crack 0-1", "1.3 < 1.2: crack 1-2"]
    );
    let layers: Vec<usize> = found.places.iter().map(|p| p.layer).collect();
    assert_eq!(layers, [0, 1, 2]);
}

#[test]
fn two_kinds_of_wear_give_a_partial_order() {
    let found = of(&[
        seen("a", "crack = \"none\", hole = \"none\""),
        seen("a", "crack = \"edge\""),
        seen("a", "hole = \"one\""),
        seen("a", "crack = \"mast\", hole = \"two\""),
    ]);
    // 1.2 and 1.3 cannot be compared.
    assert_eq!(
        drawn(&found),
        [
            "1.1 < 1.2: crack 0-1",
            "1.1 < 1.3: hole 0-1",
            "1.2 < 1.4: crack 1-2",
            "1.3 < 1.4: hole 1-2"
        ]
    );
}

#[test]
fn wear_states_and_dates_give_one_order_and_each_step_has_its_reasons() {
    let found = of(&[
        seen("a", "crack = \"none\"").replace("\"a\"", "\"a\", printing = \"own\""),
        seen("b", "crack = \"edge\"").replace("\"b\"", "\"b\", printing = \"own\""),
        "identified = { state = \"c\", printing = \"late\" }".to_owned(),
        of_printing("again"),
        dated("1940-05"),
    ]);
    assert_eq!(
        drawn(&found),
        [
            // The sky block did not change from a to b.
            "1.1 < 1.2: crack 0-1, state a-b",
            "1.2 < 1.5: date own1920/1925-1940-05",
            "1.5 < 1.3: date 1940-05-late1956",
            "1.3 < 1.4: date late1956-again1970",
        ]
    );
}

#[test]
fn sheets_each_before_the_other_are_one_place_told_by_the_shortest_cycle() {
    let found = of(&[
        seen("a", "crack = \"none\", hole = \"one\""),
        seen("a", "crack = \"edge\", hole = \"none\""),
        seen("a", "crack = \"mast\""),
        seen("a", "crack = \"none\""),
    ]);
    assert_eq!(
        cycles(&found),
        [["1.1 < 1.2: crack 0-1", "1.2 < 1.1: hole 0-1"]]
    );
    assert_eq!(
        drawn(&found),
        [
            "1.4 < 1.1+1.2: crack 0-1",
            "1.1+1.2 < 1.3: crack 0-2, crack 1-2"
        ]
    );
}

#[test]
fn states_are_ordered_along_follows_and_only_where_they_are_certain() {
    let by_state = |state: &str| format!("identified = {{ state = {state} }}");
    let found = of(&[by_state("\"c\""), by_state("\"a\"")]);
    assert_eq!(drawn(&found), ["1.2 < 1.1: state a-c"]);
    for loose in [
        "identified = { state = [\"a\", \"b\"] }",
        "identified = { state = \"a\", certainty = \"probable\" }",
        "identified = { state = \"a\", or = [{ state = \"b\" }] }",
        "identified = { state = { sky = \"a\", key = \"b\" } }",
        "identified = { state = { sky = \"a\" } }",
        "identified = { printing = \"own\" }",
        "",
    ] {
        let found = of(&[by_state("\"c\""), loose.to_owned()]);
        assert!(found.places.is_empty(), "{loose}: {found:?}");
    }
    // Both blocks in one state are in that state.
    let found = of(&[
        by_state("\"c\""),
        "identified = { state = { sky = \"a\", key = \"a\" } }".to_owned(),
    ]);
    assert_eq!(drawn(&found), ["1.2 < 1.1: state a-c"]);
}

#[test]
fn states_of_two_branches_are_not_ordered_and_a_withdrawn_state_passes_its_place_on() {
    let branching = QUAY.replace("{ key = \"c\",", "{ key = \"c\", follows = [\"a\"],");
    let states = [
        "identified = { state = \"a\" }",
        "identified = { state = \"b\" }",
        "identified = { state = \"c\" }",
    ];
    assert_eq!(
        drawn(&study(&branching, &states).printing_order),
        ["1.1 < 1.2: state a-b", "1.1 < 1.3: state a-c"]
    );
    let withdrawn = QUAY.replace("{ key = \"b\",", "{ key = \"b\", standing = \"withdrawn\",");
    assert_eq!(
        drawn(&study(&withdrawn, &states).printing_order),
        ["1.1 < 1.3: state a-c"]
    );
}

#[test]
fn dates_that_are_approximate_uncertain_or_open_give_no_step() {
    let late = dated("1956");
    for loose in [
        "1930~", "1930?", "1930%", "../1930", "/1930", "1930/..", "1930-21",
    ] {
        let found = of(&[dated(loose), late.clone()]);
        assert!(found.places.is_empty(), "{loose}");
    }
    let loose_printing = of(&[of_printing("loose"), late.clone()]);
    assert!(loose_printing.places.is_empty());
    let probable = "[sheet]\ndate = { is = \"1930\", certainty = \"probable\" }".to_owned();
    assert!(of(&[probable, late.clone()]).places.is_empty());
    let perhaps = "identified = { printing = \"own\", certainty = \"possible\" }".to_owned();
    assert!(of(&[perhaps, late.clone()]).places.is_empty());
    let either = "identified = { printing = [\"own\", \"late\"] }".to_owned();
    assert!(of(&[either, dated("1980")]).places.is_empty());
    // As a control, the same with nothing loose.
    assert_eq!(
        drawn(&of(&[dated("1930"), late])),
        ["1.1 < 1.2: date 1930-1956"]
    );
}

#[test]
fn an_interval_orders_only_what_lies_wholly_before_or_after_it() {
    let between = |a: &str, b: &str| drawn(&of(&[dated(a), dated(b)]));
    assert_eq!(
        between("1920/1930", "1931"),
        ["1.1 < 1.2: date 1920/1930-1931"]
    );
    assert!(between("1920/1930", "1930").is_empty());
    assert!(between("1920/1930", "1925/1935").is_empty());
    // Digits not known: any year of the decade.
    assert_eq!(between("192X", "1930"), ["1.1 < 1.2: date 192X-1930"]);
    assert!(between("192X", "1929-12-31").is_empty());
    assert_eq!(between("1930-03-04", "1930-03-05").len(), 1);
}

#[test]
fn a_sheets_own_date_is_named_before_that_of_its_printing() {
    let own = format!("{}\n{}", of_printing("own"), dated("1922"));
    let other = format!("{}\n{}", of_printing("own"), dated("1924"));
    let found = of(&[own, other, of_printing("late")]);
    assert_eq!(
        drawn(&found),
        ["1.1 < 1.2: date 1922-1924", "1.2 < 1.3: date 1924-late1956"]
    );
}

#[test]
fn recuts_reproductions_and_withdrawn_records_have_no_place() {
    let first = dated("1910");
    assert_eq!(drawn(&of(&[first.clone(), of_printing("late")])).len(), 1);
    for outside in [
        of_printing("copy"),
        "identified = { printing = [\"late\", \"copy\"] }\n[sheet]\ndate = \"1956\"".to_owned(),
        format!("standing = \"withdrawn\"\n{}", of_printing("late")),
    ] {
        let found = of(&[first.clone(), outside]);
        assert!(found.places.is_empty(), "{found:?}");
    }
}

#[test]
fn a_change_to_the_matrix_and_what_is_not_certain_compare_no_wear() {
    let none =
        "identified = { state = \"b\", certainty = \"probable\" }\nobserved = { crack = \"none\" }";
    let changed =
        "identified = { state = \"c\", certainty = \"probable\" }\nobserved = { crack = \"edge\" }";
    assert!(order(&[none, changed]).places.is_empty());
    // Either of two stages, none of some, probable, a block not printed, a state not known, a recut.
    for loose in [
        seen("a", "crack = [\"edge\", \"mast\"]"),
        seen("a", "crack = { not = \"none\" }"),
        seen("a", "crack = { is = \"mast\", certainty = \"probable\" }"),
        "identified = { state = \"a\" }\nobserved = { crack = \"mast\" }\nblocks = { sky = \"not-printed\" }"
            .to_owned(),
        "observed = { crack = \"mast\" }".to_owned(),
        "identified = { state = \"a\", printing = \"copy\" }\nobserved = { crack = \"mast\" }"
            .to_owned(),
    ] {
        let found = of(&[seen("a", "crack = \"none\""), loose.clone()]);
        assert!(found.places.is_empty(), "{loose}");
    }
    // As a control, the same with nothing loose.
    let found = of(&[seen("a", "crack = \"none\""), seen("a", "crack = \"mast\"")]);
    assert_eq!(drawn(&found), ["1.1 < 1.2: crack 0-2"]);
}

#[test]
fn a_state_of_which_nothing_is_recorded_hides_no_change_on_both_its_sides() {
    let silent = QUAY
        .replace(
            "{ key = \"b\", shows = { buoy = \"absent\", moon = \"absent\" } }",
            "{ key = \"b\" }",
        )
        .replace(
            "{ buoy = \"absent\", moon = \"present\" }",
            "{ moon = \"present\" }",
        );
    let perhaps = |state: &str, crack: &str| {
        format!(
            "identified = {{ state = \"{state}\", certainty = \"probable\" }}\nobserved = {{ crack = \"{crack}\" }}"
        )
    };
    let between = |one: &str, other: &str| {
        let sheets = [perhaps(one, "none"), perhaps(other, "edge")];
        study(&silent, &[&sheets[0], &sheets[1]])
            .printing_order
            .steps
            .len()
    };
    assert_eq!(between("a", "b"), 1);
    assert_eq!(between("b", "c"), 1);
    // The moon came between a and c, whichever of the two steps brought it.
    assert_eq!(between("a", "c"), 0);
}

#[test]
fn wear_orders_the_sheets_of_a_design_without_states() {
    let stateless = QUAY
        .split("states = [\n")
        .next()
        .map(ToOwned::to_owned)
        .unwrap();
    let sheets = [
        "observed = { crack = \"edge\" }",
        "observed = { crack = \"none\" }",
    ];
    assert_eq!(
        drawn(&study(&stateless, &sheets).printing_order),
        ["1.2 < 1.1: crack 0-1"]
    );
}

#[test]
fn records_of_one_sheet_are_one_sheet_of_the_order() {
    let joined = format!("same_as = [{{ impression = \"1.1\" }}]\n{}", dated("1930"));
    let found = of(&[
        seen("a", "crack = \"none\""),
        joined,
        seen("a", "crack = \"edge\""),
        dated("1956"),
    ]);
    assert_eq!(
        drawn(&found),
        ["1.1 < 1.3: crack 0-1", "1.1 < 1.4: date 1930-1956"]
    );
}

#[test]
fn a_sheet_whose_observations_contradict_its_identification_is_left_out_and_named() {
    let contradicted = seen("c", "moon = \"absent\"");
    let found = of(&[seen("a", "crack = \"none\""), contradicted]);
    assert!(found.places.is_empty());
    let left_out: Vec<String> = found.contradicted.iter().map(ToString::to_string).collect();
    assert_eq!(left_out, ["1.2"]);
}

// Contradictions.

/// The findings on orders that cannot be; that the printings of the quay cannot be told apart is another matter.
fn backwards(literals: &[&str]) -> Vec<String> {
    let found = audit_lines(literals).into_iter();
    found.filter(|line| line.contains("-backwards: ")).collect()
}

/// A block or plate can be printed again in an earlier state only from a copy of it, or one of the records is wrong.
#[test]
fn a_restrike_of_an_earlier_state_printed_after_a_later_state_contradicts_the_states() {
    let sheets = records(&[
        "identified = { state = \"a\", printing = \"again\" }",
        "identified = { state = \"c\", printing = \"late\" }",
    ]);
    let (_, studies) = studied(&[QUAY, &sheets]);
    let key: Key = "1".parse().unwrap();
    assert_eq!(
        cycles(&studies.designs[&key].printing_order),
        [["1.1 < 1.2: state a-c", "1.2 < 1.1: date late1956-again1970"]]
    );
    assert_eq!(
        backwards(&[QUAY, &sheets]),
        [
            "records/designs/1/impressions/1.toml:2:24 order-backwards: by what is recorded, 1.1 was printed before 1.2 (state i before state iii), and 1.2 before 1.1 (printing `late`, 1956 before printing `again`, 1970)"
        ]
    );
}

#[test]
fn wear_against_dates_is_told_with_both_reasons_and_counts_who_else_has_no_place() {
    let later = |date: &str, crack: &str| {
        format!(
            "identified = {{ state = \"a\" }}\nobserved = {{ crack = \"{crack}\" }}\n{}",
            dated(date)
        )
    };
    let sheets = [
        later("1960", "none"),
        later("1930", "edge"),
        later("1931", "edge"),
    ];
    let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
    assert_eq!(
        backwards(&[QUAY, &records(&sheets)]),
        [
            "records/designs/1/impressions/1.toml:3:22 wear-backwards: by what is recorded, 1.1 was printed before 1.2 (less wear at `crack`: `none`, not `edge`), and 1.2 before 1.1 (1930 before 1960); 1 more sheet has no place for the same reasons"
        ]
    );
}

// One number, unlike wear.

fn numbered(printing: &str, numbering: &str, crack: &str) -> String {
    format!(
        "numbering = \"{numbering}\"\nidentified = {{ state = \"a\", printing = \"{printing}\" }}\nobserved = {{ crack = \"{crack}\" }}"
    )
}

#[test]
fn two_sheets_of_one_number_and_unlike_wear_are_flagged() {
    let twice = |sheets: &[String]| {
        let sheets: Vec<&str> = sheets.iter().map(String::as_str).collect();
        let found = audit_lines(&[QUAY, &records(&sheets)]);
        let found = found
            .into_iter()
            .filter(|f| f.contains("number-unlike-wear"));
        found.collect::<Vec<_>>()
    };
    assert_eq!(
        twice(&[
            numbered("late", "12/65", "mast"),
            numbered("late", "12", "edge")
        ]),
        [
            "records/designs/1/impressions/1.toml:2:13 number-unlike-wear: 1.1 and 1.2 have one number of printing `late`, but 1.1 shows more wear at `crack`: `mast`, not `edge`"
        ]
    );
    for near in [
        [
            numbered("late", "12/65", "edge"),
            numbered("late", "12/65", "edge"),
        ],
        [
            numbered("late", "12/65", "edge"),
            numbered("late", "13/65", "mast"),
        ],
        [
            numbered("late", "12/65", "edge"),
            numbered("late", "XII/LXV", "mast"),
        ],
        [
            numbered("late", "12/65", "edge"),
            numbered("again", "12/65", "mast"),
        ],
        [
            numbered("late", "12/65", "edge"),
            numbered("late", "12/65", "mast")
                .replace("\"mast\"", "{ is = \"mast\", certainty = \"probable\" }"),
        ],
        [
            numbered("late", "12/65", "edge"),
            format!(
                "same_as = [{{ impression = \"1.1\" }}]\n{}",
                numbered("late", "12/65", "mast")
            ),
        ],
    ] {
        assert_eq!(twice(&near), Vec::<String>::new(), "{near:?}");
    }
}

#[test]
fn a_number_that_is_not_of_wear_stays_the_doubt_that_it_was() {
    let sheets = [
        numbered("late", "12/65", "edge"),
        numbered("late", "12/65", "edge"),
    ];
    let found = codes(&[QUAY, &records(&[&sheets[0], &sheets[1]])]);
    assert!(found.contains(&Code::NumberTwice) && !found.contains(&Code::NumberUnlikeWear));
}

// The page.

fn text(html: &str) -> String {
    let mut plain = String::new();
    let mut within_tag = false;
    for c in html.chars() {
        match c {
            '<' => within_tag = true,
            '>' => within_tag = false,
            c if !within_tag => plain.push(c),
            _ => {}
        }
    }
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_page_of_a_design_tells_every_step_with_its_reasons() {
    let sheets = records(&[
        &seen("a", "crack = \"none\""),
        &seen("b", "crack = \"edge\"").replace("\"b\"", "\"b\", printing = \"own\""),
        &of_printing("late"),
        &seen("c", "moon = \"absent\""),
    ]);
    let html = page(&site_of(&[QUAY, &sheets]), "design/1/").to_owned();
    let told = text(&html);
    for said in [
        "1.1 (state i; crack: none).",
        "1.2 (state ii; crack: edge; printing of 1920 to 1925). After 1.1: wear of the sky (crack: none, then edge); state i comes before state ii.",
        "1.3 (printing of 1956). After 1.2: dates: 1920 to 1925 (printed by the artist) before 1956 (posthumous printing).",
        "Left out, because what was seen contradicts the identification: 1.4.",
    ] {
        assert!(told.contains(said), "{said}\n{told}");
    }
    // The drawing has a line for each step, in the manner of its strongest reason, and says it where one points.
    assert_eq!(
        html.matches("<path class=\"solid\" d=\"M").count(),
        2,
        "one of the legend"
    );
    assert!(html.contains("<title>dates: 1920 to 1925"));
}

#[test]
fn a_cycle_and_one_number_are_told_on_the_page_with_their_reasons() {
    let sheets = records(&[
        &numbered("late", "12/65", "none"),
        &format!("{}\n{}", numbered("late", "12/65", "mast"), dated("1930")),
        &format!("{}\n{}", seen("a", "crack = \"none\""), dated("1931")),
    ]);
    let told = text(page(&site_of(&[QUAY, &sheets]), "design/1/"));
    for said in [
        "1.1 and 1.2 both have the number 12",
        "but 1.2 shows more wear: wear of the sky (crack: none, then mast)",
        "cannot be put in order, because what is recorded of them contradicts itself.",
        "1.1 before 1.2: wear of the sky (crack: none, then mast).",
    ] {
        assert!(told.contains(said), "{said}\n{told}");
    }
}
