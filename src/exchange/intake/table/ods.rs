//! OpenDocument spreadsheets, ODS (OASIS OpenDocument 1.2, part 1, chapter 9; ISO/IEC 26300).
//!
//! Repeated rows and cells are written out only where they have a text, within the limits; a formula is not read, the
//! value stored beside it is. Comments on cells are left out.

use super::fault::TableFault;
use super::limits::COLUMNS;
use super::nodes::{Element, Node, walk};
use super::package::Package;
use super::sheet::{CellPlace, Table, TableNote, TableWriter, Taken};

const CONTENT: &str = "content.xml";

/// A cell that is being read.
#[derive(Default)]
struct OpenCell {
    /// The value that is stored beside the text, where that counts.
    stored: Option<String>,
    text: String,
    paragraphs: u32,
    repeated: u32,
    spanned: (u32, u32),
    is_formula: bool,
}

/// A row that is being read: its cells with a text, by column.
#[derive(Default)]
struct OpenRow {
    cells: Vec<(u32, String)>,
    formulas: Vec<u32>,
    merged: Vec<(u32, u32, u32)>,
    column: u32,
    repeated: u32,
}

/// What is being read.
#[derive(Default)]
struct State {
    tables: Vec<Table>,
    taken: Taken,
    writer: Option<TableWriter>,
    row: Option<OpenRow>,
    cell: Option<OpenCell>,
    /// The number of the row that is being read, from 1.
    number: u64,
    /// How deep in comments.
    comment: u32,
    /// How deep in paragraphs.
    paragraph: u32,
}

/// The tables of a spreadsheet.
///
/// # Errors
/// A content that is damaged or too large.
pub(super) fn tables(package: &Package<'_>) -> Result<Vec<Table>, TableFault> {
    let mut state = State {
        number: 1,
        ..State::default()
    };
    walk(package.file(CONTENT)?, CONTENT, |node| match node {
        Node::Open(element) => {
            state.open(&element);
            Ok(())
        }
        Node::Text(text) => {
            if let Some(cell) = state
                .cell
                .as_mut()
                .filter(|_| state.comment == 0 && state.paragraph > 0)
            {
                cell.text.push_str(text);
            }
            Ok(())
        }
        Node::Close(name) => state.close(name),
    })?;
    Ok(state.tables)
}

impl State {
    fn open(&mut self, element: &Element<'_>) {
        match element.name {
            "table" if self.writer.is_none() => {
                let name = element.attribute("name").unwrap_or_default();
                self.writer = Some(TableWriter::new(&name, self.taken));
                self.number = 1;
            }
            "table-row" => {
                self.row = Some(OpenRow {
                    repeated: element.number("number-rows-repeated").unwrap_or(1).max(1),
                    ..OpenRow::default()
                });
            }
            "table-cell" | "covered-table-cell" => {
                let kind = element.attribute("value-type").unwrap_or_default();
                let stored = match kind.as_str() {
                    "float" => element.attribute("value"),
                    "string" => element.attribute("string-value"),
                    "date" => element.attribute("date-value").map(|date| day(&date)),
                    _ => None,
                };
                self.cell = Some(OpenCell {
                    stored,
                    repeated: element
                        .number("number-columns-repeated")
                        .unwrap_or(1)
                        .max(1),
                    spanned: (
                        element.number("number-rows-spanned").unwrap_or(1),
                        element.number("number-columns-spanned").unwrap_or(1),
                    ),
                    is_formula: element.attribute("formula").is_some(),
                    ..OpenCell::default()
                });
            }
            "annotation" => self.comment += 1,
            "p" => {
                self.paragraph += 1;
                if let Some(cell) = self.cell.as_mut().filter(|_| self.comment == 0) {
                    if cell.paragraphs > 0 {
                        cell.text.push('\n');
                    }
                    cell.paragraphs += 1;
                }
            }
            "s" | "tab" | "line-break" => {
                let count = element.number("c").unwrap_or(1).clamp(1, 1_000);
                let sign = if element.name == "line-break" {
                    "\n"
                } else {
                    " "
                };
                if let Some(cell) = self.cell.as_mut().filter(|_| self.comment == 0) {
                    cell.text.push_str(&sign.repeat(count as usize));
                }
            }
            _ => {}
        }
    }

    fn close(&mut self, name: &str) -> Result<(), TableFault> {
        match name {
            "annotation" => self.comment = self.comment.saturating_sub(1),
            "p" => self.paragraph = self.paragraph.saturating_sub(1),
            "table-cell" | "covered-table-cell" => {
                if let (Some(row), Some(cell)) = (&mut self.row, self.cell.take()) {
                    row.take(&cell)?;
                }
            }
            "table-row" => {
                if let (Some(writer), Some(row)) = (&mut self.writer, self.row.take()) {
                    self.number = row.write(writer, self.number)?;
                }
            }
            "table" => {
                if let Some(writer) = self.writer.take() {
                    let (table, taken) = writer.finish();
                    self.taken = taken;
                    self.tables.extend(table);
                }
            }
            _ => {}
        }
        Ok(())
    }
}

impl OpenRow {
    fn take(&mut self, cell: &OpenCell) -> Result<(), TableFault> {
        let text = cell.stored.as_deref().unwrap_or(&cell.text).trim();
        let first = self.column;
        self.column = self.column.saturating_add(cell.repeated);
        if cell.spanned.0 > 1 || cell.spanned.1 > 1 {
            self.merged.push((first, cell.spanned.0, cell.spanned.1));
        }
        if cell.is_formula {
            self.formulas.push(first);
        }
        if text.is_empty() {
            return Ok(());
        }
        if u64::from(self.column) > COLUMNS {
            return Err(TableFault::TooLarge {
                what: "the number of columns",
                limit: COLUMNS,
                unit: "columns",
            });
        }
        let columns = first..self.column;
        self.cells
            .extend(columns.map(|column| (column, text.to_owned())));
        Ok(())
    }

    /// Writes the row as often as it is repeated; the number of the row after it.
    fn write(self, writer: &mut TableWriter, number: u64) -> Result<u64, TableFault> {
        let after = number + u64::from(self.repeated);
        if self.cells.is_empty() {
            return Ok(after);
        }
        for at in number..after {
            writer.row(u32::try_from(at).unwrap_or(u32::MAX))?;
            for (column, text) in &self.cells {
                writer.cell(*column, text)?;
            }
            for column in &self.formulas {
                writer.formula(*column);
            }
            for (column, rows, columns) in &self.merged {
                let row = u32::try_from(at).unwrap_or(u32::MAX);
                writer.note(TableNote::Merged {
                    first: CellPlace {
                        row,
                        column: *column,
                    },
                    last: CellPlace {
                        row: row.saturating_add(rows.saturating_sub(1)),
                        column: column.saturating_add(columns.saturating_sub(1)),
                    },
                });
            }
        }
        Ok(after)
    }
}

/// The day of a date, without the time of day where that is midnight.
fn day(date: &str) -> String {
    date.strip_suffix("T00:00:00").unwrap_or(date).to_owned()
}
