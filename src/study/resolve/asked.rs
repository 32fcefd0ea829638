//! A reference cut into its parts, without what says how to read it: the catalogue's own address or siglum, the kind
//! of record in a link, words such as "no.", the edition.

use super::names::{QueryWords, References};
use crate::search::query::bare;
use crate::search::words::number_parts;
use keyblock_model::link::Target;

/// A reference in parts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Asked {
    /// Everything, without the edition.
    pub all: Vec<String>,
    /// The same without the siglum and the words before a number.
    pub number: Vec<String>,
    /// Whether the siglum stood before the number.
    pub names_catalogue: bool,
    /// The edition of the catalogue that it cites.
    pub edition: Option<String>,
    /// The kind of record and the parts of its key, where it is a link or an address of the catalogue.
    pub link: Option<(&'static str, Vec<String>)>,
}

/// What stays the same for all references of a catalogue.
#[derive(Clone, Debug, Default)]
pub struct Reader {
    siglum: Vec<String>,
    /// The parts of the address of the catalogue.
    address: Vec<String>,
    words: QueryWords,
}

impl Reader {
    /// A reader for the references to a catalogue.
    #[must_use]
    pub fn new(references: &References) -> Reader {
        Reader {
            siglum: number_parts(&references.siglum),
            address: number_parts(&references.address),
            words: references.words.clone(),
        }
    }

    /// The words that belong to no number.
    #[must_use]
    pub fn words(&self) -> &QueryWords {
        &self.words
    }

    /// Cuts a reference into its parts.
    #[must_use]
    pub fn read(&self, text: &str) -> Asked {
        let text = text.trim();
        let mut all = number_parts(text);
        let link = self.link(text, &all);
        let edition = self.edition(&mut all);
        let left = bare(&all, &self.siglum, &self.words.number);
        Asked {
            number: left.parts.to_vec(),
            names_catalogue: left.names_catalogue,
            edition,
            link,
            all,
        }
    }

    /// Takes the edition off the end: "(edition 1)".
    fn edition(&self, parts: &mut Vec<String>) -> Option<String> {
        let (edition, before) = parts.split_last()?;
        let (word, before) = before.split_last()?;
        let is_edition = self.words.edition.contains(word)
            && !before.is_empty()
            && edition.chars().all(char::is_numeric);
        if !is_edition {
            return None;
        }
        let edition = edition.clone();
        parts.truncate(parts.len() - 2);
        Some(edition)
    }

    /// The kind of record and the parts of the key in a link (`design:7`) or in an address of the catalogue, with its
    /// host or without.
    fn link(&self, text: &str, parts: &[String]) -> Option<(&'static str, Vec<String>)> {
        let kind_of = |kind: &str| Target::KINDS.iter().find(|known| **known == kind).copied();
        if let Some((kind, rest)) = text.split_once([':', '/'])
            && let Some(kind) = kind_of(kind)
            && !rest.is_empty()
        {
            return Some((kind, number_parts(rest)));
        }
        // With `https` before it or without.
        let ways = [self.address.as_slice(), self.address.get(1..)?];
        let rest = ways.into_iter().find_map(|way| {
            let rest = parts.strip_prefix(way)?;
            (!way.is_empty() && rest.len() > 1).then_some(rest)
        })?;
        Some((kind_of(&rest[0])?, rest[1..].to_vec()))
    }
}
