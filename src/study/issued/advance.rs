//! The register with one more edition.
//!
//! In: the register, every address of the catalogue as it is now, and the edition. Out: the register that `keyblock
//! issue` would write. No address is ever taken out: the entry of one that is not published any more stays as it read
//! last, and says from which edition on it is not.

use std::collections::{BTreeMap, BTreeSet};

use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::place::Place;
use keyblock_model::register::{Aspect, IssuedEdition, IssuedEntry, Register, Subject};
use keyblock_model::words::ClosedList as _;

use super::present::{Present, PresentEntry};

/// The register with one more edition. `leads` says which other address an address leads to, where its record has
/// another key now.
#[must_use]
pub fn advanced(
    register: &Register,
    present: &Present,
    edition: IssuedEdition,
    leads: &dyn Fn(&IssuedAddress) -> Option<IssuedAddress>,
) -> Register {
    let mut next = register.clone();
    let this = next.editions.len();
    next.editions.push(edition);
    // A record whose key changed is not new: it is compared with what its former address said.
    let gone = register.entries.iter();
    let gone = gone.filter(|(address, _)| !present.0.contains_key(*address));
    let moved: BTreeMap<IssuedAddress, &IssuedEntry> = gone
        .filter_map(|(address, entry)| Some((leads(address)?, entry)))
        .collect();
    for (address, now) in &present.0 {
        let entry = next.entries.entry(address.clone());
        let is_new = matches!(entry, std::collections::btree_map::Entry::Vacant(_));
        let entry = entry.or_insert_with(|| IssuedEntry::new(this, Place::default()));
        let before = if is_new {
            moved.get(address).copied()
        } else {
            register.entries.get(address)
        };
        let revised = before.map_or_else(Vec::new, |before| revised_subjects(before, now));
        if !revised.is_empty() {
            entry.revised.insert(this, revised);
        }
        say(entry, this, &now.said);
        entry.holds.clone_from(&now.holds);
    }
    for (address, entry) in &mut next.entries {
        if present.0.contains_key(address) {
            continue;
        }
        let to = leads(address);
        let is_published = to.as_ref().is_some_and(|to| present.0.contains_key(to));
        if let Some(to) = to {
            let mut said = BTreeMap::from([(Aspect::Leads, to.to_string())]);
            if !is_published {
                said.insert(Aspect::Unpublished, "yes".to_owned());
            }
            say(entry, this, &said);
            entry.holds.clear();
        } else {
            // What is not recorded any more is an error, so it is recorded and not published.
            let unpublished = entry.said.entry(Aspect::Unpublished).or_default();
            unpublished.set(this, "yes");
        }
    }
    next
}

/// The subjects whose published values are not those of the last edition.
fn revised_subjects(entry: &IssuedEntry, now: &PresentEntry) -> Vec<Subject> {
    // Digests are left out on both sides where a holder's name is not published, or not published any more.
    if entry.holds.is_empty() || now.holds.is_empty() {
        return Vec::new();
    }
    let subjects: BTreeSet<Subject> = entry
        .holds
        .keys()
        .chain(now.holds.keys())
        .copied()
        .collect();
    let is_revised = |subject: &Subject| entry.holds.get(subject) != now.holds.get(subject);
    subjects.into_iter().filter(is_revised).collect()
}

fn say(entry: &mut IssuedEntry, edition: usize, now: &BTreeMap<Aspect, String>) {
    for aspect in Aspect::ALL {
        let value = now.get(aspect).map_or("", String::as_str);
        if value.is_empty() && !entry.said.contains_key(aspect) {
            continue;
        }
        let said = entry.said.entry(*aspect).or_default();
        said.set(edition, value);
    }
}
