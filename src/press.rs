//! The press: the stages in their order, as two functions that read as sentences.
//!
//! [`judge`] reads a catalogue and says everything that is wrong or doubtful in it; [`pull`] makes
//! the site of a catalogue without errors. `cli` and `proof` call nothing else, so a command line,
//! a test and a served proof all see the same catalogue.
#![allow(
    clippy::disallowed_methods,
    reason = "asks whether a photograph is there"
)]

use std::collections::BTreeMap;
use std::path::{Component, Path, PathBuf};

use crate::audit;
use crate::issue::Parts;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::{self, Finding, Tally};
use crate::model::key::PictureKey;
use crate::model::picture::Picture;
use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::page::{self, Pictures, PublishedPicture, PublishedSize, Site, ThemeFault};
use crate::picture::{self, Fault, Plan, Prepared, Request};
use crate::read;
use crate::study::Studies;

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
    /// The findings, in their order.
    pub findings: Vec<Finding>,
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
    let read::Reading {
        catalogue,
        mut findings,
    } = read::read(dir);
    let (theme, theme_findings) = read::theme(dir, &catalogue.settings.theme);
    let studies = Studies::of(&catalogue);
    let (prepared, picture_findings) = prepare(dir, &catalogue, work);
    findings.extend(theme_findings);
    findings.extend(audit::audit(&catalogue, &studies));
    findings.extend(picture_findings);
    finding::sort(&mut findings, &catalogue.sources);
    Judged {
        catalogue,
        studies,
        theme,
        prepared,
        findings,
    }
}

impl Judged {
    /// How many findings of each severity there are.
    #[must_use]
    pub fn tally(&self) -> Tally {
        Tally::of(&self.findings)
    }

    /// Makes every page. What the pages cleaned away joins the findings.
    ///
    /// # Errors
    /// [`ThemeFault`] where a template or word of the catalogue's own theme is broken.
    pub fn pull(&mut self) -> Result<Site, ThemeFault> {
        let private_owner = page::private_owner(&self.theme, &self.catalogue.settings);
        let public = Public::from(&self.catalogue, &private_owner);
        let pictures = self.published_pictures();
        let mut site = page::site(&page::Input {
            public: &public,
            studies: &self.studies,
            pictures: &pictures,
            theme: &self.theme,
        })?;
        self.findings.append(&mut site.hints);
        finding::sort(&mut self.findings, &self.catalogue.sources);
        Ok(site)
    }

    /// The parts of `site` with its pictures, ready to be published.
    #[must_use]
    pub fn parts<'a>(&self, site: &'a Site) -> Parts<'a> {
        Parts {
            files: site
                .files
                .iter()
                .map(|(p, b)| (p.as_str(), b.as_slice()))
                .collect(),
            pictures: self.picture_files(),
        }
    }

    /// The published pictures: address in the site, and the prepared file.
    #[must_use]
    pub fn picture_files(&self) -> BTreeMap<String, PathBuf> {
        let derivatives = self.prepared.values().flat_map(|p| &p.derivatives);
        derivatives
            .map(|d| (address(&d.name), d.file.clone()))
            .collect()
    }

    /// How many pictures were made anew.
    #[must_use]
    pub fn pictures_made(&self) -> usize {
        self.prepared.values().filter(|p| p.made).count()
    }

    fn published_pictures(&self) -> Pictures {
        let published = self.prepared.iter().map(|(key, prepared)| {
            let sizes = prepared.derivatives.iter().map(|d| PublishedSize {
                width: d.width,
                height: d.height,
                address: address(&d.name),
            });
            let picture = PublishedPicture {
                width: prepared.width,
                height: prepared.height,
                sizes: sizes.collect(),
            };
            (key.clone(), picture)
        });
        published.collect()
    }
}

fn address(name: &str) -> String {
    format!("picture/{name}")
}

/// Prepares every picture that may be published; what cannot be read is a finding.
fn prepare(
    dir: &Path,
    catalogue: &Catalogue,
    work: &PictureWork<'_>,
) -> (BTreeMap<PictureKey, Prepared>, Vec<Finding>) {
    let settings = &catalogue.settings;
    let plan = Plan {
        quality: settings.quality,
        largest: settings.largest,
        ..Plan::default()
    };
    let wanted: Vec<(PictureKey, &Picture)> = catalogue
        .pictures()
        .filter(|(_, picture)| picture.publish && stays_inside(&picture.path))
        .filter(|(_, picture)| dir.join(&picture.path).is_file())
        .collect();
    let requests: Vec<Request> = wanted
        .iter()
        .map(|(_, p)| Request {
            source: dir.join(&p.path),
            largest: p.largest,
        })
        .collect();
    let cache = dir.join(CACHE).join("pictures");
    let results: Vec<Result<Option<Prepared>, Fault>> = match work {
        PictureWork::Prepare(progress) => {
            let made = picture::prepare_all(&requests, &plan, &cache, *progress);
            made.into_iter().map(|result| result.map(Some)).collect()
        }
        PictureWork::ReadOnly(progress) => {
            let checked = picture::check_all(&requests, &plan, &cache, *progress);
            checked
                .into_iter()
                .map(|result| result.map(|()| None))
                .collect()
        }
    };
    let mut prepared = BTreeMap::new();
    let mut findings = Vec::new();
    for ((key, picture), result) in wanted.into_iter().zip(results) {
        match result {
            Ok(ready) => prepared.extend(ready.map(|ready| (key, ready))),
            Err(fault) => findings.push(unusable(picture, &fault)),
        }
    }
    (prepared, findings)
}

fn unusable(picture: &Picture, fault: &Fault) -> Finding {
    let message = format!(
        "the picture `{}` cannot be used: {fault}",
        picture.file.value
    );
    Finding::new(Code::PictureUnreadable, picture.file.place, message).help(fault.help())
}

/// Whether a path leads down only. The reader has judged it; a picture is still never opened
/// elsewhere.
fn stays_inside(path: &str) -> bool {
    !path.is_empty()
        && Path::new(path)
            .components()
            .all(|c| matches!(c, Component::Normal(_)))
}
