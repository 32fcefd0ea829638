//! Stages a site: sets it up in a folder beside the one it will replace.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File, TryLockError};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::bundle::Bundle;
use super::fault::{PublishFault, refused};
use super::mark::{self, Mark};

/// A folder beside the target in which the new site is set up. It is locked while it is in use, so
/// two compiles into one target cannot mix. One that a killed compile left is removed.
pub(super) struct Staging {
    folder: PathBuf,
    lock_path: PathBuf,
    lock: File,
}

impl Staging {
    /// Makes the folder, empty, and locks it.
    pub(super) fn beside(target: &Path) -> Result<Staging, PublishFault> {
        let folder = sibling(target, "next");
        let lock_path = sibling(target, "lock");
        if let Some(parent) = folder.parent() {
            fs::create_dir_all(parent).map_err(refused("make", parent))?;
        }
        let lock = File::create(&lock_path).map_err(refused("make", &lock_path))?;
        match lock.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(PublishFault::Busy(target.to_owned())),
            Err(TryLockError::Error(error)) => return Err(refused("lock", &lock_path)(error)),
        }
        if folder.exists() {
            fs::remove_dir_all(&folder).map_err(refused("clear away", &folder))?;
        }
        fs::create_dir(&folder).map_err(refused("make", &folder))?;
        Ok(Staging {
            folder,
            lock_path,
            lock,
        })
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
            Some(old) if fs::hard_link(old, &place).is_ok() => Ok(()),
            _ => File::create_new(&place)?.write_all(bytes),
        };
        let put_in_folder = |error: io::Error| match place.parent() {
            Some(folder) if error.kind() == io::ErrorKind::NotFound => {
                fs::create_dir_all(folder)?;
                put()
            }
            _ => Err(error),
        };
        put()
            .or_else(put_in_folder)
            .map_err(refused("write", &place))
    }

    /// Adds the pictures, linked from the old site where that has them unchanged and copied otherwise, and
    /// last the mark.
    pub(super) fn fill(
        &self,
        pictures: &BTreeMap<String, PathBuf>,
        bundles: &BTreeMap<String, Bundle>,
        old: &Mark,
        new: &Mark,
        target: &Path,
    ) -> Result<(), PublishFault> {
        self.make_folders(pictures, bundles)?;
        pictures.par_iter().try_for_each(|(path, source)| {
            let place = self.folder.join(path);
            let file = new.files.get(path);
            let is_unchanged = file.is_some_and(|file| old.has(target, path, file));
            if is_unchanged && fs::hard_link(target.join(path), &place).is_ok() {
                return Ok(());
            }
            fs::copy(source, &place)
                .map(|_| ())
                .map_err(refused("copy", source))
        })?;
        bundles.par_iter().try_for_each(|(folder, bundle)| {
            let is_unchanged = old.has_bundle(target, folder, bundle);
            let old_folder = is_unchanged.then(|| target.join(folder));
            put(bundle, &self.folder.join(folder), old_folder.as_deref())
        })?;
        let place = self.folder.join(mark::NAME);
        fs::write(&place, new.to_bytes()).map_err(refused("write", &place))
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
                match fs::create_dir(&folder) {
                    // It was made for a page.
                    Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(()),
                    made => made.map_err(refused("make", &folder)),
                }
            })?;
        }
        Ok(())
    }

    /// The folder of the staged site.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }
}

/// Puts the files of a bundle into `folder`: linked from `old`, or taken out of the pack where that is
/// `None`.
fn put(bundle: &Bundle, folder: &Path, old: Option<&Path>) -> Result<(), PublishFault> {
    let mut pack = None;
    for file in &bundle.files {
        let place = folder.join(&file.path);
        if old.is_some_and(|from| fs::hard_link(from.join(&file.path), &place).is_ok()) {
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
        fs::write(&place, bytes).map_err(refused("write", &place))?;
    }
    Ok(())
}

impl Drop for Staging {
    /// Removes what is left and unlocks the target. A failure here changes nothing that readers see, and the
    /// next compile removes the rest.
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.folder);
        let _ = fs::remove_file(&self.lock_path);
        let _ = self.lock.unlock();
    }
}

/// A folder beside `target` that belongs to its compile: `.web.next` for `web`.
pub(super) fn sibling(target: &Path, what: &str) -> PathBuf {
    let name = target
        .file_name()
        .map_or_else(|| "site".into(), |n| n.to_string_lossy());
    target.with_file_name(format!(".{name}.{what}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_put_twice_does_not_change_the_old_site() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("web");
        fs::create_dir(&target).unwrap();
        let old = target.join("ink.css");
        fs::write(&old, "old").unwrap();
        let staging = Staging::beside(&target).unwrap();
        staging.put("ink.css", b"old", Some(&old)).unwrap();
        assert!(staging.put("ink.css", b"new", None).is_err());
        assert!(staging.put("ink.css", b"new", Some(&old)).is_err());
        assert_eq!(fs::read(&old).unwrap(), b"old");
    }
}
