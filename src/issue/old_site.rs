//! The site that is in the target already: which of its files a compile made, and which it did not.
//!
//! A file was made by a compile if the mark lists it and its content is still what the mark says. Everything
//! else is foreign: a file or folder that the mark does not list, and a page that was changed by hand.
//! Pictures and tiles count by their path alone. The mark has no hash of them, and they are made by the hundred
//! and not edited by hand.

use std::collections::{BTreeMap, HashSet};
use std::ffi::OsStr;
use std::fs::{self, FileType};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use std::time::SystemTime;

use super::bundle::Bundle;
use super::mark::{self, Mark, MarkedBundle, MarkedFile};

/// A compiled site on disk.
pub(super) struct OldSite {
    folder: PathBuf,
    mark: Mark,
    /// When the mark was written: after every file that it lists.
    marked_at: Option<SystemTime>,
    index: OnceLock<Index>,
}

/// The paths that a mark lists, for looking up.
#[derive(Default)]
struct Index {
    bundled: HashSet<String>,
    /// Every folder that holds a listed file, at any depth.
    folders: HashSet<String>,
    /// The folders of bundles whose files the mark does not name, with a slash at the end.
    whole: Vec<String>,
}

/// What an entry of a site's folder is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// The mark itself.
    Mark,
    /// A file that the mark lists.
    Listed,
    /// A folder that holds listed files, or held some.
    Folder,
    /// Neither.
    Foreign,
}

/// An entry of a site's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Entry {
    /// Its path within the site.
    pub(super) path: PathBuf,
    /// Whether it is a folder, and not a link to one.
    pub(super) is_folder: bool,
    /// What it is.
    pub(super) kind: Kind,
}

impl OldSite {
    /// The site in `folder`; `None` where there is no mark that can be read.
    pub(super) fn read(folder: &Path) -> Option<OldSite> {
        let file = folder.join(mark::NAME);
        let about = fs::symlink_metadata(&file).ok()?;
        about.is_file().then_some(())?;
        OldSite::of(folder, &fs::read(&file).ok()?, about.modified().ok())
    }

    /// The site in `folder` whose mark has the content `bytes` and was written at `marked_at`.
    fn of(folder: &Path, bytes: &[u8], marked_at: Option<SystemTime>) -> Option<OldSite> {
        Some(OldSite {
            folder: folder.to_owned(),
            mark: Mark::from_bytes(bytes)?,
            marked_at,
            index: OnceLock::new(),
        })
    }

    /// Its mark.
    pub(super) fn mark(&self) -> &Mark {
        &self.mark
    }

    /// Its folder.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    /// The same site after its folder was renamed.
    pub(super) fn moved_to(self, folder: &Path) -> OldSite {
        OldSite {
            folder: folder.to_owned(),
            ..self
        }
    }

    /// Whether the site has the file that `wanted` describes under `path` already.
    pub(super) fn has(&self, path: &str, wanted: &MarkedFile) -> bool {
        self.mark.files.get(path) == Some(wanted) && self.is_as_published(path, wanted)
    }

    /// Whether the site has the files of `wanted` in `folder` already.
    pub(super) fn has_bundle(&self, folder: &str, wanted: &Bundle) -> bool {
        let marked = self.mark.bundles.get(folder);
        let is_same = |marked: &MarkedBundle| {
            marked.content == wanted.content && marked.files == wanted.files.len()
        };
        marked.is_some_and(is_same) && wanted.lies_in(&self.folder.join(folder))
    }

    /// Whether the file at `path` is as `listed` says. It is read only where it is not older than the mark; a
    /// picture never.
    pub(super) fn is_as_published(&self, path: &str, listed: &MarkedFile) -> bool {
        let file = self.folder.join(path);
        let Ok(about) = fs::symlink_metadata(&file) else {
            return false;
        };
        if !about.is_file() || about.len() != listed.bytes {
            return false;
        }
        let is_older = about
            .modified()
            .is_ok_and(|changed| self.marked_at.is_some_and(|marked| changed < marked));
        is_older
            || listed.hash.is_empty()
            || fs::read(&file).is_ok_and(|bytes| MarkedFile::of(&bytes) == *listed)
    }

    /// Whether a listed page or asset was changed by hand, so that it is no compile's any more. One that is
    /// empty has nothing to lose, and one that is gone neither.
    pub(super) fn was_changed(&self, path: &str) -> bool {
        let listed = self.mark.files.get(path);
        listed.is_some_and(|listed| {
            !listed.hash.is_empty()
                && fs::symlink_metadata(self.folder.join(path)).is_ok_and(|about| about.len() > 0)
                && !self.is_as_published(path, listed)
        })
    }

    /// The entries of one of its folders, in the order of their names; `within` is its path within the site,
    /// empty for the site's own folder.
    pub(super) fn entries(&self, within: &str) -> io::Result<Vec<Entry>> {
        let mut entries = Vec::new();
        for entry in fs::read_dir(self.folder.join(within))? {
            let entry = entry?;
            let file_type = entry.file_type()?;
            entries.push(Entry {
                path: Path::new(within).join(entry.file_name()),
                is_folder: file_type.is_dir(),
                kind: self.kind(within, &entry.file_name(), file_type),
            });
        }
        entries.sort_by(|a, b| a.path.cmp(&b.path));
        Ok(entries)
    }

    fn kind(&self, within: &str, name: &OsStr, file_type: FileType) -> Kind {
        // The names of listed files are text.
        let Some(name) = name.to_str() else {
            return Kind::Foreign;
        };
        let path = joined(within, name);
        let index = self.index.get_or_init(|| Index::of(&self.mark));
        let is_in_whole = || index.whole.iter().any(|folder| path.starts_with(folder));
        if file_type.is_dir() && (index.folders.contains(&path) || is_in_whole()) {
            Kind::Folder
        } else if !file_type.is_file() {
            Kind::Foreign
        } else if path == mark::NAME {
            Kind::Mark
        } else if self.mark.files.contains_key(&path)
            || index.bundled.contains(&path)
            || is_in_whole()
        {
            Kind::Listed
        } else {
            Kind::Foreign
        }
    }
}

/// The path of `name` in the folder `within`, as marks write it.
pub(super) fn joined(within: &str, name: &str) -> String {
    if within.is_empty() {
        name.to_owned()
    } else {
        format!("{within}/{name}")
    }
}

impl Index {
    fn of(mark: &Mark) -> Index {
        let mut index = Index::default();
        for path in mark.files.keys() {
            index.add_folders(path);
        }
        let bundles: &BTreeMap<String, MarkedBundle> = &mark.bundles;
        for (folder, bundle) in bundles {
            index.add_folders(&joined(folder, "*"));
            if bundle.paths.is_empty() {
                index.whole.push(format!("{folder}/"));
            }
            for path in &bundle.paths {
                let path = joined(folder, path);
                index.add_folders(&path);
                index.bundled.insert(path);
            }
        }
        index
    }

    /// Adds the folders above `path`, the innermost first; those above a known one are known too.
    fn add_folders(&mut self, path: &str) {
        let mut path = path;
        while let Some((folder, _)) = path.rsplit_once('/') {
            if !self.folders.insert(folder.to_owned()) {
                break;
            }
            path = folder;
        }
    }
}
