//! The codes of findings: each is raised by some catalogue of these tests, and explained in
//! `docs/FINDINGS.md`, which is made from the table of codes and from the findings of those catalogues.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use keyblock::model::codes::Code;

use crate::{findings, limits, pictures};

/// The message of a code.
struct Told {
    message: String,
    help: Option<String>,
}

/// How well a catalogue serves as the example of a code, by its name.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    Exact,
    Near,
    Other,
}

impl Fit {
    fn of(name: &str, code: Code) -> Fit {
        match name.strip_prefix(code.as_str()) {
            Some("") => Fit::Exact,
            Some(_) => Fit::Near,
            None => Fit::Other,
        }
    }
}

/// The codes that the catalogues raise, each with the message from the best example.
static RAISED: LazyLock<BTreeMap<Code, Told>> = LazyLock::new(|| {
    // Faults that no text file can contain.
    let others = [
        findings::files_as_files::not_utf8(),
        findings::files_as_files::too_large(),
        limits::list_too_long(),
        limits::design_too_large(),
        limits::sheet_too_often(),
        pictures::senseless_profile(),
        pictures::too_much_memory(),
    ];
    let of_others = others
        .iter()
        .map(|dir| (String::new(), findings::judged(dir.path()).findings));
    let of_broken = findings::JUDGEMENTS
        .iter()
        .map(|judgement| (judgement.broken.name(), judgement.findings.clone()));
    let mut raised: BTreeMap<Code, (Fit, Told)> = BTreeMap::new();
    for (name, findings) in of_broken.chain(of_others) {
        for finding in findings {
            let code = finding.code;
            let fit = Fit::of(&name, code);
            if raised.get(&code).is_none_or(|(known, _)| fit < *known) {
                let told = Told {
                    message: finding.message,
                    help: finding.help,
                };
                raised.insert(code, (fit, told));
            }
        }
    }
    let told = raised.into_iter().map(|(code, (_, told))| (code, told));
    told.collect()
});

#[test]
fn every_code_is_raised() {
    let never: Vec<&str> = Code::ALL
        .iter()
        .filter(|code| !RAISED.contains_key(code))
        .map(|code| code.as_str())
        .collect();
    assert!(never.is_empty(), "nothing in the tests raises {never:?}");
}

#[test]
fn every_finding_says_what_to_do() {
    for (code, told) in &*RAISED {
        assert!(told.help.is_some(), "{code:?}: {}", told.message);
    }
}

#[test]
fn the_page_of_findings_is_made_from_the_table() {
    let mut page = String::from(
        "# Findings\n\n\
         What Keyblock reports about a catalogue, by code. *Errors* prevent publishing; *doubts* need a\n\
         scholar's decision; *hints* are all other findings. The meaning of a code never changes. Below each code\n\
         is an example from the tests, with what to do.\n\n\
         A doubt or hint that you have judged need not be reported again: the record that it is about may\n\
         say `settled = [{ code = \"…\", why = \"…\", by = \"…\", date = \"…\" }]`. Audit then counts it separately\n\
         and gives a digest to add to the entry (`digest = \"…\"`), so that the doubt is raised again if what it rests\n\
         on changes. `keyblock audit --settled` prints what is settled, with the reasons. Errors cannot be settled.\n\n\
         Of a code with more than ten findings three are listed, then how many more there are and the values at fault.\n\
         `keyblock audit --code CODE --all` lists every finding of a code, `--file PATH` those of a file or folder.\n\n\
         This page is made from\n\
         `src/model/codes.rs`: `KEYBLOCK_BLESS=1 cargo test the_page_of_findings`.\n",
    );
    for code in Code::ALL {
        let (name, severity, meaning) = (code.as_str(), code.severity().word(), code.meaning());
        writeln!(page, "\n**`{name}`** · {severity} · {meaning}").unwrap();
        if let Some(told) = RAISED.get(code) {
            let message = &told.message;
            let help = told.help.as_deref().unwrap_or_default();
            writeln!(page, "\n> {message}  \n> *{help}*").unwrap();
        }
    }
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/FINDINGS.md");
    if std::env::var_os("KEYBLOCK_BLESS").is_some() {
        fs::write(&path, page).unwrap();
    } else {
        let kept = fs::read_to_string(&path).unwrap_or_default();
        assert_eq!(kept, page, "docs/FINDINGS.md is not what the table says");
    }
}
