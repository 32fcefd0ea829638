//! People: artists, printers, carvers, publishers, former owners, editors.

use super::as_found::OtherId;
use super::edtf::Date;
use super::key::Key;
use super::note::Note;
use super::place::{Place, Placed};

/// A person or workshop.
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    /// Their key.
    pub key: Key,
    /// The name as read.
    pub name: Placed<String>,
    /// The name as sorted: "Artist, The"; the name where none is given.
    pub sort: Option<String>,
    /// Keys of the vocabulary of roles.
    pub roles: Vec<Placed<Key>>,
    /// The date of birth.
    pub born: Option<Placed<Date>>,
    /// The date of death.
    pub died: Option<Placed<Date>>,
    /// When they worked.
    pub active: Option<Placed<Date>>,
    /// Other forms of the name.
    pub names: Vec<OtherName>,
    /// Addresses of authority records.
    pub authority: Vec<Placed<String>>,
    /// Their identifiers elsewhere.
    pub ids: Vec<OtherId>,
    /// A text about them.
    pub note: Option<Note>,
    /// Where it is recorded.
    pub place: Place,
}

/// Another form of a name.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherName {
    /// The name.
    pub text: Placed<String>,
    /// Its language and script, BCP 47.
    pub lang: Option<Placed<String>>,
}
