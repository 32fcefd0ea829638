//! Documents: letters, ledgers, contracts, labels and other papers that are evidence about prints.
//!
//! A document says something of designs, states, printings, impressions or people ([`Telling`]). Its own words are its
//! transcription, which may have translations.

use std::fmt;
use std::str::FromStr;

use super::certainty::Certainty;
use super::edtf::Date;
use super::key::{Key, NotAKey, split_part};
use super::link::Target;
use super::note::Note;
use super::occurrence::DesignPart;
use super::picture::Picture;
use super::place::{Place, Placed};
use super::provenance::Party;

/// A document.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// Its key: the name of its file.
    pub key: Key,
    /// Its kind: a key of the vocabulary of documents.
    pub kind: Option<Placed<Key>>,
    /// Its title: its own, or one given to it.
    pub title: Option<Placed<String>>,
    /// When it was written.
    pub date: Option<Placed<Date>>,
    /// Those who wrote or issued it.
    pub by: Vec<Party>,
    /// Those to whom it was sent.
    pub to: Vec<Party>,
    /// The key of the holder who keeps it.
    pub holder: Option<Placed<Key>>,
    /// Its shelfmark there.
    pub shelfmark: Option<Placed<String>>,
    /// The languages in which it is written, BCP 47.
    pub lang: Vec<Placed<String>>,
    /// Pictures of it, in the order of its pages.
    pub pictures: Vec<Picture>,
    /// The rights in its words, as an SPDX or rightsstatements.org identifier or free text.
    pub rights: Option<String>,
    /// What it tells, and of what.
    pub tells: Vec<Telling>,
    /// Whether it may be published; true unless the record says otherwise.
    pub publish: bool,
    /// What is to be said about it.
    pub note: Option<Note>,
    /// Its words.
    pub transcription: Option<Note>,
    /// Its words in other languages, by language tag.
    pub translations: Vec<(String, Note)>,
    /// Where it is recorded.
    pub place: Place,
}

/// One thing that a document tells.
#[derive(Clone, Debug, PartialEq)]
pub struct Telling {
    /// Of what it tells this.
    pub of: Vec<Placed<EvidenceTarget>>,
    /// What it tells, in a sentence.
    pub says: Placed<String>,
    /// Where in the document: "leaf 3".
    pub at: Option<String>,
    /// How sure it is that the document tells this.
    pub certainty: Option<Placed<Certainty>>,
}

impl Telling {
    /// How sure it is; certain where nothing is recorded.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        let certainty = self.certainty.as_ref();
        certainty.map_or(Certainty::Certain, |certainty| certainty.value)
    }
}

/// What a document tells something of: a record, or a part of a design.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum EvidenceTarget {
    /// `design:14`
    Design(Key),
    /// `state:14/cut-down`
    State(Key, Key),
    /// `printing:14/own`
    Printing(Key, Key),
    /// `impression:14.7`
    Impression(super::key::ImpressionKey),
    /// `person:KEY`
    Person(Key),
    /// `series:KEY`
    Series(Key),
}

impl EvidenceTarget {
    /// The words before the colon, in the order in which help lists them.
    pub const KINDS: &'static [&'static str] = &[
        "design",
        "state",
        "printing",
        "impression",
        "person",
        "series",
    ];

    /// The record that it is, or belongs to.
    #[must_use]
    pub fn record(&self) -> Target {
        match self {
            EvidenceTarget::Design(key)
            | EvidenceTarget::State(key, _)
            | EvidenceTarget::Printing(key, _) => Target::Design(key.clone()),
            EvidenceTarget::Impression(key) => Target::Impression(key.clone()),
            EvidenceTarget::Person(key) => Target::Person(key.clone()),
            EvidenceTarget::Series(key) => Target::Series(key.clone()),
        }
    }

    /// The part of the design that it is; `None` where it is a record.
    #[must_use]
    pub fn part(&self) -> Option<(&Key, DesignPart, &Key)> {
        match self {
            EvidenceTarget::State(design, key) => Some((design, DesignPart::State, key)),
            EvidenceTarget::Printing(design, key) => Some((design, DesignPart::Printing, key)),
            EvidenceTarget::Design(_)
            | EvidenceTarget::Impression(_)
            | EvidenceTarget::Person(_)
            | EvidenceTarget::Series(_) => None,
        }
    }
}

impl FromStr for EvidenceTarget {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<EvidenceTarget, NotAKey> {
        let (kind, key) = text.split_once(':').ok_or(NotAKey)?;
        Ok(match kind {
            "design" => EvidenceTarget::Design(key.parse()?),
            "state" => {
                let (design, key) = split_part(key)?;
                EvidenceTarget::State(design, key)
            }
            "printing" => {
                let (design, key) = split_part(key)?;
                EvidenceTarget::Printing(design, key)
            }
            "impression" => EvidenceTarget::Impression(key.parse()?),
            "person" => EvidenceTarget::Person(key.parse()?),
            "series" => EvidenceTarget::Series(key.parse()?),
            _ => return Err(NotAKey),
        })
    }
}

impl fmt::Display for EvidenceTarget {
    /// As records write it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            EvidenceTarget::Design(key) => write!(f, "design:{key}"),
            EvidenceTarget::State(design, key) => write!(f, "state:{design}/{key}"),
            EvidenceTarget::Printing(design, key) => write!(f, "printing:{design}/{key}"),
            EvidenceTarget::Impression(key) => write!(f, "impression:{key}"),
            EvidenceTarget::Person(key) => write!(f, "person:{key}"),
            EvidenceTarget::Series(key) => write!(f, "series:{key}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ok_targets_are_read_as_they_are_written() {
        for text in [
            "design:14",
            "state:14/cut-down",
            "printing:14/own",
            "impression:14.7",
            "person:artist",
            "series:quays",
        ] {
            assert_eq!(text.parse::<EvidenceTarget>().unwrap().to_string(), text);
        }
    }

    #[test]
    fn err_anything_else_is_no_target() {
        for text in [
            "14",
            "state:14",
            "printing:14/",
            "holder:museum",
            "state:14/a/b",
        ] {
            assert_eq!(text.parse::<EvidenceTarget>(), Err(NotAKey), "{text}");
        }
    }
}
