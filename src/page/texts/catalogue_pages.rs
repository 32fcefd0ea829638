//! The order of the catalogue's own pages, and which of them stand at the head of a page of the theme.

use crate::model::note::Page;
use crate::model::public::Public;
use crate::model::words::ClosedList as _;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::words::Words;
use crate::study::order::Collator;

/// The key of the introduction, which the opening page quotes.
pub(crate) const INTRODUCTION: &str = "introduction";

/// The pages in the order of lists: those that `pages` in `catalogue.toml` names, in its order; then
/// the introduction; then the others by title.
pub(crate) fn in_order(public: &Public) -> Vec<&Page> {
    let collator = Collator::of_words(&public.settings.language.value);
    let named = &public.settings.pages;
    let place = |page: &Page| {
        let place = named.iter().position(|key| key.value == page.key);
        (
            place.unwrap_or(named.len()),
            page.key.as_str() != INTRODUCTION,
        )
    };
    let mut pages: Vec<&Page> = public.pages.values().collect();
    pages.sort_by(|a, b| {
        let by_place = place(a).cmp(&place(b));
        by_place.then_with(|| collator.compare(&a.title, &b.title))
    });
    pages
}

/// The catalogue's own page that is printed at the head of a page of the theme.
pub(crate) fn opening(public: &Public, overview: Overview) -> Option<&Page> {
    let stands_there = |page: &&Page| Address::of_page(&page.key) == Address::Overview(overview);
    public.pages.values().find(stands_there)
}

/// The title of an overview: the catalogue's own where it has one.
pub(crate) fn title<'t>(public: &'t Public, words: &'t Words, overview: Overview) -> &'t str {
    let own = opening(public, overview).map(|page| page.title.as_str());
    own.or_else(|| words.find(&format!("overview-{}", overview.word())))
        .unwrap_or_else(|| words.word(overview.word()))
}
