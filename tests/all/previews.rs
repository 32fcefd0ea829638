//! What the head of a page says to other programs: schema.org as a data block, and Open Graph.
//!
//! `tests/reference/linked_data.py` reads the blocks of the compiled demonstration with the types of schema.org.

use std::path::Path;

use keyblock::page::Site;
use serde_json::Value;

use crate::pages::{page, site, site_of};

fn example() -> Site {
    site(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue"))
}

/// The things of a page's data block.
fn things(text: &str) -> Vec<Value> {
    let begin = "<script type=\"application/ld+json\">";
    let Some((_, rest)) = text.split_once(begin) else {
        return Vec::new();
    };
    let (block, _) = rest.split_once("</script>").unwrap();
    let block: Value = serde_json::from_str(block).unwrap();
    assert_eq!(block["@context"], "https://schema.org");
    block["@graph"].as_array().unwrap().clone()
}

fn property(text: &str, name: &str) -> Option<String> {
    let begin = format!("<meta property=\"{name}\" content=\"");
    let (_, rest) = text.split_once(&begin)?;
    Some(rest.split('"').next()?.to_owned())
}

#[test]
fn a_sheet_is_a_work_of_art_of_its_design() {
    let site = example();
    let things = things(page(&site, "impression/14.1/"));
    let work = &things[0];
    assert_eq!(work["@type"], "VisualArtwork");
    let base = "https://prints.example.org/catalogue/";
    assert_eq!(work["@id"], format!("{base}impression/14.1/"));
    assert_eq!(work["name"], "The Last Ferry, 14.1");
    assert_eq!(work["exampleOfWork"]["@id"], format!("{base}design/14/"));
    assert_eq!(work["creator"][0]["name"], "The Artist");
    assert_eq!(
        work["creator"].as_array().unwrap().len(),
        1,
        "each maker once"
    );
    assert_eq!(work["height"]["value"], 255.0);
    assert_eq!(work["height"]["unitCode"], "MMT");
    assert_eq!(work["creditText"], "Harbour Museum, Northport");
    // "About 1927" is no date that a search engine could take.
    assert!(work.get("dateCreated").is_none());
    let trail = things.last().unwrap();
    let names: Vec<&str> = trail["itemListElement"]
        .as_array()
        .unwrap()
        .iter()
        .map(|step| step["name"].as_str().unwrap())
        .collect();
    assert_eq!(
        names[..3],
        ["The Colour Prints", "Prints", "14, The Last Ferry"]
    );
    assert_eq!(names.len(), 4);
}

#[test]
fn every_page_but_two_kinds_has_a_trail_and_a_private_owner_has_no_record() {
    let site = example();
    let mut with_trail = 0;
    for (path, bytes) in &site.files {
        let Some(folder) = path.strip_suffix("index.html") else {
            continue;
        };
        let text = std::str::from_utf8(bytes).unwrap();
        let things = things(text);
        let has_trail = things.iter().any(|t| t["@type"] == "BreadcrumbList");
        assert_eq!(has_trail, !folder.is_empty(), "{folder}");
        with_trail += usize::from(has_trail);
        assert_eq!(
            property(text, "og:url").as_deref(),
            canonical(text),
            "{folder}"
        );
    }
    assert!(with_trail > 20);
    let kinds = |folder: &str| -> Vec<String> {
        let things = things(page(&site, folder));
        let kinds = things
            .iter()
            .map(|t| t["@type"].as_str().unwrap().to_owned());
        kinds.collect()
    };
    assert_eq!(
        kinds("holder/harbour-museum/"),
        ["Museum", "BreadcrumbList"]
    );
    assert_eq!(kinds("holder/owner-a/"), ["BreadcrumbList"]);
    assert_eq!(kinds("person/artist/"), ["Person", "BreadcrumbList"]);
    assert_eq!(kinds("data/"), ["Dataset", "BreadcrumbList"]);
    assert_eq!(kinds(""), ["WebSite"]);
    let missing = std::str::from_utf8(&site.files["404.html"]).unwrap();
    assert!(things(missing).is_empty() && property(missing, "og:title").is_none());
}

fn canonical(text: &str) -> Option<&str> {
    let (_, rest) = text.split_once("<link rel=\"canonical\" href=\"")?;
    rest.split('"').next()
}

#[test]
fn a_link_to_a_sheet_shows_its_picture() {
    let site = example();
    let text = page(&site, "impression/14.1/");
    let title = property(text, "og:title").unwrap();
    assert!(title.starts_with("14.1. The Last Ferry"), "{title}");
    let image = property(text, "og:image").unwrap();
    let base = "https://prints.example.org/catalogue/";
    assert_eq!(image, format!("{base}picture/14.1-recto.jpg"));
    assert_eq!(property(text, "og:image:width").as_deref(), Some("480"));
    assert_eq!(property(text, "og:locale").as_deref(), Some("en"));
    // A sheet without photographs shows none, and so does a list.
    for folder in ["impression/14.3/", "holders/"] {
        let text = page(&site, folder);
        assert!(property(text, "og:image").is_none(), "{folder}");
        assert!(property(text, "og:description").is_some(), "{folder}");
    }
}

#[test]
fn the_data_are_a_dataset_with_licence_and_editors() {
    let site = example();
    let things = things(page(&site, "data/"));
    let data = &things[0];
    assert_eq!(data["name"], "The Colour Prints");
    assert!(
        data["description"].as_str().unwrap().len() > 50,
        "search engines ask for 50 characters"
    );
    assert_eq!(
        data["license"],
        "http://creativecommons.org/licenses/by/4.0/"
    );
    assert_eq!(data["version"], "0.1");
    assert_eq!(data["dateModified"], "2026-11-01");
    assert_eq!(data["creator"][0]["name"], "The Editor");
}

#[test]
fn no_text_of_a_record_ends_the_block() {
    let hostile = "</script><script>alert(1)</script><!--";
    let literal = format!(
        "-- records/designs/1/design.toml\ntitles = [{{ text = \"{hostile}\" }}]\n\
         -- records/people/editor.toml\nname = \"{hostile}\"\n"
    );
    let site = site_of(&[&literal]);
    for folder in ["design/1/", "person/editor/", "designs/"] {
        let text = page(&site, folder);
        let things = things(text);
        assert!(!things.is_empty(), "{folder}");
        assert!(!text.contains("<script>alert"), "{folder}");
    }
    let design = &things(page(&site, "design/1/"))[0];
    assert_eq!(design["name"], hostile);
}
