//! Custody: who keeps and who owns a sheet, and the sheets that name a holder.

use crate::model::design::Design;
use crate::model::impression::{Impression, Status};
use crate::model::key::Key;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::page::setting::book::Here;
use crate::study::back_links::Mention;

pub(crate) type HeldSheet<'a> = (&'a Design, &'a Impression);

/// The published impressions that name the holder in a role, in the order of the catalogue.
pub(crate) fn sheets<'a>(
    here: &Here<'a>,
    mentions: &[Mention],
    role: MentionRole,
) -> Vec<HeldSheet<'a>> {
    let mut sheets: Vec<HeldSheet<'a>> = Vec::new();
    for mention in mentions.iter().filter(|m| m.role == role) {
        let RecordId::Impression(key) = &mention.from else {
            continue;
        };
        let design = here.public().designs.get(&key.design);
        let found = design.and_then(|d| Some((d, d.impressions.get(&key.number)?)));
        if let Some(sheet) = found
            && sheets
                .last()
                .is_none_or(|(_, last)| last.key != sheet.1.key)
        {
            sheets.push(sheet);
        }
    }
    sheets
}

pub(crate) fn is_keeper(impression: &Impression, holder: &Key) -> bool {
    impression
        .holder
        .as_ref()
        .is_some_and(|h| h.value == *holder)
}

pub(crate) fn is_owner(impression: &Impression, holder: &Key) -> bool {
    impression
        .owner
        .as_ref()
        .is_some_and(|owner| is_record(owner, holder))
}

/// From whom a stolen sheet was taken: its owner, else the last owner before the theft. `None` for a
/// sheet that is not stolen, or was recovered.
pub(crate) fn stolen_from(impression: &Impression) -> Option<&Party> {
    let is_theft = |entry: &&ProvenanceEntry| {
        let how = entry.how.as_ref();
        how.is_some_and(|how| how.value.as_str() == "theft")
    };
    let entries = impression.provenance.iter();
    let before = entries.take_while(|entry| !is_theft(entry));
    let last = before.filter(|entry| entry.role == PartyRole::Owner).last();
    let owner = impression.owner.as_ref().or(last.map(|entry| &entry.party));
    owner.filter(|_| impression.status.value == Status::Stolen)
}

pub(crate) fn is_record(party: &Party, key: &Key) -> bool {
    matches!(party, Party::Record(record) if record.value == *key)
}

/// Whether the design or the record of a sheet was rejected or withdrawn.
pub(crate) fn is_set_apart((design, impression): &HeldSheet<'_>) -> bool {
    design.standing.is_set_apart() || impression.standing.is_set_apart()
}
