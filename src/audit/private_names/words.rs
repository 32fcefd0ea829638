//! A text as words that can be compared, wherever it was written.
//!
//! Two texts that a reader takes for the same give the same words: case, width and the encoding of letters do not
//! count (NFKD, Unicode Standard Annex 15), nor do the accents of Latin letters, signs that nobody sees
//! (`Default_Ignorable_Code_Point`, Unicode Standard Annex 44), or the signs of Markdown emphasis. A word is a
//! run of letters and digits; everything else separates.

use std::ops::Range;

use icu_normalizer::DecomposingNormalizerBorrowed;
use icu_properties::props::DefaultIgnorableCodePoint;
use icu_properties::{CodePointSetData, CodePointSetDataBorrowed};

/// The words of a text.
pub(super) struct Words<'a> {
    written: &'a str,
    /// The words one after another, with nothing between them.
    pub folded: String,
    /// Where each word is.
    pub words: Vec<Word>,
}

/// Where a word is, in bytes.
#[derive(Clone, Debug)]
pub(super) struct Word {
    /// In the folded text.
    pub folded: Range<usize>,
    /// In the text as written.
    pub written: Range<usize>,
}

impl<'a> Words<'a> {
    pub(super) fn of(written: &'a str) -> Words<'a> {
        let mut words = Words {
            written,
            folded: String::with_capacity(written.len()),
            words: Vec::new(),
        };
        let mut is_open = false;
        let mut folding = Folding::new();
        for (at, sign) in written.char_indices() {
            match folding.class(sign) {
                Class::Unseen => {}
                Class::Separator => is_open = false,
                Class::Letter => {
                    if !is_open {
                        let (folded, written) = (words.folded.len(), at);
                        words.words.push(Word {
                            folded: folded..folded,
                            written: written..written,
                        });
                        is_open = true;
                    }
                    folding.fold(sign, |c| words.folded.push(c));
                    if let Some(word) = words.words.last_mut() {
                        word.folded.end = words.folded.len();
                        word.written.end = at + sign.len_utf8();
                    }
                }
            }
        }
        // A sign may fold into nothing.
        words.words.retain(|word| !word.folded.is_empty());
        words
    }

    /// A word.
    pub(super) fn word(&self, word: &Word) -> &str {
        &self.folded[word.folded.clone()]
    }

    /// Whether a word of one letter is written as an initial: with a full stop, or as a capital that is no word by
    /// itself. "A hill" is none, "A. Hill" is. Keys and addresses have neither capitals nor stops.
    pub(super) fn is_initial(&self, word: &Word) -> bool {
        let is_key = !self.written.contains(char::is_whitespace);
        let letter = &self.written[word.written.clone()];
        let has_stop = self.written[word.written.end..].starts_with('.');
        let is_small = letter.chars().all(char::is_lowercase);
        let is_a_word = matches!(self.word(word), "a" | "e" | "i" | "o" | "u" | "y");
        is_key || has_stop || !(is_small || is_a_word)
    }

    /// The words without those that `is_left_out` takes; `None` where it takes none.
    pub(super) fn without(&self, is_left_out: impl Fn(&str) -> bool) -> Option<Words<'a>> {
        if !self.words.iter().any(|word| is_left_out(self.word(word))) {
            return None;
        }
        let mut kept = Words {
            written: self.written,
            folded: String::with_capacity(self.folded.len()),
            words: Vec::new(),
        };
        for word in &self.words {
            let text = self.word(word);
            if !is_left_out(text) {
                let start = kept.folded.len();
                kept.folded.push_str(text);
                kept.words.push(Word {
                    folded: start..kept.folded.len(),
                    written: word.written.clone(),
                });
            }
        }
        Some(kept)
    }

    /// The words that a range of the folded text touches.
    pub(super) fn touched(&self, range: &Range<usize>) -> &[Word] {
        let first = self.words.partition_point(|w| w.folded.end <= range.start);
        let end = self.words.partition_point(|w| w.folded.start < range.end);
        self.words.get(first..end).unwrap_or_default()
    }

    /// The bytes of the text as written that a range of the folded text came from.
    pub(super) fn written(&self, range: &Range<usize>) -> Range<usize> {
        let touched = self.touched(range);
        let (Some(first), Some(last)) = (touched.first(), touched.last()) else {
            return 0..0;
        };
        self.written_at(first, range.start).start..self.written_at(last, range.end - 1).end
    }

    /// The sign of a word, as written, that gave the byte `at` of the folded text.
    fn written_at(&self, word: &Word, at: usize) -> Range<usize> {
        let mut folding = Folding::new();
        let mut folded = word.folded.start;
        for (offset, sign) in self.written[word.written.clone()].char_indices() {
            if folding.class(sign) == Class::Letter {
                folding.fold(sign, |c| folded += c.len_utf8());
                if folded > at {
                    let start = word.written.start + offset;
                    return start..start + sign.len_utf8();
                }
            }
        }
        word.written.clone()
    }
}

/// Whether a word belongs to a script that is written without spaces: Han, kana, bopomofo and their neighbours;
/// Thai, Lao, Khmer, Myanmar. A name may stand anywhere in such a word.
pub(super) fn is_written_without_spaces(c: char) -> bool {
    matches!(c, '\u{0e00}'..='\u{0eff}' | '\u{1000}'..='\u{109f}' | '\u{1780}'..='\u{17ff}'
        | '\u{2e80}'..='\u{9fff}' | '\u{f900}'..='\u{faff}' | '\u{20000}'..='\u{3ffff}')
}

/// What a sign is to a word.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Class {
    /// Part of a word.
    Letter,
    /// Between two words.
    Separator,
    /// Nothing that a reader sees.
    Unseen,
}

/// Folds signs.
struct Folding {
    normalizer: DecomposingNormalizerBorrowed<'static>,
    unseen: CodePointSetDataBorrowed<'static>,
}

impl Folding {
    fn new() -> Folding {
        Folding {
            normalizer: DecomposingNormalizerBorrowed::new_nfkd(),
            unseen: CodePointSetData::new::<DefaultIgnorableCodePoint>(),
        }
    }

    fn class(&self, sign: char) -> Class {
        let is_letter = if sign.is_ascii() {
            sign.is_ascii_alphanumeric()
        } else if self.unseen.contains(sign) || is_accent(sign) {
            return Class::Unseen;
        } else {
            sign.is_alphanumeric()
        };
        match sign {
            _ if is_letter => Class::Letter,
            '*' | '_' | '`' | '~' => Class::Unseen,
            _ => Class::Separator,
        }
    }

    fn fold(&mut self, sign: char, mut each: impl FnMut(char)) {
        if sign.is_ascii() {
            each(sign.to_ascii_lowercase());
            return;
        }
        for part in self.normalizer.normalize_iter(std::iter::once(sign)) {
            for c in part.to_lowercase() {
                match c {
                    'ß' => "ss".chars().for_each(&mut each),
                    'æ' => "ae".chars().for_each(&mut each),
                    'œ' => "oe".chars().for_each(&mut each),
                    'ø' => each('o'),
                    'ł' => each('l'),
                    'đ' | 'ð' => each('d'),
                    'þ' => "th".chars().for_each(&mut each),
                    'ı' => each('i'),
                    c if is_accent(c) => {}
                    c => each(c),
                }
            }
        }
    }
}

/// Whether a sign is a combining accent of Latin, Greek or Cyrillic letters.
fn is_accent(sign: char) -> bool {
    matches!(sign, '\u{300}'..='\u{36f}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<String> {
        let words = Words::of(text);
        words
            .words
            .iter()
            .map(|w| words.word(w).to_owned())
            .collect()
    }

    #[test]
    fn words_are_the_same_however_they_are_encoded() {
        for same in [
            "Jürgen Müller",
            "Ju\u{308}rgen Mu\u{308}ller",
            "JÜRGEN\u{a0}MÜLLER",
            "*Jür*gen\nMül\u{ad}ler",
            "Jür\u{200b}gen, (Müller)",
            "Ｊürgen-Müller\u{2069}",
        ] {
            assert_eq!(words(same), ["jurgen", "muller"], "{same:?}");
        }
        assert_eq!(words("Straße Øre Łódź"), ["strasse", "ore", "lodz"]);
    }

    #[test]
    fn a_range_of_the_folded_text_leads_back_to_the_text_as_written() {
        let text = "seen with *Jürgen*\n Müller, 1960";
        let words = Words::of(text);
        let at = words.folded.find("jurgenmuller").unwrap();
        let written = words.written(&(at..at + "jurgenmuller".len()));
        assert_eq!(&text[written], "Jürgen*\n Müller");
        let han = "東京の田中様";
        let words = Words::of(han);
        let at = words.folded.find("田中").unwrap();
        assert_eq!(&han[words.written(&(at..at + "田中".len()))], "田中");
    }
}
