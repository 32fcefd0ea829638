//! The house keeps its own rules: data flows one way, files have one subject and say which.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// What each stage may import (DEVELOPERS.md, "How data flows"). `cli` and `proof` may import all.
const MAY_IMPORT: &[(&str, &[&str])] = &[
    ("model", &[]),
    ("read", &["model"]),
    ("study", &["model"]),
    ("audit", &["model", "study"]),
    ("picture", &["model"]),
    ("page", &["model", "study", "picture"]),
    ("exchange", &["model", "study", "picture", "page"]),
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

#[test]
fn data_flows_one_way() {
    let mut faults = Vec::new();
    for (path, text) in sources() {
        let stage = stage_of(&path);
        let Some((_, allowed)) = MAY_IMPORT.iter().find(|(name, _)| *name == stage) else {
            continue;
        };
        // A stage that is a crate of its own reaches others by the names of their crates.
        let own_crate = root().join("src").join(&stage).join("Cargo.toml").exists();
        let prefix = if own_crate { "keyblock_" } else { "crate::" };
        // Tests inside a stage may build their input with any other.
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for (number, line) in code.lines().enumerate() {
            let line = line.trim_start();
            if line.starts_with("//") {
                continue;
            }
            for reached in stages_named(line, prefix) {
                if reached != stage && !allowed.contains(&reached.as_str()) {
                    let at = path.display();
                    faults.push(format!("{at}:{}: {stage} reaches to {reached}", number + 1));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_stage_stands_in_the_plan() {
    let listed: Vec<&str> = MAY_IMPORT.iter().map(|(stage, _)| *stage).collect();
    let plan = fs::read_to_string(root().join("src/lib.rs")).unwrap();
    for (path, _) in sources() {
        let stage = stage_of(&path);
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
}

#[test]
fn every_file_says_what_it_is_about() {
    for (path, text) in sources() {
        assert!(text.starts_with("//! "), "{} has no header", path.display());
    }
}

#[test]
fn a_long_file_says_why() {
    for (path, text) in sources() {
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        let lines = code.lines().count();
        assert!(
            lines <= 600 || text.contains("//! Long because"),
            "{} has {lines} lines: split it by subject, or say `//! Long because …`",
            path.display()
        );
    }
}

/// The names of stages that a line reaches by `crate::NAME`, or by `keyblock_NAME` from a crate of its own.
fn stages_named(line: &str, prefix: &str) -> Vec<String> {
    line.split(prefix)
        .skip(1)
        .map(|rest| {
            rest.chars()
                .take_while(|c| c.is_ascii_lowercase() || *c == '_')
                .collect()
        })
        .filter(|name: &String| !name.is_empty())
        .collect()
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn stage_of(path: &Path) -> String {
    let first = path.components().next().unwrap();
    Path::new(first.as_os_str())
        .with_extension("")
        .to_string_lossy()
        .into_owned()
}

/// Every Rust file below `src`, by its path there.
fn sources() -> BTreeMap<PathBuf, String> {
    let src = root().join("src");
    let mut found = BTreeMap::new();
    let mut waiting = vec![src.clone()];
    while let Some(folder) = waiting.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                waiting.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let below = path.strip_prefix(&src).unwrap().to_owned();
                found.insert(below, fs::read_to_string(&path).unwrap());
            }
        }
    }
    assert!(!found.is_empty());
    found
}
