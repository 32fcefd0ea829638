//! `keyblock census --doubts`: the listing, the document, and the page for the editors.

use std::fs;
use std::path::{Path, PathBuf};

use crate::pictures::photograph;
use crate::program::{Ran, bytes_below, compile, keyblock, text};
use crate::small::lay_down;

/// Two records tied by one lot, one of them with hostile text, and a third that says it may be the first.
const QUAY: &str = r#"
-- records/holders/owner-a.toml
name = "Hidden Owner"
kind = "private"
-- records/holders/house.toml
name = "The House"
kind = "trade"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
states = [{ key = "dark" }, { key = "moonlit" }]
-- records/designs/1/impressions/1.toml
status = "untraced"
provenance = [{ agent = "house", from = "1938-05-12", lot = "44", how = "sale" }]
-- records/designs/1/impressions/2.toml
holder = "owner-a"
status = "located"
condition = "A <script>alert(1)</script> \"stain\" & a fold."
provenance = [
  { agent = "house", from = "1938-05-12", lot = "44", how = "sale" },
  { owner = "owner-a", from = "1996" },
]
pictures = [{ file = "pictures/two.png", rights = "CC0-1.0", publish = false }]
-- records/designs/1/impressions/3.toml
status = "untraced"
identified = { state = "dark" }
maybe_same_as = [{ impression = "1.1", why = "a guess" }]
-- records/designs/1/impressions/4.toml
status = "untraced"
identified = { state = "moonlit" }
maybe_same_as = [{ impression = "1.3" }]
"#;

fn doubts(folder: &Path, more: &[&str]) -> Ran {
    keyblock(&[&["census", "--in", text(folder), "--doubts"], more].concat())
}

fn laid_down() -> tempfile::TempDir {
    let folder = lay_down(&[QUAY]);
    photograph(folder.path(), "two.png", None);
    folder
}

#[test]
fn the_pairs_are_listed_with_all_that_speaks_for_and_against() {
    let folder = laid_down();
    let ran = doubts(folder.path(), &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    insta::assert_snapshot!(ran.out, @r"
    1. A Quay

    1.1 and 1.2: may be one sheet (not yet stated in any record)
      ties            both were lot 44 at The House, 1938-05-12

    1.1 and 1.3: stated in a record; little else speaks for it
      the record says that they may be one: a guess

    1.3 and 1.4: excluded, unless something recorded as certain is wrong
      the record says that they may be one
      excludes        1.3 is taken to be state i, 1.4 state ii

    3 pairs, 1 of them not yet stated in any record. To settle one, write in one of its records `same_as`, `maybe_same_as` or `not_same_as`, with a `why`.

    Everything recorded was used, including what is private or not published; the pages leave that out.
    ");
    let of_one = keyblock(&["census", "1", "--in", text(folder.path()), "--doubts"]);
    assert_eq!(of_one.out, ran.out);
    let unknown = keyblock(&["census", "9", "--in", text(folder.path()), "--doubts"]);
    assert_eq!(unknown.code, Some(2));
}

#[test]
fn nothing_suspected_is_said() {
    let folder = lay_down(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"A Quay\" }]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n",
    ]);
    let ran = doubts(folder.path(), &[]);
    assert_eq!(ran.code, Some(0));
    assert_eq!(
        ran.out,
        "No two records are suspected to describe one sheet.\n"
    );
}

/// The page, written to a file outside the catalogue.
fn page(folder: &Path) -> (tempfile::TempDir, PathBuf, String) {
    let elsewhere = tempfile::tempdir().unwrap();
    let file = elsewhere.path().join("doubts.html");
    let ran = doubts(folder, &[text(&file)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(ran.out, "");
    let text = fs::read_to_string(&file).unwrap();
    (elsewhere, file, text)
}

#[test]
fn the_page_shows_both_records_and_loads_nothing() {
    let folder = laid_down();
    let (_elsewhere, _, page) = page(folder.path());
    assert!(page.contains("For the editors. Not for publishing."));
    // Editors see names of private owners and unpublished photographs.
    assert!(page.contains("Hidden Owner"));
    assert!(page.contains("data:image/jpeg;base64,/9j/"));
    assert!(page.contains("no photograph is recorded"));
    assert!(page.contains("both were lot 44 at The House, 1938-05-12"));
    for (key, other) in [
        ("same_as", "1.1"),
        ("not_same_as", "1.1"),
        ("maybe_same_as", "1.1"),
    ] {
        let line = format!("{key} = [{{ impression = &quot;{other}&quot;, why = &quot;…&quot; }}]");
        assert!(page.contains(&line), "{line}");
    }
    assert!(page.contains("<dt class=\"against\">excludes</dt>"));
    // Text of a record is never markup.
    assert!(!page.contains("<script"));
    assert!(
        page.contains("A &lt;script&gt;alert(1)&lt;&#x2F;script&gt;")
            || page.contains("A &lt;script&gt;alert(1)&lt;/script&gt;")
    );
    // The page loads nothing.
    for reaching in [
        "http:", "https:", "src=\"//", "url(", "@import", "<link", "<iframe",
    ] {
        assert!(!page.contains(reaching), "{reaching}");
    }
    assert!(page.contains("default-src 'none'"));
}

#[test]
fn the_page_is_the_same_every_time_and_takes_the_place_of_its_like() {
    let folder = laid_down();
    let (_elsewhere, file, first) = page(folder.path());
    let ran = doubts(folder.path(), &[text(&file)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(fs::read_to_string(&file).unwrap(), first);
}

#[test]
fn the_page_is_never_written_into_a_site_nor_over_another_file() {
    let folder = laid_down();
    compile(folder.path());
    let refused = |file: &Path, why: &str| {
        let before = fs::read(file).ok();
        let ran = doubts(folder.path(), &[text(file)]);
        assert_eq!(ran.code, Some(2), "{}", file.display());
        assert!(ran.err.contains(why), "{}", ran.err);
        assert_eq!(fs::read(file).ok(), before);
    };
    let web = folder.path().join("web");
    refused(&web.join("doubts.html"), "would be published");
    refused(&web.join("design/1/doubts.html"), "would be published");
    refused(&web.join("index.html"), "would be published");
    refused(&web.join("../web/doubts.html"), "would be published");
    let own = folder.path().join("own.html");
    fs::write(&own, "<!doctype html><p>Somebody's own.").unwrap();
    refused(&own, "name another file");
    refused(&folder.path().join("no/such/doubts.html"), "no folder");
    refused(&folder.path().join("1"), "not a name for a page");
    // A theme's files are published with the site.
    let assets = folder.path().join("themes/laid/assets");
    fs::create_dir_all(&assets).unwrap();
    refused(&assets.join("doubts.html"), "would be published");
    refused(
        &folder.path().join("themes/doubts.html"),
        "would be published",
    );
    // A site compiled elsewhere carries its mark.
    let elsewhere = tempfile::tempdir().unwrap();
    let site = elsewhere.path().join("site");
    let ran = keyblock(&["compile", text(folder.path()), "--to", text(&site)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    refused(&site.join("doubts.html"), "would be published");
}

#[test]
fn nothing_of_the_pairs_is_in_the_site() {
    let folder = laid_down();
    let beside = folder.path().join("doubts.html");
    let ran = doubts(folder.path(), &[text(&beside)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    compile(folder.path());
    let files = bytes_below(&folder.path().join("web"));
    assert!(files.len() > 20);
    for (path, bytes) in files {
        let text = String::from_utf8_lossy(&bytes);
        for told in [
            "for the editors",
            "For the editors",
            "both were lot 44",
            "may be one sheet with",
        ] {
            assert!(!text.contains(told), "{} holds \"{told}\"", path.display());
        }
    }
}

/// The page is written to another name first, which may be a file of the user's own, or a link to one.
#[cfg(unix)]
#[test]
fn what_stands_beside_the_page_is_written_over_only_if_it_is_a_page() {
    let folder = laid_down();
    let (elsewhere, file, first) = page(folder.path());
    let beside = elsewhere.path().join(".doubts.html.next");
    let refused = || {
        let ran = doubts(folder.path(), &[text(&file)]);
        assert_eq!(ran.code, Some(2), "{}", ran.err);
        assert!(ran.err.contains("name another file"), "{}", ran.err);
    };
    fs::write(&beside, "somebody's own").unwrap();
    refused();
    assert_eq!(fs::read_to_string(&beside).unwrap(), "somebody's own");
    fs::remove_file(&beside).unwrap();
    // A link, even to such a page.
    let own = elsewhere.path().join("own.html");
    fs::write(&own, &first[..200]).unwrap();
    std::os::unix::fs::symlink(&own, &beside).unwrap();
    refused();
    assert_eq!(fs::read_to_string(&own).unwrap(), first[..200]);
    fs::remove_file(&beside).unwrap();
    // A page that an interrupted run left.
    fs::write(&beside, &first[..200]).unwrap();
    let ran = doubts(folder.path(), &[text(&file)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(fs::read_to_string(&file).unwrap(), first);
    assert!(!beside.exists());
}

/// Two lost sheets with one owner, whom both records keep private by key.
#[test]
fn who_is_kept_private_is_named_in_no_listing_and_no_document() {
    let folder = lay_down(&[r#"
-- records/people/bell.toml
name = "Anna Bell"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
-- records/designs/1/impressions/1.toml
status = "untraced"
provenance = [{ owner = "bell", private = ["owner"] }]
marks = [{ kind = "inscription", text = "For Anna, at the Window", private = ["text"] }]
-- records/designs/1/impressions/2.toml
status = "untraced"
provenance = [{ owner = "bell", private = ["owner"] }]
marks = [{ kind = "inscription", text = "For Anna, at the Window", private = ["text"] }]
"#]);
    for more in [&[][..], &["--json"]] {
        let out = doubts(folder.path(), more).out;
        assert!(out.contains("an owner kept private"), "{out}");
        assert!(out.contains("an inscription kept private"), "{out}");
        let out = out.to_lowercase();
        assert!(!out.contains("anna") && !out.contains("bell"), "{out}");
    }
    let (_elsewhere, _, page) = page(folder.path());
    assert!(page.contains("Anna Bell") && page.contains("For Anna, at the Window"));
}
