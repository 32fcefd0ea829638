//! Rule: the provenance written by hand says what no entry says.
//!
//! Owners of 1933 to 1945 are computed from the entries alone (docs/definitions.md, "The years 1933 to 1945"). A text
//! that names a year of that time, or somebody on record, beyond the entries would make a page say two things.

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::provenance::{Party, ProvenanceEntry};
use crate::study::Studies;
use crate::study::diligence::{FIRST, LAST};

/// The text names a year from 1933 to 1945 for which no entry has a date, or a person or holder on record whom
/// no entry has.
pub(super) fn beyond_entries(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(text) = &impression.provenance_line else {
            continue;
        };
        let years: Vec<String> = years(&text.value)
            .into_iter()
            .filter(|year| !impression.provenance.iter().any(|e| covers(e, *year)))
            .map(|year| year.to_string())
            .collect();
        let names: Vec<&str> = named(catalogue, &text.value)
            .filter(|(key, _)| !is_party(catalogue, design, impression, key))
            .map(|(_, name)| name)
            .collect();
        if years.is_empty() && names.is_empty() {
            continue;
        }
        let what: Vec<&str> = years.iter().map(String::as_str).chain(names).collect();
        findings.push(
            Finding::new(
                Code::ProvenanceTextApart,
                text.place,
                format!(
                    "the provenance of {} as written by hand names {}, but no entry of `provenance` does",
                    catalogue.sheet_number(&impression.key),
                    what.join(", ")
                ),
            )
            .help("add the entry, as `possible` where that is all that is known, or correct the text"),
        );
    }
}

/// The years from 1933 to 1945 that a text names, in figures. "1939.7" is an inventory number.
fn years(text: &str) -> BTreeSet<i64> {
    let mut found = BTreeSet::new();
    for (at, _) in text.match_indices("19") {
        let before = text.get(..at).and_then(|b| b.chars().next_back());
        let Some((year, after)) = text.get(at..).and_then(|rest| rest.split_at_checked(4)) else {
            continue;
        };
        let mut next = after.chars();
        let (first, second) = (next.next(), next.next());
        let is_longer = before.is_some_and(|c| c.is_alphanumeric() || c == '.')
            || first.is_some_and(char::is_alphanumeric)
            || first == Some('.') && second.is_some_and(|c| c.is_ascii_digit());
        if let (false, Ok(year)) = (is_longer, year.parse::<i64>())
            && (FIRST.year..=LAST.year).contains(&year)
        {
            found.insert(year);
        }
    }
    found
}

/// Whether an entry has a date in a year, or dates on both sides of it.
fn covers(entry: &ProvenanceEntry, year: i64) -> bool {
    let days = |date: &Placed<Date>| {
        let (first, last) = (date.value.first_named()?, date.value.last_named()?);
        Some((first.year, last.year))
    };
    let from = entry.from.as_ref().and_then(days);
    let to = entry.to.as_ref().and_then(days);
    let is_in = |(first, last)| first <= year && year <= last;
    let is_between = from
        .zip(to)
        .is_some_and(|((first, _), (_, last))| is_in((first, last)));
    from.is_some_and(is_in) || to.is_some_and(is_in) || is_between
}

/// The persons and holders on record whose name stands in a text, each with it.
fn named<'a>(catalogue: &'a Catalogue, text: &str) -> impl Iterator<Item = (&'a Key, &'a str)> {
    let people = catalogue.people.values().map(|p| (&p.key, &p.name.value));
    // A private name in a text is an error of its own (`private_names`).
    let holders = catalogue.holders.values();
    let holders = holders.filter(|holder| holder.may_publish("name"));
    let holders = holders.map(|holder| (&holder.key, &holder.name.value));
    let all = people
        .chain(holders)
        .map(|(key, name)| (key, name.as_str()));
    all.filter(move |(_, name)| stands_in(text, name))
}

fn stands_in(text: &str, name: &str) -> bool {
    let is_word = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    text.match_indices(name).any(|(at, _)| {
        let before = text.get(..at).and_then(|b| b.chars().next_back());
        let after = text.get(at + name.len()..).and_then(|a| a.chars().next());
        !is_word(before) && !is_word(after)
    })
}

/// Whether the record itself has a party: in an entry, as holder or owner, or as a maker, from whom every sheet
/// came first.
fn is_party(catalogue: &Catalogue, design: &Design, impression: &Impression, key: &Key) -> bool {
    let is_one = |other: &Placed<Key>| catalogue.are_one_house(key, &other.value);
    let is_named = |party: &Party| matches!(party, Party::Record(other) if is_one(other));
    let is_maker = design.makers.iter().any(|maker| maker.person.value == *key)
        || catalogue
            .settings
            .artist
            .as_ref()
            .is_some_and(|a| a.value == *key);
    is_maker
        || impression
            .provenance
            .iter()
            .any(|entry| is_named(&entry.party))
        || impression.holder.as_ref().is_some_and(is_one)
        || impression.owner.as_ref().is_some_and(is_named)
}

#[cfg(test)]
mod tests {
    use super::{stands_in, years};

    #[test]
    fn years_are_four_figures_alone() {
        let found = |text: &str| years(text).into_iter().collect::<Vec<_>>();
        assert_eq!(found("(A, 1938); B, spring 1939."), [1938, 1939]);
        assert_eq!(
            found("1932, 1946, 19381, A1938, inv. 1939.7, 19, 193é").len(),
            0
        );
        assert_eq!(found("1933–1945"), [1933, 1945]);
    }

    #[test]
    fn a_name_is_found_as_whole_words() {
        assert!(stands_in("to Ada Quire, 1938", "Ada Quire"));
        assert!(!stands_in("to Ada Quires, 1938", "Ada Quire"));
    }
}
