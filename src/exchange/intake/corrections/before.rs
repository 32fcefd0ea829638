//! The words that a record has from the file before, as cells of the columns now.

use std::collections::BTreeMap;

use crate::exchange::intake::record::GivenNames;
use crate::model::as_found::AsGiven;

/// The holder's words in a record, by the columns of a table.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GivenBefore {
    cells: BTreeMap<usize, String>,
}

impl GivenBefore {
    /// The words of `[as_given]`. Fields of which the table has no column are left out.
    #[must_use]
    pub fn of(given: &AsGiven, names: &GivenNames) -> GivenBefore {
        let cells = given.fields.iter().filter_map(|field| {
            let column = names.column(&field.name)?;
            Some((column, field.text.value.clone()))
        });
        GivenBefore {
            cells: cells.collect(),
        }
    }

    /// The text of a column then; empty where there was none.
    #[must_use]
    pub fn cell(&self, column: usize) -> &str {
        self.cells.get(&column).map_or("", String::as_str)
    }
}
