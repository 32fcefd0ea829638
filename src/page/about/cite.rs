//! How to cite: the catalogue, an entry, an impression, with examples from this catalogue.

use super::catalogue_notes;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::page::phrases::imprint;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::page::texts::long_text::TextPart;

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let siglum = here.public().settings.siglum.value.as_str();
    let mut parts = vec![
        TextPart::new(here, "cite-whole", &CleanHtml::empty()).with_quotable(
            words.word("cite-in-full"),
            full(here, None, &Address::Opening),
        ),
    ];
    let example = example(here);
    if let Some((design, impression)) = example {
        let short = format!("{siglum} {}", design.number);
        let listing = CleanHtml::join(
            [
                &CleanHtml::text(&short)
                    .then(" ")
                    .and(&state(here, design, impression)),
                &CleanHtml::text(&edition_in_brackets(here)),
            ],
            " ",
        );
        parts.push(
            TextPart::of_word(here, "cite-design")
                .with_quotable(words.word("cite-in-short"), listing)
                .with_quotable(
                    words.word("cite-in-full"),
                    full(here, Some(&short), &Address::Design(design.key.clone())),
                ),
        );
        let handle = format!("{siglum} {}", here.sheet_number(&impression.key));
        parts.push(
            TextPart::of_word(here, "cite-impression")
                .with_quotable(words.word("cite-in-short"), CleanHtml::text(&handle))
                .with_quotable(
                    words.word("cite-in-full"),
                    full(
                        here,
                        Some(&handle),
                        &Address::Impression(impression.key.clone()),
                    ),
                ),
        );
    }
    let unknown = words.with("cite-unknown-text", &[("siglum", Argument::Text(siglum))]);
    parts.push(TextPart::new(
        here,
        "cite-unknown",
        &CleanHtml::text(&unknown),
    ));
    if imprint::CitedEdition::of(here.book).is_revised {
        parts.push(TextPart::of_word(here, "cite-revised"));
    }
    let more = ["cite-address", "cite-files", "cite-data", "cite-picture"];
    parts.extend(more.map(|heading| TextPart::of_word(here, heading)));
    catalogue_notes::leaf(here, Overview::Cite, "pages/cite.html", parts)
}

fn full(here: &Here<'_>, cited: Option<&str>, address: &Address) -> CleanHtml {
    let public = here.public();
    let canonical = address.absolute(&public.settings.address.value);
    imprint::citation(cited, here.book, &canonical)
}

/// The example: the first sheet identified with a state, of the design with the most states; else the
/// first sheet.
fn example<'a>(here: &Here<'a>) -> Option<(&'a Design, &'a Impression)> {
    let public = here.public();
    let order = here.book.studies.order.keys();
    let mut designs: Vec<&Design> = order.iter().filter_map(|k| public.designs.get(k)).collect();
    // The sort is stable: equals keep the order of the catalogue.
    designs.sort_by_key(|d| std::cmp::Reverse(d.standing_states().count()));
    let identified = designs
        .iter()
        .flat_map(|d| d.impressions.values().map(|i| (*d, i)))
        .find(|(_, i)| !i.standing.is_withdrawn() && has_one_state(i));
    identified.or_else(|| {
        designs
            .iter()
            .find_map(|d| Some((*d, d.impressions.values().next()?)))
    })
}

fn has_one_state(impression: &Impression) -> bool {
    let reading = impression
        .identified
        .as_ref()
        .and_then(|i| i.state.as_ref());
    matches!(reading, Some(StateReading::OneOf(states)) if states.len() == 1)
}

/// "iii/v", without a link, as in a listing.
fn state(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let reading = impression
        .identified
        .as_ref()
        .and_then(|i| i.state.as_ref());
    let Some(StateReading::OneOf(states)) = reading else {
        return CleanHtml::empty();
    };
    let numeral = states
        .first()
        .and_then(|s| here.book.studies.numeral(&design.key, &s.value));
    match numeral {
        Some(numeral) if numeral.is_only() => CleanHtml::text(here.words().word("only-state")),
        Some(numeral) => CleanHtml::text(&numeral.to_string()),
        None => CleanHtml::empty(),
    }
}

/// "(edition 2, 15 October 2026)"; empty where neither is recorded.
fn edition_in_brackets(here: &Here<'_>) -> String {
    let edition = imprint::edition(here.book);
    if edition.is_empty() {
        edition
    } else {
        format!("({edition})")
    }
}
