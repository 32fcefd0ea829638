//! Setting a site up beside the one that stands.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File, TryLockError};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::mark::{self, Mark};
use super::{Bundle, PublishFault, refused};

/// A folder beside the target in which the new site is set up. It is locked while it is in use, so
/// two compiles into one target cannot mix; one left behind by a killed compile is cleared away.
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

    /// Puts one file in place: linked from `standing`, or else written. Never over one that was put
    /// there before: it may be a link, and writing would reach the standing site.
    pub(super) fn put(
        &self,
        path: &str,
        bytes: &[u8],
        standing: Option<&Path>,
    ) -> Result<(), PublishFault> {
        let place = self.folder.join(path);
        let put = || match standing {
            Some(standing) if fs::hard_link(standing, &place).is_ok() => Ok(()),
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

    /// Puts the pictures of the new site in place: linked from the old one where they stand there,
    /// copied otherwise. The mark comes last.
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
            let stands = file.is_some_and(|file| old.stands(target, path, file));
            if stands && fs::hard_link(target.join(path), &place).is_ok() {
                return Ok(());
            }
            fs::copy(source, &place)
                .map(|_| ())
                .map_err(refused("copy", source))
        })?;
        bundles.par_iter().try_for_each(|(folder, bundle)| {
            let stands = old.stands_bundled(target, folder, bundle);
            let standing = stands.then(|| target.join(folder));
            put(bundle, &self.folder.join(folder), standing.as_deref())
        })?;
        let place = self.folder.join(mark::NAME);
        fs::write(&place, new.to_bytes()).map_err(refused("write", &place))
    }

    /// Makes every folder of the pictures once, those above before those in them.
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
                    // Made for a page.
                    Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(()),
                    made => made.map_err(refused("make", &folder)),
                }
            })?;
        }
        Ok(())
    }

    /// The folder, for the exchange.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }
}

/// Puts the files of a bundle into `folder`: linked from `standing`, where they stand there, or else
/// taken out of the pack.
fn put(bundle: &Bundle, folder: &Path, standing: Option<&Path>) -> Result<(), PublishFault> {
    let mut pack = None;
    for file in &bundle.files {
        let place = folder.join(&file.path);
        if standing.is_some_and(|from| fs::hard_link(from.join(&file.path), &place).is_ok()) {
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
    /// Clears away what is left and lets the next compile in. A failure here changes nothing that
    /// readers see, and the next compile clears up again.
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
    fn what_is_put_twice_does_not_reach_the_standing_site() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("web");
        fs::create_dir(&target).unwrap();
        let standing = target.join("ink.css");
        fs::write(&standing, "old").unwrap();
        let staging = Staging::beside(&target).unwrap();
        staging.put("ink.css", b"old", Some(&standing)).unwrap();
        assert!(staging.put("ink.css", b"new", None).is_err());
        assert!(staging.put("ink.css", b"new", Some(&standing)).is_err());
        assert_eq!(fs::read(&standing).unwrap(), b"old");
    }
}
