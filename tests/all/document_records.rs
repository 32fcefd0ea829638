//! Documents as evidence: their pages, what they tell on other pages, their citations, and what is private of them.

use std::collections::BTreeMap;
use std::fs;

use crate::concealed::{compiled, site_of};
use crate::program::keyblock;
use crate::small::lay_down;

const LEDGER: &str = r#"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
-- records/people/printer.toml
name = "Pia Printer"
-- records/documents/ledger.toml
kind = "ledger"
title = "Ledger of the printing house"
date = "1931-05"
by = "printer"
to = { name = "A customer" }
holder = "museum"
shelfmark = "MS 14"
lang = "uk"
rights = "CC-BY-4.0"
[[tells]]
of = ["printing:1/own", "impression:1.1"]
says = "Sheet 3 of the forty was sold in May."
at = "leaf 3"
certainty = "probable"
[[tells]]
of = "state:1/moonlit"
says = "The moon was cut on 2 May."
[[tells]]
of = "design:1"
says = "Two hundred sheets of paper were bought for the ferry."
[[tells]]
of = "person:printer"
says = "Pia Printer ran the press."
-- records/documents/ledger.md
Found in [the museum](holder:museum).
-- records/documents/ledger.transcription.md
12. May.
Forty *sheets* for [](person:printer).

Paid.
-- records/documents/ledger.en.md
12 May.
Forty sheets, translated.

Paid in full.
And signed.
-- records/documents/note.toml
kind = "letter"
tells = [{ of = "design:1", says = "An undated letter praises the ferry." }]
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
printings = [
  { key = "own", name = "Own printing", kind = "artist", states = "all", printed = { is = 40, cite = "document:ledger", at = "leaf 3" } },
  { key = "late", name = "Late printing", kind = "posthumous", states = "all" },
]
-- records/designs/1/impressions/1.toml
status = "untraced"
observed = { moon = "present" }
identified = { state = "moonlit", printing = "own" }
sightings = [{ date = "1931", cite = "document:ledger" }]
-- records/designs/1/impressions/1.md
As [the ledger](document:ledger) has it.
"#;

/// The text of a page of a site.
fn page<'s>(site: &'s BTreeMap<String, Vec<u8>>, address: &str) -> &'s str {
    text(site, &format!("{address}index.html"))
}

/// The text of a file of a site.
fn text<'s>(site: &'s BTreeMap<String, Vec<u8>>, path: &str) -> &'s str {
    let file = site.get(path).unwrap_or_else(|| panic!("no {path}"));
    std::str::from_utf8(file).unwrap()
}

#[test]
fn a_document_has_a_page_with_what_it_tells_and_its_words_beside_the_translation() {
    let site = site_of(&[LEDGER]);
    let html = page(&site, "document/ledger/");
    for told in [
        "Ledger of the printing house",
        "Pia Printer",
        "A customer",
        "May 1931",
        "Harbour Museum",
        "MS 14",
        "Ukrainian",
        "Translation, English",
        "Sheet 3 of the forty was sold in May (leaf 3) (probable).",
        "href=\"../../design/1/#printing-own\"",
        "href=\"../../design/1/#state-moonlit\"",
        "href=\"../../impression/1.1/\"",
        // A line beginning with a date stays a line.
        "<li id=\"line-1\" class=\"begins\"><p lang=\"uk\">12. May.</p><p>12 May.</p></li>",
        "<em>sheets</em>",
        // The second paragraphs have unequal lines, so they stand part beside part.
        "<div lang=\"uk\"><p>Paid.</p>",
        "Paid in full.<br>",
        "CC BY 4.0",
        "href=\"../../documents/\"",
    ] {
        assert!(html.contains(told), "no {told:?} in {html}");
    }
    assert!(!html.contains("line-3"), "only lines are numbered");
    let cited = html.matches("href=\"../../design/1/\"").count();
    assert!(cited > 1, "it names the design that cites it");
}

#[test]
fn what_a_document_tells_stands_on_the_pages_that_it_tells_of() {
    let site = site_of(&[LEDGER]);
    let link = "href=\"../../document/ledger/\"";
    let design = page(&site, "design/1/");
    for (id, told) in [
        ("state-moonlit", "The moon was cut on 2 May."),
        ("printing-own", "Sheet 3 of the forty was sold in May."),
        ("documents", "Two hundred sheets of paper were bought"),
    ] {
        let (_, part) = design.split_once(&format!("id=\"{id}\"")).unwrap();
        let at = part
            .find(told)
            .unwrap_or_else(|| panic!("no {told:?} at {id}"));
        let line = &part[at..part.len().min(at + 220)];
        assert!(line.contains(link) && line.contains("May 1931"), "{line}");
    }
    let (_, own) = design.split_once("id=\"documents\"").unwrap();
    let (dated, undated) = (own.find("Two hundred"), own.find("An undated letter"));
    assert!(dated < undated, "the oldest document comes first");
    // The citation of a statement leads to the document, with its date and the place in it.
    let (_, cited) = design.split_once("40 impressions printed").unwrap();
    let (_, cited) = cited.split_once(link).expect("its source is named");
    let (cited, _) = cited.split_once(')').unwrap();
    assert!(
        cited.contains("May 1931") && cited.ends_with(", leaf 3"),
        "{cited}"
    );
    let person = page(&site, "person/printer/");
    assert!(person.contains("Pia Printer ran the press."));
    assert!(page(&site, "holder/museum/").contains(link));
}

#[test]
fn documents_are_the_last_kind_of_evidence_on_a_sheet() {
    let site = site_of(&[LEDGER]);
    let html = page(&site, "impression/1.1/");
    let (_, evidence) = html
        .split_once("class=\"evidence\"")
        .expect("there is evidence");
    let (seen, told) = (
        evidence.find("Is there a moon?").unwrap(),
        evidence.find("The moon was cut on 2 May.").unwrap(),
    );
    assert!(seen < told, "what the matrix shows comes first");
    let sold = "Sheet 3 of the forty was sold in May.";
    let (before, _) = evidence.split_once(sold).expect("the printing is told of");
    assert!(
        before.trim_end().ends_with("Document on this sheet</span>"),
        "{before}"
    );
    assert_eq!(
        html.matches(sold).count(),
        1,
        "a fact stands once on a page"
    );
}

#[test]
fn the_index_lists_documents_by_date_and_by_kind() {
    let site = site_of(&[LEDGER]);
    let html = page(&site, "documents/");
    let (dates, kinds) = html.split_once("id=\"by-kind\"").unwrap();
    assert!(dates.contains("<dt>1931</dt>") && dates.contains("<dt>date unknown</dt>"));
    for (list, told) in [
        (dates, "document/ledger/"),
        (kinds, "document/ledger/"),
        (kinds, ">Letter<"),
    ] {
        assert!(list.contains(told), "no {told} in {list}");
    }
    assert!(page(&site, "chronology/").contains("document/ledger/"));
}

#[test]
fn an_unpublished_document_is_as_if_it_were_not_there() {
    let withheld = LEDGER.replacen("kind = \"ledger\"", "publish = false\nkind = \"ledger\"", 1);
    let site = site_of(&[&withheld]);
    for (path, bytes) in &site {
        let text = String::from_utf8_lossy(bytes);
        for secret in [
            "Ledger of the printing house",
            "Sheet 3 of the forty",
            "document/ledger",
        ] {
            assert!(
                !text.contains(secret) && !path.contains("document/ledger"),
                "{secret} in {path}"
            );
        }
    }
    // The statement that cites it stays, without its source.
    assert!(page(&site, "design/1/").contains("40 impressions printed"));
    assert!(page(&site, "documents/").contains("document/note/"));
}

#[test]
fn a_picture_of_a_document_is_its_facsimile_with_tiles() {
    let pictured = LEDGER.replacen(
        "kind = \"ledger\"",
        "kind = \"ledger\"\npictures = [{ file = \"pictures/leaf.png\", name = \"leaf-3\", rights = \"CC0-1.0\" }]",
        1,
    );
    let folder = lay_down(&[&pictured]);
    let pictures = folder.path().join("records/documents/pictures");
    fs::create_dir_all(&pictures).unwrap();
    fs::write(pictures.join("leaf.png"), &*crate::concealed::PICTURE).unwrap();
    let (site, errors) = compiled(folder.path());
    assert_eq!(errors, Vec::<String>::new());
    let html = page(&site, "document/ledger/");
    assert!(html.contains("picture/document/ledger/leaf-3/"), "{html}");
    assert!(site.contains_key("picture/document/ledger/leaf-3/info.json"));
}

#[test]
fn a_document_is_resolved_by_title_shelfmark_and_link() {
    let folder = lay_down(&[LEDGER]);
    for asked in ["Ledger of the printing house", "MS 14", "document:ledger"] {
        let dir = folder.path().to_str().unwrap();
        let ran = keyblock(&["resolve", "--json", "--in", dir, asked]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert!(
            ran.out.contains("\"kind\": \"document\""),
            "{asked}: {}",
            ran.out
        );
        assert!(
            ran.out.contains("/document/ledger/"),
            "{asked}: {}",
            ran.out
        );
    }
}

#[test]
fn tables_and_the_search_have_documents() {
    let site = site_of(&[LEDGER]);
    let table = text(&site, "data/documents.csv");
    assert!(table.contains("Ledger of the printing house") && table.contains("Pia Printer"));
    let said = text(&site, "data/document-statements.csv");
    assert!(
        said.contains("printing:1/own") && said.contains("leaf 3"),
        "{said}"
    );
    let mut maps = site.iter().filter(|(path, _)| path.contains("sitemap"));
    assert!(maps.any(|(_, map)| String::from_utf8_lossy(map).contains("/document/ledger/")));
}
