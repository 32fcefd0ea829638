//! Dates: any text is a date or is none, at a byte of it; a date says what was written.

use keyblock::model::edtf::{Date, Edge};
use proptest::prelude::*;
use proptest::test_runner::TestCaseError;

use super::{any_text, explore, of_pieces};

const PIECES: &[&str] = &[
    "1927",
    "1927-05",
    "1927-05-31",
    "19XX",
    "192X",
    "XXXX",
    "1927-XX",
    "1927-XX-01",
    "Y17E7",
    "Y-170000002",
    "1927S2",
    "1927-21",
    "1927-33",
    "/",
    "..",
    "?",
    "~",
    "%",
    "[",
    "]",
    "{",
    "}",
    ",",
    "-",
    "+",
    "T12:00:00Z",
    "T23:59:60+01:00",
    "0000",
    "-0001",
    "9999",
    "999999999999999999999",
    "Y9223372036854775807",
    "1900-02-29",
    "2000-02-29",
    " ",
    "E",
    "S",
    "X",
    "1",
    ":",
    "1927-05?",
    "~1927",
    "?05",
    "%31",
];

fn check(text: &String) -> Result<(), TestCaseError> {
    let date = match Date::parse(text) {
        Ok(date) => date,
        Err(fault) => {
            prop_assert!(text.is_char_boundary(fault.offset), "{fault:?}");
            prop_assert!(!fault.reason.is_empty());
            return Ok(());
        }
    };
    prop_assert_eq!(date.as_str(), text);
    prop_assert_eq!(&date.to_string(), text);
    prop_assert_eq!(&Date::parse(text).unwrap(), &date);
    // The parser's own spelling of it means the same.
    let spelled = date.edtf().to_string();
    let again = Date::parse(&spelled);
    prop_assert!(
        again
            .as_ref()
            .is_ok_and(|again| again.edtf() == date.edtf()),
        "{text} is spelled {spelled}, which is {again:?}"
    );
    prop_assert!(!date.certainly_before(&date), "{text} lies before itself");
    for edge in [date.earliest(), date.latest()] {
        let Edge::Day(day) = edge else { continue };
        prop_assert!(
            (1..=12).contains(&day.month) && (1..=31).contains(&day.day),
            "{day:?}"
        );
        if day.year.abs() < 1_000_000_000 {
            prop_assert_eq!(day.following().preceding(), day);
        }
    }
    let _ = (
        date.is_loose(),
        date.has_time(),
        date.possibly_before(&date),
    );
    Ok(())
}

#[test]
fn any_text_is_a_date_or_none() {
    let texts = prop_oneof![2 => of_pieces(PIECES, 8), 1 => any_text(40)];
    explore("dates", 4_000, &texts, check);
}
