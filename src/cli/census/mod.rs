//! `keyblock census`: how many sheets are known, where, and how sure that is.
//!
//! In: a catalogue, and a design or none. Out: the counts, for people ([`say`]) or for programs
//! ([`document`]); or, with `--doubts`, the records that may be one sheet ([`doubts`]). Counting is the
//! study's.

mod document;
mod doubts;
mod say;

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::designs::{named, say_left_out};
use super::{Outcome, wants_colour};
use crate::read;
use crate::study::Studies;
use document::CensusDocument;

pub(super) const ABOUT: &str = "\
Counts the known sheets of a design, or of the whole catalogue: by status, kind, state, printing, country, \
town and holder.

Records joined by same_as are one sheet. Where two may be one (maybe_same_as), a count is an interval: at \
most every one of them is a sheet of its own, at least all those that may be one are one. A sheet that may \
be of two states stands in both rows, so rows need not add up.

--doubts shows instead which records may be one sheet, those that say so and those that nothing excludes \
and telling facts suggest (a number, a mark, a lot, an owner, a size that few sheets share), with all that speaks \
for and against. Nothing is joined. With FILE.html it writes a page for the editors, both records and \
photographs side by side; it holds private names and is never part of the site.";

/// The words typed after `census`.
#[derive(Debug, clap::Args)]
pub(super) struct Words {
    /// The design: its key, or the number that readers see [default: the whole catalogue]
    design: Option<String>,
    /// The catalogue's folder
    #[arg(long = "in", value_name = "DIR", default_value = ".")]
    pub(super) dir: PathBuf,
    /// Show which records may be one sheet; with FILE.html, as a page for the editors
    #[arg(long, value_name = "FILE.html", num_args = 0..=1)]
    doubts: Option<Option<PathBuf>>,
    /// One JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Counts in the catalogue in `dir`.
pub(super) fn run(dir: &Path, words: &Words, out: &mut impl Write) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let catalogue = &reading.catalogue;
    let design = match words.design.as_deref().map(|name| named(catalogue, name)) {
        Some(Ok(design)) => Some(design),
        Some(Err(usage)) => return Ok(usage),
        None => None,
    };
    say_left_out(&reading.findings);
    let studies = Studies::of(catalogue);
    if let Some(file) = &words.doubts {
        let asked = doubts::Asked {
            dir,
            design,
            file: file.as_deref(),
            json: words.json,
        };
        return doubts::run(catalogue, &studies, &asked, out);
    }
    let study = design.and_then(|d| Some((d, studies.designs.get(&d.key)?)));
    if words.json {
        let document = match study {
            Some((design, study)) => CensusDocument::of_design(design.key.as_str(), study),
            None => CensusDocument::of_everything(&studies.census),
        };
        serde_json::to_writer_pretty(&mut *out, &document)?;
        writeln!(out)?;
    } else {
        let colour = wants_colour(&io::stdout());
        say::census(catalogue, study, &studies.census, colour, out)?;
    }
    Ok(Outcome::Done)
}
