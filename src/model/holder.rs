//! Holders: museums, libraries, private owners, the trade.

use super::as_found::OtherId;
use super::edtf::Date;
use super::key::Key;
use super::note::Note;
use super::picture::PictureDefaults;
use super::place::{Place, Placed};
use super::words::closed_list;

closed_list! {
    /// The kind of a holder.
    HolderKind {
        /// A museum.
        Museum = "museum",
        /// A library.
        Library = "library",
        /// An archive.
        Archive = "archive",
        /// A foundation.
        Foundation = "foundation",
        /// A private owner; name and place are not published without consent.
        Private = "private",
        /// A dealer or auction house.
        Trade = "trade",
        /// Not known.
        Unknown = "unknown",
    }
}

/// A person or institution that keeps or kept impressions.
#[derive(Clone, Debug, PartialEq)]
pub struct Holder {
    /// Its key.
    pub key: Key,
    /// Its name.
    pub name: Placed<String>,
    /// Its kind.
    pub kind: HolderKind,
    /// The town.
    pub town: Option<Placed<String>>,
    /// The country, ISO 3166-1 alpha-2.
    pub country: Option<Placed<String>>,
    /// Its ISIL (ISO 15511).
    pub isil: Option<Placed<String>>,
    /// Its web address.
    pub web: Option<Placed<String>>,
    /// Its identifiers elsewhere.
    pub ids: Vec<OtherId>,
    /// Its credit line.
    pub credit: Option<String>,
    /// What holds for the photographs of its sheets.
    pub pictures: PictureDefaults,
    /// Its former names, each with the date until which it was used.
    pub formerly: Vec<FormerName>,
    /// The holder that took it over, and the date.
    pub successor: Option<Successor>,
    /// The consent of a private owner to be named.
    pub consent: Option<Consent>,
    /// A text about it.
    pub note: Option<Note>,
    /// Where it is recorded.
    pub place: Place,
}

/// A name a holder had.
#[derive(Clone, Debug, PartialEq)]
pub struct FormerName {
    /// The name.
    pub name: Placed<String>,
    /// Until when.
    pub until: Option<Placed<Date>>,
}

/// The holder that took over.
#[derive(Clone, Debug, PartialEq)]
pub struct Successor {
    /// Which.
    pub holder: Placed<Key>,
    /// When.
    pub date: Option<Placed<Date>>,
}

/// A private owner's consent to be named.
#[derive(Clone, Debug, PartialEq)]
pub struct Consent {
    /// When it was given.
    pub date: Option<Placed<Date>>,
    /// What it covers (`name`, `place`, `pictures`).
    pub covers: Vec<Placed<String>>,
    /// When it was withdrawn.
    pub withdrawn: Option<Placed<Date>>,
}

impl Holder {
    /// Whether the field `name` or `place` may be published: always, except for a private holder
    /// without a standing consent that covers it.
    #[must_use]
    pub fn may_publish(&self, field: &str) -> bool {
        self.kind != HolderKind::Private
            || self.consent.as_ref().is_some_and(|consent| {
                consent.withdrawn.is_none() && consent.covers.iter().any(|f| f.value == field)
            })
    }
}
