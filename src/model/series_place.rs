//! The places of designs and printings in series.
//!
//! A series with a record of its own ([`super::series`]) is named by designs and printings with its key; one without is
//! named by its name. A design belongs to a series as a composition; a printing belongs to the series in which its sheets
//! came out.

use super::key::Key;
use super::place::Placed;

/// Which series: one with a record, by its key, or one without, by its name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SeriesRef {
    /// A series with a record.
    Record(Key),
    /// A series without a record.
    Named(String),
}

impl SeriesRef {
    /// The key of its record; `None` where it has none.
    #[must_use]
    pub fn key(&self) -> Option<&Key> {
        match self {
            SeriesRef::Record(key) => Some(key),
            SeriesRef::Named(_) => None,
        }
    }

    /// The key of its record, or its name.
    #[must_use]
    pub fn as_str(&self) -> &str {
        match self {
            SeriesRef::Record(key) => key.as_str(),
            SeriesRef::Named(name) => name,
        }
    }
}

/// A series and the place in it.
#[derive(Clone, Debug, PartialEq)]
pub struct SeriesPlace {
    /// Which series.
    pub of: Placed<SeriesRef>,
    /// The place in it, as text: "3", "IV".
    pub position: Option<Placed<String>>,
}
