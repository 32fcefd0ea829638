//! `keyblock audit`: prints the findings, and writes nothing.

use std::io::{self, Write};
use std::path::Path;

use super::kept_back::{self, Work};
use super::outcome::Outcome;
use super::progress::Progress;
use super::streams::wants_colour;
use super::{audit_document, report};
use crate::press::{self, PictureWork};

pub(super) const ABOUT: &str = "\
Reports everything that is wrong or doubtful in a catalogue, in one run, and writes nothing.

Errors forbid publishing: what cannot be understood, references to nothing, private names in published \
text. Doubts are what scholarship must settle: contradictions, impossible dates, numbers above an \
edition. Hints are the rest. Exit code 0 without errors, 1 with.

Everything recorded is judged, also what is private or not published, which the pages of the catalogue leave out; a \
sentence at the end says so where there is any. With --json no sentence is printed.";

/// Judges the catalogue in `dir` and prints the findings.
pub(super) fn run(dir: &Path, as_json: bool, out: &mut impl Write) -> io::Result<Outcome> {
    let progress = Progress::of("pictures");
    let judged = press::judge(
        dir,
        &PictureWork::ReadOnly(&|done, of| progress.tell(done, of)),
    );
    drop(progress);
    let sources = &judged.catalogue.sources;
    let tally = judged.tally();
    if as_json {
        serde_json::to_writer_pretty(
            &mut *out,
            &audit_document::audit_document(&judged.findings, sources),
        )?;
        writeln!(out)?;
    } else {
        let colour = wants_colour(&io::stdout());
        out.write_all(report::findings(&judged.findings, sources, colour).as_bytes())?;
        writeln!(out, "{}", report::tally(tally))?;
        kept_back::say_of_everything(&judged.catalogue, Work::Judged, out)?;
    }
    Ok(if tally.errors == 0 {
        Outcome::Done
    } else {
        Outcome::NotDone
    })
}
