//! `keyblock identify`: determines which states and printings a sheet can be, and why.
//!
//! In: a design, and what was seen on a sheet of it, as arguments ([`see_option`]) or as answers to
//! [`questions`] in the terminal. Out: the [`examination`], for people ([`text`]) or for programs
//! ([`document`]).

mod document;
mod examination;
mod questions;
mod see_option;
mod text;
mod wording;

use std::io::{self, IsTerminal, Write};
use std::path::Path;

use super::designs::{named, say_left_out};
use super::kept_back::{self, Work};
use super::outcome::Outcome;
use super::streams::{say, wants_colour};
use crate::read;
use crate::study::separate::separability;
use crate::study::table::DiagnosticTable;
use examination::Examination;

pub(super) const ABOUT: &str = "\
Says which states and printings of a design a sheet can be, with the evidence for and against each, what \
to look at next, and what would change the answer.

What was seen is given with --see, a point of the design and its value:
  moon=present           the value seen
  lamps=2,3              either of these
  sky!=even,wiped        none of these
  image-height=211.5     a measurement, in the point's unit
  stamp=not-visible      trimmed, mounted or framed there; not-applicable: of a block that was not printed
each followed by :probable or :possible where it is not certain. Only the matrix can exclude, where the observation \
is certain; wear, blocks, paper, inking and marks are weighed, because they vary or can be added.

Without --see, on a terminal, the points are asked for one at a time, the most telling first. The answer is what \
the sheet is consistent with; it is not an authentication.

Everything recorded is used, including what is private or not published, which the pages of the catalogue leave out; a \
sentence at the end says so where there is any. With --json no sentence is printed.";

/// The arguments of `identify`.
#[derive(Debug, clap::Args)]
pub(super) struct IdentifyArguments {
    /// The design: its key, or the number that readers see
    design: String,
    /// What was seen: POINT=VALUE[,VALUE…] or POINT!=VALUE[,VALUE…], with :probable or :possible
    #[arg(long, value_name = "POINT=VALUE", num_args = 1..)]
    see: Vec<String>,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<std::path::PathBuf>,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Examines a sheet of a design of the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &IdentifyArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let catalogue = &reading.catalogue;
    let design = match named(catalogue, &arguments.design) {
        Ok(design) => design,
        Err(usage) => return Ok(usage),
    };
    say_left_out(&reading.findings);
    let table = DiagnosticTable::of(design);
    let mut observations = match see_option::observations(design, &table, &arguments.see) {
        Ok(observed) => observed,
        Err(faults) => {
            for fault in faults {
                say(format_args!("keyblock: {}", fault.message));
                say(format_args!("  {}", fault.help));
            }
            return Ok(Outcome::Usage);
        }
    };
    let separability = separability(&table);
    let is_interactive = arguments.see.is_empty()
        && !arguments.json
        && io::stdin().is_terminal()
        && io::stdout().is_terminal();
    if is_interactive {
        observations = questions::observations(design, &table, &mut io::stdin().lock(), out)?;
    }
    let examination = Examination::of(design, &table, &separability, &observations);
    if arguments.json {
        serde_json::to_writer_pretty(&mut *out, &document::of(&examination))?;
        writeln!(out)?;
    } else {
        text::conclusion(&examination, wants_colour(&io::stdout()), out)?;
        kept_back::say_of_designs(catalogue, [design], Work::Used, out)?;
    }
    Ok(Outcome::Done)
}
