//! Finds the folder of the catalogue that a command works on, and refuses one that is no catalogue.
//!
//! In: the folder that the arguments name, if they name one. Out: the folder. Where none is named it is the current
//! folder, or the nearest folder above that holds `catalogue.toml`, so that commands can be run among the records.

use std::path::{Path, PathBuf};

use super::outcome::Outcome;
use super::streams::say;

/// The file that makes a folder a catalogue.
const SETTINGS: &str = "catalogue.toml";

/// The folder of a catalogue, and how it was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct CatalogueFolder {
    /// The folder; it need not hold a catalogue.
    pub(super) path: PathBuf,
    /// Whether it is above the current folder and was not named.
    pub(super) is_above: bool,
}

impl CatalogueFolder {
    /// The folder that was `named`, or the one that is found from the current folder.
    pub(super) fn of(named: Option<&Path>) -> CatalogueFolder {
        let this = named.unwrap_or(Path::new("."));
        let is_sought = named.is_none() && !Path::new(SETTINGS).exists();
        let here = std::env::current_dir().ok().filter(|_| is_sought);
        let found = here.and_then(|here| above(&here));
        CatalogueFolder {
            is_above: found.is_some(),
            path: found.unwrap_or_else(|| this.to_owned()),
        }
    }
}

/// Whether a folder is a catalogue.
pub(super) fn is_catalogue(folder: &Path) -> bool {
    folder.join(SETTINGS).is_file()
}

/// Says that a folder is no catalogue, where it is none, and what to do.
pub(super) fn refused_unless_catalogue(folder: &Path) -> Option<Outcome> {
    if is_catalogue(folder) {
        return None;
    }
    say(format_args!(
        "keyblock: `{}` is no catalogue",
        folder.display()
    ));
    say("  name its folder with --in, or create one with `keyblock start`");
    Some(Outcome::Usage)
}

/// The nearest folder above `folder` that holds a catalogue.
fn above(folder: &Path) -> Option<PathBuf> {
    let mut folders = folder.ancestors().skip(1);
    let found = folders.find(|folder| is_catalogue(folder))?;
    Some(found.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_catalogue_above_is_found() {
        let folder = tempfile::tempdir().unwrap();
        let outer = folder.path();
        let inner = outer.join("prints");
        let below = inner.join("records/designs/14/impressions");
        std::fs::create_dir_all(&below).unwrap();
        std::fs::write(outer.join(SETTINGS), "").unwrap();
        std::fs::write(inner.join(SETTINGS), "").unwrap();
        assert_eq!(above(&below), Some(inner.clone()));
        assert_eq!(above(&inner), Some(outer.to_owned()));
        std::fs::remove_file(inner.join(SETTINGS)).unwrap();
        assert_eq!(above(&below), Some(outer.to_owned()));
    }

    #[test]
    fn a_named_folder_is_taken_as_it_is() {
        let named = CatalogueFolder::of(Some(Path::new("records")));
        assert_eq!(named.path, Path::new("records"));
        assert!(!named.is_above);
    }
}
