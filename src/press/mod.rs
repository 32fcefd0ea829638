//! Runs the stages: `judge` (read, study, audit), then `pull` (pictures, alignment, pages).
//!
//! [`judge`] reads a catalogue and gives it as [`Judged`], with everything that is wrong or doubtful in
//! it. [`Judged::pull`] makes the site of a catalogue without errors: it takes the judged catalogue, hands
//! out each file of the site as it is made, and gives [`Pulled`], which holds what is needed afterwards.
//! The command line, the tests and the served proof all go through these two functions. [`last_compile`]
//! keeps what the last compile read and printed.
//!
//! Reading order: [`pulled`] is the result of a pull, [`fault`] its failures; [`pictures`] prepares the
//! photographs, [`alignment`] aligns them and [`small`] cuts small pictures, all with results in the [`cache`]; [`files`] makes the rest
//! of the site, and [`private_names`] searches each file before it is handed out. [`sources`] tells where no
//! site may be published. [`references`] resolves references without a pull. [`intake`] reads what others hand in, into the
//! inbox.
#![allow(
    clippy::disallowed_methods,
    reason = "asks whether a photograph is there and where paths lead, and keeps what the last compile printed"
)]

pub(crate) mod alignment;
pub(crate) mod cache;
mod fault;
mod files;
pub mod intake;
pub(crate) mod last_compile;
mod pictures;
mod private_names;
mod pulled;
pub(crate) mod references;
mod small;
mod sources;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::audit;
use crate::audit::settled::{self, Divided, SettledFinding};
use crate::exchange;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::{self, Finding, Severity, Tally};
use crate::model::issued_address::IssuedAddress;
use crate::model::key::PictureKey;
use crate::model::public::Concealed;
use crate::model::register::{IssuedEdition, Register};
use crate::model::theme::Theme;
use crate::page::{self, Site, Take};
use crate::picture::Prepared;
use crate::read;
use crate::study::issued::advance::advanced;
use crate::study::issued::present::Present;
use crate::study::{PublishedStudies, Studies};

use private_names::NameCheck;

pub use cache::Cache;
pub use fault::{DiskFault, PullFault};
pub use files::site;
pub use pictures::PictureWork;
pub use pulled::{NotPulled, Pulled, Report};
pub use sources::{SourceClash, source_clash};

/// A catalogue that was read, what was computed from it, and all that is wrong or doubtful in it.
#[derive(Debug)]
pub struct Judged {
    /// Everything recorded.
    pub catalogue: Catalogue,
    /// Everything computed from that.
    pub studies: Studies,
    /// The theme its pages are set in.
    pub theme: Theme,
    /// The pictures that may be published, prepared.
    pub prepared: BTreeMap<PictureKey, Prepared>,
    /// The catalogue's folder.
    dir: PathBuf,
    /// The cache of the catalogue.
    pub cache: Cache,
    /// The fault of the disk, where not all pictures could be kept anywhere: then there is no site.
    pub disk_fault: Option<DiskFault>,
    /// The findings, in their order, without those that are settled.
    pub findings: Vec<Finding>,
    /// The findings that records say are settled, in their order.
    pub settled: Vec<SettledFinding>,
}

/// Reads the catalogue in `dir` and judges it.
#[must_use]
pub fn judge(dir: &Path, work: &PictureWork<'_>) -> Judged {
    judge_inputs(dir, &read::Inputs::of(dir), work, Cache::of(dir))
}

/// Judges the catalogue in `dir` by the files that `inputs` listed.
#[must_use]
pub(crate) fn judge_inputs(
    dir: &Path,
    inputs: &read::Inputs,
    work: &PictureWork<'_>,
    cache: Cache,
) -> Judged {
    let read::Reading {
        catalogue,
        mut findings,
    } = read::read_inputs(dir, inputs);
    let (theme, theme_findings) = read::theme(dir, &catalogue.published_settings().theme);
    let studies = Studies::of(&catalogue);
    let audited = without_echoes(audit::audit(&catalogue, &studies), &findings);
    let pictures = pictures::prepare(dir, &catalogue, work, &cache);
    findings.extend(theme_findings);
    findings.extend(audited);
    findings.extend(pictures.findings);
    finding::sort(&mut findings, &catalogue.sources);
    let Divided { open, settled } = settled::divide(findings, &catalogue);
    Judged {
        catalogue,
        studies,
        theme,
        prepared: pictures.prepared,
        dir: dir.to_owned(),
        cache,
        disk_fault: pictures.disk_fault,
        findings: open,
        settled,
    }
}

/// The findings of the audit, without doubts and hints about files with errors of reading. A value that
/// cannot be read counts as absent, and what seems doubtful without it need not be so with it. So doubts
/// about a record are reported once it is sound.
fn without_echoes(audited: Vec<Finding>, of_reading: &[Finding]) -> Vec<Finding> {
    let errors = of_reading
        .iter()
        .filter(|finding| finding.severity() == Severity::Error);
    let faulty: BTreeSet<_> = errors.map(|finding| finding.at.place.file).collect();
    let is_sound = |finding: &Finding| {
        let mut places = std::iter::once(&finding.at).chain(&finding.also);
        places.all(|label| !faulty.contains(&label.place.file))
    };
    let mut audited = audited;
    // A holder whose kind cannot be read counts as private, so its key is judged once the record is sound.
    let always = |finding: &Finding| {
        finding.severity() == Severity::Error && finding.code != Code::PrivateKeyTelling
    };
    audited.retain(|finding| always(finding) || is_sound(finding));
    audited
}

impl Judged {
    /// How many findings of each severity there are.
    #[must_use]
    pub fn tally(&self) -> Tally {
        Tally::of(&self.findings)
    }

    /// Adds an edition to the register: every address that readers may know, and how its entry reads now. The site
    /// that is pulled afterwards is that of the edition.
    pub fn with_edition(&mut self, edition: IssuedEdition) -> &Register {
        let catalogue = &self.catalogue;
        let private_owner = page::private_owner(&self.theme, catalogue.published_settings());
        let concealed = Concealed::of(catalogue.clone(), &private_owner);
        let studies = PublishedStudies::of(&concealed, self.studies.clone());
        let present = Present::of(&concealed.into_public(), &studies);
        let issued = catalogue.register.clone().unwrap_or_default();
        let leads = |address: &IssuedAddress| catalogue.leads(address);
        let next = advanced(&issued, &present, edition, &leads);
        self.catalogue.register.insert(next)
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
    /// `progress` is called with the number of steps of aligning done and the total. Either function may
    /// be called from several threads and out of order.
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
            cache,
            disk_fault,
            findings,
            settled: _,
        } = self;
        // What the audit has found already forbids publishing.
        let is_told = |finding: &Finding| finding.code == Code::PrivateNamePublished;
        let check = if findings.iter().any(is_told) {
            NameCheck::default()
        } else {
            NameCheck::of(&catalogue)
        };
        let mut report = Report {
            findings,
            sources: std::mem::take(&mut catalogue.sources),
        };
        let designs = catalogue.designs.len();
        let impressions = catalogue.impressions().count();
        let make_pages = || -> Result<alignment::AlignedPictures, PullFault> {
            if let Some(fault) = disk_fault {
                return Err(fault.into());
            }
            let private_owner = page::private_owner(&theme, catalogue.published_settings());
            let concealed = Concealed::of(catalogue, &private_owner);
            let studies = PublishedStudies::of(&concealed, studies);
            let plan = pictures::plan(&concealed.settings);
            let is_prepared = |key: &PictureKey| prepared.contains_key(key);
            let mut aligned =
                alignment::align_all(&dir, &concealed, &plan, is_prepared, &cache, progress)?;
            let small = small::cut_all(
                &concealed,
                &prepared,
                &plan,
                &cache,
                &mut aligned.alignments,
            )?;
            aligned.files.extend(small);
            let public = concealed.into_public();
            let pictures = pictures::published(&prepared);
            let input = page::Input {
                public: &public,
                studies: &studies,
                pictures: &pictures,
                alignments: &aligned.alignments,
                exports: &exchange::exports(&public, &studies, &pictures),
                theme: &theme,
            };
            files::each(&input, &|path, bytes| {
                check.look_at(&path, &bytes);
                take(path, bytes);
            })?;
            for key in prepared.keys() {
                check.look_at(&pictures::address(&key.to_string()), &[]);
            }
            Ok(aligned)
        };
        let made = make_pages().and_then(|aligned| {
            let told = check.findings(&report.sources);
            if told.is_empty() {
                return Ok(aligned);
            }
            report.findings.extend(told);
            finding::sort(&mut report.findings, &report.sources);
            Err(PullFault::PrivateName)
        });
        match made {
            Ok(aligned) => Ok(Pulled {
                report,
                designs,
                impressions,
                prepared,
                cache,
                aligned,
                names: check,
            }),
            Err(fault) => Err(Box::new(NotPulled {
                fault,
                report,
                cache,
            })),
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
