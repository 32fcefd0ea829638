//! Ownership of a sheet: the certain and the possible times that the entries of a record give.
//!
//! Dates are seldom days, so a time has a certain and a possible extent. Somebody who had a sheet "from 1938
//! to 1950" had it *certainly* from the beginning of 1939 to the end of 1949, and *possibly* from the
//! beginning of 1938 to the end of 1950. Where only one end is recorded no day is certain. Entries that are
//! not certain, or may be of another sheet, are never more than possible. Entries each of which came straight
//! from the one before (`direct`) leave no time between them. A date that is approximate, uncertain or open
//! covers no day that it may not reach: "until about 1940" proves nothing after 1934 and allows nothing after
//! 1940. A keeper never owns. An agent may own, but
//! proves no ownership: agents only link a direct chain from one owner to the next.
//!
//! In: one published record. Out: [`Ownership`], one for each entry of an owner.
//! Definitions: `docs/definitions.md, "Spells of ownership"` and `"Dates"`.
//! Not here: when a sheet was printed (`printing_date`), the owners in a span of years (`diligence`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::ownership::{Span, owners};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "untraced"
//! provenance = [{ owner = { name = "Ada Quire" }, from = "1938", to = "1950" }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let [owned] = owners(design, &design.impressions[&1], Span::default(), None).try_into().unwrap();
//! let days = |span: Span| [span.first, span.last].map(|day| day.unwrap().to_string());
//! assert_eq!(days(owned.certainly.unwrap()), ["1939-01-01", "1949-12-31"]);
//! assert_eq!(days(owned.possibly), ["1938-01-01", "1950-12-31"]);
//! ```

use crate::identification::candidates::{Candidate, allowed_by};
use crate::index::EntryAt;
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::Impression;
use keyblock_model::key::Key;
use keyblock_model::place::Placed;
use keyblock_model::provenance::{Party, PartyRole, ProvenanceEntry};

/// How many years a date that is approximate or uncertain may be off, either way: "c. 1610" is
/// taken as 1605 to 1615 (CCO's worked example; `docs/trade.md, "Certainty"`).
const LOOSE_YEARS: i64 = 5;

/// Days from the first to the last, both included; `None` is an end without bound.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Span {
    /// The first day.
    pub first: Option<Day>,
    /// The last day.
    pub last: Option<Day>,
}

impl Span {
    /// The days that a date gives as it is written, without a margin. An open or unknown end counts for nothing:
    /// "1940 or later" gives the days of 1940.
    #[must_use]
    pub fn as_written(date: &Date) -> Span {
        Span {
            first: date.first_named(),
            last: date.last_named(),
        }
    }

    /// The days on which a date can be, a loose one with a margin.
    #[must_use]
    pub fn of(date: &Date) -> Span {
        let years = if date.is_loose() { LOOSE_YEARS } else { 0 };
        Span {
            first: date.earliest().day().map(|day| moved(day, -years)),
            last: date.latest().day().map(|day| moved(day, years)),
        }
    }

    /// The first day by which something that began within the span had certainly begun: the day itself, where
    /// the span is one day, else the day after it.
    fn begun(self) -> Option<Day> {
        let last = self.last?;
        Some(if self.is_a_day() {
            last
        } else {
            last.following()
        })
    }

    /// The last day on which something that ended within the span had certainly not ended.
    fn not_ended(self) -> Option<Day> {
        let first = self.first?;
        Some(if self.is_a_day() {
            first
        } else {
            first.preceding()
        })
    }

    fn is_a_day(self) -> bool {
        self.first == self.last
    }

    /// Whether a day lies in it.
    #[must_use]
    pub fn contains(self, day: Day) -> bool {
        self.first.is_none_or(|first| first <= day) && self.last.is_none_or(|last| day <= last)
    }

    /// Whether it has both its ends in another that has both.
    #[must_use]
    pub(crate) fn lies_in(self, other: Span) -> bool {
        let is_in = |day: Option<Day>| day.is_some_and(|day| other.contains(day));
        is_in(self.first) && is_in(self.last)
    }

    /// Whether it shares a day with another.
    #[must_use]
    pub fn meets(self, other: Span) -> bool {
        let starts_in_time = |a: Span, b: Span| match (a.first, b.last) {
            (Some(first), Some(last)) => first <= last,
            _ => true,
        };
        starts_in_time(self, other) && starts_in_time(other, self)
    }
}

/// The same day some years away; what would be 29 February is the 28th.
fn moved(day: Day, years: i64) -> Day {
    let is_leap_day = day.month == 2 && day.day == 29;
    Day {
        year: day.year + years,
        day: if is_leap_day && years != 0 {
            28
        } else {
            day.day
        },
        ..day
    }
}

/// One end of the time for which somebody certainly owned a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// No day bounds it: the sheet was theirs from its printing, or is to this day.
    None,
    /// This day does.
    On(Day),
    /// It is not recorded.
    NotRecorded,
}

/// The time for which an entry makes its party the owner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ownership {
    /// The entry.
    pub entry: EntryAt,
    /// The days on any reading of the dates; `None` where the entry proves no day.
    pub certainly: Option<Span>,
    /// By when the party had certainly acquired the sheet.
    pub begun: Bound,
    /// Until when the party had certainly not parted with it.
    pub kept: Bound,
    /// The days on some reading of the dates.
    pub possibly: Span,
    /// The entry whose date ends the possible time: its own, or that of a certain entry after it. `None` where
    /// no date ends it.
    pub ended_by: Option<EntryAt>,
    /// Whether the entry itself is certain, whatever its dates.
    pub is_firm: bool,
    /// Whether the entry says when the possession began, or names a maker who had the sheet first.
    pub has_beginning: bool,
}

impl Ownership {
    /// Whether the party had acquired the sheet by `day`, on any reading of the dates.
    #[must_use]
    pub fn has_begun_by(&self, day: Day) -> bool {
        match self.begun {
            Bound::None => true,
            Bound::On(begun) => begun <= day,
            Bound::NotRecorded => false,
        }
    }

    /// Whether the party had not parted with the sheet before the end of `day`, on any reading of the dates.
    #[must_use]
    pub fn is_kept_until(&self, day: Day) -> bool {
        match self.kept {
            Bound::None => true,
            Bound::On(kept) => day <= kept,
            Bound::NotRecorded => false,
        }
    }
}

/// When each owner of a record had the sheet. `printed` is when it was printed, `artist` the first owner: an
/// artist in the first entry, without a `from`, had it from its printing.
#[must_use]
pub fn owners(
    design: &Design,
    impression: &Impression,
    printed: Span,
    artist: Option<&Key>,
) -> Vec<Ownership> {
    let steps: Vec<Step> = impression
        .provenance
        .iter()
        .enumerate()
        .filter(|(_, entry)| entry.role != PartyRole::Keeper)
        .map(|(at, entry)| Step::of(EntryAt::new(at), entry))
        .collect();
    let first = impression.provenance.first();
    let chain = Chain {
        is_from_the_start: first.is_some_and(|entry| is_maker(design, impression, artist, entry)),
        is_to_this_day: steps
            .last()
            .is_some_and(|last| has_it_now(impression, &last.entry.party)),
        printed,
        steps,
    };
    (0..chain.steps.len())
        .filter_map(|at| chain.owned(at))
        .collect()
}

/// Whether an entry names the artist, another maker of the design, or the printer of the printing that the sheet is
/// identified with for certain.
#[must_use]
pub(crate) fn is_maker(
    design: &Design,
    impression: &Impression,
    artist: Option<&Key>,
    entry: &ProvenanceEntry,
) -> bool {
    match &entry.party {
        Party::Record(key) => {
            artist == Some(&key.value)
                || design.makers.iter().any(|m| m.person.value == key.value)
                || is_printer(design, impression, &key.value)
        }
        Party::Named(_) | Party::Undisclosed => false,
    }
}

/// Whether a person or house printed every printing that the sheet's certain identification allows.
fn is_printer(design: &Design, impression: &Impression, party: &Key) -> bool {
    let identified = impression.identified.as_ref();
    let certain = identified.filter(|i| i.claim.certainty() == Certainty::Certain);
    let allowed = certain.map_or_else(Vec::new, |identified| allowed_by(design, identified));
    let printed = |candidate: &Candidate<'_>| {
        let printer = candidate.printing.map(|printing| &printing.printer);
        printer.and_then(|printer| printer.own()) == Some(party)
    };
    !allowed.is_empty() && allowed.iter().all(printed)
}

/// Whether the record says that a party owns the sheet now: as one of its owners, else as its holder.
fn has_it_now(impression: &Impression, party: &Party) -> bool {
    match party {
        party if !impression.owners.is_empty() => impression.owners.contains(party),
        Party::Record(key) => impression
            .holder
            .as_ref()
            .is_some_and(|holder| holder.value == key.value),
        Party::Named(_) | Party::Undisclosed => false,
    }
}

/// The time between two bounds; `None` where one of them is not recorded, or no day lies between.
fn between(begun: Bound, kept: Bound) -> Option<Span> {
    let day = |bound: Bound| match bound {
        Bound::None => Some(None),
        Bound::On(day) => Some(Some(day)),
        Bound::NotRecorded => None,
    };
    let (first, last) = (day(begun)?, day(kept)?);
    let is_some_time = first.zip(last).is_none_or(|(first, last)| first <= last);
    is_some_time.then_some(Span { first, last })
}

/// An entry of an owner or agent, its dates as spans.
struct Step<'a> {
    at: EntryAt,
    entry: &'a ProvenanceEntry,
    /// With the margin of a loose date.
    from: Span,
    to: Span,
    /// Without it.
    from_written: Span,
    to_written: Span,
    is_firm: bool,
}

impl<'a> Step<'a> {
    fn of(at: EntryAt, entry: &'a ProvenanceEntry) -> Step<'a> {
        let span = |date: &Option<Placed<Date>>, of: fn(&Date) -> Span| {
            date.as_ref().map_or_else(Span::default, |d| of(&d.value))
        };
        Step {
            at,
            from: span(&entry.from, Span::of),
            to: span(&entry.to, Span::of),
            from_written: span(&entry.from, Span::as_written),
            to_written: span(&entry.to, Span::as_written),
            is_firm: entry.is_certain(),
            entry,
        }
    }

    fn is_owner(&self) -> bool {
        self.entry.role == PartyRole::Owner
    }
}

/// The entries of a record, in order.
struct Chain<'a> {
    steps: Vec<Step<'a>>,
    printed: Span,
    is_from_the_start: bool,
    is_to_this_day: bool,
}

impl Chain<'_> {
    fn owned(&self, at: usize) -> Option<Ownership> {
        let step = self.steps.get(at).filter(|step| step.is_owner())?;
        let (possibly, ended_by) = self.possibly(at, step);
        let (begun, kept) = if step.is_firm {
            (self.begun(at, step), self.kept(at, step))
        } else {
            (Bound::NotRecorded, Bound::NotRecorded)
        };
        Some(Ownership {
            entry: step.at,
            certainly: between(begun, kept),
            begun,
            kept,
            possibly,
            ended_by,
            is_firm: step.is_firm,
            has_beginning: step.entry.from.is_some() || (at == 0 && self.is_from_the_start),
        })
    }

    /// The day by which the owner had certainly acquired the sheet.
    fn begun(&self, at: usize, step: &Step<'_>) -> Bound {
        let had_it_printed = at == 0 && self.is_from_the_start && step.entry.from.is_none();
        if had_it_printed {
            return self.printed.first.map_or(Bound::None, Bound::On);
        }
        let before = (0..at).rev().find(|i| self.is_owner(*i));
        let before = before.filter(|before| self.next_linked(*before) == Some(at));
        let taken_over = || self.handed_over(before?, at);
        let begun = step.from.begun().or_else(taken_over);
        begun.map_or(Bound::NotRecorded, Bound::On)
    }

    /// The last day on which the sheet had certainly not left the owner; where it went straight to the next owner, that
    /// on which that one had it.
    fn kept(&self, at: usize, step: &Step<'_>) -> Bound {
        if at + 1 == self.steps.len() && self.is_to_this_day && step.entry.to.is_none() {
            return Bound::None;
        }
        let given = self
            .next_linked(at)
            .and_then(|next| self.handed_over(at, next));
        let kept = given.max(step.to.not_ended());
        kept.map_or(Bound::NotRecorded, Bound::On)
    }

    fn is_owner(&self, at: usize) -> bool {
        self.steps.get(at).is_some_and(Step::is_owner)
    }

    /// The next owner, where the sheet certainly came to them straight from this one, or through
    /// agents each of whom had it straight from the one before.
    fn next_linked(&self, at: usize) -> Option<usize> {
        self.steps.get(at).filter(|step| step.is_firm)?;
        let next = (at + 1..self.steps.len()).find(|i| self.is_owner(*i))?;
        let between = self.steps.get(at + 1..=next)?;
        let is_direct = |step: &Step<'_>| step.is_firm && step.entry.direct == Some(true);
        between.iter().all(is_direct).then_some(next)
    }

    /// The day from which the next owner certainly had a sheet that came straight from this one.
    fn handed_over(&self, from: usize, to: usize) -> Option<Day> {
        let mut agents = self.steps.get(from + 1..to)?.iter().rev();
        let (from, to) = (self.steps.get(from)?, self.steps.get(to)?);
        to.from
            .begun()
            .or_else(|| agents.find_map(|agent| agent.to.begun().or(agent.from.begun())))
            .or(from.to.begun())
    }

    /// From the first day on which the owner can have had it to the last, and the entry that gives the last. An
    /// end that is not recorded is bounded by the dates of those before and after who are certain. No date is
    /// widened: the days beyond it are not recorded.
    fn possibly(&self, at: usize, step: &Step<'_>) -> (Span, Option<EntryAt>) {
        let firm = |step: &&Step<'_>| step.is_firm;
        let before = self.steps.get(..at).unwrap_or_default();
        let after = self.steps.get(at + 1..).unwrap_or_default();
        let bound_before = || {
            let mut before = before.iter().rev().filter(firm);
            before.find_map(|step| step.from_written.first.or(step.to_written.first))
        };
        let bound_after = || {
            let mut after = after.iter().filter(firm);
            after.find_map(|step| {
                let last = step.from_written.last.or(step.to_written.last)?;
                Some((last, step.at))
            })
        };
        let own_end = step.to_written.last.map(|last| (last, step.at));
        let end = own_end.or_else(bound_after);
        let first = step.from_written.first.or_else(bound_before);
        let span = Span {
            first: first.or(self.printed.first),
            last: end.map(|(last, _)| last),
        };
        (span, end.map(|(_, entry)| entry))
    }
}
