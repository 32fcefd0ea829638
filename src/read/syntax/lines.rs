//! Finds lines of a text around a byte or up to the next header, and replaces lines by blanks.

use std::ops::Range;

/// The end of the line before the first header. A line of a list may also begin with a bracket, but
/// there no name follows the bracket.
pub(super) fn next_header(text: &str) -> Option<usize> {
    let begins_a_name = |at: usize| {
        let line = text.get(at + 1..).unwrap_or_default();
        let name = line.trim_start_matches('[');
        name.len() < line.len() && name.starts_with(|c: char| c.is_ascii_alphabetic())
    };
    text.match_indices('\n')
        .map(|(at, _)| at)
        .find(|at| begins_a_name(*at))
}

/// The line around a byte, without its end.
pub(super) fn line_around(text: &str, at: usize) -> Range<usize> {
    let before = text.get(..at).unwrap_or_default();
    let start = before.rfind('\n').map_or(0, |n| n + 1);
    let after = text.get(start..).unwrap_or_default();
    start..start + after.find('\n').unwrap_or(after.len())
}

/// A span without the white space at its ends.
pub(super) fn trimmed(text: &str, span: Range<usize>) -> Range<usize> {
    let line = text.get(span.clone()).unwrap_or_default();
    let start = span.start + (line.len() - line.trim_start().len());
    start..start + line.trim().len()
}

/// The text with lines replaced by blanks; all later bytes keep their places.
pub(super) fn blanked(text: &str, lines: Range<usize>) -> String {
    let before = text.get(..lines.start).unwrap_or_default();
    let after = text.get(lines.end..).unwrap_or_default();
    let blanks: String = text
        .get(lines)
        .unwrap_or_default()
        .bytes()
        .map(|byte| if byte == b'\n' { '\n' } else { ' ' })
        .collect();
    format!("{before}{blanks}{after}")
}
