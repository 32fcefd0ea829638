//! Finds controls of the direction of writing that override it, and those without a partner.
//!
//! Method: the Unicode Bidirectional Algorithm (UAX #9, rules BD8 to BD16): an embedding or override
//! ends at U+202C, an isolate at U+2069, and each with its paragraph. An isolate also ends the embeddings
//! opened inside it.

use std::ops::Range;

/// What a control does that it should not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Turn {
    /// It sets letters against the direction of their script.
    Overrides,
    /// It opens a direction that its paragraph does not close.
    NeverClosed,
    /// It closes a direction that its paragraph did not open.
    NeverOpened,
}

/// The controls of a text that turn it, in its order: their bytes, the sign, and what it does.
pub(super) fn turns(text: &str) -> Vec<(Range<usize>, char, Turn)> {
    let mut turns = Vec::new();
    let mut open: Vec<(Range<usize>, char)> = Vec::new();
    let mut is_blank_line = false;
    for (at, sign) in text.char_indices() {
        let span = at..at + sign.len_utf8();
        match sign {
            '\u{202d}' | '\u{202e}' => {
                turns.push((span.clone(), sign, Turn::Overrides));
                open.push((span, sign));
            }
            '\u{202a}' | '\u{202b}' | '\u{2066}'..='\u{2068}' => open.push((span, sign)),
            '\u{202c}' => match open.pop_if(|(_, opened)| !is_isolate(*opened)) {
                Some(_) => {}
                None => turns.push((span, sign, Turn::NeverOpened)),
            },
            '\u{2069}' => match open.iter().rposition(|(_, opened)| is_isolate(*opened)) {
                Some(isolate) => {
                    never_closed(&mut turns, open.drain(isolate + 1..));
                    open.pop();
                }
                None => turns.push((span, sign, Turn::NeverOpened)),
            },
            '\n' if is_blank_line => never_closed(&mut turns, open.drain(..)),
            _ => {}
        }
        is_blank_line = sign == '\n' || (is_blank_line && sign.is_whitespace());
    }
    never_closed(&mut turns, open.drain(..));
    turns.sort_by_key(|(span, _, _)| span.start);
    turns
}

fn is_isolate(opened: char) -> bool {
    matches!(opened, '\u{2066}'..='\u{2068}')
}

/// Reports the controls that were left open; overrides are reported already.
fn never_closed(
    turns: &mut Vec<(Range<usize>, char, Turn)>,
    open: impl Iterator<Item = (Range<usize>, char)>,
) {
    let left = open.filter(|(_, sign)| !matches!(sign, '\u{202d}' | '\u{202e}'));
    turns.extend(left.map(|(span, sign)| (span, sign, Turn::NeverClosed)));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<(usize, Turn)> {
        let turns = turns(text);
        turns
            .iter()
            .map(|(at, _, turn)| (at.start, *turn))
            .collect()
    }

    #[test]
    fn ok_what_is_closed_in_its_paragraph() {
        for text in [
            "plain",
            "a \u{202b}b\u{202c} c",
            "a \u{2067}b\u{2069} c",
            "\u{2068}a \u{202a}b\u{202c}\u{2069}",
            "\u{2067}a\nb\u{2069}",
            "\u{200e}a\u{200f}\u{61c}",
        ] {
            assert!(found(text).is_empty(), "{text:?}");
        }
    }

    #[test]
    fn err_overrides_and_controls_without_a_partner() {
        use Turn::{NeverClosed, NeverOpened, Overrides};
        for (text, expected) in [
            ("a \u{202e}b\u{202c}", vec![(2, Overrides)]),
            ("\u{202e}b", vec![(0, Overrides)]),
            ("a\u{2067}b", vec![(1, NeverClosed)]),
            ("a\u{202c}b", vec![(1, NeverOpened)]),
            ("a\u{2069}b", vec![(1, NeverOpened)]),
            ("\u{2067}a\u{202c}\u{2069}", vec![(4, NeverOpened)]),
            ("\u{2067}a\u{202b}b\u{2069}", vec![(4, NeverClosed)]),
            (
                "\u{2067}a\n \nb\u{2069}",
                vec![(0, NeverClosed), (8, NeverOpened)],
            ),
        ] {
            assert_eq!(found(text), expected, "{text:?}");
        }
    }
}
