//! Why a planned change of the records is refused.

/// Why a change of the records is not made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Why, in a phrase.
    pub message: String,
    /// What to do.
    pub help: String,
    /// Whether the arguments are wrong, and not the records.
    pub is_usage: bool,
}

impl Refusal {
    pub(in crate::read) fn usage(message: String, help: impl Into<String>) -> Refusal {
        Refusal {
            message,
            help: help.into(),
            is_usage: true,
        }
    }

    pub(in crate::read) fn of_records(message: String, help: impl Into<String>) -> Refusal {
        Refusal {
            is_usage: false,
            ..Refusal::usage(message, help)
        }
    }
}
