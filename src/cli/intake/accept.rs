//! `keyblock intake --accept`: writes the records of a batch and tells what was written.

use std::collections::BTreeSet;
use std::io::{self, Write};
use std::path::Path;

use serde::Serialize;

use super::refusal::refused;
use crate::cli::outcome::Outcome;
use crate::cli::plural::counted;
use crate::cli::progress::Progress;
use crate::cli::streams::say;
use crate::model::key::Key;
use crate::press::intake::{AcceptedBatch, accept};

/// Accepts a batch. `what`: the name of the house, and the rows where some are named.
pub(super) fn run(
    dir: &Path,
    what: &[String],
    is_json: bool,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let name = what.first().map_or("", String::as_str);
    let Ok(name) = name.parse::<Key>() else {
        say(format_args!("keyblock: `{name}` is no name for the inbox"));
        say("  name the folder of the house in records/inbox");
        return Ok(Outcome::Usage);
    };
    let rows = what.get(1).map(|rows| rows_of(rows).ok_or(rows));
    let rows = match rows.transpose() {
        Ok(rows) => rows,
        Err(rows) => {
            say(format_args!("keyblock: `{rows}` names no rows"));
            say("  write their numbers in the file, such as 2-14,17");
            return Ok(Outcome::Usage);
        }
    };
    let progress = Progress::of("accept");
    let tell = |done, of| progress.tell(done, of);
    let batch = match accept(dir, &name, rows.as_ref(), &tell) {
        Ok(batch) => batch,
        Err(fault) => {
            drop(progress);
            return Ok(refused(&fault));
        }
    };
    drop(progress);
    if is_json {
        serde_json::to_writer_pretty(&mut *out, &AcceptDocument::of(&name, &batch))?;
        writeln!(out)?;
    } else {
        tell_people(&name, &batch, out)?;
    }
    Ok(Outcome::Done)
}

/// The most rows that one command names: as many as a table has.
const MOST_ROWS: u32 = 1_048_576;

/// `2-14,17`: the numbers of rows. `None` where it is written otherwise.
fn rows_of(text: &str) -> Option<BTreeSet<u32>> {
    let mut rows = BTreeSet::new();
    for part in text.split(',') {
        let (first, last) = part.split_once('-').unwrap_or((part, part));
        let number = |text: &str| {
            text.trim()
                .parse::<u32>()
                .ok()
                .filter(|row| (1..=MOST_ROWS).contains(row))
        };
        let (first, last) = (number(first)?, number(last)?);
        if first > last {
            return None;
        }
        rows.extend(first..=last);
    }
    Some(rows)
}

/// How many rows that stay are told one by one.
const MOST_TOLD: usize = 20;

fn tell_people(name: &Key, batch: &AcceptedBatch, out: &mut impl Write) -> io::Result<()> {
    let AcceptedBatch {
        acceptance,
        folder,
        is_partial,
    } = batch;
    for row in &acceptance.rows {
        let mut what = if row.is_new {
            vec!["new".to_owned()]
        } else {
            Vec::new()
        };
        if row.corrected > 0 {
            what.push(counted(row.corrected, "correction", "corrections"));
        }
        if row.photographs > 0 {
            what.push(counted(row.photographs, "photograph", "photographs"));
        }
        writeln!(
            out,
            "row {}: {} ({})",
            row.row,
            row.impression,
            what.join(", ")
        )?;
    }
    for design in &acceptance.designs {
        writeln!(out, "new design: {design}")?;
    }
    let Some(folder) = folder else {
        if acceptance.left.is_empty() {
            writeln!(out, "There is nothing to accept: everything is recorded.")?;
        } else {
            writeln!(out, "Nothing was accepted.")?;
        }
        return tell_left(batch, out);
    };
    let new = acceptance.rows.iter().filter(|row| row.is_new).count();
    let corrected = acceptance.rows.len() - new;
    writeln!(
        out,
        "\n{} and {}; the batch is in {folder}.",
        counted(new, "new record", "new records"),
        counted(corrected, "record corrected", "records corrected"),
    )?;
    tell_left(batch, out)?;
    if *is_partial {
        writeln!(
            out,
            "The file stays in records/inbox/{name} for the rows that are left."
        )?;
    }
    Ok(())
}

fn tell_left(batch: &AcceptedBatch, out: &mut impl Write) -> io::Result<()> {
    let left = &batch.acceptance.left;
    if left.is_empty() {
        return Ok(());
    }
    writeln!(out, "Left: {}", counted(left.len(), "row", "rows"))?;
    for left in left.iter().take(MOST_TOLD) {
        writeln!(out, "  row {}: {}", left.row, left.why)?;
    }
    if left.len() > MOST_TOLD {
        writeln!(
            out,
            "  and {} more; --json lists all",
            left.len() - MOST_TOLD
        )?;
    }
    Ok(())
}

/// What `intake --accept --json` prints.
#[derive(Debug, Serialize)]
struct AcceptDocument<'b> {
    name: &'b str,
    /// The folder of the batch; null where nothing was accepted.
    folder: Option<&'b str>,
    designs: Vec<String>,
    rows: Vec<RowEntry>,
    left: Vec<LeftEntry<'b>>,
}

#[derive(Debug, Serialize)]
struct RowEntry {
    row: u32,
    impression: String,
    new: bool,
    corrected: usize,
    photographs: usize,
}

#[derive(Debug, Serialize)]
struct LeftEntry<'b> {
    row: u32,
    why: &'b str,
}

impl<'b> AcceptDocument<'b> {
    fn of(name: &'b Key, batch: &'b AcceptedBatch) -> AcceptDocument<'b> {
        let left = batch.acceptance.left.iter();
        AcceptDocument {
            name: name.as_str(),
            folder: batch.folder.as_deref(),
            designs: batch
                .acceptance
                .designs
                .iter()
                .map(Key::to_string)
                .collect(),
            rows: batch
                .acceptance
                .rows
                .iter()
                .map(|row| RowEntry {
                    row: row.row,
                    impression: row.impression.to_string(),
                    new: row.is_new,
                    corrected: row.corrected,
                    photographs: row.photographs,
                })
                .collect(),
            left: left
                .map(|left| LeftEntry {
                    row: left.row,
                    why: &left.why,
                })
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::rows_of;

    #[test]
    fn rows_are_numbers_and_spans() {
        let rows = |text| rows_of(text).map(|rows| rows.into_iter().collect::<Vec<_>>());
        assert_eq!(rows("2-4,17"), Some(vec![2, 3, 4, 17]));
        assert_eq!(rows(" 7 , 3-3"), Some(vec![3, 7]));
        for text in ["", "a", "4-2", "0", "1-", "1,,2", "1-99999999"] {
            assert_eq!(rows(text), None, "{text}");
        }
    }
}
