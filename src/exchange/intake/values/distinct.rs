//! The distinct values of a table, each read once.

use std::collections::{BTreeSet, HashMap};

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
    /// The value of each row of the table, by its place in `values`; [`NO_VALUE`] where the cell is empty.
    of_rows: Vec<u32>,
    /// What an editor corrected of texts that no row has, in their order: an earlier file had them.
    earlier: Vec<(String, KeptReading)>,
}

const NO_VALUE: u32 = u32::MAX;

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
            None => Sureness::of(self.reading.sure),
        }
    }

    /// Whether an editor wrote the reading.
    #[must_use]
    pub fn is_by_hand(&self) -> bool {
        self.program.is_some()
    }
}

impl ValueColumn {
    /// The reading of the cell of a row, by the place of the row in the table; `None` where the cell is empty.
    #[must_use]
    pub fn of_row(&self, row: usize) -> Option<&KeptReading> {
        let place = self.of_rows.get(row)?;
        let value = self.values.get(usize::try_from(*place).ok()?)?;
        Some(&value.reading)
    }

    /// The reading of a text, also of one that an earlier file had, where an editor corrected it; `None` where no row has it.
    #[must_use]
    pub fn of_text(&self, text: &str) -> Option<&KeptReading> {
        let values = &self.values;
        if let Ok(place) = values.binary_search_by(|value| (*value.text).cmp(text)) {
            return Some(&values[place].reading);
        }
        let earlier = &self.earlier;
        let place = earlier.binary_search_by(|(known, _)| known.as_str().cmp(text));
        place.ok().map(|place| &earlier[place].1)
    }

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
            let DistinctTexts { texts, of_rows } = DistinctTexts::of(table, column.column);
            let context = CellContext {
                assumed: column.assumed,
                lexicon,
            };
            let read = texts.par_iter().with_min_len(64).map(|(text, rows)| {
                let program = cell(column.holds, text, context);
                let place = settled.find(column.holds, &column.heading, text, is_in_table);
                let value = distinct(text, *rows, program, place.map(|p| &settled.all()[p]));
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
                of_rows,
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
                let reading = KeptReading::of(by_hand(&settled.all()[place]));
                Some((text.to_owned(), reading))
            });
            column.earlier = earlier.collect();
        }
        values
    }

    /// The reading of a text in a column ([`ValueColumn::of_text`]); `None` also where the column is not read.
    #[must_use]
    pub fn reading(&self, column: usize, text: &str) -> Option<CellReading> {
        self.column(column)?.of_text(text).map(KeptReading::reading)
    }

    /// The values of a column, by its place in the table; `None` where it is not read.
    #[must_use]
    pub fn column(&self, column: usize) -> Option<&ValueColumn> {
        self.columns.iter().find(|known| known.column == column)
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

/// The texts of a column in their order, each with the number of its rows.
struct DistinctTexts<'t> {
    texts: Vec<(&'t str, u32)>,
    /// The text of each row, by its place.
    of_rows: Vec<u32>,
}

impl<'t> DistinctTexts<'t> {
    fn of(table: &'t Table, column: usize) -> DistinctTexts<'t> {
        let mut texts: Vec<(&str, u32)> = Vec::new();
        let mut known: HashMap<&str, u32> = HashMap::new();
        let mut of_rows: Vec<u32> = Vec::with_capacity(table.rows().len());
        for row in table.rows() {
            let text = row.cell(column);
            if text.is_empty() {
                of_rows.push(NO_VALUE);
                continue;
            }
            let place = *known.entry(text).or_insert_with(|| {
                texts.push((text, 0));
                place_of(texts.len() - 1)
            });
            texts[place as usize].1 += 1;
            of_rows.push(place);
        }
        drop(known);
        let mut order: Vec<u32> = (0..place_of(texts.len())).collect();
        order.sort_unstable_by_key(|place| texts[*place as usize].0);
        let mut rank = vec![0; texts.len()];
        for (at, place) in order.iter().enumerate() {
            rank[*place as usize] = place_of(at);
        }
        for place in of_rows.iter_mut().filter(|place| **place != NO_VALUE) {
            *place = rank[*place as usize];
        }
        texts.sort_unstable();
        DistinctTexts { texts, of_rows }
    }
}

/// A place among the texts of a table, of which there are fewer than four thousand million (`table::limits`).
fn place_of(place: usize) -> u32 {
    u32::try_from(place).unwrap_or(NO_VALUE)
}

fn distinct(
    text: &str,
    rows: u32,
    program: CellReading,
    settled: Option<&SettledValue>,
) -> DistinctValue {
    let (reading, program) = match settled {
        Some(settled) => (by_hand(settled), Some(Box::new(KeptReading::of(program)))),
        None => (program, None),
    };
    DistinctValue {
        text: text.into(),
        rows,
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
