//! Editions: issuing, keeping addresses, telling what changed.

use std::fs;
use std::path::Path;

use keyblock::issue::register::register_text;
use keyblock::model::codes::Code;
use keyblock::read::read;

use crate::program::{Ran, bytes_below, command, edit, keyblock, text};
use crate::small::{TWO_MUSEUMS, lay_down};

const CATALOGUE: &str = r#"
-- catalogue.toml
title = "The Prints"
siglum = "TP"
artist = "artist"
editors = ["editor"]
language = "en"
address = "https://prints.example.org/cat"
licence = "CC-BY-4.0"
edition = "1"
dated = "2024-06-01"
-- records/people/editor.toml
name = "Ed Itor"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "boat", ask = "A boat?", kind = "presence", rests_on = "matrix" },
]
states = [
  { key = "dark", shows = { moon = "absent", boat = "absent" } },
  { key = "moonlit", shows = { moon = "present", boat = "present" } },
]
-- records/designs/1/impressions/1.toml
holder = "museum"
status = "located"
identified = { state = "dark" }
-- records/designs/1/impressions/2.toml
holder = "gallery"
status = "located"
identified = { state = "moonlit" }
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
-- records/designs/2/impressions/1.toml
holder = "gallery"
status = "located"
"#;

/// The catalogue in a folder of its own.
fn catalogue() -> tempfile::TempDir {
    lay_down(&[TWO_MUSEUMS, CATALOGUE])
}

fn issue(dir: &Path) -> Ran {
    keyblock(&["issue", text(dir)])
}

fn issued(dir: &Path) -> String {
    let ran = issue(dir);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran.out
}

fn page(dir: &Path, address: &str) -> String {
    let file = dir.join("web").join(address).join("index.html");
    fs::read_to_string(&file).unwrap_or_else(|fault| panic!("{}: {fault}", file.display()))
}

fn register(dir: &Path) -> String {
    fs::read_to_string(dir.join("register.toml")).unwrap()
}

/// Names the next edition.
fn next_edition(dir: &Path, from: &str, to: &str) {
    let file = dir.join("catalogue.toml");
    edit(
        &file,
        &format!("edition = \"{from}\""),
        &format!("edition = \"{to}\""),
    );
}

/// Inserts a state between the two of design 1.
fn insert_a_state(dir: &Path) {
    edit(
        &dir.join("records/designs/1/design.toml"),
        "  { key = \"moonlit\"",
        "  { key = \"boat\", shows = { moon = \"absent\", boat = \"present\" } },\n  { key = \"moonlit\"",
    );
}

#[test]
fn the_register_lists_every_address_with_what_the_edition_said_of_it() {
    let folder = catalogue();
    let dir = folder.path();
    let said = issued(dir);
    assert!(said.contains("edition 1 is issued"), "{said}");
    let register = register(dir);
    for line in [
        "{ edition = \"1\", dated = \"2024-06-01\", address = \"https://prints.example.org/cat\" }",
        "\"1/moonlit\" = { since = \"1\", numeral = \"ii/ii\" }",
        "\"1/dark\" = { since = \"1\", numeral = \"i/ii\" }",
        "\"1.1\" = { since = \"1\", identified = \"state=dark\", holder = \"museum\", holds = ",
        "\"1/moon\" = { since = \"1\" }",
        "\"museum\" = { since = \"1\", holds = ",
    ] {
        assert!(register.contains(line), "{line} is not in\n{register}");
    }
    assert!(register.contains("\n[design]\n\"1\" = { since = \"1\", number = \"1\", holds = "));
    // Nothing of the site or the register changes where nothing changed since.
    let site = bytes_below(&dir.join("web"));
    let compiled = keyblock(&["compile", text(dir)]);
    assert_eq!(compiled.code, Some(0), "{}", compiled.err);
    assert!(
        compiled.out.contains("nothing was remade"),
        "{}",
        compiled.out
    );
    assert_eq!(bytes_below(&dir.join("web")), site);
}

#[test]
fn a_register_that_is_read_and_written_is_the_same_to_the_byte() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    insert_a_state(dir);
    next_edition(dir, "1", "2");
    issued(dir);
    let reading = read(dir);
    assert!(reading.findings.is_empty(), "{:?}", reading.findings);
    let read = reading.catalogue.register.unwrap();
    assert_eq!(register_text(&read), register(dir));
}

#[test]
fn an_edition_is_refused_with_every_reason_at_once() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    let before = (register(dir), bytes_below(&dir.join("web")));
    fs::remove_file(dir.join("records/designs/1/impressions/2.toml")).unwrap();
    edit(&dir.join("catalogue.toml"), "2024-06-01", "2023");
    let ran = issue(dir);
    assert_eq!(ran.code, Some(1));
    for reason in [
        "Code     address-vanished",
        "impression 1.2 was issued in edition 1 and is not there any more",
        "restore records/designs/1/impressions/2.toml",
        "edition 1 was issued already",
        "the date of the edition, 2023, is not a day",
    ] {
        assert!(ran.err.contains(reason), "{reason} is not in\n{}", ran.err);
    }
    assert_eq!((register(dir), bytes_below(&dir.join("web"))), before);
    // A compile refuses for the same reason.
    let compiled = keyblock(&["compile", text(dir)]);
    assert_eq!(compiled.code, Some(1));
    assert!(
        compiled.err.contains("address-vanished"),
        "{}",
        compiled.err
    );
}

#[test]
fn an_edition_needs_a_name_a_day_and_a_page_of_its_own() {
    let refused = |from: &str, to: &str, reason: &str| {
        let folder = catalogue();
        let dir = folder.path();
        edit(&dir.join("catalogue.toml"), from, to);
        let ran = issue(dir);
        assert_eq!(ran.code, Some(1));
        assert!(ran.err.contains(reason), "{}", ran.err);
        assert!(!dir.join("register.toml").exists() && !dir.join("web").exists());
    };
    refused("edition = \"1\"\n", "", "does not name the edition");
    refused("dated = \"2024-06-01\"", "", "does not date the edition");
    let folder = catalogue();
    let dir = folder.path();
    next_edition(dir, "1", "0.1");
    issued(dir);
    next_edition(dir, "0.1", "0-1");
    assert!(
        issue(dir)
            .err
            .contains("would have the address of edition 0.1")
    );
    next_edition(dir, "0-1", "0.2");
    edit(&dir.join("catalogue.toml"), "2024-06-01", "2024-05-31");
    assert!(issue(dir).err.contains("before edition 0.1 (2024-06-01)"));
}

#[test]
fn a_damaged_register_refuses_to_compile_and_is_not_written_over() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    let damaged = register(dir).replace("since = \"1\", number", "number");
    fs::write(dir.join("register.toml"), &damaged).unwrap();
    next_edition(dir, "1", "2");
    for words in ["compile", "issue"] {
        let ran = keyblock(&[words, text(dir)]);
        assert_eq!(ran.code, Some(1), "{words}");
        assert!(ran.err.contains("Code     register-damaged"), "{}", ran.err);
    }
    assert_eq!(register(dir), damaged);
}

#[test]
fn a_record_may_vanish_from_the_site_only_with_a_reason() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    next_edition(dir, "1", "2");
    let design = dir.join("records/designs/2/design.toml");
    let whole = fs::read_to_string(&design).unwrap();
    fs::remove_dir_all(dir.join("records/designs/2")).unwrap();
    let ran = keyblock(&["audit", text(dir)]);
    // What lay in the design is told with it.
    assert!(ran.err.contains("design 2 was issued") || ran.out.contains("design 2 was issued"));
    assert!(
        !ran.out.contains("impression 2.1 was issued"),
        "{}",
        ran.out
    );
    fs::create_dir_all(dir.join("records/designs/2/impressions")).unwrap();
    fs::write(
        &design,
        format!("{whole}\nstanding = \"withdrawn\"\nwhy = \"By a pupil.\"\n"),
    )
    .unwrap();
    fs::write(
        dir.join("records/designs/2/impressions/1.toml"),
        "holder = \"gallery\"\nstatus = \"located\"\n",
    )
    .unwrap();
    issued(dir);
    assert!(page(dir, "design/2").contains("By a pupil."));
    let changes = page(dir, "edition/2");
    assert!(changes.contains("Withdrawn."), "{changes}");
    assert!(register(dir).contains("standing = { \"2\" = \"withdrawn\" }"));
}

#[test]
fn pages_say_what_an_edition_changed_by_entry_and_by_holder() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    assert!(
        page(dir, "edition/1")
            .contains("The first edition: 2 designs, 3 impressions and 2 holders")
    );
    // The changes before the next edition belong to none.
    insert_a_state(dir);
    edit(
        &dir.join("records/designs/1/impressions/2.toml"),
        "gallery",
        "museum",
    );
    edit(
        &dir.join("records/designs/2/design.toml"),
        "The Lock",
        "The Old Lock",
    );
    fs::write(
        dir.join("records/designs/2/impressions/2.toml"),
        "holder = \"museum\"\nstatus = \"located\"\n",
    )
    .unwrap();
    let compiled = keyblock(&["compile", text(dir)]);
    assert_eq!(compiled.code, Some(0), "{}", compiled.err);
    let told = [
        "ii</span>/ii is now <span class=\"numeral\">iii</span>/iii",
        "New: state <span class=\"numeral\">ii</span>/iii",
        "evised: titles",
        "New impression: ",
        "now with ",
        "Now recorded here: ",
        "Formerly recorded here: ",
    ];
    let latest = page(dir, "changes");
    assert!(latest.contains("Since edition 1"));
    // What readers cite is no longer what the edition said; the address is the same.
    let cited = |dir: &Path| {
        let files = ["citation.bib", "citation.json", "citation.ris"];
        let files =
            files.map(|file| fs::read_to_string(dir.join("web/design/1").join(file)).unwrap());
        (page(dir, "design/1"), files)
    };
    let revised =
        "edition 1, 1 June 2024, as revised since, https://prints.example.org/cat/design/1/";
    let (design, files) = cited(dir);
    assert!(design.contains(revised), "{design}");
    for file in files {
        assert!(file.contains("as revised since"), "{file}");
    }
    assert!(page(dir, "cite").contains("Add the day on which you read the page"));
    for words in told {
        assert!(latest.contains(words), "{words} is not in\n{latest}");
    }
    next_edition(dir, "1", "2");
    issued(dir);
    let second = page(dir, "edition/2");
    for words in told {
        assert!(second.contains(words), "{words} is not in\n{second}");
    }
    assert!(!page(dir, "changes").contains("Since edition"));
    let (design, files) = cited(dir);
    assert!(!design.contains("as revised since") && design.contains("edition 2, 1 June 2024, "));
    assert!(files.iter().all(|file| !file.contains("as revised since")));
    // The numerals of the first edition can be looked up, on its page, beside the state and in the concordance.
    let first = page(dir, "edition/1");
    assert!(
        first.contains("1 <span class=\"numeral\">ii</span>/ii"),
        "{first}"
    );
    let design = page(dir, "design/1");
    let formerly =
        "formerly <span class=\"numeral\">ii</span> (<a href=\"../../edition/1/\">edition 1</a>)";
    assert!(design.to_lowercase().contains(formerly), "{design}");
    let sheet = page(dir, "impression/1.2");
    assert!(sheet.contains("In earlier editions"), "{sheet}");
    assert!(page(dir, "concordance").contains("Earlier editions of this catalogue"));
    // The page of an edition stays as it is when the next is issued.
    next_edition(dir, "2", "3");
    issued(dir);
    let later = page(dir, "edition/2");
    let account = |text: &str| {
        let text = text.split("By entry").nth(1).unwrap();
        text.split("id=\"editions\"").next().unwrap().to_owned()
    };
    assert_eq!(account(&later), account(&second));
}

#[test]
fn the_feed_has_an_entry_for_each_edition_and_each_changed_design() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    insert_a_state(dir);
    let settings = dir.join("catalogue.toml");
    next_edition(dir, "1", "2");
    edit(&settings, "2024-06-01", "2025-06-01");
    // The catalogue moves: ids stay, links follow.
    edit(
        &settings,
        "https://prints.example.org/cat",
        "https://elsewhere.example.org",
    );
    issued(dir);
    let feed = fs::read_to_string(dir.join("web/changes/feed.atom")).unwrap();
    let all = |start: &str, end: &str| -> Vec<String> {
        let rest = feed.split(start).skip(1);
        rest.map(|rest| rest.split(end).next().unwrap().to_owned())
            .collect()
    };
    assert_eq!(
        all("<id>", "</id>"),
        [
            "https://prints.example.org/cat/changes/feed.atom",
            "https://elsewhere.example.org/edition/2/",
            "https://elsewhere.example.org/edition/2/#edition-design-1",
            "https://prints.example.org/cat/edition/1/",
        ]
    );
    assert_eq!(
        all("<updated>", "</updated>"),
        ["2025-06-01", "2025-06-01", "2025-06-01", "2024-06-01"]
            .map(|day| format!("{day}T00:00:00Z"))
    );
    assert_eq!(all("<entry>", "</entry>").len(), 3);
    for entry in all("<entry>", "</entry>") {
        for part in [
            "<title>",
            "<updated>",
            "<link rel=\"alternate\"",
            "<summary>",
        ] {
            assert!(entry.contains(part), "{entry}");
        }
    }
    assert!(feed.contains("<author><name>Ed Itor</name></author>"));
    assert!(
        all("<link rel=\"alternate\" type=\"text/html\" href=\"", "\"")
            .contains(&"https://elsewhere.example.org/design/1/".to_owned())
    );
    // The page of changes, the opening page and the pages of editions name it in their heads.
    for (address, href) in [
        ("changes", "./feed.atom"),
        ("", "./changes/feed.atom"),
        ("edition/2", "../../changes/feed.atom"),
    ] {
        let link = format!("<link rel=\"alternate\" type=\"application/atom+xml\" href=\"{href}\"");
        assert!(page(dir, address).contains(&link), "{address}");
    }
}

#[test]
fn what_became_private_is_told_of_no_earlier_edition() {
    let folder = catalogue();
    let dir = folder.path();
    issued(dir);
    insert_a_state(dir);
    let sheet = dir.join("records/designs/1/impressions/2.toml");
    edit(&sheet, "status", "publish = false\nstatus");
    edit(
        &dir.join("records/designs/1/impressions/1.toml"),
        "status",
        "private = [\"identified\"]\nstatus",
    );
    next_edition(dir, "1", "2");
    issued(dir);
    for address in ["changes", "edition/1", "edition/2", "impression/1.1"] {
        let page = page(dir, address);
        assert!(!page.contains("1.2"), "{address}: {page}");
        assert!(!page.contains("In earlier editions"), "{address}");
    }
    // The address was issued, so the register keeps it, with what it said when it was public.
    assert!(register(dir).contains("\"1.2\" = { since = \"1\", identified = \"state=moonlit\""));
    // What is published again leads to the same address.
    edit(&sheet, "publish = false\n", "");
    next_edition(dir, "2", "3");
    issued(dir);
    assert!(page(dir, "impression/1.2").contains("Town Gallery"));
}

#[test]
fn the_register_has_no_digest_of_an_owner_who_is_not_named() {
    let owner = "\n-- records/holders/owner-a.toml\nname = \"Ottilie Quorn\"\nkind = \"private\"\nprivate = [\"kind\"]\n";
    let folder = lay_down(&[TWO_MUSEUMS, CATALOGUE, owner]);
    let dir = folder.path();
    edit(
        &dir.join("records/designs/1/impressions/2.toml"),
        "gallery",
        "owner-a",
    );
    issued(dir);
    assert!(
        register(dir).contains("\n\"owner-a\" = { since = \"1\" }\n"),
        "{}",
        register(dir)
    );
    assert!(!register(dir).contains("Quorn"));
}

#[test]
fn a_compile_says_which_addresses_the_site_loses() {
    let folder = catalogue();
    let dir = folder.path();
    assert_eq!(keyblock(&["compile", text(dir)]).code, Some(0));
    fs::rename(
        dir.join("records/designs/2"),
        dir.join("records/designs/lock"),
    )
    .unwrap();
    let ran = keyblock(&["compile", text(dir)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for line in [
        "no longer has 3 addresses",
        "\n  design/2/\n",
        "\n  impression/2.1/\n",
    ] {
        assert!(ran.err.contains(line), "{}", ran.err);
    }
}

#[test]
fn an_entry_that_says_nothing_of_what_it_said_is_refused_until_it_is_settled() {
    let folder = catalogue();
    let dir = folder.path();
    let design = dir.join("records/designs/2/design.toml");
    let full = "titles = [{ text = \"The Lock\" }]\ndate = \"1927\"\nsubjects = [\"a lock\"]\n";
    fs::write(&design, full).unwrap();
    issued(dir);
    next_edition(dir, "1", "2");
    fs::write(
        &design,
        "titles = [{ text = \"The Mill\" }]\ndate = \"1931\"\nsubjects = [\"a mill\"]\nseries = { name = \"Mills\" }\n",
    )
    .unwrap();
    let ran = issue(dir);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(
        ran.err
            .contains("issued addresses may have come to mean other things"),
        "{}",
        ran.err
    );
    let codes: Vec<Code> = crate::findings::judged(dir)
        .findings
        .iter()
        .map(|f| f.code)
        .collect();
    assert!(codes.contains(&Code::EntryReplaced), "{codes:?}");
}

#[test]
fn a_comparison_in_the_place_of_another_is_refused() {
    let folder = catalogue();
    let dir = folder.path();
    let third = "holder = \"museum\"\nstatus = \"located\"\n";
    fs::write(dir.join("records/designs/1/impressions/3.toml"), third).unwrap();
    let design = dir.join("records/designs/1/design.toml");
    edit(
        &design,
        "points",
        "comparisons = [{ of = [\"1.1\", \"1.2\"] }]\npoints",
    );
    issued(dir);
    next_edition(dir, "1", "2");
    edit(
        &design,
        "comparisons = [",
        "comparisons = [{ of = [\"1.1\", \"1.3\"] }, ",
    );
    let ran = issue(dir);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    let told =
        "comparison 1 of design 1 shows 1.1, 1.3; edition 1 issued it as a comparison of 1.1, 1.2";
    assert!(ran.err.contains(told), "{}", ran.err);
    // At the end of the list it has an address of its own.
    edit(
        &design,
        "{ of = [\"1.1\", \"1.3\"] }, { of = [\"1.1\", \"1.2\"] }",
        "{ of = [\"1.1\", \"1.2\"] }, { of = [\"1.1\", \"1.3\"] }",
    );
    issued(dir);
}

/// Runs git, where there is one.
fn git(dir: &Path, words: &[&str]) -> bool {
    let mut git = std::process::Command::new("git");
    git.arg("-C")
        .arg(dir)
        .args(["-c", "user.name=E", "-c", "user.email=e@example.org"]);
    git.env("GIT_CONFIG_GLOBAL", "/dev/null").args(words);
    git.output().is_ok_and(|output| output.status.success())
}

#[test]
fn records_that_differ_from_what_is_committed_need_a_reason() {
    let folder = catalogue();
    let dir = folder.path();
    if !git(dir, &["init", "-q"]) {
        return;
    }
    assert!(git(dir, &["add", "."]) && git(dir, &["commit", "-q", "-m", "Records"]));
    // A program that the repository names must not be run.
    assert!(git(dir, &["config", "core.fsmonitor", "touch ran; false"]));
    issued(dir);
    assert!(!dir.join("ran").exists());
    next_edition(dir, "1", "2");
    let ran = issue(dir);
    assert_eq!(ran.code, Some(1));
    assert!(
        ran.err.contains("catalogue.toml") && ran.err.contains("register.toml"),
        "{}",
        ran.err
    );
    assert!(ran.err.contains("--uncommitted REASON"), "{}", ran.err);
    let ran = keyblock(&[
        "issue",
        text(dir),
        "--uncommitted",
        "The register goes in with the edition.",
    ]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(register(dir).contains("uncommitted = \"The register goes in with the edition.\""));
}

#[test]
fn without_git_an_edition_is_issued_and_that_is_said() {
    let folder = catalogue();
    let dir = folder.path();
    let output = command(&["issue", text(dir)])
        .env("PATH", "")
        .output()
        .unwrap();
    let err = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(0), "{err}");
    assert!(
        err.contains("it is not known whether the records are committed"),
        "{err}"
    );
}
