//! The paths beside a site that belong to its compile.

use std::path::{Path, PathBuf};

/// The file that is locked while a compile publishes: `.web.lock` for `web`.
pub(super) fn lock(target: &Path) -> PathBuf {
    named(target, "lock")
}

/// The folder in which the next site is staged. After the exchange it is the old site.
pub(super) fn next(target: &Path) -> PathBuf {
    named(target, "next")
}

/// The folder to which the old site is moved where two folders cannot be exchanged in one step.
pub(super) fn last(target: &Path) -> PathBuf {
    named(target, "last")
}

fn named(target: &Path, what: &str) -> PathBuf {
    let name = target
        .file_name()
        .map_or_else(|| "site".into(), |n| n.to_string_lossy());
    target.with_file_name(format!(".{name}.{what}"))
}
