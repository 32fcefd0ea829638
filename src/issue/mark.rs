//! The mark of a compiled site: a list of its files with their hashes, in the file [`NAME`].
//!
//! The mark distinguishes a compiled site from any other folder, and tells the next compile which files it
//! need not write again.

use std::collections::BTreeMap;
use std::path::Path;

use serde::{Deserialize, Serialize};

use super::bundle::Bundle;
use super::fault::{PublishFault, refused};

/// The mark's name inside the site.
pub const NAME: &str = ".keyblock-site";

/// The files of a site.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Mark {
    /// The program that wrote it, and its version.
    pub made_by: String,
    /// Path and content of each file.
    pub files: BTreeMap<String, MarkedFile>,
    /// Folder and content of each bundle.
    #[serde(default)]
    pub bundles: BTreeMap<String, MarkedBundle>,
}

/// The entry of a bundle: one for some hundred tiles.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MarkedBundle {
    /// [`Bundle::content`].
    pub content: String,
    /// How many files.
    pub files: usize,
    /// The sum of their lengths, in bytes.
    pub bytes: u64,
}

/// The entry of a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MarkedFile {
    /// BLAKE3 of the bytes, in hexadecimal; empty for a picture, whose path follows from its content.
    pub hash: String,
    /// The length, in bytes.
    pub bytes: u64,
}

impl MarkedFile {
    /// The entry for a page or asset.
    #[must_use]
    pub fn of(bytes: &[u8]) -> MarkedFile {
        MarkedFile {
            hash: blake3::hash(bytes).to_hex().to_string(),
            bytes: bytes.len() as u64,
        }
    }

    /// The entry for a prepared picture.
    ///
    /// # Errors
    /// [`PublishFault::Disk`] where its file is gone.
    pub fn of_picture(source: &Path) -> Result<MarkedFile, PublishFault> {
        let about = std::fs::metadata(source).map_err(refused("find", source))?;
        Ok(MarkedFile {
            hash: String::new(),
            bytes: about.len(),
        })
    }
}

/// Whether `folder` carries a mark.
#[must_use]
pub fn is_marked(folder: &Path) -> bool {
    folder.join(NAME).is_file()
}

impl Mark {
    /// Reads the mark in `folder`. It is empty where there is none or it cannot be read; then everything is
    /// written anew.
    #[must_use]
    pub fn read(folder: &Path) -> Mark {
        std::fs::read(folder.join(NAME))
            .ok()
            .and_then(|bytes| serde_json::from_slice(&bytes).ok())
            .unwrap_or_default()
    }

    /// The mark that a site of `files` and `bundles` carries.
    #[must_use]
    pub fn of(
        files: impl Iterator<Item = (String, MarkedFile)>,
        bundles: &BTreeMap<String, Bundle>,
    ) -> Mark {
        let bundles = bundles.iter();
        Mark {
            made_by: format!("keyblock {}", env!("CARGO_PKG_VERSION")),
            files: files.collect(),
            bundles: bundles.map(|(f, b)| (f.clone(), marked(b))).collect(),
        }
    }

    /// How many files of this site are not in `new`.
    #[must_use]
    pub fn missing_from(&self, new: &Mark) -> usize {
        let files = self.files.keys().filter(|p| !new.files.contains_key(*p));
        let bundles = self.bundles.iter();
        let bundles = bundles.filter(|(folder, _)| !new.bundles.contains_key(*folder));
        files.count() + bundles.map(|(_, b)| b.files).sum::<usize>()
    }

    /// Whether the site has the files of `wanted` in `folder` already.
    #[must_use]
    pub fn has_bundle(&self, site: &Path, folder: &str, wanted: &Bundle) -> bool {
        let marked = self.bundles.get(folder);
        let is_same = |marked: &MarkedBundle| {
            marked.content == wanted.content && marked.files == wanted.files.len()
        };
        marked.is_some_and(is_same) && wanted.lies_in(&site.join(folder))
    }

    /// Whether the site has the file that `wanted` describes under `path` already. Its hash is taken from the
    /// mark, its length from the disk.
    #[must_use]
    pub fn has(&self, site: &Path, path: &str, wanted: &MarkedFile) -> bool {
        self.files.get(path) == Some(wanted)
            && std::fs::symlink_metadata(site.join(path))
                .is_ok_and(|meta| meta.is_file() && meta.len() == wanted.bytes)
    }

    /// The content of the file [`NAME`].
    #[must_use]
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = serde_json::to_vec_pretty(self).unwrap_or_default();
        bytes.push(b'\n');
        bytes
    }
}

fn marked(bundle: &Bundle) -> MarkedBundle {
    MarkedBundle {
        content: bundle.content.clone(),
        files: bundle.files.len(),
        bytes: bundle.files.iter().map(|f| f.at.end - f.at.start).sum(),
    }
}
