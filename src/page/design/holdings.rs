//! The impressions of a design as print catalogues list them: under each state and printing, run on by
//! city, then institution, then number; private collections after the cities; untraced, destroyed and
//! stolen sheets last (`docs/trade.md`, "Order of an entry").
//!
//! Records found to be one sheet are listed once, under the first; withdrawn ones are not listed.

use std::collections::BTreeMap;

use serde::Serialize;

use super::alike_sheets;
use crate::model::design::Design;
use crate::model::holder::{Holder, HolderKind};
use crate::model::impression::{BlockPrinted, Impression, Status};
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::model::vocabulary::List;
use crate::page::lists::run_on::RunOnLine;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::holding;
use crate::page::phrases::lots;
use crate::page::phrases::matrices;
use crate::page::phrases::readings;
use crate::page::phrases::standing_note;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::reading_order::{Rank, listed, rank};
use crate::study::order::Collator;

/// The sheets of one state and printing.
#[derive(Serialize)]
pub(super) struct Group {
    heading: CleanHtml,
    cities: Vec<RunOnLine>,
}

/// The groups of a design.
pub(super) fn groups(here: &Here<'_>, design: &Design) -> Vec<Group> {
    let words = here.words();
    let mut located: BTreeMap<Rank, Vec<&Impression>> = BTreeMap::new();
    let mut elsewhere: BTreeMap<Status, Vec<&Impression>> = BTreeMap::new();
    for impression in listed(here, design) {
        match impression.status.value {
            Status::Located => located.entry(rank(design, impression)).or_default(),
            status => elsewhere.entry(status).or_default(),
        }
        .push(impression);
    }
    let mut groups: Vec<Group> = located
        .into_values()
        .filter_map(|sheets| {
            let first = sheets.first()?;
            let reading = first.identified.as_ref();
            let reading =
                reading.map_or_else(CleanHtml::empty, |r| readings::plain(here, design, r));
            Some(Group {
                heading: if !reading.is_empty() {
                    capitalised(&reading)
                } else if design.has_choice() {
                    CleanHtml::text(words.word("not-identified"))
                } else {
                    capitalised(&CleanHtml::text(here.status(Status::Located)))
                },
                cities: cities(here, design, &sheets),
            })
        })
        .collect();
    groups.extend(elsewhere.into_iter().map(|(status, sheets)| Group {
        heading: capitalised(&CleanHtml::text(here.status(status))),
        cities: vec![RunOnLine {
            lead: CleanHtml::empty(),
            items: sheets.iter().map(|i| lost_sheet(here, design, i)).collect(),
        }],
    }));
    groups
}

fn cities(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> Vec<RunOnLine> {
    let words = Collator::of_words(here.language());
    let numbers = Collator::of_numbers(here.language());
    let private = here.words().word("private-collections");
    let mut rows: Vec<(&Impression, Option<&Holder>, String)> = sheets
        .iter()
        .map(|i| {
            let holder = i
                .holder
                .as_ref()
                .and_then(|key| here.public().holders.get(&key.value));
            (*i, holder, city_of(here, holder))
        })
        .collect();
    rows.sort_by(|(a, holder_a, city_a), (b, holder_b, city_b)| {
        let is_last = |holder: Option<&Holder>, city: &str| {
            u8::from(city == private) + 2 * u8::from(holder.is_none())
        };
        let name =
            |holder: Option<&Holder>| holder.map(|h| h.name.value.clone()).unwrap_or_default();
        let number = |i: &Impression| i.accession_and_part().unwrap_or_default();
        is_last(*holder_a, city_a)
            .cmp(&is_last(*holder_b, city_b))
            .then_with(|| words.compare(city_a, city_b))
            .then_with(|| words.compare(&name(*holder_a), &name(*holder_b)))
            .then_with(|| numbers.compare(&number(a), &number(b)))
            .then_with(|| a.key.cmp(&b.key))
    });
    let by_city = rows.chunk_by(|(_, _, a), (_, _, b)| a == b);
    by_city
        .filter_map(|of_city| {
            let (_, _, city) = of_city.first()?;
            let by_holder = of_city.chunk_by(|(_, a, _), (_, b, _)| {
                a.map(|holder| &holder.key) == b.map(|holder| &holder.key)
            });
            let items = by_holder.flat_map(|of_holder| {
                let sheets: Vec<&Impression> = of_holder.iter().map(|(i, _, _)| *i).collect();
                of_one_holder(here, design, &sheets)
            });
            Some(RunOnLine {
                lead: CleanHtml::text(city),
                items: items.collect(),
            })
        })
        .collect()
}

/// The sheets of one holder: the first with the name, all with what tells them apart.
fn of_one_holder(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> Vec<CleanHtml> {
    let said = |impression: &&Impression| {
        let doubts = doubts(here, design, impression);
        let remarks = remarks(here, design, impression);
        CleanHtml::join(std::iter::once(&doubts).chain(&remarks), ", ")
    };
    let said: Vec<CleanHtml> = sheets.iter().map(said).collect();
    let apart = alike_sheets::differences(here, sheets, &said);
    let items = (0..).zip(sheets.iter().zip(&apart.of_sheets));
    let mut items: Vec<CleanHtml> = items
        .map(|(at, (impression, more))| sheet(here, design, impression, at > 0, more))
        .collect();
    items.extend(apart.note);
    items
}

/// The heading a sheet is listed under.
fn city_of(here: &Here<'_>, holder: Option<&Holder>) -> String {
    let words = here.words();
    match holder {
        None => words.word("holder-not-recorded").to_owned(),
        Some(holder) => match &holder.town {
            Some(town) => town.value.clone(),
            None if holder.kind == HolderKind::Private => {
                words.word("private-collections").to_owned()
            }
            None => words.word("place-not-recorded").to_owned(),
        },
    }
}

/// "**14.2** (probable) Print Room (P 118), trial proof, 12/40, without the dusk block, doubtful". After another sheet of
/// the same holder its number stands alone: "**14.3** P 119".
fn sheet(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    same_holder_as_before: bool,
    more: &[CleanHtml],
) -> CleanHtml {
    let number = holding::accession(impression).unwrap_or_else(CleanHtml::empty);
    let holder = match &impression.holder {
        Some(_) if same_holder_as_before && number.is_empty() => {
            CleanHtml::text(here.words().word("the-same"))
        }
        Some(key) if !same_holder_as_before => here.holder(&key.value),
        _ => CleanHtml::empty(),
    };
    let holder = if holder.is_empty() || number.is_empty() {
        holder.and(&number)
    } else {
        holder.then(" (").and(&number).then(")")
    };
    let handle = here.impression(&impression.key);
    let handle = CleanHtml::join([&handle, &doubts(here, design, impression)], " ");
    let remarks = remarks(here, design, impression);
    let rest = std::iter::once(&holder).chain(&remarks).chain(more);
    let rest = CleanHtml::join(rest, ", ");
    if rest.is_empty() {
        handle
    } else {
        handle.then(" ").and(&rest)
    }
}

/// How sure the state and printing are under which a sheet is listed: "(probable)", "(against what was seen)".
fn doubts(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    match &impression.identified {
        Some(reading) if !readings::plain(here, design, reading).is_empty() => {
            readings::doubts(here, design, impression, reading)
        }
        _ => CleanHtml::empty(),
    }
}

/// The remarks on a sheet after its number: kind, number in the edition, matrices not printed, and the standing of a
/// record that is not accepted.
fn remarks(here: &Here<'_>, design: &Design, impression: &Impression) -> Vec<CleanHtml> {
    let words = here.words();
    let mut remarks = Vec::new();
    if let Some(kind) = impression
        .kind
        .own()
        .filter(|kind| kind.as_str() != "edition")
    {
        remarks.push(CleanHtml::text(&here.term(List::Kinds, kind.as_str())));
    }
    if let Some(numbering) = &impression.numbering {
        remarks.push(CleanHtml::text(numbering));
    }
    let lacking: Vec<_> = impression
        .blocks
        .iter()
        .filter(|(_, printed)| printed.value == BlockPrinted::NotPrinted)
        .map(|(matrix, _)| CleanHtml::text(&matrices::matrix_name(here, design, &matrix.value)))
        .collect();
    if !lacking.is_empty() {
        let all = enumeration::together(here, &lacking);
        remarks.push(words.html("lacks", None, &[("matrices", &all)]));
    }
    let standing = standing_note::remark(here, &impression.standing);
    remarks.extend(CleanHtml::text(standing).some());
    remarks
}

/// "**14.9** *iii* or *iv*, last recorded An auction house, 3 November 1971, lot 212".
fn lost_sheet(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let words = here.words();
    let reading = readings::short(here, design, impression);
    let last = impression.provenance.last().map(|entry| {
        let date = entry.to.as_ref().or(entry.from.as_ref());
        let date = date.map_or_else(CleanHtml::empty, |d| dates::once_html(&d.value, words));
        let lot = CleanHtml::text(&lots::number(here, entry));
        CleanHtml::join([&last_with(here, entry), &date, &lot], ", ")
    });
    let mut parts = vec![reading];
    parts.extend(remarks(here, design, impression));
    parts.extend(last);
    here.impression(&impression.key)
        .then(" ")
        .and(&CleanHtml::join(&parts, ", "))
}

/// "last recorded: Old Basin Museum, Kelderhaven", "last recorded in the trade: Mole & Pier"; a private party is named by role.
fn last_with(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let party = match (&entry.party, entry.role) {
        (Party::Undisclosed, role) => {
            let word = match role {
                PartyRole::Owner => "last-recorded-owner",
                PartyRole::Agent => "last-recorded-agent",
                PartyRole::Keeper => "last-recorded-keeper",
            };
            return CleanHtml::text(words.word(word));
        }
        (Party::Record(key), _) => here
            .unnamed_collection(&key.value)
            .unwrap_or_else(|| here.party(&entry.party)),
        (Party::Named(_), _) => here.party(&entry.party),
    };
    let word = match entry.role {
        PartyRole::Agent => "last-recorded-in-trade",
        PartyRole::Owner | PartyRole::Keeper => "last-recorded",
    };
    words.html(word, None, &[("where", &party)])
}
