//! An entry in its block, and the places of its parts in the file.

use std::ops::Range;

use biblatex::{RawEntry, Spanned};

use crate::model::place::{FileId, Place};

/// An entry, with the start of its block. The entry's spans count from there.
#[derive(Clone, Copy)]
pub(super) struct Entry<'p, 't> {
    pub(super) start: usize,
    pub(super) raw: &'p Spanned<RawEntry<'t>>,
}

impl Entry<'_, '_> {
    /// Where the key stands in the file.
    pub(super) fn key_place(&self, file: FileId) -> Place {
        Place::new(file, shifted(&self.raw.v.key.span, self.start))
    }
}

/// Converts a span of a block to a span of the file; the block begins `by` bytes into the file.
pub(super) fn shifted(span: &Range<usize>, by: usize) -> Range<usize> {
    span.start + by..span.end + by
}

/// The span; an empty one is widened to the character at its place, so that a report can underline
/// it.
pub(super) fn visible(text: &str, span: Range<usize>) -> Range<usize> {
    if span.start < span.end {
        return span;
    }
    let width = text
        .get(span.start..)
        .and_then(|rest| rest.chars().next())
        .map_or(0, char::len_utf8);
    span.start..span.start + width
}
