//! Readings in words: which state and printing a sheet is taken to be.

use super::claims;
use super::enumeration;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::vocabulary::List;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, sentence_start};
use crate::study::agree::contradiction;

/// A reading in full: "state *iii*/iv. Printed by the artist", with links; the first letter as within a sentence.
pub(crate) fn full(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    let words = here.words();
    let state = match &reading.state {
        None => CleanHtml::empty(),
        Some(StateReading::OneOf(states)) => {
            let states: Vec<_> = states
                .iter()
                .map(|s| here.state_of(&design.key, &s.value))
                .collect();
            let joined = enumeration::either(here, &states);
            let is_only = states.len() == 1 && design.standing_states().count() == 1;
            if is_only {
                joined
            } else {
                words.html("state-reading", None, &[("state", &joined)])
            }
        }
        Some(StateReading::ByMatrix(pairs)) => by_matrix(here, design, pairs),
    };
    let printings: Vec<_> = reading
        .printing
        .iter()
        .map(|p| {
            let to = here.href_part(
                &Address::Design(design.key.clone()),
                Fragment::Printing(&p.value),
            );
            CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, &p.value)))
        })
        .collect();
    let variant = reading.variant.as_ref().map_or_else(CleanHtml::empty, |v| {
        let to = here.href_part(
            &Address::Design(design.key.clone()),
            Fragment::Variant(&v.value),
        );
        let name = CleanHtml::link(&to, &CleanHtml::text(&v.value.as_str().replace('-', " ")));
        words.html("variant-reading", None, &[("variant", &name)])
    });
    let kind = reading.kind.as_ref().map_or_else(CleanHtml::empty, |k| {
        CleanHtml::text(&here.term(List::Kinds, k.value.as_str()))
    });
    let parts = [state, enumeration::either(here, &printings), variant, kind];
    let mut said = CleanHtml::empty();
    for part in parts.iter().filter(|part| !part.is_empty()) {
        said = if said.is_empty() {
            part.clone()
        } else {
            said.then(". ").and(&sentence_start(part))
        };
    }
    said
}

/// The reading of a sheet in a caption or a list: "*iii*. Printed by the artist (probable)"; empty
/// where it is not identified.
pub(crate) fn short(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let Some(reading) = &impression.identified else {
        return CleanHtml::empty();
    };
    let plain = plain(here, design, reading);
    if plain.is_empty() {
        plain
    } else {
        qualified(here, design, impression, reading, &plain)
    }
}

/// A reading in words, followed by its certainty where it is not certain, and by a note where an
/// observation of the sheet contradicts it.
pub(crate) fn qualified(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    reading: &Identification,
    said: &CleanHtml,
) -> CleanHtml {
    let doubts = doubts(here, design, impression, reading);
    CleanHtml::join([said, &doubts], " ")
}

/// "(probable) (against what was seen)": the certainty of a reading that is not certain, and a note where an
/// observation of the sheet contradicts it. Empty for a certain reading that nothing contradicts.
pub(crate) fn doubts(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    reading: &Identification,
) -> CleanHtml {
    let certainty = match reading.claim.certainty() {
        Certainty::Certain => None,
        doubted => Some(claims::certainty(here, doubted)),
    };
    let against =
        contradiction(design, impression).map(|_| here.words().word("against-what-was-seen"));
    let doubts: Vec<CleanHtml> = [certainty, against]
        .into_iter()
        .flatten()
        .map(|doubt| CleanHtml::text("(").then(doubt).then(")"))
        .collect();
    CleanHtml::join(&doubts, " ")
}

/// The same without certainty: "*iii*. Printed by the artist".
pub(crate) fn plain(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    CleanHtml::join(
        [
            &state_alone(here, design, reading),
            &CleanHtml::text(&printing_alone(here, design, reading)),
        ],
        ". ",
    )
}

/// The state or states of a reading, without totals and links.
pub(crate) fn state_alone(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    match &reading.state {
        None => CleanHtml::empty(),
        Some(StateReading::OneOf(states)) => {
            let states: Vec<_> = states
                .iter()
                .map(|s| here.numeral(&design.key, &s.value))
                .collect();
            enumeration::either(here, &states)
        }
        Some(StateReading::ByMatrix(pairs)) => by_matrix(here, design, pairs),
    }
}

/// The printing or printings of a reading, without links.
pub(crate) fn printing_alone(here: &Here<'_>, design: &Design, reading: &Identification) -> String {
    let names: Vec<_> = reading
        .printing
        .iter()
        .map(|p| CleanHtml::text(&here.printing_name(design, &p.value)))
        .collect();
    enumeration::either(here, &names).plain()
}

fn by_matrix(
    here: &Here<'_>,
    design: &Design,
    pairs: &[(
        crate::model::place::Placed<crate::model::key::Key>,
        crate::model::place::Placed<crate::model::key::Key>,
    )],
) -> CleanHtml {
    let parts: Vec<_> = pairs
        .iter()
        .map(|(matrix, state)| {
            let state = here.numeral(&design.key, &state.value);
            let matrix = CleanHtml::text(&here.matrix_name(design, &matrix.value));
            here.words().html(
                "state-of-matrix",
                None,
                &[("matrix", &matrix), ("state", &state)],
            )
        })
        .collect();
    CleanHtml::join(&parts, ", ")
}

/// A reading and its alternatives.
pub(crate) fn all(reading: &Identification) -> Vec<&Identification> {
    let mut found = vec![reading];
    let mut at = 0;
    while let Some(next) = found.get(at).copied() {
        found.extend(&next.or);
        at += 1;
    }
    found
}
