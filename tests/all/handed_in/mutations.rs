//! Files of museums with bytes changed at random, and what editors correct changed so: always read to the end or refused with
//! a reason, always alike, and what is written can be read again.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use keyblock::press::intake::{HandedIn, IntakeFault, Proposed, write};
use keyblock::read::Inputs;
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::TestCaseError;

use super::CATALOGUE;
use super::archive::{SHEET, packed, workbook};
use crate::fuzz::{any_text, explore};
use crate::small::lay_down;

const LIST: &str = include_str!("../../intake/list.csv");
const LIDO: &[u8] = include_bytes!("../../intake/holmsted.xml");
const FRENCH: &[u8] = include_bytes!("../../intake/saint-aubrac.windows-1252");

/// A change to the bytes of a file.
#[derive(Clone, Debug)]
enum Change {
    Replace(Index, u8, String),
    Repeat(Index, Index, u8),
    Cut(Index, u8),
    End(Index),
    Turn(Index, u8),
    Swap(Index, Index),
}

fn change() -> impl Strategy<Value = Change> {
    let place = any::<Index>;
    prop_oneof![
        4 => (place(), 0..12_u8, any_text(12)).prop_map(|(at, most, by)| Change::Replace(at, most, by)),
        2 => (place(), place(), any::<u8>()).prop_map(|(from, to, length)| Change::Repeat(from, to, length)),
        2 => (place(), any::<u8>()).prop_map(|(at, length)| Change::Cut(at, length)),
        1 => place().prop_map(Change::End),
        3 => (place(), 0..8_u8).prop_map(|(at, bit)| Change::Turn(at, bit)),
        2 => (place(), place()).prop_map(|(a, b)| Change::Swap(a, b)),
    ]
}

impl Change {
    fn apply(&self, bytes: &mut Vec<u8>) {
        if bytes.is_empty() {
            return;
        }
        let length = bytes.len();
        match self {
            Change::Replace(at, most, by) => {
                let at = at.index(length);
                bytes.splice(at..length.min(at + usize::from(*most)), by.bytes());
            }
            Change::Repeat(from, to, part) => {
                let from = from.index(length);
                let part = bytes[from..length.min(from + usize::from(*part))].to_vec();
                let to = to.index(length);
                bytes.splice(to..to, part);
            }
            Change::Cut(at, part) => {
                let at = at.index(length);
                bytes.drain(at..length.min(at + usize::from(*part)));
            }
            Change::End(at) => bytes.truncate(at.index(length)),
            Change::Turn(at, bit) => bytes[at.index(length)] ^= 1 << bit,
            Change::Swap(a, b) => bytes.swap(a.index(length), b.index(length)),
        }
    }
}

fn changed(bytes: &[u8], changes: &[Change]) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    for change in changes {
        change.apply(&mut bytes);
    }
    bytes
}

/// Takes a file in and writes the inbox; gives what would be printed for people and programs.
fn run(dir: &Path, file: &str, bytes: &[u8]) -> Result<(String, String), IntakeFault> {
    let handed_in = HandedIn {
        file: file.to_owned(),
        bytes: bytes.to_vec(),
        name: "harbour".parse().unwrap(),
    };
    let proposed = Proposed::of(dir, &Inputs::of(dir), handed_in, None, &|_, _| {})?;
    let account = proposed.account();
    write(&proposed, &account)?;
    let document = serde_json::to_string(&proposed.document(&account)).unwrap();
    Ok((proposed.text(&account, &str::to_owned), document))
}

/// A file is taken in twice: refused with a reason, or both times the same and the second time from what the first wrote.
fn check(dir: &Path, file: &str, bytes: &[u8]) -> Result<(), TestCaseError> {
    let _ = fs::remove_dir_all(dir.join("records/inbox"));
    match run(dir, file, bytes) {
        Err(fault) => {
            prop_assert!(!fault.message.is_empty());
            prop_assert!(!dir.join("records/inbox/harbour").exists());
        }
        Ok(first) => {
            let again = run(dir, file, bytes);
            prop_assert_eq!(&again, &Ok(first));
            for file in [
                "columns.toml",
                "values.toml",
                "designs.toml",
                "proposed.toml",
            ] {
                let text =
                    fs::read_to_string(dir.join("records/inbox/harbour").join(file)).unwrap();
                prop_assert!(text.parse::<toml::Table>().is_ok(), "{file}:\n{text}");
            }
        }
    }
    Ok(())
}

fn explored(name: &str, short: u32, file: &str, made: impl Fn(&[Change]) -> Vec<u8>) {
    let catalogue = lay_down(&[CATALOGUE]);
    let changes = prop::collection::vec(change(), 1..8);
    explore(name, short, &changes, |changes| {
        check(catalogue.path(), file, &made(changes))
    });
}

#[test]
fn changed_lists() {
    explored("intake, CSV", 60, "list.csv", |changes| {
        changed(LIST.as_bytes(), changes)
    });
    explored("intake, CSV in Windows-1252", 30, "list.csv", |changes| {
        changed(FRENCH, changes)
    });
}

#[test]
fn changed_records_in_lido() {
    explored("intake, LIDO", 30, "list.xml", |changes| {
        changed(LIDO, changes)
    });
}

#[test]
fn changed_workbooks() {
    let mut rows = String::new();
    for (row, line) in LIST.lines().enumerate() {
        let _ = write!(rows, "<row r=\"{}\">", row + 1);
        for cell in line.split(',') {
            let cell = cell.replace('&', "&amp;").replace('<', "&lt;");
            let _ = write!(rows, "<c t=\"inlineStr\"><is><t>{cell}</t></is></c>");
        }
        rows.push_str("</row>");
    }
    let sheet = format!(
        "<worksheet><sheetData>{rows}</sheetData><mergeCells><mergeCell ref=\"B2:B3\"/></mergeCells></worksheet>"
    );
    explored("intake, sheet of a workbook", 40, "list.xlsx", |changes| {
        workbook(packed(SHEET, &changed(sheet.as_bytes(), changes)))
    });
    let whole = workbook(packed(SHEET, sheet.as_bytes()));
    explored("intake, workbook", 40, "list.xlsx", |changes| {
        changed(&whole, changes)
    });
}

/// What an editor corrected is read as far as it can be; where it cannot, nothing is written and the file is named.
#[test]
fn changed_corrections() {
    let catalogue = lay_down(&[CATALOGUE]);
    let dir = catalogue.path();
    run(dir, "list.csv", LIST.as_bytes()).unwrap();
    let files = ["columns.toml", "values.toml", "designs.toml"];
    let folder = dir.join("records/inbox/harbour");
    let sound = files.map(|file| fs::read(folder.join(file)).unwrap());
    let input = (0..files.len(), prop::collection::vec(change(), 1..8));
    explore(
        "intake, what editors correct",
        90,
        &input,
        |(at, changes)| {
            for (file, text) in files.iter().zip(&sound) {
                fs::write(folder.join(file), text).unwrap();
            }
            let text = changed(&sound[*at], changes);
            fs::write(folder.join(files[*at]), &text).unwrap();
            match run(dir, "list.csv", LIST.as_bytes()) {
                Ok(_) => {}
                Err(fault) => {
                    prop_assert!(!fault.message.is_empty());
                    prop_assert_eq!(fs::read(folder.join(files[*at])).unwrap(), text);
                }
            }
            Ok(())
        },
    );
}
