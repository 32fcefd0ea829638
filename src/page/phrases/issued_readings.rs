//! What an edition said of a sheet and of a state, in words: its identification with the numerals of that edition.

use crate::model::design::Design;
use crate::model::issued_address::IssuedAddress;
use crate::model::issued_reading::{IssuedReading, IssuedReadings};
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::{Aspect, Register};
use crate::model::vocabulary::List;
use crate::page::phrases::{claims, enumeration};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;

/// A numeral as the register writes it: "iii/iv", or the word for an only state.
pub(crate) fn numeral_text(here: &Here<'_>, numeral: &str) -> CleanHtml {
    match numeral.split_once('/') {
        Some(("i", "i")) => CleanHtml::text(here.words().word("only-state")),
        Some((place, of)) => CleanHtml::span("numeral", &CleanHtml::text(place))
            .then("/")
            .then(of),
        None => CleanHtml::text(numeral),
    }
}

/// "state iii/iv" as an edition read; the key in words of a state that had no numeral then.
pub(crate) fn state_name(
    here: &Here<'_>,
    register: &Register,
    edition: usize,
    design: &Key,
    key: &Key,
) -> CleanHtml {
    let address = IssuedAddress::Part(design.clone(), DesignPart::State, key.clone());
    let entry = register.entry(&address);
    let numeral = entry.map_or("", |entry| entry.at(Aspect::Numeral, edition));
    if numeral == "i/i" {
        return numeral_text(here, numeral);
    }
    let numeral = if numeral.is_empty() {
        CleanHtml::text(&key.as_str().replace('-', " "))
    } else {
        numeral_text(here, numeral)
    };
    here.words()
        .html("state-reading", None, &[("state", &numeral)])
}

/// An identification as an edition read: "state ii/iii, printed by the artist (probable)".
pub(crate) fn reading(
    here: &Here<'_>,
    register: &Register,
    edition: usize,
    design: &Key,
    written: &str,
) -> CleanHtml {
    let record = here.public().designs.get(design);
    let readings = written.parse::<IssuedReadings>().unwrap_or_default();
    let readings: Vec<CleanHtml> = readings
        .0
        .iter()
        .map(|one| one_reading(here, register, edition, design, record, one))
        .filter(|one| !one.is_empty())
        .collect();
    if readings.is_empty() {
        return CleanHtml::text(here.words().word("not-identified-then"));
    }
    enumeration::either(here, &readings)
}

fn one_reading(
    here: &Here<'_>,
    register: &Register,
    edition: usize,
    design: &Key,
    record: Option<&Design>,
    reading: &IssuedReading,
) -> CleanHtml {
    let words = here.words();
    let key_in_words = |key: &Key| CleanHtml::text(&key.as_str().replace('-', " "));
    let states: Vec<CleanHtml> = reading
        .states
        .iter()
        .map(|(matrix, state)| {
            let name = state_name(here, register, edition, design, state);
            match matrix {
                Some(matrix) => key_in_words(matrix).then(": ").and(&name),
                None => name,
            }
        })
        .collect();
    let is_by_matrix = reading.states.iter().any(|(matrix, _)| matrix.is_some());
    let states = if is_by_matrix {
        CleanHtml::join(&states, ", ")
    } else {
        enumeration::either(here, &states)
    };
    let printings: Vec<CleanHtml> = reading
        .printings
        .iter()
        .map(|key| match record {
            Some(record) => CleanHtml::text(&here.printing_name(record, key)),
            None => key_in_words(key),
        })
        .collect();
    let printings = enumeration::either(here, &printings);
    let variant = reading
        .variant
        .as_ref()
        .map_or_else(CleanHtml::empty, |key| {
            words.html("variant-reading", None, &[("variant", &key_in_words(key))])
        });
    let kind = reading.kind.as_ref().map_or_else(CleanHtml::empty, |key| {
        CleanHtml::text(&here.term(List::Kinds, key.as_str()))
    });
    let whole = CleanHtml::join([&states, &printings, &variant, &kind], ", ");
    match reading.certainty {
        Some(certainty) => whole
            .then(" (")
            .then(claims::certainty(here, certainty))
            .then(")"),
        None => whole,
    }
}

/// How earlier editions read a sheet, where it reads otherwise now: "edition 1: state ii/iii", a line each.
pub(crate) fn former_readings(here: &Here<'_>, sheet: &ImpressionKey) -> Vec<CleanHtml> {
    let Some(editions) = &here.book.editions else {
        return Vec::new();
    };
    let design = &sheet.design;
    let address = IssuedAddress::Record(Target::Impression(sheet.clone()));
    let present = editions.next.entry(&address);
    let Some(present) = present.filter(|entry| !entry.last(Aspect::Identified).is_empty()) else {
        return Vec::new();
    };
    let (register, next) = (editions.register(), &editions.next);
    let written = present.last(Aspect::Identified);
    let now = reading(here, next, register.editions.len(), design, written);
    let mut lines: Vec<(CleanHtml, Vec<CleanHtml>)> = Vec::new();
    let values = editions.readings.by_edition(&address, Aspect::Identified);
    for ((place, edition), written) in register.editions.iter().enumerate().zip(values) {
        if written.is_empty() {
            continue;
        }
        let then = reading(here, register, place, design, written);
        if then == now {
            continue;
        }
        let name = [("edition", Argument::Text(edition.edition.value.as_str()))];
        let name = CleanHtml::text(&here.words().with("edition", &name));
        let link = here.link(&Address::Edition(edition.key(place)), &name);
        match lines.iter_mut().find(|(said, _)| *said == then) {
            Some((_, editions)) => editions.push(link),
            None => lines.push((then, vec![link])),
        }
    }
    let lines = lines.into_iter().rev();
    lines
        .map(|(then, editions)| {
            let editions = enumeration::together(here, &editions);
            then.then(" (").and(&editions).then(")")
        })
        .collect()
}
