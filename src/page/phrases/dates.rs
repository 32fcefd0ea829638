//! Dates in words: "about 1927", "between 1927 and 1931", "1920s", "3 November 1971".
//!
//! Every EDTF expression has words in every language; nothing here can fail. An interval has two
//! senses: an event at some time within it ([`once`]), or something that lasted throughout it
//! ([`throughout`]), such as an exhibition or the years of a workshop.
//!
//! DIFFERS: where EDTF qualifies one part of a date (`2004-06~-11`), the words qualify the whole.

use super::calendar::{day_and_month, decade_alone, month_name, month_of, qualified};
use super::enumeration;
use crate::model::edtf::Date;
use crate::model::edtf::parts::{
    CalendarDate as Calendar, DateField, Edtf, IntervalEndpoint, Precision, SetElement, SetKind,
};
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::{Argument, Words};

/// The date of an event.
pub fn once(date: &Date, words: &Words) -> String {
    in_words(date, words, IntervalSense::Once)
}

/// The time of something that lasted throughout.
pub fn throughout(date: &Date, words: &Words) -> String {
    in_words(date, words, IntervalSense::Throughout)
}

/// [`once`] with a `time` element around it, where the date is one day, month or year.
pub fn once_html(date: &Date, words: &Words) -> CleanHtml {
    timed(date, &once(date, words))
}

/// [`throughout`], in the same way.
pub fn throughout_html(date: &Date, words: &Words) -> CleanHtml {
    timed(date, &throughout(date, words))
}

/// A life: "1903–1958", "born 1903", "died 1958"; empty where neither is known.
pub fn life(born: Option<&Date>, died: Option<&Date>, words: &Words) -> String {
    let said = |date: &Date| plain_year(date).unwrap_or_else(|| once(date, words));
    match (born, died) {
        (Some(born), Some(died)) => format!("{}–{}", said(born), said(died)),
        (Some(born), None) => words.with("life-born", &[("date", Argument::Text(&said(born)))]),
        (None, Some(died)) => words.with("life-died", &[("date", Argument::Text(&said(died)))]),
        (None, None) => String::new(),
    }
}

/// The years of a decade, by its first: "1930–1939".
pub fn decade(words: &Words, from: i64) -> String {
    words.with(
        "decade",
        &[
            ("from", Argument::Text(&from.to_string())),
            ("to", Argument::Text(&(from + 9).to_string())),
        ],
    )
}

/// The year of an unqualified date, for a life beside a name, which gives years only.
fn plain_year(date: &Date) -> Option<String> {
    let Edtf::Date(d) = date.edtf() else {
        return None;
    };
    let is_plain = !d.is_uncertain() && !d.is_approximate() && !d.year.has_unspecified();
    let year = d.year.value().filter(|year| is_plain && *year > 0)?;
    Some(year.to_string())
}

#[derive(Clone, Copy, PartialEq)]
enum IntervalSense {
    Once,
    Throughout,
}

fn in_words(date: &Date, words: &Words, sense: IntervalSense) -> String {
    match date.edtf() {
        Edtf::Date(d) => decade_alone(d, words).unwrap_or_else(|| qualified(d, words)),
        // The time of day is left out, because readers of a catalogue have no use for it.
        Edtf::DateTime(d) => qualified(&d.date, words),
        Edtf::Interval(i) => interval(&i.start, &i.end, words, sense),
        Edtf::Set(set) => {
            let parts: Vec<String> = set.elements.iter().map(|e| element(e, words)).collect();
            match set.kind {
                SetKind::OneMember => enumeration::either_text(words, &parts),
                SetKind::AllMembers => enumeration::together_text(words, &parts),
            }
        }
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
    sense: IntervalSense,
) -> String {
    use IntervalEndpoint::{Date, OnOrAfter, OnOrBefore, Open, Unknown};
    let once = sense == IntervalSense::Once;
    let between = if once {
        "date-between"
    } else {
        "date-throughout"
    };
    match (start, end) {
        (Date(a), Date(b)) if a == b => qualified(a, words),
        (Date(a), Date(b)) => pair(between, a, b, words),
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
        (a, b) => both(between, &loose_end(a, words), &loose_end(b, words), words),
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
    words.with(id, &[("date", Argument::Text(&qualified(date, words)))])
}

/// Two ends; a year or month that both share is given once ("between March and May 1962").
fn pair(id: &str, a: &Calendar, b: &Calendar, words: &Words) -> String {
    let same_year = is_exact(a) && is_exact(b) && a.year == b.year;
    let first = match (a.precision(), b.precision()) {
        (Precision::Day, Precision::Day) if same_year && month_of(a) == month_of(b) => {
            a.day.and_then(DateField::value).map(|day| {
                words.with(
                    "date-day-alone",
                    &[("day", Argument::Text(&day.to_string()))],
                )
            })
        }
        (Precision::Day, Precision::Day) if same_year => day_and_month(a, words),
        (Precision::Month, Precision::Month) if same_year => {
            month_of(a).map(|m| month_name(m, words).to_owned())
        }
        _ => None,
    };
    let first = first.unwrap_or_else(|| qualified(a, words));
    both(id, &first, &qualified(b, words), words)
}

fn both(id: &str, a: &str, b: &str, words: &Words) -> String {
    words.with(id, &[("a", Argument::Text(a)), ("b", Argument::Text(b))])
}

/// Whether all that a date tells is certain and exact; it may be a year alone.
fn is_exact(date: &Calendar) -> bool {
    !date.is_uncertain() && !date.is_approximate() && !date.has_unspecified()
}

/// A `time` element for an unqualified day, month or year, which HTML can express; otherwise text.
fn timed(date: &Date, text: &str) -> CleanHtml {
    let text_html = CleanHtml::text(text);
    let Edtf::Date(d) = date.edtf() else {
        return text_html;
    };
    let is_plain =
        is_exact(d) && d.precision() != Precision::Season && d.year.significant_digits.is_none();
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

    // Forms: ISO 8601-2:2019 Annex A, levels 0 to 2. The words are this program's own.
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
                ("1985-XX", "a month in 1985", "ein Monat im Jahr 1985"),
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
                ("1927/", "from 1927, end unknown", "ab 1927, Ende unbekannt"),
                (
                    "/1931",
                    "until 1931, beginning unknown",
                    "bis 1931, Beginn unbekannt",
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
