//! Help for texts that are not EDTF dates, worded for cataloguers: the fault, and what to write instead.

use crate::model::edtf::Date;

/// The help for a text that should be a date.
pub(crate) fn help(text: &str) -> String {
    if let Some(edtf) = in_edtf(text).filter(|edtf| Date::parse(edtf).is_ok()) {
        return format!("write \"{edtf}\"");
    }
    if NO_DATE.contains(&text.trim().to_lowercase().as_str()) {
        return "leave the date out where none is known".to_owned();
    }
    "write \"1927\", \"1927-03\", \"1927~\" (about), \"1927?\" (uncertain), \"192X\" (the 1920s), \
     \"1927/1931\" (from, to)"
        .to_owned()
}

/// Words that mean that there is no date.
const NO_DATE: [&str; 6] = ["", "n.d.", "s.a.", "undated", "unknown", "?"];

/// The parser's reason, reworded for cataloguers. The parser's own words are never shown. For a reason
/// that is not listed here, the message only states that the text is not in the form of a date.
pub(crate) fn reason(said: &str) -> &'static str {
    match said {
        "empty input" | "empty date" => "it is empty",
        "EDTF permits ASCII characters only" => "a date is written in digits",
        "whitespace is not allowed" => "a date has no spaces",
        "year must have exactly four digits (or X)" => {
            "a year has four digits, with X for one that is not known"
        }
        "expected '-' before month" => "a year has four digits, and a hyphen before the month",
        "month must be two digits (or X)" => "a month has two digits",
        "expected '-' before day" => "a month has two digits, and a hyphen before the day",
        "day must be two digits (or X)" => "a day has two digits",
        "unexpected characters after day" => "there is something after the day",
        "no calendar month matches the unspecified digits" => "there is no such month",
        "month must be 01-12 or a sub-year code 21-41" => {
            "a month is 01 to 12, a season 21 (spring) to 24 (winter)"
        }
        "sub-year groupings cannot carry a day" => {
            "a month is 01 to 12, and a season, 21 to 24, has no day"
        }
        "day is out of range for the month" => "the month has no such day",
        "interval end precedes interval start" => "it ends before it begins",
        "interval needs at least one dated endpoint" => "one of its ends must be a date",
        "interval must contain exactly one '/'" => "there is one stroke between two dates",
        "unterminated set" => "its bracket is not closed",
        "set must contain at least one element" | "empty set element" => {
            "a date is missing between its brackets"
        }
        "sets cannot nest" => "brackets hold dates, not brackets",
        "set range end precedes range start" => "a range in its brackets ends before it begins",
        "time must be hh:mm:ss" | "date-times require a complete YYYY-MM-DD date" => {
            "a time of day stands only after a whole day, as hours:minutes:seconds"
        }
        _ => "it is not written as dates are",
    }
}

/// The EDTF of a few common ways to write dates; `None` where the meaning is not clear.
fn in_edtf(text: &str) -> Option<String> {
    let text = text.trim().to_lowercase();
    year_with_a_word(&text)
        .or_else(|| either(&text))
        .or_else(|| decade_or_century(&text))
        .or_else(|| season_or_month(&text))
        .or_else(|| year_first(&text))
        .or_else(|| from_to(&text))
        .or_else(|| day_first(&text))
        .or_else(|| blanks_taken_out(&text))
}

/// Exactly four digits.
fn year(text: &str) -> Option<&str> {
    let text = text.trim();
    (text.len() == 4 && text.bytes().all(|b| b.is_ascii_digit())).then_some(text)
}

/// A number from 1 to `most`, in two digits.
fn in_two(text: &str, most: u8) -> Option<String> {
    let number = text.parse().ok().filter(|n| (1..=most).contains(n))?;
    Some(format!("{number:02}"))
}

/// "c. 1927", "before 1927", "after 1927".
fn year_with_a_word(text: &str) -> Option<String> {
    let after = |words: &[&str]| {
        let rest = words.iter().find_map(|word| text.strip_prefix(word))?;
        year(rest.trim_start_matches('.'))
    };
    let about = after(&["circa", "about", "ca", "c"]).map(|year| format!("{year}~"));
    about
        .or_else(|| after(&["before", "until"]).map(|year| format!("../{year}")))
        .or_else(|| after(&["after", "since", "from"]).map(|year| format!("{year}/..")))
}

/// "1927 or 1929".
fn either(text: &str) -> Option<String> {
    let (one, other) = text.split_once(" or ")?;
    Some(format!("[{},{}]", year(one)?, year(other)?))
}

/// "1920s", "19th century".
fn decade_or_century(text: &str) -> Option<String> {
    if let Some(decade) = text.strip_suffix('s') {
        let tens = year(decade.trim_end_matches('\''))?.strip_suffix('0')?;
        return Some(format!("{tens}X"));
    }
    let (number, word) = text.split_once(' ')?;
    let digits = ["st", "nd", "rd", "th"]
        .iter()
        .find_map(|ending| number.strip_suffix(ending))?;
    let before = digits.parse::<u8>().ok()?.checked_sub(1)?;
    matches!(word, "century" | "cent." | "c.").then(|| format!("{before:02}XX"))
}

/// "spring 1927", "November 1971", "3 November 1971", "November 3, 1971".
fn season_or_month(text: &str) -> Option<String> {
    const SEASONS: [(&str, &str); 5] = [
        ("spring", "21"),
        ("summer", "22"),
        ("autumn", "23"),
        ("fall", "23"),
        ("winter", "24"),
    ];
    const MONTHS: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let month = |word: &str| {
        let word = word.trim_end_matches('.');
        let at = MONTHS
            .iter()
            .position(|month| word.len() >= 3 && month.starts_with(word))?;
        Some(format!("{:02}", at + 1))
    };
    let parts: Vec<&str> = text.split([' ', ',']).filter(|p| !p.is_empty()).collect();
    match parts.as_slice() {
        [word, last] => {
            let season = SEASONS.iter().find(|(name, _)| name == word);
            let part = season.map(|(_, code)| (*code).to_owned());
            Some(format!("{}-{}", year(last)?, part.or_else(|| month(word))?))
        }
        [one, other, last] => {
            let (day, month) = match month(other) {
                Some(month) => (one, month),
                None => (other, month(one)?),
            };
            let day = in_two(day.trim_end_matches('.'), 31)?;
            Some(format!("{}-{month}-{day}", year(last)?))
        }
        _ => None,
    }
}

/// "1971-11-3", "1971-31-12": the year comes first, as in EDTF.
fn year_first(text: &str) -> Option<String> {
    let parts: Vec<&str> = text.split(['-', '/', '.']).collect();
    let [first, month, day] = parts.as_slice() else {
        return None;
    };
    let (first, month, day) = (year(first)?, month.trim(), day.trim());
    let usual = in_two(month, 12).zip(in_two(day, 31));
    let (month, day) = usual.or_else(|| in_two(day, 12).zip(in_two(month, 31)))?;
    let date = format!("{first}-{month}-{day}");
    // Where the month has no such day, only the month is suggested.
    Some(match Date::parse(&date) {
        Ok(_) => date,
        Err(_) => format!("{first}-{month}"),
    })
}

/// "1927-1931", "1927–31", "1927/31", "1931/1927".
fn from_to(text: &str) -> Option<String> {
    let (from, to) = text.split_once(['-', '–', '—', '/'])?;
    let (from, to) = (year(from)?, to.trim());
    if let Some(to) = year(to) {
        return Some(format!("{}/{}", from.min(to), from.max(to)));
    }
    let is_short = to.len() == 2 && to.bytes().all(|b| b.is_ascii_digit());
    is_short.then_some(format!("{from}/{}{to}", from.get(..2)?))
}

/// "3.11.1971", "13/11/1971": day before month, as in most countries. Where both are 12 or less and
/// separated by slashes, the order is not clear. Then there is no suggestion, because a wrong one is
/// worse than none.
fn day_first(text: &str) -> Option<String> {
    let parts: Vec<&str> = text
        .split(['.', '/', '-', ' '])
        .filter(|p| !p.is_empty())
        .collect();
    let [day, month, last] = parts.as_slice() else {
        return None;
    };
    let in_doubt = day.parse::<u8>().is_ok_and(|day| day <= 12);
    if !text.contains('.') && in_doubt {
        return None;
    }
    let (month, day) = (in_two(month, 12)?, in_two(day, 31)?);
    Some(format!("{}-{month}-{day}", year(last)?))
}

/// "1927 ?", "1927 / 1931".
fn blanks_taken_out(text: &str) -> Option<String> {
    let without: String = text.split_whitespace().collect();
    let is_date = without.to_uppercase();
    (without.len() < text.len() && Date::parse(&is_date).is_ok()).then_some(is_date)
}

#[cfg(test)]
mod tests {
    use super::{help, in_edtf, reason};
    use crate::model::edtf::Date;

    #[test]
    fn ok_common_ways_to_write_dates_are_put_into_edtf() {
        for (written, edtf) in [
            ("c. 1927", "1927~"),
            ("ca. 1927", "1927~"),
            ("about 1927", "1927~"),
            ("1920s", "192X"),
            ("1920's", "192X"),
            ("19th century", "18XX"),
            ("1927-1931", "1927/1931"),
            ("1927–31", "1927/1931"),
            ("1927/31", "1927/1931"),
            ("1931/1927", "1927/1931"),
            ("1927 - 1931", "1927/1931"),
            ("1927 or 1929", "[1927,1929]"),
            ("before 1927", "../1927"),
            ("after 1927", "1927/.."),
            ("1927 ?", "1927?"),
            ("192x / 1931", "192X/1931"),
            ("Spring 1927", "1927-21"),
            ("Nov. 1971", "1971-11"),
            ("3 November 1971", "1971-11-03"),
            ("November 3, 1971", "1971-11-03"),
            ("3.11.1971", "1971-11-03"),
            ("13/11/1971", "1971-11-13"),
            ("1971-11-3", "1971-11-03"),
            ("1971/11/3", "1971-11-03"),
            ("1927-31-12", "1927-12-31"),
            ("1903-02-30", "1903-02"),
        ] {
            assert_eq!(in_edtf(written).as_deref(), Some(edtf), "{written}");
            assert!(Date::parse(edtf).is_ok(), "{edtf}");
        }
    }

    #[test]
    fn err_what_is_not_plain_gets_no_suggestion_of_its_own() {
        for written in [
            "",
            "spring",
            "3/11/1971",
            "1927-",
            "19270",
            "1925s",
            "c. ü",
            "1927-13",
            "0th century",
            "1971-40-40",
        ] {
            let told = help(written);
            assert!(
                told.contains("(the 1920s)") || told.starts_with("leave the date out"),
                "{written}: {told}"
            );
        }
    }

    /// Fails if the parser's messages change, so that [`reason`] no longer recognises them.
    #[test]
    fn ok_the_reasons_of_the_parser_are_told_in_plain_words() {
        for (written, plain) in [
            ("", "it is empty"),
            ("роки", "a date is written in digits"),
            ("c. 1927", "a date has no spaces"),
            (
                "193Y",
                "a year has four digits, with X for one that is not known",
            ),
            (
                "19270",
                "a year has four digits, and a hyphen before the month",
            ),
            ("1927-3", "a month has two digits"),
            (
                "1927-031",
                "a month has two digits, and a hyphen before the day",
            ),
            ("1971-11-3", "a day has two digits"),
            ("1971-11-033", "there is something after the day"),
            ("1927-3X", "there is no such month"),
            (
                "1927-13",
                "a month is 01 to 12, a season 21 (spring) to 24 (winter)",
            ),
            (
                "1927-31-12",
                "a month is 01 to 12, and a season, 21 to 24, has no day",
            ),
            ("1903-02-30", "the month has no such day"),
            ("1931/1927", "it ends before it begins"),
            ("../..", "one of its ends must be a date"),
            ("1927/1928/1929", "there is one stroke between two dates"),
            ("[1927,1929", "its bracket is not closed"),
            ("[]", "a date is missing between its brackets"),
            ("[1927,]", "a date is missing between its brackets"),
            ("[[1927]]", "brackets hold dates, not brackets"),
            (
                "[1931..1927]",
                "a range in its brackets ends before it begins",
            ),
            (
                "1927-03-04T10",
                "a time of day stands only after a whole day, as hours:minutes:seconds",
            ),
            ("Y1927", "it is not written as dates are"),
        ] {
            let fault = Date::parse(written).expect_err(written);
            assert_eq!(reason(fault.reason), plain, "{written}");
        }
    }
}
