//! Numbers of earlier catalogues: "First List 9".

use super::index::Index;
use crate::numerals::{from_roman, roman};
use crate::resolve::asked::Asked;
use crate::resolve::names::EarlierRow;
use crate::resolve::reading::{Meant, Rank, Reading, Why};
use keyblock_model::certainty::Certainty;
use keyblock_model::literature::Relation;

/// A number of an earlier catalogue, behind the name of that catalogue or alone.
pub(super) fn by_earlier_number(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    for end in (1..asked.all.len()).rev() {
        let (name, number) = asked.all.split_at(end);
        let works = index.lookup.works.get(&name.join("."));
        let before = readings.len();
        for work in works.into_iter().flatten() {
            if let Some(row) = row(index, *work, number) {
                row_readings(index, *work, row, Rank::Earlier, readings);
            }
        }
        if readings.len() > before {
            return;
        }
    }
    let lone = index.lookup.lone_rows.get(&asked.number.join("."));
    for (work, row) in lone.into_iter().flatten() {
        row_readings(index, *work, *row, Rank::EarlierAlone, readings);
    }
}

/// The number of a work, as it stands there or with another numeral or without the total: "III", "state 3",
/// "iii/iv".
pub(super) fn row(index: &Index, work: usize, number: &[String]) -> Option<usize> {
    let rows = index.lookup.rows.get(work)?;
    let words = index.reader.words();
    let mut number = number;
    while number.len() > 1 && words.number.contains(&number[0]) {
        number = &number[1..];
    }
    let find = |parts: &[String]| rows.get(&parts.join(".")).copied();
    if let Some(row) = find(number) {
        return Some(row);
    }
    let is_word = |part: &&String| words.state.contains(part);
    let plain: Vec<String> = number.iter().filter(|p| !is_word(p)).cloned().collect();
    let has_word = plain.len() < number.len();
    let other_numeral = |parts: &[String]| {
        let (last, before) = parts.split_last()?;
        let other = match from_roman(last) {
            Some(place) => place.to_string(),
            None => roman(last.parse().ok()?),
        };
        let parts = before.iter().cloned().chain([other]);
        find(&parts.collect::<Vec<_>>())
    };
    let without_total = match plain.as_slice() {
        [before @ .., numeral, _] if from_roman(numeral).is_some() => &plain[..=before.len()],
        _ => &[][..],
    };
    find(&plain)
        .or_else(|| {
            if has_word {
                other_numeral(&plain)
            } else {
                None
            }
        })
        .or_else(|| find(without_total))
}

/// Ours for a number of an earlier catalogue, and the number itself where it stands in the list of that.
fn row_readings(index: &Index, work: usize, row: usize, rank: Rank, readings: &mut Vec<Reading>) {
    let names = &index.references.works[work];
    let number: &EarlierRow = &names.rows[row];
    let own = if rank == Rank::Earlier {
        Certainty::Certain
    } else {
        Certainty::Probable
    };
    for ours in &number.ours {
        let meant = match (ours.state, ours.printing) {
            (Some(state), _) => Meant::State(ours.design, state),
            (None, Some(printing)) => Meant::Printing(ours.design, printing),
            (None, None) => Meant::Design(ours.design),
        };
        let certainty = match ours.relation {
            Relation::Same | Relation::PartOfOurs | Relation::NotAState => Certainty::Certain,
            Relation::CoversOurs if number.ours.len() == 1 => Certainty::Probable,
            Relation::CoversOurs | Relation::Error => Certainty::Possible,
        };
        let why = Why::Earlier(names.short.clone(), number.cited(), ours.relation);
        let reading = Reading::certain(meant, rank, why);
        readings.push(reading.at_most(own).at_most(certainty));
    }
    let itself = Reading::certain(Meant::Row(work, row), rank, Why::Row);
    readings.push(itself.at_most(own));
}
