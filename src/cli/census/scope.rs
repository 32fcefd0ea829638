//! The scope of a census: a design, a series or everything, with its counts.

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::study::DesignStudy;
use crate::study::census::Census;

/// A census with its scope.
pub(super) enum ScopedCensus<'a> {
    /// One design.
    Design(&'a Design, Box<DesignStudy>),
    /// The designs of a series; its name.
    Series(&'a str, Census),
    /// Every design.
    Everything(Census),
}

impl ScopedCensus<'_> {
    /// The counts.
    pub(super) fn census(&self) -> &Census {
        match self {
            ScopedCensus::Design(_, study) => &study.census,
            ScopedCensus::Series(_, census) | ScopedCensus::Everything(census) => census,
        }
    }

    /// The designs that are counted.
    pub(super) fn designs<'c>(
        &'c self,
        catalogue: &'c Catalogue,
    ) -> impl Iterator<Item = &'c Design> {
        let is_counted = |design: &&Design| match self {
            ScopedCensus::Design(one, _) => one.key == design.key,
            ScopedCensus::Series(name, _) => {
                let series = design.series.as_ref();
                series.is_some_and(|series| series.name.value == *name)
            }
            ScopedCensus::Everything(_) => true,
        };
        catalogue.designs.values().filter(is_counted)
    }

    /// The design and its study, where it is one design.
    pub(super) fn design(&self) -> Option<(&Design, &DesignStudy)> {
        match self {
            ScopedCensus::Design(design, study) => Some((design, study)),
            _ => None,
        }
    }
}
