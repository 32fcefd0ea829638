//! What citations name: a work of the literature or a document.

use std::fmt;
use std::str::FromStr;

use super::key::{Key, NotAKey};
use super::link::Target;

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
