//! The pages on which readers compare sheets of their choice: those of a design, those that bear a mark, those with a
//! watermark.
//!
//! Without a script such a page shows the recorded comparisons, the pictures of all sheets in a row, and what is
//! recorded of all of them. With the script (`assets/compare.js`) the reader chooses two to four sheets; it shows and
//! overlays their photographs and hides the other columns of the table.

use serde::Serialize;

use super::columns::{Column, column};
use super::groups::{self, MOST};
use super::links::{self, comparable};
use super::observations::Observations;
use super::overlay;
use super::sheets::ComparedSheet;
use crate::model::design::Design;
use crate::page::phrases::readings;
use crate::page::setting::address::{Address, ComparedBy, Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::words::Argument;

#[derive(Serialize)]
struct View {
    /// The page is as wide as the screen.
    wall: bool,
    /// The number of the design; empty where the sheets are of several.
    number: String,
    number_class: &'static str,
    /// The page from which the reader comes.
    above: CleanHtml,
    title: String,
    /// That not all sheets can be chosen.
    brief: String,
    /// The comparisons of the record.
    recorded: Vec<CleanHtml>,
    choices: Vec<Choice>,
    columns: Vec<Column>,
    heads: Vec<CleanHtml>,
    observations: Observations,
    data: CleanHtml,
}

/// A sheet that can be chosen.
#[derive(Serialize)]
struct Choice {
    /// In addresses.
    key: String,
    /// As readers cite it; with the record where another one of the same sheet can be chosen too.
    number: String,
    about: CleanHtml,
}

/// The page of a design.
pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let sheets: Vec<ComparedSheet<'_>> = comparable(here.book, design)
        .map(|sheet| (design, sheet))
        .collect();
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        above: here.design(&design.key),
        recorded: links::recorded(here, design),
        ..view(here, &sheets)
    };
    let name = here.design_name(design).plain();
    let cited = format!("{}, {}", design.number, view.title);
    leaf(here, &name, &view, &cited)
}

/// The page of sheets of several designs.
pub(crate) fn of_group(here: &Here<'_>, by: &ComparedBy) -> Leaf {
    let words = here.words();
    let all = groups::sheets(here.book, by);
    let sheets = all.get(..MOST).unwrap_or(&all);
    let marks = Address::Overview(Overview::Marks);
    let above = match by {
        ComparedBy::Mark(key) => here.public().marks.get(key).map(|mark| {
            let name = capitalised(&here.mark_name(mark));
            here.link(&Address::Mark(key.clone()), &name)
        }),
        ComparedBy::Watermark => {
            let name = CleanHtml::text(words.word("marks-watermark"));
            let href = here.href_part(&marks, Fragment::Watermark);
            Some(CleanHtml::link(&href, &name))
        }
    };
    let above = above.unwrap_or_default();
    let view = View {
        brief: if sheets.len() < all.len() {
            let shown = sheets.len().to_string();
            words.with(
                "compared-of-all",
                &[
                    ("shown", Argument::Text(&shown)),
                    ("all", Argument::Text(&all.len().to_string())),
                ],
            )
        } else {
            String::new()
        },
        above: above.clone(),
        ..view(here, sheets)
    };
    let name = above.plain();
    let cited = format!("{name}, {}", view.title);
    leaf(here, &name, &view, &cited)
}

fn view(here: &Here<'_>, sheets: &[ComparedSheet<'_>]) -> View {
    let observations = Observations::of(here, sheets);
    let rows = observations.facts.iter().chain(&observations.rows);
    let rows = rows.map(|row| &row.data).collect();
    View {
        wall: true,
        number: String::new(),
        number_class: "",
        above: CleanHtml::empty(),
        title: here.words().word("comparison-chosen").to_owned(),
        brief: String::new(),
        recorded: Vec::new(),
        choices: sheets.iter().map(|sheet| choice(here, *sheet)).collect(),
        columns: sheets.iter().map(|sheet| column(here, *sheet)).collect(),
        heads: sheets
            .iter()
            .map(|(_, sheet)| here.impression_by(&sheet.key))
            .collect(),
        data: overlay::data(here, sheets, &observations, rows),
        observations,
    }
}

fn leaf(here: &Here<'_>, name: &str, view: &View, cited: &str) -> Leaf {
    let words = here.words();
    let title = words.with("comparison-of", &[("design", Argument::Text(name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, title, "pages/chosen-comparison.html", view)
        .cited_as(format!("{siglum} {cited}"))
}

fn choice(here: &Here<'_>, (design, sheet): ComparedSheet<'_>) -> Choice {
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
