//! Single things that a catalogue keeps from readers: what pages, exports and pictures make of them, and what the
//! commands of the editors say.

use std::fs;
use std::path::Path;

use image::{GrayImage, Luma};
use keyblock::model::public::Concealed;
use keyblock::study::Studies;

use crate::census_pages::part;
use crate::concealed::{Site, compiled, difference, site_of as site};
use crate::program::{keyblock, text};
use crate::small::{lay_down, sound};

fn page<'s>(site: &'s Site, address: &str) -> &'s str {
    std::str::from_utf8(&site[&format!("{address}index.html")]).unwrap()
}

/// Two records of a design, with more in the second.
fn two_records(more: &str) -> String {
    format!(
        "-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"located\"\nholder = \"museum\"\nkind = \"edition\"\n\
         -- records/designs/1/impressions/2.toml\nstatus = \"stolen\"\nkind = \"trial-proof\"\n{more}\n\
         -- records/holders/museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\ncountry = \"NO\"\n"
    )
}

/// The figures of a census as a table for other programs: "status stolen 1–1".
fn figures(site: &Site) -> Vec<String> {
    let table = site["design/1/census/census.csv"].as_slice();
    let mut reader = csv::Reader::from_reader(table);
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        format!("{} {} {}–{}", &row[2], &row[3], &row[5], &row[6])
    });
    rows.collect()
}

#[test]
fn a_private_same_as_joins_counts_and_names_nothing() {
    let link = "same_as = [{ impression = \"1.1\", why = \"the same tear\" }]";
    let open = site(&[&two_records(link)]);
    assert!(page(&open, "design/1/census/").contains("id=\"one-sheet\""));
    assert!(figures(&open).contains(&"all  1–1".to_owned()));
    let private = site(&[&two_records(&format!("{link}\nprivate = [\"same_as\"]"))]);
    let absent = site(&[&two_records("")]);
    assert_eq!(difference(&private, &absent), None);
    assert!(figures(&private).contains(&"all  2–2".to_owned()));
}

#[test]
fn a_private_maybe_same_as_leaves_no_doubt_about_a_count() {
    let link = "maybe_same_as = [{ impression = \"1.1\", why = \"the same tear\" }]";
    let open = site(&[&two_records(link)]);
    assert!(figures(&open).contains(&"all  1–2".to_owned()));
    let private = site(&[&two_records(&format!(
        "{link}\nprivate = [\"maybe_same_as\"]"
    ))]);
    assert_eq!(difference(&private, &site(&[&two_records("")])), None);
}

#[test]
fn an_unpublished_record_adds_to_no_row_that_names_another() {
    let site = site(&[&two_records(
        "publish = false\nsame_as = [{ impression = \"1.1\" }]",
    )]);
    for address in ["census/", "design/1/census/"] {
        let census = page(&site, address);
        assert!(!census.to_lowercase().contains("stolen"), "{census}");
        let kinds = part(census, "by-kind");
        let (_, proofs) = kinds.split_once("trial proof").unwrap();
        let proofs = proofs.split("</tr>").next().unwrap();
        assert!(proofs.contains("1 counted but not published"), "{proofs}");
        assert!(!proofs.contains("1.1"), "{proofs}");
        for id in ["by-status", "by-holder", "by-country"] {
            let rows = part(census, id).split("</table>").next().unwrap();
            assert!(
                !rows.contains("not shown") && !rows.contains("not recorded"),
                "{rows}"
            );
        }
    }
    let figures = figures(&site);
    for figure in [
        "all  2–2",
        "kind trial-proof 1–1",
        "kind edition 1–1",
        "status located 1–1",
        "holder museum 1–1",
    ] {
        assert!(
            figures.contains(&figure.to_owned()),
            "{figure}: {figures:?}"
        );
    }
    let of_places = |figure: &&String| {
        ["status", "holder", "country", "city"]
            .iter()
            .any(|by| figure.starts_with(by))
    };
    // By holder, holder and state, country, town and status, the published sheet alone.
    assert_eq!(figures.iter().filter(of_places).count(), 5, "{figures:?}");
}

#[test]
fn nothing_links_to_an_unpublished_impression_or_its_picture() {
    let folder = lay_down(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
reference_picture = "1.2/recto"
comparisons = [{ of = ["1.1", "1.2"], why = "The same sky." }]
states = [{ key = "dark", standing = "doubtful", see = ["impression:1.2"] }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", box = [10, 10, 30, 30] }]
-- records/designs/1/impressions/1.toml
status = "located"
taken_from = "1.2"
not_same_as = [{ impression = "1.2" }]
shares_sheet = ["1.2"]
goes_with = ["1.2"]
standing = "doubtful"
see = ["impression:1.2", "picture:1.2/recto"]
pictures = [{ file = "pictures/1.png", rights = "CC0-1.0" }]
-- records/designs/1/impressions/2.toml
status = "located"
pictures = [{ file = "pictures/1.png", rights = "CC0-1.0" }]
publish = false
"#]);
    textured(folder.path());
    sound(folder.path());
    let (site, _) = compiled(folder.path());
    for (path, bytes) in &site {
        let text = String::from_utf8_lossy(bytes);
        for name in [
            "impression/1.2",
            "impression:1.2",
            "picture/1.2",
            ">1.2<",
            "\"1.2\"",
            "1.2/recto",
        ] {
            assert!(
                !text.contains(name) && !path.contains(name),
                "{path} has {name}"
            );
        }
    }
    assert!(!site.contains_key("design/1/comparison/index.html"));
}

#[test]
fn a_text_that_links_to_an_unpublished_record_shows_its_words_alone() {
    let text = "It pairs with [the other](impression:1.2), [a list][l] and <impression:1.2>.\n\n\
                [l]: document:list\n\n![A torn corner](picture:1.2/recto)\n\n<!-- ask the owner of 1.2 again -->\n";
    let folder = lay_down(&[
        &two_records(
            "publish = false\npictures = [{ file = \"pictures/1.png\", rights = \"CC0-1.0\" }]",
        ),
        "-- records/documents/list.toml\nkind = \"letter\"\npublish = false\n\
         -- records/documents/letter.toml\nkind = \"letter\"\ntitle = \"A letter\"\n",
    ]);
    for path in [
        "records/designs/1/design.md",
        "records/designs/1/impressions/1.md",
        "records/holders/museum.md",
        "records/documents/letter.md",
        "records/documents/letter.transcription.md",
        "records/documents/letter.en.md",
        "records/pages/principles.md",
    ] {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, format!("# Principles\n\n{text}")).unwrap();
    }
    textured(folder.path());
    sound(folder.path());
    let (site, _) = compiled(folder.path());
    let tables = ["data/texts.csv", "data/texts.json", "data/documents.csv"];
    for path in tables {
        let table = std::str::from_utf8(&site[path]).unwrap();
        assert!(
            table.contains("It pairs with the other, a list and ."),
            "{path}: {table}"
        );
    }
    for (path, bytes) in &site {
        let text = String::from_utf8_lossy(bytes);
        for withheld in [
            "impression:1.2",
            "impression/1.2",
            "document:list",
            "document/list",
            "A torn corner",
            "ask the owner",
        ] {
            assert!(!text.contains(withheld), "{path} has {withheld}");
        }
    }
}

/// A picture with enough texture to be aligned.
fn textured(folder: &Path) {
    let picture = GrayImage::from_fn(240, 180, |x, y| {
        let block = (x / 12 * 7 + y / 12 * 13) % 5 * 40;
        Luma([u8::try_from((block + (x * y) % 17 * 3) % 256).unwrap()])
    });
    let path = folder.join("records/designs/1/pictures/1.png");
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    picture.save(path).unwrap();
}

/// The site of a design with two photographs, and how many pictures it has.
fn photographed(reference: &str, point: &str) -> (Site, usize) {
    let design = format!(
        "-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{reference}\n\
         states = [{{ key = \"dark\" }}]\n\
         points = [{{ key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\"{point} }}]\n"
    );
    let sheet = |number: u32| {
        format!(
            "-- records/designs/1/impressions/{number}.toml\nstatus = \"untraced\"\n\
             pictures = [{{ file = \"pictures/1.png\", rights = \"CC0-1.0\" }}]\n"
        )
    };
    let folder = lay_down(&[&design, &sheet(1), &sheet(2)]);
    textured(folder.path());
    sound(folder.path());
    let (site, _) = compiled(folder.path());
    let pictures = site
        .keys()
        .filter(|path| path.starts_with("picture/") && path.ends_with(".jpg"));
    let pictures = pictures.count();
    (site, pictures)
}

const REFERENCE: &str = "reference_picture = \"1.1/recto\"";
const BOX: &str = ", box = [10, 10, 40, 40]";

#[test]
fn a_private_reference_picture_aligns_and_cuts_nothing() {
    let (_, open) = photographed(REFERENCE, BOX);
    let (private, fewer) = photographed(
        &format!("{REFERENCE}\nprivate = [\"reference_picture\"]"),
        BOX,
    );
    assert!(fewer < open, "{fewer} and {open} pictures");
    let (absent, _) = photographed("", BOX);
    assert_eq!(difference(&private, &absent), None);
}

#[test]
fn a_private_box_of_a_point_cuts_nothing() {
    let (_, open) = photographed(REFERENCE, BOX);
    let (private, fewer) = photographed(REFERENCE, &format!("{BOX}, private = [\"box\"]"));
    assert!(fewer < open, "{fewer} and {open} pictures");
    let (absent, _) = photographed(REFERENCE, "");
    assert_eq!(difference(&private, &absent), None);
}

#[test]
fn figures_of_sheets_that_are_not_shown_link_to_no_missing_part() {
    let site = site(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"A Quay\" }]\n\
         states = [{ key = \"dark\" }, { key = \"moonlit\" }]\n\
         printings = [{ key = \"own\", kind = \"artist\", states = \"all\" }, { key = \"late\", kind = \"restrike\", states = \"all\" }]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"located\"\npublish = false\n\
         identified = { state = [\"dark\", \"moonlit\"], printing = [\"own\", \"late\"] }\n",
    ]);
    for address in ["census/", "design/1/census/"] {
        let census = page(&site, address);
        assert!(census.contains("1 impression"), "{census}");
        assert!(!census.contains("id=\"by-status\""), "{census}");
    }
    for (path, bytes) in site.iter().filter(|(path, _)| path.ends_with(".html")) {
        let text = String::from_utf8_lossy(bytes);
        assert!(!text.contains("#by-status"), "{path}");
    }
}

/// A point, a state and a sheet that show nothing private.
const PLAIN: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
identified = { state = "dark" }
observed = { moon = "absent" }
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
"#;

/// What a catalogue can keep back, each as a record laid over the plain ones.
const KEPT_BACK: [(&str, &str); 4] = [
    (
        "a private field",
        "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\ncondition = \"Torn.\"\nprivate = [\"condition\"]\n",
    ),
    (
        "an unpublished sheet",
        "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\npublish = false\n",
    ),
    (
        "an unpublished picture",
        "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\npictures = [{ file = \"pictures/1.png\", rights = \"CC0-1.0\", publish = false }]\n",
    ),
    (
        "a private holder",
        "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\nholder = \"owner-a\"\n-- records/holders/owner-a.toml\nname = \"Ada Quire\"\nkind = \"private\"\n",
    ),
];

#[test]
fn where_nothing_is_kept_back_the_published_studies_are_those_of_everything() {
    let concealed = |literals: &[&str]| {
        let folder = lay_down(literals);
        textured(folder.path());
        let catalogue = sound(folder.path());
        let of_everything = format!("{:?}", Studies::of(&catalogue));
        let concealed = Concealed::of(catalogue, "a private owner");
        let of_published = format!("{:?}", Studies::of(&concealed));
        (concealed.is_whole(), of_everything == of_published)
    };
    assert_eq!(concealed(&[PLAIN]), (true, true));
    for (what, record) in KEPT_BACK {
        assert!(!concealed(&[PLAIN, record]).0, "{what}");
    }
}

#[test]
fn commands_use_everything_and_say_so_to_people_alone() {
    let sentence = |done: &str| {
        format!(
            "Everything recorded was {done}, including what is private or not published; the pages leave that out."
        )
    };
    let commands = |folder: &Path| {
        let dir = text(folder).to_owned();
        [
            (
                vec!["census".to_owned(), "--in".to_owned(), dir.clone()],
                "counted",
            ),
            (
                vec![
                    "census".to_owned(),
                    "1".to_owned(),
                    "--in".to_owned(),
                    dir.clone(),
                ],
                "counted",
            ),
            (
                vec![
                    "identify".to_owned(),
                    "1".to_owned(),
                    "--in".to_owned(),
                    dir.clone(),
                ],
                "used",
            ),
            (
                vec![
                    "align".to_owned(),
                    "1".to_owned(),
                    "--in".to_owned(),
                    dir.clone(),
                ],
                "used",
            ),
            (vec!["audit".to_owned(), dir], "judged"),
        ]
    };
    let out = |arguments: &[String], more: &[&str]| {
        let arguments: Vec<&str> = arguments
            .iter()
            .map(String::as_str)
            .chain(more.iter().copied())
            .collect();
        keyblock(&arguments).out
    };
    let plain = lay_down(&[PLAIN]);
    for (arguments, done) in commands(plain.path()) {
        assert!(
            !out(&arguments, &[]).contains("Everything recorded"),
            "{arguments:?} {done}"
        );
        let help = out(&[arguments[0].clone()], &["--help"]);
        let help = help.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(
            help.contains(&format!(
                "Everything recorded is {done}, including what is private or not published"
            )),
            "{help}"
        );
    }
    for (what, record) in KEPT_BACK {
        let folder = lay_down(&[PLAIN, record]);
        textured(folder.path());
        for (arguments, done) in commands(folder.path()) {
            assert!(
                out(&arguments, &[]).contains(&sentence(done)),
                "{what}: {arguments:?}"
            );
            assert!(
                !out(&arguments, &["--json"]).contains("Everything"),
                "{what}: {arguments:?}"
            );
        }
    }
    // An unpublished record that is a published sheet is joined to it here.
    let folder = lay_down(&[&two_records(
        "publish = false\nsame_as = [{ impression = \"1.1\" }]",
    )]);
    let census = out(
        &[
            "census".to_owned(),
            "1".to_owned(),
            "--in".to_owned(),
            text(folder.path()).to_owned(),
        ],
        &[],
    );
    assert!(census.contains("Known: 1 impression\n"), "{census}");
    assert!(census.contains("stolen"), "{census}");
}
