//! The literature and the exhibitions, as they are searched.

use super::parties::by_title;
use crate::model::exhibition::Venue;
use crate::page::phrases::dates;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::texts::plain_text;
use crate::study::search::entry::{Entry, EntryKind, Field};

/// The works of the literature, by short form.
pub(super) fn works(here: &Here<'_>) -> Vec<Entry> {
    let works = here.public().literature.values().map(|work| {
        let href = Address::Work(work.key.clone()).to_string();
        let mut entry = Entry::new(EntryKind::Work, work.short.clone(), href);
        entry.about.clone_from(&work.title);
        entry.add(Field::Name, &work.short);
        entry.add(Field::Name, &work.title);
        entry.add(Field::Fact, &work.full);
        entry.add(Field::Text, plain_text::note(here, work.note.as_ref()));
        entry
    });
    by_title(here, works.collect())
}

/// The exhibitions, by title.
pub(super) fn exhibitions(here: &Here<'_>) -> Vec<Entry> {
    let exhibitions = here.public().exhibitions.values().map(|exhibition| {
        let href = Address::Exhibition(exhibition.key.clone()).to_string();
        let title = exhibition.title.value.clone();
        let mut entry = Entry::new(EntryKind::Exhibition, title, href);
        entry.add(Field::Name, &exhibition.title.value);
        let venue = exhibition.venue.as_ref().map(|venue| match venue {
            Venue::Holder(key) => here.holder_and_city(&key.value).plain(),
            Venue::Named(name) => name.clone(),
        });
        let date = exhibition.date.as_ref();
        let date = date.map(|date| dates::throughout(&date.value, here.words()));
        let facts: Vec<String> = venue
            .into_iter()
            .chain(exhibition.town.clone())
            .chain(date)
            .collect();
        entry.about = facts.join(", ");
        entry.add_all(Field::Fact, facts);
        entry
    });
    by_title(here, exhibitions.collect())
}
