//! Small pictures for walls and galleries, cut to the image or to the sheet.
//!
//! The edges of the image are those that the record of a picture gives (`box`), or those of the reference picture of its
//! design, mapped by the alignment. Without either, the sheet is sought on the photograph.

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::cache::Cache;
use super::fault::DiskFault;
use super::pictures::address;
use crate::model::boxes::PercentBox;
use crate::model::catalogue::Catalogue;
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::registration::Registration;
use crate::page::{Alignments, PublishedSize};
use crate::picture::{self, Plan, Prepared, TrimRequest};

/// The small pictures: address in the site, and the prepared file.
pub(super) type SmallFiles = BTreeMap<String, PathBuf>;

/// Cuts a small picture of every prepared picture of a whole sheet, and adds them to `alignments`. The catalogue is
/// concealed, so that it has only boxes that may be known.
///
/// # Errors
/// Where the disk refuses to keep one. Faults of the pictures themselves are findings of `pictures`.
pub(super) fn cut_all(
    catalogue: &Catalogue,
    prepared: &BTreeMap<PictureKey, Prepared>,
    plan: &Plan,
    cache: &Cache,
    alignments: &mut Alignments,
) -> Result<SmallFiles, DiskFault> {
    let wanted: Vec<(PictureKey, TrimRequest<'_>)> = catalogue
        .pictures()
        .filter(|(_, picture)| picture.view == View::Whole)
        .filter_map(|(key, picture)| {
            let image = edges(catalogue, prepared, alignments, &key, picture);
            let prepared = prepared.get(&key)?;
            Some((key, TrimRequest { prepared, image }))
        })
        .collect();
    let (keys, requests): (Vec<PictureKey>, Vec<TrimRequest<'_>>) = wanted.into_iter().unzip();
    let mut files = SmallFiles::new();
    let made = picture::trim_all(&requests, plan, &cache.small);
    for (key, result) in keys.into_iter().zip(made) {
        let trimmed = match result {
            Ok(trimmed) => trimmed,
            Err(fault) if fault.is_disk() => return Err(DiskFault(fault)),
            Err(_) => continue,
        };
        if trimmed.has_ground {
            alignments.on_ground.insert(key.clone());
        }
        if let Some(picture) = trimmed.picture {
            let address = address(&picture.name);
            files.insert(address.clone(), picture.file);
            let size = PublishedSize {
                width: picture.width,
                height: picture.height,
                address,
            };
            alignments.small.insert(key, size);
        }
    }
    Ok(files)
}

/// The edges of the image on a picture, in percent.
fn edges(
    catalogue: &Catalogue,
    prepared: &BTreeMap<PictureKey, Prepared>,
    alignments: &Alignments,
    key: &PictureKey,
    picture: &Picture,
) -> Option<PercentBox> {
    if picture.area.is_some() {
        return picture.area;
    }
    let PictureOwner::Impression(impression) = &key.owner else {
        return None;
    };
    let reference = catalogue.designs.get(&impression.design)?;
    let reference = &reference.reference_picture.as_ref()?.value;
    let image = catalogue.picture(reference)?.area?;
    let registration: &Registration = alignments.registrations.get(key)?;
    let onto_picture = registration.onto_reference()?.inverse()?;
    let (from, to) = (prepared.get(reference)?, prepared.get(key)?);
    let side = |px: u32| f64::from(px.max(1));
    let [left, top, width, height] = image.percent();
    // Edges lie between pixels: the left edge of the first pixel is at -0.5.
    let corners = [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)].map(|(x, y)| {
        let x = (left + x * width) / 100.0 * side(from.width) - 0.5;
        let y = (top + y * height) / 100.0 * side(from.height) - 0.5;
        let (x, y) = onto_picture.apply(x, y)?;
        let percent = |at: f64, side: f64| ((at + 0.5) / side * 100.0).clamp(0.0, 100.0);
        Some((percent(x, side(to.width)), percent(y, side(to.height))))
    });
    let corners: Vec<(f64, f64)> = corners.into_iter().collect::<Option<_>>()?;
    let least = |of: fn(&(f64, f64)) -> f64| corners.iter().map(of).fold(f64::INFINITY, f64::min);
    let most = |of: fn(&(f64, f64)) -> f64| corners.iter().map(of).fold(0.0, f64::max);
    let (left, top) = (least(|c| c.0), least(|c| c.1));
    PercentBox::new(left, top, most(|c| c.0) - left, most(|c| c.1) - top).ok()
}
