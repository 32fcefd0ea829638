//! The rules of the code, checked on its source: data flows one way, and each file has one subject, which its
//! header states.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use circles::circles;
use modules::{House, lines_for_tests};
use resolve::Target;
use sources::{Texts, stage_of};

/// Circles among files.
mod circles;
/// What is defined, imported and named where.
mod modules;
/// Where paths lead.
mod resolve;
/// The files and crates below `src`.
mod sources;
/// The checker, held against small sources.
mod the_checker;

/// What each stage may import (DEVELOPERS.md, "How data flows").
const MAY_IMPORT: &[(&str, &[&str])] = &[
    ("model", &[]),
    ("read", &["model"]),
    ("study", &["model"]),
    ("audit", &["model", "study"]),
    ("picture", &["model"]),
    ("page", &["model", "study", "picture"]),
    ("exchange", &["model", "read", "study", "picture", "page"]),
    ("issue", &["model"]),
    (
        "press",
        &[
            "model", "read", "study", "audit", "picture", "page", "exchange", "issue",
        ],
    ),
    ("proof", &["model", "page", "issue", "press"]),
    (
        "cli",
        &[
            "model", "read", "study", "audit", "picture", "issue", "press", "proof",
        ],
    ),
];

static TEXTS: LazyLock<Texts> = LazyLock::new(sources::texts);
static HOUSE: LazyLock<House> = LazyLock::new(|| House::of(&sources::crates(), &TEXTS));

#[test]
fn data_flows_one_way() {
    let faults = flow_faults(&HOUSE);
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Files of one stage depend on each other one way too. A folder's `mod.rs` either calls its files or
/// defines the items they use, not both; a re-export (`pub use`) counts as neither.
#[test]
fn no_files_of_a_stage_stand_in_a_circle() {
    let circles = circles(&HOUSE.dependencies());
    assert!(circles.is_empty(), "{}", circles.join("\n"));
}

#[test]
fn every_stage_stands_in_the_plan() {
    let listed: Vec<&str> = MAY_IMPORT.iter().map(|(stage, _)| *stage).collect();
    let plan = TEXTS.get(Path::new("lib.rs")).unwrap();
    let developers =
        fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("DEVELOPERS.md"));
    let developers = developers.unwrap();
    for path in TEXTS.keys() {
        let stage = stage_of(path);
        if stage != "lib" && stage != "main" {
            assert!(
                listed.contains(&stage.as_str()),
                "{stage} has no line in MAY_IMPORT"
            );
            assert!(
                plan.contains(&format!("[`{stage}`]")),
                "{stage} is not in src/lib.rs's plan"
            );
        }
    }
    for (stage, allowed) in MAY_IMPORT {
        let line = developers
            .lines()
            .find(|l| l.starts_with(&format!("| `{stage}` |")));
        let line = line.unwrap_or_else(|| panic!("{stage} has no line in DEVELOPERS.md"));
        let cell = line.split('|').nth(2).unwrap().trim();
        let said = if allowed.is_empty() {
            "–".to_owned()
        } else {
            allowed.join(", ")
        };
        assert_eq!(cell, said, "what {stage} may import, in DEVELOPERS.md");
    }
}

#[test]
fn every_file_says_what_it_is_about() {
    for (path, text) in TEXTS.iter() {
        assert!(text.starts_with("//! "), "{} has no header", path.display());
    }
}

#[test]
fn a_long_file_says_why() {
    for (path, text) in TEXTS.iter() {
        let lines = text.lines().count() - lines_for_tests(text);
        assert!(
            lines <= 600 || text.contains("//! Long because"),
            "{} has {lines} lines: split it by subject, or say `//! Long because …`",
            path.display()
        );
    }
}

/// Places where a stage uses another that it may not import: by the path as written, or by the file that
/// defines the item at the path.
fn flow_faults(house: &House) -> Vec<String> {
    let mut faults = BTreeSet::new();
    for reference in &house.references {
        let file = &house.modules[reference.module].file;
        let stage = stage_of(file);
        let Some((_, allowed)) = MAY_IMPORT.iter().find(|(name, _)| *name == stage) else {
            continue;
        };
        let followed = house.follow(reference);
        let target = followed.target.map(|target| match target {
            Target::Module(module) | Target::ItemOf(module) => module,
        });
        let is_root_of_all = |module: &usize| house.modules[*module].file == Path::new("lib.rs");
        let through = followed.through.into_iter().filter(|m| !is_root_of_all(m));
        for module in through.chain(target) {
            let reached = stage_of(&house.modules[module].file);
            if reached != stage && !allowed.contains(&reached.as_str()) {
                let line = reference.line;
                faults.insert((file.clone(), line, format!("{stage} reaches to {reached}")));
            }
        }
    }
    let told = faults.into_iter();
    told.map(|(file, line, what)| format!("{}:{line}: {what}", file.display()))
        .collect()
}
