//! A reference as it is built up, as plain text and as HTML at once.

use std::fmt::Write as _;

/// A line of text. Its HTML contains emphasis only; everything else is escaped.
#[derive(Default)]
pub(super) struct Line {
    pub(super) text: String,
    pub(super) html: String,
    /// Whether the line ends with a full stop that closing quotation marks follow.
    is_stopped: bool,
}

impl Line {
    /// Adds text as it is.
    pub(super) fn push(&mut self, text: &str) {
        self.text.push_str(text);
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
    text.ends_with(['.', '?', '!', '…'])
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
                c => f.write_char(c)?,
            }
        }
        Ok(())
    }
}
