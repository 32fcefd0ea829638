//! Details kept by content, as in [`crate::cache`]: the files are written first, then a manifest; files
//! without a manifest are not used.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use keyblock_model::boxes::PercentBox;
use keyblock_model::key::Key;
use serde::{Deserialize, Serialize};

use super::request::{DetailRequest, Detailed, Paper};
use crate::cache::write_whole;
use crate::codec::{self, EncodedPicture};
use crate::derive;
use crate::fault::Fault;
use crate::plan::Plan;
use crate::prepared::Derivative;
use crate::tone::Tone;

/// Raise this whenever the same photographs, map and boxes would give other bytes or other tones.
const SCHEME: u32 = 1;

/// How many hexadecimal digits of the hash are in names.
const DIGITS: usize = 24;

/// The key of everything that is cut out of one photograph.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CacheKey(blake3::Hash);

impl CacheKey {
    /// The key of a request, with the content of its photograph and of the reference.
    pub fn new(
        request: &DetailRequest,
        plan: &Plan,
        picture: blake3::Hash,
        reference: blake3::Hash,
    ) -> CacheKey {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: parts of a picture");
        hasher.update(&SCHEME.to_le_bytes());
        hasher.update(codec::ENCODER.as_bytes());
        hasher.update(&[plan.quality]);
        hasher.update(&derive::longest_side(plan, request.largest).to_le_bytes());
        hasher.update(picture.as_bytes());
        hasher.update(reference.as_bytes());
        let mut numbers = |numbers: &[f64]| {
            for number in numbers {
                hasher.update(&number.to_bits().to_le_bytes());
            }
        };
        numbers(&request.onto_reference.rows());
        let (kind, area) = match request.paper {
            Paper::Unknown => (0u8, None),
            Paper::Given(area) => (1, Some(area)),
            Paper::BesideImage(area) => (2, Some(area)),
            Paper::BesideReferenceImage(area) => (3, Some(area)),
        };
        numbers(&area.map_or([0.0; 4], PercentBox::percent));
        hasher.update(&[kind]);
        for point in &request.points {
            let key = point.point.as_str();
            hasher.update(&(key.len() as u64).to_le_bytes());
            hasher.update(key.as_bytes());
            for number in point.area.percent() {
                hasher.update(&number.to_bits().to_le_bytes());
            }
            hasher.update(&[u8::from(point.has_tone)]);
        }
        CacheKey(hasher.finalize())
    }

    fn short(self) -> String {
        self.0.to_hex().chars().take(DIGITS).collect()
    }

    pub fn manifest(self, dir: &Path) -> PathBuf {
        dir.join(format!("{}.parts.json", self.short()))
    }

    /// The name of a detail's file. It follows from content alone, so a name always means the same
    /// bytes.
    fn file(self, point: &str) -> String {
        format!("{}-{point}.jpg", self.short())
    }
}

/// A tone in ten-thousandths, so that a kept tone is read back the same to the bit.
#[derive(Clone, Copy, Debug, Serialize, Deserialize)]
pub struct KeptTone {
    mean: [i32; 3],
    spread: [i32; 3],
    paper_is_given: bool,
}

impl KeptTone {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "CIELAB of anything that can be photographed, far below the limit"
    )]
    pub fn new(tone: &Tone) -> KeptTone {
        let kept = |values: [f64; 3]| values.map(|value| (value * 1e4).round() as i32);
        KeptTone {
            mean: kept(tone.mean),
            spread: kept(tone.spread),
            paper_is_given: tone.paper_is_given,
        }
    }

    fn tone(self) -> Tone {
        let read = |values: [i32; 3]| values.map(|value| f64::from(value) / 1e4);
        Tone {
            mean: read(self.mean),
            spread: read(self.spread),
            paper_is_given: self.paper_is_given,
        }
    }
}

#[derive(Debug, Serialize, Deserialize)]
struct Manifest {
    name: String,
    parts: Vec<KeptPart>,
}

/// One point of an entry: its detail where the picture shows it, its tone where it has one.
#[derive(Debug, Serialize, Deserialize)]
struct KeptPart {
    point: String,
    detail: Option<KeptDetail>,
    tone: Option<KeptTone>,
}

#[derive(Debug, Serialize, Deserialize)]
struct KeptDetail {
    width: u32,
    height: u32,
    bytes: u64,
}

/// The detail and the tone of one point, not yet kept.
pub struct CutPoint {
    pub point: Key,
    pub detail: Option<EncodedPicture>,
    pub tone: Option<KeptTone>,
}

/// The entry of a key, if it is whole.
pub fn find(dir: &Path, key: CacheKey) -> Option<Detailed> {
    let manifest: Manifest = serde_json::from_slice(&fs::read(key.manifest(dir)).ok()?).ok()?;
    let is_whole = |part: &KeptPart| {
        let Some(detail) = &part.detail else {
            return true;
        };
        fs::metadata(dir.join(key.file(&part.point)))
            .is_ok_and(|file| file.is_file() && file.len() == detail.bytes)
    };
    let sound = manifest.name == key.0.to_hex().as_str() && manifest.parts.iter().all(is_whole);
    sound.then(|| detailed(dir, key, &manifest, false))?
}

/// Keeps under a key what was cut out.
///
/// # Errors
/// [`Fault::Cache`] where the disk fails; nothing of the entry remains then.
pub fn keep(dir: &Path, key: CacheKey, made: &[CutPoint]) -> Result<Detailed, Fault> {
    let kept = write(dir, key, made);
    if kept.is_err() {
        for part in made.iter().filter(|part| part.detail.is_some()) {
            let _ = fs::remove_file(dir.join(key.file(part.point.as_str())));
        }
    }
    kept
}

/// How many bytes an entry takes, its manifest left aside.
pub fn bytes(made: &[CutPoint]) -> u64 {
    let details = made.iter().filter_map(|part| part.detail.as_ref());
    details.map(|detail| detail.jpeg.len() as u64).sum()
}

fn write(dir: &Path, key: CacheKey, made: &[CutPoint]) -> Result<Detailed, Fault> {
    let refused = |file: &Path, error: &io::Error| Fault::Cache {
        file: file.to_owned(),
        why: error.to_string(),
    };
    let mut parts = Vec::with_capacity(made.len());
    for part in made {
        if let Some(detail) = &part.detail {
            let path = dir.join(key.file(part.point.as_str()));
            write_whole(&path, &detail.jpeg).map_err(|error| refused(&path, &error))?;
        }
        parts.push(KeptPart {
            point: part.point.to_string(),
            detail: part.detail.as_ref().map(|detail| KeptDetail {
                width: detail.extent.width,
                height: detail.extent.height,
                bytes: detail.jpeg.len() as u64,
            }),
            tone: part.tone,
        });
    }
    let manifest = Manifest {
        name: key.0.to_hex().to_string(),
        parts,
    };
    let path = key.manifest(dir);
    serde_json::to_vec(&manifest)
        .map_err(io::Error::from)
        .and_then(|text| write_whole(&path, &text))
        .map_err(|error| refused(&path, &error))?;
    Ok(detailed(dir, key, &manifest, true).unwrap_or_default())
}

/// The entry that a manifest describes; `None` where it names a point that is not a key.
fn detailed(dir: &Path, key: CacheKey, manifest: &Manifest, made: bool) -> Option<Detailed> {
    let mut found = Detailed {
        made,
        ..Detailed::default()
    };
    for part in &manifest.parts {
        let point: Key = part.point.parse().ok()?;
        if let Some(detail) = &part.detail {
            let file = key.file(&part.point);
            let derivative = Derivative {
                width: detail.width,
                height: detail.height,
                file: dir.join(&file),
                name: file,
            };
            found.details.insert(point.clone(), derivative);
        }
        if let Some(tone) = part.tone {
            found.tones.insert(point, tone.tone());
        }
    }
    Some(found)
}
