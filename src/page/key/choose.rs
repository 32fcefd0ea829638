//! The way to the identification keys: which print is it? By eye, each print leads to its own key.

use serde::Serialize;

use super::candidates;
use crate::page::lists::wall::{self, Wall};
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::texts::catalogue_pages;

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    /// What to do where a number is known.
    by_number: CleanHtml,
    /// The prints that have a key; each leads to it.
    with_key: Option<Wall>,
    /// The prints without; each leads to its own page.
    without: Option<Wall>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = catalogue_pages::title(here.public(), words, Overview::Identify).to_owned();
    let link = |overview: Overview| {
        let name = catalogue_pages::title(here.public(), words, overview);
        here.link(&Address::Overview(overview), &CleanHtml::text(name))
    };
    let (mut with_key, mut without) = (Vec::new(), Vec::new());
    for design in here.designs_in_order() {
        let mut hung = wall::design(here, design);
        if candidates::has_key(design) {
            hung.href = here.href(&Address::IdentificationKey(design.key.clone()));
            with_key.push(hung);
        } else {
            without.push(hung);
        }
    }
    let view = View {
        brief: words.word("identify-brief").to_owned(),
        by_number: words.html(
            "identify-by-number",
            None,
            &[
                ("resolve", &link(Overview::Resolve)),
                ("search", &link(Overview::Search)),
            ],
        ),
        with_key: Wall::of(with_key),
        without: Wall::of(without),
        title: title.clone(),
    };
    let described = view.brief.clone();
    Leaf::new(here.address, title, "pages/identify.html", &view).described(described)
}
