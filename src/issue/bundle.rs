//! Bundles: files of the site that the cache keeps one after the other in a single file, the pack.
//!
//! The tiles of a picture are a bundle. Their addresses follow from the picture's key, not from its
//! content, so a bundle carries a name for its content, by which an unchanged one is recognised.

use std::fs::File;
use std::io::{self, Read as _, Seek as _, SeekFrom};
use std::ops::Range;
use std::path::{Path, PathBuf};

/// The files of a pack.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bundle {
    /// The path of the pack.
    pub pack: PathBuf,
    /// A name for the content of the pack: packs with the same name have the same bytes.
    pub content: String,
    /// The files.
    pub files: Vec<Bundled>,
}

/// One file in a pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bundled {
    /// Its path within the bundle's folder, with `/`.
    pub path: String,
    /// Its bytes in the pack.
    pub at: Range<u64>,
}

impl Bundle {
    /// Whether every file of the bundle is in `folder`, with its length.
    pub(super) fn lies_in(&self, folder: &Path) -> bool {
        self.files.iter().all(|file| {
            std::fs::symlink_metadata(folder.join(&file.path))
                .is_ok_and(|meta| meta.is_file() && meta.len() == file.at.end - file.at.start)
        })
    }

    /// The bytes of the file at `path` within the bundle's folder; `None` where there is none.
    ///
    /// # Errors
    /// Where the pack cannot be read.
    pub fn read(&self, path: &str) -> Option<io::Result<Vec<u8>>> {
        let file = self.files.iter().find(|file| file.path == path)?;
        let read = |at: &Range<u64>| {
            let mut pack = File::open(&self.pack)?;
            pack.seek(SeekFrom::Start(at.start))?;
            let mut bytes = Vec::new();
            pack.take(at.end - at.start).read_to_end(&mut bytes)?;
            Ok(bytes)
        };
        Some(read(&file.at))
    }
}
