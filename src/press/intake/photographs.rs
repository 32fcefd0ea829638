//! The photographs that come with a file: kept in `handed-in/photographs/`, matched with the rows.

use std::fs;
use std::path::{Path, PathBuf};

use super::fault::IntakeFault;
use super::inbox::{HANDED_IN, Inbox};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::photographs::{PhotographedRow, Photographs, is_photograph, matched};
use crate::exchange::intake::proposal::ProposedRow;

/// The folder of photographs in that of the file as it came.
pub(super) const PHOTOGRAPHS: &str = "photographs";

/// How many photographs are taken with one file.
const MOST: usize = 100_000;

/// The photographs that came with a file.
#[derive(Clone, Debug, Default)]
pub struct HandedPhotographs {
    /// Their names: paths below the folder, with `/`, in order.
    pub names: Vec<String>,
    /// Which are of which rows, by their places in the proposal.
    pub found: Photographs,
    /// The folder that is handed in with this run; `None` where those that the inbox keeps are meant.
    pub(super) folder: Option<PathBuf>,
}

impl HandedPhotographs {
    /// Lists those in a folder that is handed in now, else those that the inbox keeps, and matches them with the rows.
    ///
    /// # Errors
    /// [`IntakeFault`] where the folder cannot be read or has too many files.
    pub fn of(
        inbox: &Inbox,
        folder: Option<&Path>,
        rows: &[ProposedRow],
    ) -> Result<HandedPhotographs, IntakeFault> {
        let place = match folder {
            Some(folder) if !folder.is_dir() => {
                let message = format!("`{}` is no folder", folder.display());
                return Err(IntakeFault::usage(
                    message,
                    "name the folder with the photographs",
                ));
            }
            Some(folder) => folder.to_owned(),
            None => inbox.dir().join(kept(inbox)),
        };
        let names = names_in(&place)?;
        let photographed: Vec<PhotographedRow<'_>> = rows.iter().map(photographed).collect();
        let refs: Vec<&str> = names.iter().map(String::as_str).collect();
        let found = matched(&photographed, &refs);
        Ok(HandedPhotographs {
            found,
            names,
            folder: folder.map(Path::to_owned),
        })
    }

    /// Where a photograph lies on disk.
    #[must_use]
    pub fn path(&self, inbox: &Inbox, photograph: usize) -> PathBuf {
        let folder = self
            .folder
            .clone()
            .unwrap_or_else(|| inbox.dir().join(kept(inbox)));
        folder.join(&self.names[photograph])
    }
}

/// The folder in which the inbox keeps photographs, by its path in the catalogue.
pub(super) fn kept(inbox: &Inbox) -> String {
    inbox.path(&format!("{HANDED_IN}/{PHOTOGRAPHS}"))
}

fn photographed(row: &ProposedRow) -> PhotographedRow<'_> {
    let named = row.facts.texts.get(Holds::Photograph).unwrap_or_default();
    let files = named.split([';', '|', '\n']).map(str::trim);
    PhotographedRow {
        accession: row.accession.as_deref(),
        files: files.filter(|file| !file.is_empty()).collect(),
    }
}

/// The photographs below a folder, in the order of their names. Links are not followed.
fn names_in(folder: &Path) -> Result<Vec<String>, IntakeFault> {
    let mut names = Vec::new();
    let mut open = vec![PathBuf::new()];
    while let Some(below) = open.pop() {
        let place = folder.join(&below);
        let listed = match fs::read_dir(&place) {
            Ok(listed) => listed,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => continue,
            Err(error) => return Err(IntakeFault::disk(&place, &error)),
        };
        for entry in listed {
            let entry = entry.map_err(|error| IntakeFault::disk(&place, &error))?;
            let kind = entry
                .file_type()
                .map_err(|error| IntakeFault::disk(&place, &error))?;
            let path = below.join(entry.file_name());
            if kind.is_dir() && path.components().count() < DEEPEST {
                open.push(path);
            } else if kind.is_file()
                && let Some(name) = path.to_str().filter(|name| is_photograph(name))
            {
                names.push(name.replace('\\', "/"));
            }
            if names.len() > MOST {
                let message = format!(
                    "there are more than {MOST} photographs in `{}`",
                    folder.display()
                );
                return Err(IntakeFault::not_done(
                    message,
                    "hand them in with several files",
                ));
            }
        }
    }
    names.sort();
    Ok(names)
}

/// How deep folders are looked through.
const DEEPEST: usize = 8;
