//! Which state, printing or impression of a design is meant by what stands after its number, key or title.

use super::asked::Reader;
use super::names::{DesignNames, StateNames};
use super::reading::{Meant, Why};
use crate::numerals::from_roman;
use crate::search::words::number_parts;

/// Where the design was found, which decides what a lone figure after it may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum After {
    /// After its number or key: a figure is the number of an impression.
    Number,
    /// After its title: a figure belongs to the title.
    Title,
}

/// A part of a design, or the design, with the reason.
pub type Part = (Meant, Why);

/// The parts that are meant by `rest`; empty where nothing is.
#[must_use]
pub fn parts_of(
    reader: &Reader,
    (at, design): (usize, &DesignNames),
    after: After,
    rest: &[String],
    edition: Option<&str>,
) -> Vec<Part> {
    let [first, ..] = rest else {
        return vec![(Meant::Design(at), Why::Number)];
    };
    if let Some(part) = by_key(reader, (at, design), rest) {
        return vec![part];
    }
    if let ([figure], After::Number) = (rest, after)
        && let Some(number) = impression(design, figure)
    {
        return vec![(Meant::Impression(at, number), Why::Number)];
    }
    let words = &reader.words().state;
    let is_state = words.contains(first);
    let numbers: Vec<&String> = rest.iter().filter(|part| !words.contains(part)).collect();
    let place = |part: &str| match from_roman(part) {
        Some(place) => Some(place),
        None if is_state => figure_of(part),
        None => None,
    };
    let (numeral, total) = match numbers.as_slice() {
        [numeral] => (place(numeral), None),
        [numeral, total] if place(numeral).is_some() => {
            let of = from_roman(total).or_else(|| figure_of(total));
            if of.is_none() {
                return Vec::new();
            }
            (place(numeral), of)
        }
        _ => return Vec::new(),
    };
    numeral.map_or_else(Vec::new, |place| states(at, design, place, total, edition))
}

/// The states with a numeral: the present one, and those that had it in an earlier edition.
fn states(
    at: usize,
    design: &DesignNames,
    place: u32,
    total: Option<u32>,
    edition: Option<&str>,
) -> Vec<Part> {
    let of = design.states.iter().filter(|s| s.place.is_some()).count();
    let mut parts = Vec::new();
    for (state, names) in design.states.iter().enumerate() {
        let meant = Meant::State(at, state);
        let mut formerly = names.formerly.iter().filter(|former| former.place == place);
        match edition {
            Some(edition) if formerly.any(|former| former.edition == edition) => {
                parts.push((meant, Why::Edition(edition.to_owned())));
            }
            Some(_) => {}
            None if names.place == Some(place) => {
                let is_other = total.is_some_and(|total| usize::try_from(total) != Ok(of));
                let why = if is_other {
                    Why::OtherTotal
                } else {
                    Why::Number
                };
                parts.push((meant, why));
            }
            None => {
                if let Some(former) = formerly.next() {
                    parts.push((meant, Why::Edition(former.edition.clone())));
                }
            }
        }
    }
    if let (Some(edition), true) = (edition, parts.is_empty()) {
        // The state that has the numeral now, unless it is known to have had another in that edition.
        let had_other = |names: &StateNames| names.formerly.iter().any(|f| f.edition == edition);
        let present = design.states.iter();
        let mut present = present.map(|names| names.place == Some(place) && !had_other(names));
        if let Some(state) = present.position(|is_it| is_it) {
            parts.push((Meant::State(at, state), Why::Edition(edition.to_owned())));
        }
    }
    parts
}

/// A state or printing by its key or name, behind the word for it or without.
fn by_key(reader: &Reader, (at, design): (usize, &DesignNames), rest: &[String]) -> Option<Part> {
    let without_word = match rest {
        [word, rest @ ..] if word == "printing" || reader.words().state.contains(word) => rest,
        _ => rest,
    };
    let is_it = |text: &str| {
        let parts = number_parts(text);
        parts == rest || parts == without_word
    };
    let state = |state: usize| Meant::State(at, state);
    let printing = |printing: usize| Meant::Printing(at, printing);
    let position = |key: &dyn Fn(&str) -> bool| {
        let mut states = design.states.iter();
        let mut printings = design.printings.iter();
        let found = states.position(|s| key(s.key.as_str())).map(state);
        found.or_else(|| printings.position(|p| key(p.key.as_str())).map(printing))
    };
    if let Some(meant) = position(&is_it) {
        return Some((meant, Why::Key));
    }
    let mut named = design.printings.iter();
    if let Some(found) = named.position(|p| p.name.as_deref().is_some_and(is_it)) {
        return Some((printing(found), Why::Name));
    }
    let was = |keys: &[String]| keys.iter().any(|key| is_it(key));
    let mut states = design.states.iter();
    let mut printings = design.printings.iter();
    let former = states.position(|s| was(&s.was)).map(state);
    let former = former.or_else(|| printings.position(|p| was(&p.was)).map(printing));
    former.map(|meant| (meant, Why::FormerKey))
}

/// The number of a recorded impression.
fn impression(design: &DesignNames, figure: &str) -> Option<u32> {
    let number = figure_of(figure)?;
    design.impressions.binary_search(&number).ok()?;
    Some(number)
}

/// A whole number in the figures 0 to 9, without zeros before it.
fn figure_of(part: &str) -> Option<u32> {
    let is_plain = !part.starts_with('0') && part.bytes().all(|b| b.is_ascii_digit());
    if is_plain { part.parse().ok() } else { None }
}
