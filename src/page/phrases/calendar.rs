//! One date of the calendar in words: "about 1927", "1920s", "3 November 1971", "Spring 1927".
//!
//! Sets and intervals of dates are [`super::dates`].

use crate::model::edtf::parts::{Bound, CalendarDate as Calendar, DateField, Edtf, YearKind};
use crate::page::setting::words::{Argument, Words};

/// A date with "about", "perhaps" or both.
pub(super) fn qualified(date: &Calendar, words: &Words) -> String {
    let bare = bare(date, words);
    let id = match (date.is_uncertain(), date.is_approximate()) {
        (false, false) => return bare,
        (true, false) => "date-perhaps",
        (false, true) => "date-about",
        (true, true) => "date-perhaps-about",
    };
    words.with(id, &[("date", Argument::Text(&bare))])
}

fn bare(date: &Calendar, words: &Words) -> String {
    let Some(year) = year(date, words) else {
        return bounds(date, words);
    };
    let year = ("year", Argument::Text(&year));
    match (date.month, date.day) {
        (None, _) => match year.1 {
            Argument::Text(text) => text.to_owned(),
            Argument::Count(n) => n.to_string(),
        },
        (Some(month), None) => match month.value() {
            Some(m) => match sub_year(m) {
                Some(id) => words.with(id, &[year]),
                None => words.with(
                    "date-month",
                    &[("month", Argument::Text(month_name(m, words))), year],
                ),
            },
            None if month.digits == [None, None] => words.with("date-some-month", &[year]),
            None => bounds(date, words),
        },
        (Some(month), Some(day)) => match (month.value(), day.value()) {
            (Some(m), Some(d)) => words.with(
                "date-day",
                &[
                    ("day", Argument::Text(&d.to_string())),
                    ("month", Argument::Text(month_name(m, words))),
                    year,
                ],
            ),
            (Some(m), None) if day.digits == [None, None] => words.with(
                "date-some-day",
                &[("month", Argument::Text(month_name(m, words))), year],
            ),
            (None, None) if month.digits == [None, None] && day.digits == [None, None] => {
                words.with("date-some-day-of-year", &[year])
            }
            _ => bounds(date, words),
        },
    }
}

/// A decade on its own, which takes no article: "1920s", but "about the 1920s".
pub(super) fn decade_alone(date: &Calendar, words: &Words) -> Option<String> {
    let decade = decade(date)?;
    let is_bare = !date.is_uncertain() && !date.is_approximate();
    is_bare.then(|| words.with("date-decade", &[("decade", Argument::Text(&decade))]))
}

/// The first year of a decade, "1920" of `192X`; `None` for any other date.
fn decade(date: &Calendar) -> Option<String> {
    match date.year.kind {
        YearKind::Standard {
            negative: false,
            digits: [Some(a), Some(b), Some(c), None],
        } if date.month.is_none() => Some(format!("{a}{b}{c}0").trim_start_matches('0').to_owned()),
        _ => None,
    }
}

/// The year in words; `None` where the missing digits can only be given as bounds.
fn year(date: &Calendar, words: &Words) -> Option<String> {
    if let Some(decade) = decade(date) {
        // The last two digits of its last year: "29" of the 1920s.
        let end: String = decade
            .chars()
            .rev()
            .nth(1)
            .into_iter()
            .chain(['9'])
            .collect();
        return Some(words.with(
            "date-the-decade",
            &[
                ("decade", Argument::Text(&decade)),
                ("end", Argument::Text(&end)),
            ],
        ));
    }
    let year = &date.year;
    if year.has_unspecified() {
        return None;
    }
    let Some(value) = year.value() else {
        // The power of ten may not fit an integer.
        let YearKind::Exponential {
            significand,
            exponent,
        } = year.kind
        else {
            return None;
        };
        return Some(format!("{significand} × 10^{exponent}"));
    };
    let text = if value > 0 {
        value.to_string()
    } else {
        // Year 0 is 1 BCE.
        let before = (1 - i128::from(value)).to_string();
        words.with("date-bce", &[("year", Argument::Text(&before))])
    };
    Some(match year.significant_digits {
        None => text,
        Some(digits) => words.with(
            "date-significant",
            &[
                ("year", Argument::Text(&text)),
                ("n", Argument::Count(digits as usize)),
            ],
        ),
    })
}

/// The earliest and latest day of a date, as years where those are whole.
fn bounds(date: &Calendar, words: &Words) -> String {
    let bounds = Edtf::Date(*date).bounds();
    let (Bound::Date(first), Bound::Date(last)) = (bounds.earliest, bounds.latest) else {
        return words.word("date-unknown").to_owned();
    };
    let number = |year: i64| {
        if year > 0 {
            year.to_string()
        } else {
            let before = (1 - i128::from(year)).to_string();
            words.with("date-bce", &[("year", Argument::Text(&before))])
        }
    };
    let day = |month: u8, day: u8, year: i64| {
        words.with(
            "date-day",
            &[
                ("day", Argument::Text(&day.to_string())),
                ("month", Argument::Text(month_name(month, words))),
                ("year", Argument::Text(&number(year))),
            ],
        )
    };
    let whole_years = (first.month, first.day) == (1, 1) && (last.month, last.day) == (12, 31);
    let (a, b) = if whole_years {
        (number(first.year), number(last.year))
    } else {
        (
            day(first.month, first.day, first.year),
            day(last.month, last.day, last.year),
        )
    };
    if a == b {
        return a;
    }
    words.with(
        "date-between",
        &[("a", Argument::Text(&a)), ("b", Argument::Text(&b))],
    )
}

pub(super) fn month_of(date: &Calendar) -> Option<u8> {
    date.month.and_then(DateField::value)
}

pub(super) fn day_and_month(date: &Calendar, words: &Words) -> Option<String> {
    let day = date.day.and_then(DateField::value)?.to_string();
    let month = month_name(month_of(date)?, words);
    Some(words.with(
        "date-day-month",
        &[
            ("day", Argument::Text(&day)),
            ("month", Argument::Text(month)),
        ],
    ))
}

pub(super) fn month_name(month: u8, words: &Words) -> &str {
    const MONTHS: [&str; 12] = [
        "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8",
        "month-9", "month-10", "month-11", "month-12",
    ];
    let at = usize::from(month).saturating_sub(1);
    words.word(MONTHS.get(at).copied().unwrap_or("date-unknown"))
}

/// The word for a part of a year (ISO 8601-2:2019, 4.8: codes 21 to 41); `None` for a month.
fn sub_year(code: u8) -> Option<&'static str> {
    Some(match code {
        21 => "date-spring",
        22 => "date-summer",
        23 => "date-autumn",
        24 => "date-winter",
        25 => "date-spring-north",
        26 => "date-summer-north",
        27 => "date-autumn-north",
        28 => "date-winter-north",
        29 => "date-spring-south",
        30 => "date-summer-south",
        31 => "date-autumn-south",
        32 => "date-winter-south",
        33 => "date-quarter-1",
        34 => "date-quarter-2",
        35 => "date-quarter-3",
        36 => "date-quarter-4",
        37 => "date-third-1",
        38 => "date-third-2",
        39 => "date-third-3",
        40 => "date-half-1",
        41 => "date-half-2",
        _ => return None,
    })
}
