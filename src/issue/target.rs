//! Checks the folder that a site is published in: whether a compile may replace what is there.

use std::io;
use std::path::Path;

use super::fault::{PublishFault, refused};
use super::old_site::OldSite;

/// Checks that `target` may be compiled into, before any work is done for it: that it does not exist, is
/// empty, or holds a compiled site.
///
/// # Errors
/// [`PublishFault::NotOurs`] where it holds something else, and where its mark cannot be read;
/// [`PublishFault::Disk`] where it cannot be read itself.
pub fn check_target(target: &Path) -> Result<(), PublishFault> {
    site_in(target).map(|_| ())
}

/// The site in `target`; `None` where that does not exist or is empty.
///
/// # Errors
/// As [`check_target`].
pub(super) fn site_in(target: &Path) -> Result<Option<OldSite>, PublishFault> {
    let entries = match std::fs::read_dir(target) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
            return Err(PublishFault::NotOurs(target.to_owned()));
        }
        Err(error) => return Err(refused("look into", target)(error)),
    };
    if entries.into_iter().next().is_none() {
        return Ok(None);
    }
    let site = OldSite::read(target).ok_or_else(|| PublishFault::NotOurs(target.to_owned()));
    site.map(Some)
}
