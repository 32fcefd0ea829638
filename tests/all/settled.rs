//! Doubts that records say are settled (docs/definitions.md, "Settled doubts"): counted apart, shown with their
//! reasons, and raised again when what they rest on changes.

use std::fs;
use std::path::Path;

use keyblock::press::{Judged, PictureWork, judge};
use serde_json::Value;

use crate::program::{keyblock, text};
use crate::small::{DOUBTFUL, lay_down};

const SHEET: &str = "records/designs/1/impressions/1.toml";
const DESIGN: &str = "records/designs/1/design.toml";
const CODE: &str = "identification-contradicted";

fn judged(folder: &Path) -> Judged {
    judge(folder, &PictureWork::ReadOnly(&|_, _| {}))
}

/// The codes of the findings, and of those that are settled.
fn codes(folder: &Path) -> (Vec<&'static str>, Vec<&'static str>) {
    let judged = judged(folder);
    let open = judged.findings.iter().map(|f| f.code.as_str());
    let settled = judged.settled.iter().map(|s| s.finding.code.as_str());
    (open.collect(), settled.collect())
}

fn append(folder: &Path, file: &str, line: &str) {
    let path = folder.join(file);
    let text = fs::read_to_string(&path).unwrap();
    fs::write(path, format!("{}\n{line}\n", text.trim_end())).unwrap();
}

fn replace(folder: &Path, file: &str, from: &str, to: &str) {
    let path = folder.join(file);
    let text = fs::read_to_string(&path).unwrap();
    assert!(text.contains(from), "{file} has no {from}");
    fs::write(path, text.replace(from, to)).unwrap();
}

fn document(folder: &Path) -> Value {
    let ran = keyblock(&["audit", text(folder), "--json"]);
    serde_json::from_str(&ran.out).unwrap()
}

/// The digest that `audit --json` gives for the contradiction.
fn digest(folder: &Path) -> String {
    let document = document(folder);
    let findings = document["findings"].as_array().unwrap();
    let of_code = findings.iter().find(|f| f["code"] == CODE).unwrap();
    of_code["digest"].as_str().unwrap().to_owned()
}

/// The doubtful catalogue, its contradiction settled on the sheet with the digest of now.
fn settled() -> tempfile::TempDir {
    let folder = lay_down(&[DOUBTFUL]);
    let entry = format!(
        "settled = [{{ code = \"{CODE}\", why = \"The moon is a stain.\", by = \"artist\", date = \"2026-01\", digest = \"{}\" }}]",
        digest(folder.path())
    );
    append(folder.path(), SHEET, &entry);
    assert_eq!(codes(folder.path()), (vec![], vec![CODE]));
    folder
}

#[test]
fn a_settled_doubt_is_counted_apart_and_shown_with_its_reason() {
    let folder = settled();
    let ran = keyblock(&["audit", text(folder.path())]);
    assert_eq!(ran.code, Some(0));
    assert_eq!(
        ran.out,
        "nothing found; 1 settled (“keyblock audit --settled” shows them)\n"
    );
    let ran = keyblock(&["audit", text(folder.path()), "--settled"]);
    assert!(
        ran.out.contains("Code     identification-contradicted"),
        "{}",
        ran.out
    );
    assert!(
        ran.out
            .contains("settled by The Artist, 2026-01: The moon is a stain."),
        "{}",
        ran.out
    );
    assert!(ran.out.ends_with("\n1 settled\n"), "{}", ran.out);
    let document = document(folder.path());
    assert_eq!(document["findings"].as_array().unwrap().len(), 0);
    assert_eq!(document["counts"]["doubt"], 0);
    assert_eq!(document["counts"]["settled"], 1);
    let settled = &document["settled"][0];
    assert_eq!(settled["code"], CODE);
    assert_eq!(settled["why"], "The moon is a stain.");
    assert_eq!(settled["by"], "artist");
    assert_eq!(settled["date"], "2026-01");
}

#[test]
fn audit_without_settled_doubts_says_nothing_of_them() {
    let folder = lay_down(&[DOUBTFUL]);
    let ran = keyblock(&["audit", text(folder.path())]);
    assert!(ran.out.ends_with("\n1 doubt\n"), "{}", ran.out);
    let ran = keyblock(&["audit", text(folder.path()), "--settled"]);
    assert_eq!(ran.out, "nothing is settled\n");
}

#[test]
fn a_settled_doubt_wakes_when_the_observation_changes() {
    let folder = settled();
    replace(
        folder.path(),
        SHEET,
        "moon = \"present\"",
        "moon = { is = \"present\", basis = \"first-hand\" }",
    );
    let (open, settled) = codes(folder.path());
    assert_eq!(open, ["identification-contradicted", "settled-changed"]);
    assert!(settled.is_empty());
    // The hint gives the digest with which it is settled again.
    let new = digest(folder.path());
    let judged = judged(folder.path());
    let changed = judged
        .findings
        .iter()
        .find(|f| f.code.as_str() == "settled-changed");
    let help = changed.unwrap().help.as_deref().unwrap();
    assert!(help.contains(&format!("digest = \"{new}\"")), "{help}");
}

#[test]
fn a_settled_doubt_wakes_when_the_record_of_the_state_changes() {
    let folder = settled();
    // A state comes before it, so the sheet is of another state than was judged.
    replace(
        folder.path(),
        DESIGN,
        "states = [{ key = \"dark\"",
        "states = [{ key = \"first\" }, { key = \"dark\"",
    );
    let (open, settled) = codes(folder.path());
    assert!(open.contains(&"identification-contradicted"), "{open:?}");
    assert!(open.contains(&"settled-changed"), "{open:?}");
    assert!(settled.is_empty());
}

#[test]
fn a_settled_doubt_rests_when_the_record_is_changed_elsewhere_moved_or_spaced_otherwise() {
    let folder = settled();
    replace(
        folder.path(),
        SHEET,
        "status",
        "# A remark.\ncondition = \"Foxed.\"\nstatus",
    );
    replace(
        folder.path(),
        SHEET,
        "moon = \"present\"",
        "moon    =   \"present\"",
    );
    replace(folder.path(), DESIGN, "A moon?", "Is there a moon?");
    assert_eq!(codes(folder.path()), (vec![], vec![CODE]));
}

#[test]
fn a_doubt_that_is_gone_leaves_a_hint_at_its_entry() {
    let folder = settled();
    replace(
        folder.path(),
        SHEET,
        "moon = \"present\"",
        "moon = \"absent\"",
    );
    assert_eq!(codes(folder.path()), (vec!["settled-nothing"], vec![]));
}

#[test]
fn an_entry_without_a_digest_settles_the_only_doubt_and_is_told_the_digest() {
    let folder = lay_down(&[DOUBTFUL]);
    let digest = digest(folder.path());
    append(
        folder.path(),
        SHEET,
        &format!("settled = [{{ code = \"{CODE}\" }}]"),
    );
    let judged = judged(folder.path());
    assert_eq!(judged.settled.len(), 1);
    let [hint] = &judged.findings[..] else {
        panic!("{:?}", judged.findings);
    };
    assert_eq!(hint.code.as_str(), "settled-without-digest");
    let help = hint.help.as_deref().unwrap();
    assert!(
        help.contains(&format!("add `digest = \"{digest}\"`")),
        "{help}"
    );
}

/// Two provenance entries that end before they begin.
const TWICE: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
-- records/designs/1/impressions/1.toml
status = "untraced"
provenance = [
  { owner = { name = "A first owner" }, from = "1930", to = "1920" },
  { owner = { name = "A second owner" }, from = "1950", to = "1940" },
]
"#;

#[test]
fn a_digest_settles_one_of_two_doubts_and_an_entry_without_it_settles_neither() {
    let folder = lay_down(&[TWICE]);
    let all = document(folder.path());
    let both: Vec<&Value> = all["findings"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|f| f["code"] == "dates-backwards")
        .collect();
    assert_eq!(both.len(), 2);
    assert_ne!(both[0]["digest"], both[1]["digest"]);
    let alone = "settled = [{ code = \"dates-backwards\" }]";
    append(folder.path(), SHEET, alone);
    let (open, settled) = codes(folder.path());
    assert_eq!(open.iter().filter(|c| **c == "dates-backwards").count(), 2);
    assert!(open.contains(&"settled-without-digest"));
    assert!(settled.is_empty());
    let with = format!(
        "settled = [{{ code = \"dates-backwards\", digest = {} }}]",
        both[1]["digest"]
    );
    replace(folder.path(), SHEET, alone, &with);
    let judged = judged(folder.path());
    let open: Vec<_> = judged
        .findings
        .iter()
        .filter(|f| f.code.as_str() == "dates-backwards")
        .collect();
    assert_eq!(open.len(), 1);
    assert_eq!(open[0].message, both[0]["message"]);
    assert_eq!(judged.settled[0].finding.message, both[1]["message"]);
}

#[test]
fn a_doubt_about_two_records_may_be_settled_on_either() {
    const NUMBERED: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
states = [{ key = "dark" }]
printings = [{ key = "own", kind = "artist", states = "all", edition = 50 }]
-- records/designs/1/impressions/1.toml
status = "untraced"
numbering = "12/50"
identified = { state = "dark", printing = "own" }
-- records/designs/1/impressions/2.toml
status = "untraced"
numbering = "12/50"
identified = { state = "dark", printing = "own" }
"#;
    for sheet in [SHEET, "records/designs/1/impressions/2.toml"] {
        let folder = lay_down(&[NUMBERED]);
        append(
            folder.path(),
            sheet,
            "settled = [{ code = \"number-twice\" }]",
        );
        replace(
            folder.path(),
            sheet,
            "identified",
            "settled = [{ code = \"number-twice\" }]\nidentified",
        );
        replace(
            folder.path(),
            sheet,
            "\"own\" }\nsettled = [{ code = \"number-twice\" }]",
            "\"own\" }",
        );
        let (open, settled) = codes(folder.path());
        assert!(
            settled.contains(&"number-twice"),
            "{sheet}: {open:?} {settled:?}"
        );
        assert!(!open.contains(&"number-twice"), "{sheet}: {open:?}");
    }
}

#[test]
fn what_is_in_a_text_is_settled_by_the_record_beside_it_and_a_page_by_the_catalogue() {
    let folder = lay_down(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n\
         settled = [{ code = \"markup-cleaned\" }]\n\
         -- records/designs/1/design.md\nA text with <script>alert(1)</script>.\n\
         -- records/pages/about.md\n# About\n\nA text with <script>alert(1)</script>.\n",
    ]);
    append(
        folder.path(),
        "catalogue.toml",
        "settled = [{ code = \"markup-cleaned\" }]",
    );
    let (open, settled) = codes(folder.path());
    assert_eq!(settled, ["markup-cleaned", "markup-cleaned"], "{open:?}");
    assert!(!open.contains(&"markup-cleaned"), "{open:?}");
}

#[test]
fn an_error_cannot_be_settled() {
    let folder = lay_down(&[DOUBTFUL]);
    append(
        folder.path(),
        SHEET,
        "holder = \"nobody\"\nsettled = [{ code = \"holder-unknown\" }]",
    );
    let (open, settled) = codes(folder.path());
    assert!(open.contains(&"settled-refused"), "{open:?}");
    assert!(open.contains(&"holder-unknown"), "{open:?}");
    assert!(settled.is_empty());
}

#[test]
fn while_there_are_errors_no_entry_is_said_to_settle_nothing() {
    let folder = settled();
    replace(
        folder.path(),
        SHEET,
        "moon = \"present\"",
        "mooon = \"present\"",
    );
    let (open, settled) = codes(folder.path());
    assert_eq!(open, ["point-unknown"]);
    assert!(settled.is_empty());
}

#[test]
fn what_is_settled_is_not_published() {
    let folder = settled();
    replace(
        folder.path(),
        "records/people/artist.toml",
        "The Artist",
        "The Artist of the Stain",
    );
    let ran = keyblock(&["compile", text(folder.path())]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for file in crate::program::files_below(&folder.path().join("web")) {
        let bytes = fs::read(&file).unwrap();
        let text = String::from_utf8_lossy(&bytes);
        for word in ["moon is a stain", "identification-contradicted"] {
            assert!(!text.contains(word), "{word} is in {}", file.display());
        }
    }
}
