//! What is firm enough to contradict something else.

use crate::model::certainty::{Certainty, Statements};
use crate::model::edtf::{Date, Day};
use crate::model::place::Placed;

/// The catalogue's own view of a date, where it is stated with certainty and is not loose.
pub(super) fn own_date(dates: &Statements<Date>) -> Option<&Placed<Date>> {
    let own = dates.0.first()?;
    let is_firm = own.claim.certainty() == Certainty::Certain && !own.is.value.is_loose();
    is_firm.then_some(&own.is)
}

/// A date, where it is not loose.
pub(super) fn date(date: Option<&Placed<Date>>) -> Option<&Placed<Date>> {
    date.filter(|d| !d.value.is_loose())
}

/// The first day a date can cover, where there is one.
pub(super) fn first_day(date: &Date) -> Option<Day> {
    date.earliest().day()
}

/// The last day a date can cover, where there is one.
pub(super) fn last_day(date: &Date) -> Option<Day> {
    date.latest().day()
}

/// Whether all of `early` lies before all of `late`.
pub(super) fn is_before(early: &Date, late: &Date) -> bool {
    // Days are compared, not expressions: "1950/.." begins in 1950 whatever its end may be.
    match (last_day(early), first_day(late)) {
        (Some(end), Some(start)) => end < start,
        _ => false,
    }
}
