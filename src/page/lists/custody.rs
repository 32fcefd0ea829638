//! Custody: who keeps and who owns a sheet, and the sheets that name a holder.

use std::collections::BTreeMap;

use crate::model::design::Design;
use crate::model::holder::Holder;
use crate::model::impression::{Impression, Status};
use crate::model::key::Key;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::page::setting::book::Here;
use crate::study::back_links::Mention;

pub(crate) type HeldSheet<'a> = (&'a Design, &'a Impression);

/// The published sheets that name the holder in a role, in the order of the catalogue, each once: by the record whose
/// page it has, if that names the holder, else by the first that does.
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
        let Some(sheet) = found else { continue };
        let joined = here.joined();
        let page = joined.page_of(&sheet.1.key);
        let known = if joined.is_joined(page) {
            let mut before = sheets.iter_mut().rev();
            before.find(|(_, known)| joined.page_of(&known.key) == page)
        } else {
            sheets.last_mut().filter(|(_, last)| last.key == *page)
        };
        match known {
            Some(known) if *page == sheet.1.key => *known = sheet,
            Some(_) => {}
            None => sheets.push(sheet),
        }
    }
    sheets
}

/// The published sheets that the holder keeps, in the order of the catalogue: those recorded with it, and those still
/// recorded with a holder that it took over. What was taken over is with its successor alone.
pub(crate) fn kept_by<'a>(here: &Here<'a>, holder: &Holder) -> Vec<HeldSheet<'a>> {
    let public = here.public();
    if holder.successor.is_some() {
        return Vec::new();
    }
    let before = public.holders.values();
    let before = before.filter(|other| other.successor.is_some());
    let before = before.filter(|other| public.became(&other.key, &holder.key));
    let before: Vec<&Key> = before.map(|other| &other.key).collect();
    let links = &here.book.studies.back_links.holders;
    let of = |key: &Key| {
        let mentions = links.get(key).map_or(&[][..], Vec::as_slice);
        sheets(here, mentions, MentionRole::Holder)
    };
    let mut kept = of(&holder.key);
    let own = kept.len();
    kept.extend(before.into_iter().flat_map(of));
    if kept.len() > own {
        let designs = here.designs_in_order().zip(0_usize..);
        let places: BTreeMap<&Key, usize> = designs.map(|(d, at)| (&d.key, at)).collect();
        let place =
            |(design, sheet): &HeldSheet<'_>| (places.get(&design.key).copied(), sheet.key.number);
        kept.sort_by_key(place);
        kept.dedup_by(|a, b| a.1.key == b.1.key);
    }
    kept
}

/// The sheets that the holder owns and others keep.
pub(crate) fn owned_elsewhere<'a>(
    here: &Here<'a>,
    mentions: &[Mention],
    holder: &Key,
) -> Vec<HeldSheet<'a>> {
    let owned = sheets(here, mentions, MentionRole::Owner).into_iter();
    owned
        .filter(|(_, i)| is_owner(i, holder) && !is_keeper(i, holder))
        .collect()
}

pub(crate) fn is_keeper(impression: &Impression, holder: &Key) -> bool {
    impression
        .holder
        .as_ref()
        .is_some_and(|h| h.value == *holder)
}

pub(crate) fn is_owner(impression: &Impression, holder: &Key) -> bool {
    let mut owners = impression.owners.iter();
    owners.any(|owner| is_record(owner, holder))
}

/// From whom a stolen sheet was taken: its owners, else the last owner before the theft. Nobody for a
/// sheet that is not stolen, or was recovered.
pub(crate) fn stolen_from(impression: &Impression) -> Vec<&Party> {
    if impression.status.value != Status::Stolen {
        return Vec::new();
    }
    if !impression.owners.is_empty() {
        return impression.owners.iter().collect();
    }
    let is_theft = |entry: &&ProvenanceEntry| {
        let how = entry.how.as_ref();
        how.is_some_and(|how| how.value.as_str() == "theft")
    };
    let entries = impression.provenance.iter();
    let before = entries.take_while(|entry| !is_theft(entry));
    let last = before.filter(|entry| entry.role == PartyRole::Owner).last();
    last.map(|entry| &entry.party).into_iter().collect()
}

pub(crate) fn is_record(party: &Party, key: &Key) -> bool {
    matches!(party, Party::Record(record) if record.value == *key)
}

/// Whether the design or the record of a sheet was rejected or withdrawn.
pub(crate) fn is_set_apart((design, impression): &HeldSheet<'_>) -> bool {
    design.standing.is_set_apart() || impression.standing.is_set_apart()
}
