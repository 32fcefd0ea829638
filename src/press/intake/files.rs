//! What is written into the inbox, all or nothing.
//!
//! `columns.toml`, `values.toml` and `designs.toml` for editors to correct; the file as it came in `handed-in/`, the files
//! that it replaces in `handed-in/earlier/`; `proposed.toml`, `report.html` and `report.csv`. What is there already with the
//! same content is not written again.

use std::fs;
use std::io::{self, BufRead as _, BufReader, BufWriter, Write as _};
use std::path::{Path, PathBuf};

use super::fault::IntakeFault;
use super::inbox::{HANDED_IN, Inbox, PROPOSED, last_file};
use super::proposed::{COLUMNS, DESIGNS, Proposed, SettingsTexts, VALUES};
use crate::exchange::intake::grouping;
use crate::exchange::intake::proposal::{DesignIs, RowStanding};
use crate::exchange::intake::report::{Account, page, proposed, table};
use crate::exchange::intake::settings::{columns, values};
use crate::issue::together::{self, FileChanges};
use crate::model::key::ImpressionKey;

/// The folder of the files that it replaced.
const EARLIER: &str = "handed-in/earlier";

/// What was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The folder of the house, by its path in the catalogue.
    pub folder: String,
    /// Whether nothing had to be written: everything was there as it is.
    pub is_unchanged: bool,
}

/// Writes what a file proposes into the folder of its house.
///
/// # Errors
/// [`IntakeFault`] where the disk refuses, or where an editor saved a correction while the file was read. Then the folder is
/// as it was.
pub fn write(proposed: &Proposed, account: &Account) -> Result<Written, IntakeFault> {
    let inbox = &proposed.inbox;
    let aside = Aside::of(inbox)?;
    let changes = changes(proposed, account, &aside.0)?;
    if SettingsTexts::of(inbox)? != proposed.texts {
        let message = "what was corrected in the inbox changed while the file was read";
        let help = "run intake again; nothing was written";
        return Err(IntakeFault::not_done(message, help));
    }
    let folder = inbox.path("");
    let is_unchanged = changes.writes.is_empty() && changes.moves.is_empty();
    if !is_unchanged {
        let done = together::carry_out(inbox.dir(), &inbox.staging(), &changes);
        done.map_err(|error| IntakeFault::disk(Path::new(&folder), &error))?;
    }
    Ok(Written {
        folder,
        is_unchanged,
    })
}

/// A folder beside the inbox in which files are made, and which goes with this value. One that a killed run left is emptied.
struct Aside(PathBuf);

impl Aside {
    fn of(inbox: &Inbox) -> Result<Aside, IntakeFault> {
        let folder = inbox.dir().join(inbox.aside());
        let made = match fs::remove_dir_all(&folder) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
            _ => folder
                .parent()
                .map_or(Ok(()), fs::create_dir_all)
                .and_then(|()| fs::create_dir(&folder)),
        };
        made.map_err(|error| IntakeFault::disk(&folder, &error))?;
        Ok(Aside(folder))
    }
}

impl Drop for Aside {
    fn drop(&mut self) {
        // Where it stays, the next run removes it.
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Gives the pieces of a file to a function that writes them.
type Writing<'w> = &'w dyn Fn(&mut dyn FnMut(&[u8]) -> io::Result<()>) -> io::Result<()>;

/// Makes a file.
fn written(path: &Path, write: Writing<'_>) -> io::Result<()> {
    let mut file = BufWriter::new(fs::File::create(path)?);
    write(&mut |piece| file.write_all(piece))?;
    file.flush()
}

/// What is written. Each file is made in the folder `aside` first, so that one of them is in memory at a time.
fn changes(of: &Proposed, account: &Account, aside: &Path) -> Result<FileChanges, IntakeFault> {
    let inbox = &of.inbox;
    let reported = of.reported();
    let mut changes = FileChanges::default();
    let mut make = |file: &str, write: Writing<'_>| -> Result<(), IntakeFault> {
        let made = aside.join(file);
        let path = inbox.path(file);
        let there = inbox.dir().join(&path);
        let is_same = written(&made, write).and_then(|()| is_same(&made, &there));
        if !is_same.map_err(|error| IntakeFault::disk(&made, &error))? {
            changes.take(made, path);
        }
        Ok(())
    };
    make(
        COLUMNS,
        &|put| put(columns::written(&of.columns).as_bytes()),
    )?;
    make(VALUES, &|put| values::write(&of.values, put))?;
    let proposal = &of.proposal;
    make(DESIGNS, &|put| {
        let designs = grouping::settings::written(&proposal.designs, &proposal.rows, &of.settled);
        put(designs.as_bytes())
    })?;
    let page = page(&reported, account).map_err(|fault| IntakeFault::not_done(fault, ""))?;
    make("report.html", &|put| put(page.as_bytes()))?;
    make("report.csv", &|put| table(&reported, put))?;
    make(PROPOSED, &|put| write_records(of, put))?;
    keep(of, inbox, aside, &mut changes)?;
    keep_photographs(of, inbox, &mut changes);
    Ok(changes)
}

/// Whether two files hold the same; not where the second is not there.
fn is_same(made: &Path, there: &Path) -> io::Result<bool> {
    let Ok(there) = fs::File::open(there) else {
        return Ok(false);
    };
    let made = fs::File::open(made)?;
    if made.metadata()?.len() != there.metadata()?.len() {
        return Ok(false);
    }
    let (mut made, mut there) = (BufReader::new(made), BufReader::new(there));
    loop {
        let (ours, theirs) = (made.fill_buf()?, there.fill_buf()?);
        let length = ours.len().min(theirs.len());
        if length == 0 || ours[..length] != theirs[..length] {
            return Ok(ours.len() == theirs.len() && length == 0);
        }
        made.consume(length);
        there.consume(length);
    }
}

/// Writes `proposed.toml`, each record with the number that it would get if all rows were accepted now.
fn write_records(of: &Proposed, put: &mut dyn FnMut(&[u8]) -> io::Result<()>) -> io::Result<()> {
    let maker = of.record_maker();
    let cells = of.cells();
    let keys = keys(of);
    let record = |place: usize| {
        let row = &of.proposal.rows[place];
        let at = row.design?;
        let key = keys[place].clone()?;
        let of_row = cells.row(row.row);
        let cell = |column: usize| of_row.map_or("", |of_row| of_row.cell(column));
        let technique = of.techniques.get(at).map_or(&[][..], Vec::as_slice);
        Some(maker.draft(row, &cell, key, technique).text())
    };
    proposed(&of.reported(), &record, put)
}

/// The key that the record of each row has, or would get if all rows were accepted now; `None` where none is proposed, or its
/// design is one of several.
fn keys(of: &Proposed) -> Vec<Option<ImpressionKey>> {
    let mut free = of.free_keys.clone();
    let rows = of.proposal.rows.iter();
    let keys = rows.map(|row| match &row.standing {
        RowStanding::Corrected(key, _) => Some(key.clone()),
        RowStanding::Unchanged(_) | RowStanding::Nothing | RowStanding::LeftOut => None,
        RowStanding::New => {
            let design = of.proposal.designs.get(row.design?)?;
            match &design.is {
                DesignIs::Recorded(key) => free.next_key(key),
                DesignIs::OneOf(_) => None,
                DesignIs::New => free.next_key(design.key.as_ref()?),
            }
        }
    });
    keys.collect()
}

/// Keeps the file as it came, and those that it replaces.
fn keep(
    of: &Proposed,
    inbox: &Inbox,
    aside: &Path,
    changes: &mut FileChanges,
) -> Result<(), IntakeFault> {
    let file = &of.handed_in.file;
    let path = inbox.path(&format!("{HANDED_IN}/{file}"));
    let place = inbox.dir().join(&path);
    let made = aside.join(HANDED_IN);
    let bytes = &of.handed_in.bytes;
    let is_same = written(&made, &|put| put(bytes)).and_then(|()| is_same(&made, &place));
    if is_same.map_err(|error| IntakeFault::disk(&made, &error))? {
        return Ok(());
    }
    let number = inbox.files_in(EARLIER).len() + 1;
    if place.exists() {
        let earlier = inbox.path(&format!("{EARLIER}/{number}-{file}"));
        changes.copy_new(place, earlier);
    } else if let Some(last) = last_file(inbox) {
        let from = inbox.path(&format!("{HANDED_IN}/{last}"));
        let to = inbox.path(&format!("{EARLIER}/{number}-{last}"));
        changes.moves.push((from, to));
    }
    changes.take(made, path);
    Ok(())
}

/// Keeps the photographs that are handed in with this run.
fn keep_photographs(of: &Proposed, inbox: &Inbox, changes: &mut FileChanges) {
    let photographs = &of.photographs;
    if photographs.folder.is_none() {
        return;
    }
    for (place, name) in photographs.names.iter().enumerate() {
        let from = photographs.path(inbox, place);
        let path = format!("{}/{name}", super::photographs::kept(inbox));
        let is_same = |to: &Path| {
            let (from, to) = (fs::metadata(&from).ok(), fs::metadata(to).ok());
            from.map(|about| about.len()) == to.map(|about| about.len())
        };
        let to = inbox.dir().join(&path);
        if !is_same(&to) || fs::read(&from).ok() != fs::read(&to).ok() {
            changes.copy(from, path);
        }
    }
}
