//! A table: one text that holds all cells, its heading, its rows, and notes.

use std::fmt;

use super::fault::TableFault;
use super::kind::{RecordNote, TableKind};
use super::limits::{CELLS, COLUMNS, NAMED_ROWS, ROWS, TEXT_BYTES};

/// A cell as a spreadsheet program names it: `B12`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct CellPlace {
    /// The row, from 1.
    pub row: u32,
    /// The column, from 0.
    pub column: u32,
}

impl fmt::Display for CellPlace {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut letters = Vec::new();
        let mut rest = self.column + 1;
        while rest > 0 {
            rest -= 1;
            letters.push(char::from(b'A' + u8::try_from(rest % 26).unwrap_or(0)));
            rest /= 26;
        }
        let letters: String = letters.iter().rev().collect();
        write!(f, "{letters}{}", self.row)
    }
}

/// What a registrar should know of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableNote {
    /// Cells were merged: the text stands in the first alone.
    Merged {
        /// The first cell.
        first: CellPlace,
        /// The last cell.
        last: CellPlace,
    },
    /// Cells hold formulas, whose stored values were taken.
    Formulas {
        /// How many.
        count: u32,
        /// The first.
        first: CellPlace,
    },
    /// Cells hold an error of the spreadsheet program.
    ErrorValues {
        /// How many.
        count: u32,
        /// The first.
        first: CellPlace,
    },
    /// Rows have more cells than the heading, or in a delimited file fewer.
    Ragged {
        /// How many.
        count: u32,
        /// The first of them.
        rows: Vec<u32>,
    },
    /// Rows without cells stand between others.
    EmptyRows {
        /// How many.
        count: u32,
    },
    /// Rows stand above the heading; their texts are kept.
    AboveHeading {
        /// Their texts, by row.
        texts: Vec<(u32, String)>,
    },
    /// A column has no heading.
    NoHeading {
        /// The column, from 0.
        column: u32,
    },
    /// Two columns have the same heading.
    SameHeading {
        /// The earlier column, from 0.
        first: u32,
        /// The later column.
        second: u32,
    },
    /// Bytes that are no letter in the encoding of the file; they are shown as U+FFFD.
    UnreadableBytes {
        /// How many.
        count: u32,
    },
    /// The encoding that was found, where the file does not name it.
    ReadAs(&'static str),
    /// A quoted cell goes on to the end of the file: a quotation mark is missing.
    OpenQuote {
        /// The row in which it begins.
        row: u32,
    },
    /// The sheet is hidden in the file.
    Hidden,
    /// What was met in a file of records beside the rows.
    Records(RecordNote),
}

/// What the first cell of a sheet ends with that is there to help and holds no rows: the lists and the instructions of our
/// own forms.
pub const HELPER_MARK: &str = "[keyblock]";

/// A table.
///
/// All cells lie in one text, since a table of 50,000 rows has a million of them.
#[derive(Clone, Debug, Default)]
pub struct Table {
    /// The name of the sheet; empty in a delimited file.
    pub name: String,
    /// From what it was made.
    pub kind: TableKind,
    /// What a registrar should know.
    pub notes: Vec<TableNote>,
    text: String,
    /// The end of each cell in the text.
    ends: Vec<u32>,
    /// Of each row with cells: its number and its first cell.
    rows: Vec<(u32, u32)>,
    heading: usize,
}

/// A row of a table.
#[derive(Clone, Copy, Debug)]
pub struct RowView<'t> {
    table: &'t Table,
    place: usize,
}

impl<'t> RowView<'t> {
    /// The number of the row in the file, from 1.
    #[must_use]
    pub fn number(self) -> u32 {
        self.table.rows[self.place].0
    }

    /// The text of a cell, by its column from 0; empty where the row has none there.
    #[must_use]
    pub fn cell(self, column: usize) -> &'t str {
        let (first, end) = self.table.cells_of(self.place);
        if column < end - first {
            self.table.cell_text(first + column)
        } else {
            ""
        }
    }

    /// The texts of its cells.
    pub fn cells(self) -> impl Iterator<Item = &'t str> {
        let (first, end) = self.table.cells_of(self.place);
        (first..end).map(move |cell| self.table.cell_text(cell))
    }
}

impl Table {
    /// The heading: the name of each column, empty where it has none.
    pub fn heading(&self) -> impl Iterator<Item = &str> {
        let of_heading = self.rows.get(self.heading).map(|_| RowView {
            table: self,
            place: self.heading,
        });
        let width = self.width();
        (0..width).map(move |column| of_heading.map_or("", |row| row.cell(column)))
    }

    /// The number of the row that is the heading, from 1.
    #[must_use]
    pub fn heading_row(&self) -> u32 {
        self.rows.get(self.heading).map_or(0, |(number, _)| *number)
    }

    /// Whether the sheet is there to help, by [`HELPER_MARK`].
    #[must_use]
    pub fn is_helper(&self) -> bool {
        !self.rows.is_empty() && {
            let (first, end) = self.cells_of(0);
            first < end && self.cell_text(first).ends_with(HELPER_MARK)
        }
    }

    /// The most cells of a row.
    #[must_use]
    pub fn width(&self) -> usize {
        let widths = (self.heading..self.rows.len()).map(|place| {
            let (first, end) = self.cells_of(place);
            end - first
        });
        widths.max().unwrap_or(0)
    }

    /// The rows below the heading that have cells.
    pub fn rows(&self) -> impl ExactSizeIterator<Item = RowView<'_>> {
        let first = (self.heading + 1).min(self.rows.len());
        (first..self.rows.len()).map(|place| RowView { table: self, place })
    }

    fn cells_of(&self, place: usize) -> (usize, usize) {
        let first = self.rows[place].1 as usize;
        let next = self.rows.get(place + 1);
        (
            first,
            next.map_or(self.ends.len(), |(_, cell)| *cell as usize),
        )
    }

    fn cell_text(&self, cell: usize) -> &str {
        let start = match cell.checked_sub(1) {
            Some(before) => self.ends[before] as usize,
            None => 0,
        };
        &self.text[start..self.ends[cell] as usize]
    }
}

/// A table that is being read: rows in order, cells in order.
#[derive(Debug, Default)]
pub(in crate::exchange::intake) struct TableWriter {
    table: Table,
    formulas: Option<(u32, CellPlace)>,
    errors: Option<(u32, CellPlace)>,
    /// The cells and the text that earlier sheets of the file took.
    taken: Taken,
}

/// What was taken of the limits of a file.
#[derive(Clone, Copy, Debug, Default)]
pub(in crate::exchange::intake) struct Taken {
    cells: u64,
    text: u64,
}

impl TableWriter {
    /// A table with this name, in a file of which something was taken already.
    pub fn new(name: &str, taken: Taken) -> TableWriter {
        TableWriter {
            table: Table {
                name: name.to_owned(),
                ..Table::default()
            },
            taken,
            ..TableWriter::default()
        }
    }

    /// The same, made from something else than a sheet.
    pub fn of_kind(mut self, kind: TableKind) -> TableWriter {
        self.table.kind = kind;
        self
    }

    /// Begins a row; its number is above that of the row before.
    pub fn row(&mut self, number: u32) -> Result<(), TableFault> {
        if u64::from(number) > ROWS {
            return Err(TableFault::TooLarge {
                what: "the number of rows",
                limit: ROWS,
                unit: "rows",
            });
        }
        self.close_row();
        if self.last_row().is_some_and(|last| last >= number) {
            return Err(TableFault::damaged(
                &self.table.name,
                "its rows are not in order",
            ));
        }
        let first = u32::try_from(self.table.ends.len()).unwrap_or(u32::MAX);
        self.table.rows.push((number, first));
        Ok(())
    }

    /// The number of the row being read.
    pub fn last_row(&self) -> Option<u32> {
        self.table.rows.last().map(|(number, _)| *number)
    }

    /// Writes a cell of the row, right of those before; empty cells between are filled in.
    pub fn cell(&mut self, column: u32, text: &str) -> Result<(), TableFault> {
        if u64::from(column) >= COLUMNS {
            return Err(TableFault::TooLarge {
                what: "the number of columns",
                limit: COLUMNS,
                unit: "columns",
            });
        }
        let text = text.trim();
        if text.is_empty() {
            return Ok(());
        }
        let Some((_, first)) = self.table.rows.last() else {
            return Ok(());
        };
        let in_row = self.table.ends.len() - *first as usize;
        let column = column as usize;
        if column < in_row {
            return Err(TableFault::damaged(
                &self.table.name,
                "its cells are not in order",
            ));
        }
        let before = u32::try_from(self.table.text.len()).unwrap_or(u32::MAX);
        let added = column - in_row + 1;
        if self.taken.cells + (self.table.ends.len() + added) as u64 > CELLS {
            return Err(TableFault::TooLarge {
                what: "the number of cells",
                limit: CELLS,
                unit: "cells",
            });
        }
        if self.taken.text + (self.table.text.len() + text.len()) as u64 > TEXT_BYTES {
            return Err(TableFault::TooLarge {
                what: "the text of all cells",
                limit: TEXT_BYTES,
                unit: "bytes",
            });
        }
        self.table
            .ends
            .resize(self.table.ends.len() + added - 1, before);
        self.table.text.push_str(text);
        let end = u32::try_from(self.table.text.len()).unwrap_or(u32::MAX);
        self.table.ends.push(end);
        Ok(())
    }

    /// Notes a formula.
    pub fn formula(&mut self, column: u32) {
        count(&mut self.formulas, self.table.rows.last(), column);
    }

    /// Notes an error of the spreadsheet program.
    pub fn error(&mut self, column: u32) {
        count(&mut self.errors, self.table.rows.last(), column);
    }

    /// Adds a note.
    pub fn note(&mut self, note: TableNote) {
        self.table.notes.push(note);
    }

    /// A row without cells is none.
    fn close_row(&mut self) {
        let is_empty = |(_, first): &(u32, u32)| *first as usize == self.table.ends.len();
        if self.table.rows.last().is_some_and(is_empty) {
            self.table.rows.pop();
        }
    }

    /// The table, with its heading found, and what the file has taken with it; `None` where no row has cells.
    ///
    /// With `tells_short_rows`, a row with fewer cells than the heading is told as well: in a delimited file a row has
    /// all its separators.
    pub fn finish(mut self) -> (Option<Table>, Taken) {
        self.close_row();
        let taken = Taken {
            cells: self.taken.cells + self.table.ends.len() as u64,
            text: self.taken.text + self.table.text.len() as u64,
        };
        if self.table.rows.is_empty() {
            return (None, taken);
        }
        let mut table = self.table;
        table.ends.shrink_to_fit();
        table.text.shrink_to_fit();
        table.heading = heading_place(&table);
        if let Some((count, first)) = self.formulas {
            table.notes.push(TableNote::Formulas { count, first });
        }
        if let Some((count, first)) = self.errors {
            table.notes.push(TableNote::ErrorValues { count, first });
        }
        let notes = shape_notes(&table);
        table.notes.extend(notes);
        (Some(table), taken)
    }
}

/// A table of these rows, the heading first; each is as wide as the heading or narrower.
///
/// # Errors
/// Where it is too large.
pub(in crate::exchange::intake) fn of_rows(rows: &[Vec<String>]) -> Result<Table, TableFault> {
    let mut writer = TableWriter::new("", Taken::default());
    for (row, number) in rows.iter().zip(1..) {
        writer.row(number)?;
        for (cell, column) in row.iter().zip(0..) {
            writer.cell(column, cell)?;
        }
    }
    let (table, _) = writer.finish();
    let mut table = table.ok_or(TableFault::Empty)?;
    table.heading = 0;
    Ok(table)
}

fn count(counted: &mut Option<(u32, CellPlace)>, row: Option<&(u32, u32)>, column: u32) {
    let Some((row, _)) = row else { return };
    let place = CellPlace { row: *row, column };
    counted.get_or_insert((0, place)).0 += 1;
}

/// The heading: of the first ten rows with cells the first that fills at least half of the usual width, and two cells
/// where there are more columns than one. A title above a table fills one.
fn heading_place(table: &Table) -> usize {
    let filled = |place: usize| {
        let (first, end) = table.cells_of(place);
        (first..end)
            .filter(|cell| !table.cell_text(*cell).is_empty())
            .count()
    };
    let looked_at = table.rows.len().min(200);
    let mut widths: Vec<usize> = (0..looked_at).map(filled).collect();
    let first_ten = widths[..looked_at.min(10)].to_vec();
    widths.sort_unstable();
    let usual = widths[widths.len() / 2];
    let enough = if usual > 1 { (usual / 2).max(2) } else { 1 };
    let found = first_ten.iter().position(|filled| *filled >= enough);
    found.unwrap_or(0)
}

/// What the shape of a table tells: rows above the heading, rows that are longer than it, headings.
fn shape_notes(table: &Table) -> Vec<TableNote> {
    let mut notes = Vec::new();
    if table.heading > 0 {
        let above = (0..table.heading).map(|place| {
            let row = RowView { table, place };
            let texts: Vec<&str> = row.cells().filter(|text| !text.is_empty()).collect();
            (row.number(), texts.join(" | "))
        });
        notes.push(TableNote::AboveHeading {
            texts: above.collect(),
        });
    }
    let heading: Vec<&str> = table.heading().collect();
    let (first, end) = table.cells_of(table.heading);
    let named = end - first;
    for (column, name) in (0..).zip(&heading) {
        if name.is_empty() {
            notes.push(TableNote::NoHeading { column });
        } else if let Some(first) = heading.iter().position(|other| other == name)
            && first < column as usize
        {
            let first = u32::try_from(first).unwrap_or(0);
            notes.push(TableNote::SameHeading {
                first,
                second: column,
            });
        }
    }
    let mut longer = (0, Vec::new());
    let mut empty = 0;
    let mut last = table.heading_row();
    for row in table.rows() {
        empty += row.number() - last - 1;
        last = row.number();
        let (first, end) = table.cells_of(row.place);
        if end - first > named {
            longer.0 += 1;
            if longer.1.len() < NAMED_ROWS {
                longer.1.push(row.number());
            }
        }
    }
    if longer.0 > 0 {
        notes.push(TableNote::Ragged {
            count: longer.0,
            rows: longer.1,
        });
    }
    if empty > 0 {
        notes.push(TableNote::EmptyRows { count: empty });
    }
    notes
}
