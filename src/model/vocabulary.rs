//! Vocabularies: the built-in terms and the catalogue's own.

use std::collections::BTreeMap;

use indexmap::IndexMap;

use super::key::Key;
use super::words::closed_list;

closed_list! {
    /// Which vocabulary; the word is also its file's stem.
    List {
        /// Techniques.
        Techniques = "techniques",
        /// Papers and other supports.
        Papers = "papers",
        /// Kinds of impressions.
        Kinds = "kinds",
        /// Ways of transfer.
        Transfers = "transfers",
        /// Roles of people.
        Roles = "roles",
        /// Kinds of documents.
        Documents = "documents",
        /// Relations between designs.
        Relations = "relations",
        /// Subjects; free words are allowed beside them.
        Subjects = "subjects",
    }
}

closed_list! {
    /// In which class of its own an impression counts, by its kind (docs/trade.md, "Counting
    /// sheets"; common practice). Reproductions and recuts never count, whatever their kind.
    CountingClass {
        /// Of the edition, numbered or not.
        Edition = "edition",
        /// Outside the edition, or before it.
        Proof = "proof",
        /// Taken from a wet impression.
        Counterproof = "counterproof",
        /// A second pull without new ink.
        Maculature = "maculature",
        /// From a matrix that was cancelled.
        Cancelled = "cancelled",
        /// A part of a sheet.
        Fragment = "fragment",
        /// Of a kind that belongs to none of these.
        Other = "other",
    }
}

impl List {
    /// The word for one of its terms in a finding.
    #[must_use]
    pub fn term_name(self) -> &'static str {
        match self {
            List::Techniques => "technique",
            List::Papers => "paper",
            List::Kinds => "kind of impression",
            List::Transfers => "way of transfer",
            List::Roles => "role",
            List::Documents => "kind of document",
            List::Relations => "relation",
            List::Subjects => "subject",
        }
    }
}

/// A term of a vocabulary.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Term {
    /// The term in each language (BCP 47 primary tag); `""` is the language of the catalogue.
    pub labels: BTreeMap<String, String>,
    /// Other names by which it is found, in each language, in the same way. Records name it by its key alone.
    pub synonyms: BTreeMap<String, Vec<String>>,
    /// Its meaning in each language, in the same way.
    pub notes: BTreeMap<String, String>,
    /// Its number in the Art & Architecture Thesaurus, where one was looked up.
    pub aat: Option<u32>,
    /// For a kind of impression: in which class it counts.
    pub class: Option<CountingClass>,
}

impl Term {
    /// The term in `language`, else in English, else in any.
    #[must_use]
    pub fn label(&self, language: &str) -> Option<&str> {
        pick(&self.labels, language)
    }

    /// Its synonyms in `language` and in the language of the catalogue; no others, because readers would not know them.
    pub fn synonyms(&self, language: &str) -> impl Iterator<Item = &str> {
        let primary = language.split('-').next().unwrap_or(language);
        let mut tags = vec![language, primary, ""];
        tags.dedup();
        tags.into_iter()
            .filter_map(|tag| self.synonyms.get(tag))
            .flatten()
            .map(String::as_str)
    }

    /// Its labels and synonyms in every language.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let synonyms = self.synonyms.values().flatten();
        self.labels.values().chain(synonyms).map(String::as_str)
    }

    /// Its meaning in `language`, else in English, else in any.
    #[must_use]
    pub fn note(&self, language: &str) -> Option<&str> {
        pick(&self.notes, language)
    }
}

fn pick<'a>(texts: &'a BTreeMap<String, String>, language: &str) -> Option<&'a str> {
    let primary = language.split('-').next().unwrap_or(language);
    [language, primary, "", "en"]
        .iter()
        .find_map(|tag| texts.get(*tag))
        .or_else(|| texts.values().next())
        .map(String::as_str)
}

/// All vocabularies, the catalogue's own terms after the built-in ones.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Vocabularies(pub BTreeMap<List, IndexMap<Key, Term>>);

impl Vocabularies {
    /// A term.
    #[must_use]
    pub fn term(&self, list: List, key: &str) -> Option<&Term> {
        self.0.get(&list)?.get(key)
    }

    /// The class in which a kind of impression counts.
    #[must_use]
    pub fn class_of(&self, kind: &Key) -> CountingClass {
        let term = self.term(List::Kinds, kind.as_str());
        term.and_then(|term| term.class)
            .unwrap_or(CountingClass::Other)
    }

    /// The terms of one list.
    pub fn terms(&self, list: List) -> impl Iterator<Item = (&Key, &Term)> {
        self.0.get(&list).into_iter().flatten()
    }
}
