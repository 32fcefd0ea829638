//! Reads a list of references: a table of comma-separated values, one column of which has them.

use std::fs;
use std::path::Path;

use super::super::outcome::Outcome;
use crate::read::near::nearest;

/// The largest list, in bytes: some hundred thousand rows.
const LARGEST: u64 = 64 * 1024 * 1024;

/// Which column is wanted.
#[derive(Clone, Copy, Debug)]
pub(super) struct WantedColumn<'a> {
    /// Its heading or number; `None`: the only one.
    pub column: Option<&'a str>,
    /// Whether the first row has the headings.
    pub has_headings: bool,
}

/// A list that was read.
#[derive(Debug)]
pub(super) struct List {
    headings: Option<csv::StringRecord>,
    rows: Vec<csv::StringRecord>,
    column: usize,
    delimiter: u8,
}

/// Why a list could not be read.
#[derive(Debug)]
pub(super) struct Refusal {
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
    /// How the command ends.
    pub outcome: Outcome,
}

impl Refusal {
    fn new(message: impl Into<String>, help: impl Into<String>, outcome: Outcome) -> Refusal {
        Refusal {
            message: message.into(),
            help: help.into(),
            outcome,
        }
    }
}

impl List {
    /// Reads a list.
    ///
    /// # Errors
    /// [`Refusal`] where there is no such file or column, or the file is no table in UTF-8.
    pub(super) fn read(file: &Path, wanted: &WantedColumn<'_>) -> Result<List, Refusal> {
        let bytes = bytes(file)?;
        let text = text(&bytes)?;
        let delimiter = delimiter(text);
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(delimiter)
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let rows: Result<Vec<csv::StringRecord>, csv::Error> = reader.records().collect();
        let mut rows = rows.map_err(|fault| {
            let line = fault.position().map_or(1, csv::Position::line);
            Refusal::new(
                format!("line {line} cannot be read as a row of a table"),
                "save the table as CSV in UTF-8",
                Outcome::NotDone,
            )
        })?;
        let headings = (wanted.has_headings && !rows.is_empty()).then(|| rows.remove(0));
        let width = rows
            .iter()
            .chain(&headings)
            .map(csv::StringRecord::len)
            .max();
        let column = column(wanted, headings.as_ref(), width.unwrap_or(0))?;
        Ok(List {
            headings,
            rows,
            column,
            delimiter,
        })
    }

    /// The references, one for each row.
    pub(super) fn references(&self) -> impl Iterator<Item = &str> {
        let column = self.column;
        self.rows
            .iter()
            .map(move |row| row.get(column).unwrap_or_default())
    }

    /// The row of headings.
    pub(super) fn headings(&self) -> Option<&csv::StringRecord> {
        self.headings.as_ref()
    }

    /// The rows below it.
    pub(super) fn rows(&self) -> impl Iterator<Item = &csv::StringRecord> {
        self.rows.iter()
    }

    /// How many cells the widest row has.
    pub(super) fn width(&self) -> usize {
        let rows = self.rows.iter().chain(&self.headings);
        rows.map(csv::StringRecord::len).max().unwrap_or(0)
    }

    /// What stands between cells.
    pub(super) fn delimiter(&self) -> u8 {
        self.delimiter
    }
}

fn bytes(file: &Path) -> Result<Vec<u8>, Refusal> {
    let refused = |fault: std::io::Error| {
        let help = "name a table that can be read";
        Refusal::new(format!("cannot be read: {fault}"), help, Outcome::Usage)
    };
    let about = fs::metadata(file).map_err(refused)?;
    if !about.is_file() {
        let help = "name a table: a file of comma-separated values";
        return Err(Refusal::new("is not a file", help, Outcome::Usage));
    }
    if about.len() > LARGEST {
        return Err(Refusal::new(
            format!("has more than {} MB", LARGEST / 1_000_000),
            "divide it into several lists",
            Outcome::NotDone,
        ));
    }
    fs::read(file).map_err(refused)
}

/// The text of a file in UTF-8, without the mark at its beginning that some programs write.
fn text(bytes: &[u8]) -> Result<&str, Refusal> {
    const HELP: &str = "save it as CSV in UTF-8 (in a spreadsheet program: “CSV UTF-8”)";
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err(Refusal::new("is in UTF-16", HELP, Outcome::NotDone));
    }
    if bytes.starts_with(b"PK\x03\x04") {
        return Err(Refusal::new(
            "is a workbook of a spreadsheet program, no CSV",
            HELP,
            Outcome::NotDone,
        ));
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    std::str::from_utf8(bytes).map_err(|fault| {
        let before = &bytes[..fault.valid_up_to()];
        let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
        let message = format!("line {line} is not in UTF-8");
        Refusal::new(message, HELP, Outcome::NotDone)
    })
}

/// What stands between the cells of the first row: of comma, semicolon and tab the most frequent outside quotes; the
/// comma where none occurs.
fn delimiter(text: &str) -> u8 {
    let mut counts = [(b',', 0), (b';', 0), (b'\t', 0)];
    let mut is_quoted = false;
    for byte in text.bytes() {
        match byte {
            b'"' => is_quoted = !is_quoted,
            b'\n' | b'\r' if !is_quoted => break,
            _ if is_quoted => {}
            _ => {
                for (delimiter, count) in &mut counts {
                    *count += usize::from(*delimiter == byte);
                }
            }
        }
    }
    // Of equal counts the last is taken, so the comma stands last.
    let most = counts.iter().rev().max_by_key(|(_, count)| *count);
    most.map_or(b',', |(delimiter, _)| *delimiter)
}

/// The place of the column with the references.
fn column(
    wanted: &WantedColumn<'_>,
    headings: Option<&csv::StringRecord>,
    width: usize,
) -> Result<usize, Refusal> {
    let names: Vec<&str> = headings.into_iter().flatten().map(str::trim).collect();
    let all = || {
        if names.is_empty() {
            format!("the table has {width} columns; name one by its number from 1")
        } else {
            format!("the columns are {}", names.join(", "))
        }
    };
    let Some(name) = wanted.column else {
        return if width <= 1 {
            Ok(0)
        } else {
            let message = format!("has {width} columns, and nothing says which has the references");
            let help = format!("name it with --column; {}", all());
            Err(Refusal::new(message, help, Outcome::Usage))
        };
    };
    let name = name.trim();
    let is_it = |heading: &&str| heading.to_lowercase() == name.to_lowercase();
    let mut having = (0..names.len()).filter(|at| is_it(&names[*at]));
    match (having.next(), having.next()) {
        (Some(first), Some(second)) => {
            let message = format!(
                "the columns {} and {} are both called `{name}`",
                first + 1,
                second + 1
            );
            let help = "name the column by its number";
            Err(Refusal::new(message, help, Outcome::Usage))
        }
        (Some(at), None) => Ok(at),
        (None, _) => match name.parse::<usize>() {
            Ok(number) if (1..=width).contains(&number) => Ok(number - 1),
            _ => {
                let near = nearest(name, names.iter().copied());
                let help = near.map_or_else(all, |near| format!("the nearest is `{near}`"));
                let message = format!("has no column `{name}`");
                Err(Refusal::new(message, help, Outcome::Usage))
            }
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_delimiter_is_the_most_frequent_one_outside_quotes() {
        assert_eq!(delimiter("a;b;c\n1,2,3,4"), b';');
        assert_eq!(delimiter("\"a;b;c\",d\n"), b',');
        assert_eq!(delimiter("a\tb, c\td"), b'\t');
        assert_eq!(delimiter("number"), b',');
        assert_eq!(delimiter("a,b;c"), b',');
    }
}
