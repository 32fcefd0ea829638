//! Taking in 50,000 rows of 20 columns, against reading the file that holds them, in the same run; and what the program
//! holds in memory at most.
//!
//! The whole intake is what the command does: reading the catalogue, the table, columns, values, rows, designs, the census,
//! the report and the files of the inbox. One floor is reading the rows: the table, its columns, its values, the facts of each
//! row, all by the same readers. The other is the table alone, of which nothing is understood yet: a workbook, in which
//! registrars send their lists, and the same rows as CSV, which is taken apart in a tenth of the time. `KEYBLOCK_ROWS` sets
//! another number of rows.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use keyblock::exchange::intake::columns::{ColumnProposal, columns};
use keyblock::exchange::intake::open;
use keyblock::exchange::intake::proposal::ProposedRow;
use keyblock::exchange::intake::reading::Lexicon;
use keyblock::exchange::intake::rows::{RowReader, rows};
use keyblock::exchange::intake::values::{SettledValues, Values};
use keyblock::read::read;

use super::{catalogue, median, tell};

/// Archives that no library writes.
#[allow(dead_code, reason = "the tests of hostile files use all of it")]
#[path = "../../all/handed_in/archive.rs"]
mod archive;
/// The table.
mod table;
/// The table as a workbook.
mod workbook;

const ROWS: usize = 50_000;

pub fn measure() {
    let rows = std::env::var("KEYBLOCK_ROWS").ok();
    let rows = rows.and_then(|rows| rows.parse().ok()).unwrap_or(ROWS);
    let folder = tempfile::tempdir().unwrap();
    let records = folder.path().join("catalogue");
    catalogue::lay_down(&records, 100);
    let lexicon = Lexicon::of_catalogue(&read(&records).catalogue);
    let csv = table::table(rows);
    let workbook = workbook::workbook(&csv);
    for (name, bytes) in [("list.xlsx", workbook), ("list.csv", csv.into_bytes())] {
        let file = folder.path().join(name);
        fs::write(&file, &bytes).unwrap();
        let table = median(5, || open::tables(&bytes).unwrap());
        let reading = median(5, || read_rows(&bytes, &lexicon));
        let mut peak = 0;
        let whole = median(5, || {
            let _ = fs::remove_dir_all(records.join("records/inbox"));
            let (time, most) = intake(&file, &records);
            peak = peak.max(most);
            time
        });
        let what = format!("intake of {rows} rows in {name}");
        tell(&what, whole, "reading the rows", reading);
        tell(&what, whole, "reading the table alone", table);
        if peak > 0 {
            println!("{what} held {} MB at most", peak / 1000);
        }
    }
}

/// The rows of a file, read into facts.
fn read_rows(bytes: &[u8], lexicon: &Lexicon) -> Vec<ProposedRow> {
    let table = open::tables(bytes).unwrap().remove(0);
    let ColumnProposal { columns, doubts } = columns(&table, lexicon);
    let values = Values::of(&table, &columns, lexicon, &SettledValues::default());
    rows(&table, &RowReader::of(&columns, &doubts, &values, lexicon))
}

/// Takes a file in. Gives the time, and the most memory of the program in kB.
fn intake(file: &Path, records: &Path) -> (Duration, u64) {
    let mut intake = Command::new(env!("CARGO_BIN_EXE_keyblock"));
    intake.arg("intake").arg(file);
    intake.args(["--as", "museum-1", "--in"]).arg(records);
    intake.stdout(Stdio::null()).stderr(Stdio::null());
    let begun = Instant::now();
    let mut running = intake.spawn().unwrap();
    let mut most = 0;
    loop {
        most = most.max(resident_peak(running.id()));
        if let Some(status) = running.try_wait().unwrap() {
            assert!(status.success());
            return (begun.elapsed(), most);
        }
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// The most memory of a process so far, in kB; 0 where the platform does not tell.
fn resident_peak(process: u32) -> u64 {
    let status = fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let words = line.and_then(|line| line.split_whitespace().next());
    words.and_then(|kb| kb.parse().ok()).unwrap_or(0)
}
