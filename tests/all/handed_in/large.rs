//! A large table of 20 columns, and a file that would take a gigabyte, within bounded memory.
//!
//! The program runs with a limit on what it may allocate (`ulimit -d`): where it needs more it is stopped, and the test
//! fails. Stacks of threads count. `cargo bench -- intake` prints the time of the optimised program, and the most that it held.

#[path = "../../bench/intake/table.rs"]
mod table;

use std::fs;
use std::path::Path;
use std::process::Command;

use super::CATALOGUE;
use super::archive::{SHEET, gigabyte, workbook};
use crate::program::{program, text};
use crate::small::lay_down;

/// How many rows are taken in.
const ROWS: usize = 50_000;

/// The most that may be allocated, in kB.
const MOST: u32 = 300_000;

/// Runs intake under the limit; gives its exit code and what it said.
fn under_the_limit(file: &Path, catalogue: &Path) -> (Option<i32>, String) {
    let limited = format!("ulimit -d {MOST}; exec \"$0\" \"$@\"");
    let words = [
        "intake",
        text(file),
        "--as",
        "harbour",
        "--in",
        text(catalogue),
    ];
    let mut shell = Command::new("sh");
    shell.args(["-c", &limited]).arg(program()).args(words);
    let output = shell.output().unwrap();
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    (output.status.code(), told)
}

#[test]
fn fifty_thousand_rows_take_less_than_300_megabytes() {
    let catalogue = lay_down(&[CATALOGUE]);
    let file = catalogue.path().join("list.csv");
    fs::write(&file, table::table(ROWS)).unwrap();
    let (code, told) = under_the_limit(&file, catalogue.path());
    assert_eq!(code, Some(0), "{told}");
    let proposed =
        fs::read_to_string(super::inbox(catalogue.path(), "harbour", "report.csv")).unwrap();
    assert!(proposed.lines().count() > ROWS);
}

#[test]
fn a_workbook_that_unpacks_to_a_gigabyte_is_refused_within_the_same_memory() {
    let catalogue = lay_down(&[CATALOGUE]);
    let file = catalogue.path().join("bomb.xlsx");
    let bomb = workbook(gigabyte(SHEET));
    assert!(bomb.len() < 8 << 20, "{}", bomb.len());
    fs::write(&file, bomb).unwrap();
    let (code, told) = under_the_limit(&file, catalogue.path());
    assert_eq!(code, Some(1), "{told}");
    assert!(told.contains("bomb.xlsx:"), "{told}");
    assert!(!catalogue.path().join("records/inbox").exists());
}
