//! Runs the program itself, and reads the files that it writes.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The result of a run.
#[derive(Debug)]
pub struct Ran {
    /// The exit code; `None` where the program was killed.
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

/// The program that tests run: the file that `KEYBLOCK` names, or the one built with the tests. `tests/all.sh` names
/// the optimised program, which compiles the demonstration much faster.
pub fn program() -> OsString {
    std::env::var_os("KEYBLOCK").unwrap_or_else(|| env!("CARGO_BIN_EXE_keyblock").into())
}

/// The program with arguments, run without a terminal.
pub fn command(words: &[&str]) -> Command {
    let mut command = Command::new(program());
    command.args(words).stdin(Stdio::null());
    command
}

/// Runs the program to its end.
pub fn keyblock(words: &[&str]) -> Ran {
    let output = command(words).output().unwrap();
    Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Compiles a catalogue, which must succeed; gives the summary line.
pub fn compile(dir: &Path) -> String {
    let ran = keyblock(&["compile", text(dir)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran.out
}

/// A path as it is typed.
pub fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

/// The bytes of every file below `folder`, hidden ones too, by path; empty where there is no folder.
pub fn bytes_below(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    files_below(folder)
        .into_iter()
        .map(|file| {
            let bytes = fs::read(&file).unwrap();
            (file.strip_prefix(folder).unwrap().to_owned(), bytes)
        })
        .collect()
}

/// Every file below `folder`.
pub fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut waiting = vec![folder.to_owned()];
    while let Some(folder) = waiting.pop() {
        for entry in fs::read_dir(folder).into_iter().flatten() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                waiting.push(path);
            } else {
                found.push(path);
            }
        }
    }
    found
}

/// A copy of a catalogue of this repository, without what was compiled from it.
pub fn copy_of(catalogue: &str) -> tempfile::TempDir {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join(catalogue);
    let copy = tempfile::tempdir().unwrap();
    let records = files_below(&from.join("records"));
    for file in records.into_iter().chain([from.join("catalogue.toml")]) {
        let to = copy.path().join(file.strip_prefix(&from).unwrap());
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::copy(&file, to).unwrap();
    }
    copy
}

/// Replaces the one occurrence of `from` in a file by `to`.
pub fn edit(file: &Path, from: &str, to: &str) {
    let text = fs::read_to_string(file).unwrap();
    assert!(text.contains(from), "{} has no {from:?}", file.display());
    fs::write(file, text.replacen(from, to, 1)).unwrap();
}
