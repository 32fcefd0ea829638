//! One batch from the file to the published catalogue, and the corrected file that follows it.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};

use super::{CATALOGUE, document, inbox, inbox_text, intake, records, row};
use crate::program::{Ran, bytes_below, edit, keyblock, text};
use crate::small::lay_down;

const LIST: &str = include_str!("../../intake/list.csv");

/// Writes what a value reads into `values.toml`, as an editor does.
#[track_caller]
fn correct(dir: &Path, value: &str, reads: &str) {
    let path = inbox(dir, "harbour", "values.toml");
    let written = fs::read_to_string(&path).unwrap();
    let is = format!("is = {}", json!(value));
    let start = written
        .find(&is)
        .unwrap_or_else(|| panic!("{value} is not in\n{written}"));
    let end = written[start..]
        .find("\n[[")
        .map_or(written.len(), |end| start + end);
    let mut lines: Vec<String> = written[start..end].lines().map(str::to_owned).collect();
    lines.retain(|line| !line.starts_with("reads ="));
    lines.insert(1, format!("reads = {reads}"));
    let corrected = format!(
        "{}{}\n{}",
        &written[..start],
        lines.join("\n"),
        &written[end..]
    );
    fs::write(path, corrected).unwrap();
}

fn accept(dir: &Path) -> Ran {
    keyblock(&["intake", "--accept", "harbour", "--in", text(dir)])
}

fn record(dir: &Path, path: &str) -> String {
    fs::read_to_string(dir.join("records/designs").join(path))
        .unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// The keys of the impressions of a design.
fn impressions(dir: &Path, design: &str) -> Vec<String> {
    let files = bytes_below(&dir.join("records/designs").join(design).join("impressions"));
    files
        .keys()
        .map(|file| file.display().to_string())
        .collect()
}

fn take_in(dir: &Path, list: &str) -> Value {
    document(&intake(dir, "list.csv", list.as_bytes(), "harbour"))
}

#[test]
fn a_batch_is_corrected_settled_accepted_and_corrected_by_the_next_file() {
    let catalogue = lay_down(&[CATALOGUE]);
    let dir = catalogue.path();
    let before = records(dir);

    // The file as it came: a date is not understood, a paper not whole, and two titles of one print make two designs.
    let first = take_in(dir, LIST);
    let quay = row(&first, "HM 1931.5");
    assert_eq!(
        (&quay["read"]["date"], &quay["read"]["paper"]),
        (&Value::Null, &json!("tissue-paper"))
    );
    assert_eq!(quay["is"], "new");
    let recorded = row(&first, "HM 1930.1");
    assert_eq!(
        (&recorded["design"], &recorded["impression"]),
        (&json!("1"), &json!("1.1"))
    );
    // The second state of the earlier catalogue was split: neither half is chosen.
    let split = row(&first, "HM 1930.2");
    assert!(
        split["doubts"]
            .to_string()
            .contains("is state ii or iii here"),
        "{}",
        split["doubts"]
    );

    // Nothing of a new design is accepted before an editor settled it.
    let refused = keyblock(&["intake", "--accept", "harbour", "4", "--in", text(dir)]);
    assert_eq!(refused.code, Some(1), "{}{}", refused.out, refused.err);
    assert!(records(dir) == before, "something was written");

    // The editor corrects a date and a paper, joins the two designs and settles a third.
    correct(dir, "summer or so", "{ created = \"1921-21\" }");
    correct(
        dir,
        "Woodcut on thin tissue",
        "{ technique = \"woodcut\", paper = \"mulberry-paper\" }",
    );
    let quay = "[[designs]]\nis = \"new\"\ntitle = \"Night Quay\"\nsheets = [\"HM 1931.5\", \"HM 1931.6\"]\nsettled = true\n";
    let designs = format!("leave_out = [\"HM 1931.7\"]\n\n{quay}");
    fs::write(inbox(dir, "harbour", "designs.toml"), designs).unwrap();
    let second = take_in(dir, LIST);
    for (accession, date) in [("HM 1931.5", "1921-21"), ("HM 1931.6", "1920")] {
        let read = &row(&second, accession)["read"];
        assert_eq!(
            (&read["date"], &read["paper"]),
            (&json!(date), &json!("mulberry-paper"))
        );
        assert_eq!(row(&second, accession)["new_design"], "Night Quay");
    }
    assert_eq!(row(&second, "HM 1931.7")["is"], "left-out");
    assert_eq!(second["proposed"]["designs"], 1);
    assert!(records(dir) == before, "something was written");

    // Accepted: the records are there and sound, numbers count on, the words of the holder are kept.
    let accepted = accept(dir);
    assert_eq!(accepted.code, Some(0), "{}{}", accepted.out, accepted.err);
    assert_eq!(impressions(dir, "1"), ["1.toml", "2.toml"]);
    assert_eq!(impressions(dir, "2"), ["1.toml", "2.toml"]);
    let design = record(dir, "2/design.toml");
    assert!(design.contains("Night Quay"), "{design}");
    let first_quay = record(dir, "2/impressions/1.toml");
    for kept in [
        "HM 1931.5",
        "summer or so",
        "Woodcut on thin tissue",
        "foxed",
        "paper = \"mulberry-paper\"",
    ] {
        assert!(first_quay.contains(kept), "{kept} is not in\n{first_quay}");
    }
    assert!(!first_quay.contains("[identified]"), "{first_quay}");
    // What the museum says of the state is its opinion, with its name.
    let second_ferry = record(dir, "1/impressions/2.toml");
    assert!(
        second_ferry.contains("after = \"brook-1950\"\nby = \"harbour\""),
        "{second_ferry}"
    );
    // What the scholar wrote is as it was, comments included, and what the file adds stands with it.
    let by_scholar = record(dir, "1/impressions/1.toml");
    for line in [
        "# Seen in the store.",
        "state = \"dark\"       # no moon",
        "size = [250, 350]    # with a steel rule",
    ] {
        assert!(by_scholar.contains(line), "{line} is not in\n{by_scholar}");
    }
    assert!(
        by_scholar.contains("Gift of Jonas Weir in 1930"),
        "{by_scholar}"
    );
    let audited = keyblock(&["audit", text(dir)]);
    assert_eq!(audited.code, Some(0), "{}", audited.out);
    let batch = bytes_below(&inbox(dir, "harbour", "accepted/1"));
    assert!(
        batch.values().any(|bytes| bytes == LIST.as_bytes()),
        "{:?}",
        batch.keys()
    );

    // The same file again proposes nothing, and accepting it changes nothing.
    let done = records(dir);
    let again = take_in(dir, LIST);
    let proposed = &again["proposed"];
    assert_eq!(
        (
            &proposed["designs"],
            &proposed["impressions"],
            &proposed["corrected"]
        ),
        (&json!(0), &json!(0), &json!(0))
    );
    assert_eq!(proposed["unchanged"], 4);
    let nothing = accept(dir);
    assert_eq!(nothing.code, Some(0), "{}", nothing.err);
    assert!(records(dir) == done, "something was written");

    // The scholar measures a sheet; the museum corrects a credit line and that size, and hands in one sheet more.
    let measured = dir.join("records/designs/1/impressions/2.toml");
    edit(
        &measured,
        "image = [210, 300]",
        "image = [209, 301]     # in the print room, 2026",
    );
    let corrected = LIST
        .replace(
            "Gift of Olga Stern in 1930",
            "Gift of Olga Stern and Jonas Weir in 1930",
        )
        .replace("image: 210 x 300 mm", "image: 211 x 302 mm")
        + "HM 1932.1,The Ferry,1912,Woodcut,image: 210 x 300 mm,,Brook 3,I,Bequest of Ada Brook in 1932,\n";
    let third = take_in(dir, &corrected);
    let proposed = &third["proposed"];
    assert_eq!(
        (
            &proposed["impressions"],
            &proposed["corrected"],
            &proposed["unchanged"]
        ),
        (&json!(1), &json!(1), &json!(3))
    );
    let changes = row(&third, "HM 1930.2")["changes"].as_array().unwrap();
    let kept = |key: &str| {
        let change = changes.iter().find(|change| change["key"] == key);
        change.map(|change| change["kept"].as_bool().unwrap())
    };
    assert_eq!(kept("sheet.image"), Some(true), "{changes:#?}");
    assert_eq!(kept("credit"), Some(false), "{changes:#?}");

    let accepted = accept(dir);
    assert_eq!(accepted.code, Some(0), "{}{}", accepted.out, accepted.err);
    let text_now = fs::read_to_string(&measured).unwrap();
    assert!(
        text_now.contains("image = [209, 301]     # in the print room, 2026"),
        "{text_now}"
    );
    assert!(
        text_now.contains("Olga Stern and Jonas Weir in 1930"),
        "{text_now}"
    );
    assert_eq!(impressions(dir, "1"), ["1.toml", "2.toml", "3.toml"]);
    assert_eq!(record(dir, "2/impressions/1.toml"), first_quay);
    assert_eq!(record(dir, "1/impressions/1.toml"), by_scholar);
    assert!(inbox(dir, "harbour", "accepted/2").is_dir());
    // The corrections stay for the next file.
    assert!(inbox_text(dir, "harbour", "values.toml").contains("1921-21"));

    // Published: the records are there, and nothing private is, in no file.
    let site = tempfile::tempdir().unwrap();
    let compiled = keyblock(&["compile", text(dir), "--to", text(&site.path().join("web"))]);
    assert_eq!(compiled.code, Some(0), "{}{}", compiled.out, compiled.err);
    let published = bytes_below(&site.path().join("web"));
    let page =
        String::from_utf8_lossy(&published[Path::new("impression/2.1/index.html")]).into_owned();
    assert!(page.contains("HM 1931.5"), "{page}");
    for (path, bytes) in &published {
        let text = String::from_utf8_lossy(bytes);
        assert!(
            !text.contains("Achterbeck"),
            "{} names a private owner",
            path.display()
        );
    }
}
