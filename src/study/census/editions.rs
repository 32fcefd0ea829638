//! Declared editions compared with the numbers found on sheets.
//!
//! In: the impressions of a design, by the printing they are identified with, and its census. Out: [`EditionStudy`]:
//! for each printing, the declared size, the number really printed, its known sheets, and the numbers found on sheets,
//! on several sheets, and above the declared size.
//! Definitions: `docs/definitions.md, "Declared editions"`. Numbers are often given twice, left out, or given
//! to proofs (`docs/trade.md, "Numbered editions"`); the study reports this and draws no conclusion.
//! Not here: how many sheets there are (`count`).
//!
//! ```
//! # use keyblock::study::editions::{EditionNumber, Numbering, read_numbering};
//! let number = EditionNumber { is_roman: true, number: 12, of: Some(50) };
//! assert_eq!(read_numbering("XII/L"), Some(Numbering::Edition(number)));
//! assert_eq!(read_numbering("AP 3/10"), Some(Numbering::Proof));
//! assert_eq!(read_numbering("twelve"), None);
//! ```

use std::collections::{BTreeMap, BTreeSet};

use super::groups::Groups;
use super::readings::readings;
use super::rows::{Census, Sheets};
use crate::numerals::from_roman;
use keyblock_model::design::Design;
use keyblock_model::impression::Impression;
use keyblock_model::key::{ImpressionKey, Key};

/// The meaning of a numbering.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Numbering {
    /// Of the edition.
    Edition(EditionNumber),
    /// Of the proofs outside the edition ("AP 3/10", "H.C.").
    Proof,
}

/// A number of an edition.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct EditionNumber {
    /// Whether it is in roman numerals; an edition may run in both, each from 1.
    pub is_roman: bool,
    /// The number, at least 1.
    pub number: u32,
    /// The size it declares, as in "12/50".
    pub of: Option<u32>,
}

/// The words for proofs outside an edition, without points and spaces (`docs/trade.md, "Kinds of impression"`; AP, EA,
/// PA artist's proof, PP printer's proof, HC hors commerce, BAT bon à tirer, TP and CTP trial and
/// colour trial proof, WP working proof, SP state proof).
const PROOF_WORDS: [&str; 11] = [
    "AP", "EA", "PA", "PP", "HC", "BAT", "TP", "CTP", "WP", "SP", "PROOF",
];

/// Reads a numbering as it is written on sheets: `12/50`, `12`, `XII/L`, `AP 3/10`. `None` where it
/// has no form that can be counted.
#[must_use]
pub fn read_numbering(text: &str) -> Option<Numbering> {
    let text: String = text.trim().chars().map(plain_digit).collect();
    let letters: String = text
        .chars()
        .take_while(|c| c.is_alphabetic() || matches!(c, '.' | ' ' | '\''))
        .filter(|c| c.is_alphabetic())
        .flat_map(char::to_uppercase)
        .collect();
    // The number of a proof may be in roman numerals too: "e.a. III/V".
    let is_proof = PROOF_WORDS.iter().any(|word| {
        letters
            .strip_prefix(word)
            .is_some_and(|rest| rest.is_empty() || from_roman(rest).is_some())
    });
    if is_proof {
        return Some(Numbering::Proof);
    }
    let bare = ["no.", "No.", "nr.", "Nr.", "№"]
        .iter()
        .find_map(|word| text.strip_prefix(word))
        .unwrap_or(&text)
        .trim();
    let (number, of) = match bare.split_once(['/', '\u{2044}', '\u{2215}']) {
        Some((number, of)) => (number.trim(), Some(of.trim())),
        None => (bare, None),
    };
    let in_figures = |text: &str| {
        let is_figures = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        is_figures.then(|| text.parse::<u32>().ok()).flatten()
    };
    let (is_roman, number) = match in_figures(number) {
        Some(number) => (false, number),
        None => (true, from_roman(number)?),
    };
    let of = match of {
        Some(text) => Some(in_figures(text).or_else(|| from_roman(text))?),
        None => None,
    };
    (number > 0 && of != Some(0)).then_some(Numbering::Edition(EditionNumber {
        is_roman,
        number,
        of,
    }))
}

/// Full-width figures, as East Asian keyboards write them, as plain ones.
fn plain_digit(c: char) -> char {
    match c {
        '０'..='９' => u32::from(c)
            .checked_sub(u32::from('０'))
            .and_then(|n| char::from_digit(n, 10))
            .unwrap_or(c),
        '／' => '/',
        _ => c,
    }
}

/// The declared size of one printing, and the numbers found on its sheets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EditionStudy {
    /// The printing.
    pub printing: Key,
    /// The declared size: the first claim.
    pub declared: Option<u32>,
    /// How many were really printed, by the catalogue's own view.
    pub printed: Option<u32>,
    /// The known sheets of the printing, proofs included: its row in the census.
    pub sheets: Sheets,
    /// Every claim of a declared size, in the record's order.
    pub claims: Vec<u32>,
    /// The numbers found on any sheet, whatever its status; ascending, each once.
    pub located: Vec<u32>,
    /// Those found on two or more distinct sheets.
    pub repeated: Vec<u32>,
    /// Those above the largest claim.
    pub outside: Vec<u32>,
    /// The records with each number, by number and record.
    pub met: BTreeMap<MetNumber, Vec<ImpressionKey>>,
    /// The records whose numbers give a size that no claim declares ("12/60" of an edition of 50), by
    /// that size. Roman numerals number a part of an edition and are left out.
    pub of_other_size: BTreeMap<u32, Vec<ImpressionKey>>,
}

/// A number found on a sheet, without the size it declares: "12/50" and "12" are one number, "XII" is another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct MetNumber {
    /// Whether it is in roman numerals.
    pub is_roman: bool,
    /// The number.
    pub number: u32,
}

impl EditionStudy {
    /// Whether any number was found. Where none was, the edition was probably not numbered, and a count of
    /// missing numbers would mean nothing.
    #[must_use]
    pub fn is_numbered(&self) -> bool {
        !self.located.is_empty()
    }

    /// The numbers found that are not above the declared size; all of them where no size is declared.
    /// With [`EditionStudy::missing`] they make up the edition.
    pub fn within(&self) -> impl Iterator<Item = u32> {
        let numbers = self.located.iter().copied();
        numbers.filter(|n| self.declared.is_none_or(|declared| *n <= declared))
    }

    /// The numbers found above the declared size in the catalogue's own view; another claim may be
    /// larger.
    pub fn above(&self) -> impl Iterator<Item = u32> {
        let numbers = self.located.iter().copied();
        numbers.filter(|n| self.declared.is_some_and(|declared| *n > declared))
    }

    /// The declared numbers that were not found, where a size is declared.
    #[must_use]
    pub fn missing(&self) -> Vec<u32> {
        let Some(declared) = self.declared else {
            return Vec::new();
        };
        // An absurdly large declared size must not fill the memory with numbers.
        (1..=declared.min(100_000))
            .filter(|n| self.located.binary_search(n).is_err())
            .collect()
    }
}

/// The printing that every reading of an impression agrees on.
#[must_use]
pub fn only_printing(impression: &Impression) -> Option<&Key> {
    let identified = impression.identified.as_ref()?;
    let mut only: Option<&Key> = None;
    for reading in readings(identified) {
        if reading.printing.is_empty() {
            return None;
        }
        for printing in &reading.printing {
            if only.is_some_and(|known| *known != printing.value) {
                return None;
            }
            only = Some(&printing.value);
        }
    }
    only
}

/// The numbers found on the sheets of each printing, with the records that have them.
#[must_use]
pub fn numbers_met(design: &Design) -> BTreeMap<&Key, BTreeMap<MetNumber, Vec<ImpressionKey>>> {
    let mut met: BTreeMap<&Key, BTreeMap<MetNumber, Vec<ImpressionKey>>> = BTreeMap::new();
    for impression in design.impressions.values() {
        if impression.standing.is_withdrawn() {
            continue;
        }
        let numbering = impression
            .numbering
            .as_ref()
            .and_then(|n| read_numbering(&n.value));
        if let (Some(printing), Some(Numbering::Edition(number))) =
            (only_printing(impression), numbering)
        {
            let key = MetNumber {
                is_roman: number.is_roman,
                number: number.number,
            };
            let records = met.entry(printing).or_default().entry(key).or_default();
            records.push(impression.key.clone());
        }
    }
    met
}

/// The editions of a design: one for each printing that is not withdrawn and of which a size is declared, the number
/// printed is recorded or a number was met on a sheet, in the record's order.
#[must_use]
pub fn editions(groups: &Groups, design: &Design, census: &Census) -> Vec<EditionStudy> {
    let mut met = numbers_met(design);
    design
        .standing_printings()
        .filter_map(|printing| {
            let claims: Vec<u32> = printing.edition.iter().map(|c| c.is.value).collect();
            let met = met.remove(&printing.key.value).unwrap_or_default();
            let key = &printing.key.value;
            let printed = printing.printed.own().copied();
            let rows = &mut census.by.printing.iter();
            let row = rows.find(|row| row.key.as_ref() == Some(key));
            let is_listed = !claims.is_empty() || printed.is_some() || !met.is_empty();
            is_listed.then(|| EditionStudy {
                printed,
                sheets: row.map_or(NONE, |row| row.sheets),
                of_other_size: of_other_size(design, key, &claims),
                ..study(groups, key.clone(), claims, met)
            })
        })
        .collect()
}

/// No sheet.
const NONE: Sheets = Sheets {
    at_least: 0,
    at_most: 0,
    exact: true,
};

/// The records of a printing whose numbers give a size that is none of the `claims`.
fn of_other_size(
    design: &Design,
    printing: &Key,
    claims: &[u32],
) -> BTreeMap<u32, Vec<ImpressionKey>> {
    let mut others: BTreeMap<u32, Vec<ImpressionKey>> = BTreeMap::new();
    for impression in design.impressions.values() {
        let numbering = impression.numbering.as_ref();
        let Some(Numbering::Edition(EditionNumber {
            is_roman: false,
            of: Some(of),
            ..
        })) = numbering.and_then(|n| read_numbering(&n.value))
        else {
            continue;
        };
        let is_other = !claims.is_empty() && !claims.contains(&of);
        let is_of_it = only_printing(impression) == Some(printing);
        if is_other && is_of_it && !impression.standing.is_withdrawn() {
            others.entry(of).or_default().push(impression.key.clone());
        }
    }
    others
}

fn study(
    groups: &Groups,
    printing: Key,
    claims: Vec<u32>,
    met: BTreeMap<MetNumber, Vec<ImpressionKey>>,
) -> EditionStudy {
    let located: BTreeSet<u32> = met.keys().map(|m| m.number).collect();
    let repeated: BTreeSet<u32> = met
        .iter()
        .filter(|(_, records)| sheets_among(groups, records) > 1)
        .map(|(m, _)| m.number)
        .collect();
    let largest = claims.iter().copied().max();
    EditionStudy {
        printing,
        declared: claims.first().copied(),
        printed: None,
        sheets: NONE,
        outside: located
            .iter()
            .copied()
            .filter(|n| largest.is_some_and(|l| *n > l))
            .collect(),
        claims,
        located: located.into_iter().collect(),
        repeated: repeated.into_iter().collect(),
        met,
        of_other_size: BTreeMap::new(),
    }
}

/// How many distinct sheets some records are.
#[must_use]
pub fn sheets_among(groups: &Groups, records: &[ImpressionKey]) -> usize {
    let sheets: BTreeSet<ImpressionKey> = records.iter().map(|r| groups.first_of(r)).collect();
    sheets.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edition(is_roman: bool, number: u32, of: Option<u32>) -> Numbering {
        Numbering::Edition(EditionNumber {
            is_roman,
            number,
            of,
        })
    }

    #[test]
    fn numbers_of_an_edition_are_read_in_figures_and_in_roman_numerals() {
        for (text, read) in [
            ("12/50", edition(false, 12, Some(50))),
            (" 12 / 50 ", edition(false, 12, Some(50))),
            ("12", edition(false, 12, None)),
            ("No. 12", edition(false, 12, None)),
            ("XII/L", edition(true, 12, Some(50))),
            ("１２／５０", edition(false, 12, Some(50))),
        ] {
            assert_eq!(read_numbering(text), Some(read), "{text:?}");
        }
    }

    #[test]
    fn a_proof_is_not_of_the_edition() {
        for text in ["AP 3/10", "A.P.", "e.a. III/V", "H.C.", "BAT"] {
            assert_eq!(read_numbering(text), Some(Numbering::Proof), "{text:?}");
        }
    }

    #[test]
    fn what_cannot_be_counted_is_not_read() {
        for text in [
            "",
            "0/50",
            "12/0",
            "twelve",
            "12/50/3",
            "-3",
            "99999999999",
            "12 of them",
        ] {
            assert_eq!(read_numbering(text), None, "{text:?}");
        }
    }
}
