//! Links to files for other programs, worded by format: `format-NAME` is the text of a link,
//! `format-NAME-about` a sentence on the page about the data.

use serde::Serialize;

use super::address::{Address, Overview};
use super::book::Here;
use super::exports::{Export, Subject};
use super::html::CleanHtml;

/// A link from a page to a file.
#[derive(Clone, Serialize)]
pub(crate) struct ExportLink {
    #[serde(skip)]
    format: &'static str,
    href: String,
    text: String,
    media_type: &'static str,
    relation: &'static str,
}

impl ExportLink {
    /// Whether the file describes the page to other programs (relation `describedby`, RFC 8288 registry).
    pub fn describes(&self) -> bool {
        self.relation == "describedby"
    }
}

impl Here<'_> {
    /// Links to the files that are made from the content of this page.
    pub fn export_links(&self) -> Vec<ExportLink> {
        self.links_to_files_of(self.address)
    }

    /// The link to the feed of changes; `None` before the first edition.
    pub fn feed_link(&self) -> Option<ExportLink> {
        let changes = Address::Overview(Overview::Changes);
        let mut links = self.links_to_files_of(&changes).into_iter();
        links.find(|link| link.media_type == "application/atom+xml")
    }

    fn links_to_files_of(&self, page: &Address) -> Vec<ExportLink> {
        let files = &self.book.exports.files;
        let files = files.get(&Subject::Page(page.clone()));
        let link = |file: &Export| ExportLink {
            format: file.format,
            href: self.href_file(&file.path),
            text: self
                .words()
                .word(&format!("format-{}", file.format))
                .to_owned(),
            media_type: file.media_type,
            relation: file.relation,
        };
        files.into_iter().flatten().map(link).collect()
    }

    /// The same, of some formats alone, by name.
    pub fn export_links_of(&self, formats: &[&str]) -> Vec<ExportLink> {
        let links = self.export_links().into_iter();
        links
            .filter(|link| formats.contains(&link.format))
            .collect()
    }

    /// The sentences about the formats, in the order of the formats. A format without a sentence, or without a file in
    /// this catalogue, is left out.
    pub fn exports_described(&self) -> CleanHtml {
        let words = self.words();
        let site = self.public().settings.address.value.trim_end_matches('/');
        let exports = self.book.exports;
        let has_files = |name: &str| {
            let mut files = exports.files.values().flatten();
            files.any(|file| file.format == name)
        };
        let formats = exports
            .formats
            .iter()
            .filter(|format| has_files(format.name));
        let described = formats.filter_map(|format| {
            let id = format!("format-{}-about", format.name);
            let folder = format.folders.first()?;
            let address = CleanHtml::text(&format!("{site}/{folder}"));
            let address = CleanHtml::span("quotable", &address);
            words
                .has(&id)
                .then(|| words.html(&id, None, &[("address", &address)]))
        });
        CleanHtml::join(&described.collect::<Vec<_>>(), " ")
    }
}
