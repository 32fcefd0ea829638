//! `keyblock intake`, run as a program: the files of three museums, the whole story of a batch, hostile and large files.

mod archive;
mod hostile;
#[cfg(target_os = "linux")]
mod large;
mod museums;
mod mutations;
mod story;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::program::{Ran, bytes_below, keyblock, text};

/// A catalogue with an earlier catalogue whose state II was split, a museum with a recorded sheet, and a private owner.
const CATALOGUE: &str = r#"
-- records/holders/harbour.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
country = "NO"
-- records/holders/owner-a.toml
name = "Cornelia Achterbeck"
kind = "private"
-- records/literature.bib
@book{brook-1950,
  author    = {Brook, Ada},
  title     = {The Prints},
  year      = {1950},
  publisher = {Dorn},
  address   = {Northport}
}
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
date = "1912"
technique = ["woodcut"]
literature = [{ cite = "brook-1950", at = "p. 3", number = "3" }]
size = { image = [210, 300] }
[[states]]
key = "dark"
literature = [{ cite = "brook-1950", at = "p. 3", number = "I" }]
[[states]]
key = "moonlit"
literature = [{ cite = "brook-1950", at = "p. 3", number = "II", relation = "covers-ours" }]
[[states]]
key = "cut-down"
described = "1990"
split_from = "moonlit"
literature = [{ cite = "brook-1950", at = "p. 3", number = "II", relation = "covers-ours" }]
[[printings]]
key = "own"
kind = "artist"
states = "all"
-- records/designs/1/impressions/1.toml
# Seen in the store.
holder = "harbour"
accession = "HM 1930.1"
status = "located"

[identified]
state = "dark"       # no moon
certainty = "certain"
basis = "first-hand"

[sheet]
size = [250, 350]    # with a steel rule
"#;

/// Takes a file of these bytes into a catalogue.
fn intake(dir: &Path, file: &str, bytes: &[u8], name: &str) -> Ran {
    let handed_in = tempfile::tempdir().unwrap();
    let file = handed_in.path().join(file);
    fs::write(&file, bytes).unwrap();
    intake_file(dir, &file, name)
}

fn intake_file(dir: &Path, file: &Path, name: &str) -> Ran {
    let words = [
        "intake",
        text(file),
        "--as",
        name,
        "--in",
        text(dir),
        "--json",
    ];
    keyblock(&words)
}

/// The document of a run that succeeded.
#[track_caller]
fn document(ran: &Ran) -> Value {
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).unwrap()
}

/// Every file of a catalogue outside of its inbox.
fn records(dir: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut files = bytes_below(dir);
    files.retain(|path, _| !path.starts_with("records/inbox"));
    files
}

/// A file in the inbox of a house.
fn inbox(dir: &Path, name: &str, file: &str) -> PathBuf {
    dir.join("records/inbox").join(name).join(file)
}

/// The text of a file in the inbox of a house.
#[track_caller]
fn inbox_text(dir: &Path, name: &str, file: &str) -> String {
    let path = inbox(dir, name, file);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The row of a document with this accession number.
#[track_caller]
fn row<'d>(document: &'d Value, accession: &str) -> &'d Value {
    let rows = document["rows"].as_array().unwrap();
    let mut found = rows.iter().filter(|row| row["accession"] == accession);
    let row = found.next().unwrap_or_else(|| panic!("no row {accession}"));
    assert!(found.next().is_none(), "{accession} twice");
    row
}
