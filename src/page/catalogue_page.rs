//! A page of the catalogue's own: introduction, principles, an essay.

use serde::Serialize;

use super::book::Here;
use super::html::CleanHtml;
use super::leaf::Leaf;
use super::markdown::{self, Standing};
use crate::model::note::Page;

#[derive(Serialize)]
struct View {
    title: String,
    text: CleanHtml,
}

pub(super) fn page(here: &Here<'_>, page: &Page) -> Leaf {
    let view = View {
        title: page.title.clone(),
        text: markdown::html(&page.note.text, here, Standing::Page),
    };
    Leaf::new(here.address, page.title.clone(), "pages/text.html", &view)
}
