//! Names of works of the literature and of exhibitions.

use crate::model::key::Key;
use crate::model::literature::Work;
use crate::page::setting::address::{Address, Fragment};
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

    /// The name under which numbers of an earlier catalogue are cited: that of its first author, "Verhoeven"; the short
    /// form, "Verhoeven 1961", where it has no author or another earlier catalogue is by the same.
    pub fn cited_work(&self, key: &Key) -> String {
        let literature = &self.public().literature;
        let Some(work) = literature.get(key) else {
            return key.to_string();
        };
        let author = first_author(work);
        let earlier = self.book.studies.concordance.works.iter();
        let others = earlier.filter(|other| *other != key);
        let mut others = others.filter_map(|other| literature.get(other));
        if author.is_empty() || others.any(|other| first_author(other) == author) {
            work.short.clone()
        } else {
            author.to_owned()
        }
    }

    /// A number of an earlier catalogue with the name of that, as a link to its row: "Verhoeven 22". `fragment` is its
    /// place on the page of the work.
    pub fn earlier_number(&self, work: &Key, number: &str, fragment: &str) -> CleanHtml {
        self.row_of(
            work,
            fragment,
            &format!("{} {number}", self.cited_work(work)),
        )
    }

    /// `text` as a link to a row of an earlier catalogue; plain text where the number has no address.
    pub fn row_of(&self, work: &Key, fragment: &str, text: &str) -> CleanHtml {
        let text = CleanHtml::text(text);
        if fragment.is_empty() || !self.public().literature.contains_key(work) {
            return text;
        }
        let page = Address::Work(work.clone());
        CleanHtml::link(
            &self.href_part(&page, Fragment::EarlierNumber(fragment)),
            &text,
        )
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

/// The family name of the first author; empty where there is none.
pub(crate) fn first_author(work: &Work) -> &str {
    let author = work.authors.split([',', ';']).next();
    author.unwrap_or_default().trim()
}

/// The full reference, as the formatter of the literature set it.
pub(crate) fn full_reference(work: &Work) -> CleanHtml {
    CleanHtml::trusted(work.full_html.clone())
}

/// The same, with the names and the year as a link to the page of the work: they distinguish it as its short form does,
/// so the two need not stand beside each other.
pub(crate) fn linked_reference(here: &Here<'_>, work: &Work) -> CleanHtml {
    let rest = work.full_html.strip_prefix(work.head_html.as_str());
    let to = here.href(&Address::Work(work.key.clone()));
    let head = CleanHtml::trusted(work.head_html.clone());
    let rest = CleanHtml::trusted(rest.unwrap_or_default().to_owned());
    CleanHtml::link(&to, &head).and(&rest)
}
