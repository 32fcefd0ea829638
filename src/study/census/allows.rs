//! The values under which a sheet may be counted: those that its records allow.
//!
//! In: the records of a sheet, or a sheet that is counted and not shown. Out: [`Values`] for each kind of row.
//! Definitions: `docs/definitions.md, "Rows of the census"`.

use std::collections::BTreeSet;

use super::crossing::{self, StateAndPrinting};
use super::readings::{or_nothing, readings, states_of};
use super::rows::HolderAndState;
use super::values::{Value, Values};
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::impression::{CountedSheet, Identification, Impression, Status};
use keyblock_model::key::Key;
use keyblock_model::vocabulary::CountingClass;

/// What one record says, a set of values for each kind of row. Where the record says nothing, the set is empty.
#[derive(Default)]
pub(super) struct RecordAllows {
    holder: BTreeSet<Option<Key>>,
    country: BTreeSet<Option<String>>,
    city: BTreeSet<Option<String>>,
    state: BTreeSet<Option<Key>>,
    printing: BTreeSet<Option<Key>>,
    crossing: BTreeSet<Option<StateAndPrinting>>,
    kind: BTreeSet<Option<Key>>,
    class: BTreeSet<Option<CountingClass>>,
    status: BTreeSet<Option<Status>>,
}

/// The values of one sheet, for each kind of row.
#[derive(Default)]
pub(super) struct SheetAllows {
    pub holder: Values<Option<Key>>,
    pub country: Values<Option<String>>,
    pub city: Values<Option<String>>,
    pub state: Values<Option<Key>>,
    pub printing: Values<Option<Key>>,
    pub crossing: Values<Option<StateAndPrinting>>,
    pub holding: Values<Option<HolderAndState>>,
    pub kind: Values<Option<Key>>,
    pub class: Values<Option<CountingClass>>,
    pub status: Values<Option<Status>>,
}

impl RecordAllows {
    /// What a record says.
    pub fn of(catalogue: &Catalogue, design: &Design, record: &Impression) -> RecordAllows {
        let identified = record.identified.as_ref();
        let mut allows =
            RecordAllows::of_readings(catalogue, design, identified, record.kind.own());
        if let Some(holder) = &record.holder {
            allows.holder.insert(Some(holder.value.clone()));
            if let Some(holder) = catalogue.holders.get(&holder.value) {
                let country = holder.country.as_ref().map(|c| c.value.clone());
                allows.country.extend(country.map(Some));
                let town = holder.town.as_ref().map(|t| t.value.clone());
                allows.city.extend(town.map(Some));
            }
        }
        allows.status.insert(Some(record.status.value));
        allows
    }

    fn of_readings(
        catalogue: &Catalogue,
        design: &Design,
        identified: Option<&Identification>,
        own_kind: Option<&Key>,
    ) -> RecordAllows {
        let mut allows = RecordAllows::default();
        match identified {
            None => allows.kind.extend(own_kind.cloned().map(Some)),
            Some(identified) => allows.read(design, identified, own_kind),
        }
        let class = |kind: &Key| catalogue.vocabularies.class_of(kind);
        let classes = allows.kind.iter().map(|kind| kind.as_ref().map(class));
        allows.class = classes.collect();
        allows
    }

    fn read(&mut self, design: &Design, identified: &Identification, own_kind: Option<&Key>) {
        let states: BTreeSet<Option<Key>> = readings(identified).flat_map(states_of).collect();
        let printings: BTreeSet<Option<Key>> = readings(identified)
            .flat_map(|r| or_nothing(r.printing.iter().map(|p| p.value.clone()).collect()))
            .collect();
        // A reading without a state or printing makes the value doubtful only where another reading names one.
        if states.iter().any(Option::is_some) {
            self.state = states;
        }
        if printings.iter().any(Option::is_some) {
            self.printing = printings;
        }
        let pairs = crossing::of_record(design, identified);
        if pairs
            .iter()
            .any(|pair| *pair != StateAndPrinting::default())
        {
            self.crossing = pairs.into_iter().map(Some).collect();
        }
        let kinds = readings(identified)
            .filter_map(|reading| reading.kind.as_ref().map(|k| &k.value).or(own_kind));
        self.kind.extend(kinds.cloned().map(Some));
    }
}

impl SheetAllows {
    /// The values of a sheet of which there are these records.
    pub fn of(design: &Design, records: &[RecordAllows]) -> SheetAllows {
        let mut allows = SheetAllows::of_readings(design, records);
        allows.holder = together(records, |r| &r.holder);
        allows.country = together(records, |r| &r.country);
        allows.city = together(records, |r| &r.city);
        allows.status = together(records, |r| &r.status);
        allows.holding = allows.holder.with(&allows.state, |holder, state| {
            Some(HolderAndState {
                holder: holder.clone(),
                state: state.clone(),
            })
        });
        allows
    }

    /// The values under which a sheet counts that is not shown: a state, a printing and a kind. It is in no row of
    /// holder, country, town and status, not even in the row of what is not recorded.
    pub fn of_counted_only(
        catalogue: &Catalogue,
        design: &Design,
        sheet: &CountedSheet,
    ) -> SheetAllows {
        let (identified, kind) = (sheet.identified.as_ref(), sheet.kind.as_ref());
        let record = RecordAllows::of_readings(catalogue, design, identified, kind);
        SheetAllows::of_readings(design, &[record])
    }

    fn of_readings(design: &Design, records: &[RecordAllows]) -> SheetAllows {
        let mut crossing = Values::of(
            records.iter().map(|record| &record.crossing),
            Some(StateAndPrinting::default()),
        );
        crossing.retain_if_any(|pair| pair.as_ref().is_none_or(|p| p.is_known(design)));
        SheetAllows {
            state: together(records, |r| &r.state),
            printing: together(records, |r| &r.printing),
            crossing,
            kind: together(records, |r| &r.kind),
            class: together(records, |r| &r.class),
            ..SheetAllows::default()
        }
    }
}

/// The values of a sheet of one kind of row.
fn together<T: Ord + Clone>(
    records: &[RecordAllows],
    said: impl Fn(&RecordAllows) -> &BTreeSet<Option<T>>,
) -> Values<Option<T>>
where
    Option<T>: Value,
{
    Values::of(records.iter().map(said), None)
}
