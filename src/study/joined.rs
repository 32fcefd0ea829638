//! Which record's page is the page of a sheet that has several records.
//!
//! Records of one design that are joined by `same_as`, directly or through others, are one sheet, and one sheet has one
//! page. It is that of the record that is located; where none is, of one that is not untraced; else of the
//! first; among several, the first by number. Withdrawn records are left out: they keep a page, which explains.
//!
//! In: the catalogue and its groups. Out: [`JoinedSheets`]. Definition: `docs/definitions.md, "The page of a sheet"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::Studies;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "untraced"
//! same_as = [{ impression = "1.2" }]
//! -- records/designs/1/impressions/2.toml
//! status = "located"
//! "#);
//! let joined = &Studies::of(&catalogue).joined;
//! assert_eq!(joined.page_of(&"1.1".parse().unwrap()).to_string(), "1.2");
//! ```

use std::collections::BTreeMap;

use super::census::Groups;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::impression::{Impression, Status};
use keyblock_model::key::{ImpressionKey, Key};

/// The sheets that have several records.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JoinedSheets {
    /// The record whose page each of their records shares, itself included.
    page_of: BTreeMap<ImpressionKey, ImpressionKey>,
    /// All records of each such page, its own first, then by number.
    records: BTreeMap<ImpressionKey, Vec<ImpressionKey>>,
}

impl JoinedSheets {
    /// Finds the joined records of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue, groups: &Groups) -> JoinedSheets {
        let mut joined = JoinedSheets::default();
        for (_, records) in groups.of_several() {
            let mut by_design: BTreeMap<&Key, Vec<&Impression>> = BTreeMap::new();
            let known = records.iter().filter_map(|key| catalogue.impression(key));
            for record in known.filter(|record| !record.standing.is_withdrawn()) {
                by_design
                    .entry(&record.key.design)
                    .or_default()
                    .push(record);
            }
            for records in by_design.into_values().filter(|records| records.len() > 1) {
                joined.add(records);
            }
        }
        joined
    }

    /// Adds the records of one sheet, by number.
    fn add(&mut self, mut records: Vec<&Impression>) {
        // The sort is stable, so that records of one rank stay in the order of their numbers.
        records.sort_by_key(|record| {
            let place = match record.status.value {
                Status::Located => 0,
                Status::Destroyed | Status::Stolen => 1,
                Status::Untraced => 2,
            };
            (record.standing.is_set_apart(), place)
        });
        let Some((page, others)) = records.split_first() else {
            return;
        };
        let mut others: Vec<ImpressionKey> = others.iter().map(|r| r.key.clone()).collect();
        others.sort();
        let all: Vec<ImpressionKey> = std::iter::once(page.key.clone()).chain(others).collect();
        for record in &all {
            self.page_of.insert(record.clone(), page.key.clone());
        }
        self.records.insert(page.key.clone(), all);
    }

    /// The record whose page is that of the sheet.
    #[must_use]
    pub fn page_of<'k>(&'k self, record: &'k ImpressionKey) -> &'k ImpressionKey {
        self.page_of.get(record).unwrap_or(record)
    }

    /// Whether the page of the record is that of its sheet.
    #[must_use]
    pub fn has_page(&self, record: &ImpressionKey) -> bool {
        self.page_of(record) == record
    }

    /// Whether the sheet of the record has others.
    #[must_use]
    pub fn is_joined(&self, record: &ImpressionKey) -> bool {
        self.page_of.contains_key(record)
    }

    /// The other records of the sheet whose page is that of `record`, by number.
    #[must_use]
    pub fn others_on(&self, record: &ImpressionKey) -> &[ImpressionKey] {
        let all = self.records.get(record).map_or(&[][..], Vec::as_slice);
        all.get(1..).unwrap_or_default()
    }

    /// The records of a sheet on its page, in the order in which it gives them: itself, then the others by number.
    pub fn on_page<'c>(&self, design: &'c Design, page: &'c Impression) -> Vec<&'c Impression> {
        let others = self.others_on(&page.key).iter();
        let others = others.filter_map(|key| design.impressions.get(&key.number));
        std::iter::once(page).chain(others).collect()
    }
}
