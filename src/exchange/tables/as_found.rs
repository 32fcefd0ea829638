//! Tables of what others record of the same thing: identifiers elsewhere, and holders' own descriptions of sheets.

use super::cell::Cell;
use super::rows::{SheetRow, numbered};
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::as_found::{AsGiven, GivenField, OtherId};
use crate::model::key::{ImpressionKey, Key};

/// The record that has an identifier.
#[derive(Clone, Copy)]
enum Bearer<'s> {
    Design(&'s Key),
    Impression(&'s ImpressionKey),
    Holder(&'s Key),
    Person(&'s Key),
}

pub(super) fn identifiers(sources: Sources<'_>) -> Written {
    type Row<'s> = (Bearer<'s>, usize, &'s OtherId);
    let public = sources.public;
    let of_designs = sources
        .designs()
        .map(|design| (Bearer::Design(&design.key), &design.ids));
    let of_sheets = sources
        .sheets()
        .map(|(_, sheet)| (Bearer::Impression(&sheet.key), &sheet.ids));
    let of_holders = public.holders.values();
    let of_holders = of_holders.map(|holder| (Bearer::Holder(&holder.key), &holder.ids));
    let of_people = public.people.values();
    let of_people = of_people.map(|person| (Bearer::Person(&person.key), &person.ids));
    let all = of_designs
        .chain(of_sheets)
        .chain(of_holders)
        .chain(of_people);
    TableOf::new("identifiers")
        .key_of("design", "designs", |row: &Row| match row.0 {
            Bearer::Design(key) => key.into(),
            _ => Cell::Empty,
        })
        .key_of("impression", "impressions", |row| match row.0 {
            Bearer::Impression(key) => key.into(),
            _ => Cell::Empty,
        })
        .key_of("holder", "holders", |row| match row.0 {
            Bearer::Holder(key) => key.into(),
            _ => Cell::Empty,
        })
        .key_of("person", "people", |row| match row.0 {
            Bearer::Person(key) => key.into(),
            _ => Cell::Empty,
        })
        .text("scheme", |row| (&row.2.scheme).into())
        .required()
        .text("identifier", |row| (&row.2.id).into())
        .required()
        .write(all.flat_map(|(bearer, ids)| numbered(bearer, ids)))
}

pub(super) fn as_given(sources: Sources<'_>) -> Written {
    type Row<'s> = ((SheetRow<'s>, &'s AsGiven), usize, &'s GivenField);
    let given = sources
        .sheets()
        .filter_map(|sheet| Some((sheet, sheet.1.as_given.as_ref()?)));
    TableOf::new("as-given")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.0.1.key).into()
        })
        .position(|row| row.1)
        .text("field", |row| (&row.2.name).into())
        .required()
        .text("text", |row| (&row.2.text).into())
        .required()
        .text("language", |row| row.0.1.lang.as_ref().into())
        .plain_date("seen", |row| row.0.1.seen.as_ref().map(|date| &date.value))
        .text("from", |row| row.0.1.source.as_ref().into())
        .write(given.flat_map(|given| numbered(given, &given.1.fields)))
}
