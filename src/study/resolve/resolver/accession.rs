//! Accession numbers, alone or with the holder.

use super::index::Index;
use crate::resolve::asked::Asked;
use crate::resolve::lookup::name_key;
use crate::resolve::names::{Accession, NumberKind};
use crate::resolve::reading::{Meant, Rank, Reading, Why};
use crate::search::words::key_of_parts;
use keyblock_model::certainty::Certainty;

/// An accession number, alone or with its holder before or behind it.
pub(super) fn by_accession(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    let all = without_accession_words(index, &asked.all);
    for accession in accessions(index, all) {
        readings.extend(sheet(index, accession, Rank::Accession, Certainty::Certain));
    }
    for at in 1..asked.all.len() {
        let (before, behind) = asked.all.split_at(at);
        for (holder, number) in [(before, behind), (behind, before)] {
            let fits = fitting_holders(index, holder);
            if fits.is_empty() {
                continue;
            }
            for accession in accessions(index, without_accession_words(index, number)) {
                let fit = fits.iter().find(|(place, _)| {
                    Some(&index.references.holders[*place].key) == accession.holder.as_ref()
                });
                if let Some((_, certainty)) = fit {
                    readings.extend(sheet(index, accession, Rank::HolderAccession, *certainty));
                }
            }
        }
    }
}

fn accessions<'i>(index: &'i Index, number: &[String]) -> &'i [Accession] {
    let found = index.references.accessions.get(&key_of_parts(number));
    found.map_or(&[], Vec::as_slice)
}

fn without_accession_words<'p>(index: &Index, parts: &'p [String]) -> &'p [String] {
    let words = index.reader.words();
    let mut left = parts;
    while left.len() > 1 && (words.accession.contains(&left[0]) || words.number.contains(&left[0]))
    {
        left = &left[1..];
    }
    left
}

/// The holders of whose names `parts` are words (certain) or beginnings of words (probable).
fn fitting_holders(index: &Index, parts: &[String]) -> Vec<(usize, Certainty)> {
    let is_telling = |part: &String| part.chars().nth(1).is_some() && is_of_letters(part);
    if !parts.iter().any(is_telling) {
        return Vec::new();
    }
    let fit = |words: &Vec<String>| {
        let mut fit = Certainty::Certain;
        for part in parts {
            let begins = |word: &String| word.starts_with(part.as_str());
            if words.contains(part) {
                continue;
            }
            if !is_telling(part) || !words.iter().any(begins) {
                return None;
            }
            fit = Certainty::Probable;
        }
        Some(fit)
    };
    let holders = index.lookup.holders.iter().enumerate();
    holders
        .filter_map(|(at, words)| Some((at, fit(words)?)))
        .collect()
}

fn sheet(
    index: &Index,
    accession: &Accession,
    rank: Rank,
    certainty: Certainty,
) -> Option<Reading> {
    let design = index
        .lookup
        .keys
        .get(&name_key(accession.impression.design.as_str()))?;
    let design = design.iter().find(|keyed| !keyed.is_former)?.design;
    let holder = accession.holder.as_ref();
    let holder = holder.and_then(|key| {
        let holder = index.references.holders.iter().find(|h| h.key == *key)?;
        holder.names.first().cloned()
    });
    let why = match (accession.kind, accession.is_bare) {
        (NumberKind::Elsewhere, _) => Why::Elsewhere,
        (NumberKind::Former, _) => Why::FormerAccession(holder),
        (NumberKind::Present, true) => Why::BareAccession(holder),
        (NumberKind::Present, false) => Why::Accession(holder),
    };
    let of_form = if accession.is_bare {
        Certainty::Probable
    } else {
        Certainty::Certain
    };
    let meant = Meant::Impression(design, accession.impression.number);
    let reading = Reading::certain(meant, rank, why)
        .at_most(certainty)
        .at_most(of_form);
    Some(index.on_its_page(reading))
}

fn is_of_letters(part: &str) -> bool {
    part.chars().next().is_some_and(char::is_alphabetic)
}
