//! The dated entries around 1933 to 1945: changes of hands, agents, and the records on either side of a time without
//! an owner.
//!
//! In: the published records of one sheet, and the days that are asked about. Out: a [`ChangeOfHands`] and what is
//! said of it ([`Manner`]), a [`Silence`], the entries of agents and of owners who acquired it then.
//! Definitions: `docs/definitions.md, "The years 1933 to 1945"`.
//! Not here: for which days an owner is recorded (`diligence`), which days an entry proves (`ownership`).

use super::ownership::{Span, is_maker};
use crate::index::EntryAt;
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::{Impression, Status};
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::provenance::{PartyRole, ProvenanceEntry};

/// An entry of the provenance of a record: the record, and which of its entries.
pub type EntryRef = (ImpressionKey, EntryAt);

/// Which date of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EntryDate {
    /// Its `from`.
    From,
    /// Its `to`.
    To,
}

impl EntryDate {
    /// The date.
    #[must_use]
    pub fn of(self, entry: &ProvenanceEntry) -> Option<&Date> {
        let date = match self {
            EntryDate::From => &entry.from,
            EntryDate::To => &entry.to,
        };
        date.as_ref().map(|date| &date.value)
    }
}

/// A dated entry of an owner or agent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// The entry.
    pub entry: EntryRef,
    /// Which of its dates.
    pub date: EntryDate,
}

/// The records on either side of the time at the end for which no owner is recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silence {
    /// The last dated entry of an owner or agent that begins no later than that time ends.
    pub after: Event,
    /// The first one after it, where there is one.
    pub until: Option<Event>,
}

/// Whether the dates of a sheet show that it changed hands. Where they show nothing, it may still have
/// changed hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ChangeOfHands {
    /// No date of a change can fall in the time.
    None,
    /// One can, or somebody handled the sheet then and may not have sold it.
    Possible,
    /// One certainly does.
    Recorded,
}

/// What the records say of the way in which a sheet changed hands in these years.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Manner {
    /// Nothing beside the entries, or no change is recorded or possible.
    Plain,
    /// A record has a provenance written by hand, which may tell of it.
    Written,
    /// A record has a note, which may tell of it.
    Noted,
    /// An entry says that it is not known (`how = "unknown"`).
    Unknown,
}

/// The dates of the entries of owners and agents as they are written, in the order of the records. The end of an
/// owner by the sheet's destruction is left out.
fn events(records: &[(&Design, &Impression)]) -> Vec<(Span, Event)> {
    let mut found = Vec::new();
    for (_, impression) in records {
        for (at, entry) in impression.provenance.iter().enumerate() {
            if entry.role == PartyRole::Keeper || entry.is_destruction() {
                continue;
            }
            for date in [EntryDate::From, EntryDate::To] {
                let Some(span) = date.of(entry).map(Span::as_written) else {
                    continue;
                };
                let entry = (impression.key.clone(), EntryAt::new(at));
                found.push((span, Event { entry, date }));
            }
        }
    }
    found
}

/// The records on either side of a time without an owner, which ends on `last`; `None` where none begins before.
pub(super) fn silence(records: &[(&Design, &Impression)], last: Day) -> Option<Silence> {
    let events = events(records);
    let begins_by_then = |span: &Span| span.first.is_some_and(|first| first <= last);
    let before = events.iter().filter(|(span, _)| begins_by_then(span));
    let (_, after) = before.max_by_key(|(span, _)| span.last)?;
    let later = events.iter().filter(|(span, event)| {
        span.first.is_some_and(|first| first > last) && event.entry != after.entry
    });
    let until = later.min_by_key(|(span, _)| span.first);
    Some(Silence {
        after: after.clone(),
        until: until.map(|(_, event)| event.clone()),
    })
}

/// The entries of agents with a date, as it is written, that falls at least partly within `asked`, and those of owners
/// with such a date of acquisition; in the order of the records. A maker who had the sheet first acquired it from nobody.
pub(super) fn dealings(
    records: &[(&Design, &Impression)],
    artist: Option<&Key>,
    asked: Span,
) -> Vec<EntryRef> {
    let mut found = Vec::new();
    for (design, impression) in records {
        for (at, entry) in impression.provenance.iter().enumerate() {
            let is_one = match entry.role {
                PartyRole::Agent => is_dated_within(entry, asked),
                PartyRole::Owner => {
                    let is_makers = at == 0 && is_maker(design, impression, artist, entry);
                    let from = entry.from.as_ref();
                    let from = from.filter(|_| !is_makers && !entry.is_destruction());
                    from.is_some_and(|from| Span::as_written(&from.value).meets(asked))
                }
                PartyRole::Keeper => false,
            };
            if is_one {
                found.push((impression.key.clone(), EntryAt::new(at)));
            }
        }
    }
    found
}

/// Whether a date of an entry, as it is written, falls at least partly within `asked`.
pub(super) fn is_dated_within(entry: &ProvenanceEntry, asked: Span) -> bool {
    let dates = [&entry.from, &entry.to].into_iter().flatten();
    let mut spans = dates.map(|date| Span::as_written(&date.value));
    spans.any(|span| span.first.is_some() && span.meets(asked))
}

/// Whether the records of a sheet say that it passed from one to another within `asked`.
pub(super) fn change(
    records: &[(&Design, &Impression)],
    artist: Option<&Key>,
    asked: Span,
) -> ChangeOfHands {
    let changes = records.iter().map(|(d, i)| change_in(d, i, artist, asked));
    changes.max().unwrap_or(ChangeOfHands::None)
}

/// The same of one record. A sheet that the artist had first came from no other owner, and one that was destroyed
/// went to none.
fn change_in(
    design: &Design,
    impression: &Impression,
    artist: Option<&Key>,
    asked: Span,
) -> ChangeOfHands {
    let is_owner = |entry: &ProvenanceEntry| entry.role == PartyRole::Owner;
    let entries = &impression.provenance;
    let is_destroyed = impression.status.value == Status::Destroyed;
    let ended = entries.iter().rposition(is_owner).filter(|_| is_destroyed);
    let handled =
        |entry: &ProvenanceEntry| entry.role != PartyRole::Keeper && entry.sold != Some(false);
    let mut found = ChangeOfHands::None;
    for (at, entry) in entries.iter().enumerate().filter(|(_, e)| handled(e)) {
        let is_makers = at == 0 && is_maker(design, impression, artist, entry);
        let came = entry.from.as_ref();
        let came = came.filter(|_| !is_makers && !entry.is_destruction());
        let went = entry.to.as_ref().filter(|_| ended != Some(at));
        for date in came.into_iter().chain(went) {
            let when = Span::of(&date.value);
            let is_sure = entry.is_certain() && (is_owner(entry) || entry.sold == Some(true));
            if is_sure && when.lies_in(asked) {
                return ChangeOfHands::Recorded;
            }
            if when.meets(asked) {
                found = ChangeOfHands::Possible;
            }
        }
    }
    found
}

/// What the records say of the way in which a sheet changed hands within `asked`, where it did or may have.
pub(super) fn manner(records: &[(&Design, &Impression)], asked: Span) -> Manner {
    let came_then = |entry: &&ProvenanceEntry| {
        let from = entry.from.as_ref();
        from.is_none_or(|from| Span::of(&from.value).meets(asked))
            && is_not_before(entry.to.as_ref().map(|to| &to.value), asked)
    };
    let is_unknown = |entry: &ProvenanceEntry| {
        let how = entry.how.as_ref();
        how.is_some_and(|how| how.value.as_str() == "unknown")
    };
    let manner_in = |impression: &Impression| {
        if impression
            .provenance
            .iter()
            .filter(came_then)
            .any(is_unknown)
        {
            Manner::Unknown
        } else if impression.note.is_some() {
            Manner::Noted
        } else if impression.provenance_line.is_some() {
            Manner::Written
        } else {
            Manner::Plain
        }
    };
    let manners = records.iter().map(|(_, impression)| manner_in(impression));
    manners.max().unwrap_or(Manner::Plain)
}

/// Whether a date, where one is recorded, does not wholly lie before `asked`.
fn is_not_before(date: Option<&Date>, asked: Span) -> bool {
    let last = date.and_then(|date| Span::of(date).last);
    last.zip(asked.first)
        .is_none_or(|(last, first)| last >= first)
}
