//! Small pictures of photographs, cut to what they show: the image where its edges are known, else the sheet where it is
//! found for certain.
//!
//! In: prepared files of photographs, for each the edges of the image, if known. Out: for each a JPEG file of at most
//! [`LONGEST`] px, unless there is nothing to cut to, and whether the photograph has a ground of its own around the
//! sheet. [`sheet`] finds the sheet. Results are kept by content: an entry is a file and a manifest, which is written
//! last.

mod sheet;

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use image::RgbImage;
use keyblock_model::boxes::PercentBox;
use rayon::prelude::*;
use serde::{Deserialize, Serialize};

use self::sheet::Part;
use crate::area::Area;
use crate::cache::write_whole;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::plan::Plan;
use crate::prepared::{Derivative, Prepared};
use crate::scaling;
use crate::source::{PictureFile, guarded};
use crate::store::Store;
use crate::{codec, decode, derive};

/// The longest side of a small picture in px: sharp on a wall at twice the density.
const LONGEST: u32 = 480;

/// The least width in px of the prepared file that is cut: about twice what remains of it.
const CUT_FROM: u32 = 900;

/// Quality of a picture that leads to another.
const QUALITY: u8 = 82;

/// Raise this whenever the same file and edges would give other results.
const SCHEME: u32 = 2;

/// How many hexadecimal digits of the hash are in names.
const DIGITS: usize = 24;

/// A photograph of which a small picture is wanted.
#[derive(Debug, Clone, Copy)]
pub struct TrimRequest<'a> {
    /// The photograph, prepared.
    pub prepared: &'a Prepared,
    /// The edges of the image on it, in percent, if they are known.
    pub image: Option<PercentBox>,
}

/// The small picture of a photograph.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Trimmed {
    /// The picture; `None` where the photograph shows nothing that it could be cut to.
    pub picture: Option<Derivative>,
    /// Whether the photograph shows the whole sheet with an even ground around it.
    pub has_ground: bool,
    /// Whether it was made just now rather than found in the cache.
    pub made: bool,
}

/// Cuts all photographs asked for and keeps the results in `store`, in the order of the requests. Neither results nor
/// files depend on the number of threads.
pub fn trim_all(
    requests: &[TrimRequest<'_>],
    plan: &Plan,
    store: &Store,
) -> Vec<Result<Trimmed, Fault>> {
    if !requests.is_empty()
        && let Err(fault) = store.prepare()
    {
        return vec![Err(fault); requests.len()];
    }
    requests
        .par_iter()
        .map(|request| find_or_make(request, plan, store))
        .collect()
}

fn find_or_make(request: &TrimRequest<'_>, plan: &Plan, store: &Store) -> Result<Trimmed, Fault> {
    let files = &request.prepared.derivatives;
    let wide = files.iter().find(|file| file.width >= CUT_FROM);
    let Some(from) = wide.or_else(|| files.last()) else {
        return Ok(Trimmed::default());
    };
    let key = CacheKey::new(request, from);
    store.note_used(&key.manifest(store.dir()));
    if let Some(found) = find(store.dir(), key) {
        return Ok(found);
    }
    let made = guarded(|| {
        let file = PictureFile::open(&from.file, plan.limits.pixels)?;
        let opened = decode::open(&file, plan.limits.pixels)?;
        let longest = from.width.max(from.height);
        let pixels = derive::fitted(opened, longest)?.base.whole()?;
        cut(&pixels, request.image)
    })?;
    let bytes = made.jpeg.as_ref().map_or(0, |jpeg| jpeg.jpeg.len() as u64);
    let kept = store.keep(bytes, |dir| keep(dir, key, &made))?;
    store.note_used(&key.manifest(store.dir()));
    Ok(kept)
}

/// What was made of a photograph, not yet kept.
struct Made {
    jpeg: Option<codec::EncodedPicture>,
    has_ground: bool,
}

fn cut(pixels: &RgbImage, image: Option<PercentBox>) -> Result<Made, Fault> {
    let sheet = sheet::find(pixels);
    let whole = Extent::of(pixels);
    let part = image
        .map(|image| inside(Area::on(image, whole), whole))
        .or(sheet);
    let jpeg = part
        .map(|[left, top, width, height]| {
            let cut = image::imageops::crop_imm(pixels, left, top, width, height).to_image();
            let from = Extent::of(&cut);
            let to = from.within(LONGEST);
            let small = if to == from {
                cut
            } else {
                scaling::scale(from, cut.as_raw(), to)?
            };
            codec::encode_picture(&small, QUALITY)
        })
        .transpose()?;
    Ok(Made {
        jpeg,
        has_ground: sheet.is_some(),
    })
}

/// The px that a part covers, at least one.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the picture"
)]
fn inside(area: Area, whole: Extent) -> Part {
    let along = |from: f64, length: f64, side: u32| {
        let first = from.round().clamp(0.0, f64::from(side.max(1) - 1));
        let last = (from + length)
            .round()
            .clamp(first + 1.0, f64::from(side.max(1)));
        (first as u32, (last - first) as u32)
    };
    let (left, width) = along(area.left, area.width, whole.width);
    let (top, height) = along(area.top, area.height, whole.height);
    [left, top, width, height]
}

/// The key of a small picture: the prepared file, whose name follows from its content, and the edges.
#[derive(Debug, Clone, Copy)]
struct CacheKey(blake3::Hash);

impl CacheKey {
    fn new(request: &TrimRequest<'_>, from: &Derivative) -> CacheKey {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: a picture cut to what it shows");
        hasher.update(&SCHEME.to_le_bytes());
        hasher.update(codec::ENCODER.as_bytes());
        hasher.update(&(from.name.len() as u64).to_le_bytes());
        hasher.update(from.name.as_bytes());
        hasher.update(&[u8::from(request.image.is_some())]);
        for number in request.image.map_or([0.0; 4], PercentBox::percent) {
            hasher.update(&number.to_bits().to_le_bytes());
        }
        CacheKey(hasher.finalize())
    }

    fn short(self) -> String {
        self.0.to_hex().chars().take(DIGITS).collect()
    }

    fn manifest(self, dir: &Path) -> PathBuf {
        dir.join(format!("{}.small.json", self.short()))
    }

    fn file(self) -> String {
        format!("{}-small.jpg", self.short())
    }
}

#[derive(Debug, Serialize, Deserialize)]
struct Manifest {
    name: String,
    has_ground: bool,
    /// Width, height and length of the file, where there is one.
    file: Option<(u32, u32, u64)>,
}

fn find(dir: &Path, key: CacheKey) -> Option<Trimmed> {
    let manifest: Manifest = serde_json::from_slice(&fs::read(key.manifest(dir)).ok()?).ok()?;
    let is_whole = manifest.file.is_none_or(|(_, _, bytes)| {
        fs::metadata(dir.join(key.file())).is_ok_and(|f| f.is_file() && f.len() == bytes)
    });
    let is_sound = manifest.name == key.0.to_hex().as_str() && is_whole;
    is_sound.then(|| trimmed(dir, key, &manifest, false))
}

fn keep(dir: &Path, key: CacheKey, made: &Made) -> Result<Trimmed, Fault> {
    let refused = |file: &Path, error: &io::Error| Fault::Cache {
        file: file.to_owned(),
        why: error.to_string(),
    };
    if let Some(picture) = &made.jpeg {
        let path = dir.join(key.file());
        write_whole(&path, &picture.jpeg).map_err(|error| refused(&path, &error))?;
    }
    let manifest = Manifest {
        name: key.0.to_hex().to_string(),
        has_ground: made.has_ground,
        file: made.jpeg.as_ref().map(|picture| {
            let Extent { width, height } = picture.extent;
            (width, height, picture.jpeg.len() as u64)
        }),
    };
    let path = key.manifest(dir);
    serde_json::to_vec(&manifest)
        .map_err(io::Error::from)
        .and_then(|text| write_whole(&path, &text))
        .map_err(|error| refused(&path, &error))?;
    Ok(trimmed(dir, key, &manifest, true))
}

fn trimmed(dir: &Path, key: CacheKey, manifest: &Manifest, made: bool) -> Trimmed {
    let name = key.file();
    Trimmed {
        picture: manifest.file.map(|(width, height, _)| Derivative {
            width,
            height,
            file: dir.join(&name),
            name,
        }),
        has_ground: manifest.has_ground,
        made,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_stays_inside_and_is_never_empty() {
        let whole = Extent {
            width: 100,
            height: 50,
        };
        let area = |left, top, width, height| Area {
            left,
            top,
            width,
            height,
        };
        assert_eq!(inside(area(10.4, 5.0, 20.0, 10.0), whole), [10, 5, 20, 10]);
        assert_eq!(
            inside(area(-5.0, -5.0, 200.0, 200.0), whole),
            [0, 0, 100, 50]
        );
        assert_eq!(inside(area(100.0, 50.0, 0.1, 0.1), whole), [99, 49, 1, 1]);
    }

    /// A sheet of 60 × 40 px at (20, 30) on grey, its image of 40 × 20 px at (30, 40).
    fn photograph() -> RgbImage {
        RgbImage::from_fn(100, 100, |x, y| {
            let is_in =
                |left, top, w, h| (left..left + w).contains(&x) && (top..top + h).contains(&y);
            if is_in(30, 40, 40, 20) {
                image::Rgb([40, 60, 90])
            } else if is_in(20, 30, 60, 40) {
                image::Rgb([238, 230, 210])
            } else {
                image::Rgb([150, 150, 150])
            }
        })
    }

    #[test]
    fn the_edges_of_the_image_come_before_those_of_the_sheet() {
        let pixels = photograph();
        let size = |image| {
            let made = cut(&pixels, image).unwrap();
            let extent = made.jpeg.unwrap().extent;
            (extent.width, extent.height, made.has_ground)
        };
        let image = PercentBox::new(30.0, 40.0, 40.0, 20.0).unwrap();
        assert_eq!(size(Some(image)), (40, 20, true));
        assert_eq!(size(None), (60, 40, true));
    }

    #[test]
    fn a_photograph_of_nothing_known_is_not_cut() {
        let even = RgbImage::from_pixel(100, 100, image::Rgb([238, 230, 210]));
        let made = cut(&even, None).unwrap();
        assert!(made.jpeg.is_none() && !made.has_ground);
    }
}
