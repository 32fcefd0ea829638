//! Locks: one compile of a target at a time, one run of another command.

use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};

use super::beside;
use super::fault::{PublishFault, refused};

/// A lock, held until it is dropped. The system releases that of a killed program.
#[derive(Debug)]
pub struct Lock {
    path: PathBuf,
    file: File,
}

/// Why something was not locked.
#[derive(Debug)]
pub enum LockFault {
    /// Another program holds the lock.
    Held,
    /// A file operation failed.
    Disk {
        /// The operation that failed, as a verb: "make".
        doing: &'static str,
        /// The file or folder it was done to.
        path: PathBuf,
        /// The error of the system.
        error: io::Error,
    },
}

impl Lock {
    /// Locks `target`, and makes the folder that it is in.
    ///
    /// # Errors
    /// [`PublishFault::Busy`] where another compile holds the lock.
    pub(super) fn on(target: &Path) -> Result<Lock, PublishFault> {
        Lock::at(&beside::lock(target)).map_err(|fault| match fault {
            LockFault::Held => PublishFault::Busy(target.to_owned()),
            LockFault::Disk { doing, path, error } => refused(doing, &path)(error),
        })
    }

    /// Locks the file at `path`, which is made where there is none, as the folder that it is in; it is removed at the end.
    ///
    /// # Errors
    /// [`LockFault`] where another program holds the lock, or the disk refuses.
    pub fn at(path: &Path) -> Result<Lock, LockFault> {
        let refused = |doing: &'static str, path: &Path| {
            let path = path.to_owned();
            move |error| LockFault::Disk { doing, path, error }
        };
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent).map_err(refused("make", parent))?;
        }
        loop {
            let mut options = File::options();
            let options = options.write(true).create(true).truncate(false);
            let file = options.open(path).map_err(refused("make", path))?;
            match file.try_lock() {
                Ok(()) => {}
                Err(TryLockError::WouldBlock) => return Err(LockFault::Held),
                Err(TryLockError::Error(error)) => return Err(refused("lock", path)(error)),
            }
            if has_the_name(&file, path) {
                let path = path.to_owned();
                return Ok(Lock { path, file });
            }
        }
    }
}

/// Whether `file` is the one at `path`. Between the opening and the locking of a file, another program may
/// have ended and removed it; then a third may have made and locked a new one.
#[cfg(unix)]
fn has_the_name(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let (Ok(opened), Ok(named)) = (file.metadata(), fs::symlink_metadata(path)) else {
        return false;
    };
    (opened.dev(), opened.ino()) == (named.dev(), named.ino())
}

/// A file that is open cannot be removed there.
#[cfg(not(unix))]
fn has_the_name(_file: &File, _path: &Path) -> bool {
    true
}

impl Drop for Lock {
    /// Unlocks it. A failure here changes nothing: the system unlocks at the end of the program, and a file that stays is
    /// locked again by the next one.
    fn drop(&mut self) {
        let _ = fs::remove_file(&self.path);
        let _ = self.file.unlock();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lock_whose_file_was_removed_is_taken_anew() {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        let opened = File::create(beside::lock(&target)).unwrap();
        let held = Lock::on(&target).unwrap();
        assert!(matches!(Lock::on(&target), Err(PublishFault::Busy(_))));
        drop(held);
        // Its file has no name any more, so holding its lock keeps no other compile away.
        opened.try_lock().unwrap();
        assert!(!has_the_name(&opened, &beside::lock(&target)));
        let held = Lock::on(&target).unwrap();
        assert!(has_the_name(&held.file, &beside::lock(&target)));
    }
}
