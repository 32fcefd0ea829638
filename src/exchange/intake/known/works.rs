//! Columns whose heading names an earlier catalogue: their numbers are of that catalogue.
//!
//! In: the columns of a table, its rows. Sets what such a column holds where nothing else says it, and the author of the
//! references that the column gives without one. `Dreyloft 1936` above a column of numbers is all that a museum writes.

use std::sync::Arc;

use super::names::CatalogueNames;
use crate::exchange::intake::columns::{ColumnReading, Ground, Holds};
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::intake::reading::states::{CatalogueSaid, catalogue_numbers};
use crate::exchange::intake::table::Table;
use crate::model::certainty::Certainty;

impl CatalogueNames<'_> {
    /// Takes the columns that are not known and whose heading names an earlier catalogue for its numbers.
    pub fn name_columns(&self, columns: &mut [ColumnReading]) {
        for column in columns {
            if column.holds == Holds::Unknown && self.work_of_heading(&column.heading).is_some() {
                column.holds = Holds::CatalogueNumber;
                column.sure = Certainty::Probable;
                column.why = vec![Ground::HeadingHas];
            }
        }
    }

    /// Adds the author to references without one that come from a column whose heading names an earlier catalogue.
    pub fn name_references(
        &self,
        rows: &mut [ProposedRow],
        table: &Table,
        columns: &[ColumnReading],
    ) {
        let works: Vec<(usize, &str)> = columns
            .iter()
            .filter(|column| column.holds == Holds::CatalogueNumber)
            .filter_map(|column| Some((column.column, self.work_of_heading(&column.heading)?)))
            .collect();
        if works.is_empty() {
            return;
        }
        let mut views = table.rows().peekable();
        for row in rows {
            while views.next_if(|view| view.number() < row.row).is_some() {}
            let Some(view) = views.peek().filter(|view| view.number() == row.row) else {
                continue;
            };
            for (column, work) in &works {
                for said in catalogue_numbers(view.cell(*column)).is {
                    name(&mut row.facts.references, said, work);
                }
            }
        }
    }
}

/// Names the work of a reference that a column gives. Where another column gave the same number and was named before, this
/// is a reference of its own.
fn name(references: &mut Vec<Arc<CatalogueSaid>>, said: CatalogueSaid, work: &str) {
    if said.author.is_some() {
        return;
    }
    let same = references
        .iter_mut()
        .find(|known| known.author.is_none() && known.number == said.number);
    match same {
        Some(known) => Arc::make_mut(known).author = Some(work.to_owned()),
        None => references.push(Arc::new(CatalogueSaid {
            author: Some(work.to_owned()),
            ..said
        })),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_number_in_two_columns_is_two_references() {
        let said = || CatalogueSaid {
            number: Some("5".to_owned()),
            ..CatalogueSaid::default()
        };
        let mut references = vec![Arc::new(said())];
        name(&mut references, said(), "Dreyloft");
        name(&mut references, said(), "Ambry");
        let authors: Vec<Option<&str>> = references.iter().map(|r| r.author.as_deref()).collect();
        assert_eq!(authors, [Some("Dreyloft"), Some("Ambry")]);
    }
}
