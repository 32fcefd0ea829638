//! `keyblock census`: counts the known sheets, by place among others, as exact numbers or intervals.
//!
//! In: a catalogue, and a design, a series or neither ([`scope`]). Out: the counts, for people ([`text`]) or
//! for programs ([`document`]); or, with `--doubts`, the records that may be one sheet ([`doubts`]). The
//! counting is in `study`.

mod document;
mod doubts;
mod scope;
mod text;

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::designs::{named, say_left_out};
use super::kept_back::{self, Work};
use super::outcome::Outcome;
use super::streams::{say, wants_colour};
use crate::model::catalogue::Catalogue;
use crate::read;
use crate::read::near::nearest;
use crate::study::census::{self, DesignScope, Groups};
use crate::study::series;
use crate::study::{DesignStudy, Studies};
use document::CensusDocument;
use scope::{ScopedCensus, series_named};

pub(super) const ABOUT: &str = "\
Counts the known impressions of a design, of a series, or of the whole catalogue: by status, class, type, state, printing, country, \
town and holder.

Records joined by same_as are counted once. Where two may be one (maybe_same_as), the count is a range: the \
higher figure counts them separately, the lower counts as many as possible once. An impression that may be of two \
states is counted in both rows, so rows need not add up.

--doubts lists instead the records that may be one sheet: those that say so, and those that telling facts \
suggest (a number, a mark, a lot, an owner, a size that few sheets share) and nothing excludes, with all reasons \
for and against. No records are joined. With FILE.html it writes a page for the editors, both records and \
photographs side by side; it holds private names and is never part of the site.

Everything recorded is counted, including what is private or not published, which the pages of the catalogue leave out; \
a sentence below the counts says so where there is any. With --json no sentence is printed.";

/// The arguments of `census`.
#[derive(Debug, clap::Args)]
pub(super) struct CensusArguments {
    /// The design: its key, or the number that readers see. The whole catalogue where none is named
    design: Option<String>,
    /// A series: its key, title or name. Where printings came out in it, their sheets are counted, else all of its designs
    #[arg(long, value_name = "NAME", conflicts_with_all = ["design", "doubts"])]
    series: Option<String>,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
    /// Show which records may be one sheet; with FILE.html, as a page for the editors
    #[arg(long, value_name = "FILE.html", num_args = 0..=1)]
    doubts: Option<Option<PathBuf>>,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Counts the sheets of the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &CensusArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let catalogue = &reading.catalogue;
    let design = match arguments
        .design
        .as_deref()
        .map(|name| named(catalogue, name))
    {
        Some(Ok(design)) => Some(design),
        Some(Err(usage)) => return Ok(usage),
        None => None,
    };
    say_left_out(&reading.findings);
    if let Some(file) = &arguments.doubts {
        let request = doubts::DoubtsRequest {
            dir,
            design,
            file: file.as_deref(),
            json: arguments.json,
        };
        return doubts::run(catalogue, &Studies::of(catalogue), &request, out);
    }
    // Counting needs only a small part of all studies.
    let groups = Groups::of(catalogue);
    let census = match (design, arguments.series.as_deref()) {
        (Some(design), _) => {
            let study = DesignStudy::of(catalogue, &groups, design);
            ScopedCensus::Design(design, Box::new(study))
        }
        (None, Some(name)) => {
            let Some(of) = series_named(catalogue, name) else {
                return Ok(unknown_series(catalogue, name));
            };
            let counts = series::census(catalogue, &groups, of, DesignScope::All);
            ScopedCensus::Series(of, counts)
        }
        (None, None) => {
            let all = census::of_everything(catalogue, &groups, DesignScope::All);
            ScopedCensus::Everything(all)
        }
    };
    if arguments.json {
        serde_json::to_writer_pretty(&mut *out, &CensusDocument::of(&census))?;
        writeln!(out)?;
    } else {
        let colour = wants_colour(&io::stdout());
        text::census(catalogue, &census, colour, out)?;
        let designs = census.designs(catalogue);
        kept_back::say_of_designs(catalogue, designs, Work::Counted, out)?;
    }
    Ok(Outcome::Done)
}

fn unknown_series(catalogue: &Catalogue, name: &str) -> Outcome {
    say(format_args!("keyblock: there is no series `{name}`"));
    let named = series::named(catalogue);
    let names: Vec<&str> = named.iter().map(|of| of.as_str()).collect();
    match nearest(name, names.iter().copied()) {
        Some(near) => say(format_args!("  the nearest is `{near}`")),
        None if names.is_empty() => say("  no design of the catalogue belongs to one"),
        None => say(format_args!("  the series are {}", names.join(", "))),
    }
    Outcome::Usage
}
