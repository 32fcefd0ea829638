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
    aligned_site(QUAY, registrations())
}

/// The site of a catalogue of which no photograph is aligned.
fn site_with_pictures(records: &str) -> Site {
    aligned_site(records, BTreeMap::new())
}

fn aligned_site(records: &str, registrations: BTreeMap<PictureKey, Registration>) -> Site {
    let folder = small::lay_down(&[records]);
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
            registrations,
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
    let rows = data["rows"].as_array().unwrap();
    let points: Vec<&Value> = rows.iter().filter(|row| row["fact"].is_null()).collect();
    let moon = &points[0]["seen"];
    assert_eq!(moon[0], serde_json::json!(["present"]));
    assert_eq!(moon[1], serde_json::json!(["present", "absent"]));
    assert_eq!(moon[2], serde_json::json!([]), "not visible tells nothing");
    assert!(moon[3].is_null(), "nothing was recorded");
    assert_eq!(points[1]["tolerance"], 1.5);
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

/// What a row of a table says: its question, and the texts of its cells.
fn row_of(page: &str, ask: &str) -> Vec<String> {
    let (_, rest) = page
        .split_once(&format!(">{ask}</span>"))
        .unwrap_or_else(|| panic!("no row {ask:?}"));
    let (row, _) = rest.split_once("</tr>").unwrap();
    let cells = row.split("<td").skip(1);
    let text = |cell: &str| {
        let (_, mut rest) = cell.split_once('>').unwrap();
        let mut out = String::new();
        while let Some((before, after)) = rest.split_once('<') {
            out.push_str(before);
            rest = after.split_once('>').map_or("", |(_, rest)| rest);
        }
        out.push_str(rest);
        out
    };
    cells.map(text).collect()
}

/// Two sheets of one design and one of another, on laid papers, with pictures of several views.
const MOULDS: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Quay", lang = "en" }]
[[comparisons]]
of = ["1.1", "1.2"]
why = "One paper."
[[comparisons]]
of = ["1.1", "2.1"]
why = "One mould, two designs."
-- records/designs/1/impressions/1.toml
status = "located"
marks = [{ mark = "oval" }]
pictures = [
  { file = "pictures/1.jpg", rights = "CC0-1.0" },
  { file = "pictures/1v.jpg", side = "verso", rights = "CC0-1.0" },
  { file = "pictures/1t.jpg", name = "light", view = "transmitted", rights = "CC0-1.0", px_per_mm = 5 },
]
sheet = { size = [300, 400], image = [200, 300], chain_lines = 25, thickness = 0.12, watermark = "an anchor", margins = "full" }
-- records/designs/1/impressions/2.toml
status = "located"
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0" }]
sheet = { size = [296.5, 401], image = [201, 302], chain_lines = 26, thickness = 0.2, watermark = "an anchor" }
-- records/designs/2/design.toml
titles = [{ text = "The Ferry", lang = "en" }]
-- records/designs/2/impressions/1.toml
status = "located"
marks = [{ mark = "oval" }]
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0" }]
sheet = { size = [280, 390], sight = true, chain_lines = 29, watermark = "an anchor" }
-- records/marks/oval.toml
kind = "seal"
text = "EK"
-- records/designs/1/pictures/1.jpg
no picture
-- records/designs/1/pictures/1v.jpg
no picture
-- records/designs/1/pictures/1t.jpg
no picture
-- records/designs/1/pictures/2.jpg
no picture
-- records/designs/2/pictures/1.jpg
no picture
"#;

#[test]
fn sheets_are_compared_by_size_paper_and_margins() {
    let site = site_with_pictures(MOULDS);
    let page = page(&site, "design/1/comparison/1/");
    // docs/definitions.md, "Measurements": whole sheets agree within 2 mm, images within 2 mm or 1 %.
    let sheet = row_of(page, "Size (sheet)");
    assert_eq!(
        sheet,
        ["300 × 400 mm", "296.5 × 401 mm", "differ (3.5 × 1 mm)"]
    );
    let image = row_of(page, "Size (image)");
    assert_eq!(image[2], "agree (1 × 2 mm)");
    assert_eq!(
        row_of(page, "Distance between chain lines")[2],
        "agree (1 mm)"
    );
    let thickness = row_of(page, "Thickness of the paper");
    assert_eq!(thickness, ["0.12 mm", "0.2 mm", "differ (0.08 mm)"]);
    assert_eq!(row_of(page, "Watermark")[2], "agree");
    assert_eq!(
        row_of(page, "Margins"),
        ["Full", "not recorded", "cannot be told"]
    );
    assert!(!page.contains("Laid lines"), "nobody counted them");
}

#[test]
fn sheets_of_two_designs_are_compared_as_sheets() {
    let site = site_with_pictures(MOULDS);
    let text = page(&site, "design/1/comparison/2/");
    assert!(text.contains("have no points in common"));
    let sheet = row_of(text, "Size (sheet)");
    assert_eq!(
        sheet[2], "cannot be told",
        "what shows in a mount is not the sheet"
    );
    let chain = row_of(text, "Distance between chain lines");
    assert_eq!(chain[2], "differ (4 mm)");
    // Both designs and both sheets lead there.
    for from in [
        "design/1/",
        "design/2/",
        "impression/1.1/",
        "impression/2.1/",
    ] {
        let href = "design/1/comparison/2/\"";
        assert!(page(&site, from).contains(href), "{from}");
    }
    assert!(!page(&site, "impression/1.2/").contains("comparison/2/"));
}

#[test]
fn the_script_has_every_view_of_a_sheet_and_lays_only_rectos() {
    let site = site_with_pictures(MOULDS);
    let text = page(&site, "design/1/comparison/1/");
    let (_, rest) = text.split_once("id=\"compare_data\">").unwrap();
    let data: Value = serde_json::from_str(rest.split_once("</script>").unwrap().0).unwrap();
    let sheet = &data["sheets"][0];
    assert_eq!(sheet["name"], "recto");
    let others = sheet["others"].as_array().unwrap();
    let shown: Vec<_> = others.iter().map(|other| other["shows"].as_str()).collect();
    assert_eq!(shown, [Some("Verso"), Some("Recto, transmitted light")]);
    for other in others {
        assert!(other["onto"].is_null());
        let why = "it shows another side, a detail, or another light";
        assert_eq!(other["why"], why);
    }
    // 5 px of the file a millimetre; published half as large.
    assert!((others[1]["picture"]["mm"].as_f64().unwrap() - 0.4).abs() < 1e-9);
    assert!(data["sheets"][1]["others"].is_null());
    // Without a script the other photographs are linked.
    assert!(text.contains(">Verso</a>"));
}

#[test]
fn a_mark_and_a_watermark_lead_to_the_comparison_of_their_sheets() {
    let site = site_with_pictures(MOULDS);
    let mark = page(&site, "mark/oval/");
    assert!(mark.contains("href=\"../../mark/oval/comparison/\""));
    let compared = page(&site, "mark/oval/comparison/");
    assert_eq!(row_of(compared, "Size (sheet)").len(), 3);
    let marks = page(&site, "marks/");
    assert!(marks.contains("href=\"../marks/watermarks/comparison/#of=1.1,1.2,2.1\""));
    assert!(page(&site, "marks/watermarks/comparison/").contains("compare_data"));
    // A mark on one pictured sheet alone has nothing to be compared with.
    let alone = MOULDS.replacen("marks = [{ mark = \"oval\" }]\n", "", 1);
    let site = site_with_pictures(&alone);
    assert!(!page(&site, "mark/oval/").contains("comparison/"));
    assert!(!site.files.contains_key("mark/oval/comparison/index.html"));
}
