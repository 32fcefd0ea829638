//! What the register says of records that are not published.
//!
//! In: the catalogue before and after it was concealed. Out: its register without the entries, holders, identifications and
//! sheets that readers may not know of, and the addresses whose records are not published.

use std::collections::{BTreeMap, BTreeSet};

use crate::catalogue::Catalogue;
use crate::impression::Impression;
use crate::issued_address::{IssuedAddress, IssuedKind};
use crate::key::{ImpressionKey, Key};
use crate::link::Target;
use crate::register::Aspect;

/// What of the issued addresses is recorded, before anything is concealed.
pub(super) struct Recorded {
    /// The addresses that have their record, with the address of that where its key is another now.
    present: BTreeMap<IssuedAddress, Option<IssuedAddress>>,
    identified: BTreeSet<ImpressionKey>,
    held: BTreeSet<ImpressionKey>,
    joined: BTreeSet<ImpressionKey>,
    /// The holders that were taken over.
    taken_over: BTreeSet<Key>,
}

impl Recorded {
    pub(super) fn of(catalogue: &Catalogue) -> Recorded {
        let addresses = catalogue.register.iter().flat_map(|r| r.entries.keys());
        let present = addresses.filter_map(|address| {
            let to = catalogue.leads(address);
            let is_recorded = to.is_some() || catalogue.has_address(address);
            is_recorded.then(|| (address.clone(), to))
        });
        let present: BTreeMap<IssuedAddress, Option<IssuedAddress>> = present.collect();
        let issued = |has: fn(&Impression) -> bool| {
            let sheets = catalogue.impressions();
            let sheets = sheets.filter(|(_, sheet)| !present.is_empty() && has(sheet));
            sheets.map(|(_, sheet)| sheet.key.clone()).collect()
        };
        Recorded {
            identified: issued(|sheet| sheet.identified.is_some()),
            held: issued(|sheet| sheet.holder.is_some()),
            joined: joined(catalogue),
            taken_over: taken_over(catalogue),
            present,
        }
    }

    /// Whether the record of an address is there and not published.
    fn is_concealed(&self, catalogue: &Catalogue, address: &IssuedAddress) -> bool {
        self.present.contains_key(address) && !catalogue.answers(address)
    }

    /// Takes out of the register what is recorded and not published, and keeps the addresses: editions before may have
    /// published it.
    pub(super) fn conceal(&self, catalogue: &mut Catalogue) {
        let Some(mut register) = catalogue.register.take() else {
            return;
        };
        let last = register.editions.len().saturating_sub(1);
        let mut unpublished = BTreeMap::new();
        register.entries.retain(|address, entry| {
            if !self.is_concealed(catalogue, address) {
                return true;
            }
            let edition = entry.last_published(last);
            // Rules of servers lead from a former address to this one.
            if let Some(Some(to)) = self.present.get(address) {
                unpublished.entry(to.clone()).or_insert(edition);
            }
            unpublished.insert(address.clone(), edition);
            false
        });
        let joined = joined(catalogue);
        let taken_over = taken_over(catalogue);
        let is_concealed_sheet = |key: &str| {
            IssuedAddress::parse(IssuedKind::Impression, key)
                .is_ok_and(|address| self.is_concealed(catalogue, &address))
        };
        for (address, entry) in &mut register.entries {
            let now = self.present.get(address).and_then(Option::as_ref);
            let key = match now.unwrap_or(address) {
                IssuedAddress::Record(Target::Impression(key)) => key,
                IssuedAddress::Record(Target::Holder(key)) => {
                    if self.taken_over.contains(key) && !taken_over.contains(key) {
                        entry.said.remove(&Aspect::Successor);
                    }
                    continue;
                }
                _ => continue,
            };
            let sheet = catalogue.impression(key);
            let is_concealed = |recorded: &BTreeSet<ImpressionKey>,
                                has: fn(&Impression) -> bool| {
                recorded.contains(key) && !sheet.is_some_and(has)
            };
            if is_concealed(&self.identified, |sheet| sheet.identified.is_some()) {
                entry.said.remove(&Aspect::Identified);
            }
            if is_concealed(&self.held, |sheet| sheet.holder.is_some()) {
                entry.said.remove(&Aspect::Holder);
            }
            let said = entry.said.get(&Aspect::Sheet);
            let names_concealed =
                said.is_some_and(|said| said.iter().any(|(_, sheet)| is_concealed_sheet(sheet)));
            let is_parted = self.joined.contains(key) && !joined.contains(key);
            if names_concealed || is_parted {
                entry.said.remove(&Aspect::Sheet);
            }
        }
        catalogue.register = Some(register);
        catalogue.unpublished = unpublished;
    }
}

/// The holders that were taken over by another.
fn taken_over(catalogue: &Catalogue) -> BTreeSet<Key> {
    let holders = catalogue.holders.values();
    let holders = holders.filter(|holder| holder.successor.is_some());
    holders.map(|holder| holder.key.clone()).collect()
}

/// The impressions that `same_as` joins to another: those that say so, and those of which it is said.
fn joined(catalogue: &Catalogue) -> BTreeSet<ImpressionKey> {
    let saying = catalogue.impressions();
    let saying = saying.filter(|(_, sheet)| !sheet.same_as.is_empty());
    saying
        .flat_map(|(_, sheet)| {
            let others = sheet
                .same_as
                .iter()
                .map(|other| other.impression.value.clone());
            others.chain([sheet.key.clone()])
        })
        .collect()
}
