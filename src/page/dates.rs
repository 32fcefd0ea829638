//! Dates in words: "about 1927", "between 1927 and 1931", "1920s", "3 November 1971".
//!
//! Every EDTF expression has words in every language of the theme; nothing here can fail. An
//! interval means two things: something that happened once, somewhere within it ([`once`]), or
//! something that lasted throughout it ([`throughout`]): an exhibition, a workshop's years.
//!
//! DIFFERS: where EDTF qualifies one part of a date (`2004-06~-11`), the words qualify the whole.

use edtf_core::{
    Bound, Date as Calendar, Edtf, IntervalEndpoint, Precision, SetElement, SetKind, YearKind,
};

use super::html::CleanHtml;
use super::words::{Given, Words};
use crate::model::edtf::Date;

/// The words for the date of something that happened once.
pub fn once(date: &Date, words: &Words) -> String {
    in_words(date, words, Reading::Once)
}

/// The words for the date of something that lasted throughout.
pub fn throughout(date: &Date, words: &Words) -> String {
    in_words(date, words, Reading::Throughout)
}

/// [`once`] with a `time` element around it, where the date is one day, month or year.
pub fn once_html(date: &Date, words: &Words) -> CleanHtml {
    timed(date, &once(date, words))
}

/// [`throughout`], in the same way.
pub fn throughout_html(date: &Date, words: &Words) -> CleanHtml {
    timed(date, &throughout(date, words))
}

/// The words for a life: "1903–1958", "born 1903", "died 1958"; nothing where neither is known.
pub fn life(born: Option<&Date>, died: Option<&Date>, words: &Words) -> String {
    let said = |date: &Date| plain_year(date).unwrap_or_else(|| once(date, words));
    match (born, died) {
        (Some(born), Some(died)) => format!("{}–{}", said(born), said(died)),
        (Some(born), None) => words.with("life-born", &[("date", Given::Text(&said(born)))]),
        (None, Some(died)) => words.with("life-died", &[("date", Given::Text(&said(died)))]),
        (None, None) => String::new(),
    }
}

/// The year of an unqualified date, which is all that a life beside a name tells.
fn plain_year(date: &Date) -> Option<String> {
    let Edtf::Date(d) = date.edtf() else {
        return None;
    };
    let is_plain = !d.is_uncertain() && !d.is_approximate() && !d.year.has_unspecified();
    let year = d.year.value().filter(|year| is_plain && *year > 0)?;
    Some(year.to_string())
}

#[derive(Clone, Copy, PartialEq)]
enum Reading {
    Once,
    Throughout,
}

fn in_words(date: &Date, words: &Words, reading: Reading) -> String {
    match date.edtf() {
        Edtf::Date(d) => decade_alone(d, words).unwrap_or_else(|| qualified(d, words)),
        // A time of day tells readers of a catalogue nothing.
        Edtf::DateTime(d) => qualified(&d.date, words),
        Edtf::Interval(i) => interval(&i.start, &i.end, words, reading),
        Edtf::Set(set) => {
            let parts: Vec<String> = set.elements.iter().map(|e| element(e, words)).collect();
            let id = match set.kind {
                SetKind::OneMember => "date-or",
                SetKind::AllMembers => "date-and",
            };
            list(&parts, id, words)
        }
    }
}

/// `a, b or c`, with the word `id` for the last pair.
fn list(parts: &[String], id: &str, words: &Words) -> String {
    match parts {
        [] => words.word("date-unknown").to_owned(),
        [one] => one.clone(),
        [before @ .., last] => words.with(
            id,
            &[
                ("before", Given::Text(&before.join(", "))),
                ("last", Given::Text(last)),
            ],
        ),
    }
}

fn element(element: &SetElement, words: &Words) -> String {
    match element {
        SetElement::Date(d) => qualified(d, words),
        SetElement::OnOrBefore(d) => around("date-or-earlier", d, words),
        SetElement::OnOrAfter(d) => around("date-or-later", d, words),
        SetElement::Range(a, b) => pair("date-between", a, b, words),
    }
}

fn interval(
    start: &IntervalEndpoint,
    end: &IntervalEndpoint,
    words: &Words,
    reading: Reading,
) -> String {
    use IntervalEndpoint::{Date, OnOrAfter, OnOrBefore, Open, Unknown};
    let once = reading == Reading::Once;
    match (start, end) {
        (Date(a), Date(b)) if a == b => qualified(a, words),
        (Date(a), Date(b)) => pair(
            if once {
                "date-between"
            } else {
                "date-throughout"
            },
            a,
            b,
            words,
        ),
        (Date(a) | OnOrAfter(a), Open) => {
            around(if once { "date-not-before" } else { "date-from" }, a, words)
        }
        (Open, Date(b) | OnOrBefore(b)) => {
            around(if once { "date-not-after" } else { "date-until" }, b, words)
        }
        (Date(a) | OnOrAfter(a), Unknown) => around("date-from-unknown", a, words),
        (Unknown, Date(b) | OnOrBefore(b)) => around("date-until-unknown", b, words),
        (Open | Unknown, Open | Unknown) => words.word("date-unknown").to_owned(),
        // `..1927/1931`: began in 1927 or earlier; `1927/1931..`: ended in 1931 or later.
        (a, b) => {
            let from = loose_end(a, words);
            let to = loose_end(b, words);
            let id = if once {
                "date-between"
            } else {
                "date-throughout"
            };
            words.with(id, &[("a", Given::Text(&from)), ("b", Given::Text(&to))])
        }
    }
}

fn loose_end(end: &IntervalEndpoint, words: &Words) -> String {
    match end {
        IntervalEndpoint::Date(d) => qualified(d, words),
        IntervalEndpoint::OnOrBefore(d) => around("date-or-earlier", d, words),
        IntervalEndpoint::OnOrAfter(d) => around("date-or-later", d, words),
        IntervalEndpoint::Open | IntervalEndpoint::Unknown => words.word("date-unknown").to_owned(),
    }
}

fn around(id: &str, date: &Calendar, words: &Words) -> String {
    words.with(id, &[("date", Given::Text(&qualified(date, words)))])
}

/// Two ends; what the first shares with the second is said once ("between March and May 1962").
fn pair(id: &str, a: &Calendar, b: &Calendar, words: &Words) -> String {
    let plain = |d: &Calendar| !d.is_uncertain() && !d.is_approximate() && !d.has_unspecified();
    let same_year = plain(a) && plain(b) && a.year == b.year;
    let first = match (a.precision(), b.precision()) {
        (Precision::Day, Precision::Day) if same_year && month_of(a) == month_of(b) => a
            .day
            .and_then(edtf_core::DateField::value)
            .map(|day| words.with("date-day-alone", &[("day", Given::Text(&day.to_string()))])),
        (Precision::Day, Precision::Day) if same_year => day_and_month(a, words),
        (Precision::Month, Precision::Month) if same_year => {
            month_of(a).map(|m| month_name(m, words).to_owned())
        }
        _ => None,
    };
    let first = first.unwrap_or_else(|| qualified(a, words));
    words.with(
        id,
        &[
            ("a", Given::Text(&first)),
            ("b", Given::Text(&qualified(b, words))),
        ],
    )
}

/// A date with "about", "perhaps" or both.
fn qualified(date: &Calendar, words: &Words) -> String {
    let bare = bare(date, words);
    let id = match (date.is_uncertain(), date.is_approximate()) {
        (false, false) => return bare,
        (true, false) => "date-perhaps",
        (false, true) => "date-about",
        (true, true) => "date-perhaps-about",
    };
    words.with(id, &[("date", Given::Text(&bare))])
}

fn bare(date: &Calendar, words: &Words) -> String {
    let Some(year) = year(date, words) else {
        return bounds(date, words);
    };
    let year = ("year", Given::Text(&year));
    match (date.month, date.day) {
        (None, _) => match year.1 {
            Given::Text(text) => text.to_owned(),
            Given::Count(n) => n.to_string(),
        },
        (Some(month), None) => match month.value() {
            Some(m) => match sub_year(m) {
                Some(id) => words.with(id, &[year]),
                None => words.with(
                    "date-month",
                    &[("month", Given::Text(month_name(m, words))), year],
                ),
            },
            None if month.digits == [None, None] => words.with("date-some-month", &[year]),
            None => bounds(date, words),
        },
        (Some(month), Some(day)) => match (month.value(), day.value()) {
            (Some(m), Some(d)) => words.with(
                "date-day",
                &[
                    ("day", Given::Text(&d.to_string())),
                    ("month", Given::Text(month_name(m, words))),
                    year,
                ],
            ),
            (Some(m), None) if day.digits == [None, None] => words.with(
                "date-some-day",
                &[("month", Given::Text(month_name(m, words))), year],
            ),
            (None, None) if month.digits == [None, None] && day.digits == [None, None] => {
                words.with("date-some-day-of-year", &[year])
            }
            _ => bounds(date, words),
        },
    }
}

/// A decade that stands alone, which takes no article: "1920s" beside "about the 1920s".
fn decade_alone(date: &Calendar, words: &Words) -> Option<String> {
    let decade = decade(date)?;
    let is_bare = !date.is_uncertain() && !date.is_approximate();
    is_bare.then(|| words.with("date-decade", &[("decade", Given::Text(&decade))]))
}

/// The first year of the decade that a date is, "1920" of `192X`.
fn decade(date: &Calendar) -> Option<String> {
    match date.year.kind {
        YearKind::Standard {
            negative: false,
            digits: [Some(a), Some(b), Some(c), None],
        } if date.month.is_none() => Some(format!("{a}{b}{c}0").trim_start_matches('0').to_owned()),
        _ => None,
    }
}

/// The year in words; `None` where digits are missing in a way that only bounds can say.
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
            &[("decade", Given::Text(&decade)), ("end", Given::Text(&end))],
        ));
    }
    let year = &date.year;
    if year.has_unspecified() {
        return None;
    }
    let Some(value) = year.value() else {
        // A power of ten beyond what a number here can hold.
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
        words.with("date-bce", &[("year", Given::Text(&before))])
    };
    Some(match year.significant_digits {
        None => text,
        Some(digits) => words.with(
            "date-significant",
            &[
                ("year", Given::Text(&text)),
                ("n", Given::Count(digits as usize)),
            ],
        ),
    })
}

/// Between the first and the last day it can be, as years where those are whole.
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
            words.with("date-bce", &[("year", Given::Text(&before))])
        }
    };
    let day = |month: u8, day: u8, year: i64| {
        words.with(
            "date-day",
            &[
                ("day", Given::Text(&day.to_string())),
                ("month", Given::Text(month_name(month, words))),
                ("year", Given::Text(&number(year))),
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
        &[("a", Given::Text(&a)), ("b", Given::Text(&b))],
    )
}

fn month_of(date: &Calendar) -> Option<u8> {
    date.month.and_then(edtf_core::DateField::value)
}

fn day_and_month(date: &Calendar, words: &Words) -> Option<String> {
    let day = date.day.and_then(edtf_core::DateField::value)?.to_string();
    let month = month_name(month_of(date)?, words);
    Some(words.with(
        "date-day-month",
        &[("day", Given::Text(&day)), ("month", Given::Text(month))],
    ))
}

fn month_name(month: u8, words: &Words) -> &str {
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

/// A `time` element, where the date is one that HTML can hold: an unqualified day, month or year.
fn timed(date: &Date, text: &str) -> CleanHtml {
    let text_html = CleanHtml::text(text);
    let Edtf::Date(d) = date.edtf() else {
        return text_html;
    };
    let is_plain = !d.is_uncertain()
        && !d.is_approximate()
        && !d.has_unspecified()
        && d.precision() != Precision::Season
        && d.year.significant_digits.is_none();
    match d.year.value() {
        Some(1..=9999) if is_plain => {
            CleanHtml::element("time", &[("datetime", date.as_str())], &text_html)
        }
        _ => text_html,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::theme::Theme;

    fn check(table: &[(&str, &str, &str)], say: fn(&Date, &Words) -> String) {
        let english = Words::new(&Theme::default(), "en").unwrap();
        let german = Words::new(&Theme::default(), "de").unwrap();
        for (edtf, in_english, in_german) in table {
            let date = Date::parse(edtf).unwrap();
            assert_eq!(say(&date, &english), *in_english, "{edtf}");
            assert_eq!(say(&date, &german), *in_german, "{edtf}");
        }
    }

    // Forms: ISO 8601-2:2019 Annex A, levels 0 to 2. The words are the house's own.
    #[test]
    fn something_that_happened_once() {
        check(
            &[
                ("1927", "1927", "1927"),
                ("1927-11", "November 1927", "November 1927"),
                ("1971-11-03", "3 November 1971", "3. November 1971"),
                ("1971-11-03T10:00:00", "3 November 1971", "3. November 1971"),
                ("1927~", "about 1927", "um 1927"),
                ("1927?", "perhaps 1927", "vielleicht 1927"),
                ("1927%", "perhaps about 1927", "vielleicht um 1927"),
                ("192X", "1920s", "1920er Jahre"),
                ("192X~", "about the 1920s", "um 1920/29"),
                (
                    "191X/192X",
                    "between the 1910s and the 1920s",
                    "zwischen 1910/19 und 1920/29",
                ),
                ("19XX", "between 1900 and 1999", "zwischen 1900 und 1999"),
                ("1XXX", "between 1000 and 1999", "zwischen 1000 und 1999"),
                ("1985-04-XX", "a day in April 1985", "ein Tag im April 1985"),
                ("1985-XX", "a month of 1985", "ein Monat des Jahres 1985"),
                ("1985-XX-XX", "a day in 1985", "ein Tag im Jahr 1985"),
                ("1927-21", "spring 1927", "Frühjahr 1927"),
                ("1927-24", "winter 1927", "Winter 1927"),
                (
                    "1927-29",
                    "spring 1927 (southern hemisphere)",
                    "Frühjahr 1927 (Südhalbkugel)",
                ),
                ("1927-33", "first quarter of 1927", "1. Quartal 1927"),
                ("1927-41", "second half of 1927", "2. Halbjahr 1927"),
                (
                    "1927/1931",
                    "between 1927 and 1931",
                    "zwischen 1927 und 1931",
                ),
                (
                    "1927~/1931?",
                    "between about 1927 and perhaps 1931",
                    "zwischen um 1927 und vielleicht 1931",
                ),
                (
                    "1962-03/1962-05",
                    "between March and May 1962",
                    "zwischen März und Mai 1962",
                ),
                (
                    "1962-03-03/1962-03-09",
                    "between 3 and 9 March 1962",
                    "zwischen 3. und 9. März 1962",
                ),
                ("1927/1927", "1927", "1927"),
                ("1920/..", "not before 1920", "nicht vor 1920"),
                ("../1931", "not after 1931", "nicht nach 1931"),
                (
                    "1927/",
                    "from 1927, until when is not known",
                    "ab 1927, bis wann ist unbekannt",
                ),
                (
                    "/1931",
                    "until 1931, from when is not known",
                    "bis 1931, ab wann ist unbekannt",
                ),
                ("[1927,1929]", "1927 or 1929", "1927 oder 1929"),
                (
                    "[1667,1668,1670..1672]",
                    "1667, 1668 or between 1670 and 1672",
                    "1667, 1668 oder zwischen 1670 und 1672",
                ),
                ("[..1931]", "1931 or earlier", "1931 oder früher"),
                ("[1931..]", "1931 or later", "1931 oder später"),
                ("{1927,1929}", "1927 and 1929", "1927 und 1929"),
                ("0000", "1 BCE", "1 v. Chr."),
                ("-0044-03-15", "15 March 45 BCE", "15. März 45 v. Chr."),
                ("Y170000002", "170000002", "170000002"),
                (
                    "1950S2",
                    "1950 (to 2 significant digits)",
                    "1950 (auf 2 Stellen genau)",
                ),
                ("2004-06~-11", "about 11 June 2004", "um 11. Juni 2004"),
                (
                    "1985-1X-01",
                    "between 1 October 1985 and 1 December 1985",
                    "zwischen 1. Oktober 1985 und 1. Dezember 1985",
                ),
            ],
            once,
        );
    }

    #[test]
    fn something_that_lasted() {
        check(
            &[
                ("1950/1975", "1950 to 1975", "1950 bis 1975"),
                ("1962-03/1962-05", "March to May 1962", "März bis Mai 1962"),
                ("1931/..", "from 1931", "ab 1931"),
                ("../1931", "until 1931", "bis 1931"),
                ("1962", "1962", "1962"),
            ],
            throughout,
        );
    }

    #[test]
    fn a_time_element_stands_only_around_one_day_month_or_year() {
        let words = Words::new(&Theme::default(), "en").unwrap();
        let html = |edtf: &str| once_html(&Date::parse(edtf).unwrap(), &words);
        assert_eq!(
            html("1971-11").as_str(),
            "<time datetime=\"1971-11\">November 1971</time>"
        );
        for loose in [
            "1971~",
            "192X",
            "1927/1931",
            "[1927,1929]",
            "1927-21",
            "0000",
        ] {
            assert!(!html(loose).as_str().contains("<time"), "{loose}");
        }
    }

    #[test]
    fn a_life_is_told_by_what_is_known() {
        let words = Words::new(&Theme::default(), "en").unwrap();
        let date = |text: &str| Date::parse(text).unwrap();
        let (born, died) = (date("1903"), date("1958"));
        assert_eq!(life(Some(&born), Some(&died), &words), "1903–1958");
        assert_eq!(life(Some(&born), None, &words), "born 1903");
        assert_eq!(life(None, Some(&died), &words), "died 1958");
        assert_eq!(life(None, None, &words), "");
        let (to_the_day, about) = (date("1889-03-02"), date("1951~"));
        assert_eq!(
            life(Some(&to_the_day), Some(&about), &words),
            "1889–about 1951"
        );
    }
}
