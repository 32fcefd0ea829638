//! Publishing a site: what is written, kept, removed and refused.

use super::disk::{Disk, SystemDisk};
use super::lock::Lock;
use super::staging::Staging;
use super::*;
use std::fs;
use std::sync::Arc;

/// What no compile made.
mod foreign;
/// A disk that is full.
mod full;
/// A compile that is stopped at each of its steps.
mod stopped;
/// Files that are written together.
mod together;

fn parts<'a>(files: &[(&'a str, &'a str)], pictures: &[(&str, &Path)]) -> SiteParts<'a> {
    SiteParts {
        files: files.iter().map(|(p, t)| (*p, t.as_bytes())).collect(),
        pictures: pictures
            .iter()
            .map(|(p, f)| ((*p).to_owned(), (*f).to_owned()))
            .collect(),
        bundles: BTreeMap::new(),
    }
}

/// A site of one page and two tiles, whose bytes are `text` cut in the middle.
fn tiled(pack: &Path, text: &str) -> SiteParts<'static> {
    fs::write(pack, text).unwrap();
    let (all, half) = (text.len() as u64, text.len() as u64 / 2);
    let file = |path: &str, at| Bundled {
        path: path.to_owned(),
        at,
    };
    let bundle = Bundle {
        pack: pack.to_owned(),
        content: text.to_owned(),
        files: vec![
            file("full/max/0/default.jpg", 0..half),
            file("a/b/0/default.jpg", half..all),
        ],
    };
    let mut site = parts(&[("index.html", "one"), ("picture/1/info.json", "{}")], &[]);
    site.bundles.insert("picture/1".to_owned(), bundle);
    site
}

#[test]
fn a_bundle_is_written_when_its_content_changed_and_only_then() {
    let dir = tempfile::tempdir().unwrap();
    let (target, pack) = (dir.path().join("web"), dir.path().join("pack"));
    let counts = |parts: &SiteParts<'_>| {
        let done = publish(parts, &target).unwrap();
        (done.written, done.kept, done.removed)
    };
    let tile = target.join("picture/1/a/b/0/default.jpg");
    assert_eq!(counts(&tiled(&pack, "onetwo")), (4, 0, 0));
    assert_eq!(fs::read_to_string(&tile).unwrap(), "two");
    assert_eq!(counts(&tiled(&pack, "onetwo")), (0, 4, 0));
    // Other content of the same length, under the same paths.
    assert_eq!(counts(&tiled(&pack, "sixten")), (2, 2, 0));
    assert_eq!(fs::read_to_string(&tile).unwrap(), "ten");
    // A tile lost or cut short is put back.
    fs::write(&tile, "t").unwrap();
    assert_eq!(counts(&tiled(&pack, "sixten")), (2, 2, 0));
    assert_eq!(fs::read_to_string(&tile).unwrap(), "ten");
    // Another page, the same tiles: linked.
    let mut site = tiled(&pack, "sixten");
    site.files.insert("index.html", b"two");
    fs::remove_file(&pack).unwrap();
    assert_eq!(counts(&site), (1, 3, 0));
    assert_eq!(fs::read_to_string(&tile).unwrap(), "ten");
    assert_eq!(counts(&parts(&[("index.html", "two")], &[])), (0, 1, 3));
    assert!(!target.join("picture").exists());
}

/// Publishes on a disk of the test's own.
fn publish_on(
    disk: &Arc<impl Disk + 'static>,
    parts: &SiteParts<'_>,
    target: &Path,
) -> Result<Published, PublishFault> {
    let publishing = Publishing::begin_on(Arc::clone(disk) as Arc<dyn Disk>, target)?;
    for (path, bytes) in &parts.files {
        publishing.put(path, bytes);
    }
    publishing.finish(&parts.pictures, &parts.bundles)
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

#[test]
fn only_what_changed_is_written() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let photo = dir.path().join("photo.jpg");
    fs::write(&photo, b"pixels").unwrap();
    let pictures = [("picture/a.jpg", photo.as_path())];
    let first = parts(
        &[("index.html", "one"), ("design/1/index.html", "d")],
        &pictures,
    );
    let published = publish(&first, &target).unwrap();
    assert_eq!(
        published,
        Published {
            written: 3,
            kept: 0,
            removed: 0
        }
    );
    let again = publish(&first, &target).unwrap();
    assert_eq!(
        again,
        Published {
            written: 0,
            kept: 3,
            removed: 0
        }
    );
    let second = parts(&[("index.html", "two")], &pictures);
    let published = publish(&second, &target).unwrap();
    assert_eq!(
        published,
        Published {
            written: 1,
            kept: 1,
            removed: 1
        }
    );
    assert_eq!(
        fs::read_to_string(target.join("index.html")).unwrap(),
        "two"
    );
    assert_eq!(fs::read(target.join("picture/a.jpg")).unwrap(), b"pixels");
    assert!(!target.join("design").exists());
    assert_eq!(names(dir.path()), ["photo.jpg", "web"]);
}

#[test]
fn a_foreign_folder_is_left_alone() {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join("letter.txt"), "dear").unwrap();
    let site = parts(&[("index.html", "one")], &[]);
    assert!(matches!(
        publish(&site, dir.path()),
        Err(PublishFault::NotOurs(_))
    ));
    assert!(matches!(
        publish(&site, &dir.path().join("letter.txt")),
        Err(PublishFault::NotOurs(_))
    ));
    assert_eq!(names(dir.path()), ["letter.txt"]);
}

#[cfg(unix)]
#[test]
fn a_link_stays_and_the_folder_it_leads_to_is_replaced() {
    let dir = tempfile::tempdir().unwrap();
    let served = dir.path().join("served");
    let target = dir.path().join("web");
    fs::create_dir(&served).unwrap();
    std::os::unix::fs::symlink(&served, &target).unwrap();
    for text in ["one", "two"] {
        publish(&parts(&[("index.html", text)], &[]), &target).unwrap();
        assert_eq!(fs::read_to_string(served.join("index.html")).unwrap(), text);
        assert!(target.is_symlink());
        assert_eq!(names(dir.path()), ["served", "web"]);
    }
}

#[test]
fn an_empty_folder_is_taken() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    fs::create_dir(&target).unwrap();
    publish(&parts(&[("index.html", "one")], &[]), &target).unwrap();
    assert!(mark::is_marked(&target));
    assert_eq!(names(dir.path()), ["web"]);
}

#[test]
fn a_refusing_disk_leaves_the_last_good_site() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&parts(&[("index.html", "one")], &[]), &target).unwrap();
    let gone = dir.path().join("gone.jpg");
    let broken = parts(
        &[("index.html", "two")],
        &[("picture/a.jpg", gone.as_path())],
    );
    assert!(matches!(
        publish(&broken, &target),
        Err(PublishFault::Disk { .. })
    ));
    // A page cannot stand where a folder of the same name must.
    let clash = parts(
        &[
            ("index.html", "two"),
            ("a", "file"),
            ("a/index.html", "page"),
        ],
        &[],
    );
    assert!(matches!(
        publish(&clash, &target),
        Err(PublishFault::Disk { .. })
    ));
    assert_eq!(
        fs::read_to_string(target.join("index.html")).unwrap(),
        "one"
    );
    assert_eq!(names(dir.path()), ["web"]);
}

#[test]
fn what_a_killed_compile_left_is_cleared_away() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let site = parts(&[("index.html", "one")], &[]);
    publish(&site, &target).unwrap();
    // Killed while setting up, and killed between the two moves of a slow exchange.
    std::mem::forget(Staging::beside(&target, Arc::new(SystemDisk)).unwrap());
    fs::write(dir.path().join(".web.next/half.html"), "ha").unwrap();
    fs::rename(&target, dir.path().join(".web.last")).unwrap();
    publish(&parts(&[("index.html", "two")], &[]), &target).unwrap();
    assert_eq!(
        fs::read_to_string(target.join("index.html")).unwrap(),
        "two"
    );
    assert_eq!(names(dir.path()), ["web"]);
}

#[test]
fn two_compiles_into_one_folder_do_not_mix() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let first = Lock::on(&target).unwrap();
    let site = parts(&[("index.html", "one")], &[]);
    assert!(matches!(
        publish(&site, &target),
        Err(PublishFault::Busy(_))
    ));
    drop(first);
    assert!(publish(&site, &target).is_ok());
}

#[test]
fn a_file_damaged_by_hand_is_written_again() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let site = parts(&[("index.html", "one")], &[]);
    publish(&site, &target).unwrap();
    fs::write(target.join("index.html"), "").unwrap();
    assert_eq!(publish(&site, &target).unwrap().written, 1);
}
