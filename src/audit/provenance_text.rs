//! Rules: the provenance written by hand, or the note on a sheet, says what no entry says.
//!
//! Owners of 1933 to 1945 are computed from the entries alone (docs/definitions.md, "The years 1933 to 1945"). A text
//! that names a year of that time, or somebody on record, beyond the entries would make a page say two things. A note
//! tells of much else, so only its years count, and not those in which the sheet was seen or shown.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use pulldown_cmark::Event;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
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
            .into_keys()
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

/// The note on a sheet that existed then names a year from 1933 to 1945 in which no entry has a date, and in which the
/// sheet was neither seen nor shown.
pub(super) fn note_beyond_entries(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (_, impression) in catalogue.impressions() {
        let is_concerned = studies.diligence.contains_key(&impression.key);
        let Some(note) = impression.note.as_ref().filter(|_| is_concerned) else {
            continue;
        };
        let mut found: BTreeMap<i64, usize> = BTreeMap::new();
        for (event, span) in note.parser().into_offset_iter() {
            // Not the targets of links, whose keys may have years.
            let Event::Text(_) = event else { continue };
            let text = note.text.get(span.clone()).unwrap_or_default();
            for (year, at) in years(text) {
                found.entry(year).or_insert(span.start + at);
            }
        }
        found.retain(|year, _| !is_told(catalogue, impression, *year));
        let Some(at) = found.values().min() else {
            continue;
        };
        let years: Vec<String> = found.keys().map(ToString::to_string).collect();
        findings.push(
            Finding::new(
                Code::ProvenanceTextApart,
                Place::new(note.file, *at..at + YEAR),
                format!(
                    "the note on {} names {}, but no entry of `provenance` has a date then",
                    catalogue.sheet_number(&impression.key),
                    years.join(", ")
                ),
            )
            .help("add the entry, as `possible` where that is all that is known, or settle the doubt if the note tells of something else"),
        );
    }
}

/// Whether an entry covers a year, or the sheet was seen or shown in it.
fn is_told(catalogue: &Catalogue, impression: &Impression, year: i64) -> bool {
    let shown = impression.exhibited.iter();
    let shown = shown.filter_map(|e| {
        catalogue
            .exhibitions
            .get(&e.exhibition.value)?
            .date
            .as_ref()
    });
    let seen = impression.sightings.iter().map(|sighting| &sighting.date);
    let mut dates = shown.chain(seen);
    impression.provenance.iter().any(|e| covers(e, year))
        || dates.any(|date| named_years(date).is_some_and(|years| years.contains(&year)))
}

/// The bytes of a year in figures.
const YEAR: usize = 4;

/// The years from 1933 to 1945 that a text names, in figures, each with the byte at which it first stands. "1939.7" is an
/// inventory number.
fn years(text: &str) -> BTreeMap<i64, usize> {
    let mut found = BTreeMap::new();
    for (at, _) in text.match_indices("19") {
        let before = text.get(..at).and_then(|b| b.chars().next_back());
        let Some((year, after)) = text.get(at..).and_then(|rest| rest.split_at_checked(YEAR))
        else {
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
            found.entry(year).or_insert(at);
        }
    }
    found
}

/// Whether an entry has a date in a year, or dates on both sides of it.
fn covers(entry: &ProvenanceEntry, year: i64) -> bool {
    let from = entry.from.as_ref().and_then(named_years);
    let to = entry.to.as_ref().and_then(named_years);
    let is_in = |years: &RangeInclusive<i64>| years.contains(&year);
    let is_between = from
        .as_ref()
        .zip(to.as_ref())
        .is_some_and(|(from, to)| (*from.start()..=*to.end()).contains(&year));
    from.as_ref().is_some_and(is_in) || to.as_ref().is_some_and(is_in) || is_between
}

/// From the first year that a date names to the last.
fn named_years(date: &Placed<Date>) -> Option<RangeInclusive<i64>> {
    let (first, last) = (date.value.first_named()?, date.value.last_named()?);
    Some(first.year..=last.year)
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
        || impression.owners.iter().any(is_named)
}

#[cfg(test)]
mod tests {
    use super::{stands_in, years};

    #[test]
    fn years_are_four_figures_alone() {
        let found = |text: &str| years(text).into_keys().collect::<Vec<_>>();
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
