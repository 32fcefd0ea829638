//! `keyblock add`: lays down the next record from the template of its kind.
//!
//! In: what to add, and what is known of it, as options or as answers to [`questions`] in the terminal. Out: the file, where
//! it lies and what there is to fill in. [`options`] declares the arguments, [`request`] says what they ask for, and
//! `read::next_record` plans it. A file that is there is never overwritten.

mod kinds;
mod options;
mod questions;
mod request;

use std::fs;
use std::io::{self, IsTerminal, Write};
use std::path::Path;

use super::catalogue_folder::refused_unless_catalogue;
use super::outcome::Outcome;
use super::report;
use super::streams::say;
use crate::model::link::Target;
use crate::read::Inputs;
use crate::read::next_record::{Given, RecordPlan, plan};
use crate::read::refusal::Refusal;
use kinds::RecordKind;
pub(super) use options::AddArguments;
use request::{Request, Unusable};

pub(super) const ABOUT: &str = "\
Lays down the next record, from the template that explains every key, with its number or key, and says what there is to fill in.

What is known is given by options, or asked for in the terminal where none is given. A number is never used twice: it follows \
the highest that a record, a file, the register of editions or a former key has. A file is never overwritten.";

/// Adds the record to the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &AddArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    if let Some(refused) = refused_unless_catalogue(dir) {
        return Ok(refused);
    }
    let request = match Request::of(dir, &arguments.what) {
        Ok(request) => request,
        Err(Unusable::Said(usage)) => return Ok(usage),
        Err(Unusable::Refused(refusal)) => return Ok(refused(&refusal)),
    };
    let inputs = Inputs::of(dir);
    let planned = |given: &[Given]| plan(dir, &inputs, &request.new, given);
    let is_interactive = request.asks && io::stdin().is_terminal() && io::stdout().is_terminal();
    let given = if is_interactive {
        questions::answers(
            request.kind,
            request.given,
            planned,
            &mut io::stdin().lock(),
            out,
        )?
    } else {
        request.given
    };
    let record = match planned(&given) {
        Ok(record) => record,
        Err(refusal) => return Ok(refused(&refusal)),
    };
    if let Err(error) = lay_down(dir, &record) {
        say(format_args!(
            "keyblock: {}: {error}; nothing was written",
            record.path
        ));
        return Ok(Outcome::NotDone);
    }
    tell(request.kind, &record, out)?;
    Ok(Outcome::Done)
}

fn refused(refusal: &Refusal) -> Outcome {
    say(format_args!("keyblock: {}", refusal.message));
    if !refusal.help.is_empty() {
        say(format_args!("  {}", refusal.help));
    }
    if refusal.is_usage {
        Outcome::Usage
    } else {
        Outcome::NotDone
    }
}

/// Writes the record, unless there is a file.
fn lay_down(dir: &Path, record: &RecordPlan) -> io::Result<()> {
    let path = dir.join(&record.path);
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let mut file = fs::File::create_new(&path)?;
    let written = file.write_all(record.text.as_bytes());
    if written.is_err() {
        // Half a record is no record. What the disk refuses here too stays.
        let _ = fs::remove_file(&path);
    }
    written
}

/// Says where the record is, what it says, and what there is to fill in.
fn tell(kind: &RecordKind, record: &RecordPlan, out: &mut impl Write) -> io::Result<()> {
    let RecordPlan {
        target,
        path,
        is_filled,
        remark,
        ..
    } = record;
    writeln!(out, "{path}: {} {}", kind.name, target.key())?;
    if !is_filled.is_empty() {
        writeln!(out, "  it says: {}", is_filled.join(", "))?;
    }
    if let Some(remark) = remark {
        writeln!(out, "  {}", report::quoted(remark))?;
    }
    let open = kind
        .to_fill_in
        .iter()
        .filter(|key| !is_filled.contains(key));
    let open: Vec<&str> = open.copied().collect();
    writeln!(out, "  to fill in: {}", open.join(", "))?;
    match target {
        Target::Impression(key) => {
            writeln!(out, "  write notes on it in {}.md beside it", key.number)
        }
        Target::Design(_) => writeln!(out, "  write its commentary in design.md beside it"),
        other => writeln!(
            out,
            "  write what there is to say of it in {}.md beside it",
            other.key()
        ),
    }
}
