//! Whether the records are as they are committed in git.
//!
//! Asks the program `git`, where the catalogue is in its work tree. The repository may be anybody's, so nothing that its
//! settings name is run: no hook, no monitor of the file system, no program for filters of single files beyond those that
//! comparing needs; and nothing in it is written.

use std::path::Path;
use std::process::{Command, Stdio};

use crate::model::register::REGISTER_FILE;

/// Whether the catalogue's own files are as they are committed.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Committed {
    /// They are.
    Yes,
    /// These differ, as git names them.
    Differs(Vec<String>),
    /// It is not known, for this reason.
    Unknown(String),
    /// git refused to say, for this reason.
    Refused(String),
}

impl Committed {
    /// Whether the files of the catalogue in `dir` are committed.
    pub(super) fn of(dir: &Path) -> Committed {
        match git(dir, &["rev-parse", "--is-inside-work-tree"]) {
            Err(why) => return Committed::Unknown(why),
            Ok(answer) if answer.is_done && answer.out.trim() == "true" => {}
            Ok(answer) if answer.err.contains("not a git repository") || answer.is_done => {
                return Committed::Unknown("the catalogue is in no work tree of git".to_owned());
            }
            Ok(answer) => return Committed::Refused(first_line(&answer.err)),
        }
        let status = [
            "status",
            "--porcelain",
            "--untracked-files=all",
            "--",
            "catalogue.toml",
            REGISTER_FILE,
            "records",
            "themes",
        ];
        match git(dir, &status) {
            Err(why) => Committed::Unknown(why),
            Ok(answer) if !answer.is_done => Committed::Refused(first_line(&answer.err)),
            Ok(answer) => {
                let differing: Vec<String> = answer.out.lines().map(str::to_owned).collect();
                if differing.is_empty() {
                    Committed::Yes
                } else {
                    Committed::Differs(differing)
                }
            }
        }
    }

    /// Whether something differs, or may.
    pub(super) fn differs(&self) -> bool {
        matches!(self, Committed::Differs(_) | Committed::Refused(_))
    }
}

struct Answer {
    is_done: bool,
    out: String,
    err: String,
}

/// Runs git in `dir`.
fn git(dir: &Path, words: &[&str]) -> Result<Answer, String> {
    let mut command = Command::new("git");
    command
        .arg("--no-optional-locks")
        .args([
            "-c",
            "core.fsmonitor=false",
            "-c",
            "core.hooksPath=/dev/null",
        ])
        .args(["-c", "core.quotePath=false"])
        .arg("-C")
        .arg(dir)
        .args(words)
        .env("LC_ALL", "C")
        .env("GIT_TERMINAL_PROMPT", "0")
        .stdin(Stdio::null());
    // The folder alone says which repository it is.
    for name in [
        "GIT_DIR",
        "GIT_WORK_TREE",
        "GIT_INDEX_FILE",
        "GIT_EXTERNAL_DIFF",
        "GIT_TRACE",
    ] {
        command.env_remove(name);
    }
    let output = command.output().map_err(|error| {
        if error.kind() == std::io::ErrorKind::NotFound {
            "there is no program git here".to_owned()
        } else {
            format!("git cannot be run ({error})")
        }
    })?;
    Ok(Answer {
        is_done: output.status.success(),
        out: String::from_utf8_lossy(&output.stdout).into_owned(),
        err: String::from_utf8_lossy(&output.stderr).into_owned(),
    })
}

fn first_line(text: &str) -> String {
    text.lines().next().unwrap_or("git says nothing").to_owned()
}
