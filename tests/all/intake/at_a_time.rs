//! Two runs of one house at a time, and what a killed run leaves.

use std::fs::{self, File};
use std::path::Path;

use super::{catalogue, hand_in, intake, museum};
use crate::program::{bytes_below, text};

/// Holds the lock that another run would hold.
fn held(folder: &Path, name: &str) -> File {
    fs::create_dir_all(folder.join(".keyblock")).unwrap();
    let file = File::create(folder.join(".keyblock").join(name)).unwrap();
    file.lock().unwrap();
    file
}

#[test]
fn a_second_run_of_a_house_is_refused_while_the_first_is_at_work() {
    let folder = catalogue();
    let folder = folder.path();
    museum(folder, &[]);
    let before = bytes_below(&folder.join("records"));
    let lock = held(folder, "intake-museum.lock");
    for ran in [
        museum(folder, &[]),
        intake(folder, &["--accept", "museum", "3"]),
    ] {
        assert_eq!(ran.code, Some(1), "{}{}", ran.out, ran.err);
        assert!(
            ran.err.contains(
                "another run of intake is at work on “museum”\n  wait until it has ended"
            ),
            "{}",
            ran.err
        );
    }
    assert!(before == bytes_below(&folder.join("records")));
    // Another house is not kept out.
    let file = hand_in(folder, "list.csv", "Accession number,Title\nG 1,The Lock\n");
    let ran = intake(folder, &[text(&file), "--as", "gallery"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    drop(lock);
    let ran = museum(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
}

/// Batches of two houses may have impressions of one design, which would get one number.
#[test]
fn one_batch_is_accepted_at_a_time() {
    let folder = catalogue();
    let folder = folder.path();
    museum(folder, &[]);
    let lock = held(folder, "accept.lock");
    let ran = intake(folder, &["--accept", "museum", "3"]);
    assert_eq!(ran.code, Some(1), "{}{}", ran.out, ran.err);
    assert!(
        ran.err.contains("another batch is being accepted"),
        "{}",
        ran.err
    );
    // Taking a file in gives no numbers.
    assert_eq!(museum(folder, &[]).code, Some(0));
    drop(lock);
    let ran = intake(folder, &["--accept", "museum", "3"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
}

/// The system releases the lock of a killed program; the file stays.
#[test]
fn the_lock_that_a_killed_run_left_keeps_nobody_out() {
    let folder = catalogue();
    let folder = folder.path();
    drop(held(folder, "intake-museum.lock"));
    drop(held(folder, "accept.lock"));
    let ran = museum(folder, &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let ran = intake(folder, &["--accept", "museum", "3"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    let left = fs::read_dir(folder.join(".keyblock")).unwrap();
    let left = left.map(|entry| entry.unwrap().file_name());
    let locks = left.filter(|name| name.to_string_lossy().ends_with(".lock"));
    assert_eq!(locks.count(), 0);
}
