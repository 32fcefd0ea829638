//! The terms of the vocabularies as phrases, so that grammars find them in a text, and the records that a cell can name.
//!
//! In: the vocabularies, built in and the catalogue's own. Out: for each list its phrases with their keys. A label with
//! a comma or a bracket is also found by what stands before it; a paper also without the word "paper", as doubtful.

use std::collections::BTreeMap;

use super::foreign_terms::TERMS;
use super::names::RecordNames;
use super::phrases::{Found, Phrases};
use super::words::Words;
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;
use crate::model::vocabulary::{List, Term, Vocabularies};

/// How a term was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TermFound {
    /// The term.
    pub key: Key,
    /// Whether by a short form, which may mean several terms.
    pub is_short: bool,
}

/// The phrases of every vocabulary.
#[derive(Clone, Debug, Default)]
pub struct Lexicon {
    lists: BTreeMap<List, Phrases<TermFound>>,
    keys: BTreeMap<List, Vec<Key>>,
    /// The records that cells can name.
    pub names: RecordNames,
}

impl Lexicon {
    /// The terms of a catalogue's vocabularies, and the names of its holders, people and series.
    #[must_use]
    pub fn of_catalogue(catalogue: &Catalogue) -> Lexicon {
        Lexicon {
            names: RecordNames::of(catalogue),
            ..Lexicon::of(&catalogue.vocabularies)
        }
    }

    /// The labels of all terms, in every language that has one.
    #[must_use]
    pub fn of(vocabularies: &Vocabularies) -> Lexicon {
        let mut lexicon = Lexicon::default();
        for list in vocabularies.0.keys() {
            for (key, term) in vocabularies.terms(*list) {
                lexicon.keys.entry(*list).or_default().push(key.clone());
                for label in term.labels.values() {
                    lexicon.add(*list, key, label);
                }
                let synonyms = term.synonyms.values().flatten();
                for synonym in synonyms.filter(|synonym| !shortens_a_label(term, synonym)) {
                    lexicon.add(*list, key, synonym);
                }
            }
        }
        for (list, key, words) in TERMS {
            if let Some(key) = lexicon.key(*list, key) {
                words
                    .split('|')
                    .for_each(|word| lexicon.add(*list, &key, word));
            }
        }
        // Short forms come last, so that a whole label of another term is never taken for one.
        for list in vocabularies.0.keys() {
            for (key, term) in vocabularies.terms(*list) {
                for label in term.labels.values() {
                    lexicon.add_short_forms(*list, key, label);
                }
            }
        }
        lexicon
    }

    /// Adds a phrase for a term: a synonym.
    pub fn add(&mut self, list: List, key: &Key, phrase: &str) {
        let known = self.keys.entry(list).or_default();
        if !known.contains(key) {
            known.push(key.clone());
        }
        let phrases = self.lists.entry(list).or_default();
        let term = |is_short| TermFound {
            key: key.clone(),
            is_short,
        };
        phrases.add(phrase, term(false));
        let head = phrase.split([',', '(']).next().unwrap_or_default();
        phrases.add(head, term(false));
    }

    fn add_short_forms(&mut self, list: List, key: &Key, label: &str) {
        if list != List::Papers {
            return;
        }
        let head = label.split([',', '(']).next().unwrap_or_default().trim();
        let short = [" paper", "papier"]
            .iter()
            .find_map(|word| head.strip_suffix(word))
            .map(str::trim);
        let Some(short) = short.filter(|short| short.chars().count() >= 3) else {
            return;
        };
        let term = TermFound {
            key: key.clone(),
            is_short: true,
        };
        self.lists.entry(list).or_default().add(short, term);
    }

    /// The longest term of a list that begins at a piece, in any number or case.
    #[must_use]
    pub fn at(&self, list: List, words: &Words<'_>, index: usize) -> Option<Found<TermFound>> {
        self.lists.get(&list)?.inflected_at(words, index)
    }

    /// The keys of a list.
    #[must_use]
    pub fn keys(&self, list: List) -> &[Key] {
        self.keys.get(&list).map_or(&[], Vec::as_slice)
    }

    /// The key of a list that is written so, where the list has it.
    #[must_use]
    pub fn key(&self, list: List, key: &str) -> Option<Key> {
        let keys = self.keys.get(&list)?;
        keys.iter().find(|known| known.as_str() == key).cloned()
    }
}

/// Vocabularies for the tests of grammars: the built-in ones, from their files.
/// Whether a synonym is the first words of a label ("laid" of "laid paper"). Such words have other meanings too, so they
/// are read as short forms.
fn shortens_a_label(term: &Term, synonym: &str) -> bool {
    let begun = format!("{} ", synonym.to_lowercase());
    let mut labels = term.labels.values();
    labels.any(|label| label.to_lowercase().starts_with(&begun))
}

#[cfg(test)]
pub(in crate::exchange::intake) mod samples {
    use std::collections::BTreeMap;

    use super::*;

    /// The phrases of the built-in terms. The files are read here because `exchange` may not import what reads them.
    pub fn lexicon() -> Lexicon {
        let lists = [
            (
                List::Techniques,
                include_str!("../../../../content/vocabulary/techniques.toml"),
            ),
            (
                List::Papers,
                include_str!("../../../../content/vocabulary/papers.toml"),
            ),
            (
                List::Kinds,
                include_str!("../../../../content/vocabulary/kinds.toml"),
            ),
            (
                List::Transfers,
                include_str!("../../../../content/vocabulary/transfers.toml"),
            ),
            (
                List::Roles,
                include_str!("../../../../content/vocabulary/roles.toml"),
            ),
        ];
        let lists = lists.map(|(list, text)| (list, terms(text)));
        Lexicon::of(&Vocabularies(lists.into_iter().collect()))
    }

    fn terms(text: &str) -> indexmap::IndexMap<Key, Term> {
        let tables: toml::Table = text.parse().unwrap();
        let terms = tables.iter().map(|(key, table)| {
            let labels: BTreeMap<String, String> = table["label"].clone().try_into().unwrap();
            let synonyms = table.get("synonyms").cloned();
            let synonyms = synonyms.map(|words| words.try_into().unwrap());
            let term = Term {
                labels,
                synonyms: synonyms.unwrap_or_default(),
                ..Term::default()
            };
            (key.parse().unwrap(), term)
        });
        terms.collect()
    }

    #[test]
    fn every_label_is_found_and_leads_to_its_term() {
        let lexicon = lexicon();
        let words = Words::of("Colour woodcuts");
        let found = lexicon.at(List::Techniques, &words, 0).unwrap();
        assert_eq!((found.is.key.as_str(), found.end), ("colour-woodcut", 2));
        assert_eq!(
            lexicon.key(List::Kinds, "trial-proof").unwrap().as_str(),
            "trial-proof"
        );
        assert_eq!(lexicon.key(List::Kinds, "no-such-kind"), None);
    }
}
