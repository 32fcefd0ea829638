//! The book: all data that pages are made from, and the same as seen from one page.
//!
//! [`Book`] is made once for a catalogue and shared by all threads. [`Here`] adds the page that is
//! being made: its methods make relative links from that page to any other.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use icu_locale::{LanguageIdentifier, LocaleDirectionality};
use url::Url;

use super::address::{Address, Fragment, Overview};
use super::exports::Exports;
use super::html::CleanHtml;
use super::pictures::{Alignments, Pictures};
use super::redirects::Redirects;
use super::template::Templates;
use super::words::Words;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::study::Studies;
use crate::study::concordance::ConcordanceRow;
use crate::study::issued::editions::Editions;
use crate::study::joined::JoinedSheets;

/// All data that pages are made from.
pub(crate) struct Book<'a> {
    /// The catalogue, without private data.
    pub public: &'a Public,
    /// The studies: everything computed from what may be published.
    pub studies: &'a Studies,
    /// The pictures that may be shown.
    pub pictures: &'a Pictures,
    /// The results of alignment.
    pub alignments: &'a Alignments,
    /// The files for other programs that pages link to.
    pub exports: &'a Exports,
    /// The theme.
    pub theme: &'a Theme,
    /// The theme's words.
    pub words: Arc<Words>,
    /// The theme's templates.
    pub templates: Templates,
    /// The overviews that have an entry.
    pub overviews: BTreeSet<Overview>,
    /// Where texts mention a record: the pages whose Markdown links to it.
    pub mentions: BTreeMap<Target, BTreeSet<Address>>,
    /// The rows of the concordance, by design.
    pub concordance: BTreeMap<Key, Vec<&'a ConcordanceRow>>,
    /// What editions issued, and what changed since; `None` before the first edition.
    pub editions: Option<Editions<'a>>,
    /// The redirects from former addresses.
    pub redirects: Redirects,
    /// The designs with a comparison to choose.
    pub chosen: BTreeSet<Key>,
}

/// The book as seen from one page.
#[derive(Clone, Copy)]
pub(crate) struct Here<'b> {
    /// The book.
    pub book: &'b Book<'b>,
    /// The page.
    pub address: &'b Address,
    /// The relative path from the page to the opening page: `../../`.
    pub root: &'b str,
}

impl Book<'_> {
    /// The path from a page to the opening page. The page for an address that leads to nothing is served at any
    /// address, so its path begins at the host, as the address of the catalogue says.
    pub fn root_of(&self, page: &Address) -> String {
        if *page != Address::NotFound {
            return page.root();
        }
        let address = &self.public.settings.address.value;
        let path = Url::parse(address).map_or_else(|_| "/".to_owned(), |url| url.path().to_owned());
        format!("{}/", path.trim_end_matches('/'))
    }
}

impl<'b> Here<'b> {
    /// The words.
    pub fn words(&self) -> &'b Words {
        &self.book.words
    }

    /// The catalogue.
    pub fn public(&self) -> &'b Public {
        self.book.public
    }

    /// The language of the catalogue's own text.
    pub fn language(&self) -> &'b str {
        &self.book.public.settings.language.value
    }

    /// The relative link from this page to another. The records of one sheet have one page, so a link to any of
    /// them leads there.
    pub fn href(&self, to: &Address) -> String {
        format!("{}{}", self.root, self.page_at(to))
    }

    /// The address of the page that is shown at `to`: that of the sheet, for a record that has no page of its own.
    pub fn page_at<'t>(&self, to: &'t Address) -> Cow<'t, Address> {
        match to {
            Address::Impression(key) if !self.joined().has_page(key) => {
                Cow::Owned(Address::Impression(self.joined().page_of(key).clone()))
            }
            _ => Cow::Borrowed(to),
        }
    }

    /// Which records of sheets share a page.
    pub fn joined(&self) -> &'b JoinedSheets {
        &self.book.studies.joined
    }

    /// The relative link to a file, by its path relative to the catalogue; to a file in the folder of
    /// this page, by its name alone.
    pub fn href_file(&self, path: &str) -> String {
        match path.strip_prefix(&self.address.to_string()) {
            Some(name) => format!("./{name}"),
            None => format!("{}{path}", self.root),
        }
    }

    /// The relative link to a place within a page; within this page, only the fragment.
    pub fn href_part(&self, to: &Address, part: Fragment<'_>) -> String {
        let to = self.page_at(to);
        if *to == *self.address {
            format!("#{part}")
        } else {
            format!("{}{to}#{part}", self.root)
        }
    }

    /// `text` as a link to a page; plain text on that page itself.
    pub fn link(&self, to: &Address, text: &CleanHtml) -> CleanHtml {
        if *self.page_at(to) == *self.address {
            text.clone()
        } else {
            CleanHtml::link(&self.href(to), text)
        }
    }

    /// `text` with its language marked where that is not the catalogue's. A `span` that would mark
    /// nothing is left out.
    pub fn in_language(
        &self,
        element: &'static str,
        text: &CleanHtml,
        language: Option<&str>,
    ) -> CleanHtml {
        match language.filter(|l| !l.eq_ignore_ascii_case(self.language())) {
            None if element == "span" => text.clone(),
            _ => self.element_in_language(element, text, language),
        }
    }

    /// `text` as an element of its own, marked with its language where that is not the catalogue's.
    pub fn element_in_language(
        &self,
        element: &'static str,
        text: &CleanHtml,
        language: Option<&str>,
    ) -> CleanHtml {
        match language.filter(|l| !l.eq_ignore_ascii_case(self.language())) {
            Some(l) if is_right_to_left(l) => {
                CleanHtml::element(element, &[("lang", l), ("dir", "rtl")], text)
            }
            Some(l) => CleanHtml::element(element, &[("lang", l)], text),
            None => CleanHtml::element(element, &[], text),
        }
    }
}

/// Whether a language (BCP 47) is written from right to left: by its script, from the tag or from
/// CLDR (crate `icu_locale`). A tag that is malformed is taken to be written from left to right.
pub(crate) fn is_right_to_left(language: &str) -> bool {
    let tag = language.parse::<LanguageIdentifier>();
    tag.is_ok_and(|tag| LocaleDirectionality::new_extended().is_right_to_left(&tag))
}

#[cfg(test)]
mod tests {
    use super::is_right_to_left;

    /// ISO 15924 scripts: Arabic, Hebrew and Thaana run from right to left; a tag may name another.
    #[test]
    fn a_language_runs_as_its_script_does() {
        for tag in ["ar", "fa-IR", "he", "ur", "yi", "ps", "ug", "dv", "az-Arab"] {
            assert!(is_right_to_left(tag), "{tag}");
        }
        for tag in [
            "en",
            "de-CH",
            "ja",
            "ar-Latn",
            "yi-Latn",
            "az",
            "no such tag",
            "",
        ] {
            assert!(!is_right_to_left(tag), "{tag}");
        }
    }
}
