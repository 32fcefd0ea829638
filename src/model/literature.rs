//! Literature: the works cited, and where in them.

use super::certainty::Certainty;
pub use super::cited::Cited;
use super::key::Key;
use super::note::Note;
use super::place::{Place, Placed};
use super::words::closed_list;

closed_list! {
    /// How a number in an earlier catalogue relates to ours.
    Relation {
        /// The same thing; the default.
        Same = "same",
        /// Theirs covers several of ours.
        CoversOurs = "covers-ours",
        /// Theirs is a part of ours.
        PartOfOurs = "part-of-ours",
        /// Theirs is no state but a printing or variant of ours.
        NotAState = "not-a-state",
        /// Theirs is an error.
        Error = "error",
    }
}

/// A work of the literature.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// Its BibTeX key.
    pub key: Key,
    /// Author and year: "Verhoeven 1961".
    pub short: String,
    /// The whole reference as plain text, formatted by a citation style.
    pub full: String,
    /// The same as HTML of the formatter's making: text escaped; only emphasis, and isolated texts
    /// that are written from right to left.
    pub full_html: String,
    /// The names and the year, with which `full_html` begins.
    pub head_html: String,
    /// Authors or editors with the family name first, for sorting; may be empty.
    pub authors: String,
    /// The year, where there is one.
    pub year: Option<i32>,
    /// Its title.
    pub title: String,
    /// Where it is recorded.
    pub place: Place,
    /// A note on it, where the catalogue has one.
    pub note: Option<Note>,
}

/// A citation, and what the cited work calls the thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Citation {
    /// The work or document.
    pub cite: Placed<Cited>,
    /// Where in it: "p. 31".
    pub at: Option<String>,
    /// Its number for the thing: "22", "II".
    pub number: Option<String>,
    /// How that number relates to ours.
    pub relation: Relation,
    /// Of a sheet: the certainty that it is this one; `None`: certain.
    pub this_sheet: Option<Placed<Certainty>>,
    /// Of a sheet: whether it is illustrated there; `None`: not said.
    pub illustrated: Option<bool>,
    /// Where it is recorded.
    pub place: Place,
}

impl Citation {
    /// The certainty that it is of this sheet.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        let this_sheet = self.this_sheet.as_ref();
        this_sheet.map_or(Certainty::Certain, |said| said.value)
    }
}
