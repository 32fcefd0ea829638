//! States: their order, and the numerals readers see.
//!
//! A state is a change to the printing surface. Its numeral ("iii/iv", third of four) is only its
//! place in the order, computed at every compile and not stored: an inserted state changes the
//! numerals after it, but no keys.
//!
//! In: the states of one design, each with those it `follows`. Out: one [`Numeral`] for each state
//! that is not withdrawn, and the states each was changed from.
//! Definitions: `docs/definitions.md, "States and numerals"`; roman numerals in their one canonical
//! spelling (common practice, no source).
//! Not here: which state a sheet is (`identification`), what earlier catalogues called it (`concordance`).
//!
//! ```
//! # use keyblock::study::numerals::{from_roman, roman};
//! assert_eq!(roman(14), "xiv");
//! assert_eq!(from_roman("XIV"), Some(14));
//! assert_eq!(from_roman("IIII"), None);
//! ```

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::state::State;

/// A state's place among the states that are not withdrawn.
///
/// Invariant: `1 <= place <= of`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Numeral {
    place: u32,
    of: u32,
}

impl Numeral {
    /// The place of a state, from 1.
    #[must_use]
    pub fn place(self) -> u32 {
        self.place
    }

    /// How many states there are.
    #[must_use]
    pub fn of(self) -> u32 {
        self.of
    }

    /// Whether it is the only state.
    #[must_use]
    pub fn is_only(self) -> bool {
        self.of == 1
    }

    /// The place in roman numerals, without the total: `iii`.
    #[must_use]
    pub fn roman(self) -> String {
        roman(self.place)
    }
}

impl fmt::Display for Numeral {
    /// `iii/iv`, or `only state`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_only() {
            f.write_str("only state")
        } else {
            write!(f, "{}/{}", roman(self.place), roman(self.of))
        }
    }
}

/// `number` in lower-case roman numerals; above 3999, which roman numerals cannot write, in
/// figures.
#[must_use]
pub fn roman(number: u32) -> String {
    const SIGNS: [(u32, &str); 13] = [
        (1000, "m"),
        (900, "cm"),
        (500, "d"),
        (400, "cd"),
        (100, "c"),
        (90, "xc"),
        (50, "l"),
        (40, "xl"),
        (10, "x"),
        (9, "ix"),
        (5, "v"),
        (4, "iv"),
        (1, "i"),
    ];
    if !(1..4000).contains(&number) {
        return number.to_string();
    }
    let mut rest = number;
    let mut out = String::new();
    for (worth, sign) in SIGNS {
        while rest >= worth {
            out.push_str(sign);
            rest -= worth;
        }
    }
    out
}

/// Reads roman numerals in either case, in their one canonical spelling; `None` for anything else.
#[must_use]
pub fn from_roman(text: &str) -> Option<u32> {
    let worth = |c: char| {
        Some(match c.to_ascii_lowercase() {
            'i' => 1,
            'v' => 5,
            'x' => 10,
            'l' => 50,
            'c' => 100,
            'd' => 500,
            'm' => 1000,
            _ => return None,
        })
    };
    // Fifteen signs write the longest, 3888; longer texts are not worth adding up.
    if text.is_empty() || text.len() > 15 {
        return None;
    }
    let signs: Vec<u32> = text.chars().map(worth).collect::<Option<_>>()?;
    let mut sum = 0_u32;
    for (at, sign) in signs.iter().enumerate() {
        if signs.get(at + 1).is_some_and(|next| next > sign) {
            sum = sum.wrapping_sub(*sign);
        } else {
            sum = sum.wrapping_add(*sign);
        }
    }
    (roman(sum) == text.to_ascii_lowercase()).then_some(sum)
}

/// The numerals of a design's states that are not withdrawn, by key.
#[must_use]
pub fn numerals(design: &Design) -> BTreeMap<Key, Numeral> {
    let standing: Vec<&State> = design.standing_states().collect();
    let of = u32::try_from(standing.len()).unwrap_or(u32::MAX);
    let mut numerals = BTreeMap::new();
    for (state, place) in standing.into_iter().zip(1..) {
        numerals
            .entry(state.key.value.clone())
            .or_insert(Numeral { place, of });
    }
    numerals
}

/// The states that `state` was changed from: those it `follows`, else the one before in the
/// record. A withdrawn state does not count, so its own predecessors replace it.
#[must_use]
pub fn predecessors<'a>(design: &'a Design, state: &State) -> Vec<&'a State> {
    let mut found: Vec<&State> = Vec::new();
    let mut seen = BTreeSet::from([state.key.value.clone()]);
    let mut to_visit = followed(design, state);
    to_visit.reverse();
    while let Some(candidate) = to_visit.pop() {
        if !seen.insert(candidate.key.value.clone()) {
            continue;
        }
        if candidate.standing.is_withdrawn() {
            let mut before = followed(design, candidate);
            before.reverse();
            to_visit.extend(before);
        } else {
            found.push(candidate);
        }
    }
    found
}

/// The states named by `follows`, or the one before in the record, withdrawn or not.
fn followed<'a>(design: &'a Design, state: &State) -> Vec<&'a State> {
    if let Some(follows) = &state.follows {
        return follows
            .iter()
            .filter_map(|key| design.state(&key.value))
            .collect();
    }
    let at = design
        .states
        .iter()
        .position(|s| s.key.value == state.key.value);
    at.and_then(|at| at.checked_sub(1))
        .and_then(|before| design.states.get(before))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_that_romans_wrote_reads_back() {
        for number in 1..4000 {
            assert_eq!(from_roman(&roman(number)), Some(number));
        }
        // Common practice, no source: the subtractive spellings are the only ones.
        for (number, text) in [
            (4, "iv"),
            (9, "ix"),
            (14, "xiv"),
            (40, "xl"),
            (1944, "mcmxliv"),
        ] {
            assert_eq!(roman(number), text);
        }
    }

    #[test]
    fn what_is_no_roman_numeral_is_not_read() {
        for text in ["", "iiii", "vx", "ic", "xa", "12", "iix", "ⅻ"] {
            assert_eq!(from_roman(text), None, "{text:?}");
        }
        assert_eq!(from_roman("XII"), Some(12));
    }

    #[test]
    fn a_lone_state_is_the_only_one() {
        assert_eq!(Numeral { place: 1, of: 1 }.to_string(), "only state");
        assert_eq!(Numeral { place: 3, of: 4 }.to_string(), "iii/iv");
    }
}
