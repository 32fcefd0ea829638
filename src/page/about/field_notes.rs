//! The field notes: what every column of every table holds.

use serde::Serialize;

use super::data::{column_meaning, fragment};
use crate::model::words::ClosedList as _;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::exports::{ColumnNotes, TableNotes};
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;

#[derive(Serialize)]
struct View {
    title: String,
    brief: CleanHtml,
    tables: Vec<Table>,
}

#[derive(Serialize)]
struct Table {
    id: String,
    name: String,
    about: String,
    columns: Vec<Column>,
}

/// A column of a table.
#[derive(Serialize)]
struct Column {
    name: &'static str,
    kind: String,
    meaning: String,
    /// The table whose keys it holds, as a link.
    of: Option<CleanHtml>,
    /// The only words that it may hold.
    words: String,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = words.word("field-notes").to_owned();
    let data = CleanHtml::link(
        &here.href(&Address::Overview(Overview::Data)),
        &CleanHtml::text(words.word("data")),
    );
    let exports = here.book.exports;
    let of_holders = TableNotes {
        name: "sheets",
        rows: 0,
        csv_bytes: 0,
        json_bytes: 0,
        columns: exports.holder_table.clone(),
    };
    let tables = exports.tables.iter().chain([&of_holders]);
    let view = View {
        title: title.clone(),
        brief: words.html("field-notes-brief", None, &[("data", &data)]),
        tables: tables.map(|table| view_of(here, table)).collect(),
    };
    Leaf::new(here.address, title, "pages/field-notes.html", &view)
}

fn view_of(here: &Here<'_>, table: &TableNotes) -> Table {
    let word = |id: String| here.words().word(&id).to_owned();
    Table {
        id: fragment(table),
        name: word(format!("table-{}", table.name)),
        about: word(format!("table-{}-about", table.name)),
        columns: table
            .columns
            .iter()
            .map(|column| column_view(here, table, column))
            .collect(),
    }
}

fn column_view(here: &Here<'_>, table: &TableNotes, column: &ColumnNotes) -> Column {
    let words = here.words();
    let tables = &here.book.exports.tables;
    let other = column
        .references
        .and_then(|name| tables.iter().find(|t| t.name == name));
    let kind = words
        .word(&format!("column-kind-{}", column.kind.word()))
        .to_owned();
    Column {
        name: column.name,
        kind: if column.is_required {
            words.with("column-always", &[("kind", Argument::Text(&kind))])
        } else {
            kind
        },
        meaning: column_meaning(words, table.name, column.name),
        of: other.map(|other| {
            let name = words.word(&format!("table-{}", other.name)).to_owned();
            CleanHtml::link(&format!("#{}", fragment(other)), &CleanHtml::text(&name))
        }),
        words: column.words.join(", "),
    }
}
