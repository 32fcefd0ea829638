//! Longer texts of the theme, in parts with a heading each.

use serde::Serialize;

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// A part of a text.
#[derive(Serialize)]
pub(crate) struct TextPart {
    /// The heading's id.
    pub id: String,
    /// The heading.
    pub heading: String,
    /// The paragraphs.
    pub paragraphs: Vec<CleanHtml>,
    /// A list below it.
    pub items: Vec<CleanHtml>,
    /// Texts to be copied, each with a label.
    pub quotable: Vec<Quotable>,
}

/// A text to be copied.
#[derive(Serialize)]
pub(crate) struct Quotable {
    /// Its label: "In short".
    pub label: String,
    /// The text.
    pub text: CleanHtml,
}

impl TextPart {
    /// A part under the word `heading` with the paragraphs of `text`, which blank lines separate.
    pub fn new(here: &Here<'_>, heading: &str, text: &CleanHtml) -> TextPart {
        TextPart {
            id: heading.to_owned(),
            heading: here.words().word(heading).to_owned(),
            paragraphs: text
                .as_str()
                .split("\n\n")
                .map(str::trim)
                .filter(|p| !p.is_empty())
                .map(|p| CleanHtml::trusted(p.to_owned()))
                .collect(),
            items: Vec::new(),
            quotable: Vec::new(),
        }
    }

    /// A part under the word `heading` with the word `heading-text`.
    pub fn of_word(here: &Here<'_>, heading: &str) -> TextPart {
        let text = CleanHtml::text(here.words().word(&format!("{heading}-text")));
        TextPart::new(here, heading, &text)
    }

    /// The same with a text to be copied.
    pub fn with_quotable(mut self, label: &str, text: CleanHtml) -> TextPart {
        self.quotable.push(Quotable {
            label: label.to_owned(),
            text,
        });
        self
    }
}
