//! The concordance of this catalogue with its own earlier editions: numbers of designs and numerals of states.

use crate::model::issued_address::IssuedAddress;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::Aspect;
use crate::page::lists::table::{Row, Table};
use crate::page::phrases::formerly::{former_numbers, former_numerals, place_of};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::words::Argument;
use crate::study::issued::editions::Editions;

/// The entries and states that an edition called otherwise; `None` where every edition called all as they are called now.
pub(crate) fn table(here: &Here<'_>) -> Option<Table> {
    let editions = here.book.editions.as_ref()?;
    let mut rows = Vec::new();
    for key in here.book.studies.order.keys() {
        let Some(design) = here.public().designs.get(key) else {
            continue;
        };
        let numbers = numbers(editions, key);
        if !former_numbers(here, design).is_empty() {
            let cells = numbers.iter().map(|number| CleanHtml::text(number));
            let cells = std::iter::once(here.design(key)).chain(cells);
            rows.push(Row::new(cells.collect()));
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
            let head = CleanHtml::text(&design.number)
                .then(" ")
                .and(&here.state_of(key, name));
            rows.push(Row::new(std::iter::once(head).chain(cells).collect()));
        }
    }
    let words = here.words();
    let names = editions.register().editions.iter().map(|edition| {
        let name = [("edition", Argument::Text(edition.edition.value.as_str()))];
        capitalised(&CleanHtml::text(&words.with("edition", &name))).plain()
    });
    let now = words.word("concordance-now").to_owned();
    let heads: Vec<String> = std::iter::once(now).chain(names).collect();
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    Table::of_named_rows(&heads, &rows)
}

fn numbers<'r>(editions: &Editions<'r>, design: &Key) -> Vec<&'r str> {
    let address = IssuedAddress::Record(Target::Design(design.clone()));
    editions.readings.by_edition(&address, Aspect::Number)
}
