//! What the folder of a site holds that no compile made: found before the exchange, so that a compile that
//! cannot carry it over is refused while the old site is untouched.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::disk::Disk;
use super::fault::{InTheWay, PublishFault, refused};
use super::old_site::{Kind, OldSite};

/// A file or folder that no compile made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Foreign {
    /// Its path within the site. Everything in a foreign folder is foreign, and not listed separately.
    pub(super) path: PathBuf,
    /// Whether it is a folder, and not a link to one.
    pub(super) is_folder: bool,
    /// Whether it is a page or asset that was changed by hand.
    pub(super) was_changed: bool,
}

/// The foreign files and folders in `old`, in the order of their paths. Listed files that are kept unchanged
/// (`is_kept`) are not looked at again.
///
/// # Errors
/// [`PublishFault::Disk`] where a folder cannot be read.
pub(super) fn foreign_in(
    old: &OldSite,
    is_kept: &(dyn Fn(&str) -> bool + Sync),
) -> Result<Vec<Foreign>, PublishFault> {
    below(old, "", is_kept)
}

fn below(
    old: &OldSite,
    within: &str,
    is_kept: &(dyn Fn(&str) -> bool + Sync),
) -> Result<Vec<Foreign>, PublishFault> {
    let folder = old.folder().join(within);
    let entries = old.entries(within).map_err(refused("look into", &folder))?;
    let found = entries.into_par_iter().map(|entry| {
        let listed = entry.path.to_str().map(with_slashes).unwrap_or_default();
        let foreign = |was_changed| Foreign {
            path: entry.path.clone(),
            is_folder: entry.is_folder,
            was_changed,
        };
        Ok(match entry.kind {
            Kind::Mark => Vec::new(),
            Kind::Folder => below(old, &listed, is_kept)?,
            Kind::Listed if is_kept(&listed) || !old.was_changed(&listed) => Vec::new(),
            Kind::Listed => vec![foreign(true)],
            Kind::Foreign => vec![foreign(false)],
        })
    });
    let found: Result<Vec<Vec<Foreign>>, PublishFault> = found.collect();
    Ok(found?.concat())
}

/// A path within a site as marks write it.
pub(super) fn with_slashes(path: &str) -> String {
    if cfg!(windows) {
        path.replace('\\', "/")
    } else {
        path.to_owned()
    }
}

/// Checks that everything foreign can be carried over to the site that is staged in `staged`.
///
/// # Errors
/// [`PublishFault::InTheWay`], with everything that cannot: where the new site has a file or folder of its own at
/// the same path, and what cannot be moved because another disk is mounted there.
pub(super) fn check_room(
    foreign: &[Foreign],
    old: &OldSite,
    staged: &Path,
) -> Result<(), PublishFault> {
    let mut in_the_way = Vec::new();
    for entry in foreign {
        if is_on_another_disk(entry, old.folder()) {
            in_the_way.push(InTheWay::Mounted(entry.path.clone()));
            continue;
        }
        let taken = taken_places(&entry.path, entry.is_folder, old.folder(), staged)
            .map_err(refused("look into", &old.folder().join(&entry.path)))?;
        in_the_way.extend(taken.into_iter().map(|path| {
            if entry.was_changed {
                InTheWay::Changed(path)
            } else {
                InTheWay::Foreign(path)
            }
        }));
    }
    if in_the_way.is_empty() {
        Ok(())
    } else {
        Err(PublishFault::InTheWay {
            target: old.folder().to_owned(),
            files: in_the_way,
        })
    }
}

/// The places at and below `path` that the staged site has taken. The disk is asked, because some file systems
/// do not distinguish capital letters. Two folders of one name become one.
fn taken_places(
    path: &Path,
    is_folder: bool,
    old: &Path,
    staged: &Path,
) -> io::Result<Vec<PathBuf>> {
    match fs::symlink_metadata(staged.join(path)) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(Vec::new()),
        Ok(there) if is_folder && there.is_dir() => {
            let mut taken = Vec::new();
            for entry in fs::read_dir(old.join(path))? {
                let entry = entry?;
                let path = path.join(entry.file_name());
                let is_folder = entry.file_type()?.is_dir();
                taken.extend(taken_places(&path, is_folder, old, staged)?);
            }
            taken.sort();
            Ok(taken)
        }
        // A file there, or a file where the folder of this one would be.
        Ok(_) => Ok(vec![path.to_owned()]),
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => Ok(vec![path.to_owned()]),
        Err(error) => Err(error),
    }
}

#[cfg(unix)]
fn is_on_another_disk(entry: &Foreign, old: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let device = |path: &Path| fs::symlink_metadata(path).map(|about| about.dev()).ok();
    entry.is_folder && device(&old.join(&entry.path)) != device(old)
}

#[cfg(not(unix))]
fn is_on_another_disk(_entry: &Foreign, _old: &Path) -> bool {
    false
}

/// Links the foreign files into the staged site, so that no reader misses them for a moment. Whole folders
/// follow after the exchange, as do files that cannot be linked.
pub(super) fn link(foreign: &[Foreign], old: &OldSite, staged: &Path, disk: &dyn Disk) {
    for entry in foreign {
        let (from, to) = (old.folder().join(&entry.path), staged.join(&entry.path));
        let is_file = fs::symlink_metadata(&from).is_ok_and(|about| about.is_file());
        if is_file && to.parent().is_some_and(|p| disk.make_folders(p).is_ok()) {
            // Where this fails, the file is moved later.
            let _ = disk.link(&from, &to);
        }
    }
}
