//! A site on its way to its place: its files are put as they are made, so that nobody need hold all of
//! them.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, OnceLock, PoisonError};

use super::mark::{self, Mark, MarkedFile};
use super::staging::Staging;
use super::{Bundle, PublishFault, check_target, swap};

/// What came of publishing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Published {
    /// Files written or copied anew.
    pub written: usize,
    /// Files that stand as they stood.
    pub kept: usize,
    /// Files that are no longer part of the site.
    pub removed: usize,
}

/// A site that is being set up beside the one it will replace. Dropped before [`Publishing::finish`], it
/// leaves nothing.
pub struct Publishing {
    target: PathBuf,
    old: Mark,
    staging: Staging,
    /// Each file that was put, and whether it stands in the old site.
    put: Mutex<BTreeMap<String, (MarkedFile, bool)>>,
    fault: OnceLock<PublishFault>,
}

impl Publishing {
    /// Begins to set up a site for `target`.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that stood in `target` still stands.
    pub fn begin(target: &Path) -> Result<Publishing, PublishFault> {
        // Where the target is a link, the folder it leads to is replaced and the link stays.
        let target = std::fs::canonicalize(target).unwrap_or_else(|_| target.to_owned());
        // Locked first: what stands there must not change between a look and the next.
        let staging = Staging::beside(&target)?;
        swap::recover(&target)?;
        check_target(&target)?;
        Ok(Publishing {
            old: Mark::read(&target),
            staging,
            target,
            put: Mutex::default(),
            fault: OnceLock::new(),
        })
    }

    /// Puts a file of the site: linked from the old one where it stands there, written otherwise. May be
    /// called from several threads. A refusal of the disk is told at the end.
    pub fn put(&self, path: &str, bytes: &[u8]) {
        if self.fault.get().is_some() {
            return;
        }
        let file = MarkedFile::of(bytes);
        let stands = self.old.stands(&self.target, path, &file);
        let standing = stands.then(|| self.target.join(path));
        if let Err(fault) = self.staging.put(path, bytes, standing.as_deref()) {
            let _ = self.fault.set(fault);
        }
        let mut put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        put.insert(path.to_owned(), (file, stands));
    }

    /// Adds the pictures and puts the site in its place, unless all of it stands there already.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that stood in `target` still stands.
    pub fn finish(
        self,
        pictures: &BTreeMap<String, PathBuf>,
        bundles: &BTreeMap<String, Bundle>,
    ) -> Result<Published, PublishFault> {
        if let Some(fault) = self.fault.into_inner() {
            return Err(fault);
        }
        let (old, target) = (&self.old, &self.target);
        let mut put = self
            .put
            .into_inner()
            .unwrap_or_else(PoisonError::into_inner);
        for (path, source) in pictures {
            let file = MarkedFile::of_picture(source)?;
            let stands = old.stands(target, path, &file);
            put.insert(path.clone(), (file, stands));
        }
        let mut published = Published::default();
        let mut count = |files: usize, stands: bool| {
            if stands {
                published.kept += files;
            } else {
                published.written += files;
            }
        };
        for (_, stands) in put.values() {
            count(1, *stands);
        }
        for (folder, bundle) in bundles {
            let stands = old.stands_bundled(target, folder, bundle);
            count(bundle.files.len(), stands);
        }
        let new = Mark::of(
            put.into_iter().map(|(path, (file, _))| (path, file)),
            bundles,
        );
        published.removed = old.missing_from(&new);
        if published.written == 0 && published.removed == 0 && mark::is_marked(target) {
            return Ok(published);
        }
        self.staging.fill(pictures, bundles, old, &new, target)?;
        swap::exchange(&self.staging, target)?;
        Ok(published)
    }
}
