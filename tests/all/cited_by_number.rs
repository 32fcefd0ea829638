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
        "value=\"14.1\"><span class=\"picture\"",
        "<b>№ 14.1</b>",
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

/// A catalogue whose keys have nothing of what they name.
const NAMED: &str = r#"
-- catalogue.toml
title = "The Prints of Ada Quire"
siglum = "AQ"
artist = "qx-artist"
language = "en"
address = "https://prints.example.org"
-- records/people/qx-artist.toml
name = "Ada Quire"
roles = ["artist"]
born = "1890"
-- records/people/qx-printer.toml
name = "Ben Mole"
roles = ["printer"]
-- records/holders/qx-holder.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
-- records/literature.bib
@book{qx-list, author = {Verhoeven, Jan}, title = {The Quays}, year = {1961}}
-- records/exhibitions.toml
[qx-show]
title = "Ferries"
date = "1971"
-- records/marks/qx-seal.toml
kind = "seal"
text = "AQ"
users = [{ person = "qx-artist", from = "1927", to = "1941" }, { person = "qx-printer", from = "1937" }]
conditions = [{ key = "qx-chip", summary = "The corner lost.", from = "1936" }]
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
date = "1927"
makers = [{ person = "qx-artist", role = "artist" }]
literature = [{ cite = "qx-list", number = "9" }]
points = [
  { key = "qx-moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" },
  { key = "qx-cat", ask = "Is there a cat?", kind = "presence", rests_on = "matrix" },
  { key = "qx-wall", ask = "How is the wall inked?", kind = "choice", rests_on = "inking", values = { qx-even = "in one tone", qx-graded = "darker at the top" } },
]
states = [
  { key = "qx-dark", shows = { qx-moon = "absent" }, literature = [{ cite = "qx-list", number = "only state", relation = "covers-ours" }] },
  { key = "qx-lit", shows = { qx-moon = "present" } },
]
printings = [
  { key = "qx-own", name = "Printed by the artist", kind = "artist", printer = "qx-artist", date = "1927/1936", states = "all", shows = { qx-wall = "qx-graded" } },
  { key = "qx-late", name = "Estate edition", kind = "posthumous", printer = "qx-printer", date = "1956", edition = 20, numbered = true, states = ["qx-lit"], shows = { qx-wall = "qx-even" } },
]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "qx-holder"
identified = { state = "qx-dark", printing = "qx-own" }
observed = { qx-moon = "absent", qx-cat = "present", qx-wall = "qx-even" }
provenance = [{ owner = "qx-artist", to = "1936" }, { owner = "qx-holder", from = "1936", how = "gift", direct = true }]
sightings = [{ date = "1950", by = "qx-printer" }]
exhibited = [{ exhibition = "qx-show" }]
marks = [{ mark = "qx-seal", condition = "qx-chip" }]
-- records/designs/1/impressions/2.toml
status = "untraced"
numbering = "3/20"
identified = { state = "qx-lit", printing = "qx-late", certainty = "probable" }
observed = { qx-moon = { is = "present", certainty = "possible" }, qx-wall = "not-visible" }
"#;

/// The visible texts of a page, and those that are spoken; addresses that are shown in full are left out.
fn texts_of(html: &str) -> Vec<String> {
    let (found, shown) = tags(html);
    let spoken = found.iter().flat_map(|tag| {
        ["alt", "aria-label", "title"]
            .into_iter()
            .filter_map(|name| tag.value(name))
    });
    let shown = shown
        .lines()
        .filter(|line| !line.trim_start().starts_with(['{', '[']));
    let texts = shown.chain(spoken).map(|text| {
        let words = text.split_whitespace();
        let words = words.filter(|word| !word.contains("://") && !word.contains('/'));
        words.collect::<Vec<&str>>().join(" ")
    });
    texts.collect()
}

/// States, printings, people, holders, works, exhibitions, marks and values have names, which readers are told instead of
/// their keys. A point has a question and no name, so its key, in words, stands for it in tables and indexes.
#[test]
fn no_page_shows_the_key_of_what_has_a_name() {
    let site = crate::pages::site_of(&[NAMED]);
    let (mut texts, mut by_key) = (0, Vec::new());
    let pages = site.files.iter();
    for (path, html) in
        pages.filter(|(path, _)| path.ends_with(".html") && !path.starts_with("data/"))
    {
        for text in texts_of(std::str::from_utf8(html).unwrap()) {
            texts += 1;
            let points = ["moon", "cat", "wall"];
            let mut text = text.to_lowercase().replace("qx-", "qx ");
            for point in points {
                text = text.replace(&format!("qx {point}"), point);
            }
            if text.contains("qx") {
                by_key.push(format!("{path}: {text}"));
            }
        }
    }
    assert_eq!(by_key, Vec::<String>::new());
    assert!(texts > 200, "{texts}");
}

/// What is said of a sheet's evidence is said with the questions.
#[test]
fn the_evidence_on_a_sheet_names_points_by_their_questions() {
    let site = crate::pages::site_of(&[NAMED]);
    for (sheet, said) in [
        (
            "impression/1.1/",
            vec![
                "what it shows is not recorded at: Is there a cat?",
                "which does not contradict the identification: How is the wall inked?",
            ],
        ),
        (
            "impression/1.2/",
            vec![
                "Is there a moon? present; anything else excludes it (not seen for certain: look again)",
                "State ii/ii (Printed by the artist), the first of 2 that weigh the same, is recorded with:",
                "If a conservator unmounts the sheet, look: How is the wall inked?",
            ],
        ),
    ] {
        let (_, text) = tags(page(&site, sheet));
        for said in said {
            assert!(text.contains(said), "{said}\n{text}");
        }
        let (_, evidence) = text.split_once("What the observations say").unwrap();
        assert!(!evidence.to_lowercase().contains("qx "), "{evidence}");
    }
}
