//! Lists: a heading in the margin and a line for each entry, as in an index.

use serde::Serialize;

use super::wall::{Hung, Wall};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::order::Collator;

/// One part of an index.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct List {
    /// The fragment of the heading, where links lead to it.
    pub id: Option<String>,
    /// The heading.
    pub heading: CleanHtml,
    /// A note below the heading.
    pub note: Option<CleanHtml>,
    /// The lines.
    pub lines: Vec<CleanHtml>,
    /// Pictures side by side, in place of lines.
    pub wall: Option<Wall>,
}

impl List {
    /// A list under a heading.
    pub fn new(heading: CleanHtml, lines: Vec<CleanHtml>) -> List {
        List {
            id: None,
            heading,
            note: None,
            lines,
            wall: None,
        }
    }

    /// Pictures under a heading.
    pub fn of_wall(heading: CleanHtml, prints: Vec<Hung>) -> List {
        List {
            wall: Wall::of(prints),
            ..List::new(heading, Vec::new())
        }
    }

    /// The same with a fragment.
    pub fn at(mut self, id: Option<String>) -> List {
        self.id = id;
        self
    }

    /// Whether it has lines.
    pub fn has_lines(&self) -> bool {
        !self.lines.is_empty()
    }
}

/// Lines grouped by initial letter. Each comes with the text it is sorted by, numbers in it as numbers.
///
/// Letters are those that the catalogue's language distinguishes when it sorts: German files Ö under O,
/// Danish puts Å after Z.
pub(crate) fn by_letter(here: &Here<'_>, mut entries: Vec<(String, CleanHtml)>) -> Vec<List> {
    let collator = Collator::of_numbers(here.language());
    let letters = Collator::of_letters(here.language());
    entries.sort_by(|a, b| collator.compare(&a.0, &b.0).then_with(|| a.cmp(b)));
    let mut lists: Vec<(String, List)> = Vec::new();
    for (sorted, line) in entries {
        let letter = first_letter(&sorted);
        match lists.last_mut() {
            Some((last, list)) if letters.compare(last, &letter).is_eq() => list.lines.push(line),
            _ => {
                let list = List::new(CleanHtml::text(&letter), vec![line]);
                lists.push((letter, list));
            }
        }
    }
    lists.into_iter().map(|(_, list)| list).collect()
}

/// The first letter of a text as a capital; `0–9` for a figure.
fn first_letter(text: &str) -> String {
    match text.chars().find(|c| c.is_alphanumeric()) {
        Some(c) if c.is_numeric() => "0–9".to_owned(),
        Some(c) => c.to_uppercase().collect(),
        None => "–".to_owned(),
    }
}
