//! Keeps private values out of the words of a reason.
//!
//! Findings may be read by more people than the editors. A reason that rests on a private value altogether
//! (`Reason::is_private`) is named by its kind alone; here private names and texts inside the others are
//! replaced.

use crate::model::catalogue::Catalogue;
use crate::model::key::Key;

/// The text in place of a private one.
pub(super) const LEFT_OUT: &str = "(private)";

/// Whether the record of a person or holder keeps the name private.
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

/// The fewest characters of a private text that is replaced: shorter ones occur within other words by chance.
const SHORTEST: usize = 4;

/// `words` with every text that any record keeps private replaced, because a name may be in an inscription
/// too. Texts that overlap are replaced as one, so that no part of either stays.
pub(super) fn left_out(catalogue: &Catalogue, words: &str) -> String {
    let texts = catalogue
        .redacted
        .texts
        .iter()
        .map(|text| text.text.as_str());
    let texts = texts.filter(|text| text.chars().count() >= SHORTEST);
    let mut hidden: Vec<(usize, usize)> = texts
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
