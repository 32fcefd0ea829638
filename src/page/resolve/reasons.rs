//! The words of references: those that people write beside numbers, and why a reference is read so.

use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::setting::words::{Argument, Words};
use crate::study::resolve::names::{QueryWords, References};
use crate::study::resolve::reading::{Meant, Reading};
use crate::study::search::words::number_parts;

/// The words that people write beside numbers.
pub(crate) fn query_words(words: &Words) -> QueryWords {
    let of = |id: &str| -> Vec<String> {
        let all = words.word(id).split_whitespace();
        all.flat_map(number_parts).collect()
    };
    QueryWords {
        number: of("search-number-words"),
        state: of("resolve-state-words"),
        accession: of("resolve-accession-words"),
        edition: of("resolve-edition-words"),
        only_state: words.word("only-state").to_owned(),
    }
}

/// Why a reference is read so, in words: "former accession number, Harbour Museum".
pub(crate) fn why(words: &Words, references: &References, reading: &Reading) -> String {
    let why = &reading.why;
    let arguments: Vec<(&str, Argument<'_>)> = why
        .arguments()
        .into_iter()
        .map(|(name, text)| (name, Argument::Text(text)))
        .collect();
    let mut told = words.with(&format!("resolve-why-{}", why.word()), &arguments);
    if let Some(relation) = why.relation() {
        let part = match reading.meant {
            Meant::State(..) => NumberedPart::State,
            Meant::Printing(..) => NumberedPart::Printing,
            _ => NumberedPart::Design,
        };
        told = format!(
            "{told} ({})",
            earlier_numbers::relation(words, relation, part)
        );
    }
    if let Some(holder) = why.holder() {
        told = format!("{told}, {holder}");
    }
    if let (Some(record), Meant::Impression(design, _)) = (reading.record, reading.meant)
        && let Some(design) = references.designs.get(design)
    {
        let record = format!("{}.{record}", design.number);
        let joined = words.with("resolve-why-joined", &[("record", Argument::Text(&record))]);
        told = format!("{told}; {joined}");
    }
    if let Some(stands) = references.stands(reading.meant) {
        told = format!("{told}; {}", words.listed("stands", stands.how));
        let see: Vec<String> = stands
            .see
            .iter()
            .map(|r| references.short_name(r))
            .collect();
        if !see.is_empty() {
            let see = see.join(", ");
            let see = words.with("resolve-see", &[("records", Argument::Text(&see))]);
            told = format!("{told}, {see}");
        }
    }
    told
}
