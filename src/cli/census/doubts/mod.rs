//! `keyblock census --doubts`: which records may be one sheet, with what speaks for and against.
//!
//! In: a catalogue, and a design or none. Out: the pairs for people ([`text`]), for programs
//! ([`document`]), or as a page for the editors ([`page`], set by `page.html`), which [`page_file`] keeps
//! out of the site. Pairing is the study's, the words are the audit's.

mod document;
mod facts;
mod page;
mod page_file;
mod text;

use std::io::{self, Write};
use std::path::Path;

use crate::cli::{Outcome, streams, wants_colour};
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::OtherSheet;
use crate::model::key::ImpressionKey;
use crate::study::Studies;
use crate::study::same_sheet::reason::Bearing;
use crate::study::same_sheet::{RecordPair, pairs};

/// The pairs of one design.
struct OfDesign<'a> {
    design: &'a Design,
    pairs: Vec<RecordPair>,
}

/// What is asked for.
pub(super) struct Asked<'a> {
    /// The catalogue's folder.
    pub(super) dir: &'a Path,
    /// One design, or every one.
    pub(super) design: Option<&'a Design>,
    /// Where the editors' page goes.
    pub(super) file: Option<&'a Path>,
    /// Whether a document is wanted.
    pub(super) json: bool,
}

/// Tells of the pairs.
pub(super) fn run(
    catalogue: &Catalogue,
    studies: &Studies,
    asked: &Asked<'_>,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    if let Some(file) = asked.file
        && let Err(refusal) = page_file::may(asked.dir, file)
    {
        streams::say(format_args!("keyblock: {refusal}"));
        return Ok(Outcome::Usage);
    }
    let found = in_order(catalogue, studies, asked.design);
    if let Some(file) = asked.file {
        let text = page::page(asked.dir, catalogue, studies, &found)?;
        page_file::write(file, &text)?;
        streams::say(format_args!(
            "{}: {}; for the editors, not for publishing",
            file.display(),
            text::counted_pairs(&found)
        ));
    }
    if asked.json {
        let document = document::document(catalogue, studies, asked.design, &found);
        serde_json::to_writer_pretty(&mut *out, &document)?;
        writeln!(out)?;
    } else if asked.file.is_none() {
        let colour = wants_colour(&io::stdout());
        text::pairs(catalogue, studies, &found, colour, out)?;
    }
    Ok(Outcome::Done)
}

/// The pairs in readers' order, of one design or of every one.
fn in_order<'a>(
    catalogue: &'a Catalogue,
    studies: &Studies,
    design: Option<&Design>,
) -> Vec<OfDesign<'a>> {
    let mut found = pairs(catalogue, &studies.groups);
    let keys = studies.order.keys().iter();
    keys.filter(|key| design.is_none_or(|design| design.key == **key))
        .filter_map(|key| {
            Some(OfDesign {
                design: catalogue.designs.get(key)?,
                pairs: found.remove(key)?,
            })
        })
        .collect()
}

/// What the records of a pair say themselves of why they may be one, unless that is private.
fn stated_why<'a>(catalogue: &'a Catalogue, records: &[ImpressionKey; 2]) -> Option<&'a str> {
    let [one, other] = records;
    let why = |from: &ImpressionKey, to: &ImpressionKey| {
        let record = catalogue.published_impression(catalogue.impression(from)?);
        let links: &[OtherSheet] = &record.maybe_same_as;
        let link = links.iter().find(|link| link.impression.value == *to)?;
        link.why.as_deref()
    };
    why(one, other).or_else(|| why(other, one))
}

/// How a bearing is called, in print.
fn bearing_word(bearing: Bearing) -> &'static str {
    match bearing {
        Bearing::Proves => "ties",
        Bearing::Speaks => "speaks for",
        Bearing::Fits => "fits",
        Bearing::Weighs => "weighs against",
        Bearing::Contradicts => "contradicts",
        Bearing::Excludes => "excludes",
    }
}

/// What the reasons come to, in a phrase.
fn verdict(pair: &RecordPair) -> &'static str {
    if pair.is_excluded() {
        "excluded, unless something recorded as certain is wrong"
    } else if pair.is_suggested() && !pair.is_stated {
        "may be one sheet, and no record says so yet"
    } else if pair.is_suggested() {
        "may be one sheet"
    } else {
        "stated, with little else recorded that speaks for it"
    }
}
