//! Days: the first and last on which a sheet is known, and those through which something certainly
//! lasted.
//!
//! In: dates of a record (EDTF). Out: spans of days. Definitions: `docs/definitions.md, "Dates"`.

use keyblock_model::catalogue::Catalogue;
use keyblock_model::certainty::Basis;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::Impression;
use keyblock_model::place::Placed;

/// A day after every date: the end of what still lasts.
pub(super) const STILL: Day = Day {
    year: i64::MAX,
    month: 12,
    day: 31,
};

/// A day after every date and before [`STILL`], used for today, because studies read no clock.
pub(super) const TODAY: Day = Day {
    year: i64::MAX,
    month: 1,
    day: 1,
};

/// The first and the last day a date can cover, where it has both.
pub(super) fn days(date: &Date) -> Option<(Day, Day)> {
    Some((date.earliest().day()?, date.latest().day()?))
}

/// A date that is not loose, as days.
pub(super) fn firm(date: Option<&Placed<Date>>) -> Option<(Day, Day)> {
    days(&date.filter(|date| !date.value.is_loose())?.value)
}

/// The days through which something with this date certainly lasted: from the last day on which it
/// can have begun to the first on which it can have ended. `None` for a date that only says when it
/// was ("1937"), unless that is a single day.
pub(super) fn lasted(date: &Date) -> Option<(Day, Day)> {
    if date.is_loose() {
        return None;
    }
    let Some((start, end)) = date.as_str().split_once('/') else {
        return days(date).filter(|(first, last)| first == last);
    };
    let start = Date::parse(start).ok()?.latest().day()?;
    let end = Date::parse(end).ok()?.earliest().day()?;
    (start <= end).then_some((start, end))
}

/// The first and the last day on which anything is known of a sheet, by the earliest reading of the
/// first date and the latest of the last.
pub(super) fn known(catalogue: &Catalogue, impression: &Impression) -> Option<(Day, Day)> {
    let of_entries = impression
        .provenance
        .iter()
        .flat_map(|entry| [entry.from.as_ref(), entry.to.as_ref()])
        .flatten();
    let of_sightings = impression.sightings.iter().map(|sighting| &sighting.date);
    let of_shows = impression.exhibited.iter();
    let of_shows = of_shows
        .filter(|shown| shown.is_certain())
        .filter_map(|shown| {
            let exhibition = catalogue.exhibitions.get(&shown.exhibition.value)?;
            exhibition.date.as_ref()
        });
    let dates: Vec<(Day, Day)> = of_entries
        .chain(of_sightings)
        .chain(of_shows)
        .filter_map(|date| days(&date.value))
        .collect();
    let first = dates.iter().map(|(first, _)| *first).min()?;
    let last = dates.iter().map(|(_, last)| *last).max()?;
    Some((first, last))
}

/// When a sheet was last looked at: the last sighting by somebody who saw it or a photograph of it, or
/// else the last of any. First and last day.
pub(super) fn inspected(impression: &Impression) -> Option<(Day, Day)> {
    let saw = |basis| matches!(basis, Some(Basis::FirstHand | Basis::Photograph));
    last_sighting(impression, saw).or_else(|| last_sighting(impression, |_| true))
}

/// The last first-hand sighting, when the sheet was where it is recorded to be. First and last day.
pub(super) fn met(impression: &Impression) -> Option<(Day, Day)> {
    last_sighting(impression, |basis| basis == Some(Basis::FirstHand))
}

fn last_sighting(
    impression: &Impression,
    counts: impl Fn(Option<Basis>) -> bool,
) -> Option<(Day, Day)> {
    let sightings = impression.sightings.iter();
    sightings
        .filter(|sighting| counts(sighting.basis.as_ref().map(|basis| basis.value)))
        .filter_map(|sighting| firm(Some(&sighting.date)))
        .max()
}
