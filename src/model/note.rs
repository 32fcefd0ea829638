//! Long text: Markdown beside a record, or a page of its own.

use pulldown_cmark::{Options, Parser};

use super::place::FileId;

/// The Markdown of texts: CommonMark with these extensions. The check of links and the pages use the
/// same options, so both read a text alike.
pub const MARKDOWN: Options = Options::ENABLE_TABLES
    .union(Options::ENABLE_FOOTNOTES)
    .union(Options::ENABLE_STRIKETHROUGH)
    .union(Options::ENABLE_SMART_PUNCTUATION)
    .union(Options::ENABLE_DEFINITION_LIST);

/// A Markdown file, as written. Its links point at records (`design:14`, `lit:KEY`).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// The file it was read from.
    pub file: FileId,
    /// The Markdown.
    pub text: String,
}

impl Note {
    /// Its Markdown, read with [`MARKDOWN`].
    #[must_use]
    pub fn parser(&self) -> Parser<'_> {
        Parser::new_ext(&self.text, MARKDOWN)
    }
}

/// A page of the catalogue's own: introduction, principles, an essay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// Its key: the file's stem.
    pub key: super::key::Key,
    /// Its title: its first heading.
    pub title: String,
    /// Its text, heading included.
    pub note: Note,
}
