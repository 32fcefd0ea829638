//! Why a site was not published.

use std::io;
use std::path::{Path, PathBuf};

/// Why a site was not published. The last good one is unchanged.
#[derive(Debug)]
pub enum PublishFault {
    /// The target holds files that no compile of this program made.
    NotOurs(PathBuf),
    /// Another compile into the same target is running.
    Busy(PathBuf),
    /// A file operation failed.
    Disk {
        /// The operation that failed, as a verb: "write".
        doing: &'static str,
        /// The file or folder it was done to.
        path: PathBuf,
        /// The error of the system.
        error: io::Error,
    },
}

impl std::fmt::Display for PublishFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            PublishFault::NotOurs(path) => write!(
                f,
                "`{}` holds files that no compile made, so it was left alone; name an empty folder \
                 or one that was compiled into before",
                path.display()
            ),
            PublishFault::Busy(path) => {
                write!(
                    f,
                    "another compile into `{}` is running; wait for it",
                    path.display()
                )
            }
            PublishFault::Disk { doing, path, error } => {
                write!(f, "could not {doing} `{}`: {error}", path.display())
            }
        }
    }
}

impl std::error::Error for PublishFault {}

/// The fault of the operation `doing` that failed on `path`.
pub(super) fn refused(doing: &'static str, path: &Path) -> impl FnOnce(io::Error) -> PublishFault {
    move |error| PublishFault::Disk {
        doing,
        path: path.to_owned(),
        error,
    }
}
