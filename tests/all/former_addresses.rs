//! Addresses that changed (docs/definitions.md, "Addresses"): after each kind of change, every address of the site before
//! it works, leads to the present one, or explains, and none leads twice.

use std::collections::{BTreeMap, BTreeSet};

use keyblock::page::Site;
use keyblock::press::{PictureWork, judge};

use crate::pages::{page, site_of};
use crate::small::lay_down;

/// Two designs, of which the first has sheets, parts and pictures, and records of every other kind.
const BEFORE: &str = r#"
-- records/designs/ferry/pictures/1.jpg
Not opened by these tests.
-- records/designs/ferry/design.toml
number = "1"
titles = [{ text = "The Ferry", lang = "en" }]
points = [{ key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
printings = [{ key = "own", kind = "artist", states = "all" }]
variants = [{ key = "mica", summary = "With mica." }]
matrices = [{ key = "block", kind = "block", material = "pear" }]
comparisons = [{ of = ["ferry.1", "ferry.2"] }]
pictures = [{ file = "pictures/1.jpg", name = "drawing", rights = "CC0-1.0" }]
-- records/designs/ferry/design.md
Compare [the lock](design:lock), [a sheet](impression:ferry.1) and [](holder:museum).
-- records/designs/ferry/impressions/1.toml
status = "located"
holder = "museum"
accession = "1962.44"
identified = { state = "dark", printing = "own", variant = "mica" }
observed = { moon = "absent" }
exhibited = [{ exhibition = "early" }]
literature = [{ cite = "list" }]
marks = [{ mark = "oval", condition = "chipped" }]
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0" }]
provenance = [{ owner = "collector" }]
-- records/designs/ferry/impressions/2.toml
status = "located"
holder = "library"
identified = { state = "moonlit", printing = "own" }
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0" }]
-- records/designs/ferry/impressions/3.toml
status = "untraced"
-- records/designs/lock/design.toml
number = "2"
titles = [{ text = "The Lock", lang = "en" }]
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
place = "Southport"
-- records/people/collector.toml
name = "Col Lector"
-- records/literature.bib
@book{list, author = {Anonymous}, title = {A List}, year = {1961}}
-- records/exhibitions.toml
[early]
title = "Early show"
date = "1931"
-- records/marks/oval.toml
text = "OVAL"
conditions = [{ key = "chipped", summary = "Chipped." }]
-- records/pages/paper.md
# Paper
Of papers.
"#;

/// The files of [`BEFORE`] with some replaced, added, or taken away (`None`).
fn changed(changes: &[(&str, Option<&str>)]) -> String {
    let mut files: BTreeMap<&str, &str> = BEFORE
        .split("\n-- ")
        .skip(1)
        .map(|file| file.split_once('\n').unwrap())
        .collect();
    for (path, text) in changes {
        match text {
            Some(text) => files.insert(path, text),
            None => Some(files.remove(path).unwrap_or_else(|| panic!("no {path}"))),
        };
    }
    let file = |(path, text): (&&str, &&str)| format!("\n-- {path}\n{text}");
    files.iter().map(file).collect()
}

/// The record of a file of [`BEFORE`] with some text replaced.
fn edited(path: &str, edits: &[(&str, &str)]) -> String {
    let files = BEFORE.split("\n-- ").skip(1);
    let mut found = files.filter_map(|file| file.strip_prefix(&format!("{path}\n")));
    let mut text = found.next().unwrap().to_owned();
    for (from, to) in edits {
        assert!(text.contains(from), "{path} has no {from:?}");
        text = text.replace(from, to);
    }
    text
}

/// The folder to which a page leads at once; `None` for a page that does not.
fn refresh(html: &str) -> Option<&str> {
    let (_, after) = html.split_once("<meta http-equiv=\"refresh\" content=\"0; url=")?;
    Some(after.split_once('"').unwrap().0)
}

fn canonical(html: &str) -> &str {
    let (_, after) = html.split_once("<link rel=\"canonical\" href=\"").unwrap();
    after.split_once('"').unwrap().0
}

/// The path of `href` as it is read on the page `path`.
fn resolved(path: &str, href: &str) -> String {
    let mut folders: Vec<&str> = path.split('/').collect();
    folders.pop();
    for part in href.split('/').filter(|part| !part.is_empty()) {
        if part == ".." {
            folders.pop().unwrap();
        } else if part != "." {
            folders.push(part);
        }
    }
    let folder = folders.join("/");
    if folder.is_empty() {
        "index.html".to_owned()
    } else {
        format!("{folder}/index.html")
    }
}

/// Asserts that every address of `before` answers in `after`, and gives those that lead elsewhere, with where. Files of
/// the index of the search are loaded by its script alone and are no addresses.
fn moved(before: &Site, after: &Site) -> BTreeMap<String, String> {
    let is_address = |path: &&String| {
        path.as_str() == "search/index.html"
            || !(path.starts_with("search/") || path.contains("redirects"))
    };
    // A manifest lists pictures: it stands as long as the sheet has one.
    let lost_its_pictures = |path: &str| {
        let sheet = path.strip_prefix("impression/");
        let sheet = sheet.and_then(|path| path.strip_suffix("/manifest.json"));
        sheet.is_some_and(|sheet| {
            let pictures = format!("picture/{sheet}/");
            !after.files.keys().any(|path| path.starts_with(&pictures))
        })
    };
    let mut moved = BTreeMap::new();
    let paths = before.files.keys().filter(is_address);
    for path in paths.filter(|path| !lost_its_pictures(path)) {
        let bytes = after.files.get(path);
        let bytes = bytes.unwrap_or_else(|| panic!("{path} does not answer"));
        if !path.ends_with(".html") {
            continue;
        }
        let html = std::str::from_utf8(bytes).unwrap();
        let Some(href) = refresh(html) else {
            continue;
        };
        let to = resolved(path, href);
        let target = after.files.get(&to);
        let target = target.unwrap_or_else(|| panic!("{path} leads to {to}, which is not there"));
        let target = std::str::from_utf8(target).unwrap();
        assert_eq!(
            refresh(target),
            None,
            "{path} leads to {to}, which leads on"
        );
        let folder = to.strip_suffix("index.html").unwrap();
        let address = format!("https://prints.example.org/{folder}");
        assert_eq!(canonical(html), address, "{path}");
        assert_eq!(canonical(target), address, "{to}");
        assert!(
            html.contains(&format!(" href=\"{href}\">")),
            "{path} has no link for readers"
        );
        moved.insert(path.clone(), to);
    }
    moved
}

/// The folders that lead elsewhere after the change, with where, as `from > to`.
fn moved_by(changes: &[(&str, Option<&str>)]) -> (Site, Vec<String>) {
    let (before, after) = (site_of(&[BEFORE]), site_of(&[&changed(changes)]));
    let lines = moved(&before, &after).into_iter().map(|(from, to)| {
        let folder = |path: &str| path.trim_end_matches("index.html").to_owned();
        format!("{} > {}", folder(&from), folder(&to))
    });
    let mut lines: Vec<String> = lines.collect();
    lines.sort();
    (after, lines)
}

/// The lines of a rules file.
fn rules(site: &Site) -> &str {
    std::str::from_utf8(&site.files["_redirects"]).unwrap()
}

#[test]
fn a_design_with_a_new_key_answers_at_every_old_address() {
    let from = "records/designs/ferry";
    let files = BEFORE.split("\n-- ").skip(1);
    let files: Vec<(&str, &str)> = files.map(|file| file.split_once('\n').unwrap()).collect();
    let mut changes: Vec<(String, Option<String>)> = Vec::new();
    for (path, text) in files.iter().filter(|(path, _)| path.starts_with(from)) {
        changes.push(((*path).to_owned(), None));
        let mut text = (*text).to_owned();
        if path.ends_with("design.toml") {
            text.insert_str(0, "was = [\"ferry\"]\n");
        }
        changes.push((path.replace("/ferry/", "/the-last-ferry/"), Some(text)));
    }
    let changes: Vec<(&str, Option<&str>)> = changes
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_deref()))
        .collect();
    let (after, moved) = moved_by(&changes);
    let expected: Vec<String> = [
        "design/ferry/",
        "design/ferry/census/",
        "design/ferry/comparison/",
        "design/ferry/comparison/1/",
        "design/ferry/key/",
        "design/ferry/key/sheet/",
        "design/ferry/point/moon/",
        "impression/ferry.1/",
        "impression/ferry.2/",
        "impression/ferry.3/",
    ]
    .iter()
    .map(|from| format!("{from} > {}", from.replace("ferry", "the-last-ferry")))
    .collect();
    assert_eq!(moved, expected);
    // Programs get the files themselves, with the present addresses in them.
    for file in ["citation.bib", "census/census.csv"] {
        let of = |key: &str| &after.files[&format!("design/{key}/{file}")];
        assert_eq!(of("ferry"), of("the-last-ferry"));
    }
    let citation = std::str::from_utf8(&after.files["design/ferry/citation.bib"]).unwrap();
    assert!(citation.contains("/design/the-last-ferry/"), "{citation}");
    // Links and references by the former key still lead to it.
    let design = page(&after, "design/the-last-ferry/");
    assert!(design.contains("<a href=\"../../impression/the-last-ferry.1/\">a sheet</a>"));
    assert!(rules(&after).contains("/design/ferry/* /design/the-last-ferry/:splat 301\n"));
    assert!(
        rules(&after)
            .contains("/picture/ferry.1/recto/* /picture/the-last-ferry.1/recto/:splat 301\n")
    );
}

#[test]
fn records_of_every_other_kind_with_new_keys_answer_at_the_old_addresses() {
    let holder = edited(
        "records/holders/museum.toml",
        &[("place =", "was = \"museum\"\nplace =")],
    );
    let person = edited(
        "records/people/collector.toml",
        &[("\"Col Lector\"", "\"Col Lector\"\nwas = [\"collector\"]")],
    );
    let mark = edited(
        "records/marks/oval.toml",
        &[("text", "was = [\"oval\"]\ntext")],
    );
    let (after, moved) = moved_by(&[
        ("records/holders/museum.toml", None),
        ("records/holders/harbour-museum.toml", Some(&holder)),
        ("records/people/collector.toml", None),
        ("records/people/col-lector.toml", Some(&person)),
        ("records/marks/oval.toml", None),
        ("records/marks/oval-stamp.toml", Some(&mark)),
        (
            "records/literature.bib",
            Some(
                "@book{anonymous-1961, ids = {list}, author = {Anonymous}, title = {A List}, year = {1961}}\n",
            ),
        ),
        (
            "records/exhibitions.toml",
            Some("[early-show]\nwas = [\"early\"]\ntitle = \"Early show\"\ndate = \"1931\"\n"),
        ),
        ("records/pages/paper.md", None),
        (
            "records/pages/papers-used.md",
            Some("# Paper\nOf papers.\n"),
        ),
        (
            "records/pages/papers-used.toml",
            Some("was = [\"paper\"]\n"),
        ),
    ]);
    assert_eq!(
        moved,
        [
            "exhibition/early/ > exhibition/early-show/",
            "holder/museum/ > holder/harbour-museum/",
            "lit/list/ > lit/anonymous-1961/",
            "mark/oval/ > mark/oval-stamp/",
            "page/paper/ > page/papers-used/",
            "person/collector/ > person/col-lector/",
        ]
    );
    // The sheet still names every record by its former key.
    let sheet = page(&after, "impression/ferry.1/");
    for to in [
        "holder/harbour-museum/",
        "lit/anonymous-1961/",
        "mark/oval-stamp/",
    ] {
        assert!(sheet.contains(to), "{to}");
    }
}

#[test]
fn parts_with_new_keys_keep_a_place_under_the_old_ones() {
    let design = edited(
        "records/designs/ferry/design.toml",
        &[
            ("key = \"moon\"", "key = \"disc\", was = [\"moon\"]"),
            ("key = \"dark\"", "key = \"early\", was = [\"dark\"]"),
            ("key = \"own\"", "key = \"artists-own\", was = [\"own\"]"),
            ("key = \"mica\"", "key = \"with-mica\", was = [\"mica\"]"),
            ("key = \"block\"", "key = \"key-block\", was = [\"block\"]"),
            (
                "name = \"drawing\"",
                "name = \"first-drawing\", was = [\"drawing\"]",
            ),
        ],
    );
    let mark = edited(
        "records/marks/oval.toml",
        &[("key = \"chipped\"", "key = \"broken\", was = [\"chipped\"]")],
    );
    let (after, moved) = moved_by(&[
        ("records/designs/ferry/design.toml", Some(&design)),
        ("records/marks/oval.toml", Some(&mark)),
    ]);
    assert_eq!(
        moved,
        ["design/ferry/point/moon/ > design/ferry/point/disc/"]
    );
    let place = |address: &str, id: &str| {
        let html = page(&after, address);
        assert_eq!(
            html.matches(&format!(" id=\"{id}\"")).count(),
            1,
            "{address}#{id}"
        );
    };
    for id in [
        "state-dark",
        "printing-own",
        "variant-mica",
        "point-moon",
        "matrix-block",
    ] {
        place("design/ferry/", id);
    }
    place("design/ferry/census/", "state-dark");
    place("mark/oval/", "condition-chipped");
    assert!(
        rules(&after)
            .contains("/picture/ferry/drawing/* /picture/ferry/first-drawing/:splat 301\n")
    );
}

#[test]
fn two_records_found_to_be_one_sheet_lead_to_its_page() {
    let joined = edited(
        "records/designs/ferry/impressions/3.toml",
        &[(
            "\"untraced\"",
            "\"untraced\"\nsame_as = [{ impression = \"ferry.2\" }]",
        )],
    );
    let path = "records/designs/ferry/impressions/3.toml";
    let before = site_of(&[BEFORE]);
    let after = site_of(&[&changed(&[(path, Some(&joined))])]);
    // The citation of a record without a page of its own is that of its sheet.
    let mut known = before.clone();
    known
        .files
        .retain(|path, _| !path.starts_with("impression/ferry.3/citation"));
    let moved = moved(&known, &after);
    assert_eq!(
        moved["impression/ferry.3/index.html"],
        "impression/ferry.2/index.html"
    );
    assert_eq!(moved.len(), 1);
    assert_eq!(
        rules(&after),
        "/impression/ferry.3/ /impression/ferry.2/ 301\n"
    );
}

#[test]
fn a_withdrawn_record_says_why_and_leads_without_sending_its_reader() {
    let sheet = "records/designs/ferry/impressions/3.toml";
    let design = "records/designs/lock/design.toml";
    let (after, moved) = moved_by(&[
        (
            sheet,
            Some(
                "status = \"untraced\"\nstanding = \"withdrawn\"\nsee = \"impression:ferry.2\"\nwhy = \"Counted twice.\"\n",
            ),
        ),
        (
            design,
            Some(
                "number = \"2\"\ntitles = [{ text = \"The Lock\", lang = \"en\" }]\nstanding = \"withdrawn\"\nsee = \"design:ferry\"\nwhy = \"By another hand.\"\n",
            ),
        ),
    ]);
    assert!(moved.is_empty(), "{moved:?}");
    let html = page(&after, "impression/ferry.3/");
    assert!(
        html.contains(
            "Withdrawn. Counted twice. See <a href=\"../../impression/ferry.2/\">1.2</a>."
        )
    );
    assert!(!html.contains("id=\"choices\""));
    let html = page(&after, "design/lock/");
    assert!(html.contains("Withdrawn. By another hand. See <a href=\"../../design/ferry/\">"));
    assert_eq!(canonical(html), "https://prints.example.org/design/lock/");
    // What cites it says that it was withdrawn.
    assert!(!page(&after, "designs/").contains("<h2 class=\"unseen\" id=\"by-number\">Withdrawn"));
    assert!(after.files.keys().all(|path| !path.contains("redirects")));
}

#[test]
fn a_sheet_that_was_split_offers_a_choice() {
    let sheet = "records/designs/ferry/impressions/3.toml";
    let split = "status = \"untraced\"\nstanding = \"withdrawn\"\nwhy = \"Two sheets in one record.\"\n\
                 see = [\"impression:ferry.1\", \"impression:ferry.2\"]\n";
    let (after, moved) = moved_by(&[(sheet, Some(split))]);
    assert!(moved.is_empty(), "{moved:?}");
    let html = page(&after, "impression/ferry.3/");
    let (_, choices) = html.split_once("id=\"choices\"").unwrap();
    let (choices, _) = choices.split_once("</section>").unwrap();
    for expected in [
        "1.1",
        "1.2",
        "Harbour Museum",
        "1962.44",
        "Town Library",
        "picture/ferry.1-recto.jpg",
        "href=\"../../impression/ferry.2/\"",
        "ii",
    ] {
        assert!(choices.contains(expected), "{expected}: {choices}");
    }
    // One of the two is withdrawn later, in favour of a third: the choice names that one.
    let second = "status = \"untraced\"\nstanding = \"withdrawn\"\nsee = \"impression:ferry.4\"\n";
    let (after, _) = moved_by(&[
        (sheet, Some(split)),
        ("records/designs/ferry/impressions/2.toml", Some(second)),
        (
            "records/designs/ferry/impressions/4.toml",
            Some(
                "status = \"located\"\nholder = \"library\"\n\
                 pictures = [{ file = \"pictures/1.jpg\", rights = \"CC0-1.0\" }]\n",
            ),
        ),
        (
            "records/designs/ferry/design.toml",
            Some(&edited(
                "records/designs/ferry/design.toml",
                &[("\"ferry.2\"", "\"ferry.4\"")],
            )),
        ),
    ]);
    let html = page(&after, "impression/ferry.3/");
    assert!(
        html.contains("../../impression/ferry.4/\">1.4</a>"),
        "{html}"
    );
    assert!(!html.contains("href=\"../../impression/ferry.2/\""));
}

#[test]
fn a_holder_that_was_taken_over_explains_and_its_sheets_stand_with_the_successor() {
    let holder = edited(
        "records/holders/library.toml",
        &[(
            "place =",
            "successor = { holder = \"museum\", date = \"1999\" }\nplace =",
        )],
    );
    let (after, moved) = moved_by(&[("records/holders/library.toml", Some(&holder))]);
    assert!(moved.is_empty(), "{moved:?}");
    let old = page(&after, "holder/library/");
    assert!(
        old.contains("Now part of <a href=\"../../holder/museum/\">Harbour Museum"),
        "{old}"
    );
    assert!(!old.contains("impressions-here"));
    let new = page(&after, "holder/museum/");
    for expected in [
        "2 impressions of 1 design",
        "impression/ferry.2/",
        "recorded under <a href=\"../../holder/library/\">",
    ] {
        assert!(new.contains(expected), "{expected}: {new}");
    }
}

#[test]
fn merged_holders_lead_to_the_one_that_remains() {
    let holder = edited(
        "records/holders/museum.toml",
        &[("place =", "was = [\"library\"]\nplace =")],
    );
    let (after, moved) = moved_by(&[
        ("records/holders/library.toml", None),
        ("records/holders/museum.toml", Some(&holder)),
    ]);
    assert_eq!(moved, ["holder/library/ > holder/museum/"]);
    assert!(page(&after, "holder/museum/").contains("impression/ferry.2/"));
    assert!(page(&after, "census/").contains(" id=\"holder-library\""));
}

/// A design that had two keys, a point that was renamed under each of them, and a record that is joined now: every
/// address that ever was leads to the page in one step.
#[test]
fn former_keys_combine_without_chains() {
    let design = edited(
        "records/designs/ferry/design.toml",
        &[
            ("number =", "was = [\"boat\", \"crossing\"]\nnumber ="),
            (
                "key = \"moon\"",
                "key = \"disc\", was = [\"moon\", \"circle\"]",
            ),
        ],
    );
    let joined = "status = \"untraced\"\nsame_as = [{ impression = \"crossing.2\" }]\n";
    let sheet = edited(
        "records/designs/ferry/impressions/1.toml",
        &[("rights =", "was = [\"front\"], rights =")],
    );
    let after = site_of(&[&changed(&[
        ("records/designs/ferry/design.toml", Some(&design)),
        ("records/designs/ferry/impressions/3.toml", Some(joined)),
        ("records/designs/ferry/impressions/1.toml", Some(&sheet)),
    ])]);
    let leads = |path: &str| {
        let html = page(&after, path);
        let to = resolved(&format!("{path}index.html"), refresh(html).unwrap());
        to.trim_end_matches("index.html").to_owned()
    };
    for old in ["boat", "crossing"] {
        assert_eq!(
            leads(&format!("design/{old}/point/circle/")),
            "design/ferry/point/disc/"
        );
        assert_eq!(
            leads(&format!("impression/{old}.3/")),
            "impression/ferry.2/"
        );
    }
    let targets: BTreeSet<&str> = rules(&after)
        .lines()
        .map(|line| line.split(' ').nth(1).unwrap().trim_end_matches(":splat"))
        .collect();
    for line in rules(&after).lines() {
        let from = line.split(' ').next().unwrap().trim_end_matches('*');
        assert!(
            !targets.contains(from) || line.starts_with("/impression/ferry.3/ "),
            "{line}"
        );
    }
    assert!(rules(&after).contains("/picture/boat.1/front/* /picture/ferry.1/recto/:splat 301\n"));
    // Pages alone come first, then the deepest folders.
    let place = |start: &str| {
        rules(&after)
            .lines()
            .position(|line| line.starts_with(start))
    };
    assert!(place("/impression/boat.3/ ") < place("/impression/boat.3/*"));
    assert!(place("/design/boat/point/moon/*") < place("/design/boat/*"));
}

#[test]
fn a_private_former_key_resolves_references_and_has_no_address() {
    let holder = edited(
        "records/holders/museum.toml",
        &[(
            "place =",
            "was = [\"old-house\"]\nprivate = [\"was\"]\nplace =",
        )],
    );
    let sheet = edited(
        "records/designs/ferry/impressions/1.toml",
        &[("holder = \"museum\"", "holder = \"old-house\"")],
    );
    let after = site_of(&[&changed(&[
        ("records/holders/museum.toml", Some(&holder)),
        ("records/designs/ferry/impressions/1.toml", Some(&sheet)),
    ])]);
    assert!(page(&after, "impression/ferry.1/").contains("holder/museum/"));
    for (path, bytes) in &after.files {
        let text = String::from_utf8_lossy(bytes);
        assert!(
            !path.contains("old-house") && !text.contains("old-house"),
            "{path}"
        );
    }
}

/// The image service of a picture that was renamed: programs get the description, which says where its tiles are.
#[test]
fn the_image_service_of_a_renamed_picture_is_described_at_its_old_address() {
    let folder = lay_down(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"A Quay\" }]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n\
         pictures = [{ file = \"pictures/1.jpg\", name = \"front\", was = [\"recto\"], rights = \"CC0-1.0\" }]\n",
    ]);
    let picture = folder.path().join("records/designs/1/pictures/1.jpg");
    std::fs::create_dir_all(picture.parent().unwrap()).unwrap();
    image::RgbImage::new(40, 30).save(picture).unwrap();
    let judged = judge(folder.path(), &PictureWork::Prepare(&|_, _| {}));
    assert_eq!(judged.tally().errors, 0, "{:#?}", judged.findings);
    let (pulled, site) = judged.pull_site(&|_, _| ()).unwrap();
    let info = |name: &str| &site.files[&format!("picture/1.1/{name}/info.json")];
    assert_eq!(info("recto"), info("front"));
    let text = std::str::from_utf8(info("recto")).unwrap();
    assert!(
        text.contains("https://prints.example.org/picture/1.1/front"),
        "{text}"
    );
    let bundles: Vec<String> = pulled.tile_bundles().into_keys().collect();
    assert_eq!(bundles, ["picture/1.1/front"]);
}

#[test]
fn the_rules_for_servers_say_the_same_in_every_form() {
    let holder = edited(
        "records/holders/museum.toml",
        &[("place =", "was = \"house\"\nplace =")],
    );
    let after = site_of(&[&changed(&[("records/holders/museum.toml", Some(&holder))])]);
    let file = |path: &str| std::str::from_utf8(&after.files[path]).unwrap();
    assert_eq!(
        file("_redirects"),
        "/holder/house/* /holder/museum/:splat 301\n"
    );
    assert!(
        file("redirects/apache.conf")
            .ends_with("RedirectMatch 301 \"^/holder/house/(.*)$\" \"/holder/museum/$1\"\n")
    );
    assert!(file("redirects/nginx.conf").ends_with(
        "map $uri $keyblock_moved {\n    \"~^/holder/house/(.*)$\" \"/holder/museum/$1\";\n}\n"
    ));
    let json: serde_json::Value = serde_json::from_str(file("redirects/redirects.json")).unwrap();
    assert_eq!(
        json,
        serde_json::json!({
            "address": "https://prints.example.org",
            "redirects": [{ "from": "holder/house/", "to": "holder/museum/", "folder": true }],
        })
    );
    // A catalogue in which nothing changed has none of them.
    assert!(
        site_of(&[BEFORE])
            .files
            .keys()
            .all(|path| !path.contains("redirects"))
    );
}

/// The search finds a record by its former key, and a sheet by the former key of its design.
#[test]
fn former_keys_are_searched() {
    let design = edited(
        "records/designs/ferry/design.toml",
        &[("number =", "was = [\"boat\"]\nnumber =")],
    );
    let after = site_of(&[&changed(&[(
        "records/designs/ferry/design.toml",
        Some(&design),
    )])]);
    let has = |word: &str| {
        let shards = after.files.iter();
        let shards = shards.filter(|(path, _)| path.starts_with("search/terms/"));
        let mut texts = shards.map(|(_, bytes)| String::from_utf8_lossy(bytes).into_owned());
        texts.any(|text| text.contains(word))
    };
    assert!(has("boat"));
    assert!(has("boat.1"), "a sheet has the former key of its design");
}
