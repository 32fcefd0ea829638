//! The search page: the field, the results that the theme's script puts there, and the indexes, which need no
//! script.

use serde::Serialize;

use super::ways::{self, Way};
use crate::page::setting::book::Here;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    /// The page has a field of its own, so the head has none.
    seeks: bool,
    indexes: Vec<Way>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let title = here.words().word("search").to_owned();
    let view = View {
        title: title.clone(),
        seeks: true,
        indexes: ways::indexes(here),
    };
    Leaf::new(here.address, title, "pages/search.html", &view)
}
