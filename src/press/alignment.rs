//! Aligns the photographs of a design to its reference picture, and cuts details from the aligned ones.
//!
//! In: the catalogue and its folder. Out: a [`Registration`] for each photograph of a whole sheet that shows
//! the side of the reference, and the details and tones at the points of the design.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::cache::Cache;
use super::fault::DiskFault;
use super::pictures::{address, limits, stays_inside};
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::{Key, PictureKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::point::{Point, RestsOn};
use crate::model::public::Concealed;
use crate::model::registration::Registration;
use crate::page::{Alignments, PublishedSize};
use crate::picture::align::{self, CacheAccess, Photograph, PhotographPair};
use crate::picture::{self, DetailRequest, Detailed, Fault, Limits, Paper, Plan, PointRequest};

/// The reference picture of a design, and the pictures to align to it.
pub struct Group<'a> {
    /// The design.
    pub design: &'a Design,
    /// The photograph that others are aligned to.
    pub reference: (PictureKey, &'a Picture),
    /// The other photographs of whole sheets that show the same side, in the order of their keys.
    pub pictures: Vec<(PictureKey, &'a Picture)>,
    /// What photographs may not exceed.
    limits: Limits,
}

impl<'a> Group<'a> {
    /// The pictures of a design to align; `None` where no reference picture is recorded, or its file does
    /// not exist.
    #[must_use]
    pub fn of(dir: &Path, catalogue: &'a Catalogue, design: &'a Design) -> Option<Group<'a>> {
        let is_there =
            |picture: &Picture| stays_inside(&picture.path) && dir.join(&picture.path).is_file();
        let wanted = &design.reference_picture.as_ref()?.value;
        let (key, reference) = catalogue
            .pictures()
            .find(|(key, picture)| key == wanted && is_there(picture))?;
        let pictures = catalogue
            .pictures()
            .filter(|(other, picture)| {
                matches!(&other.owner, PictureOwner::Impression(i) if i.design == design.key)
                    && *other != key
                    && picture.view == View::Whole
                    && picture.side == reference.side
                    && is_there(picture)
            })
            .collect();
        Some(Group {
            design,
            reference: (key, reference),
            pictures,
            limits: limits(&catalogue.settings),
        })
    }

    /// Aligns the pictures, in their order.
    ///
    /// # Errors
    /// For each picture the fault of its file or of the reference's.
    pub fn align(
        &self,
        dir: &Path,
        cache: &Cache,
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Vec<Result<Registration, Fault>> {
        align_groups(
            dir,
            std::slice::from_ref(self),
            self.limits,
            cache,
            progress,
        )
    }

    fn pairs(&self, dir: &Path) -> impl Iterator<Item = PhotographPair> {
        let reference = photograph(dir, self.reference.1);
        let pair = move |(_, picture): &(PictureKey, &Picture)| PhotographPair {
            reference: reference.clone(),
            picture: photograph(dir, picture),
            ties: picture.ties.clone(),
        };
        self.pictures.iter().map(pair)
    }
}

fn photograph(dir: &Path, picture: &Picture) -> Photograph {
    Photograph {
        source: dir.join(&picture.path),
        area: picture.area,
        mirrored: picture.mirrored,
    }
}

fn align_groups(
    dir: &Path,
    groups: &[Group<'_>],
    limits: Limits,
    cache: &Cache,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Registration, Fault>> {
    let pairs: Vec<PhotographPair> = groups.iter().flat_map(|group| group.pairs(dir)).collect();
    align::align_all(
        &pairs,
        limits,
        &cache.alignments,
        CacheAccess::ReadWrite,
        progress,
    )
}

/// The alignments of the pictures that may be published, and the details cut from them.
#[derive(Clone, Debug, Default)]
pub(super) struct AlignedPictures {
    pub alignments: Alignments,
    /// The details: address in the site, and the prepared file.
    pub files: BTreeMap<String, PathBuf>,
    /// From how many pictures details were cut, and not found in the cache.
    pub made: usize,
}

/// Aligns the pictures of a catalogue, and cuts the part that shows each point from those that were aligned. The
/// catalogue is concealed, so that it has only pictures that may be published, and only the reference pictures and
/// boxes that may be known.
///
/// # Errors
/// Where the disk refuses to keep a detail. Faults of the pictures themselves are findings of `pictures`.
pub(super) fn align_all(
    dir: &Path,
    catalogue: &Concealed,
    plan: &Plan,
    is_prepared: impl Fn(&PictureKey) -> bool,
    cache: &Cache,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Result<AlignedPictures, DiskFault> {
    let mut groups: Vec<Group<'_>> = catalogue
        .designs
        .values()
        .filter_map(|design| Group::of(dir, catalogue, design))
        .collect();
    // Pages show pictures over the reference, so the reference must have been prepared.
    groups.retain(|group| is_prepared(&group.reference.0));
    for group in &mut groups {
        group.pictures.retain(|(key, _)| is_prepared(key));
    }
    let pictures: usize = groups.iter().map(|group| group.pictures.len()).sum();
    // Each picture counts as two steps, aligning and cutting, although cutting takes little of the time.
    let progress_from =
        |before: usize| move |done: usize, _: usize| progress(before + done, 2 * pictures);
    let aligned = align_groups(dir, &groups, plan.limits, cache, &progress_from(0));

    let mut results = AlignedPictures::default();
    let mut cuts: Vec<(PictureKey, DetailRequest)> = Vec::new();
    let mut aligned = aligned.into_iter();
    for group in &groups {
        let reference = std::iter::once((&group.reference, Ok(Registration::Reference)));
        let others = group.pictures.iter().zip(aligned.by_ref());
        for ((key, picture), result) in reference.chain(others) {
            // The fault of a picture is a finding already; a fault of the reference leaves its whole group
            // without an alignment.
            let Ok(registration) = result else { continue };
            cuts.extend(request(dir, group, picture, &registration).map(|cut| (key.clone(), cut)));
            let registrations = &mut results.alignments.registrations;
            registrations.insert(key.clone(), registration);
        }
    }
    let (keys, requests): (Vec<PictureKey>, Vec<DetailRequest>) = cuts.into_iter().unzip();
    let made = picture::details_all(&requests, plan, &cache.details, &progress_from(pictures));
    for (key, result) in keys.into_iter().zip(made) {
        match result {
            Ok(detailed) => results.add(key, detailed),
            Err(fault) if fault.is_disk() => return Err(DiskFault(fault)),
            Err(_) => {}
        }
    }
    Ok(results)
}

impl AlignedPictures {
    fn add(&mut self, key: PictureKey, detailed: Detailed) {
        self.made += usize::from(detailed.made);
        let mut sizes: BTreeMap<Key, PublishedSize> = BTreeMap::new();
        for (point, detail) in detailed.details {
            let address = address(&detail.name);
            self.files.insert(address.clone(), detail.file);
            let size = PublishedSize {
                width: detail.width,
                height: detail.height,
                address,
            };
            sizes.insert(point, size);
        }
        if !sizes.is_empty() {
            self.alignments.details.insert(key.clone(), sizes);
        }
        if !detailed.tones.is_empty() {
            self.alignments.tones.insert(key, detailed.tones);
        }
    }
}

/// The parts to cut from a picture that was aligned to its reference; `None` where it was not, or no
/// point has a box.
fn request(
    dir: &Path,
    group: &Group<'_>,
    picture: &Picture,
    registration: &Registration,
) -> Option<DetailRequest> {
    let part = |point: &Point| {
        Some(PointRequest {
            point: point.key.value.clone(),
            area: point.area?,
            has_tone: point.rests_on.value == RestsOn::Inking,
        })
    };
    let points: Vec<PointRequest> = group.design.points.iter().filter_map(part).collect();
    let onto_reference = registration.onto_reference()?;
    (!points.is_empty()).then(|| DetailRequest {
        source: dir.join(&picture.path),
        largest: picture.largest,
        reference: dir.join(&group.reference.1.path),
        onto_reference,
        points,
        paper: paper(picture, group.reference.1),
    })
}

/// Where a picture shows bare paper: where its record says, else beside the printed image.
fn paper(picture: &Picture, reference: &Picture) -> Paper {
    match (picture.bare_paper, picture.area, reference.area) {
        (Some(given), _, _) => Paper::Given(given),
        (None, Some(image), _) => Paper::BesideImage(image),
        (None, None, Some(image)) => Paper::BesideReferenceImage(image),
        (None, None, None) => Paper::Unknown,
    }
}
