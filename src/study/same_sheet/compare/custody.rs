//! Custody: two who certainly had a sheet at once had two sheets.

use crate::model::edtf::Day;
use crate::study::same_sheet::facts::Ground;
use crate::study::same_sheet::possession::Spell;
use crate::study::same_sheet::reason::{Bearing, Evidence, Reason};
use crate::study::same_sheet::record::Record;

/// Two different owners, or two keepers, at the same certain time.
pub(super) fn compare(
    ground: &Ground<'_>,
    one: &Record<'_>,
    other: &Record<'_>,
    reasons: &mut Vec<Reason>,
) {
    for a in &one.spells {
        let clash = other.spells.iter().find(|b| {
            a.role == b.role && ground.are_different(&a.who, &b.who) && are_at_once(a, b)
        });
        if let Some(b) = clash {
            let evidence = Evidence::TwoHands {
                role: a.role,
                who: [a.who.clone(), b.who.clone()],
            };
            let places = [a.place, b.place];
            reasons.push(Reason::new(Bearing::Excludes, evidence, places));
            return;
        }
    }
}

/// Whether two spells share a moment on any reading of their dates. Hands change on a day, so the
/// first and last days of a spell are nobody's alone.
fn are_at_once(a: &Spell, b: &Spell) -> bool {
    let is_within = |moments: &[(Day, Day)], spell: Option<(Day, Day)>| {
        spell.is_some_and(|(from, to)| {
            let mut moments = moments.iter();
            moments.any(|(first, last)| from < *first && *last < to)
        })
    };
    let overlap = match (a.lasted, b.lasted) {
        (Some(a), Some(b)) => a.0.max(b.0) < a.1.min(b.1),
        _ => false,
    };
    overlap || is_within(&a.moments, b.lasted) || is_within(&b.moments, a.lasted)
}
