//! Files for other programs: each belongs to a format of the table, and the page in whose folder it is
//! links to it.

use std::collections::BTreeSet;
use std::path::Path;

use keyblock::exchange::{FORMATS, Format, WHOLE, WholeFormat};
use keyblock::page::Site;

use crate::pages::{page, site};

fn example() -> Site {
    site(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue"))
}

/// The files of a site that are neither pages nor the theme's own.
fn exported(site: &Site) -> BTreeSet<&str> {
    let paths = site.files.keys().map(String::as_str);
    let is_other = |path: &&str| path.ends_with(".html") || path.starts_with("assets/");
    paths.filter(|path| !is_other(path)).collect()
}

/// Whether a file is of a format of the whole catalogue.
fn is_of_the_whole(path: &str) -> bool {
    let mut named = WHOLE.iter().flat_map(|format| format.paths);
    named.any(|named| is_folder(path, named))
}

/// Whether a folder is one that the table names, with `…` for one key or, of a picture, two.
fn is_folder(folder: &str, named: &str) -> bool {
    match named.split_once('…') {
        None => folder == named,
        Some((before, after)) => folder
            .strip_prefix(before)
            .and_then(|rest| rest.strip_suffix(after))
            .is_some_and(|keys| !keys.is_empty() && keys.split('/').count() <= 2),
    }
}

fn is_of(path: &str, format: &Format) -> bool {
    let folder = path.strip_suffix(format.file);
    folder.is_some_and(|folder| format.folders.iter().any(|named| is_folder(folder, named)))
}

fn is_of_whole(path: &str, format: &WholeFormat) -> bool {
    format.paths.iter().any(|named| is_folder(path, named))
}

#[test]
fn every_file_is_of_one_format_and_every_format_has_files() {
    let site = example();
    let files = exported(&site);
    for path in &files {
        let formats = FORMATS.iter().filter(|format| is_of(path, format)).count();
        let whole = WHOLE
            .iter()
            .filter(|format| is_of_whole(path, format))
            .count();
        assert_eq!(formats + whole, 1, "{path}");
    }
    // The pictures of the example are given without tiles, so they have no image services, and no edition of it was
    // issued, so it has no feed (`editions.rs`). It has no documents (`linked_art.rs`).
    for format in FORMATS
        .iter()
        .filter(|format| !["image-service", "atom", "linked-art-words"].contains(&format.name))
    {
        assert!(
            files.iter().any(|path| is_of(path, format)),
            "{}",
            format.name
        );
    }
    // No record of the example had another key, so it has no rules for servers (`former_addresses.rs`).
    for format in WHOLE
        .iter()
        .filter(|format| format.name != "redirect-rules")
    {
        let mut files = files.iter();
        assert!(
            files.any(|path| is_of_whole(path, format)),
            "{}",
            format.name
        );
    }
}

#[test]
fn a_page_links_to_each_file_in_its_folder_and_to_no_other() {
    let site = example();
    // Image services belong to pictures.
    let of_pages = |path: &str| {
        let extensions = [".csv", ".json", ".bib", ".ris", ".xlsx"];
        let is_one = extensions.iter().any(|end| path.ends_with(end));
        is_one && !path.starts_with("picture/")
    };
    let files = exported(&site);
    let mut linked = BTreeSet::new();
    for path in site
        .files
        .keys()
        .filter(|path| path.ends_with("index.html"))
    {
        let folder = path.strip_suffix("index.html").unwrap();
        let text = page(&site, folder);
        let hrefs = text.split(" href=\"./").skip(1);
        let names = hrefs
            .filter_map(|rest| rest.split_once('"'))
            .map(|(name, _)| name);
        let names = names.filter(|name| of_pages(name));
        let paths = names.map(|name| format!("{folder}{name}"));
        linked.extend(paths.filter(|path| !is_of_the_whole(path)));
    }
    let there: BTreeSet<String> = files
        .iter()
        .filter(|path| of_pages(path) && !is_of_the_whole(path))
        .map(|path| (*path).to_owned())
        .collect();
    assert!(!there.is_empty());
    assert_eq!(linked, there);
}
