//! Vocabularies: the built-in terms, embedded in the program.
//!
//! In: `content/vocabulary/LIST.toml`, written like a catalogue's own `records/vocabulary/LIST.toml`.
//! Out: [`built_in`], to which the catalogue's own terms are added. A catalogue may redefine a built-in
//! term; its definition replaces the built-in one.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use indexmap::IndexMap;
use serde::Deserialize;

use crate::model::key::Key;
use crate::model::vocabulary::{CountingClass, List, Term, Vocabularies};
use crate::model::words::ClosedList;

/// A built-in term as its file writes it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    label: BTreeMap<String, String>,
    #[serde(default)]
    synonyms: BTreeMap<String, Vec<String>>,
    #[serde(default)]
    note: BTreeMap<String, String>,
    aat: Option<u32>,
    class: Option<String>,
}

static BUILT_IN: LazyLock<Vocabularies> = LazyLock::new(|| {
    let lists = List::ALL.iter().map(|list| (*list, terms(text(*list))));
    Vocabularies(lists.collect())
});

/// The built-in terms of every list.
#[must_use]
pub fn built_in() -> Vocabularies {
    BUILT_IN.clone()
}

fn text(list: List) -> &'static str {
    match list {
        List::Techniques => include_str!("../../../content/vocabulary/techniques.toml"),
        List::Papers => include_str!("../../../content/vocabulary/papers.toml"),
        List::Kinds => include_str!("../../../content/vocabulary/kinds.toml"),
        List::Transfers => include_str!("../../../content/vocabulary/transfers.toml"),
        List::Roles => include_str!("../../../content/vocabulary/roles.toml"),
        List::Documents => include_str!("../../../content/vocabulary/documents.toml"),
        List::Relations => include_str!("../../../content/vocabulary/relations.toml"),
        List::Subjects => include_str!("../../../content/vocabulary/subjects.toml"),
    }
}

/// The terms of a built-in list. A term that could not be read would be left out; a test reads every
/// list.
fn terms(text: &str) -> IndexMap<Key, Term> {
    let written: IndexMap<String, Written> = toml::from_str(text).unwrap_or_default();
    let term = |(key, written): (String, Written)| {
        let term = Term {
            labels: written.label,
            synonyms: written.synonyms,
            notes: written.note,
            aat: written.aat,
            class: written
                .class
                .and_then(|word| CountingClass::from_word(&word)),
        };
        Some((key.parse().ok()?, term))
    };
    written.into_iter().filter_map(term).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::Words;
    use crate::read;

    #[test]
    fn every_built_in_file_is_read_whole() {
        for list in List::ALL {
            let written: toml::Table = toml::from_str(text(*list)).unwrap();
            assert_eq!(terms(text(*list)).len(), written.len(), "{list}");
            assert!(written.len() > 8, "{list}");
        }
    }

    #[test]
    fn every_term_is_named_in_every_built_in_language_and_explained_unless_it_is_a_subject() {
        let languages = Words::languages(&read::theme::built_in());
        assert!(languages.len() > 1);
        for (list, terms) in built_in().0 {
            for (key, term) in terms {
                for language in &languages {
                    assert!(
                        term.labels.get(language).is_some_and(|l| !l.is_empty()),
                        "{list} {key} has no name in {language}"
                    );
                    assert!(
                        list == List::Subjects
                            || term.notes.get(language).is_some_and(|n| n.ends_with('.')),
                        "{list} {key} is not explained in {language}"
                    );
                }
            }
        }
    }

    /// A name that two terms of a list had could not be resolved to a key.
    #[test]
    fn no_two_terms_of_a_list_share_a_name() {
        for (list, terms) in built_in().0 {
            let mut owners: BTreeMap<String, &str> = BTreeMap::new();
            for (key, term) in &terms {
                let names = term.names().chain([key.as_str()]);
                for name in names {
                    let name = name.to_lowercase();
                    let other = owners.insert(name.clone(), key.as_str());
                    assert!(
                        other.is_none_or(|other| other == key.as_str()),
                        "{list}: {name} is {key} and {other:?}"
                    );
                }
                for (language, synonyms) in &term.synonyms {
                    let label = term.labels.get(language);
                    let repeats = synonyms.iter().any(|synonym| Some(synonym) == label);
                    assert!(!repeats, "{list} {key} repeats its name in {language}");
                }
            }
        }
    }

    #[test]
    fn every_kind_is_of_a_class_and_no_other_term_is() {
        for (list, terms) in built_in().0 {
            for (key, term) in terms {
                assert_eq!(term.class.is_some(), list == List::Kinds, "{list} {key}");
            }
        }
    }

    /// The terms that `docs/trade.md` explains ("Kinds of impression", "Techniques", "Paper"), and techniques that museums name
    /// in their open data (common practice, no source).
    #[test]
    fn what_must_be_built_in_is() {
        let must = [
            (
                List::Techniques,
                "woodcut colour-woodcut linocut wood-engraving etching engraving drypoint aquatint mezzotint lithograph screenprint intaglio relief line-engraving digital-print photo-etching letterpress blueprint carborundum monotype monoprint stencil photogravure collagraph collotype",
            ),
            (
                List::Papers,
                "laid-paper wove-paper japan-paper mulberry-paper gampi-paper china-paper india-paper simili-japan machine-made-paper card newsprint",
            ),
            (
                List::Kinds,
                "edition proof trial-proof working-proof state-proof colour-trial touched-proof counterproof maculature bon-a-tirer artists-proof printers-proof hors-commerce cancellation-proof cancelled before-letters unfinished fragment",
            ),
            (
                List::Transfers,
                "gift bequest purchase sale exchange descent transfer loan deposit commission confiscation restitution unknown",
            ),
            (
                List::Roles,
                "artist designer carver etcher engraver lithographer printer publisher editor collector author dealer",
            ),
            (
                List::Documents,
                "letter ledger contract invoice label programme cutting photograph interview proof-sheet",
            ),
            (List::Relations, "companion version copy study part"),
        ];
        let built_in = built_in();
        for (list, keys) in must {
            for key in keys.split(' ') {
                assert!(built_in.term(list, key).is_some(), "{list} lacks {key}");
            }
        }
    }
}
