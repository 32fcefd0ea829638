//! The command.

use std::fs;
use std::path::Path;

use serde_json::Value;

use super::{HOLDINGS, catalogue, hand_in, inbox, intake, museum};
use crate::program::{bytes_below, edit, text};

fn document(out: &str) -> Value {
    serde_json::from_str(out).unwrap()
}

#[test]
fn a_table_becomes_a_proposal_in_the_inbox_and_nothing_else_is_written() {
    let folder = catalogue();
    let before = bytes_below(folder.path());
    let ran = museum(folder.path(), &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let mut after = bytes_below(folder.path());
    let in_inbox = |path: &Path| path.starts_with("records/inbox/museum");
    let written: Vec<String> = after
        .keys()
        .filter(|path| in_inbox(path))
        .map(|path| path.to_str().unwrap().to_owned())
        .collect();
    assert_eq!(
        written,
        [
            "records/inbox/museum/columns.toml",
            "records/inbox/museum/designs.toml",
            "records/inbox/museum/handed-in/holdings.csv",
            "records/inbox/museum/proposed.toml",
            "records/inbox/museum/report.csv",
            "records/inbox/museum/report.html",
            "records/inbox/museum/values.toml",
        ]
    );
    after.retain(|path, _| !in_inbox(path) && !path.starts_with("sent"));
    assert!(before == after, "something else was written");
    let kept = fs::read(
        folder
            .path()
            .join("records/inbox/museum/handed-in/holdings.csv"),
    );
    assert_eq!(kept.unwrap(), HOLDINGS.as_bytes());
    let proposed: toml::Table = inbox(folder.path(), "proposed.toml").parse().unwrap();
    assert_eq!(proposed["file"].as_str(), Some("holdings.csv"));
    assert_eq!(proposed["rows"].as_array().unwrap().len(), 4);
}

#[test]
fn the_document_says_what_each_row_reads_and_what_it_is_in_the_census() {
    let folder = catalogue();
    let ran = museum(folder.path(), &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told = document(&ran.out);
    assert_eq!(told["name"], "museum");
    assert_eq!(told["columns"][0]["holds"], "accession");
    assert_eq!(told["columns"][2]["column"], "Datierung");
    let rows = told["rows"].as_array().unwrap();
    // The sheet of the museum's own number is the one that is recorded.
    assert_eq!(rows[0]["row"], 2);
    assert_eq!(rows[0]["impression"], "1.1");
    assert_eq!(rows[0]["design"], "1");
    assert_eq!(rows[0]["read"]["date"], "1912~");
    assert_eq!(rows[0]["read"]["numbering"], "12/50");
    assert_eq!(rows[0]["read"]["credit"]["how"], "gift");
    assert_eq!(rows[0]["read"]["credit"]["year"], 1950);
    assert_eq!(rows[1]["impression"], Value::Null);
    assert_eq!(rows[1]["design"], "2");
    // 24.1 cm and 17.8 cm; the heading says that the sheet was measured.
    assert_eq!(
        rows[1]["read"]["sizes"]["sheet"],
        serde_json::json!([241.0, 178.0])
    );
    assert_eq!(rows[1]["read"]["sizes"]["image"], Value::Null);
    assert_eq!(
        rows[1]["read"]["technique"],
        serde_json::json!(["colour-woodcut"])
    );
    assert_eq!(rows[1]["read"]["paper"], "japan-paper");
    // The heading of the last column names the earlier catalogue, whose no. 9 is design 1.
    assert_eq!(told["columns"][8]["holds"], "catalogue-number");
    assert_eq!(rows[2]["design"], "1");
    assert_eq!(rows[2]["unread"]["Blattmaß"], "gerahmt");
    assert_eq!(rows[2]["read"]["date"], Value::Null);
    assert_eq!(told["proposed"]["unchanged"], 0);
    assert_eq!(told["proposed"]["impressions"], 3);
}

#[test]
fn the_same_file_again_writes_nothing_and_says_so() {
    let folder = catalogue();
    let first = museum(folder.path(), &[]);
    let before = bytes_below(&folder.path().join("records/inbox"));
    let again = museum(folder.path(), &[]);
    assert_eq!(again.code, Some(0), "{}", again.err);
    assert!(before == bytes_below(&folder.path().join("records/inbox")));
    assert!(
        first.out.contains("It is in records/inbox/museum"),
        "{}",
        first.out
    );
    assert!(again.out.contains("nothing was written"), "{}", again.out);
    // The file that the inbox keeps stands for the file itself, and names its house.
    let kept = folder
        .path()
        .join("records/inbox/museum/handed-in/holdings.csv");
    let of_kept = intake(folder.path(), &[text(&kept)]);
    assert_eq!(of_kept.out, again.out);
}

#[test]
fn a_corrected_file_replaces_the_one_before_which_stays() {
    let folder = catalogue();
    museum(folder.path(), &[]);
    let corrected = HOLDINGS.replace("kurz vor Mittag", "1914");
    let file = hand_in(folder.path(), "holdings.csv", &corrected);
    let ran = intake(folder.path(), &[text(&file), "--as", "museum"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(inbox(folder.path(), "handed-in/holdings.csv"), corrected);
    assert_eq!(
        inbox(folder.path(), "handed-in/earlier/1-holdings.csv"),
        HOLDINGS
    );
    let renamed = hand_in(folder.path(), "holdings-2.csv", HOLDINGS);
    let ran = intake(folder.path(), &[text(&renamed), "--as", "museum"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(inbox(folder.path(), "handed-in/holdings-2.csv"), HOLDINGS);
    assert_eq!(
        inbox(folder.path(), "handed-in/earlier/2-holdings.csv"),
        corrected
    );
}

#[test]
fn what_an_editor_corrects_stands_in_the_next_run() {
    let folder = catalogue();
    museum(folder.path(), &[]);
    let columns = folder.path().join("records/inbox/museum/columns.toml");
    edit(&columns, "holds = \"remarks\"", "holds = \"condition\"");
    let ran = museum(folder.path(), &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told = document(&ran.out);
    assert_eq!(told["columns"][6]["holds"], "condition");
    assert_eq!(told["columns"][6]["why"], "an editor says so");
}

#[test]
fn an_error_in_what_was_corrected_is_told_at_its_place_and_nothing_is_written() {
    let folder = catalogue();
    museum(folder.path(), &[]);
    let columns = folder.path().join("records/inbox/museum/columns.toml");
    edit(&columns, "holds = \"remarks\"", "holds = \"remark\"");
    let before = bytes_below(folder.path());
    let ran = museum(folder.path(), &["--json"]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert_eq!(ran.out, "");
    let text = fs::read_to_string(&columns).unwrap();
    let line = 1 + text.lines().position(|l| l.contains("\"remark\"")).unwrap();
    let place = format!("--> records/inbox/museum/columns.toml:{line}:");
    assert!(ran.err.contains(&place), "{}", ran.err);
    assert!(
        before == bytes_below(folder.path()),
        "something was written"
    );
}

#[test]
fn wrong_usage_is_told_apart_from_files_that_cannot_be_read() {
    let folder = catalogue();
    let at = folder.path();
    let code = |words: &[&str]| intake(at, words).code;
    let file = hand_in(at, "holdings.csv", HOLDINGS);
    assert_eq!(code(&["no-such-file.csv"]), Some(2));
    assert_eq!(code(&[text(at)]), Some(2));
    assert_eq!(code(&[text(&file), "--as", "The Museum"]), Some(2));
    assert_eq!(code(&[]), Some(2));
    let picture = hand_in(at, "scan.pdf", b"%PDF-1.4 \x00\x01");
    let ran = intake(at, &[text(&picture)]);
    assert_eq!(ran.code, Some(1));
    assert!(
        ran.err.contains("scan.pdf: the file is a PDF document"),
        "{}",
        ran.err
    );
    assert!(ran.err.contains("XLSX, ODS"), "{}", ran.err);
    let empty = hand_in(at, "empty.csv", "");
    assert_eq!(code(&[text(&empty)]), Some(1));
    assert!(!at.join("records/inbox").exists());
    let elsewhere = tempfile::tempdir().unwrap();
    assert_eq!(intake(elsewhere.path(), &[text(&file)]).code, Some(2));
}

#[test]
fn a_workbook_is_read_as_a_table() {
    let folder = catalogue();
    // Written by openpyxl (tests/reference/intake_files.py).
    let workbook = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/intake/openpyxl.xlsx");
    let ran = intake(
        folder.path(),
        &[text(&workbook), "--as", "museum", "--json"],
    );
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told = document(&ran.out);
    assert_eq!(told["file"], "openpyxl.xlsx");
    assert!(!told["rows"].as_array().unwrap().is_empty());
    let kept = folder
        .path()
        .join("records/inbox/museum/handed-in/openpyxl.xlsx");
    assert_eq!(fs::read(kept).unwrap(), fs::read(workbook).unwrap());
}

#[cfg(unix)]
#[test]
fn an_inbox_that_is_a_link_is_refused() {
    let folder = catalogue();
    let elsewhere = tempfile::tempdir().unwrap();
    fs::create_dir_all(folder.path().join("records")).unwrap();
    let link = folder.path().join("records/inbox");
    std::os::unix::fs::symlink(elsewhere.path(), link).unwrap();
    let ran = museum(folder.path(), &[]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(bytes_below(elsewhere.path()).is_empty());
}
