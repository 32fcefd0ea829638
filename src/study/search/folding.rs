//! Folding: two spellings that a reader takes for the same give the same letters.
//!
//! A text is normalised (NFKC, Unicode Standard Annex 15), so that the width and the encoding of letters do not
//! count. Then each letter is replaced as `folding.txt` says: capitals by small letters, Latin, Greek and Cyrillic
//! letters by the letter without its marks, and the Latin letters that have no decomposition by the letters that
//! stand for them (`ß` by `ss`, `ø` by `o`). Marks that no letter absorbs are dropped after a Latin, Greek or
//! Cyrillic letter and kept elsewhere: か and が are two letters. Signs that nobody sees are dropped.
//!
//! The index is made with this table, and it is published with the index, so that the browser folds by the same
//! one. A test compares the table with the rule and the data of Unicode from which it was made.
//! Source of the pairs that must match and must not: `tests/checks/search_folding.json`.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use icu_normalizer::ComposingNormalizerBorrowed;
use icu_properties::props::{DefaultIgnorableCodePoint, GeneralCategory, Script};
use icu_properties::{CodePointMapData, CodePointSetData};

/// What each line's letters fold into: the target, a tab, and the letters.
const TABLE: &str = include_str!("folding.txt");

/// The folded form of each letter that changes.
static FOLDED: LazyLock<BTreeMap<char, &'static str>> = LazyLock::new(|| {
    let lines = table();
    lines
        .flat_map(|(target, letters)| letters.chars().map(move |letter| (letter, target)))
        .collect()
});

/// The table: what letters fold into, and those letters.
pub fn table() -> impl Iterator<Item = (&'static str, &'static str)> {
    TABLE.lines().filter_map(|line| line.split_once('\t'))
}

/// The text in the form that [`fold`] takes and that words are cut from (NFKC).
#[must_use]
pub fn normalised(text: &str) -> String {
    ComposingNormalizerBorrowed::new_nfkc()
        .normalize(text)
        .into_owned()
}

/// A normalised text in the letters by which texts are compared.
///
/// ```
/// # use keyblock::study::search::folding::{fold, normalised};
/// assert_eq!(fold(&normalised("Ōsaka")), "osaka");
/// assert_eq!(fold(&normalised("Straße")), "strasse");
/// assert_eq!(fold(&normalised("がん")), "がん");
/// ```
#[must_use]
pub fn fold(normalised: &str) -> String {
    let mut out = String::with_capacity(normalised.len());
    let mut takes_marks = false;
    for c in normalised.chars() {
        if c.is_ascii() {
            out.push(c.to_ascii_lowercase());
            takes_marks = c.is_ascii_alphabetic();
        } else if is_unseen(c) || (takes_marks && is_mark(c)) {
            // Dropped; a further mark belongs to the same letter.
        } else {
            match FOLDED.get(&c) {
                Some(folded) => out.push_str(folded),
                None => out.push(c),
            }
            takes_marks = drops_marks(c);
        }
    }
    out
}

/// Whether marks on the letter do not count: it is Latin, Greek or Cyrillic.
fn drops_marks(c: char) -> bool {
    let script = CodePointMapData::<Script>::new().get(c);
    [Script::Latin, Script::Greek, Script::Cyrillic].contains(&script)
}

/// Whether it is a mark on the letter before it.
pub(super) fn is_mark(c: char) -> bool {
    if c.is_ascii() {
        return false;
    }
    let category = CodePointMapData::<GeneralCategory>::new().get(c);
    matches!(
        category,
        GeneralCategory::NonspacingMark
            | GeneralCategory::SpacingMark
            | GeneralCategory::EnclosingMark
    )
}

/// Whether nobody sees it: a soft hyphen, a joiner.
pub(super) fn is_unseen(c: char) -> bool {
    !c.is_ascii() && CodePointSetData::new::<DefaultIgnorableCodePoint>().contains(c)
}

#[cfg(test)]
mod tests {
    use icu_normalizer::DecomposingNormalizerBorrowed;

    use super::*;

    /// Letters that do not decompose, and what stands for them (`search_folding.json`, `about`).
    const LETTERS: [(char, &str); 11] = [
        ('ß', "ss"),
        ('æ', "ae"),
        ('œ', "oe"),
        ('ø', "o"),
        ('ł', "l"),
        ('đ', "d"),
        ('ð', "d"),
        ('þ', "th"),
        ('ı', "i"),
        ('ħ', "h"),
        ('ς', "σ"),
    ];

    /// A letter by the rule, from the data of Unicode.
    fn by_rule(c: char) -> String {
        let decomposed = DecomposingNormalizerBorrowed::new_nfkd();
        let decomposed = decomposed
            .normalize(c.encode_utf8(&mut [0; 4]))
            .into_owned();
        let drops = decomposed.chars().next().is_some_and(drops_marks);
        let bare = |text: &str| -> String {
            let kept = text.chars().filter(|c| !(drops && is_mark(*c)));
            kept.collect()
        };
        let small: String = bare(&decomposed)
            .chars()
            .flat_map(char::to_lowercase)
            .collect();
        let mut out = String::new();
        for letter in bare(&small).chars() {
            match LETTERS.iter().find(|(from, _)| *from == letter) {
                Some((_, to)) => out.push_str(to),
                None => out.push(letter),
            }
        }
        ComposingNormalizerBorrowed::new_nfc()
            .normalize(&out)
            .into_owned()
    }

    const HEAD: &str = "# What each letter folds into, before the tab, and the letters that do, after it. Only letters that NFKC leaves\n\
                        # as they are. Made from the data of Unicode (crates icu_normalizer and icu_properties) by the rule of\n\
                        # tests/checks/search_folding.json: KEYBLOCK_BLESS=1 cargo test -p keyblock-study the_table_of_folding\n";

    #[test]
    #[allow(
        clippy::disallowed_methods,
        reason = "writes the table anew where that is asked for"
    )]
    fn the_table_of_folding_follows_the_rule() {
        let mut letters: BTreeMap<String, String> = BTreeMap::new();
        let nfkc = ComposingNormalizerBorrowed::new_nfkc();
        for c in '\0'..=char::MAX {
            let mut buffer = [0; 4];
            let text: &str = c.encode_utf8(&mut buffer);
            if is_mark(c) || is_unseen(c) || nfkc.normalize(text) != text {
                continue;
            }
            let folded = by_rule(c);
            if folded != text {
                letters.entry(folded).or_default().push(c);
            }
        }
        let mut made = HEAD.to_owned();
        for (target, letters) in &letters {
            made.push_str(target);
            made.push('\t');
            made.push_str(letters);
            made.push('\n');
        }
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/search/folding.txt");
        if std::env::var_os("KEYBLOCK_BLESS").is_some() {
            std::fs::write(path, &made).unwrap();
        }
        let stands = std::fs::read_to_string(path).unwrap();
        assert!(
            stands == made,
            "the table is out of date: KEYBLOCK_BLESS=1 cargo test -p keyblock-study the_table_of_folding"
        );
    }

    #[test]
    fn every_line_of_the_table_is_read() {
        let lines = TABLE.lines().filter(|line| !line.starts_with('#')).count();
        assert_eq!(table().count(), lines);
        assert!(lines > 300, "only {lines} lines");
    }

    #[test]
    fn marks_that_nothing_absorbs_are_dropped_on_latin_letters_alone() {
        assert_eq!(fold(&normalised("m\u{304}\u{323}e")), "me");
        assert_eq!(fold(&normalised("Hafen\u{ad}stadt")), "hafenstadt");
        assert_eq!(fold(&normalised("か\u{3099}")), "が");
        assert_eq!(fold(&normalised("ש\u{5c1}")), "ש\u{5c1}");
    }
}
