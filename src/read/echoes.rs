//! References whose target may stand in what could not be read.
//!
//! A record with a fault of syntax is read in part. What it names elsewhere, and what others name in
//! it, would give findings that go away with the fault; they are left out.

use std::collections::BTreeSet;

use super::load::Loaded;
use super::stray::folder_of;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Sources;

/// Which designs could be read only in part: their own record, or any record in their folder.
#[derive(Default)]
pub(super) struct Broken {
    /// Any record in the folder.
    pub(super) any: BTreeSet<Key>,
    /// The design's own record.
    pub(super) record: BTreeSet<Key>,
}
/// Files of which some was not read: what is named there may be there after all.
pub(super) struct Unread<'b> {
    broken: &'b Broken,
    literature: bool,
    exhibitions: bool,
    /// Lists of terms.
    terms: bool,
    /// Records that could not be read at all.
    holders: bool,
    people: bool,
}

pub(super) fn unread_parts<'b>(
    loaded: &[Loaded],
    sources: &Sources,
    broken: &'b Broken,
    findings: &[Finding],
) -> Unread<'b> {
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
    Unread {
        broken,
        literature: any(&|path| path == "records/literature.bib"),
        exhibitions: any(&|path| path == "records/exhibitions.toml"),
        terms: any(&|path| path.starts_with("records/vocabulary/")),
        holders: loaded.iter().any(|file| {
            let path = sources.path(file.file);
            !file.readable && path.starts_with("records/holders/")
        }),
        people: loaded.iter().any(|file| {
            let path = sources.path(file.file);
            !file.readable && path.starts_with("records/people/")
        }),
    }
}

impl Unread<'_> {
    /// Whether a reference to nothing may lead to something that was not read. Its fault is told
    /// already; this would only be its echo.
    pub(super) fn explains(&self, finding: &Finding, sources: &Sources) -> bool {
        let in_broken_design = || {
            folder_of(sources.path(finding.at.place.file))
                .is_some_and(|design| self.broken.record.contains(&design))
        };
        match finding.code {
            Code::MatrixUnknown
            | Code::StateUnknown
            | Code::PrintingUnknown
            | Code::VariantUnknown
            | Code::PointUnknown => in_broken_design(),
            Code::PictureUnknown => !self.broken.any.is_empty(),
            Code::LiteratureUnknown => self.literature,
            Code::ExhibitionUnknown => self.exhibitions,
            Code::TermUnknown => self.terms,
            Code::HolderUnknown => self.holders,
            Code::PersonUnknown => self.people,
            Code::PartyUnknown => self.holders || self.people,
            _ => false,
        }
    }
}
