//! The page on which readers compare impressions of their choice.
//!
//! Without a script it shows the recorded comparisons, the pictures of all impressions in a row, and
//! the observations of all of them. With the script (`assets/compare.js`) the reader chooses two to four
//! impressions; it overlays their photographs and hides the other columns of the table.

use serde::Serialize;

use super::links::{self, comparable};
use super::observations::Observations;
use super::overlay;
use super::recorded;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::pictures::Plate;
use crate::page::setting::words::Argument;

#[derive(Serialize)]
struct View {
    /// The page is as wide as the screen.
    wall: bool,
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    /// The comparisons of the record.
    recorded: Vec<CleanHtml>,
    choices: Vec<Choice>,
    plates: Vec<Plate>,
    heads: Vec<CleanHtml>,
    observations: Observations,
    data: CleanHtml,
}

/// An impression that can be chosen.
#[derive(Serialize)]
struct Choice {
    /// In addresses.
    key: String,
    /// As readers cite it; with the record where another one of the same sheet can be chosen too.
    number: String,
    about: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let sheets: Vec<&Impression> = comparable(here.book, design).collect();
    let observations = Observations::of(here, design, &sheets);
    let rows = observations.facts.iter().chain(&observations.rows);
    let title = words.word("comparison-chosen").to_owned();
    let view = View {
        wall: true,
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: title.clone(),
        recorded: links::recorded(here, design),
        choices: sheets
            .iter()
            .map(|sheet| choice(here, design, sheet))
            .collect(),
        plates: sheets
            .iter()
            .map(|sheet| recorded::plate(here, design, sheet))
            .collect(),
        heads: sheets.iter().map(|i| here.impression_by(&i.key)).collect(),
        data: overlay::data(here, design, &sheets, rows.map(|row| &row.data).collect()),
        observations,
    };
    let name = here.design_name(design).plain();
    let leaf_title = words.with("comparison-of", &[("design", Argument::Text(&name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(
        here.address,
        leaf_title,
        "pages/chosen-comparison.html",
        &view,
    )
    .cited_as(format!("{siglum} {}, {title}", design.number))
}

fn choice(here: &Here<'_>, design: &Design, sheet: &Impression) -> Choice {
    let state = sheet
        .identified
        .as_ref()
        .map_or_else(CleanHtml::empty, |reading| {
            readings::state_alone(here, design, reading)
        });
    let place = CleanHtml::text(&here.whereabouts(sheet));
    Choice {
        key: sheet.key.to_string(),
        number: here.number_by(&sheet.key),
        about: CleanHtml::join([&state, &place], ", "),
    }
}
