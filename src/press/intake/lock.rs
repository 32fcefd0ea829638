//! One run at a time: two would write into one folder of the inbox, or give one number to two impressions.
//!
//! The locks are files in the folder of the cache, where nothing is read as a record. The system releases those of a killed
//! run, so a file that it left keeps nobody out.

use std::path::Path;

use super::fault::IntakeFault;
use crate::issue::{Lock, LockFault};
use crate::model::key::Key;

/// The folder of the locks, in a catalogue.
const FOLDER: &str = ".keyblock";

/// The lock of the folder of a house: for taking a file in, and for accepting.
///
/// # Errors
/// [`IntakeFault`] where another run holds it, or the disk refuses.
pub(super) fn house_lock(dir: &Path, name: &Key) -> Result<Lock, IntakeFault> {
    lock(
        dir,
        &format!("intake-{name}.lock"),
        format!("another run of intake is at work on `{name}`"),
    )
}

/// The lock for accepting: batches of two houses may have impressions of one design.
///
/// # Errors
/// [`IntakeFault`] where another run holds it, or the disk refuses.
pub(super) fn accept_lock(dir: &Path) -> Result<Lock, IntakeFault> {
    let message = "another batch is being accepted into this catalogue".to_owned();
    lock(dir, "accept.lock", message)
}

fn lock(dir: &Path, file: &str, busy: String) -> Result<Lock, IntakeFault> {
    Lock::at(&dir.join(FOLDER).join(file)).map_err(|fault| match fault {
        LockFault::Held => {
            let help = "wait until it has ended, and run this again; nothing was written";
            IntakeFault::not_done(busy, help)
        }
        LockFault::Disk { path, error, .. } => IntakeFault::disk(&path, &error),
    })
}
