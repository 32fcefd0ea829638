//! The sheets of a holder in the columns of the form, with what is recorded of each, so that the holder corrects cells and
//! sends the table back.
//!
//! The rows are those of its table of data, in the same order.

use super::columns::COLUMNS;
use super::recorded::cell;
use super::table::Forms;
use crate::exchange::format::Format;
use crate::exchange::tables::holder_sheets::{held_and_owned, subjects};
use crate::exchange::workbook::MEDIA_TYPE;
use crate::model::design::Design;
use crate::page::{Address, Here, Subject};

/// One workbook for each holder that keeps or owns a sheet.
pub(in crate::exchange) const FORMAT: Format = Format {
    name: "holder-xlsx",
    file: "sheets.xlsx",
    folders: &["holder/…/"],
    media_type: MEDIA_TYPE,
    relation: "alternate",
    subjects,
    write,
};

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(Address::Holder(holder)) = subject else {
        return None;
    };
    let sheets = held_and_owned(here, holder)?;
    let mut designs: Vec<&Design> = Vec::new();
    for (design, _) in &sheets {
        if !designs.iter().any(|known| known.key == design.key) {
            designs.push(design);
        }
    }
    let rows = sheets.iter().map(|(design, sheet)| {
        let cells = COLUMNS.iter();
        cells
            .map(|column| cell(here, column, design, sheet))
            .collect()
    });
    Some(Forms::filled(here).of_rows(here, &designs, rows.collect()))
}
