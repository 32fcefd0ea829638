//! The catalogue's own pages, its indexes and the terms of its glossary, as they are searched.

use super::former;
use crate::model::link::Target;
use crate::page::indexes::glossary;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::texts::{catalogue_pages, plain_text};
use crate::study::search::entry::{Entry, EntryKind, Field};

/// The catalogue's own pages in its order, then its indexes.
pub(super) fn pages(here: &Here<'_>) -> Vec<Entry> {
    let public = here.public();
    let own = catalogue_pages::in_order(public).into_iter().map(|page| {
        let href = Address::of_page(&page.key).to_string();
        let mut entry = Entry::new(EntryKind::Page, page.title.clone(), href);
        entry.add(Field::Name, &page.title);
        former::add(here, Target::Page(page.key.clone()), &mut entry);
        entry.add(Field::Text, plain_text::note(here, Some(&page.note)));
        entry
    });
    let is_plain = |overview: &Overview| {
        *overview != Overview::Search && catalogue_pages::opening(public, *overview).is_none()
    };
    let indexes = here.book.overviews.iter().copied().filter(is_plain);
    let indexes = indexes.map(|overview| {
        let title = catalogue_pages::title(public, here.words(), overview).to_owned();
        let href = Address::Overview(overview).to_string();
        let mut entry = Entry::new(EntryKind::Page, title.clone(), href);
        entry.add(Field::Name, title);
        entry
    });
    own.chain(indexes).collect()
}

/// The terms of the glossary, in its order.
pub(super) fn terms(here: &Here<'_>) -> Vec<Entry> {
    let address = Address::Overview(Overview::Glossary);
    let terms = glossary::explained(here).into_iter();
    terms
        .map(|term| {
            let href = format!("{address}#{}", term.id);
            let mut entry = Entry::new(EntryKind::Term, term.term.clone(), href);
            entry.add(Field::Name, term.term);
            entry.add_all(Field::Name, term.synonyms);
            entry.about.clone_from(&term.means);
            entry.add(Field::Text, term.means);
            entry
        })
        .collect()
}
