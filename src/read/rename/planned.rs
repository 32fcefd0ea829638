//! A planned change of a key, and the reasons why there is none.

use std::collections::BTreeMap;

/// What a change of a key changes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RenamePlan {
    /// The texts that change, by path in the catalogue as it is before the change.
    pub texts: BTreeMap<String, String>,
    /// In how many places each changes.
    pub places: BTreeMap<String, usize>,
    /// Files and folders that get another name: path before, path after.
    pub moves: Vec<(String, String)>,
}

/// Why a key cannot be changed.
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
    pub(super) fn usage(message: String, help: impl Into<String>) -> Refusal {
        Refusal {
            message,
            help: help.into(),
            is_usage: true,
        }
    }

    pub(super) fn of_records(message: String, help: impl Into<String>) -> Refusal {
        Refusal {
            is_usage: false,
            ..Refusal::usage(message, help)
        }
    }
}
