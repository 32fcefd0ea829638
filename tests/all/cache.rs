//! The cache: where it cannot be written a compile takes longer and nothing else; what no compile uses is swept.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use crate::program::{bytes_below, compile, edit, files_below, keyblock, text};
use crate::small;

/// Two sheets whose photographs are aligned, and a point that is cut out of both.
const ALIGNED: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Harbour" }]
reference_picture = "1.1/recto"
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", box = [10, 10, 60, 60] }]
-- records/designs/1/impressions/1.toml
status = "untraced"
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0" }]
-- records/designs/1/impressions/2.toml
status = "untraced"
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0" }]
"#;

fn catalogue() -> tempfile::TempDir {
    let folder = small::lay_down(&[ALIGNED]);
    photograph(folder.path(), 1, 0);
    photograph(folder.path(), 2, 1);
    folder
}

/// A photograph of the example as that of a sheet; its bytes depend on `version`, its picture does not.
fn photograph(dir: &Path, sheet: u8, version: u8) {
    let example = "tests/example-catalogue/records/designs/14/pictures/1-recto.jpg";
    let mut bytes = fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join(example)).unwrap();
    bytes.push(version);
    let file = dir.join(format!("records/designs/1/pictures/{sheet}.jpg"));
    fs::create_dir_all(file.parent().unwrap()).unwrap();
    fs::write(file, bytes).unwrap();
}

fn names(dir: &Path) -> Vec<String> {
    let names = fs::read_dir(dir).unwrap().map(|e| e.unwrap().file_name());
    let mut names: Vec<String> = names.map(|n| n.into_string().unwrap()).collect();
    names.sort();
    names
}

/// What keeps a cache from being written.
#[derive(Clone, Copy, Debug)]
enum Block {
    /// A file in the place of the folder.
    File,
    /// A link to a folder in which the system lets nobody make a file.
    System,
}

impl Block {
    fn put_at(self, path: &Path) {
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        match self {
            Block::File => fs::write(path, "in the way").unwrap(),
            #[cfg(unix)]
            Block::System => std::os::unix::fs::symlink("/sys", path).unwrap(),
            #[cfg(not(unix))]
            Block::System => unreachable!("only Linux has it"),
        }
    }
}

#[test]
fn a_cache_that_cannot_be_written_fails_no_compile() {
    let sound = catalogue();
    compile(sound.path());
    let site = bytes_below(&sound.path().join("web"));
    let details = site
        .keys()
        .filter(|path| path.to_string_lossy().ends_with("-moon.jpg"));
    assert_eq!(details.count(), 2, "nothing was aligned");

    // Root may write where rights forbid it, so these places refuse everybody: a file has nothing below it, and the
    // system's own folder takes no new file.
    let mut cases = vec![
        (".keyblock", Block::File),
        (".keyblock/pictures", Block::File),
        (".keyblock/alignments", Block::File),
        (".keyblock/details", Block::File),
    ];
    if cfg!(target_os = "linux") {
        cases.extend([
            (".keyblock", Block::System),
            (".keyblock/pictures", Block::System),
            (".keyblock/alignments", Block::System),
            (".keyblock/details", Block::System),
        ]);
    }
    for case in cases {
        let (path, block) = case;
        let what = format!("{case:?}");
        let folder = catalogue();
        let dir = folder.path();
        block.put_at(&dir.join(path));
        let before = names(dir);
        for title in ["The Harbour", "The Quay"] {
            edit(
                &dir.join("records/designs/1/design.toml"),
                "The Harbour",
                title,
            );
            let ran = keyblock(&["compile", text(dir)]);
            assert_eq!(ran.code, Some(0), "{what}: {}", ran.err);
            let warnings = ran.err.matches("the cache was not written").count();
            assert_eq!(warnings, 1, "{what}: {}", ran.err);
            let help = "\n  check the space left on the disk";
            assert!(ran.err.contains(help), "{what}: {}", ran.err);
            if title == "The Harbour" {
                assert!(bytes_below(&dir.join("web")) == site, "{what}: other bytes");
            }
            let mut after = before.clone();
            after.push("web".to_owned());
            assert_eq!(names(dir), after, "{what}");
        }
    }
}

/// Gives every file of the cache a date of so many days ago.
fn date(dir: &Path, days: u64) {
    let time = SystemTime::now() - Duration::from_secs(days * 24 * 60 * 60);
    for folder in ["pictures", "alignments", "details", "small"] {
        for file in files_below(&dir.join(".keyblock").join(folder)) {
            let file = fs::File::options().append(true).open(file).unwrap();
            file.set_modified(time).unwrap();
        }
    }
}

fn kept(dir: &Path) -> BTreeSet<PathBuf> {
    let folders =
        ["pictures", "alignments", "details", "small"].map(|f| dir.join(".keyblock").join(f));
    folders
        .iter()
        .flat_map(|folder| files_below(folder))
        .collect()
}

#[test]
fn what_no_compile_used_for_thirty_days_is_swept() {
    let folder = catalogue();
    let dir = folder.path();
    compile(dir);
    let first = kept(dir);
    photograph(dir, 2, 2);
    compile(dir);
    let both = kept(dir);
    assert!(both.is_superset(&first) && both.len() > first.len());

    // Nothing changed: nothing is looked for, and nothing swept.
    date(dir, 40);
    assert!(compile(dir).contains("; nothing was remade; "));
    assert_eq!(kept(dir), both);

    // The entries in use are dated anew by the compile that uses them, and those of the first photograph go.
    let record = dir.join("records/designs/1/design.toml");
    edit(&record, "The Harbour", "The Quay");
    compile(dir);
    let swept = kept(dir);
    assert!(swept.len() < both.len(), "nothing was swept");
    assert_eq!(both.len() - swept.len(), both.difference(&first).count());

    // What is in use is found again, and not made.
    edit(&record, "The Quay", "The Harbour");
    assert!(!compile(dir).contains(" made"));
    assert_eq!(kept(dir), swept);

    // What was used 29 days ago stays.
    photograph(dir, 2, 3);
    compile(dir);
    let three = kept(dir);
    assert!(three.is_superset(&swept) && three.len() > swept.len());
    date(dir, 29);
    edit(&record, "The Harbour", "The Quay");
    compile(dir);
    assert_eq!(kept(dir), three);
}

#[test]
fn sweep_removes_at_once_what_a_compile_does_not_use() {
    let folder = catalogue();
    let dir = folder.path();
    compile(dir);
    photograph(dir, 2, 2);
    compile(dir);
    let own = dir.join(".keyblock/pictures/readme.txt");
    fs::write(&own, "mine").unwrap();
    let before = kept(dir);
    let site = bytes_below(&dir.join("web"));
    let ran = keyblock(&["compile", text(dir), "--sweep"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.out.contains("; nothing was remade; "), "{}", ran.out);
    let after = kept(dir);
    let swept = before.len() - after.len();
    assert!(swept > 3, "{swept}");
    let said = format!(".keyblock: {swept} unused files swept, ");
    assert!(ran.out.contains(&said), "{}", ran.out);
    assert!(own.exists());
    assert!(bytes_below(&dir.join("web")) == site);
    let ran = keyblock(&["compile", text(dir), "--sweep"]);
    assert!(
        ran.out.ends_with(": 0 unused files swept, 0 MB\n"),
        "{}",
        ran.out
    );
    assert_eq!(kept(dir), after);
    // Everything in use is still there.
    edit(
        &dir.join("records/designs/1/design.toml"),
        "The Harbour",
        "The Quay",
    );
    assert!(!compile(dir).contains(" made"));
}
