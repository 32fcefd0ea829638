//! The order in which people count: numbers in names as numbers, "2" before "10".

use std::cmp::Ordering;

/// The order of two names, runs of digits compared as numbers; names that differ in leading zeros alone by their text.
#[must_use]
pub fn natural_order(a: &str, b: &str) -> Ordering {
    let (mut left, mut right) = (a, b);
    while let (Some(x), Some(y)) = (left.chars().next(), right.chars().next()) {
        if x.is_ascii_digit() && y.is_ascii_digit() {
            let (x, after_x) = digits(left);
            let (y, after_y) = digits(right);
            let (x, y) = (x.trim_start_matches('0'), y.trim_start_matches('0'));
            let order = x.len().cmp(&y.len()).then_with(|| x.cmp(y));
            if order != Ordering::Equal {
                return order;
            }
            (left, right) = (after_x, after_y);
        } else if x == y {
            (left, right) = (
                left.strip_prefix(x).unwrap_or_default(),
                right.strip_prefix(y).unwrap_or_default(),
            );
        } else {
            return x.cmp(&y);
        }
    }
    left.len().cmp(&right.len()).then_with(|| a.cmp(b))
}

/// The digits that a text begins with, and the rest.
fn digits(text: &str) -> (&str, &str) {
    let end = text.find(|c: char| !c.is_ascii_digit());
    text.split_at(end.unwrap_or(text.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_in_the_order_of_their_numbers() {
        let mut keys = ["14.10", "2", "14.9", "a10", "14", "a2", "02", "1"];
        keys.sort_by(|a, b| natural_order(a, b));
        assert_eq!(keys, ["1", "02", "2", "14", "14.9", "14.10", "a2", "a10"]);
    }
}
