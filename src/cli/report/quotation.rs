//! The line of a file that a finding is about, as it is quoted to people.

use unicode_width::UnicodeWidthStr as _;

use crate::model::place::{Place, Sources};

/// The most characters of a line that are quoted before the value at fault, and from its beginning on.
const BEFORE: usize = 40;
const AFTER: usize = 80;

/// How far a value is looked for from its line's beginning, bytes: longer lines are cut before they are searched.
const SEARCHED: usize = 4 * (BEFORE + AFTER);

/// A quoted line.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Quotation {
    /// The line, or the part of a long one around the value, cut with "…".
    pub(super) line: String,
    /// The columns before the value.
    pub(super) indent: usize,
    /// The columns of the value, at least 1. Of a value on several lines, those on the first.
    width: usize,
}

impl Quotation {
    /// The line of a place; `None` where the file has no text.
    pub(super) fn of(place: Place, sources: &Sources) -> Option<Quotation> {
        let text = sources.text(place.file);
        if text.is_empty() {
            return None;
        }
        let span = place.span();
        let start = floor(text, span.start);
        let before = text.get(floor(text, start.saturating_sub(SEARCHED))..start)?;
        let before = before.rsplit('\n').next().unwrap_or_default();
        let rest = text.get(start..floor(text, start.saturating_add(SEARCHED)))?;
        let rest = rest.split('\n').next().unwrap_or_default();
        let rest = rest.strip_suffix('\r').unwrap_or(rest);
        let value = rest.get(..floor(rest, span.end.saturating_sub(start)))?;

        let before_count = before.chars().count();
        let is_cut_before = before_count > BEFORE;
        let shown_before: String = before
            .chars()
            .skip(before_count.saturating_sub(BEFORE))
            .collect();
        let shown_rest: String = rest.chars().take(AFTER).collect();
        let shown_value = value.chars().take(AFTER).collect::<String>();
        let is_cut_after = shown_rest.len() < rest.len();

        let head = if is_cut_before { "…" } else { "" };
        let tail = if is_cut_after { "…" } else { "" };
        let (shown_before, shown_rest) = (visible(&shown_before), visible(&shown_rest));
        Some(Quotation {
            indent: head.width() + shown_before.width(),
            width: visible(&shown_value).width().max(1),
            line: format!("{head}{shown_before}{shown_rest}{tail}"),
        })
    }

    /// The mark that stands below the value.
    pub(super) fn mark(&self) -> String {
        "‾".repeat(self.width)
    }
}

/// The nearest border of a character at or before `at`; the end of the text beyond it.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// Text that a terminal shows and does not obey: signs for control characters and for those that turn the direction of
/// writing, a space for a tab. Line breaks stay.
pub(super) fn visible(text: &str) -> String {
    let sign = |c: char| match c {
        '\n' => c,
        '\t' => ' ',
        '\0'..='\u{1f}' => char::from_u32(0x2400 + u32::from(c)).unwrap_or('\u{fffd}'),
        '\u{7f}' => '\u{2421}',
        '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => '\u{fffd}',
        c if c.is_control() => '\u{fffd}',
        c => c,
    };
    text.chars().map(sign).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quotation(text: &str, value: &str) -> Quotation {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", text);
        let start = text.find(value).unwrap();
        Quotation::of(Place::new(file, start..start + value.len()), &sources).unwrap()
    }

    #[test]
    fn the_mark_stands_below_wide_and_combined_letters() {
        let of = |text, value| {
            let quotation = quotation(text, value);
            (quotation.indent, quotation.width)
        };
        assert_eq!(of("name = 'Ōsaka'", "saka"), (9, 4));
        assert_eq!(of("name = 'O\u{304}saka'", "saka"), (9, 4));
        assert_eq!(of("name = '版画 x'", "x"), (13, 1));
        assert_eq!(of("name = '版画'", "版画"), (8, 4));
        assert_eq!(of("\tkey = 1", "key"), (1, 3));
    }

    #[test]
    fn a_terminal_is_given_no_commands() {
        let quoted = quotation("a = '\u{1b}[2J\u{202e}x'\r\nb = 1", "x");
        assert_eq!(quoted.line, "a = '\u{241b}[2J\u{fffd}x'");
        assert_eq!(visible("a\u{9b}b\u{7f}"), "a\u{fffd}b\u{2421}");
    }

    #[test]
    fn a_value_on_several_lines_is_marked_on_its_first() {
        let quoted = quotation("a = [\n  1,\n]\n", "[\n  1,\n]");
        assert_eq!((quoted.line.as_str(), quoted.width), ("a = [", 1));
    }
}
