//! The order in which pages list designs and sheets.

use super::book::Here;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};

impl Here<'_> {
    /// The designs, in the order of the catalogue.
    pub fn designs_in_order(&self) -> impl Iterator<Item = &Design> {
        let designs = &self.public().designs;
        self.book
            .studies
            .order
            .keys()
            .iter()
            .filter_map(move |key| designs.get(key))
    }

    /// The published sheets, each by the record whose page it has, by design in the order of the catalogue.
    pub fn sheets_in_order(&self) -> impl Iterator<Item = (&Design, &Impression)> {
        let joined = self.joined();
        self.impressions_in_order()
            .filter(move |(_, impression)| joined.has_page(&impression.key))
    }

    /// The published records of impressions, by design in the order of the catalogue.
    pub fn impressions_in_order(&self) -> impl Iterator<Item = (&Design, &Impression)> {
        self.designs_in_order()
            .flat_map(|d| d.impressions.values().map(move |i| (d, i)))
    }
}

/// The impressions of a design that lists show: one for each distinct sheet, the record whose page it has, without
/// withdrawn records.
pub(crate) fn listed<'d>(here: &Here<'_>, design: &'d Design) -> Vec<&'d Impression> {
    design
        .impressions
        .values()
        .filter(|i| !i.standing.is_withdrawn() && here.joined().has_page(&i.key))
        .collect()
}

/// The sort key of a sheet: its states and its printings, as places in the record. Where it is not
/// identified, the place is `usize::MAX`, so that it comes last.
pub(crate) type Rank = (Vec<usize>, Vec<usize>);

/// The sort key of a sheet.
pub(crate) fn rank(design: &Design, impression: &Impression) -> Rank {
    let Some(reading) = &impression.identified else {
        return (vec![usize::MAX], vec![usize::MAX]);
    };
    let state_place = |key: &crate::model::key::Key| {
        design
            .states
            .iter()
            .position(|s| s.key.value == *key)
            .unwrap_or(usize::MAX)
    };
    let states: Vec<usize> = match &reading.state {
        None => vec![usize::MAX],
        Some(StateReading::OneOf(states)) => states.iter().map(|s| state_place(&s.value)).collect(),
        Some(StateReading::ByMatrix(pairs)) => {
            pairs.iter().map(|(_, s)| state_place(&s.value)).collect()
        }
    };
    let printings: Vec<usize> = reading
        .printing
        .iter()
        .map(|p| {
            design
                .printings
                .iter()
                .position(|known| known.key.value == p.value)
                .unwrap_or(usize::MAX)
        })
        .collect();
    let printings = if printings.is_empty() {
        vec![usize::MAX]
    } else {
        printings
    };
    (states, printings)
}
