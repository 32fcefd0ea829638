//! `keyblock rename`: changes a key through every record.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::outcome::Outcome;
use super::plural::counted;
use super::streams::say;
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
    if let Err(error) = carry_out(dir, &plan) {
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

/// Writes the texts beside those that they replace, puts them in their places, and renames files and folders. Where the
/// disk refuses, everything that was done is undone.
fn carry_out(dir: &Path, plan: &RenamePlan) -> io::Result<()> {
    let mut done = Done::default();
    let result = attempt(dir, plan, &mut done);
    if result.is_err() {
        done.undo();
    }
    result
}

fn attempt(dir: &Path, plan: &RenamePlan, done: &mut Done) -> io::Result<()> {
    let mut staged = Vec::new();
    for (path, text) in &plan.texts {
        let place = dir.join(path);
        let mut name = place.file_name().unwrap_or_default().to_owned();
        name.push(".renamed");
        let beside = place.with_file_name(name);
        done.staged.push(beside.clone());
        fs::write(&beside, text)?;
        if let Ok(about) = fs::metadata(&place) {
            fs::set_permissions(&beside, about.permissions())?;
        }
        staged.push((beside, place));
    }
    for (beside, place) in staged {
        let before = match fs::read(&place) {
            Ok(bytes) => Some(bytes),
            Err(error) if error.kind() == io::ErrorKind::NotFound => None,
            Err(error) => return Err(error),
        };
        fs::rename(&beside, &place)?;
        done.replaced.push((place, before));
    }
    for (from, to) in &plan.moves {
        let (from, to) = (dir.join(from), dir.join(to));
        if fs::symlink_metadata(&to).is_ok() {
            return Err(io::Error::new(
                io::ErrorKind::AlreadyExists,
                format!("`{}` is there already", to.display()),
            ));
        }
        fs::rename(&from, &to)?;
        done.moved.push((from, to));
    }
    Ok(())
}

/// What was done so far.
#[derive(Default)]
struct Done {
    staged: Vec<PathBuf>,
    replaced: Vec<(PathBuf, Option<Vec<u8>>)>,
    moved: Vec<(PathBuf, PathBuf)>,
}

impl Done {
    /// Undoes it, the last first. What the disk refuses here too stays.
    fn undo(self) {
        for (from, to) in self.moved.into_iter().rev() {
            let _ = fs::rename(to, from);
        }
        for (place, before) in self.replaced.into_iter().rev() {
            let _ = match before {
                Some(bytes) => fs::write(place, bytes),
                None => fs::remove_file(place),
            };
        }
        for beside in self.staged {
            let _ = fs::remove_file(beside);
        }
    }
}
