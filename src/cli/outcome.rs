//! How a command ended, as an exit code.

use std::process::ExitCode;

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Done, whatever the doubts and hints.
    Done,
    /// Errors were found, or the disk refused.
    NotDone,
    /// The words typed make no sense.
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
