//! What the last compile read and made, kept so that the next need not do it over where nothing
//! changed: neither the program, nor anything it reads, nor the site it made.
//!
//! It is all or nothing. What depends on what is not remembered; where anything changed, everything is
//! read, judged and set anew.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::CACHE;
use crate::issue;
use crate::read::{Inputs, stamp};

/// What a compile said, in words ready to be said again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Said {
    /// The findings, without colour.
    pub findings: String,
    /// The findings, for a terminal.
    pub findings_in_colour: String,
    /// What the catalogue holds and what was found, in one line.
    pub holds: String,
}

/// What is kept of a compile.
#[derive(Debug, Serialize, Deserialize)]
struct Kept {
    /// A name for the program, what it read, and where it wrote.
    of: String,
    /// A name for the site it made.
    site: String,
    said: Said,
}

/// A compile that is about to be done, by all that decides what comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Compile {
    name: String,
    kept_in: PathBuf,
}

impl Compile {
    /// The compile of `inputs`, read in `dir`, to `target`; `None` where it cannot be told from another.
    #[must_use]
    pub fn of(dir: &Path, inputs: &Inputs, target: &Path) -> Option<Compile> {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: a compile");
        hasher.update(&program()?);
        hasher.update(inputs.name(dir)?.as_bytes());
        hasher.update(target.as_os_str().as_encoded_bytes());
        Some(Compile {
            name: hasher.finalize().to_hex().to_string(),
            kept_in: dir.join(CACHE).join("compiled.json"),
        })
    }

    /// What the last compile said, where it was the same as this and its site stands.
    #[must_use]
    pub fn said_before(&self, target: &Path) -> Option<Said> {
        let kept = std::fs::read(&self.kept_in).ok()?;
        let kept: Kept = serde_json::from_slice(&kept).ok()?;
        let is_same = kept.of == self.name && Some(kept.site) == issue::standing(target);
        is_same.then_some(kept.said)
    }

    /// Keeps what this compile said, now that its site stands in `target`. Where that fails the next
    /// compile does everything anew.
    pub fn keep(self, said: Said, target: &Path) {
        let Some(site) = issue::standing(target) else {
            return;
        };
        let kept = Kept {
            of: self.name,
            site,
            said,
        };
        let write = || -> std::io::Result<()> {
            let unfinished = self.kept_in.with_extension("unfinished");
            std::fs::create_dir_all(self.kept_in.parent().unwrap_or(Path::new(".")))?;
            std::fs::write(&unfinished, serde_json::to_vec(&kept)?)?;
            std::fs::rename(&unfinished, &self.kept_in)
        };
        let _ = write();
    }
}

/// What tells this build of the program from others: version, path, size and times of its file.
fn program() -> Option<Vec<u8>> {
    let file = std::fs::canonicalize(std::env::current_exe().ok()?).ok()?;
    let mut program = env!("CARGO_PKG_VERSION").as_bytes().to_vec();
    program.extend(file.as_os_str().as_encoded_bytes());
    program.extend(stamp(&file)?);
    Some(program)
}
