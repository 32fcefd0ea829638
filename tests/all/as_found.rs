//! What others record of a sheet: a holder's own description and page, identifiers elsewhere, joint owners, several sheets
//! under one accession number.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::concealed::{PICTURE, compiled, site_of};
use crate::program::keyblock;
use crate::small::{TWO_MUSEUMS, audit_lines, lay_down};

/// Three sheets of one album, one of them owned by two museums and described by its holder.
const ALBUM: &str = r#"
-- records/people/printer.toml
name = "Pia Printer"
ids = [{ scheme = "Register of printers", id = "RP 5" }, { scheme = "Union list", id = "https://union.example.org/printer/5" }]
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
technique = ["woodcut"]
ids = [{ scheme = "Union catalogue", id = "UC 12" }]
makers = [{ person = "printer", role = "printer" }]
-- records/designs/1/impressions/1.toml
holder = "museum"
owner = ["museum", "gallery"]
accession = "1951.7"
part = "fol. 2"
web = "https://museum.example.org/objects/1951-7-2"
ids = [{ scheme = "Union catalogue", id = "UC 7781" }, { scheme = "Union list", id = "https://union.example.org/sheet/7781" }]
status = "located"
technique = ["linocut"]
[as_given]
seen = "2024-05"
source = "https://museum.example.org/objects/1951-7-2"
Medium = "Linocut <b>on</b> paper"
"Object number" = "1951.7/2"
-- records/designs/1/impressions/2.toml
holder = "museum"
accession = "1951.7"
part = "fol. 3"
status = "located"
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
-- records/designs/2/impressions/1.toml
holder = "museum"
accession = "1951.7"
part = "fol. 4"
status = "located"
"#;

/// Settings with the date of the edition, without which there is no file for harvesters.
const DATED: &str = r#"
-- catalogue.toml
title = "The Prints"
siglum = "TP"
artist = "artist"
language = "en"
address = "https://prints.example.org"
licence = "CC-BY-4.0"
edition = "1"
dated = "2026-03-01"
contact = "census@example.org"
"#;

type Site = BTreeMap<String, Vec<u8>>;

fn text<'s>(site: &'s Site, path: &str) -> &'s str {
    let file = site.get(path).unwrap_or_else(|| panic!("no {path}"));
    std::str::from_utf8(file).unwrap()
}

fn json(site: &Site, path: &str) -> Value {
    serde_json::from_str(text(site, path)).unwrap()
}

#[test]
fn a_holders_own_description_stands_beside_that_of_the_catalogue() {
    let site = site_of(&[TWO_MUSEUMS, ALBUM]);
    let html = text(&site, "impression/1.1/index.html");
    for told in [
        "As described by the holder",
        "Medium",
        // Its words are text, whatever they look like.
        "Linocut &lt;b&gt;on&lt;/b&gt; paper",
        "Object number",
        "1951.7/2",
        // The number leads to the holder's own page, and says so.
        "<a href=\"https://museum.example.org/objects/1951-7-2\" rel=\"noopener noreferrer external\" title=\"the holder’s own page of this impression\">",
        "1951.7, fol. 2",
        "Identifiers elsewhere",
        "Union catalogue: UC 7781",
        "href=\"https://union.example.org/sheet/7781\"",
        // The technique that differs from the design's.
        "<p>Linocut</p><p>of the design: woodcut</p>",
        "Joint owners",
    ] {
        assert!(html.contains(told), "no {told:?} in {html}");
    }
    let other = text(&site, "impression/1.2/index.html");
    assert!(!other.contains("As described by the holder"));
    assert!(!other.contains("Joint owners"));
    assert!(text(&site, "design/1/index.html").contains("Union catalogue: UC 12"));
    assert!(text(&site, "person/printer/index.html").contains("Register of printers: RP 5"));
}

/// A description in Hebrew.
const HEBREW: &str = r#"
-- records/designs/2/impressions/1.toml
holder = "museum"
status = "located"
[as_given]
lang = "he"
"טכניקה" = "חיתוך עץ"
"#;

/// HTML, "The lang and xml:lang attributes": the language of an element's text, a tag of BCP 47. Number of Hebrew in the AAT:
/// the table in `concepts.rs`, with its source.
#[test]
fn a_holders_own_description_is_marked_with_its_language() {
    let site = site_of(&[TWO_MUSEUMS, ALBUM, HEBREW]);
    let html = text(&site, "impression/2.1/index.html");
    for marked in [
        "<dt><span lang=\"he\" dir=\"rtl\"><bdi>טכניקה</bdi></span></dt>",
        "<p><span lang=\"he\" dir=\"rtl\"><bdi>חיתוך עץ</bdi></span></p>",
    ] {
        assert!(html.contains(marked), "no {marked} in {html}");
    }
    let sheet = json(&site, "impression/2.1/linked-art.json");
    let statements = sheet["referred_to_by"].as_array().unwrap();
    let given = |name: &str| {
        let mut all = statements.iter();
        let found = all.find(|said| said["content"].as_str().unwrap().starts_with(name));
        &found.unwrap()["language"]
    };
    let hebrew = "http://vocab.getty.edu/aat/300388401";
    assert_eq!(given("טכניקה")[0]["id"], hebrew);
    let rows = json(&site, "data/as-given.json");
    let rows = rows.as_array().unwrap().iter();
    let languages: Vec<&Value> = rows.map(|row| &row["language"]).collect();
    // Where no language is recorded, none is said.
    assert_eq!(languages, [&Value::Null, &Value::Null, &Value::from("he")]);
    let plain = text(&site, "impression/1.1/index.html");
    assert!(plain.contains("<dt>Medium</dt>"), "{plain}");
}

/// Linked Art, "Equivalent entities", "Identifiers" and "Web pages" (linked.art/model/base and /model/digital).
#[test]
fn linked_art_leads_back_to_the_holders_record_and_to_the_same_thing_elsewhere() {
    let site = site_of(&[TWO_MUSEUMS, ALBUM]);
    let sheet = json(&site, "impression/1.1/linked-art.json");
    let same = &sheet["equivalent"];
    assert_eq!(same[0]["id"], "https://union.example.org/sheet/7781");
    assert_eq!(same[0]["type"], "HumanMadeObject");
    let numbers = sheet["identified_by"].as_array().unwrap();
    let content = |wanted: &str| numbers.iter().find(|n| n["content"] == wanted);
    assert_eq!(
        content("UC 7781").unwrap()["assigned_by"][0]["_label"],
        "Union catalogue"
    );
    assert!(content("1951.7, fol. 2").is_some());
    assert!(content("https://union.example.org/sheet/7781").is_none());
    let owners = sheet["current_owner"].as_array().unwrap();
    let owners: Vec<&Value> = owners.iter().map(|owner| &owner["_label"]).collect();
    assert_eq!(owners, ["Harbour Museum", "Town Gallery"]);
    let page = "https://museum.example.org/objects/1951-7-2";
    assert!(sheet["subject_of"].to_string().contains(page));
    assert!(
        sheet["referred_to_by"]
            .to_string()
            .contains("Object number: 1951.7/2")
    );
    let person = json(&site, "person/printer/linked-art.json");
    assert_eq!(
        person["equivalent"][0]["id"],
        "https://union.example.org/printer/5"
    );
    let design = json(&site, "design/1/linked-art.json");
    assert!(design["identified_by"].to_string().contains("UC 12"));
}

#[test]
fn the_other_exports_lead_back_too() {
    let site = site_of(&[TWO_MUSEUMS, ALBUM, DATED]);
    let page = "https://museum.example.org/objects/1951-7-2";
    // schema.org, `sameAs`: a page that unambiguously indicates the identity of the thing.
    let html = text(&site, "impression/1.1/index.html");
    let block = html
        .split("<script type=\"application/ld+json\">")
        .nth(1)
        .unwrap();
    assert!(block.contains(page) && block.contains("UC 7781"), "{block}");
    let lido = text(&site, "design/1/lido.xml");
    for told in [
        ">UC 7781</objectPublishedID>",
        ">https://union.example.org/sheet/7781</objectPublishedID>",
        ">https://museum.example.org/objects/1951-7-2</recordInfoLink>",
        ">1951.7, fol. 2</workID>",
        ">RP 5</actorID>",
    ] {
        assert!(lido.contains(told), "no {told} in {lido}");
    }
    let oai = text(&site, "oai.xml");
    assert!(oai.contains(&format!("<dc:relation>{page}</dc:relation>")));
    let sheets = json(&site, "data/impressions.json");
    let sheet = &sheets[0];
    assert_eq!(sheet["part"], "fol. 2");
    assert_eq!(sheet["web"], page);
    assert_eq!(sheet["technique"][0], "linocut");
    assert_eq!(sheet["owner_holder"].as_array().unwrap().len(), 2);
    let ids = json(&site, "data/identifiers.json");
    let ids: Vec<String> = ids
        .as_array()
        .unwrap()
        .iter()
        .map(|row| row["identifier"].as_str().unwrap().to_owned())
        .collect();
    assert_eq!(
        ids,
        [
            "UC 12",
            "UC 7781",
            "https://union.example.org/sheet/7781",
            "RP 5",
            "https://union.example.org/printer/5"
        ]
    );
    let given = json(&site, "data/as-given.json");
    assert_eq!(given[0]["field"], "Medium");
    assert_eq!(given[1]["text"], "1951.7/2");
    assert_eq!(given[1]["seen"], "2024-05");
}

/// IIIF Presentation 3.0, "homepage": a page about the object that the resource represents. The rights and the credit line
/// of the photograph are those of its holder's record.
#[test]
fn a_manifest_leads_to_the_holders_page_and_has_the_rights_of_its_default() {
    let museum = "-- records/holders/museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\n\
                  pictures = { rights = \"CC-BY-4.0\", credit = \"Ada Lens\" }";
    let folder = lay_down(&[TWO_MUSEUMS, museum, ALBUM]);
    let design = folder.path().join("records/designs/1");
    std::fs::create_dir_all(design.join("pictures")).unwrap();
    std::fs::write(design.join("pictures/1.png"), &*PICTURE).unwrap();
    let record = design.join("impressions/1.toml");
    let with_picture = format!(
        "{}\n[[pictures]]\nfile = \"pictures/1.png\"\n",
        std::fs::read_to_string(&record).unwrap()
    );
    std::fs::write(&record, with_picture).unwrap();
    let (site, errors) = compiled(folder.path());
    assert_eq!(errors, Vec::<String>::new());
    let manifest = json(&site, "impression/1.1/manifest.json");
    let pages = manifest["homepage"].as_array().unwrap();
    let pages: Vec<&Value> = pages.iter().map(|page| &page["id"]).collect();
    assert_eq!(
        pages,
        [
            "https://prints.example.org/impression/1.1/",
            "https://museum.example.org/objects/1951-7-2"
        ]
    );
    assert_eq!(
        manifest["rights"],
        "http://creativecommons.org/licenses/by/4.0/"
    );
    let said = manifest["requiredStatement"]["value"]["en"][0].as_str();
    assert!(said.unwrap().contains("Ada Lens"), "{said:?}");
    let pictures = json(&site, "data/pictures.json");
    assert_eq!(pictures[0]["rights"], "CC-BY-4.0");
}

#[test]
fn joint_owners_have_the_sheet_on_their_pages() {
    let site = site_of(&[TWO_MUSEUMS, ALBUM]);
    let gallery = text(&site, "holder/gallery/index.html");
    assert!(gallery.contains("1951.7, fol. 2"), "{gallery}");
    let museum = text(&site, "holder/museum/index.html");
    assert!(museum.contains("owned by "), "{museum}");
    let sheets = text(&site, "holder/gallery/sheets.csv");
    assert!(sheets.contains(",owns,"), "{sheets}");
}

fn resolved(references: &[&str]) -> Vec<Vec<String>> {
    let folder = lay_down(&[TWO_MUSEUMS, ALBUM]);
    let folder = folder.path().to_str().unwrap();
    let ran = keyblock(&[&["resolve", "--in", folder, "--json"], references].concat());
    let document: Value = serde_json::from_str(&ran.out).unwrap();
    let results = document["results"].as_array().unwrap().iter();
    results
        .map(|result| {
            let readings = result["readings"].as_array().unwrap().iter();
            let line = |reading: &Value| {
                let [certainty, key, why] =
                    ["certainty", "key", "why"].map(|name| reading[name].as_str().unwrap());
                format!("{certainty} {key}: {why}")
            };
            readings.map(line).collect()
        })
        .collect()
}

#[test]
fn a_number_of_several_sheets_resolves_to_each_and_an_identifier_to_its_record() {
    let found = resolved(&[
        "1951.7",
        "1951.7, fol. 3",
        "UC 7781",
        "https://museum.example.org/objects/1951-7-2",
        "UC 12",
        "RP 5",
    ]);
    assert_eq!(
        found[0],
        [
            "possible 1.1: accession number, Harbour Museum",
            "possible 1.2: accession number, Harbour Museum",
            "possible 2.1: accession number, Harbour Museum",
        ]
    );
    assert_eq!(found[1], ["certain 1.2: accession number, Harbour Museum"]);
    assert_eq!(found[2], ["certain 1.1: identifier elsewhere"]);
    assert_eq!(found[3], ["certain 1.1: identifier elsewhere"]);
    assert_eq!(found[4], ["certain 1: identifier elsewhere"]);
    assert_eq!(found[5], ["certain printer: identifier elsewhere"]);
}

#[test]
fn two_parts_of_one_number_are_two_sheets_and_raise_no_doubt() {
    let told = |part: &str| {
        let two = format!(
            "-- records/designs/1/design.toml\ntitles = [{{ text = \"The Ferry\" }}]\n\
             -- records/designs/1/impressions/1.toml\nholder = \"museum\"\naccession = \"1951.7\"\nstatus = \"located\"\npart = \"fol. 2\"\n\
             -- records/designs/1/impressions/2.toml\nholder = \"museum\"\naccession = \"1951.7\"\nstatus = \"located\"\n{part}\n"
        );
        let lines = audit_lines(&[TWO_MUSEUMS, &two]);
        lines
            .into_iter()
            .filter(|line| line.contains("may-be-one-sheet"))
            .count()
    };
    assert_eq!(told("part = \"fol. 3\""), 0);
    // The same part of the same number is one thing.
    assert_eq!(told("part = \"fol. 2\""), 1);
}

/// One of the joint owners is recorded alone elsewhere: that is no second owner.
#[test]
fn a_joint_owner_excludes_no_other_owner() {
    const MARK: &str = "marks = [{ kind = \"inscription\", medium = \"pencil\", text = \"For the pilot of the night boat\" }]";
    let two = |owner: &str| {
        let two = format!(
            "-- records/designs/1/design.toml\ntitles = [{{ text = \"The Ferry\" }}]\n\
             -- records/designs/1/impressions/1.toml\nholder = \"museum\"\nowner = {owner}\nstatus = \"located\"\n{MARK}\n\
             -- records/designs/1/impressions/2.toml\nholder = \"museum\"\nowner = \"gallery\"\nstatus = \"located\"\n{MARK}\n"
        );
        let lines = audit_lines(&[TWO_MUSEUMS, &two]);
        lines
            .into_iter()
            .filter(|line| line.contains("may-be-one-sheet"))
            .count()
    };
    assert_eq!(two("[\"museum\", \"gallery\"]"), 1);
    // Two museums that each own it alone are two owners, so two sheets.
    assert_eq!(two("\"museum\""), 0);
}
