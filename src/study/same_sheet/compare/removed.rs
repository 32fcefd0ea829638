//! Numbers and marks recorded on one sheet that a later inspection of the other looked for and did not find.
//!
//! A mark may have been put on after an inspection that does not mention it, so only the later inspection
//! counts. Ink, stamps and seals stay; pencil can be rubbed out, and a margin can be cut off with what is in
//! it (`docs/trade.md, "Marks on a sheet"`).
//!
//! In: two records. Out: reasons against.

use crate::census::editions::{Numbering, read_numbering};
use crate::same_sheet::days::{days, inspected};
use crate::same_sheet::facts::CatalogueFacts;
use crate::same_sheet::reason::{Bearing, Evidence, Reason, turned};
use crate::same_sheet::record::ComparedRecord;
use crate::tolerance::grown;
use keyblock_model::certainty::Certainty;
use keyblock_model::edtf::Day;
use keyblock_model::impression::{Impression, Without};
use keyblock_model::mark::{Mark, MarkKind};
use keyblock_model::place::Place;
use keyblock_model::words::Side;

pub(super) fn compare(
    facts: &CatalogueFacts<'_>,
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    for (a, b, turn) in [(one, other, false), (other, one, true)] {
        let (has, lacks) = (a.impression, b.impression);
        if lacks.without.is_empty() {
            continue;
        }
        let is_trimmed = is_trimmed(has, lacks);
        let mut gone = |bearing, evidence, places| {
            let bearing = if is_trimmed { Bearing::Weighs } else { bearing };
            reasons.push(Reason::new(bearing, evidence, turned(turn, places)));
        };
        if let (Some(numbering), Some(place)) =
            (&has.numbering, searched(lacks, Without::Numbering))
            && matches!(
                read_numbering(&numbering.value),
                Some(Numbering::Edition(_))
            )
            && is_later(inspected(has), lacks)
        {
            let evidence = Evidence::NumberGone(numbering.value.clone());
            gone(Bearing::Contradicts, evidence, [numbering.place, place]);
        }
        for mark in &has.marks {
            let mark = facts.catalogue.described_mark(mark);
            let Some(kind) = mark.kind.as_ref().map(|kind| kind.value) else {
                continue;
            };
            let seen = mark.claim.date.as_ref().and_then(|d| days(&d.value));
            let Some(place) = searched(lacks, looked_for(kind)) else {
                continue;
            };
            if mark.side == Some(Side::Mount)
                || mark.claim.certainty() != Certainty::Certain
                || !is_later(seen.or_else(|| inspected(has)), lacks)
            {
                continue;
            }
            let bearing = if is_lasting(kind, &mark) {
                Bearing::Excludes
            } else {
                Bearing::Weighs
            };
            let text = mark.text.clone();
            gone(
                bearing,
                Evidence::MarkGone { kind, text },
                [mark.place, place],
            );
        }
    }
}

fn searched(impression: &Impression, what: Without) -> Option<Place> {
    let found = impression.without.iter().find(|w| w.value == what);
    found.map(|without| without.place)
}

fn looked_for(kind: MarkKind) -> Without {
    match kind {
        MarkKind::Signature => Without::Signature,
        MarkKind::Stamp => Without::Stamp,
        MarkKind::Seal => Without::Seal,
        MarkKind::Collector => Without::Collector,
        MarkKind::Inscription => Without::Inscription,
    }
}

/// Whether a sheet was last looked at after `seen`.
fn is_later(seen: Option<(Day, Day)>, lacks: &Impression) -> bool {
    matches!((seen, inspected(lacks)), (Some((_, seen)), Some((then, _))) if seen < then)
}

/// Whether a mark stays: by its medium, where one is given, else by its kind. A medium that is not listed
/// here may come off.
fn is_lasting(kind: MarkKind, mark: &Mark) -> bool {
    let Some(medium) = &mark.medium else {
        return matches!(kind, MarkKind::Stamp | MarkKind::Seal | MarkKind::Collector);
    };
    let medium = medium.to_lowercase();
    let mut words = medium.split(|c: char| !c.is_alphanumeric());
    let is_soft = words.clone().any(|word| SOFT.contains(&word));
    !is_soft && words.any(|word| FAST.contains(&word))
}

/// Words of media that can be rubbed out.
const SOFT: [&str; 4] = ["pencil", "chalk", "crayon", "charcoal"];

/// Words of media that cannot.
const FAST: [&str; 6] = ["ink", "stamp", "stamped", "blind", "embossed", "brush"];

/// Whether the sheet without it may have been trimmed: it measures smaller than the one with it, or either
/// was not measured.
fn is_trimmed(has: &Impression, lacks: &Impression) -> bool {
    match (has.sheet.size.own(), lacks.sheet.size.own()) {
        (Some(has), Some(lacks)) => grown(lacks, has) > 0,
        _ => true,
    }
}
