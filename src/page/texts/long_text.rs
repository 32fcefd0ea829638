//! The longer texts of the theme: a heading and what is said under it.

use serde::Serialize;

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// One part of a text.
#[derive(Serialize)]
pub(crate) struct Said {
    /// The heading's id.
    pub id: String,
    /// The heading.
    pub heading: String,
    /// What is said, a paragraph each.
    pub paragraphs: Vec<CleanHtml>,
    /// A list below it.
    pub items: Vec<String>,
    /// What may be copied as it stands: a label and the text.
    pub quotable: Vec<Quotable>,
}

/// A text to be copied.
#[derive(Serialize)]
pub(crate) struct Quotable {
    /// What it is: "In short".
    pub label: String,
    /// The text.
    pub text: CleanHtml,
}

impl Said {
    /// A part under the word `heading`, saying `text`. A blank line in it begins a paragraph.
    pub fn new(here: &Here<'_>, heading: &str, text: &CleanHtml) -> Said {
        Said {
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

    /// A part under the word `heading`, saying the word `heading-text`.
    pub fn word(here: &Here<'_>, heading: &str) -> Said {
        let text = CleanHtml::text(here.words().word(&format!("{heading}-text")));
        Said::new(here, heading, &text)
    }

    /// The same with something to copy.
    pub fn quoting(mut self, label: &str, text: CleanHtml) -> Said {
        self.quotable.push(Quotable {
            label: label.to_owned(),
            text,
        });
        self
    }
}
