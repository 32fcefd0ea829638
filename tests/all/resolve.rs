//! References and what they mean: `keyblock resolve`, the list for other sites, the numbers of earlier catalogues.

use std::fs;

use serde_json::Value;

use crate::pages::{page, site_of};
use crate::program::{Ran, keyblock, text};
use crate::small::lay_down;

/// Two designs, two museums, two earlier catalogues, two records of one sheet.
const HARBOUR: &str = r#"
-- records/literature.bib
@book{first-list, author = {Willem, Ada}, title = {First List: the Prints}, year = {1950}}
@book{second, author = {Orme, Pia}, title = {The Woodcuts}, year = {1969}}
-- records/holders/harbour.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
isil = "XX-HAR"
formerly = [{ name = "Sailors' Institute", until = "1950" }]
-- records/holders/town.toml
name = "Town Library"
kind = "library"
-- records/holders/owner-a.toml
name = "Secretive Person"
kind = "private"
-- records/people/orme.toml
name = "Pia Orme"
sort = "Orme, Pia"
names = [{ text = "オルメ・ピア", lang = "ja" }]
-- records/exhibitions.toml
[winter]
title = "Ships in Winter"
-- records/designs/14/design.toml
number = "14"
titles = [
  { text = "Ōsaka Ferry", lang = "en" },
  { text = "大阪の渡し船", lang = "ja", kind = "original" },
  { text = "The Crossing", kind = "former" },
]
literature = [{ cite = "first-list", number = "9" }, { cite = "second", number = "W 4" }]
states = [
  { key = "dark", literature = [{ cite = "first-list", number = "I", relation = "covers-ours" }] },
  { key = "moonlit", literature = [{ cite = "first-list", number = "I", relation = "covers-ours" }, { cite = "second", number = "II" }] },
  { key = "cut-down", literature = [{ cite = "second", number = "III", relation = "part-of-ours" }] },
]
printings = [{ key = "own", name = "Printed by the artist", kind = "artist", states = "all", literature = [{ cite = "first-list", number = "c", relation = "not-a-state" }] }]
-- records/designs/14/impressions/1.toml
status = "located"
holder = "harbour"
accession = "1962.44"
former_accessions = [{ holder = "town", number = "N 207" }]
-- records/designs/14/impressions/2.toml
status = "located"
holder = "town"
accession = "14.1"
-- records/designs/14/impressions/3.toml
status = "untraced"
same_as = [{ impression = "14.1", why = "the same fold" }]
-- records/designs/15/design.toml
number = "15a"
titles = [{ text = "Night Ferry" }]
literature = [{ cite = "first-list", number = "12/I", relation = "error" }]
states = [{ key = "dark" }]
-- records/designs/15/impressions/1.toml
status = "located"
holder = "owner-a"
accession = "1962.44"
-- records/designs/15/impressions/2.toml
status = "located"
holder = "harbour"
accession = "P 9"
publish = false
"#;

fn resolve(words: &[&str]) -> Ran {
    let folder = lay_down(&[HARBOUR]);
    let ran = keyblock(&[&["resolve", "--in", text(folder.path())], words].concat());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran
}

/// Each reading in a line: certainty, path of the address, label, why.
fn readings(references: &[&str]) -> Vec<Vec<String>> {
    let ran = resolve(&[&["--json"], references].concat());
    let document: Value = serde_json::from_str(&ran.out).unwrap();
    let results = document["results"].as_array().unwrap();
    assert_eq!(results.len(), references.len());
    let line = |reading: &Value| {
        let [certainty, address, label, why] =
            ["certainty", "address", "label", "why"].map(|key| reading[key].as_str().unwrap());
        let path = address.strip_prefix("https://prints.example.org/").unwrap();
        format!("{certainty} {path} | {label} | {why}")
    };
    results
        .iter()
        .map(|result| {
            result["readings"]
                .as_array()
                .unwrap()
                .iter()
                .map(line)
                .collect()
        })
        .collect()
}

/// Asserts that each reference has these readings.
fn assert_read(expected: &[(&str, &[&str])]) {
    let references: Vec<&str> = expected.iter().map(|(reference, _)| *reference).collect();
    for ((reference, expected), found) in expected.iter().zip(readings(&references)) {
        assert_eq!(found, *expected, "{reference}");
    }
}

const STATE_III: &str =
    "certain design/14/#state-cut-down | TP 14 iii/iii | number in this catalogue";

#[test]
fn numbers_states_and_impressions_are_read_as_people_write_them() {
    const DESIGN: &[&str] = &["certain design/14/ | TP 14, Ōsaka Ferry | number in this catalogue"];
    const STATE: &[&str] = &[STATE_III];
    assert_read(&[
        ("TP 14", DESIGN),
        ("tp14", DESIGN),
        ("no. 14", DESIGN),
        ("TP no. 14", DESIGN),
        ("TP 14 iii", STATE),
        ("TP 14 III/III", STATE),
        ("14 iii (of iii)", STATE),
        ("14, state 3", STATE),
        (
            "TP 14 iii/iv",
            &[
                "possible design/14/#state-cut-down | TP 14 iii/iii | numeral in this catalogue, which has another total of states",
            ],
        ),
        (
            "TP 14 iv",
            &["possible design/14/ | TP 14, Ōsaka Ferry | “iv” is not recorded there"],
        ),
        (
            "14 cut-down",
            &["certain design/14/#state-cut-down | TP 14 iii/iii | identifier in this catalogue"],
        ),
        (
            "TP 14 Printed by the artist",
            &["certain design/14/#printing-own | TP 14 (Printed by the artist) | name"],
        ),
        (
            "TP 14.2",
            &["certain impression/14.2/ | TP 14.2 | number in this catalogue"],
        ),
        (
            "14.3",
            &[
                "certain impression/14.1/ | TP 14.1 | number in this catalogue; 14.3 is a record of this impression",
            ],
        ),
        (
            "TP 15a",
            &["certain design/15/ | TP 15a, Night Ferry | number in this catalogue"],
        ),
        (
            "15a i",
            &["certain design/15/#state-dark | TP 15a, only state | number in this catalogue"],
        ),
        ("TP 99", &[]),
        ("…", &[]),
    ]);
}

#[test]
fn keys_links_and_addresses_are_read() {
    assert_read(&[
        (
            "design:15",
            &["certain design/15/ | TP 15a, Night Ferry | identifier in this catalogue"],
        ),
        (
            "impression/14.2/",
            &["certain impression/14.2/ | TP 14.2 | identifier in this catalogue"],
        ),
        (
            "https://prints.example.org/design/14/#state-moonlit",
            &["certain design/14/#state-moonlit | TP 14 ii/iii | identifier in this catalogue"],
        ),
        (
            "prints.example.org/design/14/#printing-own",
            &[
                "certain design/14/#printing-own | TP 14 (Printed by the artist) | identifier in this catalogue",
            ],
        ),
        (
            "https://prints.example.org/design/14/census/",
            &["certain design/14/ | TP 14, Ōsaka Ferry | identifier in this catalogue"],
        ),
        (
            "holder:harbour",
            &["certain holder/harbour/ | Harbour Museum, Northport | identifier in this catalogue"],
        ),
        (
            "https://prints.example.org/lit/first-list/#9i",
            &["certain lit/first-list/#9i | Willem 1950, 9 I | identifier in this catalogue"],
        ),
        (
            "dark",
            &[
                "possible design/14/#state-dark | TP 14 i/iii | identifier in this catalogue",
                "possible design/15/#state-dark | TP 15a, only state | identifier in this catalogue",
            ],
        ),
        (
            "cut-down",
            &["probable design/14/#state-cut-down | TP 14 iii/iii | identifier in this catalogue"],
        ),
    ]);
}

#[test]
fn numbers_of_earlier_catalogues_are_read_through_the_concordance() {
    const NINE: &[&str] = &[
        "certain design/14/ | TP 14, Ōsaka Ferry | Willem 1950, 9",
        "certain lit/first-list/#9 | Willem 1950, 9 | the number itself, in that catalogue’s list",
    ];
    const ROW_I: &str = "certain lit/first-list/#9i | Willem 1950, 9 I | the number itself, in that catalogue’s list";
    const COVERED: &[&str] = &[
        "possible design/14/#state-dark | TP 14 i/iii | Willem 1950, 9 I (includes this state)",
        "possible design/14/#state-moonlit | TP 14 ii/iii | Willem 1950, 9 I (includes this state)",
        ROW_I,
    ];
    assert_read(&[
        ("First List 9", NINE),
        ("Willem 9", NINE),
        ("Willem 1950, no. 9", NINE),
        ("First List: the Prints, 9", NINE),
        ("Willem 9 I", COVERED),
        ("Willem 9, state 1", COVERED),
        ("Willem 9 i/ii", COVERED),
        (
            "W 4",
            &[
                "probable design/14/ | TP 14, Ōsaka Ferry | Orme 1969, W 4",
                "probable lit/second/#w4 | Orme 1969, W 4 | the number itself, in that catalogue’s list",
            ],
        ),
        (
            "Orme W 4 III",
            &[
                "certain design/14/#state-cut-down | TP 14 iii/iii | Orme 1969, W 4 III (part of this state)",
                "certain lit/second/#w4iii | Orme 1969, W 4 III | the number itself, in that catalogue’s list",
            ],
        ),
        (
            "First List 9 c",
            &[
                "certain design/14/#printing-own | TP 14 (Printed by the artist) | Willem 1950, 9 c (not a state)",
                "certain lit/first-list/#9c | Willem 1950, 9 c | the number itself, in that catalogue’s list",
            ],
        ),
        (
            "Willem 12/I",
            &[
                "possible design/15/ | TP 15a, Night Ferry | Willem 1950, 12/I (in error)",
                "certain lit/first-list/#12i | Willem 1950, 12/I | the number itself, in that catalogue’s list",
            ],
        ),
        (
            "Willem 9 VII",
            &[
                "possible design/14/ | TP 14, Ōsaka Ferry | Willem 1950, 9; the concordance has no “vii” there",
                "possible lit/first-list/#9 | Willem 1950, 9 | the number itself, in that catalogue’s list",
            ],
        ),
        (
            "Willem 1950",
            &["certain lit/first-list/ | Willem 1950 | name"],
        ),
        ("9", &[]),
    ]);
}

#[test]
fn accession_numbers_are_read_with_and_without_punctuation_and_holder() {
    // The accession number of a private sheet names it all the same; the owner's name does not.
    const BOTH: &[&str] = &[
        "possible impression/14.1/ | TP 14.1 | accession number, Harbour Museum",
        "possible impression/15.1/ | TP 15a.1 | accession number, Private collection",
    ];
    const HARBOUR_S: &[&str] =
        &["certain impression/14.1/ | TP 14.1 | accession number, Harbour Museum"];
    assert_read(&[
        ("1962.44", BOTH),
        ("1962/44", BOTH),
        ("inv. no. 1962 44", BOTH),
        ("Harbour Museum 1962.44", HARBOUR_S),
        ("Harbour Museum, Northport, inv. 1962/44", HARBOUR_S),
        ("1962.44 (Sailors' Institute)", HARBOUR_S),
        ("XX-HAR 1962.44", HARBOUR_S),
        (
            "Harb. Mus. 1962.44",
            &["probable impression/14.1/ | TP 14.1 | accession number, Harbour Museum"],
        ),
        (
            "Harbour Museum 196244",
            &[
                "probable impression/14.1/ | TP 14.1 | accession number without its punctuation, Harbour Museum",
            ],
        ),
        (
            "N207",
            &["certain impression/14.1/ | TP 14.1 | former accession number, Town Library"],
        ),
        (
            "Town Library N 207",
            &["certain impression/14.1/ | TP 14.1 | former accession number, Town Library"],
        ),
        // A number of ours that is also an accession number.
        (
            "14.1",
            &[
                "probable impression/14.1/ | TP 14.1 | number in this catalogue",
                "possible impression/14.2/ | TP 14.2 | accession number, Town Library",
            ],
        ),
        (
            "TP 14.1",
            &["certain impression/14.1/ | TP 14.1 | number in this catalogue"],
        ),
        ("Secretive Person 1962.44", &[]),
        ("Secretive Person", &[]),
        // Not published.
        ("P 9", &[]),
        ("15a.2", &[]),
    ]);
}

#[test]
fn titles_and_names_are_read_in_any_script() {
    const FERRY: &[&str] = &["certain design/14/ | TP 14, Ōsaka Ferry | title"];
    assert_read(&[
        ("osaka ferry", FERRY),
        ("大阪の渡し船", FERRY),
        (
            "Osaka Ferry, iii",
            &["certain design/14/#state-cut-down | TP 14 iii/iii | title"],
        ),
        (
            "The Crossing",
            &["certain design/14/ | TP 14, Ōsaka Ferry | former title"],
        ),
        (
            "Ōsaka",
            &["probable design/14/ | TP 14, Ōsaka Ferry | a title or name begins so"],
        ),
        ("オルメ・ピア", &["certain person/orme/ | Pia Orme | name"]),
        ("Orme, Pia", &["certain person/orme/ | Pia Orme | name"]),
        (
            "Sailors’ Institute",
            &["certain holder/harbour/ | Harbour Museum, Northport | former name"],
        ),
        (
            "xx har",
            &["certain holder/harbour/ | Harbour Museum, Northport | ISIL"],
        ),
        (
            "Ships in Winter",
            &["certain exhibition/winter/ | Ships in Winter | name"],
        ),
        ("Ferry", &[]),
    ]);
}

#[test]
fn people_get_a_line_for_each_reading() {
    let ran = resolve(&["TP 14 iii", "nothing at all"]);
    assert_eq!(
        ran.out,
        "TP 14 iii\n  certain   TP 14 iii/iii  https://prints.example.org/design/14/#state-cut-down  number in this catalogue\n\
         \nnothing at all\n  not understood\n"
    );
}

#[test]
fn a_list_keeps_its_columns_and_gets_ours() {
    let folder = lay_down(&[HARBOUR]);
    let list = folder.path().join("list.csv");
    let run = |bytes: &[u8], words: &[&str]| {
        fs::write(&list, bytes).unwrap();
        let fixed = [
            "resolve",
            "--in",
            text(folder.path()),
            "--list",
            text(&list),
        ];
        keyblock(&[&fixed, words].concat())
    };
    let ran = run(
        "\u{feff}Lot;Reference;Note\r\n1;TP 14 iii;\"a; b\"\r\n2;1962.44\r\n3;;x\r\n".as_bytes(),
        &["--column", "reference"],
    );
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(
        ran.out,
        "Lot;Reference;Note;reading_certainty;reading_address;reading_label;reading_kind;reading_key;reading_state;reading_printing;reading_why;other_readings\r\n\
         1;TP 14 iii;\"a; b\";certain;https://prints.example.org/design/14/#state-cut-down;TP 14 iii/iii;design;14;cut-down;;number in this catalogue;\r\n\
         2;1962.44;;possible;https://prints.example.org/impression/14.1/;TP 14.1;impression;14.1;;;accession number, Harbour Museum;https://prints.example.org/impression/15.1/\r\n\
         3;;x;;;;;;;;;\r\n"
    );
    let alone = run(b"TP 14\n", &["--no-headings"]);
    assert!(
        alone
            .out
            .starts_with("TP 14,certain,https://prints.example.org/design/14/,"),
        "{}",
        alone.out
    );
    let json = run(b"which\nTP 14\n", &["--json"]);
    let document: Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(document["results"][0]["readings"][0]["key"], "14");
    for (bytes, words, code, told) in [
        (
            &b"a,b\n1,2\n"[..],
            &[][..],
            2,
            "has 2 columns, and nothing says which has the references\n  name it with --column; the columns are a, b",
        ),
        (b"a,b\n1,2\n", &["--column", "c"], 2, "has no column “c”"),
        (b"a,b\n1,2\n", &["--column", "3"], 2, "has no column “3”"),
        (
            b"a,a\n1,2\n",
            &["--column", "a"],
            2,
            "the columns 1 and 2 are both called “a”\n  name the column by its number",
        ),
        (
            b"a\nM\xfcller\n",
            &[],
            1,
            "line 2 is not in UTF-8\n  save it as CSV in UTF-8",
        ),
        (b"\xff\xfea\0\n\0", &[], 1, "is in UTF-16"),
        (
            b"PK\x03\x04rest",
            &[],
            1,
            "is a workbook of a spreadsheet program, no CSV",
        ),
    ] {
        let ran = run(bytes, words);
        assert_eq!(ran.code, Some(code), "{}", ran.err);
        assert!(ran.err.contains(told), "{}", ran.err);
        assert!(ran.out.is_empty(), "{}", ran.out);
    }
    let missing = keyblock(&[
        "resolve",
        "--in",
        text(folder.path()),
        "--list",
        "absent.csv",
    ]);
    assert_eq!(missing.code, Some(2), "{}", missing.err);
    let neither = keyblock(&["resolve", "--in", text(folder.path())]);
    assert_eq!(neither.code, Some(2), "{}", neither.err);
}

#[test]
fn records_with_errors_are_left_out_and_the_rest_is_resolved() {
    let folder = lay_down(&[HARBOUR, "-- records/designs/16/design.toml\ntitle = 1\n"]);
    let ran = keyblock(&["resolve", "--in", text(folder.path()), "TP 14"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.err
            .contains("1 error in the records; what they concern was left out"),
        "{}",
        ran.err
    );
    assert!(
        ran.out.contains("https://prints.example.org/design/14/"),
        "{}",
        ran.out
    );
}

/// A catalogue as its first edition has it.
const FIRST_EDITION: &str = r#"
-- catalogue.toml
title = "The Prints"
siglum = "TP"
artist = "artist"
language = "en"
address = "https://prints.example.org"
licence = "CC-BY-4.0"
edition = "1"
dated = "2024-06-01"
-- records/designs/mill/design.toml
number = "3"
titles = [{ text = "The Mill" }]
states = [{ key = "dark" }, { key = "moonlit" }]
-- records/designs/mill/impressions/1.toml
status = "untraced"
-- records/people/old.toml
name = "A Printer"
"#;

/// The same later: the design has another key and number, a state stands before the others, the person another key.
const LATER: &str = r#"
-- records/designs/tide-mill/design.toml
number = "4"
was = ["mill"]
titles = [{ text = "The Mill" }]
states = [{ key = "before-lamps" }, { key = "dark" }, { key = "moonlit" }]
-- records/designs/tide-mill/impressions/1.toml
status = "untraced"
-- records/people/printer.toml
name = "A Printer"
was = ["old"]
"#;

#[test]
fn citations_of_an_earlier_edition_are_still_understood() {
    let folder = lay_down(&[FIRST_EDITION]);
    let dir = folder.path();
    let ran = keyblock(&["issue", text(dir)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    fs::remove_dir_all(dir.join("records/designs/mill")).unwrap();
    fs::remove_file(dir.join("records/people/old.toml")).unwrap();
    for file in format!("\n{LATER}").split("\n-- ").skip(1) {
        let (path, record) = file.split_once('\n').unwrap();
        let path = dir.join(path.trim());
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, record).unwrap();
    }
    let expected = [
        (
            "TP 3 ii (edition 1)",
            &["certain TP 4 iii/iii number or numeral of edition 1"][..],
        ),
        (
            "TP 3, edition 1",
            &["certain TP 4, The Mill number or numeral of edition 1"],
        ),
        (
            "TP 3",
            &["possible TP 4, The Mill number or numeral of edition 1"],
        ),
        ("TP 4 (edition 1)", &[]),
        ("TP 4", &["certain TP 4, The Mill number in this catalogue"]),
        (
            "TP 4 ii",
            &[
                "probable TP 4 ii/iii number in this catalogue",
                "possible TP 4 iii/iii number or numeral of edition 1",
            ],
        ),
        (
            "https://prints.example.org/design/mill/#state-dark",
            &["certain TP 4 ii/iii former identifier"],
        ),
        ("impression:mill.1", &["certain TP 4.1 former identifier"]),
        ("person:old", &["certain A Printer former identifier"]),
    ];
    let references: Vec<&str> = expected.iter().map(|(reference, _)| *reference).collect();
    let ran = keyblock(
        &[
            &["resolve", "--in", text(dir), "--json"],
            references.as_slice(),
        ]
        .concat(),
    );
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let document: Value = serde_json::from_str(&ran.out).unwrap();
    for (at, (reference, expected)) in expected.iter().enumerate() {
        let readings = document["results"][at]["readings"].as_array().unwrap();
        let told: Vec<String> = readings
            .iter()
            .map(|reading| {
                let [certainty, label, why] =
                    ["certainty", "label", "why"].map(|key| reading[key].as_str().unwrap());
                format!("{certainty} {label} {why}")
            })
            .collect();
        assert_eq!(told, *expected, "{reference}");
    }
}

/// Two works of one author, a number that stands for two designs, one that is written in two ways, and parts.
const CATALOGUES: &str = r#"
-- records/literature.bib
@book{checklist, author = {Willem, Ada}, title = {Checklist}, year = {1950}}
@book{woodcuts, author = {Willem, Ada}, title = {Woodcuts}, year = {1962}}
@book{other, author = {Orme, Pia}, title = {Other Prints}, year = {1969}}
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
literature = [
  { cite = "other", number = "12/I" },
  { cite = "checklist", number = "9" },
  { cite = "checklist", number = "10", relation = "part-of-ours" },
]
states = [{ key = "dark" }, { key = "moonlit", literature = [{ cite = "other", number = "II", relation = "error" }] }]
printings = [{ key = "own", name = "Printed by the artist", kind = "artist", states = "all", literature = [{ cite = "other", number = "b", relation = "not-a-state" }] }]
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
literature = [{ cite = "other", number = "12-I", relation = "covers-ours" }, { cite = "woodcuts", number = "9б" }]
-- records/designs/3/design.toml
titles = [{ text = "The Mill" }]
"#;

/// The rows of a table on a page: the cells of each as text, with bars between them.
fn rows(html: &str) -> Vec<String> {
    let rows = html.split("<tr").skip(1);
    let cells = rows.map(|row| {
        let row = row.split("</tr>").next().unwrap();
        let row = row.split_once('>').unwrap().1;
        let cells = row.split_inclusive("</t").map(|cell| {
            let mut text = String::new();
            let mut is_tag = false;
            for c in cell.trim_end_matches("</t").chars() {
                match c {
                    '<' => is_tag = true,
                    '>' => is_tag = false,
                    c if !is_tag => text.push(c),
                    _ => {}
                }
            }
            text.trim_start_matches(['h', 'd', '>']).trim().to_owned()
        });
        let cells: Vec<String> = cells.filter(|cell| !cell.is_empty()).collect();
        cells.join(" | ")
    });
    cells.collect()
}

#[test]
fn the_page_of_an_earlier_catalogue_lists_its_numbers_and_ours_both_ways() {
    let site = site_of(&[CATALOGUES]);
    let other = page(&site, "lit/other/");
    let (_, numbers) = other.split_once("id=\"its_numbers\"").unwrap();
    let (theirs, ours) = numbers.split_once("id=\"our_numbers\"").unwrap();
    assert_eq!(
        rows(theirs)[1..],
        [
            // One number, however it is punctuated, and both designs that it stands for.
            "Orme 12-I | 2, The Lock | includes this design",
            "1, The Ferry | the same",
            "Orme 12/I b | 1, Printed by the artist | not a state",
            "Orme 12/I II | 1, state ii/ii | in error",
        ]
    );
    for row in ["12i", "12i-b", "12i-ii"] {
        assert_eq!(
            theirs.matches(&format!("<tbody id=\"{row}\">")).count(),
            1,
            "{row}"
        );
        assert!(
            theirs.contains(&format!("<a href=\"#{row}\">Orme 12")),
            "{row}"
        );
    }
    assert_eq!(
        rows(ours)[1..],
        [
            "1, The Ferry | Orme 12/I",
            "1, state ii/ii | Orme 12/I II (in error)",
            "1, Printed by the artist | Orme 12/I b (not a state)",
            "2, The Lock | Orme 12-I (includes this design)",
            "3, The Mill | –not described there",
        ]
    );
    // What is not ASCII stands as it is in the page, and percent-encoded in an address.
    assert!(page(&site, "lit/woodcuts/").contains("<tbody id=\"9б\">"));
}

#[test]
fn lines_of_the_concordance_name_their_author_and_lead_to_rows() {
    let site = site_of(&[CATALOGUES]);
    let concordance = page(&site, "concordance/");
    // Two of the works are by one author, so their numbers stand behind the short form.
    for (cited, to) in [
        ("Willem 1950 9", "../lit/checklist/#9"),
        ("Willem 1950 10", "../lit/checklist/#10"),
        ("Orme 12/I II", "../lit/other/#12i-ii"),
    ] {
        let link = format!("<a href=\"{to}\">{cited}</a>");
        assert_eq!(concordance.matches(&link).count(), 2, "{link}");
    }
    let design = page(&site, "design/1/");
    for (number, to) in [
        ("9", "checklist/#9"),
        ("10", "checklist/#10"),
        ("II", "other/#12i-ii"),
        ("b", "other/#12i-b"),
    ] {
        assert!(
            design.contains(&format!("<a href=\"../../lit/{to}\">{number}</a>")),
            "{number}"
        );
    }
}

/// Every reason has its word on the page, where the script takes it from.
#[test]
fn every_reason_stands_on_the_page_of_references() {
    let site = site_of(&[HARBOUR]);
    let html = page(&site, "resolve/");
    let (_, data) = html.split_once("id=\"resolve_data\">").unwrap();
    let data: Value = serde_json::from_str(data.split_once("</script>").unwrap().0).unwrap();
    let there: Vec<&str> = data["why"]
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    let words = include_str!("../../themes/laid/words/en.ftl");
    let ids = words
        .lines()
        .filter_map(|line| line.strip_prefix("resolve-why-"));
    let mut ids: Vec<&str> = ids.filter_map(|line| line.split(' ').next()).collect();
    ids.sort_unstable();
    assert_eq!(there, ids);
    assert!(ids.len() > 15);
    assert_eq!(data["certainty"]["probable"], "probable");
    // What the examples say can be resolved.
    let (_, examples) = html.split_once("<pre>").unwrap();
    let examples: Vec<&str> = examples.split_once("</pre>").unwrap().0.lines().collect();
    assert_eq!(examples, ["TP 14 iii", "TP 14.1", "Willem 9"]);
}

/// A validator of a schema in `docs/schemas`.
fn schema(name: &str) -> jsonschema::Validator {
    let path = format!(
        "{}/docs/schemas/{name}.schema.json",
        env!("CARGO_MANIFEST_DIR")
    );
    let schema: Value = serde_json::from_slice(&fs::read(path).unwrap()).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

/// `docs/schemas`, by the crate `jsonschema` (JSON Schema 2020-12).
#[test]
fn the_documents_are_valid_by_their_schemas() {
    let ran = resolve(&["--json", "TP 14 iii", "1962.44", "First List 9", "nothing"]);
    let mut document: Value = serde_json::from_str(&ran.out).unwrap();
    let validator = schema("resolve");
    let faults: Vec<_> = validator
        .iter_errors(&document)
        .map(|fault| fault.to_string())
        .collect();
    assert!(faults.is_empty(), "{faults:?}");
    document["results"][0]["readings"][0]["certainty"] = "likely".into();
    assert!(!validator.is_valid(&document));
    let site = site_of(&[HARBOUR]);
    for (file, name) in [
        ("resolve/index.json", "resolve-index"),
        ("resolve/accessions/0.json", "resolve-accessions"),
    ] {
        let mut json: Value = serde_json::from_slice(&site.files[file]).unwrap();
        let validator = schema(name);
        let faults: Vec<_> = validator
            .iter_errors(&json)
            .map(|fault| fault.to_string())
            .collect();
        assert!(faults.is_empty(), "{file}: {faults:?}");
        json["tag"] = 7.into();
        assert!(!validator.is_valid(&json), "{file}");
    }
}

/// The list for other sites leads everywhere: every address that its templates make is a page, with the fragment.
#[test]
fn the_published_list_leads_to_pages_that_are_there() {
    let site = site_of(&[HARBOUR]);
    let read = |path: &str| -> Value { serde_json::from_slice(&site.files[path]).unwrap() };
    let index = read("resolve/index.json");
    assert_eq!(index["siglum"], "TP");
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let mut made = Vec::new();
    let address = |kind: &str, keys: &[(&str, &str)]| {
        let mut address = text(&index["addresses"][kind]);
        for (name, key) in keys {
            address = address.replace(&format!("{{{name}}}"), key);
        }
        address
    };
    let all = |list: &str| index[list].as_array().unwrap().clone();
    for design in all("designs") {
        let key = text(&design["key"]);
        made.push(address("design", &[("design", &key)]));
        for (part, list) in [("state", "states"), ("printing", "printings")] {
            for one in design[list].as_array().into_iter().flatten() {
                made.push(address(
                    part,
                    &[("design", &key), (part, &text(&one["key"]))],
                ));
            }
        }
        for range in design["impressions"].as_array().unwrap() {
            for number in range[0].as_u64().unwrap()..=range[1].as_u64().unwrap() {
                made.push(address(
                    "impression",
                    &[("impression", &format!("{key}.{number}"))],
                ));
            }
        }
    }
    for (kind, list) in [
        ("holder", "holders"),
        ("person", "people"),
        ("exhibition", "exhibitions"),
        ("mark", "marks"),
        ("document", "documents"),
        ("series", "series"),
        ("literature", "literature"),
    ] {
        for record in all(list) {
            made.push(address(kind, &[(kind, &text(&record["key"]))]));
        }
    }
    for work in all("literature") {
        for number in work["numbers"].as_array().into_iter().flatten() {
            let keys = [
                ("literature", text(&work["key"])),
                ("row", text(&number["row"])),
            ];
            made.push(address(
                "row",
                &keys.each_ref().map(|(name, key)| (*name, key.as_str())),
            ));
        }
    }
    assert!(made.len() > 25, "{made:?}");
    for address in made {
        let (path, fragment) = address.split_once('#').unwrap_or((&address, ""));
        let html = page(&site, path);
        assert!(
            fragment.is_empty() || html.contains(&format!("id=\"{fragment}\"")),
            "{address}"
        );
    }
    let numbers = read("resolve/accessions/0.json");
    assert_eq!(numbers["tag"], index["tag"]);
    assert_eq!(
        numbers["numbers"]["1962.44"][0],
        serde_json::json!(["14.1", "harbour"])
    );
    assert_eq!(
        numbers["numbers"]["n207"][0],
        serde_json::json!(["14.1", "town", "former", "bare"])
    );
    let everything = format!("{index}{numbers}");
    for hidden in ["Secretive", "p.9", "\"p9\""] {
        assert!(!everything.contains(hidden), "{hidden}");
    }
}
