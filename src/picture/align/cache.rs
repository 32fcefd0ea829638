//! Results of alignment, kept by content.
//!
//! A key is the hash of both photographs' bytes and of everything that decides how one lies on the other. Each
//! key has one small file, written whole. Numbers are kept as their bits, so that reading gives exactly what
//! was computed. The folder may be deleted at any time.

use std::fs;
use std::path::{Path, PathBuf};

use keyblock_model::boxes::PercentBox;
use keyblock_model::registration::{Aligned, Homography, Refusal, Refused, Registration};
use keyblock_model::words::ClosedList as _;
use serde::{Deserialize, Serialize};

use super::pair::Photograph;
use crate::cache::write_whole;
use crate::fault::Fault;

/// Raise this whenever the same photographs would give other numbers.
const SCHEME: u32 = 2;

/// The key of the result of one pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CacheKey(blake3::Hash);

impl CacheKey {
    /// The key of a pair: each photograph with the hash of its bytes.
    pub fn new(
        (reference, its_bytes): (&Photograph, blake3::Hash),
        (picture, bytes): (&Photograph, blake3::Hash),
        ties: &[[f64; 4]],
    ) -> CacheKey {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: alignment of two pictures");
        hasher.update(&SCHEME.to_le_bytes());
        for (photograph, bytes) in [(reference, its_bytes), (picture, bytes)] {
            hasher.update(bytes.as_bytes());
            let area = photograph.area.map_or([-1.0; 4], PercentBox::percent);
            for number in area {
                hasher.update(&number.to_bits().to_le_bytes());
            }
            hasher.update(&[u8::from(photograph.mirrored)]);
        }
        for number in ties.iter().flatten() {
            hasher.update(&number.to_bits().to_le_bytes());
        }
        CacheKey(hasher.finalize())
    }

    pub fn file(self, dir: &Path) -> PathBuf {
        let short: String = self.0.to_hex().chars().take(24).collect();
        dir.join(format!("{short}.json"))
    }
}

/// The content of a result file.
#[derive(Debug, Serialize, Deserialize)]
struct Kept {
    key: String,
    confidence: u64,
    #[serde(flatten)]
    outcome: Outcome,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Outcome {
    Aligned {
        matrix: [u64; 9],
        residual_px: u64,
        by_hand: bool,
    },
    /// The word of the [`Refusal`].
    Refused(String),
}

/// The result kept under a key, if its file is whole.
pub fn find(dir: &Path, key: CacheKey) -> Option<Registration> {
    let kept: Kept = serde_json::from_slice(&fs::read(key.file(dir)).ok()?).ok()?;
    if kept.key != key.0.to_hex().as_str() {
        return None;
    }
    let confidence = f64::from_bits(kept.confidence);
    Some(match kept.outcome {
        Outcome::Aligned {
            matrix,
            residual_px,
            by_hand,
        } => Registration::Aligned(Aligned {
            // `Homography::new` divides by the last number, 1, which leaves the bits of each number unchanged.
            matrix: Homography::new(matrix.map(f64::from_bits))?,
            confidence,
            residual_px: f64::from_bits(residual_px),
            by_hand,
        }),
        Outcome::Refused(why) => Registration::Refused(Refused {
            why: Refusal::from_word(&why)?,
            confidence,
        }),
    })
}

/// Keeps the result of a pair.
///
/// # Errors
/// [`Fault::Cache`] where the disk fails.
pub fn keep(dir: &Path, key: CacheKey, registration: &Registration) -> Result<(), Fault> {
    let (confidence, outcome) = match registration {
        // This result needs no comparing, so it is not kept.
        Registration::Reference => return Ok(()),
        Registration::Aligned(aligned) => (
            aligned.confidence,
            Outcome::Aligned {
                matrix: aligned.matrix.rows().map(f64::to_bits),
                residual_px: aligned.residual_px.to_bits(),
                by_hand: aligned.by_hand,
            },
        ),
        Registration::Refused(refused) => (
            refused.confidence,
            Outcome::Refused(refused.why.word().to_owned()),
        ),
    };
    let kept = Kept {
        key: key.0.to_hex().to_string(),
        confidence: confidence.to_bits(),
        outcome,
    };
    let file = key.file(dir);
    serde_json::to_vec(&kept)
        .map_err(std::io::Error::from)
        .and_then(|text| write_whole(&file, &text))
        .map_err(|error| Fault::Cache {
            file,
            why: error.to_string(),
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(ties: &[[f64; 4]]) -> CacheKey {
        let photograph = Photograph {
            source: "x.jpg".into(),
            area: None,
            mirrored: false,
        };
        let bytes = blake3::hash(b"x");
        CacheKey::new((&photograph, bytes), (&photograph, bytes), ties)
    }

    #[test]
    fn what_is_kept_is_found_to_the_last_bit() {
        let dir = tempfile::tempdir().unwrap();
        let rows = [
            0.1 + 0.2,
            1e-17,
            3.7,
            0.3,
            0.97,
            -4.1,
            1e-5 / 3.0,
            2e-6,
            1.0,
        ];
        let aligned = Registration::Aligned(Aligned {
            matrix: Homography::new(rows).unwrap(),
            confidence: 0.1 + 0.7,
            residual_px: 1.0 / 3.0,
            by_hand: true,
        });
        let refused = Registration::Refused(Refused {
            why: Refusal::OnePartOnly,
            confidence: 0.21,
        });
        let (first, second) = (key(&[]), key(&[[1.0; 4]]));
        assert!(find(dir.path(), first).is_none());
        keep(dir.path(), first, &aligned).unwrap();
        keep(dir.path(), second, &refused).unwrap();
        assert_eq!(find(dir.path(), first), Some(aligned));
        assert_eq!(find(dir.path(), second), Some(refused));
    }

    #[test]
    fn a_damaged_file_is_not_believed() {
        let dir = tempfile::tempdir().unwrap();
        let key = key(&[]);
        let refused = Registration::Refused(Refused {
            why: Refusal::FewAgree,
            confidence: 0.1,
        });
        keep(dir.path(), key, &refused).unwrap();
        let text = fs::read(key.file(dir.path())).unwrap();
        fs::write(key.file(dir.path()), &text[..text.len() / 2]).unwrap();
        assert_eq!(find(dir.path(), key), None);
    }
}
