//! When a sheet was printed: the days between which its records place the printing.
//!
//! In: the records of one sheet, as published. Out: a [`Span`] of days ([`of_sheet`]); whether it can be of a recorded
//! printing that may have ended only after a day ([`may_be_after`]), and whether it probably is ([`probably_after`]).
//! Method: the sheet's own date is used, else those of the printings it can be of, from when its state was made. An identification that
//! observations contradict is not used (`agree`). A sheet was printed no later than the first day on which
//! somebody certainly had it, saw it or showed it. Definitions: `docs/definitions.md, "When a sheet was
//! printed"`.
//! Not here: who owned it (`ownership`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::printing_date::of_sheet;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "only" }]
//! printings = [{ key = "own", kind = "artist", states = "all", date = "1927/1935" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! identified = { printing = "own" }
//! sightings = [{ date = "1930-05-02" }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let printed = of_sheet(&catalogue, &[(design, &design.impressions[&1])]);
//! assert_eq!(printed.first.unwrap().to_string(), "1927-01-01");
//! assert_eq!(printed.last.unwrap().to_string(), "1930-05-02"); // it was seen that day
//! ```

use super::ownership::Span;
use crate::identification::agree::contradiction;
use crate::identification::candidates::{Candidate, allowed_by, candidates};
use crate::identification::remaining::not_excluded;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::certainty::{Certainty, Statements};
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::{Identification, Impression};
use keyblock_model::key::Key;

/// When a sheet was printed, by all its records. Where they give no date, or one after the sheet is first
/// recorded to exist, the span runs from the making of the design to that day.
#[must_use]
pub fn of_sheet(catalogue: &Catalogue, records: &[(&Design, &Impression)]) -> Span {
    let of_each = records.iter().map(|(d, i)| of_record(d, i));
    let said = of_each.reduce(agreed).unwrap_or_default();
    let heard_of = records.iter().filter_map(|(_, i)| heard_of(catalogue, i));
    let Some(heard_of) = heard_of.min() else {
        return said;
    };
    let before = Span {
        first: None,
        last: Some(heard_of),
    };
    if said.meets(before) {
        return agreed(said, before);
    }
    let made = records.first().and_then(|(design, _)| made(design));
    Span {
        first: made.filter(|made| *made <= heard_of),
        ..before
    }
}

/// Whether a sheet, `printed` at some time of that span, can be of a recorded printing that may have ended only after
/// `day`. A printing without a certain date may; where no printing is recorded, the date of the state counts, else that
/// of the design, and none says nothing. Every record of the sheet must allow it.
#[must_use]
pub fn may_be_after(records: &[(&Design, &Impression)], printed: Span, day: Day) -> bool {
    let can_be_later = printed.last.is_none_or(|last| last > day);
    can_be_later && records.iter().all(|(d, i)| allows_after(d, i, day))
}

/// What makes it probable that a sheet was printed only after a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ProbableDate {
    /// Its identification, with these printings.
    Printings(Vec<Key>),
    /// Its own date.
    OfSheet,
}

/// What makes it probable that a sheet was printed only after `day`: its own date, or its identification, which calls
/// itself probable, where no observation contradicts it and every printing that it allows, other readings apart, has a
/// certain date that begins later. `None` where nothing does.
#[must_use]
pub fn probably_after(design: &Design, impression: &Impression, day: Day) -> Option<ProbableDate> {
    let begins_after = |date: &Date| Span::of(date).first.is_some_and(|first| first > day);
    let own = impression.sheet.date.0.first();
    if let Some(own) = own {
        let is_later = own.claim.certainty() == Certainty::Probable && begins_after(&own.is.value);
        return is_later.then_some(ProbableDate::OfSheet);
    }
    let identified = impression.identified.as_ref()?;
    if identified.claim.certainty() != Certainty::Probable
        || contradiction(design, impression).is_some()
    {
        return None;
    }
    let all = candidates(design);
    let allowed = all.iter().filter(|candidate| candidate.fits(identified));
    let mut printings: Vec<Key> = Vec::new();
    for candidate in allowed {
        let printing = candidate.printing?;
        certain(&printing.date).filter(|date| begins_after(date))?;
        let key = &printing.key.value;
        if !printings.contains(key) {
            printings.push(key.clone());
        }
    }
    (!printings.is_empty()).then_some(ProbableDate::Printings(printings))
}

fn allows_after(design: &Design, impression: &Impression, day: Day) -> bool {
    let ends_after = |date: &Date| Span::of(date).last.is_none_or(|last| last > day);
    let ends_after_as_recorded = |dates: &Statements<Date>| {
        let own = dates.0.first();
        own.is_some_and(|own| ends_after(&own.is.value))
    };
    if let Some(date) = certain(&impression.sheet.date) {
        return ends_after(date);
    }
    let is_after = |candidate: &Candidate<'_>| match (candidate.printing, candidate.state) {
        (Some(printing), _) => certain(&printing.date).is_none_or(ends_after),
        (None, Some(state)) if !state.date.0.is_empty() => ends_after_as_recorded(&state.date),
        (None, _) => ends_after_as_recorded(&design.date),
    };
    let possible = possible(design, impression);
    let no_candidate = possible.is_empty() && ends_after_as_recorded(&design.date);
    let by_its_date = ends_after_as_recorded(&impression.sheet.date);
    no_candidate || by_its_date || possible.iter().any(is_after)
}

/// The candidates that a sheet can be of: those that its certain identification allows, unless observations contradict
/// it; else those that what was seen does not exclude.
fn possible<'a>(design: &'a Design, impression: &Impression) -> Vec<Candidate<'a>> {
    let relied_on = relied_on(design, impression);
    let allowed = relied_on.map_or_else(Vec::new, |identified| allowed_by(design, identified));
    if !allowed.is_empty() {
        return allowed;
    }
    let left = not_excluded(design, impression);
    if left.is_empty() {
        candidates(design)
    } else {
        left
    }
}

/// The identification of a record, where it is certain and no observation contradicts it.
fn relied_on<'a>(design: &Design, impression: &'a Impression) -> Option<&'a Identification> {
    let identified = impression.identified.as_ref()?;
    let is_certain = identified.claim.certainty() == Certainty::Certain;
    (is_certain && contradiction(design, impression).is_none()).then_some(identified)
}

/// The days that both allow; the first where they allow none.
fn agreed(a: Span, b: Span) -> Span {
    if !a.meets(b) {
        return a;
    }
    Span {
        first: a.first.max(b.first),
        last: match (a.last, b.last) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        },
    }
}

/// When a sheet was printed, by its own date, else by that of the printings it may be of, in one
/// record.
fn of_record(design: &Design, impression: &Impression) -> Span {
    if let Some(date) = certain(&impression.sheet.date) {
        return Span::of(date);
    }
    let runs = relied_on(design, impression).and_then(|identified| {
        let candidates = allowed_by(design, identified);
        let spans = candidates.iter().map(printed_as);
        spans.collect::<Option<Vec<Span>>>()
    });
    let spans: Vec<Span> = runs.into_iter().flatten().collect();
    if spans.is_empty() {
        return Span {
            first: made(design),
            last: None,
        };
    }
    let last: Option<Vec<Day>> = spans.iter().map(|s| s.last).collect();
    Span {
        first: spans.iter().map(|s| s.first).min().flatten(),
        last: last.and_then(|last| last.into_iter().max()),
    }
}

/// When sheets of a candidate were printed: within the dates of its printing, and not before its state was made. `None`
/// where the printing has no certain date.
fn printed_as(candidate: &Candidate<'_>) -> Option<Span> {
    let printing = Span::of(certain(&candidate.printing?.date)?);
    let state = candidate.state.and_then(|state| certain(&state.date));
    let from_state = Span {
        first: state.and_then(|date| Span::of(date).first),
        last: None,
    };
    Some(agreed(printing, from_state))
}

fn made(design: &Design) -> Option<Day> {
    certain(&design.date).and_then(|date| Span::of(date).first)
}

fn certain(dates: &Statements<Date>) -> Option<&Date> {
    let own = dates.0.first()?;
    (own.claim.certainty() == Certainty::Certain).then_some(&own.is.value)
}

/// The first day by which a sheet certainly existed: the latest day of its earliest certain date, of any
/// acquisition, departure, sighting or exhibition.
fn heard_of(catalogue: &Catalogue, impression: &Impression) -> Option<Day> {
    let entries = impression
        .provenance
        .iter()
        .filter(|entry| entry.is_certain());
    let entries = entries.flat_map(|entry| [&entry.from, &entry.to]).flatten();
    let seen = impression.sightings.iter().map(|sighting| &sighting.date);
    let shown = impression.exhibited.iter();
    let shown = shown
        .filter(|shown| shown.is_certain())
        .filter_map(|shown| {
            let exhibition = catalogue.exhibitions.get(&shown.exhibition.value)?;
            exhibition.date.as_ref()
        });
    let dates = entries.chain(seen).chain(shown);
    dates.filter_map(|date| Span::of(&date.value).last).min()
}
