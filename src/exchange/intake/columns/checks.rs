//! Columns against each other: heights and widths against sizes in words, accession numbers that stand twice.

use std::collections::{BTreeMap, HashMap};

use super::holds::Holds;
use super::reading::ColumnReading;
use crate::exchange::intake::reading::sizes::{Length, Unit, assumed_by, length, sizes};
use crate::exchange::intake::table::{RowView, Table};

/// What columns say against each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ColumnDoubt {
    /// The numbers of the height column are the widths of the sizes in words, and the other way round.
    HeightAndWidthExchanged {
        /// The column of heights, from 0.
        height: usize,
        /// The column of widths.
        width: usize,
        /// The column of sizes in words.
        dimensions: usize,
        /// In how many rows they are exchanged.
        exchanged: usize,
        /// How many rows tell.
        of: usize,
    },
    /// Heights and widths are not those of the sizes in words, in most rows.
    SizesContradict {
        /// The column of heights, from 0.
        height: usize,
        /// The column of widths.
        width: usize,
        /// The column of sizes in words.
        dimensions: usize,
        /// In how many rows they differ.
        differ: usize,
        /// How many rows tell.
        of: usize,
    },
    /// Accession numbers stand in several rows.
    AccessionRepeats {
        /// The column, from 0.
        column: usize,
        /// The numbers that do, with their rows: the first twenty.
        numbers: Vec<(String, Vec<u32>)>,
        /// How many numbers do.
        count: usize,
    },
    /// No column holds accession numbers.
    NoAccession,
}

impl ColumnDoubt {
    /// The column beside which it is told, from 0; `None` where it is about all of them.
    #[must_use]
    pub fn column(&self) -> Option<usize> {
        match self {
            ColumnDoubt::HeightAndWidthExchanged { height, .. }
            | ColumnDoubt::SizesContradict { height, .. } => Some(*height),
            ColumnDoubt::AccessionRepeats { column, .. } => Some(*column),
            ColumnDoubt::NoAccession => None,
        }
    }

    /// The doubt in one sentence.
    #[must_use]
    pub fn message(&self) -> String {
        match self {
            ColumnDoubt::HeightAndWidthExchanged { exchanged, of, .. } => format!(
                "in {exchanged} of {of} rows the height is the width of the sizes in words; the columns may be exchanged"
            ),
            ColumnDoubt::SizesContradict { differ, of, .. } => {
                format!("in {differ} of {of} rows height and width differ from the sizes in words")
            }
            ColumnDoubt::AccessionRepeats { count: 1, .. } => {
                "an accession number stands in several rows".to_owned()
            }
            ColumnDoubt::AccessionRepeats { count, .. } => {
                format!("{count} accession numbers stand in several rows")
            }
            ColumnDoubt::NoAccession => "no column holds accession numbers".to_owned(),
        }
    }
}

/// Every doubt about the columns of a table, as they are read.
#[must_use]
pub fn checked(table: &Table, columns: &[ColumnReading]) -> Vec<ColumnDoubt> {
    let mut doubts = Vec::new();
    doubts.extend(sizes_checked(table, columns));
    match find(columns, Holds::Accession) {
        Some(column) => doubts.extend(repeats(table, column.column)),
        None => doubts.push(ColumnDoubt::NoAccession),
    }
    doubts
}

fn find(columns: &[ColumnReading], holds: Holds) -> Option<&ColumnReading> {
    columns.iter().find(|column| column.holds == holds)
}

/// The sizes that words say.
struct SizesInWords {
    said: Vec<(Length, Length)>,
    /// The unit of the first: numbers without one beside the words are taken in it.
    unit: Option<Unit>,
}

impl SizesInWords {
    fn of(words: &str, column: &ColumnReading) -> SizesInWords {
        let said = sizes(words, column.assumed).is;
        SizesInWords {
            unit: said.first().and_then(|m| m.unit),
            said: said
                .iter()
                .filter_map(|m| Some((m.height?, m.width?)))
                .collect(),
        }
    }
}

/// Compares heights and widths with the sizes in words of the same row, where one measurement agrees at all.
fn sizes_checked(table: &Table, columns: &[ColumnReading]) -> Option<ColumnDoubt> {
    let heights = find(columns, Holds::Height)?;
    let widths = find(columns, Holds::Width)?;
    let dimensions = find(columns, Holds::Dimensions)?;
    let units = find(columns, Holds::Unit);
    let (mut agree, mut exchanged, mut differ) = (0, 0, 0);
    let mut known: HashMap<&str, SizesInWords> = HashMap::new();
    for row in table.rows() {
        let words = row.cell(dimensions.column);
        let SizesInWords { said, unit: beside } = known
            .entry(words)
            .or_insert_with(|| SizesInWords::of(words, dimensions));
        let unit = units.and_then(|units| unit_of(row, units.column));
        let value = |column: &ColumnReading| {
            let unit = unit.or(column.assumed.unit).or(*beside);
            length(row.cell(column.column), unit).is
        };
        let (Some(height), Some(width)) = (value(heights), value(widths)) else {
            continue;
        };
        // A square tells nothing of which is which.
        if said.is_empty() || height.agrees(width) {
            continue;
        }
        let fits = |a: Length, b: Length| said.iter().any(|(h, w)| h.agrees(a) && w.agrees(b));
        if fits(height, width) {
            agree += 1;
        } else if fits(width, height) {
            exchanged += 1;
        } else {
            differ += 1;
        }
    }
    let of = agree + exchanged + differ;
    let places = (heights.column, widths.column, dimensions.column);
    let (height, width, dimensions) = places;
    if exchanged * 2 > of {
        return Some(ColumnDoubt::HeightAndWidthExchanged {
            height,
            width,
            dimensions,
            exchanged,
            of,
        });
    }
    ((exchanged + differ) * 2 > of).then_some(ColumnDoubt::SizesContradict {
        height,
        width,
        dimensions,
        differ: exchanged + differ,
        of,
    })
}

fn unit_of(row: RowView<'_>, column: usize) -> Option<Unit> {
    assumed_by(row.cell(column)).unit
}

fn repeats(table: &Table, column: usize) -> Option<ColumnDoubt> {
    let mut rows: BTreeMap<&str, Vec<u32>> = BTreeMap::new();
    for row in table.rows() {
        let number = row.cell(column);
        if !number.is_empty() {
            rows.entry(number).or_default().push(row.number());
        }
    }
    let repeated: Vec<(&str, Vec<u32>)> = rows
        .into_iter()
        .filter(|(_, rows)| rows.len() > 1)
        .collect();
    let count = repeated.len();
    let first = repeated.into_iter().take(20);
    let numbers = first
        .map(|(number, rows)| (number.to_owned(), rows))
        .collect();
    (count > 0).then_some(ColumnDoubt::AccessionRepeats {
        column,
        numbers,
        count,
    })
}
