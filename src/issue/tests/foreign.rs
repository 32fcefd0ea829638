//! Files and folders that no compile made: they stay as they are, or the compile is refused and names them.

use super::*;
use std::time::{Duration, SystemTime};

/// Foreign files in a site: path and content.
pub(super) const THEIRS: [(&str, &str); 8] = [
    ("CNAME", "prints.example.org"),
    (".nojekyll", ""),
    ("own/page.html", "a page of one's own"),
    (".git/HEAD", "ref: refs/heads/main"),
    (".git/objects/ab/cdef", "an object"),
    ("design/1/notes.txt", "beside a page"),
    ("design/9/notes.txt", "beside a page that goes"),
    ("picture/1/a/b/0/readme.txt", "beside a tile"),
];

/// Folders without foreign files.
pub(super) const EMPTY: [&str; 3] = ["empty", ".git/refs/heads", "design/1/empty"];

/// Puts foreign files and folders into the site in `target`, with rights and times of their own, and a page that
/// was changed by hand.
pub(super) fn add_theirs(target: &Path) {
    for (path, text) in THEIRS {
        let file = target.join(path);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(&file, text).unwrap();
    }
    for path in EMPTY {
        fs::create_dir_all(target.join(path)).unwrap();
    }
    #[cfg(unix)]
    {
        use std::os::unix::ffi::OsStrExt as _;
        use std::os::unix::fs::{PermissionsExt as _, symlink};
        let rights = |path: &str, mode| {
            let mode = fs::Permissions::from_mode(mode);
            fs::set_permissions(target.join(path), mode).unwrap();
        };
        rights(".git/objects/ab/cdef", 0o444);
        rights(".git/refs", 0o2750);
        rights("empty", 0o711);
        symlink("design/1", target.join("latest")).unwrap();
        symlink("nowhere", target.join("own/broken")).unwrap();
        // Two names of one file, which no copy would keep.
        fs::hard_link(target.join(".git/HEAD"), target.join(".git/ORIG_HEAD")).unwrap();
        // Not every system takes a name that is no text.
        let name = std::ffi::OsStr::from_bytes(b"na\xEFve.txt");
        let _ = fs::write(target.join(name), "a name in another encoding");
    }
    let old = SystemTime::UNIX_EPOCH + Duration::from_secs(1_000_000_000);
    for path in ["CNAME", ".git/refs", ".git"] {
        let file = fs::File::open(target.join(path)).unwrap();
        file.set_modified(old).unwrap();
    }
}

/// Everything in a folder that `is_theirs`, each with its kind, content, rights, time and number.
pub(super) fn state(folder: &Path, is_theirs: &dyn Fn(&Path) -> bool) -> BTreeMap<PathBuf, String> {
    fn below(
        root: &Path,
        folder: &Path,
        is_theirs: &dyn Fn(&Path) -> bool,
        found: &mut BTreeMap<PathBuf, String>,
    ) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let about = fs::symlink_metadata(&path).unwrap();
            let within = path.strip_prefix(root).unwrap();
            if is_theirs(within) {
                let content = if about.is_file() {
                    fs::read_to_string(&path).unwrap()
                } else if about.is_symlink() {
                    format!("-> {}", fs::read_link(&path).unwrap().display())
                } else {
                    "a folder".to_owned()
                };
                let (rights, number) = rights_and_number(&about);
                // The system dates a folder anew when something in it changes, and only then.
                let time = about.modified().unwrap();
                let state = format!("{content:?} {rights:o} {number} {time:?}");
                found.insert(within.to_owned(), state);
            }
            if about.is_dir() {
                below(root, &path, is_theirs, found);
            }
        }
    }
    let mut found = BTreeMap::new();
    below(folder, folder, is_theirs, &mut found);
    found
}

#[cfg(unix)]
fn rights_and_number(about: &fs::Metadata) -> (u32, u64) {
    use std::os::unix::fs::MetadataExt as _;
    (about.mode(), about.ino())
}

#[cfg(not(unix))]
fn rights_and_number(_about: &fs::Metadata) -> (u32, u64) {
    (0, 0)
}

/// Whether a path is none of those that the sites of these tests have.
pub(super) fn is_theirs(path: &Path) -> bool {
    let folders = [
        "",
        "assets",
        "design",
        "design/1",
        "design/2",
        "design/9",
        "picture",
        "picture/1",
        "picture/1/full",
        "picture/1/full/max",
        "picture/1/full/max/0",
        "picture/1/a",
        "picture/1/a/b",
        "picture/1/a/b/0",
    ];
    let files = [
        "index.html",
        "info.json",
        "ink.css",
        "default.jpg",
        "picture/a.jpg",
        mark::NAME,
    ];
    !folders.iter().any(|folder| path == Path::new(folder))
        && !files.iter().any(|file| path.ends_with(file))
}

/// A site of pages, an asset, a picture and tiles, whose index says `text`; the page of design 9 or of design 2 is
/// in it.
pub(super) fn site<'a>(dir: &Path, text: &'a str, has_nine: bool) -> SiteParts<'a> {
    let photo = dir.join("photo.jpg");
    if !photo.exists() {
        fs::write(&photo, "pixels").unwrap();
    }
    let mut site = tiled(&dir.join("pack"), "onetwo");
    site.files.insert("index.html", text.as_bytes());
    site.files.insert("design/1/index.html", text.as_bytes());
    site.files.insert("assets/ink.css", b"p{}");
    let other = if has_nine {
        "design/9/index.html"
    } else {
        "design/2/index.html"
    };
    site.files.insert(other, b"another");
    site.pictures.insert("picture/a.jpg".to_owned(), photo);
    site
}

/// The files of a site that compiles made.
pub(super) fn pages(folder: &Path) -> BTreeMap<PathBuf, String> {
    let all = state(folder, &|path| {
        !is_theirs(path) && path != Path::new(mark::NAME)
    });
    let text = |path: &PathBuf| fs::read_to_string(folder.join(path)).ok();
    let texts = all
        .keys()
        .filter_map(|path| Some((path.clone(), text(path)?)));
    texts.collect()
}

#[test]
fn what_no_compile_made_is_carried_over_unchanged() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&site(dir.path(), "one", true), &target).unwrap();
    add_theirs(&target);
    let theirs = state(&target, &is_theirs);
    assert!(theirs.len() > 15, "{theirs:?}");
    for (text, has_nine) in [("two", true), ("three", false), ("four", true)] {
        publish(&site(dir.path(), text, has_nine), &target).unwrap();
        assert_eq!(state(&target, &is_theirs), theirs, "{text}");
        let index = fs::read_to_string(target.join("index.html")).unwrap();
        assert_eq!(index, text);
        assert_eq!(target.join("design/9/index.html").exists(), has_nine);
        assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"]);
    }
    // A tile's folder that goes with its picture stays for what is beside the tile, and no other.
    publish(&parts(&[("index.html", "five")], &[]), &target).unwrap();
    assert_eq!(state(&target, &is_theirs), theirs);
    assert!(!target.join("picture/1/full").exists());
    assert!(!target.join("design/2").exists());
}

#[cfg(unix)]
#[test]
fn the_rights_of_the_site_s_own_folder_stay() {
    use std::os::unix::fs::PermissionsExt as _;
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let mode = || fs::metadata(&target).unwrap().permissions().mode() & 0o7777;
    fs::create_dir(&target).unwrap();
    for text in ["one", "two", "three"] {
        fs::set_permissions(&target, fs::Permissions::from_mode(0o2751)).unwrap();
        publish(&parts(&[("index.html", text)], &[]), &target).unwrap();
        assert_eq!(mode(), 0o2751, "{text}");
    }
}

fn in_the_way(site: &SiteParts<'_>, target: &Path) -> Vec<InTheWay> {
    match publish(site, target) {
        Err(PublishFault::InTheWay { files, .. }) => files,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_foreign_file_where_a_page_belongs_is_named_and_nothing_is_published() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&site(dir.path(), "one", true), &target).unwrap();
    fs::create_dir_all(target.join("design/2/index.html")).unwrap();
    fs::write(target.join("census"), "mine").unwrap();
    fs::create_dir(target.join("owners")).unwrap();
    fs::write(target.join("owners/index.html"), "mine").unwrap();
    fs::write(target.join("owners/list.txt"), "mine").unwrap();
    let before = state(&target, &|_| true);
    let mut next = site(dir.path(), "two", false);
    next.files.insert("census/index.html", b"a page");
    next.files.insert("owners/index.html", b"a page");
    let foreign = |path: &str| InTheWay::Foreign(path.into());
    assert_eq!(
        in_the_way(&next, &target),
        [
            foreign("census"),
            foreign("design/2/index.html"),
            foreign("owners/index.html")
        ]
    );
    assert_eq!(state(&target, &|_| true), before);
    assert_eq!(names(dir.path()), ["pack", "photo.jpg", "web"]);
    let fault = publish(&next, &target).unwrap_err().to_string();
    for name in ["census", "design/2/index.html", "owners/index.html"] {
        assert!(fault.contains(&format!("\n  {name}\n")), "{fault}");
    }
    assert!(fault.contains("move each elsewhere"), "{fault}");

    fs::remove_dir(target.join("design/2/index.html")).unwrap();
    fs::remove_file(target.join("census")).unwrap();
    fs::remove_file(target.join("owners/index.html")).unwrap();
    publish(&next, &target).unwrap();
    let list = fs::read_to_string(target.join("owners/list.txt")).unwrap();
    assert_eq!(list, "mine");
}

/// The staged site is made and removed beside the target, which dates the folder above anew.
fn without_folder_times(state: &BTreeMap<PathBuf, String>) -> Vec<(&PathBuf, &str)> {
    let told = state.iter().map(|(path, told)| {
        let told = match told.split_once("\"a folder\"") {
            Some(_) => "a folder",
            None => told.as_str(),
        };
        (path, told)
    });
    told.collect()
}

#[test]
fn a_page_changed_by_hand_is_not_replaced() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&site(dir.path(), "one", true), &target).unwrap();
    let page = target.join("design/1/index.html");
    // As long as before, so that only its content tells.
    for changed in ["own", "own text"] {
        fs::write(&page, changed).unwrap();
        for text in ["one", "two"] {
            let named = in_the_way(&site(dir.path(), text, true), &target);
            assert_eq!(named, [InTheWay::Changed("design/1/index.html".into())]);
            assert_eq!(fs::read_to_string(&page).unwrap(), changed);
        }
        assert!(intact_site(&target).is_none());
    }
    let fault = publish(&site(dir.path(), "two", true), &target).unwrap_err();
    let said = "\n  design/1/index.html (changed by hand since it was compiled)\n";
    assert!(fault.to_string().contains(said), "{fault}");
    // One that the new site does not have stays.
    let without = parts(&[("index.html", "two")], &[]);
    publish(&without, &target).unwrap();
    assert_eq!(fs::read_to_string(&page).unwrap(), "own text");
    // It is nobody's but its owner's now.
    let named = in_the_way(&site(dir.path(), "two", true), &target);
    assert_eq!(named, [InTheWay::Foreign("design/1/index.html".into())]);
    fs::remove_file(&page).unwrap();
    publish(&site(dir.path(), "two", true), &target).unwrap();
    assert_eq!(fs::read_to_string(&page).unwrap(), "two");
}

#[test]
fn a_page_that_is_only_dated_anew_is_no_change() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&site(dir.path(), "one", true), &target).unwrap();
    let later = SystemTime::now() + Duration::from_secs(3600);
    for path in ["index.html", "design/9/index.html", "assets/ink.css"] {
        let file = fs::File::options().append(true).open(target.join(path));
        file.unwrap().set_modified(later).unwrap();
    }
    assert!(intact_site(&target).is_some());
    let published = publish(&site(dir.path(), "two", false), &target).unwrap();
    assert_eq!((published.written, published.removed), (3, 1));
}

#[test]
fn a_mark_that_cannot_be_read_is_no_mark() {
    let whole = {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        publish(&site(dir.path(), "one", true), &target).unwrap();
        fs::read(target.join(mark::NAME)).unwrap()
    };
    let cases: [&[u8]; 6] = [
        b"",
        b"{}",
        b"not a mark",
        mark::UNFINISHED,
        b"{\"made_by\":\"keyblock 0.1.0\",\"files\":[]}",
        &whole[..whole.len() / 2],
    ];
    for bytes in cases {
        let dir = tempfile::tempdir().unwrap();
        fs::write(dir.path().join("letter.txt"), "dear").unwrap();
        fs::write(dir.path().join(mark::NAME), bytes).unwrap();
        let before = state(dir.path(), &|_| true);
        let refused = publish(&parts(&[("index.html", "one")], &[]), dir.path());
        assert!(
            matches!(refused, Err(PublishFault::NotOurs(_))),
            "{refused:?}"
        );
        assert!(check_target(dir.path()).is_err());
        assert!(intact_site(dir.path()).is_none());
        assert_eq!(state(dir.path(), &|_| true), before);
    }
    // A folder or a link of that name is no mark either.
    let dir = tempfile::tempdir().unwrap();
    fs::create_dir(dir.path().join(mark::NAME)).unwrap();
    assert!(check_target(dir.path()).is_err());
}

#[test]
fn a_mark_that_lists_files_elsewhere_removes_none_of_them() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    let letter = dir.path().join("letter.txt");
    fs::write(&letter, "dear").unwrap();
    publish(&parts(&[("index.html", "one")], &[]), &target).unwrap();
    let file = target.join(mark::NAME);
    let mark = fs::read_to_string(&file).unwrap();
    fs::write(&file, mark.replace("\"index.html\"", "\"../letter.txt\"")).unwrap();
    fs::remove_file(target.join("index.html")).unwrap();
    publish(&parts(&[("a/index.html", "two")], &[]), &target).unwrap();
    assert_eq!(fs::read_to_string(&letter).unwrap(), "dear");
}

#[test]
fn a_site_of_an_earlier_version_is_replaced_with_its_tiles() {
    let dir = tempfile::tempdir().unwrap();
    let target = dir.path().join("web");
    publish(&site(dir.path(), "one", true), &target).unwrap();
    // Earlier marks say how many files a bundle has, and not which.
    let file = target.join(mark::NAME);
    let mut mark: serde_json::Value = serde_json::from_slice(&fs::read(&file).unwrap()).unwrap();
    let bundle = mark["bundles"]["picture/1"].as_object_mut().unwrap();
    assert!(bundle.remove("paths").is_some());
    fs::write(&file, mark.to_string()).unwrap();
    assert!(intact_site(&target).is_some());
    publish(&parts(&[("index.html", "two")], &[]), &target).unwrap();
    assert_eq!(names(&target), [mark::NAME, "index.html"]);
}

#[test]
fn a_folder_of_unknown_origin_beside_the_site_is_left_alone() {
    for (name, is_folder) in [
        (".web.next", true),
        (".web.last", true),
        (".web.next", false),
    ] {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("web");
        let site = parts(&[("index.html", "one")], &[]);
        publish(&site, &target).unwrap();
        let path = dir.path().join(name);
        if is_folder {
            fs::create_dir(&path).unwrap();
            fs::write(path.join("letter.txt"), "dear").unwrap();
        } else {
            fs::write(&path, "dear").unwrap();
        }
        let before = state(dir.path(), &|_| true);
        let refused = publish(&parts(&[("index.html", "two")], &[]), &target);
        assert!(
            matches!(&refused, Err(PublishFault::Unknown(unknown)) if unknown.ends_with(name)),
            "{refused:?}"
        );
        assert_eq!(
            without_folder_times(&state(dir.path(), &|_| true)),
            without_folder_times(&before)
        );
    }
}
