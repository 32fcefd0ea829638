//! The search of a large catalogue: the size of its index, and the time to the first result.
//!
//! A generated catalogue of a hundred thousand impressions is compiled; `KEYBLOCK_IMPRESSIONS` sets another number.
//! Printed are the bytes of the index in percent of the text of all pages, the largest files of each kind, and what
//! `tests/bench/search.mjs` measures in Node.js (if it is there): for each of some queries, typed into a freshly
//! opened index over HTTP from this machine, the time until the first entry can be shown, and what was loaded.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

use super::catalogue;

const IMPRESSIONS: usize = 100_000;

/// The bytes below which every part of the index should stay.
const LARGEST: usize = 30_000;

/// Files of one kind.
#[derive(Default)]
struct Files {
    count: usize,
    bytes: usize,
    largest: usize,
}

pub fn measure() {
    let wanted = std::env::var("KEYBLOCK_IMPRESSIONS");
    let impressions = wanted
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(IMPRESSIONS);
    let folder = tempfile::tempdir().unwrap();
    let (records, web) = (folder.path().join("catalogue"), folder.path().join("web"));
    catalogue::lay_down(&records, impressions / catalogue::OF_EACH);
    let begun = Instant::now();
    let mut compile = Command::new(env!("CARGO_BIN_EXE_keyblock"));
    compile.arg("compile").arg(&records).arg("--to").arg(&web);
    let status = compile.stdout(Stdio::null()).stderr(Stdio::null()).status();
    assert!(status.unwrap().success());
    println!(
        "compiled {impressions} impressions in {:.1?}",
        begun.elapsed()
    );

    let mut pages = 0;
    let mut text = 0;
    each_file(&web, &mut |path, bytes| {
        if path.extension().is_some_and(|ending| ending == "html") {
            pages += 1;
            text += text_of(bytes);
        }
    });
    let search = web.join("search");
    let mut all = 0;
    let mut largest = 0;
    for part in ["terms", "more", "records", "narrow"] {
        let mut files = Files::default();
        each_file(&search.join(part), &mut |_, bytes| {
            files.count += 1;
            files.bytes += bytes.len();
            files.largest = files.largest.max(bytes.len());
        });
        all += files.bytes;
        largest = largest.max(files.largest);
        println!(
            "search/{part}: {} files, {:.1} MB, the largest {:.1} kB",
            files.count,
            files.bytes as f64 / 1e6,
            files.largest as f64 / 1e3
        );
    }
    println!(
        "the largest part of the index: {:.1} kB{}",
        largest as f64 / 1e3,
        if largest < LARGEST {
            ""
        } else {
            ", which is too large"
        }
    );
    for name in ["index.json", "narrow.json"] {
        let bytes = fs::metadata(search.join(name)).unwrap().len() as usize;
        all += bytes;
        println!("search/{name}: {:.1} kB", bytes as f64 / 1e3);
    }
    println!(
        "the index: {:.1} MB, {:.2} % of the text of {pages} pages ({:.1} MB)",
        all as f64 / 1e6,
        100.0 * all as f64 / text as f64,
        text as f64 / 1e6
    );
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench/search.mjs");
    match Command::new("node").arg(script).arg(&web).status() {
        Ok(status) => assert!(status.success()),
        Err(_) => println!("Node.js is not there: no times"),
    }
}

fn each_file(folder: &Path, each: &mut dyn FnMut(&Path, &[u8])) {
    // A small catalogue has no word that most entries have, and so no `more`.
    for entry in fs::read_dir(folder).into_iter().flatten() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            each_file(&path, each);
        } else {
            each(&path, &fs::read(&path).unwrap());
        }
    }
}

/// The bytes of a page that are text: outside tags, with runs of white space as one.
fn text_of(page: &[u8]) -> usize {
    let mut is_tag = false;
    let mut is_space = true;
    let mut count = 0;
    for byte in page {
        match byte {
            b'<' => is_tag = true,
            b'>' => is_tag = false,
            _ if is_tag => {}
            byte if byte.is_ascii_whitespace() => {
                count += usize::from(!is_space);
                is_space = true;
            }
            _ => {
                count += 1;
                is_space = false;
            }
        }
    }
    count
}
