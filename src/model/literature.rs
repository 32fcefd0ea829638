//! Literature: the works cited, and where in them.

use std::fmt;
use std::str::FromStr;

use super::key::{Key, NotAKey};
use super::link::Target;
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

/// What a citation names: a work of the literature by its key alone, or a document as `document:KEY`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cited {
    /// A work of the literature.
    Work(Key),
    /// A document.
    Document(Key),
}

/// What stands before the key of a document in a citation.
const DOCUMENT: &str = "document:";

impl Cited {
    /// The key of the work; `None` for a document.
    #[must_use]
    pub fn work(&self) -> Option<&Key> {
        match self {
            Cited::Work(key) => Some(key),
            Cited::Document(_) => None,
        }
    }

    /// The key of the document; `None` for a work.
    #[must_use]
    pub fn document(&self) -> Option<&Key> {
        match self {
            Cited::Work(_) => None,
            Cited::Document(key) => Some(key),
        }
    }

    /// The record, as links name it.
    #[must_use]
    pub fn record(&self) -> Target {
        match self {
            Cited::Work(key) => Target::Work(key.clone()),
            Cited::Document(key) => Target::Document(key.clone()),
        }
    }
}

impl FromStr for Cited {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<Cited, NotAKey> {
        match text.strip_prefix(DOCUMENT) {
            Some(key) => Ok(Cited::Document(key.parse()?)),
            None => Ok(Cited::Work(text.parse()?)),
        }
    }
}

impl fmt::Display for Cited {
    /// As records write it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Cited::Work(key) => key.fmt(f),
            Cited::Document(key) => write!(f, "{DOCUMENT}{key}"),
        }
    }
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
    /// Where it is recorded.
    pub place: Place,
}
