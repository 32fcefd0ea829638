//! `keyblock identify`: which state and printing a sheet can be, and why.
//!
//! In: a design, and what was seen, in the words of [`see_option`] or asked for in the terminal ([`questions`]).
//! Out: what the study makes of it, for people ([`text`]) or for programs ([`document`]).

mod document;
mod questions;
mod see_option;
mod text;

use std::io::{self, IsTerminal, Write};
use std::path::Path;

use super::designs::{named, say_left_out};
use super::{Outcome, wants_colour};
use crate::model::design::Design;
use crate::read;
use crate::study::census::Groups;
use crate::study::identify::{Identified, Observed, identify};
use crate::study::index::PointAt;
use crate::study::next_point::{NextPoint, next_points};
use crate::study::separate::{Separability, separability};
use crate::study::table::DiagnosticTable;

pub(super) const ABOUT: &str = "\
Says which states and printings of a design a sheet can be, which it cannot and why, and what to look at \
next.

What was seen is given with --see, a point of the design and its value:
  moon=present           the value seen
  lamps=2,3              either of these
  sky!=even,wiped        none of these
  image-height=211.5     a measurement, in the point's unit
each followed by :probable or :possible where it is not certain. Only what is certain excludes. What cannot be \
seen (trimmed, mounted, framed) is left out: it tells nothing.

Without --see, on a terminal, the points are asked for one at a time, the most telling first. The answer is what \
the sheet is consistent with; it is no authentication.";

/// The words typed after `identify`.
#[derive(Debug, clap::Args)]
pub(super) struct Words {
    /// The design: its key, or the number that readers see
    design: String,
    /// What was seen: POINT=VALUE[,VALUE…] or POINT!=VALUE[,VALUE…], with :probable or :possible
    #[arg(long, value_name = "POINT=VALUE", num_args = 1..)]
    see: Vec<String>,
    /// The catalogue's folder
    #[arg(long = "in", value_name = "DIR", default_value = ".")]
    pub(super) dir: std::path::PathBuf,
    /// One JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// What was looked for on a sheet.
#[derive(Debug, Default)]
struct Asked {
    /// What was seen, in the order in which it was said.
    observed: Vec<Observed>,
    /// The points that cannot be seen.
    not_visible: Vec<PointAt>,
}

/// A sheet on the table, as far as it was examined.
struct Examination<'a> {
    design: &'a Design,
    table: &'a DiagnosticTable,
    separability: &'a Separability,
    /// What was seen, in the order in which it was said.
    observed: &'a [Observed],
    /// The points that cannot be seen on the sheet.
    not_visible: &'a [PointAt],
    identified: Identified,
    /// What to look at next, the most telling first.
    next: Vec<NextPoint>,
}

impl<'a> Examination<'a> {
    fn of(
        design: &'a Design,
        table: &'a DiagnosticTable,
        separability: &'a Separability,
        asked: &'a Asked,
    ) -> Examination<'a> {
        let Asked {
            observed,
            not_visible,
        } = asked;
        let identified = identify(table, observed);
        Examination {
            design,
            table,
            separability,
            observed,
            not_visible,
            next: next_points(table, &identified, observed),
            identified,
        }
    }
}

/// Examines a sheet of a design of the catalogue in `dir`.
pub(super) fn run(dir: &Path, words: &Words, out: &mut impl Write) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let catalogue = &reading.catalogue;
    let design = match named(catalogue, &words.design) {
        Ok(design) => design,
        Err(usage) => return Ok(usage),
    };
    say_left_out(&reading.findings);
    let table = DiagnosticTable::of(catalogue, &Groups::of(catalogue), design);
    let mut asked = match see_option::observations(design, &table, &words.see) {
        Ok(observed) => Asked {
            observed,
            not_visible: Vec::new(),
        },
        Err(faults) => {
            for fault in faults {
                eprintln!("keyblock: {}", fault.message);
                eprintln!("  {}", fault.help);
            }
            return Ok(Outcome::Usage);
        }
    };
    let separability = separability(&table);
    let is_asked = words.see.is_empty()
        && !words.json
        && io::stdin().is_terminal()
        && io::stdout().is_terminal();
    if is_asked {
        asked = questions::observations(design, &table, &mut io::stdin().lock(), out)?;
    }
    let examination = Examination::of(design, &table, &separability, &asked);
    if words.json {
        serde_json::to_writer_pretty(&mut *out, &document::of(&examination))?;
        writeln!(out)?;
    } else {
        text::conclusion(&examination, wants_colour(&io::stdout()), out)?;
    }
    Ok(Outcome::Done)
}
