//! `keyblock census`: how many sheets are known, where, and how sure that is.
//!
//! In: a catalogue, and a design or none. Out: the counts, for people ([`say`]) or for programs
//! ([`document`]). Counting is the study's.

mod document;
mod say;

use std::io::{self, Write};
use std::path::Path;

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
be of two states stands in both rows, so rows need not add up.";

/// The words typed after `census`.
#[derive(Debug, clap::Args)]
pub(super) struct Words {
    /// The design: its key, or the number that readers see [default: the whole catalogue]
    design: Option<String>,
    /// The catalogue's folder
    #[arg(long = "in", value_name = "DIR", default_value = ".")]
    pub(super) dir: std::path::PathBuf,
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
