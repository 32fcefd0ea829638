//! The theme's words for evidence: how well what was seen fits, what a point says, and which kind of evidence it is.
//! The lists of words are those of the study (`grades`) and the model.

use std::fmt::Display;

use crate::model::point::EvidenceKind;
use crate::model::words::ClosedList;
use crate::page::setting::words::Words;
use crate::study::grades::{Bearing, Fit};

/// "far behind".
pub(crate) fn fit(words: &Words, fit: Fit) -> String {
    words.word(&fit_id(fit)).to_owned()
}

/// "excludes".
pub(crate) fn bearing(words: &Words, bearing: Bearing) -> String {
    words.listed("bearing", bearing).to_owned()
}

/// "matrix".
pub(crate) fn kind(words: &Words, kind: EvidenceKind) -> String {
    words.listed("evidence", kind).to_owned()
}

/// The identifiers of all these words, for a script that says them.
pub(crate) fn all_ids() -> impl Iterator<Item = String> {
    let fits = Fit::ALL.into_iter().map(|(fit, ..)| fit_id(fit));
    fits.chain(ids::<Bearing>("bearing"))
        .chain(ids::<EvidenceKind>("evidence"))
}

fn fit_id(fit: Fit) -> String {
    format!("fit-{}", fit.word())
}

fn ids<T: ClosedList + Display>(list: &str) -> impl Iterator<Item = String> {
    T::ALL.iter().map(move |value| format!("{list}-{value}"))
}
