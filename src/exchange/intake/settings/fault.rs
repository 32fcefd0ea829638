//! What is wrong in a settings file, with line and column.

use crate::model::finding::{Finding, Severity};

/// What is wrong in a settings file of an intake.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SettingFault {
    /// The line, from 1.
    pub line: usize,
    /// The column, from 1, in characters.
    pub column: usize,
    /// What is wrong, in one phrase.
    pub message: String,
    /// What to do.
    pub help: Option<String>,
    /// Whether something that is written could not be used. Such a file is not written over.
    pub is_error: bool,
}

impl SettingFault {
    /// The fault that a finding on a part of a file tells; the part begins on the line `first_line`.
    pub(super) fn of(finding: Finding, part: &str, first_line: usize) -> SettingFault {
        let start = finding.at.place.start as usize;
        let (line, column) = position(part, start);
        let is_error = finding.severity() == Severity::Error;
        SettingFault {
            line: first_line + line,
            column,
            message: finding.message,
            help: finding.help,
            is_error,
        }
    }
}

/// The line of a byte, from 0, and its column, from 1.
pub(super) fn position(text: &str, at: usize) -> (usize, usize) {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    let before = &text[..at];
    let line_start = before.rfind('\n').map_or(0, |end| end + 1);
    let line = before.bytes().filter(|byte| *byte == b'\n').count();
    (line, before[line_start..].chars().count() + 1)
}
