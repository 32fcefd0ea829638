//! References whose target may be in what could not be read.
//!
//! A record with a fault of syntax is read in part, one whose file has a faulty name not at all, and
//! a part whose key is faulty cannot be found. References to them would be reported although the
//! target is recorded, and those findings would go away with the fault; they are left out.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Sources;
use crate::read::files::load::Loaded;
use crate::read::files::walk::folder_of;
use crate::read::files::walk::{ExpectedName, FileKind};

/// The codes that report references to parts of a design.
pub(crate) const PARTS: [Code; 4] = [
    Code::MatrixUnknown,
    Code::StateUnknown,
    Code::PrintingUnknown,
    Code::VariantUnknown,
];

/// What of a catalogue was not read: a reference may lead there.
#[derive(Default)]
pub(crate) struct Unread {
    /// For each design, the references to its parts that cannot be checked, as the codes that would
    /// report them.
    pub(crate) parts: BTreeMap<Key, BTreeSet<Code>>,
    /// Designs of which some picture, or some record, was not read, or only in part.
    pub(crate) pictures: BTreeSet<Key>,
    /// Designs of which some impression has no number, and so no record.
    impressions: BTreeSet<Key>,
    /// The folder of `records/` and the key that a record with a faulty name would have.
    misnamed: BTreeSet<(String, Key)>,
    literature: bool,
    exhibitions: bool,
    /// Lists of terms.
    terms: bool,
    /// Records that could not be read at all.
    holders: bool,
    people: bool,
}

impl Unread {
    /// Adds records that have no key, for their file or folder has a name that is none.
    pub(crate) fn add_misnamed(&mut self, loaded: &[Loaded], sources: &Sources) {
        for file in loaded {
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

    /// Adds the files that `findings` say could not be read, or only in part.
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
            loaded
                .iter()
                .any(|file| !file.readable && sources.path(file.file).starts_with(folder))
        };
        self.literature = any(&|path| path == "records/literature.bib");
        self.exhibitions = any(&|path| path == "records/exhibitions.toml");
        self.terms = any(&|path| path.starts_with("records/vocabulary/"));
        self.holders = unreadable("records/holders/");
        self.people = unreadable("records/people/");
    }

    /// Whether the target of a reference to nothing may be something that was not read. The fault that
    /// kept it from being read has a finding of its own.
    pub(crate) fn explains(&self, finding: &Finding, sources: &Sources) -> bool {
        let place = finding.at.place;
        let written = sources
            .text(place.file)
            .get(place.span())
            .unwrap_or_default();
        let named = written.trim_matches(['"', '\'']);
        // A link in a text writes the kind of the record before its key.
        let named = named.split_once(':').map_or(named, |(_, key)| key);
        let misnamed = |folder| self.is_misnamed(folder, named);
        match finding.code {
            Code::MatrixUnknown
            | Code::StateUnknown
            | Code::PrintingUnknown
            | Code::VariantUnknown => folder_of(sources.path(place.file))
                .and_then(|design| self.parts.get(&design))
                .is_some_and(|unjudged| unjudged.contains(&finding.code)),
            Code::PictureUnknown => !self.pictures.is_empty(),
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
