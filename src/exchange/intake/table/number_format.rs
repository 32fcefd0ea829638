//! Whether a number of a spreadsheet is a date, and which (ECMA-376, part 1, 18.8.30 and 18.17.4).
//!
//! A date is the number of days since the end of 1899, counted as if 1900 had been a leap year, or since 1904. What the
//! format does not show is not given: a cell that shows a year alone is a year.

/// How a number is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Shown {
    /// As a number.
    #[default]
    Number,
    /// As a year.
    Year,
    /// As a month of a year.
    Month,
    /// As a day.
    Day,
}

/// How the built-in format of this number shows; `None` where it is not built in.
pub(super) fn built_in(id: u32) -> Option<Shown> {
    match id {
        0..=13 | 18..=21 | 37..=49 => Some(Shown::Number),
        17 => Some(Shown::Month),
        14..=16 | 22 | 27..=31 | 34..=36 | 50..=58 => Some(Shown::Day),
        _ => None,
    }
}

/// How a format written out shows: by the letters of its first section outside quotation marks and brackets.
pub(super) fn custom(code: &str) -> Shown {
    let mut letters = String::new();
    let mut signs = code.chars();
    while let Some(sign) = signs.next() {
        match sign {
            '"' => while signs.next().is_some_and(|next| next != '"') {},
            '[' => while signs.next().is_some_and(|next| next != ']') {},
            '\\' | '_' | '*' => {
                signs.next();
            }
            ';' => break,
            _ => letters.extend(sign.to_lowercase()),
        }
    }
    // German and Dutch programs write J for the year, T for the day; files have the English letters, mostly.
    if letters.contains("general") || letters.contains("standard") {
        return Shown::Number;
    }
    let has = |letters_of: &[char]| letters.contains(letters_of);
    match (has(&['y', 'j', 'e']), has(&['d', 't']), has(&['m'])) {
        (true, true, _) | (false, true, true) => Shown::Day,
        (true, false, true) => Shown::Month,
        (true, false, false) if !has(&['0', '#']) => Shown::Year,
        _ => Shown::Number,
    }
}

/// The text of a date; `None` where the number is none of those that are shown as dates.
pub(super) fn date(serial: f64, shown: Shown, is_from_1904: bool) -> Option<String> {
    if !(0.0..2_958_466.0).contains(&serial) {
        return None;
    }
    #[expect(clippy::cast_possible_truncation, reason = "below three million")]
    let days = serial.floor() as i64;
    // Day 60 of 1900 is the 29 February that did not exist.
    let since_1970 = match (is_from_1904, days) {
        (true, _) => days - 24_107,
        (false, 60) => return None,
        (false, 61..) => days - 25_569,
        (false, _) => days - 25_568,
    };
    let (year, month, day) = civil(since_1970);
    match shown {
        Shown::Number => None,
        Shown::Year => Some(format!("{year:04}")),
        Shown::Month => Some(format!("{year:04}-{month:02}")),
        Shown::Day => Some(format!("{year:04}-{month:02}-{day:02}")),
    }
}

/// The date of a day, counted from 1 January 1970 (the proleptic Gregorian calendar, in eras of 400 years).
fn civil(days: i64) -> (i64, i64, i64) {
    let shifted = days + 719_468;
    let era = shifted.div_euclid(146_097);
    let of_era = shifted.rem_euclid(146_097);
    let year_of_era = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let day_of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted_month = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * shifted_month + 2) / 5 + 1;
    let month = if shifted_month < 10 {
        shifted_month + 3
    } else {
        shifted_month - 9
    };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    (year, month, day)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Serial numbers of ECMA-376, part 1, 18.17.4.1 (from memory: 1 is 1 January 1900, 61 is 1 March 1900, 25569 is
    /// 1 January 1970; from 1904, 0 is 1 January 1904).
    #[test]
    fn serial_numbers_are_days() {
        for (serial, is_from_1904, text) in [
            (1.0, false, "1900-01-01"),
            (59.0, false, "1900-02-28"),
            (61.0, false, "1900-03-01"),
            (25_569.0, false, "1970-01-01"),
            (25_569.75, false, "1970-01-01"),
            (36_526.0, false, "2000-01-01"),
            (0.0, true, "1904-01-01"),
            (24_107.0, true, "1970-01-01"),
        ] {
            let found = date(serial, Shown::Day, is_from_1904);
            assert_eq!(found.as_deref(), Some(text), "{serial}");
        }
        assert_eq!(date(60.0, Shown::Day, false), None);
        assert_eq!(date(-1.0, Shown::Day, false), None);
        assert_eq!(date(9_263.0, Shown::Year, false).unwrap(), "1925");
    }

    #[test]
    fn a_format_shows_days_months_years_or_numbers() {
        for (code, shown) in [
            ("General", Shown::Number),
            ("0.00", Shown::Number),
            ("yyyy", Shown::Year),
            ("mmm\\ yyyy", Shown::Month),
            ("dd/mm/yyyy", Shown::Day),
            ("[$-407]d\\. mmmm yyyy;@", Shown::Day),
            ("0.0\" cm\"", Shown::Number),
            ("#,##0 \"years\"", Shown::Number),
            ("h:mm", Shown::Number),
        ] {
            assert_eq!(custom(code), shown, "{code}");
        }
    }
}
