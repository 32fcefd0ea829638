//! Why a file was not taken in.

use std::io;
use std::path::Path;

use crate::exchange::intake::settings::SettingFault;

/// Why a file was not taken in. Nothing was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IntakeFault {
    /// Why, in one phrase.
    pub message: String,
    /// What to do; empty where the message says it.
    pub help: String,
    /// Whether the command was used wrongly.
    pub is_usage: bool,
    /// What is wrong in the files that editors correct, where that is why.
    pub settings: Vec<SettingsFault>,
}

/// What is wrong in a file that editors correct.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SettingsFault {
    /// The file, by its path in the catalogue.
    pub file: String,
    /// What is wrong, with line and column.
    pub fault: SettingFault,
}

impl IntakeFault {
    /// The command was used wrongly.
    pub(super) fn usage(message: impl Into<String>, help: impl Into<String>) -> IntakeFault {
        IntakeFault {
            is_usage: true,
            ..IntakeFault::not_done(message, help)
        }
    }

    /// It could not be done.
    pub(super) fn not_done(message: impl Into<String>, help: impl Into<String>) -> IntakeFault {
        IntakeFault {
            message: message.into(),
            help: help.into(),
            is_usage: false,
            settings: Vec::new(),
        }
    }

    /// The disk refused.
    pub(super) fn disk(path: &Path, error: &io::Error) -> IntakeFault {
        let message = format!("{}: {error}", path.display());
        IntakeFault::not_done(message, "nothing was written")
    }

    /// Files that editors correct have errors.
    pub(super) fn of_settings(settings: Vec<SettingsFault>) -> IntakeFault {
        IntakeFault {
            settings,
            ..IntakeFault::not_done(
                "what was corrected in the inbox cannot be read",
                "correct it and run intake again; nothing was written",
            )
        }
    }
}
