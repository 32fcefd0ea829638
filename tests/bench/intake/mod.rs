//! Taking in a table of 50,000 rows and 20 columns, against reading the table in the same run; and what the program
//! takes in memory.
//!
//! The whole intake is what the command does: reading the catalogue, columns, values, rows, designs, the census, the
//! report and the files of the inbox. `KEYBLOCK_ROWS` sets another number of rows.

use std::fs;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use keyblock::exchange::intake::open;

use super::{catalogue, median, tell};

/// The table.
mod table;

const ROWS: usize = 50_000;

pub fn measure() {
    let rows = std::env::var("KEYBLOCK_ROWS").ok();
    let rows = rows.and_then(|rows| rows.parse().ok()).unwrap_or(ROWS);
    let folder = tempfile::tempdir().unwrap();
    let records = folder.path().join("catalogue");
    catalogue::lay_down(&records, 100);
    let file = folder.path().join("list.csv");
    fs::write(&file, table::table(rows)).unwrap();

    let bytes = fs::read(&file).unwrap();
    let reading = median(5, || open::tables(&bytes).unwrap());
    let mut peak = 0;
    let whole = median(3, || {
        let _ = fs::remove_dir_all(records.join("records/inbox"));
        let mut intake = Command::new(env!("CARGO_BIN_EXE_keyblock"));
        intake
            .arg("intake")
            .arg(&file)
            .args(["--as", "museum-1", "--in"]);
        intake
            .arg(&records)
            .stdout(Stdio::null())
            .stderr(Stdio::null());
        let begun = Instant::now();
        let mut running = intake.spawn().unwrap();
        loop {
            peak = peak.max(resident_peak(running.id()));
            if let Some(status) = running.try_wait().unwrap() {
                assert!(status.success());
                break;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        begun.elapsed()
    });
    tell(
        &format!("intake of {rows} rows"),
        whole,
        "reading the table",
        reading,
    );
    if peak > 0 {
        println!("intake of {rows} rows took {} MB at most", peak / 1000);
    }
}

/// The most memory of a process so far, in kB; 0 where the platform does not tell.
fn resident_peak(process: u32) -> u64 {
    let status = fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let words = line.and_then(|line| line.split_whitespace().next());
    words.and_then(|kb| kb.parse().ok()).unwrap_or(0)
}
