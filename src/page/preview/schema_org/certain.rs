//! The facts that are given: only those of which the catalogue is certain, and dates only where they are plain.

use crate::model::certainty::{Certainty, Statements};
use crate::model::edtf::Date;
use crate::model::edtf::parts::Edtf;

/// The catalogue's own view, where it is certain.
pub(super) fn certain<T>(statements: &Statements<T>) -> Option<&T> {
    let own = statements.iter().next()?;
    (own.claim.certainty() == Certainty::Certain).then_some(&own.is.value)
}

/// A date that is a plain year, month or day, which ISO 8601 writes in the same way.
pub(super) fn plain(date: &Date) -> Option<String> {
    let is_plain = matches!(date.edtf(), Edtf::Date(_)) && !date.is_loose();
    let text = date.as_str();
    let has_digits = text
        .split('-')
        .all(|part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit()));
    (is_plain && has_digits).then(|| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_dates_are_given() {
        let given = |text: &str| plain(&Date::parse(text).unwrap());
        for text in ["1927", "1927-03", "1927-03-14"] {
            assert_eq!(given(text).as_deref(), Some(text));
        }
        for text in [
            "1927~",
            "1927?",
            "192X",
            "1927/1931",
            "1927-21",
            "-0044",
            "[1927,1929]",
        ] {
            assert_eq!(given(text), None, "{text}");
        }
    }
}
