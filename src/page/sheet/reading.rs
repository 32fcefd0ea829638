//! The catalogue's reading of a sheet with its grounds, and its alternatives.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Identification;
use crate::page::phrases::claims;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, sentence_start};

/// A reading with its grounds, and its alternatives.
#[derive(Serialize)]
pub(super) struct ReadingView {
    text: CleanHtml,
    or: Vec<CleanHtml>,
}

/// The view of a reading.
pub(super) fn reading_view(
    here: &Here<'_>,
    design: &Design,
    reading: &Identification,
) -> ReadingView {
    ReadingView {
        text: argued(here, design, reading),
        or: reading
            .or
            .iter()
            .map(|other| argued(here, design, other))
            .collect(),
    }
}

/// A reading with certainty, basis and reasons.
fn argued(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    let what = readings::full(here, design, reading);
    let certainty = CleanHtml::text(claims::certainty(here, reading.claim.certainty()));
    let ground = claims::ground(here, &reading.claim);
    let sure = CleanHtml::join([&certainty, &ground], ", ");
    as_sentences(&[
        sentence_start(&what).then(": ").and(&sure),
        CleanHtml::text(reading.why.as_deref().unwrap_or_default()),
    ])
}
