//! What no compile made, in the folder of a site: it stays, or the compile is refused and names it.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use crate::program::{bytes_below, compile, copy_of, edit, files_below, keyblock, text};
use crate::small;

/// Foreign files in a site.
pub const THEIRS: [(&str, &str); 6] = [
    ("CNAME", "prints.example.org"),
    (".git/HEAD", "ref: refs/heads/main"),
    (".git/objects/ab/cdef", "an object"),
    ("own/page.html", "a page of one's own"),
    ("design/14/notes.txt", "beside a page"),
    ("picture/readme.txt", "beside the pictures"),
];

/// Foreign folders in a site, with nothing in them.
pub const EMPTY: [&str; 2] = [".git/refs/heads", "empty"];

/// Puts the foreign files and folders into a site.
pub fn add_theirs(site: &Path) {
    for (path, text) in THEIRS {
        let file = site.join(path);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(file, text).unwrap();
    }
    for path in EMPTY {
        fs::create_dir_all(site.join(path)).unwrap();
    }
}

/// Takes the foreign files out of what was read of a site, where each must be as it was put.
pub fn take_theirs(site: &mut BTreeMap<PathBuf, Vec<u8>>) {
    for (path, text) in THEIRS {
        let found = site.remove(Path::new(path));
        assert_eq!(found.as_deref(), Some(text.as_bytes()), "{path}");
    }
}

#[test]
fn a_site_keeps_version_control_a_cname_and_pages_of_ones_own() {
    let folder = copy_of("tests/example-catalogue");
    let dir = folder.path();
    compile(dir);
    let site = dir.join("web");
    add_theirs(&site);
    let title = [
        "The Colour Prints",
        "The Prints in Colour",
        "The Colour Prints",
    ];
    for change in title.windows(2) {
        // Nothing changed, then every page.
        assert!(compile(dir).contains("; nothing was remade; "));
        edit(&dir.join("catalogue.toml"), change[0], change[1]);
        assert!(!compile(dir).contains("; nothing was remade; "));
        let mut left = bytes_below(&site);
        take_theirs(&mut left);
        for path in EMPTY {
            assert!(site.join(path).is_dir(), "{path}");
        }
        let fresh = tempfile::tempdir().unwrap();
        let to = fresh.path().join("web");
        assert_eq!(
            keyblock(&["compile", text(dir), "--to", text(&to)]).code,
            Some(0)
        );
        assert!(left == bytes_below(&to), "the rest is not the new site");
    }
}

#[test]
fn a_file_in_the_way_and_a_page_changed_by_hand_are_named_and_nothing_is_published() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    compile(dir);
    let site = dir.join("web");
    // The records get a second design, whose page would lie here.
    let theirs = site.join("design/2/index.html");
    fs::create_dir_all(theirs.parent().unwrap()).unwrap();
    fs::write(&theirs, "mine").unwrap();
    let page = site.join("design/1/index.html");
    let edited = fs::read_to_string(&page).unwrap() + "<!-- mine -->";
    fs::write(&page, &edited).unwrap();
    fs::create_dir_all(dir.join("records/designs/2")).unwrap();
    let record = "titles = [{ text = \"The Quay\" }]\n";
    fs::write(dir.join("records/designs/2/design.toml"), record).unwrap();
    let before = bytes_below(&site);
    for _ in 0..2 {
        let ran = keyblock(&["compile", text(dir)]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""));
        assert!(
            ran.err.contains("keyblock: nothing was published: "),
            "{}",
            ran.err
        );
        assert!(ran.err.contains("\n  design/2/index.html\n"), "{}", ran.err);
        let changed = "\n  design/1/index.html (changed by hand since it was compiled)\n";
        assert!(ran.err.contains(changed), "{}", ran.err);
        assert!(bytes_below(&site) == before, "the site changed");
    }
    fs::remove_file(theirs).unwrap();
    fs::remove_file(&page).unwrap();
    compile(dir);
    assert!(fs::read_to_string(&page).unwrap().contains("The Ferry"));
}

#[test]
fn a_site_whose_mark_is_damaged_is_foreign() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    compile(dir);
    let mark = dir.join("web/.keyblock-site");
    let whole = fs::read(&mark).unwrap();
    for damaged in [&b""[..], b"{}", &whole[..whole.len() - 3]] {
        fs::write(&mark, damaged).unwrap();
        let before = bytes_below(&dir.join("web"));
        let ran = keyblock(&["compile", text(dir)]);
        assert_eq!(ran.code, Some(1));
        assert!(
            ran.err.contains("holds files that no compile made"),
            "{}",
            ran.err
        );
        assert!(bytes_below(&dir.join("web")) == before);
    }
    fs::write(&mark, whole).unwrap();
    assert!(compile(dir).contains("; nothing was remade; "));
}

#[test]
fn no_site_is_compiled_among_the_records() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    let before = bytes_below(dir);
    for (to, why) in [
        ("records/web", "keeps its own files in “records”"),
        ("records", "keeps its own files in “records”"),
        ("records/pages/web", "keeps its own files in “records”"),
        ("themes/laid", "keeps its own files in “themes”"),
        (".keyblock/web", "keeps its own files in “.keyblock”"),
        ("", "it is the folder of the catalogue itself"),
        ("..", "the catalogue is in it"),
    ] {
        let ran = keyblock(&["compile", text(dir), "--to", text(&dir.join(to))]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{to}");
        assert!(ran.err.contains(why), "{to}: {}", ran.err);
        assert!(ran.err.contains("\n  name another folder"), "{}", ran.err);
        assert!(bytes_below(dir) == before, "{to}: something was written");
    }
    let ran = keyblock(&["compile", text(dir), "--to", text(&dir.join("public/site"))]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(files_below(&dir.join("public/site")).len() > 10);
}
