//! Finds the files of a catalogue.
//!
//! Links that lead out of the catalogue are not followed, nor are links to folders. Only plain files are
//! opened: opening a pipe would wait until something writes into it.
//!
//! In: the catalogue's folder. Out: its files in the order of their paths, each with its kind.

use std::collections::BTreeSet;
use std::fs::{self, FileType};
use std::path::{Path, PathBuf};

use super::kind::{FileKind, recognise};
use super::nature::Nature;
use crate::model::register::REGISTER_FILE;
use crate::read::limits::DEEPEST_FOLDER;

/// A file of the catalogue.
#[derive(Debug)]
pub(crate) struct File {
    /// Its path relative to the catalogue, with `/`.
    pub(crate) path: String,
    /// Its path on disk.
    pub(crate) full: PathBuf,
    /// Its kind.
    pub(crate) kind: FileKind,
}

/// The files of the catalogue in `dir`, in the order of their paths.
pub(crate) fn walk(dir: &Path) -> Vec<File> {
    let root = dir.canonicalize().unwrap_or_else(|_| dir.to_owned());
    let mut files = Vec::new();
    for path in ["catalogue.toml", REGISTER_FILE, "records"] {
        let full = dir.join(path);
        if let Ok(about) = fs::symlink_metadata(&full) {
            visit(&root, &full, path, about.file_type(), 0, &mut files);
        }
    }
    // A folder with an invalid name is reported once, at its record or else at its first file.
    let mut seen = BTreeSet::new();
    files.sort_by(|a, b| a.path.cmp(&b.path));
    files.retain(|file| match &file.kind {
        FileKind::NoKey { name, .. } if file.path.starts_with("records/designs/") => {
            file.path
                .split('/')
                .nth(2)
                .is_none_or(|folder| folder != name)
                || seen.insert(name.clone())
        }
        _ => true,
    });
    files
}

/// Adds the file at `path`, or every file below the folder there. `file_type` comes from the listing of
/// the parent folder, which saves a system call for each file.
fn visit(
    root: &Path,
    full: &Path,
    path: &str,
    file_type: FileType,
    depth: usize,
    files: &mut Vec<File>,
) {
    let mut add = |kind| {
        files.push(File {
            path: path.to_owned(),
            full: full.to_owned(),
            kind,
        });
    };
    if file_type.is_symlink() {
        // A linked folder is not followed, because links can form a circle. A link to a file inside the
        // catalogue is read.
        let target = full.canonicalize().ok();
        let target = target.filter(|target| target.starts_with(root));
        match target.and_then(|target| Some(fs::symlink_metadata(target).ok()?.file_type())) {
            Some(target) if target.is_file() => add(recognise(path)),
            Some(target) if target.is_dir() => add(FileKind::LinkedFolder),
            Some(target) => add(recognise(path).or_no_file(Nature::of(target))),
            None => add(FileKind::LeadsOut),
        }
    } else if file_type.is_file() {
        add(recognise(path));
    } else if file_type.is_dir() {
        let as_file = recognise(path);
        if as_file.is_text() {
            add(as_file.or_no_file(Nature::Folder));
            return;
        }
        if path == "records/inbox" {
            return;
        }
        if depth > DEEPEST_FOLDER {
            add(FileKind::TooDeep);
            return;
        }
        if as_file.is_picture() && !path.ends_with("/pictures") {
            add(FileKind::PictureFolder);
        }
        match fs::read_dir(full) {
            Ok(entries) => {
                let entries = entries.flatten();
                let types = entries.filter_map(|e| Some((e.file_name(), e.file_type().ok()?)));
                let mut below: Vec<_> = types.collect();
                below.sort_by(|(a, _), (b, _)| a.cmp(b));
                for (name, file_type) in below {
                    let shown = name.to_string_lossy();
                    if !is_ignored(&shown) {
                        let (full, path) = (full.join(&name), format!("{path}/{shown}"));
                        visit(root, &full, &path, file_type, depth + 1, files);
                    }
                }
            }
            Err(fault) => add(FileKind::Unreadable(fault.to_string())),
        }
    } else {
        add(recognise(path).or_no_file(Nature::of(file_type)));
    }
}

/// Whether a file is ignored: files that editors and systems leave behind, and files about the folder.
fn is_ignored(name: &str) -> bool {
    let lower = name.to_ascii_lowercase();
    name.starts_with('.')
        || name.starts_with('#')
        || name.ends_with('~')
        || lower.starts_with("readme")
        || [".bak", ".swp", ".swo", ".orig", ".tmp", ".schema.json"]
            .iter()
            .any(|end| lower.ends_with(end))
        || matches!(lower.as_str(), "thumbs.db" | "desktop.ini")
}
