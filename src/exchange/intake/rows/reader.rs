//! A row from its cells.

use std::collections::HashSet;
use std::sync::Arc;

use super::lengths::{self, LengthColumns};
use crate::exchange::intake::cell::{CellContext, CellReading, cell, is_read_by_grammar};
use crate::exchange::intake::columns::{ColumnDoubt, ColumnReading, Holds};
use crate::exchange::intake::facts::{Fact, Facts, OwnNames};
use crate::exchange::intake::proposal::{ProposedRow, RowDoubt, RowStanding};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::choices;
use crate::exchange::intake::reading::sizes::{Unit, sizes};
use crate::exchange::intake::table::Table;
use crate::exchange::intake::values::{KeptReading, ValueColumn, Values};
use crate::study::search::words::number_key;

/// What the rows of one table are read with.
pub struct RowReader<'r> {
    columns: &'r [ColumnReading],
    /// The readings of each of these columns, where it is read.
    readings: Vec<Option<&'r ValueColumn>>,
    pairs: Vec<LengthColumns>,
    is_exchanged: bool,
    lexicon: &'r Lexicon,
}

/// A cell that is being read.
#[derive(Clone, Copy)]
struct Cell<'c> {
    column: &'c ColumnReading,
    text: &'c str,
    /// Its reading, where it is kept.
    reading: Option<&'c KeptReading>,
}

/// Texts that rows have in common, each once.
#[derive(Default)]
struct TextPool(HashSet<Arc<str>>);

impl TextPool {
    fn shared(&mut self, text: &str) -> Arc<str> {
        if let Some(known) = self.0.get(text) {
            return Arc::clone(known);
        }
        let text: Arc<str> = Arc::from(text);
        self.0.insert(Arc::clone(&text));
        text
    }
}

/// Reads every row of a table that has cells, in its order.
#[must_use]
pub fn rows<'r>(table: &Table, reader: &RowReader<'r>) -> Vec<ProposedRow> {
    // One after the other: side by side they took 17 MB more of 50,000 rows, and hardly less time.
    let mut pool = TextPool::default();
    let rows = table.rows().enumerate();
    rows.map(|(place, row)| {
        let reading = |column: &'r ValueColumn, _: &str| column.of_row(place);
        reader.read_row(row.number(), |column| row.cell(column), reading, &mut pool)
    })
    .collect()
}

impl<'r> RowReader<'r> {
    /// A reader for a table. `doubts`: what its columns say against each other; `values`: the readings of its cells;
    /// `lexicon`: for cells that are not among them, such as those of the file before.
    #[must_use]
    pub fn of(
        columns: &'r [ColumnReading],
        doubts: &[ColumnDoubt],
        values: &'r Values,
        lexicon: &'r Lexicon,
    ) -> RowReader<'r> {
        let is_exchanged = doubts
            .iter()
            .any(|doubt| matches!(doubt, ColumnDoubt::HeightAndWidthExchanged { .. }));
        let readings = columns.iter().map(|column| values.column(column.column));
        RowReader {
            columns,
            readings: readings.collect(),
            pairs: lengths::pairs(columns),
            is_exchanged,
            lexicon,
        }
    }

    /// Reads a row. `number` is its number in the file, `cell` gives the text of a column.
    #[must_use]
    pub fn row<'c>(&self, number: u32, cell: impl Fn(usize) -> &'c str + Copy) -> ProposedRow {
        let mut pool = TextPool::default();
        self.read_row(number, cell, ValueColumn::of_text, &mut pool)
    }

    /// The same; `reading` finds the reading of a cell among those of its column.
    fn read_row<'c>(
        &self,
        number: u32,
        cell: impl Fn(usize) -> &'c str + Copy,
        reading: impl Fn(&'r ValueColumn, &str) -> Option<&'r KeptReading>,
        pool: &mut TextPool,
    ) -> ProposedRow {
        let mut row = ProposedRow {
            row: number,
            ..ProposedRow::default()
        };
        for (column, readings) in self.columns.iter().zip(&self.readings) {
            let text = cell(column.column);
            if !text.trim().is_empty() {
                let reading = readings.and_then(|readings| reading(readings, text));
                let cell = Cell {
                    column,
                    text,
                    reading,
                };
                self.add_cell(&mut row, cell, pool);
            }
        }
        self.add_lengths(&mut row, cell);
        if self.is_nothing(&row, cell) {
            row.standing = RowStanding::Nothing;
            let filled = self.columns.iter().map(|column| column.column);
            row.unread = filled
                .filter(|column| !cell(*column).trim().is_empty())
                .map(|column| (column, cell(column).to_owned()))
                .collect();
        }
        row.facts.shrink();
        row.doubts.shrink_to_fit();
        row.unread.shrink_to_fit();
        row
    }

    fn add_cell(&self, row: &mut ProposedRow, cell: Cell<'_>, pool: &mut TextPool) {
        let Cell {
            column,
            text,
            reading,
        } = cell;
        match column.holds {
            Holds::Height | Holds::Width | Holds::Depth | Holds::Unit | Holds::Unknown => {}
            Holds::Accession => add_accession(row, text.trim()),
            Holds::Status if choices::status(text).is_none() => {
                row.unread.push((column.column, text.trim().to_owned()));
            }
            Holds::Publish if choices::yes(text).is_none() => {
                row.unread.push((column.column, text.trim().to_owned()));
            }
            holds => match reading {
                Some(reading) => add_reading(row, column.column, reading),
                None if is_read_by_grammar(holds) => {
                    let reading = KeptReading::of(self.read(column, text));
                    add_reading(row, column.column, &reading);
                }
                None => add_text(&mut row.facts, holds, text.trim(), pool),
            },
        }
        if matches!(column.holds, Holds::Holder | Holds::Series) {
            // That the row names a holder or a series is kept, whether one is found or not.
            add_text(&mut row.facts, column.holds, text.trim(), pool);
        }
    }

    /// Reads a cell that the table does not have and no editor corrected.
    fn read(&self, column: &ColumnReading, text: &str) -> CellReading {
        let context = CellContext {
            assumed: column.assumed,
            lexicon: self.lexicon,
        };
        cell(column.holds, text, context)
    }

    fn add_lengths<'c>(&self, row: &mut ProposedRow, cell: impl Fn(usize) -> &'c str + Copy) {
        for pair in &self.pairs {
            let words = row.facts.sizes.clone();
            // The unit of the words is asked for only where the columns have none of their own.
            let has_unit = pair.unit.is_some_and(|unit| !cell(unit).trim().is_empty());
            let beside = if pair.assumed.is_none() && !has_unit && !words.is_empty() {
                self.unit_in_words(cell)
            } else {
                None
            };
            let found = lengths::read(pair, cell, &words, beside, self.is_exchanged);
            for (column, doubt) in found.doubts {
                row.doubts.push(RowDoubt::Cell { column, doubt });
            }
            row.doubts
                .extend(found.said.into_iter().map(RowDoubt::Said));
            row.doubts
                .extend(found.against.map(|said| RowDoubt::Against {
                    columns: vec![pair.height, pair.width],
                    said,
                }));
            for column in found.unread {
                row.unread.push((column, cell(column).to_owned()));
            }
            let size = found.size.map(|size| Fact::Size(Arc::new(size)));
            let contradictions = row.facts.add(size).into_iter();
            row.doubts
                .extend(contradictions.map(|of| RowDoubt::Contradiction {
                    column: pair.height,
                    of,
                }));
        }
    }

    fn unit_in_words<'c>(&self, cell: impl Fn(usize) -> &'c str) -> Option<Unit> {
        let said = self
            .columns
            .iter()
            .filter(|column| column.holds == Holds::Dimensions);
        let mut measured = said.flat_map(|column| sizes(cell(column.column), column.assumed).is);
        measured.next()?.unit
    }

    /// Whether no record could hold what the row says: it has no number, and nothing of a sheet; or it repeats the
    /// heading, as exports of several pages do.
    fn is_nothing<'c>(&self, row: &ProposedRow, cell: impl Fn(usize) -> &'c str) -> bool {
        let mut filled = self
            .columns
            .iter()
            .filter(|column| !cell(column.column).trim().is_empty())
            .peekable();
        if filled.peek().is_some()
            && filled.all(|column| cell(column.column).trim() == column.heading.trim())
        {
            return true;
        }
        row.accession.is_none() && !says_something(&row.facts)
    }
}

/// Whether facts are of a sheet: not only remarks, who keeps or saw it, or rights.
fn says_something(facts: &Facts) -> bool {
    let of_no_sheet =
        |holds: Holds| matches!(holds, Holds::Holder | Holds::Department | Holds::Remarks);
    if facts.texts.iter().any(|(holds, _)| !of_no_sheet(holds)) {
        return true;
    }
    let Facts {
        title,
        dates,
        sizes,
        techniques,
        papers,
        colours,
        matrices,
        numbering,
        edition,
        kind,
        makers,
        credit,
        references,
        own,
        web,
        holder: _,
        series: _,
        seen: _,
        seen_by: _,
        basis: _,
        rights: _,
        texts: _,
    } = facts;
    title.is_some()
        || !dates.is_empty()
        || !sizes.is_empty()
        || !techniques.is_empty()
        || !papers.is_empty()
        || colours.is_some()
        || matrices.is_some()
        || numbering.is_some()
        || edition.is_some()
        || kind.is_some()
        || !makers.is_empty()
        || credit.is_some()
        || !references.is_empty()
        || *own != OwnNames::default()
        || web.is_some()
}

fn add_accession(row: &mut ProposedRow, text: &str) {
    match &row.accession {
        None => row.accession = Some(text.to_owned()),
        Some(first) if number_key(first) == number_key(text) => {}
        Some(first) => {
            let doubt = format!("the row has two numbers of the holder, {first} and {text}");
            row.doubts.push(RowDoubt::Said(doubt));
        }
    }
}

fn add_reading(row: &mut ProposedRow, column: usize, reading: &KeptReading) {
    let doubts = reading.doubts.iter().cloned();
    row.doubts
        .extend(doubts.map(|doubt| RowDoubt::Cell { column, doubt }));
    if !reading.left.is_empty() {
        row.unread.push((column, reading.left.join(" … ")));
    }
    let found = row.facts.add(reading.facts.iter().cloned());
    row.doubts.extend(
        found
            .into_iter()
            .map(|of| RowDoubt::Contradiction { column, of }),
    );
}

fn add_text(facts: &mut Facts, holds: Holds, text: &str, pool: &mut TextPool) {
    let own = |own: OwnNames| Fact::Own(Box::new(own));
    let fact = match holds {
        Holds::Design => own(OwnNames {
            design: Some(choices::design(text).to_owned()),
            ..OwnNames::default()
        }),
        Holds::OwnState => own(OwnNames {
            state: Some(text.to_owned()),
            ..OwnNames::default()
        }),
        Holds::Printing => own(OwnNames {
            printing: Some(text.to_owned()),
            ..OwnNames::default()
        }),
        _ => Fact::Text(holds, pool.shared(text)),
    };
    facts.add([fact]);
}
