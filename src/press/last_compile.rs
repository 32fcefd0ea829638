//! Keeps what the last compile printed. The next compile prints it again where the program, all its inputs
//! and the site are unchanged.
//!
//! All or nothing: dependencies between files are not recorded. Where anything has changed, everything is
//! read, judged and made anew.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::cache;
use crate::issue;
use crate::read::{Inputs, stamp};

/// The output that a compile printed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PrintedReport {
    /// The findings, without colour.
    pub findings: String,
    /// The findings, for a terminal.
    pub findings_in_colour: String,
    /// The numbers of records and findings, in one line.
    pub summary: String,
}

/// The file that a compile keeps.
#[derive(Debug, Serialize, Deserialize)]
struct LastCompile {
    /// The name of the compile: a hash of the program, its inputs, and the folder of the site.
    name: String,
    /// The name of the site it made ([`issue::intact_site`]).
    site: String,
    report: PrintedReport,
}

/// The identity of a compile: two that are equal make the same site and print the same report.
#[derive(Clone, Debug, PartialEq)]
pub struct CompileIdentity {
    name: String,
    file: PathBuf,
}

impl CompileIdentity {
    /// The identity of the compile of `inputs`, read in `dir`, to `target`; `None` where the system does
    /// not give enough about the files.
    #[must_use]
    pub fn of(dir: &Path, inputs: &Inputs, target: &Path) -> Option<CompileIdentity> {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: a compile");
        hasher.update(&program()?);
        hasher.update(inputs.name(dir)?.as_bytes());
        hasher.update(target.as_os_str().as_encoded_bytes());
        Some(CompileIdentity {
            name: hasher.finalize().to_hex().to_string(),
            file: cache::root(dir).join("compiled.json"),
        })
    }

    /// The output of the last compile, where it was this one and its site is intact.
    #[must_use]
    pub fn last_report(&self, target: &Path) -> Option<PrintedReport> {
        let last = std::fs::read(&self.file).ok()?;
        let last: LastCompile = serde_json::from_slice(&last).ok()?;
        let is_same = last.name == self.name && Some(last.site) == issue::intact_site(target);
        is_same.then_some(last.report)
    }

    /// Keeps what this compile printed, once its site is published in `target`. Where that fails, the next
    /// compile does everything anew.
    pub fn keep(self, report: PrintedReport, target: &Path) {
        let Some(site) = issue::intact_site(target) else {
            return;
        };
        let last = LastCompile {
            name: self.name,
            site,
            report,
        };
        let write = || -> std::io::Result<()> {
            let unfinished = self.file.with_extension("unfinished");
            std::fs::create_dir_all(self.file.parent().unwrap_or(Path::new(".")))?;
            std::fs::write(&unfinished, serde_json::to_vec(&last)?)?;
            std::fs::rename(&unfinished, &self.file)
        };
        let _ = write();
    }
}

/// The identity of this build of the program: its version, and the path, size and times of its file.
fn program() -> Option<Vec<u8>> {
    let file = std::fs::canonicalize(std::env::current_exe().ok()?).ok()?;
    let mut program = env!("CARGO_PKG_VERSION").as_bytes().to_vec();
    program.extend(file.as_os_str().as_encoded_bytes());
    program.extend(stamp(&file)?);
    Some(program)
}
