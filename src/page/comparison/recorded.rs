//! The page of a recorded comparison: two to four impressions side by side, of one design or of several, then what is
//! recorded of the sheets, and their observations point by point, those that differ first.

use serde::Serialize;

use super::columns::{Column, column};
use super::links;
use super::observations::Observations;
use super::overlay;
use crate::model::design::{Comparison, Design};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::words::Argument;

#[derive(Serialize)]
struct View {
    /// The page is as wide as the screen.
    wall: bool,
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: CleanHtml,
    columns: Vec<Column>,
    heads: Vec<CleanHtml>,
    verdict: String,
    observations: Observations,
    /// The data of the script.
    data: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, comparison: &Comparison) -> Leaf {
    let words = here.words();
    let sheets = links::sheets_of(here, comparison);
    let observations = Observations::of(here, &sheets).differing_first();
    let view = View {
        wall: true,
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: words.count("impressions-compared", sheets.len()),
        brief: CleanHtml::text(comparison.why.as_deref().unwrap_or_default()),
        columns: sheets.iter().map(|sheet| column(here, *sheet)).collect(),
        heads: sheets
            .iter()
            .map(|(_, sheet)| here.impression_by(&sheet.key))
            .collect(),
        verdict: observations.in_words(here),
        data: overlay::data(here, &sheets, &observations, Vec::new()),
        observations,
    };
    let keys: Vec<String> = sheets
        .iter()
        .map(|(_, sheet)| here.record_number(&sheet.key))
        .collect();
    let keys = keys.join(", ");
    let title = words.with("title-compared", &[("keys", Argument::Text(&keys))]);
    let siglum = &here.public().settings.siglum.value;
    let described = match &comparison.why {
        Some(why) => format!("{title}. {why}"),
        None => title.clone(),
    };
    Leaf::new(here.address, title, "pages/comparison.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {keys}"))
}
