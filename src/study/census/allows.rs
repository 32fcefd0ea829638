//! The values under which a sheet may be counted: those that its records allow.
//!
//! In: the records of a sheet, or a sheet that is counted and not shown. Out: a set of values for each kind of row.
//! Definitions: `docs/definitions.md, "Rows of the census"`.

use std::collections::BTreeSet;

use super::crossing::{self, StateAndPrinting};
use super::readings::{or_nothing, readings, states_of};
use super::rows::HolderAndState;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::{CountedSheet, Identification, Impression, Status};
use crate::model::key::Key;
use crate::model::vocabulary::{CountingClass, List};

/// The values that the records of one group allow, a set for each kind of value.
#[derive(Default)]
pub(super) struct Allows {
    pub holder: BTreeSet<Option<Key>>,
    pub country: BTreeSet<Option<String>>,
    pub city: BTreeSet<Option<String>>,
    pub state: BTreeSet<Option<Key>>,
    pub printing: BTreeSet<Option<Key>>,
    pub crossing: BTreeSet<Option<StateAndPrinting>>,
    pub holding: BTreeSet<Option<HolderAndState>>,
    pub kind: BTreeSet<Option<Key>>,
    pub class: BTreeSet<Option<CountingClass>>,
    pub status: BTreeSet<Option<Status>>,
}

/// Where nothing is recorded, the sheet is counted in the row without a key.
fn fill<K: Ord>(set: &mut BTreeSet<Option<K>>) {
    if set.is_empty() {
        set.insert(None);
    }
}

impl Allows {
    /// The values under which a sheet counts that is not shown: a state, a printing and a kind. It is in no row of
    /// holder, country, town and status, not even in the row of what is not recorded.
    pub fn of_counted_only(catalogue: &Catalogue, design: &Design, sheet: &CountedSheet) -> Allows {
        let mut allows = Allows::default();
        allows.add_readings(design, sheet.identified.as_ref(), sheet.kind.as_ref());
        allows.complete_readings(catalogue);
        allows
    }

    /// The values that all records of a sheet allow together.
    pub fn completed(mut self, catalogue: &Catalogue) -> Allows {
        fill(&mut self.holder);
        fill(&mut self.country);
        fill(&mut self.city);
        fill(&mut self.status);
        self.complete_readings(catalogue);
        let pairs = self.holder.iter().flat_map(|holder| {
            self.state.iter().map(move |state| {
                Some(HolderAndState {
                    holder: holder.clone(),
                    state: state.clone(),
                })
            })
        });
        self.holding = pairs.collect();
        self
    }

    fn complete_readings(&mut self, catalogue: &Catalogue) {
        fill(&mut self.state);
        fill(&mut self.printing);
        if self.crossing.is_empty() {
            self.crossing.insert(Some(StateAndPrinting::default()));
        }
        fill(&mut self.kind);
        let class = |kind: &Key| {
            let term = catalogue.vocabularies.term(List::Kinds, kind.as_str());
            term.and_then(|t| t.class).unwrap_or(CountingClass::Other)
        };
        self.class = self.kind.iter().map(|k| k.as_ref().map(class)).collect();
    }

    /// Adds the values that one record allows. A record that does not state a value adds none: another record of the
    /// same sheet may state it.
    pub fn add(&mut self, catalogue: &Catalogue, design: &Design, record: &Impression) {
        if let Some(holder) = &record.holder {
            self.holder.insert(Some(holder.value.clone()));
            if let Some(holder) = catalogue.holders.get(&holder.value) {
                let country = holder.country.as_ref().map(|c| c.value.clone());
                self.country.extend(country.map(Some));
                let town = holder.town.as_ref().map(|t| t.value.clone());
                self.city.extend(town.map(Some));
            }
        }
        self.status.insert(Some(record.status.value));
        self.add_readings(design, record.identified.as_ref(), record.kind.own());
    }

    fn add_readings(
        &mut self,
        design: &Design,
        identified: Option<&Identification>,
        own_kind: Option<&Key>,
    ) {
        let Some(identified) = identified else {
            self.kind.extend(own_kind.cloned().map(Some));
            return;
        };
        crossing::add(&mut self.crossing, crossing::of_record(design, identified));
        let states: BTreeSet<Option<Key>> = readings(identified).flat_map(states_of).collect();
        let printings: BTreeSet<Option<Key>> = readings(identified)
            .flat_map(|r| or_nothing(r.printing.iter().map(|p| p.value.clone()).collect()))
            .collect();
        // A reading without a state or printing makes the value doubtful only where another reading names one.
        if states.iter().any(Option::is_some) {
            self.state.extend(states);
        }
        if printings.iter().any(Option::is_some) {
            self.printing.extend(printings);
        }
        let kinds = readings(identified)
            .filter_map(|reading| reading.kind.as_ref().map(|k| &k.value).or(own_kind));
        self.kind.extend(kinds.cloned().map(Some));
    }
}
