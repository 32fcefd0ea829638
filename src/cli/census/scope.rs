//! The scope of a census: a design, a series or everything, with its counts.

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::series_place::SeriesRef;
use crate::study::DesignStudy;
use crate::study::census::Census;
use crate::study::series;

/// A census with its scope.
pub(super) enum ScopedCensus<'a> {
    /// One design.
    Design(&'a Design, Box<DesignStudy>),
    /// A series.
    Series(&'a SeriesRef, Census),
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
            ScopedCensus::Series(of, _) => series::is_in(design, of),
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

/// The series that designs and printings name, found by the key, a title or the name.
pub(super) fn series_named<'c>(catalogue: &'c Catalogue, name: &str) -> Option<&'c SeriesRef> {
    let all = series::named(catalogue);
    let is_titled = |of: &&&SeriesRef| {
        let record = of.key().and_then(|key| catalogue.series.get(key));
        record.is_some_and(|record| record.titles.iter().any(|t| t.text.value == name))
    };
    let by_key = all.iter().find(|of| of.as_str() == name);
    by_key.or_else(|| all.iter().find(is_titled)).copied()
}

/// The title of a series, or its name.
pub(super) fn series_name(catalogue: &Catalogue, of: &SeriesRef) -> String {
    let record = of.key().and_then(|key| catalogue.series.get(key));
    record.map_or_else(
        || of.as_str().to_owned(),
        |record| record.name().into_owned(),
    )
}
