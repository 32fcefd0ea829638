//! Prepared pictures, kept by content.
//!
//! A key is the hash of a photograph's bytes and of everything that decides what is made of it. An entry has
//! the JPEG files (those of the image service concatenated in a single pack, because a hundred small files
//! cost more than their pixels) and a manifest, which is written last: an entry without one is not used. Every
//! file is written under a temporary name and renamed once it is whole, so a killed run leaves nothing that a
//! later one could take for an entry. The folder may be deleted at any time.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use serde::{Deserialize, Serialize};

use crate::codec;
use crate::derive::{self, MemoryNeed, Rendering};
use crate::fault::{Fault, MemoryCause};
use crate::plan::Plan;
use crate::prepared::{Colour, Derivative, Prepared, Service, ServiceFile};
use crate::source::PictureFile;
use crate::tiles::{self, FileContent};

/// Raise this whenever the same photograph and plan would give other bytes: a change in `decode`,
/// `derive`, `pyramid`, `codec` or `colour`, or another release of the libraries below them.
const SCHEME: u32 = 3;

/// How many hexadecimal digits of the hash are in names: 96 bits, too many for two to be equal by accident or
/// for a forgery to be worth its cost. The manifest holds the whole hash.
const DIGITS: usize = 24;

/// The key of everything that is made of one photograph under one plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct CacheKey(blake3::Hash);

impl CacheKey {
    /// The key of a photograph's bytes, for a plan and the picture's own largest side.
    ///
    /// # Errors
    /// Where the file cannot be read.
    pub fn new(file: &PictureFile, plan: &Plan, largest: Option<u32>) -> Result<Self, Fault> {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: derivatives of a picture");
        hasher.update(&SCHEME.to_le_bytes());
        hasher.update(codec::ENCODER.as_bytes());
        hasher.update(&[plan.quality]);
        hasher.update(&derive::longest_side(plan, largest).to_le_bytes());
        let widths = derive::widths(plan);
        hasher.update(&(widths.len() as u64).to_le_bytes());
        for width in widths {
            hasher.update(&width.to_le_bytes());
        }
        file.hash_into(&mut hasher)?;
        Ok(Self(hasher.finalize()))
    }

    fn short(self) -> String {
        self.0.to_hex().chars().take(DIGITS).collect()
    }

    pub fn manifest(self, dir: &Path) -> PathBuf {
        dir.join(format!("{}.json", self.short()))
    }

    fn name(self, width: u32) -> String {
        format!("{}-{width}.jpg", self.short())
    }

    fn pack(self, dir: &Path) -> PathBuf {
        dir.join(format!("{}.tiles", self.short()))
    }
}

/// The manifest of an entry.
#[derive(Debug, Serialize, Deserialize)]
struct Manifest {
    key: String,
    width: u32,
    height: u32,
    colour: Colour,
    /// Bytes of memory that making the files takes at most, and why.
    memory: u64,
    cause: MemoryCause,
    files: Vec<Listed>,
    service: Packed,
}

/// The image service of an entry: the size it states, and how long each of its files is, in the order
/// of [`tiles::files`].
#[derive(Debug, Serialize, Deserialize)]
struct Packed {
    width: u32,
    height: u32,
    bytes: Vec<u64>,
}

/// One file of an entry, with its length, by which a damaged one is recognised.
#[derive(Debug, Serialize, Deserialize)]
struct Listed {
    width: u32,
    height: u32,
    bytes: u64,
}

/// The entry of a key, if it is whole.
pub fn find(dir: &Path, key: CacheKey) -> Option<Prepared> {
    let manifest: Manifest = serde_json::from_slice(&fs::read(key.manifest(dir)).ok()?).ok()?;
    let sound = manifest.key == key.0.to_hex().as_str()
        && !manifest.files.is_empty()
        && manifest.files.iter().all(|listed| {
            fs::metadata(dir.join(key.name(listed.width)))
                .is_ok_and(|file| file.is_file() && file.len() == listed.bytes)
        })
        && fs::metadata(key.pack(dir)).is_ok_and(|file| {
            file.is_file() && file.len() == manifest.service.bytes.iter().sum::<u64>()
        });
    if !sound {
        return None;
    }
    let service = service(dir, key, &manifest)?;
    Some(prepared(dir, key, &manifest, service, false))
}

/// Keeps under a key what was made of a photograph.
///
/// # Errors
/// [`Fault::Cache`] where the disk fails; nothing of the entry remains then.
pub fn keep(
    dir: &Path,
    key: CacheKey,
    rendering: &Rendering,
    need: MemoryNeed,
) -> Result<Prepared, Fault> {
    let kept = write(dir, key, rendering, need);
    if kept.is_err() {
        let sizes = rendering
            .sizes
            .iter()
            .map(|size| key.name(size.extent.width));
        let files = sizes.map(|name| dir.join(name)).chain([key.pack(dir)]);
        // A disk may be full, and these would stay in it unused.
        files.for_each(|file| drop(fs::remove_file(file)));
    }
    kept
}

/// How many bytes an entry takes, its manifest left aside.
pub fn bytes(rendering: &Rendering) -> u64 {
    let sizes = rendering.sizes.iter().map(|size| &size.jpeg);
    // The pack has the sizes too.
    let all = sizes.clone().chain(sizes).chain(&rendering.tiles);
    all.map(|jpeg| jpeg.len() as u64).sum()
}

fn write(
    dir: &Path,
    key: CacheKey,
    rendering: &Rendering,
    need: MemoryNeed,
) -> Result<Prepared, Fault> {
    let refused = |file: &Path, error: io::Error| Fault::Cache {
        file: file.to_owned(),
        why: error.to_string(),
    };
    let mut files = Vec::with_capacity(rendering.sizes.len());
    for file in &rendering.sizes {
        let extent = file.extent;
        let path = dir.join(key.name(extent.width));
        write_whole(&path, &file.jpeg).map_err(|error| refused(&path, error))?;
        files.push(Listed {
            width: extent.width,
            height: extent.height,
            bytes: file.jpeg.len() as u64,
        });
    }
    let widths: Vec<_> = rendering.sizes.iter().map(|s| s.extent.size()).collect();
    let files_of_service = tiles::files(rendering.published.size(), &widths);
    let parts = files_of_service.iter().map(|file| match file.shows {
        FileContent::Whole(place) => rendering.sizes.get(place).map(|whole| &whole.jpeg),
        FileContent::Tile(place) => rendering.tiles.get(place),
    });
    let parts: Vec<&[u8]> = parts
        .map(|jpeg| jpeg.map_or(&[][..], Vec::as_slice))
        .collect();
    let path = key.pack(dir);
    write_whole(&path, &parts.concat()).map_err(|error| refused(&path, error))?;
    let manifest = Manifest {
        key: key.0.to_hex().to_string(),
        width: rendering.master.width,
        height: rendering.master.height,
        colour: rendering.colour,
        memory: need.bytes,
        cause: need.cause,
        files,
        service: Packed {
            width: rendering.published.width,
            height: rendering.published.height,
            bytes: parts.iter().map(|part| part.len() as u64).collect(),
        },
    };
    let service = service(dir, key, &manifest)
        .ok_or_else(|| Fault::Damaged("it was not cut into the tiles it needs".into()))?;
    let path = key.manifest(dir);
    serde_json::to_vec(&manifest)
        .map_err(io::Error::from)
        .and_then(|text| write_whole(&path, &text))
        .map_err(|error| refused(&path, error))?;
    Ok(prepared(dir, key, &manifest, service, true))
}

/// The service of an entry; `None` where its files are not those that its size asks for.
fn service(dir: &Path, key: CacheKey, manifest: &Manifest) -> Option<Service> {
    let packed = &manifest.service;
    let size = (packed.width, packed.height);
    let widths: Vec<_> = manifest.files.iter().map(|f| (f.width, f.height)).collect();
    let files = tiles::files(size, &widths);
    if files.len() != packed.bytes.len() || packed.bytes.contains(&0) {
        return None;
    }
    let mut at = 0;
    let file = |(file, &bytes): (tiles::PlannedFile, &u64)| {
        let begins = at;
        at += bytes;
        ServiceFile {
            path: file.path,
            at: begins..at,
        }
    };
    Some(Service {
        width: packed.width,
        height: packed.height,
        pack: key.pack(dir),
        content: key.short(),
        files: files.into_iter().zip(&packed.bytes).map(file).collect(),
    })
}

fn prepared(
    dir: &Path,
    key: CacheKey,
    manifest: &Manifest,
    service: Service,
    made: bool,
) -> Prepared {
    let derivatives = manifest
        .files
        .iter()
        .map(|listed| {
            let name = key.name(listed.width);
            Derivative {
                width: listed.width,
                height: listed.height,
                file: dir.join(&name),
                name,
            }
        })
        .collect();
    Prepared {
        width: manifest.width,
        height: manifest.height,
        colour: manifest.colour,
        derivatives,
        service,
        memory: manifest.memory,
        cause: manifest.cause,
        made,
    }
}

/// Makes the folder in which results are kept.
///
/// # Errors
/// [`Fault::Cache`] where the disk fails.
pub fn make_folder(dir: &Path) -> Result<(), Fault> {
    fs::create_dir_all(dir).map_err(|error| Fault::Cache {
        file: dir.to_owned(),
        why: error.to_string(),
    })
}

/// Writes a file so that a partial file never has its name.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    // A name different from those of other threads and of another run on the same catalogue.
    static COUNT: AtomicU64 = AtomicU64::new(0);
    let count = COUNT.fetch_add(1, Ordering::Relaxed);
    let partial = path.with_extension(format!("{}-{count}.partial", std::process::id()));
    let written = fs::write(&partial, bytes).and_then(|()| fs::rename(&partial, path));
    if written.is_err() {
        // The first failure is reported; whether the partial file could be removed does not matter.
        let _ = fs::remove_file(&partial);
    }
    written
}
