//! A disk that is full: the old site stays, and the fault says how much was needed.

use super::*;
use std::io;
use std::sync::atomic::{AtomicU64, Ordering};

/// A disk with so many bytes left. Links and folders take none.
struct SmallDisk {
    left: AtomicU64,
    /// Whether the system tells how much is left.
    tells: bool,
}

impl SmallDisk {
    fn of(bytes: u64, tells: bool) -> Arc<SmallDisk> {
        Arc::new(SmallDisk {
            left: AtomicU64::new(bytes),
            tells,
        })
    }

    fn take(&self, bytes: u64) -> io::Result<()> {
        let left = |left: u64| left.checked_sub(bytes.div_ceil(4096) * 4096);
        let taken = self
            .left
            .fetch_update(Ordering::SeqCst, Ordering::SeqCst, left);
        taken
            .map(|_| ())
            .map_err(|_| io::ErrorKind::StorageFull.into())
    }
}

impl Disk for SmallDisk {
    fn make_folders(&self, folder: &Path) -> io::Result<()> {
        SystemDisk.make_folders(folder)
    }

    fn make_folder(&self, folder: &Path) -> io::Result<()> {
        if self.left.load(Ordering::SeqCst) == 0 {
            return Err(io::ErrorKind::StorageFull.into());
        }
        SystemDisk.make_folder(folder)
    }

    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()> {
        SystemDisk.write_new(file, b"")?;
        let taken = self.take(bytes.len() as u64);
        // A full disk leaves a file that is cut short.
        if taken.is_ok() {
            fs::write(file, bytes)?;
        }
        taken
    }

    fn copy(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.write_new(to, &fs::read(from)?)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        SystemDisk.link(from, to)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        SystemDisk.rename(from, to)
    }

    fn rename_new(&self, from: &Path, to: &Path) -> io::Result<()> {
        SystemDisk.rename_new(from, to)
    }

    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()> {
        SystemDisk.exchange(one, other)
    }

    fn remove_file(&self, file: &Path) -> io::Result<()> {
        if let Ok(about) = fs::symlink_metadata(file) {
            let bytes = about.len().div_ceil(4096) * 4096;
            self.left.fetch_add(bytes, Ordering::SeqCst);
        }
        SystemDisk.remove_file(file)
    }

    fn remove_folder(&self, folder: &Path) -> io::Result<()> {
        SystemDisk.remove_folder(folder)
    }

    fn sync_below(&self, folder: &Path) -> io::Result<()> {
        SystemDisk.sync_below(folder)
    }

    fn sync(&self, path: &Path) -> io::Result<()> {
        SystemDisk.sync(path)
    }

    fn free_bytes(&self, _folder: &Path) -> Option<u64> {
        self.tells.then(|| self.left.load(Ordering::SeqCst))
    }
}

/// A site of pages of 1 MB each and a picture of 5 MB, 20 MB in all.
fn large<'a>(pages: &'a [(String, Vec<u8>)], picture: &Path) -> SiteParts<'a> {
    fs::write(picture, vec![7; 5_000_000]).unwrap();
    SiteParts {
        files: pages
            .iter()
            .map(|(path, bytes)| (path.as_str(), bytes.as_slice()))
            .collect(),
        pictures: BTreeMap::from([("picture/a.jpg".to_owned(), picture.to_owned())]),
        bundles: BTreeMap::new(),
    }
}

#[test]
fn a_full_disk_leaves_the_old_site_and_the_fault_says_what_was_needed() {
    let pages: Vec<(String, Vec<u8>)> = (0..15)
        .map(|number| {
            (
                format!("design/{number}/index.html"),
                vec![number; 1_000_000],
            )
        })
        .collect();
    // Full from the beginning; during the pages; at the picture, which the system foretells or not.
    for (room, tells) in [
        (0, true),
        (3_000_000, true),
        (3_000_000, false),
        (17_000_000, true),
        (17_000_000, false),
    ] {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        publish(
            &parts(&[("index.html", "one"), ("CNAME", "")], &[]),
            &target,
        )
        .unwrap();
        fs::write(target.join("own.txt"), "mine").unwrap();
        let disk = SmallDisk::of(room, tells);
        let site = large(&pages, &dir.path().join("picture.jpg"));
        let fault = publish_on(&disk, &site, &target).unwrap_err();
        let PublishFault::Full {
            needed_bytes,
            free_bytes,
            ..
        } = &fault
        else {
            panic!("{fault:?}")
        };
        // The sizes above, each rounded up to blocks of 4096 bytes: 15 × 245 + 1221 blocks.
        assert_eq!(*needed_bytes, (15 * 245 + 1221) * 4096, "{room}");
        // All that was written is gone again.
        assert_eq!(*free_bytes, tells.then_some(room));
        let said = fault.to_string();
        assert!(said.contains("needs 21 MB"), "{said}");
        assert_eq!(said.contains(" MB free"), tells, "{said}");
        assert_eq!(
            fs::read_to_string(target.join("index.html")).unwrap(),
            "one"
        );
        assert_eq!(
            names(&target),
            [mark::NAME, "CNAME", "index.html", "own.txt"]
        );
        assert_eq!(
            names(dir.path()),
            ["picture.jpg", "web"],
            "nothing half done stays"
        );
    }
}
