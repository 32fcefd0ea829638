//! Places: where in which record a value stands.
//!
//! Every value that a finding may point at carries its [`Place`]. Places are byte ranges; lines and
//! columns are computed when a finding is printed ([`Sources::position`]).

use std::sync::{Arc, OnceLock};

/// A file of the catalogue, by its place in [`Sources`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(u32);

/// A stretch of a file, in bytes from its start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// The first byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Place {
    /// The bytes `span` of `file`. Files beyond 4 GiB are refused long before.
    #[must_use]
    pub fn new(file: FileId, span: std::ops::Range<usize>) -> Place {
        let bound = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        Place {
            file,
            start: bound(span.start),
            end: bound(span.end),
        }
    }

    /// The start of a file, for findings about the file as a whole.
    #[must_use]
    pub fn start_of(file: FileId) -> Place {
        Place {
            file,
            start: 0,
            end: 0,
        }
    }

    /// The range in bytes.
    #[must_use]
    pub fn span(self) -> std::ops::Range<usize> {
        self.start as usize..self.end as usize
    }
}

/// A value and where it was written. Two are equal where their values are equal, whatever their
/// places.
#[derive(Clone, Debug)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Where it is recorded.
    pub place: Place,
}

impl<T> Placed<T> {
    /// `value`, written at `place`.
    pub fn new(value: T, place: Place) -> Placed<T> {
        Placed { value, place }
    }

    /// The value turned into another, at the same place.
    pub fn map<U>(self, f: impl FnOnce(T) -> U) -> Placed<U> {
        Placed {
            value: f(self.value),
            place: self.place,
        }
    }
}

impl<T: PartialEq> PartialEq for Placed<T> {
    fn eq(&self, other: &Placed<T>) -> bool {
        self.value == other.value
    }
}

impl<T> std::ops::Deref for Placed<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

/// A line and column, both from 1; the column counts characters, as an editor shows them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Position {
    /// The line.
    pub line: usize,
    /// The column, in characters.
    pub column: usize,
}

#[derive(Clone, Debug)]
struct SourceFile {
    path: String,
    text: Arc<str>,
    /// Where each line begins; computed when first needed, because few files have findings.
    lines: Arc<OnceLock<Vec<u32>>>,
}

/// The files of a catalogue: their paths relative to it (with `/`), and the text of those that
/// are text.
#[derive(Clone, Debug, Default)]
pub struct Sources {
    files: Vec<SourceFile>,
}

impl Sources {
    /// Adds a file. Where files are added in the order of their paths, file ids sort as paths do.
    pub fn add(&mut self, path: impl Into<String>, text: impl Into<Arc<str>>) -> FileId {
        let id = FileId(u32::try_from(self.files.len()).unwrap_or(u32::MAX));
        self.files.push(SourceFile {
            path: path.into(),
            text: text.into(),
            lines: Arc::default(),
        });
        id
    }

    /// Every file with its path relative to the catalogue.
    pub fn paths(&self) -> impl Iterator<Item = (FileId, &str)> {
        let ids = (0..).map(FileId);
        ids.zip(self.files.iter().map(|file| file.path.as_str()))
    }

    /// The path of a file relative to the catalogue; empty for a file that was never added.
    #[must_use]
    pub fn path(&self, file: FileId) -> &str {
        self.files.get(file.0 as usize).map_or("", |f| &f.path)
    }

    /// The text of a file; empty for pictures and for a file that was never added.
    #[must_use]
    pub fn text(&self, file: FileId) -> &str {
        self.files.get(file.0 as usize).map_or("", |f| &f.text)
    }

    /// Line and column of the start of `place`.
    #[must_use]
    pub fn position(&self, place: Place) -> Position {
        let text = self.text(place.file);
        let start = border(text, place.start as usize);
        let (line, line_start) = self.line_at(place.file, start);
        let before = text.get(line_start..start).unwrap_or_default();
        Position {
            line,
            column: before.chars().count() + 1,
        }
    }

    /// The line that contains byte `at` of a file, from 1, and its first byte.
    #[must_use]
    pub fn line_at(&self, file: FileId, at: usize) -> (usize, usize) {
        let Some(file) = self.files.get(file.0 as usize) else {
            return (1, 0);
        };
        let starts = file.lines.get_or_init(|| {
            let ends = file
                .text
                .bytes()
                .zip(1..)
                .filter(|(byte, _)| *byte == b'\n');
            std::iter::once(0)
                .chain(ends.map(|(_, next)| next))
                .collect()
        });
        let line = starts.partition_point(|start| *start as usize <= at).max(1);
        let start = starts.get(line - 1).map_or(0, |start| *start as usize);
        (line, start)
    }
}

/// The last character border of a text at or before a byte.
fn border(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_not_bytes() {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", "x = 1\ntitle = \"Ōsaka\" # note");
        let at = |needle: &str| {
            let start = sources.text(file).find(needle).unwrap();
            sources.position(Place::new(file, start..start + 1))
        };
        assert_eq!(at("x"), Position { line: 1, column: 1 });
        assert_eq!(
            at("# note"),
            Position {
                line: 2,
                column: 17
            }
        );
    }

    #[test]
    fn a_place_past_the_end_is_the_end() {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", "ab");
        assert_eq!(
            sources.position(Place::new(file, 9..12)),
            Position { line: 1, column: 3 }
        );
    }
}
