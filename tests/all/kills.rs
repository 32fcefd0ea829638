//! Kills, interrupts and several compiles at once: the site is the old one or the new one, what no compile made is
//! there, and the next compile succeeds.
//!
//! A compile is killed at moments that are drawn by chance and recognised by what is on the disk: how far the new
//! site is staged, whether it is exchanged, how much of the old one is left. To be caught there on a machine of any
//! speed, the program is stopped again and again and runs for some microseconds in between.
//!
//! Every single step of publishing is stopped at in `src/issue/tests/stopped.rs`.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Stdio};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use crate::foreign_files::{THEIRS, add_theirs, take_theirs};
use crate::program::{bytes_below, command, compile, copy_of, edit, files_below, program, text};

/// How many kills there are, unless `KEYBLOCK_KILLS` says otherwise (DEVELOPERS.md, "Tests").
const KILLS: u32 = 200;

/// How long a compile that is watched runs before it is stopped again.
const SLICE: Duration = Duration::from_micros(60);

/// When a compile is killed.
#[derive(Clone, Copy, Debug)]
enum Moment {
    /// So many microseconds after it began to stage the site, while it still reads and makes pictures.
    Begun(u64),
    /// With so many files of the new site staged.
    Staged(usize),
    /// With the staged site whole.
    Whole,
    /// With the new site in the place of the old one, and so many files of the old one not yet removed.
    Exchanged(usize),
}

impl Moment {
    /// A moment for each number from a generator of chance, for a site of `files` files.
    fn drawn(random: &mut Random, files: usize) -> Moment {
        match random.below(10) {
            0 | 1 => Moment::Begun(random.below(300_000)),
            2..=6 => Moment::Staged(small(random.below(files as u64))),
            7 => Moment::Whole,
            _ => Moment::Exchanged(small(random.below(files as u64 + 1))),
        }
    }

    fn is_reached(self, dir: &Path, seen: &Seen) -> bool {
        let next = dir.join(".web.next");
        match self {
            Moment::Begun(microseconds) => seen
                .begun
                .is_some_and(|begun| begun.elapsed() >= Duration::from_micros(microseconds)),
            // The mark is there from the beginning.
            Moment::Staged(files) => seen.is_exchanged(dir) || files_below(&next).len() > files + 1,
            Moment::Whole => seen.is_exchanged(dir) || is_whole(&next),
            Moment::Exchanged(files) => seen.is_exchanged(dir) && files_below(&next).len() <= files,
        }
    }
}

/// Whether the folder is a site and not one being staged.
fn is_whole(folder: &Path) -> bool {
    fs::read(folder.join(".keyblock-site")).is_ok_and(|mark| mark.len() > 100)
}

/// What was seen of a compile until now.
struct Seen {
    begun: Option<Instant>,
    /// The index as it was before.
    index: Vec<u8>,
}

impl Seen {
    fn is_exchanged(&self, dir: &Path) -> bool {
        fs::read(dir.join("web/index.html")).is_ok_and(|index| index != self.index)
    }
}

/// Numbers by chance, the same in every run: the linear congruential generator of Knuth's MMIX.
struct Random(u64);

impl Random {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit.max(1)
    }
}

fn small(number: u64) -> usize {
    usize::try_from(number).unwrap()
}

fn start(dir: &Path) -> Child {
    command(&["compile", text(dir)])
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// Starts a compile of `dir` and ends it with `signal` at `moment`; `false` where it ended itself before that.
fn kill_at(dir: &Path, moment: Moment, signal: Signal) -> bool {
    let mut seen = Seen {
        begun: None,
        index: fs::read(dir.join("web/index.html")).unwrap(),
    };
    let next = dir.join(".web.next");
    // What an earlier kill left is removed first, and then the folder is another one.
    let before = number_of(&next);
    let mut child = start(dir);
    let pid = Pid::from_child(&child);
    let mut is_watched = false;
    loop {
        if child.try_wait().unwrap().is_some() {
            return false;
        }
        let number = number_of(&next);
        if seen.begun.is_none() && number.is_some() && number != before {
            seen.begun = Some(Instant::now());
        }
        if seen.begun.is_some() {
            // From the first page on, it runs in slices.
            is_watched |= fs::read_dir(&next).is_ok_and(|entries| entries.count() > 1);
            if moment.is_reached(dir, &seen) {
                break;
            }
        }
        if is_watched {
            let _ = kill_process(pid, Signal::CONT);
            let begun = Instant::now();
            while begun.elapsed() < SLICE {
                std::hint::spin_loop();
            }
            let _ = kill_process(pid, Signal::STOP);
        } else {
            std::thread::sleep(Duration::from_micros(50));
        }
    }
    let _ = kill_process(pid, signal);
    let _ = kill_process(pid, Signal::CONT);
    let status = child.wait().unwrap();
    !status.success()
}

/// The number that the system gives a folder; `None` where there is none.
fn number_of(folder: &Path) -> Option<u64> {
    use std::os::unix::fs::MetadataExt as _;
    fs::metadata(folder).map(|about| about.ino()).ok()
}

/// How many kills were asked for.
fn kills() -> u32 {
    std::env::var("KEYBLOCK_KILLS").map_or(KILLS, |kills| kills.parse().unwrap())
}

/// The title of the catalogue, which is on every page.
fn title(number: u32) -> String {
    format!("The Colour Prints {number:05}")
}

fn encoded(text: &str) -> String {
    percent_encoding::utf8_percent_encode(text, percent_encoding::NON_ALPHANUMERIC).to_string()
}

/// A title as the description of the data has it.
fn as_name(text: &str) -> String {
    text.to_lowercase().replace(' ', "-")
}

/// Whether a file has a tag made from all that stands in it, which other bytes do not replace.
fn has_tag(path: &Path) -> bool {
    path.starts_with("resolve") && path.extension().is_some_and(|ending| ending == "json")
}

/// The site of the catalogue with another title. The mark is left aside: it has the hashes of all. So are files with
/// tags.
fn titled(site: &BTreeMap<PathBuf, Vec<u8>>, number: u32) -> BTreeMap<PathBuf, Vec<u8>> {
    let site = site.iter().filter(|(path, _)| !has_tag(path));
    let renamed = site.map(|(path, bytes)| {
        let bytes = match std::str::from_utf8(bytes) {
            // The link for corrections has it as an address does.
            Ok(text) => text
                .replace(&title(0), &title(number))
                .replace(&encoded(&title(0)), &encoded(&title(number)))
                .replace(&as_name(&title(0)), &as_name(&title(number)))
                .into_bytes(),
            Err(_) => bytes.clone(),
        };
        (path.clone(), bytes)
    });
    renamed.collect()
}

/// The files of the site in `dir` that compiles made, without the mark, which must list exactly them, and without those
/// with tags; those of
/// somebody must be there, or in the folder that the next compile carries them over from.
fn site(dir: &Path, is_complete: bool) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut site = bytes_below(&dir.join("web"));
    let waiting = bytes_below(&dir.join(".web.next"));
    for (path, theirs) in THEIRS {
        let path = Path::new(path);
        if !is_complete && !site.contains_key(path) && waiting.contains_key(path) {
            // Single files are never missing.
            assert!(path.components().count() > 1, "{}", path.display());
            site.insert(path.to_owned(), waiting[path].clone());
        }
        assert_eq!(
            site.get(path).map(Vec::as_slice),
            Some(theirs.as_bytes()),
            "{}",
            path.display()
        );
    }
    take_theirs(&mut site);
    let mark = site.remove(Path::new(".keyblock-site")).expect("no mark");
    let mark: serde_json::Value = serde_json::from_slice(&mark).unwrap();
    for (path, file) in mark["files"].as_object().unwrap() {
        let bytes = &site[Path::new(path)];
        let hash = file["hash"].as_str().unwrap();
        let is_picture = hash.is_empty();
        assert!(
            is_picture || hash == blake3::hash(bytes).to_hex().as_str(),
            "{path}"
        );
    }
    site.retain(|path, _| !has_tag(path));
    site
}

#[test]
fn killed_at_any_moment_a_compile_leaves_one_whole_site_and_loses_nothing() {
    let folder = copy_of("tests/example-catalogue");
    let dir = folder.path();
    edit(&dir.join("catalogue.toml"), "The Colour Prints", &title(0));
    compile(dir);
    let mut first = bytes_below(&dir.join("web"));
    first.remove(Path::new(".keyblock-site"));
    add_theirs(&dir.join("web"));
    let mut random = Random(13);
    let mut number = 0;
    let mut counts: BTreeMap<&str, u32> = BTreeMap::new();
    for round in 0..kills() {
        let moment = Moment::drawn(&mut random, first.len());
        let signal = if round % 4 == 3 {
            Signal::INT
        } else {
            Signal::KILL
        };
        if matches!(moment, Moment::Begun(_)) {
            // The pictures are made again, so that it has something to do.
            let _ = fs::remove_dir_all(dir.join(".keyblock"));
        }
        edit(
            &dir.join("catalogue.toml"),
            &title(number),
            &title(number + 1),
        );
        let was_killed = kill_at(dir, moment, signal);
        let at = format!("round {round}, {signal:?} at {moment:?}");

        let left = site(dir, false);
        let is_new = left == titled(&first, number + 1);
        // Several kills may have followed each other.
        let is_old = (0..=number).rev().any(|old| left == titled(&first, old));
        assert!(
            is_new || is_old,
            "{at}: neither the old site nor the new one"
        );
        let has_leavings = dir.join(".web.next").exists() || dir.join(".web.last").exists();
        let what = match (was_killed, is_new, has_leavings) {
            (false, _, _) => "ended before",
            (true, false, false) => "killed with nothing left",
            (true, false, true) => "killed while staging",
            (true, true, true) => "killed while clearing away",
            (true, true, false) => "killed at the end",
        };
        *counts.entry(what).or_default() += 1;
        number += 1;
        // Every other time the next compile is killed too, over what this one left.
        if round % 2 == 0 || round + 1 == kills() {
            compile(dir);
            assert!(
                site(dir, true) == titled(&first, number),
                "{at}: after the next compile"
            );
            let mut names: Vec<String> = fs::read_dir(dir)
                .unwrap()
                .map(|entry| entry.unwrap().file_name().into_string().unwrap())
                .collect();
            names.sort();
            assert_eq!(
                names,
                [".keyblock", "catalogue.toml", "records", "web"],
                "{at}"
            );
        }
    }
    println!("{} kills: {counts:?}", kills());
    let staging = counts
        .get("killed while staging")
        .copied()
        .unwrap_or_default();
    assert!(
        staging * 4 >= kills(),
        "few were killed while staging: {counts:?}"
    );
    if kills() >= 100 {
        let clearing = counts.get("killed while clearing away").copied();
        assert!(
            clearing.is_some_and(|n| n > 0),
            "none was killed while clearing away: {counts:?}"
        );
    }
}

#[test]
fn compiles_of_one_site_at_once_do_not_mix() {
    let folder = copy_of("tests/example-catalogue");
    let dir = folder.path();
    edit(&dir.join("catalogue.toml"), "The Colour Prints", &title(0));
    compile(dir);
    let mut first = bytes_below(&dir.join("web"));
    first.remove(Path::new(".keyblock-site"));
    add_theirs(&dir.join("web"));
    let mut refused = 0;
    for round in 0..5 {
        edit(
            &dir.join("catalogue.toml"),
            &title(round),
            &title(round + 1),
        );
        let children: Vec<Child> = (0..4).map(|_| start(dir)).collect();
        let mut done = 0;
        for child in children {
            let ran = child.wait_with_output().unwrap();
            let said = String::from_utf8(ran.stderr).unwrap();
            match ran.status.code() {
                Some(0) => done += 1,
                Some(1) if said.contains("another compile into ") => refused += 1,
                code => panic!("{code:?}: {said}"),
            }
        }
        assert!(done > 0, "none was published");
        assert!(
            site(dir, true) == titled(&first, round + 1),
            "round {round}"
        );
        assert!(!dir.join(".web.next").exists() && !dir.join(".web.lock").exists());
    }
    assert!(refused > 0, "no two ran at once");
}

/// A limit on the size of files stands for a disk that refuses one: it holds for root too.
#[test]
fn a_disk_that_refuses_a_page_leaves_the_old_site() {
    let folder = copy_of("tests/example-catalogue");
    let dir = folder.path();
    compile(dir);
    add_theirs(&dir.join("web"));
    let before = bytes_below(&dir.join("web"));
    edit(
        &dir.join("catalogue.toml"),
        "The Colour Prints",
        "The Prints in Colour",
    );
    let program = program();
    // Without the trap, the first file above the limit would end the program by a signal.
    for script in ["trap '' XFSZ; ulimit -f 4", "ulimit -f 4"] {
        let ran = std::process::Command::new("sh")
            .args(["-c", &format!("{script}; exec \"$0\" compile \"$1\"")])
            .arg(&program)
            .arg(dir)
            .output()
            .unwrap();
        assert!(!ran.status.success(), "{script}");
        if script.starts_with("trap") {
            let said = String::from_utf8(ran.stderr).unwrap();
            assert!(said.contains("keyblock: could not write “"), "{said}");
            assert!(!dir.join(".web.next").exists());
        }
        assert!(
            bytes_below(&dir.join("web")) == before,
            "{script}: the site changed"
        );
    }
    compile(dir);
    assert!(site(dir, true).len() > 20);
    assert!(!dir.join(".web.next").exists());
}
