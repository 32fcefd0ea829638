//! Whether what was handed in names somebody whom the catalogue keeps private.

use crate::audit::private_names::{Extent, NameSearch};
use crate::exchange::intake::record::PrivateNames;
use crate::model::catalogue::Catalogue;

/// The search for the private names of a catalogue.
pub struct PrivateNameSearch(Option<NameSearch>);

impl PrivateNameSearch {
    /// The search for everything that the catalogue keeps private.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> PrivateNameSearch {
        PrivateNameSearch(NameSearch::of_catalogue(catalogue))
    }
}

impl PrivateNames for PrivateNameSearch {
    fn tell(&self, text: &str) -> bool {
        let hits = self.0.as_ref().map(|search| search.hits(text));
        let mut hits = hits.into_iter().flatten();
        hits.any(|hit| hit.extent == Extent::Whole)
    }
}
