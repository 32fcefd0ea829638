//! Strips and the pages of points: the order of sheets, their captions, pictures that must not be shown, and
//! the caution beside tones. The tests provide registrations, details and tones, so that only the pages are
//! tested.

use std::collections::BTreeMap;

use keyblock::model::key::{Key, PictureKey};
use keyblock::model::registration::{Aligned, Homography, Refusal, Refused, Registration};
use keyblock::page::{
    Alignments, Exports, Input, PublishedPicture, PublishedSize, Site, Tiles, Tone, private_owner,
};
use keyblock::press::site;

use crate::pages::page;
use crate::small;

/// Two states, two printings, sheets recorded in another order than that of their states; one of
/// them a private collector's, one whose photograph may not be published.
const HARBOUR: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Harbour", lang = "en" }]
reference_picture = "1.2/recto"
[[points]]
key = "moon"
ask = "Is there a moon?"
kind = "presence"
rests_on = "matrix"
box = [10, 10, 20, 20]
[[points]]
key = "sky"
ask = "How is the sky inked?"
kind = "choice"
rests_on = "inking"
box = [5, 5, 60, 30]
values = { even = "one even tone", wiped = "wiped by hand" }
[[points]]
key = "paper-mark"
ask = "Is there a blind stamp?"
kind = "presence"
rests_on = "mark"
[[states]]
key = "dark"
shows = { moon = "absent" }
[[states]]
key = "moonlit"
shows = { moon = "present" }
[[printings]]
key = "own"
kind = "artist"
states = "all"
shows = { sky = "wiped" }
[[printings]]
key = "late"
kind = "posthumous"
states = ["moonlit"]
shows = { sky = "even" }
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
accession = "1962.44"
credit = "Gift of the pilots"
identified = { state = "moonlit", printing = "late" }
observed = { moon = "present", sky = "even" }
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0", credit = "Harbour Museum" }]
-- records/designs/1/impressions/2.toml
status = "located"
holder = "museum"
identified = { state = "moonlit", printing = "own" }
observed = { moon = "absent" }
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0", credit = "Harbour Museum" }]
-- records/designs/1/impressions/3.toml
status = "located"
holder = "owner-a"
identified = { state = "dark", printing = "own" }
pictures = [{ file = "pictures/3.jpg", rights = "CC-BY-4.0", credit = "The owner" }]
-- records/designs/1/impressions/4.toml
status = "located"
holder = "museum"
identified = { state = "dark", printing = "own" }
pictures = [{ file = "pictures/4.jpg", rights = "CC0-1.0", publish = false }]
-- records/designs/1/impressions/5.toml
status = "located"
holder = "museum"
pictures = [{ file = "pictures/5.jpg", rights = "CC0-1.0" }]
-- records/designs/1/pictures/1.jpg
no picture
-- records/designs/1/pictures/2.jpg
no picture
-- records/designs/1/pictures/3.jpg
no picture
-- records/designs/1/pictures/4.jpg
no picture
-- records/designs/1/pictures/5.jpg
no picture
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
-- records/holders/owner-a.toml
name = "Ambrose Wyvern"
kind = "private"
place = "Tarn"
"#;

fn recto(impression: u32) -> PictureKey {
    format!("1.{impression}/recto").parse().unwrap()
}

fn key(key: &str) -> Key {
    key.parse().unwrap()
}

fn size(width: u32, height: u32, address: String) -> PublishedSize {
    PublishedSize {
        width,
        height,
        address,
    }
}

fn aligned(confidence: f64) -> Registration {
    Registration::Aligned(Aligned {
        matrix: Homography::IDENTITY,
        confidence,
        residual_px: 0.4,
        by_hand: false,
    })
}

fn tone(lightness: f64) -> Tone {
    Tone {
        mean: [lightness, -3.25, 8.0],
        spread: [2.0, 0.5, 0.25],
        paper_is_given: false,
    }
}

/// The site, with details of sheets 1 to 4 at the moon and the sky; 5 was refused.
fn harbour(alignments: impl FnOnce(&mut Alignments)) -> Site {
    let folder = small::lay_down(&[HARBOUR]);
    let catalogue = keyblock::read::read(folder.path()).catalogue;
    let (theme, _) = keyblock::read::theme(folder.path(), &catalogue.settings.theme.value);
    let owner = private_owner(&theme, &catalogue.settings);
    let (public, studies) = small::published(catalogue, &owner);
    let pictures = public
        .pictures()
        .map(|(key, _)| {
            let address = format!("picture/{}.jpg", key.to_string().replace('/', "-"));
            let picture = PublishedPicture {
                width: 480,
                height: 320,
                sizes: vec![size(480, 320, address)],
                tiles: Tiles::default(),
            };
            (key, picture)
        })
        .collect();
    let mut found = Alignments::default();
    for (impression, registration) in [
        (1, aligned(0.9)),
        (2, Registration::Reference),
        (3, aligned(0.8)),
        (4, aligned(0.99)),
    ] {
        let of = |point: &str| {
            let address = format!("picture/{impression}-{point}.jpg");
            (key(point), size(300, 300, address))
        };
        found
            .details
            .insert(recto(impression), BTreeMap::from([of("moon"), of("sky")]));
        found.registrations.insert(recto(impression), registration);
    }
    found.registrations.insert(
        recto(5),
        Registration::Refused(Refused {
            why: Refusal::FewAgree,
            confidence: 0.05,
        }),
    );
    for (impression, lightness) in [(1, 62.0), (2, 50.0)] {
        found.tones.insert(
            recto(impression),
            BTreeMap::from([(key("sky"), tone(lightness))]),
        );
    }
    alignments(&mut found);
    site(&Input {
        public: &public,
        studies: &studies,
        pictures: &pictures,
        alignments: &found,
        exports: &Exports::default(),
        theme: &theme,
    })
    .unwrap()
}

fn plain_harbour() -> Site {
    harbour(|_| ())
}

/// The strips of a page, as text.
fn strips(page: &str) -> Vec<&str> {
    page.split("<ul class=\"strip")
        .skip(1)
        .filter_map(|rest| rest.split("</ul>").next())
        .collect()
}

/// The places of `parts` in a text, which must hold each.
fn places(text: &str, parts: &[&str]) -> Vec<usize> {
    parts
        .iter()
        .map(|part| {
            text.find(part)
                .unwrap_or_else(|| panic!("{part} in {text}"))
        })
        .collect()
}

#[test]
fn a_strip_follows_states_then_printings_and_says_whose_each_sheet_is() {
    let site = plain_harbour();
    let design = page(&site, "design/1/");
    let strips = strips(design);
    assert_eq!(strips.len(), 2, "the moon and the sky");
    // 1.3 is of the first state, 1.2 of the second and the artist's printing, 1.1 of the late one.
    let order = places(
        strips[0],
        &[
            "picture/3-moon.jpg",
            "picture/2-moon.jpg",
            "picture/1-moon.jpg",
        ],
    );
    assert!(order.is_sorted(), "{order:?}");
    let first = strips[0].split("</li>").next().unwrap();
    assert!(first.contains("<a class=\"handle\" href=\"../../impression/1.3/\">1.3</a>"));
    assert!(
        first.contains("<span class=\"numeral\">i</span>"),
        "{first}"
    );
    // Whose each sheet is stands on the page of the point.
    let point = page(&site, "design/1/point/moon/");
    assert!(point.contains("Harbour Museum"), "{point}");
    assert!(point.contains("(<span class=\"accession\">1962.44</span>)"));
    assert!(strips[0].contains("alt=\"Detail of 1.3: Is there a moon?\""));
}

#[test]
fn a_private_owner_and_an_unpublished_photograph_stay_out_of_strips() {
    let site = plain_harbour();
    for address in ["design/1/", "design/1/point/moon/", "design/1/point/sky/"] {
        let text = page(&site, address);
        assert!(text.contains("3-"), "the private sheet itself is shown");
        assert!(
            !text.contains("Wyvern") && !text.contains("Tarn"),
            "{address}"
        );
        assert!(text.contains("Private collection"), "{address}");
        assert!(!text.contains("picture/4-"), "{address}");
    }
}

#[test]
fn every_point_has_a_page_and_the_table_leads_to_it() {
    let site = plain_harbour();
    let design = page(&site, "design/1/");
    for point in ["moon", "sky", "paper-mark"] {
        let address = format!("design/1/point/{point}/");
        assert!(page(&site, &address).contains("<h1>"));
        assert!(
            design.contains(&format!("href=\"../../{address}\"")),
            "{point}"
        );
    }
    let moon = page(&site, "design/1/point/moon/");
    assert!(moon.contains("<h1>Is there a moon?</h1>"));
    assert!(
        moon.contains("<span class=\"numeral\">i</span> from <span class=\"numeral\">ii</span>")
    );
    // A point that rests on a mark has no strip, and separates nothing.
    let mark = page(&site, "design/1/point/paper-mark/");
    assert!(strips(mark).is_empty());
    assert!(!mark.contains("id=\"separates\""));
}

#[test]
fn the_page_of_a_point_groups_by_state_and_names_what_is_missing() {
    let site = plain_harbour();
    let moon = page(&site, "design/1/point/moon/");
    let groups = strips(moon);
    assert_eq!(groups.len(), 2, "one a state");
    assert!(groups[0].contains("3-moon.jpg") && !groups[0].contains("2-moon.jpg"));
    assert!(groups[1].contains("2-moon.jpg") && groups[1].contains("1-moon.jpg"));
    // Refused, with the reason in words.
    let handle = "<a class=\"handle\" href=\"../../../../impression/1.5/\">1.5</a>";
    assert!(moon.contains(&format!(
        "{handle} is not shown: its photograph could not be aligned (too few places match)."
    )));
    // The credits of the photographs, sheets with the same one together.
    assert!(
        moon.contains("1.2: Photograph: Harbour Museum. CC0 1.0."),
        "{moon}"
    );
    assert!(moon.contains("1.1: Gift of the pilots. Photograph: Harbour Museum. CC0 1.0."));
    assert!(moon.contains("1.3: Photograph: The owner. CC BY 4.0."));
    // What was seen, and that one sheet contradicts its identification.
    assert!(moon.contains("One observation does not agree with the identification"));
    assert!(moon.contains("but recorded: present"));
}

#[test]
fn a_photograph_that_ends_before_a_point_is_named_there() {
    let site = harbour(|found| {
        let of_first = found.details.get_mut(&recto(1)).unwrap();
        of_first.remove(&key("moon"));
    });
    let moon = page(&site, "design/1/point/moon/");
    assert!(moon.contains("1.1</a> is not shown: its photograph does not reach this detail."));
    assert!(!page(&site, "design/1/point/sky/").contains("ends before"));
}

#[test]
fn a_state_shows_its_most_surely_aligned_certain_sheet() {
    let site = plain_harbour();
    let design = page(&site, "design/1/");
    let row = design.split("id=\"point-moon\"").nth(1).unwrap();
    let row = row.split("</tr>").next().unwrap();
    // State i: 1.3, for the photograph of 1.4 is not published. State ii: 1.1, for on 1.2, the
    // reference itself, no moon was seen.
    let order = places(row, &["picture/3-moon.jpg", "picture/1-moon.jpg"]);
    assert!(order.is_sorted());
    assert!(!row.contains("2-moon.jpg") && !row.contains("4-moon.jpg"));
}

#[test]
fn tones_stand_beside_their_caution_on_the_page_of_the_point_and_nowhere_else() {
    let site = plain_harbour();
    let sky = page(&site, "design/1/point/sky/");
    let (before, table) = sky.split_once("id=\"tones\"").unwrap();
    assert!(!before.contains("CIEDE2000"));
    let order = places(
        table,
        &[
            "never as evidence",
            "CIEDE2000 from",
            "50.0 ± 2.0",
            "62.0 ± 2.0",
        ],
    );
    assert!(order.is_sorted(), "{order:?}");
    assert!(table.contains("−3.2 ± 0.5") || table.contains("−3.3 ± 0.5"));
    // L* 50 and 62 at one colour: 12 divided by SL at 56, 1.0722 (Sharma, Wu, Dalal 2005): 11.2.
    assert!(table.contains("<td class=\"figure\">11.2</td>"), "{table}");
    assert!(table.contains("found beside the image"));
    for (path, text) in &site.files {
        let is_there = std::str::from_utf8(text).is_ok_and(|text| text.contains("50.0 ± 2.0"));
        assert_eq!(is_there, path == "design/1/point/sky/index.html", "{path}");
    }
}

#[test]
fn without_alignments_there_are_pages_of_points_but_no_strips() {
    let site = harbour(|found| *found = Alignments::default());
    for address in ["design/1/", "design/1/point/moon/"] {
        let text = page(&site, address);
        assert!(strips(text).is_empty(), "{address}");
        assert!(!text.contains("id=\"strip"), "{address}");
    }
}
