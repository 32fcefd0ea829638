//! The pairs of records that may be one sheet: which are compared, and which of those are suggested.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::compare::compare;
use super::facts::Ground;
use super::reason::{Bearing, Reason};
use super::record::Record;
use super::size_index::Alike;
use super::tie_index::Sharing;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::{Impression, OtherSheet};
use crate::model::key::{ImpressionKey, Key};
use crate::study::census::{Groups, is_counted};

/// Two records that may be one sheet, or are said to be perhaps.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    /// A record of each sheet, the sheets in order; of a stated pair those that the statement names.
    pub records: [ImpressionKey; 2],
    /// Whether one of them says so itself (`maybe_same_as`).
    pub is_stated: bool,
    /// What speaks for and against, the weightiest for first, the weightiest against last.
    pub reasons: Vec<Reason>,
}

impl Pair {
    /// The reasons with a bearing.
    pub fn with(&self, bearing: Bearing) -> impl Iterator<Item = &Reason> {
        let reasons = self.reasons.iter();
        reasons.filter(move |reason| reason.bearing == bearing)
    }

    /// Whether something stated as certain would be false if they were one.
    #[must_use]
    pub fn is_excluded(&self) -> bool {
        self.with(Bearing::Excludes).next().is_some()
    }

    /// Whether the reasons suggest that they are one (see the module).
    #[must_use]
    pub fn is_suggested(&self) -> bool {
        let count = |bearing| self.with(bearing).count();
        let contradictions = count(Bearing::Contradicts);
        !self.is_excluded()
            && (count(Bearing::Ties) > contradictions
                || contradictions == 0 && count(Bearing::Speaks) >= 2)
    }
}

/// Every pair of a catalogue that is suggested or stated, by design; designs without one are left out.
#[must_use]
pub fn pairs(catalogue: &Catalogue, groups: &Groups) -> BTreeMap<Key, Vec<Pair>> {
    let ground = Ground::of(catalogue, groups);
    let designs: Vec<&Design> = catalogue.designs.values().collect();
    designs
        .par_iter()
        .map(|design| (design.key.clone(), ground.pairs_of(design)))
        .filter(|(_, pairs)| !pairs.is_empty())
        .collect()
}

impl<'a> Ground<'a> {
    /// The pairs of a design that are suggested or stated, in order.
    fn pairs_of(&self, design: &'a Design) -> Vec<Pair> {
        let mut by_sheet: BTreeMap<ImpressionKey, Vec<Record<'a>>> = BTreeMap::new();
        for impression in design.impressions.values() {
            if is_counted(design, impression) {
                let record = Record::of(self, design, impression);
                let sheet = by_sheet.entry(self.groups.first_of(&impression.key));
                sheet.or_default().push(record);
            }
        }
        let places: BTreeMap<ImpressionKey, usize> = by_sheet.keys().cloned().zip(0..).collect();
        let mut sheets: Vec<Vec<Record<'a>>> = by_sheet.into_values().collect();
        for records in &mut sheets {
            // Where one record knows the place of a sheet, its others are lost no more.
            let is_lost = records.iter().all(|record| record.is_lost);
            for record in records {
                record.is_lost = is_lost;
                if let Some(public) = &mut record.public {
                    public.is_lost = is_lost;
                }
            }
        }
        let records = || {
            let sheets = sheets.iter().enumerate();
            sheets.flat_map(|(at, records)| records.iter().map(move |record| (at, record)))
        };
        let sharing = Sharing::of(
            records().flat_map(|(at, record)| record.ties.iter().map(move |(tie, _)| (at, tie))),
        );
        let alike = Alike::of(records().map(|(at, record)| (at, record.impression)));
        let place = |key: &ImpressionKey| places.get(&self.groups.first_of(key)).copied();
        let linked = |links: fn(&Impression) -> &Vec<OtherSheet>| {
            let mut linked = BTreeMap::new();
            for (at, record) in records() {
                for other in links(record.impression) {
                    let other = &other.impression.value;
                    if let Some(there) = place(other).filter(|there| *there != at) {
                        let (key, other) = (record.impression.key.clone(), other.clone());
                        // The sheets' order, which the reasons have too.
                        let named = if at < there {
                            [key, other]
                        } else {
                            [other, key]
                        };
                        linked
                            .entry((at.min(there), at.max(there)))
                            .or_insert(named);
                    }
                }
            }
            linked
        };
        let stated = linked(|i| &i.maybe_same_as);
        let settled = linked(|i| &i.not_same_as);
        let to_compare: BTreeSet<(usize, usize)> = sharing
            .pairs()
            .chain(alike.pairs())
            .chain(stated.keys().copied())
            .filter(|pair| !settled.contains_key(pair))
            .collect();
        let mut pairs: Vec<Pair> = to_compare
            .into_iter()
            .filter_map(|(a, b)| {
                let (one, other) = (sheets.get(a)?, sheets.get(b)?);
                let firsts = || {
                    let first =
                        |records: &[Record<'_>]| Some(records.first()?.impression.key.clone());
                    Some([first(one)?, first(other)?])
                };
                let mut reasons = Vec::new();
                for a_record in one {
                    for b_record in other {
                        let beside = |both| compare(self, design, &sharing, &alike, [a, b], both);
                        let mut found = beside([a_record, b_record]);
                        if a_record.public.is_some() || b_record.public.is_some() {
                            let told = beside([a_record.published(), b_record.published()]);
                            for reason in &mut found {
                                let is_told = |t: &Reason| t.evidence == reason.evidence;
                                reason.is_private = !told.iter().any(is_told);
                            }
                        }
                        reasons.extend(found);
                    }
                }
                let named = stated.get(&(a, b)).cloned();
                let pair = Pair {
                    is_stated: named.is_some(),
                    records: named.or_else(firsts)?,
                    reasons: in_bearing(reasons),
                };
                (pair.is_stated || pair.is_suggested()).then_some(pair)
            })
            .collect();
        pairs.sort_by(|a, b| a.records.cmp(&b.records));
        pairs
    }
}

/// Each reason once, by bearing; records of one sheet may say the same, the one in public and the other
/// in private.
fn in_bearing(reasons: Vec<Reason>) -> Vec<Reason> {
    let mut each: Vec<Reason> = Vec::new();
    for reason in reasons {
        let is_told = |known: &&mut Reason| {
            known.bearing == reason.bearing && known.evidence == reason.evidence
        };
        match each.iter_mut().find(is_told) {
            Some(known) if known.is_private => *known = reason,
            Some(_) => {}
            None => each.push(reason),
        }
    }
    each.sort_by_key(|reason| reason.bearing);
    each
}
