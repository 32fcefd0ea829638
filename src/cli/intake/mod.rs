//! `keyblock intake`: what a museum or dealer hands in, as proposed records and a report.
//!
//! In: a file, and the name of the house. Out: the folder of the house in the inbox, and the report for people or for
//! programs. With `--accept`, the records of a batch. The stages are run by `press::intake`.

mod accept;
mod refusal;

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::catalogue_folder::refused_unless_catalogue;
use super::designs::say_left_out;
use super::outcome::Outcome;
use super::plural::counted;
use super::progress::Progress;
use super::streams::wants_colour;
use crate::press::intake::{HandedIn, IntakeFault, Proposed, Written, write};
use crate::read::Inputs;
use refusal::{refused, say_faults};

pub(super) const ABOUT: &str = "\
Reads a file that a museum or dealer hands in, proposes a record for each row, and reports what was understood: XLSX, ODS, CSV \
or TSV in any encoding, LIDO, Linked Art, IIIF manifests, or a sighting form from a mail.

Everything is written to records/inbox/NAME; the catalogue itself is not changed. There columns.toml says what each column \
holds, values.toml what each value reads, designs.toml which rows belong to which design, and asks which are recorded \
impressions (is = \"14.7\", is_not = [\"14.7\"]). Correct them and run intake again: \
what you wrote stands, also for the next file of that house. proposed.toml has the records as they would be written. \
report.html and report.csv can be sent back to the registrar; they tell nothing that the catalogue keeps private. The file \
itself is kept as it came.

A sheet is known again by its holder and accession number: the same file proposes nothing, a corrected one the corrections. What \
the editors wrote is never replaced; a difference is a doubt.

--accept writes the records of the batch that was proposed last, with permanent numbers, all or nothing: all rows, or only those \
named, such as 2-14,17.";

/// The arguments of `intake`.
#[derive(Debug, clap::Args)]
pub(super) struct IntakeArguments {
    /// The file that was handed in
    #[arg(required_unless_present = "accept", conflicts_with = "accept")]
    file: Option<PathBuf>,
    /// The house that hands in: the name of its folder in the inbox, kept for its next file. Made of the file's name where
    /// none is given; the key of a holder makes its sheets that holder's
    #[arg(long = "as", value_name = "NAME", conflicts_with = "accept")]
    name: Option<String>,
    /// A folder with photographs that come with the file: each is matched with a row by the names that cells give, or by
    /// the accession number that its name begins with
    #[arg(long, value_name = "FOLDER", conflicts_with = "accept")]
    photographs: Option<PathBuf>,
    /// Write the proposed records of a house: all, or those of some rows (2-14,17)
    #[arg(long, value_names = ["NAME", "ROWS"], num_args = 1..=2)]
    accept: Option<Vec<String>>,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Takes a file into the inbox of the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &IntakeArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    if let Some(refused) = refused_unless_catalogue(dir) {
        return Ok(refused);
    }
    if let Some(accept) = &arguments.accept {
        return accept::run(dir, accept, arguments.json, out);
    }
    match taken_in(dir, arguments, out) {
        Ok(done) => done.map(|()| Outcome::Done),
        Err(fault) => Ok(refused(&fault)),
    }
}

/// Reads the file, writes the inbox, prints the report.
fn taken_in(
    dir: &Path,
    arguments: &IntakeArguments,
    out: &mut impl Write,
) -> Result<io::Result<()>, IntakeFault> {
    let file = arguments.file.as_deref().unwrap_or(Path::new(""));
    let handed_in = HandedIn::read(dir, file, arguments.name.as_deref())?;
    let progress = Progress::of("intake");
    let tell = |done, of| progress.tell(done, of);
    let proposed = Proposed::of(
        dir,
        &Inputs::of(dir),
        handed_in,
        arguments.photographs.as_deref(),
        &tell,
    )?;
    let account = proposed.account();
    let written = write(&proposed, &account)?;
    drop(progress);
    say_left_out(&proposed.findings);
    say_faults(&proposed.faults);
    if arguments.json {
        let document = proposed.document(&account);
        let printed = serde_json::to_writer_pretty(&mut *out, &document);
        return Ok(printed
            .map_err(io::Error::from)
            .and_then(|()| writeln!(out)));
    }
    let colour = wants_colour(&io::stdout());
    let heading = |text: &str| {
        if colour {
            format!("\u{1b}[1m{text}\u{1b}[0m")
        } else {
            text.to_owned()
        }
    };
    let report = proposed.text(&account, &heading);
    let next = next_steps(&proposed, &written);
    Ok(write!(out, "{report}\n{next}"))
}

/// Where the proposal lies, and what to do next.
fn next_steps(proposed: &Proposed, written: &Written) -> String {
    let folder = written.folder.trim_end_matches('/');
    let name = proposed.inbox.name();
    let began = if written.is_unchanged {
        format!("{folder} has it all already; nothing was written.")
    } else {
        format!("It is in {folder}; the catalogue was not changed.")
    };
    let asked = match proposed.asked_about() {
        0 => String::new(),
        rows => format!(
            "designs.toml asks about {} that may be recorded already.\n",
            counted(rows, "row", "rows")
        ),
    };
    format!(
        "{began}\n{asked}Correct columns.toml, values.toml and designs.toml there, and run this again with --as {name}; send \
         report.html to the registrar.\nThen: keyblock intake --accept {name}\n"
    )
}
