//! `keyblock start`: makes an empty catalogue with commented templates.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::outcome::Outcome;
use super::plural::counted;
use super::streams::say;
use crate::read::start_files;

pub(super) const ABOUT: &str = "\
Creates an empty catalogue: settings, one worked example of each kind of record with every key \
explained, and the schemas by which editors complete and check records.

It compiles without changes. The folder must be new, or empty but for hidden files such as those of \
version control.";

/// Makes a catalogue in `dir`.
pub(super) fn run(dir: &Path, out: &mut impl Write) -> io::Result<Outcome> {
    let files = start_files();
    if let Some(there) = in_the_way(dir, &files)? {
        say(format_args!(
            "keyblock: `{}` is there already, so nothing was created",
            there.display()
        ));
        say("  name a new folder, or an empty one");
        return Ok(Outcome::NotDone);
    }
    for (path, bytes) in &files {
        let place = dir.join(path);
        if let Some(folder) = place.parent() {
            fs::create_dir_all(folder)?;
        }
        fs::write(&place, bytes)?;
    }
    let dir = dir.display();
    writeln!(
        out,
        "{dir}: {} created",
        counted(files.len(), "file", "files")
    )?;
    writeln!(
        out,
        "next: “keyblock proof {dir}”, and change the records while you watch"
    )?;
    Ok(Outcome::Done)
}

/// The entry that prevents making a catalogue in `dir`: the first by name that is not hidden, or a hidden
/// file that would be overwritten. `None` where there is neither.
fn in_the_way(dir: &Path, files: &[(String, Vec<u8>)]) -> io::Result<Option<PathBuf>> {
    let entries = match fs::read_dir(dir) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
            return Ok(Some(dir.to_owned()));
        }
        Err(error) => return Err(error),
    };
    let mut names = entries
        .map(|entry| Ok(entry?.file_name()))
        .collect::<io::Result<Vec<_>>>()?;
    names.sort();
    let visible = names
        .iter()
        .find(|name| !name.to_string_lossy().starts_with('.'))
        .map(|name| dir.join(name));
    let overwritten = || {
        let mut paths = files.iter().map(|(path, _)| dir.join(path));
        paths.find(|path| path.exists())
    };
    Ok(visible.or_else(overwritten))
}
