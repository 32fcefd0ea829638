//! Sizes of states and printings: what sheets are measured against, and what the head of a design says.

use keyblock::model::codes::Code;

use crate::pages::{page, site_of};
use crate::small::{audit_lines, audited, codes};

/// A plate that was cut down before its fourth state; an earlier catalogue measured a late sheet.
const CUT_DOWN: &str = r#"
-- records/literature.bib
@book{list, author = {Lister, L.}, title = {A List}, year = {1950}}
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
size = { image = [{ is = [246, 362] }, { is = [232, 362], cite = "list", at = "p. 3" }] }
[[states]]
key = "first"
[[states]]
key = "second"
[[states]]
key = "third"
[[states]]
key = "cut-down"
size = { image = [232, 362] }
[[states]]
key = "last"
size = { image = [232, 362] }
[[printings]]
key = "own"
kind = "artist"
states = ["first", "second", "third"]
[[printings]]
key = "late"
kind = "lifetime"
states = ["cut-down", "last"]
"#;

fn sheet(record: &str) -> String {
    format!("\n-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{record}\n")
}

/// The codes of the doubts on sizes; the states of the literals show nothing, which has doubts of its own.
fn on_sizes(design: &str, record: &str) -> Vec<Code> {
    let of_sizes = [
        Code::SizesNear,
        Code::SizesDisagree,
        Code::SizeSidesSwapped,
        Code::SizeUnitMistaken,
        Code::ImageLargerThanSheet,
    ];
    let found = codes(&[design, &sheet(record)]);
    found.into_iter().filter(|c| of_sizes.contains(c)).collect()
}

fn told(record: &str) -> String {
    let (_, findings) = audited(&[CUT_DOWN, &sheet(record)]);
    let on_size = findings.iter().find(|f| {
        matches!(
            f.code,
            Code::SizeSidesSwapped | Code::SizeUnitMistaken | Code::ImageLargerThanSheet
        )
    });
    let help = on_size.and_then(|f| f.help.as_ref());
    help.expect("a doubt on a size, with help").clone()
}

fn head(literals: &[&str]) -> String {
    let site = site_of(literals);
    let html = page(&site, "design/1/");
    let text = text_of(html);
    let from = text.find("Size").expect("the page gives a size");
    text[from..].chars().take(260).collect()
}

/// The text of a page with runs of white space made one.
fn text_of(html: &str) -> String {
    let mut text = String::new();
    let mut within = false;
    for sign in html.chars() {
        match sign {
            '<' => within = true,
            '>' => within = false,
            sign if !within => text.push(sign),
            _ => {}
        }
    }
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_sheet_is_measured_against_the_size_of_its_state() {
    let measured = |state: &str, image: &str| {
        let record = format!("identified = {{ state = {state} }}\nsheet = {{ image = {image} }}");
        on_sizes(CUT_DOWN, &record)
    };
    assert_eq!(measured("\"first\"", "[246, 362]"), []);
    assert_eq!(measured("\"last\"", "[232, 362]"), []);
    // The figure of the early states on a late sheet.
    assert_eq!(measured("\"last\"", "[246, 362]"), [Code::SizesDisagree]);
    // A reading that leaves both open takes either.
    assert_eq!(measured("[\"third\", \"cut-down\"]", "[246, 362]"), []);
    assert_eq!(measured("[\"third\", \"cut-down\"]", "[232, 362]"), []);
}

#[test]
fn a_sheet_without_identification_may_have_the_size_of_any_state() {
    assert_eq!(on_sizes(CUT_DOWN, "sheet = { image = [232, 362] }"), []);
    assert_eq!(
        on_sizes(CUT_DOWN, "sheet = { image = [200, 362] }"),
        [Code::SizesDisagree]
    );
}

#[test]
fn the_size_of_a_printing_counts_for_its_sheets() {
    let design = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
size = { image = [246, 362] }
[[printings]]
key = "own"
kind = "artist"
[[printings]]
key = "restrike"
kind = "restrike"
size = { image = [220, 362] }
"#;
    let of = |printing: &str| {
        let record = format!(
            "identified = {{ printing = \"{printing}\" }}\nsheet = {{ image = [220, 362] }}"
        );
        on_sizes(design, &record)
    };
    assert_eq!(of("restrike"), []);
    assert_eq!(of("own"), [Code::SizesDisagree]);
}

#[test]
fn exchanged_sides_and_wrong_units_are_named() {
    let image = |size: &str| {
        let record = format!("identified = {{ state = \"first\" }}\nsheet = {{ image = {size} }}");
        (on_sizes(CUT_DOWN, &record), told(&record))
    };
    let (codes, help) = image("[362, 246]");
    assert_eq!(codes, [Code::SizeSidesSwapped]);
    assert!(
        help.contains("swapped") && help.contains("[246, 362]"),
        "{help}"
    );
    for (size, slip) in [
        ("[9.7, 14.25]", "inches were probably taken for millimetres"),
        (
            "[24.6, 36.2]",
            "centimetres were probably taken for millimetres",
        ),
        ("[6248, 9195]", "multiplied by 25.4"),
        ("[2460, 3620]", "multiplied by 10"),
    ] {
        let (codes, help) = image(size);
        assert_eq!(codes, [Code::SizeUnitMistaken], "{size}");
        assert!(help.contains(slip), "{size}: {help}");
    }
}

#[test]
fn a_sheet_smaller_than_its_image_is_doubted_with_the_likely_slip() {
    let of = |size: &str| {
        let record = format!(
            "identified = {{ state = \"first\" }}\nsheet = {{ image = [246, 362], size = {size} }}"
        );
        (on_sizes(CUT_DOWN, &record), told(&record))
    };
    for (size, slip) in [
        ("[420, 300]", "swapped"),
        ("[30, 42]", "centimetres"),
        ("[11.75, 16.5]", "inches"),
        ("[200, 340]", "measure again"),
    ] {
        let (codes, help) = of(size);
        assert_eq!(codes, [Code::ImageLargerThanSheet], "{size}");
        assert!(help.contains(slip), "{size}: {help}");
    }
    let (codes, help) = of("[3000, 4200]");
    assert_eq!(codes, [Code::SizeUnitMistaken]);
    assert!(help.contains("[300, 420]"), "{help}");
}

#[test]
fn another_source_with_the_size_of_a_later_state_is_not_doubted_and_one_in_inches_is() {
    let lines = |figure: &str| {
        let design = CUT_DOWN.replace("is = [232, 362]", &format!("is = {figure}"));
        let all = audit_lines(&[&design]);
        all.into_iter()
            .filter(|l| l.contains("size-"))
            .collect::<Vec<_>>()
    };
    assert!(lines("[232, 362]").is_empty());
    assert!(lines("[240, 355]").is_empty());
    let [inches] = lines("[9.7, 14.25]").try_into().unwrap();
    assert!(
        inches.contains("size-unit-mistaken: another source gives 9.7 × 14.3 mm for the image"),
        "{inches}"
    );
}

#[test]
fn the_head_of_a_design_gives_each_size_with_its_states() {
    let head = head(&[CUT_DOWN]);
    assert!(
        head.contains("i–iii 246 × 362 mm; iv–v 232 × 362 mm (image)"),
        "{head}"
    );
    assert!(
        head.contains("232 × 362 mm (image) (Lister 1950, p. 3), as in iv–v"),
        "{head}"
    );
}

#[test]
fn states_of_one_size_that_do_not_follow_each_other_are_listed() {
    let design = CUT_DOWN.replace(
        "key = \"last\"\nsize = { image = [232, 362] }",
        "key = \"last\"",
    );
    let head = head(&[&design]);
    assert!(
        head.contains("i–iii, v 246 × 362 mm; iv 232 × 362 mm (image)"),
        "{head}"
    );
}

#[test]
fn a_design_without_sizes_gives_the_range_of_its_sheets() {
    let design = "\n-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n";
    let sheets = r#"
-- records/designs/1/impressions/1.toml
status = "untraced"
sheet = { image = [245, 361] }
-- records/designs/1/impressions/2.toml
status = "untraced"
sheet = { image = [247.5, 361] }
-- records/designs/1/impressions/3.toml
status = "untraced"
kind = "fragment"
sheet = { image = [90, 80] }
-- records/designs/1/impressions/4.toml
status = "untraced"
sheet = { image = { is = [300, 400], certainty = "possible" } }
"#;
    let measured = head(&[design, sheets]);
    assert!(
        measured.contains("245–247.5 × 361 mm (image, measured on two sheets)"),
        "{measured}"
    );
    let whole = "\n-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nsheet = { size = [300, 420] }\n";
    let measured = head(&[design, whole]);
    assert!(
        measured.contains("300 × 420 mm (sheet, measured on one sheet)"),
        "{measured}"
    );
}

#[test]
fn a_size_taken_within_a_mount_proves_nothing_against_the_image() {
    let state = "identified = { state = \"cut-down\", printing = \"late\" }\n";
    let doubted = on_sizes(
        CUT_DOWN,
        &format!("{state}sheet = {{ image = [200, 340] }}"),
    );
    assert!(!doubted.is_empty());
    let seen = format!("{state}sheet = {{ image = [200, 340], sight = true }}");
    assert_eq!(on_sizes(CUT_DOWN, &seen), []);
    // A mount hides; it does not make larger.
    let larger = format!("{state}sheet = {{ image = [290, 420], sight = true }}");
    assert!(!on_sizes(CUT_DOWN, &larger).is_empty());
    let within = "sheet = { size = [200, 300], image = [232, 362], sight = true }";
    assert_eq!(on_sizes(CUT_DOWN, within), []);
}
