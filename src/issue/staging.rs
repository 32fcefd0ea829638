//! Setting a site up beside the one that stands.

use std::collections::BTreeSet;
use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::mark::{self, Mark};
use super::{Parts, PublishFault, refused};

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

    /// Puts every file of the new site in place: linked from the old one where it stands there,
    /// written or copied otherwise. The mark comes last.
    pub(super) fn fill(
        &self,
        parts: &Parts<'_>,
        old: &Mark,
        new: &Mark,
        target: &Path,
    ) -> Result<(), PublishFault> {
        let folders: BTreeSet<&Path> = new
            .files
            .keys()
            .filter_map(|path| Path::new(path).parent())
            .collect();
        for folder in folders {
            let folder = self.folder.join(folder);
            fs::create_dir_all(&folder).map_err(refused("make", &folder))?;
        }
        let files: Vec<_> = new.files.iter().collect();
        files.into_par_iter().try_for_each(|(path, file)| {
            let place = self.folder.join(path);
            if old.stands(target, path, file) && fs::hard_link(target.join(path), &place).is_ok() {
                return Ok(());
            }
            if let Some(bytes) = parts.files.get(path.as_str()) {
                fs::write(&place, bytes).map_err(refused("write", &place))
            } else if let Some(source) = parts.pictures.get(path) {
                fs::copy(source, &place)
                    .map(|_| ())
                    .map_err(refused("copy", source))
            } else {
                Ok(())
            }
        })?;
        let place = self.folder.join(mark::NAME);
        fs::write(&place, new.to_bytes()).map_err(refused("write", &place))
    }

    /// The folder, for the exchange.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }
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
