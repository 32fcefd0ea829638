//! Where the editors' page may be written: never into a site, never over a file of somebody's own.

use std::fmt;
use std::fs;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use crate::issue::mark;

/// What every such page begins with; a file that does not is not written over.
pub(super) const MARK: &str = "<!-- Keyblock: open doubts, for the editors, not for publishing -->";

/// Why the page is not written there.
#[derive(Debug)]
pub(super) enum Refusal {
    /// Not the name of a page.
    NotAPage(PathBuf),
    /// The folder is not there.
    NoFolder(PathBuf),
    /// It would be published with the site in this folder.
    InSite(PathBuf),
    /// There is a file that is no such page.
    NotOurs(PathBuf),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::NotAPage(path) => write!(
                f,
                "`{}` is no name for a page; end it with .html, and name a design before `--doubts`",
                path.display()
            ),
            Refusal::NoFolder(path) => write!(f, "there is no folder `{}`", path.display()),
            Refusal::InSite(path) => write!(
                f,
                "the page is for the editors and would be published in `{}`; write it elsewhere",
                path.display()
            ),
            Refusal::NotOurs(path) => write!(
                f,
                "`{}` is there, and is no page of open doubts; name another file",
                path.display()
            ),
        }
    }
}

/// Whether the page may be written to `file`, for the catalogue in `dir`.
pub(super) fn may(dir: &Path, file: &Path) -> Result<(), Refusal> {
    let is_page = file
        .extension()
        .is_some_and(|e| e.eq_ignore_ascii_case("html"));
    if !is_page {
        return Err(Refusal::NotAPage(file.to_owned()));
    }
    let folder = match file.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    // Asked of where it really is, whatever leads there.
    let Ok(real) = fs::canonicalize(folder) else {
        return Err(Refusal::NoFolder(folder.to_owned()));
    };
    let web = fs::canonicalize(dir).map(|dir| dir.join("web"));
    let site = real
        .ancestors()
        .find(|folder| mark::is_marked(folder) || web.as_ref().is_ok_and(|web| web == folder));
    if let Some(site) = site {
        return Err(Refusal::InSite(site.to_owned()));
    }
    match fs::symlink_metadata(file) {
        Ok(about) if about.is_file() && is_ours(file) => Ok(()),
        Ok(_) => Err(Refusal::NotOurs(file.to_owned())),
        Err(_) => Ok(()),
    }
}

fn is_ours(file: &Path) -> bool {
    let mut begins = Vec::new();
    let read = fs::File::open(file).and_then(|file| file.take(256).read_to_end(&mut begins));
    read.is_ok() && String::from_utf8_lossy(&begins).contains(MARK)
}

/// Writes the page whole or not at all.
pub(super) fn write(file: &Path, text: &str) -> io::Result<()> {
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    let beside = file.with_file_name(format!(".{name}.next"));
    fs::write(&beside, text)?;
    fs::rename(&beside, file)
}
