//! Checks the folder that a site is published in: whether a compile may replace what is there.

use std::io;
use std::path::Path;

use super::fault::{PublishFault, refused};
use super::mark;

/// Checks that `target` may be compiled into, before any work is done for it: that it does not exist, is
/// empty, or holds a compiled site.
///
/// # Errors
/// [`PublishFault::NotOurs`] where it holds something else; [`PublishFault::Disk`] where it cannot be read.
pub fn check_target(target: &Path) -> Result<(), PublishFault> {
    let entries = match std::fs::read_dir(target) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(()),
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
            return Err(PublishFault::NotOurs(target.to_owned()));
        }
        Err(error) => return Err(refused("look into", target)(error)),
    };
    if entries.into_iter().next().is_none() || mark::is_marked(target) {
        Ok(())
    } else {
        Err(PublishFault::NotOurs(target.to_owned()))
    }
}
