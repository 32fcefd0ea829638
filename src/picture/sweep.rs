//! Sweeping a cache: removes entries that were not used for some time.
//!
//! An entry is the files whose names begin with one hash. The date of its last use is that of the latest of them:
//! every use of an entry dates its manifest anew. Other files in the folder are left alone.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

/// How many hexadecimal digits of a hash the names of entries begin with.
const DIGITS: usize = 24;

/// How old a file must be that a killed run has left unfinished: no run takes as long for one file.
const UNFINISHED_FOR: Duration = Duration::from_secs(24 * 60 * 60);

/// What a sweep has removed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Swept {
    /// How many files.
    pub files: usize,
    /// Their length in bytes.
    pub bytes: u64,
}

impl Swept {
    /// The sum of two.
    #[must_use]
    pub fn and(self, other: Swept) -> Swept {
        Swept {
            files: self.files + other.files,
            bytes: self.bytes + other.bytes,
        }
    }
}

/// The entry that a file belongs to, by its name: the hash that it begins with.
pub(crate) fn entry_of(name: &str) -> Option<&str> {
    let (entry, rest) = name.split_at_checked(DIGITS)?;
    let is_hash = entry
        .bytes()
        .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
    (is_hash && rest.starts_with(['.', '-'])).then_some(entry)
}

/// The files of one entry.
struct Entry {
    last_use: SystemTime,
    files: Vec<(PathBuf, u64)>,
}

/// Removes from `dir` the entries that are not in `used` and were last used `unused_for` ago or earlier. What cannot
/// be removed stays.
pub(crate) fn sweep(dir: &Path, used: &BTreeSet<String>, unused_for: Duration) -> Swept {
    let now = SystemTime::now();
    let is_older =
        |time: SystemTime, age: Duration| now.duration_since(time).is_ok_and(|since| since >= age);
    let mut entries: BTreeMap<String, Entry> = BTreeMap::new();
    let mut to_remove: Vec<(PathBuf, u64)> = Vec::new();
    for found in fs::read_dir(dir).into_iter().flatten().flatten() {
        let name = found.file_name();
        let Some(name) = name.to_str() else { continue };
        let (Some(entry), Ok(about)) = (entry_of(name), found.metadata()) else {
            continue;
        };
        let (true, Ok(changed)) = (about.is_file(), about.modified()) else {
            continue;
        };
        let file = (found.path(), about.len());
        if name.ends_with(".partial") {
            if is_older(changed, UNFINISHED_FOR) {
                to_remove.push(file);
            }
            continue;
        }
        let entry = entries.entry(entry.to_owned()).or_insert(Entry {
            last_use: changed,
            files: Vec::new(),
        });
        entry.last_use = entry.last_use.max(changed);
        entry.files.push(file);
    }
    for (name, entry) in entries {
        if !used.contains(&name) && is_older(entry.last_use, unused_for) {
            to_remove.extend(entry.files);
        }
    }
    let mut swept = Swept::default();
    for (file, bytes) in to_remove {
        if fs::remove_file(file).is_ok() {
            swept.files += 1;
            swept.bytes += bytes;
        }
    }
    swept
}

#[cfg(test)]
mod tests {
    use super::*;

    const DAY: u64 = 24 * 60 * 60;

    fn put(dir: &Path, name: &str, days: u64) {
        let file = dir.join(name);
        fs::write(&file, "12345").unwrap();
        let time = SystemTime::now() - Duration::from_secs(days * DAY);
        let file = fs::File::options().append(true).open(file).unwrap();
        file.set_modified(time).unwrap();
    }

    fn left(dir: &Path) -> Vec<String> {
        let names = fs::read_dir(dir).unwrap().map(|e| e.unwrap().file_name());
        let mut names: Vec<String> = names.map(|n| n.into_string().unwrap()).collect();
        names.sort();
        names
    }

    #[test]
    fn entries_unused_for_the_time_are_removed_whole_and_nothing_else() {
        let dir = tempfile::tempdir().unwrap();
        let [old, dated, used, short] = ["a", "b", "c", "d"].map(|digit| digit.repeat(DIGITS));
        for (name, days) in [
            (format!("{old}.json"), 31),
            (format!("{old}-480.jpg"), 40),
            (format!("{old}.tiles"), 40),
            // Made long ago, used of late.
            (format!("{dated}.json"), 29),
            (format!("{dated}-480.jpg"), 90),
            (format!("{used}.parts.json"), 90),
            (format!("{used}-moon.jpg"), 90),
            // What a killed run left of an entry in use, and what another run is writing.
            (format!("{used}.1-2.partial"), 2),
            (format!("{used}.1-3.partial"), 0),
            (format!("{short}0.json"), 90),
            ("readme.txt".to_owned(), 90),
            (format!("{}.json", "A".repeat(DIGITS)), 90),
        ] {
            put(dir.path(), &name, days);
        }
        let in_use = BTreeSet::from([used.clone()]);
        let swept = sweep(dir.path(), &in_use, Duration::from_secs(30 * DAY));
        assert_eq!(
            swept,
            Swept {
                files: 4,
                bytes: 20
            }
        );
        let kept = [
            format!("{}.json", "A".repeat(DIGITS)),
            format!("{dated}-480.jpg"),
            format!("{dated}.json"),
            format!("{used}-moon.jpg"),
            format!("{used}.1-3.partial"),
            format!("{used}.parts.json"),
            format!("{short}0.json"),
            "readme.txt".to_owned(),
        ];
        assert_eq!(left(dir.path()), kept);
        // At once: everything but what is in use.
        let swept = sweep(dir.path(), &in_use, Duration::ZERO);
        assert_eq!(
            swept,
            Swept {
                files: 2,
                bytes: 10
            }
        );
        let gone = sweep(&dir.path().join("nowhere"), &in_use, Duration::ZERO);
        assert_eq!(gone, Swept::default());
    }
}
