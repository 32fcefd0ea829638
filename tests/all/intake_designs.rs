//! To which designs rows of others' listings belong, and `designs.toml`.

use std::collections::BTreeSet;

use keyblock::exchange::intake::columns::Holds::{
    self, CatalogueNumber, Dimensions, Series, Title,
};
use keyblock::exchange::intake::grouping::settings::{self, DesignSettings};
use keyblock::exchange::intake::grouping::{NewDesignMaker, design_toml};
use keyblock::exchange::intake::proposal::{ProposedRow, RowStanding};

use crate::intake_rows::{HARBOUR, doubts, ground, groups, listing, row};
use crate::small::lay_down;

const SETTLED: &str = r#"
leave_out = ["A 5"]

[[designs]]
is = "14"
sheets = ["A 1", "A 2", "B 77"]
settled = true

[[designs]]
is = "new"
key = "16"
title = "The Locks"
sheets = ["A 3"]
settled = true

[[designs]]
is = "12"
sheets = ["A 4"]
"#;

#[test]
fn rows_join_a_design_by_its_number_then_by_title_with_size() {
    let ground = ground();
    let mut rows = listing(
        &ground.lexicon,
        &[
            &[(Holds::Design, "no. 12")],
            &[(CatalogueNumber, "Willem 3")],
            &[(CatalogueNumber, "Orme W 4"), (Title, "Another Name")],
            &[(Title, "Schleuse"), (Dimensions, "image: 167 x 243 mm")],
            &[(Title, "THE LOCK"), (Dimensions, "image: 206 x 243 mm")],
            &[(Title, "The Lock")],
            &[(Title, "Crossing"), (Dimensions, "Bild: 15,1 x 10 cm")],
            &[(Title, "The Crossing")],
            &[(Title, "The Lock"), (Dimensions, "sheet: 400 x 500 mm")],
        ],
    );
    let designs = ground.proposed(&mut rows);
    assert_eq!(
        groups(&designs, &rows),
        ["12: 1 2 3 4 6 9", "new: 5", "15: 7", "14|15: 8"]
    );
    insta::assert_snapshot!(designs[0].joins.join("\n"), @r##"
    the rows name design 12 ("The Lock")
    Willem 1950, 3 is design 12 ("The Lock") in the concordance
    Orme 1969, W 4 is design 12 ("The Lock") in the concordance
    same title as design 12 ("The Lock"); images 167 × 243 and 166 × 243 mm agree within 3 %
    same title as design 12 ("The Lock")
    "##);
    assert_eq!(
        designs[1].splits,
        [
            r#"same title as design 12 ("The Lock"), but the image is 40 mm larger (206 × 243 beside 166 × 243 mm)"#
        ]
    );
    assert!(doubts(&rows[5])[0].contains("no size to compare"));
}

#[test]
fn a_number_that_the_title_contradicts_is_settled_by_nobody_but_an_editor() {
    let ground = ground();
    let mut rows = listing(
        &ground.lexicon,
        &[
            &[(Holds::Design, "14"), (Title, "Die Schleuse")],
            &[(CatalogueNumber, "Willem 3; Orme W 4"), (Title, "The Lock")],
            // 4 of the first list covers two designs, which have one title.
            &[(CatalogueNumber, "Willem 4"), (Title, "The Crossing")],
            &[(CatalogueNumber, "Willem 4"), (Title, "The Lock")],
            &[(Holds::Design, "14"), (CatalogueNumber, "Willem 3")],
        ],
    );
    let designs = ground.proposed(&mut rows);
    assert_eq!(
        groups(&designs, &rows),
        ["12|14: 1 5", "12: 2", "14|15: 3", "12|14|15: 4"]
    );
    insta::assert_snapshot!(designs[0].doubts.join("\n"), @r##"
    row 1: the number is that of design 14 ("The Crossing"), the title that of design 12 ("The Lock")
    row 5: one number of the row is that of design 14 ("The Crossing"), another that of design 12 ("The Lock")
    "##);
}

/// A batch of sheets of no recorded design, in the forms that FORMS of real listings have; the designs are known.
#[test]
fn new_designs_are_told_by_title_with_size_series_and_number() {
    let ground = ground();
    let mut rows = listing(
        &ground.lexicon,
        &[
            &[(Title, "The Mill"), (Dimensions, "image: 166 x 243 mm")],
            &[
                (Title, "Mill"),
                (Dimensions, "image: 167 x 243 mm support: 300 x 400 mm"),
            ],
            &[(Title, "The Mill"), (Dimensions, "image: 206 x 243 mm")],
            &[(Title, "Untitled"), (Dimensions, "image: 166 x 243 mm")],
            &[(Title, "[no title]"), (Dimensions, "image: 166 x 243 mm")],
            &[(Title, "o. T."), (Dimensions, "image: 166 x 243 mm")],
            // Frontispieces of two series, of one size.
            &[
                (Title, "Frontispiece"),
                (Series, "Dales"),
                (Dimensions, "image: 100 x 80 mm"),
            ],
            &[
                (Title, "Frontispiece"),
                (Series, "Fells"),
                (Dimensions, "image: 100 x 80 mm"),
            ],
            &[
                (Title, "Frontispiece"),
                (Series, "Dales"),
                (Dimensions, "image: 101 x 80 mm"),
            ],
            // A catalogue that is not in the bibliography still numbers its prints.
            &[
                (Title, "Weir"),
                (CatalogueNumber, "Baker 7"),
                (Dimensions, "image: 100 x 80 mm"),
            ],
            &[
                (Title, "Weir"),
                (CatalogueNumber, "Baker 8"),
                (Dimensions, "image: 100 x 80 mm"),
            ],
            &[(Title, "The Wear"), (CatalogueNumber, "Baker 7")],
            &[
                (Title, "Weir"),
                (Holds::Maker, "Ada Brook"),
                (Dimensions, "plate: 100 x 80 mm"),
            ],
            // Sheets are trimmed: they say nothing of the design.
            &[(Title, "Barges"), (Dimensions, "sheet: 300 x 400 mm")],
            &[(Title, "Barges"), (Dimensions, "sheet: 200 x 300 mm")],
            &[(Holds::Condition, "good")],
        ],
    );
    let designs = ground.proposed(&mut rows);
    assert_eq!(
        groups(&designs, &rows),
        [
            "new: 1 2",
            "new: 3",
            "new: 4",
            "new: 5",
            "new: 6",
            "new: 7 9",
            "new: 8",
            "new: 10 12",
            "new: 11",
            "new: 13",
            "new: 14 15"
        ]
    );
    assert_eq!(
        designs[0].joins,
        ["same title; images 166 × 243 and 167 × 243 mm agree within 3 %"]
    );
    assert_eq!(
        designs[1].splits,
        [
            "same title as row 1, but the image is 40 mm larger (206 × 243 beside 166 × 243 mm): 2 designs"
        ]
    );
    assert_eq!(rows[15].design, None);
    assert!(
        doubts(&rows[12])
            .iter()
            .any(|d| d.contains("not The Artist, the artist of this catalogue"))
    );
    let keys: Vec<String> = designs
        .iter()
        .map(|d| d.key.as_ref().unwrap().to_string())
        .collect();
    assert_eq!(keys[0], "16");
    assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len());
}

#[test]
fn the_record_of_a_new_design_is_read_without_errors() {
    let ground = ground();
    let mut rows = listing(
        &ground.lexicon,
        &[
            &[
                (Title, "The \"Mill\"\u{202e}"),
                (Holds::Date, "c. 1912, printed 1925"),
                (Holds::Medium, "Etching and aquatint on paper"),
                (Dimensions, "image: 166 x 243 mm; plate: 9 1/2 x 7 in."),
                (
                    Holds::Maker,
                    "engraved by Cora Mill; etched by Nobody Known",
                ),
                (Series, "Harbour views"),
                (Holds::Design, "R 7"),
            ],
            &[
                (Title, "Die Mühle"),
                (Holds::Date, "1913"),
                (Holds::Design, "R 7"),
            ],
        ],
    );
    let designs = ground.proposed(&mut rows);
    assert_eq!(groups(&designs, &rows), ["new: 1 2"]);
    let record = NewDesignMaker::of(&ground.catalogue)
        .record(&designs[0], &rows)
        .unwrap();
    let text = design_toml(&record);
    insta::assert_snapshot!(text, @r##"
    # Design r-7, proposed from what was handed in.
    # Look at: row 1: the catalogue has no design "R 7".
    # Look at: row 2: the catalogue has no design "R 7".
    # Look at: row 2: its title is not that of row 1.
    # Look at: the dates differ: 1912~ (row 1), 1913 (row 2).
    # Look at: no person of the catalogue has the name of the etcher, "Nobody Known".

    number = "R 7"
    titles = [
      { text = "The \"Mill\"\u202E" },
      { text = "Die Mühle" },
    ]
    date = [{ is = "1912~" }, { is = "1913" }]
    makers = [{ person = "mill", role = "engraver" }]
    technique = ["etching", "aquatint"]
    series = { series = "harbour-views" }

    [size]
    image = [166, 243]
    matrix = [241.3, 177.8]
    "##);
    let literal = format!("-- records/designs/{}/design.toml\n{text}", record.key);
    let folder = lay_down(&[HARBOUR, &literal]);
    let reading = keyblock::read::read(folder.path());
    let design = &reading.catalogue.designs[&record.key];
    let errors: Vec<&str> = reading
        .findings
        .iter()
        .map(|f| f.message.as_str())
        .collect();
    assert_eq!(errors, [""; 0]);
    assert_eq!(design.number, "R 7");
    assert_eq!(design.titles[0].text.value, "The \"Mill\"\u{202e}");
}

#[test]
fn what_an_editor_settled_holds_for_the_next_file() {
    let ground = ground();
    let (settled, faults) = settings::read(SETTLED);
    assert_eq!(faults, []);
    let cells = |title| vec![(Title, title), (Dimensions, "image: 166 x 243 mm")];
    let titles = [
        "The Lock", "The Mill", "The Lock", "The Lock", "The Lock", "The Mill",
    ];
    let cells: Vec<Vec<(Holds, &str)>> = titles.iter().map(|title| cells(title)).collect();
    let cells: Vec<&[(Holds, &str)]> = cells.iter().map(Vec::as_slice).collect();
    let mut rows = listing(&ground.lexicon, &cells);
    let designs = ground.settled(&mut rows, &settled);
    assert_eq!(
        groups(&designs, &rows),
        ["14: 1 2", "new: 3", "12: 4", "new: 6"]
    );
    assert_eq!(rows[4].standing, RowStanding::LeftOut);
    assert_eq!(designs[1].title.as_deref(), Some("The Locks"));
    let told = settled.check(&rows, &ground.catalogue);
    let told: Vec<String> = told
        .iter()
        .map(|f| format!("{}:{} {} {}", f.line, f.column, f.is_error, f.message))
        .collect();
    assert_eq!(told, ["6:25 false this file has no sheet B 77"]);
    // What is written is read back, and proposes the same.
    let text = settings::written(&designs, &rows, &settled);
    insta::assert_snapshot!(text.split("\n\n").skip(1).collect::<Vec<_>>().join("\n\n"), @r##"
    leave_out = ["A 5"]

    [[designs]]
    is = "14"
    title = "The Crossing"
    sheets = ["A 1", "A 2", "B 77"]
    settled = true

    [[designs]]
    is = "new"
    key = "16"
    title = "The Locks"
    sheets = ["A 3"]
    settled = true

    [[designs]]
    is = "12"
    title = "The Lock"
    sheets = ["A 4"]
    settled = true

    [[designs]]
    is = "new"
    key = "17"
    title = "The Mill"
    sheets = ["A 6"]
    digest = "2dffbf80"
    "##);
    let (again, faults) = settings::read(&text);
    assert_eq!(faults, []);
    let mut rows_again = listing(&ground.lexicon, &cells);
    let designs_again = ground.settled(&mut rows_again, &again);
    assert_eq!(groups(&designs_again, &rows_again), groups(&designs, &rows));
    assert_eq!(settings::written(&designs_again, &rows_again, &again), text);
}

/// An editor need not write `settled`: a design that is not as it was proposed was changed by somebody.
#[test]
fn what_an_editor_changed_is_settled() {
    let ground = ground();
    let cells = |title| vec![(Title, title), (Dimensions, "image: 166 x 243 mm")];
    let cells = ["The Mill", "The Mill", "The Weir"].map(cells);
    let cells: Vec<&[(Holds, &str)]> = cells.iter().map(Vec::as_slice).collect();
    let mut rows = listing(&ground.lexicon, &cells);
    let designs = ground.proposed(&mut rows);
    assert_eq!(groups(&designs, &rows), ["new: 1 2", "new: 3"]);
    let text = settings::written(&designs, &rows, &DesignSettings::default());
    let (untouched, faults) = settings::read(&text);
    assert_eq!(faults, []);
    assert!(untouched.designs.iter().all(|design| !design.is_settled));
    let moved = text
        .replace("[\"A 1\", \"A 2\"]", "[\"A 1\"]")
        .replace("[\"A 3\"]", "[\"A 3\", \"A 2\"]");
    assert_ne!(moved, text);
    let (moved, faults) = settings::read(&moved);
    assert_eq!(faults, []);
    let mut rows = listing(&ground.lexicon, &cells);
    let designs = ground.settled(&mut rows, &moved);
    assert_eq!(groups(&designs, &rows), ["new: 1", "new: 2 3"]);
    assert!(designs.iter().all(|design| design.is_settled));
}

#[test]
fn every_fault_of_the_settings_has_its_place() {
    let ground = ground();
    let text = r#"
leave_out = [1962.44]
[[designs]]
sheet = ["A 1"]
sheets = ["A 1", "A 2"]
settled = "yes"
[[designs]]
is = "The Lock"
[[designs]]
is = "99"
sheets = ["A 1", "a1", "row 2"]
settled = true
"#;
    let (settled, mut faults) = settings::read(text);
    let mut rows = listing(&ground.lexicon, &[&[(Title, "x")], &[(Title, "y")]]);
    let designs = ground.settled(&mut rows, &settled);
    assert_eq!(groups(&designs, &rows), ["new: 1", "new: 2"]);
    faults.extend(settled.check(&rows, &ground.catalogue));
    let told: Vec<String> = faults
        .iter()
        .map(|f| format!("{}:{} {}", f.line, f.column, f.message))
        .collect();
    insta::assert_snapshot!(told.join("\n"), @r##"
    2:14 1962.44 is no text
    3:1 it is not said which design it is
    4:1 `sheet` is no key here
    6:11 `settled` is neither true nor false
    8:6 "The Lock" is no key of a design
    2:14 this file has no sheet 1962.44
    10:6 the catalogue has no design `99`
    11:11 the sheet A 1 stands twice, first in line 5
    11:18 the sheet a1 stands twice, first in line 5
    "##);
    for text in [
        "",
        "[[designs]",
        "designs = 3",
        "leave_out = { a = 1 }",
        "\u{0}",
        "[[designs]]\nis = [\"a\", 3]",
    ] {
        let _ = settings::read(text);
    }
    let (_, faults) = settings::read(&"[".repeat(5_000));
    assert!(!faults.is_empty());
}

/// Every row is compared with few others, however many there are.
#[test]
fn many_rows_of_one_title_are_grouped_with_all_of_them_told() {
    let ground = ground();
    let one = row(
        1,
        &ground.lexicon,
        &[(Title, "Frontispiece"), (Dimensions, "image: 100 x 80 mm")],
    );
    let mut rows: Vec<ProposedRow> = (1..=5_000)
        .map(|number| {
            let mut row = one.clone();
            row.row = number;
            row.accession = Some(format!("A {number}"));
            row.facts
                .texts
                .add(Series, format!("Series {}", number % 2_500).into());
            row
        })
        .collect();
    let designs = ground.proposed(&mut rows);
    assert_eq!(designs.len(), 2_500);
    assert!(designs.iter().all(|design| design.rows.len() == 2));
}
