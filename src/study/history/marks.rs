//! Marks used by several people: who put one and the same stamp, seal or collector's mark on sheets,
//! and when.
//!
//! Seals and stamps outlast the people whose names they bear, and heirs, printers and libraries go on using
//! them (common practice, no source; `docs/trade.md, "Marks on a sheet"`); a mark alone then identifies neither
//! the owner nor the time.
//!
//! In: the marks on sheets and their records. Out: [`SharedMark`], one for each mark with more than one user; the users
//! of one recorded mark.
//! Definitions: `docs/definitions.md, "Marks with several users"`.
//! Not here: whether such a mark is used to distinguish two printings (`audit`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::marks::shared;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! marks = [{ kind = "stamp", text = "A", applied_by = "ada", applied = "1930" }]
//! -- records/designs/1/impressions/2.toml
//! status = "located"
//! marks = [{ kind = "stamp", text = "A", applied_by = "ben", applied = "1956" }]
//! "#);
//! let [mark] = shared(&catalogue).try_into().unwrap();
//! let users: Vec<&str> = mark.users.iter().map(|user| user.key.as_str()).collect();
//! assert_eq!(users, ["ada", "ben"]);
//! ```

use std::collections::{BTreeMap, BTreeSet};

use crate::census::editions::only_printing;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::Impression;
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::mark::{Mark, MarkKind};
use keyblock_model::place::Placed;
use keyblock_model::provenance::{Party, PartyRole};

/// The identity of a mark, equal for two records of the same mark.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MarkIdentity {
    /// The key of its record.
    Record(Key),
    /// Without a record: its kind, and its number in a repertory or else its text; of a collector's mark without a
    /// number also whose it is, because many collectors had the same initials.
    Described(MarkKind, String, Option<Key>),
}

/// The identity of a mark that has a record, or of a described stamp, seal or collector's mark; `None` for other
/// writing by hand.
#[must_use]
pub fn identity(mark: &Mark) -> Option<MarkIdentity> {
    if let Some(record) = &mark.record {
        return Some(MarkIdentity::Record(record.value.clone()));
    }
    let kind = mark.kind.as_ref()?.value;
    let is_repeated = matches!(kind, MarkKind::Stamp | MarkKind::Seal | MarkKind::Collector);
    let name = mark.number.as_deref().or(mark.text.as_deref())?;
    let whose = mark.whose.as_ref().map(|key| key.value.clone());
    let namesake = whose.filter(|_| kind == MarkKind::Collector && mark.number.is_none());
    is_repeated.then(|| MarkIdentity::Described(kind, name.to_owned(), namesake))
}

/// A mark that several people used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SharedMark {
    /// Which mark it is.
    pub identity: MarkIdentity,
    /// Its users, by the first day on which they can have used it.
    pub users: Vec<MarkUser>,
}

/// Somebody who used a mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MarkUser {
    /// The person or holder.
    pub key: Key,
    /// When, as far as is known: as the record of the mark says; else when they put it on a sheet, else when they
    /// had the sheet or printed it; the years from the first to the last of these where there are several.
    pub when: Option<Date>,
    /// On which sheets, in the order of their keys.
    pub sheets: Vec<ImpressionKey>,
}

/// The marks that several people used: those with a record by its key, then the others by kind and name.
#[must_use]
pub fn shared(catalogue: &Catalogue) -> Vec<SharedMark> {
    uses(catalogue)
        .into_iter()
        .filter(|(_, users)| users.len() > 1)
        .map(|(identity, users)| SharedMark {
            identity,
            users: in_order(users),
        })
        .collect()
}

/// Everybody who used a recorded mark: those whom its record names, and those who are said to have put it on a sheet.
#[must_use]
pub fn users_of(catalogue: &Catalogue, record: &Key) -> Vec<MarkUser> {
    let identity = MarkIdentity::Record(record.clone());
    uses(catalogue)
        .remove(&identity)
        .map(in_order)
        .unwrap_or_default()
}

/// The uses of every mark, by its users.
fn uses(catalogue: &Catalogue) -> BTreeMap<MarkIdentity, BTreeMap<&Key, MarkUses>> {
    let mut marks: BTreeMap<MarkIdentity, BTreeMap<&Key, MarkUses>> = BTreeMap::new();
    for record in catalogue.marks.values() {
        let users = marks
            .entry(MarkIdentity::Record(record.key.clone()))
            .or_default();
        for user in &record.users {
            let uses = users.entry(&user.person.value).or_default();
            uses.recorded
                .extend(interval(user.from.as_ref(), user.to.as_ref()));
        }
    }
    for (design, record) in catalogue.impressions() {
        if record.standing.is_withdrawn() {
            continue;
        }
        for mark in &record.marks {
            let described = catalogue.described_mark(mark);
            let kind = described.kind.as_ref().map(|kind| kind.value);
            let (Some(identity), Some(by)) = (identity(&described), user(mark, kind)) else {
                continue;
            };
            let users = marks.entry(identity).or_default();
            let uses = users.entry(by).or_default();
            if uses.sheets.last() != Some(&record.key) {
                uses.sheets.push(record.key.clone());
            }
            uses.when.extend(when(design, record, mark, by));
        }
    }
    marks
}

impl SharedMark {
    /// Whether a mark on a sheet, with what its record says of it, is this one.
    #[must_use]
    pub fn is(&self, described: &Mark) -> bool {
        identity(described).as_ref() == Some(&self.identity)
    }
}

/// The user of a mark: the person recorded to have applied it, else the owner of a collector's mark.
fn user(mark: &Mark, kind: Option<MarkKind>) -> Option<&Key> {
    let is_collectors = kind == Some(MarkKind::Collector);
    let owner = mark.whose.as_ref().filter(|_| is_collectors);
    mark.applied_by.as_ref().or(owner).map(|key| &key.value)
}

/// When somebody put a mark on a sheet: the date that is recorded, else the time for which they had
/// it, else the date of its printing where that was theirs.
fn when(design: &Design, record: &Impression, mark: &Mark, by: &Key) -> Option<Date> {
    if let Some(date) = &mark.applied {
        return Some(date.value.clone());
    }
    let had = record.provenance.iter().find(|entry| {
        entry.role != PartyRole::Agent
            && matches!(&entry.party, Party::Record(key) if key.value == *by)
    });
    if let Some(entry) = had {
        return interval(entry.from.as_ref(), entry.to.as_ref());
    }
    let printing = design.printing(only_printing(record)?)?;
    let makers: BTreeSet<&Key> = printing
        .printer
        .iter()
        .chain(&printing.publisher)
        .map(|said| &said.is.value)
        .collect();
    printing.date.own().filter(|_| makers.contains(by)).cloned()
}

/// The time from one date to another; `None` where neither is known, or where an end is itself an interval or a set.
#[must_use]
pub fn interval(from: Option<&Placed<Date>>, to: Option<&Placed<Date>>) -> Option<Date> {
    let text = |date: Option<&Placed<Date>>| date.map_or("..", |d| d.value.as_str()).to_owned();
    let is_known = from.is_some() || to.is_some();
    let time = format!("{}/{}", text(from), text(to));
    Date::parse(&time).ok().filter(|_| is_known)
}

/// The known uses of one user.
#[derive(Default)]
struct MarkUses {
    /// The times that the record of the mark gives.
    recorded: Vec<Date>,
    when: Vec<Date>,
    sheets: Vec<ImpressionKey>,
}

fn in_order(users: BTreeMap<&Key, MarkUses>) -> Vec<MarkUser> {
    let user = |(key, uses): (&Key, MarkUses)| MarkUser {
        key: key.clone(),
        when: together(if uses.recorded.is_empty() {
            &uses.when
        } else {
            &uses.recorded
        }),
        sheets: uses.sheets,
    };
    let mut users: Vec<MarkUser> = users.into_iter().map(user).collect();
    users.sort_by_key(|user| {
        let when = user.when.as_ref();
        let begun = when.and_then(|date| date.earliest().day().or(date.latest().day()));
        (begun.is_none(), begun)
    });
    users
}

/// The one date there is, or the years that several span; an end that one of them leaves open stays
/// open.
fn together(dates: &[Date]) -> Option<Date> {
    let (first, others) = dates.split_first()?;
    if others.iter().all(|date| date == first) {
        return Some(first.clone());
    }
    let year = |day: Day| format!("{:04}", day.year);
    let starts: Option<Vec<Day>> = dates.iter().map(|d| d.earliest().day()).collect();
    let ends: Option<Vec<Day>> = dates.iter().map(|d| d.latest().day()).collect();
    let start = starts.and_then(|days| days.into_iter().min()).map(year);
    let end = ends.and_then(|days| days.into_iter().max()).map(year);
    let open = || "..".to_owned();
    if start.is_none() && end.is_none() {
        return None;
    }
    let time = format!(
        "{}/{}",
        start.unwrap_or_else(open),
        end.unwrap_or_else(open)
    );
    Date::parse(&time).ok()
}
