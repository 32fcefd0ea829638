//! 1933 to 1945: for which of these days an owner of a sheet is recorded, and for which none is.
//!
//! Museums and the trade ask, for every sheet that existed then, where it was while the National
//! Socialists were in power and might dispossess its owner. The days are those of Military Government Law
//! No. 59 of the United States zone (10 November 1947, article 1): 30 January 1933 to 8 May 1945 (from
//! memory). The study reports only what is recorded: a gap is no evidence of dispossession, and a record
//! without gaps is no proof against it.
//!
//! A sheet printed after the last of these days, or destroyed before the first, is not concerned, and for
//! a sheet that was destroyed the days after its last owner are not asked about. One whose time of
//! printing is not known is treated as concerned, as the AAM's guidelines require of what is not known
//! (`docs/trade.md, "1933 to 1945 in the trade"`).
//!
//! In: the published records, all those of one sheet together. Out: [`DiligenceYears`], one for each sheet
//! that is concerned. Definitions: `docs/definitions.md, "The years 1933 to 1945"`.
//! Not here: which days an entry proves (`ownership`), when a sheet was printed (`printing_date`), changes of hands
//! and the records on either side of a gap (`dealings`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::{Studies, diligence::{Coverage, OwnerRecord}};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "untraced"
//! sheet = { date = "1930" }
//! provenance = [{ owner = { name = "Ada Quire" }, from = "1931", to = "1938-03-12" }]
//! "#);
//! let years = &Studies::of(&catalogue).diligence[&"1.1".parse().unwrap()];
//! assert_eq!(years.coverage(), Coverage::Partly);
//! let gap = years.gaps().next().unwrap();
//! assert_eq!((gap.first.to_string(), gap.known), ("1938-03-13".into(), OwnerRecord::Missing));
//! ```

use std::collections::{BTreeMap, BTreeSet};

use super::dealings;
pub use super::dealings::{ChangeOfHands, EntryDate, EntryRef, Event, Manner, Silence};
use super::ownership::{Ownership, Span, owners};
use super::printing_date;
pub use super::printing_date::ProbableDate;
use crate::census::{Groups, is_counted};
use crate::index::EntryAt;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::{Impression, Status as Standing};
use keyblock_model::key::ImpressionKey;
use keyblock_model::place::Placed;
use keyblock_model::provenance::{PartyRole, ProvenanceEntry};

/// The first of the days that are asked about.
pub const FIRST: Day = Day {
    year: 1933,
    month: 1,
    day: 30,
};

/// The last.
pub const LAST: Day = Day {
    year: 1945,
    month: 5,
    day: 8,
};

/// All of them.
const THESE_YEARS: Span = Span {
    first: Some(FIRST),
    last: Some(LAST),
};

/// The knowledge of the owner at one time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OwnerRecord {
    /// None is recorded.
    Missing,
    /// One is recorded, but not with certainty for this time.
    Uncertain,
    /// One is recorded.
    Certain,
}

/// A time for which the owner is equally well known and, where no owner is certain, perhaps the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// Its first day.
    pub first: Day,
    /// Its last day.
    pub last: Day,
    /// Whether an owner is recorded, and with certainty.
    pub known: OwnerRecord,
    /// The owners, in the order of time.
    pub owners: Vec<StretchOwner>,
}

/// An owner of a stretch of time, and what is open where it is not certain.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StretchOwner {
    /// The entry that names the owner.
    pub entry: EntryRef,
    /// Whether the entry itself is certain: then only its dates are open.
    pub is_firm: bool,
    /// Whether the sheet was certainly acquired by the first day of the stretch.
    pub has_begun: bool,
    /// Whether it was certainly not parted with before the end of the stretch.
    pub is_kept: bool,
    /// Whether the entry proves the ownership for any day, of this stretch or another.
    pub is_ever_certain: bool,
}

/// For how many of the days an owner of a sheet is recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Coverage {
    /// An owner is recorded for every day.
    Throughout,
    /// For every day, but for some not with certainty.
    Perhaps,
    /// For every day, but for none with certainty.
    Uncertain,
    /// For some days.
    Partly,
    /// For none.
    Silent,
}

/// Another sheet of which the records say that it may be this one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PossibleSheet {
    /// The record that is named, or that says so.
    pub record: ImpressionKey,
    /// The entries of all records of that sheet that fall, at least partly, or may fall within these years.
    pub entries: Vec<EntryRef>,
}

/// Whether a sheet was perhaps printed only after these years.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PrintedLater {
    /// No: nothing recorded allows it.
    No,
    /// It may have been.
    Perhaps,
    /// Probably: what this record takes to be probable, and nothing contradicts, was printed later.
    Probably(ImpressionKey, ProbableDate),
}

/// The recorded owners of one sheet in these years.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DiligenceYears {
    /// The time that is asked about, from its first day or the first on which the sheet can have
    /// been printed, in stretches without gaps. Never empty.
    pub stretches: Vec<Stretch>,
    /// Whether it can be of a recorded printing that may have ended only after these years.
    pub later: PrintedLater,
    /// Whether it changed hands in this time.
    pub change: ChangeOfHands,
    /// What the records say of the way of that change, or of one that the entries of another sheet, which may be
    /// this one, let suppose.
    pub manner: Manner,
    /// The records on either side, where these years end without an owner; `None` where they end with one, or
    /// where nothing dated is recorded before.
    pub silence: Option<Silence>,
    /// The entries of agents dated within this time, or partly within it, and of owners who acquired the sheet then.
    pub dealings: Vec<EntryRef>,
    /// The other sheets that may be this one, in the order of their keys.
    pub possibly_same: Vec<PossibleSheet>,
}

impl DiligenceYears {
    /// For how many of the days an owner is recorded.
    #[must_use]
    pub fn coverage(&self) -> Coverage {
        let is = |known| move |stretch: &Stretch| stretch.known == known;
        if self.stretches.iter().all(is(OwnerRecord::Certain)) {
            Coverage::Throughout
        } else if self.stretches.iter().all(is(OwnerRecord::Missing)) {
            Coverage::Silent
        } else if self.stretches.iter().any(is(OwnerRecord::Missing)) {
            Coverage::Partly
        } else if self.stretches.iter().all(is(OwnerRecord::Uncertain)) {
            Coverage::Uncertain
        } else {
            Coverage::Perhaps
        }
    }

    /// The times for which no owner is recorded.
    pub fn gaps(&self) -> impl Iterator<Item = &Stretch> {
        self.stretches
            .iter()
            .filter(|s| s.known == OwnerRecord::Missing)
    }
}

/// The sheets that are concerned, each under every record of it.
#[must_use]
pub(crate) fn of_catalogue(
    catalogue: &Catalogue,
    groups: &Groups,
) -> BTreeMap<ImpressionKey, DiligenceYears> {
    let mut sheets: Sheets<'_> = BTreeMap::new();
    for (design, impression) in catalogue.impressions() {
        if is_counted(design, impression) {
            let sheet = groups.first_of(&impression.key);
            sheets.entry(sheet).or_default().push((design, impression));
        }
    }
    let pairs = possible_pairs(groups, &sheets);
    let mut found = BTreeMap::new();
    for (sheet, records) in &sheets {
        let Some(mut years) = of_sheet(catalogue, records) else {
            continue;
        };
        let others = pairs.get(sheet).into_iter().flatten();
        let others = others.filter_map(|(other, record)| {
            Some(PossibleSheet {
                record: record.clone(),
                entries: entries_in_these_years(catalogue, sheets.get(other)?),
            })
        });
        years.possibly_same = others.collect();
        let mut others = years.possibly_same.iter();
        let other_has_entries = others.any(|other| !other.entries.is_empty());
        if years.change != ChangeOfHands::None || other_has_entries {
            years.manner = dealings::manner(records, THESE_YEARS);
        }
        for (_, record) in records {
            found.insert(record.key.clone(), years.clone());
        }
    }
    found
}

/// The counted records of each sheet, by the first of them.
type Sheets<'a> = BTreeMap<ImpressionKey, Vec<(&'a Design, &'a Impression)>>;

/// The other sheets that may be each sheet (`maybe_same_as`, whichever record states it), each with the first record
/// that is named or says so.
fn possible_pairs(
    groups: &Groups,
    sheets: &Sheets<'_>,
) -> BTreeMap<ImpressionKey, BTreeMap<ImpressionKey, ImpressionKey>> {
    let mut pairs: BTreeMap<ImpressionKey, BTreeMap<ImpressionKey, ImpressionKey>> =
        BTreeMap::new();
    for (sheet, records) in sheets {
        for (_, record) in records {
            for link in &record.maybe_same_as {
                let named = &link.impression.value;
                let other = groups.first_of(named);
                if other == *sheet || !sheets.contains_key(&other) {
                    continue;
                }
                let mut add = |of: &ImpressionKey, other: &ImpressionKey, by: &ImpressionKey| {
                    let others = pairs.entry(of.clone()).or_default();
                    others.entry(other.clone()).or_insert_with(|| by.clone());
                };
                add(sheet, &other, named);
                add(&other, sheet, &record.key);
            }
        }
    }
    pairs
}

/// The dated entries of a sheet that fall, at least partly, or may fall within these years: of owners by the days on
/// which they possibly had it, of agents and keepers by their dates.
fn entries_in_these_years(
    catalogue: &Catalogue,
    records: &[(&Design, &Impression)],
) -> Vec<EntryRef> {
    let asked = THESE_YEARS;
    let printed = printing_date::of_sheet(catalogue, records);
    let artist = catalogue.settings.artist.as_ref().map(|a| &a.value);
    let mut found = Vec::new();
    for (design, impression) in records {
        let owned = owners(design, impression, printed, artist);
        let had_then = |at: EntryAt| {
            let mut owned = owned.iter().filter(|owned| owned.entry == at);
            owned.any(|owned| owned.possibly.meets(asked))
        };
        for (at, entry) in impression.provenance.iter().enumerate() {
            let at = EntryAt::new(at);
            let is_dated = entry.from.is_some() || entry.to.is_some();
            let falls_within = match entry.role {
                PartyRole::Owner => is_dated && !entry.is_destruction() && had_then(at),
                PartyRole::Agent => dealings::is_dated_within(entry, asked),
                PartyRole::Keeper => is_dated && written(entry).meets(asked),
            };
            if falls_within {
                found.push((impression.key.clone(), at));
            }
        }
    }
    found
}

/// From the first day of an entry's dates to the last, as they are written; open where one is not recorded.
fn written(entry: &ProvenanceEntry) -> Span {
    let span = |date: Option<&Placed<Date>>| date.map(|date| Span::as_written(&date.value));
    Span {
        first: span(entry.from.as_ref()).and_then(|span| span.first),
        last: span(entry.to.as_ref()).and_then(|span| span.last),
    }
}

/// The recorded owners of one sheet, by all its records; `None` where it was certainly printed later, or
/// destroyed before.
fn of_sheet(catalogue: &Catalogue, records: &[(&Design, &Impression)]) -> Option<DiligenceYears> {
    let printed = printing_date::of_sheet(catalogue, records);
    let first = printed.first.map_or(FIRST, |day| day.max(FIRST));
    if first > LAST {
        return None;
    }
    let artist = catalogue.settings.artist.as_ref().map(|a| &a.value);
    let owned: Vec<(EntryRef, Ownership)> = records
        .iter()
        .flat_map(|(design, impression)| {
            let owned = owners(design, impression, printed, artist);
            let key = &impression.key;
            owned
                .into_iter()
                .map(move |owned| ((key.clone(), owned.entry), owned))
        })
        .collect();
    let gone = destroyed(records);
    let last = gone.last.map_or(LAST, |day| day.min(LAST));
    if first > last {
        return None;
    }
    let asked = Span {
        first: Some(first),
        last: Some(last),
    };
    let existence = Existence { printed, gone };
    let stretches = stretches(&owned, existence, first, last);
    let ends_without = stretches
        .last()
        .filter(|stretch| stretch.known == OwnerRecord::Missing);
    Some(DiligenceYears {
        silence: ends_without.and_then(|gap| dealings::silence(records, gap.last)),
        dealings: dealings::dealings(records, artist, asked),
        stretches,
        later: printed_later(records, printed),
        change: dealings::change(records, artist, asked),
        manner: Manner::Plain,
        possibly_same: Vec::new(),
    })
}

fn printed_later(records: &[(&Design, &Impression)], printed: Span) -> PrintedLater {
    if !printing_date::may_be_after(records, printed, LAST) {
        return PrintedLater::No;
    }
    let mut probable = records.iter().filter_map(|(design, impression)| {
        let by = printing_date::probably_after(design, impression, LAST)?;
        Some(PrintedLater::Probably(impression.key.clone(), by))
    });
    probable.next().unwrap_or(PrintedLater::Perhaps)
}

/// When a sheet was destroyed, if all its records say that it was: the time at which its last owner's
/// possession ended.
fn destroyed(records: &[(&Design, &Impression)]) -> Span {
    let is_destroyed = |(_, i): &(&Design, &Impression)| i.status.value == Standing::Destroyed;
    if !records.iter().all(is_destroyed) {
        return Span::default();
    }
    let last_of = |(_, i): &(&Design, &Impression)| {
        let owner = |entry: &&ProvenanceEntry| entry.role == PartyRole::Owner;
        let last = i.provenance.iter().rfind(owner)?;
        let loss = last.from.as_ref().filter(|_| last.is_destruction());
        Some(Span::of(&loss.or(last.to.as_ref())?.value))
    };
    let ends: Option<Vec<Span>> = records.iter().map(last_of).collect();
    let latest = ends.and_then(|ends| ends.into_iter().max_by_key(|span| span.last));
    latest.unwrap_or_default()
}

/// When a sheet began and ceased to exist.
#[derive(Clone, Copy)]
struct Existence {
    printed: Span,
    gone: Span,
}

impl Existence {
    /// Whether a day lies in the year in which the sheet was printed, before which it did not exist.
    fn may_begin_on(self, day: Day) -> bool {
        is_in_one_year(self.printed) && self.printed.contains(day)
    }

    /// Whether a day lies in the year in which the sheet was destroyed, after which it did not exist.
    fn may_end_on(self, day: Day) -> bool {
        is_in_one_year(self.gone) && self.gone.contains(day)
    }
}

/// A span of several years says nothing about a single sheet.
fn is_in_one_year(span: Span) -> bool {
    let years = span.first.zip(span.last);
    years.is_some_and(|(first, last)| first.year == last.year)
}

/// The time from `first` to `last`, cut wherever what is known changes.
fn stretches(
    owned: &[(EntryRef, Ownership)],
    existence: Existence,
    first: Day,
    last: Day,
) -> Vec<Stretch> {
    let mut cuts = BTreeSet::from([first]);
    for (_, owned) in owned {
        for span in [Some(owned.possibly), owned.certainly]
            .into_iter()
            .flatten()
        {
            cuts.extend(span.first);
            cuts.extend(span.last.map(Day::following));
        }
    }
    cuts.extend(existence.gone.first);
    cuts.extend(existence.printed.last.map(Day::following));
    cuts.retain(|day| first <= *day && *day <= last);
    let cuts: Vec<Day> = cuts.into_iter().collect();
    let mut found: Vec<DayRecord> = Vec::new();
    for (at, day) in cuts.iter().enumerate() {
        let last = cuts.get(at + 1).map_or(last, |next| next.preceding());
        let (known, owners) = on_day(owned, existence, *day);
        match found.last_mut() {
            Some(before)
                if before.known == known
                    && (known != OwnerRecord::Uncertain || before.owners == owners) =>
            {
                before.last = last;
                let new = owners.into_iter().filter(|o| !before.owners.contains(o));
                let new: Vec<usize> = new.collect();
                before.owners.extend(new);
            }
            _ => found.push(DayRecord {
                first: *day,
                last,
                known,
                owners,
            }),
        }
    }
    found.into_iter().map(|days| days.stretch(owned)).collect()
}

/// Days in a row that are known equally well, with the owners by their places among all.
struct DayRecord {
    first: Day,
    last: Day,
    known: OwnerRecord,
    owners: Vec<usize>,
}

impl DayRecord {
    fn stretch(self, owned: &[(EntryRef, Ownership)]) -> Stretch {
        let (first, last) = (self.first, self.last);
        let owners = self.owners.iter().filter_map(|at| owned.get(*at));
        let owners = owners.map(|(entry, owned)| StretchOwner {
            entry: entry.clone(),
            is_firm: owned.is_firm,
            has_begun: owned.has_begun_by(first),
            is_kept: owned.is_kept_until(last),
            is_ever_certain: owned.certainly.is_some(),
        });
        Stretch {
            first,
            last,
            known: self.known,
            owners: owners.collect(),
        }
    }
}

/// How well the owner on one day is known, and by which of the entries.
fn on_day(
    owned: &[(EntryRef, Ownership)],
    existence: Existence,
    day: Day,
) -> (OwnerRecord, Vec<usize>) {
    // In the year in which a sheet was printed, a certain owner who acquired it then is enough: the sheet was with its
    // printer, with that owner, or not yet printed. In the year of its end, a certain owner is.
    let (may_begin, may_end) = (existence.may_begin_on(day), existence.may_end_on(day));
    let has_it = |owned: &Ownership| {
        let is_enough = may_end || may_begin && owned.has_beginning;
        owned.certainly.is_some_and(|span| span.contains(day))
            || is_enough && owned.is_firm && owned.possibly.contains(day)
    };
    let by = |wanted: &dyn Fn(&Ownership) -> bool| -> Vec<usize> {
        let all = owned.iter().enumerate();
        let found = all.filter(|(_, (_, owned))| wanted(owned));
        found.map(|(at, _)| at).collect()
    };
    let owners = by(&has_it);
    if !owners.is_empty() {
        return (OwnerRecord::Certain, owners);
    }
    let perhaps = by(&|owned| owned.possibly.contains(day));
    if perhaps.is_empty() {
        (OwnerRecord::Missing, Vec::new())
    } else {
        (OwnerRecord::Uncertain, perhaps)
    }
}
