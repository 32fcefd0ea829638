//! The operations of publishing on the disk, behind one trait.
//!
//! Every change that publishing makes on the disk goes through [`Disk`]. Tests replace it by a disk that is full,
//! or by one that stops at a given operation, as if the program had been killed there.

use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::Path;

/// A disk that sites are published on.
///
/// Every method fails as the system call below it does, and changes nothing then, except that a file may have
/// been written in part.
pub(super) trait Disk: Send + Sync {
    /// Makes a folder, and those above it that are missing.
    fn make_folders(&self, folder: &Path) -> io::Result<()>;

    /// Makes one folder.
    fn make_folder(&self, folder: &Path) -> io::Result<()>;

    /// Writes a file, and fails where there is one already.
    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()>;

    /// Copies a file to a place where there is none.
    fn copy(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Gives a file a second name.
    fn link(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Renames a file or folder; a file that has the new name is replaced.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Renames a file or folder, and fails where something has the new name.
    fn rename_new(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Exchanges the names of two folders in one step, where the system can.
    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()>;

    /// Removes a file.
    fn remove_file(&self, file: &Path) -> io::Result<()>;

    /// Removes a folder, and fails where it is not empty.
    fn remove_folder(&self, folder: &Path) -> io::Result<()>;

    /// Returns once everything below `folder` would survive a power cut.
    fn sync_below(&self, folder: &Path) -> io::Result<()>;

    /// Returns once the content of a file, or the names in a folder, would survive a power cut.
    fn sync(&self, path: &Path) -> io::Result<()>;

    /// How many bytes are free for this user on the disk of `folder`; `None` where the system does not tell.
    fn free_bytes(&self, folder: &Path) -> Option<u64>;
}

/// The disk of this machine.
pub(super) struct SystemDisk;

impl Disk for SystemDisk {
    fn make_folders(&self, folder: &Path) -> io::Result<()> {
        fs::create_dir_all(folder)
    }

    fn make_folder(&self, folder: &Path) -> io::Result<()> {
        fs::create_dir(folder)
    }

    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()> {
        File::create_new(file)?.write_all(bytes)
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::copy(from, to).map(|_| ())
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::hard_link(from, to)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn rename_new(&self, from: &Path, to: &Path) -> io::Result<()> {
        system::rename_new(from, to)
    }

    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()> {
        system::exchange(one, other)
    }

    fn remove_file(&self, file: &Path) -> io::Result<()> {
        fs::remove_file(file)
    }

    fn remove_folder(&self, folder: &Path) -> io::Result<()> {
        fs::remove_dir(folder)
    }

    fn sync_below(&self, folder: &Path) -> io::Result<()> {
        where_supported(system::sync_below(folder))
    }

    fn sync(&self, path: &Path) -> io::Result<()> {
        where_supported(system::sync(path))
    }

    fn free_bytes(&self, folder: &Path) -> Option<u64> {
        system::free_bytes(folder)
    }
}

/// Some file systems of networks cannot be asked to wait until their data are safe; publishing goes on there.
fn where_supported(synced: io::Result<()>) -> io::Result<()> {
    match synced {
        Err(error)
            if matches!(
                error.kind(),
                io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported
            ) =>
        {
            Ok(())
        }
        synced => synced,
    }
}

/// Whether a disk refused because it, or the share of this user, is full.
pub(super) fn is_full(error: &io::Error) -> bool {
    matches!(
        error.kind(),
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded
    )
}

#[cfg(target_os = "linux")]
mod system {
    use std::fs::{self, File};
    use std::io;
    use std::path::Path;

    use rustix::fs::{CWD, RenameFlags, renameat_with, syncfs};
    use rustix::io::Errno;

    pub(super) use super::unix::{free_bytes, sync};

    pub(super) fn rename_new(from: &Path, to: &Path) -> io::Result<()> {
        match renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE) {
            // The file system does not know the flag.
            Err(Errno::INVAL | Errno::NOSYS) => fs::rename(from, to),
            renamed => Ok(renamed?),
        }
    }

    pub(super) fn exchange(one: &Path, other: &Path) -> io::Result<()> {
        Ok(renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE)?)
    }

    /// One call for the whole file system. Asking for each of 20,000 files took many times longer
    /// (DEVELOPERS.md, "How a site is published").
    pub(super) fn sync_below(folder: &Path) -> io::Result<()> {
        Ok(syncfs(File::open(folder)?)?)
    }
}

#[cfg(unix)]
mod unix {
    use std::fs::File;
    use std::io;
    use std::path::Path;

    pub(super) fn sync(path: &Path) -> io::Result<()> {
        File::open(path)?.sync_all()
    }

    pub(super) fn free_bytes(folder: &Path) -> Option<u64> {
        let about = rustix::fs::statvfs(folder).ok()?;
        about.f_bavail.checked_mul(about.f_frsize)
    }
}

#[cfg(not(target_os = "linux"))]
mod system {
    use std::fs;
    use std::io;
    use std::path::Path;

    use rayon::prelude::*;

    #[cfg(unix)]
    pub(super) use super::unix::{free_bytes, sync};

    pub(super) fn rename_new(from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    pub(super) fn exchange(_one: &Path, _other: &Path) -> io::Result<()> {
        Err(io::ErrorKind::Unsupported.into())
    }

    /// File by file, folders after what is in them.
    pub(super) fn sync_below(folder: &Path) -> io::Result<()> {
        let entries: Vec<fs::DirEntry> = fs::read_dir(folder)?.collect::<io::Result<_>>()?;
        entries.into_par_iter().try_for_each(|entry| {
            let about = entry.file_type()?;
            if about.is_dir() {
                sync_below(&entry.path())
            } else if about.is_file() {
                sync(&entry.path())
            } else {
                Ok(())
            }
        })?;
        sync(folder)
    }

    /// The system keeps the names in a folder safe itself, and syncs only files that may be written.
    #[cfg(not(unix))]
    pub(super) fn sync(path: &Path) -> io::Result<()> {
        if path.is_dir() {
            return Ok(());
        }
        fs::File::options().write(true).open(path)?.sync_all()
    }

    #[cfg(not(unix))]
    pub(super) fn free_bytes(_folder: &Path) -> Option<u64> {
        None
    }
}
