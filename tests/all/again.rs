//! A compile after which nothing changed: the next one prints the same and writes nothing. Where anything
//! changed, the next one compiles everything again.

use std::fs;
use std::path::{Path, PathBuf};

use crate::program::{bytes_below, compile, copy_of, edit, files_below, keyblock, text};
use crate::small;

/// The file in which a compile keeps its output.
fn kept(dir: &Path) -> PathBuf {
    dir.join(".keyblock/compiled.json")
}

/// Marks the kept text, so that a compile that only prints it again is distinguished from a full one.
fn mark_as_kept(dir: &Path) {
    edit(&kept(dir), "1 doubt", "1 kept doubt");
}

fn says_what_was_kept(dir: &Path) -> bool {
    let ran = keyblock(&["compile", text(dir)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.err.contains("  Doubt "), "{}", ran.err);
    ran.out.contains("1 kept doubt")
}

#[test]
fn a_compile_of_the_same_says_the_same_without_doing_it_over() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    let first = keyblock(&["compile", text(dir)]);
    let site = bytes_below(&dir.join("web"));
    let second = keyblock(&["compile", text(dir)]);
    assert!(first.err.contains("  Doubt "), "{}", first.err);
    assert_eq!(second.err, first.err);
    let holds = |out: &str| out.split("; ").take(2).collect::<Vec<_>>().join("; ");
    assert_eq!(holds(&second.out), holds(&first.out));
    assert!(
        second.out.contains("; nothing was remade; "),
        "{}",
        second.out
    );
    mark_as_kept(dir);
    assert!(says_what_was_kept(dir));
    assert!(bytes_below(&dir.join("web")) == site);
}

#[test]
fn whatever_changed_is_looked_at_again() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    let record = dir.join("records/designs/1/design.toml");
    let settings = dir.join("catalogue.toml");
    let changes: [(&str, &dyn Fn()); 9] = [
        ("a record", &|| edit(&record, "The Ferry", "The Boats")),
        ("the same back again", &|| {
            edit(&record, "The Boats", "The Ferry");
        }),
        ("a new file", &|| {
            fs::write(dir.join("records/designs/1/design.md"), "A note.\n").unwrap();
        }),
        ("a file less", &|| {
            fs::remove_file(dir.join("records/designs/1/design.md")).unwrap();
        }),
        ("the theme", &|| {
            fs::create_dir_all(dir.join("themes/laid/assets")).unwrap();
            fs::write(dir.join("themes/laid/assets/own.css"), "p{}").unwrap();
        }),
        ("the theme's content", &|| {
            edit(&dir.join("themes/laid/assets/own.css"), "p{}", "q{}");
        }),
        ("the settings", &|| {
            let text = fs::read_to_string(&settings).unwrap();
            fs::write(&settings, text + "\n# A comment.\n").unwrap();
        }),
        ("a page cut short", &|| {
            fs::write(dir.join("web/design/1/index.html"), "").unwrap();
        }),
        ("a page gone", &|| {
            fs::remove_file(dir.join("web/design/1/index.html")).unwrap();
        }),
    ];
    compile(dir);
    for (what, change) in changes {
        mark_as_kept(dir);
        assert!(says_what_was_kept(dir), "before: {what}");
        change();
        assert!(!says_what_was_kept(dir), "{what}");
        let page = fs::read_to_string(dir.join("web/design/1/index.html")).unwrap();
        assert!(page.contains("The "), "{what}");
    }
    mark_as_kept(dir);
    let elsewhere = dir.join("elsewhere");
    let ran = keyblock(&["compile", text(dir), "--to", text(&elsewhere)]);
    assert!(ran.out.contains(" files written"), "{}", ran.out);
    assert!(!ran.out.contains("kept"), "{}", ran.out);
}

#[test]
fn what_a_killed_compile_left_is_cleared_away_though_nothing_changed() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    compile(dir);
    mark_as_kept(dir);
    let half = dir.join(".web.next");
    fs::create_dir(&half).unwrap();
    fs::write(half.join("index.html"), "half").unwrap();
    // The mark of a site that is being staged.
    fs::write(half.join(".keyblock-site"), "{ \"unfinished\": true }\n").unwrap();
    assert!(!says_what_was_kept(dir));
    assert!(!half.exists());
}

#[test]
fn the_style_sheet_of_the_ink_is_made_whatever_the_theme_holds() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    compile(dir);
    let ink = dir.join("web/assets/ink.css");
    let made = fs::read(&ink).unwrap();
    let own = dir.join("themes/laid/assets");
    fs::create_dir_all(&own).unwrap();
    fs::write(own.join("ink.css"), "p{}").unwrap();
    compile(dir);
    assert_eq!(fs::read(&ink).unwrap(), made);
}

#[test]
fn an_error_after_a_good_compile_is_told_each_time() {
    let folder = small::lay_down(&[small::DOUBTFUL]);
    let dir = folder.path();
    compile(dir);
    let record = dir.join("records/designs/1/design.toml");
    edit(&record, "\"presence\"", "\"presents\"");
    for _ in 0..2 {
        assert_eq!(keyblock(&["compile", text(dir)]).code, Some(1));
    }
    edit(&record, "\"presents\"", "\"presence\"");
    compile(dir);
}

#[test]
fn a_photograph_and_its_tiles_are_watched_too() {
    let folder = copy_of("tests/example-catalogue");
    let dir = folder.path();
    compile(dir);
    edit(&kept(dir), "no findings", "no kept findings");
    assert!(compile(dir).contains("no kept findings"));

    let tiles = dir.join("web/picture/14.1/recto");
    let tile = files_below(&tiles);
    let tile = tile.iter().find(|file| file.ends_with("default.jpg"));
    let whole = fs::read(tile.unwrap()).unwrap();
    fs::write(tile.unwrap(), "t").unwrap();
    let again = compile(dir);
    assert!(!again.contains("kept"), "{again}");
    assert_eq!(fs::read(tile.unwrap()).unwrap(), whole);

    // Renaming a folder does not change the times of its files.
    edit(&kept(dir), "no findings", "no kept findings");
    let (pictures, elsewhere) = (
        dir.join("records/designs/14/pictures"),
        dir.join("elsewhere"),
    );
    fs::rename(&pictures, &elsewhere).unwrap();
    let ran = keyblock(&["compile", text(dir)]);
    assert_eq!(ran.code, Some(1), "{}", ran.out);
    assert!(ran.err.contains("picture-missing"), "{}", ran.err);
    fs::rename(&elsewhere, &pictures).unwrap();
    assert!(compile(dir).contains("no kept findings"));

    // Another photograph of the same length, with the time of the first.
    let photograph = dir.join("records/designs/14/pictures/1-recto.jpg");
    let time = fs::metadata(&photograph).unwrap().modified().unwrap();
    let mut bytes = fs::read(&photograph).unwrap();
    let last = bytes.len() - 3;
    bytes[last] ^= 1;
    fs::write(&photograph, bytes).unwrap();
    let file = fs::File::options().write(true).open(&photograph).unwrap();
    file.set_modified(time).unwrap();
    let ran = keyblock(&["compile", text(dir)]);
    assert!(!ran.out.contains("kept"), "{}", ran.out);
}
