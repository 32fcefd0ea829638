//! A site being staged: files are written as they are made, so the whole is never in memory.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use super::bundle::Bundle;
use super::clear;
use super::disk::{Disk, SystemDisk};
use super::fault::{PublishFault, refused};
use super::foreign;
use super::lock::Lock;
use super::mark::{Mark, MarkedFile};
use super::old_site::OldSite;
use super::staging::{Staging, on_disk};
use super::swap;
use super::target::site_in;

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
    disk: Arc<dyn Disk>,
    old: Option<OldSite>,
    staging: Staging,
    /// Each file that was put, and whether the old site has it unchanged.
    put: Mutex<BTreeMap<String, (MarkedFile, bool)>>,
    fault: OnceLock<PublishFault>,
    /// How many bytes the files take that were not written any more after the fault.
    unwritten: AtomicU64,
    lock: Lock,
}

impl Publishing {
    /// Begins to stage a site for `target`, which is locked until the end.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that was in `target` is unchanged.
    pub fn begin(target: &Path) -> Result<Publishing, PublishFault> {
        Publishing::begin_on(Arc::new(SystemDisk), target)
    }

    /// Begins to stage a site for `target` on `disk`.
    pub(super) fn begin_on(disk: Arc<dyn Disk>, target: &Path) -> Result<Publishing, PublishFault> {
        // Where the target is a symbolic link, the folder it points to is replaced and the link stays.
        let target = std::fs::canonicalize(target).unwrap_or_else(|_| target.to_owned());
        // Locked first, so that no other compile changes the target between the checks.
        let lock = Lock::on(&target)?;
        swap::recover(&target, &*disk)?;
        let old = site_in(&target)?;
        let fault = OnceLock::new();
        let staging = match Staging::beside(&target, Arc::clone(&disk)) {
            Err(full) if full.is_full() => {
                // The compile goes on, to say how much space is needed.
                let _ = fault.set(full);
                Staging::nowhere(&target, Arc::clone(&disk))
            }
            staging => staging?,
        };
        Ok(Publishing {
            old,
            staging,
            disk,
            target,
            put: Mutex::default(),
            fault,
            unwritten: AtomicU64::new(0),
            lock,
        })
    }

    /// A folder for pictures that the cache does not take. It is on the disk of the target, and removed with
    /// everything in it at the end. `None` where that disk is full.
    #[must_use]
    pub fn spare_folder(&self) -> Option<PathBuf> {
        self.fault.get().is_none().then(|| self.staging.spare())
    }

    /// How many bytes are free on the disk of the target; `None` where the system does not tell.
    #[must_use]
    pub fn free_bytes(&self) -> Option<u64> {
        self.disk.free_bytes(folder_above(&self.target))
    }

    /// Puts a file into the staged site: linked from the old site where that has it unchanged, written
    /// otherwise. May be called from several threads. A fault of the disk is returned by
    /// [`Publishing::finish`].
    pub fn put(&self, path: &str, bytes: &[u8]) {
        let file = MarkedFile::of(bytes);
        let old = self.old.as_ref().filter(|old| old.has(path, &file));
        if self.fault.get().is_some() {
            // Only counted, to say how much space is needed.
            let bytes = old.map_or(on_disk(file.bytes), |_| 0);
            self.unwritten.fetch_add(bytes, Ordering::Relaxed);
        } else {
            let linked = old.map(|old| old.folder().join(path));
            if let Err(fault) = self.staging.put(path, bytes, linked.as_deref()) {
                let bytes = on_disk(file.bytes);
                self.unwritten.fetch_add(bytes, Ordering::Relaxed);
                let _ = self.fault.set(fault);
            }
        }
        let is_unchanged = old.is_some();
        let mut put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        put.insert(path.to_owned(), (file, is_unchanged));
    }

    /// The files of the old site that the staged one has not, or has otherwise, once every file was put: path
    /// relative to the site, and where it is. Pictures are not among them.
    #[must_use]
    pub fn outdated(&self) -> Vec<(String, PathBuf)> {
        let put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        let is_kept = |path: &str| put.get(path).is_some_and(|(_, is_unchanged)| *is_unchanged);
        let old = self.old.iter().flat_map(|old| &old.mark().files);
        // A picture has no hash: its path follows from its content.
        let files = old.filter(|(path, file)| !file.hash.is_empty() && !is_kept(path));
        files
            .map(|(path, _)| (path.clone(), self.target.join(path)))
            .collect()
    }

    /// The pages of the old site that the staged one has not, once every file was put: their addresses relative to
    /// the site, in order, with a slash at the end.
    #[must_use]
    pub fn dropped_pages(&self) -> Vec<String> {
        let put = self.put.lock().unwrap_or_else(PoisonError::into_inner);
        let old = self.old.iter().flat_map(|old| old.mark().files.keys());
        let pages = old.filter(|path| !put.contains_key(*path));
        let pages = pages.filter_map(|path| path.strip_suffix("index.html"));
        pages.map(str::to_owned).collect()
    }

    /// Adds the pictures and exchanges the staged site for the old one, unless the two are the same. What no
    /// compile made in the old one is carried over.
    ///
    /// # Errors
    /// [`PublishFault`]; the site that was in `target` is unchanged, except where the fault says otherwise.
    pub fn finish(
        self,
        pictures: &BTreeMap<String, PathBuf>,
        bundles: &BTreeMap<String, Bundle>,
    ) -> Result<Published, PublishFault> {
        let Publishing {
            target,
            disk,
            old,
            staging,
            put,
            fault,
            unwritten,
            lock,
        } = self;
        let mut put = put.into_inner().unwrap_or_else(PoisonError::into_inner);
        let mut to_write = unwritten.into_inner();
        let mut published = Published::default();
        for (path, source) in pictures {
            let file = MarkedFile::of_picture(source)?;
            let is_unchanged = old.as_ref().is_some_and(|old| old.has(path, &file));
            if !is_unchanged && !source.starts_with(staging.spare()) {
                to_write += on_disk(file.bytes);
            }
            put.insert(path.clone(), (file, is_unchanged));
        }
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
            let is_unchanged = old
                .as_ref()
                .is_some_and(|old| old.has_bundle(folder, bundle));
            count(bundle.files.len(), is_unchanged);
            if !is_unchanged {
                let bytes = bundle.files.iter().map(|f| on_disk(f.at.end - f.at.start));
                to_write += bytes.sum::<u64>();
            }
        }
        let kept: BTreeSet<String> = put
            .iter()
            .filter(|(_, (_, is_unchanged))| *is_unchanged)
            .map(|(path, _)| path.clone())
            .collect();
        let new = Mark::of(
            put.into_iter().map(|(path, (file, _))| (path, file)),
            bundles,
        );
        published.removed = old.as_ref().map_or(0, |old| old.mark().missing_from(&new));
        if fault.get().is_none()
            && old.is_some()
            && published.written == 0
            && published.removed == 0
        {
            return Ok(published);
        }

        let needed_bytes = staging.written_bytes() + to_write;
        let staged = || -> Result<(), PublishFault> {
            if let Some(fault) = fault.into_inner() {
                return Err(fault);
            }
            let folder = staging.folder();
            if disk.free_bytes(folder).is_some_and(|free| free < to_write) {
                let full = std::io::ErrorKind::StorageFull.into();
                return Err(refused("write to", folder)(full));
            }
            staging.fill(pictures, bundles, old.as_ref(), &new)?;
            if let Some(old) = &old {
                let foreign = foreign::foreign_in(old, &|path| kept.contains(path))?;
                foreign::check_room(&foreign, old, folder)?;
                foreign::link(&foreign, old, folder, &*disk);
            }
            staging.complete(&new, &target)
        };
        if let Err(fault) = staged() {
            let is_full = fault.is_full();
            drop(staging);
            return Err(if is_full {
                PublishFault::Full {
                    free_bytes: disk.free_bytes(folder_above(&target)),
                    needed_bytes,
                    target,
                }
            } else {
                fault
            });
        }
        exchange(staging, old, &target, &*disk)?;
        drop(lock);
        Ok(published)
    }
}

fn folder_above(target: &Path) -> &Path {
    let above = target
        .parent()
        .filter(|above| !above.as_os_str().is_empty());
    above.unwrap_or(Path::new("."))
}

/// Exchanges the staged site for the old one and clears that away.
fn exchange(
    staging: Staging,
    old: Option<OldSite>,
    target: &Path,
    disk: &dyn Disk,
) -> Result<(), PublishFault> {
    let replaced = swap::exchange(staging.folder(), target, old.is_some(), disk)?;
    staging.done();
    let parent = folder_above(target);
    let (Some(old), Some(folder)) = (old, replaced) else {
        return disk
            .sync(parent)
            .map_err(refused("write to the disk", parent));
    };
    let cleared = disk
        .sync(parent)
        .map_err(refused("write to the disk", parent))
        .and_then(|()| clear::replaced(&old.moved_to(&folder), target, disk))
        .and_then(|()| {
            disk.sync(target)
                .map_err(refused("write to the disk", target))
        });
    cleared.map_err(|fault| match fault {
        fault @ PublishFault::Disk { .. } => PublishFault::NotCleared {
            old: folder,
            fault: Box::new(fault),
        },
        fault => fault,
    })
}
