//! The mark of a compiled site: which files it is made of, by content.
//!
//! It tells a site from a folder of somebody's own, and lets the next compile know what it need not
//! write again.

use std::collections::BTreeMap;
use std::path::Path;

use serde::{Deserialize, Serialize};

use super::{Bundle, PublishFault, refused};

/// The mark's name inside the site.
pub const NAME: &str = ".keyblock-site";

/// The files of a site.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Mark {
    /// Which program wrote it.
    pub made_by: String,
    /// Path and content of each file.
    pub files: BTreeMap<String, MarkedFile>,
    /// Folder and content of each bundle.
    #[serde(default)]
    pub bundles: BTreeMap<String, MarkedBundle>,
}

/// The content of a bundle, by its name: one line for a hundred tiles.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MarkedBundle {
    /// What [`Bundle::content`] says.
    pub content: String,
    /// How many files.
    pub files: usize,
    /// How many bytes they have together.
    pub bytes: u64,
}

/// A file's content, by its hash.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MarkedFile {
    /// BLAKE3 of the bytes, in hexadecimal; for pictures their name already says it, and it is empty.
    pub hash: String,
    /// How many bytes.
    pub bytes: u64,
}

impl MarkedFile {
    /// What is marked of a page or asset.
    #[must_use]
    pub fn of(bytes: &[u8]) -> MarkedFile {
        MarkedFile {
            hash: blake3::hash(bytes).to_hex().to_string(),
            bytes: bytes.len() as u64,
        }
    }

    /// What is marked of a prepared picture.
    ///
    /// # Errors
    /// [`PublishFault::Disk`] where it is gone.
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
    /// The mark in `folder`; an empty one where there is none or it cannot be read, so that
    /// everything is written anew.
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

    /// Whether the files of `wanted` stand in its folder of the site already.
    #[must_use]
    pub fn stands_bundled(&self, site: &Path, folder: &str, wanted: &Bundle) -> bool {
        let marked = self.bundles.get(folder);
        let is_same = |marked: &MarkedBundle| {
            marked.content == wanted.content && marked.files == wanted.files.len()
        };
        marked.is_some_and(is_same) && wanted.lies_in(&site.join(folder))
    }

    /// Whether the file that `wanted` describes stands under `path` in `folder` already.
    #[must_use]
    pub fn stands(&self, folder: &Path, path: &str, wanted: &MarkedFile) -> bool {
        self.files.get(path) == Some(wanted)
            && std::fs::symlink_metadata(folder.join(path))
                .is_ok_and(|meta| meta.is_file() && meta.len() == wanted.bytes)
    }

    /// The mark as written.
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
