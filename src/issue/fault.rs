//! Why a site was not published.

use std::fmt::{self, Write as _};
use std::io;
use std::path::{Path, PathBuf};

use super::disk;

/// How many files a message names.
const NAMED: usize = 20;

/// Why a site was not published. The last good one is unchanged, except where a variant says otherwise.
#[derive(Debug)]
pub enum PublishFault {
    /// The target holds files, and no mark of this program that can be read.
    NotOurs(PathBuf),
    /// Another compile into the same target is running.
    Busy(PathBuf),
    /// Files in the target that no compile made cannot be carried over to the new site.
    InTheWay {
        /// The target.
        target: PathBuf,
        /// The files, by path within the target.
        files: Vec<InTheWay>,
    },
    /// The new site is in its place, but files that no compile made and that were put into the old one during
    /// the exchange are not, because the new site has files of its own at the same paths.
    NotCarried {
        /// The folder that the files are still in.
        from: PathBuf,
        /// The site.
        to: PathBuf,
        /// The files, by path within both.
        files: Vec<PathBuf>,
    },
    /// The new site is in its place, but the old one could not be cleared away. The next compile goes on with it.
    NotCleared {
        /// The folder of the old site.
        old: PathBuf,
        /// What failed.
        fault: Box<PublishFault>,
    },
    /// A folder beside the target has a name that compiles use, but nothing shows that a compile made it.
    Unknown(PathBuf),
    /// The disk of the target is full.
    Full {
        /// The target.
        target: PathBuf,
        /// How many bytes of new files the site needs at least, while the old one is still there.
        needed_bytes: u64,
        /// How many bytes are free; `None` where the system does not tell.
        free_bytes: Option<u64>,
    },
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

/// A file or folder that cannot be carried over, by its path within the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum InTheWay {
    /// No compile made it, and the new site has a file or folder of its own there.
    Foreign(PathBuf),
    /// A compile made it, but it was changed by hand since, and the new site has another content there.
    Changed(PathBuf),
    /// Another disk is mounted there, which cannot be moved.
    Mounted(PathBuf),
}

impl PublishFault {
    /// Whether the disk had no space left.
    pub(super) fn is_full(&self) -> bool {
        matches!(self, PublishFault::Disk { error, .. } if disk::is_full(error))
    }
}

impl fmt::Display for PublishFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
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
            PublishFault::InTheWay { target, files } => write!(
                f,
                "nothing was published: the new site needs the places of files in `{}` that no compile made\n{}  \
                 move each elsewhere or delete it, and compile again",
                target.display(),
                listed(files.iter().map(in_words)),
            ),
            PublishFault::NotCarried { from, to, files } => write!(
                f,
                "the new site is in `{}`, but it has files of its own where these lay, which no compile made; they \
                 are in `{}` now\n{}  move each elsewhere or delete it; until then no site is compiled there",
                to.display(),
                from.display(),
                listed(files.iter().map(|file| file.display().to_string())),
            ),
            PublishFault::NotCleared { old, fault } => write!(
                f,
                "the new site is in its place, but the old one, in `{}`, could not be cleared away: {fault}\n  the \
                 next compile goes on with it",
                old.display()
            ),
            PublishFault::Unknown(path) => write!(
                f,
                "`{}` has a name that compiles use, but nothing shows that a compile made it, so it was left \
                 alone; move it elsewhere or delete it, and compile again",
                path.display()
            ),
            PublishFault::Full {
                target,
                needed_bytes,
                free_bytes,
            } => {
                write!(
                    f,
                    "nothing was published: what is new in the site needs {}, and the disk of `{}` has ",
                    in_megabytes(*needed_bytes),
                    target.display(),
                )?;
                match free_bytes {
                    Some(free) => write!(f, "{} free", free_in_megabytes(*free))?,
                    None => f.write_str("too little room")?,
                }
                f.write_str("\n  make room there, or name a folder on another disk with --to")
            }
            PublishFault::Disk { doing, path, error } => {
                write!(f, "could not {doing} `{}`: {error}", path.display())
            }
        }
    }
}

impl std::error::Error for PublishFault {}

fn in_words(file: &InTheWay) -> String {
    match file {
        InTheWay::Foreign(path) => path.display().to_string(),
        InTheWay::Changed(path) => {
            format!("{} (changed by hand since it was compiled)", path.display())
        }
        InTheWay::Mounted(path) => format!("{} (another disk is mounted there)", path.display()),
    }
}

/// A line for each of the first files, and how many more there are.
fn listed(files: impl Iterator<Item = String>) -> String {
    let mut lines = String::new();
    let mut more = 0;
    for (place, file) in files.enumerate() {
        if place < NAMED {
            let _ = writeln!(lines, "  {file}");
        } else {
            more += 1;
        }
    }
    if more > 0 {
        let _ = writeln!(lines, "  and {more} more");
    }
    lines
}

/// Bytes as megabytes, rounded up: "12 MB", below ten "1.2 MB".
pub(crate) fn in_megabytes(bytes: u64) -> String {
    let tenths = bytes.div_ceil(100_000);
    match tenths {
        0 => "0 MB".to_owned(),
        1..100 => format!("{}.{} MB", tenths / 10, tenths % 10),
        _ => format!("{} MB", tenths.div_ceil(10)),
    }
}

/// Free bytes as megabytes, rounded down, so that what does not fit is never said to need what is free.
pub(crate) fn free_in_megabytes(bytes: u64) -> String {
    let unit = if bytes < 10_000_000 {
        100_000
    } else {
        1_000_000
    };
    in_megabytes(bytes - bytes % unit)
}

/// The fault of the operation `doing` that failed on `path`.
pub(super) fn refused(doing: &'static str, path: &Path) -> impl FnOnce(io::Error) -> PublishFault {
    move |error| PublishFault::Disk {
        doing,
        path: path.to_owned(),
        error,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_needed_is_rounded_up_and_what_is_free_down() {
        for (bytes, needed, free) in [
            (0, "0 MB", "0 MB"),
            (1, "0.1 MB", "0 MB"),
            (190_000, "0.2 MB", "0.1 MB"),
            (9_990_000, "10 MB", "9.9 MB"),
            (20_054_016, "21 MB", "20 MB"),
        ] {
            assert_eq!(in_megabytes(bytes), needed, "{bytes}");
            assert_eq!(free_in_megabytes(bytes), free, "{bytes}");
        }
    }
}
