//! The packages that the program is built from: licences, sources, duplicates, and the notices that it carries.
//!
//! `deny.toml` says the same to `cargo deny`, which `tests/all.sh` runs where it is installed. It is not installed
//! there: building it takes longer than all tests together. Licence expressions are read by `spdx`, the library
//! that `cargo deny` uses (SPDX License List, <https://spdx.org/licenses/>).

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

use serde::Deserialize;

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

/// The licences under which packages may be built in. All are permissive.
const ACCEPTED: [&str; 12] = [
    "MIT",
    "MIT-0",
    "Apache-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
    "ISC",
    "BSD-3-Clause",
    "CC0-1.0",
    "0BSD",
    "BSL-1.0",
    "IJG",
];

#[derive(Deserialize)]
struct Metadata {
    packages: Vec<Package>,
    resolve: Resolve,
}

#[derive(Clone, Deserialize)]
struct Package {
    id: String,
    name: String,
    version: String,
    license: Option<String>,
    source: Option<String>,
    manifest_path: PathBuf,
}

#[derive(Deserialize)]
struct Resolve {
    nodes: Vec<Node>,
}

#[derive(Deserialize)]
struct Node {
    id: String,
    deps: Vec<Dependency>,
}

#[derive(Deserialize)]
struct Dependency {
    pkg: String,
    dep_kinds: Vec<DependencyKind>,
}

#[derive(Deserialize)]
struct DependencyKind {
    kind: Option<String>,
}

/// Every package of `Cargo.lock`, for every platform.
static METADATA: LazyLock<Metadata> = LazyLock::new(|| {
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--locked"])
        .current_dir(ROOT)
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    serde_json::from_slice(&output.stdout).unwrap()
});

/// The packages that are in the program, without those that only build or test it.
fn built_in() -> Vec<&'static Package> {
    let packages: BTreeMap<&str, &Package> = METADATA
        .packages
        .iter()
        .map(|p| (p.id.as_str(), p))
        .collect();
    let nodes: BTreeMap<&str, &Node> = METADATA
        .resolve
        .nodes
        .iter()
        .map(|n| (n.id.as_str(), n))
        .collect();
    let program = METADATA
        .packages
        .iter()
        .find(|p| p.name == "keyblock")
        .unwrap();
    let mut found = BTreeSet::new();
    let mut waiting = vec![program.id.as_str()];
    while let Some(id) = waiting.pop() {
        if found.insert(id) {
            let normal = nodes[id]
                .deps
                .iter()
                .filter(|d| d.dep_kinds.iter().any(|k| k.kind.is_none()));
            waiting.extend(normal.map(|d| d.pkg.as_str()));
        }
    }
    let mut found: Vec<&Package> = found.into_iter().map(|id| packages[id]).collect();
    found.retain(|package| package.source.is_some());
    found.sort_by_key(|package| (package.name.as_str(), package.version.as_str()));
    found
}

#[test]
fn every_package_has_a_licence_that_is_accepted() {
    let is_accepted = |package: &Package| {
        let licence = package.license.as_deref().unwrap_or_default();
        let read = spdx::Expression::parse_mode(licence, spdx::ParseMode::LAX);
        read.is_ok_and(|read| {
            read.evaluate(|required| {
                let name = required.license.id().map_or("", |id| id.name);
                required.addition.is_none() && ACCEPTED.contains(&name)
            })
        })
    };
    let refused: Vec<String> = METADATA
        .packages
        .iter()
        .filter(|package| !is_accepted(package))
        .map(|package| {
            format!(
                "{} {}: {:?}",
                package.name, package.version, package.license
            )
        })
        .collect();
    assert!(refused.is_empty(), "{refused:#?}");
    assert!(METADATA.packages.len() > 200);
}

/// No package comes from a repository or from another registry, and each is pinned by its checksum.
#[test]
fn every_package_comes_from_the_one_registry_with_its_checksum() {
    let lock: toml::Table = fs::read_to_string(Path::new(ROOT).join("Cargo.lock"))
        .unwrap()
        .parse()
        .unwrap();
    let mut sources = BTreeSet::new();
    for package in lock["package"].as_array().unwrap() {
        let name = package["name"].as_str().unwrap();
        match package.get("source") {
            Some(source) => {
                sources.insert(source.as_str().unwrap());
                let checksum = package
                    .get("checksum")
                    .and_then(toml::Value::as_str)
                    .unwrap_or_default();
                assert_eq!(checksum.len(), 64, "{name} has no checksum");
            }
            None => assert!(
                name.starts_with("keyblock") || name == "paint",
                "{name} has no source"
            ),
        }
    }
    assert_eq!(sources.len(), 1, "{sources:?}");
    assert!(
        sources.iter().all(|source| source.starts_with("registry+")),
        "{sources:?}"
    );
}

/// The packages that are built in twice, in two versions, because packages of others ask for both.
#[test]
fn the_packages_that_are_there_twice_are_known() {
    let mut versions: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for package in built_in() {
        versions
            .entry(&package.name)
            .or_default()
            .insert(&package.version);
    }
    versions.retain(|_, versions| versions.len() > 1);
    let twice: Vec<&str> = versions.into_keys().collect();
    assert_eq!(twice, TWICE);
}

/// `miniz_oxide`: reads PNG, and TIFF in its older version; `syn`: only in derive macros.
const TWICE: [&str; 2] = ["miniz_oxide", "syn"];

/// The notices that the program prints (`keyblock --licences`): `content/licences.txt`.
/// `KEYBLOCK_BLESS=1 cargo test the_notices` writes them anew.
#[test]
fn the_notices_are_those_of_the_packages_that_are_built_in() {
    let mut by_text: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut without = Vec::new();
    for package in built_in() {
        let licence = package.license.as_deref().unwrap_or_default();
        let name = format!("{} {} ({licence})", package.name, package.version);
        let texts = notices(package);
        if texts.is_empty() {
            without.push(name.clone());
        }
        for text in texts {
            by_text.entry(text).or_default().insert(name.clone());
        }
    }
    let mut page = String::from(
        "Keyblock is built from the packages below, each under its licence. The text of a licence follows the\n\
         packages that carry it.\n",
    );
    let mut groups: Vec<(BTreeSet<String>, String)> = by_text
        .into_iter()
        .map(|(text, names)| (names, text))
        .collect();
    groups.sort();
    for (names, text) in groups {
        let rule = "=".repeat(100);
        writeln!(page, "\n{rule}").unwrap();
        for name in names {
            writeln!(page, "{name}").unwrap();
        }
        writeln!(page, "\n{text}").unwrap();
    }
    if !without.is_empty() {
        writeln!(
            page,
            "\n{}\nWithout a text of their own:\n",
            "=".repeat(100)
        )
        .unwrap();
        for name in without {
            writeln!(page, "{name}").unwrap();
        }
    }
    let path = Path::new(ROOT).join("content/licences.txt");
    if std::env::var_os("KEYBLOCK_BLESS").is_some() {
        fs::write(&path, page).unwrap();
    } else {
        assert!(
            fs::read_to_string(&path).unwrap_or_default() == page,
            "content/licences.txt is not what the packages say"
        );
    }
}

/// The licence texts that a package brings. Where it may be used under the MIT licence, the text of another licence
/// that it may be used under instead is left out.
fn notices(package: &Package) -> Vec<String> {
    let folder = package.manifest_path.parent().unwrap();
    let mut files = licence_files(folder);
    // The C code that a package compiles has its own.
    for below in ["c_src/mimalloc/v2", "c_src/mimalloc/v3", "c_src/mimalloc"] {
        files.extend(licence_files(&folder.join(below)));
    }
    let is_mit = |file: &PathBuf| file.to_string_lossy().to_uppercase().contains("MIT");
    if files.iter().any(is_mit) {
        files.retain(|file| {
            let name = file.file_name().unwrap().to_string_lossy().to_uppercase();
            let is_other = ["APACHE", "UNLICENSE", "ZLIB", "BOOST", "CC0", "0BSD", "BSD"]
                .iter()
                .any(|other| name.contains(other));
            !is_other && name != "COPYING"
        });
    }
    let texts = files.iter().map(|file| {
        let text = String::from_utf8_lossy(&fs::read(file).unwrap()).replace("\r\n", "\n");
        let lines: Vec<&str> = text.trim_end().lines().map(str::trim_end).collect();
        lines
            .join("\n")
            .trim_start_matches(['\n', '\u{feff}'])
            .to_owned()
    });
    texts.collect()
}

fn licence_files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder)
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.path());
    let mut files: Vec<PathBuf> = entries
        .filter(|path| {
            let name = path.file_name().unwrap().to_string_lossy().to_uppercase();
            let begins = [
                "LICENSE",
                "LICENCE",
                "COPYING",
                "NOTICE",
                "COPYRIGHT",
                "UNLICENSE",
            ];
            path.is_file() && begins.iter().any(|begin| name.starts_with(begin))
        })
        .collect();
    files.sort();
    files
}
