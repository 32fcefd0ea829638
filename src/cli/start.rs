//! `keyblock start`: an empty catalogue with commented templates.

use std::fs;
use std::io::{self, Write};
use std::path::Path;

use super::{Outcome, counted};
use crate::read::start_files;

pub(super) const ABOUT: &str = "\
Lays down an empty catalogue: settings, one worked example of each kind of record with every key \
explained, and the schemas by which editors complete and check records.

It compiles as it stands. Files that are there already are never touched: where the folder holds a \
catalogue, nothing is laid down.";

/// Lays down a catalogue in `dir`.
pub(super) fn run(dir: &Path, out: &mut impl Write) -> io::Result<Outcome> {
    let files = start_files();
    if let Some((path, _)) = files.iter().find(|(path, _)| dir.join(path).exists()) {
        eprintln!(
            "keyblock: `{}` is there already, so nothing was laid down",
            dir.join(path).display()
        );
        eprintln!("  name a folder without a catalogue");
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
        "{dir}: {} laid down",
        counted(files.len(), "file", "files")
    )?;
    writeln!(
        out,
        "next: `keyblock proof {dir}`, and change the records while you watch"
    )?;
    Ok(Outcome::Done)
}
