//! A record in a list: its number, titles, a line about it, a small picture.

use serde::Serialize;

use crate::model::design::Design;
use crate::page::phrases::standing_note;
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::SmallImage;

/// A record in a list.
#[derive(Serialize)]
pub(crate) struct Entry {
    pub(crate) number: String,
    pub(crate) href: String,
    pub(crate) title: CleanHtml,
    /// The original title, where the one above is another.
    pub(crate) original: Option<CleanHtml>,
    pub(crate) about: CleanHtml,
    pub(crate) standing: Option<CleanHtml>,
    pub(crate) image: Option<SmallImage>,
}

impl Entry {
    /// A design by the title in use, with a line about it.
    pub(crate) fn of_design(here: &Here<'_>, design: &Design, about: CleanHtml) -> Entry {
        let picture = figures::design_picture(here, design);
        Entry {
            number: design.number.clone(),
            href: here.href(&Address::Design(design.key.clone())),
            title: here.design_title(design),
            original: None,
            about,
            standing: standing_note::note(here, &design.standing),
            image: picture.and_then(|key| figures::small(here, &key)),
        }
    }
}
