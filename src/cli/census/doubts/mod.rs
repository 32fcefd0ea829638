//! `keyblock census --doubts`: lists the records that may be one sheet, with the reasons for and against.
//!
//! In: a catalogue, and a design or none. Out: the [`pairs`] for people ([`text`]), for programs
//! ([`document`]), or as a page for the editors ([`page`] with the template `page.html`), which
//! [`page_file`] keeps out of the site. The pairing is in `study`, the wording of the reasons in `audit`.

mod document;
mod facts;
mod page;
mod page_file;
mod pairs;
mod text;

use std::io::{self, Write};
use std::path::Path;

use crate::cli::kept_back::{self, Work};
use crate::cli::outcome::Outcome;
use crate::cli::streams::{say, wants_colour};
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::study::Studies;

/// The arguments of `census --doubts`.
pub(super) struct DoubtsRequest<'a> {
    /// The catalogue's folder.
    pub(super) dir: &'a Path,
    /// One design; every design where `None`.
    pub(super) design: Option<&'a Design>,
    /// The file for the editors' page.
    pub(super) file: Option<&'a Path>,
    /// Whether to print the document for programs.
    pub(super) json: bool,
}

/// Prints the pairs, or writes the page.
pub(super) fn run(
    catalogue: &Catalogue,
    studies: &Studies,
    request: &DoubtsRequest<'_>,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    if let Some(file) = request.file
        && let Err(refusal) = page_file::check(request.dir, file)
    {
        say(format_args!("keyblock: {refusal}"));
        return Ok(Outcome::Usage);
    }
    let found = pairs::in_order(catalogue, studies, request.design);
    if let Some(file) = request.file {
        let text = page::page(request.dir, catalogue, studies, &found)?;
        page_file::write(file, &text)?;
        say(format_args!(
            "{}: {}; for the editors, not for publishing",
            file.display(),
            text::counted_pairs(&found)
        ));
    }
    if request.json {
        let document = document::document(catalogue, studies, request.design, &found);
        serde_json::to_writer_pretty(&mut *out, &document)?;
        writeln!(out)?;
    } else if request.file.is_none() {
        let colour = wants_colour(&io::stdout());
        text::pairs(catalogue, studies, &found, colour, out)?;
        let designs = catalogue.designs.values();
        let designs = designs.filter(|design| request.design.is_none_or(|d| d.key == design.key));
        kept_back::say_of_designs(catalogue, designs, Work::Used, out)?;
    }
    Ok(Outcome::Done)
}
