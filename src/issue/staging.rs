//! Stages a site: sets it up in a folder beside the one it will replace.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use rayon::prelude::*;

use super::bundle::Bundle;
use super::disk::Disk;
use super::fault::{PublishFault, refused};
use super::mark::{self, Mark};
use super::old_site::OldSite;
use super::{beside, clear};

/// The folder within the staged site for pictures that the cache did not take. It is removed before the exchange.
const SPARE: &str = ".keyblock-pictures";

/// The unit in which disks are filled, in bytes: that of nearly all file systems.
const BLOCK: u64 = 4096;

/// A folder beside the target in which the new site is set up. Until it is whole, its mark says that it is
/// unfinished, and everything in it was made by this compile.
pub(super) struct Staging {
    folder: PathBuf,
    disk: Arc<dyn Disk>,
    /// How many bytes the files written into it take.
    written: AtomicU64,
    /// Whether the folder, or what the exchange has put in its place, is no longer this compile's to remove.
    is_done: bool,
}

impl Staging {
    /// Makes the folder. The target must be locked, and what a killed compile left must be gone.
    pub(super) fn beside(target: &Path, disk: Arc<dyn Disk>) -> Result<Staging, PublishFault> {
        let folder = beside::next(target);
        disk.make_folder(&folder)
            .map_err(refused("make", &folder))?;
        let staging = Staging {
            folder,
            disk,
            written: AtomicU64::new(0),
            is_done: false,
        };
        // After a power cut, no file may be there without the mark.
        let mark = staging.folder.join(mark::NAME);
        let disk = &staging.disk;
        let marked = disk
            .write_new(&mark, mark::UNFINISHED)
            .and_then(|()| disk.sync(&mark))
            .and_then(|()| disk.sync(&staging.folder));
        marked.map_err(refused("write", &mark))?;
        Ok(staging)
    }

    /// Stages nothing, on a disk that has no room for the folder. What is put is only counted.
    pub(super) fn nowhere(target: &Path, disk: Arc<dyn Disk>) -> Staging {
        Staging {
            folder: beside::next(target),
            disk,
            written: AtomicU64::new(0),
            is_done: true,
        }
    }

    /// The folder of the staged site.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    /// The folder for pictures that the cache does not take. It is made with the first of them.
    pub(super) fn spare(&self) -> PathBuf {
        self.folder.join(SPARE)
    }

    /// How many bytes of the disk the files written until now take.
    pub(super) fn written_bytes(&self) -> u64 {
        self.written.load(Ordering::Relaxed)
    }

    /// Puts one file into the staged site: linked from `old`, or written where that is `None`. It fails where
    /// there is a file already: that may be a link, and writing to it would change the old site.
    pub(super) fn put(
        &self,
        path: &str,
        bytes: &[u8],
        old: Option<&Path>,
    ) -> Result<(), PublishFault> {
        let place = self.folder.join(path);
        let put = || match old {
            Some(old) if self.disk.link(old, &place).is_ok() => Ok(()),
            _ => self.write(&place, bytes),
        };
        let put_in_folder = |error: io::Error| match place.parent() {
            Some(folder) if error.kind() == io::ErrorKind::NotFound => {
                self.disk.make_folders(folder)?;
                put()
            }
            _ => Err(error),
        };
        put()
            .or_else(put_in_folder)
            .map_err(refused("write", &place))
    }

    fn write(&self, place: &Path, bytes: &[u8]) -> io::Result<()> {
        self.disk.write_new(place, bytes)?;
        self.count(bytes.len() as u64);
        Ok(())
    }

    fn count(&self, bytes: u64) {
        self.written.fetch_add(on_disk(bytes), Ordering::Relaxed);
    }

    /// Adds the pictures, linked from the old site where that has them unchanged and copied otherwise.
    pub(super) fn fill(
        &self,
        pictures: &BTreeMap<String, PathBuf>,
        bundles: &BTreeMap<String, Bundle>,
        old: Option<&OldSite>,
        new: &Mark,
    ) -> Result<(), PublishFault> {
        self.make_folders(pictures, bundles)?;
        let spare = self.spare();
        pictures.par_iter().try_for_each(|(path, source)| {
            let place = self.folder.join(path);
            let file = new.files.get(path);
            let unchanged = old.filter(|old| file.is_some_and(|file| old.has(path, file)));
            let link = |from: &Path| self.disk.link(from, &place).is_ok();
            if unchanged.is_some_and(|old| link(&old.folder().join(path)))
                || (source.starts_with(&spare) && link(source))
            {
                return Ok(());
            }
            self.disk
                .copy(source, &place)
                .map_err(refused("copy", source))?;
            self.count(file.map_or(0, |file| file.bytes));
            Ok(())
        })?;
        bundles.par_iter().try_for_each(|(folder, bundle)| {
            let unchanged = old.filter(|old| old.has_bundle(folder, bundle));
            let old_folder = unchanged.map(|old| old.folder().join(folder));
            self.put_bundle(bundle, &self.folder.join(folder), old_folder.as_deref())
        })?;
        if spare.exists() {
            fs::read_dir(&spare)
                .and_then(|mut entries| {
                    entries.try_for_each(|entry| self.disk.remove_file(&entry?.path()))
                })
                .and_then(|()| self.disk.remove_folder(&spare))
                .map_err(refused("clear away", &spare))?;
        }
        Ok(())
    }

    /// Makes every folder of the pictures once, parents before children.
    fn make_folders(
        &self,
        pictures: &BTreeMap<String, PathBuf>,
        bundles: &BTreeMap<String, Bundle>,
    ) -> Result<(), PublishFault> {
        let single = pictures.keys().map(PathBuf::from);
        let bundled = bundles.iter().flat_map(|(folder, bundle)| {
            let files = bundle.files.iter();
            files.map(move |file| Path::new(folder).join(&file.path))
        });
        let mut levels: BTreeMap<usize, BTreeSet<PathBuf>> = BTreeMap::new();
        for file in single.chain(bundled) {
            for folder in file.ancestors().skip(1) {
                let depth = folder.components().count();
                if depth == 0 || !levels.entry(depth).or_default().insert(folder.to_owned()) {
                    break;
                }
            }
        }
        for folders in levels.values() {
            folders.par_iter().try_for_each(|folder| {
                let folder = self.folder.join(folder);
                match self.disk.make_folder(&folder) {
                    // It was made for a page.
                    Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(()),
                    made => made.map_err(refused("make", &folder)),
                }
            })?;
        }
        Ok(())
    }

    /// Puts the files of a bundle into `folder`: linked from `old`, or taken out of the pack where that is
    /// `None`.
    fn put_bundle(
        &self,
        bundle: &Bundle,
        folder: &Path,
        old: Option<&Path>,
    ) -> Result<(), PublishFault> {
        let mut pack = None;
        for file in &bundle.files {
            let place = folder.join(&file.path);
            let link = |from: &Path| self.disk.link(&from.join(&file.path), &place).is_ok();
            if old.is_some_and(link) {
                continue;
            }
            let pack = match &mut pack {
                Some(pack) => pack,
                none => none.insert(fs::read(&bundle.pack).map_err(refused("read", &bundle.pack))?),
            };
            let at = |at: u64| usize::try_from(at).unwrap_or(usize::MAX);
            let bytes = pack
                .get(at(file.at.start)..at(file.at.end))
                .ok_or(io::Error::from(io::ErrorKind::UnexpectedEof))
                .map_err(refused("read", &bundle.pack))?;
            self.write(&place, bytes)
                .map_err(refused("write", &place))?;
        }
        Ok(())
    }

    /// Makes the staged site whole: everything in it is on the disk, and then its mark replaces the one that says
    /// that it is unfinished. The folder gets the rights of the one it will replace.
    pub(super) fn complete(&self, new: &Mark, target: &Path) -> Result<(), PublishFault> {
        keep_rights(target, &self.folder);
        let disk = &self.disk;
        let synced = disk.sync_below(&self.folder);
        synced.map_err(refused("write to the disk", &self.folder))?;
        let unnamed = self.folder.join(format!("{}.new", mark::NAME));
        let mark = self.folder.join(mark::NAME);
        disk.write_new(&unnamed, &new.to_bytes())
            .and_then(|()| disk.sync(&unnamed))
            .and_then(|()| disk.rename(&unnamed, &mark))
            .and_then(|()| disk.sync(&self.folder))
            .map_err(refused("write", &mark))
    }

    /// Says that the exchange is done, so that the folder is no longer removed.
    pub(super) fn done(mut self) {
        self.is_done = true;
    }
}

/// Gives the new folder the owner and the rights of the old one, as far as this user may. They are no reason not to
/// publish.
#[cfg(unix)]
fn keep_rights(old: &Path, new: &Path) {
    use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _, chown};
    if let Ok(about) = fs::metadata(old) {
        let _ = chown(new, Some(about.uid()), Some(about.gid()));
        // Files have to be moved into it.
        let mode = about.permissions().mode() | 0o700;
        let _ = fs::set_permissions(new, fs::Permissions::from_mode(mode));
    }
}

#[cfg(not(unix))]
fn keep_rights(_old: &Path, _new: &Path) {}

/// How many bytes of the disk a file of `bytes` takes.
pub(super) fn on_disk(bytes: u64) -> u64 {
    bytes.div_ceil(BLOCK) * BLOCK
}

impl Drop for Staging {
    /// Removes the folder, where the site was not published. A failure here changes nothing that readers see, and
    /// the next compile removes the rest.
    fn drop(&mut self) {
        if !self.is_done {
            let _ = clear::unfinished(&self.folder, &*self.disk);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::issue::disk::SystemDisk;

    #[test]
    fn a_file_put_twice_does_not_change_the_old_site() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("web");
        fs::create_dir(&target).unwrap();
        let old = target.join("ink.css");
        fs::write(&old, "old").unwrap();
        let staging = Staging::beside(&target, Arc::new(SystemDisk)).unwrap();
        staging.put("ink.css", b"old", Some(&old)).unwrap();
        assert!(staging.put("ink.css", b"new", None).is_err());
        assert!(staging.put("ink.css", b"new", Some(&old)).is_err());
        assert_eq!(fs::read(&old).unwrap(), b"old");
    }
}
