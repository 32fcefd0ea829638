//! Everything public as tables: CSV and JSON, with a description of the whole (Data Package 2.0, Table Schema 2.0).
//!
//! One pass over the catalogue makes all files, since the description gives the size and the hash of each.
//!
//! | file | subject |
//! |---|---|
//! | `cell` | the values of cells, and their forms |
//! | `table` | a table, its columns, and how it is written |
//! | `shared` | groups of columns that several tables have |
//! | `rows` | the records in order, their keys and addresses |
//! | `designs`, `states`, `points` | designs and their parts |
//! | `impressions`, `sheet_history` | sheets |
//! | `as_found` | identifiers elsewhere, and holders' own descriptions |
//! | `statements` | who says what, where sources may disagree |
//! | `series` | series, and the places in them |
//! | `documents` | documents and what they tell |
//! | `parties`, `literature`, `pictures`, `texts` | everything else |
//! | `holder_sheets` | the table of its sheets that each holder has |
//! | `package` | the description of all tables |
//!
//! Keys are those of addresses: `14`, `14.7`, `14.7/recto`, `14/moonlit` for a state of design 14. Rows are in the
//! order of the catalogue.

mod as_found;
mod cell;
mod designs;
mod documents;
pub(super) mod holder_sheets;
mod impressions;
mod literature;
mod package;
mod parties;
mod pictures;
mod points;
mod rows;
mod series;
mod shared;
mod sheet_history;
mod statements;
mod states;
mod table;
mod texts;

use rayon::prelude::*;

use super::format::{Sources, WholeFormat};
use crate::page::{Book, TableNotes, Take};
use package::{Described, FOLDER};
use table::Written;

/// Every table, and the description of all.
pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "tables",
    paths: &["data/….csv", "data/….json"],
    each,
};

/// The functions that make the tables, in the order in which pages list them.
const TABLES: &[fn(Sources<'_>) -> Written] = &[
    designs::designs,
    designs::titles,
    designs::makers,
    designs::subjects,
    designs::related,
    designs::comparisons,
    states::matrices,
    states::states,
    states::printings,
    states::variants,
    points::points,
    points::values,
    states::shown,
    impressions::impressions,
    impressions::identifications,
    impressions::observations,
    impressions::blocks,
    impressions::other_sheets,
    sheet_history::marks,
    sheet_history::watermarks,
    sheet_history::conditions,
    sheet_history::provenance,
    sheet_history::sightings,
    sheet_history::former_numbers,
    sheet_history::exhibited,
    as_found::as_given,
    as_found::identifiers,
    statements::statements,
    parties::holders,
    parties::holder_names,
    parties::people,
    parties::person_names,
    parties::exhibitions,
    parties::shared_marks,
    parties::mark_users,
    parties::mark_conditions,
    series::series,
    series::places,
    documents::documents,
    documents::statements,
    literature::literature,
    literature::citations,
    literature::concordance,
    pictures::pictures,
    texts::texts,
    texts::terms,
];

/// The tables as the pages about the data describe them.
pub(super) fn notes(sources: Sources<'_>) -> Vec<TableNotes> {
    let tables = TABLES.par_iter().map(|table| {
        let written = table(sources);
        TableNotes {
            name: written.name,
            rows: written.rows,
            csv_bytes: written.csv.len(),
            json_bytes: written.json.len(),
            columns: written.columns,
        }
    });
    tables.collect()
}

/// Makes every table and the description, and passes each file to `take`.
fn each(book: &Book<'_>, take: &Take<'_>) {
    let sources = Sources::of(book);
    let described = TABLES.par_iter().map(|table| {
        let written = table(sources);
        let described = Described::of(&written);
        take(format!("{FOLDER}{}.csv", written.name), written.csv);
        take(format!("{FOLDER}{}.json", written.name), written.json);
        described
    });
    let described: Vec<Described> = described.collect();
    let package = package::description(book, &described);
    take(format!("{FOLDER}{}", package::FILE), package);
}
