//! The result of a pull: what remains of a catalogue once its pages are made, or cannot be made.

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::alignment::AlignedPictures;
use super::cache::Cache;
use super::fault::PullFault;
use super::pictures::address;
use super::private_names::NameCheck;
use crate::issue::{Bundle, Bundled, SiteParts};
use crate::model::finding::{Finding, Tally};
use crate::model::key::PictureKey;
use crate::model::place::Sources;
use crate::page::Site;
use crate::picture::Prepared;

/// Findings, and the files they point into.
#[derive(Debug, Default)]
pub struct Report {
    /// The findings, in their order.
    pub findings: Vec<Finding>,
    /// The files of the catalogue.
    pub sources: Sources,
}

impl Report {
    /// How many findings of each severity there are.
    #[must_use]
    pub fn tally(&self) -> Tally {
        Tally::of(&self.findings)
    }
}

/// What remains of a catalogue once its pages are made. The records went into the pages.
#[derive(Debug)]
pub struct Pulled {
    /// The findings of [`super::judge`].
    pub report: Report,
    /// How many designs are recorded.
    pub designs: usize,
    /// How many impressions are recorded.
    pub impressions: usize,
    /// The pictures that may be published, prepared.
    pub prepared: BTreeMap<PictureKey, Prepared>,
    /// The cache of the catalogue.
    pub cache: Cache,
    pub(super) aligned: AlignedPictures,
    pub(super) names: NameCheck,
}

/// A catalogue of which no site could be made, although its records have no errors.
#[derive(Debug)]
pub struct NotPulled {
    /// Why.
    pub fault: PullFault,
    /// The findings of [`super::judge`].
    pub report: Report,
    /// The cache of the catalogue.
    pub cache: Cache,
}

impl Pulled {
    /// The files of `site` and its pictures, ready to be published.
    #[must_use]
    pub fn parts<'a>(&self, site: &'a Site) -> SiteParts<'a> {
        SiteParts {
            files: site
                .files
                .iter()
                .map(|(p, b)| (p.as_str(), b.as_slice()))
                .collect(),
            pictures: self.picture_files(),
            bundles: self.tile_bundles(),
        }
    }

    /// The published pictures: the prepared file of each, by address in the site.
    #[must_use]
    pub fn picture_files(&self) -> BTreeMap<String, PathBuf> {
        let derivatives = self.prepared.values().flat_map(|p| &p.derivatives);
        derivatives
            .map(|d| (address(&d.name), d.file.clone()))
            .chain(self.aligned.files.clone())
            .collect()
    }

    /// The tiles of the published pictures, by the address of their image service.
    #[must_use]
    pub fn tile_bundles(&self) -> BTreeMap<String, Bundle> {
        let bundled = self.prepared.iter().map(|(key, prepared)| {
            let service = &prepared.service;
            let files = service.files.iter().map(|file| Bundled {
                path: file.path.clone(),
                at: file.at.clone(),
            });
            let bundle = Bundle {
                pack: service.pack.clone(),
                content: service.content.clone(),
                files: files.collect(),
            };
            (address(&key.to_string()), bundle)
        });
        bundled.collect()
    }

    /// A sentence for each private name that stood in files which the site no longer has, or has otherwise:
    /// `outdated`, path and bytes. Consent was withdrawn since, or a field was listed as private.
    #[must_use]
    pub fn names_formerly_told(
        &self,
        outdated: impl Iterator<Item = (String, Vec<u8>)>,
    ) -> Vec<String> {
        self.names.formerly_told(outdated)
    }

    /// How many pictures that were to be aligned could not be.
    #[must_use]
    pub fn not_aligned(&self) -> usize {
        let registrations = self.aligned.alignments.registrations.values();
        registrations
            .filter(|r| r.onto_reference().is_none())
            .count()
    }

    /// How many pictures were made anew.
    #[must_use]
    pub fn pictures_made(&self) -> usize {
        self.prepared.values().filter(|p| p.made).count()
    }
}
