//! The documents by date, then by kind.

use serde::Serialize;

use crate::model::document::Document;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::lists::list::List;
use crate::page::phrases::dates;
use crate::page::phrases::document_names::{date, kept};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::study::order::Collator;
use crate::study::tellings::{day, in_order};

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    years: Vec<Year>,
    kinds: Vec<List>,
}

/// The documents of a year.
#[derive(Serialize)]
struct Year {
    when: String,
    lines: Vec<CleanHtml>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = words.word("documents").to_owned();
    let documents = in_order(here.public());
    let kinds = kinds(here, &documents);
    let view = View {
        brief: words.word("documents-brief").to_owned(),
        years: years(here, &documents),
        // A list of one kind would repeat the list by date.
        kinds: if kinds.len() > 1 { kinds } else { Vec::new() },
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/documents.html", &view)
}

fn years(here: &Here<'_>, documents: &[&Document]) -> Vec<Year> {
    let mut years: Vec<Year> = Vec::new();
    for document in documents {
        let when = match (day(document), &document.date) {
            (Some(day), _) if day.year > 0 => day.year.to_string(),
            (_, Some(date)) => dates::once(date, here.words()),
            (_, None) => here.words().word("date-unknown").to_owned(),
        };
        if years.last().is_none_or(|year| year.when != when) {
            let lines = Vec::new();
            years.push(Year { when, lines });
        }
        if let Some(year) = years.last_mut() {
            let line = line(here, document, &year.when);
            year.lines.push(line);
        }
    }
    years
}

/// "Letter about paper, letter, 4 March 1931: Oryna Perelaz to Viktor Halden. Harbour Museum, Northport, MS 14".
fn line(here: &Here<'_>, document: &Document, year: &str) -> CleanHtml {
    let link = here.link(
        &Address::Document(document.key.clone()),
        &here.document_name(document),
    );
    let date = date(here, document);
    let date = if date.plain() == year {
        CleanHtml::empty()
    } else {
        date
    };
    // A document without a title is named by its kind.
    let kind = document.kind.as_ref().filter(|_| document.title.is_some());
    let kind = kind.map_or_else(String::new, |kind| {
        here.term(Vocabulary::Documents, kind.as_str())
    });
    let known = CleanHtml::join([&CleanHtml::text(&kind), &date], ", ");
    let known = CleanHtml::join([&known, &kept(here, document)], "; ");
    if known.is_empty() {
        link
    } else {
        link.then(", ").and(&CleanHtml::span("quiet", &known))
    }
}

/// The documents of each kind; those without a kind last.
fn kinds(here: &Here<'_>, documents: &[&Document]) -> Vec<List> {
    let collator = Collator::of_words(here.language());
    let mut named: Vec<(Option<String>, &Document)> = documents
        .iter()
        .map(|document| {
            let kind = document.kind.as_ref();
            let kind = kind.map(|kind| here.term(Vocabulary::Documents, kind.as_str()));
            (kind, *document)
        })
        .collect();
    // The sort is stable: the documents of a kind stay in the order of their dates.
    named.sort_by(|(a, _), (b, _)| {
        let by_name = || match (a, b) {
            (Some(a), Some(b)) => collator.compare(a, b),
            _ => std::cmp::Ordering::Equal,
        };
        a.is_none().cmp(&b.is_none()).then_with(by_name)
    });
    let of_kind = |chunk: &[(Option<String>, &Document)]| {
        let (kind, _) = chunk.first()?;
        let other = || here.words().word("documents-other").to_owned();
        let heading = CleanHtml::text(&kind.clone().unwrap_or_else(other));
        let lines = chunk
            .iter()
            .map(|(_, document)| here.document(&document.key));
        Some(List::new(capitalised(&heading), lines.collect()))
    };
    named
        .chunk_by(|a, b| a.0 == b.0)
        .filter_map(of_kind)
        .collect()
}
