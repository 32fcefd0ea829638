//! What intake says where it refuses, and of faults in the files that editors correct.

use crate::cli::outcome::Outcome;
use crate::cli::streams::say;
use crate::press::intake::{IntakeFault, SettingsFault};

/// Says why intake refused, and gives the outcome.
pub(super) fn refused(fault: &IntakeFault) -> Outcome {
    say_faults(&fault.settings);
    say(format_args!("keyblock: {}", fault.message));
    if !fault.help.is_empty() {
        say(format_args!("  {}", fault.help));
    }
    if fault.is_usage {
        Outcome::Usage
    } else {
        Outcome::NotDone
    }
}

/// Tells what is wrong in the files that editors correct, each with its place.
pub(super) fn say_faults(faults: &[SettingsFault]) {
    for SettingsFault { file, fault } in faults {
        let severity = if fault.is_error { "error" } else { "doubt" };
        say(format_args!(
            "{severity}: {}\n  --> {file}:{}:{}",
            fault.message, fault.line, fault.column
        ));
        if let Some(help) = &fault.help {
            say(format_args!("  help: {help}"));
        }
    }
}
