//! A compile that is stopped at each of its steps on the disk, as a kill stops it: the site is the old one or the
//! new one, nothing that no compile made is lost, and the next compile mends the rest.

use super::foreign::{THEIRS, add_theirs, is_theirs, pages, site, state};
use super::*;
use std::io;
use std::sync::atomic::{AtomicUsize, Ordering};

/// A disk that does so many steps and then nothing more. A file that is being written then is cut short.
pub(super) struct StoppingDisk {
    steps: AtomicUsize,
    stops_at: usize,
    can_exchange: bool,
}

impl StoppingDisk {
    pub(super) fn after(steps: usize, can_exchange: bool) -> Arc<StoppingDisk> {
        Arc::new(StoppingDisk {
            steps: AtomicUsize::new(0),
            stops_at: steps,
            can_exchange,
        })
    }

    /// One that never stops. It does not wait for the disk of this machine, which others use too.
    fn never() -> Arc<StoppingDisk> {
        StoppingDisk::after(usize::MAX, true)
    }

    fn step(&self, step: impl FnOnce() -> io::Result<()>) -> io::Result<()> {
        if self.steps.fetch_add(1, Ordering::SeqCst) < self.stops_at {
            step()
        } else {
            Err(io::Error::other("stopped"))
        }
    }

    pub(super) fn has_stopped(&self) -> bool {
        self.steps.load(Ordering::SeqCst) > self.stops_at
    }
}

impl Disk for StoppingDisk {
    fn make_folders(&self, folder: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.make_folders(folder))
    }

    fn make_folder(&self, folder: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.make_folder(folder))
    }

    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()> {
        let step = self.steps.fetch_add(1, Ordering::SeqCst);
        match step.cmp(&self.stops_at) {
            std::cmp::Ordering::Less => SystemDisk.write_new(file, bytes),
            std::cmp::Ordering::Equal => {
                SystemDisk.write_new(file, &bytes[..bytes.len() / 2])?;
                Err(io::Error::other("stopped"))
            }
            std::cmp::Ordering::Greater => Err(io::Error::other("stopped")),
        }
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.copy(from, to))
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.link(from, to))
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.rename(from, to))
    }

    fn rename_new(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.rename_new(from, to))
    }

    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()> {
        if !self.can_exchange {
            return Err(io::ErrorKind::Unsupported.into());
        }
        self.step(|| SystemDisk.exchange(one, other))
    }

    fn remove_file(&self, file: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.remove_file(file))
    }

    fn remove_folder(&self, folder: &Path) -> io::Result<()> {
        self.step(|| SystemDisk.remove_folder(folder))
    }

    fn sync_below(&self, _folder: &Path) -> io::Result<()> {
        self.step(|| Ok(()))
    }

    fn sync(&self, _path: &Path) -> io::Result<()> {
        self.step(|| Ok(()))
    }

    fn free_bytes(&self, folder: &Path) -> Option<u64> {
        SystemDisk.free_bytes(folder)
    }
}

/// Publishes a site over another that has foreign files in it, stopping after so many steps; checks what is
/// there then, and what the next compile makes of it. Gives `false` where it ended before.
fn check_stop(steps: usize, can_exchange: bool) -> bool {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish_on(
        &StoppingDisk::never(),
        &site(dir.path(), "one", true),
        &target,
    )
    .unwrap();
    add_theirs(&target);
    // Changed by hand, and not in the new site: it is foreign now.
    fs::write(target.join("design/9/index.html"), "by hand").unwrap();
    let (old, theirs) = (pages(&target), state(&target, &is_theirs));
    let new = {
        let fresh = tempfile::tempdir().unwrap();
        publish_on(
            &StoppingDisk::never(),
            &site(fresh.path(), "two", false),
            &fresh.path().join("web"),
        )
        .unwrap();
        pages(&fresh.path().join("web"))
    };

    let disk = StoppingDisk::after(steps, can_exchange);
    let published = publish_on(&disk, &site(dir.path(), "two", false), &target);
    let at = format!("stopped after {steps} steps, {can_exchange}");
    if !disk.has_stopped() {
        published.unwrap();
        return false;
    }
    let [next, last] = [".web.next", ".web.last"].map(|name| dir.path().join(name));
    let by_hand = PathBuf::from("design/9/index.html");
    let is_new = target.exists() && {
        let mut left = pages(&target);
        left.remove(&by_hand);
        if left != new {
            let mut old = old.clone();
            old.remove(&by_hand);
            assert!(
                left == old,
                "{at}: neither the old site nor the new one: {left:?}"
            );
        }
        left == new
    };
    if can_exchange {
        assert!(target.exists(), "{at}: no site");
        // Single files are never missing, whole folders only until the next compile.
        for (path, text) in THEIRS {
            let at_top =
                !path.contains('/') || path.starts_with("design") || path.starts_with("picture");
            let places = if at_top {
                vec![&target]
            } else {
                vec![&target, &next]
            };
            let read = |folder: &&PathBuf| fs::read_to_string(folder.join(path)).ok();
            let found = places.iter().copied().find_map(|folder| read(&folder));
            assert_eq!(found.as_deref(), Some(text), "{at}: {path}");
        }
    } else if !target.exists() {
        let mut left = pages(&last);
        assert_eq!(left.remove(&by_hand).as_deref(), Some("by hand"), "{at}");
        assert_eq!(state(&last, &is_theirs), theirs, "{at}");
    }

    let published = publish_on(
        &StoppingDisk::never(),
        &site(dir.path(), "three", false),
        &target,
    );
    published.unwrap_or_else(|fault| panic!("{at}: {fault}"));
    assert_eq!(state(&target, &is_theirs), theirs, "{at}, new {is_new}");
    assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"], "{at}");
    let mut left = pages(&target);
    assert_eq!(left.remove(&by_hand).as_deref(), Some("by hand"), "{at}");
    assert_eq!(left[Path::new("index.html")], "three", "{at}");
    assert_eq!(left.len(), new.len(), "{at}: {left:?}");
    true
}

#[test]
fn a_compile_stopped_at_any_step_loses_nothing() {
    for can_exchange in [true, false] {
        let mut steps = 0;
        while check_stop(steps, can_exchange) {
            steps += 1;
        }
        println!("{steps} steps");
        assert!(steps > 40, "only {steps} steps");
    }
}

/// A stop that stops again: each later compile gets a little further.
#[test]
fn compiles_that_are_stopped_one_after_the_other_lose_nothing() {
    for can_exchange in [true, false] {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        publish_on(
            &StoppingDisk::never(),
            &site(dir.path(), "one", true),
            &target,
        )
        .unwrap();
        add_theirs(&target);
        let theirs = state(&target, &is_theirs);
        let mut stops = 0;
        for steps in 0.. {
            let disk = StoppingDisk::after(steps, can_exchange);
            let text = format!("text {steps}");
            let published = publish_on(&disk, &site(dir.path(), &text, steps % 2 == 0), &target);
            if !disk.has_stopped() {
                published.unwrap();
                break;
            }
            stops += 1;
        }
        assert!(stops > 40, "only {stops} stops");
        assert_eq!(state(&target, &is_theirs), theirs);
        assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"]);
    }
}

/// Stopped after the exchange, with foreign folders not yet carried over; then the site is deleted by hand.
#[test]
fn what_waits_to_be_carried_over_survives_the_deletion_of_the_site() {
    for is_emptied in [true, false] {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        publish_on(
            &StoppingDisk::never(),
            &site(dir.path(), "one", true),
            &target,
        )
        .unwrap();
        add_theirs(&target);
        let next = dir.path().join(".web.next");
        let is_waiting = |steps: &usize| {
            let disk = StoppingDisk::after(*steps, true);
            let _ = publish_on(&disk, &site(dir.path(), &format!("{steps}"), true), &target);
            next.join(".git").exists()
        };
        (20..200).find(is_waiting).unwrap();
        fs::remove_dir_all(&target).unwrap();
        if is_emptied {
            fs::create_dir(&target).unwrap();
        }
        let site = site(dir.path(), "two", true);
        publish_on(&StoppingDisk::never(), &site, &target).unwrap();
        let head = fs::read_to_string(target.join(".git/HEAD")).unwrap();
        assert_eq!(head, "ref: refs/heads/main");
        assert_eq!(pages(&target)[Path::new("index.html")], "two");
        assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"]);
    }
}

#[test]
fn a_first_compile_stopped_at_any_step_leaves_no_half_site() {
    for is_empty_folder in [true, false] {
        for steps in 0.. {
            let dir = tempfile::tempdir().unwrap();
            let target = dir.path().join("web");
            if is_empty_folder {
                fs::create_dir(&target).unwrap();
            }
            let disk = StoppingDisk::after(steps, true);
            let published = publish_on(&disk, &site(dir.path(), "one", true), &target);
            let left = if target.exists() {
                pages(&target)
            } else {
                BTreeMap::new()
            };
            assert!(left.is_empty() || left.len() == 8, "{steps}: {left:?}");
            if !disk.has_stopped() {
                published.unwrap();
                assert!(steps > 20, "only {steps} steps");
                break;
            }
            publish_on(
                &StoppingDisk::never(),
                &site(dir.path(), "two", true),
                &target,
            )
            .unwrap();
            assert_eq!(pages(&target).len(), 8, "{steps}");
            assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"]);
        }
    }
}
