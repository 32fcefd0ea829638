//! What earlier editions of the catalogue called an entry or a state: "formerly *iii* (edition 1)".

use crate::model::design::Design;
use crate::model::issued_address::IssuedAddress;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::Aspect;
use crate::page::phrases::enumeration;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::issued::readings::FormerReading;

/// The numerals that a state had in earlier editions; empty where it had the present one in all of them.
pub(crate) fn numerals(here: &Here<'_>, design: &Key, state: &Key) -> CleanHtml {
    let readings = former_numerals(here, design, state).into_iter();
    let said = readings.map(|reading| {
        let place = place_of(&reading.value);
        let numeral = CleanHtml::span("numeral", &CleanHtml::text(place));
        said(here, &numeral, &reading)
    });
    CleanHtml::join(&said.collect::<Vec<_>>(), ", ")
}

/// The same as data.
pub(crate) fn former_numerals(here: &Here<'_>, design: &Key, state: &Key) -> Vec<FormerReading> {
    let Some(editions) = &here.book.editions else {
        return Vec::new();
    };
    let address = IssuedAddress::Part(design.clone(), DesignPart::State, state.clone());
    let now = here.book.studies.numeral(design, state);
    let now = now.map(crate::study::numerals::Numeral::roman);
    editions
        .readings
        .formerly(&address, Aspect::Numeral, |value| {
            now.as_deref() == Some(place_of(value))
        })
}

/// The place in a numeral with its total: "iii" of "iii/iv".
pub(crate) fn place_of(numeral: &str) -> &str {
    numeral.split_once('/').map_or(numeral, |(place, _)| place)
}

/// The numbers that a design had in earlier editions; empty where it had the present one in all of them.
pub(crate) fn numbers(here: &Here<'_>, design: &Design) -> CleanHtml {
    let readings = former_numbers(here, design).into_iter();
    let said = readings.map(|reading| {
        let editions = in_editions(here, &reading);
        CleanHtml::text(&reading.value)
            .then(" (")
            .and(&editions)
            .then(")")
    });
    CleanHtml::join(&said.collect::<Vec<_>>(), ", ")
}

/// The same as data.
pub(crate) fn former_numbers(here: &Here<'_>, design: &Design) -> Vec<FormerReading> {
    let Some(editions) = &here.book.editions else {
        return Vec::new();
    };
    let address = IssuedAddress::Record(Target::Design(design.key.clone()));
    editions
        .readings
        .formerly(&address, Aspect::Number, |value| value == design.number)
}

/// "formerly iii (edition 1 and edition 2)".
fn said(here: &Here<'_>, value: &CleanHtml, reading: &FormerReading) -> CleanHtml {
    let editions = in_editions(here, reading);
    let both = [("value", value), ("editions", &editions)];
    here.words().html("formerly-read", None, &both)
}

/// "edition 1 and edition 2", each as a link.
fn in_editions(here: &Here<'_>, reading: &FormerReading) -> CleanHtml {
    let Some(editions) = &here.book.editions else {
        return CleanHtml::empty();
    };
    let editions = &editions.register().editions;
    let links: Vec<CleanHtml> = reading
        .editions
        .iter()
        .filter_map(|place| Some((*place, editions.get(*place)?)))
        .map(|(place, edition)| {
            let name = [("edition", Argument::Text(edition.edition.value.as_str()))];
            let name = CleanHtml::text(&here.words().with("edition", &name));
            here.link(&Address::Edition(edition.key(place)), &name)
        })
        .collect();
    enumeration::together(here, &links)
}
