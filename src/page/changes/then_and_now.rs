//! How numbers and numerals read in an edition, where they read otherwise now: for who meets a citation of it.

use crate::model::issued_address::IssuedAddress;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::Aspect;
use crate::page::lists::table::{Row, Table};
use crate::page::phrases::formerly::place_of;
use crate::page::phrases::issued_readings::numeral_text;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::issued::editions::Editions;

/// The designs and states that an edition named otherwise; `None` where it named all as they are named now.
pub(crate) fn table(here: &Here<'_>, editions: &Editions<'_>, edition: usize) -> Option<Table> {
    let mut rows = Vec::new();
    for key in here.book.studies.order.keys() {
        let Some(design) = here.public().designs.get(key) else {
            continue;
        };
        let address = IssuedAddress::Record(Target::Design(key.clone()));
        let number = then(editions, &address, Aspect::Number, edition);
        let was = number.unwrap_or(design.number.as_str());
        if was != design.number {
            rows.push(Row::new(vec![CleanHtml::text(was), here.design(key)]));
        }
        for state in &design.states {
            let name = &state.key.value;
            let address = IssuedAddress::Part(key.clone(), DesignPart::State, name.clone());
            let Some(numeral) = then(editions, &address, Aspect::Numeral, edition) else {
                continue;
            };
            if Some(place_of(numeral)) == numeral_now(here, key, name).as_deref() {
                continue;
            }
            let head = CleanHtml::text(was)
                .then(" ")
                .and(&numeral_text(here, numeral));
            let now = CleanHtml::text(&design.number)
                .then(" ")
                .and(&here.state_of(key, name));
            rows.push(Row::new(vec![head, now]));
        }
    }
    let words = here.words();
    let heads = ["read-then", "read-now"].map(|id| words.word(id));
    Table::of_named_rows(&heads, &rows)
}

/// What an edition said of an entry; `None` where it said nothing.
fn then<'r>(
    editions: &Editions<'r>,
    address: &IssuedAddress,
    aspect: Aspect,
    edition: usize,
) -> Option<&'r str> {
    let values = editions.readings.by_edition(address, aspect);
    let value = values.get(edition).copied().unwrap_or_default();
    (!value.is_empty()).then_some(value)
}

fn numeral_now(here: &Here<'_>, design: &Key, state: &Key) -> Option<String> {
    let numeral = here.book.studies.numeral(design, state);
    numeral.map(crate::study::numerals::Numeral::roman)
}
