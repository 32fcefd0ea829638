//! Everything that a compile reads, with one hash over all of it. The hash is the same only where
//! everything that was read is the same.
//!
//! It covers texts and themes by content. It covers all other files, photographs among them, by path,
//! size and times, because reading thousands of them takes longer than compiling.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use rayon::prelude::*;

use crate::model::finding::Finding;
use crate::model::place::Sources;
use crate::read::files::load::{Loaded, load, with_missing};
use crate::read::files::walk::Location;
use crate::read::files::walk::{FileKind, walk};

/// The files of a catalogue; text files with their text.
pub struct Inputs {
    pub(in crate::read) locations: BTreeMap<String, Location>,
    pub(in crate::read) sources: Sources,
    pub(in crate::read) loaded: Vec<Loaded>,
    pub(in crate::read) findings: Vec<Finding>,
    /// The files that are not text: their paths in the catalogue, and their paths on disk.
    others: Vec<(String, PathBuf)>,
}

impl Inputs {
    /// The files of the catalogue in `dir`.
    #[must_use]
    pub fn of(dir: &Path) -> Inputs {
        let files = with_missing(dir, walk(dir));
        let locations = files.iter().map(|file| {
            let out = file.kind == FileKind::LeadsOut;
            let location = if out {
                Location::Outside
            } else {
                Location::Inside
            };
            (file.path.clone(), location)
        });
        let locations = locations.collect();
        let others = files.iter().filter(|file| !file.kind.is_text());
        let others = others.map(|file| (file.path.clone(), file.full.clone()));
        let others = others.collect();
        let (mut sources, mut findings) = (Sources::default(), Vec::new());
        let loaded = load(files, &mut sources, &mut findings);
        Inputs {
            locations,
            sources,
            loaded,
            findings,
            others,
        }
    }

    /// The hash of the texts as they were read, and of the other files and the themes of `dir` as they
    /// are now. `None` where something cannot be read, or a link leads to nothing.
    #[must_use]
    pub fn name(&self, dir: &Path) -> Option<blake3::Hash> {
        if !self.findings.is_empty() {
            return None;
        }
        let of_text = |file: &Loaded| {
            let mut hasher = blake3::Hasher::new();
            add(&mut hasher, self.sources.path(file.file).as_bytes());
            add(&mut hasher, self.sources.text(file.file).as_bytes());
            hasher.finalize()
        };
        let texts: Vec<blake3::Hash> = self.loaded.par_iter().map(of_text).collect();
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: what a compile reads");
        for text in texts {
            hasher.update(text.as_bytes());
        }
        for (path, file) in &self.others {
            // Renaming a folder does not change the times of its files.
            add(&mut hasher, path.as_bytes());
            add(&mut hasher, &stamp(file)?);
        }
        let themes = dir.join("themes");
        if fs::symlink_metadata(&themes).is_ok() {
            add_content(&mut hasher, &themes)?;
        }
        Some(hasher.finalize())
    }
}

/// Adds bytes with their length, so that no two different sequences give the same input to the hash.
fn add(hasher: &mut blake3::Hasher, bytes: &[u8]) {
    hasher.update(&(bytes.len() as u64).to_le_bytes());
    hasher.update(bytes);
}

/// The size of a file and its times of change, as bytes; `None` for anything but a plain file, and where
/// the system does not give them.
#[must_use]
pub fn stamp(file: &Path) -> Option<Vec<u8>> {
    let about = fs::symlink_metadata(file).ok()?;
    if !about.is_file() {
        return None;
    }
    let changed = about.modified().ok()?;
    let since = changed.duration_since(SystemTime::UNIX_EPOCH).ok()?;
    let mut stamp = about.len().to_le_bytes().to_vec();
    stamp.extend(since.as_nanos().to_le_bytes());
    // A copy may keep the modification time of its original, but not the system's own change time.
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt as _;
        stamp.extend(about.ino().to_le_bytes());
        stamp.extend(about.ctime().to_le_bytes());
        stamp.extend(about.ctime_nsec().to_le_bytes());
    }
    Some(stamp)
}

/// Adds the names and contents of everything in a folder.
fn add_content(hasher: &mut blake3::Hasher, folder: &Path) -> Option<()> {
    let entries = fs::read_dir(folder).ok()?;
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| Some(entry.ok()?.path()))
        .collect::<Option<_>>()?;
    paths.sort();
    add(hasher, &(paths.len() as u64).to_le_bytes());
    for path in paths {
        add(hasher, path.file_name()?.as_encoded_bytes());
        let about = fs::symlink_metadata(&path).ok()?;
        if about.is_dir() {
            hasher.update(b"d");
            add_content(hasher, &path)?;
        } else if about.is_file() {
            hasher.update(b"f");
            add(hasher, &fs::read(&path).ok()?);
        } else {
            return None;
        }
    }
    Some(())
}
