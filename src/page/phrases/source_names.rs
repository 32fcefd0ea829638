//! Names of works of the literature and of exhibitions.

use crate::model::key::Key;
use crate::model::literature::Work;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// A work by its short form, as a link, with the place in it: "Verhoeven 1961, p. 12".
    pub fn work(&self, key: &Key, at: Option<&str>) -> CleanHtml {
        let short = match self.public().literature.get(key) {
            Some(work) => self.link(&Address::Work(key.clone()), &CleanHtml::text(&work.short)),
            None => CleanHtml::text(key.as_str()),
        };
        match at {
            Some(at) => short.then(", ").then(at),
            None => short,
        }
    }

    /// An exhibition by its title, as a link.
    pub fn exhibition(&self, key: &Key) -> CleanHtml {
        match self.public().exhibitions.get(key) {
            Some(exhibition) => self.link(
                &Address::Exhibition(key.clone()),
                &CleanHtml::element("i", &[], &CleanHtml::text(&exhibition.title)),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }
}

/// The full reference, as the formatter of the literature set it.
pub(crate) fn full_reference(work: &Work) -> CleanHtml {
    CleanHtml::trusted(work.full_html.clone())
}
