//! The pairs of records that may be one sheet: which are compared, and which of those are suggested.
//!
//! In: the catalogue and its groups. Out: [`RecordPair`]s by design. Two sheets are compared where they share a
//! distinctive tie or a size that no third has, or where a record links them by `maybe_same_as`; never where
//! one links them by `not_same_as`.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::compare::compare;
use super::facts::CatalogueFacts;
use super::reason::{Bearing, Reason};
use super::record::ComparedRecord;
use super::size_index::SizeIndex;
use super::tie_index::TieIndex;
use crate::census::{Groups, is_counted};
use crate::index::{Indexed, SheetAt};
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::impression::{Impression, OtherSheet};
use keyblock_model::key::{ImpressionKey, Key};

/// Two records that may be one sheet, or that a record says may be one.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordPair {
    /// A record of each sheet, the sheets in order; of a stated pair those that the statement names.
    pub records: [ImpressionKey; 2],
    /// Whether one of them says so itself (`maybe_same_as`).
    pub is_stated: bool,
    /// The reasons, from the strongest for to the strongest against.
    pub reasons: Vec<Reason>,
}

impl RecordPair {
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
            && (count(Bearing::Proves) > contradictions
                || contradictions == 0 && count(Bearing::Speaks) >= 2)
    }
}

/// Every pair of a catalogue that is suggested or stated, by design; designs without one are left out.
#[must_use]
pub fn pairs(catalogue: &Catalogue, groups: &Groups) -> BTreeMap<Key, Vec<RecordPair>> {
    let facts = CatalogueFacts::of(catalogue, groups);
    let designs: Vec<&Design> = catalogue.designs.values().collect();
    designs
        .par_iter()
        .map(|design| (design.key.clone(), of_design(&facts, design)))
        .filter(|(_, pairs)| !pairs.is_empty())
        .collect()
}

/// The pairs of a design that are suggested or stated, in order.
fn of_design<'a>(facts: &CatalogueFacts<'a>, design: &'a Design) -> Vec<RecordPair> {
    let sheets = Sheets::of(facts, design);
    let ties = sheets
        .records()
        .flat_map(|(at, record)| record.ties.iter().map(move |(tie, _)| (at, tie)));
    let tie_index = TieIndex::of(ties);
    let size_index = SizeIndex::of(sheets.records().map(|(at, record)| (at, record.impression)));
    let stated = sheets.linked(|i| &i.maybe_same_as);
    let settled = sheets.linked(|i| &i.not_same_as);
    let to_compare: BTreeSet<(SheetAt, SheetAt)> = tie_index
        .pairs()
        .chain(size_index.pairs())
        .chain(stated.keys().copied())
        .filter(|pair| !settled.contains_key(pair))
        .collect();
    let mut pairs: Vec<RecordPair> = to_compare
        .into_iter()
        .map(|(a, b)| {
            let beside = |both| compare(facts, design, &tie_index, &size_index, [a, b], both);
            let named = stated.get(&(a, b)).cloned();
            RecordPair {
                is_stated: named.is_some(),
                records: named.unwrap_or_else(|| [a, b].map(|at| sheets.first_of(at))),
                reasons: in_bearing(reasons([&sheets.by_sheet[a], &sheets.by_sheet[b]], beside)),
            }
        })
        .filter(|pair| pair.is_stated || pair.is_suggested())
        .collect();
    pairs.sort_by(|a, b| a.records.cmp(&b.records));
    pairs
}

/// The sheets of a design, each with its records, at least one.
struct Sheets<'a> {
    groups: &'a Groups,
    by_sheet: Indexed<SheetAt, Vec<ComparedRecord<'a>>>,
    /// The index of each, by its first record.
    indexes: BTreeMap<ImpressionKey, SheetAt>,
}

/// Pairs of sheets, the earlier first, with the records by which they are linked, in the same order.
type Linked = BTreeMap<(SheetAt, SheetAt), [ImpressionKey; 2]>;

impl<'a> Sheets<'a> {
    fn of(facts: &CatalogueFacts<'a>, design: &'a Design) -> Sheets<'a> {
        let mut by_sheet: BTreeMap<ImpressionKey, Vec<ComparedRecord<'a>>> = BTreeMap::new();
        for impression in design.impressions.values() {
            if is_counted(design, impression) {
                let record = ComparedRecord::of(facts, design, impression);
                let sheet = by_sheet.entry(facts.groups.first_of(&impression.key));
                sheet.or_default().push(record);
            }
        }
        for records in by_sheet.values_mut() {
            // Where one record gives the place of a sheet, none of its records counts as lost.
            let is_lost = records.iter().all(|record| record.is_lost);
            for record in records {
                record.is_lost = is_lost;
                if let Some(public) = &mut record.public {
                    public.is_lost = is_lost;
                }
            }
        }
        let indexes = (0..).map(SheetAt::new);
        Sheets {
            groups: facts.groups,
            indexes: by_sheet.keys().cloned().zip(indexes).collect(),
            by_sheet: by_sheet.into_values().collect(),
        }
    }

    /// The records, each with its sheet.
    fn records(&self) -> impl Iterator<Item = (SheetAt, &ComparedRecord<'a>)> {
        let sheets = self.by_sheet.entries();
        sheets.flat_map(|(at, records)| records.iter().map(move |record| (at, record)))
    }

    fn first_of(&self, sheet: SheetAt) -> ImpressionKey {
        self.by_sheet[sheet][0].impression.key.clone()
    }

    /// The pairs that the records link by `links`; a link to a record that does not count is none.
    fn linked(&self, links: fn(&Impression) -> &Vec<OtherSheet>) -> Linked {
        let mut linked = Linked::new();
        for (here, record) in self.records() {
            for other in links(record.impression) {
                let other = &other.impression.value;
                let there = self.indexes.get(&self.groups.first_of(other)).copied();
                if let Some(there) = there.filter(|there| *there != here) {
                    let (key, other) = (record.impression.key.clone(), other.clone());
                    let (pair, named) = if here < there {
                        ((here, there), [key, other])
                    } else {
                        ((there, here), [other, key])
                    };
                    linked.entry(pair).or_insert(named);
                }
            }
        }
        linked
    }
}

/// The reasons between each record of the one sheet and each of the other, by `beside`; those that
/// follow only from private fields are marked so.
pub(super) fn reasons<'r, 'a>(
    [one, other]: [&'r [ComparedRecord<'a>]; 2],
    beside: impl Fn([&'r ComparedRecord<'a>; 2]) -> Vec<Reason>,
) -> Vec<Reason> {
    let mut reasons = Vec::new();
    for a in one {
        for b in other {
            let mut found = beside([a, b]);
            if a.public.is_some() || b.public.is_some() {
                let public = beside([a.published(), b.published()]);
                for reason in &mut found {
                    let is_public = public.iter().any(|p| p.evidence == reason.evidence);
                    reason.is_private = !is_public;
                }
            }
            reasons.extend(found);
        }
    }
    reasons
}

/// Each reason once, by bearing. Records of one sheet may give the same reason, one by a public field and
/// the other by a private one.
pub(super) fn in_bearing(reasons: Vec<Reason>) -> Vec<Reason> {
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
