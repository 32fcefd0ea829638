//! The forms that readers fill in and send: where they are.
//!
//! `exchange` makes them; pages link to them.

use super::address::{Address, Overview};
use super::book::Here;
use super::html::CleanHtml;
use crate::model::design::Design;
use crate::model::words::ClosedList as _;

/// The table of sheets to fill in.
const LISTING: &str = "listing.xlsx";
/// The text to fill in, for a mail.
const SIGHTING: &str = "sighting.txt";

/// The forms of a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct FormPaths {
    /// The path of the table, relative to the catalogue.
    pub listing: String,
    /// The path of the text.
    pub sighting: String,
}

/// The forms for sheets of any design.
pub(crate) fn in_general() -> FormPaths {
    beside(&Address::Overview(Overview::Contribute))
}

/// The forms for sheets of one design.
pub(crate) fn of_design(design: &Design) -> FormPaths {
    beside(&Address::Design(design.key.clone()))
}

/// What the page of a design says of its forms; `None` where it was withdrawn.
pub(crate) fn report(here: &Here<'_>, design: &Design) -> Option<CleanHtml> {
    if design.standing.is_withdrawn() {
        return None;
    }
    let paths = of_design(design);
    let words = here.words();
    let how = Address::Overview(Overview::Contribute);
    let how = here.link(
        &how,
        &CleanHtml::text(words.word(Overview::Contribute.word())),
    );
    let of = [
        ("table", &linked(here, &paths.listing, "form-link-listing")),
        ("form", &linked(here, &paths.sighting, "form-link-sighting")),
        ("how", &how),
    ];
    Some(words.html("report-a-sheet-text", None, &of))
}

/// A link to a form, under a word.
pub(crate) fn linked(here: &Here<'_>, path: &str, word: &str) -> CleanHtml {
    let text = CleanHtml::text(here.words().word(word));
    let href = here.href_file(path);
    CleanHtml::element("a", &[("href", &href), ("download", "")], &text)
}

fn beside(page: &Address) -> FormPaths {
    FormPaths {
        listing: format!("{page}{LISTING}"),
        sighting: format!("{page}{SIGHTING}"),
    }
}
