//! Finds signs that cannot be seen and that neither the script of the text nor an emoji needs.
//!
//! Joiners shape the letters of Arabic, Indic and similar scripts, and join emoji; a space without width
//! marks where lines of Thai, Khmer and similar scripts may break; a variation selector chooses among the
//! forms of an emoji, an ideograph or a mathematical sign (Unicode 16.0, chapter 23; UTS #51). Soft hyphens,
//! word joiners and the marks of direction U+061C, U+200E and U+200F are used in every script.

use std::ops::Range;

use icu_properties::props::{Emoji, EmojiModifier, ExtendedPictographic, Script};
use icu_properties::{CodePointMapData, CodePointSetData};

/// The signs of a text that cannot be seen and are not needed, in its order, with their bytes.
pub(super) fn invisible_signs(text: &str) -> Vec<(Range<usize>, char)> {
    let signs: Vec<(usize, char)> = text.char_indices().collect();
    let at = |index: Option<usize>| Some(signs.get(index?)?.1);
    let mut found = Vec::new();
    for (index, (start, sign)) in signs.iter().enumerate() {
        let (before, after) = (at(index.checked_sub(1)), at(Some(index + 1)));
        let is_needed = match *sign {
            '\u{200b}' | '\u{200c}' => needs_joiners(before) || needs_joiners(after),
            '\u{200d}' => {
                needs_joiners(before)
                    || needs_joiners(after)
                    || (before.is_some_and(ends_emoji) && after.is_some_and(is_pictograph))
            }
            '\u{fe00}'..='\u{fe0f}' | '\u{e0100}'..='\u{e01ef}' => before.is_some_and(has_variants),
            '\u{e0020}'..='\u{e007f}' => is_in_flag(signs.get(..index).unwrap_or_default()),
            sign => !is_always_invisible(sign),
        };
        // A text of Markdown may begin with a byte order mark, as every file may.
        let begins_file = *sign == '\u{feff}' && *start == 0;
        if !is_needed && !begins_file {
            found.push((*start..start + sign.len_utf8(), *sign));
        }
    }
    found
}

/// Signs that no text needs: byte order marks within it, marks of old annotations and formats, invisible
/// operators, fillers, language tags, and control characters other than ends of lines and tabs.
fn is_always_invisible(sign: char) -> bool {
    matches!(
        sign,
        '\u{feff}'
            | '\u{2061}'..='\u{2064}'
            | '\u{206a}'..='\u{206f}'
            | '\u{fff9}'..='\u{fffb}'
            | '\u{115f}' | '\u{1160}' | '\u{3164}' | '\u{ffa0}'
            | '\u{e0000}'..='\u{e007f}'
    ) || (sign.is_control() && !sign.is_whitespace())
}

/// Whether a letter is of a script that joiners, and spaces without width, may belong to: every script but
/// those whose letters neither join nor stack.
fn needs_joiners(letter: Option<char>) -> bool {
    let Some(letter) = letter else { return false };
    !matches!(
        CodePointMapData::<Script>::new().get(letter),
        Script::Common
            | Script::Unknown
            | Script::Latin
            | Script::Greek
            | Script::Cyrillic
            | Script::Armenian
            | Script::Georgian
            | Script::Hebrew
            | Script::Han
            | Script::Hiragana
            | Script::Katakana
            | Script::Hangul
            | Script::Bopomofo
            | Script::Yi
            | Script::Cherokee
            | Script::Ethiopic
            | Script::Coptic
            | Script::Gothic
            | Script::Runic
    ) && !is_selector(letter)
}

fn is_selector(sign: char) -> bool {
    matches!(sign, '\u{fe00}'..='\u{fe0f}' | '\u{e0100}'..='\u{e01ef}' | '\u{200c}' | '\u{200d}')
}

fn is_pictograph(sign: char) -> bool {
    CodePointSetData::new::<ExtendedPictographic>().contains(sign)
}

/// Whether a joiner may follow a sign in an emoji: a pictograph, its colour of skin, or its selector.
fn ends_emoji(sign: char) -> bool {
    is_pictograph(sign)
        || sign == '\u{fe0f}'
        || CodePointSetData::new::<EmojiModifier>().contains(sign)
}

/// Whether a variation selector may follow a sign: emoji (digits are among them), ideographs, and the
/// signs of mathematics and of scripts for which Unicode lists variants.
fn has_variants(sign: char) -> bool {
    let script = CodePointMapData::<Script>::new().get(sign);
    CodePointSetData::new::<Emoji>().contains(sign)
        || matches!(
            script,
            Script::Han
                | Script::Mongolian
                | Script::Myanmar
                | Script::PhagsPa
                | Script::Manichaean
        )
        || (script == Script::Common
            && !sign.is_ascii()
            && !sign.is_whitespace()
            && !is_selector(sign))
}

/// Whether a tag continues the flag of a region: after a black flag and other tags only.
fn is_in_flag(before: &[(usize, char)]) -> bool {
    let is_tag = |sign: char| matches!(sign, '\u{e0020}'..='\u{e007e}');
    let flag = before
        .iter()
        .rev()
        .map(|(_, sign)| *sign)
        .find(|sign| !is_tag(*sign));
    flag == Some('\u{1f3f4}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<u32> {
        let signs = invisible_signs(text);
        signs.iter().map(|(_, sign)| u32::from(*sign)).collect()
    }

    #[test]
    fn ok_signs_that_a_script_or_an_emoji_needs() {
        for text in [
            "plain\ttext\r\nover lines",
            "Auf\u{ad}lage, a\u{2060}b, \u{200e}a\u{200f}\u{61c}",
            // Persian "I want"; Hindi "kṣa" in half form; Sinhala "śrī"; Thai with a place to break.
            "\u{645}\u{6cc}\u{200c}\u{62e}\u{648}\u{627}\u{647}\u{645}",
            "\u{915}\u{94d}\u{200d}\u{937}",
            "\u{dc1}\u{dca}\u{200d}\u{dbb}\u{dd3}",
            "\u{e01}\u{e32}\u{e23}\u{200b}\u{e1e}\u{e34}\u{e21}\u{e1e}\u{e4c}",
            // A family, a woman who paints, a keycap, a heart, the flag of Scotland.
            "\u{1f468}\u{200d}\u{1f469}\u{200d}\u{1f467}",
            "\u{1f469}\u{1f3fd}\u{200d}\u{1f3a8}",
            "1\u{fe0f}\u{20e3} \u{2764}\u{fe0f}",
            "\u{1f3f4}\u{e0067}\u{e0062}\u{e0073}\u{e0063}\u{e0074}\u{e007f}",
            // An ideograph with a chosen form; a mathematical sign with a chosen form.
            "\u{845b}\u{e0100} \u{2229}\u{fe00}",
            "\u{feff}# A page that begins with a byte order mark",
        ] {
            assert_eq!(found(text), Vec::<u32>::new(), "{text:?}");
        }
    }

    #[test]
    fn err_signs_that_nothing_needs() {
        for (text, sign) in [
            ("Harbour\u{200b}Museum", 0x200b),
            ("Auf\u{200c}lage", 0x200c),
            ("a\u{200d}b", 0x200d),
            ("\u{200d}", 0x200d),
            ("\u{1f468}\u{200d} alone", 0x200d),
            ("a\u{feff}b", 0xfeff),
            ("a\u{fe0f}b", 0xfe0f),
            (" \u{fe0f}", 0xfe0f),
            ("\u{2764}\u{fe0f}\u{fe0f}", 0xfe0f),
            ("a\u{e0061}", 0xe_0061),
            ("\u{e0001}", 0xe_0001),
            ("a\u{2063}b", 0x2063),
            ("\u{3164}", 0x3164),
            ("a\u{7}b", 0x7),
        ] {
            assert_eq!(found(text), [sign], "{text:?}");
        }
    }
}
