//! Bars beside figures, and columns over time: small drawings of counts, each beside a table or text
//! with the same numbers.
//!
//! In: counts. Out: coordinates in px for inline SVG; `parts/counts.html` and `parts/decades.html` draw
//! them.

use serde::Serialize;

use crate::study::census::Sheets;
use crate::study::occasions::Decade;

/// The longest bar, in px.
const LONGEST: usize = 112;

/// A bar: filled up to the certain number, hollow up to the largest possible one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Bar {
    sure: usize,
    open: usize,
}

impl Bar {
    /// The bar of a count in a table whose largest is `most`.
    pub fn of(sheets: Sheets, most: usize) -> Bar {
        let length = |n: usize| match n {
            0 => 0,
            // The least visible length.
            n => (n * LONGEST / most.max(1)).max(2),
        };
        let sure = length(sheets.at_least);
        Bar {
            sure,
            open: length(sheets.at_most).saturating_sub(sure),
        }
    }
}

/// A square whose area shows a number; `None` for zero.
pub(crate) fn square(sheets: Sheets, most: usize) -> Option<Square> {
    let side = |n: usize| (n * LARGEST * LARGEST / most.max(1)).isqrt().max(2);
    (sheets.at_most > 0).then(|| Square {
        sure: if sheets.at_least == 0 {
            0
        } else {
            side(sheets.at_least)
        },
        all: side(sheets.at_most),
    })
}

/// The side of the largest square, in px.
const LARGEST: usize = 22;

/// A square within a square: the certain number within the largest possible one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Square {
    sure: usize,
    all: usize,
}

/// The distance between columns, in px.
const STEP: usize = 34;
/// A column's width, in px.
const WIDE: usize = 22;
/// The highest column, in px.
const HIGHEST: usize = 120;
/// Room above the highest column for its number, in px.
const ABOVE: usize = 20;
/// Room below the columns for the years, in px.
const BELOW: usize = 24;

/// Columns over decades; sheets met for the first time at the foot of each.
#[derive(Debug, Serialize)]
pub(crate) struct Columns {
    width: usize,
    height: usize,
    /// The base line of the columns.
    ground: usize,
    columns: Vec<Column>,
}

#[derive(Debug, Serialize)]
struct Column {
    x: usize,
    middle: usize,
    wide: usize,
    first_top: usize,
    first: usize,
    again_top: usize,
    again: usize,
    /// The total, above the column; empty for none.
    number: String,
    /// The decade's first year, below; empty where it would stand too close to another.
    year: String,
}

/// The columns of consecutive decades.
pub(crate) fn columns(decades: &[Decade]) -> Columns {
    let most = decades.iter().map(|d| d.first.len() + d.again.len()).max();
    let most = most.unwrap_or(0).max(1);
    let ground = ABOVE + HIGHEST;
    let height = |n: usize| (n * HIGHEST).div_ceil(most);
    let column = |(place, decade): (usize, &Decade)| {
        let (first, again) = (height(decade.first.len()), height(decade.again.len()));
        let all = decade.first.len() + decade.again.len();
        Column {
            x: place * STEP + (STEP - WIDE) / 2,
            middle: place * STEP + STEP / 2,
            wide: WIDE,
            first_top: ground - first,
            first,
            again_top: ground.saturating_sub(first + again),
            again,
            number: if all == 0 {
                String::new()
            } else {
                all.to_string()
            },
            year: if decade.from.rem_euclid(20) == 0 || decades.len() < 8 {
                decade.from.to_string()
            } else {
                String::new()
            },
        }
    };
    Columns {
        width: decades.len() * STEP,
        height: ground + BELOW,
        ground,
        columns: decades.iter().enumerate().map(column).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::key::ImpressionKey;

    fn sheets(at_least: usize, at_most: usize) -> Sheets {
        Sheets {
            at_least,
            at_most,
            exact: true,
        }
    }

    #[test]
    fn bars_share_one_scale_and_show_what_is_open() {
        assert_eq!(Bar::of(sheets(8, 8), 8), Bar { sure: 112, open: 0 });
        assert_eq!(Bar::of(sheets(1, 2), 8), Bar { sure: 14, open: 14 });
        assert_eq!(Bar::of(sheets(0, 1), 1000), Bar { sure: 0, open: 2 });
        assert_eq!(Bar::of(sheets(0, 0), 0), Bar { sure: 0, open: 0 });
    }

    #[test]
    fn four_times_as_many_are_a_square_twice_as_wide() {
        let side = |n| square(sheets(n, n), 16).unwrap().all;
        assert_eq!((side(16), side(4), side(1)), (22, 11, 5));
        assert_eq!(square(sheets(0, 0), 16), None);
    }

    #[test]
    fn a_column_never_leaves_the_drawing() {
        let sheet: ImpressionKey = "1.1".parse().unwrap();
        let decade = |first, again| Decade {
            from: 1930,
            first: vec![sheet.clone(); first],
            again: vec![sheet.clone(); again],
        };
        let drawn = columns(&[decade(3, 4), decade(0, 0), decade(1, 0)]);
        for column in &drawn.columns {
            assert!(column.again_top >= ABOVE - 2, "{column:?}");
            assert_eq!(column.first_top + column.first, drawn.ground);
            assert!(column.x + column.wide <= drawn.width);
        }
    }
}
