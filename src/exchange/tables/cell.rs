//! The values of a table's cells.
//!
//! In: values of the model. Out: a [`Cell`], and its form in CSV and in JSON. Where nothing is recorded the cell
//! is empty: no text in CSV, no member of the object in JSON.

use serde_json::Value;

use crate::model::edtf::{Date, Day};
use crate::model::key::{ImpressionKey, Key, PictureKey};
use crate::model::place::Placed;

/// The sign between the items of a list in CSV.
pub(in crate::exchange) const DELIMITER: &str = "|";

/// The value of a cell.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::exchange) enum Cell {
    /// Nothing is recorded.
    Empty,
    /// A text.
    Text(String),
    /// A whole number.
    Integer(i64),
    /// A number.
    Number(f64),
    /// Yes or no.
    Boolean(bool),
    /// Keys, words or texts without [`DELIMITER`].
    List(Vec<String>),
}

impl Cell {
    /// A list of what is written; empty where there is nothing.
    pub fn list<T: ToString>(items: impl IntoIterator<Item = T>) -> Cell {
        let items = items.into_iter().map(|item| {
            // The words of a record (an ink) may hold the sign; a broken bar reads the same and divides nothing.
            item.to_string().replace(DELIMITER, "\u{a6}")
        });
        match items.collect::<Vec<_>>() {
            none if none.is_empty() => Cell::Empty,
            items => Cell::List(items),
        }
    }

    /// A list of recorded values.
    pub fn placed<T: ToString>(items: &[Placed<T>]) -> Cell {
        Cell::list(items.iter().map(|item| item.value.to_string()))
    }

    /// A day; empty for a year that ISO 8601 does not write with four digits.
    pub fn day(day: Option<Day>) -> Cell {
        match day {
            Some(Day { year, month, day }) if (0..=9999).contains(&year) => {
                Cell::Text(format!("{year:04}-{month:02}-{day:02}"))
            }
            _ => Cell::Empty,
        }
    }

    /// As it stands in CSV, before it is quoted.
    pub fn text(&self) -> String {
        match self {
            Cell::Empty => String::new(),
            Cell::Text(text) => text.clone(),
            Cell::Integer(n) => n.to_string(),
            Cell::Number(x) => x.to_string(),
            Cell::Boolean(is) => is.to_string(),
            Cell::List(items) => items.join(DELIMITER),
        }
    }

    /// Whether a spreadsheet may take it for a formula: a text, and no number.
    pub fn is_text(&self) -> bool {
        matches!(self, Cell::Text(_) | Cell::List(_))
    }

    /// As it stands in JSON; `None` where it is empty.
    pub fn json(&self) -> Option<String> {
        Some(match self {
            Cell::Empty => return None,
            Cell::Text(text) => Value::from(text.as_str()).to_string(),
            Cell::List(items) => Value::from(items.as_slice()).to_string(),
            number => number.text(),
        })
    }
}

impl From<&str> for Cell {
    fn from(text: &str) -> Cell {
        match text {
            "" => Cell::Empty,
            text => Cell::Text(text.to_owned()),
        }
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Cell {
        match text.as_str() {
            "" => Cell::Empty,
            _ => Cell::Text(text),
        }
    }
}

impl From<&String> for Cell {
    fn from(text: &String) -> Cell {
        text.as_str().into()
    }
}

impl From<&Key> for Cell {
    fn from(key: &Key) -> Cell {
        key.as_str().into()
    }
}

impl From<&ImpressionKey> for Cell {
    fn from(key: &ImpressionKey) -> Cell {
        Cell::Text(key.to_string())
    }
}

impl From<&PictureKey> for Cell {
    fn from(key: &PictureKey) -> Cell {
        Cell::Text(key.to_string())
    }
}

impl From<&Date> for Cell {
    fn from(date: &Date) -> Cell {
        date.as_str().into()
    }
}

impl From<u32> for Cell {
    fn from(n: u32) -> Cell {
        Cell::Integer(n.into())
    }
}

impl From<&u32> for Cell {
    fn from(n: &u32) -> Cell {
        (*n).into()
    }
}

impl From<usize> for Cell {
    fn from(n: usize) -> Cell {
        Cell::Integer(i64::try_from(n).unwrap_or(i64::MAX))
    }
}

impl From<f64> for Cell {
    fn from(x: f64) -> Cell {
        Cell::Number(x)
    }
}

impl From<bool> for Cell {
    fn from(is: bool) -> Cell {
        Cell::Boolean(is)
    }
}

impl<'a, T> From<&'a Placed<T>> for Cell
where
    &'a T: Into<Cell>,
{
    fn from(placed: &'a Placed<T>) -> Cell {
        (&placed.value).into()
    }
}

impl<T: Into<Cell>> From<Option<T>> for Cell {
    fn from(value: Option<T>) -> Cell {
        value.map_or(Cell::Empty, Into::into)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_forms_of_a_cell_say_the_same() {
        let forms = |cell: Cell| (cell.text(), cell.json());
        let text = |text: &str| text.to_owned();
        assert_eq!(forms("".into()), (text(""), None));
        assert_eq!(forms(212.0.into()), (text("212"), Some(text("212"))));
        assert_eq!(forms(211.5.into()), (text("211.5"), Some(text("211.5"))));
        assert_eq!(forms(true.into()), (text("true"), Some(text("true"))));
        let list = Cell::list(["red", "blue|grey"]);
        assert_eq!(
            forms(list),
            (text("red|blue¦grey"), Some(text("[\"red\",\"blue¦grey\"]")))
        );
        assert_eq!(Cell::list::<String>([]), Cell::Empty);
    }

    #[test]
    fn a_year_of_five_digits_is_no_day_of_the_standard() {
        let day = |year| {
            Cell::day(Some(Day {
                year,
                month: 2,
                day: 3,
            }))
        };
        assert_eq!(day(44), Cell::Text("0044-02-03".to_owned()));
        assert_eq!(day(-44), Cell::Empty);
        assert_eq!(day(12_000), Cell::Empty);
    }
}
