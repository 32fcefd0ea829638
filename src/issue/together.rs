//! Files of a catalogue that are written together: all of them, or none.
//!
//! In: the catalogue's folder, a folder in it for staging, and the changes. The new files are staged first, then a plan of
//! what goes where is written; only then does each file go to its place. Where the disk refuses, everything is undone.
//! Where the program is killed before the plan stands, nothing has changed; where it is killed after, [`resume`] does the
//! rest of the plan. So a command that changes files calls [`resume`] before it reads them.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::disk::{Disk, SystemDisk};

/// What is changed.
#[derive(Clone, Debug, Default)]
pub struct FileChanges {
    /// The files to be written, by path in the catalogue, with `/`.
    pub writes: BTreeMap<String, FileWrite>,
    /// Files and folders that get another name after that: path before, path after.
    pub moves: Vec<(String, String)>,
}

/// A file to be written.
#[derive(Clone, Debug)]
pub struct FileWrite {
    /// What it holds.
    pub content: Content,
    /// Whether there may be none yet: a record that is there is never replaced by a new one.
    pub is_new: bool,
}

/// What a file holds.
#[derive(Clone, Debug)]
pub enum Content {
    /// These bytes.
    Bytes(Vec<u8>),
    /// The bytes of another file.
    CopyOf(PathBuf),
    /// The bytes of a file that was made for this, on the disk of the catalogue. It is moved.
    Made(PathBuf),
}

impl FileChanges {
    /// Adds a file that replaces the one there, if any.
    pub fn write(&mut self, path: impl Into<String>, bytes: impl Into<Vec<u8>>) {
        let content = Content::Bytes(bytes.into());
        self.add(path.into(), content, false);
    }

    /// Adds a file where none may be yet.
    pub fn write_new(&mut self, path: impl Into<String>, bytes: impl Into<Vec<u8>>) {
        let content = Content::Bytes(bytes.into());
        self.add(path.into(), content, true);
    }

    /// Adds a copy of a file, where none may be yet.
    pub fn copy_new(&mut self, from: PathBuf, path: impl Into<String>) {
        self.add(path.into(), Content::CopyOf(from), true);
    }

    /// Adds a copy of a file, which replaces the one there, if any.
    pub fn copy(&mut self, from: PathBuf, path: impl Into<String>) {
        self.add(path.into(), Content::CopyOf(from), false);
    }

    /// Adds a file that was made on the disk of the catalogue; it is moved, and replaces the one there, if any.
    pub fn take(&mut self, made: PathBuf, path: impl Into<String>) {
        self.add(path.into(), Content::Made(made), false);
    }

    fn add(&mut self, path: String, content: Content, is_new: bool) {
        self.writes.insert(path, FileWrite { content, is_new });
    }
}

/// The plan as it is kept in the staging folder.
#[derive(Debug, Default, Serialize, Deserialize)]
struct Plan {
    /// Where each staged file goes; the first is staged as `0`.
    writes: Vec<String>,
    moves: Vec<(String, String)>,
}

const PLAN: &str = "plan.json";

/// Carries the changes out in the catalogue in `dir`, staged in its folder `staging`.
///
/// # Errors
/// As the disk refuses, or where a new file is there already; then nothing has changed.
pub fn carry_out(dir: &Path, staging: &str, changes: &FileChanges) -> io::Result<()> {
    carry_out_on(&SystemDisk, dir, staging, changes)
}

/// What was left by a program that was killed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Resumed {
    /// Nothing.
    Nothing,
    /// Files that were only staged; they are removed.
    Dropped,
    /// A plan that was carried out in part; the rest is done now.
    Completed,
}

/// Completes what a killed program left in `staging`, or drops it where its plan did not stand yet.
///
/// # Errors
/// As the disk refuses; another call goes on from there.
pub fn resume(dir: &Path, staging: &str) -> io::Result<Resumed> {
    resume_on(&SystemDisk, dir, staging)
}

pub(super) fn carry_out_on(
    disk: &impl Disk,
    dir: &Path,
    staging: &str,
    changes: &FileChanges,
) -> io::Result<()> {
    resume_on(disk, dir, staging)?;
    let folder = dir.join(staging);
    let staged = stage(disk, dir, &folder, changes);
    let plan = match staged {
        Ok(plan) => plan,
        Err(error) => {
            // What the disk refuses here too stays; the next call drops it.
            let _ = clear(disk, &folder);
            return Err(error);
        }
    };
    let mut done = Done::default();
    if let Err(error) = place(disk, dir, &folder, &plan, &mut done) {
        // Without its plan, what is staged is dropped by the next call.
        let _ = disk.remove_file(&folder.join(PLAN));
        done.undo(disk);
        let _ = clear(disk, &folder);
        return Err(error);
    }
    clear(disk, &folder)
}

/// Stages every file, then the plan.
fn stage(disk: &impl Disk, dir: &Path, folder: &Path, changes: &FileChanges) -> io::Result<Plan> {
    let new = changes.writes.iter().filter(|(_, write)| write.is_new);
    let targets = new
        .map(|(path, _)| path)
        .chain(changes.moves.iter().map(|(_, to)| to));
    for path in targets {
        let place = dir.join(path);
        if fs::symlink_metadata(&place).is_ok() {
            return Err(io::Error::new(
                io::ErrorKind::AlreadyExists,
                format!("`{path}` is there already"),
            ));
        }
    }
    disk.make_folders(folder)?;
    let mut plan = Plan {
        writes: Vec::new(),
        moves: changes.moves.clone(),
    };
    for (number, (path, write)) in changes.writes.iter().enumerate() {
        let staged = folder.join(number.to_string());
        match &write.content {
            Content::Bytes(bytes) => disk.write_new(&staged, bytes)?,
            Content::CopyOf(from) => disk.copy(from, &staged)?,
            Content::Made(made) => disk.rename(made, &staged)?,
        }
        // A file that is replaced keeps its permissions.
        if let Ok(about) = fs::metadata(dir.join(path)) {
            fs::set_permissions(&staged, about.permissions())?;
        }
        plan.writes.push(path.clone());
    }
    let text = serde_json::to_vec(&plan).map_err(io::Error::other)?;
    let unfinished = folder.join("plan.part");
    disk.write_new(&unfinished, &text)?;
    disk.sync_below(folder)?;
    disk.rename(&unfinished, &folder.join(PLAN))?;
    disk.sync(folder)?;
    Ok(plan)
}

/// Puts every staged file that is still there in its place, then renames.
fn place(
    disk: &impl Disk,
    dir: &Path,
    folder: &Path,
    plan: &Plan,
    done: &mut Done,
) -> io::Result<()> {
    for (number, path) in plan.writes.iter().enumerate() {
        let staged = folder.join(number.to_string());
        if fs::symlink_metadata(&staged).is_err() {
            continue;
        }
        let place = dir.join(path);
        if let Some(parent) = place.parent() {
            disk.make_folders(parent)?;
        }
        let before = folder.join(format!("{number}.before"));
        if fs::symlink_metadata(&place).is_ok() && fs::symlink_metadata(&before).is_err() {
            // A copy, so that the file is never missing from its place.
            disk.copy(&place, &before)?;
        }
        disk.rename(&staged, &place)?;
        done.placed.push((place, before));
    }
    for (from, to) in &plan.moves {
        let (from, to) = (dir.join(from), dir.join(to));
        if fs::symlink_metadata(&from).is_err() && fs::symlink_metadata(&to).is_ok() {
            continue;
        }
        if let Some(parent) = to.parent() {
            disk.make_folders(parent)?;
        }
        disk.rename_new(&from, &to)?;
        done.moved.push((from, to));
    }
    Ok(())
}

fn resume_on(disk: &impl Disk, dir: &Path, staging: &str) -> io::Result<Resumed> {
    let folder = dir.join(staging);
    if fs::symlink_metadata(&folder).is_err() {
        return Ok(Resumed::Nothing);
    }
    let plan = match fs::read(folder.join(PLAN)) {
        Ok(text) => serde_json::from_slice::<Plan>(&text).map_err(io::Error::other)?,
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            clear(disk, &folder)?;
            return Ok(Resumed::Dropped);
        }
        Err(error) => return Err(error),
    };
    place(disk, dir, &folder, &plan, &mut Done::default())?;
    clear(disk, &folder)?;
    Ok(Resumed::Completed)
}

/// Removes the staging folder, the plan last: until then every file that is left belongs to it.
fn clear(disk: &impl Disk, folder: &Path) -> io::Result<()> {
    let mut files: Vec<PathBuf> = Vec::new();
    for entry in fs::read_dir(folder)? {
        files.push(entry?.path());
    }
    files.sort_by_key(|path| (path.ends_with(PLAN), path.clone()));
    for file in files {
        disk.remove_file(&file)?;
    }
    disk.remove_folder(folder)
}

/// What was done so far.
#[derive(Default)]
struct Done {
    /// Each file in its place, and the one that was there before, where there was one.
    placed: Vec<(PathBuf, PathBuf)>,
    moved: Vec<(PathBuf, PathBuf)>,
}

impl Done {
    /// Undoes it, the last first. What the disk refuses here too stays.
    fn undo(self, disk: &impl Disk) {
        for (from, to) in self.moved.into_iter().rev() {
            let _ = disk.rename(&to, &from);
        }
        for (place, before) in self.placed.into_iter().rev() {
            let had_one = fs::symlink_metadata(&before).is_ok();
            let _ = if had_one {
                disk.rename(&before, &place)
            } else {
                disk.remove_file(&place)
            };
        }
    }
}
