//! The promises of the program to those who publish with it: the same bytes from the same records, nothing private
//! in any byte, and no text of a record that runs in a browser.
//!
//! Here the program runs as a whole. The parts that single stages have in these promises are tested beside their
//! code; `pages` tests what pages must never contain, and `kills` that publishing is all or nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use keyblock::model::finding::Severity;

use crate::markup::{Tag, tags};
use crate::program::{bytes_below, command, compile, copy_of, edit, files_below, keyblock, text};
use crate::small;

const SMALL_PICTURE: &str = "tests/example-catalogue/records/designs/14/pictures/1-recto.jpg";

/// The demonstration's records with one small photograph in place of every other, for builds that
/// are slow at pictures.
fn demonstration() -> tempfile::TempDir {
    let copy = copy_of("demo-site");
    let small = fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join(SMALL_PICTURE)).unwrap();
    for file in files_below(copy.path()) {
        if file.extension().is_some_and(|e| e == "jpg") {
            fs::write(file, &small).unwrap();
        }
    }
    copy
}

#[test]
fn the_same_records_give_the_same_bytes_on_any_number_of_threads() {
    for catalogue in [copy_of("tests/example-catalogue"), demonstration()] {
        let with = |threads: &str| {
            // Pictures are made again, because the promise covers them.
            let _ = fs::remove_dir_all(catalogue.path().join(".keyblock"));
            let site = tempfile::tempdir().unwrap();
            let to = site.path().join("web");
            let ran = command(&["compile", text(catalogue.path()), "--to", text(&to)])
                .env("RAYON_NUM_THREADS", threads)
                .output()
                .unwrap();
            let findings = String::from_utf8(ran.stderr).unwrap();
            assert_eq!(ran.status.code(), Some(0), "{findings}");
            (bytes_below(&to), findings)
        };
        let (one, said_by_one) = with("1");
        let (four, said_by_four) = with("4");
        assert_eq!(said_by_one, said_by_four);
        let names = |site: &BTreeMap<PathBuf, Vec<u8>>| site.keys().cloned().collect::<Vec<_>>();
        assert_eq!(names(&one), names(&four));
        for (path, bytes) in &one {
            assert!(four[path] == *bytes, "{} differs", path.display());
        }
    }
}

/// A catalogue with a private value in every place that can have one.
const PRIVATE: &str = r#"
-- records/holders/owner-b.toml
name = "Querlin Zibbelworth"
kind = "private"
place = "Vossgarten"
country = "NO"
CONSENT
-- records/people/printer.toml
name = "The Printer"
born = "1817"
private = ["born"]
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
makers = [{ person = "printer", role = "printer" }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "owner-b"
owner = "owner-b"
accession = "UNDISCLOSED-NUMBER"
condition = "UNDISCLOSED-CONDITION"
private = ["accession", "condition"]
[observed]
moon = { is = "present", by = "owner-b", basis = "report" }
[[pictures]]
file = "pictures/cleared.jpg"
rights = "CC0-1.0"
credit = "Cleared"
[[pictures]]
file = "pictures/undisclosed-verso.jpg"
name = "undisclosed-name"
side = "verso"
rights = "UNDISCLOSED-RIGHTS"
credit = "UNDISCLOSED-CREDIT"
publish = false
[[provenance]]
owner = { name = "Ombeline Trask", private = ["name"] }
to = "1958"
price = "UNDISCLOSED-PRICE"
private = ["price"]
[[provenance]]
owner = "owner-b"
from = "1998"
-- records/designs/1/impressions/2.toml
status = "located"
publish = false
condition = "UNDISCLOSED-SHEET"
"#;

/// What no file of the site may contain, in lower case: the words of private names too, because an address or
/// a file name might contain one.
const NEVER: [&str; 8] = [
    "querlin",
    "zibbelworth",
    "vossgarten",
    "1817",
    "ombeline",
    "trask",
    "undisclosed",
    "planted",
];

#[test]
fn nothing_private_is_in_any_byte_of_the_site() {
    let site = site_with_private_matter("");
    assert!(site.len() > 20, "only {} files", site.len());
    for (path, bytes) in &site {
        for never in NEVER {
            let path = path.display().to_string().to_lowercase();
            assert!(!path.contains(never), "{path}: {never}");
            assert!(!holds(bytes, never), "{path} says {never}");
        }
    }
    let pictures = |site: &BTreeMap<PathBuf, Vec<u8>>| {
        let jpgs = site
            .keys()
            .filter(|p| p.extension().is_some_and(|e| e == "jpg"));
        jpgs.count()
    };
    assert!(pictures(&site) > 0, "the cleared picture is missing");

    // As a control, the search finds the name where the owner consents to its publication, and no more.
    let consenting = site_with_private_matter("consent = { date = \"2001\", covers = [\"name\"] }");
    let said = |word: &str| consenting.values().any(|bytes| holds(bytes, word));
    assert!(said("querlin") && said("zibbelworth"));
    assert!(!said("vossgarten") && !said("ombeline") && !said("undisclosed"));
    assert_eq!(pictures(&site), pictures(&consenting));
}

fn site_with_private_matter(consent: &str) -> BTreeMap<PathBuf, Vec<u8>> {
    let folder = small::lay_down(&[&PRIVATE.replace("CONSENT", consent)]);
    let pictures = folder.path().join("records/designs/1/pictures");
    fs::create_dir_all(&pictures).unwrap();
    let picture = fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join(SMALL_PICTURE)).unwrap();
    let planted = with_metadata(&picture);
    assert!(holds(&planted, "planted"));
    fs::write(pictures.join("cleared.jpg"), &planted).unwrap();
    fs::write(pictures.join("undisclosed-verso.jpg"), &planted[..]).unwrap();
    compile(folder.path());
    let mut files = bytes_below(&folder.path().join("web"));
    for (path, bytes) in &mut files {
        if path.extension().is_some_and(|ending| ending == "xlsx") {
            *bytes = crate::forms::parts(bytes)
                .into_values()
                .collect::<Vec<_>>()
                .concat();
        }
    }
    files
}

/// A JPEG with words planted where cameras and editors write them: Exif, XMP and IPTC segments, a
/// comment, and behind the picture's end (markers: ITU-T T.81, table B.1).
fn with_metadata(jpeg: &[u8]) -> Vec<u8> {
    let segment = |marker: u8, head: &[u8]| {
        let words = b"PLANTED: 59.9139 N 10.7522 E, the study of Querlin Zibbelworth";
        let length = u16::try_from(head.len() + words.len() + 2).unwrap();
        [&[0xFF, marker][..], &length.to_be_bytes(), head, words].concat()
    };
    // An Exif block of one description (tag 0x010E, ASCII, CIPA DC-008), whose text follows it.
    let exif = b"Exif\0\0II\x2A\0\x08\0\0\0\x01\0\x0E\x01\x02\0\x3E\0\0\0\x1A\0\0\0\0\0\0\0";
    [
        &jpeg[..2],
        &segment(0xE1, exif),
        &segment(0xE1, b"http://ns.adobe.com/xap/1.0/\0"),
        &segment(0xED, b"Photoshop 3.0\0"),
        &segment(0xFE, b""),
        &jpeg[2..],
        b"PLANTED",
    ]
    .concat()
}

/// Whether `bytes` contain `word`, which is in lower case, in any case.
fn holds(bytes: &[u8], word: &str) -> bool {
    bytes
        .windows(word.len())
        .any(|window| window.eq_ignore_ascii_case(word.as_bytes()))
}

/// The demonstration with hostile text at the end of every text of every record that takes it: no
/// page may have a tag, an attribute or an address that the program did not write.
#[test]
fn hostile_text_in_every_field_stays_text() {
    let folder = demonstration();
    let planted = plant_everywhere(folder.path());
    let literature = folder.path().join("records/literature.bib");
    edit(
        &literature,
        "  title     = {",
        "  title     = {<script>alert('bib')</script> ",
    );
    assert!(planted > 1000, "only {planted} texts take hostile text");
    let ran = keyblock(&["compile", text(folder.path())]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let mut shown = BTreeSet::new();
    let mut pages = 0;
    for (path, bytes) in bytes_below(&folder.path().join("web")) {
        if path.extension().is_none_or(|e| e != "html") {
            continue;
        }
        pages += 1;
        let html = String::from_utf8(bytes).unwrap();
        let path = path.display();
        let (tags, text) = tags(&html);
        for tag in &tags {
            check_tag(&path.to_string(), tag);
        }
        assert!(tags.iter().any(is_strict_policy), "{path} has no policy");
        shown.extend(
            text.split("alert('")
                .skip(1)
                .filter_map(|t| t.split('\'').next())
                .map(str::to_owned),
        );
    }
    assert!(pages > 300, "only {pages} pages");
    assert!(shown.contains("bib"), "the book's title is not shown");
    println!(
        "{planted} texts took it, {} are shown on {pages} pages",
        shown.len()
    );
    assert!(
        shown.len() > 500,
        "only {} hostile texts are shown to readers",
        shown.len()
    );
}

/// A policy that lets a page load from its own origin alone, and run no inline script.
fn is_strict_policy(tag: &Tag) -> bool {
    tag.value("http-equiv") == Some("Content-Security-Policy")
        && tag.value("content").is_some_and(|policy| {
            policy.starts_with("default-src 'none';")
                && ["unsafe", "http", "data:", "*"]
                    .iter()
                    .all(|lax| !policy.contains(lax))
        })
}

/// Checks that a tag of a page is one of the theme's, with attributes that run nothing.
fn check_tag(path: &str, tag: &Tag) {
    const NEVER: [&str; 7] = [
        "iframe", "object", "embed", "style", "base", "frame", "applet",
    ];
    assert!(!NEVER.contains(&tag.name.as_str()), "{path}: {tag:?}");
    if tag.name == "script" {
        let source = tag.value("src").is_some_and(|s| s.contains("assets/"));
        let data = ["application/json", "application/ld+json"].map(Some);
        assert!(
            source || data.contains(&tag.value("type")),
            "{path}: {tag:?}"
        );
    }
    for (name, value) in &tag.attributes {
        assert!(
            !name.starts_with("on") && name != "style",
            "{path}: {tag:?}"
        );
        if matches!(
            name.as_str(),
            "href" | "xlink:href" | "src" | "srcset" | "action" | "formaction"
        ) {
            let outward = tag.name == "a" || (tag.name == "link" && value.starts_with("https:"));
            let relative =
                value.starts_with("./") || value.starts_with("../") || value.starts_with('#');
            let scheme = ["https:", "http:", "mailto:"]
                .iter()
                .any(|s| value.starts_with(s));
            // A host serves this page at any address that is not there, so its links begin at the root of the host.
            let of_host = path == "404.html" && value.starts_with('/') && !value.starts_with("//");
            assert!(
                relative || of_host || (outward && scheme),
                "{path}: {tag:?}"
            );
        }
    }
}

/// Puts hostile text into every quoted text of every record, takes it out where reading reports an error (keys,
/// dates, closed lists …), and gives the number of texts that keep it.
fn plant_everywhere(dir: &Path) -> usize {
    let mut records: BTreeMap<PathBuf, Vec<Piece>> = BTreeMap::new();
    let mut number = 0;
    for file in files_below(dir) {
        if file.extension().is_some_and(|e| e == "toml") {
            let pieces = pieces_of(&fs::read_to_string(&file).unwrap(), &mut number);
            records.insert(file, pieces);
        }
    }
    for _ in 0..12 {
        for (file, pieces) in &records {
            let text: String = pieces.iter().map(Piece::written).collect();
            fs::write(file, text).unwrap();
        }
        let reading = keyblock::read::read(dir);
        let mut at_fault: BTreeMap<PathBuf, Vec<std::ops::Range<usize>>> = BTreeMap::new();
        for finding in &reading.findings {
            if finding.severity() == Severity::Error {
                let place = finding.at.place;
                let file = dir.join(reading.catalogue.sources.path(place.file));
                at_fault.entry(file).or_default().push(place.span());
            }
        }
        if at_fault.is_empty() {
            break;
        }
        for (file, places) in at_fault {
            take_back(records.get_mut(&file).unwrap(), &places);
        }
    }
    records
        .values()
        .flatten()
        .filter(|piece| piece.hostile.is_some())
        .count()
}

/// Takes the hostile text back out of the pieces that `places` touch.
fn take_back(pieces: &mut [Piece], places: &[std::ops::Range<usize>]) {
    let mut start = 0;
    for piece in pieces {
        let end = start + piece.written().len();
        let touches = |place: &std::ops::Range<usize>| {
            place.start < end && start < place.end.max(place.start + 1)
        };
        if places.iter().any(touches) {
            piece.hostile = None;
        }
        start = end;
    }
}

/// A stretch of a record: a quoted text, or what stands between two.
struct Piece {
    text: String,
    /// What is put at the end of the text, before its closing quotation marks.
    hostile: Option<String>,
}

impl Piece {
    fn written(&self) -> String {
        let closing = if self.text.starts_with("\"\"\"") {
            3
        } else {
            1
        };
        match &self.hostile {
            Some(hostile) => {
                let (text, closing) = self.text.split_at(self.text.len() - closing);
                format!("{text}{hostile}{closing}")
            }
            None => self.text.clone(),
        }
    }
}

/// The pieces of a record; comments are left alone.
fn pieces_of(record: &str, number: &mut usize) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let plain = |text: &str| Piece {
        text: text.to_owned(),
        hostile: None,
    };
    let mut rest = record;
    while let Some(open) = rest.find(['"', '#']) {
        pieces.push(plain(&rest[..open]));
        rest = &rest[open..];
        let end = if rest.starts_with('#') {
            rest.find('\n').unwrap_or(rest.len())
        } else {
            let marks = if rest.starts_with("\"\"\"") {
                "\"\"\""
            } else {
                "\""
            };
            let length = rest[marks.len()..].find(marks).unwrap();
            length + 2 * marks.len()
        };
        let mut piece = plain(&rest[..end]);
        if rest.starts_with('"') {
            *number += 1;
            piece.hostile = Some(format!(
                " \\\" onmouseover=\\\"a' <script>alert('{number}')</script>\
                 <img src=x onerror=alert({number})><a href='javascript:alert({number})'>x</a>\
                 ]](javascript:alert({number}))"
            ));
        }
        pieces.push(piece);
        rest = &rest[end..];
    }
    pieces.push(plain(rest));
    pieces
}
