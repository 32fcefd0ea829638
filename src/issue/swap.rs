//! Exchanges the staged site for the old one.
//!
//! On Linux the two folders are exchanged in one step, so a reader sees either the old site or the
//! new one. Elsewhere, and on file systems that cannot do this, the old one is moved aside first. Where a
//! compile is killed between the two moves, [`recover`] puts the old site back.

use std::fs;
use std::path::Path;

use super::fault::{PublishFault, refused};
use super::mark;
use super::staging::{Staging, sibling};

/// Moves the staged site to the target and removes the old one.
pub(super) fn exchange(staging: &Staging, target: &Path) -> Result<(), PublishFault> {
    if !target.exists() {
        return fs::rename(staging.folder(), target).map_err(refused("move into place", target));
    }
    if exchange_at_once(staging.folder(), target) {
        return Ok(()); // The old site is removed with the staging, when that is dropped.
    }
    let aside = sibling(target, "last");
    fs::rename(target, &aside).map_err(refused("move aside", target))?;
    if let Err(error) = fs::rename(staging.folder(), target) {
        let _ = fs::rename(&aside, target);
        return Err(refused("move into place", target)(error));
    }
    fs::remove_dir_all(&aside).map_err(refused("clear away", &aside))
}

/// Puts back a site that a killed compile had moved aside, or removes it where the target has a whole one.
pub(super) fn recover(target: &Path) -> Result<(), PublishFault> {
    let aside = sibling(target, "last");
    if !mark::is_marked(&aside) {
        return Ok(());
    }
    if target.exists() {
        fs::remove_dir_all(&aside).map_err(refused("clear away", &aside))
    } else {
        fs::rename(&aside, target).map_err(refused("put back", target))
    }
}

#[cfg(target_os = "linux")]
fn exchange_at_once(a: &Path, b: &Path) -> bool {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    renameat_with(CWD, a, CWD, b, RenameFlags::EXCHANGE).is_ok()
}

#[cfg(not(target_os = "linux"))]
fn exchange_at_once(_a: &Path, _b: &Path) -> bool {
    false
}
