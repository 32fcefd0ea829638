//! `keyblock add`, run as a program: the next record, from its template, without errors.

use std::fs;
use std::path::Path;

use keyblock::model::finding::Severity;
use keyblock::press::{PictureWork, judge};

use crate::program::{Ran, bytes_below, keyblock, text};
use crate::small::lay_down;

const RECORDS: &str = r#"
-- records/designs/14/design.toml
titles = [{ text = "The Last Ferry" }]
was = ["9"]
points = [
  { key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
printings = [{ key = "own", kind = "artist", states = "all" }]
matrices = [{ key = "key" }]
-- records/designs/14/impressions/2.toml
status = "untraced"
-- records/designs/mill/design.toml
number = "20"
titles = [{ text = "The Mill" }]
-- records/holders/harbour-museum.toml
name = "Harbour Museum"
kind = "museum"
was = ["old-museum"]
-- records/people/ada-willem.toml
name = "Ada Willem"
"#;

fn add(folder: &Path, words: &[&str]) -> Ran {
    keyblock(&[&["add"], words, &["--in", text(folder)]].concat())
}

/// The record that was written: its path is the first word of what the command prints.
fn written(folder: &Path, words: &[&str]) -> (String, String) {
    let ran = add(folder, words);
    assert_eq!(ran.code, Some(0), "{words:?}: {}", ran.err);
    let path = ran.out.split(':').next().unwrap().to_owned();
    let record = fs::read_to_string(folder.join(&path)).unwrap();
    (path, record)
}

fn errors(folder: &Path) -> Vec<String> {
    let judged = judge(folder, &PictureWork::Prepare(&|_, _| {}));
    let errors = judged
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error);
    errors.map(|finding| finding.message.clone()).collect()
}

fn active(record: &str) -> Vec<&str> {
    let lines = record.lines();
    lines
        .filter(|line| !line.is_empty() && !line.trim_start().starts_with('#'))
        .collect()
}

#[test]
fn the_next_impression_has_the_next_number_and_the_points_of_its_design() {
    let folder = lay_down(&[RECORDS]);
    let folder = folder.path();
    let options = [
        "--holder",
        "harbour-museum",
        "--accession",
        "1962.44",
        "--kind",
        "proof",
    ];
    let (path, record) = written(
        folder,
        &[&["impression", "14"], options.as_slice()].concat(),
    );
    assert_eq!(path, "records/designs/14/impressions/3.toml");
    let values: Vec<String> = active(&record)
        .iter()
        .map(|line| line.split('#').next().unwrap().trim().to_owned())
        .collect();
    assert_eq!(
        values,
        [
            "holder = \"harbour-museum\"",
            "accession = \"1962.44\"",
            "status = \"located\"",
            "kind = \"proof\""
        ]
    );
    for line in [
        "# The states of the design: dark, moonlit",
        "#state = \"dark\"",
        "#moon = \"present\"",
        "# Is there a moon? present, absent",
        "#lamps = 1",
        "#key = \"printed\"",
    ] {
        assert!(record.contains(line), "{line}\n{record}");
    }
    assert!(
        !record.contains("\n#bird") && !record.contains("#variant"),
        "{record}"
    );
    assert_eq!(errors(folder), [""; 0]);
    // By its number, too; and every commented key can be used: without "#" the record is TOML.
    let (path, record) = written(folder, &["impression", "20"]);
    assert_eq!(path, "records/designs/mill/impressions/1.toml");
    assert_eq!(active(&record).len(), 1);
    let all: String = record
        .lines()
        .map(|line| match line.strip_prefix('#') {
            Some(key) if !key.starts_with([' ', ':']) => format!("{key}\n"),
            _ => format!("{line}\n"),
        })
        .collect();
    toml::from_str::<toml::Table>(&all).unwrap();
}

/// What the register and former keys have is used; so is a number whose file cannot be read.
#[test]
fn no_number_is_used_again() {
    let folder = lay_down(&[
        RECORDS,
        r#"
-- register.toml
form = 1
editions = [
  { edition = "1", dated = "2025-01-01", address = "https://prints.example.org" },
]

[design]
"14" = { since = "1", number = "14" }
"31" = { since = "1", number = "31" }

[impression]
"9.6" = { since = "1" }
"14.4" = { since = "1" }

[holder]
"gone-museum" = { since = "1" }
"#,
    ]);
    let folder = folder.path();
    let ran = keyblock(&["audit", text(folder)]);
    assert!(
        !ran.err.contains("register-syntax") && !ran.out.contains("register-syntax"),
        "{}",
        ran.err
    );
    let (path, _) = written(folder, &["impression", "14"]);
    assert_eq!(path, "records/designs/14/impressions/7.toml");
    fs::write(
        folder.join("records/designs/14/impressions/11.md"),
        "Lost.\n",
    )
    .unwrap();
    let (path, _) = written(folder, &["impression", "14"]);
    assert_eq!(path, "records/designs/14/impressions/12.toml");
    let (path, record) = written(folder, &["design", "--title", "The \"New\" Quay"]);
    assert_eq!(path, "records/designs/32/design.toml");
    assert!(
        record.contains("titles = [{ text = \"The \\\"New\\\" Quay\" }]"),
        "{record}"
    );
    for name in ["gone museum", "Old Museum", "Harbour Museum", "Ada Willem"] {
        let before = bytes_below(folder);
        let ran = add(folder, &["holder", name]);
        assert_eq!(ran.code, Some(2), "{name}");
        assert!(ran.err.contains("--key"), "{}", ran.err);
        assert_eq!(bytes_below(folder), before);
    }
}

#[test]
fn every_kind_is_laid_down_without_errors() {
    let folder = lay_down(&[RECORDS]);
    let folder = folder.path();
    for (words, expected) in [
        (
            &[
                "design",
                "R 7",
                "--date",
                "1931~",
                "--technique",
                "etching, aquatint",
            ][..],
            "records/designs/r-7/design.toml",
        ),
        (&["design"], "records/designs/21/design.toml"),
        (
            &[
                "holder",
                "Ōsaka Museum",
                "--kind",
                "museum",
                "--country",
                "JP",
            ],
            "records/holders/osaka-museum.toml",
        ),
        (
            &["holder", "A Friend", "--kind", "private"],
            "records/holders/owner-b.toml",
        ),
        (
            &["holder", "Музей", "--key", "museum-lviv"],
            "records/holders/museum-lviv.toml",
        ),
        (
            &[
                "person",
                "Viktor Halden",
                "--roles",
                "printer,publisher",
                "--born",
                "1890",
            ],
            "records/people/viktor-halden.toml",
        ),
        (
            &[
                "document",
                "Letter on paper",
                "--kind",
                "letter",
                "--holder",
                "harbour-museum",
            ],
            "records/documents/letter-on-paper.toml",
        ),
        (
            &["mark", "studio-seal", "--kind", "seal", "--text", "VH"],
            "records/marks/studio-seal.toml",
        ),
        (
            &[
                "series",
                "Estuary Weather",
                "--issued",
                "portfolio",
                "--date",
                "1931/1933",
            ],
            "records/series/estuary-weather.toml",
        ),
        (
            &["impression", "r-7"],
            "records/designs/r-7/impressions/1.toml",
        ),
    ] {
        let (path, record) = written(folder, words);
        assert_eq!(path, expected);
        assert!(!record.contains(":schema"), "the catalogue has no schemas");
    }
    assert_eq!(errors(folder), [""; 0]);
    let design = fs::read_to_string(folder.join("records/designs/r-7/design.toml")).unwrap();
    assert!(design.contains("\nnumber = \"R 7\""), "{design}");
    assert!(
        design.contains("\ntechnique = [\"etching\", \"aquatint\"]"),
        "{design}"
    );
    // The key of a private owner has no word of the name: not "a".
    let owner = fs::read_to_string(folder.join("records/holders/owner-b.toml")).unwrap();
    assert!(owner.contains("name = \"A Friend\""));
}

#[test]
fn what_would_be_an_error_is_refused_and_nothing_is_written() {
    let folder = lay_down(&[RECORDS]);
    let folder = folder.path();
    let before = bytes_below(folder);
    for (words, told) in [
        (&["impression", "15"][..], "there is no design “15”"),
        (
            &["impression", "14", "--holder", "harbor-museum"],
            "write “harbour-museum”",
        ),
        (&["impression", "14", "--status", "here"], "located"),
        (
            &["impression", "14", "--kind", "A.P."],
            "write “artists-proof”",
        ),
        (
            &["design", "--technique", "Silkscreen"],
            "write “screenprint”",
        ),
        (&["design", "--date", "about 1931"], "1931~"),
        (&["design", "20"], "has the number 20"),
        (&["design", "Mill"], "a record has it"),
        (&["holder", "Музей"], "--key"),
        (&["holder", "A", "--key", "Not A Key"], "not-a-key"),
    ] {
        let ran = add(folder, words);
        assert_eq!(ran.code, Some(2), "{words:?}: {}", ran.out);
        assert!(ran.err.contains(told), "{words:?}: {}", ran.err);
    }
    assert_eq!(bytes_below(folder), before);
    let elsewhere = tempfile::tempdir().unwrap();
    let ran = add(elsewhere.path(), &["design"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("keyblock start"), "{}", ran.err);
    assert!(bytes_below(elsewhere.path()).is_empty());
}

/// Three series: one whose designs have numbers, one whose designs have none, and one without a record or a number.
const SERIES: &str = r#"
-- records/series/quays.toml
title = "The Quays"
number = 6
-- records/series/weather.toml
title = "Estuary Weather"
-- records/series/roofs.toml
title = "Roofs"
-- records/designs/14/design.toml
titles = [{ text = "The Last Ferry" }]
series = [{ series = "quays", position = "10" }, { series = "weather" }, { name = "Lesser Views" }]
-- records/designs/15/design.toml
titles = [{ text = "The Crane" }]
series = { series = "quays", position = "2" }
"#;

/// Common practice, no source: the number in a series is what its wrapper, its sheets or a list say, so nobody counts on.
#[test]
fn a_design_of_a_series_has_the_number_that_is_stated_and_no_other() {
    let folder = lay_down(&[SERIES]);
    let folder = folder.path();
    let added = |options: &[&str]| {
        let ran = add(folder, &[&["design"], options].concat());
        assert_eq!(ran.code, Some(0), "{options:?}: {}", ran.err);
        let path = ran.out.split(':').next().unwrap();
        let record = fs::read_to_string(folder.join(path)).unwrap();
        let lines = active(&record).into_iter();
        let lines = lines.filter(|line| !line.starts_with("titles"));
        let written: Vec<String> = lines.map(str::to_owned).collect();
        (written, ran.out.clone())
    };
    let (written, told) = added(&["--series", "quays", "--position", "3"]);
    assert_eq!(
        written,
        ["[series]", "series = \"quays\"", "position = \"3\""]
    );
    assert!(
        told.contains("it says: [series], position, titles"),
        "{told}"
    );
    // By its title; the number is left open, and the others are named in their order.
    let (written, told) = added(&["--series", "The quays"]);
    assert_eq!(written, ["[series]", "series = \"quays\""]);
    let open = "its number in “quays” is not known; its other designs have 2, 3, 10: write its own as “position”";
    assert!(told.contains(open), "{told}");
    // Where the series has no numbers, a design gets none.
    let (written, told) = added(&["--series", "weather"]);
    assert_eq!(written, ["[series]", "series = \"weather\""]);
    assert!(
        told.contains("it has no number in “weather”, as no other design of it has one"),
        "{told}"
    );
    let (_, told) = added(&["--series", "weather", "--position", "IV"]);
    assert!(
        told.contains("no other design of “weather” has a number there"),
        "{told}"
    );
    let (_, told) = added(&["--series", "roofs"]);
    assert!(told.contains("it is the first design of “roofs”"), "{told}");
    // A series without a record is named as the other designs name it.
    let (written, _) = added(&["--series", "lesser views", "--position", "1"]);
    assert_eq!(
        written,
        ["[series]", "name = \"Lesser Views\"", "position = \"1\""]
    );
    let (_, told) = added(&["--series", "quays", "--position", "2"]);
    assert!(
        told.contains("design 15 has no. 2 of “quays” too"),
        "{told}"
    );
    assert_eq!(errors(folder), [""; 0]);

    let before = bytes_below(folder);
    for (options, told) in [
        (&["--series", "quay"][..], "did you mean “quays”?"),
        (
            &["--series", "Bridges at Night"],
            "add it first: keyblock add series \"Bridges at Night\"",
        ),
        (&["--position", "3"], "--series"),
    ] {
        let ran = add(folder, &[&["design"], options].concat());
        assert_eq!(ran.code, Some(2), "{options:?}: {}", ran.out);
        assert!(ran.err.contains(told), "{options:?}: {}", ran.err);
    }
    assert_eq!(bytes_below(folder), before);
}

/// The templates change: every key that the command fills is in them.
#[test]
fn a_started_catalogue_takes_every_kind() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path().join("new");
    assert_eq!(keyblock(&["start", text(&folder)]).code, Some(0));
    for words in [
        &[
            "impression",
            "1",
            "--holder",
            "town-museum",
            "--accession",
            "P 2",
        ][..],
        &["design", "--title", "The Roof"],
        &["design", "--series", "roofs", "--position", "3"],
        &["holder", "Library", "--place", "Anyport", "--country", "NO"],
        &["person", "Ada", "--died", "1950"],
        &["document", "Ledger", "--date", "1931", "--shelfmark", "L 1"],
        &["mark", "Stamp", "--kind", "stamp"],
        &["series", "Twelve Roofs", "--issued", "set"],
    ] {
        let (path, record) = written(&folder, words);
        assert!(record.starts_with("#:schema "), "{path}");
    }
    assert_eq!(errors(&folder), [""; 0]);
}
