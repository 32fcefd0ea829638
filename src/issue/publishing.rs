//! A site being staged: files are written as they are made, so the whole is never in memory.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, OnceLock, PoisonError};

use super::bundle::Bundle;
use super::fault::PublishFault;
use super::mark::{self, Mark, MarkedFile};
use super::staging::Staging;
use super::swap;
use super::target::check_target;

/// How many files publishing changed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Published {
    /// Files written or copied anew.
    pub written: usize,
    /// Files that were there already, unchanged.
    pub kept: usize,
    /// Files that are no longer part of the site.
    pub removed: usize,
}

/// A site that is staged beside the one it will replace. Where it is dropped before [`Publishing::finish`],
/// nothing of it remains.
pub struct Publishing {
    target: PathBuf,
    old: Mark,
    staging: Staging,
    /// Each file that was put, and whether the old site has it unchanged.
    put: Mutex<BTreeMap<String, (MarkedFile, bool)>>,
    fault: OnceLock<PublishFault>,
}

impl Publishing {
    /// Begins to stage a site for `target`.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that was in `target` is unchanged.
    pub fn begin(target: &Path) -> Result<Publishing, PublishFault> {
        // Where the target is a symbolic link, the folder it points to is replaced and the link stays.
        let target = std::fs::canonicalize(target).unwrap_or_else(|_| target.to_owned());
        // Locked first, so that no other compile changes the target between the checks.
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

    /// Puts a file into the staged site: linked from the old site where that has it unchanged, written
    /// otherwise. May be called from several threads. A fault of the disk is returned by
    /// [`Publishing::finish`].
    pub fn put(&self, path: &str, bytes: &[u8]) {
        if self.fault.get().is_some() {
            return;
        }
        let file = MarkedFile::of(bytes);
        let is_unchanged = self.old.has(&self.target, path, &file);
        let old = is_unchanged.then(|| self.target.join(path));
        if let Err(fault) = self.staging.put(path, bytes, old.as_deref()) {
            let _ = self.fault.set(fault);
        }
        let mut put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        put.insert(path.to_owned(), (file, is_unchanged));
    }

    /// The files of the old site that the staged one has not, or has otherwise, once every file was put: path
    /// relative to the site, and where it is. Pictures are not among them.
    #[must_use]
    pub fn outdated(&self) -> Vec<(String, PathBuf)> {
        let put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        let is_kept = |path: &str| put.get(path).is_some_and(|(_, is_unchanged)| *is_unchanged);
        let old = self.old.files.iter();
        // A picture has no hash: its path follows from its content.
        let files = old.filter(|(path, file)| !file.hash.is_empty() && !is_kept(path));
        files
            .map(|(path, _)| (path.clone(), self.target.join(path)))
            .collect()
    }

    /// Adds the pictures and exchanges the staged site for the old one, unless the two are the same.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that was in `target` is unchanged.
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
            let is_unchanged = old.has(target, path, &file);
            put.insert(path.clone(), (file, is_unchanged));
        }
        let mut published = Published::default();
        let mut count = |files: usize, is_unchanged: bool| {
            if is_unchanged {
                published.kept += files;
            } else {
                published.written += files;
            }
        };
        for (_, is_unchanged) in put.values() {
            count(1, *is_unchanged);
        }
        for (folder, bundle) in bundles {
            let is_unchanged = old.has_bundle(target, folder, bundle);
            count(bundle.files.len(), is_unchanged);
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
