//! The provenance of one sheet from several records: their entries as one history.
//!
//! The entries of each record keep their order. Between records, the entry that begins first comes first (by `from`,
//! else `to`; one without a date goes with the entry before it), then that of the earlier record. An entry that several
//! records have, alike in all but whether it came straight from the one before, is given once. That it came straight is
//! only said where it still follows the entry that its record has before it.

use std::borrow::Cow;

use crate::model::edtf::Day;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::place::Place;
use crate::model::provenance::ProvenanceEntry;

/// An entry of a sheet's history, and the records that have it.
pub(crate) struct UnitedEntry<'a> {
    pub entry: Cow<'a, ProvenanceEntry>,
    pub records: Vec<&'a ImpressionKey>,
}

/// The entries of the records of one sheet. Those of a single record are as it has them.
pub(crate) fn united<'a>(records: &[&'a Impression]) -> Vec<UnitedEntry<'a>> {
    let several = records.len() > 1;
    let mut waiting: Vec<Waiting<'a>> = records.iter().map(|record| Waiting::of(record)).collect();
    let mut all: Vec<UnitedEntry<'a>> = Vec::new();
    while let Some(first) = waiting
        .iter_mut()
        .filter(|record| record.next < record.entries.len())
        .min_by_key(|record| record.day())
    {
        let entry = &first.entries[first.next];
        first.next += 1;
        let key = first.key;
        let mut known = all
            .iter()
            .rposition(|k| several && is_alike(&k.entry, entry));
        if let Some(at) = known
            && all[at].records.contains(&key)
        {
            known = None;
        }
        if let Some(at) = known {
            all[at].records.push(key);
            first.last = Some(at);
            continue;
        }
        let follows = first.last.map_or(0, |last| last + 1) == all.len();
        let entry = if follows || entry.direct != Some(true) {
            Cow::Borrowed(entry)
        } else {
            let mut apart = entry.clone();
            apart.direct = None;
            Cow::Owned(apart)
        };
        first.last = Some(all.len());
        all.push(UnitedEntry {
            entry,
            records: vec![key],
        });
    }
    all
}

/// The entries of a record that are not yet among the united ones.
struct Waiting<'a> {
    key: &'a ImpressionKey,
    entries: &'a [ProvenanceEntry],
    /// When each begins, never before the one before it.
    days: Vec<Option<Day>>,
    /// Which of them is next.
    next: usize,
    /// Where the one before stands among the united ones.
    last: Option<usize>,
}

impl<'a> Waiting<'a> {
    fn of(record: &'a Impression) -> Waiting<'a> {
        let mut latest = None;
        let days = record.provenance.iter().map(|entry| {
            let mut dates = entry.from.iter().chain(&entry.to);
            let day = dates.find_map(|date| date.value.first_named());
            latest = latest.max(day);
            latest
        });
        Waiting {
            days: days.collect(),
            key: &record.key,
            entries: &record.provenance,
            next: 0,
            last: None,
        }
    }

    fn day(&self) -> Option<Day> {
        self.days.get(self.next).copied().flatten()
    }
}

/// Whether two entries say the same, but for how the sheet came there.
fn is_alike(one: &ProvenanceEntry, other: &ProvenanceEntry) -> bool {
    let plain = |entry: &ProvenanceEntry| ProvenanceEntry {
        direct: None,
        place: Place::default(),
        ..entry.clone()
    };
    plain(one) == plain(other)
}
