//! A reference as it is built up, as plain text and as HTML at once.

use std::fmt::Write as _;

use crate::model::direction::is_right_to_left;

/// A line of text. Its HTML contains emphasis and isolated texts only; everything else is escaped.
#[derive(Default)]
pub(super) struct Line {
    pub(super) text: String,
    pub(super) html: String,
    /// The HTML of the names and the year at its head, with which `html` begins.
    pub(super) head: String,
    /// Whether the line ends with a full stop that closing quotation marks follow.
    is_stopped: bool,
}

impl Line {
    /// Adds text as it is.
    pub(super) fn push(&mut self, text: &str) {
        self.text
            .extend(text.chars().filter(|c| !matches!(*c, OPEN | CLOSE)));
        let _ = write!(self.html, "{}", Escaped(text));
        self.is_stopped &= text.is_empty();
    }

    /// Adds text in italics.
    pub(super) fn push_italic(&mut self, text: &str) {
        self.html.push_str("<em>");
        self.push(text);
        self.html.push_str("</em>");
    }

    /// Adds a quoted title, with its full stop inside or after the quotation marks, as the language has it.
    pub(super) fn push_stopped(&mut self, text: &str) {
        self.push(text);
        self.is_stopped = true;
    }

    /// Ends the sentence, unless its last character does.
    pub(super) fn stop(&mut self) {
        if !self.is_stopped && !self.text.is_empty() && !ends_itself(&self.text) {
            self.push(".");
        }
    }

    /// Ends the sentence and leaves a space for the next.
    pub(super) fn next(&mut self) {
        if !self.text.is_empty() {
            self.stop();
            self.push(" ");
        }
    }

    /// Adds a sentence; does nothing for an empty text.
    pub(super) fn sentence(&mut self, text: &str) {
        if !text.is_empty() {
            self.next();
            self.push(text);
        }
    }
}

/// Whether the text ends with a mark that no full stop may follow.
pub(super) fn ends_itself(text: &str) -> bool {
    text.trim_end_matches(CLOSE).ends_with(['.', '?', '!', '…'])
}

/// Opens a text whose direction is its own (UAX #9, "first strong isolate"); in HTML, `<bdi>`.
const OPEN: char = '\u{2068}';
/// Closes it; in HTML, `</bdi>`.
const CLOSE: char = '\u{2069}';

/// A text of an entry. Where it has words that are written from right to left, it is isolated, so that it
/// reorders nothing beside it. Signs of its own that change the direction are dropped, so that those of a
/// reference are always in pairs.
pub(super) fn isolated(text: &str) -> String {
    let is_sign = |c: &char| matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..=CLOSE);
    let own: String = text.chars().filter(|c| !is_sign(c)).collect();
    if own.chars().any(is_right_to_left) {
        format!("{OPEN}{own}{CLOSE}")
    } else {
        own
    }
}

/// Text with the characters escaped that have a meaning in HTML.
struct Escaped<'t>(&'t str);

impl std::fmt::Display for Escaped<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for c in self.0.chars() {
            match c {
                '&' => f.write_str("&amp;")?,
                '<' => f.write_str("&lt;")?,
                '>' => f.write_str("&gt;")?,
                '"' => f.write_str("&quot;")?,
                '\'' => f.write_str("&#39;")?,
                OPEN => f.write_str("<bdi>")?,
                CLOSE => f.write_str("</bdi>")?,
                c => f.write_char(c)?,
            }
        }
        Ok(())
    }
}
