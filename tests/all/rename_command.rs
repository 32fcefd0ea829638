//! `keyblock rename`, run as a program: a key changes everywhere, and nothing else does.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use keyblock::model::finding::Severity;

use crate::program::{Ran, bytes_below, keyblock, text};
use crate::small::lay_down;

/// Records of every kind, with comments, quotes of both kinds and odd spacing that must stay.
const RECORDS: &str = r#"
-- records/designs/ferry/design.toml
# The first of the crossings.
titles = [ { text = "The Ferry", lang = "en" } ]   # as published
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "block" }]
reference_picture = 'ferry.1/recto'
series = [{ series = 'views', position = "1" }]

[[matrices]]
key = "block"

[[states]]
key = 'dark'   # before the moon
shows = { moon = "absent" }

[[states]]
key = "moonlit"
follows = "dark"
shows.moon = "present"

[[printings]]
key = "own"
kind = "artist"
states = ["dark", "moonlit"]
matrices = "block"
series = { series = "views" }

[[variants]]
key = "mica"
states = ["dark"]
-- records/designs/ferry/design.md
See [the museum](holder:museum), [](impression:ferry.1 "recto") and

![A detail](picture:ferry.1/recto)

[r]: mark:oval
By [the list][l].

[l]: lit:list
-- records/designs/ferry/pictures/1.jpg
Not opened by these tests.
-- records/designs/ferry/impressions/1.toml
status = "located"
holder = "museum"    # since 1962
identified = { state = { block = "dark" }, printing = "own", variant = "mica" }
exhibited = [{ exhibition = "early" }]
literature = [{ cite = "list", at = "p. 3" }]
sightings = [{ date = "1962", by = "museum", cite = "document:ledger" }]
marks = [{ mark = "oval", condition = "chipped" }]

[observed]
moon = { is = "absent", by = "col" }

[blocks]
block = "printed"

[[pictures]]
file = "pictures/1.jpg"
rights = "CC0-1.0"
-- records/series/views.toml
publisher = "museum"
-- records/series/views.md
See [](series:views).
-- records/holders/museum.toml
# Seen twice.
name = """
Harbour Museum"""
kind = "museum"
was = ["house",]
-- records/holders/museum.md
About [itself](holder:museum).
-- records/people/col.toml
name = "Col Lector"
-- records/literature.bib
@book{list, author = {Anonymous}, title = {A List}, year = {1961}}
@incollection{part, title = {A Part}, crossref = {list}}
-- records/exhibitions.toml
[early]
title = "Early show"
venue = "museum"
[[early.settled]]
code = "life-dates"
-- records/marks/oval.toml
conditions = [{ key = "chipped" }]
picture = "ferry.1/recto"
-- records/documents/ledger.toml
by = "museum"
holder = "museum"
pictures = [{ file = "pictures/leaf.jpg", name = "leaf", rights = "CC0-1.0" }]
[[tells]]
of = ["design:ferry", "state:ferry/dark", "printing:ferry/own", "impression:ferry.1", "person:col", "series:views"]
says = "Forty sheets."
-- records/documents/ledger.md
See [](document:ledger) and ![The leaf](picture:document/ledger/leaf).
-- records/documents/ledger.transcription.md
Forty sheets for [the museum](holder:museum).
-- records/documents/ledger.de.md
Vierzig Blatt.
-- records/documents/pictures/leaf.jpg
Not opened by these tests.
-- records/pages/paper.md
# Paper
See [](page:paper).
"#;

fn rename(dir: &Path, kind: &str, old: &str, new: &str) -> Ran {
    keyblock(&["rename", kind, old, new, "--in", text(dir)])
}

fn errors(dir: &Path) -> Vec<String> {
    let reading = keyblock::read::read(dir);
    let errors = reading.findings.iter();
    let errors =
        errors.filter(|f| f.severity() == Severity::Error || f.code.as_str() == "key-former");
    errors.map(|f| f.message.clone()).collect()
}

/// The lines of each file that differ, as `path: - before` and `path: + after`.
fn changes(before: &BTreeMap<PathBuf, Vec<u8>>, after: &BTreeMap<PathBuf, Vec<u8>>) -> Vec<String> {
    let mut out = Vec::new();
    let lines = |files: &BTreeMap<PathBuf, Vec<u8>>, path: &Path| -> Vec<String> {
        let bytes = files.get(path).cloned().unwrap_or_default();
        let text = String::from_utf8(bytes).unwrap();
        text.lines().map(str::to_owned).collect()
    };
    let mut paths: Vec<&PathBuf> = before.keys().chain(after.keys()).collect();
    paths.sort();
    paths.dedup();
    for path in paths {
        let (old, new) = (lines(before, path), lines(after, path));
        let name = path.display();
        out.extend(
            old.iter()
                .filter(|l| !new.contains(l))
                .map(|l| format!("{name}: - {l}")),
        );
        out.extend(
            new.iter()
                .filter(|l| !old.contains(l))
                .map(|l| format!("{name}: + {l}")),
        );
    }
    out
}

#[test]
fn a_key_of_every_kind_is_changed_everywhere_and_leaves_no_error() {
    for (kind, old, new) in [
        ("design", "ferry", "the-last-ferry"),
        ("holder", "museum", "harbour-museum"),
        ("person", "col", "col-lector"),
        ("lit", "list", "anonymous-1961"),
        ("exhibition", "early", "early-show"),
        ("mark", "oval", "oval-stamp"),
        ("document", "ledger", "printers-ledger"),
        ("series", "views", "harbour-views"),
        ("picture", "document/ledger/leaf", "leaf-3"),
        ("page", "paper", "papers"),
        ("picture", "ferry.1/recto", "front"),
        ("matrix", "ferry/block", "key-block"),
        ("state", "ferry/dark", "before-moon"),
        ("printing", "ferry/own", "artists-own"),
        ("variant", "ferry/mica", "with-mica"),
        ("point", "ferry/moon", "disc"),
        ("condition", "oval/chipped", "broken"),
    ] {
        let dir = lay_down(&[RECORDS]);
        assert_eq!(errors(dir.path()), Vec::<String>::new());
        let ran = rename(dir.path(), kind, old, new);
        assert_eq!(ran.code, Some(0), "{kind}: {}", ran.err);
        // Neither an error nor a reference by the former key is left.
        assert_eq!(errors(dir.path()), Vec::<String>::new(), "{kind}");
        let catalogue = keyblock::read::read(dir.path()).catalogue;
        let old_key = old.rsplit('/').next().unwrap();
        let former = catalogue
            .former
            .iter()
            .find(|f| f.was.value.as_str() == old_key);
        assert_eq!(former.unwrap().of.key().as_str(), new, "{kind}");
        // And back again: its own former key may become its key.
        let back = match old.rsplit_once('/') {
            Some((record, _)) => format!("{record}/{new}"),
            None => new.to_owned(),
        };
        let ran = rename(dir.path(), kind, &back, old_key);
        assert_eq!(ran.code, Some(0), "{kind}, back: {}", ran.err);
        assert_eq!(errors(dir.path()), Vec::<String>::new(), "{kind}, back");
    }
}

#[test]
fn only_the_key_changes_and_comments_stay() {
    let dir = lay_down(&[RECORDS]);
    let before = bytes_below(dir.path());
    let ran = rename(dir.path(), "state", "ferry/dark", "before-moon");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let path = "records/designs/ferry";
    let ledger = "records/documents/ledger.toml";
    let of = |state: &str| {
        format!(
            "[\"design:ferry\", \"state:ferry/{state}\", \"printing:ferry/own\", \"impression:ferry.1\", \"person:col\", \"series:views\"]"
        )
    };
    assert_eq!(
        changes(&before, &bytes_below(dir.path())),
        [
            "design.toml: - key = 'dark'   # before the moon",
            "design.toml: - follows = \"dark\"",
            "design.toml: - states = [\"dark\", \"moonlit\"]",
            "design.toml: - states = [\"dark\"]",
            "design.toml: + key = 'before-moon'   # before the moon",
            "design.toml: + was = [\"dark\"]",
            "design.toml: + follows = \"before-moon\"",
            "design.toml: + states = [\"before-moon\", \"moonlit\"]",
            "design.toml: + states = [\"before-moon\"]",
            "impressions/1.toml: - identified = { state = { block = \"dark\" }, printing = \"own\", variant = \"mica\" }",
            "impressions/1.toml: + identified = { state = { block = \"before-moon\" }, printing = \"own\", variant = \"mica\" }",
        ]
        .map(|line| format!("{path}/{line}"))
        .into_iter()
        .chain([
            format!("{ledger}: - of = {}", of("dark")),
            format!("{ledger}: + of = {}", of("before-moon")),
        ])
        .collect::<Vec<_>>()
    );
    assert_eq!(
        ran.out,
        "records/designs/ferry/design.toml: 5 places\n\
         records/designs/ferry/impressions/1.toml: 1 place\n\
         records/documents/ledger.toml: 1 place\n\
         the old key is in `was`, so its addresses lead to the new one\n"
    );
}

#[test]
fn a_record_that_is_a_file_gets_another_name_with_the_text_beside_it() {
    let dir = lay_down(&[RECORDS]);
    let ran = rename(dir.path(), "holder", "museum", "harbour-museum");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let read = |path: &str| fs::read_to_string(dir.path().join(path)).unwrap();
    assert_eq!(
        read("records/holders/harbour-museum.toml"),
        "# Seen twice.\nname = \"\"\"\nHarbour Museum\"\"\"\nkind = \"museum\"\nwas = [\"house\", \"museum\",]"
    );
    assert_eq!(
        read("records/holders/harbour-museum.md"),
        "About [itself](holder:harbour-museum)."
    );
    assert!(!dir.path().join("records/holders/museum.toml").exists());
    assert!(
        ran.out
            .contains("records/holders/museum.toml is now records/holders/harbour-museum.toml\n")
    );
}

#[test]
fn what_cannot_be_renamed_changes_nothing() {
    let dir = lay_down(&[RECORDS]);
    let before = bytes_below(dir.path());
    for (kind, old, new, said) in [
        ("holder", "musem", "x", "the nearest key is “museum”"),
        (
            "holder",
            "house",
            "x",
            "it is a former key; the present one is “museum”",
        ),
        (
            "holder",
            "museum",
            "Harbour Museum",
            "write “harbour-museum”",
        ),
        ("holder", "museum", "museum", "is the key already"),
        (
            "holder",
            "museum",
            "col",
            "people and holders are named alike",
        ),
        ("state", "ferry/dark", "moonlit", "another record has it"),
        ("state", "dark", "x", "write it like “14/cut-down”"),
        (
            "person",
            "col",
            "museum",
            "people and holders are named alike",
        ),
        ("boat", "ferry", "x", "<KIND> cannot be “boat”"),
    ] {
        let ran = rename(dir.path(), kind, old, new);
        assert_eq!(ran.code, Some(2), "{kind} {old} {new}: {}", ran.out);
        assert!(ran.err.contains(said), "{kind} {old} {new}: {}", ran.err);
    }
    // A key that is written with escapes, and one that the result would have twice.
    let page = dir.path().join("records/pages/paper.md");
    fs::write(&page, "# Paper\nSee [](holder:mus&#101;um).\n").unwrap();
    let before_escaped = bytes_below(dir.path());
    let ran = rename(dir.path(), "holder", "museum", "harbour-museum");
    assert_eq!(ran.code, Some(1), "{}", ran.out);
    assert!(
        ran.err
            .contains("written with escapes in records/pages/paper.md, line 2"),
        "{}",
        ran.err
    );
    assert_eq!(bytes_below(dir.path()), before_escaped);
    fs::write(&page, "# Paper\nSee [](page:paper).\n").unwrap();
    assert_eq!(bytes_below(dir.path()), before);
}

/// A folder that is in the way is met only when everything else is written: all of it is undone.
#[test]
fn a_refusal_of_the_disk_undoes_what_was_done() {
    let dir = lay_down(&[RECORDS]);
    fs::create_dir_all(dir.path().join("records/designs/the-last-ferry")).unwrap();
    let before = bytes_below(dir.path());
    let ran = rename(dir.path(), "design", "ferry", "the-last-ferry");
    assert_eq!(ran.code, Some(1), "{}", ran.out);
    assert!(ran.err.contains("nothing was changed"), "{}", ran.err);
    assert_eq!(bytes_below(dir.path()), before);
}
