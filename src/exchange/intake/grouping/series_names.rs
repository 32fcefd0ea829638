//! The series of the catalogue by the names that rows give them.

use std::collections::BTreeMap;

use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::Facts;
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;
use crate::model::series_place::SeriesRef;
use crate::study::search::words::number_key;

/// The series that have records, by key and title.
#[derive(Default)]
pub(super) struct SeriesNames {
    by_name: BTreeMap<String, Key>,
}

impl SeriesNames {
    pub(super) fn of(catalogue: &Catalogue) -> SeriesNames {
        let mut by_name = BTreeMap::new();
        for series in catalogue.series.values() {
            let titles = series.titles.iter().map(|title| title.text.value.as_str());
            for name in titles.chain([series.key.as_str()]).filter_map(number_key) {
                by_name.entry(name).or_insert_with(|| series.key.clone());
            }
        }
        SeriesNames { by_name }
    }

    /// The series of a row: the record that it names, else the name as written.
    pub(super) fn series(&self, facts: &Facts) -> Option<SeriesRef> {
        if let Some(key) = &facts.series {
            return Some(SeriesRef::Record(key.clone()));
        }
        let name = facts.texts.get(Holds::Series)?.trim();
        let known = self.by_name.get(&number_key(name)?);
        Some(known.map_or_else(
            || SeriesRef::Named(name.to_owned()),
            |key| SeriesRef::Record(key.clone()),
        ))
    }

    /// The same for comparing.
    pub(super) fn key_of(&self, facts: &Facts) -> Option<String> {
        Some(compared(&self.series(facts)?))
    }
}

/// A series as it is compared: by the key of its record, else by its name, folded.
pub(super) fn compared(series: &SeriesRef) -> String {
    match series {
        SeriesRef::Record(key) => format!("series:{key}"),
        SeriesRef::Named(name) => number_key(name).unwrap_or_default(),
    }
}
