//! The mark of a compiled site: a list of its files with their hashes, in the file [`NAME`].
//!
//! The mark distinguishes a compiled site from any other folder, and what a compile made in it from what it did
//! not. It tells the next compile which files it need not write again. A mark that cannot be read is no mark.
//!
//! A site that is being staged has another content in the same file ([`UNFINISHED`]): everything in its folder
//! was made by the compile that stages it.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::Read as _;
use std::path::Path;

use serde::{Deserialize, Serialize};

use super::bundle::Bundle;
use super::fault::{PublishFault, refused};

/// The mark's name inside the site.
pub const NAME: &str = ".keyblock-site";

/// The content of the file [`NAME`] in a site that is being staged.
pub(super) const UNFINISHED: &[u8] = b"{ \"unfinished\": true }\n";

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
    /// Their paths within the folder. Marks of earlier versions have none: there every file in the folder
    /// counts as the bundle's.
    #[serde(default)]
    pub paths: Vec<String>,
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

/// Whether `folder` seems to be a compiled site, or one that is being staged. Only the head of its mark is read,
/// because the proof asks for each of thousands of changes; what may be deleted is decided by the whole
/// mark ([`super::old_site`]).
#[must_use]
pub fn is_marked(folder: &Path) -> bool {
    let mut head = Vec::new();
    let read = File::open(folder.join(NAME)).and_then(|file| file.take(256).read_to_end(&mut head));
    let has = |word: &[u8]| head.windows(word.len()).any(|window| window == word);
    read.is_ok() && head.starts_with(b"{") && (has(b"\"made_by\"") || head == UNFINISHED)
}

/// Whether `folder` is a site that is being staged, or one whose compile was killed.
#[must_use]
pub(super) fn is_unfinished(folder: &Path) -> bool {
    let Ok(bytes) = std::fs::read(folder.join(NAME)) else {
        return false;
    };
    // A kill may cut the file short, and then there is no other yet.
    let is_alone = || std::fs::read_dir(folder).is_ok_and(|entries| entries.count() == 1);
    bytes == UNFINISHED || (UNFINISHED.starts_with(&bytes) && is_alone())
}

impl Mark {
    /// The mark with the content `bytes`; `None` where this is no mark.
    #[must_use]
    pub(super) fn from_bytes(bytes: &[u8]) -> Option<Mark> {
        serde_json::from_slice(bytes).ok()
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
        paths: bundle.files.iter().map(|f| f.path.clone()).collect(),
    }
}
