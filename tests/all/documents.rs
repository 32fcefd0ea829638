//! Checks that documents, their headings, folders and files that the repository's files cite exist, and that
//! the top level contains the expected entries and no others.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The entries of the top level, without dot files and the output of builds.
const TOP_LEVEL: [&str; 17] = [
    "CHANGELOG.md",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "SECURITY.md",
    "clippy.toml",
    "content",
    "demo-site",
    "deny.toml",
    "docs",
    "rustfmt.toml",
    "src",
    "tests",
    "themes",
];

/// An entry that may be there: the script that rebuilds the program when a file is added to it.
const MAY_HOLD: &str = "build.rs";

#[test]
fn the_top_level_holds_what_belongs_there() {
    let mut there: Vec<String> = fs::read_dir(root())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| !name.starts_with('.') && name != "target" && name != MAY_HOLD)
        .collect();
    there.sort();
    assert_eq!(there, TOP_LEVEL);
}

#[test]
fn no_file_cites_what_is_not_there() {
    let documents = documents();
    let mut faults = Vec::new();
    // The licences of packages cite files of those packages.
    let own = texts()
        .into_iter()
        .filter(|(path, _)| path != "content/licences.txt");
    for (path, text) in own {
        for (line, what) in faults_in(&path, &text, &documents, &is_there) {
            faults.push(format!("{path}:{line}: {what}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Two documents name their own sections as ("Section").
#[test]
fn the_definitions_and_the_trade_name_sections_that_they_have() {
    let documents = documents();
    for path in ["docs/definitions.md", "docs/trade.md"] {
        let text = fs::read_to_string(root().join(path)).unwrap();
        let named: Vec<String> = own_sections(&text);
        assert!(!named.is_empty() || path.ends_with("trade.md"));
        for section in named {
            assert!(
                documents[path].contains(&section),
                "{path} has no section \"{section}\""
            );
        }
    }
}

/// The headings of each Markdown document of the repository.
type Documents = BTreeMap<String, Vec<String>>;

fn documents() -> Documents {
    let texts = texts();
    let pages = texts.iter().filter(|(path, _)| path.ends_with(".md"));
    pages
        .map(|(path, text)| (path.clone(), headings(text)))
        .collect()
}

fn headings(text: &str) -> Vec<String> {
    let titles = text.lines().filter(|line| line.starts_with('#'));
    titles
        .map(|line| line.trim_start_matches('#').trim().to_owned())
        .collect()
}

fn own_sections(text: &str) -> Vec<String> {
    let one_line = text.replace('\n', " ");
    let quoted = one_line.split("(\"").skip(1);
    quoted
        .filter_map(|rest| rest.split_once('"'))
        .filter(|(name, rest)| rest.starts_with(')') && name.starts_with(char::is_uppercase))
        .map(|(name, _)| name.to_owned())
        .collect()
}

/// Citations in a file of things that do not exist, by line.
fn faults_in(
    path: &str,
    text: &str,
    documents: &Documents,
    is_there: &dyn Fn(&str) -> bool,
) -> Vec<(usize, String)> {
    let lines = cited_text(path, text);
    let mut faults = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        for token in line.split(|c: char| !is_path_character(c)) {
            let token = token.trim_end_matches(['.', '-']);
            if names_a_file(path, token) && !is_there(token) && !is_there(&format!("src/{token}")) {
                faults.push((at + 1, format!("`{token}` is not there")));
            }
        }
    }
    for (line, document, heading) in cited_headings(&lines) {
        let known = documents.get(&document);
        if known.is_some_and(|headings| !headings.contains(&heading)) {
            faults.push((line, format!("{document} has no heading \"{heading}\"")));
        }
    }
    faults
}

fn is_path_character(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '/' | '.' | '_' | '-' | '*')
}

/// Folders of the repository under which a path is taken for one of its files.
const FOLDERS: [&str; 6] = [
    "src/",
    "tests/",
    "themes/",
    "content/",
    "demo-site/",
    ".ci/",
];

/// Whether a word of a text names a file or folder of the repository: a document by its name in capitals
/// (`DEVELOPERS.md`) or in `docs/`, a path from the top level, or a Rust file by its stage (`model/key.rs`).
/// The compiled demonstration is not kept, and words in capitals within a path stand for any name.
fn names_a_file(path: &str, token: &str) -> bool {
    let stem = token.strip_suffix(".md").unwrap_or_default();
    let is_capitals = |word: &str| {
        word.len() > 1
            && word
                .chars()
                .all(|c| c.is_ascii_uppercase() || matches!(c, '-' | '_'))
    };
    if is_capitals(stem) {
        return !matches!(stem, "KEY" | "NAME");
    }
    if let Some(rest) = token.strip_prefix("docs/") {
        return rest.contains('.');
    }
    // Literal catalogues have folders of these names too.
    if path.starts_with("tests/broken/") || token.starts_with("demo-site/web") {
        return false;
    }
    let stands_for_any = token
        .split('/')
        .any(|part| is_capitals(part.split('.').next().unwrap_or_default()));
    let is_from_the_top = FOLDERS
        .iter()
        .any(|folder| token.len() > folder.len() && token.starts_with(folder));
    let is_by_stage = token.ends_with(".rs")
        && token
            .split_once('/')
            .is_some_and(|(stage, _)| stages().iter().any(|s| s == stage));
    !stands_for_any && (is_from_the_top || is_by_stage)
}

/// The folders of `src`.
fn stages() -> &'static [String] {
    static STAGES: std::sync::LazyLock<Vec<String>> = std::sync::LazyLock::new(|| {
        let entries = fs::read_dir(root().join("src")).unwrap();
        let folders = entries.map(|e| e.unwrap()).filter(|e| e.path().is_dir());
        folders
            .map(|e| e.file_name().into_string().unwrap())
            .collect()
    });
    &STAGES
}

/// Whether a path from the top level leads to something; a star stands for any part of a name.
fn is_there(path: &str) -> bool {
    if !path.contains('*') {
        return root().join(path).exists();
    }
    let mut met = vec![root()];
    for part in path.split('/').filter(|part| !part.is_empty()) {
        let (begin, end) = part.split_once('*').unwrap_or((part, ""));
        met = met
            .into_iter()
            .filter_map(|folder| fs::read_dir(folder).ok())
            .flatten()
            .map(|entry| entry.unwrap().path())
            .filter(|path| {
                let name = path.file_name().and_then(|n| n.to_str()).unwrap_or("");
                if part.contains('*') {
                    name.starts_with(begin) && name.ends_with(end)
                } else {
                    name == part
                }
            })
            .collect();
    }
    !met.is_empty()
}

/// The text of a file that can cite something, line by line: the comments of Rust, the targets of Markdown's
/// links in place of the links, everything else as it stands. Quotations in Markdown are left out.
fn cited_text(path: &str, text: &str) -> Vec<String> {
    let line = |line: &str| {
        if Path::new(path).extension().is_some_and(|e| e == "rs") {
            return comment(line).to_owned();
        }
        if Path::new(path).extension().is_none_or(|e| e != "md") {
            return line.to_owned();
        }
        if line.starts_with('>') {
            return String::new();
        }
        with_targets(path, line)
    };
    text.lines().map(line).collect()
}

/// The comment on a line of Rust; empty where there is none.
fn comment(line: &str) -> &str {
    let trimmed = line.trim_start();
    if let Some(rest) = trimmed.strip_prefix("//") {
        return rest.trim_start_matches(['/', '!']);
    }
    trimmed
        .split_once(" // ")
        .map_or("", |(_, comment)| comment)
}

/// A line of Markdown with the target of each relative link, from the top level, in place of the link.
fn with_targets(path: &str, line: &str) -> String {
    let folder = path.rsplit_once('/').map_or("", |(folder, _)| folder);
    let mut out = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once("](") {
        let (target, behind) = after.split_once(')').unwrap_or((after, ""));
        let shown = before.rfind('[').map_or(before, |at| &before[..at]);
        out.push_str(shown);
        // `design:14` is a record's link, `https:` leads elsewhere.
        if !target.contains(':') && !target.starts_with('#') {
            let mut parts: Vec<&str> = folder.split('/').filter(|p| !p.is_empty()).collect();
            for part in target.split('/') {
                match part {
                    ".." => drop(parts.pop()),
                    "." | "" => {}
                    part => parts.push(part),
                }
            }
            out.push_str(&parts.join("/"));
        }
        rest = behind;
    }
    out + rest
}

/// Every document that is followed by a heading in quotes, with its line; several headings may follow one.
fn cited_headings(lines: &[String]) -> Vec<(usize, String, String)> {
    let mut text = String::new();
    let mut begins = Vec::new();
    for line in lines {
        begins.push(text.len());
        text.push_str(line.trim());
        text.push(' ');
    }
    let mut found = Vec::new();
    for (at, _) in text.match_indices(".md") {
        let before = &text[..at];
        let start = before
            .rfind(|c: char| !is_path_character(c))
            .map_or(0, |p| {
                p + before[p..].chars().next().map_or(1, char::len_utf8)
            });
        let document = format!("{}.md", &before[start..]);
        let line = begins.partition_point(|begin| *begin <= at);
        let mut rest = &text[at + ".md".len()..];
        loop {
            let quoted = rest.trim_start_matches(['`', ',', '(', ' ']);
            let quoted = quoted.strip_prefix("and ").unwrap_or(quoted);
            let Some((heading, behind)) = quoted.strip_prefix('"').and_then(|q| q.split_once('"'))
            else {
                break;
            };
            found.push((line, document.clone(), heading.to_owned()));
            rest = behind;
        }
    }
    found
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Folders that are made, not kept.
const MADE: [&str; 5] = ["target", "node_modules", "web", ".keyblock", ".git"];

/// Endings of files that hold text.
const TEXTS: [&str; 15] = [
    "bib", "css", "csv", "ftl", "html", "js", "json", "md", "mjs", "py", "rs", "sh", "toml", "txt",
    "yml",
];

/// Every text of the repository, by its path from the top level.
fn texts() -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    let mut waiting = vec![root()];
    while let Some(folder) = waiting.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().and_then(|n| n.to_str()).unwrap_or("");
            if path.is_dir() {
                // Names of files left by a killed compile begin with `.web`.
                if !MADE.contains(&name) && !name.starts_with(".web") {
                    waiting.push(path);
                }
                continue;
            }
            let ending = path.extension().and_then(|e| e.to_str());
            if ending.is_some_and(|e| TEXTS.contains(&e)) || name == "run" {
                let below = path.strip_prefix(root()).unwrap().to_str().unwrap();
                // Files in a museum's hand have the encoding of that museum.
                if !below.starts_with("tests/intake/") {
                    found.insert(below.to_owned(), fs::read_to_string(&path).unwrap());
                }
            }
        }
    }
    assert!(found.len() > 100);
    found
}

mod the_checker {
    use super::*;

    fn faults(path: &str, text: &str) -> Vec<(usize, String)> {
        let documents = Documents::from([(
            "docs/definitions.md".to_owned(),
            headings("# Definitions\n\n## Rows of the census\n"),
        )]);
        let there = |path: &str| matches!(path, "docs/definitions.md" | "src/model/key.rs");
        faults_in(path, text, &documents, &there)
    }

    #[test]
    fn ok_what_is_there() {
        let text = "//! See docs/definitions.md, \"Rows of the\n//! census\", and model/key.rs.\n\
                    let literal = \"DESIGN.md\";\n// `holders/KEY.md` and themes/NAME/ stand for any.\n";
        assert_eq!(faults("src/a.rs", text), []);
        let link = "[the page](definitions.md), \"Rows of the census\"; > no\n> DESIGN.md quoted";
        assert_eq!(faults("docs/trade.md", link), []);
    }

    #[test]
    fn err_a_document_that_is_absent() {
        let missing = |line: usize, what: &str| vec![(line, format!("`{what}` is not there"))];
        assert_eq!(
            faults("src/a.rs", "\n/// (DESIGN.md, appendix)"),
            missing(2, "DESIGN.md")
        );
        assert_eq!(
            faults("src/a.rs", "f();\n// see docs/other.md"),
            missing(2, "docs/other.md")
        );
        assert_eq!(
            faults("README.md", "[a](docs/b.jpg)"),
            missing(1, "docs/b.jpg")
        );
        assert_eq!(faults("themes/a.js", "// TRADE.md"), missing(1, "TRADE.md"));
        assert_eq!(
            faults("src/a.rs", "// read/other.rs"),
            missing(1, "read/other.rs")
        );
        assert_eq!(
            faults("docs/a.md", "`tests/none/`"),
            missing(1, "tests/none/")
        );
    }

    #[test]
    fn err_a_heading_that_is_absent() {
        let text = "//! As docs/definitions.md has it\n//! (docs/definitions.md, \"Rows of the census\" and \
                    \"Columns\").";
        let told = vec![(
            2,
            "docs/definitions.md has no heading \"Columns\"".to_owned(),
        )];
        assert_eq!(faults("src/a.rs", text), told);
    }
}
