//! Dates: EDTF (ISO 8601-2:2019 Annex A, levels 0 to 2), wrapped in one place.
//!
//! The crate `edtf-core` parses, and gives bounds and order. Qualifiers (`?`, `~`, `%`) never move a
//! bound. Seasons without a hemisphere (21 to 24) take the crate's northern months; the standard
//! gives no months, so no rule may use a season to contradict a record ([`Date::is_loose`]).
//!
//! Not here: the words readers see (`page::phrases::dates`), which depend on the language.

use std::fmt;

use edtf_core::{BoundDate, Relation};

/// The parts of a parsed expression, for code that puts dates into words. They are types of the crate
/// `edtf-core`, re-exported so that other modules depend only on this one.
pub mod parts {
    pub use edtf_core::{
        Bound, Date as CalendarDate, DateField, Edtf, IntervalEndpoint, Precision, Qualifier,
        SetElement, SetKind, YearKind,
    };
}

use parts::{Bound, CalendarDate, DateField, Edtf, IntervalEndpoint, SetElement};

/// A date as recorded: the text and what it means.
#[derive(Clone, Debug)]
pub struct Date {
    text: Box<str>,
    edtf: Edtf,
}

/// Why a text is not a date, and at which byte.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotADate {
    /// The fault, in a phrase.
    pub reason: &'static str,
    /// Bytes from the start of the text.
    pub offset: usize,
}

/// An end of what a date covers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// A day.
    Day(Day),
    /// No bound (`..`).
    Open,
    /// Not known (an empty end, or a year too large to compute with).
    Unknown,
}

/// A day of the proleptic Gregorian calendar; year 0 is 1 BCE.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day {
    /// Astronomical year.
    pub year: i64,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 31.
    pub day: u8,
}

impl Day {
    /// The day after it.
    #[must_use]
    pub fn following(self) -> Day {
        let Day { year, month, day } = self;
        if day < days_of(year, month) {
            Day {
                day: day + 1,
                ..self
            }
        } else if month < 12 {
            Day {
                year,
                month: month + 1,
                day: 1,
            }
        } else {
            Day {
                year: year + 1,
                month: 1,
                day: 1,
            }
        }
    }

    /// The day before it.
    #[must_use]
    pub fn preceding(self) -> Day {
        let Day { year, month, day } = self;
        if day > 1 {
            Day {
                day: day - 1,
                ..self
            }
        } else if month > 1 {
            Day {
                year,
                month: month - 1,
                day: days_of(year, month - 1),
            }
        } else {
            Day {
                year: year - 1,
                month: 12,
                day: 31,
            }
        }
    }
}

/// The days of a month of the proleptic Gregorian calendar.
fn days_of(year: i64, month: u8) -> u8 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

impl Edge {
    /// The day, where there is one.
    #[must_use]
    pub fn day(self) -> Option<Day> {
        match self {
            Edge::Day(day) => Some(day),
            Edge::Open | Edge::Unknown => None,
        }
    }

    fn of(bound: Bound) -> Edge {
        match bound {
            Bound::Date(BoundDate { year, month, day }) => Edge::Day(Day { year, month, day }),
            Bound::NegativeInfinity | Bound::PositiveInfinity => Edge::Open,
            Bound::Unknown => Edge::Unknown,
        }
    }
}

impl Date {
    /// Reads a date.
    ///
    /// ```
    /// # use keyblock_model::edtf::Date;
    /// assert!(Date::parse("1927?/1931").is_ok());
    /// assert!(Date::parse("c. 1927").is_err());
    /// ```
    ///
    /// # Errors
    /// [`NotADate`] for a text that is not EDTF of level 0, 1 or 2.
    pub fn parse(text: &str) -> Result<Date, NotADate> {
        match Edtf::parse(text) {
            Ok(edtf) => Ok(Date {
                text: text.into(),
                edtf,
            }),
            Err(fault) => Err(NotADate {
                reason: fault.message,
                offset: fault.offset,
            }),
        }
    }

    /// The text as recorded.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// The parsed expression.
    #[must_use]
    pub fn edtf(&self) -> &Edtf {
        &self.edtf
    }

    /// The first day it can cover.
    #[must_use]
    pub fn earliest(&self) -> Edge {
        Edge::of(self.edtf.bounds().earliest)
    }

    /// The last day it can cover.
    #[must_use]
    pub fn latest(&self) -> Edge {
        Edge::of(self.edtf.bounds().latest)
    }

    /// The first day of what the text names, where an open or unknown beginning names nothing: of `../1940` the
    /// first day of 1940. `None` where no day is named.
    #[must_use]
    pub fn first_named(&self) -> Option<Day> {
        let of_all = || {
            let dates = self.named_dates().into_iter();
            dates.filter_map(|d| Edge::of(Edtf::Date(d).bounds().earliest).day())
        };
        self.earliest().day().or_else(|| of_all().min())
    }

    /// The last day of what the text names, where an open or unknown end names nothing: of `1940/..` the last day
    /// of 1940. `None` where no day is named.
    #[must_use]
    pub fn last_named(&self) -> Option<Day> {
        let of_all = || {
            let dates = self.named_dates().into_iter();
            dates.filter_map(|d| Edge::of(Edtf::Date(d).bounds().latest).day())
        };
        self.latest().day().or_else(|| of_all().max())
    }

    /// The dates of the calendar that stand in the text.
    fn named_dates(&self) -> Vec<CalendarDate> {
        let of_end = |end: &IntervalEndpoint| match end {
            IntervalEndpoint::Date(d)
            | IntervalEndpoint::OnOrBefore(d)
            | IntervalEndpoint::OnOrAfter(d) => Some(*d),
            IntervalEndpoint::Open | IntervalEndpoint::Unknown => None,
        };
        match &self.edtf {
            Edtf::Date(date) => vec![*date],
            Edtf::DateTime(time) => vec![time.date],
            Edtf::Interval(interval) => {
                let ends = [&interval.start, &interval.end];
                ends.into_iter().filter_map(of_end).collect()
            }
            Edtf::Set(set) => set
                .elements
                .iter()
                .flat_map(|element| match element {
                    SetElement::Date(d) | SetElement::OnOrBefore(d) | SetElement::OnOrAfter(d) => {
                        vec![*d]
                    }
                    SetElement::Range(a, b) => vec![*a, *b],
                })
                .collect(),
        }
    }

    /// Whether every reading of it ends before any reading of `other` begins.
    #[must_use]
    pub fn certainly_before(&self, other: &Date) -> bool {
        self.edtf
            .relation(&other.edtf)
            .is_definite(Relation::Before)
    }

    /// Whether some reading of it begins before some reading of `other` ends.
    #[must_use]
    pub fn possibly_before(&self, other: &Date) -> bool {
        self.edtf
            .relation(&other.edtf)
            .is_possible(Relation::Before)
    }

    /// Whether it is qualified (`?`, `~`, `%`) or names a season: too loose to contradict anything
    /// that stands close to it.
    #[must_use]
    pub fn is_loose(&self) -> bool {
        self.edtf.is_uncertain() || self.edtf.is_approximate() || self.names_a_season()
    }

    /// Whether it carries a time of day, which EDTF allows and no catalogue date needs.
    #[must_use]
    pub fn has_time(&self) -> bool {
        matches!(self.edtf, Edtf::DateTime(_))
    }

    fn names_a_season(&self) -> bool {
        let is_season = |date: &CalendarDate| {
            date.month
                .and_then(DateField::value)
                .is_some_and(|m| (21..=32).contains(&m))
        };
        let end_is_season = |end: &IntervalEndpoint| match end {
            IntervalEndpoint::Date(d)
            | IntervalEndpoint::OnOrBefore(d)
            | IntervalEndpoint::OnOrAfter(d) => is_season(d),
            IntervalEndpoint::Open | IntervalEndpoint::Unknown => false,
        };
        match &self.edtf {
            Edtf::Date(date) => is_season(date),
            Edtf::DateTime(_) => false,
            Edtf::Interval(interval) => {
                end_is_season(&interval.start) || end_is_season(&interval.end)
            }
            Edtf::Set(set) => set.elements.iter().any(|element| match element {
                SetElement::Date(d) | SetElement::OnOrBefore(d) | SetElement::OnOrAfter(d) => {
                    is_season(d)
                }
                SetElement::Range(a, b) => is_season(a) || is_season(b),
            }),
        }
    }
}

impl PartialEq for Date {
    fn eq(&self, other: &Date) -> bool {
        self.text == other.text
    }
}

impl Eq for Date {}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.year < 0 { "-" } else { "" };
        write!(
            f,
            "{sign}{:04}-{:02}-{:02}",
            self.year.abs(),
            self.month,
            self.day
        )
    }
}

#[cfg(test)]
mod tests {
    use super::{Date, Day};

    /// What an open or unknown side of a date leaves: the days that the text names.
    #[test]
    fn an_open_side_names_no_day() {
        for (text, first, last) in [
            ("1940", "1940-01-01", "1940-12-31"),
            ("1940~", "1940-01-01", "1940-12-31"),
            ("1940/..", "1940-01-01", "1940-12-31"),
            ("1940-05/", "1940-05-01", "1940-05-31"),
            ("../1940", "1940-01-01", "1940-12-31"),
            ("[1940..]", "1940-01-01", "1940-12-31"),
            ("[..1938,1940]", "1938-01-01", "1940-12-31"),
            ("1936/1940..", "1936-01-01", "1940-12-31"),
        ] {
            let date = Date::parse(text).unwrap();
            let named = [date.first_named(), date.last_named()];
            let named = named.map(|day| day.unwrap().to_string());
            assert_eq!(named, [first, last], "{text}");
        }
    }

    /// Leap years are those of the Gregorian calendar: 2000 is one, 1900 is not.
    #[test]
    fn days_follow_each_other_there_and_back() {
        let day = |year, month, day| Day { year, month, day };
        for (before, after) in [
            (day(1938, 4, 30), day(1938, 5, 1)),
            (day(1944, 2, 28), day(1944, 2, 29)),
            (day(1944, 2, 29), day(1944, 3, 1)),
            (day(1900, 2, 28), day(1900, 3, 1)),
            (day(2000, 2, 28), day(2000, 2, 29)),
            (day(1932, 12, 31), day(1933, 1, 1)),
            (day(1945, 5, 8), day(1945, 5, 9)),
        ] {
            assert_eq!(before.following(), after);
            assert_eq!(after.preceding(), before);
        }
    }
}
