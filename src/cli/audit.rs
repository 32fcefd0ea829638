//! `keyblock audit`: prints the findings, and writes nothing.

use std::io::{self, Write};
use std::path::Path;

use super::finding_options::FindingOptions;
use super::kept_back::{self, Work};
use super::outcome::Outcome;
use super::progress::Progress;
use super::streams::wants_colour;
use super::{audit_document, report};
use crate::audit::settled::SettledFinding;
use crate::model::finding::Finding;
use crate::press::{self, PictureWork};

pub(super) const ABOUT: &str = "\
Reports everything that is wrong or doubtful in a catalogue, in one run, and writes nothing.

Errors prevent publishing: what cannot be understood, references to nothing, private names in published \
text. Doubts need a scholar's decision: contradictions, impossible dates, numbers above an \
edition. Hints are the rest. Exit code 0 without errors, 1 with, whatever is printed.

Of a code with more than ten findings three are printed, then how many more there are and the values at fault, the most \
frequent first; --all prints every one. --code and --file print only what they name. Above ten findings a table at the end \
counts each code. With --json every finding is in the document, unless --code or --file leaves it out.

A record may say that a doubt or hint about it is settled: settled = [{ code = \"…\", why = \"…\", by = \"…\", date = \"…\" }]. \
It is then counted separately, and --settled prints it with the reason. audit gives the digest to add to the entry, so that the \
doubt is raised again once what it rests on changes.

Everything recorded is judged, including what is private or not published, which the pages of the catalogue leave out; a \
sentence at the end says so where there is any. With --json no sentence is printed.";

/// What is printed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Printed {
    /// The findings that are not settled.
    Open,
    /// Those that are, with the reasons.
    Settled,
    /// Both, for programs.
    Document,
}

/// Judges the catalogue in `dir` and prints the findings.
pub(super) fn run(
    dir: &Path,
    printed: Printed,
    asked: &FindingOptions,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let progress = Progress::of("pictures");
    let judged = press::judge(
        dir,
        &PictureWork::ReadOnly(&|done, of| progress.tell(done, of)),
    );
    drop(progress);
    let sources = &judged.catalogue.sources;
    if asked.say_unknown_files(dir, sources) {
        return Ok(Outcome::Usage);
    }
    let tally = judged.tally();
    let colour = wants_colour(&io::stdout());
    match printed {
        Printed::Document => {
            let findings = asked.asked(dir, &judged.findings, |finding| finding, sources);
            let settled = asked.asked(dir, &judged.settled, |settled| &settled.finding, sources);
            let document = audit_document::audit_document(&findings, &settled, sources);
            serde_json::to_writer_pretty(&mut *out, &document)?;
            writeln!(out)?;
        }
        Printed::Settled => {
            let settled: Vec<Finding> = judged.settled.iter().map(with_reason).collect();
            out.write_all(asked.report(dir, &settled, sources, colour).as_bytes())?;
            writeln!(out, "{}", settled_tally(&judged.settled))?;
            kept_back::say_of_everything(&judged.catalogue, Work::Judged, out)?;
        }
        Printed::Open => {
            let text = asked.report(dir, &judged.findings, sources, colour);
            out.write_all(text.as_bytes())?;
            let settled = match judged.settled.len() {
                0 => String::new(),
                _ => format!(
                    "; {} (“keyblock audit --settled” shows them)",
                    settled_tally(&judged.settled)
                ),
            };
            writeln!(out, "{}{settled}", report::tally(tally))?;
            kept_back::say_of_everything(&judged.catalogue, Work::Judged, out)?;
        }
    }
    Ok(if tally.errors == 0 {
        Outcome::Done
    } else {
        Outcome::NotDone
    })
}

/// "2 settled"; "nothing is settled" where nothing is.
fn settled_tally(settled: &[SettledFinding]) -> String {
    match settled.len() {
        0 => "nothing is settled".to_owned(),
        n => format!("{n} settled"),
    }
}

/// The finding with its reason in place of the advice.
fn with_reason(settled: &SettledFinding) -> Finding {
    let entry = &settled.entry;
    let by = settled.by.as_ref().map(|name| format!(" by {name}"));
    let date = entry.date.as_ref().map(|date| format!(", {}", date.value));
    let why = entry.why.as_deref().unwrap_or("no reason is recorded");
    let finding = settled.finding.clone();
    let finding = finding.beside(entry.place, "settled here");
    finding.help(format!(
        "settled{}{}: {why}",
        by.unwrap_or_default(),
        date.unwrap_or_default()
    ))
}
