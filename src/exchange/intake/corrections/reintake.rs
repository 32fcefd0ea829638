//! What the rows of a table change in the records that they are.

use super::before::GivenBefore;
use super::compare::corrections;
use crate::exchange::intake::known::CatalogueNames;
use crate::exchange::intake::proposal::Correction;
use crate::exchange::intake::record::RecordMaker;
use crate::exchange::intake::rows::RowReader;
use crate::model::impression::Impression;

/// What records are compared with: the reader of the rows and the maker of their records, so that the words of the file
/// before are read as those of the file now.
pub struct Reintake<'r> {
    /// Reads rows.
    pub reader: &'r RowReader<'r>,
    /// Makes records.
    pub maker: &'r RecordMaker<'r>,
    /// Finds states and printings.
    pub names: &'r CatalogueNames<'r>,
}

impl Reintake<'_> {
    /// What a proposed record changes in a recorded one.
    #[must_use]
    pub fn corrections(&self, recorded: &Impression, proposed: &Impression) -> Vec<Correction> {
        let earlier = self.earlier(recorded);
        corrections(recorded, earlier.as_ref(), proposed)
    }

    /// The record that intake makes of the holder's words in a record.
    fn earlier(&self, recorded: &Impression) -> Option<Impression> {
        let given = recorded.as_given.as_ref()?;
        let before = GivenBefore::of(given, self.maker.names());
        let cell = |column: usize| before.cell(column);
        let mut row = self.reader.row(0, cell);
        let design = &recorded.key.design;
        row.named = self.names.parts(design, &row.facts);
        let technique = self.maker.technique_of(design);
        let key = recorded.key.clone();
        Some(self.maker.impression(&row, &cell, key, &technique))
    }
}
