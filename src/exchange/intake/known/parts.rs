//! What a row names of a design: states, printings, and what earlier catalogues say of the sheet.

use super::earlier::CitedEntry;
use super::names::CatalogueNames;
use super::own::Named;
use crate::exchange::intake::facts::Facts;
use crate::exchange::intake::proposal::NamedParts;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::key::Key;

impl CatalogueNames<'_> {
    /// The parts of a recorded design that facts name. What is doubtful about them is told where rows are grouped.
    #[must_use]
    pub fn parts(&self, design: &Key, facts: &Facts) -> NamedParts {
        let (parts, _) = self.parts_and_doubts(design, facts, |said| self.cited(said));
        parts
    }

    /// The same, with what is doubtful about the parts, in words. `cited`: what a reference means.
    pub fn parts_and_doubts(
        &self,
        design: &Key,
        facts: &Facts,
        mut cited: impl FnMut(&CatalogueSaid) -> CitedEntry,
    ) -> (NamedParts, Vec<String>) {
        let mut parts = NamedParts::default();
        let mut doubts = Vec::new();
        let mut own = |named: Named| {
            doubts.extend(named.doubts);
            named.keys
        };
        if let Some(text) = &facts.own.state {
            parts.states = own(self.state(design, text));
        }
        if let Some(text) = &facts.own.printing {
            parts.printings = own(self.printing(design, text));
        }
        for said in &facts.references {
            let entry = cited(said);
            let (opinion, told) = self.opinion(design, said, &entry);
            if said.number.is_none() {
                doubts.extend(entry.doubts);
            }
            doubts.extend(told);
            parts.opinions.extend(opinion);
        }
        (parts, doubts)
    }
}
