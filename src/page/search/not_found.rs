//! The page that a host serves in place of a page that is not there (`404.html`): the script searches for the
//! words of the address.

use serde::Serialize;

use super::ways::{self, Way};
use crate::model::link::Target;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    /// The page has a field of its own, so the head has none.
    seeks: bool,
    /// It is no page of the catalogue, so no search engine should list it.
    unlisted: bool,
    /// The first folders of addresses, which say what kind of record is meant, with spaces between them.
    folders: String,
    /// The address of the search page.
    action: String,
    indexes: Vec<Way>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let title = here.words().word("not-found").to_owned();
    let view = View {
        title: title.clone(),
        seeks: true,
        unlisted: true,
        folders: Target::KINDS.join(" "),
        action: here.href(&Address::Overview(Overview::Search)),
        indexes: ways::indexes(here),
    };
    Leaf::new(here.address, title, "pages/not-found.html", &view)
}
