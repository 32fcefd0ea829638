//! How a sheet was seen, and the rights in its picture: cells that are one word of a known list.

use std::sync::LazyLock;

use super::phrases::Phrases;
use super::words::Words;
use crate::model::certainty::Basis;
use crate::model::words::ClosedList;

static BASES: LazyLock<Phrases<Basis>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Basis::FirstHand,
            "first-hand|first hand|at first hand|in the original|original|the sheet itself|in person|examined|seen|\
             im original|am original|nach augenschein|autopsie|eigene ansicht|sur l'original|en original|de visu|in het origineel",
        ),
        (
            Basis::Photograph,
            "photograph|photo|from a photograph|by photograph|from photographs|scan|reproduction|nach fotografie|nach einer fotografie|\
             fotografie|foto|nach foto|abbildung|photographie|d'après photographie|naar foto",
        ),
        (
            Basis::Literature,
            "literature|from literature|published|catalogue|literatur|nach literatur|nach der literatur|littérature|literatuur",
        ),
        (
            Basis::Report,
            "report|by report|from a report|reported|hearsay|told|bericht|nach bericht|nach einem bericht|mitteilung|gemeldet|nach mitteilung|par communication|\
             mededeling",
        ),
    ])
});

/// How a sheet was seen, where the whole cell says it.
#[must_use]
pub fn basis(text: &str) -> Option<Basis> {
    let words = Words::of(text.trim());
    let by_word = Basis::from_word(text.trim());
    let phrase = || BASES.at(&words, 0).filter(|found| found.end == words.len());
    by_word.or_else(|| phrase().map(|found| found.is))
}

/// Rights that are named by an identifier: the address of a statement at creativecommons.org or rightsstatements.org, or
/// a licence of Creative Commons by its letters (`CC BY-SA 4.0`), which is given as its SPDX identifier.
///
/// The letters are those of the licences' own short names (SPDX licence list, `CC-BY-SA-4.0`; from memory). Other words,
/// such as the name of a right's owner, are not an identifier and are left as they are.
#[must_use]
pub fn rights(text: &str) -> Option<String> {
    let text = text.trim();
    let lower = text.to_ascii_lowercase();
    let is_statement = ["creativecommons.org/", "rightsstatements.org/"]
        .iter()
        .any(|site| {
            let rest = ["https://", "http://"]
                .iter()
                .find_map(|begin| lower.strip_prefix(begin));
            let rest = rest.map(|rest| rest.strip_prefix("www.").unwrap_or(rest));
            rest.is_some_and(|rest| rest.starts_with(site))
        });
    if is_statement && !text.contains(|c: char| c.is_whitespace() || c.is_control()) {
        return Some(text.to_owned());
    }
    let parts: Vec<&str> = lower
        .split([' ', '-'])
        .filter(|part| !part.is_empty())
        .collect();
    let is_version = |part: &str| ["1.0", "2.0", "2.5", "3.0", "4.0"].contains(&part);
    match parts.as_slice() {
        ["cc0"] | ["cc0", "1.0"] => Some("CC0-1.0".to_owned()),
        ["cc", letters @ .., version] if is_version(version) => {
            let is_licence = matches!(
                letters,
                ["by"] | ["by", "sa" | "nd" | "nc"] | ["by", "nc", "sa" | "nd"]
            );
            is_licence.then(|| format!("CC-{}-{version}", letters.join("-").to_uppercase()))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_for_how_a_sheet_was_seen_are_known() {
        for basis_known in Basis::ALL {
            assert_eq!(basis(basis_known.word()), Some(*basis_known));
        }
        assert_eq!(basis("Im Original"), Some(Basis::FirstHand));
        assert_eq!(basis("by report"), Some(Basis::Report));
        assert_eq!(basis("in the original, framed"), None);
        assert_eq!(basis(""), None);
    }

    #[test]
    fn rights_are_read_where_they_are_an_identifier() {
        for (text, read) in [
            ("CC BY-SA 4.0", Some("CC-BY-SA-4.0")),
            ("CC-BY-4.0", Some("CC-BY-4.0")),
            ("CC0", Some("CC0-1.0")),
            ("cc0 1.0", Some("CC0-1.0")),
            (
                "https://rightsstatements.org/vocab/InC/1.0/",
                Some("https://rightsstatements.org/vocab/InC/1.0/"),
            ),
            ("CC BY", None),
            ("CC SA 4.0", None),
            ("© Hafenmuseum", None),
            ("https://example.org/rights", None),
            ("", None),
        ] {
            assert_eq!(rights(text).as_deref(), read, "{text}");
        }
    }
}
