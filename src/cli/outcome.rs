//! How a command ends, and with which exit code.

use std::process::ExitCode;

/// How a command ended. Exit codes are decided here and nowhere else.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Done: exit code 0, whatever the doubts and hints.
    Done,
    /// Errors were found, or the disk refused: exit code 1.
    NotDone,
    /// The arguments are wrong: exit code 2.
    Usage,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> ExitCode {
        ExitCode::from(match outcome {
            Outcome::Done => 0,
            Outcome::NotDone => 1,
            Outcome::Usage => 2,
        })
    }
}
