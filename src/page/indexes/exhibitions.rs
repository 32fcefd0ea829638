//! Exhibitions, by date.

use serde::Serialize;

use crate::model::exhibition::Exhibition;
use crate::model::occurrence::MentionRole;
use crate::page::lists::wall;
use crate::page::phrases::dates;
use crate::page::phrases::venues::venue;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    entries: Vec<Entry>,
}

#[derive(Serialize)]
struct Entry {
    when: String,
    text: CleanHtml,
    /// Small pictures of prints that were shown.
    pictures: CleanHtml,
}

/// How many pictures stand for an exhibition.
const PICTURES: usize = 6;

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let title = here.words().word("exhibitions").to_owned();
    let view = View {
        title: title.clone(),
        entries: in_order(here).into_iter().map(|e| entry(here, e)).collect(),
    };
    Leaf::new(here.address, title, "pages/exhibitions.html", &view)
}

/// The exhibitions by their first day; undated ones last.
fn in_order<'a>(here: &Here<'a>) -> Vec<&'a Exhibition> {
    let mut exhibitions: Vec<&Exhibition> = here.public().exhibitions.values().collect();
    exhibitions.sort_by_key(|exhibition| {
        let day = exhibition
            .date
            .as_ref()
            .and_then(|date| date.earliest().day());
        (day.is_none(), day, exhibition.key.clone())
    });
    exhibitions
}

fn entry(here: &Here<'_>, exhibition: &Exhibition) -> Entry {
    let mentions = here
        .book
        .studies
        .back_links
        .exhibitions
        .get(&exhibition.key);
    let shown: Vec<_> = mentions
        .into_iter()
        .flatten()
        .filter(|m| m.role == MentionRole::Exhibited)
        .cloned()
        .collect();
    let pictures = wall::row(here, &wall::designs_of(here, &shown, PICTURES));
    let line = CleanHtml::join(
        [&here.exhibition(&exhibition.key), &venue(here, exhibition)],
        ", ",
    );
    let shown = match shown.len() {
        0 => CleanHtml::empty(),
        n => CleanHtml::text(" ").and(&CleanHtml::span(
            "count",
            &CleanHtml::text(&here.words().count("count-impressions", n)),
        )),
    };
    Entry {
        when: exhibition.date.as_ref().map_or_else(
            || here.words().word("date-unknown").to_owned(),
            |date| year(here, date),
        ),
        text: line.and(&shown),
        pictures,
    }
}

/// The year of an exhibition within one year, else its dates.
fn year(here: &Here<'_>, date: &crate::model::edtf::Date) -> String {
    let year = |edge: crate::model::edtf::Edge| edge.day().map(|day| day.year);
    match (year(date.earliest()), year(date.latest())) {
        (Some(a), Some(b)) if a == b && !date.is_loose() => a.to_string(),
        (Some(a), Some(b)) if !date.is_loose() => format!("{a}–{b}"),
        _ => dates::throughout(date, here.words()),
    }
}
