//! Custody: two parties that certainly had a sheet at the same time had two sheets.
//!
//! In: the possessions of both records. Out: one reason at most, which excludes.

use crate::same_sheet::facts::CatalogueFacts;
use crate::same_sheet::possession::Possession;
use crate::same_sheet::reason::{Bearing, Evidence, Reason};
use crate::same_sheet::record::ComparedRecord;
use keyblock_model::edtf::Day;

/// Two different owners, or two keepers, at the same certain time.
pub(super) fn compare(
    facts: &CatalogueFacts<'_>,
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    for a in &one.possessions {
        let clash = other
            .possessions
            .iter()
            .find(|b| a.role == b.role && facts.are_different(&a.who, &b.who) && are_at_once(a, b));
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

/// Whether two possessions share a moment on any reading of their dates. Hands change on a day, so the
/// first and last days of a possession may be shared with another.
fn are_at_once(a: &Possession, b: &Possession) -> bool {
    let is_within = |moments: &[(Day, Day)], possession: Option<(Day, Day)>| {
        possession.is_some_and(|(from, to)| {
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
