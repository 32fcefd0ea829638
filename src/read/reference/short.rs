//! The short form of a reference: names and year, with a letter added where two would be equal. A manuscript, which may
//! have been written over years, is cited by its title and all its years.

use std::collections::BTreeMap;

use super::description::{Description, joined};
use super::names::{family, is_others};
use super::words::{Words, year};

/// "Verhoeven 1961", "Smith and Jones 1970", "Smith et al. 1970"; the title where there are no authors; of what was never
/// published "Verhoeven, Print ledger, 1919–1951".
pub(super) fn short(work: &Description, words: &Words) -> String {
    let et_al = |one| format!("{} {}", family(one), words.say("bibliography-et-al", &[]));
    let name = match work.names() {
        [] if work.title.is_empty() => work.key.clone(),
        [] => shortened(&work.title),
        [one] => family(one),
        [one, other] if is_others(other) => et_al(one),
        [one, other] => format!("{} {} {}", family(one), words.and(), family(other)),
        [one, ..] => et_al(one),
    };
    if work.is_unpublished && !work.title.is_empty() {
        let years = work.date.as_ref().map(year).unwrap_or_default();
        let title = shortened(&work.title);
        let author = if work.names().is_empty() {
            ""
        } else {
            name.as_str()
        };
        return joined(&[author, title.as_str(), years.as_str()], ", ");
    }
    match work.year() {
        Some(year) => format!("{name} {year}"),
        None => name,
    }
}

/// The first words of a title, up to about 30 characters, without what follows a colon.
fn shortened(title: &str) -> String {
    let head = title.split(':').next().unwrap_or(title).trim();
    let mut short = String::new();
    for word in head.split_whitespace() {
        if !short.is_empty() && short.chars().count() + word.chars().count() > 30 {
            short.push_str(" …");
            break;
        }
        if !short.is_empty() {
            short.push(' ');
        }
        short.push_str(word);
    }
    short
}

/// The letters that distinguish works with the same short form: "1961a", "1961b"; numbers beyond z.
pub(super) fn letters(shorts: &[String]) -> Vec<String> {
    let mut count = BTreeMap::<&str, usize>::new();
    for short in shorts {
        *count.entry(short).or_default() += 1;
    }
    let mut used = BTreeMap::<&str, u8>::new();
    let mut letter = |short| {
        if count.get(short).is_none_or(|n| *n < 2) {
            return String::new();
        }
        let nth = used.entry(short).or_default();
        let ends_in_year = short.ends_with(|c: char| c.is_ascii_digit());
        let letter = if *nth < 26 {
            char::from(b'a' + *nth).to_string()
        } else {
            format!("-{}", usize::from(*nth) + 1)
        };
        *nth = nth.saturating_add(1);
        if ends_in_year {
            letter
        } else {
            format!(" ({letter})")
        }
    };
    shorts.iter().map(|short| letter(short.as_str())).collect()
}
