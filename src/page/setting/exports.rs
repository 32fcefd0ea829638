//! The files of a site for other programs, as data. `exchange` lists them; `export_links` makes the
//! links.

use std::collections::BTreeMap;

use super::address::Address;
use crate::model::key::PictureKey;

/// The subject from which a file is made.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// The content of a page; the file is in the folder of the page.
    Page(Address),
    /// A published picture; the file is in the folder of its image service.
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

/// The data of a format that pages use.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExportFormat {
    /// Its name, which is also part of the ids of its words.
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
    /// Its relation to its subject (RFC 8288).
    pub relation: &'static str,
}
