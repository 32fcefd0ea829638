//! Cuts a BibTeX file into blocks of one entry each, so that a broken entry hides no other.

use biblatex::{ParseErrorKind, RawBibliography};

use super::entry::{shifted, visible};
use super::words::words_for_syntax;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::{FileId, Place};

/// A part of the file that holds one `@…{…}`, with its start.
pub(super) struct Block<'t> {
    start: usize,
    text: &'t str,
}

/// A block that could be parsed.
pub(super) struct Parsed<'t> {
    /// Where the block begins; spans count from there.
    pub(super) start: usize,
    /// The parsed block.
    pub(super) raw: RawBibliography<'t>,
}

/// Cuts the file where a line begins with `@`. A file that can be parsed as a whole is one block, so
/// it is not cut at an `@` that begins a line inside a field.
pub(super) fn blocks(text: &str) -> Vec<Block<'_>> {
    if RawBibliography::parse(text).is_ok() {
        return vec![Block { start: 0, text }];
    }
    let mut starts = vec![0];
    let mut line_start = 0;
    for line in text.split_inclusive('\n') {
        if line_start > 0 && line.trim_start().starts_with('@') {
            starts.push(line_start);
        }
        line_start += line.len();
    }
    let ends = starts.iter().skip(1).copied().chain([text.len()]);
    starts
        .iter()
        .zip(ends)
        .map(|(start, end)| Block {
            start: *start,
            text: text.get(*start..end).unwrap_or_default(),
        })
        .collect()
}

/// The blocks that can be parsed; the others are reported.
pub(super) fn parse_blocks<'t>(
    blocks: &[Block<'t>],
    file: FileId,
    findings: &mut Vec<Finding>,
) -> Vec<Parsed<'t>> {
    let mut parsed = Vec::new();
    for block in blocks {
        match RawBibliography::parse(block.text) {
            Ok(raw) => parsed.push(Parsed {
                start: block.start,
                raw,
            }),
            Err(error) => {
                // The parser reports a missing brace at the end of the block, where there is no
                // text to underline; the entry's first line is underlined instead.
                let indent = block.text.len() - block.text.trim_start().len();
                let first_line = indent
                    ..indent
                        + block
                            .text
                            .trim_start()
                            .lines()
                            .next()
                            .unwrap_or_default()
                            .trim_end()
                            .len();
                let span = if error.kind == ParseErrorKind::UnexpectedEof {
                    first_line
                } else {
                    visible(block.text, error.span)
                };
                let (message, help) = words_for_syntax(&error.kind);
                let place = Place::new(file, shifted(&span, block.start));
                findings.push(Finding::new(Code::BibtexSyntax, place, message).help(help));
            }
        }
    }
    parsed
}
