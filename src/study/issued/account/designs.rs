//! What an edition changed in the entries of designs and their parts.

use std::collections::BTreeSet;

use super::accounting::Accounting;
use super::changes::{DesignAccount, DesignChange, PartChange};
use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::occurrence::DesignPart;
use keyblock_model::register::{Aspect, IssuedEntry, Subject};

impl Accounting<'_> {
    /// The changes of the entry of a design.
    pub fn of_design(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<DesignChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(DesignChange::New);
            return changes;
        }
        if let Some(was) = self.former_key(address, entry) {
            changes.push(DesignChange::Moved { was });
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Number) {
            changes.push(DesignChange::Number { was, now });
        }
        if let Some(standing) = self.standing(address, entry) {
            changes.push(DesignChange::Standing(standing));
        }
        let revised = self.revised(entry);
        if !revised.is_empty() {
            changes.push(DesignChange::Revised(revised));
        }
        changes
    }

    /// The changes of a part of a design.
    pub fn of_part(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<PartChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(PartChange::New);
            return changes;
        }
        // A part of a design whose key changed has another address and is the same part.
        if let Some(was) = self.former_key(address, entry)
            && was.split_once('/').map(|(_, key)| key)
                != address.key().split_once('/').map(|(_, key)| key)
        {
            changes.push(PartChange::Moved { was });
        }
        let standing = self.standing(address, entry);
        let is_standing = standing.is_none();
        changes.extend(standing.map(PartChange::Standing));
        if let Some((was, now)) = self
            .change(address, entry, Aspect::Numeral)
            .filter(|_| is_standing)
        {
            changes.push(PartChange::Numeral { was, now });
        }
        changes
    }
}

/// The account without what the other changes tell: every part of a new design is new; that states were revised is told
/// by the states that are new or stand otherwise.
pub(super) fn in_short(account: DesignAccount) -> DesignAccount {
    let mut account = account;
    if account.is_new() {
        account
            .changes
            .retain(|change| *change == DesignChange::New);
        return account;
    }
    let told: BTreeSet<Subject> = account
        .changes
        .iter()
        .filter_map(|change| match change {
            DesignChange::Part(part, _, PartChange::New | PartChange::Standing(_)) => {
                Some(match part {
                    DesignPart::Matrix => Subject::Matrices,
                    DesignPart::State => Subject::States,
                    DesignPart::Printing => Subject::Printings,
                    DesignPart::Variant => Subject::Variants,
                })
            }
            DesignChange::Standing(_) => Some(Subject::Standing),
            _ => None,
        })
        .collect();
    for change in &mut account.changes {
        if let DesignChange::Revised(subjects) = change {
            subjects.retain(|subject| !told.contains(subject));
        }
    }
    account
        .changes
        .retain(|change| !matches!(change, DesignChange::Revised(subjects) if subjects.is_empty()));
    account
}
