//! Rules on the addresses that editions issued: each leads to its record, to the record that took its place, or to a
//! page that says why it was withdrawn (docs/definitions.md, "The register").

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Comparison;
use crate::model::finding::Finding;
use crate::model::issued_address::IssuedAddress;
use crate::model::key::{Key, PictureOwner};
use crate::model::link::Target;
use crate::model::occurrence::{DesignPart, RecordId};
use crate::model::place::Place;
use crate::model::register::{Aspect, Digest, IssuedEdition, IssuedEntry, Register, Subject};
use crate::study::Studies;
use crate::study::issued::present::{shown, subject_digests};

/// An address that was issued leads to nothing: its record, or the part of it, is gone, and nothing says what took its
/// place.
pub(super) fn vanished(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let Some(register) = &catalogue.register else {
        return;
    };
    for (address, entry) in &register.entries {
        if catalogue.has_address(address) || catalogue.leads(address).is_some() {
            continue;
        }
        // The parts and sheets of a design that is gone are told with it.
        if above(address).is_some_and(|above| !catalogue.has_address(&above)) {
            continue;
        }
        let edition = edition_of(register, entry);
        findings.push(
            Finding::new(
                Code::AddressVanished,
                entry.since.place,
                format!(
                    "{} was issued in edition {edition} and is not there any more",
                    in_words(address)
                ),
            )
            .saying("issued here")
            .help(remedy(address)),
        );
    }
}

/// The record that an address lies within.
fn above(address: &IssuedAddress) -> Option<IssuedAddress> {
    let design = |key: &Key| Some(IssuedAddress::Record(Target::Design(key.clone())));
    match address {
        IssuedAddress::Record(Target::Impression(key)) => design(&key.design),
        IssuedAddress::Record(Target::Picture(key)) => match &key.owner {
            PictureOwner::Design(key) => design(key),
            PictureOwner::Impression(key) => {
                Some(IssuedAddress::Record(Target::Impression(key.clone())))
            }
            PictureOwner::Document(key) => {
                Some(IssuedAddress::Record(Target::Document(key.clone())))
            }
        },
        IssuedAddress::Part(key, ..)
        | IssuedAddress::Point(key, _)
        | IssuedAddress::Comparison(key, _) => design(key),
        IssuedAddress::Condition(key, _) => Some(IssuedAddress::Record(Target::Mark(key.clone()))),
        IssuedAddress::Record(_) => None,
    }
}

/// The thing at an address, as a cataloguer calls it.
fn in_words(address: &IssuedAddress) -> String {
    match address {
        IssuedAddress::Record(target) => match target {
            Target::Design(key) => format!("design {key}"),
            Target::Impression(key) => format!("impression {key}"),
            Target::Holder(key) => format!("the holder `{key}`"),
            Target::Person(key) => format!("the person `{key}`"),
            Target::Work(key) => format!("`{key}` of the literature"),
            Target::Exhibition(key) => format!("the exhibition `{key}`"),
            Target::Mark(key) => format!("the mark `{key}`"),
            Target::Document(key) => format!("the document `{key}`"),
            Target::Series(key) => format!("the series `{key}`"),
            Target::Page(key) => format!("the page `{key}`"),
            Target::Picture(key) => format!("the picture {key}"),
        },
        IssuedAddress::Part(design, part, key) => {
            let part = match part {
                DesignPart::Matrix => "matrix",
                DesignPart::State => "state",
                DesignPart::Printing => "printing",
                DesignPart::Variant => "variant",
            };
            format!("{part} `{key}` of design {design}")
        }
        IssuedAddress::Point(design, key) => format!("point `{key}` of design {design}"),
        IssuedAddress::Comparison(design, place) => {
            format!("comparison {place} of design {design}")
        }
        IssuedAddress::Condition(mark, key) => format!("condition `{key}` of the mark `{mark}`"),
    }
}

/// What to do about an address that leads to nothing.
fn remedy(address: &IssuedAddress) -> String {
    match address {
        IssuedAddress::Record(target) => match target {
            Target::Design(key) => format!(
                "restore records/designs/{key}/design.toml, and with `standing = \"withdrawn\"` and `why` where the \
                 design is given up; or write `was = [\"{key}\"]` in the design that took its place"
            ),
            Target::Impression(key) => format!(
                "restore records/designs/{}/impressions/{}.toml, and with `standing = \"withdrawn\"`, `why` and `see` \
                 where the sheet is recorded elsewhere",
                key.design, key.number
            ),
            Target::Holder(key) => renamed(&format!("records/holders/{key}.toml"), key, "holder"),
            Target::Person(key) => renamed(&format!("records/people/{key}.toml"), key, "person"),
            Target::Mark(key) => renamed(&format!("records/marks/{key}.toml"), key, "mark"),
            Target::Series(key) => renamed(&format!("records/series/{key}.toml"), key, "series"),
            Target::Document(key) => {
                renamed(&format!("records/documents/{key}.toml"), key, "document")
            }
            Target::Work(key) => format!(
                "restore the entry `{key}` in records/literature.bib, or write `ids = {{{key}}}` in the entry that took \
                 its place"
            ),
            Target::Exhibition(key) => renamed(
                &format!("[{key}] in records/exhibitions.toml"),
                key,
                "exhibition",
            ),
            Target::Page(key) => format!(
                "restore records/pages/{key}.md, or write `was = [\"{key}\"]` in a .toml file beside the text that took \
                 its place"
            ),
            Target::Picture(key) => format!(
                "restore the picture `{name}`, with `publish = false` where it must not be shown; or write \
                 `was = [\"{name}\"]` at the picture that took its place",
                name = key.name
            ),
        },
        IssuedAddress::Part(design, DesignPart::Matrix, key)
        | IssuedAddress::Point(design, key) => format!(
            "restore `{key}` in records/designs/{design}/design.toml, or write `was = [\"{key}\"]` at the one that \
             took its place"
        ),
        IssuedAddress::Part(design, _, key) => format!(
            "restore `{key}` in records/designs/{design}/design.toml, and with `standing = \"withdrawn\"` and `why` \
             where it is given up; or write `was = [\"{key}\"]` at the one that took its place"
        ),
        IssuedAddress::Comparison(design, place) => format!(
            "restore the comparison in records/designs/{design}/design.toml, at place {place} of the list"
        ),
        IssuedAddress::Condition(mark, key) => format!(
            "restore `{key}` in records/marks/{mark}.toml, or write `was = [\"{key}\"]` at the condition that took \
             its place"
        ),
    }
}

fn renamed(file: &str, key: &Key, what: &str) -> String {
    format!("restore {file}, or write `was = [\"{key}\"]` in the {what} that took its place")
}

/// The edition that last published an entry: the one that issued it where no later one says more.
fn edition_of<'r>(register: &'r Register, entry: &IssuedEntry) -> &'r str {
    let edition = register.editions.get(entry.since.value);
    edition.map_or("?", |edition: &IssuedEdition| {
        edition.edition.value.as_str()
    })
}

/// An address that was issued would lead to another thing. Comparisons are numbered by their places, so one that is
/// inserted before others takes their addresses; a former key that a record has anew is two things.
pub(super) fn reused(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let Some(register) = &catalogue.register else {
        return;
    };
    for (address, entry) in &register.entries {
        let edition = edition_of(register, entry);
        if let IssuedAddress::Comparison(design, place) = address {
            let recorded = catalogue.designs.get(design);
            let comparison = recorded.and_then(|design| design.comparison(*place));
            let issued = entry.last(Aspect::Shows);
            // A sheet that is not published stands in the record alone, and one may be added.
            let shows_all = |now: &Comparison| {
                let of: Vec<String> = now.of.iter().map(|key| key.value.to_string()).collect();
                issued
                    .split_whitespace()
                    .all(|key| of.iter().any(|of| of == key))
            };
            let Some(comparison) = comparison.filter(|now| !shows_all(now)) else {
                continue;
            };
            findings.push(
                Finding::new(
                    Code::AddressReused,
                    comparison.place,
                    format!(
                        "comparison {place} of design {design} shows {}; edition {edition} issued it as a comparison of {}",
                        listed(&shown(comparison)),
                        listed(issued)
                    ),
                )
                .beside(entry.since.place, "issued here")
                .help("put the comparison that was issued back in its place, and add new ones at the end"),
            );
        } else if let Some(led) = entry.leads_to()
            && catalogue.has_address(address)
            && catalogue.leads(address).is_none()
        {
            findings.push(
                Finding::new(
                    Code::AddressReused,
                    entry.since.place,
                    format!(
                        "{} has a key that leads to {} since an edition said so",
                        in_words(address),
                        in_words(&led)
                    ),
                )
                .saying("issued here")
                .help("give the new record a key that was never used"),
            );
        }
    }
}

fn listed(keys: &str) -> String {
    keys.split_whitespace().collect::<Vec<_>>().join(", ")
}

/// Of a record with fewer subjects than these, everything may be corrected at once.
const LITTLE: usize = 3;

/// Nothing of an entry is left as it was issued: perhaps its key was given to another thing.
pub(super) fn replaced(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let Some(register) = &catalogue.register else {
        return;
    };
    for (address, entry) in &register.entries {
        let IssuedAddress::Record(target) = address else {
            continue;
        };
        let record = match target {
            Target::Design(key) => RecordId::Design(key.clone()),
            Target::Impression(key) => RecordId::Impression(key.clone()),
            _ => continue,
        };
        let Some(place) = place_of(catalogue, target) else {
            continue;
        };
        let now = subject_digests(catalogue, &record, None);
        let told = |holds: &BTreeMap<Subject, Digest>| {
            let subjects = holds.keys().filter(|subject| **subject != Subject::Text);
            subjects.count()
        };
        if told(&entry.holds) < LITTLE || told(&now) < LITTLE {
            continue;
        }
        let is_kept = |subject: &Subject| entry.holds.get(subject) == now.get(subject);
        if now.keys().any(is_kept) {
            continue;
        }
        let edition = edition_of(register, entry);
        findings.push(
            Finding::new(
                Code::EntryReplaced,
                place,
                format!(
                    "nothing is left of what edition {edition} and those after it said of {}; is it the same thing?",
                    in_words(address)
                ),
            )
            .beside(entry.since.place, "issued here")
            .help("record another thing under a key of its own; where it is the same one, say so with `settled`"),
        );
    }
}

fn place_of(catalogue: &Catalogue, target: &Target) -> Option<Place> {
    match target {
        Target::Design(key) => catalogue.designs.get(key).map(|design| design.place),
        Target::Impression(key) => catalogue.impression(key).map(|sheet| sheet.place),
        _ => None,
    }
}
