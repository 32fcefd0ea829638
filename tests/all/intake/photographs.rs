//! Photographs that come with a file: matched, copied when their rows are accepted, never published by that alone.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::{catalogue, hand_in, intake};
use crate::program::{Ran, text};

/// A listing of three sheets; the first is recorded. The last says that its photograph may be shown.
const LISTING: &str = "\
Accession number,Title,Photograph,Rights,May the photograph be shown?
1950.3,The Ferry,,,
1962.44,The Lock,,,yes
1962.46,The Lock,lock-46.jpg,CC0-1.0,yes
";

fn photographs(folder: &Path) -> PathBuf {
    let to = folder.join("sent/photographs");
    fs::create_dir_all(to.join("versos")).unwrap();
    for (name, content) in [
        ("1950-3.jpg", "the ferry"),
        ("versos/1962.44_verso.jpg", "the back of the lock"),
        ("1962.44.jpg", "the lock"),
        ("lock-46.jpg", "another lock"),
        ("lunch.jpg", "a table"),
        ("readme.txt", "no photograph"),
    ] {
        fs::write(to.join(name), content).unwrap();
    }
    to
}

fn take_in(folder: &Path) -> Value {
    let file = hand_in(folder, "list.csv", LISTING);
    let photographs = photographs(folder);
    let words = [
        text(&file),
        "--as",
        "museum",
        "--photographs",
        text(&photographs),
        "--json",
    ];
    let ran = intake(folder, &words);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).unwrap()
}

fn accept(folder: &Path, rows: &[&str]) -> Ran {
    intake(folder, &[&["--accept", "museum"], rows].concat())
}

fn record(folder: &Path, path: &str) -> String {
    fs::read_to_string(folder.join("records/designs").join(path)).unwrap()
}

#[test]
fn photographs_go_with_their_rows_and_none_is_published_without_a_right() {
    let folder = catalogue();
    let folder = folder.path();
    let told = take_in(folder);
    let of_rows: Vec<&Value> = told["rows"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| &row["photographs"])
        .collect();
    assert_eq!(
        of_rows,
        [
            &serde_json::json!(["1950-3.jpg"]),
            &serde_json::json!(["1962.44.jpg", "versos/1962.44_verso.jpg"]),
            &serde_json::json!(["lock-46.jpg"]),
        ]
    );
    let page = fs::read_to_string(folder.join("records/inbox/museum/report.html")).unwrap();
    assert!(page.contains("5 photographs came with the file; 4 belong to rows"));
    assert!(page.contains("Of no row: lunch.jpg"));
    // The inbox keeps them, so that accepting needs the folder no more.
    fs::remove_dir_all(folder.join("sent")).unwrap();

    let ran = accept(folder, &["2-4"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out.contains("row 3: 2.1 (new, 2 photographs)"),
        "{}",
        ran.out
    );
    let copied =
        |path: &str| fs::read_to_string(folder.join("records/designs").join(path)).unwrap();
    assert_eq!(copied("1/pictures/1-recto.jpg"), "the ferry");
    assert_eq!(copied("2/pictures/1-recto.jpg"), "the lock");
    assert_eq!(copied("2/pictures/1-verso.jpg"), "the back of the lock");
    assert_eq!(copied("2/pictures/2-recto.jpg"), "another lock");
    let pictures = |path: &str| -> Vec<(String, String, bool)> {
        let record: toml::Table = record(folder, path).parse().unwrap();
        let pictures = record["pictures"].as_array().unwrap().iter();
        let told = pictures.map(|picture| {
            let text = |key: &str| picture[key].as_str().unwrap().to_owned();
            (
                text("file"),
                text("rights"),
                picture["publish"].as_bool().unwrap(),
            )
        });
        told.collect()
    };
    let kept = |file: &str| {
        (
            file.to_owned(),
            "not stated by the holder".to_owned(),
            false,
        )
    };
    assert_eq!(
        pictures("1/impressions/1.toml"),
        [kept("pictures/1-recto.jpg")]
    );
    // "Yes" without a right is not enough.
    assert_eq!(
        pictures("2/impressions/1.toml"),
        [kept("pictures/1-recto.jpg"), kept("pictures/1-verso.jpg")]
    );
    let shown = (
        "pictures/2-recto.jpg".to_owned(),
        "CC0-1.0".to_owned(),
        true,
    );
    assert_eq!(pictures("2/impressions/2.toml"), [shown]);
    // The batch has them beside its file.
    assert!(
        folder
            .join("records/inbox/museum/accepted/1/photographs/lunch.jpg")
            .is_file()
    );

    // The same file and photographs again: there is nothing to accept.
    let told = take_in(folder);
    assert_eq!(told["proposed"]["unchanged"], 3);
    let ran = accept(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out.contains("There is nothing to accept"),
        "{}",
        ran.out
    );
}

#[test]
fn a_folder_that_is_none_is_wrong_usage() {
    let folder = catalogue();
    let file = hand_in(folder.path(), "list.csv", LISTING);
    let words = [text(&file), "--as", "museum", "--photographs", "nowhere"];
    let ran = intake(folder.path(), &words);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("“nowhere” is no folder"), "{}", ran.err);
    assert!(!folder.path().join("records/inbox").exists());
}
