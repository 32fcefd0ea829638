//! The distinct values of a table, each read once.

use std::collections::BTreeSet;

use rayon::prelude::*;

use super::kept::KeptReading;
use super::settled::{SettledValue, SettledValues};
use super::sureness::Sureness;
use crate::exchange::intake::cell::{CellContext, CellReading, cell, is_read_by_grammar};
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::table::Table;
use crate::model::certainty::Certainty;

/// The distinct values of a table.
#[derive(Clone, Debug, Default)]
pub struct Values {
    columns: Vec<ValueColumn>,
    kept: Vec<SettledValue>,
}

/// The distinct values of a column.
#[derive(Clone, Debug)]
pub struct ValueColumn {
    /// Its place, from 0.
    pub column: usize,
    /// Its heading.
    pub heading: String,
    /// What it holds.
    pub holds: Holds,
    /// Its values, in the order of their texts.
    values: Vec<DistinctValue>,
    /// What an editor corrected of texts that no row has, in their order: an earlier file had them.
    earlier: Vec<(String, CellReading)>,
}

/// A text that stands in a column.
#[derive(Clone, Debug)]
pub struct DistinctValue {
    /// The text.
    pub text: Box<str>,
    /// In how many rows it stands.
    pub rows: u32,
    reading: KeptReading,
    /// What the program reads, where an editor said otherwise.
    program: Option<Box<KeptReading>>,
}

impl DistinctValue {
    /// What it reads.
    #[must_use]
    pub fn reading(&self) -> CellReading {
        self.reading.reading()
    }

    /// What the program reads, where an editor said otherwise.
    #[must_use]
    pub fn program(&self) -> Option<CellReading> {
        self.program.as_ref().map(|program| program.reading())
    }

    /// How sure the reading is.
    #[must_use]
    pub fn sure(&self) -> Sureness {
        match self.program {
            Some(_) => Sureness::ByHand,
            None => Sureness::of(self.reading.sure()),
        }
    }

    /// Whether an editor wrote the reading.
    #[must_use]
    pub fn is_by_hand(&self) -> bool {
        self.program.is_some()
    }
}

impl ValueColumn {
    /// The values in the order of their texts.
    #[must_use]
    pub fn values(&self) -> &[DistinctValue] {
        &self.values
    }

    /// The values as an editor wants them: the unsure first, then those in most rows.
    #[must_use]
    pub fn by_need(&self) -> Vec<&DistinctValue> {
        let mut values: Vec<&DistinctValue> = self.values.iter().collect();
        values.sort_by_key(|value| (value.sure(), std::cmp::Reverse(value.rows)));
        values
    }
}

impl Values {
    /// Reads the distinct values of every column that is read (`cell`), and takes an editor's word where there is one.
    #[must_use]
    pub fn of(
        table: &Table,
        columns: &[ColumnReading],
        lexicon: &Lexicon,
        settled: &SettledValues,
    ) -> Values {
        let headings: BTreeSet<&str> = columns.iter().map(|c| c.heading.as_str()).collect();
        let is_in_table = |heading: &str| headings.contains(heading);
        let mut used: BTreeSet<usize> = BTreeSet::new();
        let mut values = Values::default();
        for column in columns.iter().filter(|c| is_read_by_grammar(c.holds)) {
            let mut cells: Vec<&str> = table
                .rows()
                .map(|row| row.cell(column.column))
                .filter(|cell| !cell.is_empty())
                .collect();
            cells.sort_unstable();
            let same: Vec<&[&str]> = cells.chunk_by(|a, b| a == b).collect();
            let context = CellContext {
                assumed: column.assumed,
                lexicon,
            };
            let read = same.par_iter().with_min_len(64).map(|same| {
                let text = same[0];
                let program = cell(column.holds, text, context);
                let place = settled.find(column.holds, &column.heading, text, is_in_table);
                let value = distinct(text, same.len(), program, place.map(|p| &settled.all()[p]));
                (value, place)
            });
            let (mut read, places): (Vec<DistinctValue>, Vec<Option<usize>>) = read.unzip();
            read.shrink_to_fit();
            used.extend(places.into_iter().flatten());
            values.columns.push(ValueColumn {
                column: column.column,
                heading: column.heading.clone(),
                holds: column.holds,
                values: read,
                earlier: Vec::new(),
            });
        }
        let unused = settled.all().iter().enumerate();
        values.kept = unused
            .filter(|(place, _)| !used.contains(place))
            .map(|(_, value)| value.clone())
            .collect();
        for column in &mut values.columns {
            let (holds, heading) = (column.holds, &column.heading);
            let kept = values.kept.iter().filter(|value| value.holds == holds);
            let texts: BTreeSet<&str> = kept.map(|value| value.text.as_str()).collect();
            let earlier = texts.into_iter().filter_map(|text| {
                let place = settled.find(holds, heading, text, is_in_table)?;
                Some((text.to_owned(), by_hand(&settled.all()[place])))
            });
            column.earlier = earlier.collect();
        }
        values
    }

    /// The reading of a cell, also of a text that an earlier file had, where an editor corrected it; `None` where the column
    /// is not read, or where no row has the text.
    #[must_use]
    pub fn reading(&self, column: usize, text: &str) -> Option<CellReading> {
        let column = self.columns.iter().find(|known| known.column == column)?;
        let values = &column.values;
        if let Ok(place) = values.binary_search_by(|value| (*value.text).cmp(text)) {
            return Some(values[place].reading());
        }
        let earlier = &column.earlier;
        let place = earlier.binary_search_by(|(known, _)| known.as_str().cmp(text));
        place.ok().map(|place| earlier[place].1.clone())
    }

    /// The columns that are read, in their order.
    #[must_use]
    pub fn columns(&self) -> &[ValueColumn] {
        &self.columns
    }

    /// What editors corrected and no row of this table has: kept for the next file of the house.
    #[must_use]
    pub fn kept(&self) -> &[SettledValue] {
        &self.kept
    }
}

fn distinct(
    text: &str,
    rows: usize,
    program: CellReading,
    settled: Option<&SettledValue>,
) -> DistinctValue {
    let (reading, program) = match settled {
        Some(settled) => (by_hand(settled), Some(Box::new(KeptReading::of(program)))),
        None => (program, None),
    };
    DistinctValue {
        text: text.into(),
        rows: u32::try_from(rows).unwrap_or(u32::MAX),
        reading: KeptReading::of(reading),
        program,
    }
}

/// What an editor wrote is all that the value says, and certain.
fn by_hand(settled: &SettledValue) -> CellReading {
    CellReading {
        facts: settled.facts.clone(),
        left: Vec::new(),
        doubts: Vec::new(),
        sure: Some(Certainty::Certain),
    }
}
