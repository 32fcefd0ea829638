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
use crate::read::files::kind::{FileKind, Location, recognise};
use crate::read::files::load::{Loaded, load, load_texts, with_missing};
use crate::read::files::text::{Text, text_of};
use crate::read::files::walk::{File, walk};

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
        Inputs::from_files(files, load)
    }

    /// A catalogue that consists of `bytes` by path, without a folder. It has no themes of its own, and its
    /// pictures cannot be opened.
    #[must_use]
    pub fn of_bytes(bytes: &BTreeMap<String, Vec<u8>>) -> Inputs {
        let files = bytes.keys().map(|path| File {
            path: path.clone(),
            full: PathBuf::from(path),
            kind: recognise(path),
        });
        let files = with_missing(Path::new(""), files.collect());
        Inputs::from_files(files, |files, sources, findings| {
            let text = |file: &File| match bytes.get(&file.path) {
                Some(bytes) => text_of(bytes.clone()),
                None => Text::Absent,
            };
            let texts = files.iter();
            let texts = texts.map(|file| file.kind.is_text().then(|| text(file)));
            let texts = texts.collect();
            load_texts(files, texts, sources, findings)
        })
    }

    /// The same catalogue with further or other files, without a folder: its pictures cannot be opened.
    #[must_use]
    pub fn with(&self, files: &BTreeMap<String, Vec<u8>>) -> Inputs {
        let empty = |path: &String| (path.clone(), Vec::new());
        let mut bytes: BTreeMap<String, Vec<u8>> = self.locations.keys().map(empty).collect();
        for (file, path) in self.sources.paths() {
            let text = self.sources.text(file).as_bytes().to_vec();
            bytes.insert(path.to_owned(), text);
        }
        for (path, content) in files {
            bytes.insert(path.clone(), content.clone());
        }
        Inputs::of_bytes(&bytes)
    }

    fn from_files(
        files: Vec<File>,
        load: impl FnOnce(Vec<File>, &mut Sources, &mut Vec<Finding>) -> Vec<Loaded>,
    ) -> Inputs {
        let locations = files
            .iter()
            .map(|file| (file.path.clone(), file.kind.location()));
        let locations = locations.collect();
        let is_other = |kind: &FileKind| !kind.is_text() && *kind != FileKind::PictureFolder;
        let others = files.iter().filter(|file| is_other(&file.kind));
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
