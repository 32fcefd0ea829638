//! Facts: the lines of an apparatus, each with its term in the margin.

use serde::Serialize;

use crate::page::phrases::claims::Stated;
use crate::page::setting::html::CleanHtml;

/// Where the facts of a record stand. What a title says just above them they do not repeat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum FactsPlace {
    /// Directly below the title of the page.
    BelowTitle,
    /// Parted from it by a plate, or under a heading of their own.
    Apart,
}

impl FactsPlace {
    /// The place of the facts on a page with or without a plate.
    pub fn after<T>(plate: Option<&T>) -> FactsPlace {
        match plate {
            Some(_) => FactsPlace::Apart,
            None => FactsPlace::BelowTitle,
        }
    }
}

/// A fact: its term, what the catalogue states, and what others state.
#[derive(Serialize)]
pub(crate) struct Fact {
    /// The term in the margin.
    pub term: CleanHtml,
    /// What the catalogue states, a line each.
    pub lines: Vec<Line>,
    /// What others state.
    pub others: Vec<CleanHtml>,
}

/// A line of a fact, which may be the target of links.
#[derive(Serialize)]
pub(crate) struct Line {
    /// Its fragment; empty where no link leads to it.
    pub id: String,
    /// The text.
    pub text: CleanHtml,
}

impl Fact {
    /// A fact of one line; `None` for an empty text.
    pub fn one(term: &str, text: CleanHtml) -> Option<Fact> {
        Fact::under(CleanHtml::text(term), text)
    }

    /// The same, where the term is not of the catalogue's words: its language may be marked.
    pub fn under(term: CleanHtml, text: CleanHtml) -> Option<Fact> {
        text.some().map(|text| Fact {
            term,
            lines: vec![Line {
                id: String::new(),
                text,
            }],
            others: Vec::new(),
        })
    }

    /// A fact of several lines; `None` for no line.
    pub fn of_lines(term: &str, lines: Vec<CleanHtml>) -> Option<Fact> {
        let line = |text| Line {
            id: String::new(),
            text,
        };
        (!lines.is_empty()).then(|| Fact {
            term: CleanHtml::text(term),
            lines: lines.into_iter().map(line).collect(),
            others: Vec::new(),
        })
    }

    /// A fact from statements; `None` where there are none.
    pub fn stated(term: &str, stated: Option<Stated>) -> Option<Fact> {
        stated.map(|stated| Fact {
            term: CleanHtml::text(term),
            lines: vec![Line {
                id: String::new(),
                text: stated.value,
            }],
            others: stated.others,
        })
    }
}
