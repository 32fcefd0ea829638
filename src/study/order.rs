//! The order of lists for readers: designs by number, names by the rules of a language.
//!
//! In: the catalogue, or texts. Out: the designs in order ([`Order`]), and a [`Collator`] for other lists.
//! Method: the Unicode Collation Algorithm with CLDR's rules for the language (crate `icu_collator`).
//! Equal texts fall back to the record's key, so that the order is the same at every compile.
//! Definitions: `docs/definitions.md, "Order of lists"`.
//!
//! Numbers of catalogues, as ICU 72.1 sorts them:
//! ```
//! # use keyblock::study::order::Collator;
//! let mut numbers = ["14a", "10", "2a", "14", "2"];
//! Collator::of_numbers("en").sort_by_text(&mut numbers, |number| number);
//! assert_eq!(numbers, ["2", "2a", "10", "14", "14a"]);
//! ```

use std::cmp::Ordering;
use std::collections::BTreeMap;

use icu_collator::options::{CollatorOptions, Strength};
use icu_collator::preferences::CollationNumericOrdering;
use icu_collator::{CollatorBorrowed, CollatorPreferences};
use icu_locale::Locale;

use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::key::{ImpressionKey, Key};

/// Compares texts as readers of one language sort them.
#[derive(Debug)]
pub struct Collator(Option<CollatorBorrowed<'static>>);

impl Collator {
    /// For names and titles in `language` (BCP 47). A tag that is malformed or unknown gets the
    /// order that all languages share.
    #[must_use]
    pub fn of_words(language: &str) -> Collator {
        Collator::new(
            language,
            CollationNumericOrdering::False,
            Strength::Tertiary,
        )
    }

    /// For the letters that head an index: those that the language sorts as one compare as equal,
    /// whatever their case and accents.
    #[must_use]
    pub fn of_letters(language: &str) -> Collator {
        Collator::new(language, CollationNumericOrdering::False, Strength::Primary)
    }

    /// For numbers written as text (catalogue numbers, accession numbers): `2`, `2a`, `10`.
    #[must_use]
    pub fn of_numbers(language: &str) -> Collator {
        Collator::new(language, CollationNumericOrdering::True, Strength::Tertiary)
    }

    fn new(language: &str, numeric: CollationNumericOrdering, strength: Strength) -> Collator {
        let with_numbers = |mut preferences: CollatorPreferences| {
            preferences.numeric_ordering = Some(numeric);
            preferences
        };
        let mut options = CollatorOptions::default();
        options.strength = Some(strength);
        let named = language.parse::<Locale>().ok().and_then(|locale| {
            CollatorBorrowed::try_new(with_numbers((&locale).into()), options).ok()
        });
        Collator(named.or_else(|| {
            CollatorBorrowed::try_new(with_numbers(CollatorPreferences::default()), options).ok()
        }))
    }

    /// Which of two texts comes first.
    #[must_use]
    pub fn compare(&self, a: &str, b: &str) -> Ordering {
        // The tables are compiled in, so there is always a collator; without one, texts would be ordered
        // by code points.
        self.0
            .as_ref()
            .map_or_else(|| a.cmp(b), |collator| collator.compare(a, b))
    }

    /// Sorts `items` by the text that `text` gives and, where texts sort alike, by themselves.
    pub fn sort_by_text<T: Ord>(&self, items: &mut [T], text: impl Fn(&T) -> &str) {
        items.sort_by(|a, b| self.compare(text(a), text(b)).then_with(|| a.cmp(b)));
    }
}

/// The designs in the order readers see.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Order {
    keys: Vec<Key>,
    ranks: BTreeMap<Key, usize>,
}

impl Order {
    /// Orders the designs of a catalogue: by `sort` where a design has one, else by its number,
    /// numbers as numbers, then by key.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Order {
        let collator = Collator::of_numbers(&catalogue.settings.language);
        let mut designs: Vec<&Design> = catalogue.designs.values().collect();
        designs.sort_by(|a, b| {
            collator
                .compare(sorted_under(a), sorted_under(b))
                .then_with(|| collator.compare(&a.number, &b.number))
                .then_with(|| a.key.cmp(&b.key))
        });
        let keys: Vec<Key> = designs.into_iter().map(|d| d.key.clone()).collect();
        let ranks = keys.iter().cloned().zip(0..).collect();
        Order { keys, ranks }
    }

    /// The keys of the designs, in order.
    #[must_use]
    pub fn keys(&self) -> &[Key] {
        &self.keys
    }

    /// A design's rank, from 0. A key of no design, which a faulty record may name, comes after all.
    #[must_use]
    pub fn rank(&self, design: &Key) -> usize {
        self.ranks.get(design).copied().unwrap_or(usize::MAX)
    }

    /// The sort key of an impression: its design's rank, then its number.
    #[must_use]
    pub fn impression_rank(&self, impression: &ImpressionKey) -> (usize, u32) {
        (self.rank(&impression.design), impression.number)
    }

    /// The designs before and after `design`.
    #[must_use]
    pub fn neighbours(&self, design: &Key) -> (Option<&Key>, Option<&Key>) {
        let Some(rank) = self.ranks.get(design) else {
            return (None, None);
        };
        let before = rank.checked_sub(1).and_then(|at| self.keys.get(at));
        (before, self.keys.get(rank + 1))
    }
}

fn sorted_under(design: &Design) -> &str {
    design.sort.as_deref().unwrap_or(&design.number)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Sorted orders from ICU (crate `icu_collator` 2.4.0, identical to PyICU 2.17 with ICU 72.1):
    /// Unicode Collation Algorithm with CLDR's rules for each language.
    #[test]
    fn words_and_numbers_sort_as_icu_sorts_them() {
        let table: serde_json::Value =
            serde_json::from_str(include_str!("../../tests/checks/collation.json")).unwrap();
        let orders = table["orders"].as_object().unwrap();
        assert_eq!(orders.len(), 8);
        for (language, order) in orders {
            let collator = match language.strip_suffix("-u-kn") {
                Some(language) => Collator::of_numbers(language),
                None => Collator::of_words(language),
            };
            let expected: Vec<&str> = order
                .as_array()
                .unwrap()
                .iter()
                .map(|t| t.as_str().unwrap())
                .collect();
            let mut sorted = expected.clone();
            sorted.reverse();
            collator.sort_by_text(&mut sorted, |t| t);
            assert_eq!(sorted, expected, "{language}");
        }
    }

    #[test]
    fn an_unknown_language_has_the_common_order() {
        for tag in ["", "no such tag", "qaa"] {
            let collator = Collator::of_words(tag);
            assert_eq!(collator.compare("Ōsaka", "Osbert"), Ordering::Less);
        }
    }
}
