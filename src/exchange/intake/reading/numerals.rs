//! Numbers in words and in kanji. Roman numerals are those of `study::numerals`.
//!
//! Each function takes one folded word, or a run of them, and gives its number.

use super::words::{PieceKind, Words};
use crate::study::numerals::from_roman;

/// Numbers from one to twelve in words, folded: English, German, French, Dutch.
const IN_WORDS: [(u32, &[&str]); 12] = [
    (
        1,
        &["one", "ein", "einer", "einem", "eine", "un", "une", "een"],
    ),
    (2, &["two", "zwei", "deux", "twee"]),
    (3, &["three", "drei", "trois", "drie"]),
    (4, &["four", "vier", "quatre"]),
    (5, &["five", "funf", "fuenf", "cinq", "vijf"]),
    (6, &["six", "sechs", "zes"]),
    (7, &["seven", "sieben", "sept", "zeven"]),
    (8, &["eight", "acht", "huit"]),
    (9, &["nine", "neun", "neuf", "negen"]),
    (10, &["ten", "zehn", "dix", "tien"]),
    (11, &["eleven", "elf", "onze"]),
    (12, &["twelve", "zwolf", "zwoelf", "douze", "twaalf"]),
];

/// The number that a folded word names, one to twelve.
#[must_use]
pub fn in_words(word: &str) -> Option<u32> {
    let row = IN_WORDS.iter().find(|(_, words)| words.contains(&word));
    row.map(|(number, _)| *number)
}

/// Ordinal numbers from first to twelfth in words, folded.
const ORDINALS: [(u32, &[&str]); 12] = [
    (
        1,
        &[
            "first", "erster", "erste", "erstes", "ersten", "premier", "premiere", "eerste",
        ],
    ),
    (
        2,
        &[
            "second", "zweiter", "zweite", "zweites", "zweiten", "deuxieme", "seconde", "tweede",
        ],
    ),
    (
        3,
        &[
            "third",
            "dritter",
            "dritte",
            "drittes",
            "dritten",
            "troisieme",
            "derde",
        ],
    ),
    (
        4,
        &[
            "fourth",
            "vierter",
            "vierte",
            "viertes",
            "vierten",
            "quatrieme",
            "vierde",
        ],
    ),
    (
        5,
        &[
            "fifth",
            "funfter",
            "funfte",
            "funftes",
            "funften",
            "cinquieme",
            "vijfde",
        ],
    ),
    (
        6,
        &[
            "sixth", "sechster", "sechste", "sechstes", "sechsten", "sixieme", "zesde",
        ],
    ),
    (
        7,
        &[
            "seventh", "siebter", "siebte", "siebtes", "siebten", "septieme", "zevende",
        ],
    ),
    (
        8,
        &[
            "eighth", "achter", "achte", "achtes", "achten", "huitieme", "achtste",
        ],
    ),
    (
        9,
        &[
            "ninth", "neunter", "neunte", "neuntes", "neunten", "neuvieme", "negende",
        ],
    ),
    (
        10,
        &[
            "tenth", "zehnter", "zehnte", "zehntes", "zehnten", "dixieme", "tiende",
        ],
    ),
    (
        11,
        &[
            "eleventh", "elfter", "elfte", "elftes", "elften", "onzieme", "elfde",
        ],
    ),
    (
        12,
        &[
            "twelfth", "zwolfter", "zwolfte", "zwolftes", "zwolften", "douzieme", "twaalfde",
        ],
    ),
];

/// An ordinal number at a place and the piece after it: `2nd`, `2.`, `2e`, `IIe`, `second`, `zweiter`.
///
/// A number with a stop, as in German, counts only where a word follows.
#[must_use]
pub fn ordinal(words: &Words<'_>, index: usize) -> Option<(u32, usize)> {
    const ENDINGS: [&str; 12] = [
        "st", "nd", "rd", "th", "e", "er", "eme", "ere", "re", "de", "ste", "ter",
    ];
    if let Some(number) = words.number(index) {
        let next = words.word(index + 1);
        if words.is_close(index + 1) && next.is_some_and(|w| ENDINGS.contains(&w)) {
            return Some((number, index + 2));
        }
        let is_dotted = words.is_close_mark(index + 1, &["."]);
        return (is_dotted && words.word(index + 2).is_some()).then_some((number, index + 2));
    }
    let word = words.word(index)?;
    if let Some((number, _)) = ORDINALS.iter().find(|(_, forms)| forms.contains(&word)) {
        return Some((*number, index + 1));
    }
    let stem = ENDINGS
        .iter()
        .find_map(|e| from_roman(word.strip_suffix(e)?));
    if let Some(number) = stem {
        return Some((number, index + 1));
    }
    let number = from_roman(word)?;
    let is_dotted = words.is_close_mark(index + 1, &["."]);
    (is_dotted && words.word(index + 2).is_some()).then_some((number, index + 2))
}

/// A number in figures or kanji at a place and the piece after it: `18`, `十八`, `元` (the first year of an era).
#[must_use]
pub fn kanji_or_figures(words: &Words<'_>, index: usize) -> Option<(u32, usize)> {
    if let Some(number) = words.number(index) {
        return Some((number, index + 1));
    }
    if words.word(index) == Some("元") {
        return Some((1, index + 1));
    }
    let mut at = index;
    let (mut sum, mut unit) = (0, None);
    while let Some(piece) = words.at(at).filter(|p| p.kind == PieceKind::Word) {
        let digit = ["〇", "一", "二", "三", "四", "五", "六", "七", "八", "九"]
            .iter()
            .zip(0..)
            .find(|(sign, _)| **sign == piece.folded)
            .map(|(_, digit)| digit);
        if let Some(digit) = digit {
            if at - index > 8 {
                break;
            }
            unit = Some(unit.unwrap_or(0) * 10 + digit);
        } else if piece.folded == "十" && sum == 0 {
            sum = unit.take().unwrap_or(1) * 10;
        } else {
            break;
        }
        at += 1;
    }
    (at > index).then_some((sum + unit.unwrap_or(0), at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ordinals_in_five_languages() {
        for (text, number) in [
            ("2nd state", 2),
            ("2. Zustand", 2),
            ("II. Zustand", 2),
            ("2e état", 2),
            ("IIe état", 2),
            ("second state", 2),
            ("dritter Zustand", 3),
            ("tweede staat", 2),
        ] {
            let found = ordinal(&Words::of(text), 0).map(|(n, _)| n);
            assert_eq!(found, Some(number), "{text}");
        }
        assert_eq!(ordinal(&Words::of("12."), 0), None);
    }

    #[test]
    fn kanji_numbers_are_those_of_years_of_an_era() {
        for (text, number) in [
            ("十八", 18),
            ("二", 2),
            ("四十五", 45),
            ("元", 1),
            ("64", 64),
            ("二十", 20),
        ] {
            let found = kanji_or_figures(&Words::of(text), 0).map(|(n, _)| n);
            assert_eq!(found, Some(number), "{text}");
        }
    }
}
