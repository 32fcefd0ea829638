//! What `designs.toml` says of single sheets: which recorded impression a sheet is, and which it is not.
//!
//! An editor's word comes before everything that intake finds: the number of the row, a column that names the impression,
//! the reasons of `census --doubts`.

use std::collections::HashMap;

use super::sheet_name::{SheetName, Written};
use crate::exchange::intake::proposal::ProposedRow;
use crate::model::key::ImpressionKey;

/// What an editor says of a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SettledSheet {
    /// The sheet: an accession number, or a row ("row 7").
    pub sheet: Written,
    /// The impression that it is.
    pub is: Option<NamedImpression>,
    /// The impressions that it is not.
    pub is_not: Vec<NamedImpression>,
    /// Why, in the editor's words.
    pub why: Option<String>,
}

/// An impression that `designs.toml` names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedImpression {
    /// Its key.
    pub key: ImpressionKey,
    /// Where it is named.
    pub at: Written,
}

impl SettledSheet {
    /// Whether it says anything. What is only asked about is proposed anew by each run.
    #[must_use]
    pub fn says_something(&self) -> bool {
        self.is.is_some() || !self.is_not.is_empty()
    }

    /// Whether the sheet is said not to be an impression.
    #[must_use]
    pub fn excludes(&self, impression: &ImpressionKey) -> bool {
        self.is_not.iter().any(|named| named.key == *impression)
    }
}

/// What editors say of sheets, by the names of sheets.
#[derive(Debug, Default)]
pub struct SettledSheets<'s> {
    by_name: HashMap<SheetName, &'s SettledSheet>,
}

impl<'s> SettledSheets<'s> {
    /// Those of a file. A sheet that stands twice is what it is first.
    #[must_use]
    pub fn of(sheets: &'s [SettledSheet]) -> SettledSheets<'s> {
        let mut by_name = HashMap::new();
        for settled in sheets.iter().filter(|settled| settled.says_something()) {
            if let Some(name) = SheetName::of(&settled.sheet.text) {
                by_name.entry(name).or_insert(settled);
            }
        }
        SettledSheets { by_name }
    }

    /// What is said of the sheet of a row: by the row's number, else by its accession number.
    #[must_use]
    pub fn row(&self, row: &ProposedRow) -> Option<&'s SettledSheet> {
        if self.by_name.is_empty() {
            return None;
        }
        SheetName::all_of(row).find_map(|name| self.by_name.get(&name).copied())
    }

    /// The impression that the sheet of a row is said to be.
    #[must_use]
    pub fn impression(&self, row: &ProposedRow) -> Option<&'s ImpressionKey> {
        Some(&self.row(row)?.is.as_ref()?.key)
    }

    /// Whether the sheet of a row is said not to be an impression.
    #[must_use]
    pub fn excludes(&self, row: &ProposedRow, impression: &ImpressionKey) -> bool {
        self.row(row)
            .is_some_and(|settled| settled.excludes(impression))
    }
}
