//! Rows to a table, in two passes over the records: the first counts the paths, the second writes the rows. So no more than
//! one record is held beside the table.
//!
//! Paths that at least a tenth of the records have come first, in the order in which they are met, then the rarer ones, so
//! that rows stay short. Of more than [`COLUMNS`] paths the rarest share the column [`FURTHER`], as `path: text`.

use indexmap::IndexMap;

use super::limits::{COLUMNS, PATHS};
use super::row::Row;
use crate::exchange::intake::table::{
    RecordNote, Table, TableFault, TableKind, TableNote, TableWriter, Taken,
};

/// The heading of the last column, which holds what has no column of its own.
pub(super) const FURTHER: &str = "further";

/// The paths of a file's records, as they are counted.
#[derive(Debug, Default)]
pub(super) struct PathCounts {
    counts: IndexMap<String, u32>,
    records: u32,
    has_further: bool,
    uncounted: u32,
}

impl PathCounts {
    /// Counts the paths of a record.
    pub fn count(&mut self, row: &Row) {
        self.records += 1;
        self.has_further |= !row.further().is_empty();
        for path in row.paths() {
            if let Some(count) = self.counts.get_mut(path) {
                *count += 1;
            } else if self.counts.len() < PATHS {
                self.counts.insert(path.to_owned(), 1);
            } else {
                self.uncounted += 1;
            }
        }
    }

    /// How many records there are.
    pub fn records(&self) -> u32 {
        self.records
    }

    /// The columns of the table.
    fn columns(self) -> Columns {
        let mut kept: Vec<usize> = (0..self.counts.len()).collect();
        let count = |at: &usize| self.counts[*at];
        kept.sort_by_key(|at| std::cmp::Reverse(count(at)));
        let rare = kept.len().saturating_sub(COLUMNS - 1);
        kept.truncate(COLUMNS - 1);
        let is_rare = |at: &usize| u64::from(count(at)) * 10 < u64::from(self.records);
        kept.sort_by_key(|at| (is_rare(at), *at));
        let paths = kept.into_iter().enumerate();
        let places = paths.filter_map(|(place, at)| {
            let (path, _) = self.counts.get_index(at)?;
            Some((path.clone(), u32::try_from(place).ok()?))
        });
        let rare = u32::try_from(rare).unwrap_or(u32::MAX);
        let moved = rare.saturating_add(self.uncounted);
        Columns {
            places: places.collect(),
            has_further: self.has_further || moved > 0,
            moved,
        }
    }
}

/// The columns of a table: each path with its place.
struct Columns {
    places: IndexMap<String, u32>,
    has_further: bool,
    moved: u32,
}

/// A table of records that is being written.
pub(super) struct Sheet {
    columns: Columns,
    writer: TableWriter,
    record: u32,
}

impl Sheet {
    /// Begins the table with its heading; `taken` is what other tables of the file took.
    pub fn begin(counts: PathCounts, kind: TableKind, taken: Taken) -> Result<Sheet, TableFault> {
        let columns = counts.columns();
        let mut writer = TableWriter::new("", taken).of_kind(kind);
        writer.row(0)?;
        for (path, place) in &columns.places {
            writer.cell(*place, path)?;
        }
        if columns.has_further {
            writer.cell(columns.last(), FURTHER)?;
        }
        if columns.moved > 0 {
            let paths = columns.moved;
            writer.note(TableNote::Records(RecordNote::Further { paths }));
        }
        Ok(Sheet {
            columns,
            writer,
            record: 0,
        })
    }

    /// Writes a record. The number of its row is its number in the file.
    pub fn write(&mut self, row: &Row) -> Result<(), TableFault> {
        self.record += 1;
        self.writer.row(self.record)?;
        let mut further: Vec<String> = Vec::new();
        let mut cells: Vec<(u32, String)> = Vec::new();
        for (path, text) in row.cells() {
            match self.columns.places.get(path) {
                Some(place) => cells.push((*place, text)),
                None => further.push(format!("{path}: {text}")),
            }
        }
        let rest = row.further().iter();
        further.extend(rest.map(|(path, text)| format!("{path}: {text}")));
        cells.sort_by_key(|(place, _)| *place);
        for (place, text) in &cells {
            self.writer.cell(*place, text)?;
        }
        if !further.is_empty() {
            self.writer.cell(self.columns.last(), &further.join("; "))?;
        }
        Ok(())
    }

    /// Adds a note.
    pub fn note(&mut self, note: RecordNote) {
        self.writer.note(TableNote::Records(note));
    }

    /// The table, and what it took of the limits.
    pub fn finish(self) -> (Option<Table>, Taken) {
        self.writer.finish()
    }
}

impl Columns {
    fn last(&self) -> u32 {
        u32::try_from(self.places.len()).unwrap_or(u32::MAX)
    }
}
