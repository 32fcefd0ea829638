//! Facts that both records state word for word, weighed by how few sheets of the design share them;
//! and the trace of a lost sheet, which may continue in another record.
//!
//! In: two records and the ties of all sheets of the design. Out: reasons for.

use crate::census::editions::only_printing;
use crate::same_sheet::facts::CatalogueFacts;
use crate::same_sheet::reason::{Bearing, Evidence, PartyIdentity, Reason, Tie, turned};
use crate::same_sheet::record::ComparedRecord;
use crate::same_sheet::tie_index::{RARE, TieIndex};

pub(super) fn compare(
    facts: &CatalogueFacts<'_>,
    tie_index: &TieIndex,
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    for (tie, place) in &one.ties {
        let Some(there) = other.place_of(tie) else {
            continue;
        };
        // A more exact tie gives the same reason already: the lot of the sale, the owner's own mark.
        let is_told = match tie {
            Tie::Owner(PartyIdentity::Record(owner)) => one.ties.iter().any(|(known, _)| {
                matches!(known, Tie::Collector { whose: Some(whose), .. } if whose == owner)
                    && other.place_of(known).is_some()
            }),
            Tie::Sale { agent, date } => one.ties.iter().any(|(known, _)| {
                matches!(known, Tie::Lot { agent: a, date: d, .. } if a == agent && d == date)
                    && other.place_of(known).is_some()
            }),
            _ => false,
        };
        if is_told {
            continue;
        }
        let of_lost =
            |record: &ComparedRecord<'_>| record.is_lost && record.last.as_ref() == Some(tie);
        let is_last = of_lost(one) || of_lost(other);
        reasons.push(weighed(
            facts,
            tie_index,
            [one, other],
            tie,
            is_last,
            [*place, there],
        ));
    }
    for (a, b, turn) in [(one, other, false), (other, one, true)] {
        numbered_by_one(tie_index, a, b, turn, reasons);
        follows(a, b, turn, reasons);
    }
}

fn weighed(
    facts: &CatalogueFacts<'_>,
    tie_index: &TieIndex,
    records: [&ComparedRecord<'_>; 2],
    tie: &Tie,
    is_last: bool,
    places: [keyblock_model::place::Place; 2],
) -> Reason {
    let count = tie_index.count(tie);
    let is_rare = count <= RARE;
    let bearing = match tie {
        Tie::Accession { .. } | Tie::Lot { .. } | Tie::Exhibit { .. } => Bearing::Proves,
        Tie::Number { of, .. } => {
            let printings = records.map(|record| only_printing(record.impression));
            let is_of_one = printings[0].is_some() && printings[0] == printings[1];
            if of.is_some() && is_of_one {
                Bearing::Proves
            } else {
                Bearing::Speaks
            }
        }
        Tie::Collector { .. } if count == 2 => Bearing::Proves,
        Tie::Inscription(text) if count == 2 && !facts.is_formula(text) => Bearing::Proves,
        Tie::Owner(_) if is_rare && is_last => Bearing::Proves,
        // A party that has both now has two sheets, or one recorded twice, so this is no evidence.
        Tie::Owner(who) if records.iter().all(|record| record.is_with(who)) => Bearing::Fits,
        Tie::Holder(_) => Bearing::Fits,
        Tie::Sale { date, .. } if count == 2 && is_last && is_a_day(date) => Bearing::Proves,
        _ if is_rare => Bearing::Speaks,
        _ => Bearing::Fits,
    };
    let evidence = if is_last && matches!(tie, Tie::Owner(_) | Tie::Sale { .. }) {
        Evidence::LastKnown(tie.clone())
    } else {
        Evidence::Shared(tie.clone())
    };
    Reason::new(bearing, evidence, places)
}

/// Whether a date names one day: a house may hold many sales in a year.
fn is_a_day(date: &str) -> bool {
    let date = keyblock_model::edtf::Date::parse(date).ok();
    date.and_then(|date| crate::same_sheet::days::days(&date))
        .is_some_and(|(first, last)| first == last)
}

/// One record has no number with the holder that gave the other a number: it may be an old report of
/// that sheet.
fn numbered_by_one(
    tie_index: &TieIndex,
    bare: &ComparedRecord<'_>,
    numbered: &ComparedRecord<'_>,
    turn: bool,
    reasons: &mut Vec<Reason>,
) {
    let Some((tie, place)) = bare.ties.iter().find(|(t, _)| matches!(t, Tie::Holder(_))) else {
        return;
    };
    let there = numbered.ties.iter().find(|(t, _)| match (t, tie) {
        (Tie::Accession { holder, .. }, Tie::Holder(held)) => holder == held,
        _ => false,
    });
    if let Some((_, there)) = there {
        let bearing = if tie_index.count(tie) <= RARE {
            Bearing::Speaks
        } else {
            Bearing::Fits
        };
        let evidence = Evidence::Shared(tie.clone());
        let places = turned(turn, [*place, *there]);
        reasons.push(Reason::new(bearing, evidence, places));
    }
}

/// The trace of a lost sheet ends before that of the other begins.
fn follows(
    lost: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    turn: bool,
    reasons: &mut Vec<Reason>,
) {
    let (Some((_, ends)), Some((begins, _))) = (lost.known, other.known) else {
        return;
    };
    if lost.is_lost && ends < begins {
        let evidence = Evidence::Follows { ends, begins };
        let places = turned(turn, [lost.end_place(), other.start_place()]);
        reasons.push(Reason::new(Bearing::Speaks, evidence, places));
    }
}
