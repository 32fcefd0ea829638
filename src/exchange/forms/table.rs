//! The workbook: a table of sheets, how to fill it in, and the lists from which cells are chosen.

use super::columns::{COLUMNS, Chosen, FormColumn, to_fill_in};
use super::lists::{self, Lists};
use crate::exchange::intake::table::HELPER_MARK;
use crate::exchange::workbook::{
    Choices, Column, DefinedName, Look, Part, Sheet, SheetEntry, Visibility, archive, shared_parts,
    workbook_part,
};
use crate::model::design::Design;
use crate::page::{Argument, Here};

/// For which designs a table is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Extent {
    /// For several: states and printings are those of the row's design.
    Designs,
    /// For one.
    OneDesign,
}

/// What all workbooks of one extent share, packed once.
pub(super) struct Forms {
    extent: Extent,
    columns: Vec<Column>,
    shared: Vec<Part>,
    empty: Part,
    terms: Lists,
}

/// The sheets by their place: the table, the help, the terms, the designs.
const SHEETS: [(&str, Visibility); 4] = [
    ("form-sheet-rows", Visibility::Shown),
    ("form-sheet-help", Visibility::Shown),
    ("form-sheet-terms", Visibility::Hidden),
    ("form-sheet-lists", Visibility::Hidden),
];

impl Forms {
    /// The shared parts of tables to fill in.
    pub fn new(here: &Here<'_>, extent: Extent) -> Forms {
        Forms::with(here, extent, to_fill_in())
    }

    /// The shared parts of tables that are filled in, with the column of the impression.
    pub fn filled(here: &Here<'_>) -> Forms {
        Forms::with(here, Extent::Designs, COLUMNS.iter())
    }

    fn with(
        here: &Here<'_>,
        extent: Extent,
        columns: impl Iterator<Item = &'static FormColumn>,
    ) -> Forms {
        let columns: Vec<&FormColumn> = columns.collect();
        let columns: Vec<Column> = columns
            .iter()
            .map(|column| in_words(here, extent, column, &columns))
            .collect();
        let form = table(columns.clone(), Vec::new());
        let terms = lists::terms(here);
        let siglum = &here.public().settings.siglum.value;
        let mut shared = shared_parts(&form, siglum, SHEETS.len());
        shared.push(Part::packed("xl/worksheets/sheet2.xml", &help(here).xml()));
        let of_terms = terms.sheet(&not_read(here)).xml();
        shared.push(Part::packed("xl/worksheets/sheet3.xml", &of_terms));
        Forms {
            extent,
            empty: Part::packed(FIRST, &form.xml()),
            columns,
            shared,
            terms,
        }
    }

    /// A table to fill in, for these designs.
    pub fn empty(&self, here: &Here<'_>, designs: &[&Design]) -> Vec<u8> {
        self.workbook(here, designs, &self.empty)
    }

    /// A table of these rows, for these designs.
    pub fn of_rows(&self, here: &Here<'_>, designs: &[&Design], rows: Vec<Vec<String>>) -> Vec<u8> {
        let sheet = table(self.columns.clone(), rows);
        self.workbook(here, designs, &Part::packed(FIRST, &sheet.xml()))
    }

    fn workbook(&self, here: &Here<'_>, designs: &[&Design], first: &Part) -> Vec<u8> {
        let sheets = SHEETS.map(|(word, visibility)| SheetEntry {
            name: sheet_name(here.words().word(word)),
            visibility,
        });
        let own = lists::of_designs(here, designs);
        let mut names = self.terms.names(&sheets[2].name);
        names.extend(own.names(&sheets[3].name));
        let titles = sheets[0].name.replace('\'', "''");
        // The accession number and the headings stand on every printed page.
        names.push(DefinedName {
            name: "_xlnm.Print_Titles".to_owned(),
            of_sheet: Some(0),
            cells: format!("'{titles}'!$A:$A,'{titles}'!$1:$1"),
        });
        let lists = own.sheet(&not_read(here)).xml();
        let part = match self.extent {
            Extent::Designs => Part::packed,
            // So small that packing is not worth its time, a thousand times.
            Extent::OneDesign => Part::stored,
        };
        let own = [
            part("xl/workbook.xml", &workbook_part(&sheets, &names)),
            part("xl/worksheets/sheet4.xml", &lists),
        ];
        archive(self.shared.iter().chain([first]).chain(&own))
    }
}

const FIRST: &str = "xl/worksheets/sheet1.xml";

fn table(columns: Vec<Column>, rows: Vec<Vec<String>>) -> Sheet {
    Sheet {
        look: Look::Form,
        columns,
        rows,
    }
}

/// A column in words, with its list.
fn in_words(here: &Here<'_>, extent: Extent, column: &FormColumn, all: &[&FormColumn]) -> Column {
    let words = here.words();
    let choices = column.chosen.map(|chosen| Choices {
        formula: formula(extent, chosen, all),
        unlisted: words.word("form-unlisted").to_owned(),
    });
    Column {
        heading: words.word(&column.heading()).to_owned(),
        note: words.word(&column.note()).to_owned(),
        width: column.width,
        choices,
    }
}

/// The formula that gives a list. Where there are several designs, states and printings are the rows beside the design that
/// stands in the same row of the table.
fn formula(extent: Extent, chosen: Chosen, all: &[&FormColumn]) -> String {
    let name = lists::name(chosen);
    let beside = match (extent, chosen) {
        (Extent::Designs, Chosen::State) => lists::STATE_DESIGNS,
        (Extent::Designs, Chosen::Printing) => lists::PRINTING_DESIGNS,
        _ => return name.to_owned(),
    };
    let design = all
        .iter()
        .position(|column| column.chosen == Some(Chosen::Design));
    let column = u32::try_from(design.unwrap_or(0)).unwrap_or(0);
    let cell = format!("${}", crate::exchange::workbook::cell_name(column, 2));
    format!("OFFSET({name},MATCH({cell},{beside},0)-1,0,COUNTIF({beside},{cell}),1)")
}

/// How to fill in, a paragraph a row.
fn help(here: &Here<'_>) -> Sheet {
    let words = here.words();
    let contact = here.public().settings.contact.as_deref();
    let contact = contact.unwrap_or(words.word("form-help-no-contact"));
    let text = words.with("form-help", &[("contact", Argument::Text(contact))]);
    let paragraphs = text
        .split("\n\n")
        .map(|paragraph| paragraph.trim().to_owned());
    let title = words.word("form-help-title").to_owned();
    let rows = [title].into_iter().chain(paragraphs).map(|text| vec![text]);
    Sheet {
        look: Look::Text,
        columns: vec![Column {
            heading: not_read(here),
            width: 95,
            ..Column::default()
        }],
        rows: rows.collect(),
    }
}

/// What the first cell of a sheet says that has no rows for the catalogue.
fn not_read(here: &Here<'_>) -> String {
    format!("{} {HELPER_MARK}", here.words().word("form-not-read"))
}

/// A name as workbooks allow it: 31 signs, without some marks (from memory).
fn sheet_name(word: &str) -> String {
    let name = word.replace(['[', ']', ':', '*', '?', '/', '\\'], " ");
    name.chars().take(31).collect()
}
