//! The register as one of its editions changed it: what an entry said before and in that edition.
//!
//! An entry under a key that the edition changed is compared with that under its former key.

use std::collections::BTreeMap;

use keyblock_model::issued_address::{IssuedAddress, IssuedKind};
use keyblock_model::register::{Aspect, IssuedEntry, Register, Subject};

/// The register as one of its editions changed it.
pub(super) struct Accounting<'r> {
    register: &'r Register,
    pub edition: usize,
    /// By the address that they lead to since this edition: the addresses of records that had another key.
    moved: BTreeMap<IssuedAddress, (&'r IssuedAddress, &'r IssuedEntry)>,
}

impl<'r> Accounting<'r> {
    pub fn of(register: &'r Register, edition: usize) -> Accounting<'r> {
        let leading = register.entries.iter().filter_map(|(address, entry)| {
            let (_, now) = entry.said.get(&Aspect::Leads)?.change(edition)?;
            Some((IssuedAddress::named(now)?, (address, entry)))
        });
        Accounting {
            register,
            edition,
            moved: leading.collect(),
        }
    }

    /// Whether an entry is new, and not one that only has another key.
    pub fn is_new(&self, address: &IssuedAddress, entry: &IssuedEntry) -> bool {
        entry.since.value == self.edition && !self.moved.contains_key(address)
    }

    /// The key that an entry had, where it changed in this edition.
    pub fn former_key(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<String> {
        let is_first = entry.since.value == self.edition;
        let (former, _) = self.moved.get(address).filter(|_| is_first)?;
        Some(former.key())
    }

    /// The value of an aspect before and in this edition, where the two differ; of a record that had another key, the
    /// value of that.
    pub fn change(
        &self,
        address: &IssuedAddress,
        entry: &IssuedEntry,
        aspect: Aspect,
    ) -> Option<(String, String)> {
        let now = entry.at(aspect, self.edition);
        let before = if entry.since.value == self.edition {
            self.moved.get(address).map(|(_, former)| *former)
        } else {
            Some(entry)
        };
        let last = self.edition.checked_sub(1);
        let was = match (before, last) {
            (Some(before), Some(last)) => before.at(aspect, last),
            _ => "",
        };
        (was != now).then(|| (was.to_owned(), now.to_owned()))
    }

    /// Whether an address leads elsewhere in this edition: what its record said stands there.
    pub fn leads_elsewhere(&self, entry: &IssuedEntry) -> bool {
        !entry.at(Aspect::Leads, self.edition).is_empty()
    }

    pub fn standing(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<Option<String>> {
        let (_, now) = self.change(address, entry, Aspect::Standing)?;
        Some(Some(now).filter(|standing| !standing.is_empty()))
    }

    pub fn revised(&self, entry: &IssuedEntry) -> Vec<Subject> {
        let revised = entry.revised.get(&self.edition);
        revised.cloned().unwrap_or_default()
    }

    /// The key of a record as it is in this edition, where the edition led it to another.
    pub fn present_key(&self, kind: IssuedKind, key: &str) -> String {
        let address = IssuedAddress::parse(kind, key).ok();
        let to = address.and_then(|address| self.led(&address));
        to.map_or_else(|| key.to_owned(), |to| to.key())
    }

    /// The address that an address leads to in this edition.
    pub fn led(&self, address: &IssuedAddress) -> Option<IssuedAddress> {
        let entry = self.register.entry(address)?;
        IssuedAddress::named(entry.at(Aspect::Leads, self.edition))
    }

    /// The address that the record of `address` had before this edition.
    pub fn address_before<'a>(&'a self, address: &'a IssuedAddress) -> &'a IssuedAddress {
        self.moved
            .get(address)
            .map_or(address, |(former, _)| *former)
    }
}
