//! Leaves out findings on references whose target may be in a part that could not be read.
//!
//! A record with a syntax fault is read in part; a record whose file has an invalid name is not read; a
//! part with a faulty key cannot be found. A reference to any of them would be reported although its
//! target is recorded. Such findings would disappear once the fault is mended, so they are left out.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Sources;
use crate::read::files::kind::{ExpectedName, FileKind, folder_of};
use crate::read::files::load::Loaded;

/// The codes that report references to parts of a design.
pub(crate) const PARTS: [Code; 4] = [
    Code::MatrixUnknown,
    Code::StateUnknown,
    Code::PrintingUnknown,
    Code::VariantUnknown,
];

/// The parts of a catalogue that were not read, to which a reference may lead.
#[derive(Default)]
pub(crate) struct Unread {
    /// For each design, the references to its parts that cannot be checked, as the codes that would
    /// report them.
    pub(crate) parts: BTreeMap<Key, BTreeSet<Code>>,
    /// Designs with a picture or a record that was not read, or only in part.
    pub(crate) pictures: BTreeSet<Key>,
    /// Designs with an impression file that cannot be read, or has no number and so is not read.
    impressions: BTreeSet<Key>,
    /// For each record with an invalid name, its folder in `records/` and the key it would have.
    misnamed: BTreeSet<(String, Key)>,
    literature: bool,
    exhibitions: bool,
    /// Lists of terms.
    terms: bool,
    /// Records that could not be read at all.
    holders: bool,
    people: bool,
    marks: bool,
    documents: bool,
    series: bool,
    /// Whether a document has pictures that were not read.
    pub(crate) pictures_of_documents: bool,
}

impl Unread {
    /// Adds records that were not read at all: files that cannot be read, and those without a key, because
    /// the name of their file or folder is not a valid key.
    pub(crate) fn add_unread(&mut self, loaded: &[Loaded], sources: &Sources) {
        for file in loaded {
            if let (FileKind::Impression(key), false) = (&file.kind, file.readable) {
                self.impressions.insert(key.design.clone());
                self.pictures.insert(key.design.clone());
            }
            let FileKind::NoKey { name, wanted } = &file.kind else {
                continue;
            };
            let path = sources.path(file.file);
            match wanted {
                ExpectedName::Number => {
                    self.impressions.extend(folder_of(path));
                    self.pictures.extend(folder_of(path));
                }
                ExpectedName::Key => {
                    let below = path.strip_prefix("records/").unwrap_or(path);
                    let folder = below.split('/').next().unwrap_or(below);
                    let key = Key::nearest_form(name);
                    self.misnamed
                        .extend(key.map(|key| (folder.to_owned(), key)));
                }
            }
        }
    }

    /// Adds the files that, according to `findings`, could not be read, or only in part.
    pub(crate) fn add_faulty(
        &mut self,
        loaded: &[Loaded],
        sources: &Sources,
        findings: &[Finding],
    ) {
        let faulty: BTreeSet<&str> = findings
            .iter()
            .filter(|finding| {
                matches!(
                    finding.code,
                    Code::TomlSyntax
                        | Code::BibtexSyntax
                        | Code::TextNotUtf8
                        | Code::FileTooLarge
                        | Code::MergeUnfinished
                        | Code::NestedTooDeep
                        | Code::PathLeaves
                        | Code::FileUnreadable
                        | Code::KeyForm
                        | Code::ValueType
                )
            })
            .map(|finding| sources.path(finding.at.place.file))
            .collect();
        let any = |is: &dyn Fn(&str) -> bool| {
            loaded.iter().any(|file| {
                let path = sources.path(file.file);
                is(path) && faulty.contains(path)
            })
        };
        let unreadable = |folder: &str| {
            let is_around = |path: &str| {
                folder
                    .strip_prefix(path)
                    .is_some_and(|f| f.starts_with('/'))
            };
            loaded.iter().any(|file| {
                let path = sources.path(file.file);
                !file.readable && (path.starts_with(folder) || is_around(path))
            })
        };
        self.literature = any(&|path| path == "records/literature.bib");
        self.exhibitions = any(&|path| path == "records/exhibitions.toml");
        self.terms = any(&|path| path.starts_with("records/vocabulary/"));
        self.holders = unreadable("records/holders/");
        self.people = unreadable("records/people/");
        self.marks = unreadable("records/marks/");
        self.documents = unreadable("records/documents/");
        self.series = unreadable("records/series/");
    }

    /// Whether the missing target of a reference may be something that was not read. The fault that kept it
    /// from being read has a finding of its own.
    pub(crate) fn explains(&self, finding: &Finding, sources: &Sources) -> bool {
        let place = finding.at.place;
        let written = sources
            .text(place.file)
            .get(place.span())
            .unwrap_or_default();
        let named = written.trim_matches(['"', '\'']);
        // A link in a text has the kind of the record before its key.
        let named = named.split_once(':').map_or(named, |(_, key)| key);
        let misnamed = |folder| self.is_misnamed(folder, named);
        match finding.code {
            Code::MatrixUnknown
            | Code::StateUnknown
            | Code::PrintingUnknown
            | Code::VariantUnknown => folder_of(sources.path(place.file))
                .and_then(|design| self.parts.get(&design))
                .is_some_and(|unjudged| unjudged.contains(&finding.code)),
            Code::PictureUnknown => !self.pictures.is_empty() || self.pictures_of_documents,
            Code::DesignUnknown => misnamed("designs"),
            Code::ImpressionUnknown => named.split_once('.').is_some_and(|(design, _)| {
                self.impressions.contains(design) || self.is_misnamed("designs", design)
            }),
            Code::LiteratureUnknown => self.literature,
            Code::ExhibitionUnknown => self.exhibitions,
            Code::TermUnknown => self.terms,
            Code::HolderUnknown => self.holders || misnamed("holders"),
            Code::PersonUnknown => self.people || misnamed("people"),
            Code::PartyUnknown => {
                self.holders || self.people || misnamed("holders") || misnamed("people")
            }
            Code::MarkUnknown => self.marks || misnamed("marks"),
            Code::DocumentUnknown => self.documents || misnamed("documents"),
            Code::SeriesUnknown => self.series || misnamed("series"),
            Code::PageUnknown => misnamed("pages"),
            _ => false,
        }
    }

    fn is_misnamed(&self, folder: &str, key: &str) -> bool {
        self.misnamed
            .iter()
            .any(|(of, name)| of == folder && name.as_str() == key)
    }
}
