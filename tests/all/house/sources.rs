//! The Rust files below `src`, and the crates they make up.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Texts by their paths below `src`.
pub type Texts = BTreeMap<PathBuf, String>;

/// A crate of the repository.
pub struct Crate {
    /// Its name in paths: `keyblock_model`.
    pub name: String,
    /// The file it begins with, below `src`.
    pub root: PathBuf,
}

/// Every Rust file below `src`.
pub fn texts() -> Texts {
    let src = src();
    let mut found = Texts::new();
    for path in files_below(&src, "rs") {
        let below = path.strip_prefix(&src).unwrap().to_owned();
        found.insert(below, fs::read_to_string(&path).unwrap());
    }
    assert!(!found.is_empty());
    found
}

/// The crates whose code stands below `src`: the package itself, and each folder with a `Cargo.toml`.
pub fn crates() -> Vec<Crate> {
    let root = |path: &str| PathBuf::from(path);
    let mut found = vec![
        Crate {
            name: "keyblock".into(),
            root: root("lib.rs"),
        },
        Crate {
            name: "main".into(),
            root: root("main.rs"),
        },
    ];
    for manifest in files_below(&src(), "toml") {
        if manifest.file_name().is_none_or(|name| name != "Cargo.toml") {
            continue;
        }
        let text = fs::read_to_string(&manifest).unwrap();
        let table: toml::Table = text.parse().unwrap();
        let said = |part: &str, key: &str| Some(table.get(part)?.get(key)?.as_str()?.to_owned());
        let name = said("lib", "name").or_else(|| said("package", "name"));
        let lib = said("lib", "path").unwrap_or_else(|| "src/lib.rs".into());
        let folder = manifest.parent().unwrap().strip_prefix(src()).unwrap();
        found.push(Crate {
            name: name.unwrap().replace('-', "_"),
            root: folder.join(lib),
        });
    }
    found
}

/// The stage that a file belongs to: its folder below `src`; `lib` and `main` for the files there.
pub fn stage_of(path: &Path) -> String {
    let first = path.components().next().unwrap();
    Path::new(first.as_os_str())
        .with_extension("")
        .to_string_lossy()
        .into_owned()
}

fn src() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

fn files_below(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut waiting = vec![folder.to_owned()];
    while let Some(folder) = waiting.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                waiting.push(path);
            } else if path.extension().is_some_and(|e| e == ending) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}
