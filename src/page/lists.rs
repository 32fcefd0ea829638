//! Lists: a heading in the margin and a line each, as indexes are set.

use serde::Serialize;

use super::address::{Address, Overview};
use super::book::Here;
use super::dates;
use super::html::CleanHtml;
use super::words::Given;
use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::study::census::Sheets;
use crate::study::order::Collator;

/// One part of an index.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct List {
    /// What links lead to; the heading's.
    pub id: Option<String>,
    /// The heading.
    pub heading: CleanHtml,
    /// What the heading is explained by.
    pub note: Option<CleanHtml>,
    /// The lines.
    pub lines: Vec<CleanHtml>,
}

impl List {
    /// A list under a heading.
    pub fn new(heading: CleanHtml, lines: Vec<CleanHtml>) -> List {
        List {
            id: None,
            heading,
            note: None,
            lines,
        }
    }

    /// The same, so that links can lead to it.
    pub fn at(mut self, id: Option<String>) -> List {
        self.id = id;
        self
    }

    /// Whether there is a line in it.
    pub fn has_lines(&self) -> bool {
        !self.lines.is_empty()
    }
}

/// Lines by the letter they begin with. Each comes with the text it is sorted under.
///
/// Letters are those that the catalogue's language tells apart when it sorts: German files Ö under
/// O, Danish puts Å after Z.
pub(super) fn by_letter(here: &Here<'_>, mut entries: Vec<(String, CleanHtml)>) -> Vec<List> {
    let collator = Collator::of_words(here.language());
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

/// The first letter or figure of a text, as a capital; figures together.
fn first_letter(text: &str) -> String {
    match text.chars().find(|c| c.is_alphanumeric()) {
        Some(c) if c.is_numeric() => "0–9".to_owned(),
        Some(c) => c.to_uppercase().collect(),
        None => "–".to_owned(),
    }
}

impl Here<'_> {
    /// A text at the head of a list, with a link to the cautions behind it.
    pub fn with_cautions(&self, word: &str) -> CleanHtml {
        let words = self.words();
        let to = self.href(&Address::Overview(Overview::Cautions));
        let cautions = CleanHtml::link(&to, &CleanHtml::text(words.word("cautions")));
        CleanHtml::text(words.word(word)).then(" ").and(&cautions)
    }

    /// A number of sheets for a table: "14", or "13–14", in full for those who are read to; "≥13–40"
    /// where the lower end is only a bound.
    pub fn sheets(&self, sheets: Sheets) -> CleanHtml {
        if sheets.is_certain() {
            return CleanHtml::text(&sheets.at_most.to_string());
        }
        let bound = if sheets.exact { "" } else { "≥" };
        let short = format!("{bound}{}–{}", sheets.at_least, sheets.at_most);
        let seen = CleanHtml::element("span", &[("aria-hidden", "true")], &CleanHtml::text(&short));
        let said = CleanHtml::span("unseen", &CleanHtml::text(&self.between(sheets)));
        seen.and(&said)
    }

    /// A number of sheets in words: "14 sheets", "at least 13 and at most 14 sheets".
    pub fn sheets_in_words(&self, sheets: Sheets) -> String {
        if sheets.is_certain() {
            self.words().count("count-sheets", sheets.at_most)
        } else {
            self.words()
                .html(
                    if sheets.exact {
                        "sheets-between"
                    } else {
                        "sheets-not-below"
                    },
                    Some(sheets.at_most),
                    &[("least", &CleanHtml::text(&sheets.at_least.to_string()))],
                )
                .plain()
        }
    }

    fn between(&self, sheets: Sheets) -> String {
        let id = if sheets.exact {
            "between-numbers"
        } else {
            "not-below-numbers"
        };
        self.words().with(
            id,
            &[
                ("least", Given::Text(&sheets.at_least.to_string())),
                ("most", Given::Text(&sheets.at_most.to_string())),
            ],
        )
    }

    /// "as of 15 October 2026", the catalogue's date; nothing where it has none.
    pub fn as_of(&self) -> String {
        self.public()
            .settings
            .dated
            .as_ref()
            .map_or_else(String::new, |dated| {
                let dated = dates::once(dated, self.words());
                self.words().with("as-of", &[("date", Given::Text(&dated))])
            })
    }

    /// The designs that `wanted` chooses, in readers' order.
    pub fn designs_in_order(&self) -> impl Iterator<Item = &Design> {
        let designs = &self.public().designs;
        self.book
            .studies
            .order
            .keys()
            .iter()
            .filter_map(move |key| designs.get(key))
    }

    /// The published impressions, by design in readers' order.
    pub fn impressions_in_order(
        &self,
    ) -> impl Iterator<Item = (&Design, &crate::model::impression::Impression)> {
        self.designs_in_order()
            .flat_map(|d| d.impressions.values().map(move |i| (d, i)))
    }

    /// Handles of impressions, run on: "7.1, 7.2, 8.4".
    pub fn handles<'k>(&self, keys: impl IntoIterator<Item = &'k ImpressionKey>) -> CleanHtml {
        let handles: Vec<CleanHtml> = keys.into_iter().map(|key| self.impression(key)).collect();
        CleanHtml::join(&handles, ", ")
    }

    /// A term in quiet ink.
    pub fn quiet(text: &str) -> CleanHtml {
        if text.is_empty() {
            CleanHtml::empty()
        } else {
            CleanHtml::span("quiet", &CleanHtml::text(text))
        }
    }

    /// A number at the end of a line of an index.
    pub fn counted(number: &CleanHtml) -> CleanHtml {
        CleanHtml::text(" ").and(&CleanHtml::span("count", number))
    }

    /// The date of a design in words; nothing where none is recorded.
    pub fn design_date(&self, design: &Design) -> String {
        design
            .date
            .own()
            .map_or_else(String::new, |date| dates::once(date, self.words()))
    }

    /// "14, *The Last Ferry*, 1927", leading to the design.
    pub fn design_and_date(&self, key: &Key) -> CleanHtml {
        let date = self
            .public()
            .designs
            .get(key)
            .map_or_else(String::new, |d| self.design_date(d));
        CleanHtml::join([&self.design(key), &CleanHtml::text(&date)], ", ")
    }
}
