//! The photographs of a catalogue: which are published, which only looked at, and what is wrong with
//! them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Component, Path};

use super::{CACHE, DiskFault, PictureWork};
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::PictureKey;
use crate::model::picture::Picture;
use crate::picture::{self, Colour, Fault, Plan, Prepared, Request};

/// What came of the pictures.
pub(super) struct Worked {
    pub prepared: BTreeMap<PictureKey, Prepared>,
    pub disk_fault: Option<DiskFault>,
    pub findings: Vec<Finding>,
}

/// Prepares every picture that may be published, and looks at the others: what cannot be read is a
/// finding either way, for a picture kept back today is meant to be looked at too.
pub(super) fn work_on(dir: &Path, catalogue: &Catalogue, work: &PictureWork<'_>) -> Worked {
    let plan = plan(catalogue);
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
    let cache = dir.join(CACHE).join("pictures");
    let (PictureWork::Prepare(progress) | PictureWork::ReadOnly(progress)) = work;
    let all = published.len() + kept_back.len();
    let check = |pictures: &[(PictureKey, &Picture)], before: usize| {
        let told = |done, _| progress(before + done, all);
        picture::check_all(&requests(dir, pictures), &plan, &cache, &told)
    };

    let mut worked = Worked {
        prepared: BTreeMap::new(),
        disk_fault: None,
        findings: Vec::new(),
    };
    let understood: Vec<Result<Colour, Fault>> = match work {
        PictureWork::Prepare(_) => {
            let told = |done, _| progress(done, all);
            let made = picture::prepare_all(&requests(dir, &published), &plan, &cache, &told);
            let keep = |((key, _), result): (&(PictureKey, &Picture), Result<Prepared, Fault>)| {
                let ready = result?;
                let colour = ready.colour;
                worked.prepared.insert(key.clone(), ready);
                Ok(colour)
            };
            published.iter().zip(made).map(keep).collect()
        }
        PictureWork::ReadOnly(_) => check(&published, 0),
    };
    let of_kept_back = check(&kept_back, published.len());
    let pictures = published.iter().chain(&kept_back);
    for ((_, picture), result) in pictures.zip(understood.into_iter().chain(of_kept_back)) {
        match result {
            Ok(Colour::Untagged | Colour::Converted) => {}
            Ok(Colour::ProfileUnusable) => worked.findings.push(profile_unusable(picture)),
            Err(fault) if fault.is_disk() => {
                worked.disk_fault.get_or_insert(DiskFault(fault));
            }
            Err(fault) => worked.findings.push(unusable(picture, &fault)),
        }
    }
    worked
}

/// What is made of every picture of the catalogue.
pub(super) fn plan(catalogue: &Catalogue) -> Plan {
    Plan {
        quality: catalogue.settings.quality,
        largest: catalogue.settings.largest,
        ..Plan::default()
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
    Finding::new(Code::PictureUnreadable, picture.file.place, message).help(fault.help())
}

fn profile_unusable(picture: &Picture) -> Finding {
    let message = format!(
        "the colour profile in the picture `{}` cannot be used, so its colours may be shown wrong",
        picture.file.value
    );
    Finding::new(Code::PictureProfile, picture.file.place, message)
        .help("save the picture again as sRGB, or with the profile of its camera or scanner")
}

/// Whether a path leads down only. The reader has judged it; a picture is still never opened
/// elsewhere.
pub(super) fn stays_inside(path: &str) -> bool {
    !path.is_empty()
        && Path::new(path)
            .components()
            .all(|c| matches!(c, Component::Normal(_)))
}
