//! Writes the editors' page: never into a site or a theme, whose files are published, and never over any
//! other file.

use std::fmt;
use std::fs;
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

use crate::issue::mark;

/// The beginning of every such page. A file without it is not overwritten.
pub(super) const MARK: &str = "<!-- Keyblock: open doubts, for the editors, not for publishing -->";

/// Why the page is not written there.
#[derive(Debug)]
pub(super) enum Refusal {
    /// The file name is not one of a page.
    NotAPage(PathBuf),
    /// The folder does not exist.
    NoFolder(PathBuf),
    /// It would be published with the site in this folder.
    InSite(PathBuf),
    /// There is another file under that name.
    NotOurs(PathBuf),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::NotAPage(path) => write!(
                f,
                "`{}` is not a name for a page; end it with .html, and name a design before `--doubts`",
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
                "`{}` is there, and is not a page of open doubts; name another file",
                path.display()
            ),
        }
    }
}

/// Checks that the page may be written to `file`, for the catalogue in `dir`.
pub(super) fn check(dir: &Path, file: &Path) -> Result<(), Refusal> {
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
    // Checked for the real path, behind any symbolic links.
    let Ok(real) = fs::canonicalize(folder) else {
        return Err(Refusal::NoFolder(folder.to_owned()));
    };
    let published = published(dir);
    let site = real
        .ancestors()
        .find(|folder| mark::is_marked(folder) || published.iter().any(|p| p == folder));
    if let Some(site) = site {
        return Err(Refusal::InSite(site.to_owned()));
    }
    for path in [file, &beside(file)] {
        if fs::symlink_metadata(path).is_ok() && !is_ours(path) {
            return Err(Refusal::NotOurs(path.to_owned()));
        }
    }
    Ok(())
}

/// The folders of a catalogue whose files are published: its site and its themes, as written and behind
/// symbolic links.
fn published(dir: &Path) -> Vec<PathBuf> {
    let Ok(root) = fs::canonicalize(dir) else {
        return Vec::new();
    };
    let (web, themes) = (root.join("web"), root.join("themes"));
    let each = fs::read_dir(&themes).into_iter().flatten().flatten();
    let each: Vec<PathBuf> = each.map(|theme| theme.path()).collect();
    let named = [web, themes].into_iter().chain(each);
    named
        .flat_map(|folder| [fs::canonicalize(&folder).ok(), Some(folder)])
        .flatten()
        .collect()
}

/// Whether a file is such a page: no symbolic link, and with [`MARK`] at its beginning.
fn is_ours(file: &Path) -> bool {
    if !fs::symlink_metadata(file).is_ok_and(|about| about.is_file()) {
        return false;
    }
    let mut begins = Vec::new();
    let read = fs::File::open(file).and_then(|file| file.take(256).read_to_end(&mut begins));
    read.is_ok() && String::from_utf8_lossy(&begins).contains(MARK)
}

/// The file that the page is written to before it is renamed.
fn beside(file: &Path) -> PathBuf {
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    file.with_file_name(format!(".{name}.next"))
}

/// Writes the page whole or not at all. A page that an interrupted run left under the other name is removed
/// first.
pub(super) fn write(file: &Path, text: &str) -> io::Result<()> {
    let beside = beside(file);
    if is_ours(&beside) {
        fs::remove_file(&beside)?;
    }
    let mut new = fs::OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(&beside)?;
    let written = new.write_all(text.as_bytes());
    let moved = written.and_then(|()| fs::rename(&beside, file));
    if moved.is_err() {
        let _ = fs::remove_file(&beside);
    }
    moved
}
