//! Prepares the photographs of a catalogue, and finds what is wrong with them.
//!
//! In: the catalogue and its folder. Out: the prepared files of the pictures that may be published, and a
//! finding for each picture that cannot be used, published or not.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Component, Path};

use super::cache::Cache;
use super::fault::DiskFault;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::PictureKey;
use crate::model::picture::Picture;
use crate::model::settings::Settings;
use crate::page::{Pictures, PublishedPicture, PublishedSize, Tiles};
use crate::picture::{self, Colour, Fault, Limits, Plan, Prepared, Request, tiles};

/// How pictures are handled while judging.
pub enum PictureWork<'a> {
    /// Prepare them in the catalogue's cache. The function is called with the number done and the total.
    Prepare(&'a (dyn Fn(usize, usize) + Sync)),
    /// Write nothing: decode those that are not in the cache, and keep no result.
    ReadOnly(&'a (dyn Fn(usize, usize) + Sync)),
}

/// The prepared pictures, and what is wrong with the others.
pub(super) struct PreparedPictures {
    pub prepared: BTreeMap<PictureKey, Prepared>,
    pub disk_fault: Option<DiskFault>,
    pub findings: Vec<Finding>,
}

/// Prepares every picture that may be published, and decodes the others. A picture that cannot be read is a
/// finding either way: one that is not published today may be published later.
pub(super) fn prepare(
    dir: &Path,
    catalogue: &Catalogue,
    work: &PictureWork<'_>,
    cache: &Cache,
) -> PreparedPictures {
    let plan = plan(catalogue.published_settings());
    let is_there = |(_, picture): &(PictureKey, &Picture)| {
        stays_inside(&picture.path) && dir.join(&picture.path).is_file()
    };
    let published: Vec<_> = catalogue.published_pictures().filter(is_there).collect();
    let keys: BTreeSet<_> = published.iter().map(|(key, _)| key).collect();
    let kept_back: Vec<_> = catalogue
        .pictures()
        .filter(|(key, _)| !keys.contains(key))
        .filter(is_there)
        .collect();
    let (PictureWork::Prepare(progress) | PictureWork::ReadOnly(progress)) = work;
    let all = published.len() + kept_back.len();
    let check = |pictures: &[(PictureKey, &Picture)], before: usize| {
        let progress = |done, _| progress(before + done, all);
        picture::check_all(&requests(dir, pictures), &plan, &cache.pictures, &progress)
    };

    let mut result = PreparedPictures {
        prepared: BTreeMap::new(),
        disk_fault: None,
        findings: Vec::new(),
    };
    let colours: Vec<Result<Colour, Fault>> = match work {
        PictureWork::Prepare(_) => {
            let progress = |done, _| progress(done, all);
            let made = picture::prepare_all(
                &requests(dir, &published),
                &plan,
                &cache.pictures,
                &progress,
            );
            let keep = |((key, _), made): (&(PictureKey, &Picture), Result<Prepared, Fault>)| {
                let ready = made?;
                let colour = ready.colour;
                result.prepared.insert(key.clone(), ready);
                Ok(colour)
            };
            published.iter().zip(made).map(keep).collect()
        }
        PictureWork::ReadOnly(_) => check(&published, 0),
    };
    let of_kept_back = check(&kept_back, published.len());
    let pictures = published.iter().chain(&kept_back);
    for ((_, picture), colour) in pictures.zip(colours.into_iter().chain(of_kept_back)) {
        match colour {
            Ok(Colour::Untagged | Colour::Converted) => {}
            Ok(Colour::ProfileUnusable) => result.findings.push(profile_unusable(picture)),
            Err(fault) if fault.is_disk() => {
                result.disk_fault.get_or_insert(DiskFault(fault));
            }
            Err(fault) => result.findings.push(unusable(picture, &fault)),
        }
    }
    result
}

/// The sizes and quality in which every picture of the catalogue is prepared.
pub(super) fn plan(settings: &Settings) -> Plan {
    Plan {
        quality: settings.quality,
        largest: settings.largest,
        limits: limits(settings),
        ..Plan::default()
    }
}

/// What photographs may not exceed.
pub(super) fn limits(settings: &Settings) -> Limits {
    Limits {
        memory: u64::from(settings.picture_memory) << 20,
        ..Limits::default()
    }
}

fn requests(dir: &Path, pictures: &[(PictureKey, &Picture)]) -> Vec<Request> {
    let request = |(_, picture): &(PictureKey, &Picture)| Request {
        source: dir.join(&picture.path),
        largest: picture.largest,
    };
    pictures.iter().map(request).collect()
}

fn unusable(picture: &Picture, fault: &Fault) -> Finding {
    let message = format!(
        "the picture `{}` cannot be used: {fault}",
        picture.file.value
    );
    let code = match fault {
        Fault::TooMuchMemory { .. } => Code::PictureMemory,
        _ => Code::PictureUnreadable,
    };
    Finding::new(code, picture.file.place, message).help(fault.help())
}

fn profile_unusable(picture: &Picture) -> Finding {
    let message = format!(
        "the colour profile in the picture `{}` cannot be used, so its colours may be shown wrong",
        picture.file.value
    );
    Finding::new(Code::PictureProfile, picture.file.place, message)
        .help("save the picture again as sRGB, or with the profile of its camera or scanner")
}

/// Whether a path leads only downwards. `read` has reported one that does not; this keeps it from being
/// opened all the same.
pub(super) fn stays_inside(path: &str) -> bool {
    !path.is_empty()
        && Path::new(path)
            .components()
            .all(|c| matches!(c, Component::Normal(_)))
}

/// The prepared pictures as pages name them.
pub(super) fn published(prepared: &BTreeMap<PictureKey, Prepared>) -> Pictures {
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

/// The address in the site of the picture or image service `name`.
pub(super) fn address(name: &str) -> String {
    format!("picture/{name}")
}
