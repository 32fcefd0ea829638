//! IIIF: manifests and collections obey the Presentation API 3.0, name only what is there, and have the points of a
//! design as annotations.
//!
//! No validator for static files is in a registry (CHECKS, "Pictures: IIIF"), so the rules are checked here, and the
//! checker with one good manifest and sixteen faulty ones. Two parsers that are not ours read the compiled
//! demonstration: PyPI `iiif-prezi3` (`tests/reference/linked_data.py`) and npm `@iiif/parser`
//! (`tests/browser/manifests.test.mjs`).

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use image::{Rgb, RgbImage};
use keyblock::page::Site;
use keyblock::press::{PictureWork, judge};
use serde_json::Value;

use crate::pages::site;
use crate::small;

/// `tests/checks/iiif_presentation_cases.json`: the rule that each case breaks, by the specification 3.0, sections 3 to
/// 5 and appendix A.
const CASES: &str = include_str!("../checks/iiif_presentation_cases.json");

const CONTEXT: &str = "http://iiif.io/api/presentation/3/context.json";

/// The faults of a manifest or collection, each as a sentence.
fn faults(resource: &Value) -> Vec<String> {
    let mut found = Vec::new();
    let kind = resource["type"].as_str().unwrap_or_default();
    expect(&mut found, resource["@context"] == CONTEXT, "the context");
    expect(&mut found, is_address(&resource["id"]), "an id");
    expect(
        &mut found,
        is_label(&resource["label"]),
        "a label in languages",
    );
    let items = resource["items"].as_array();
    match kind {
        "Manifest" => {
            let some = items.is_some_and(|items| !items.is_empty());
            expect(&mut found, some, "at least one canvas");
            for canvas in items.into_iter().flatten() {
                canvas_faults(canvas, &mut found);
            }
        }
        "Collection" => {
            expect(&mut found, items.is_some(), "items");
            for item in items.into_iter().flatten() {
                let known = ["Manifest", "Collection"]
                    .iter()
                    .any(|k| item["type"] == *k);
                expect(&mut found, known && is_address(&item["id"]), "an item");
                expect(&mut found, is_label(&item["label"]), "the label of an item");
            }
        }
        _ => found.push(format!("{kind} is no resource")),
    }
    statement_faults(resource, &mut found);
    for list in ["homepage", "seeAlso", "provider", "thumbnail", "partOf"] {
        let value = &resource[list];
        let is_list = value.as_array().is_some_and(|items| {
            items
                .iter()
                .all(|item| is_address(&item["id"]) && item["type"].is_string())
        });
        expect(&mut found, value.is_null() || is_list, list);
    }
    found
}

fn expect(found: &mut Vec<String>, holds: bool, what: &str) {
    if !holds {
        found.push(what.to_owned());
    }
}

/// The properties that a manifest and a canvas have in common.
fn statement_faults(resource: &Value, found: &mut Vec<String>) {
    let entry = |entry: &Value| is_label(&entry["label"]) && is_label(&entry["value"]);
    let required = &resource["requiredStatement"];
    expect(
        found,
        required.is_null() || entry(required),
        "requiredStatement",
    );
    let metadata = &resource["metadata"];
    let sound = metadata.as_array().is_some_and(|all| all.iter().all(entry));
    expect(found, metadata.is_null() || sound, "metadata");
    let rights = &resource["rights"];
    let allowed = rights.as_str().is_some_and(|rights| {
        rights.starts_with("http://creativecommons.org/")
            || rights.starts_with("http://rightsstatements.org/vocab/")
    });
    expect(found, rights.is_null() || allowed, "rights");
}

fn canvas_faults(canvas: &Value, found: &mut Vec<String>) {
    let id = canvas["id"].as_str().unwrap_or_default();
    expect(found, canvas["type"] == "Canvas", "a canvas");
    expect(
        found,
        is_address(&canvas["id"]) && !id.contains('#'),
        "the id of a canvas",
    );
    let positive = |value: &Value| value.as_u64().is_some_and(|n| n > 0);
    let sized = positive(&canvas["width"]) && positive(&canvas["height"]);
    expect(found, sized, "width and height");
    statement_faults(canvas, found);
    for page in canvas["items"].as_array().into_iter().flatten() {
        expect(
            found,
            page["type"] == "AnnotationPage",
            "a page of annotations",
        );
        expect(found, is_address(&page["id"]), "the id of a page");
        for painting in page["items"].as_array().into_iter().flatten() {
            expect(found, painting["type"] == "Annotation", "an annotation");
            expect(found, painting["motivation"] == "painting", "painting");
            expect(found, painting["target"] == *id, "the canvas as target");
            let body = &painting["body"];
            let is_image = body["type"] == "Image" && is_address(&body["id"]);
            expect(found, is_image, "an image as body");
            for service in body["service"].as_array().into_iter().flatten() {
                let known = service["type"] == "ImageService3" && service["profile"].is_string();
                expect(
                    found,
                    known && is_address(&service["id"]),
                    "an image service",
                );
            }
            let services = &body["service"];
            expect(found, services.is_null() || services.is_array(), "services");
        }
    }
    for page in canvas["annotations"].as_array().into_iter().flatten() {
        for comment in page["items"].as_array().into_iter().flatten() {
            expect(found, comment["motivation"] != "painting", "a comment");
            let target = &comment["target"];
            let at = target
                .as_str()
                .or(target["source"].as_str())
                .unwrap_or_default();
            expect(
                found,
                at.split('#').next() == Some(id),
                "a place on the canvas",
            );
        }
    }
}

fn is_address(value: &Value) -> bool {
    let text = value.as_str().unwrap_or_default();
    text.starts_with("http://") || text.starts_with("https://")
}

fn is_label(value: &Value) -> bool {
    let texts = |value: &Value| {
        let list = value.as_array();
        list.is_some_and(|list| !list.is_empty() && list.iter().all(Value::is_string))
    };
    let languages = value.as_object();
    languages.is_some_and(|map| !map.is_empty() && map.values().all(texts))
}

#[test]
fn the_checker_refuses_every_fault_of_the_table_and_passes_what_is_sound() {
    let table: Value = serde_json::from_str(CASES).unwrap();
    let cases = table["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 17);
    for case in cases {
        let found = faults(&case["manifest"]);
        let valid = case["valid"].as_bool().unwrap();
        assert_eq!(found.is_empty(), valid, "{}: {found:?}", case["name"]);
    }
}

/// The manifests and collections of a site.
fn resources(site: &Site) -> Vec<(&str, Value)> {
    let files = site.files.iter();
    files
        .filter(|(path, _)| path.ends_with("/manifest.json") || path.ends_with("/collection.json"))
        .map(|(path, bytes)| (path.as_str(), serde_json::from_slice(bytes).unwrap()))
        .collect()
}

#[test]
fn the_examples_resources_are_sound_and_lead_to_each_other() {
    let site = site(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue"));
    let resources = resources(&site);
    let paths: Vec<&str> = resources.iter().map(|(path, _)| *path).collect();
    assert_eq!(
        paths,
        [
            "design/14/collection.json",
            "designs/collection.json",
            "holder/harbour-museum/collection.json",
            "impression/14.1/manifest.json"
        ]
    );
    let base = "https://prints.example.org/catalogue/";
    for (path, resource) in &resources {
        assert_eq!(faults(resource), Vec::<String>::new(), "{path}");
        assert_eq!(resource["id"], format!("{base}{path}"));
    }
    let manifest = &resources[3].1;
    // Every title in its language.
    assert_eq!(manifest["label"]["en"][0], "CP 14.1, The Last Ferry");
    assert_eq!(manifest["label"]["uk"][0], "CP 14.1, Паром");
    assert_eq!(
        manifest["partOf"][0]["id"],
        format!("{base}design/14/collection.json")
    );
    assert_eq!(
        manifest["seeAlso"][0]["id"],
        format!("{base}impression/14.1/linked-art.json")
    );
    assert_eq!(
        manifest["rights"],
        "http://creativecommons.org/publicdomain/zero/1.0/"
    );
    let said = manifest["requiredStatement"]["value"]["en"][0]
        .as_str()
        .unwrap();
    assert!(said.contains("Harbour Museum, Northport."), "{said}");
    let collection = &resources[0].1;
    assert_eq!(collection["items"][0]["id"], manifest["id"]);
    assert_eq!(resources[1].1["items"][0]["id"], collection["id"]);
    assert_eq!(resources[2].1["items"][0]["id"], manifest["id"]);
}

/// A catalogue of one design with a photographed sheet, whose picture is the reference, and a drawing.
fn photographed() -> (tempfile::TempDir, Site) {
    let dir = small::lay_down(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
reference_picture = "1.1/recto"
pictures = [{ file = "pictures/one.jpg", name = "drawing", of = "drawing", rights = "CC-BY-4.0" }]
[[points]]
key = "lamps"
ask = "How many lamps?"
kind = "count"
rests_on = "matrix"
box = [10, 20, 30, 40]
[[points]]
key = "moon"
ask = "A moon?"
kind = "presence"
rests_on = "matrix"
box = [50, 0, 50, 25]
-- records/designs/1/impressions/1.toml
status = "untraced"
observed = { lamps = { is = 3, certainty = "probable" } }
pictures = [
  { file = "pictures/one.jpg", rights = "CC0-1.0" },
  { file = "pictures/two.jpg", side = "verso", rights = "All rights reserved", credit = "A Photographer" },
]
-- records/designs/1/impressions/2.toml
status = "untraced"
publish = false
pictures = [{ file = "pictures/two.jpg", rights = "CC0-1.0" }]
"#]);
    for (name, shade) in [("one.jpg", 10), ("two.jpg", 90)] {
        let path = dir.path().join("records/designs/1/pictures").join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        let picture = RgbImage::from_fn(800, 600, |x, y| {
            Rgb([shade, x % 200, y % 200].map(|value| u8::try_from(value).unwrap()))
        });
        picture.save(path).unwrap();
    }
    let judged = judge(dir.path(), &PictureWork::Prepare(&|_, _| {}));
    assert_eq!(judged.tally().errors, 0, "{:?}", judged.findings);
    let (pulled, site) = judged.pull_site(&|_, _| {}).unwrap();
    // What the site names must be among its files, its pictures or their tiles.
    let parts = pulled.parts(&site);
    let mut named: BTreeSet<String> = parts.files.keys().map(|path| (*path).to_owned()).collect();
    named.extend(parts.pictures.keys().cloned());
    for (service, bundle) in &parts.bundles {
        named.insert(service.clone());
        let files = bundle.files.iter();
        named.extend(files.map(|file| format!("{service}/{}", file.path)));
    }
    for (path, resource) in resources(&site) {
        assert_eq!(faults(&resource), Vec::<String>::new(), "{path}");
        each_address(&resource, &mut |address| {
            let Some(local) = address.strip_prefix("https://prints.example.org/") else {
                return;
            };
            let local = local.split('#').next().unwrap();
            // Canvases, and what stands on them, are in the manifest alone.
            let is_within = local.contains("/canvas");
            let is_page = named.contains(&format!("{local}index.html"));
            assert!(
                is_within || is_page || named.contains(local),
                "{path} names {address}"
            );
        });
    }
    (dir, site)
}

fn each_address(value: &Value, take: &mut dyn FnMut(&str)) {
    match value {
        Value::Array(items) => items.iter().for_each(|item| each_address(item, take)),
        Value::Object(object) => {
            for (key, value) in object {
                match value {
                    Value::String(id) if key == "id" => take(id),
                    value => each_address(value, take),
                }
            }
        }
        _ => {}
    }
}

#[test]
fn a_manifest_has_every_picture_with_its_service_and_every_point_at_its_place() {
    let (_dir, site) = photographed();
    let read = |path: &str| -> Value { serde_json::from_slice(&site.files[path]).unwrap() };
    let manifest = read("impression/1.1/manifest.json");
    let canvases = manifest["items"].as_array().unwrap();
    assert_eq!(canvases.len(), 2);
    let recto = &canvases[0];
    let id = "https://prints.example.org/picture/1.1/recto/canvas";
    assert_eq!(recto["id"], id);
    assert_eq!(
        (&recto["width"], &recto["height"]),
        (&800.into(), &600.into())
    );
    let body = &recto["items"][0]["items"][0]["body"];
    assert_eq!(
        body["service"][0]["id"],
        "https://prints.example.org/picture/1.1/recto"
    );
    // Rights that differ stand on each canvas; words that have no address are no `rights`.
    assert!(manifest.get("rights").is_none() && manifest.get("requiredStatement").is_none());
    assert_eq!(
        recto["rights"],
        "http://creativecommons.org/publicdomain/zero/1.0/"
    );
    let verso = &canvases[1];
    assert!(verso.get("rights").is_none() && verso.get("annotations").is_none());
    let credit = verso["requiredStatement"]["value"]["en"][0]
        .as_str()
        .unwrap();
    assert_eq!(credit, "Photograph: A Photographer. All rights reserved.");
    // [10, 20, 30, 40] percent of 800 by 600.
    let points = recto["annotations"][0]["items"].as_array().unwrap();
    assert_eq!(points[0]["target"], format!("{id}#xywh=80,120,240,240"));
    assert_eq!(points[0]["body"]["value"], "How many lamps? 3 (probable)");
    assert_eq!(points[1]["target"], format!("{id}#xywh=400,0,400,150"));
    assert_eq!(points[1]["body"]["value"], "A moon?");
    // The drawing is the design's own, and no impression that may not be shown has a manifest.
    let own = read("design/1/manifest.json");
    assert_eq!(own["items"].as_array().unwrap().len(), 1);
    assert!(!site.files.contains_key("impression/1.2/manifest.json"));
    let collection = read("design/1/collection.json");
    let listed = collection["items"].as_array().unwrap();
    assert_eq!(listed.len(), 2, "the drawing and the one sheet");
}

/// The link of the page of a point is the content state of its place: decoded as the standard says, by code of the
/// test's own.
#[test]
fn the_page_of_a_point_links_to_its_place_in_each_photograph() {
    let (_dir, site) = photographed();
    let page = crate::pages::page(&site, "design/1/point/lamps/");
    let (_, rest) = page.split_once("impression/1.1/?iiif-content=").unwrap();
    let state = decoded(rest.split('"').next().unwrap());
    let state: Value = serde_json::from_str(&state).unwrap();
    assert_eq!(
        state["id"],
        "https://prints.example.org/picture/1.1/recto/canvas#xywh=80,120,240,240"
    );
    assert_eq!(state["type"], "Canvas");
    assert_eq!(
        state["partOf"][0]["id"],
        "https://prints.example.org/impression/1.1/manifest.json"
    );
}

/// Section 6.1 of the IIIF Content State API 1.0, backwards.
fn decoded(state: &str) -> String {
    let signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let mut bits = 0_u32;
    let mut count = 0;
    let mut bytes = Vec::new();
    for sign in state.chars() {
        let value = signs
            .find(sign)
            .unwrap_or_else(|| panic!("{sign} in {state}"));
        bits = bits << 6 | u32::try_from(value).unwrap();
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push(u8::try_from(bits >> count & 255).unwrap());
        }
    }
    let text = String::from_utf8(bytes).unwrap();
    percent_decoded(&text)
}

fn percent_decoded(text: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let digits = [rest.next().unwrap(), rest.next().unwrap()];
            let digits = std::str::from_utf8(&digits).unwrap().to_owned();
            bytes.push(u8::from_str_radix(&digits, 16).unwrap());
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).unwrap()
}

/// A letter of two pages with its words in two languages, one whose picture may not be shown, and a withheld one.
#[test]
fn the_manifest_of_a_document_has_its_pages_and_its_words() {
    let dir = small::lay_down(&[r#"
-- records/documents/letter.toml
kind = "letter"
title = "Letter about paper"
date = "1931-05-12"
by = { name = "A publisher" }
to = "artist"
lang = "uk"
rights = "CC-BY-4.0"
pictures = [
  { file = "pictures/one.jpg", name = "page-1", rights = "CC0-1.0" },
  { file = "pictures/two.jpg", name = "page-2", caption = "The back", rights = "CC0-1.0" },
]
-- records/documents/letter.transcription.md
12. травня
Папір *добрий*.
-- records/documents/letter.en.md
12 May
The paper is *good*.
-- records/documents/bill.toml
title = "Bill"
pictures = [{ file = "pictures/one.jpg", rights = "CC0-1.0", publish = false }]
-- records/documents/withheld.toml
title = "Withheld"
publish = false
pictures = [{ file = "pictures/two.jpg", rights = "CC0-1.0" }]
"#]);
    for (name, shade) in [("one.jpg", 20), ("two.jpg", 60)] {
        let path = dir.path().join("records/documents/pictures").join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        RgbImage::from_pixel(600, 400, Rgb([shade, shade, 90]))
            .save(path)
            .unwrap();
    }
    let judged = judge(dir.path(), &PictureWork::Prepare(&|_, _| {}));
    assert_eq!(judged.tally().errors, 0, "{:?}", judged.findings);
    let (_, site) = judged.pull_site(&|_, _| {}).unwrap();
    let resources = resources(&site);
    let paths: Vec<&str> = resources.iter().map(|(path, _)| *path).collect();
    assert_eq!(
        paths,
        ["document/letter/manifest.json", "documents/collection.json"]
    );
    for (path, resource) in &resources {
        assert_eq!(faults(resource), Vec::<String>::new(), "{path}");
    }
    let manifest = &resources[0].1;
    assert_eq!(manifest["label"]["en"][0], "Letter about paper");
    assert_eq!(
        manifest["summary"]["en"][0],
        "A publisher to The Artist, 12 May 1931"
    );
    assert_eq!(
        manifest["rights"],
        "http://creativecommons.org/publicdomain/zero/1.0/"
    );
    let canvases = manifest["items"].as_array().unwrap();
    assert_eq!(canvases.len(), 2);
    assert_eq!(canvases[1]["label"]["en"][0], "The back");
    assert!(canvases[1].get("annotations").is_none());
    let canvas = "https://prints.example.org/picture/document/letter/page-1/canvas";
    let words = canvases[0]["annotations"][0]["items"].as_array().unwrap();
    let said: Vec<_> = words
        .iter()
        .map(|one| {
            assert_eq!(
                (&one["motivation"], &one["target"]),
                (&"supplementing".into(), &canvas.into())
            );
            let body = &one["body"];
            (
                body["language"][0].as_str().unwrap(),
                body["value"].as_str().unwrap(),
            )
        })
        .collect();
    assert_eq!(
        said,
        [
            ("uk", "12. травня\nПапір добрий."),
            ("en", "12 May\nThe paper is good.")
        ]
    );
    let collection = &resources[1].1;
    assert_eq!(collection["items"][0]["id"], manifest["id"]);
    assert_eq!(manifest["partOf"][0]["id"], collection["id"]);
    assert_eq!(
        manifest["seeAlso"][0]["id"],
        "https://prints.example.org/document/letter/linked-art.json"
    );
    // The page links to it.
    let page = crate::pages::page(&site, "document/letter/");
    assert!(page.contains("manifest.json\""), "{page}");
}
