//! Columns of heights and widths: which belong together, and what they say beside sizes in words.
//!
//! The words win. A number in a column says neither of what it is nor which way it was measured; a size in words says both
//! (docs/trade.md, "Tables that others hand in"). Where the numbers are those of the words the other way round, or others,
//! that is told.

use std::sync::Arc;

use crate::exchange::intake::cell::size_of_columns;
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::facts::GivenSize;
use crate::exchange::intake::reading::Doubt;
use crate::exchange::intake::reading::sizes::{Length, Measured, Unit, assumed_by, length};
use crate::model::words::ClosedList as _;

/// A column of heights with the column of widths that belongs to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct LengthColumns {
    pub height: usize,
    pub width: usize,
    /// The column of units.
    pub unit: Option<usize>,
    /// What was measured, where the headings say it.
    pub of: Option<Measured>,
    /// The unit, where the headings say it.
    pub assumed: Option<Unit>,
}

/// Each column of heights with the next column of widths of the same thing.
pub(super) fn pairs(columns: &[ColumnReading]) -> Vec<LengthColumns> {
    let hold = |holds| columns.iter().filter(move |column| column.holds == holds);
    let mut used: Vec<usize> = Vec::new();
    let mut pairs = Vec::new();
    for height in hold(Holds::Height) {
        let free = |width: &&ColumnReading| {
            width.assumed.of == height.assumed.of && !used.contains(&width.column)
        };
        let distance = |column: usize| column.abs_diff(height.column);
        let Some(width) = hold(Holds::Width)
            .filter(free)
            .min_by_key(|width| distance(width.column))
        else {
            continue;
        };
        used.push(width.column);
        let unit = hold(Holds::Unit).min_by_key(|unit| distance(unit.column));
        pairs.push(LengthColumns {
            height: height.column,
            width: width.column,
            unit: unit.map(|unit| unit.column),
            of: height.assumed.of,
            assumed: height.assumed.unit.or(width.assumed.unit),
        });
    }
    pairs
}

/// What a height and a width of one row say.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct LengthsSaid {
    /// The size, where it is more than the words say.
    pub size: Option<GivenSize>,
    /// The cells that were not understood or not taken, by column.
    pub unread: Vec<usize>,
    /// What is doubtful in a cell, by column.
    pub doubts: Vec<(usize, Doubt)>,
    /// What is doubtful in the row.
    pub said: Vec<String>,
    /// What the cells say otherwise than the words.
    pub against: Option<String>,
}

/// Reads the height and the width of a row. `words`: the sizes in words; `beside`: their unit, for numbers without one.
/// `is_exchanged`: in most rows of the table heights and widths are exchanged.
pub(super) fn read<'c>(
    pair: &LengthColumns,
    cell: impl Fn(usize) -> &'c str,
    words: &[Arc<GivenSize>],
    beside: Option<Unit>,
    is_exchanged: bool,
) -> LengthsSaid {
    let mut found = LengthsSaid::default();
    let texts = [pair.height, pair.width].map(|column| (column, cell(column).trim()));
    let filled: Vec<usize> = texts
        .iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(column, _)| *column)
        .collect();
    if filled.len() < 2 {
        if !filled.is_empty() {
            found
                .said
                .push("a height without a width, or a width without a height".to_owned());
        }
        found.unread = filled;
        return found;
    }
    let unit_text = pair.unit.map_or("", |column| cell(column).trim());
    let unit = assumed_by(unit_text).unit.or(pair.assumed).or(beside);
    let [height, width] = texts.map(|(column, text)| {
        let reading = length(text, unit);
        let whole = reading.left.is_empty();
        found
            .doubts
            .extend(reading.doubts.iter().map(|doubt| (column, doubt.clone())));
        reading.is.filter(|_| whole)
    });
    let (Some(height), Some(width)) = (height, width) else {
        found.unread = filled;
        return found;
    };
    let said = said(texts.map(|(_, text)| text), unit_text, unit);
    let size = size_of_columns(pair.of, height, width, said);
    compare(&mut found, size, words, is_exchanged, filled);
    found
}

/// Compares a size of two columns with the sizes in words.
fn compare(
    found: &mut LengthsSaid,
    size: GivenSize,
    words: &[Arc<GivenSize>],
    is_exchanged: bool,
    columns: Vec<usize>,
) {
    let of_same: Vec<&Arc<GivenSize>> = match size.of {
        Measured::Unsaid => words.iter().collect(),
        of => words.iter().filter(|word| word.of == of).collect(),
    };
    let turned = GivenSize {
        height: size.width,
        width: size.height,
        ..size.clone()
    };
    if of_same.iter().any(|word| word.agrees(&size)) {
        return;
    }
    if of_same.iter().any(|word| word.agrees(&turned)) {
        found.against = Some(format!(
            "height and width ({}) are the other way round than in the size in words; the words were taken",
            size.said
        ));
        return;
    }
    if !of_same.is_empty() {
        found.against = Some(format!(
            "height and width ({}) are not those of the size in words",
            size.said
        ));
        if size.of == Measured::Unsaid {
            found.size = Some(size);
        }
        return;
    }
    if is_exchanged && !is_square(size.height, size.width) {
        found.said.push(format!(
            "height and width ({}) are exchanged in most rows, and this row has no size in words that tells",
            size.said
        ));
        found.unread = columns;
        return;
    }
    found.size = Some(size);
}

fn is_square(height: Length, width: Length) -> bool {
    height.agrees(width)
}

/// The words of a size in two columns: `24.1 × 17.8 cm`.
fn said([height, width]: [&str; 2], unit_text: &str, unit: Option<Unit>) -> String {
    let has_letters = |text: &str| text.chars().any(|c| c.is_alphabetic() || c == '"');
    let unit = match (has_letters(width), unit_text.is_empty(), unit) {
        (true, _, _) | (false, true, None) => String::new(),
        (false, false, _) => format!(" {unit_text}"),
        (false, true, Some(unit)) => format!(" {}", unit.word()),
    };
    format!("{height} × {width}{unit}")
}
