//! The folder of a house in the inbox: `records/inbox/NAME/`.
//!
//! Everything in it is read by intake alone. A folder of the inbox that is a link is refused, since what is written there
//! would lie elsewhere.

use std::fs;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::fault::IntakeFault;
use super::lock::house_lock;
use crate::issue::{Lock, together};
use crate::model::key::Key;

/// The folder of the inboxes, in a catalogue.
const FOLDER: &str = "records/inbox";

/// The folder of the file as it came, in that of a house.
pub(super) const HANDED_IN: &str = "handed-in";

/// The records as they would be written.
pub(super) const PROPOSED: &str = "proposed.toml";

/// The largest file of settings that is read, in bytes: the distinct values of a table of the largest size.
const SETTINGS_BYTES: u64 = 128 << 20;

/// The folder of a house, which no other run changes meanwhile.
#[derive(Clone, Debug)]
pub struct Inbox {
    dir: PathBuf,
    name: Key,
    /// Held until the last copy of this value goes.
    _lock: Arc<Lock>,
}

impl Inbox {
    /// The folder of a house in the catalogue in `dir`. What a killed run left there is completed or dropped.
    ///
    /// # Errors
    /// [`IntakeFault`] where another run has the folder, where it is a link or no folder, or the disk refuses.
    pub fn of(dir: &Path, name: &Key) -> Result<Inbox, IntakeFault> {
        let inbox = Inbox {
            dir: dir.to_owned(),
            name: name.clone(),
            _lock: Arc::new(house_lock(dir, name)?),
        };
        for path in [FOLDER.to_owned(), inbox.path("")] {
            let path = dir.join(path.trim_end_matches('/'));
            match fs::symlink_metadata(&path) {
                Ok(about) if about.is_dir() => {}
                Ok(_) => {
                    let message = format!("`{}` is no folder of its own", path.display());
                    let help = "the inbox is never a link or a file; move it away";
                    return Err(IntakeFault::not_done(message, help));
                }
                Err(error) if error.kind() == io::ErrorKind::NotFound => break,
                Err(error) => return Err(IntakeFault::disk(&path, &error)),
            }
        }
        let resumed = together::resume(dir, &inbox.staging());
        resumed.map_err(|error| IntakeFault::disk(&dir.join(inbox.staging()), &error))?;
        Ok(inbox)
    }

    /// The name of the house.
    #[must_use]
    pub fn name(&self) -> &Key {
        &self.name
    }

    /// The catalogue's folder.
    #[must_use]
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// The path in the catalogue of a file in the folder, with `/`.
    #[must_use]
    pub fn path(&self, file: &str) -> String {
        format!("{FOLDER}/{}/{file}", self.name)
    }

    /// The folder in which files are staged before all of them are put in their places.
    #[must_use]
    pub fn staging(&self) -> String {
        format!("{FOLDER}/.{}.next", self.name)
    }

    /// The folder in which files are made before they are compared with those that are there.
    #[must_use]
    pub fn aside(&self) -> String {
        format!("{FOLDER}/.{}.made", self.name)
    }

    /// The text of a file in the folder; `None` where there is none.
    ///
    /// # Errors
    /// [`IntakeFault`] where it is no plain file in UTF-8, is too large, or the disk refuses.
    pub fn text(&self, file: &str) -> Result<Option<String>, IntakeFault> {
        let path = self.dir.join(self.path(file));
        let about = match fs::symlink_metadata(&path) {
            Ok(about) => about,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(IntakeFault::disk(&path, &error)),
        };
        let named = self.path(file);
        if !about.is_file() {
            let message = format!("`{named}` is no plain file");
            return Err(IntakeFault::not_done(message, "move it away"));
        }
        let mut bytes = Vec::new();
        let opened = fs::File::open(&path);
        let read = opened.and_then(|file| file.take(SETTINGS_BYTES + 1).read_to_end(&mut bytes));
        read.map_err(|error| IntakeFault::disk(&path, &error))?;
        if bytes.len() as u64 > SETTINGS_BYTES {
            let message =
                format!("`{named}` is larger than the {SETTINGS_BYTES} bytes that are read");
            return Err(IntakeFault::not_done(message, "move it away"));
        }
        let text = String::from_utf8(bytes).map_err(|_| {
            let message = format!("`{named}` is not in UTF-8");
            IntakeFault::not_done(message, "save it in UTF-8")
        })?;
        Ok(Some(text))
    }

    /// The names of the files in a folder of the folder, in order; none where there is no such folder.
    #[must_use]
    pub fn files_in(&self, folder: &str) -> Vec<String> {
        let listed = fs::read_dir(self.dir.join(self.path(folder)));
        let entries = listed.into_iter().flatten().flatten();
        let files = entries.filter(|entry| entry.file_type().is_ok_and(|kind| kind.is_file()));
        let names = files.filter_map(|entry| entry.file_name().into_string().ok());
        let mut names: Vec<String> = names.collect();
        names.sort();
        names
    }
}

/// The file that the last run kept, as `proposed.toml` names it, where it is still there.
pub(super) fn last_file(inbox: &Inbox) -> Option<String> {
    let text = inbox.text(PROPOSED).ok()??;
    let head = text.split("\n[[").next()?;
    let table: toml::Table = head.parse().ok()?;
    let file = table.get("file")?.as_str()?.to_owned();
    inbox.files_in(HANDED_IN).contains(&file).then_some(file)
}
