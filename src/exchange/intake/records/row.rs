//! A record as a row: texts under paths.
//!
//! Texts of one path stand in one cell, in their order and with "; " between them; one that is there already is not said
//! again. Only where a cell must hold one thing (accession numbers, titles, addresses of pages and pictures) each text has a
//! column of its own: the second is under the path with ` (2)`.

use indexmap::IndexMap;

use super::limits::{NUMBERED, PATHS};

/// Between the texts of a cell.
const BETWEEN: &str = "; ";

/// A record as texts under paths.
#[derive(Debug, Default)]
pub(super) struct Row {
    cells: IndexMap<String, Vec<String>>,
    further: Vec<(String, String)>,
    added: usize,
}

impl Row {
    /// Adds a text under a path.
    pub fn add(&mut self, path: &str, text: &str) {
        if text.is_empty() {
            return;
        }
        self.added += 1;
        if !self.cells.contains_key(path) && self.cells.len() >= PATHS {
            self.add_further(path, text);
            return;
        }
        let texts = self.cells.entry(path.to_owned()).or_default();
        let is_there = texts.iter().take(50).any(|said| said == text);
        if !is_there {
            texts.push(text.to_owned());
        }
    }

    /// Adds a text to a path whose texts have a column each.
    pub fn add_numbered(&mut self, path: &str, text: &str) {
        for number in 1..NUMBERED {
            let numbered = match number {
                1 => path.to_owned(),
                _ => format!("{path} ({number})"),
            };
            match self.cells.get(&numbered) {
                None => return self.add(&numbered, text),
                Some(texts) if texts.iter().any(|said| said == text) => {
                    self.added += 1;
                    return;
                }
                Some(_) => {}
            }
        }
        self.add(&format!("{path} ({NUMBERED})"), text);
    }

    /// Adds what says little by itself to the last column.
    pub fn add_further(&mut self, path: &str, text: &str) {
        self.added += 1;
        let is_there = self
            .further
            .iter()
            .rev()
            .take(50)
            .any(|said| said.0 == path && said.1 == text);
        if !text.is_empty() && !is_there {
            self.further.push((path.to_owned(), text.to_owned()));
        }
    }

    /// How many texts were added so far.
    pub fn added(&self) -> usize {
        self.added
    }

    /// The paths with their cells, in order.
    pub fn cells(&self) -> impl Iterator<Item = (&str, String)> {
        let cells = self.cells.iter();
        cells.map(|(path, texts)| (path.as_str(), texts.join(BETWEEN)))
    }

    /// The paths, in order.
    pub fn paths(&self) -> impl Iterator<Item = &str> {
        self.cells.keys().map(String::as_str)
    }

    /// What says little by itself: paths with their texts.
    pub fn further(&self) -> &[(String, String)] {
        &self.further
    }
}
