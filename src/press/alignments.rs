//! How the photographs of a catalogue lie on the reference pictures of their designs, and what is cut
//! out of them: which pictures are asked about, and what a page may know of the answers.
//!
//! Asked are whole views of the side that the reference shows, among the pictures that may be
//! published; those of designs without a reference picture never.

use std::collections::BTreeMap;
use std::path::Path;

use super::CACHE;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::point::RestsOn;
use crate::model::registration::Registration;
use crate::picture::align::{Keep, Pair, Photograph, align_all};
use crate::picture::{DetailRequest, Detailed, Fault, Paper, Part, Plan, Prepared, details_all};

/// What came of aligning and cutting.
#[derive(Debug, Default)]
pub(super) struct Aligned {
    pub registrations: BTreeMap<PictureKey, Registration>,
    pub details: BTreeMap<PictureKey, Detailed>,
    /// The disk failed.
    pub disk_fault: Option<Fault>,
}

/// Aligns every published picture that can be, and cuts the points of its design out of it.
pub(super) fn of_published(
    dir: &Path,
    catalogue: &Catalogue,
    prepared: &BTreeMap<PictureKey, Prepared>,
    plan: &Plan,
) -> Aligned {
    let sitters: Vec<Sitter<'_>> = catalogue
        .designs
        .values()
        .flat_map(|design| sitters(catalogue, design, prepared))
        .collect();
    let pairs: Vec<Pair> = sitters.iter().map(|sitter| sitter.pair(dir)).collect();
    let cache = dir.join(CACHE);
    let mut found = Aligned::default();
    let results = align_all(
        &pairs,
        plan.pixel_limit,
        &cache.join("alignments"),
        Keep::Results,
        &|_, _| (),
    );
    for (sitter, result) in sitters.iter().zip(results) {
        match result {
            Ok(registration) => {
                found.registrations.insert(sitter.key.clone(), registration);
            }
            Err(fault) => found.note(fault),
        }
    }
    let asked: Vec<(&PictureKey, DetailRequest)> = sitters
        .iter()
        .filter_map(|sitter| {
            let registration = found.registrations.get(&sitter.key)?;
            Some((&sitter.key, sitter.details(dir, registration)?))
        })
        .collect();
    let requests: Vec<DetailRequest> = asked.iter().map(|(_, request)| request.clone()).collect();
    let results = details_all(&requests, plan, &cache.join("pictures"), &|_, _| ());
    for ((key, _), result) in asked.into_iter().zip(results) {
        match result {
            Ok(detailed) => {
                found.details.insert(key.clone(), detailed);
            }
            Err(fault) => found.note(fault),
        }
    }
    found
}

impl Aligned {
    /// A picture that cannot be read was told of when it was prepared; a disk that fails was not.
    fn note(&mut self, fault: Fault) {
        if fault.is_disk() {
            self.disk_fault.get_or_insert(fault);
        }
    }
}

/// A picture that may lie on the reference picture of its design.
struct Sitter<'a> {
    design: &'a Design,
    key: PictureKey,
    picture: &'a Picture,
    reference: &'a Picture,
}

/// The pictures of a design that may lie on its reference picture.
fn sitters<'a>(
    catalogue: &'a Catalogue,
    design: &'a Design,
    prepared: &BTreeMap<PictureKey, Prepared>,
) -> Vec<Sitter<'a>> {
    let reference = design.reference_picture.as_ref().map(|key| &key.value);
    let Some((key, reference)) = reference.and_then(|key| Some((key, catalogue.picture(key)?)))
    else {
        return Vec::new();
    };
    if !prepared.contains_key(key) {
        return Vec::new();
    }
    let of_sheets = design.impressions.values().flat_map(|impression| {
        impression.pictures.iter().map(|picture| {
            let key = PictureKey {
                owner: PictureOwner::Impression(impression.key.clone()),
                name: picture.name.value.clone(),
            };
            (key, picture)
        })
    });
    of_sheets
        .filter(|(_, picture)| picture.view == View::Whole && picture.side == reference.side)
        .filter(|(key, _)| prepared.contains_key(key))
        .map(|(key, picture)| Sitter {
            design,
            key,
            picture,
            reference,
        })
        .collect()
}

fn photograph(dir: &Path, picture: &Picture) -> Photograph {
    Photograph {
        source: dir.join(&picture.path),
        area: picture.area,
        mirrored: picture.mirrored,
    }
}

impl Sitter<'_> {
    fn pair(&self, dir: &Path) -> Pair {
        Pair {
            reference: photograph(dir, self.reference),
            picture: photograph(dir, self.picture),
            ties: self.picture.ties.clone(),
        }
    }

    /// What to cut out of it; `None` where it was not aligned, or there is nothing to cut.
    fn details(&self, dir: &Path, registration: &Registration) -> Option<DetailRequest> {
        let onto_reference = registration.onto_reference()?;
        let points = self.design.points.iter();
        let parts: Vec<Part> = points
            .filter_map(|point| {
                Some(Part {
                    point: point.key.value.clone(),
                    area: point.area?,
                    has_tone: point.rests_on.value == RestsOn::Inking,
                })
            })
            .collect();
        (!parts.is_empty()).then(|| DetailRequest {
            source: dir.join(&self.picture.path),
            largest: self.picture.largest,
            reference: dir.join(&self.reference.path),
            onto_reference,
            parts,
            paper: self.paper(),
        })
    }

    /// Where its paper is bare: where the record says, else beside the image, whose edges are those of
    /// its own box or of the reference's.
    fn paper(&self) -> Paper {
        match (
            self.picture.bare_paper,
            self.picture.area,
            self.reference.area,
        ) {
            (Some(bare), _, _) => Paper::Given(bare),
            (None, Some(image), _) => Paper::BesideImage(image),
            (None, None, Some(image)) => Paper::BesideReferenceImage(image),
            (None, None, None) => Paper::Unknown,
        }
    }
}
