//! One of the catalogue's own pages: introduction, principles, an essay.

use serde::Serialize;

use super::markdown::{self, Placement};
use crate::model::note::Page;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    text: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>, page: &Page) -> Leaf {
    let view = View {
        title: page.title.clone(),
        text: markdown::html(&page.note.text, here, Placement::Page),
    };
    Leaf::new(here.address, page.title.clone(), "pages/text.html", &view)
}
