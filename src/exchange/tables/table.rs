//! A table and its columns, declared once: names, types and references stand beside the functions that fill the cells.
//!
//! In: rows of any type. Out: a [`Written`] table: CSV, JSON and the declarations, from which the data package
//! description and the field notes are made.

use super::cell::Cell;
use crate::exchange::spreadsheet;
use crate::model::words::ClosedList;
use crate::page::{ColumnKind, ColumnNotes};

/// A table of rows of type `R`. `'s` is the life of what its columns were given.
pub(in crate::exchange) struct TableOf<'s, R> {
    name: &'static str,
    key: Vec<&'static str>,
    columns: Vec<Column<'s, R>>,
}

struct Column<'s, R> {
    notes: ColumnNotes,
    value: Box<dyn Fn(&R) -> Cell + 's>,
}

/// A table that was written.
pub(in crate::exchange) struct Written {
    /// Its name, which is also that of its files.
    pub name: &'static str,
    /// The columns whose values together name one row; empty where none do.
    pub key: Vec<&'static str>,
    /// Its columns.
    pub columns: Vec<ColumnNotes>,
    /// How many rows it has.
    pub rows: usize,
    /// The table as CSV.
    pub csv: Vec<u8>,
    /// The table as JSON: an array of objects.
    pub json: Vec<u8>,
}

impl<'s, R> TableOf<'s, R> {
    /// A table without columns.
    pub fn new(name: &'static str) -> TableOf<'s, R> {
        TableOf {
            name,
            key: Vec::new(),
            columns: Vec::new(),
        }
    }

    /// Adds a column.
    pub fn column(
        mut self,
        name: &'static str,
        kind: ColumnKind,
        value: impl Fn(&R) -> Cell + 's,
    ) -> Self {
        let notes = ColumnNotes {
            name,
            kind,
            words: Vec::new(),
            references: None,
            is_required: false,
        };
        let value = Box::new(value);
        self.columns.push(Column { notes, value });
        self
    }

    /// Adds a column of text.
    pub fn text(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::Text, value)
    }

    /// Adds the column of keys by which rows are found.
    pub fn id(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        let mut table = self.text(name, value).required();
        table.key.push(name);
        table
    }

    /// Adds a column of keys of another table (or of this one).
    pub fn key_of(
        self,
        name: &'static str,
        other: &'static str,
        value: impl Fn(&R) -> Cell + 's,
    ) -> Self {
        self.text(name, value).refers_to(other)
    }

    /// Adds the column of the record that a row belongs to: part of the row's own key.
    pub fn part_of(
        self,
        name: &'static str,
        other: &'static str,
        value: impl Fn(&R) -> Cell + 's,
    ) -> Self {
        let mut table = self.key_of(name, other, value).required();
        table.key.push(name);
        table
    }

    /// Adds the place of a row among those of one record, from 1: part of the row's own key.
    pub fn position(self, value: impl Fn(&R) -> usize + 's) -> Self {
        let mut table = self
            .integer("position", move |row| value(row).into())
            .required();
        table.key.push("position");
        table
    }

    /// Adds a column of whole numbers.
    pub fn integer(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::Integer, value)
    }

    /// Adds a column of numbers.
    pub fn number(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::Number, value)
    }

    /// Adds a column of `true` and `false`.
    pub fn boolean(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::Boolean, value)
    }

    /// Adds a column of web addresses.
    pub fn address(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::Address, value)
    }

    /// Adds a column of lists.
    pub fn list(self, name: &'static str, value: impl Fn(&R) -> Cell + 's) -> Self {
        self.column(name, ColumnKind::List, value)
    }

    /// Adds a column of lists of keys of another table.
    pub fn keys_of(
        self,
        name: &'static str,
        other: &'static str,
        value: impl Fn(&R) -> Cell + 's,
    ) -> Self {
        self.list(name, value).refers_to(other)
    }

    /// Adds a column that takes the words of a closed list.
    pub fn word<W: ClosedList>(
        self,
        name: &'static str,
        value: impl Fn(&R) -> Option<W> + 's,
    ) -> Self {
        let value = move |row: &R| -> Cell { value(row).map(W::word).into() };
        let mut table = self.column(name, ColumnKind::Text, value);
        if let Some(last) = table.columns.last_mut() {
            last.notes.words = W::ALL.iter().map(|word| word.word()).collect();
        }
        table
    }

    /// The same, with a value in the last column of every row.
    pub fn required(mut self) -> Self {
        if let Some(last) = self.columns.last_mut() {
            last.notes.is_required = true;
        }
        self
    }

    /// The same, with rows that these columns name together.
    pub fn keyed_by(mut self, columns: &[&'static str]) -> Self {
        self.key = columns.to_vec();
        self
    }

    fn refers_to(mut self, other: &'static str) -> Self {
        if let Some(last) = self.columns.last_mut() {
            last.notes.references = Some(other);
        }
        self
    }

    /// Writes the rows, in their order.
    pub fn write(self, rows: impl IntoIterator<Item = R>) -> Written {
        let heads = self.columns.iter().map(|column| column.notes.name);
        let mut csv = spreadsheet::writer();
        // Writing to memory cannot fail, and every row has a cell for each column.
        let _ = csv.write_record(heads);
        let mut json = String::from("[");
        let mut written = 0;
        for row in rows {
            json.push_str(if written == 0 { "\n{" } else { ",\n{" });
            let mut is_first = true;
            for column in &self.columns {
                let cell = (column.value)(&row);
                let text = cell.text();
                let _ = if cell.is_text() {
                    csv.write_field(spreadsheet::harmless(&text).as_bytes())
                } else {
                    csv.write_field(&text)
                };
                if let Some(value) = cell.json() {
                    if !std::mem::take(&mut is_first) {
                        json.push(',');
                    }
                    json.push('"');
                    json.push_str(column.notes.name);
                    json.push_str("\":");
                    json.push_str(&value);
                }
            }
            let _ = csv.write_record(None::<&[u8]>);
            json.push('}');
            written += 1;
        }
        json.push_str("\n]\n");
        Written {
            name: self.name,
            key: self.key,
            columns: self.columns.into_iter().map(|c| c.notes).collect(),
            rows: written,
            csv: csv.into_inner().unwrap_or_default(),
            json: json.into_bytes(),
        }
    }
}
