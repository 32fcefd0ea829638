//! Which dates are firm, and how they are compared. A firm date is not loose
//! ([`crate::model::edtf::Date::is_loose`]); only firm dates give contradictions (docs/definitions.md, "Dates").

use crate::model::certainty::{Certainty, Statements};
use crate::model::edtf::{Date, Day};
use crate::model::place::Placed;

/// The date that the catalogue itself holds to be right (the first of the statements), where it is certain and
/// firm.
pub(super) fn own_date(dates: &Statements<Date>) -> Option<&Placed<Date>> {
    let own = dates.0.first()?;
    let is_firm = own.claim.certainty() == Certainty::Certain && !own.is.value.is_loose();
    is_firm.then_some(&own.is)
}

/// A date, where it is firm.
pub(super) fn date(date: Option<&Placed<Date>>) -> Option<&Placed<Date>> {
    date.filter(|d| !d.value.is_loose())
}

/// The first day that a date can cover; `None` where its beginning is open.
pub(super) fn first_day(date: &Date) -> Option<Day> {
    date.earliest().day()
}

/// The last day that a date can cover; `None` where its end is open.
pub(super) fn last_day(date: &Date) -> Option<Day> {
    date.latest().day()
}

/// Whether the last day of `early` is before the first day of `late`.
pub(super) fn is_before(early: &Date, late: &Date) -> bool {
    // Days are compared, not expressions: "1950/.." begins in 1950 although its end is open.
    match (last_day(early), first_day(late)) {
        (Some(end), Some(start)) => end < start,
        _ => false,
    }
}
