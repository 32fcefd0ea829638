//! The tables of documents and of what they tell.

use super::cell::Cell;
use super::rows::numbered;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::document::{Document, Telling};
use crate::model::provenance::Party;
use crate::model::readers_text::without_html;
use crate::page::Address;

pub(super) fn documents(sources: Sources<'_>) -> Written {
    TableOf::new("documents")
        .id("document", |document: &&Document| (&document.key).into())
        .text("kind", |document| {
            document.kind.as_ref().map(|kind| kind.as_str()).into()
        })
        .text("title", |document| document.title.as_ref().into())
        .date(["date", "date_earliest", "date_latest"], |document| {
            document.date.as_ref().map(|date| &date.value)
        })
        .list("by", move |document| parties(sources, &document.by))
        .list("to", move |document| parties(sources, &document.to))
        .key_of("holder", "holders", |document| {
            document.holder.as_ref().into()
        })
        .text("shelfmark", |document| document.shelfmark.as_ref().into())
        .list("languages", |document| {
            Cell::list(document.lang.iter().map(|tag| tag.value.clone()))
        })
        .text("transcription", |document| {
            let text = document.transcription.as_ref();
            text.map(|text| without_html(&text.text)).into()
        })
        .text("rights", |document| document.rights.as_ref().into())
        .address("address", |document| {
            sources.address(&Address::Document(document.key.clone()))
        })
        .required()
        .write(sources.public.documents.values())
}

/// Those who wrote or received a document, by name.
fn parties(sources: Sources<'_>, parties: &[Party]) -> Cell {
    let public = sources.public;
    Cell::list(parties.iter().filter_map(|party| match party {
        Party::Record(key) => {
            let person = public.people.get(&key.value);
            let holder = public.holders.get(&key.value);
            let name = holder.map(|holder| holder.name.value.clone());
            name.or_else(|| person.map(|person| person.name.value.clone()))
        }
        Party::Named(name) => Some(name.value.clone()),
        Party::Undisclosed => None,
    }))
}

pub(super) fn statements(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Document, usize, &'s Telling);
    let documents = sources.public.documents.values();
    TableOf::new("document-statements")
        .part_of("document", "documents", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .list("of", |row| {
            Cell::list(row.2.of.iter().map(|of| of.value.to_string()))
        })
        .text("says", |row| (&row.2.says).into())
        .required()
        .text("at", |row| row.2.at.as_ref().into())
        .word("certainty", |row| Some(row.2.certainty()))
        .write(documents.flat_map(|document| numbered(document, &document.tells)))
}
