//! An editor says that a row is a recorded impression, or that it is not.

use std::fs;

use serde_json::Value;

use super::{catalogue, hand_in, inbox, intake, museum};
use crate::program::{edit, text};

fn rows(out: &str) -> Vec<Value> {
    let told: Value = serde_json::from_str(out).unwrap();
    told["rows"].as_array().unwrap().clone()
}

#[test]
fn a_row_becomes_the_record_that_an_editor_names() {
    let folder = catalogue();
    let folder = folder.path();
    let ran = museum(folder, &[]);
    assert!(
        ran.out
            .contains("designs.toml asks about 1 row that may be recorded already."),
        "{}",
        ran.out
    );
    let designs = folder.join("records/inbox/museum/designs.toml");
    // The number of the row is a former number of 1.2, whose place is not known.
    let asked = inbox(folder, "designs.toml");
    assert!(
        asked.contains("[[sheets]]\nsheet = \"1962.45\"\nmay_be = [\"1.2: "),
        "{asked}"
    );
    edit(
        &designs,
        "sheet = \"1962.45\"\n",
        "sheet = \"1962.45\"\nis = \"1.2\"\nwhy = \"the crease\"\n",
    );
    let ran = museum(folder, &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let row = &rows(&ran.out)[2];
    assert_eq!(row["impression"], "1.2", "{row}");
    let report = inbox(folder, "report.html");
    assert!(report.contains("recorded as 1.2"), "{report}");

    let record = folder.join("records/designs/1/impressions/2.toml");
    let before = fs::read_to_string(&record).unwrap();
    let ran = intake(folder, &["--accept", "museum", "4"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("row 4: 1.2 ("), "{}", ran.out);
    let after: toml::Table = fs::read_to_string(&record).unwrap().parse().unwrap();
    assert_eq!(after["accession"].as_str(), Some("1962.45"));
    assert_eq!(after["holder"].as_str(), Some("museum"));
    assert_eq!(after["as_given"]["Blattmaß"].as_str(), Some("gerahmt"));
    // What the scholar wrote stays.
    let before: toml::Table = before.parse().unwrap();
    for key in ["status", "numbering", "former_accessions", "provenance"] {
        assert_eq!(after[key], before[key], "{key}");
    }
    assert!(!folder.join("records/designs/1/impressions/3.toml").exists());
    // The next file finds it by its number, and what was said stands.
    let ran = museum(folder, &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let row = &rows(&ran.out)[2];
    assert_eq!(row["impression"], "1.2", "{row}");
    let designs = inbox(folder, "designs.toml");
    assert!(
        designs.contains("is = \"1.2\"\nwhy = \"the crease\"\n"),
        "{designs}"
    );
}

#[test]
fn a_row_that_is_no_recorded_sheet_is_accepted_without_being_named() {
    let folder = catalogue();
    let folder = folder.path();
    museum(folder, &[]);
    let ran = intake(folder, &["--accept", "museum"]);
    assert!(
        ran.out
            .contains("  row 4: it may be 1.2, which is recorded"),
        "{}{}",
        ran.out,
        ran.err
    );
    let designs = folder.join("records/inbox/museum/designs.toml");
    edit(
        &designs,
        "sheet = \"1962.45\"\n",
        "sheet = \"1962.45\"\nis_not = [\"1.2\"]\nwhy = \"another crease\"\n",
    );
    let ran = intake(folder, &["--accept", "museum"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("row 4: 1.3 (new)"), "{}", ran.out);
    // The record says so, for editors alone, and the census does not ask again.
    let record = fs::read_to_string(folder.join("records/designs/1/impressions/3.toml")).unwrap();
    let not_the_same = "not_same_as = [{ impression = \"1.2\", why = \"another crease\" }]\n";
    assert!(record.contains(not_the_same), "{record}");
    let record: toml::Table = record.parse().unwrap();
    let private = record["private"].as_array().unwrap();
    assert!(
        private
            .iter()
            .any(|key| key.as_str() == Some("not_same_as")),
        "{private:?}"
    );
    let ran = museum(folder, &["--json"]);
    assert_eq!(rows(&ran.out)[2]["impression"], "1.3", "{}", ran.out);
}

#[test]
fn an_impression_that_is_not_there_is_told_at_its_place() {
    let folder = catalogue();
    let folder = folder.path();
    museum(folder, &[]);
    let designs = folder.join("records/inbox/museum/designs.toml");
    edit(
        &designs,
        "sheet = \"1962.45\"\n",
        "sheet = \"1962.45\"\nis = \"1.9\"\n",
    );
    let text = fs::read_to_string(&designs).unwrap();
    let line = 1 + text.lines().position(|line| line.contains("1.9")).unwrap();
    let ran = museum(folder, &[]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    let told = format!(
        "error: the catalogue has no impression 1.9\n  --> records/inbox/museum/designs.toml:{line}:6\n  help: those of \
         design 1 are 1.1 to 1.2\n"
    );
    assert!(ran.err.contains(&told), "{}", ran.err);
    assert_eq!(fs::read_to_string(&designs).unwrap(), text);
}

/// Both would correct one text, and the second would undo what the first says.
#[test]
fn of_two_rows_that_name_one_impression_one_stays() {
    let folder = catalogue();
    let folder = folder.path();
    let rows = "\
Accession number,Title,Credit line,Impression in this catalogue
1950.3,The Ferry,Purchased 1950,1.1
1950.4,The Ferry,Purchased 1951,1.1
";
    let file = hand_in(folder, "list.csv", rows);
    let ran = intake(folder, &[text(&file), "--as", "museum"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let ran = intake(folder, &["--accept", "museum"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("row 2: 1.1 ("), "{}", ran.out);
    let left = "  row 3: row 2 is 1.1 too: say in designs.toml which of the two it is";
    assert!(ran.out.contains(left), "{}", ran.out);
    let record = fs::read_to_string(folder.join("records/designs/1/impressions/1.toml")).unwrap();
    assert!(record.contains("Purchased 1950"), "{record}");
    // An editor says which.
    let designs = folder.join("records/inbox/museum/designs.toml");
    edit(
        &designs,
        "[[designs]]\n",
        "[[sheets]]\nsheet = \"1950.4\"\nis_not = [\"1.1\"]\n\n[[designs]]\n",
    );
    let ran = intake(folder, &["--accept", "museum", "3"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("row 3: 1.3 (new)"), "{}", ran.out);
}
