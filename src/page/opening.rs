//! The opening page: what the catalogue is, and where to begin.

use serde::Serialize;

use super::book::Here;
use super::frame::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
}

pub(super) fn page(here: &Here<'_>) -> Leaf {
    let title = here.public().settings.title.value.clone();
    let view = View {
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/opening.html", &view)
}
