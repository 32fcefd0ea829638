//! Links to files for other programs, worded by format: `format-NAME` is the text of a link,
//! `format-NAME-about` a sentence on the page about the data.

use serde::Serialize;

use super::address::{Address, Overview};
use super::book::Here;
use super::exports::{DesignPart, Export, Subject};
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

    /// Whether the file is JSON-LD, which has links to other records.
    pub fn is_linked_data(&self) -> bool {
        self.media_type.starts_with("application/ld+json")
    }
}

impl Here<'_> {
    /// Links to the files that are made from the content of this page, then to those of its parts.
    pub fn export_links(&self) -> Vec<ExportLink> {
        let mut links = self.links_to_files_of(self.address);
        links.extend(self.files_of_parts());
        links
    }

    /// The link to the feed of changes; `None` before the first edition.
    pub fn feed_link(&self) -> Option<ExportLink> {
        let changes = Address::Overview(Overview::Changes);
        let mut links = self.links_to_files_of(&changes).into_iter();
        links.find(|link| link.media_type == "application/atom+xml")
    }

    fn links_to_files_of(&self, page: &Address) -> Vec<ExportLink> {
        let files = self.book.exports.files.get(&Subject::Page(page.clone()));
        let files = files.into_iter().flatten();
        files.map(|file| self.link_to_file(file, None)).collect()
    }

    fn link_to_file(&self, file: &Export, part: Option<&DesignPart>) -> ExportLink {
        let id = format!("format-{}", file.format);
        let format = self.words().word(&id);
        ExportLink {
            format: file.format,
            href: self.href_file(&file.path),
            text: match part {
                Some(part) => format!("{format}: {}", self.part_name(part)),
                None => format.to_owned(),
            },
            media_type: file.media_type,
            // A design is the collection of its parts.
            relation: part.map_or(file.relation, |_| "item"),
        }
    }

    /// The files of the parts of a design, on the page of the design.
    fn files_of_parts(&self) -> Vec<ExportLink> {
        let Address::Design(design) = self.address else {
            return Vec::new();
        };
        let Some(design) = self.public().designs.get(design) else {
            return Vec::new();
        };
        let states = design.states.iter();
        let states = states.map(|state| DesignPart::State(state.key.value.clone()));
        let printings = design.printings.iter();
        let printings = printings.map(|printing| DesignPart::Printing(printing.key.value.clone()));
        let matrices = design.matrices.iter();
        let matrices = matrices.map(|matrix| DesignPart::Matrix(matrix.key.value.clone()));
        let files = &self.book.exports.files;
        let parts = states.chain(printings).chain(matrices);
        parts
            .flat_map(|part| {
                let subject = Subject::Part(design.key.clone(), part.clone());
                let links = files.get(&subject).into_iter().flatten();
                links
                    .map(|file| self.link_to_file(file, Some(&part)))
                    .collect::<Vec<_>>()
            })
            .collect()
    }

    /// The name of a part of this page's design.
    fn part_name(&self, part: &DesignPart) -> String {
        let Address::Design(key) = self.address else {
            return part.to_string();
        };
        let Some(design) = self.public().designs.get(key) else {
            return part.to_string();
        };
        match part {
            DesignPart::State(state) => {
                let numeral = self.book.studies.numeral(key, state);
                let numeral = numeral.filter(|numeral| !numeral.is_only());
                let word = self.words().word("state");
                match numeral {
                    Some(numeral) => format!("{word} {}", numeral.roman()),
                    None => format!("{word} {state}"),
                }
            }
            DesignPart::Printing(printing) => {
                let printing = design.printing(printing);
                let name = printing.and_then(|printing| printing.name.clone());
                name.unwrap_or_else(|| part.to_string())
            }
            DesignPart::Matrix(matrix) => matrix.as_str().replace('-', " "),
        }
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
    pub fn exports_described(&self) -> Vec<CleanHtml> {
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
            let address = CleanHtml::span("address", &address);
            words
                .has(&id)
                .then(|| words.html(&id, None, &[("address", &address)]))
        });
        described.collect()
    }
}
