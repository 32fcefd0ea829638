//! `keyblock rename`: changes a key through every record.

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::outcome::Outcome;
use super::plural::counted;
use super::streams::say;
use crate::issue::together::{FileChanges, carry_out, resume};
use crate::model::key::Key;
use crate::read::Inputs;
use crate::read::rename::{KINDS, Refusal, RenamePlan, named, plan};

pub(super) const ABOUT: &str = "\
Changes a key in every record, text and file name that has it, and keeps the old one as a former key (was), so that the addresses of \
the old key lead to the new one.

A part is named with its record: state 14/cut-down, picture 14.7/recto. A work of the literature is of the kind lit. An impression has no key of its own to change: its number is permanent.

Only the bytes of the key change; comments, order and spacing stay. The change is refused where the new \
key is or was that of another record, or where the catalogue would then have an error that it does not have now. Doubts \
that a record says are settled may be raised again where they rest on the key.";

/// The arguments of the command.
#[derive(clap::Args)]
pub(super) struct RenameArguments {
    /// What has the key
    #[arg(value_parser = clap::builder::PossibleValuesParser::new(KINDS))]
    kind: String,
    /// Its present key; a part or picture with its record: 14/cut-down, 14.7/recto
    old: String,
    /// Its new key: lower-case letters and digits joined by hyphens
    new: String,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
}

/// Changes the key and prints what changed.
pub(super) fn run(
    dir: &Path,
    arguments: &RenameArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    if let Err(error) = resume(dir, STAGING) {
        say(format_args!(
            "keyblock: an earlier change of a key was not finished: {error}"
        ));
        return Ok(Outcome::NotDone);
    }
    let plan = match planned(dir, arguments) {
        Ok(plan) => plan,
        Err(refusal) => {
            say(format_args!("keyblock: {}", refusal.message));
            say(format_args!("  {}", refusal.help));
            return Ok(if refusal.is_usage {
                Outcome::Usage
            } else {
                Outcome::NotDone
            });
        }
    };
    if let Err(error) = carry_out(dir, STAGING, &changes(&plan)) {
        say(format_args!("keyblock: {error}; nothing was changed"));
        return Ok(Outcome::NotDone);
    }
    for (path, places) in &plan.places {
        writeln!(out, "{path}: {}", counted(*places, "place", "places"))?;
    }
    for (from, to) in &plan.moves {
        writeln!(out, "{from} is now {to}")?;
    }
    writeln!(
        out,
        "the old key is in `was`, so its addresses lead to the new one"
    )?;
    Ok(Outcome::Done)
}

fn planned(dir: &Path, arguments: &RenameArguments) -> Result<RenamePlan, Refusal> {
    let RenameArguments { kind, old, new, .. } = arguments;
    let thing = named(kind, old)?;
    let key: Key = new.parse().map_err(|_| {
        let help = match Key::nearest_form(new) {
            Some(key) => format!("write `{key}`"),
            None => "keys are lower-case letters and digits, joined by single hyphens".to_owned(),
        };
        Refusal {
            message: format!("`{new}` is not a key"),
            help,
            is_usage: true,
        }
    })?;
    plan(dir, &Inputs::of(dir), &thing, &key)
}

/// Where the changed files are staged.
const STAGING: &str = ".keyblock/renaming";

/// The changes of a plan.
fn changes(plan: &RenamePlan) -> FileChanges {
    let mut changes = FileChanges::default();
    for (path, text) in &plan.texts {
        changes.write(path, text.as_bytes());
    }
    changes.moves.clone_from(&plan.moves);
    changes
}
