//! Which records are one sheet, and which records count as sheets.
//!
//! In: the `same_as` links of a catalogue. Out: [`Groups`], made by union and find.
//! Definitions: `docs/definitions.md, "Which records count"` and `"Distinct sheets"`.

use std::collections::{BTreeMap, BTreeSet};

use super::readings::readings;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::impression::{CountedSheet, Identification, Impression};
use keyblock_model::key::{ImpressionKey, Key};

/// The records of a catalogue, grouped by sheet.
#[derive(Clone, Debug)]
pub struct Groups {
    of: BTreeMap<ImpressionKey, ImpressionKey>,
    /// The groups of several records, by their first.
    several: BTreeMap<ImpressionKey, BTreeSet<ImpressionKey>>,
}

impl Groups {
    /// Groups every record of the catalogue by `same_as`; links to unknown records are ignored.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Groups {
        let mut groups = Groups {
            of: catalogue
                .impressions()
                .map(|(_, i)| (i.key.clone(), i.key.clone()))
                .collect(),
            several: BTreeMap::new(),
        };
        for (_, impression) in catalogue.impressions() {
            for other in &impression.same_as {
                groups.join(&impression.key, &other.impression.value);
            }
        }
        let keys: Vec<ImpressionKey> = groups.of.keys().cloned().collect();
        for key in keys {
            let first = groups.first_of(&key);
            if first != key {
                let records = groups.several.entry(first.clone()).or_default();
                records.extend([first.clone(), key.clone()]);
            }
            groups.of.insert(key, first);
        }
        groups
    }

    /// The sheets of several records: the first record of each, and all.
    pub fn of_several(&self) -> impl Iterator<Item = (&ImpressionKey, &BTreeSet<ImpressionKey>)> {
        self.several.iter()
    }

    /// The other records of the sheet that `record` shows.
    pub fn others_of(&self, record: &ImpressionKey) -> impl Iterator<Item = &ImpressionKey> {
        let records = self.several.get(self.of.get(record).unwrap_or(record));
        let records = records.into_iter().flatten();
        records.filter(move |other| *other != record)
    }

    /// The first record of the group that `record` belongs to: the name of the sheet.
    #[must_use]
    pub fn first_of(&self, record: &ImpressionKey) -> ImpressionKey {
        let mut at = record;
        while let Some(parent) = self.of.get(at) {
            if parent == at {
                break;
            }
            at = parent;
        }
        at.clone()
    }

    fn join(&mut self, a: &ImpressionKey, b: &ImpressionKey) {
        if !self.of.contains_key(a) || !self.of.contains_key(b) {
            return;
        }
        let (first_of_a, first_of_b) = (self.first_of(a), self.first_of(b));
        let first = first_of_a.clone().min(first_of_b.clone());
        // Each record met leads to the first at once, so that no chain of links grows long.
        for record in [a.clone(), b.clone(), first_of_a, first_of_b] {
            self.of.insert(record, first.clone());
        }
    }
}

/// Whether a record counts as a sheet: it was not withdrawn, and it is not identified only with
/// printings that were not made from the design's own matrices.
#[must_use]
pub fn is_counted(design: &Design, impression: &Impression) -> bool {
    !impression.standing.is_withdrawn()
        && is_of_own_matrices(design, impression.identified.as_ref())
}

/// The same of a sheet that is counted and not shown.
#[must_use]
pub(crate) fn is_counted_only(design: &Design, sheet: &CountedSheet) -> bool {
    is_of_own_matrices(design, sheet.identified.as_ref())
}

/// Whether some reading of a sheet allows that it was printed from the design's own matrices; a sheet that is not
/// identified may have been.
#[must_use]
pub fn is_of_own_matrices(design: &Design, identified: Option<&Identification>) -> bool {
    let Some(identified) = identified else {
        return true;
    };
    let is_of_other_matrices = |key: &Key| design.printing(key).is_some_and(|p| !p.is_counted());
    !readings(identified).all(|reading| {
        !reading.printing.is_empty()
            && reading
                .printing
                .iter()
                .all(|p| is_of_other_matrices(&p.value))
    })
}
