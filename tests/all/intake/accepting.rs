//! Accepting a batch.

use std::fs;
use std::path::Path;

use super::{FERRY, catalogue, hand_in, inbox, intake};
use crate::program::{Ran, bytes_below, keyblock, text};
use crate::small::{TWO_MUSEUMS, lay_down};

fn take_in(folder: &Path, rows: &str) {
    let table = format!("Accession number,Title,Credit line,Artist\n{rows}");
    let file = hand_in(folder, "list.csv", table);
    let ran = intake(folder, &[text(&file), "--as", "museum"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
}

fn accept(folder: &Path, rows: &[&str]) -> Ran {
    intake(folder, &[&["--accept", "museum"], rows].concat())
}

/// Settles every design that `designs.toml` proposes.
fn settle(folder: &Path) {
    let path = folder.join("records/inbox/museum/designs.toml");
    let designs = fs::read_to_string(&path).unwrap();
    let settled = designs.replace("\n[[designs]]\n", "\n[[designs]]\nsettled = true\n");
    fs::write(path, settled).unwrap();
}

fn records(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let files = bytes_below(&folder.join("records/designs")).into_iter();
    files
        .map(|(path, bytes)| (path.display().to_string(), bytes))
        .collect()
}

#[test]
fn what_names_a_private_owner_is_kept_from_readers() {
    let folder = catalogue();
    let folder = folder.path();
    take_in(folder, "1970.1,The Lock,\"Gift of Hidden Owner, 1950\",\n");
    settle(folder);
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    let record = fs::read_to_string(folder.join("records/designs/2/impressions/1.toml")).unwrap();
    let record: toml::Table = record.parse().unwrap();
    // The words are kept, for the editors.
    assert_eq!(
        record["credit"].as_str(),
        Some("Gift of Hidden Owner, 1950")
    );
    let listed = |of: &toml::Value| -> Vec<String> {
        let keys = of["private"].as_array().unwrap().iter();
        keys.map(|key| key.as_str().unwrap().to_owned()).collect()
    };
    assert!(listed(&toml::Value::Table(record.clone())).contains(&"credit".to_owned()));
    assert_eq!(listed(&record["as_given"]), ["Credit line"]);
    // The house that handed it in is credited with its words.
    assert_eq!(
        record["as_given"]["source"].as_str(),
        Some("Harbour Museum")
    );

    let site = folder.join("site");
    let ran = keyblock(&["compile", text(folder), "--to", text(&site)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for (path, bytes) in bytes_below(&site) {
        let text = String::from_utf8_lossy(&bytes);
        assert!(!text.contains("Hidden Owner"), "{}", path.display());
    }
}

#[test]
fn a_batch_that_would_put_an_error_into_the_catalogue_is_refused_whole() {
    let folder = catalogue();
    let folder = folder.path();
    take_in(
        folder,
        "1970.1,The Lock,Purchased 1950,\n1970.2,Portrait of Hidden Owner,Purchased 1950,\n",
    );
    settle(folder);
    let before = records(folder);
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(1), "{}{}", ran.out, ran.err);
    assert!(
        ran.err.contains("the records would have errors"),
        "{}",
        ran.err
    );
    assert!(records(folder) == before, "something was written");
    assert!(inbox(folder, "proposed.toml").contains("1970.2"));
}

#[test]
fn what_needs_a_decision_stays_until_it_is_named_or_settled() {
    let folder = catalogue();
    let folder = folder.path();
    take_in(
        folder,
        "\
1970.1,The Lock,Purchased 1950,
1970.2,A Bridge by Night,Purchased 1950,
1970.3,The Lock,Purchased 1950,copy after The Artist
1970.4,The Ferry,Purchased 1950,
1970/4,The Ferry,Purchased 1951,
",
    );
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    for (row, why) in [
        (2, "its design is doubtful"),
        (3, "its design would be a new one"),
        (4, "its design is doubtful"),
        (5, "its design is doubtful"),
    ] {
        assert!(
            ran.out.contains(&format!("  row {row}: {why}")),
            "{}",
            ran.out
        );
    }
    settle(folder);
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("row 2: 2.1 (new)"), "{}", ran.out);
    assert!(ran.out.contains("row 3: 3.1 (new)\n"), "{}", ran.out);
    assert!(ran.out.contains("new design: 3\n"), "{}", ran.out);
    for (row, why) in [
        (4, "it is called a copy"),
        (5, "row 6 has the same number"),
        (6, "row 5 has the same number"),
    ] {
        assert!(
            ran.out.contains(&format!("  row {row}: {why}")),
            "{}",
            ran.out
        );
    }
    // Named, they are accepted, and the batch is done.
    let ran = accept(folder, &["4-6"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    assert!(
        !folder
            .join("records/inbox/museum/handed-in/list.csv")
            .exists()
    );
    assert!(
        folder
            .join("records/inbox/museum/accepted/2/list.csv")
            .is_file()
    );
    // A row that the file does not have, and a house that handed nothing in.
    let ran = accept(folder, &["2"]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    let ran = intake(folder, &["--accept", "nobody"]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
}

/// Numbers that an edition published are not given again, under a former key of the design either; nor is that of a file
/// which cannot be read. `proposed.toml` has the numbers that accepting gives.
#[test]
fn the_numbers_that_are_proposed_are_those_that_accepting_gives() {
    let folder = lay_down(&[
        TWO_MUSEUMS,
        FERRY,
        r#"
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
technique = "colour-woodcut"
was = ["lock"]
-- records/designs/2/impressions/3.toml
holder = [
-- register.toml
form = 1
editions = [
  { edition = "1", dated = "2025-01-01", address = "https://prints.example.org" },
]

[design]
"1" = { since = "1", number = "1" }

[impression]
"1.5" = { since = "1" }
"lock.7" = { since = "1" }
"#,
    ]);
    let folder = folder.path();
    take_in(
        folder,
        "1970.1,The Lock,Purchased 1950,\n1970.2,The Ferry,Purchased 1950,\n1970.3,The Lock,Purchased 1950,\n",
    );
    let proposed: toml::Table = inbox(folder, "proposed.toml").parse().unwrap();
    let rows = proposed["rows"].as_array().unwrap().iter();
    let proposed: Vec<&str> = rows
        .map(|row| {
            let record = row["record"].as_str().unwrap();
            let head = record.strip_prefix("# Impression ").unwrap();
            head.split_once(',').unwrap().0
        })
        .collect();
    assert_eq!(proposed, ["2.8", "1.6", "2.9"]);
    settle(folder);
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    for told in ["row 2: 2.8 (new)", "row 3: 1.6 (new)", "row 4: 2.9 (new)"] {
        assert!(ran.out.contains(told), "{}", ran.out);
    }
}
