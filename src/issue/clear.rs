//! Clears away a site that was replaced, and carries over to the new one what no compile made.
//!
//! Every step leaves a folder that can be cleared again: what was carried over is in the new site, the rest is
//! still there, and the mark is removed last. So a compile that is killed loses nothing, and the next one goes on.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use rayon::prelude::*;

use super::disk::Disk;
use super::fault::{PublishFault, refused};
use super::foreign::with_slashes;
use super::mark;
use super::old_site::{Kind, OldSite};

/// How often a folder is gone through: files may arrive in it while it is cleared.
const ROUNDS: usize = 3;

/// Clears away `old`, which the site in `target` has replaced.
///
/// # Errors
/// [`PublishFault::NotCarried`] with the files whose place in `target` is taken by another: they and the mark
/// stay where they are. [`PublishFault::Disk`] where the disk fails.
pub(super) fn replaced(old: &OldSite, target: &Path, disk: &dyn Disk) -> Result<(), PublishFault> {
    let clearing = Clearing {
        old,
        target,
        disk,
        left: Mutex::default(),
    };
    for _ in 0..ROUNDS {
        clearing.clear("")?;
        let left = clearing.left.lock();
        let left = std::mem::take(&mut *left.unwrap_or_else(PoisonError::into_inner));
        if !left.is_empty() {
            return Err(clearing.not_carried(left));
        }
        if clearing.remaining()?.is_empty() {
            return remove_marked(old.folder(), disk);
        }
    }
    Err(clearing.not_carried(clearing.remaining()?))
}

/// Removes `folder`, in which a site was being staged, with everything in it.
///
/// # Errors
/// Where the disk fails.
pub(super) fn unfinished(folder: &Path, disk: &dyn Disk) -> Result<(), PublishFault> {
    remove_all_but_mark(folder, true, disk).map_err(refused("clear away", folder))?;
    remove_marked(folder, disk)
}

/// Removes a folder that is empty, or holds its mark alone. A folder without a mark may be anybody's, so the
/// mark is removed last.
fn remove_marked(folder: &Path, disk: &dyn Disk) -> Result<(), PublishFault> {
    let file = folder.join(mark::NAME);
    missing_is_fine(disk.remove_file(&file)).map_err(refused("clear away", &file))?;
    missing_is_fine(disk.remove_folder(folder)).map_err(refused("clear away", folder))
}

fn remove_all_but_mark(folder: &Path, is_top: bool, disk: &dyn Disk) -> io::Result<()> {
    let entries: Vec<fs::DirEntry> = fs::read_dir(folder)?.collect::<io::Result<_>>()?;
    entries.into_par_iter().try_for_each(|entry| {
        let path = entry.path();
        if entry.file_type()?.is_dir() {
            remove_all_but_mark(&path, false, disk)?;
            disk.remove_folder(&path)
        } else if is_top && entry.file_name() == mark::NAME {
            Ok(())
        } else {
            disk.remove_file(&path)
        }
    })
}

fn missing_is_fine(removed: io::Result<()>) -> io::Result<()> {
    match removed {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        removed => removed,
    }
}

struct Clearing<'a> {
    old: &'a OldSite,
    target: &'a Path,
    disk: &'a dyn Disk,
    /// What could not be carried over, because its place is taken.
    left: Mutex<Vec<PathBuf>>,
}

impl Clearing<'_> {
    /// Clears a folder of the old site, given by its path within the site.
    fn clear(&self, within: &str) -> Result<(), PublishFault> {
        let folder = self.old.folder().join(within);
        let entries = self.old.entries(within);
        let entries = entries.map_err(refused("look into", &folder))?;
        entries.into_par_iter().try_for_each(|entry| {
            let from = self.old.folder().join(&entry.path);
            let listed = entry.path.to_str().map(with_slashes).unwrap_or_default();
            match entry.kind {
                Kind::Mark => Ok(()),
                Kind::Folder => {
                    self.clear(&listed)?;
                    match missing_is_fine(self.disk.remove_folder(&from)) {
                        // Something stays in it, or arrived meanwhile.
                        Err(error) if error.kind() == io::ErrorKind::DirectoryNotEmpty => Ok(()),
                        removed => removed.map_err(refused("clear away", &from)),
                    }
                }
                Kind::Listed if !self.old.was_changed(&listed) => {
                    missing_is_fine(self.disk.remove_file(&from))
                        .map_err(refused("clear away", &from))
                }
                Kind::Listed | Kind::Foreign => self
                    .carry(&entry.path, entry.is_folder)
                    .map_err(refused("carry over", &from)),
            }
        })
    }

    /// Carries a file or folder over to the same path in the target. Where both have a folder there, what is in
    /// it is carried over one by one.
    fn carry(&self, path: &Path, is_folder: bool) -> io::Result<()> {
        let (from, to) = (self.old.folder().join(path), self.target.join(path));
        match fs::symlink_metadata(&to) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                if let Some(parent) = to.parent() {
                    self.disk.make_folders(parent)?;
                }
                return match self.disk.rename_new(&from, &to) {
                    // A file was put there since the folder was listed.
                    Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                        self.leave(path);
                        Ok(())
                    }
                    renamed => renamed,
                };
            }
            Ok(there) if is_folder && there.is_dir() => {
                for entry in fs::read_dir(&from)? {
                    let entry = entry?;
                    self.carry(&path.join(entry.file_name()), entry.file_type()?.is_dir())?;
                }
                return match self.disk.remove_folder(&from) {
                    Err(error) if error.kind() == io::ErrorKind::DirectoryNotEmpty => Ok(()),
                    removed => removed,
                };
            }
            Ok(_) if !is_folder && are_the_same(&from, &to) => return self.disk.remove_file(&from),
            _ => {}
        }
        self.leave(path);
        Ok(())
    }

    /// What is still in the old site beside its mark.
    fn remaining(&self) -> Result<Vec<PathBuf>, PublishFault> {
        let entries = self.old.entries("");
        let mut entries = entries.map_err(refused("look into", self.old.folder()))?;
        entries.retain(|entry| entry.kind != Kind::Mark);
        Ok(entries.into_iter().map(|entry| entry.path).collect())
    }

    fn not_carried(&self, mut files: Vec<PathBuf>) -> PublishFault {
        files.sort();
        PublishFault::NotCarried {
            from: self.old.folder().to_owned(),
            to: self.target.to_owned(),
            files,
        }
    }

    fn leave(&self, path: &Path) {
        let mut left = self.left.lock().unwrap_or_else(PoisonError::into_inner);
        left.push(path.to_owned());
    }
}

/// Whether two paths lead to one file, or to files or links with the same content, so that one can go.
fn are_the_same(one: &Path, other: &Path) -> bool {
    let (Ok(about_one), Ok(about_other)) = (fs::symlink_metadata(one), fs::symlink_metadata(other))
    else {
        return false;
    };
    if is_one_file(&about_one, &about_other) {
        return true;
    }
    if about_one.is_symlink() && about_other.is_symlink() {
        return fs::read_link(one).ok() == fs::read_link(other).ok();
    }
    about_one.is_file()
        && about_other.is_file()
        && about_one.len() == about_other.len()
        && matches!((fs::read(one), fs::read(other)), (Ok(a), Ok(b)) if a == b)
}

#[cfg(unix)]
fn is_one_file(one: &fs::Metadata, other: &fs::Metadata) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    (one.dev(), one.ino()) == (other.dev(), other.ino())
}

#[cfg(not(unix))]
fn is_one_file(_one: &fs::Metadata, _other: &fs::Metadata) -> bool {
    false
}
