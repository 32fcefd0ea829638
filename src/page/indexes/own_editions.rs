//! The concordance of this catalogue with its own earlier editions: numbers of designs and numerals of states.

use serde::Serialize;

use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::{Aspect, IssuedAddress};
use crate::page::phrases::formerly::{former_numbers, former_numerals, place_of};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::words::Argument;
use crate::study::issued::editions::Editions;

/// A table: the present number, and that of each edition.
#[derive(Serialize)]
pub(crate) struct OwnEditions {
    heads: Vec<String>,
    rows: Vec<Row>,
}

#[derive(Serialize)]
struct Row {
    id: Option<String>,
    head: CleanHtml,
    cells: Vec<CleanHtml>,
}

/// The entries and states that an edition called otherwise; `None` where every edition called all as they are called now.
pub(crate) fn table(here: &Here<'_>) -> Option<OwnEditions> {
    let editions = here.book.editions.as_ref()?;
    let mut rows = Vec::new();
    for key in here.book.studies.order.keys() {
        let Some(design) = here.public().designs.get(key) else {
            continue;
        };
        let numbers = numbers(editions, key);
        if !former_numbers(here, design).is_empty() {
            rows.push(Row {
                id: None,
                head: here.design(key),
                cells: numbers
                    .iter()
                    .map(|number| CleanHtml::text(number))
                    .collect(),
            });
        }
        for state in &design.states {
            let name = &state.key.value;
            if former_numerals(here, key, name).is_empty() {
                continue;
            }
            let address = IssuedAddress::Part(key.clone(), DesignPart::State, name.clone());
            let numerals = editions.readings.by_edition(&address, Aspect::Numeral);
            let cells = numerals.iter().zip(&numbers).map(|(numeral, number)| {
                if numeral.is_empty() {
                    return CleanHtml::empty();
                }
                let numeral = CleanHtml::span("numeral", &CleanHtml::text(place_of(numeral)));
                CleanHtml::text(number).then(" ").and(&numeral)
            });
            rows.push(Row {
                id: None,
                head: CleanHtml::text(&design.number)
                    .then(" ")
                    .and(&here.state_of(key, name)),
                cells: cells.collect(),
            });
        }
    }
    let words = here.words();
    let names = editions.register().editions.iter().map(|edition| {
        let name = [("edition", Argument::Text(edition.edition.value.as_str()))];
        capitalised(&CleanHtml::text(&words.with("edition", &name))).plain()
    });
    let now = words.word("concordance-now").to_owned();
    (!rows.is_empty()).then(|| OwnEditions {
        heads: std::iter::once(now).chain(names).collect(),
        rows,
    })
}

fn numbers<'r>(editions: &Editions<'r>, design: &Key) -> Vec<&'r str> {
    let address = IssuedAddress::Record(Target::Design(design.clone()));
    editions.readings.by_edition(&address, Aspect::Number)
}
