//! `keyblock resolve`: what references mean, with permanent addresses.
//!
//! In: a catalogue, and references as arguments or in a column of a table ([`list`]). Out: their readings, for people
//! ([`text`]), for programs ([`document`]) or beside the rows of the table ([`table`]). What a reference means is decided
//! in `study::resolve`.

mod document;
mod list;
mod table;
mod text;

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::designs::say_left_out;
use super::outcome::Outcome;
use super::streams::{say, wants_colour};
use crate::press::references::ResolvedCatalogue;
use document::ResolveDocument;
use list::{List, WantedColumn};

pub(super) const ABOUT: &str = "\
Says what a reference means, and gives its permanent address: a number with or without the siglum (OP 14, no. 14), a \
state (OP 14 iii, 14 iii/v), an impression (14.7), a number of an earlier catalogue (First List 9), an accession number \
with or without punctuation and with or without its holder, a title, a name, a key, a link, an address. Each argument is one \
reference: put a reference of several words in quotes.

Where a reference may mean several things, all of them are listed, the likeliest first, each with its certainty and reason.

--list reads a table (CSV with commas, semicolons or tabs, UTF-8) and writes it with nine more columns to standard \
output: certainty, address, label, kind, key, state, printing and why of the likeliest reading, and the addresses of the \
others. The first row has the headings, unless --no-headings says otherwise.

Only what readers may know is resolved: what is private or not published acts as absent. A text that means nothing here is \
not a failure.";

/// The arguments of `resolve`.
#[derive(Debug, clap::Args)]
pub(super) struct ResolveArguments {
    /// The references
    #[arg(required_unless_present = "list", conflicts_with = "list")]
    references: Vec<String>,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
    /// Resolve a column of a table, and write the table with the readings
    #[arg(long, value_name = "FILE.csv")]
    list: Option<PathBuf>,
    /// The column with the references: its heading, or its number from 1. The only one where none is named
    #[arg(long, value_name = "COLUMN", requires = "list")]
    column: Option<String>,
    /// The table has no row of headings
    #[arg(long, requires = "list")]
    no_headings: bool,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Resolves references to the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &ResolveArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let list = match &arguments.list {
        None => None,
        Some(file) => {
            let wanted = WantedColumn {
                column: arguments.column.as_deref(),
                has_headings: !arguments.no_headings,
            };
            match List::read(file, &wanted) {
                Ok(list) => Some(list),
                Err(refusal) => {
                    say(format_args!(
                        "keyblock: {}: {}",
                        file.display(),
                        refusal.message
                    ));
                    say(format_args!("  {}", refusal.help));
                    return Ok(refusal.outcome);
                }
            }
        }
    };
    let catalogue = match ResolvedCatalogue::read(dir) {
        Ok(catalogue) => catalogue,
        Err(fault) => {
            say(format_args!("keyblock: {fault}"));
            return Ok(Outcome::NotDone);
        }
    };
    say_left_out(&catalogue.findings);
    let references: Vec<&str> = match &list {
        Some(list) => list.references().collect(),
        None => arguments.references.iter().map(String::as_str).collect(),
    };
    let readings: Vec<_> = references
        .iter()
        .map(|reference| catalogue.resolver.resolve(reference))
        .collect();
    let results: Vec<_> = references.into_iter().zip(readings).collect();
    if arguments.json {
        serde_json::to_writer_pretty(&mut *out, &ResolveDocument::of(&catalogue, &results))?;
        writeln!(out)?;
    } else if let Some(list) = &list {
        table::write(&catalogue, list, &results, out)?;
    } else {
        text::write(&catalogue, &results, wants_colour(&io::stdout()), out)?;
    }
    Ok(Outcome::Done)
}
