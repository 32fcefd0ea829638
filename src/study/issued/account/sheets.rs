//! What an edition changed in the records of sheets, and which holders that concerns.

use super::accounting::Accounting;
use super::changes::{HolderChangeKind, SheetChange};
use keyblock_model::issued_address::{IssuedAddress, IssuedKind};
use keyblock_model::issued_reading::IssuedReadings;
use keyblock_model::key::Key;
use keyblock_model::occurrence::DesignPart;
use keyblock_model::register::{Aspect, IssuedEntry, Subject};

impl Accounting<'_> {
    /// The changes of the record of a sheet.
    pub fn of_sheet(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<SheetChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(SheetChange::New);
            return changes;
        }
        let mut told = Vec::new();
        // Where a state or a holder only has another key, the sheet is what it was.
        if let Some((was, now)) = self.change(address, entry, Aspect::Identified) {
            told.push(Subject::Identification);
            if self.with_present_keys(address, &was) != now {
                changes.push(SheetChange::Identified { was, now });
            }
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Holder) {
            told.push(Subject::Whereabouts);
            if self.present_key(IssuedKind::Holder, &was) != now {
                changes.push(SheetChange::Holder { was, now });
            }
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Sheet)
            && self.present_key(IssuedKind::Impression, &was) != now
        {
            told.push(Subject::Relations);
            changes.push(SheetChange::Sheet(now.parse().ok()));
        }
        if let Some(standing) = self.standing(address, entry) {
            changes.push(SheetChange::Standing(standing));
            told.push(Subject::Standing);
        }
        let mut revised = self.revised(entry);
        revised.retain(|subject| !told.contains(subject));
        if !revised.is_empty() {
            changes.push(SheetChange::Revised(revised));
        }
        changes
    }

    /// An identification of the edition before, with the keys that states, printings and variants have in this one.
    /// `address` is that of the sheet.
    fn with_present_keys(&self, address: &IssuedAddress, written: &str) -> String {
        let before = self.address_before(address);
        let (Some(design), Ok(mut readings)) = (before.design(), written.parse::<IssuedReadings>())
        else {
            return written.to_owned();
        };
        let now = |part: DesignPart, key: &mut Key| {
            let address = IssuedAddress::Part(design.clone(), part, key.clone());
            if let Some(IssuedAddress::Part(_, _, present)) = self.led(&address) {
                *key = present;
            }
        };
        for reading in &mut readings.0 {
            for (matrix, state) in &mut reading.states {
                if let Some(matrix) = matrix {
                    now(DesignPart::Matrix, matrix);
                }
                now(DesignPart::State, state);
            }
            for printing in &mut reading.printings {
                now(DesignPart::Printing, printing);
            }
            if let Some(variant) = &mut reading.variant {
                now(DesignPart::Variant, variant);
            }
        }
        readings.to_string()
    }

    /// The holders that the changes of a sheet concern, each with the change that matters most to it.
    pub fn of_holders(
        &self,
        entry: &IssuedEntry,
        changes: &[SheetChange],
    ) -> Vec<(Key, HolderChangeKind)> {
        let now = entry.at(Aspect::Holder, self.edition).parse::<Key>();
        let mut concerned = Vec::new();
        let mut kinds = Vec::new();
        for change in changes {
            kinds.push(match change {
                SheetChange::New => HolderChangeKind::New,
                SheetChange::Holder { was, .. } => {
                    let was = was.parse::<Key>();
                    concerned.extend(was.map(|key| (key, HolderChangeKind::Left)));
                    HolderChangeKind::Came
                }
                SheetChange::Identified { .. } => HolderChangeKind::Identified,
                SheetChange::Standing(_) => HolderChangeKind::Standing,
                SheetChange::Sheet(_) | SheetChange::Revised(_) => HolderChangeKind::Revised,
            });
        }
        if let (Ok(now), Some(kind)) = (now, kinds.into_iter().min()) {
            concerned.push((now, kind));
        }
        concerned
    }
}
