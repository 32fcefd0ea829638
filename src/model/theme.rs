//! Themes: the files that give a catalogue its look and its words.

use std::borrow::Cow;
use std::collections::BTreeMap;

/// A theme: the built-in one, overridden file by file by the catalogue's own.
///
/// Paths are relative to the theme with `/`: `pages/*.html`, `parts/*.html`, `assets/*`,
/// `words/LANG.ftl`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Theme {
    /// Each file's content, by path.
    pub files: BTreeMap<String, Cow<'static, [u8]>>,
}

impl Theme {
    /// A text file of the theme, where it has one that is UTF-8.
    #[must_use]
    pub fn text(&self, path: &str) -> Option<&str> {
        std::str::from_utf8(self.files.get(path)?).ok()
    }
}
