//! A text as the words that are searched, and a number as its key.
//!
//! A word is a run of letters, figures and marks; everything else separates. Scripts that are written without
//! spaces (Han, kana, Thai, Lao, Khmer, Myanmar) give each two letters that stand side by side, and the last one
//! alone: every letter then begins some word, and a reader finds by any part of a text.
//!
//! A number is known by its key: its letters and figures with a full stop wherever something else stands between
//! them, or a letter follows a figure or the other way round. "OP 7 iii", "op7iii" and "OP.7-iii" are one number;
//! "7.5" and "75" are two.

use icu_properties::CodePointMapData;
use icu_properties::props::{GeneralCategory, GeneralCategoryGroup, Script};

use super::folding::{fold, is_unseen, normalised};

/// The most letters of a word that count; the rest of a longer one is left out of the index and of the query.
pub const LONGEST_WORD: usize = 40;

/// A word of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// As it is compared.
    pub folded: String,
    /// As it is written.
    pub written: String,
}

/// The words of a text, in order.
///
/// ```
/// # use keyblock::study::search::words::words;
/// let folded = |text| words(text).into_iter().map(|word| word.folded).collect::<Vec<_>>();
/// assert_eq!(folded("L’Écluse, 1927"), ["l", "ecluse", "1927"]);
/// assert_eq!(folded("渡し船"), ["渡し", "し船", "船"]);
/// ```
#[must_use]
pub fn words(text: &str) -> Vec<Word> {
    let text = normalised(text);
    let mut words = Vec::new();
    for run in runs(&text) {
        for part in parts(run, is_unspaced) {
            if part.chars().next().is_some_and(is_unspaced) {
                pairs(part, &mut words);
            } else {
                let folded = shortened(fold(part));
                if !folded.is_empty() {
                    words.push(Word {
                        folded,
                        written: part.to_owned(),
                    });
                }
            }
        }
    }
    words
}

/// Each two letters side by side, then the last alone.
fn pairs(part: &str, words: &mut Vec<Word>) {
    let folded = fold(part);
    let mut starts = folded.char_indices().map(|(at, _)| at);
    let (mut at, mut next) = (starts.next(), starts.next());
    while let Some(start) = at {
        let after = starts.next();
        let end = match next {
            Some(_) => after.unwrap_or(folded.len()),
            None => folded.len(),
        };
        let pair = folded[start..end].to_owned();
        words.push(Word {
            folded: pair.clone(),
            written: pair,
        });
        (at, next) = (next, after);
    }
}

/// The key of a number as people write it; `None` for a text without letters and figures.
///
/// ```
/// # use keyblock::study::search::words::number_key;
/// assert_eq!(number_key("OP 7 iii").unwrap(), "op.7.iii");
/// assert_eq!(number_key("1962.44"), number_key("1962/44"));
/// assert_eq!(number_key("W 4"), number_key("w4"));
/// assert_ne!(number_key("7.5"), number_key("75"));
/// ```
#[must_use]
pub fn number_key(text: &str) -> Option<String> {
    let parts = number_parts(text);
    (!parts.is_empty()).then(|| key_of_parts(&parts))
}

/// The parts of a number, folded: its runs of letters and its runs of figures.
///
/// ```
/// # use keyblock::study::search::words::number_parts;
/// assert_eq!(number_parts("OP 12a, III"), ["op", "12", "a", "iii"]);
/// ```
#[must_use]
pub fn number_parts(text: &str) -> Vec<String> {
    let text = normalised(text);
    let runs = runs(&text).flat_map(|run| parts(run, is_figure));
    runs.map(fold).filter(|part| !part.is_empty()).collect()
}

/// The key of a number that consists of these parts.
#[must_use]
pub fn key_of_parts(parts: &[String]) -> String {
    shortened(parts.join("."))
}

/// A key without its full stops, as a number is typed by those who leave out its punctuation.
#[must_use]
pub fn without_stops(key: &str) -> String {
    key.replace('.', "")
}

fn shortened(word: String) -> String {
    match word.char_indices().nth(LONGEST_WORD) {
        Some((end, _)) => word[..end].to_owned(),
        None => word,
    }
}

/// The runs of letters, figures and marks.
fn runs(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c| !is_of_a_word(c))
        .filter(|run| !run.is_empty())
}

/// A run cut wherever `is_one` changes. Unseen signs and marks belong to what is before them.
fn parts(run: &str, is_one: impl Fn(char) -> bool) -> Vec<&str> {
    let mut parts = Vec::new();
    let mut start = 0;
    let mut kind = None;
    for (at, c) in run.char_indices() {
        if is_unseen(c) || super::folding::is_mark(c) {
            continue;
        }
        let is_one = is_one(c);
        if kind.is_some_and(|kind| kind != is_one) {
            parts.push(&run[start..at]);
            start = at;
        }
        kind = Some(is_one);
    }
    parts.push(&run[start..]);
    parts
}

fn is_of_a_word(c: char) -> bool {
    if c.is_ascii() {
        return c.is_ascii_alphanumeric();
    }
    let category = CodePointMapData::<GeneralCategory>::new().get(c);
    let groups = [
        GeneralCategoryGroup::Letter,
        GeneralCategoryGroup::Number,
        GeneralCategoryGroup::Mark,
    ];
    groups.iter().any(|group| group.contains(category)) || is_unseen(c)
}

fn is_figure(c: char) -> bool {
    if c.is_ascii() {
        return c.is_ascii_digit();
    }
    let category = CodePointMapData::<GeneralCategory>::new().get(c);
    GeneralCategoryGroup::Number.contains(category)
}

/// Whether it belongs to a script that is written without spaces. The mark that makes kana long (U+30FC)
/// belongs to no script.
fn is_unspaced(c: char) -> bool {
    if c.is_ascii() {
        return false;
    }
    let scripts = [
        Script::Han,
        Script::Hiragana,
        Script::Katakana,
        Script::Thai,
        Script::Lao,
        Script::Khmer,
        Script::Myanmar,
    ];
    c == 'ー' || scripts.contains(&CodePointMapData::<Script>::new().get(c))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folded(text: &str) -> Vec<String> {
        words(text).into_iter().map(|word| word.folded).collect()
    }

    #[test]
    fn words_are_cut_where_neither_letter_nor_figure_stands() {
        assert_eq!(
            folded("co-op, № 12a (½)"),
            ["co", "op", "no", "12a", "1", "2"]
        );
        assert_eq!(folded("„Łódź“"), ["lodz"]);
        assert_eq!(folded(" – "), Vec::<String>::new());
    }

    #[test]
    fn scripts_without_spaces_give_pairs_and_the_last_letter() {
        assert_eq!(folded("東京"), ["東京", "京"]);
        assert_eq!(folded("船"), ["船"]);
        assert_eq!(
            folded("第12号 ラーメン"),
            ["第", "12", "号", "ラー", "ーメ", "メン", "ン"]
        );
        assert_eq!(folded("ｶﾞ"), ["ガ"]);
        // Hangul is written with spaces.
        assert_eq!(folded("목판화 전"), ["목판화", "전"]);
    }

    #[test]
    fn a_word_is_shown_as_it_is_written() {
        let [word] = words("ŌSAKA").try_into().unwrap();
        assert_eq!(
            (word.folded.as_str(), word.written.as_str()),
            ("osaka", "ŌSAKA")
        );
    }

    #[test]
    fn numbers_are_one_however_they_are_punctuated() {
        let keys = |texts: &[&str]| -> Vec<Option<String>> {
            texts.iter().map(|text| number_key(text)).collect()
        };
        for same in [
            &["OP 7 iii", "OP7iii", "op. 7, III", "OP-7/iii"][..],
            &["7 iii/v", "7/iii/v"],
            &["First List 9", "first list, 9", "FIRST-LIST 9"],
            &["12a", "12 A"],
        ] {
            let keys = keys(same);
            assert!(keys.iter().all(|key| *key == keys[0]), "{keys:?}");
        }
        assert_eq!(without_stops(&number_key("P. 1962-44").unwrap()), "p196244");
        assert_eq!(number_key("…"), None);
    }

    #[test]
    fn a_long_word_counts_by_its_head() {
        assert_eq!(folded(&"å".repeat(300)), ["a".repeat(LONGEST_WORD)]);
    }
}
