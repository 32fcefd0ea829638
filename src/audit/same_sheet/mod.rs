//! Rules on records of one sheet: those that may be one and do not say so ([`unsettled`]), those said both to be one
//! and not to be one ([`contradiction`]), those said to be one although what they record contradicts it ([`joined`]), and
//! too many for one ([`too_often`]). [`wording`] gives a reason in words, for this and for `cli`.

mod contradiction;
mod joined;
mod private;
mod too_often;
mod wording;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::study::Studies;
use crate::study::same_sheet::reason::{Bearing, Evidence, Tie};
use crate::study::same_sheet::{RecordPair, pairs};

pub(super) use contradiction::same_and_not;
pub(super) use joined::{contradicted, of_two_designs};
pub(super) use too_often::too_often;
pub use wording::{reason, reason_in_full};

/// How many reasons a message gives. The editors' page has all of them.
const REASONS_GIVEN: usize = 3;

/// Two records are suggested to be one sheet, and neither says that they may be (docs/definitions.md,
/// "Records that may be one sheet"). Where both have one number of one printing, the finding is that of
/// `editions::number_twice` instead.
pub(super) fn unsettled(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for pair in pairs(catalogue, &studies.groups).values().flatten() {
        if pair.is_suggested() && !pair.is_stated && !is_numbered_alike(pair) {
            findings.extend(finding(catalogue, studies, pair));
        }
    }
}

fn is_numbered_alike(pair: &RecordPair) -> bool {
    pair.with(Bearing::Proves)
        .any(|reason| matches!(reason.evidence, Evidence::Shared(Tie::Number { .. })))
}

fn finding(catalogue: &Catalogue, studies: &Studies, pair: &RecordPair) -> Option<Finding> {
    let [one, other] = &pair.records;
    let strongest: Vec<_> = pair
        .with(Bearing::Proves)
        .chain(pair.with(Bearing::Speaks))
        .take(REASONS_GIVEN)
        .collect();
    let words: Vec<String> = strongest
        .iter()
        .map(|reason| wording::reason(catalogue, studies, &pair.records, reason))
        .collect();
    let [first, second] = [one, other].map(|sheet| catalogue.sheet_number(sheet));
    let [here, there] = strongest.first()?.places;
    Some(
        Finding::new(
            Code::MayBeOneSheet,
            there,
            format!("{second} may be one sheet with {first}: {}", words.join("; ")),
        )
        .saying(second)
        .beside(here, first)
        .help(format!(
            "look at both, then write `same_as`, `maybe_same_as` or `not_same_as` in one of them, with a `why`; \
             `keyblock census {} --doubts` shows all that speaks for and against",
            one.design
        )),
    )
}
