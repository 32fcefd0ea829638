//! What contradicts that joined records are one sheet: the same reasons that keep a pair from being suggested.
//!
//! In: the catalogue and its groups. Out: a [`RecordPair`] for every two records of one design that `same_as` joins,
//! directly or through others, and between which something contradicts or excludes that they are one sheet. Only those
//! reasons are in it.

use super::compare::compare;
use super::facts::CatalogueFacts;
use super::pairs::{RecordPair, in_bearing, reasons};
use super::reason::Bearing;
use super::record::ComparedRecord;
use super::size_index::SizeIndex;
use super::tie_index::TieIndex;
use crate::census::Groups;
use crate::index::SheetAt;
use keyblock_model::catalogue::Catalogue;

/// The joined records that contradict each other, in order. Groups of more than `most` records are left out, and
/// withdrawn records.
#[must_use]
pub fn contradicted(catalogue: &Catalogue, groups: &Groups, most: usize) -> Vec<RecordPair> {
    let several: Vec<_> = groups.of_several().collect();
    if several.is_empty() {
        return Vec::new();
    }
    let facts = CatalogueFacts::of(catalogue, groups);
    // How many other sheets share something matters to reasons for one sheet alone.
    let ties = TieIndex::of(std::iter::empty());
    let sizes = SizeIndex::of(std::iter::empty());
    let sheets = [SheetAt::new(0), SheetAt::new(1)];
    let mut found = Vec::new();
    for (_, keys) in several.into_iter().filter(|(_, keys)| keys.len() <= most) {
        let records: Vec<_> = keys
            .iter()
            .filter_map(|key| {
                let design = catalogue.designs.get(&key.design)?;
                let impression = design.impressions.get(&key.number)?;
                let stands = !impression.standing.is_withdrawn();
                stands.then(|| (design, ComparedRecord::of(&facts, design, impression)))
            })
            .collect();
        for (at, (design, one)) in records.iter().enumerate() {
            for (_, other) in records
                .iter()
                .skip(at + 1)
                .filter(|o| o.0.key == design.key)
            {
                let beside = |both| compare(&facts, design, &ties, &sizes, sheets, both);
                let all = reasons(
                    [std::slice::from_ref(one), std::slice::from_ref(other)],
                    beside,
                );
                let mut against = in_bearing(all);
                against.retain(|reason| reason.bearing >= Bearing::Contradicts);
                if !against.is_empty() {
                    found.push(RecordPair {
                        records: [one, other].map(|record| record.impression.key.clone()),
                        is_stated: true,
                        reasons: against,
                    });
                }
            }
        }
    }
    found
}
