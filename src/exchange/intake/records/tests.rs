//! Records of invented museums, read as tables. Tests only.
//!
//! Structures follow the published documents named beside each; texts are our own. What of a record stands in which column is
//! checked whole, and what grammars read of composed cells.

mod bounds;
mod json;
mod lido;
mod lossless;

use super::super::columns::{Holds, columns};
use super::super::open;
use super::super::reading::Lexicon;
use super::super::reading::lexicon::samples::lexicon;
use super::super::table::{RecordNote, Table, TableFault, TableKind, TableNote};

/// The only table of a file.
fn one(bytes: &[u8]) -> Table {
    let mut tables = open::tables(bytes).unwrap();
    assert_eq!(tables.len(), 1);
    tables.remove(0)
}

/// The cells of a row that have a text, each with its heading, and what its column holds where that is known.
fn told(table: &Table, row: usize) -> Vec<String> {
    let proposal = columns(table, &Lexicon::default());
    let row = table.rows().nth(row).unwrap();
    let cells = proposal.columns.iter().filter_map(|column| {
        let text = row.cell(column.column);
        let holds = match column.holds {
            Holds::Unknown => String::new(),
            holds => format!(" ({holds})"),
        };
        (!text.is_empty()).then(|| format!("{}{holds}: {text}", column.heading))
    });
    cells.collect()
}

/// The cells of a row whose columns hold something.
fn held(table: &Table, row: usize, holds: Holds) -> Vec<String> {
    let proposal = columns(table, &Lexicon::default());
    let row = table.rows().nth(row).unwrap();
    let held = proposal
        .columns
        .iter()
        .filter(|column| column.holds == holds);
    let cells = held.map(|column| row.cell(column.column).to_owned());
    cells.filter(|cell| !cell.is_empty()).collect()
}

fn notes(table: &Table) -> Vec<String> {
    let notes = table.notes.iter().map(|note| match note {
        TableNote::Records(note) => note.message(),
        note => format!("{note:?}"),
    });
    notes.collect()
}
