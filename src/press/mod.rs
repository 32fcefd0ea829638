//! Runs the stages: `judge` (read, study, audit), then `pull` (pictures, alignment, pages).
//!
//! [`judge`] reads a catalogue and gives it as [`Judged`], with everything that is wrong or doubtful in
//! it. [`Judged::pull`] makes the site of a catalogue without errors: it takes the judged catalogue, hands
//! out each file of the site as it is made, and gives [`Pulled`], which holds what is needed afterwards.
//! The command line, the tests and the served proof all go through these two functions. [`last_compile`] keeps
//! what the last compile read and printed.
#![allow(
    clippy::disallowed_methods,
    reason = "asks whether a photograph is there, and keeps what the last compile said"
)]

pub mod alignment;
mod files;
pub mod last_compile;
mod pictures;

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::path::{Path, PathBuf};

use crate::audit;
use crate::exchange;
use crate::issue::{Bundle, Bundled, SiteParts};
use crate::model::catalogue::Catalogue;
use crate::model::finding::{self, Finding, Severity, Tally};
use crate::model::key::PictureKey;
use crate::model::place::Sources;
use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::page::{self, Pictures, PublishedPicture, PublishedSize, Site, Take, ThemeFault, Tiles};
use crate::picture::{Fault, Prepared, tiles};
use crate::read;
use crate::study::Studies;

pub use files::site;

/// Where a catalogue keeps what it need not make twice.
pub const CACHE: &str = ".keyblock";

/// A catalogue, what was computed from it, and all that is wrong or doubtful in it.
#[derive(Debug)]
pub struct Judged {
    /// Everything recorded.
    pub catalogue: Catalogue,
    /// Everything computed.
    pub studies: Studies,
    /// The theme its pages are set in.
    pub theme: Theme,
    /// The pictures that may be published, prepared.
    pub prepared: BTreeMap<PictureKey, Prepared>,
    /// The catalogue's folder.
    dir: PathBuf,
    /// Why not all of them could be kept: then there is no site.
    pub disk_fault: Option<DiskFault>,
    /// The findings, in their order.
    pub findings: Vec<Finding>,
}

/// The disk failed while pictures were prepared. Nothing is wrong with the records.
#[derive(Clone, Debug)]
pub struct DiskFault(Fault);

impl DiskFault {
    /// What to do.
    #[must_use]
    pub fn help(&self) -> &'static str {
        self.0.help()
    }
}

impl fmt::Display for DiskFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the disk failed: {}", self.0)
    }
}

impl std::error::Error for DiskFault {}

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

/// A catalogue whose pages were made. The records went into the pages; this is what remains.
#[derive(Debug)]
pub struct Pulled {
    /// The findings of [`judge`].
    pub report: Report,
    /// How many designs are recorded.
    pub designs: usize,
    /// How many impressions are recorded.
    pub impressions: usize,
    /// The pictures that may be published, prepared.
    pub prepared: BTreeMap<PictureKey, Prepared>,
    aligned: alignment::AlignedPictures,
}

/// A catalogue of which no site could be made, although its records have no errors.
#[derive(Debug)]
pub struct NotPulled {
    /// Why.
    pub fault: PullFault,
    /// The findings of [`judge`].
    pub report: Report,
}

/// Why no site could be made of a catalogue without errors.
#[derive(Debug)]
pub enum PullFault {
    /// A template or word of the catalogue's own theme is broken.
    Theme(ThemeFault),
    /// The disk failed.
    Disk(DiskFault),
}

impl fmt::Display for PullFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PullFault::Theme(fault) => fault.fmt(f),
            PullFault::Disk(fault) => fault.fmt(f),
        }
    }
}

impl std::error::Error for PullFault {}

impl From<ThemeFault> for PullFault {
    fn from(fault: ThemeFault) -> PullFault {
        PullFault::Theme(fault)
    }
}

impl From<DiskFault> for PullFault {
    fn from(fault: DiskFault) -> PullFault {
        PullFault::Disk(fault)
    }
}

/// What to do with pictures while judging.
pub enum PictureWork<'a> {
    /// Prepare them in the catalogue's cache; told how many are done, of how many.
    Prepare(&'a (dyn Fn(usize, usize) + Sync)),
    /// Write nothing: read those that are not in the cache, and forget them.
    ReadOnly(&'a (dyn Fn(usize, usize) + Sync)),
}

/// Reads the catalogue in `dir` and judges it.
#[must_use]
pub fn judge(dir: &Path, work: &PictureWork<'_>) -> Judged {
    judge_inputs(dir, &read::Inputs::of(dir), work)
}

/// Judges the catalogue in `dir` by its files as they stood when they were looked through.
#[must_use]
pub fn judge_inputs(dir: &Path, inputs: &read::Inputs, work: &PictureWork<'_>) -> Judged {
    let read::Reading {
        catalogue,
        mut findings,
    } = read::read_inputs(dir, inputs);
    let (theme, theme_findings) = read::theme(dir, &catalogue.settings.theme);
    let studies = Studies::of(&catalogue);
    let said = without_echoes(audit::audit(&catalogue, &studies), &findings);
    let worked = pictures::work_on(dir, &catalogue, work);
    findings.extend(theme_findings);
    findings.extend(said);
    findings.extend(worked.findings);
    finding::sort(&mut findings, &catalogue.sources);
    Judged {
        catalogue,
        studies,
        theme,
        prepared: worked.prepared,
        dir: dir.to_owned(),
        disk_fault: worked.disk_fault,
        findings,
    }
}

/// What the audit says, without doubts and hints about files of which something could not be read. A
/// value that cannot be read counts as absent, and what seems doubtful without it need not be so with
/// it: doubts wait until the record is sound.
fn without_echoes(said: Vec<Finding>, of_reading: &[Finding]) -> Vec<Finding> {
    let errors = of_reading
        .iter()
        .filter(|finding| finding.severity() == Severity::Error);
    let faulty: BTreeSet<_> = errors.map(|finding| finding.at.place.file).collect();
    let is_sound = |finding: &Finding| {
        let mut places = std::iter::once(&finding.at).chain(&finding.also);
        places.all(|label| !faulty.contains(&label.place.file))
    };
    let mut said = said;
    said.retain(|finding| finding.severity() == Severity::Error || is_sound(finding));
    said
}

impl Judged {
    /// How many findings of each severity there are.
    #[must_use]
    pub fn tally(&self) -> Tally {
        Tally::of(&self.findings)
    }

    /// The findings alone.
    #[must_use]
    pub fn into_report(self) -> Report {
        Report {
            findings: self.findings,
            sources: self.catalogue.sources,
        }
    }

    /// Aligns the pictures, makes every page and hands each file of the site to `take`: its path and its
    /// bytes. The records go into the pages, so that a large catalogue is not held twice.
    ///
    /// `progress` is told how many steps of aligning are done, of how many. Either function may be called
    /// from several threads and out of order.
    ///
    /// # Errors
    /// [`NotPulled`] where a template or word of the catalogue's own theme is broken, or where pictures
    /// that pages would show could not be kept. Some files may have been handed out by then.
    pub fn pull(
        self,
        progress: &(dyn Fn(usize, usize) + Sync),
        take: &Take<'_>,
    ) -> Result<Pulled, Box<NotPulled>> {
        let Judged {
            mut catalogue,
            studies,
            theme,
            prepared,
            dir,
            disk_fault,
            findings,
        } = self;
        let report = Report {
            findings,
            sources: std::mem::take(&mut catalogue.sources),
        };
        let designs = catalogue.designs.len();
        let impressions = catalogue.impressions().count();
        let make_pages = || -> Result<alignment::AlignedPictures, PullFault> {
            if let Some(fault) = disk_fault {
                return Err(fault.into());
            }
            let plan = pictures::plan(&catalogue);
            let is_published = |key: &PictureKey| prepared.contains_key(key);
            let aligned = alignment::align_all(&dir, &catalogue, &plan, is_published, progress)?;
            let private_owner = page::private_owner(&theme, &catalogue.settings);
            let public = Public::of(catalogue, &private_owner);
            let pictures = published_pictures(&prepared);
            let input = page::Input {
                public: &public,
                studies: &studies,
                pictures: &pictures,
                alignments: &aligned.alignments,
                exports: &exchange::exports(&public, &studies, &pictures),
                theme: &theme,
            };
            files::each(&input, take)?;
            Ok(aligned)
        };
        match make_pages() {
            Ok(aligned) => Ok(Pulled {
                report,
                designs,
                impressions,
                prepared,
                aligned,
            }),
            Err(fault) => Err(Box::new(NotPulled { fault, report })),
        }
    }

    /// Does the same as [`Judged::pull`], and holds all files of the site in memory.
    ///
    /// # Errors
    /// [`NotPulled`], as [`Judged::pull`].
    pub fn pull_site(
        self,
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<(Pulled, Site), Box<NotPulled>> {
        Site::gathered(|take| self.pull(progress, take))
    }
}

impl Pulled {
    /// The files of `site` with its pictures, ready to be published.
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

    /// The published pictures: address in the site, and the prepared file.
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

/// What pages are told of the prepared pictures.
fn published_pictures(prepared: &BTreeMap<PictureKey, Prepared>) -> Pictures {
    let published = prepared.iter().map(|(key, prepared)| {
        let sizes = prepared.derivatives.iter().map(|d| PublishedSize {
            width: d.width,
            height: d.height,
            address: address(&d.name),
        });
        let picture = PublishedPicture {
            width: prepared.width,
            height: prepared.height,
            sizes: sizes.collect(),
            tiles: Tiles {
                address: address(&key.to_string()),
                width: prepared.service.width,
                height: prepared.service.height,
                side: tiles::SIDE,
                factors: tiles::factors((prepared.service.width, prepared.service.height)),
            },
        };
        (key.clone(), picture)
    });
    published.collect()
}

fn address(name: &str) -> String {
    format!("picture/{name}")
}
