//! Tables of longer texts and of terms: the commentaries and notes as they were written, and the vocabularies.
//!
//! Pages leave out HTML in texts, comments included, so the tables do not have it either.

use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::link::Target;
use crate::model::readers_text::without_html;
use crate::model::vocabulary::{List, Term};
use crate::model::words::ClosedList as _;
use crate::page::Address;

/// A text beside a record, or a page of the catalogue's own.
struct TextRow<'s> {
    of: Target,
    text: &'s str,
}

pub(super) fn texts(sources: Sources<'_>) -> Written {
    let public = sources.public;
    let designs = sources.designs().filter_map(|design| {
        Some((
            Target::Design(design.key.clone()),
            design.commentary.as_ref()?,
        ))
    });
    let sheets = sources.sheets().filter_map(|(_, sheet)| {
        Some((Target::Impression(sheet.key.clone()), sheet.note.as_ref()?))
    });
    let holders = public
        .holders
        .values()
        .filter_map(|holder| Some((Target::Holder(holder.key.clone()), holder.note.as_ref()?)));
    let people = public
        .people
        .values()
        .filter_map(|person| Some((Target::Person(person.key.clone()), person.note.as_ref()?)));
    let works = public
        .literature
        .values()
        .filter_map(|work| Some((Target::Work(work.key.clone()), work.note.as_ref()?)));
    let marks = public
        .marks
        .values()
        .filter_map(|mark| Some((Target::Mark(mark.key.clone()), mark.note.as_ref()?)));
    let documents = public.documents.values().filter_map(|document| {
        Some((
            Target::Document(document.key.clone()),
            document.note.as_ref()?,
        ))
    });
    let series = public
        .series
        .values()
        .filter_map(|series| Some((Target::Series(series.key.clone()), series.note.as_ref()?)));
    let pages = public
        .pages
        .values()
        .map(|page| (Target::Page(page.key.clone()), &page.note));
    let rows = designs
        .chain(sheets)
        .chain(holders)
        .chain(people)
        .chain(works)
        .chain(marks)
        .chain(documents)
        .chain(series)
        .chain(pages);
    TableOf::new("texts")
        .id("of", |row: &TextRow| row.of.to_string().into())
        .text("text", |row| without_html(row.text).into())
        .required()
        .address("address", |row| {
            let address = Address::of_target(&row.of).unwrap_or(Address::Opening);
            sources.address(&address)
        })
        .required()
        .write(rows.map(|(of, note)| TextRow {
            of,
            text: note.text.as_str(),
        }))
}

pub(super) fn terms(sources: Sources<'_>) -> Written {
    type Row<'s> = (List, &'s str, &'s Term);
    let language = &sources.public.settings.language.value;
    let vocabularies = &sources.public.vocabularies;
    let rows = List::ALL.iter().flat_map(|list| {
        let terms = vocabularies.terms(*list);
        terms.map(move |(key, term)| (*list, key.as_str(), term))
    });
    TableOf::new("terms")
        .word("vocabulary", |row: &Row| Some(row.0))
        .required()
        .text("term", |row| row.1.into())
        .required()
        .text("name", move |row| row.2.label(language).into())
        .text("meaning", move |row| row.2.note(language).into())
        .integer("aat", |row| row.2.aat.into())
        .keyed_by(&["vocabulary", "term"])
        .write(rows)
}
