//! Comparisons: the placement of photographs on each other, their scale, the message for a photograph that
//! could not be aligned, and which designs have impressions to compare. The tests provide the registrations, so
//! that only the pages are tested.

use std::collections::BTreeMap;

use keyblock::model::key::PictureKey;
use keyblock::model::registration::{Aligned, Homography, Refusal, Refused, Registration};
use keyblock::page::{
    Alignments, Exports, Input, PublishedPicture, PublishedSize, Site, Tiles, private_owner,
};
use keyblock::press::site;
use serde_json::Value;

use crate::pages::{FERRY, page, site_of};
use crate::small;

/// Five sheets, the first of them the reference; every photograph is 1000 × 800 px and published half
/// as large. The image of the first is 400 px wide and 320 px high as published.
const QUAY: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Quay", lang = "en" }]
reference_picture = "1.1/recto"
size.image = [160, 200]
[[points]]
key = "moon"
ask = "Is there a moon?"
kind = "presence"
rests_on = "matrix"
[[points]]
key = "width"
ask = "How wide is the image?"
kind = "measure"
unit = "mm"
tolerance = 1.5
rests_on = "matrix"
-- records/designs/1/impressions/1.toml
status = "located"
observed = { moon = "present", width = 200 }
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0", box = [10, 10, 80, 80] }]
-- records/designs/1/impressions/2.toml
status = "located"
observed = { moon = ["present", "absent"], width = 201.5 }
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0" }]
-- records/designs/1/impressions/3.toml
status = "located"
observed = { moon = "not-visible" }
pictures = [{ file = "pictures/3.jpg", rights = "CC0-1.0", box = [10, 10, 80, 80] }]
[sheet]
image = [160, 150]
-- records/designs/1/impressions/4.toml
status = "located"
observed = { width = 210 }
-- records/designs/1/impressions/5.toml
status = "located"
-- records/designs/1/pictures/1.jpg
no picture
-- records/designs/1/pictures/2.jpg
no picture
-- records/designs/1/pictures/3.jpg
no picture
"#;

fn recto(impression: u32) -> PictureKey {
    format!("1.{impression}/recto").parse().unwrap()
}

/// The second photograph shows everything half as large, a little to the side; the third was refused.
fn registrations() -> BTreeMap<PictureKey, Registration> {
    let matrix = Homography::new([2.0, 0.0, 10.5, 0.0, 2.0, 20.5, 0.0, 0.0, 1.0]).unwrap();
    let aligned = Aligned {
        matrix,
        confidence: 0.9,
        residual_px: 0.4,
        by_hand: false,
    };
    let refused = Refused {
        why: Refusal::FewAgree,
        confidence: 0.1,
    };
    BTreeMap::from([
        (recto(1), Registration::Reference),
        (recto(2), Registration::Aligned(aligned)),
        (recto(3), Registration::Refused(refused)),
    ])
}

fn quay() -> Site {
    let folder = small::lay_down(&[QUAY]);
    let catalogue = small::sound(folder.path());
    let (theme, _) = keyblock::read::theme(folder.path(), &catalogue.settings.theme.value);
    let owner = private_owner(&theme, &catalogue.settings);
    let (public, studies) = small::published(catalogue, &owner);
    let published = |key: PictureKey| {
        let size = PublishedSize {
            width: 500,
            height: 400,
            address: format!("picture/{}.jpg", key.to_string().replace('/', "-")),
        };
        let picture = PublishedPicture {
            width: 1000,
            height: 800,
            sizes: vec![size],
            tiles: Tiles::default(),
        };
        (key, picture)
    };
    site(&Input {
        public: &public,
        studies: &studies,
        pictures: &public.pictures().map(|(key, _)| published(key)).collect(),
        alignments: &Alignments {
            registrations: registrations(),
            ..Alignments::default()
        },
        exports: &Exports::default(),
        theme: &theme,
    })
    .unwrap()
}

/// The data that the script of the comparisons reads.
fn data(site: &Site) -> Value {
    let text = page(site, "design/1/comparison/");
    let (_, rest) = text.split_once("id=\"compare_data\">").unwrap();
    serde_json::from_str(rest.split_once("</script>").unwrap().0).unwrap()
}

#[test]
fn photographs_are_laid_on_the_reference_as_published() {
    let data = data(&quay());
    assert_eq!(data["frame"]["width"], 500);
    assert_eq!(data["frame"]["height"], 400);
    let onto = |sheet: usize| -> Vec<f64> {
        let rows = data["sheets"][sheet]["onto"].as_array().unwrap();
        rows.iter().map(|n| n.as_f64().unwrap()).collect()
    };
    let near = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-9);
    let nothing = [1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0];
    assert!(near(&onto(0), &nothing), "{:?}", onto(0));
    // Twice as large; the corner of the first pixel, at -1/2, goes to 2 · -1/2 + 10.5 = 9.5, which is
    // 10 px from the corner of the reference, 5 px as published; downwards 10.
    let laid = [2.0, 0.0, 5.0, 0.0, 2.0, 10.0, 0.0, 0.0, 1.0];
    assert!(near(&onto(1), &laid), "{:?}", onto(1));
}

#[test]
fn a_photograph_that_was_refused_says_why() {
    let data = data(&quay());
    assert!(data["sheets"][2]["onto"].is_null());
    assert_eq!(data["sheets"][2]["why"], "too few places match");
    assert!(data["sheets"][3]["picture"].is_null());
    assert!(data["sheets"][3]["why"].is_null());
}

#[test]
fn a_pixel_is_as_large_as_box_size_and_alignment_say() {
    let data = data(&quay());
    let mm = |sheet: usize| data["sheets"][sheet]["picture"]["mm"].as_f64();
    // 200 mm on 400 px.
    assert!((mm(0).unwrap() - 0.5).abs() < 1e-9);
    assert!((data["frame"]["mm"].as_f64().unwrap() - 0.5).abs() < 1e-9);
    // No box, but it is aligned with the reference, at twice the size: a pixel shows twice as much.
    assert!((mm(1).unwrap() - 1.0).abs() < 1e-9);
    // Its box and its own size disagree, and it is not aligned: it gets no scale rather than a wrong one.
    assert_eq!(mm(2), None);
}

#[test]
fn the_table_tells_the_script_what_each_sheet_can_be() {
    let data = data(&quay());
    let moon = &data["rows"][0]["seen"];
    assert_eq!(moon[0], serde_json::json!(["present"]));
    assert_eq!(moon[1], serde_json::json!(["present", "absent"]));
    assert_eq!(moon[2], serde_json::json!([]), "not visible tells nothing");
    assert!(moon[3].is_null(), "nothing was recorded");
    assert_eq!(data["rows"][1]["tolerance"], 1.5);
    assert_eq!(data["counts"].as_array().unwrap().len(), 3);
    assert_eq!(
        data["counts"][2],
        "They differ at 2 of the {all} points recorded."
    );
}

#[test]
fn a_sheet_alone_has_nothing_to_be_compared_with() {
    let alone = site_of(&[FERRY]);
    assert!(!alone.files.contains_key("design/1/comparison/index.html"));
    assert!(!page(&alone, "impression/1.1/").contains("comparison/"));
    let several = quay();
    let link = "href=\"../../design/1/comparison/#of=1.2\"";
    assert!(page(&several, "impression/1.2/").contains(link));
    assert!(page(&several, "design/1/").contains("design/1/comparison/\""));
    // The fifth has neither an observation nor a picture.
    assert!(!page(&several, "impression/1.5/").contains("comparison/"));
}
