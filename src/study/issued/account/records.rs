//! What an edition changed in records other than designs and sheets: holders, people, literature, exhibitions, marks and
//! pages.

use super::accounting::Accounting;
use super::changes::{RecordAccount, RecordChange};
use keyblock_model::issued_address::{IssuedAddress, IssuedKind};
use keyblock_model::register::{Aspect, IssuedEntry, Subject};

impl Accounting<'_> {
    /// The account of a record; `None` where nothing of it changed.
    pub fn of_record(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<RecordAccount> {
        if entry.since.value > self.edition {
            return None;
        }
        let led = entry.said.get(&Aspect::Leads);
        let changes = match led.and_then(|said| said.change(self.edition)) {
            Some((_, "")) => Vec::new(),
            Some((_, now)) => vec![RecordChange::Leads(IssuedAddress::named(now)?)],
            None if self.leads_elsewhere(entry) => return None,
            None if self.is_new(address, entry) => vec![RecordChange::New],
            None => self.of_standing_record(address, entry),
        };
        (!changes.is_empty()).then(|| RecordAccount {
            address: address.clone(),
            changes,
        })
    }

    fn of_standing_record(
        &self,
        address: &IssuedAddress,
        entry: &IssuedEntry,
    ) -> Vec<RecordChange> {
        let mut changes = Vec::new();
        let mut revised = self.revised(entry);
        if let Some((was, now)) = self.change(address, entry, Aspect::Successor) {
            revised.retain(|subject| *subject != Subject::Relations);
            if self.present_key(IssuedKind::Holder, &was) != now {
                changes.push(RecordChange::TakenOver(now.parse().ok()));
            }
        }
        if !revised.is_empty() {
            changes.push(RecordChange::Revised(revised));
        }
        changes
    }
}
