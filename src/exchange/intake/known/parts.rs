//! What a row names of a design: states, printings, and what earlier catalogues say of the sheet.

use super::names::CatalogueNames;
use crate::exchange::intake::facts::Facts;
use crate::exchange::intake::proposal::NamedParts;
use crate::model::key::Key;

impl CatalogueNames<'_> {
    /// The parts of a recorded design that facts name. What is doubtful about them is told where rows are grouped.
    #[must_use]
    pub fn parts(&self, design: &Key, facts: &Facts) -> NamedParts {
        let state = facts.own.state.as_deref();
        let printing = facts.own.printing.as_deref();
        let opinions = facts.references.iter().filter_map(|said| {
            let entry = self.cited(said);
            self.opinion(design, said, &entry).0
        });
        NamedParts {
            states: state.map_or_else(Vec::new, |text| self.state(design, text).keys),
            printings: printing.map_or_else(Vec::new, |text| self.printing(design, text).keys),
            opinions: opinions.collect(),
        }
    }
}
