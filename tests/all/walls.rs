//! Prints by eye, the sections in the head of every page, the pages beside a page, and a theme of a catalogue's own.

use std::fs;
use std::path::Path;

use keyblock::model::theme::Theme;

use crate::pages::{FERRY, page, site_of, site_with};
use crate::program::{compile, files_below};
use crate::small;

const SECOND: &str = r#"
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
date = "1927"
series = { name = "Harbour Views", position = "3" }
subjects = ["quays"]
-- records/designs/3/design.toml
titles = [{ text = "Not by the Artist" }]
standing = "rejected"
why = "By another hand."
-- records/designs/1/impressions/2.toml
status = "untraced"
-- records/designs/1/impressions/3.toml
status = "untraced"
"#;

#[test]
fn designs_hang_on_a_wall_and_stand_in_a_list_at_its_own_address() {
    let site = site_of(&[FERRY, SECOND]);
    let (wall, list) = (page(&site, "designs/"), page(&site, "designs/list/"));
    // Nothing is photographed, so the prints stand in words (`sparse` has walls with photographs).
    assert!(wall.contains("<ol class=\"named\">") && !wall.contains("class=\"entries\""));
    assert!(list.contains("class=\"entries\"") && !list.contains("class=\"prints\""));
    assert!(wall.contains("href=\"../designs/list/\""), "{wall}");
    assert!(list.contains("href=\"../../designs/\""));
    // A print by another hand stands apart.
    let (accepted, apart) = wall.split_once("id=\"apart\"").unwrap();
    assert!(accepted.contains("The Quay") && !accepted.contains("Not by the Artist"));
    assert!(apart.contains("Not by the Artist"));
    // The fragment that was on the wall's page before still leads somewhere.
    assert!(wall.contains("id=\"by-date\"") && list.contains("id=\"by-date\""));
    let series = page(&site, "series/");
    assert!(series.contains(
        "<span class=\"quiet\"><bdi>3.</bdi></span> <span class=\"handle\"><bdi>2</bdi></span>"
    ));
}

#[test]
fn every_page_marks_its_section_once() {
    let site = site_of(&[FERRY, SECOND]);
    let marked = |address: &str| {
        let head = page(&site, address);
        let nav = head.split_once("<nav aria-label").unwrap().1;
        let nav = nav.split_once("</nav>").unwrap().0;
        let links = nav.split("<li>").skip(1);
        let current = links.filter(|link| link.contains("aria-current"));
        let words = current.map(|link| link.split_once('>').unwrap().1);
        let words = words.map(|word| word.split_once('<').unwrap().0.to_owned());
        words.collect::<Vec<_>>()
    };
    for (address, section) in [
        ("designs/", "Prints"),
        ("designs/list/", "Prints"),
        ("design/1/", "Prints"),
        ("impression/1.1/", "Prints"),
        ("design/1/point/moon/", "Prints"),
        ("identify/", "Identify"),
        ("design/1/key/", "Identify"),
        ("census/", "Census"),
        ("design/1/census/", "Census"),
        ("holders/", "Collections"),
        ("holder/museum/", "Collections"),
        ("about/", "About"),
        ("cite/", "About"),
    ] {
        assert_eq!(marked(address), [section], "{address}");
    }
    assert!(marked("").is_empty());
    assert!(page(&site, "designs/").contains("href=\"../designs/\" aria-current=\"page\""));
    assert!(page(&site, "design/1/").contains("href=\"../../designs/\" aria-current=\"true\""));
}

#[test]
fn a_print_and_an_impression_lead_to_the_one_before_and_the_one_after() {
    let site = site_of(&[FERRY, SECOND]);
    let leads = |address: &str, relation: &str| {
        let page = page(&site, address);
        let head = page.split_once(&format!("<link rel=\"{relation}\" href=\""));
        let head = head.map(|(_, rest)| rest.split_once('"').unwrap().0);
        let shown = page.split_once(&format!("<a rel=\"{relation}\" href=\""));
        let shown = shown.map(|(_, rest)| rest.split_once('"').unwrap().0);
        assert_eq!(head, shown, "{address} {relation}");
        head.map(str::to_owned)
    };
    assert_eq!(leads("design/1/", "prev"), None);
    assert_eq!(
        leads("design/1/", "next").as_deref(),
        Some("../../design/2/")
    );
    assert_eq!(
        leads("design/2/", "prev").as_deref(),
        Some("../../design/1/")
    );
    assert_eq!(leads("impression/1.1/", "prev"), None);
    assert_eq!(
        leads("impression/1.2/", "prev").as_deref(),
        Some("../../impression/1.1/")
    );
    assert_eq!(
        leads("impression/1.2/", "next").as_deref(),
        Some("../../impression/1.3/")
    );
    assert_eq!(leads("impression/1.3/", "next"), None);
    assert_eq!(leads("census/", "next"), None);
}

/// Two sheets on an even ground: of the first the record tells where the image is, of the second nothing.
#[test]
fn a_small_picture_is_cut_to_the_image_or_to_the_sheet() {
    let folder = small::lay_down(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "The Harbour" }]
-- records/designs/1/impressions/1.toml
status = "untraced"
pictures = [{ file = "pictures/1.png", rights = "CC0-1.0", box = [30, 40, 40, 20] }]
-- records/designs/1/impressions/2.toml
status = "untraced"
pictures = [{ file = "pictures/1.png", rights = "CC0-1.0" }]
-- records/designs/1/impressions/3.toml
status = "untraced"
pictures = [{ file = "pictures/3.png", rights = "CC0-1.0" }]
"#]);
    let pictures = folder.path().join("records/designs/1/pictures");
    fs::create_dir_all(&pictures).unwrap();
    let draw = |sheet: Option<[u32; 4]>| {
        image::RgbImage::from_fn(400, 300, |x, y| {
            let is_sheet = sheet.is_some_and(|[left, top, wide, high]| {
                (left..left + wide).contains(&x) && (top..top + high).contains(&y)
            });
            let grain = u8::try_from((x * 7 + y * 13) % 9).unwrap();
            let tone = if is_sheet { [238, 230, 210] } else { [150; 3] };
            image::Rgb(tone.map(|channel: u8| channel - grain))
        })
    };
    draw(Some([80, 60, 240, 160]))
        .save(pictures.join("1.png"))
        .unwrap();
    draw(None).save(pictures.join("3.png")).unwrap();
    compile(folder.path());
    let web = folder.path().join("web");
    let page = |sheet: u8| {
        fs::read_to_string(web.join(format!("impression/1.{sheet}/index.html"))).unwrap()
    };
    let gallery = fs::read_to_string(web.join("design/1/index.html")).unwrap();
    let gallery = gallery.split_once("id=\"gallery\"").unwrap().1;
    let sizes: Vec<(&str, &str)> = gallery
        .split("<img ")
        .skip(1)
        .map(|image| {
            let value = |name: &str| {
                let rest = image.split_once(&format!(" {name}=\"")).unwrap().1;
                rest.split_once('"').unwrap().0
            };
            (value("width"), value("height"))
        })
        .collect();
    // The image is 40% of 400 px wide; the sheet 240 px; of the third nothing is known, so it stays whole.
    assert_eq!(sizes, [("160", "60"), ("240", "160"), ("400", "300")]);
    assert_eq!(
        files_below(&web)
            .iter()
            .filter(|f| f.to_string_lossy().ends_with("-small.jpg"))
            .count(),
        2
    );
    // A sheet on a ground of its own gets no second one; of the third no ground is known.
    assert!(
        page(1).contains("class=\"ground alone\"") && page(2).contains("class=\"ground alone\"")
    );
    assert!(page(3).contains("class=\"ground\""));
}

fn folio() -> Theme {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-site");
    let (theme, findings) = keyblock::read::theme(&demo, &"folio".parse().unwrap());
    assert_eq!(findings, []);
    theme
}

/// The headings of a page by their ids, in order.
fn ids(page: &str) -> Vec<&str> {
    let heads = page.split("<h2 ").skip(1);
    let ids = heads.filter_map(|head| head.split_once("id=\"")?.1.split_once('"'));
    ids.map(|(id, _)| id)
        .filter(|id| !id.starts_with("page_"))
        .collect()
}

#[test]
fn a_second_theme_changes_face_ink_density_and_order_and_nothing_else() {
    let literals = [FERRY, "-- records/designs/1/design.md\nCut in a week.\n"];
    let (laid, folio) = (
        site_of(&literals),
        site_with(&literals, |theme| *theme = folio()),
    );
    let mut paths: Vec<&String> = folio
        .files
        .keys()
        .filter(|p| !laid.files.contains_key(*p))
        .collect();
    paths.retain(|path| !path.starts_with("assets/"));
    assert!(paths.is_empty(), "other pages: {paths:?}");
    let differs = |path: &str| laid.files.get(path) != folio.files.get(path);
    assert!(differs("assets/type/faces.css") && differs("assets/folio.css"));
    assert!(!differs("assets/sheet.css") && !differs("assets/table.css"));
    let sheet = String::from_utf8(folio.files["assets/folio.css"].clone()).unwrap();
    for variable in [
        "--ink-on-light",
        "--ink-on-dark",
        "--measure",
        "--line",
        "line-height",
    ] {
        assert!(sheet.contains(&format!("{variable}:")), "{variable}");
    }
    assert!(folio.files.contains_key("assets/type/OFL-literata.txt"));
    let (ours, theirs) = (
        ids(page(&laid, "design/1/")),
        ids(page(&folio, "design/1/")),
    );
    assert_ne!(ours, theirs, "the order of a design's page");
    let sorted = |ids: &[&str]| {
        let mut ids: Vec<String> = ids.iter().map(|id| (*id).to_owned()).collect();
        ids.sort();
        ids
    };
    assert_eq!(sorted(&ours), sorted(&theirs), "the same parts");
    // What stands on other pages is the same, but for the sheets in their heads.
    let body = |site, address| {
        page(site, address)
            .split_once("<body")
            .unwrap()
            .1
            .to_owned()
    };
    for address in [
        "",
        "designs/",
        "census/",
        "impression/1.1/",
        "holder/museum/",
    ] {
        assert_eq!(body(&laid, address), body(&folio, address), "{address}");
    }
}
