//! What rows are made of: the records in the order of the catalogue, their keys and their permanent addresses.

use super::cell::Cell;
use crate::exchange::format::Sources;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::page::{Address, Fragment};

/// A sheet with its design.
pub(super) type SheetRow<'s> = (&'s Design, &'s Impression);

impl<'s> Sources<'s> {
    /// The designs, in readers' order.
    pub fn designs(self) -> impl Iterator<Item = &'s Design> {
        let order = self.studies.order.keys().iter();
        order.filter_map(move |key| self.public.designs.get(key))
    }

    /// The sheets, by design and number.
    pub fn sheets(self) -> impl Iterator<Item = SheetRow<'s>> {
        self.designs().flat_map(|design| {
            design
                .impressions
                .values()
                .map(move |sheet| (design, sheet))
        })
    }

    /// The permanent address of a page.
    pub fn address(self, address: &Address) -> Cell {
        Cell::Text(address.absolute(&self.public.settings.address.value))
    }

    /// The permanent address of a place on the page of a design.
    pub fn design_part(self, design: &Design, part: Fragment<'_>) -> Cell {
        let page = Address::Design(design.key.clone());
        let page = page.absolute(&self.public.settings.address.value);
        Cell::Text(format!("{page}#{part}"))
    }
}

/// The key of a part of a design in tables: `14/moonlit`.
pub(super) fn part(design: &Design, key: &Key) -> Cell {
    Cell::Text(format!("{}/{key}", design.key))
}

/// The same of a part that may not be recorded.
pub(super) fn some_part(design: &Design, key: Option<&Placed<Key>>) -> Cell {
    key.map(|key| part(design, key)).into()
}

/// The keys of several parts.
pub(super) fn parts<'k>(design: &Design, keys: impl IntoIterator<Item = &'k Placed<Key>>) -> Cell {
    let keys = keys.into_iter();
    Cell::list(keys.map(|key| format!("{}/{}", design.key, key.value)))
}

/// The records of a list, each with its owner and its place, from 1.
pub(super) fn numbered<'s, O: Copy + 's, T>(
    owner: O,
    list: &'s [T],
) -> impl Iterator<Item = (O, usize, &'s T)> {
    list.iter()
        .zip(1..)
        .map(move |(item, at)| (owner, at, item))
}
