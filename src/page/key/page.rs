//! The page of the identification key, which shows what a sheet at hand can be.
//!
//! It is a dichotomous key as in print, usable without a script and on paper: couplets, then the points
//! with their details. The script (`assets/key.js`) offers the same key as a form, whose points can be
//! answered in any order. The form's markup is in a `template` element, so that the page shows no
//! controls that do nothing without the script.

use serde::Serialize;

use super::candidates::{candidate_name, consistent_with, printing_name, state_name, table};
use super::couplets::{self, CoupletLine};
use super::data;
use super::points::{self, KeyPoint};
use super::recorded::{self, RecordedCopy};
use crate::model::design::Design;
use crate::model::key::Key;
use crate::page::plates::strips;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::words::Argument;
use crate::study::couplets::couplets;
use crate::study::table::{AxisRow, DiagnosticTable};

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: String,
    sheet: String,
    couplets: Vec<CoupletLine>,
    /// All candidates, for a key whose points separate none of them.
    all: CleanHtml,
    points: Vec<KeyPoint>,
    details_from: Option<CleanHtml>,
    /// The credits of the photographs from which examples of the answers come.
    credits: Vec<CleanHtml>,
    /// The states and the printings, in the order of the table.
    states: Vec<CleanHtml>,
    printings: Vec<CleanHtml>,
    copies: Vec<RecordedCopy>,
    data: CleanHtml,
}

fn of_rows(rows: &[AxisRow], name: impl Fn(Option<&Key>) -> CleanHtml) -> Vec<CleanHtml> {
    rows.iter().map(|row| name(row.key.as_ref())).collect()
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let nothing = DiagnosticTable::default();
    let table = table(here, design).unwrap_or(&nothing);
    let names: Vec<CleanHtml> = table
        .candidates
        .iter()
        .map(|row| candidate_name(here, design, row))
        .collect();
    let title = words.word("identification-key").to_owned();
    let points = points::all(here, design, table);
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: title.clone(),
        brief: words.count("key-candidates", table.candidates.len()),
        sheet: here.href(&Address::ExaminationSheet(design.key.clone())),
        couplets: couplets::lines(here, design, table, &couplets(table), &names),
        all: consistent_with(here, &names),
        credits: if points.iter().any(KeyPoint::has_examples) {
            strips::all_credits(here, design)
        } else {
            Vec::new()
        },
        points,
        details_from: points::details_from(here, design),
        data: data::data(here, table),
        states: of_rows(&table.states, |key| state_name(here, design, key)),
        printings: of_rows(&table.printings, |key| printing_name(here, design, key)),
        copies: recorded::copies(here, design, table),
    };
    let name = here.design_name(design).plain();
    let leaf_title = words.with("key-of", &[("design", Argument::Text(&name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, leaf_title, "pages/key.html", &view)
        .cited_as(format!("{siglum} {}, {title}", design.number))
}
