//! The page about the catalogue: the ways to its own texts, to the indexes about the artist, and to what helps in using it.

use serde::Serialize;

use crate::page::lists::list::List;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::texts::catalogue_pages;

#[derive(Serialize)]
struct View {
    title: String,
    /// Parts stand close together, as in an index.
    index: bool,
    lists: Vec<List>,
}

/// The indexes about the artist's life and the literature.
const ARTIST: [Overview; 5] = [
    Overview::Chronology,
    Overview::People,
    Overview::Exhibitions,
    Overview::Literature,
    Overview::Concordance,
];

/// What helps in using the catalogue.
const USE: [Overview; 8] = [
    Overview::Cite,
    Overview::Resolve,
    Overview::Contribute,
    Overview::Changes,
    Overview::Data,
    Overview::Glossary,
    Overview::Cautions,
    Overview::Search,
];

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = catalogue_pages::title(here.public(), words, Overview::About).to_owned();
    let own = catalogue_pages::in_order(here.public())
        .into_iter()
        .map(|page| (Address::of_page(&page.key), page))
        .filter(|(address, _)| matches!(address, Address::Page(_)))
        .map(|(address, page)| here.link(&address, &CleanHtml::text(&page.title)));
    let lists = [
        ("about-texts", own.collect()),
        ("about-artist", ways(here, &ARTIST)),
        ("about-use", ways(here, &USE)),
        ("about-keyboard", keyboard(here)),
    ];
    let lists = lists
        .into_iter()
        .map(|(heading, lines)| List::new(CleanHtml::text(words.word(heading)), lines))
        .filter(List::has_lines)
        .collect();
    let view = View {
        title: title.clone(),
        index: true,
        lists,
    };
    Leaf::new(here.address, title, "pages/about.html", &view)
}

fn ways(here: &Here<'_>, overviews: &[Overview]) -> Vec<CleanHtml> {
    overviews
        .iter()
        .filter(|overview| here.book.overviews.contains(overview))
        .map(|overview| {
            let title = catalogue_pages::title(here.public(), here.words(), *overview);
            here.link(&Address::Overview(*overview), &CleanHtml::text(title))
        })
        .collect()
}

/// The keys of the keyboard that work on every page.
fn keyboard(here: &Here<'_>) -> Vec<CleanHtml> {
    ["keyboard-neighbours", "keyboard-search"]
        .into_iter()
        .map(|line| CleanHtml::text(here.words().word(line)))
        .collect()
}
