//! The ways to records for readers who search, with scripts or without: the indexes of the catalogue.

use serde::Serialize;

use crate::model::words::ClosedList as _;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::texts::catalogue_pages;

/// A link to an index.
#[derive(Serialize)]
pub(super) struct Way {
    href: String,
    text: String,
}

/// The indexes that the catalogue has.
pub(super) fn indexes(here: &Here<'_>) -> Vec<Way> {
    let overviews = Overview::ALL.iter().filter(|overview| {
        let is_there = here.book.overviews.contains(overview);
        is_there && **overview != Overview::Search && !overview.is_about_the_catalogue()
    });
    overviews
        .map(|overview| Way {
            href: here.href(&Address::Overview(*overview)),
            text: catalogue_pages::title(here.public(), here.words(), *overview).to_owned(),
        })
        .collect()
}
