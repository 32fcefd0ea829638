//! The commands, run as programs: their output on each stream, and their exit codes.

use std::fs;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::Stdio;

use serde_json::Value;

use crate::program::{bytes_below, command, compile, copy_of, edit, keyblock, text};
use crate::small;

/// A design whose date cannot be read, in a catalogue that is sound otherwise.
const BROKEN: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "Die Fähre, Überfahrt", lang = "de" }]
date = "winter"
"#;

fn example() -> tempfile::TempDir {
    copy_of("tests/example-catalogue")
}

fn design(dir: &Path) -> std::path::PathBuf {
    dir.join("records/designs/14/design.toml")
}

#[test]
fn a_new_catalogue_compiles_as_it_stands() {
    let folder = tempfile::tempdir().unwrap();
    let dir = folder.path().join("prints");
    let started = keyblock(&["start", text(&dir)]);
    assert_eq!((started.code, started.err.as_str()), (Some(0), ""));
    assert!(started.out.contains(" created\n"), "{}", started.out);
    let compiled = keyblock(&["compile", text(&dir)]);
    assert_eq!((compiled.code, compiled.err.as_str()), (Some(0), ""));
    assert!(compiled.out.contains("; no findings; "), "{}", compiled.out);
    assert!(dir.join("web/index.html").is_file());
}

#[test]
fn nothing_is_laid_down_beside_other_files() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("letter.txt"), "dear").unwrap();
    let before = bytes_below(folder.path());
    let ran = keyblock(&["start", text(folder.path())]);
    assert_eq!(ran.code, Some(1));
    assert!(ran.err.contains("letter.txt"), "{}", ran.err);
    assert_eq!(bytes_below(folder.path()), before);

    let ran = keyblock(&["start", text(&folder.path().join("letter.txt"))]);
    assert_eq!(ran.code, Some(1));
    assert_eq!(bytes_below(folder.path()), before);
}

#[test]
fn a_catalogue_is_laid_down_beside_version_control_but_over_nothing() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join(".git")).unwrap();
    assert_eq!(keyblock(&["start", text(folder.path())]).code, Some(0));

    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(".gitignore"), "mine").unwrap();
    let before = bytes_below(folder.path());
    assert_eq!(keyblock(&["start", text(folder.path())]).code, Some(1));
    assert_eq!(bytes_below(folder.path()), before);
}

#[test]
fn an_error_leaves_the_last_good_site() {
    let folder = example();
    let dir = folder.path();
    edit(&design(dir), "date = \"1927\"", "date = \"winter\"");
    let first = keyblock(&["compile", text(dir)]);
    assert_eq!((first.code, first.out.as_str()), (Some(1), ""));
    assert!(
        first.err.contains("  Code     date-syntax"),
        "{}",
        first.err
    );
    assert!(
        first.err.ends_with("1 error; nothing was published\n"),
        "{}",
        first.err
    );
    assert!(!dir.join("web").exists(), "something was written");

    edit(&design(dir), "date = \"winter\"", "date = \"1927\"");
    compile(dir);
    let good = bytes_below(&dir.join("web"));
    edit(&design(dir), "date = \"1927\"", "date = \"winter\"");
    assert_eq!(keyblock(&["compile", text(dir)]).code, Some(1));
    assert!(bytes_below(&dir.join("web")) == good, "the site changed");
}

#[test]
fn a_foreign_folder_is_refused_and_untouched() {
    let folder = example();
    let theirs = folder.path().join("letters");
    fs::create_dir(&theirs).unwrap();
    fs::write(theirs.join("index.html"), "dear").unwrap();
    let before = bytes_below(folder.path());
    let ran = keyblock(&["compile", text(folder.path()), "--to", text(&theirs)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""));
    assert!(
        ran.err.contains("holds files that no compile made"),
        "{}",
        ran.err
    );
    assert!(
        bytes_below(folder.path()) == before,
        "something was written"
    );
}

#[test]
fn the_summary_counts_what_there_is_and_the_second_compile_remakes_nothing() {
    let folder = example();
    let first = compile(folder.path());
    let pages = bytes_below(&folder.path().join("web"))
        .keys()
        .filter(|path| path.extension().is_some_and(|e| e == "html"))
        .count();
    assert_eq!(first.lines().count(), 1, "{first}");
    let (head, seconds) = first.trim_end().rsplit_once("; ").unwrap();
    let counts = format!(": 2 designs, 3 impressions, {pages} pages, 1 picture; no findings; ");
    assert!(head.contains(&counts), "{first}");
    assert!(head.ends_with(" files written, 1 picture made"), "{first}");
    let seconds = seconds.strip_suffix(" s").map(str::parse::<f64>);
    assert!(seconds.is_some_and(|s| s.is_ok()), "{first}");

    let site = bytes_below(&folder.path().join("web"));
    let second = compile(folder.path());
    assert!(second.contains("; nothing was remade; "), "{second}");
    assert!(bytes_below(&folder.path().join("web")) == site);
}

/// docs/JSON.md: `{ findings: [{ severity, code, file, line, column, message, help }],
/// counts: { error, doubt, hint } }`; docs/definitions.md, "Findings": line and column from 1, column in
/// characters.
#[test]
fn the_audit_speaks_json() {
    let folder = small::lay_down(&[BROKEN]);
    // Letters of two bytes each come before the fault.
    let design = folder.path().join("records/designs/1/design.toml");
    edit(
        &design,
        "lang = \"de\" }]",
        "lang = \"de\", kind = \"üblich\" }]",
    );
    let ran = keyblock(&["audit", text(folder.path()), "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(1), ""));
    let document: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(keys(&document), ["counts", "findings", "settled"]);
    assert_eq!(
        keys(&document["counts"]),
        ["doubt", "error", "hint", "settled"]
    );
    let findings = document["findings"].as_array().unwrap();
    for finding in findings {
        assert_eq!(
            keys(finding),
            [
                "code", "column", "digest", "file", "help", "line", "message", "severity"
            ]
        );
        assert!(finding["help"].is_string() || finding["help"].is_null());
    }
    let told: Vec<String> = findings
        .iter()
        .map(|f| {
            let (severity, code) = (f["severity"].as_str(), f["code"].as_str());
            let (file, line, column) =
                (f["file"].as_str(), f["line"].as_u64(), f["column"].as_u64());
            let (severity, code, file) = (severity.unwrap(), code.unwrap(), file.unwrap());
            format!(
                "{severity} {code} {file}:{}:{}",
                line.unwrap(),
                column.unwrap()
            )
        })
        .collect();
    let line = fs::read_to_string(&design).unwrap();
    let line = line.lines().next().unwrap();
    let column = line.chars().position(|c| c == 'ü').unwrap();
    assert_eq!(
        told,
        [
            // The value with its quotation mark, counted from 1.
            format!("error value-unknown records/designs/1/design.toml:1:{column}"),
            "error date-syntax records/designs/1/design.toml:2:9".to_owned(),
        ]
    );
    let count = |severity| document["counts"][severity].as_u64().unwrap();
    assert_eq!((count("error"), count("doubt"), count("hint")), (2, 0, 0));
}

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    keys.sort_unstable();
    keys
}

/// A design is found by its key or its number, and the user is told where the two differ.
#[test]
fn commands_take_the_number_of_a_design_or_its_key_and_say_both() {
    let folder = small::lay_down(&[
        "-- records/designs/r1/design.toml\nnumber = \"R 1\"\ntitles = [{ text = \"A\" }]\nstates = [{ key = \"only\" }]\n\
         -- records/designs/2/design.toml\ntitles = [{ text = \"B\" }]\nstates = [{ key = \"only\" }]\n",
    ]);
    let said = "the design with the key “r1” has the number R 1";
    for command in ["identify", "census"] {
        for name in ["r1", "R 1"] {
            let ran = keyblock(&[command, name, "--json", "--in", text(folder.path())]);
            assert_eq!(ran.code, Some(0), "{ran:?}");
            assert!(ran.err.contains(said), "{command} {name}: {ran:?}");
            assert!(
                ran.out.contains("\"design\": \"r1\"") || ran.out.contains("\"design\":\"r1\""),
                "{ran:?}"
            );
        }
        let ran = keyblock(&[command, "2", "--json", "--in", text(folder.path())]);
        assert!(!ran.err.contains("has the number"), "{ran:?}");
    }
}

#[test]
fn doubts_are_no_failure_errors_are_and_words_that_make_no_sense_are_another() {
    let doubtful = small::lay_down(&[small::DOUBTFUL]);
    let broken = small::lay_down(&[BROKEN]);
    let nowhere = broken.path().join("nowhere");
    let (doubtful, broken) = (text(doubtful.path()), text(broken.path()));
    let cases: &[(&[&str], i32)] = &[
        (&["--help"], 0),
        (&["--version"], 0),
        (&["compile", "--help"], 0),
        (&["audit", doubtful], 0),
        (&["compile", doubtful], 0),
        (&["audit", broken], 1),
        (&["compile", broken], 1),
        (&[], 2),
        (&["engrave"], 2),
        (&["audit", broken, "--loudly"], 2),
        (&["compile", text(&nowhere)], 2),
        (&["completions", "no-such-shell"], 2),
    ];
    for (words, code) in cases {
        let ran = keyblock(words);
        assert_eq!(ran.code, Some(*code), "{words:?}: {ran:?}");
        // Everything but the result is printed on standard error.
        if *code == 2 {
            assert_eq!(ran.out, "", "{words:?}");
            assert!(!ran.err.is_empty(), "{words:?}");
        }
    }
    let doubts = keyblock(&["audit", doubtful]).out;
    assert!(doubts.ends_with("\n1 doubt\n"), "{doubts}");
}

#[test]
fn a_reader_who_has_seen_enough_is_no_failure() {
    // More findings than a pipe holds, so that the program is still writing when it is closed.
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let pictures = folder.path().join("records/designs/1/pictures");
    fs::create_dir(&pictures).unwrap();
    for n in 0..1200 {
        fs::write(pictures.join(format!("{n}.jpg")), "").unwrap();
    }
    let mut child = command(&["audit", text(folder.path())])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    out.read_line(&mut line).unwrap();
    assert!(line.starts_with("records/"), "{line}");
    drop(out);
    let mut err = String::new();
    child
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut err)
        .unwrap();
    assert_eq!((child.wait().unwrap().code(), err.as_str()), (Some(0), ""));

    // A closed standard error does not keep the site from being published.
    let mut child = command(&["compile", text(folder.path())])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stderr.take());
    drop(child.stdout.take());
    assert_eq!(child.wait().unwrap().code(), Some(0));
    assert!(folder.path().join("web/index.html").is_file());

    // And errors stay errors.
    fs::write(folder.path().join("catalogue.toml"), "title =").unwrap();
    for words in [
        ["audit", text(folder.path())],
        ["compile", text(folder.path())],
    ] {
        let mut child = command(&words)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stderr.take());
        drop(child.stdout.take());
        assert_eq!(child.wait().unwrap().code(), Some(1), "{words:?}");
    }
}

#[test]
fn every_shell_can_complete_every_command() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let ran = keyblock(&["completions", shell]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{shell}");
        for word in ["start", "compile", "audit", "proof", "completions", "json"] {
            assert!(ran.out.contains(word), "{shell} does not know {word}");
        }
    }
}

#[test]
fn without_a_terminal_there_is_no_colour_and_no_bar() {
    let folder = example();
    let dir = folder.path();
    let record = dir.join("records/designs/14/impressions/1.toml");
    edit(&record, "lamps = { is = 2", "lamps = { is = 3");
    // A bar comes after a second of silence, and this photograph takes an unoptimised build two.
    let large = "demo-site/records/designs/7/pictures/1-detail.jpg";
    fs::copy(
        Path::new(env!("CARGO_MANIFEST_DIR")).join(large),
        dir.join("records/designs/14/pictures/detail.jpg"),
    )
    .unwrap();
    let picture = "[[pictures]]\nfile = \"pictures/detail.jpg\"\nname = \"detail\"\nview = \"detail\"\n\
                   rights = \"CC0-1.0\"\n\n[[sightings]]";
    edit(&record, "[[sightings]]", picture);
    for words in [["audit", text(dir)], ["compile", text(dir)]] {
        let ran = keyblock(&words);
        assert_eq!(ran.code, Some(0));
        let said = ran.out + &ran.err;
        assert!(
            said.contains("Code     identification-contradicted"),
            "{said}"
        );
        let control = said.chars().find(|c| c.is_control() && *c != '\n');
        assert_eq!(control, None, "{words:?}: {said:?}");
    }
}
