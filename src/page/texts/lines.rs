//! A transcription beside its translations: line by line where all of them have the same lines, else part by part, else
//! as wholes.
//!
//! In: Markdown texts. A line of a paragraph is a line of the document. Paragraphs with equally many lines are set line
//! beside line; parts of other forms (headings, tables, lists, paragraphs whose lines differ in number) are set part
//! beside part; texts with unequal numbers of parts, or with footnotes, are set whole.

use std::ops::Range;

use pulldown_cmark::{Event, Parser, Tag};
use serde::Serialize;

use super::markdown::{self, Placement};
use crate::model::note::MARKDOWN;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// How often a line is numbered: every fifth, as in editions of texts.
const NUMBERED: usize = 5;

/// A text in one language.
pub(crate) struct TextColumn<'t> {
    /// Its heading: "Transcription", "English".
    pub(crate) heading: String,
    /// Its language, where that is one and is known.
    pub(crate) language: Option<&'t str>,
    /// The Markdown.
    pub(crate) text: &'t str,
}

/// Texts beside each other.
#[derive(Debug, Serialize)]
pub(crate) struct Parallel {
    heads: Vec<String>,
    rows: Vec<Row>,
}

/// A line, or a part, in every language.
#[derive(Debug, Serialize)]
struct Row {
    /// The number of the line; 0 for a part that is not set by lines.
    line: usize,
    /// Whether the number is printed.
    is_numbered: bool,
    /// Whether it begins a part.
    begins: bool,
    cells: Vec<CleanHtml>,
}

/// A part of a text.
#[derive(Clone, Debug, PartialEq)]
enum Part<'t> {
    /// A paragraph, by lines.
    Lines(Vec<&'t str>),
    /// A part of another form.
    Whole(&'t str),
}

/// The texts beside each other; `None` where none has content.
pub(crate) fn parallel(here: &Here<'_>, columns: &[TextColumn<'_>]) -> Option<Parallel> {
    let texts: Vec<String> = columns
        .iter()
        .map(|column| numbers_as_written(column.text))
        .collect();
    let parts: Vec<Vec<Part<'_>>> = texts.iter().map(|text| parts(text)).collect();
    let mut rows = Vec::new();
    let first = parts.first()?;
    let has_notes = columns.iter().any(|column| column.text.contains("[^"));
    if has_notes || parts.iter().any(|other| other.len() != first.len()) {
        let cells = columns
            .iter()
            .zip(&texts)
            .map(|(column, text)| block(here, column, text));
        rows.push(whole(cells.collect()));
    } else {
        let mut line = 0;
        for at in 0..first.len() {
            let beside: Vec<&Part<'_>> = parts.iter().filter_map(|parts| parts.get(at)).collect();
            if let Some(lines) = lines_of(&beside) {
                for (at, texts) in lines.iter().enumerate() {
                    line += 1;
                    let cells = columns.iter().zip(texts);
                    rows.push(Row {
                        line,
                        is_numbered: line.is_multiple_of(NUMBERED),
                        begins: at == 0,
                        cells: cells
                            .map(|(column, text)| one_line(here, column, text))
                            .collect(),
                    });
                }
            } else {
                let cells = columns.iter().zip(&beside);
                let cells = cells.map(|(column, part)| block(here, column, &part.source()));
                rows.push(whole(cells.collect()));
            }
        }
    }
    rows.retain(|row| row.cells.iter().any(|cell| !cell.is_empty()));
    (!rows.is_empty()).then(|| Parallel {
        heads: columns
            .iter()
            .map(|column| column.heading.clone())
            .collect(),
        rows,
    })
}

fn whole(cells: Vec<CleanHtml>) -> Row {
    Row {
        line: 0,
        is_numbered: false,
        begins: true,
        cells,
    }
}

/// The lines of paragraphs that have equally many: for each line its text in each language.
fn lines_of<'t>(beside: &[&Part<'t>]) -> Option<Vec<Vec<&'t str>>> {
    let all: Option<Vec<&Vec<&'t str>>> = beside
        .iter()
        .map(|part| match part {
            Part::Lines(lines) => Some(lines),
            Part::Whole(_) => None,
        })
        .collect();
    let all = all?;
    let count = all.first()?.len();
    if all.iter().any(|lines| lines.len() != count) {
        return None;
    }
    let lines = (0..count).map(|at| {
        all.iter()
            .filter_map(|lines| lines.get(at).copied())
            .collect()
    });
    Some(lines.collect())
}

impl Part<'_> {
    /// Its Markdown; the lines of a paragraph stay lines.
    fn source(&self) -> String {
        match self {
            Part::Lines(lines) => lines.join("\\\n"),
            Part::Whole(text) => (*text).to_owned(),
        }
    }
}

/// The text with the numbers that begin lines as words: a line that begins with a date ("12. May") would else begin a list.
pub(super) fn numbers_as_written(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for line in text.split_inclusive('\n') {
        let start = line.trim_start();
        let figures = start.trim_start_matches(|c: char| c.is_ascii_digit());
        let begins = line.len() - figures.len();
        let is_number = figures.len() < start.len() && figures.starts_with(['.', ')']);
        match line.get(..begins).filter(|_| is_number) {
            Some(number) => {
                out.push_str(number);
                out.push('\\');
                out.push_str(figures);
            }
            None => out.push_str(line),
        }
    }
    out
}

/// The parts of a text, in its order.
fn parts(text: &str) -> Vec<Part<'_>> {
    let mut parts = Vec::new();
    let mut depth = 0_usize;
    for (event, range) in Parser::new_ext(text, MARKDOWN).into_offset_iter() {
        match event {
            Event::Start(tag) => {
                if depth == 0 {
                    parts.push(part(text, &tag, range));
                }
                depth += 1;
            }
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    parts
}

fn part<'t>(text: &'t str, tag: &Tag<'_>, range: Range<usize>) -> Part<'t> {
    let source = text.get(range).unwrap_or_default();
    match tag {
        Tag::Paragraph => Part::Lines(
            source
                .trim()
                .lines()
                .map(|line| line.trim().trim_end_matches('\\').trim_end())
                .collect(),
        ),
        _ => Part::Whole(source),
    }
}

/// A line as HTML. A line that is more than words of a paragraph when it stands alone ("12. May") is given as written.
fn one_line(here: &Here<'_>, column: &TextColumn<'_>, line: &str) -> CleanHtml {
    let alone = parts(line);
    let html = match alone.as_slice() {
        [Part::Lines(_)] => {
            let html = markdown::html(line, here, Placement::Part);
            let inner = html.as_str().trim();
            let inner = inner
                .strip_prefix("<p>")
                .and_then(|text| text.strip_suffix("</p>"));
            inner.map_or_else(
                || CleanHtml::text(line),
                |inner| CleanHtml::trusted(inner.to_owned()),
            )
        }
        _ => CleanHtml::text(line),
    };
    here.element_in_language("p", &html, column.language)
}

fn block(here: &Here<'_>, column: &TextColumn<'_>, text: &str) -> CleanHtml {
    match markdown::html(text, here, Placement::Part).some() {
        Some(html) => here.element_in_language("div", &html, column.language),
        None => CleanHtml::empty(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_cut_into_paragraphs_by_lines_and_other_parts() {
        let text = "# Leaf 3\n\n12 May.\\\nForty sheets\nfor the shop.\n\n| a | b |\n|---|---|\n| 1 | 2 |\n\n- one\n- two\n";
        let found = parts(text);
        assert_eq!(found.len(), 4);
        assert_eq!(
            found[1],
            Part::Lines(vec!["12 May.", "Forty sheets", "for the shop."])
        );
        assert!(
            [0, 2, 3]
                .iter()
                .all(|at| matches!(found[*at], Part::Whole(_)))
        );
    }

    #[test]
    fn a_line_that_begins_with_a_date_begins_no_list() {
        let text = numbers_as_written("12. May.\n1931) Paid.\n");
        assert_eq!(text, "12\\. May.\n1931\\) Paid.\n");
        assert!(matches!(&parts(&text)[..], [Part::Lines(lines)] if lines.len() == 2));
    }

    #[test]
    fn only_paragraphs_with_equally_many_lines_are_set_by_lines() {
        let of = |text| parts(text).remove(0);
        let (two, same, one, list) = (of("a\nb"), of("c\nd"), of("e"), of("- f"));
        assert_eq!(
            lines_of(&[&two, &same]),
            Some(vec![vec!["a", "c"], vec!["b", "d"]])
        );
        assert_eq!(lines_of(&[&two, &one]), None);
        assert_eq!(lines_of(&[&one, &list]), None);
    }
}
