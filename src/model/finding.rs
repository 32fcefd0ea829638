//! Findings: what is wrong or doubtful in a catalogue, as data.
//!
//! A finding is written for a cataloguer: its message is one phrase that is understood by itself,
//! its place is the value at fault, its help is an action. Printing is elsewhere (`cli::report`,
//! `cli::audit_document`).

pub use super::codes::Severity;

use super::codes::Code;
use super::natural::natural_order;
use super::place::{Place, Sources};

/// A place and what stands there, in a few words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The place.
    pub place: Place,
    /// A description of the value there; may be empty.
    pub text: String,
}

/// One thing that is wrong or doubtful.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// Which fault it is; the code decides its severity.
    pub code: Code,
    /// The fault: one phrase that is understood by itself.
    pub message: String,
    /// The value at fault.
    pub at: Label,
    /// The places of the values it clashes with, where there are any.
    pub also: Vec<Label>,
    /// The action to take.
    pub help: Option<String>,
}

impl Finding {
    /// A finding at `place`.
    #[must_use]
    pub fn new(code: Code, place: Place, message: impl Into<String>) -> Finding {
        let at = Label {
            place,
            text: String::new(),
        };
        Finding {
            code,
            message: message.into(),
            at,
            also: Vec::new(),
            help: None,
        }
    }

    /// The same with a few words at the place.
    #[must_use]
    pub fn saying(mut self, text: impl Into<String>) -> Finding {
        self.at.text = text.into();
        self
    }

    /// The same with a second place.
    #[must_use]
    pub fn beside(mut self, place: Place, text: impl Into<String>) -> Finding {
        self.also.push(Label {
            place,
            text: text.into(),
        });
        self
    }

    /// The same with what to do.
    #[must_use]
    pub fn help(mut self, text: impl Into<String>) -> Finding {
        self.help = Some(text.into());
        self
    }

    /// Its severity.
    #[must_use]
    pub fn severity(&self) -> Severity {
        self.code.severity()
    }
}

/// Sorts findings by file (numbers in paths as numbers), place, severity, code and message, and drops repetitions.
pub fn sort(findings: &mut Vec<Finding>, sources: &Sources) {
    findings.sort_by(|a, b| {
        let rank = |f: &Finding| {
            (
                f.at.place.start,
                f.severity(),
                f.code.as_str(),
                f.at.place.end,
            )
        };
        let path = |f: &Finding| sources.path(f.at.place.file);
        natural_order(path(a), path(b))
            .then_with(|| rank(a).cmp(&rank(b)))
            .then_with(|| a.message.cmp(&b.message))
    });
    findings.dedup();
}

/// How many findings of each severity there are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Errors.
    pub errors: usize,
    /// Doubts.
    pub doubts: usize,
    /// Hints.
    pub hints: usize,
}

impl Tally {
    /// Counts `findings`.
    #[must_use]
    pub fn of<'f>(findings: impl IntoIterator<Item = &'f Finding>) -> Tally {
        let mut tally = Tally::default();
        for finding in findings {
            match finding.severity() {
                Severity::Error => tally.errors += 1,
                Severity::Doubt => tally.doubts += 1,
                Severity::Hint => tally.hints += 1,
            }
        }
        tally
    }

    /// All of them.
    #[must_use]
    pub fn all(self) -> usize {
        self.errors + self.doubts + self.hints
    }
}
