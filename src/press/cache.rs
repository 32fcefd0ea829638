//! The cache of a catalogue.
//!
//! Pictures, alignments, details and small pictures are kept, each in a folder of its own. A cache that cannot be written costs time
//! and nothing else: where there is a spare folder, everything is made without being kept.

use std::path::{Path, PathBuf};
use std::time::Duration;

use super::fault::DiskFault;
use crate::picture::{Store, Swept};

/// The folder of a catalogue that holds the cache: results that are used again while their input stays
/// the same. It may be deleted at any time.
const CACHE: &str = ".keyblock";

/// How long an entry is kept that no compile uses. Records are often changed back, or a branch of them is, within a
/// month.
pub(crate) const KEPT_UNUSED: Duration = Duration::from_secs(30 * 24 * 60 * 60);

/// The cache of the catalogue in one folder, as one run uses it.
#[derive(Debug)]
pub struct Cache {
    root: PathBuf,
    pub(super) pictures: Store,
    pub(super) alignments: Store,
    pub(super) details: Store,
    pub(super) small: Store,
}

impl Cache {
    /// The cache of the catalogue in `dir`.
    #[must_use]
    pub fn of(dir: &Path) -> Cache {
        let root = root(dir);
        let store = |name: &str| Store::at(&root.join(name));
        Cache {
            pictures: store("pictures"),
            alignments: store("alignments"),
            details: store("details"),
            small: store("small"),
            root,
        }
    }

    /// The same, with a temporary folder, if any, for what the disk of the cache refuses.
    #[must_use]
    pub fn with_spare(self, spare: Option<&Path>) -> Cache {
        let Some(spare) = spare else { return self };
        Cache {
            pictures: self.pictures.with_spare(spare),
            details: self.details.with_spare(spare),
            small: self.small.with_spare(spare),
            ..self
        }
    }

    /// Its folder.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.root
    }

    /// Why something could not be kept; `None` where everything was.
    #[must_use]
    pub fn fault(&self) -> Option<DiskFault> {
        let fault = self.stores().into_iter().find_map(Store::fault);
        fault.cloned().map(DiskFault)
    }

    /// How many bytes of pictures no folder took.
    #[must_use]
    pub fn unkept_bytes(&self) -> u64 {
        self.stores().into_iter().map(Store::unkept_bytes).sum()
    }

    /// Removes what this run did not use, and what was not used for `unused_for` before.
    #[must_use]
    pub fn sweep(&self, unused_for: Duration) -> Swept {
        let swept = self.stores().map(|store| store.sweep(unused_for));
        swept.into_iter().fold(Swept::default(), Swept::and)
    }

    fn stores(&self) -> [&Store; 4] {
        [&self.pictures, &self.alignments, &self.details, &self.small]
    }
}

/// The folder of the cache of the catalogue in `dir`.
pub(super) fn root(dir: &Path) -> PathBuf {
    dir.join(CACHE)
}
