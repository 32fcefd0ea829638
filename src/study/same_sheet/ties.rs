//! Ties: the facts that two records may state word for word.
//!
//! In: an impression. Out: its [`Tie`]s, each with its place. Facts that many sheets share are left out: the
//! artist, printers and publishers as owners; museums, libraries and the trade, which have many sheets;
//! stamps and seals, which a printing bears on every sheet; inscriptions that repeat the title; printed text.

use super::facts::CatalogueFacts;
use super::reason::{PartyIdentity, Tie};
use super::texts::{inscribed, letters, plain_number};
use crate::census::editions::{Numbering, only_printing, read_numbering};
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::Impression;
use keyblock_model::key::Key;
use keyblock_model::mark::{Mark, MarkKind};
use keyblock_model::place::Place;
use keyblock_model::provenance::{PartyRole, ProvenanceEntry};

/// The ties of a record with their places, and the one its provenance ends with.
pub(super) fn ties(
    facts: &CatalogueFacts<'_>,
    design: &Design,
    impression: &Impression,
) -> (Vec<(Tie, Place)>, Option<Tie>) {
    let mut found = Vec::new();
    found.extend(number(design, impression));
    held(facts, impression, &mut found);
    for mark in &impression.marks {
        let described = facts.catalogue.described_mark(mark);
        found.extend(of_mark(facts, design, &described).map(|tie| (tie, mark.place)));
    }
    let mut last = None;
    for entry in &impression.provenance {
        let ties = of_entry(facts, design, entry);
        // The last entry ends the trace, whether or not it gives a tie.
        last = ties.last().cloned();
        found.extend(ties.into_iter().map(|tie| (tie, entry.place)));
    }
    for shown in impression
        .exhibited
        .iter()
        .filter(|shown| shown.is_certain())
    {
        // Many exhibits may stand in one room, or be "hors catalogue".
        if let Some(at) = shown.at.as_deref().and_then(plain_number) {
            let exhibition = shown.exhibition.value.clone();
            let tie = Tie::Exhibit { exhibition, at };
            found.push((tie, shown.exhibition.place));
        }
    }
    for sighting in &impression.sightings {
        if let (Some(cite), Some(at)) = (&sighting.cite, &sighting.at) {
            let tie = Tie::Page {
                cite: cite.value.clone(),
                at: at.trim().to_owned(),
            };
            found.push((tie, sighting.place));
        }
    }
    (found, last)
}

/// The number of an edition and its size; where the numbering gives no size, the declared one.
fn number(design: &Design, impression: &Impression) -> Option<(Tie, Place)> {
    let written = impression.numbering.as_ref()?;
    let Some(Numbering::Edition(number)) = read_numbering(&written.value) else {
        return None;
    };
    let declared = || {
        let printing = design.printing(only_printing(impression)?)?;
        printing.edition.own().copied()
    };
    let tie = Tie::Number {
        is_roman: number.is_roman,
        number: number.number,
        of: number.of.or_else(declared),
    };
    Some((tie, written.place))
}

/// The present and former holders, and the numbers they gave. A missing number means something only for a
/// holder that numbers what it has.
fn held(facts: &CatalogueFacts<'_>, impression: &Impression, found: &mut Vec<(Tie, Place)>) {
    let tie = |holder: &Key, number: &str| Tie::Accession {
        holder: holder.clone(),
        number: number.trim().to_owned(),
    };
    if let Some(holder) = &impression.holder {
        let key = &holder.value;
        if !facts.is_public(key) {
            let who = PartyIdentity::Record(key.clone());
            found.push((Tie::Owner(who), holder.place));
        }
        // A part of a number is one sheet; the number alone is not, where the holder gave it to several.
        let number = impression.accession_and_part();
        match number.zip(impression.accession.as_ref()) {
            Some((number, written)) => found.push((tie(key, &number), written.place)),
            None if facts.is_lasting(key) => found.push((Tie::Holder(key.clone()), holder.place)),
            None => {}
        }
    }
    for former in &impression.former_accessions {
        if let Some(holder) = &former.holder {
            found.push((tie(&holder.value, &former.number), holder.place));
        }
    }
}

fn of_mark(facts: &CatalogueFacts<'_>, design: &Design, mark: &Mark) -> Option<Tie> {
    if mark.claim.certainty() != Certainty::Certain {
        return None;
    }
    match mark.kind.as_ref()?.value {
        MarkKind::Collector => {
            let whose = mark.whose.as_ref().map(|key| &key.value);
            if whose.is_some_and(|key| facts.is_public(key)) {
                return None;
            }
            let record = mark.record.as_ref().map(|key| key.value.as_str());
            let said = mark.number.as_deref().or(record).or(mark.text.as_deref());
            if said.is_none() && whose.is_none() {
                return None;
            }
            Some(Tie::Collector {
                whose: whose.cloned(),
                mark: letters(said.unwrap_or_default()),
            })
        }
        MarkKind::Inscription if mark.medium.as_deref() != Some("printed") => {
            let text = inscribed(mark)?;
            let is_title = design
                .titles
                .iter()
                .any(|title| letters(&title.text.value).contains(&text));
            (!is_title).then_some(Tie::Inscription(text))
        }
        _ => None,
    }
}

fn of_entry(facts: &CatalogueFacts<'_>, design: &Design, entry: &ProvenanceEntry) -> Vec<Tie> {
    let is_sure = entry.certainty() < Certainty::Possible;
    let Some(who) = PartyIdentity::of(&entry.party).filter(|_| is_sure) else {
        return Vec::new();
    };
    if entry.role == PartyRole::Agent {
        let Some(date) = &entry.from else {
            return Vec::new();
        };
        let date = date.value.to_string();
        let lot = entry.lot.as_deref().map(|lot| Tie::Lot {
            agent: who.clone(),
            date: date.clone(),
            lot: lot.trim().to_owned(),
        });
        let sale = Tie::Sale { agent: who, date };
        return lot.into_iter().chain([sale]).collect();
    }
    let is_common = match &who {
        PartyIdentity::Record(key) => facts.is_public(key) || facts.is_maker(design, key),
        PartyIdentity::Named(_) => false,
    };
    if is_common {
        return Vec::new();
    }
    vec![Tie::Owner(who)]
}
