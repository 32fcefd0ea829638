//! Opinions of others on a sheet: in their words, and in this catalogue's numbers where they follow
//! another catalogue.

use crate::model::design::Design;
use crate::model::impression::{Impression, Opinion};
use crate::model::literature::Relation;
use crate::page::phrases::claims;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::opinions::in_our_terms;

/// A line for each opinion.
pub(crate) fn all(here: &Here<'_>, design: &Design, impression: &Impression) -> Vec<CleanHtml> {
    let words = here.words();
    impression
        .opinions
        .iter()
        .map(|opinion| {
            let reading = &opinion.reading;
            let by = reading
                .claim
                .by
                .as_ref()
                .map_or_else(CleanHtml::empty, |by| here.person_or_holder(&by.value));
            let after = opinion.after.as_ref().map_or_else(CleanHtml::empty, |key| {
                words.html(
                    "after-work",
                    None,
                    &[("work", &here.work(&key.value, None))],
                )
            });
            let who = CleanHtml::join([&by, &after], ", ");
            let quoted = opinion.said.as_ref().map_or_else(CleanHtml::empty, |said| {
                words.html("quoted", None, &[("text", &CleanHtml::text(said))])
            });
            let own_words = readings::full(here, design, reading);
            let translated = translated(here, design, opinion);
            let what = CleanHtml::join([&quoted, &own_words, &translated], ", ");
            let mut claim = reading.claim.clone();
            claim.by = None;
            let what = claims::with_claim(here, what, &claim);
            let line = CleanHtml::join([&who, &what], ": ");
            as_sentences(&[
                line,
                CleanHtml::text(reading.why.as_deref().unwrap_or_default()),
            ])
        })
        .collect()
}

/// "here *iv* or *v*": another catalogue's number as states of this one, or a note that the concordance
/// does not have it.
fn translated(here: &Here<'_>, design: &Design, opinion: &Opinion) -> CleanHtml {
    let words = here.words();
    if opinion.after.is_none() || opinion.said.is_none() {
        return CleanHtml::empty();
    }
    let Some(found) = in_our_terms(design, opinion) else {
        return CleanHtml::text(words.word("number-not-in-concordance"));
    };
    if found.relation == Relation::Error {
        return CleanHtml::text(words.word("number-is-an-error"));
    }
    let states = found
        .states
        .iter()
        .map(|key| here.state_of(&design.key, key));
    let printings = found
        .printings
        .iter()
        .map(|key| CleanHtml::text(&here.printing_name(design, key)));
    let ours: Vec<CleanHtml> = states.chain(printings).collect();
    let ours = enumeration::either(here, &ours);
    words.html("in-our-terms", None, &[("ours", &ours)])
}
