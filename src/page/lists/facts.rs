//! Facts: the lines of an apparatus, each with its term in the margin.

use serde::Serialize;

use crate::page::phrases::claims::Stated;
use crate::page::setting::html::CleanHtml;

/// One line of the apparatus: what it is, what is known of it, what others say.
#[derive(Serialize)]
pub(crate) struct Fact {
    /// What it is, in the margin.
    pub term: String,
    /// What is known, one line each.
    pub lines: Vec<Line>,
    /// What others say.
    pub others: Vec<CleanHtml>,
}

/// A line of a fact, which may be led to.
#[derive(Serialize)]
pub(crate) struct Line {
    /// Its fragment; empty where nothing leads to it.
    pub id: String,
    /// What it says.
    pub text: CleanHtml,
}

impl Fact {
    /// A fact of one line; nothing where there is nothing to say.
    pub fn one(term: &str, text: CleanHtml) -> Option<Fact> {
        text.some().map(|text| Fact {
            term: term.to_owned(),
            lines: vec![Line {
                id: String::new(),
                text,
            }],
            others: Vec::new(),
        })
    }

    /// A fact of several lines that nothing leads to; nothing where there are none.
    pub fn of_lines(term: &str, lines: Vec<CleanHtml>) -> Option<Fact> {
        let line = |text| Line {
            id: String::new(),
            text,
        };
        (!lines.is_empty()).then(|| Fact {
            term: term.to_owned(),
            lines: lines.into_iter().map(line).collect(),
            others: Vec::new(),
        })
    }

    /// A fact as it is stated.
    pub fn stated(term: &str, stated: Option<Stated>) -> Option<Fact> {
        stated.map(|stated| Fact {
            term: term.to_owned(),
            lines: vec![Line {
                id: String::new(),
                text: stated.value,
            }],
            others: stated.others,
        })
    }
}
