//! The life of a catalogue from one edition to the next: after states, sheets, designs, holders, keys, numbers and
//! pictures have changed, every address of the edition before leads to what it named, and pages say what changed.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::program::{edit, files_below, keyblock, text};
use crate::small::{TWO_MUSEUMS, lay_down};

const THIRD: &str = r#"
-- catalogue.toml
title = "The Prints"
siglum = "TP"
artist = "artist"
editors = ["artist"]
language = "en"
address = "https://prints.example.org/cat"
licence = "CC-BY-4.0"
edition = "3"
dated = "2026-03-01"
-- records/designs/ferry/design.toml
number = "1"
titles = [{ text = "The Ferry" }]
reference_picture = "ferry.1/recto"
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", box = [10.0, 10.0, 20.0, 20.0] },
  { key = "boat", ask = "A boat?", kind = "presence", rests_on = "matrix" },
]
states = [
  { key = "dark", shows = { moon = "absent", boat = "absent" } },
  { key = "moonlit", shows = { moon = "present", boat = "present" } },
]
printings = [{ key = "own", kind = "artist", states = "all" }]
comparisons = [
  { of = ["ferry.1", "ferry.5"], why = "The paper." },
  { of = ["ferry.1", "ferry.2"], why = "The moon." },
]
-- records/designs/ferry/impressions/1.toml
holder = "museum"
status = "located"
identified = { state = "dark" }
pictures = [{ file = "pictures/1.png", name = "recto", rights = "CC0-1.0" }]
-- records/designs/ferry/impressions/2.toml
holder = "gallery"
status = "located"
identified = { state = "moonlit" }
-- records/designs/ferry/impressions/3.toml
status = "untraced"
identified = { state = "moonlit" }
-- records/designs/ferry/impressions/4.toml
holder = "archive"
accession = "9"
status = "located"
pictures = [{ file = "pictures/1.png", name = "recto", rights = "CC0-1.0" }]
-- records/designs/ferry/impressions/5.toml
holder = "museum"
status = "located"
accession = "Quorn 77"
observed = { boat = "present" }
-- records/holders/archive.toml
name = "County Archive"
kind = "library"
place = "Eastport"
country = "NO"
-- records/holders/shipyard.toml
name = "Shipyard Museum"
kind = "museum"
place = "Westport"
country = "NO"
-- records/designs/lock/design.toml
number = "2"
titles = [{ text = "The Lock" }]
points = [{ key = "bolt", ask = "A bolt?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "whole", shows = { bolt = "present" } }, { key = "broken", shows = { bolt = "absent" } }]
-- records/designs/lock/impressions/1.toml
holder = "gallery"
status = "located"
observed = { bolt = "present" }
-- records/designs/lock/impressions/2.toml
holder = "gallery"
status = "located"
observed = { bolt = "absent" }
-- records/designs/mill/design.toml
number = "3"
titles = [{ text = "The Mill" }]
series = { name = "Mills" }
-- records/designs/mill/impressions/1.toml
holder = "museum"
status = "located"
"#;

/// The addresses of pages below a site, with a slash at the end.
fn addresses(site: &Path) -> BTreeSet<String> {
    let files = files_below(site);
    let paths = files.iter().map(|file| {
        let path = file.strip_prefix(site).unwrap();
        path.to_str().unwrap().to_owned()
    });
    paths
        .filter_map(|path| path.strip_suffix("index.html").map(str::to_owned))
        .collect()
}

fn page(site: &Path, address: &str) -> String {
    fs::read_to_string(site.join(address).join("index.html")).unwrap()
}

/// The address of the page that a reader of `address` arrives at: its own, or that which it leads to.
fn arrived(site: &Path, address: &str) -> String {
    let text = page(site, address);
    if !text.contains("http-equiv=\"refresh\"") {
        return address.to_owned();
    }
    let canonical = text.split("rel=\"canonical\" href=\"").nth(1).unwrap();
    let to = canonical.split('"').next().unwrap();
    let to = to.strip_prefix("https://prints.example.org/cat/").unwrap();
    let there = page(site, to);
    assert!(
        !there.contains("http-equiv=\"refresh\""),
        "{address} leads on from {to}"
    );
    to.to_owned()
}

/// Every file of the edition before is there, but for those of what is not published any more; pages without content say
/// so, and nothing of what they had.
fn vacated(before: &Path, site: &Path) {
    let is_loose = |path: &str| {
        path.starts_with("search/") && path.ends_with(".json")
            || path.starts_with("picture/") && path.matches('/').count() == 1
    };
    let lost: Vec<String> = files_below(before)
        .iter()
        .map(|file| {
            let path = file.strip_prefix(before).unwrap();
            path.to_str().unwrap().to_owned()
        })
        .filter(|path| !is_loose(path) && !site.join(path).exists())
        .filter(|path| !path.ends_with("0/default.jpg"))
        .collect();
    let of_sheet = |path: &String| path.starts_with("impression/ferry.5/");
    assert!(lost.iter().all(of_sheet), "{lost:?}");
    let said = "No longer published";
    let page = |address: &str| page(site, address);
    for address in [
        "impression/ferry.5/",
        "design/ferry/comparison/1/",
        "design/lock/point/bolt/",
        "design/sluice/point/bolt/",
    ] {
        let at = arrived(site, address);
        let text = page(&at);
        assert!(
            text.contains(said) && text.contains("noindex"),
            "{address}: {text}"
        );
        assert!(
            text.contains(">edition 3, 1 March 2026</a>"),
            "{address}: {text}"
        );
    }
    let sheet = page("impression/ferry.5/");
    for secret in ["Quorn", "boat", "Harbour Museum", "The paper"] {
        assert!(!sheet.contains(secret), "{secret} in {sheet}");
    }
    assert!(sheet.contains("href=\"../../design/ferry/\""));
    // The comparison beside it keeps its address.
    assert!(page("design/ferry/comparison/2/").contains("The moon."));
    for (address, words) in [
        ("design/sluice/key/", "No points are recorded now"),
        ("design/sluice/key/sheet/", "No points are recorded now"),
        ("design/sluice/comparison/", "can be compared now"),
        ("series/", "lists nothing here now"),
    ] {
        let text = page(address);
        assert!(
            text.contains(words) && text.contains("noindex"),
            "{address}: {text}"
        );
    }
    assert_eq!(arrived(site, "design/lock/key/"), "design/sluice/key/");
    let sitemap = fs::read_to_string(site.join("sitemap.xml")).unwrap();
    for address in ["impression/ferry.5/", "design/sluice/key/", "/series/"] {
        assert!(!sitemap.contains(address), "{address}");
    }
    let file = |path: &str| fs::read_to_string(site.join(path)).unwrap();
    let lido = file("design/mill/lido.xml");
    assert!(lido.contains("impression/mill.1/") && lido.contains("Withdrawn. By a pupil."));
    assert!(file("holder/archive/collection.json").contains("\"items\":[]"));
    assert_eq!(file("holder/archive/sheets.csv").lines().count(), 1);
    // The register says from which edition on the sheet is not published.
    let register = fs::read_to_string(site.parent().unwrap().join("register.toml")).unwrap();
    let line = register
        .lines()
        .find(|line| line.starts_with("\"ferry.5\""))
        .unwrap();
    assert!(line.contains("unpublished = { \"4\" = \"yes\" }"), "{line}");
}

#[test]
fn every_address_of_an_edition_answers_in_the_next() {
    let folder = lay_down(&[TWO_MUSEUMS, THIRD]);
    let dir = folder.path();
    let pictures = dir.join("records/designs/ferry/pictures");
    fs::create_dir_all(&pictures).unwrap();
    image::RgbImage::new(60, 45)
        .save(pictures.join("1.png"))
        .unwrap();
    let issued = keyblock(&["issue", text(dir)]);
    assert_eq!(issued.code, Some(0), "{}", issued.err);
    let third = folder.path().join("third");
    fs::rename(dir.join("web"), &third).unwrap();

    let designs = dir.join("records/designs");
    // A state is found between two others.
    edit(
        &designs.join("ferry/design.toml"),
        "  { key = \"moonlit\"",
        "  { key = \"boat\", shows = { moon = \"absent\", boat = \"present\" } },\n  { key = \"moonlit\"",
    );
    // Two records were one sheet.
    edit(
        &designs.join("ferry/impressions/3.toml"),
        "status",
        "same_as = [{ impression = \"ferry.2\", why = \"One tear.\" }]\nstatus",
    );
    // A design is withdrawn.
    edit(
        &designs.join("mill/design.toml"),
        "number",
        "standing = \"withdrawn\"\nwhy = \"By a pupil.\"\nnumber",
    );
    // Two museums become one; a key changes, a number, the name of a picture.
    fs::remove_file(dir.join("records/holders/gallery.toml")).unwrap();
    edit(
        &dir.join("records/holders/museum.toml"),
        "name",
        "was = [\"gallery\"]\nname",
    );
    edit(
        &designs.join("lock/design.toml"),
        "number = \"2\"",
        "was = [\"lock\"]\nnumber = \"2a\"",
    );
    fs::rename(designs.join("lock"), designs.join("sluice")).unwrap();
    edit(
        &designs.join("ferry/impressions/1.toml"),
        "name = \"recto\"",
        "name = \"front\", was = [\"recto\"]",
    );
    // A museum is taken over; the only sheet of an archive goes to another holder.
    edit(
        &dir.join("records/holders/shipyard.toml"),
        "name",
        "successor = { holder = \"museum\" }\nname",
    );
    edit(
        &designs.join("ferry/impressions/4.toml"),
        "archive",
        "museum",
    );
    // A sheet is no longer published, nor the points of a design; a design leaves its series.
    edit(
        &designs.join("ferry/impressions/5.toml"),
        "status",
        "publish = false\nstatus",
    );
    edit(
        &designs.join("sluice/design.toml"),
        "titles",
        "private = [\"points\"]\ntitles",
    );
    for sheet in ["1", "2"] {
        edit(
            &designs.join(format!("sluice/impressions/{sheet}.toml")),
            "status",
            "private = [\"observed\"]\nstatus",
        );
    }
    edit(
        &designs.join("mill/design.toml"),
        "series = { name = \"Mills\" }",
        "",
    );
    edit(
        &dir.join("catalogue.toml"),
        "edition = \"3\"",
        "edition = \"4\"",
    );
    edit(&dir.join("catalogue.toml"), "2026-03-01", "2027-03-01");
    let issued = keyblock(&["issue", text(dir)]);
    assert_eq!(issued.code, Some(0), "{}", issued.err);

    let site = dir.join("web");
    for address in addresses(&third) {
        let _ = arrived(&site, &address);
    }
    for (from, to) in [
        ("design/lock/", "design/sluice/"),
        ("impression/lock.1/", "impression/sluice.1/"),
        ("holder/gallery/", "holder/museum/"),
        ("design/mill/", "design/mill/"),
        ("design/ferry/comparison/1/", "design/ferry/comparison/1/"),
    ] {
        assert_eq!(arrived(&site, from), to, "{from}");
    }
    for part in ["state-dark", "state-moonlit", "printing-own", "point-moon"] {
        assert!(
            page(&site, "design/ferry/").contains(&format!("id=\"{part}\"")),
            "{part}"
        );
    }
    vacated(&third, &site);
    assert!(page(&site, "design/mill/").contains("By a pupil."));
    assert!(
        page(&site, "design/ferry/")
            .to_lowercase()
            .contains("formerly <span class=\"numeral\">ii</span>")
    );
    assert!(
        page(&site, "design/sluice/").contains("2 (<a href=\"../../edition/3/\">edition 3</a>)")
    );
    let info = "picture/ferry.1/recto/info.json";
    assert!(third.join(info).is_file() && site.join(info).is_file());

    let changes = page(&site, "changes/");
    for words in [
        "New: state <span class=\"numeral\">ii</span>/iii",
        "ii</span>/ii is now <span class=\"numeral\">iii</span>/iii",
        "The identifier of the entry was lock",
        "umber 2a, formerly 2",
        "Withdrawn.",
        "the same impression as ",
        "gallery now leads to ",
        "Shipyard Museum</a>: now part of <a",
    ] {
        assert!(changes.contains(words), "{words} is not in\n{changes}");
    }
    let feed = fs::read_to_string(site.join("changes/feed.atom")).unwrap();
    for design in ["ferry", "sluice", "mill"] {
        assert!(
            feed.contains(&format!("/edition/4/#edition-design-{design}</id>")),
            "{feed}"
        );
    }
    for (record, told) in [
        ("holder-museum", "Now recorded here: 1.4".to_owned()),
        (
            "record-holder-shipyard",
            "Shipyard Museum: now part of Harbour Museum.".to_owned(),
        ),
    ] {
        let entry = feed
            .split("<entry>")
            .find(|entry| entry.contains(&format!("/edition/4/#edition-{record}</id>")));
        let entry = entry.unwrap_or_else(|| panic!("no {record} in {feed}"));
        assert!(entry.contains(&told), "{entry}");
        assert!(page(&site, "edition/4/").contains(&format!("id=\"edition-{record}\"")));
    }
    let concordance = page(&site, "concordance/");
    let of_third = concordance.split("id=\"own-editions\"").nth(1).unwrap();
    assert!(
        of_third.contains("<td>2</td>") && of_third.contains("1 <span class=\"numeral\">ii</span>")
    );

    // What was withdrawn or taken over is found, and said to be.
    let found = keyblock(&[
        "resolve",
        "--in",
        text(dir),
        "TP 3",
        "mill.1",
        "holder:shipyard",
    ]);
    let told: Vec<&str> = found
        .out
        .lines()
        .filter(|line| line.starts_with("  "))
        .collect();
    assert!(
        told[0].ends_with("number in this catalogue; withdrawn"),
        "{told:?}"
    );
    assert!(told[1].ends_with("; withdrawn"), "{told:?}");
    assert!(
        told[2].ends_with("identifier in this catalogue; merged, see Harbour Museum"),
        "{told:?}"
    );

    // Without a reason nothing may go.
    fs::remove_file(designs.join("ferry/impressions/2.toml")).unwrap();
    edit(
        &dir.join("catalogue.toml"),
        "edition = \"4\"",
        "edition = \"5\"",
    );
    for command in ["compile", "issue"] {
        let ran = keyblock(&[command, text(dir)]);
        assert_eq!(ran.code, Some(1), "{command}");
        let restore = "restore records/designs/ferry/impressions/2.toml";
        assert!(ran.err.contains(restore), "{}", ran.err);
    }
}
