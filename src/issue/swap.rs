//! Exchanges the staged site for the old one.
//!
//! On Linux the two folders are exchanged in one step, so a reader sees either the old site or the
//! new one. Elsewhere, and on file systems that cannot do this, the old one is moved aside first. Then the old site
//! is cleared away ([`clear`]), and what no compile made in it is carried over. Where a compile is killed in
//! between, [`recover`] puts the old site back or goes on with clearing.

use std::fs;
use std::path::{Path, PathBuf};

use super::disk::Disk;
use super::fault::{PublishFault, refused};
use super::old_site::OldSite;
use super::target::site_in;
use super::{beside, clear, mark};

/// Moves the site staged in `staged` to `target`, and gives the folder that the old site is in after that;
/// `None` where there was none. `has_site` says whether there is a site in the target.
///
/// # Errors
/// [`PublishFault`]; the site that was in `target` is unchanged.
pub(super) fn exchange(
    staged: &Path,
    target: &Path,
    has_site: bool,
    disk: &dyn Disk,
) -> Result<Option<PathBuf>, PublishFault> {
    if !has_site {
        move_into_place(staged, target, disk)?;
        return Ok(None);
    }
    if disk.exchange(staged, target).is_ok() {
        return Ok(Some(staged.to_owned()));
    }
    let aside = beside::last(target);
    let moved = disk.rename_new(target, &aside);
    moved.map_err(refused("move aside", target))?;
    if let Err(error) = disk.rename_new(staged, target) {
        let _ = disk.rename_new(&aside, target);
        return Err(refused("move the site to", target)(error));
    }
    Ok(Some(aside))
}

/// Moves a site to `target`, where there is nothing or an empty folder.
fn move_into_place(site: &Path, target: &Path, disk: &dyn Disk) -> Result<(), PublishFault> {
    let was_empty = target.exists();
    if was_empty {
        // This fails where it is no longer empty.
        let removed = disk.remove_folder(target);
        removed.map_err(refused("move the site to", target))?;
    }
    disk.rename_new(site, target).map_err(|error| {
        if was_empty {
            let _ = disk.make_folder(target);
        }
        refused("move the site to", target)(error)
    })
}

/// Mends what a killed compile left beside the target: an unfinished site is removed, an old one is put back where
/// the target has none, and cleared away otherwise.
///
/// # Errors
/// [`PublishFault::NotOurs`] where the target holds something else than a site; [`PublishFault::Unknown`] where a folder has a name that compiles use, but neither a mark nor is empty;
/// [`PublishFault::NotCarried`]; [`PublishFault::Disk`].
pub(super) fn recover(target: &Path, disk: &dyn Disk) -> Result<(), PublishFault> {
    // The old site that was moved aside comes first: where both are there, the other is the new one.
    for folder in [beside::last(target), beside::next(target)] {
        match fs::symlink_metadata(&folder) {
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => continue,
            Err(error) => return Err(refused("look into", &folder)(error)),
            Ok(about) if !about.is_dir() => return Err(PublishFault::Unknown(folder)),
            Ok(_) => {}
        }
        if mark::is_unfinished(&folder) {
            clear::unfinished(&folder, disk)?;
        } else if let Some(site) = OldSite::read(&folder) {
            if site_in(target)?.is_some() {
                clear::replaced(&site, target, disk)?;
            } else {
                // What is carried over needs a site around it.
                move_into_place(&folder, target, disk)?;
            }
        } else if disk.remove_folder(&folder).is_err() {
            return Err(PublishFault::Unknown(folder));
        }
    }
    Ok(())
}
