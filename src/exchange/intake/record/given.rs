//! The names that the fields of `[as_given]` have.
//!
//! A field is called as its heading. A column without a heading is called by its letter, "column D". A heading that an
//! earlier column has, or that is a key of the table itself (`seen`, `source`, `private`), gets a number: "Title (2)".

use std::collections::BTreeSet;

use crate::exchange::intake::columns::ColumnReading;
use crate::exchange::intake::table::CellPlace;
use crate::read::shape::AS_GIVEN;

/// The names of the fields of `[as_given]`, one a column.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GivenNames(Vec<(usize, String)>);

impl GivenNames {
    /// The names for the columns of a table.
    #[must_use]
    pub fn of(columns: &[ColumnReading]) -> GivenNames {
        let mut taken: BTreeSet<String> = BTreeSet::new();
        taken.insert("private".to_owned());
        taken.extend(AS_GIVEN.keys().map(|key| key.name.to_owned()));
        let mut names = Vec::new();
        for column in columns {
            let heading = column.heading.trim();
            let heading = if heading.is_empty() {
                format!("column {}", letters(column.column))
            } else {
                heading.to_owned()
            };
            let numbered = (2..).map(|number| format!("{heading} ({number})"));
            let mut candidates = std::iter::once(heading.clone()).chain(numbered);
            let name = candidates.find(|name| !taken.contains(name));
            let name = name.unwrap_or(heading);
            taken.insert(name.clone());
            names.push((column.column, name));
        }
        GivenNames(names)
    }

    /// The name of a column's field.
    #[must_use]
    pub fn name(&self, column: usize) -> Option<&str> {
        let mut names = self.0.iter();
        let found = names.find(|(at, _)| *at == column)?;
        Some(&found.1)
    }

    /// The column of a field.
    #[must_use]
    pub fn column(&self, name: &str) -> Option<usize> {
        let mut names = self.0.iter();
        names.find(|(_, known)| known == name).map(|(at, _)| *at)
    }

    /// Each column with the name of its field, in the order of the columns.
    pub fn all(&self) -> impl Iterator<Item = (usize, &str)> {
        self.0.iter().map(|(column, name)| (*column, name.as_str()))
    }
}

/// The letters by which spreadsheet programs call a column.
fn letters(column: usize) -> String {
    let place = CellPlace {
        row: 1,
        column: u32::try_from(column).unwrap_or(u32::MAX - 1),
    };
    let named = place.to_string();
    named.trim_end_matches('1').to_owned()
}
