//! Helps for states that are named by a number or numeral instead of their key.

/// The numerals from 0 to 9.
const ONES: [&str; 10] = ["", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix"];

/// What to write for the state that a number counts, from 1, among the keys `known`, which stand in the order of the
/// record. `None` for a number that is none.
pub(crate) fn state_by_number<'k>(
    number: Option<usize>,
    known: impl IntoIterator<Item = &'k str>,
) -> String {
    let keys: Vec<&str> = known.into_iter().collect();
    let at = number.and_then(|number| number.checked_sub(1));
    match (number, at.and_then(|at| keys.get(at))) {
        (Some(number), Some(key)) => {
            format!("write \"{key}\": it is state {number} in the order of the record")
        }
        _ if keys.is_empty() => {
            "the design records no states; add one to its record, and write its key".to_owned()
        }
        _ => format!("the design has {}", keys.join(", ")),
    }
}

/// The number that a text is: digits, or a numeral of small or capital letters (up to 39).
pub(crate) fn number_of(text: &str) -> Option<usize> {
    if let Ok(number) = text.parse() {
        return Some(number);
    }
    let text = text.to_ascii_lowercase();
    let rest = text.trim_start_matches('x');
    let tens = text.len() - rest.len();
    let ones = ONES.iter().position(|ones| *ones == rest)?;
    (tens < 4 && !text.is_empty()).then_some(10 * tens + ones)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_numerals_are_read() {
        let read = [
            "1", "12", "i", "II", "iv", "ix", "x", "xiv", "xxix", "xxxix",
        ]
        .map(number_of);
        let expected = [1, 12, 1, 2, 4, 9, 10, 14, 29, 39].map(Some);
        assert_eq!(read, expected);
        for none in ["", "moon", "iiii", "xxxx", "vx", "-1", "i-ii"] {
            assert_eq!(number_of(none), None, "{none}");
        }
    }

    #[test]
    fn a_number_leads_to_the_key_of_the_state() {
        let keys = ["dark", "moonlit"];
        let of = |number| state_by_number(number, keys);
        assert_eq!(
            of(Some(2)),
            "write \"moonlit\": it is state 2 in the order of the record"
        );
        assert_eq!(of(Some(0)), "the design has dark, moonlit");
        assert_eq!(of(Some(3)), "the design has dark, moonlit");
        assert_eq!(of(None), "the design has dark, moonlit");
        assert!(state_by_number(Some(1), []).starts_with("the design records no states"));
    }
}
