//! How `designs.toml` names a sheet: by its accession number, or by its row in the file.

use crate::exchange::intake::proposal::ProposedRow;
use crate::study::search::words::number_key;

/// A text with its place in the file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// Its line, from 1; 0 where it stands in no file.
    pub line: usize,
    /// Its column in characters, from 1.
    pub column: usize,
}

impl Written {
    /// A text that stands in no file.
    #[must_use]
    pub fn new(text: &str) -> Written {
        Written {
            text: text.to_owned(),
            line: 0,
            column: 0,
        }
    }
}

/// What names a sheet, for comparing.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum SheetName {
    /// The number of a row: "row 7".
    Row(u32),
    /// An accession number, as it is compared.
    Number(String),
}

impl SheetName {
    /// What a text names; `None` where it has neither letters nor figures.
    pub fn of(text: &str) -> Option<SheetName> {
        if let Some(row) = text.trim().strip_prefix("row ")
            && let Ok(row) = row.trim().parse()
        {
            return Some(SheetName::Row(row));
        }
        number_key(text).map(SheetName::Number)
    }

    /// The names of a row: its number in the file, and its accession number where it has one.
    pub fn all_of(row: &ProposedRow) -> impl Iterator<Item = SheetName> {
        let number = row.accession.as_deref().and_then(number_key);
        std::iter::once(SheetName::Row(row.row)).chain(number.map(SheetName::Number))
    }
}
