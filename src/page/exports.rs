//! Files for other programs, as pages link to them.
//!
//! In: what `exchange` offers, as data. Out: links, each worded by its format: `format-NAME` is the text of
//! a link, `format-NAME-about` a sentence on the page about the data.

use std::collections::BTreeMap;

use serde::Serialize;

use super::address::Address;
use super::book::Here;
use super::html::CleanHtml;
use crate::model::key::PictureKey;

/// What a file is made of.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// What a page shows; the file stands in the folder of the page.
    Page(Address),
    /// A published picture; the file stands in the folder of its image service.
    Picture(PictureKey),
}

/// The files of a site for other programs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Exports {
    /// The formats, in the order in which pages name them.
    pub formats: Vec<ExportFormat>,
    /// The files of each subject, in the order of the formats.
    pub files: BTreeMap<Subject, Vec<Export>>,
}

/// A format, as far as pages tell of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExportFormat {
    /// Its name, by which its words are found.
    pub name: &'static str,
    /// The folders of its files, with `…` for the key of a record or picture.
    pub folders: &'static [&'static str],
}

/// A file for other programs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Export {
    /// The name of its format.
    pub format: &'static str,
    /// Its path, relative to the catalogue.
    pub path: String,
    /// Its media type (RFC 6838).
    pub media_type: &'static str,
    /// Its relation to what it is made of (RFC 8288).
    pub relation: &'static str,
}

/// A link from a page to a file.
#[derive(Serialize)]
pub(crate) struct ExportLink {
    href: String,
    text: String,
    media_type: &'static str,
    relation: &'static str,
}

impl Here<'_> {
    /// Links to the files that are made of what this page shows.
    pub fn export_links(&self) -> Vec<ExportLink> {
        let files = &self.book.exports.files;
        let files = files.get(&Subject::Page(self.address.clone()));
        let link = |file: &Export| ExportLink {
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

    /// What each format is, in the order of the formats. Formats without a sentence are left out.
    pub fn exports_described(&self) -> CleanHtml {
        let words = self.words();
        let site = self.public().settings.address.value.trim_end_matches('/');
        let described = self.book.exports.formats.iter().filter_map(|format| {
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
