//! Exhibitions.

use super::edtf::Date;
use super::key::Key;
use super::literature::Cited;
use super::place::{Place, Placed};

/// An exhibition.
#[derive(Clone, Debug, PartialEq)]
pub struct Exhibition {
    /// Its key.
    pub key: Key,
    /// Its title.
    pub title: Placed<String>,
    /// Where: a holder's key, or free text.
    pub venue: Option<Venue>,
    /// The town.
    pub town: Option<String>,
    /// When.
    pub date: Option<Placed<Date>>,
    /// Its catalogue.
    pub cite: Option<Placed<Cited>>,
    /// Where it is recorded.
    pub place: Place,
}

/// Where an exhibition was shown.
#[derive(Clone, Debug, PartialEq)]
pub enum Venue {
    /// At a holder of the catalogue.
    Holder(Placed<Key>),
    /// Elsewhere.
    Named(String),
}
