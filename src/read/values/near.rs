//! The nearest name: suggests the existing name that was probably meant by an unknown one.
//!
//! In: the name as written and the existing names. Out: one of them, or none. A wrong suggestion costs
//! more trust than a missing one, so very short names, and names that differ in their numbers ("14" and
//! "15"), are never taken for each other.

use std::cmp::Reverse;

use crate::model::key::Key;

/// The most keys that are suggested for one.
const MOST_SUGGESTED: usize = 3;

/// The keys of the records that were probably meant by a key or name that none has, at most three; empty where none
/// suggests itself. `records`: each key with the names of its record.
///
/// The first of these that leads to a record: the same name; a key or name that differs by few slips ([`nearest`]); keys or
/// names that have all the words of the written one, if they are few ("harbour" for "harbour-museum").
pub(crate) fn meant<'a>(written: &str, records: &[(&'a str, Vec<String>)]) -> Vec<&'a str> {
    let near_key = || nearest(written, records.iter().map(|(key, _)| *key));
    let Some(plain) = Key::nearest_form(written) else {
        return near_key().into_iter().collect();
    };
    let named = |name: &str| {
        let all = records
            .iter()
            .filter(|(_, names)| names.iter().any(|n| n == name));
        all.map(|(key, _)| *key).collect::<Vec<_>>()
    };
    let is_few = |keys: &Vec<&str>| (1..=MOST_SUGGESTED).contains(&keys.len());
    let same = named(plain.as_str());
    if is_few(&same) {
        return same;
    }
    if let Some(near) = near_key() {
        return vec![near];
    }
    let names = records.iter().flat_map(|(_, names)| names);
    if let Some(near) = nearest(plain.as_str(), names.map(String::as_str)) {
        return Some(named(near)).filter(is_few).unwrap_or_default();
    }
    let words: Vec<&str> = plain.as_str().split('-').collect();
    // A number or a short word alone stands in many names by chance.
    if !words
        .iter()
        .any(|word| word.len() > 3 && !word.bytes().all(|b| b.is_ascii_digit()))
    {
        return Vec::new();
    }
    let has_words = |name: &str| words.iter().all(|word| name.split('-').any(|w| w == *word));
    let all = records
        .iter()
        .filter(|(key, names)| has_words(key) || names.iter().any(|name| has_words(name)));
    Some(all.map(|(key, _)| *key).collect())
        .filter(is_few)
        .unwrap_or_default()
}

/// "`a`", "`a` or `b`", "`a`, `b` or `c`".
pub(crate) fn either(keys: &[&str]) -> String {
    let quoted: Vec<String> = keys.iter().map(|key| format!("`{key}`")).collect();
    match quoted.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [all @ .., last] => format!("{} or {last}", all.join(", ")),
    }
}

/// The candidate that differs from `written` by few slips, if there is one.
///
/// A slip is a letter added, left out, changed or swapped (Damerau–Levenshtein distance); differences in
/// capitals, spaces and underscores do not count. Names of three or four letters (digits not counted) may
/// differ by one slip, names of up to eight by two, longer ones by three. The result does not depend on
/// the order of the candidates.
pub fn nearest<'a>(
    written: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let plain = plainly(written);
    let letters = plain.chars().filter(|c| !c.is_ascii_digit()).count();
    let allowed = match letters {
        0..=2 => 0,
        3..=4 => 1,
        5..=8 => 2,
        _ => 3,
    };
    candidates
        .into_iter()
        .filter(|candidate| *candidate != written)
        .filter_map(|candidate| {
            let other = plainly(candidate);
            let slips = strsim::damerau_levenshtein(&plain, &other);
            let shortest = plain.chars().count().min(other.chars().count());
            let is_near =
                slips <= allowed && 2 * slips < shortest.max(1) && same_numbers(&plain, &other);
            let shared = plain
                .chars()
                .zip(other.chars())
                .take_while(|(a, b)| a == b)
                .count();
            is_near.then_some((slips, Reverse(shared), candidate))
        })
        .min()
        .map(|(.., candidate)| candidate)
}

/// Lower case, words joined by hyphens.
fn plainly(name: &str) -> String {
    let lower = name.trim().to_lowercase();
    lower.replace(['_', ' '], "-")
}

/// Whether two names contain the same digits in any order, and are not both plain numbers. A year with
/// two digits swapped counts as a slip; a different year makes a different name.
fn same_numbers(one: &str, other: &str) -> bool {
    let digits = |name: &str| {
        let mut found: Vec<char> = name.chars().filter(char::is_ascii_digit).collect();
        found.sort_unstable();
        found
    };
    let is_number = |name: &str| name.chars().all(|c| c.is_ascii_digit());
    digits(one) == digits(other) && !(is_number(one) && is_number(other))
}

#[cfg(test)]
mod tests {
    use super::{either, meant, nearest};

    #[test]
    fn ok_a_slip_of_the_pen_is_seen_through() {
        let museums = ["harbour-museum", "harbour-library", "owner-a"];
        assert_eq!(nearest("harbor-museum", museums), Some("harbour-museum"));
        assert_eq!(nearest("Harbour Museum", museums), Some("harbour-museum"));
        assert_eq!(nearest("lamp", ["lamps", "moon"]), Some("lamps"));
        assert_eq!(nearest("memroial", ["memorial"]), Some("memorial"));
        assert_eq!(
            nearest("northport-1926", ["northport-1962"]),
            Some("northport-1962")
        );
    }

    #[test]
    fn err_another_thing_is_not_suggested() {
        assert_eq!(nearest("14", ["15", "41"]), None);
        assert_eq!(nearest("14a", ["14b"]), None);
        assert_eq!(nearest("northport-1962", ["northport-1972"]), None);
        assert_eq!(nearest("sky", ["key"]), None);
        assert_eq!(nearest("moon", ["lamps", "split", "sky"]), None);
        assert_eq!(nearest("", ["moon"]), None);
    }

    #[test]
    fn a_record_is_found_by_its_name_and_by_part_of_its_key() {
        let museums: Vec<(&str, Vec<String>)> = [
            ("harbour-museum", "museum-of-the-harbour"),
            ("northport-library", "public-library"),
            ("northport-gallery", "town-gallery"),
            ("14", "the-last-ferry"),
        ]
        .map(|(key, name)| (key, vec![name.to_owned()]))
        .into();
        let of = |written| meant(written, &museums);
        assert_eq!(of("harbor-museum"), ["harbour-museum"]);
        assert_eq!(of("Museum of the Harbour"), ["harbour-museum"]);
        assert_eq!(of("public-libary"), ["northport-library"]);
        assert_eq!(of("harbour"), ["harbour-museum"]);
        assert_eq!(of("northport"), ["northport-library", "northport-gallery"]);
        assert_eq!(of("the-last-ferry"), ["14"]);
        assert_eq!(of("ferry"), ["14"]);
        for none in ["15", "the", "of", "southport", ""] {
            assert_eq!(of(none), [""; 0], "{none}");
        }
        assert_eq!(either(&["a", "b", "c"]), "`a`, `b` or `c`");
    }

    #[test]
    fn the_order_of_the_candidates_does_not_matter() {
        let one = nearest("two-lamp", ["two-lamps", "no-lamps"]);
        let other = nearest("two-lamp", ["no-lamps", "two-lamps"]);
        assert_eq!(one, Some("two-lamps"));
        assert_eq!(one, other);
    }
}
