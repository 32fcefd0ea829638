//! Findings on terms that the vocabularies lack: an unknown key, or words in place of a key.
//!
//! In: the vocabularies of the catalogue, built in and its own. Out: the finding, with the keys that were probably
//! meant: those whose key, label or synonym, in any language, is the written one or differs by few slips, else those whose
//! names stand among the written words ("Etching and aquatint on paper"). Only keys of the list that the place takes are
//! suggested.

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Place;
use crate::model::vocabulary::{List, Term, Vocabularies};
use crate::model::words::ClosedList as _;
use crate::read::values::key_help;
use crate::read::values::near::{either, meant};

/// Shorter names stand among words by chance.
const SHORTEST_NAME_AMONG_WORDS: usize = 4;

/// The finding on a key that no term of `list` has. `add`: the record to add instead.
pub(super) fn unknown(list: List, key: &Key, place: Place, help: String) -> Finding {
    let message = format!("`{key}` is no {} that the vocabulary has", list.term_name());
    Finding::new(Code::TermUnknown, place, message).help(help)
}

/// The help for a key that no term of `list` has: what was probably meant, or the term to add.
pub(super) fn help_for_key(vocabularies: &Vocabularies, list: List, key: &Key) -> String {
    let add = format!("add [{key}] with a label to records/vocabulary/{list}.toml");
    if let Some(help) = suggestion(vocabularies, list, key.as_str()) {
        return format!("{help}, or {add}");
    }
    let elsewhere = List::ALL.iter().filter(|other| **other != list);
    let elsewhere = elsewhere
        .copied()
        .find(|other| vocabularies.term(*other, key.as_str()).is_some());
    match elsewhere {
        Some(other) => format!(
            "`{key}` is in the list `{other}`, which this key does not take; `keyblock terms {list}` prints what it takes"
        ),
        None => add,
    }
}

/// The finding on `words` in place of the key of a term of `list`.
pub(super) fn in_words(place: Place, words: &str, help: String) -> Finding {
    let message = format!("\"{words}\" is not a key");
    Finding::new(Code::KeyForm, place, message).help(help)
}

/// The help for words in place of the key of a term of `list`.
pub(super) fn help_for_words(vocabularies: &Vocabularies, list: List, words: &str) -> String {
    let suggestion = suggestion(vocabularies, list, words);
    suggestion.unwrap_or_else(|| {
        let add = Key::nearest_form(words).map_or_else(
            || key_help(words),
            |key| format!("add [{key}] with a label to records/vocabulary/{list}.toml, and write `{key}` here"),
        );
        format!("`keyblock terms {list}` prints the terms and their keys; or {add}")
    })
}

/// "write `screenprint`": the keys that were probably meant, where some suggest themselves.
fn suggestion(vocabularies: &Vocabularies, list: List, written: &str) -> Option<String> {
    let terms: Vec<(&Key, &Term)> = vocabularies.terms(list).collect();
    let asked = letters(written);
    let same = terms.iter().find(|(key, term)| {
        letters(key.as_str()) == asked || term.names().any(|name| letters(name) == asked)
    });
    if let Some((key, _)) = same {
        return Some(format!("write `{key}`"));
    }
    let names: Vec<(&str, Vec<String>)> = terms
        .iter()
        .map(|(key, term)| {
            let forms = term.names().filter_map(Key::nearest_form);
            (key.as_str(), forms.map(|form| form.to_string()).collect())
        })
        .collect();
    let near = meant(written, &names);
    if !near.is_empty() {
        return Some(format!("write {}", either(&near)));
    }
    match among_words(written, &names).as_slice() {
        [] => None,
        [one] => Some(format!("write `{one}`")),
        several => {
            let keys: Vec<String> = several.iter().map(|key| format!("\"{key}\"")).collect();
            Some(format!("write each by itself: {}", keys.join(", ")))
        }
    }
}

/// The letters and figures of a text in lower case: "A.P." is "ap".
fn letters(text: &str) -> String {
    let letters = text.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// The terms whose names stand among the written words, in their order there: for words that a longer name and a shorter one
/// share, only the longer.
fn among_words<'a>(written: &str, names: &[(&'a str, Vec<String>)]) -> Vec<&'a str> {
    let Some(written) = Key::nearest_form(written) else {
        return Vec::new();
    };
    let written = format!("-{written}-");
    let mut found: Vec<(std::ops::Range<usize>, &str)> = Vec::new();
    for (key, names) in names {
        let forms = names.iter().map(String::as_str).chain([*key]);
        for form in forms.filter(|form| form.len() >= SHORTEST_NAME_AMONG_WORDS) {
            if let Some(at) = written.find(&format!("-{form}-")) {
                found.push((at..at + form.len(), key));
            }
        }
    }
    let holds = |outer: &std::ops::Range<usize>, inner: &std::ops::Range<usize>| {
        outer.start <= inner.start && inner.end <= outer.end && outer.len() > inner.len()
    };
    let mut longest: Vec<(usize, &str)> = found
        .iter()
        .filter(|(span, _)| !found.iter().any(|(other, _)| holds(other, span)))
        .map(|(span, key)| (span.start, *key))
        .collect();
    longest.sort_unstable();
    longest.dedup_by_key(|(_, key)| *key);
    longest.into_iter().map(|(_, key)| key).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::read::records::vocabulary::built_in;

    fn help(list: List, written: &str) -> String {
        match written.parse() {
            Ok(key) => help_for_key(&built_in(), list, &key),
            Err(_) => help_for_words(&built_in(), list, written),
        }
    }

    #[test]
    fn labels_and_synonyms_of_both_languages_lead_to_the_key() {
        for (written, key) in [
            ("Silkscreen", "screenprint"),
            ("serigraph", "screenprint"),
            ("Serigraphie", "screenprint"),
            ("Radierung", "etching"),
            ("Gelatine silver print", "gelatin-silver-print"),
            ("Giclée", "inkjet-print"),
            ("silkscren", "screenprint"),
            ("Line engraving on paper", "line-engraving"),
        ] {
            let help = help(List::Techniques, written);
            assert!(
                help.starts_with(&format!("write `{key}`")),
                "{written}: {help}"
            );
        }
        assert_eq!(help(List::Kinds, "A.P."), "write `artists-proof`");
    }

    #[test]
    fn several_techniques_in_one_text_are_named_one_by_one() {
        let help = help(List::Techniques, "Etching, drypoint and aquatint on paper");
        assert_eq!(
            help,
            "write each by itself: \"etching\", \"drypoint\", \"aquatint\""
        );
    }

    #[test]
    fn a_term_of_another_list_is_never_suggested() {
        let paper = help(List::Techniques, "laid-paper");
        assert!(!paper.contains("write"), "{paper}");
        assert!(paper.contains("in the list `papers`"), "{paper}");
        assert!(help(List::Papers, "laid").starts_with("write `laid-paper`"));
    }

    /// What is suggested is read without a finding: each is a key of the list.
    #[test]
    fn every_suggestion_is_a_key_of_its_list() {
        let vocabularies = built_in();
        for list in List::ALL {
            for (_, term) in List::ALL
                .iter()
                .flat_map(|other| vocabularies.terms(*other))
            {
                for name in term.names() {
                    let Some(help) = suggestion(&vocabularies, *list, name) else {
                        continue;
                    };
                    let keys = help.split(['`', '"']).skip(1).step_by(2);
                    for key in keys {
                        assert!(vocabularies.term(*list, key).is_some(), "{list}: {help}");
                    }
                }
            }
        }
    }
}
