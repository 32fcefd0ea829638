//! Accepts a batch: writes the records that were proposed, and moves the batch out of the way, all or nothing.
//!
//! Everything is computed anew from the file that the inbox keeps, what editors corrected and the catalogue. The result is
//! read and audited before anything is written: where it would have an error that the catalogue does not have now, nothing is.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use super::fault::IntakeFault;
use super::handed_in::HandedIn;
use super::inbox::{HANDED_IN, Inbox, PROPOSED, last_file};
use super::lock::accept_lock;
use super::photographs::PHOTOGRAPHS;
use super::proposed::Proposed;
use crate::audit;
use crate::exchange::intake::acceptance::{Acceptance, Accepting, LeftRow, RowChoice, accepted};
use crate::exchange::intake::corrections::changes_something;
use crate::exchange::intake::proposal::RowStanding;
use crate::exchange::intake::toml_text::text_value;
use crate::issue::together::{self, FileChanges};
use crate::model::catalogue::Catalogue;
use crate::model::finding::{Finding, Severity};
use crate::model::key::{ImpressionKey, Key};
use crate::read::{self, Inputs};
use crate::study::Studies;

/// The folder of the batches that were accepted.
const ACCEPTED: &str = "accepted";

/// A batch that was accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AcceptedBatch {
    /// What was written, and which rows stay.
    pub acceptance: Acceptance,
    /// The folder of the batch, by its path in the catalogue; `None` where there was nothing to accept.
    pub folder: Option<String>,
    /// Whether rows stay in the inbox.
    pub is_partial: bool,
}

/// Accepts rows of the file that was handed in last under a name: those with the numbers `rows`, or all that are ready.
///
/// # Errors
/// [`IntakeFault`] where nothing waits under the name, where a row that was named cannot be accepted, where the catalogue
/// would have a new error, and where the disk refuses. Then nothing has changed.
pub fn accept(
    dir: &Path,
    name: &Key,
    rows: Option<&BTreeSet<u32>>,
    progress: &dyn Fn(usize, usize),
) -> Result<AcceptedBatch, IntakeFault> {
    let choice = match rows {
        Some(rows) => RowChoice::Rows(rows.clone()),
        None => RowChoice::All,
    };
    let _one_at_a_time = accept_lock(dir)?;
    let inbox = Inbox::of(dir, name)?;
    let Some(file) = last_file(&inbox) else {
        let message = format!("nothing waits in {}", inbox.path("").trim_end_matches('/'));
        let help = format!("take a file in first: keyblock intake FILE --as {name}");
        return Err(IntakeFault::usage(message, help));
    };
    let kept = inbox.dir().join(inbox.path(&format!("{HANDED_IN}/{file}")));
    let handed_in = HandedIn::read(dir, &kept, Some(name.as_str()))?;
    let inputs = Inputs::of(dir);
    let proposed = Proposed::in_inbox(inbox, &inputs, handed_in, None, progress)?;
    let acceptance = acceptance(&proposed, &choice)?;
    if acceptance.rows.is_empty() {
        return Ok(AcceptedBatch {
            is_partial: !acceptance.left.is_empty(),
            acceptance,
            folder: None,
        });
    }
    check(dir, &inputs, &proposed, &acceptance)?;
    let is_partial = is_partial(&proposed, &acceptance);
    let inbox = &proposed.inbox;
    let number = batches(inbox) + 1;
    let folder = inbox.path(&format!("{ACCEPTED}/{number}"));
    let changes = changes(&proposed, &acceptance, &folder, is_partial);
    together::carry_out(dir, &inbox.staging(), &changes)
        .map_err(|error| IntakeFault::disk(&dir.join(&folder), &error))?;
    Ok(AcceptedBatch {
        acceptance,
        folder: Some(folder),
        is_partial,
    })
}

fn acceptance(proposed: &Proposed, choice: &RowChoice) -> Result<Acceptance, IntakeFault> {
    let maker = proposed.record_maker();
    let cells = proposed.cells();
    let recorded = RecordedPictures::of(proposed);
    let accepting = Accepting {
        proposal: &proposed.proposal,
        catalogue: &proposed.catalogue,
        handing: &proposed.columns.handing,
        maker: &maker,
        cells: &|row| cells.row(row),
        techniques: &proposed.techniques,
        free_keys: &proposed.free_keys,
        photographs: &proposed.photographs.found,
        names: &proposed.photographs.names,
        has_photograph: &|key, file| recorded.has(key, file),
        has_file: &|path| proposed.inbox.dir().join(path).exists(),
    };
    accepted(choice, &accepting).map_err(|refused| refused_rows(&refused))
}

fn refused_rows(refused: &[LeftRow]) -> IntakeFault {
    let mut message = String::from("not every row that was named can be accepted");
    for left in refused {
        let _ = write!(message, "\n  row {}: {}", left.row, left.why);
    }
    IntakeFault::not_done(message, "nothing was written")
}

/// Whether rows that propose something stay.
fn is_partial(proposed: &Proposed, acceptance: &Acceptance) -> bool {
    let done: BTreeSet<u32> = acceptance.rows.iter().map(|row| row.row).collect();
    let mut rows = proposed.proposal.rows.iter();
    rows.any(|row| {
        let proposes = match &row.standing {
            RowStanding::New => true,
            RowStanding::Corrected(_, corrections) => changes_something(corrections),
            RowStanding::Unchanged(_) | RowStanding::Nothing | RowStanding::LeftOut => false,
        };
        proposes && !done.contains(&row.row)
    })
}

/// Reads and audits the catalogue as it would be.
///
/// # Errors
/// [`IntakeFault`] with the errors that it does not have now.
fn check(
    dir: &Path,
    inputs: &Inputs,
    proposed: &Proposed,
    acceptance: &Acceptance,
) -> Result<(), IntakeFault> {
    let mut added: BTreeMap<String, Vec<u8>> = acceptance
        .records
        .iter()
        .map(|(path, record)| (path.clone(), record.text.clone().into_bytes()))
        .collect();
    for (_, path) in &acceptance.pictures {
        added.insert(path.clone(), Vec::new());
    }
    let told = |findings: &[Finding], catalogue: &Catalogue| {
        let errors = findings
            .iter()
            .filter(|finding| finding.severity() == Severity::Error);
        let told = errors.map(|finding| {
            let path = catalogue.sources.path(finding.at.place.file);
            let line = catalogue.sources.position(finding.at.place).line;
            (path.to_owned(), line, finding.message.clone())
        });
        told.collect::<Vec<_>>()
    };
    let audited = |catalogue: &Catalogue| {
        let studies = Studies::of(catalogue);
        audit::audit(catalogue, &studies)
    };
    let before: BTreeSet<(String, String)> = {
        let mut findings = proposed.findings.clone();
        findings.extend(audited(&proposed.catalogue));
        let all = told(&findings, &proposed.catalogue);
        all.into_iter()
            .map(|(path, _, message)| (path, message))
            .collect()
    };
    let reading = read::read_inputs(dir, &inputs.with(&added));
    let mut findings = reading.findings;
    findings.extend(audited(&reading.catalogue));
    let new: Vec<String> = told(&findings, &reading.catalogue)
        .into_iter()
        .filter(|(path, _, message)| !before.contains(&(path.clone(), message.clone())))
        .map(|(path, line, message)| format!("{path}, line {line}: {message}"))
        .collect();
    if new.is_empty() {
        return Ok(());
    }
    let shown = new.len().min(20);
    let mut message = String::from("the records would have errors");
    for error in &new[..shown] {
        let _ = write!(message, "\n  {error}");
    }
    if new.len() > shown {
        let _ = write!(message, "\n  and {} more", new.len() - shown);
    }
    let help = "correct the values in the inbox, or leave the rows out; nothing was written";
    Err(IntakeFault::not_done(message, help))
}

/// How many batches of a house were accepted.
fn batches(inbox: &Inbox) -> u32 {
    let folder = inbox.dir().join(inbox.path(ACCEPTED));
    let listed = fs::read_dir(folder).into_iter().flatten().flatten();
    let numbers = listed.filter_map(|entry| entry.file_name().to_str()?.parse().ok());
    numbers.max().unwrap_or(0)
}

/// The records, the photographs, and the batch in its folder. Where rows stay, the file stays for them and the batch has a
/// copy of it.
fn changes(
    proposed: &Proposed,
    acceptance: &Acceptance,
    folder: &str,
    is_partial: bool,
) -> FileChanges {
    let inbox = &proposed.inbox;
    let file = &proposed.handed_in.file;
    let mut changes = FileChanges::default();
    for (path, record) in &acceptance.records {
        if record.is_new {
            changes.write_new(path, record.text.as_bytes());
        } else {
            changes.write(path, record.text.as_bytes());
        }
    }
    for (photograph, path) in &acceptance.pictures {
        changes.copy_new(proposed.photographs.path(inbox, *photograph), path);
    }
    changes.write_new(format!("{folder}/accepted.toml"), journal(file, acceptance));
    let kept = [PROPOSED, "report.html", "report.csv"];
    let there = kept
        .into_iter()
        .filter(|name| inbox.dir().join(inbox.path(name)).is_file());
    if is_partial {
        let handed_in = inbox.path(&format!("{HANDED_IN}/{file}"));
        changes.copy_new(inbox.dir().join(handed_in), format!("{folder}/{file}"));
        for name in there {
            changes.copy_new(
                inbox.dir().join(inbox.path(name)),
                format!("{folder}/{name}"),
            );
        }
    } else {
        for name in there {
            changes
                .moves
                .push((inbox.path(name), format!("{folder}/{name}")));
        }
        let moved = [file.clone(), PHOTOGRAPHS.to_owned()];
        for name in moved {
            let from = inbox.path(&format!("{HANDED_IN}/{name}"));
            if inbox.dir().join(&from).exists() {
                changes.moves.push((from, format!("{folder}/{name}")));
            }
        }
    }
    changes
}

/// What was accepted, row by row.
fn journal(file: &str, acceptance: &Acceptance) -> String {
    let mut text = format!(
        "# What was accepted of this file. The numbers of impressions are permanent.\n\nfile = {}\n",
        text_value(file)
    );
    if !acceptance.designs.is_empty() {
        let designs: Vec<String> = acceptance
            .designs
            .iter()
            .map(|key| text_value(key.as_str()))
            .collect();
        let _ = writeln!(text, "designs = [{}]", designs.join(", "));
    }
    for row in &acceptance.rows {
        let _ = write!(
            text,
            "\n[[rows]]\nrow = {}\nimpression = \"{}\"\n",
            row.row, row.impression
        );
        let _ = writeln!(text, "new = {}", row.is_new);
        if row.corrected > 0 {
            let _ = writeln!(text, "corrected = {}", row.corrected);
        }
        if row.photographs > 0 {
            let _ = writeln!(text, "photographs = {}", row.photographs);
        }
    }
    text
}

/// The photographs that records of the rows have, by content.
struct RecordedPictures {
    of_record: BTreeMap<ImpressionKey, BTreeSet<[u8; 32]>>,
    of_file: BTreeMap<usize, [u8; 32]>,
}

impl RecordedPictures {
    fn of(proposed: &Proposed) -> RecordedPictures {
        let mut pictures = RecordedPictures {
            of_record: BTreeMap::new(),
            of_file: BTreeMap::new(),
        };
        for found in &proposed.photographs.found.matches {
            let Some(key) = proposed
                .proposal
                .rows
                .get(found.row)
                .and_then(|row| row.recorded())
            else {
                continue;
            };
            let path = proposed.photographs.path(&proposed.inbox, found.file);
            if let Some(hash) = hash_of(&path) {
                pictures.of_file.insert(found.file, hash);
            }
            let Some(recorded) = proposed.catalogue.impression(key) else {
                continue;
            };
            pictures.of_record.entry(key.clone()).or_insert_with(|| {
                let paths = recorded
                    .pictures
                    .iter()
                    .map(|picture| proposed.inbox.dir().join(&picture.path));
                paths.filter_map(|path| hash_of(&path)).collect()
            });
        }
        pictures
    }

    fn has(&self, key: &ImpressionKey, file: usize) -> bool {
        let recorded = self.of_record.get(key);
        recorded.is_some_and(|hashes| {
            self.of_file
                .get(&file)
                .is_some_and(|hash| hashes.contains(hash))
        })
    }
}

/// The hash of what a file holds; `None` where it cannot be read.
fn hash_of(path: &PathBuf) -> Option<[u8; 32]> {
    let mut hasher = blake3::Hasher::new();
    let file = fs::File::open(path).ok()?;
    hasher.update_reader(file).ok()?;
    Some(*hasher.finalize().as_bytes())
}
