//! Where the number of a design is not its key, readers and users of the terminal are told the number: of the design, and
//! of its sheets. Addresses, references in records and documents for programs keep the key.

use keyblock::audit::audit;
use keyblock::model::codes::Code;
use keyblock::study::Studies;

use crate::findings;
use crate::markup::tags;
use crate::pages::{page, site};
use crate::program::{copy_of, edit, keyblock, text};
use crate::small::lay_down;

/// Whether `text` names a design or sheet by the key of a design: "design 14", "14.2"; "№ 14.2" does not.
fn names_key(text: &str, key: &str) -> bool {
    let is_part = |c: char| c.is_alphanumeric() || matches!(c, '-' | '.' | '/' | '"');
    let by_sheet = text.match_indices(&format!("{key}.")).any(|(at, found)| {
        let (before, after) = (&text[..at], &text[at + found.len()..]);
        let is_number = before.ends_with("№ ");
        !is_number && !before.ends_with(is_part) && after.starts_with(|c: char| c.is_ascii_digit())
    });
    let by_design = text
        .match_indices(&format!("design {key}"))
        .any(|(at, found)| !text[at + found.len()..].starts_with(is_part));
    by_sheet || by_design
}

#[test]
fn a_key_is_told_from_a_number() {
    for named in ["14.2 is odd", "of design 14", "see 14.2/recto", "(14.2)"] {
        assert!(names_key(named, "14"), "{named}");
    }
    for other in [
        "№ 14.2 is odd",
        "design № 14",
        "114.2",
        "by 2014.",
        "design 14a",
        "a-14.2",
    ] {
        assert!(!names_key(other, "14"), "{other}");
    }
}

/// The example, whose design with the key 14 has another number.
fn renumbered() -> tempfile::TempDir {
    let folder = copy_of("tests/example-catalogue");
    let record = folder.path().join("records/designs/14/design.toml");
    edit(&record, "number = \"14\"", "number = \"№ 14\"");
    folder
}

#[test]
fn no_page_shows_the_key_of_a_design_where_its_number_stands() {
    let folder = renumbered();
    let site = site(folder.path());
    // The pages about the data tell of keys.
    let pages = site
        .files
        .iter()
        .filter(|(path, _)| path.ends_with(".html") && !path.starts_with("data/"));
    let (mut with_number, mut by_key) = (0, Vec::new());
    for (path, html) in pages {
        let (found, shown) = tags(std::str::from_utf8(html).unwrap());
        // The data of scripts is no text; what a script shows of it is in the tests of the browser.
        let shown = shown
            .lines()
            .filter(|line| !line.trim_start().starts_with(['{', '[']));
        let spoken = found.iter().flat_map(|tag| {
            ["alt", "aria-label", "title", "content"]
                .into_iter()
                .filter_map(|name| tag.value(name))
        });
        // A link that is shown in full is an address.
        let texts: Vec<&str> = shown
            .chain(spoken)
            .filter(|t| !t.starts_with("http"))
            .collect();
        with_number += usize::from(texts.iter().any(|text| text.contains("№ 14.1")));
        for text in texts {
            if names_key(text, "14") {
                by_key.push(format!("{path}: {text}"));
            }
        }
    }
    assert_eq!(by_key, Vec::<String>::new());
    assert!(with_number > 5, "{with_number}");
}

/// The script of the chosen comparison shows the number of a sheet, and writes its key into the address.
#[test]
fn the_chosen_comparison_offers_sheets_by_number_and_keeps_keys_for_addresses() {
    let folder = renumbered();
    let site = site(folder.path());
    let comparison = page(&site, "design/14/comparison/");
    for part in [
        "value=\"14.1\"><b>№ 14.1</b>",
        "\"key\":\"14.1\",\"number\":\"№ 14.1\"",
    ] {
        assert!(comparison.contains(part), "{part}\n{comparison}");
    }
}

/// Every broken record of the tests, its design renumbered: what the audit says names the number.
#[test]
fn no_doubt_names_a_design_or_a_sheet_by_its_key() {
    let (mut told, mut by_key) = (0, Vec::new());
    for folder in findings::renumbered() {
        let reading = keyblock::read::read(folder.path());
        let catalogue = reading.catalogue;
        let findings = audit(&catalogue, &Studies::of(&catalogue));
        // What is said of addresses names keys.
        let of_addresses = [
            Code::AddressVanished,
            Code::AddressReused,
            Code::EntryReplaced,
        ];
        let findings = findings.into_iter();
        for finding in findings.filter(|finding| !of_addresses.contains(&finding.code)) {
            let labels = finding.also.iter().chain([&finding.at]);
            let labels = labels.map(|label| label.text.as_str());
            for text in labels.chain([finding.message.as_str()]) {
                told += usize::from(text.contains('№'));
                for key in ["14", "15", "16", "17"] {
                    if names_key(text, key) {
                        by_key.push(format!("{:?}: {text}", finding.code));
                    }
                }
            }
        }
    }
    assert_eq!(by_key, Vec::<String>::new());
    assert!(told > 40, "{told}");
}

/// Two records of a design with the key `quay` and the number "R 1", tied by one lot.
const QUAY: &str = r#"
-- records/holders/house.toml
name = "The House"
kind = "trade"
-- records/designs/quay/design.toml
number = "R 1"
titles = [{ text = "A Quay" }]
states = [{ key = "dark" }, { key = "moonlit" }]
reference_picture = "quay.1/recto"
-- records/designs/quay/impressions/1.toml
status = "untraced"
identified = { state = "dark" }
provenance = [{ agent = "house", from = "1938-05-12", lot = "44", how = "sale" }]
pictures = [{ file = "pictures/one.png", name = "recto", rights = "CC0-1.0" }]
-- records/designs/quay/impressions/2.toml
status = "located"
provenance = [{ agent = "house", from = "1938-05-12", lot = "44", how = "sale" }]
"#;

fn in_quay(command: &[&str]) -> String {
    let folder = lay_down(&[QUAY]);
    let pictures = folder.path().join("records/designs/quay/pictures");
    std::fs::create_dir_all(&pictures).unwrap();
    image::RgbImage::new(40, 30)
        .save(pictures.join("one.png"))
        .unwrap();
    let catalogue = match command {
        ["audit"] => vec![text(folder.path())],
        _ => vec!["--in", text(folder.path())],
    };
    let ran = keyblock(&[command, &catalogue].concat());
    assert_eq!(ran.code, Some(0), "{ran:?}");
    ran.out
}

#[test]
fn the_terminal_cites_sheets_and_pictures_by_number() {
    for (command, cited) in [
        (&["census", "R 1"][..], "R 1. A Quay"),
        (&["census", "--doubts"], "R 1.1 and R 1.2"),
        (&["identify", "R 1"], "R 1. A Quay"),
        (&["align", "R 1"], "Reference: R 1.1/recto"),
        (&["audit"], "R 1.2 may be one sheet with R 1.1"),
    ] {
        let told = in_quay(command);
        assert!(told.contains(cited), "{command:?}\n{told}");
        // The place of a finding, and what is to be written in a record, have the key.
        let told = told
            .lines()
            .filter(|line| !line.contains("records/designs/"));
        for line in told {
            assert!(!line.contains("quay."), "{command:?}: {line}");
        }
    }
}
