//! What holds of every grammar for every text: it does not panic, reads the same twice, and the words read and the words
//! left over are the text. Tests only.

use std::sync::LazyLock;

use proptest::prelude::*;

use super::lexicon::samples::lexicon;
use super::outcome::LONGEST_CELL;
use super::sizes::{Assumed, Unit};
use super::*;

static LEXICON: LazyLock<Lexicon> = LazyLock::new(lexicon);

/// What each grammar read of a text, and what it left over.
fn spans(text: &str) -> Vec<(&'static str, Vec<Span>, Vec<Span>)> {
    fn of<T>(name: &'static str, reading: Reading<T>) -> (&'static str, Vec<Span>, Vec<Span>) {
        (name, reading.read, reading.left)
    }
    vec![
        of("dates", dates::dates(text)),
        of("sizes", sizes::sizes(text, Assumed::default())),
        of("length", sizes::length(text, Some(Unit::Centimetre))),
        of("medium", media::medium(text, &LEXICON)),
        of("credit", credit::credit(text, &LEXICON)),
        of("numbering", numbering::numbering(text, &LEXICON)),
        of("makers", makers::makers(text, &LEXICON)),
        of("title", titles::title(text, &LEXICON)),
        of("states", states::states(text)),
    ]
}

/// The spans in order, disjoint, on borders of letters, and with nothing but white space between them.
fn assert_is_the_text(text: &str) {
    for (name, read, left) in spans(text) {
        let mut all = [read, left].concat();
        all.sort_by_key(|span| span.start);
        let mut end = 0;
        for span in all {
            assert!(
                span.start >= end && span.end > span.start,
                "{name}: {text:?}"
            );
            assert!(is_blank(&text[end..span.start]), "{name}: {text:?}");
            end = span.end;
            assert!(text.is_char_boundary(end), "{name}: {text:?}");
        }
        assert!(is_blank(&text[end..]), "{name}: {text:?}");
    }
}

fn is_blank(text: &str) -> bool {
    text.chars().all(|c| c.is_whitespace() || c == '\u{feff}')
}

/// Texts made of what the grammars look for, in any order.
fn composed() -> impl Strategy<Value = String> {
    const PARTS: [&str; 72] = [
        "1925",
        "1830",
        "5",
        "12",
        "0",
        "99999999999",
        "½",
        "1/2",
        "9 1/2",
        "–",
        "-",
        ",",
        ";",
        ".",
        "/",
        ":",
        "(",
        ")",
        "[",
        "]",
        "?",
        "×",
        "x",
        "\"",
        "'",
        "+",
        "&",
        "c.",
        "um",
        "vers",
        "after",
        "before",
        "between",
        "and",
        "or",
        "of",
        "early",
        "summer",
        "May",
        "s",
        "er Jahre",
        "19th century",
        "Shōwa",
        "昭和",
        "十八",
        "年",
        "月",
        "頃",
        "後摺",
        "printed",
        "published",
        "n.d.",
        "later",
        "image",
        "sheet",
        "H.",
        "B x H",
        "cm",
        "in.",
        "mm",
        "Etching",
        "on",
        "paper",
        "5 blocks",
        "Gift of",
        "through",
        "A.P.",
        "ed.",
        "III",
        "state",
        "ii/iii",
        "Brook",
    ];
    let part = (
        0..PARTS.len(),
        prop_oneof![Just(""), Just(" "), Just("\u{3000}"), Just("\n")],
    );
    proptest::collection::vec(part, 0..14).prop_map(|parts| {
        let texts = parts
            .into_iter()
            .map(|(at, gap)| format!("{}{gap}", PARTS[at]));
        texts.collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(600) })]

    #[test]
    fn the_words_of_composed_texts_are_read_or_left_over(text in composed()) {
        assert_is_the_text(&text);
        prop_assert_eq!(spans(&text), spans(&text));
    }

    #[test]
    fn the_words_of_any_text_are_read_or_left_over(text in any::<String>()) {
        assert_is_the_text(&text);
    }

    /// A year, a span of years and a size are read back as written, whatever the numbers.
    #[test]
    fn numbers_are_kept(year in 1300_u32..2090, more in 1_u32..9, high in 1_u32..9999, wide in 1_u32..9999) {
        let until = year + more;
        for (text, date) in [
            (format!("{year}"), format!("{year}")),
            (format!("c.{year}–{until}"), format!("{year}~/{until}~")),
            (format!("{year} or {until}"), format!("[{year},{until}]")),
        ] {
            let reading = dates::dates(&text).is;
            prop_assert_eq!(reading[0].when.date().unwrap().as_str(), date);
        }
        let text = format!("image: {high} x {wide} mm");
        let reading = sizes::sizes(&text, Assumed::default()).is;
        let size = reading[0].size().unwrap();
        prop_assert_eq!(size.to_string(), format!("{high} × {wide}"));
    }
}

#[test]
fn a_text_that_is_too_long_is_left_over_whole() {
    let text = "1925 ".repeat(LONGEST_CELL);
    assert_is_the_text(&text);
    assert_eq!(dates::dates(&text).doubts, [Doubt::TooLong]);
    assert!(dates::dates(&text).is.is_empty());
}

/// Texts that once broke a grammar, or look as if they could.
#[test]
fn odd_texts_are_read_or_left_over() {
    for text in [
        "",
        " ",
        "\u{feff}",
        "–",
        "1925–",
        "–1925",
        "(((",
        "1925/26/27",
        "12.5.",
        "0/0",
        "1 1/0",
        "½½½",
        "x",
        "x x x",
        "9 x",
        "×24",
        "[",
        "]",
        "第",
        "昭和",
        "昭和年",
        "元年",
        "ii/",
        "/ii",
        "A.P.",
        "A.P. /",
        "of",
        "of of of",
        "by",
        "after after",
        "ed.",
        "ed. ed.",
        "Gift of",
        "through",
        "1970",
        "19th",
        "th century",
        "l'",
        "'l",
        "1925年月日",
        "9999999999 x 9999999999 cm",
        "4294967295/4294967295",
        "0000",
        "c.c.c.",
        "????",
        "1925 ? ? ?",
        "e\u{301}",
    ] {
        assert_is_the_text(text);
    }
}
