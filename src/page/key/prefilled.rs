//! The address of a key with the observations of a record filled in.

use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::point::{Observation, ObservedValue, PointKind};
use crate::model::words::ClosedList as _;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::study::identify::is_printed;

/// The link to the key with the observations of a sheet: `…/key/#see=moon=present`.
pub(crate) fn examined(here: &Here<'_>, design: &Design, impression: &Impression) -> String {
    let answers: Vec<String> = impression
        .observed
        .iter()
        .filter_map(|observation| answer(design, impression, observation))
        .collect();
    let key = here.href(&Address::IdentificationKey(design.key.clone()));
    match answers.as_slice() {
        [] => key,
        answers => format!("{key}#see={}", answers.join(",")),
    }
}

/// An observation as `identify.js` reads it: "lamps=2|3:probable".
fn answer(design: &Design, impression: &Impression, observation: &Observation) -> Option<String> {
    let point = design.point(&observation.point.value)?;
    let (sign, values) = match &observation.seen {
        ObservedValue::OneOf(values) => ("=", values),
        ObservedValue::NoneOf(values) => ("!=", values),
        ObservedValue::NotVisible => return Some(format!("{}=not-visible", point.key.value)),
        ObservedValue::NotApplicable => {
            return Some(format!("{}=not-applicable", point.key.value));
        }
    };
    let is_measure = matches!(point.kind, PointKind::Measure { .. });
    let is_told = is_printed(impression, point) && !values.is_empty();
    if !is_told || (is_measure && (sign == "!=" || values.len() > 1)) {
        return None;
    }
    let values: Vec<String> = values.iter().map(|v| v.value.to_string()).collect();
    let sure = match observation.claim.certainty() {
        Certainty::Certain => String::new(),
        doubt => format!(":{}", doubt.word()),
    };
    Some(format!(
        "{}{sign}{}{sure}",
        point.key.value,
        values.join("|")
    ))
}
