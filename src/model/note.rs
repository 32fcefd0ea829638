//! Long text: Markdown beside a record, or a page of its own.

use super::place::FileId;

/// A Markdown file, as written. Its links point at records (`design:14`, `lit:KEY`).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// The file it was read from.
    pub file: FileId,
    /// The Markdown.
    pub text: String,
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
