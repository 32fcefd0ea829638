//! Files for other programs: the files of a site that are not pages; and what others hand in ([`intake`]).
//!
//! In: the book of pages ([`crate::page`]). Out: files in open formats, each in the folder of the page
//! or picture from which it is made.
//!
//! [`FORMATS`] is the table of formats. A format is one file of this folder, with a function that lists
//! its subjects and one that writes a file. To add one: that file, a line of the table, and its words
//! `format-NAME` (the text of a link) and `format-NAME-about` (a sentence of the page about the data).
//! [`WHOLE`] is the table of formats whose files are all made in one pass over the catalogue; the pages that name
//! their files know them by name. Pages get their links as data ([`exports`]) and import nothing from here.
//!
//! | file | subject |
//! |---|---|
//! | `format` | the table's types: a format, and the data from which its files are made |
//! | `atom` | the feed of changes |
//! | `census_csv` | the counts of a census as a table |
//! | `editions_csv` | declared editions against the numbers met, as a table |
//! | `spreadsheet` | comma-separated values, the format of both |
//! | `citation` | citations for reference managers: BibTeX, CSL-JSON, RIS |
//! | `search_index` | the index of the search in the browser, in one pass |
//! | `resolve_index` | the names, numbers and keys by which references are resolved here and on other sites, in one pass |
//! | `issued` | what editions issued of sheets and pictures: their files stay |
//! | `tag` | the tag of files that are loaded together |
//! | `redirect_rules` | the redirects for servers: three forms of one list, in one pass |
//! | `tables` | everything public as tables, in one pass; the sheets of a holder |
//! | `forms` | the forms that readers fill in and send, and the sheets of a holder to correct |
//! | `image_service` | the `info.json` of a picture (IIIF Image API) |
//! | `lido` | the sheets of a design as museums exchange them |
//! | `oai` | all sheets for harvesters, in Dublin Core and LIDO |
//! | `sitemap` | the addresses of all pages, in one pass |
//! | `xml` | XML documents |
//! | `workbook` | workbooks for spreadsheet programs |
//! | `iiif` | manifests, points and the words of documents as annotations, collections (IIIF Presentation API) |
//! | `linked_art` | Linked Art: designs, states, printings, impressions, provenance, series, holders, people, documents |
//! | `intake` | what museums and dealers hand in, read into data |
//!
//! Not here: the tiles of an image service (`picture`), writing to disk (`issue`).

mod atom;
mod census_csv;
mod citation;
mod editions_csv;
mod format;
mod forms;
mod iiif;
mod image_service;
pub mod intake;
mod issued;
mod lido;
mod linked_art;
mod oai;
mod redirect_rules;
mod resolve_index;
mod search_index;
mod sitemap;
mod spreadsheet;
mod tables;
mod tag;
mod workbook;
mod xml;

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::model::public::Public;
use crate::page::{Book, Export, ExportFormat, Exports, Pictures, Subject, Take};
use crate::study::PublishedStudies;
use format::Sources;
pub use format::{Format, WholeFormat};

/// Every format, in the order in which a page links to its files.
pub const FORMATS: &[Format] = &[
    census_csv::FORMAT,
    editions_csv::FORMAT,
    image_service::FORMAT,
    linked_art::RECORDS,
    linked_art::HISTORIES,
    linked_art::TEXTS,
    iiif::MANIFESTS,
    iiif::COLLECTIONS,
    citation::bibtex::FORMAT,
    citation::csl_json::FORMAT,
    citation::ris::FORMAT,
    atom::FORMAT,
    tables::holder_sheets::CSV,
    tables::holder_sheets::JSON,
    forms::holder_workbook::FORMAT,
    lido::FORMAT,
    oai::FORMAT,
];

/// Every format whose files one pass over the catalogue makes.
pub const WHOLE: &[WholeFormat] = &[
    search_index::FORMAT,
    resolve_index::FORMAT,
    redirect_rules::FORMAT,
    tables::FORMAT,
    forms::FORMAT,
    sitemap::FORMAT,
];

/// The files of each format, as data for the links on pages.
#[must_use]
pub fn exports(public: &Public, studies: &PublishedStudies, pictures: &Pictures) -> Exports {
    let sources = Sources {
        public,
        studies,
        pictures,
    };
    let mut files: BTreeMap<Subject, Vec<Export>> = BTreeMap::new();
    for format in FORMATS {
        for subject in (format.subjects)(&sources) {
            let Some(path) = format.path(&subject, pictures) else {
                continue;
            };
            files.entry(subject).or_default().push(Export {
                format: format.name,
                path,
                media_type: format.media_type,
                relation: format.relation,
            });
        }
    }
    let formats = FORMATS.iter().map(|format| ExportFormat {
        name: format.name,
        folders: format.folders,
    });
    Exports {
        formats: formats.collect(),
        files,
        tables: tables::notes(sources),
        holder_table: tables::holder_sheets::columns(),
    }
}

/// Makes every file that the book's exports name, and those of the formats of the whole, and passes each to `take`,
/// from several threads and in no particular order.
pub(crate) fn each(book: &Book<'_>, take: &Take<'_>) {
    for format in WHOLE {
        (format.each)(book, take);
    }
    let paths = book.exports.files.values().flatten();
    let paths: BTreeSet<&str> = paths.map(|file| file.path.as_str()).collect();
    book.exports.files.par_iter().for_each(|(subject, files)| {
        for file in files {
            let format = FORMATS.iter().find(|format| format.name == file.format);
            let bytes = format.and_then(|format| format.bytes(book, subject));
            if let Some(bytes) = bytes {
                // A program that asks for a file at a former address cannot follow a page that leads elsewhere, so it
                // gets the file. Tiles and pictures are not copied: their service says where they are now.
                let is_taken = |path: &str| paths.contains(path);
                for other in book.redirects.copies(&file.path, is_taken) {
                    take(other, bytes.clone());
                }
                take(file.path.clone(), bytes);
            }
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::Words;
    use crate::read;

    /// Relations of the registry "Link Relation Types" (IANA, 2025) that lead from a page to another form of
    /// its content, or to a description of it.
    const RELATIONS: [&str; 6] = [
        "alternate",
        "cite-as",
        "collection",
        "describedby",
        "item",
        "service-desc",
    ];

    #[test]
    fn every_format_has_words_in_every_language_and_a_registered_relation() {
        let theme = read::theme::built_in();
        for format in FORMATS {
            for language in Words::languages(&theme) {
                let words = Words::new(&theme, &language).unwrap();
                let id = format!("format-{}", format.name);
                assert!(words.has(&id), "{language} lacks {id}");
            }
            assert!(RELATIONS.contains(&format.relation), "{}", format.name);
            let (kind, of_kind) = format.media_type.split_once('/').unwrap();
            assert!(["application", "text"].contains(&kind) && !of_kind.is_empty());
        }
        let names: BTreeSet<&str> = FORMATS.iter().map(|format| format.name).collect();
        assert_eq!(names.len(), FORMATS.len(), "a name stands twice");
    }
}
