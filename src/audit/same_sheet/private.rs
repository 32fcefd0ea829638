//! Reasons that rest on what a record keeps private: named by their kind alone.
//!
//! Findings are read on many screens. Which reasons those are is the study's to say
//! (`Reason::is_private`).

use crate::model::catalogue::Catalogue;
use crate::model::key::Key;

/// What stands for a private text.
pub(super) const LEFT_OUT: &str = "(private)";

/// Whether the record of somebody keeps the name private.
pub(super) fn has_hidden_name(catalogue: &Catalogue, key: &Key) -> bool {
    let hidden = |recorded: &str, published: &str| recorded != published;
    let person = catalogue
        .people
        .get(key)
        .zip(catalogue.published_person(key));
    let holder = catalogue
        .holders
        .get(key)
        .zip(catalogue.published_holder(key));
    person.is_some_and(|(all, public)| hidden(&all.name.value, &public.name.value))
        || holder.is_some_and(|(all, public)| hidden(&all.name.value, &public.name.value))
}

/// Shorter texts are met everywhere, and tell nobody's name.
const SHORTEST: usize = 4;

/// Words without every text that any record keeps private: a name may stand in an inscription too.
/// Texts that overlap are left out as one, so that no part of either stays.
pub(super) fn left_out(catalogue: &Catalogue, words: &str) -> String {
    let texts = catalogue
        .redacted
        .texts
        .iter()
        .map(|text| text.text.as_str());
    let told = texts.filter(|text| text.chars().count() >= SHORTEST);
    let mut hidden: Vec<(usize, usize)> = told
        .flat_map(|text| {
            words
                .match_indices(text)
                .map(|(at, text)| (at, at + text.len()))
        })
        .collect();
    hidden.sort_unstable();
    let mut left = String::new();
    let mut end = 0;
    for (from, to) in hidden {
        if from >= end {
            left.push_str(words.get(end..from).unwrap_or_default());
            left.push_str(LEFT_OUT);
        }
        end = end.max(to);
    }
    left.push_str(words.get(end..).unwrap_or_default());
    left
}
