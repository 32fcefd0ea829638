//! Tables of phrases, found in a text whatever its capitals, accents, stops and hyphens.
//!
//! In: phrases with what they mean. Out: the longest phrase at a place of a text. `A.P.` finds "AP" only where both are
//! in the table; `wood engraving` also finds "wood-engraving".

use std::collections::BTreeMap;

use super::words::{DASHES, PieceKind, Words};

/// Phrases, each with its meaning.
#[derive(Clone, Debug)]
pub struct Phrases<T> {
    /// By their first word, the longest first.
    by_first: BTreeMap<String, Vec<(Vec<String>, T)>>,
}

impl<T> Default for Phrases<T> {
    fn default() -> Phrases<T> {
        Phrases {
            by_first: BTreeMap::new(),
        }
    }
}

/// A phrase found in a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found<T> {
    /// What it means.
    pub is: T,
    /// The piece after it.
    pub end: usize,
}

impl<T: Clone> Phrases<T> {
    /// A table of phrases written as a list of meanings, each with its phrases separated by `|`.
    #[must_use]
    pub fn of(rows: &[(T, &str)]) -> Phrases<T> {
        let mut phrases = Phrases::default();
        for (meaning, written) in rows {
            for phrase in written.split('|') {
                phrases.add(phrase, meaning.clone());
            }
        }
        phrases
    }

    /// Adds a phrase. The first meaning of a phrase stays.
    pub fn add(&mut self, phrase: &str, meaning: T) {
        let words = phrase_words(phrase);
        let Some(first) = words.first() else {
            return;
        };
        let of_first = self.by_first.entry(first.clone()).or_default();
        if of_first.iter().any(|(others, _)| *others == words) {
            return;
        }
        let place = of_first.partition_point(|(others, _)| others.len() >= words.len());
        of_first.insert(place, (words, meaning));
    }

    /// Whether the table is empty.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.by_first.is_empty()
    }

    /// The longest phrase that begins at a piece.
    #[must_use]
    pub fn at(&self, words: &Words<'_>, index: usize) -> Option<Found<T>> {
        self.found(words, index, |said, phrase| said == phrase)
    }

    /// The same, with the last word of a phrase in the plural or in another case: `woodcuts`, `Radierungen`.
    #[must_use]
    pub fn inflected_at(&self, words: &Words<'_>, index: usize) -> Option<Found<T>> {
        self.at(words, index)
            .or_else(|| self.found(words, index, is_form_of))
    }

    fn found(
        &self,
        words: &Words<'_>,
        index: usize,
        is_last: impl Fn(&str, &str) -> bool,
    ) -> Option<Found<T>> {
        let first = words.at(index)?;
        if first.kind == PieceKind::Mark && !self.by_first.contains_key(&first.folded) {
            return None;
        }
        let mut firsts: Vec<&str> = vec![&first.folded];
        if first.kind == PieceKind::Word {
            firsts.extend(ENDINGS.iter().filter_map(|e| first.folded.strip_suffix(e)));
        }
        let candidates = firsts
            .into_iter()
            .filter_map(|first| self.by_first.get(first))
            .flatten();
        let mut best: Option<Found<T>> = None;
        for (phrase, meaning) in candidates {
            if let Some(end) = end_of(phrase, words, index, &is_last)
                && best.as_ref().is_none_or(|best| end > best.end)
            {
                best = Some(Found {
                    is: meaning.clone(),
                    end,
                });
            }
        }
        best
    }
}

/// The endings of plurals and cases in English, German, French and Dutch.
const ENDINGS: [&str; 6] = ["s", "es", "e", "en", "n", "er"];

fn is_form_of(said: &str, phrase: &str) -> bool {
    said == phrase
        || phrase.chars().count() >= 4
            && said
                .strip_prefix(phrase)
                .is_some_and(|ending| ENDINGS.contains(&ending))
}

/// The words of a phrase, without its stops and hyphens; a phrase of marks alone keeps them.
fn phrase_words(phrase: &str) -> Vec<String> {
    let cut = Words::of(phrase);
    let all = cut.pieces().iter();
    let words: Vec<String> = all
        .clone()
        .filter(|p| !is_passed_over(p.kind, &p.folded))
        .map(|p| p.folded.clone())
        .collect();
    if words.is_empty() {
        all.map(|p| p.folded.clone()).collect()
    } else {
        words
    }
}

fn is_passed_over(kind: PieceKind, folded: &str) -> bool {
    kind == PieceKind::Mark && (folded == "." || DASHES.contains(&folded))
}

/// The piece after a phrase that begins at `index`; a stop that closes it belongs to it.
fn end_of(
    phrase: &[String],
    words: &Words<'_>,
    index: usize,
    is_last: &impl Fn(&str, &str) -> bool,
) -> Option<usize> {
    let mut at = index;
    for (place, word) in phrase.iter().enumerate() {
        if place > 0 {
            while words
                .at(at)
                .is_some_and(|p| is_passed_over(p.kind, &p.folded))
            {
                at += 1;
            }
        }
        let piece = words.at(at)?;
        let fits = if place + 1 == phrase.len() && piece.kind == PieceKind::Word {
            is_last(&piece.folded, word)
        } else {
            piece.folded == *word
        };
        if !fits {
            return None;
        }
        at += 1;
    }
    let is_short = phrase.last().is_some_and(|last| last.chars().count() <= 5);
    if is_short && words.is_close_mark(at, &["."]) {
        at += 1;
    }
    Some(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_phrase_is_found_whatever_its_stops_and_hyphens() {
        let phrases = Phrases::of(&[
            (1, "wood engraving"),
            (2, "wood"),
            (3, "A.P."),
            (4, "o. J."),
        ]);
        let at = |text: &str| phrases.at(&Words::of(text), 0).map(|f| (f.is, f.end));
        assert_eq!(at("Wood-Engraving on paper"), Some((1, 3)));
        assert_eq!(at("wood"), Some((2, 1)));
        assert_eq!(at("a.p. 3/10"), Some((3, 4)));
        assert_eq!(at("o.J."), Some((4, 4)));
        assert_eq!(at("wooden"), None);
    }

    #[test]
    fn a_plural_is_found_where_asked_for() {
        let phrases = Phrases::of(&[(1, "woodcut"), (2, "Radierung")]);
        let words = Words::of("woodcuts Radierungen");
        assert_eq!(phrases.at(&words, 0), None);
        assert_eq!(phrases.inflected_at(&words, 0).unwrap().is, 1);
        assert_eq!(phrases.inflected_at(&words, 1).unwrap().is, 2);
    }
}
