//! Files written together: whatever stops the writing, afterwards all of them are there or none, and nothing else changed.

use super::super::together::{FileChanges, Resumed, carry_out_on, resume};
use super::stopped::StoppingDisk;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// A file that was made for the command alone: nothing is lost with it.
const MADE: &str = ".keyblock/made";

fn catalogue(dir: &Path) {
    fs::create_dir_all(dir.join("records/designs/1")).unwrap();
    fs::write(dir.join("records/designs/1/design.toml"), "as it was").unwrap();
    fs::write(dir.join("picture.jpg"), "a photograph").unwrap();
    fs::create_dir(dir.join("waiting")).unwrap();
    fs::write(dir.join("waiting/list.csv"), "a,b").unwrap();
    fs::create_dir(dir.join(".keyblock")).unwrap();
    fs::write(dir.join(MADE), "a report").unwrap();
}

fn changes(dir: &Path) -> FileChanges {
    let mut changes = FileChanges::default();
    changes.write("records/designs/1/design.toml", "as it is");
    changes.write_new("records/designs/2/design.toml", "new");
    changes.copy_new(dir.join("picture.jpg"), "records/designs/2/pictures/1.jpg");
    changes.take(dir.join(MADE), "report.csv");
    changes
        .moves
        .push(("waiting".to_owned(), "done/1".to_owned()));
    changes
}

/// Every file by path, with its text, but for the one that was made for the command.
fn files(dir: &Path) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    let mut folders = vec![dir.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(dir).unwrap().display().to_string();
                found.insert(name, fs::read_to_string(&path).unwrap());
            }
        }
    }
    found.remove(MADE);
    found
}

const STAGING: &str = ".keyblock/staged";

#[test]
fn a_killed_command_leaves_all_of_its_files_or_none() {
    let (before, after) = {
        let dir = tempfile::tempdir().unwrap();
        catalogue(dir.path());
        let before = files(dir.path());
        let disk = StoppingDisk::after(usize::MAX, true);
        carry_out_on(&*disk, dir.path(), STAGING, &changes(dir.path())).unwrap();
        (before, files(dir.path()))
    };
    assert_eq!(after["records/designs/1/design.toml"], "as it is");
    assert_eq!(after["records/designs/2/pictures/1.jpg"], "a photograph");
    assert_eq!(after["done/1/list.csv"], "a,b");
    assert_eq!(after["report.csv"], "a report");
    assert_eq!(after.len(), 6, "{after:?}");
    let (mut dropped, mut completed) = (0, 0);
    for steps in 0.. {
        let dir = tempfile::tempdir().unwrap();
        catalogue(dir.path());
        let disk = StoppingDisk::after(steps, true);
        let done = carry_out_on(&*disk, dir.path(), STAGING, &changes(dir.path()));
        if !disk.has_stopped() {
            assert!(done.is_ok());
            break;
        }
        assert!(done.is_err());
        let resumed = resume(dir.path(), STAGING).unwrap();
        match resumed {
            Resumed::Completed => {
                completed += 1;
                assert_eq!(files(dir.path()), after, "stopped at step {steps}");
            }
            Resumed::Dropped | Resumed::Nothing => {
                dropped += 1;
                let found = files(dir.path());
                assert!(
                    found == before || found == after,
                    "stopped at step {steps}: {found:?}"
                );
            }
        }
    }
    assert!(dropped > 3 && completed > 3, "{dropped}, {completed}");
}

#[test]
fn what_the_disk_refuses_is_undone() {
    let dir = tempfile::tempdir().unwrap();
    catalogue(dir.path());
    let before = files(dir.path());
    // Refused while the files are put in their places: a file stands where a folder is needed.
    let mut impossible = changes(dir.path());
    impossible.write("zz/file/below", "text");
    fs::write(dir.path().join("zz"), "a file").unwrap();
    let disk = StoppingDisk::after(usize::MAX, true);
    assert!(carry_out_on(&*disk, dir.path(), STAGING, &impossible).is_err());
    fs::remove_file(dir.path().join("zz")).unwrap();
    assert_eq!(files(dir.path()), before);
    assert_eq!(resume(dir.path(), STAGING).unwrap(), Resumed::Nothing);
}

#[test]
fn a_new_file_replaces_none() {
    let dir = tempfile::tempdir().unwrap();
    catalogue(dir.path());
    fs::create_dir_all(dir.path().join("records/designs/2")).unwrap();
    fs::write(dir.path().join("records/designs/2/design.toml"), "another").unwrap();
    let before = files(dir.path());
    let disk = StoppingDisk::after(usize::MAX, true);
    let refused = carry_out_on(&*disk, dir.path(), STAGING, &changes(dir.path())).unwrap_err();
    assert_eq!(refused.kind(), std::io::ErrorKind::AlreadyExists);
    assert_eq!(files(dir.path()), before);
}
