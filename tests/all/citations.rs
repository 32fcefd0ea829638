//! Citations of designs, states, printings and impressions: on their pages, and as files for reference managers.
//! tests/reference/citations.py reads those of the demonstration with independent libraries.

use biblatex::{Bibliography, ChunksExt as _};
use keyblock::page::Site;
use serde_json::Value;

use crate::pages::{FERRY, page, site_of};

/// A title with signs that BibTeX gives a meaning, and two lines.
const HOSTILE: &str = r#"
-- catalogue.toml
title = "Prints & 100 % {Proofs}"
siglum = "P#1"
artist = "artist"
editors = ["one", "press"]
edition = "2"
dated = "2026-10"
language = "en"
address = "https://prints.example.org/a_b"
contact = "editor@prints.example.org"
-- records/people/artist.toml
name = "The Artist"
-- records/people/one.toml
name = "Edda van Weir"
sort = "van Weir, Edda"
-- records/people/press.toml
name = "Ink, Paper and Press"
-- records/designs/2/design.toml
titles = [{ text = "Fog_1 & {Wind} #2 $3", lang = "en" }]
-- records/designs/2/impressions/4.toml
status = "untraced"
"#;

fn text<'s>(site: &'s Site, path: &str) -> &'s str {
    std::str::from_utf8(&site.files[path]).unwrap()
}

fn bibliography(site: &Site, path: &str) -> Bibliography {
    Bibliography::parse(text(site, path)).unwrap()
}

#[test]
fn a_design_is_cited_with_its_states_and_printings() {
    let site = site_of(&[FERRY]);
    let entries = bibliography(&site, "design/1/citation.bib");
    let keys: Vec<&str> = entries.iter().map(|entry| entry.key.as_str()).collect();
    assert_eq!(keys.len(), 4, "{keys:?}");
    let page = page(&site, "design/1/");
    let items: Vec<Value> = serde_json::from_str(text(&site, "design/1/citation.json")).unwrap();
    for (entry, item) in entries.iter().zip(&items) {
        assert_eq!(entry.key, item["id"].as_str().unwrap());
        let url = item["URL"].as_str().unwrap();
        assert_eq!(entry.get("url").unwrap().format_verbatim(), url);
        // The address is on the page, and its fragment is a place of it.
        assert!(page.contains(url), "{url}");
        if let Some((_, fragment)) = url.split_once('#') {
            assert!(page.contains(&format!("id=\"{fragment}\"")), "{fragment}");
        }
    }
    let shorts: Vec<&str> = items
        .iter()
        .map(|item| item["title-short"].as_str().unwrap())
        .collect();
    let number = shorts[0];
    assert_eq!(
        shorts[1..3],
        [format!("{number} i/ii"), format!("{number} ii/ii")]
    );
    for short in shorts {
        assert!(page.contains(short), "{short}");
    }
    // A sheet has one citation, its own.
    let sheet = bibliography(&site, "impression/1.1/citation.bib");
    assert_eq!(sheet.len(), 1);
}

#[test]
fn documents_and_series_are_cited_by_their_titles() {
    let site = site_of(&[
        FERRY,
        "-- records/documents/ledger.toml\ntitle = \"Ledger of the press\"\nkind = \"ledger\"\n\
         -- records/series/crossings.toml\ntitle = \"Crossings\"\nissued = \"set\"\n",
    ]);
    for (address, key, title) in [
        ("document/ledger/", "document-ledger", "Ledger of the press"),
        ("series/crossings/", "series-crossings", "Crossings"),
    ] {
        let page = page(&site, address);
        let entries = bibliography(&site, &format!("{address}citation.bib"));
        let entry = entries.iter().next().unwrap();
        assert!(entry.key.ends_with(key), "{}", entry.key);
        assert_eq!(entry.get("title").unwrap().format_verbatim(), title);
        let short = entry.get("shorttitle").unwrap().format_verbatim();
        let url = entry.get("url").unwrap().format_verbatim();
        assert!(url.ends_with(address), "{url}");
        assert!(short.ends_with(&format!(", {title}")), "{short}");
        assert!(page.contains(&short) && page.contains(&url), "{short}");
        for file in ["citation.json", "citation.ris"] {
            assert!(text(&site, &format!("{address}{file}")).contains(title));
            assert!(page.contains(&format!("href=\"./{file}\"")), "{file}");
        }
    }
}

#[test]
fn signs_with_a_meaning_in_a_format_come_through_it() {
    let site = site_of(&[HOSTILE]);
    let title = "P#1 2, Fog_1 & {Wind} #2 $3";
    let entries = bibliography(&site, "design/2/citation.bib");
    let entry = entries.iter().next().unwrap();
    assert_eq!(entry.key, "p1-2");
    assert_eq!(entry.get("title").unwrap().format_verbatim(), title);
    assert_eq!(
        entry.get("booktitle").unwrap().format_verbatim(),
        "Prints & 100 % {Proofs}"
    );
    let editors: Vec<String> = entry
        .editors()
        .unwrap()
        .into_iter()
        .flat_map(|(people, _)| people)
        .map(|person| person.to_string())
        .collect();
    assert_eq!(editors.len(), 2, "{editors:?}");
    let json: Vec<Value> = serde_json::from_str(text(&site, "design/2/citation.json")).unwrap();
    assert_eq!(json[0]["title"], title);
    assert_eq!(
        json[0]["editor"],
        serde_json::json!([
            { "family": "van Weir", "given": "Edda" },
            { "literal": "Ink, Paper and Press" }
        ])
    );
    assert_eq!(
        json[0]["issued"]["date-parts"],
        serde_json::json!([[2026, 10]])
    );
    let ris = text(&site, "design/2/citation.ris");
    let lines: Vec<&str> = ris.split("\r\n").collect();
    assert_eq!(lines.first(), Some(&"TY  - ENCYC"));
    for line in [
        format!("TI  - {title}").as_str(),
        "A2  - van Weir, Edda",
        "A2  - Ink, Paper and Press",
        "PY  - 2026",
        "DA  - 2026/10//",
        "UR  - https://prints.example.org/a_b/design/2/",
        "ER  - ",
    ] {
        assert!(lines.contains(&line), "{line}: {lines:?}");
    }
}

#[test]
fn a_correction_carries_the_address_and_the_edition() {
    let site = site_of(&[HOSTILE]);
    let link = "mailto:editor@prints.example.org?subject=P%231%202%2E4%20%28edition%202%2C%20October%202026%29\
                &amp;body=https%3A%2F%2Fprints%2Eexample%2Eorg%2Fa%5Fb%2Fimpression%2F2%2E4%2F";
    let page = page(&site, "impression/2.4/");
    assert!(page.contains(&format!("href=\"{link}\"")), "{page}");
}

/// The short form would say names and year a second time beside the full reference.
#[test]
fn the_literature_names_each_author_once() {
    let records = "-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n\
         -- records/literature.bib\n\
         @book{ray-1970, author = {Ray, Clara}, title = {A List}, date = {1970}, address = {Kelderhaven}}\n\
         @book{sale-1949, title = {A Sale}, date = {1949}, location = {Kelderhaven}}\n";
    let site = site_of(&[records]);
    let literature = page(&site, "literature/");
    for line in [
        "<li><a href=\"../lit/ray-1970/\">Ray, Clara. 1970</a>. <em>A List</em>. Kelderhaven.</li>",
        "<li><a href=\"../lit/sale-1949/\"><em>A Sale</em>. 1949</a>. Kelderhaven.</li>",
    ] {
        assert!(literature.contains(line), "{literature}");
    }
}
