//! Goes over a record: what a standard reads out of it, then everything that is left, each text under its path.

use super::limits::{PATH_BYTES, STEP_BYTES};
use super::node::Node;
use super::row::Row;

/// How the records of a standard are read.
pub(super) trait Standard {
    /// What a node adds to the path of what is in it.
    fn step(&self, node: &Node, parent: &Node) -> Step;

    /// Reads a node, before what is in it: composes cells out of several texts, which it takes.
    fn read(&self, node: &Node, place: &Place, row: &mut Row);

    /// Whether texts of a path have a column each, by the path without its language.
    fn is_numbered(&self, path: &str) -> bool;
}

/// What a node adds to the path of what is in it.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Step {
    /// A name; `None` where the path is clear without it.
    pub name: Option<String>,
    /// The language of what is in it.
    pub language: Option<String>,
    /// Its texts say little by themselves and go to the last column.
    pub is_further: bool,
    /// Texts of the record were taken for the name or the language: a heading must tell them.
    pub took: bool,
}

impl Step {
    /// A name.
    pub fn name(name: impl Into<String>) -> Step {
        Step {
            name: Some(name.into()),
            ..Step::default()
        }
    }

    /// Nothing: the path is clear without it.
    pub fn silent() -> Step {
        Step::default()
    }

    /// The language of what is in it.
    pub fn language(language: impl Into<String>) -> Step {
        Step {
            language: Some(language.into()),
            ..Step::default()
        }
    }

    /// A name of what says little by itself.
    pub fn further(name: impl Into<String>) -> Step {
        Step {
            is_further: true,
            ..Step::name(name)
        }
    }
}

/// Where a node stands: its path and the language of what is in it.
#[derive(Clone, Debug, Default)]
pub(super) struct Place {
    path: String,
    language: String,
    is_further: bool,
}

impl Place {
    /// The path, without the language.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The heading of the column of this place: the path, with the language where one is said.
    pub fn heading(&self) -> String {
        with_language(&self.path, &self.language)
    }

    /// The heading of a place below this one.
    pub fn below(&self, name: &str) -> String {
        with_language(&joined(&self.path, name), &self.language)
    }

    fn step(&self, step: Step) -> Place {
        Place {
            path: match step.name {
                Some(name) => joined(&self.path, &name),
                None => self.path.clone(),
            },
            language: step.language.unwrap_or_else(|| self.language.clone()),
            is_further: self.is_further || step.is_further,
        }
    }
}

/// What stands for a thing of which only the kind is said.
const EMPTY: &str = "–";

/// A path with a language behind it.
pub(super) fn with_language(path: &str, language: &str) -> String {
    match language {
        "" => path.to_owned(),
        _ => format!("{path}@{language}"),
    }
}

/// Cuts a text to so many bytes, between letters.
pub(super) fn shorten(text: &mut String, bytes: usize) {
    if text.len() > bytes {
        let end = (0..=bytes).rev().find(|at| text.is_char_boundary(*at));
        text.truncate(end.unwrap_or(0));
    }
}

fn joined(path: &str, name: &str) -> String {
    match path {
        _ if name.is_empty() => path.to_owned(),
        "" => name.to_owned(),
        _ if name.starts_with('@') => format!("{path}{name}"),
        _ => format!("{path}/{name}"),
    }
}

/// A record as a row.
pub(super) fn row(record: &Node, standard: &impl Standard) -> Row {
    let mut row = Row::default();
    let place = Place::default();
    standard.read(record, &place, &mut row);
    below(record, &place, standard, &mut row);
    row
}

fn below(node: &Node, place: &Place, standard: &impl Standard, row: &mut Row) {
    for child in &node.children {
        let outer = place;
        let mut step = standard.step(child, node);
        for said in [&mut step.name, &mut step.language].into_iter().flatten() {
            let is_long = outer.path.len() > PATH_BYTES;
            if (is_long || said.len() > STEP_BYTES) && step.took {
                row.add_further(&outer.path, said);
            }
            shorten(said, if is_long { 0 } else { STEP_BYTES });
        }
        let took = step.took;
        let place = place.step(step);
        if !outer.language.is_empty() && outer.language != place.language {
            // The inner language takes the place of the outer one in the heading.
            row.add_further(&format!("{}@lang", outer.path), &outer.language);
        }
        let before = row.added();
        standard.read(child, &place, row);
        if let Some(text) = child.take() {
            // A text directly in a record has no path of its own.
            let path = if place.path.is_empty() {
                &*child.name
            } else {
                place.path()
            };
            let heading = with_language(path, &place.language);
            if place.is_further {
                row.add_further(&heading, text);
            } else if standard.is_numbered(path) {
                row.add_numbered(&heading, text);
            } else {
                row.add(&heading, text);
            }
        }
        below(child, &place, standard, row);
        if took && row.added() == before {
            // A kind or a language of something without a text would stand in no heading.
            row.add_further(&place.heading(), EMPTY);
        }
    }
}
