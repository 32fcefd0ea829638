//! Which recorded impressions single sheets of a file are, as editors say in `designs.toml`.

use keyblock::exchange::intake::columns::Holds::{self, Title};
use keyblock::exchange::intake::grouping::settings::{self, DesignSettings};
use keyblock::exchange::intake::proposal::{ProposedRow, RowStanding};
use keyblock::exchange::intake::settings::SettingFault;

use crate::intake_rows::{Ground, doubts, ground, groups, handing, listing, row};

fn said(text: &str) -> DesignSettings {
    let (settled, faults) = settings::read(text);
    assert_eq!(faults, []);
    settled
}

fn told(faults: &[SettingFault]) -> String {
    let told = faults.iter().map(|fault| {
        let severity = if fault.is_error { "error" } else { "doubt" };
        let help = fault.help.as_deref().unwrap_or("NO HELP");
        format!(
            "{}:{} {severity}: {} | {help}",
            fault.line, fault.column, fault.message
        )
    });
    told.collect::<Vec<_>>().join("\n")
}

fn numbered(ground: &Ground, numbers: &[&str]) -> Vec<ProposedRow> {
    let rows = numbers.iter().zip(1..).map(|(number, at)| {
        let cells = [(Holds::Accession, *number), (Title, "The Lock")];
        row(at, &ground.lexicon, &cells)
    });
    rows.collect()
}

/// The part of the file below what it says of itself.
fn below_the_head(text: &str) -> String {
    text.split("\n\n").skip(1).collect::<Vec<_>>().join("\n\n")
}

#[test]
fn a_sheet_is_the_record_that_an_editor_names() {
    let ground = ground();
    let settled = said(
        r#"
[[sheets]]
sheet = "A 1"
is = "12.3"
why = "the same crease"

[[sheets]]
sheet = "row 2"
is = "12.2"
"#,
    );
    // The titles are those of other designs: the record decides.
    let cells: &[(Holds, &str)] = &[(Title, "The Crossing")];
    let mut rows = listing(&ground.lexicon, &[cells, cells, cells]);
    let designs = ground.settled(&mut rows, &settled);
    assert_eq!(groups(&designs, &rows), ["12: 1 2", "14|15: 3"]);
    let standing = |at: usize| &rows[at].standing;
    assert_eq!(
        standing(0),
        &RowStanding::Unchanged("12.3".parse().unwrap())
    );
    assert_eq!(
        standing(1),
        &RowStanding::Unchanged("12.2".parse().unwrap())
    );
    assert_eq!(standing(2), &RowStanding::New);
    assert_eq!(
        designs[0].joins,
        [
            "12.3 is a sheet of these, as the editors say",
            "12.2 is a sheet of these, as the editors say"
        ]
    );
    // A record of another holder is told to the editors alone.
    let faults = settled.check_sheets(&rows, &ground.catalogue, &handing("museum"));
    assert_eq!(
        told(&faults),
        "4:6 doubt: 12.3 is recorded with the holder `owner-a`, and the sheet is of `museum` | where the sheet has moved, \
         correct the holder in the record; intake leaves it as it is"
    );
    assert!(rows.iter().take(2).all(|row| {
        let doubts = doubts(row);
        !doubts.iter().any(|doubt| doubt.contains("holder"))
    }));
    // It stands in the next file, also where that lacks the sheets.
    let text = settings::written(&designs, &rows, &settled);
    let again = said(&text);
    assert_eq!(settings::written(&designs, &rows, &again), text);
    assert_eq!(again.sheets.len(), 2);
    assert_eq!(again.sheets[0].why.as_deref(), Some("the same crease"));
    let mut none: Vec<ProposedRow> = Vec::new();
    let designs = ground.settled(&mut none, &settled);
    let kept = said(&settings::written(&designs, &none, &settled));
    assert_eq!(kept.sheets.len(), 2);
}

/// Not even the number of a row makes it a record that an editor excludes.
#[test]
fn a_sheet_is_not_the_record_that_an_editor_excludes() {
    let ground = ground();
    let mut rows = numbered(&ground, &["1962.44", "1962.45", "P 207"]);
    ground.proposed(&mut rows);
    assert_eq!(
        rows[0].standing,
        RowStanding::Unchanged("12.1".parse().unwrap())
    );
    let may_be = |row: &ProposedRow| {
        let keys = row.may_be.iter().map(|other| other.impression.to_string());
        keys.collect::<Vec<_>>()
    };
    assert_eq!(may_be(&rows[1]), ["12.2"]);
    assert_eq!(may_be(&rows[2]), ["12.1"]);
    let settled = said(
        r#"
sheets = [
  { sheet = "1962.44", is_not = "12.1" },
  { sheet = "1962/45", is_not = ["12.2", "12.1"] },
  { sheet = "P 207", is_not = ["12.2"] },
]
"#,
    );
    let mut rows = numbered(&ground, &["1962.44", "1962.45", "P 207"]);
    let designs = ground.settled(&mut rows, &settled);
    assert_eq!(groups(&designs, &rows), ["12: 1 2 3"]);
    assert!(rows.iter().all(|row| row.standing == RowStanding::New));
    assert_eq!(may_be(&rows[0]), [""; 0]);
    assert_eq!(may_be(&rows[1]), [""; 0]);
    assert_eq!(may_be(&rows[2]), ["12.1"]);
    let faults = settled.check_sheets(&rows, &ground.catalogue, &handing("museum"));
    assert_eq!(faults, []);
    // The last is still asked about, beside what was said.
    let text = settings::written(&designs, &rows, &settled);
    assert!(
        text.contains("sheet = \"P 207\"\nis_not = [\"12.2\"]\nmay_be = [\"12.1: "),
        "{text}"
    );
    assert_eq!(said(&text).sheets.len(), 3);
}

/// A column of our own lists names the record; an editor may know better.
#[test]
fn an_editor_is_believed_before_a_column() {
    let ground = ground();
    let cells: &[(Holds, &str)] = &[(Holds::Impression, "12.1"), (Title, "The Lock")];
    let standing = |text: &str| {
        let mut rows = listing(&ground.lexicon, &[cells]);
        ground.settled(&mut rows, &said(text));
        rows.remove(0).standing
    };
    let is = |key: &str| RowStanding::Unchanged(key.parse().unwrap());
    assert_eq!(standing(""), is("12.1"));
    assert_eq!(
        standing("sheets = [{ sheet = \"A 1\", is = \"12.2\" }]"),
        is("12.2")
    );
    assert_eq!(
        standing("sheets = [{ sheet = \"A 1\", is_not = \"12.1\" }]"),
        RowStanding::New
    );
}

#[test]
fn a_sheet_that_may_be_recorded_is_asked_about() {
    let ground = ground();
    let mut rows = numbered(&ground, &["1962.45", "1970.1"]);
    let designs = ground.proposed(&mut rows);
    let text = settings::written(&designs, &rows, &DesignSettings::default());
    insta::assert_snapshot!(below_the_head(&text), @r##"
    [[sheets]]
    sheet = "1962.45"
    may_be = ["12.2: it is a part of the number 1962.45 of the same holder, and the row does not say which"]

    [[designs]]
    is = "12"
    title = "The Lock"
    sheets = ["1962.45", "1970.1"]
    digest = "a6c308b9"
    why = ['same title as design 12 ("The Lock")']
    doubts = [
      'row 1: same title as design 12 ("The Lock"), and no size to compare',
      'row 2: same title as design 12 ("The Lock"), and no size to compare',
    ]
    "##);
    // The question alone says nothing.
    let asked = said(&text);
    assert!(asked.sheets.iter().all(|sheet| !sheet.says_something()));
    let mut again = numbered(&ground, &["1962.45", "1970.1"]);
    let designs = ground.settled(&mut again, &asked);
    assert_eq!(settings::written(&designs, &again, &asked), text);
    // Answered, it is no longer asked.
    let answered = text.replace(
        "sheet = \"1962.45\"\n",
        "sheet = \"1962.45\"\nis = \"12.2\"\n",
    );
    let answered = said(&answered);
    let mut rows = numbered(&ground, &["1962.45", "1970.1"]);
    let designs = ground.settled(&mut rows, &answered);
    assert_eq!(
        rows[0].standing,
        RowStanding::Unchanged("12.2".parse().unwrap())
    );
    let text = settings::written(&designs, &rows, &answered);
    assert!(text.contains("[[sheets]]\nsheet = \"1962.45\"\nis = \"12.2\"\n\n"));
    assert!(!text.contains("may_be = ["), "{text}");
}

/// Of a long file only so many sheets are asked about that the file can be read, by a person and by the next run.
#[test]
fn of_many_sheets_the_first_are_asked_about() {
    let ground = ground();
    let numbers = vec!["1962.45"; 600];
    let mut rows = numbered(&ground, &numbers);
    let designs = ground.proposed(&mut rows);
    assert!(rows.iter().all(|row| !row.may_be.is_empty()));
    let text = settings::written(&designs, &rows, &DesignSettings::default());
    assert_eq!(text.matches("[[sheets]]\n").count(), 500);
    assert!(text.contains("# Of 100 more sheets"), "{text}");
    said(&text);
}

#[test]
fn faults_in_what_is_said_of_sheets_have_their_place() {
    let ground = ground();
    let text = r#"
leave_out = ["A 6"]
[[sheets]]
is = "12.1"
[[sheets]]
sheet = "A 1"
is = "12.9"
is_not = ["99.1", "The Lock"]
[[sheets]]
sheet = "A 2"
is = "12.1"
[[sheets]]
sheet = "A 3"
is = "12.1"
[[sheets]]
sheet = "B 7"
is_not = ["12.1"]
[[sheets]]
sheet = "a2"
is = "12.2"
colour = 3
[[sheets]]
sheet = "A 4"
is = ["12.1", "12.2"]
[[sheets]]
sheet = "A 5"
is = "12.3"
is_not = ["12.3"]
[[sheets]]
sheet = "A 6"
is = "14.1"
[[designs]]
is = "14"
sheets = ["A 2"]
settled = true
"#;
    let (settled, mut faults) = settings::read(text);
    let cells: &[(Holds, &str)] = &[(Title, "The Lock")];
    let mut rows = listing(&ground.lexicon, &[cells; 6]);
    rows.push(row(
        7,
        &ground.lexicon,
        &[(Holds::Accession, "1962.44"), (Title, "The Lock")],
    ));
    ground.settled(&mut rows, &settled);
    faults.extend(settled.check_sheets(&rows, &ground.catalogue, &handing("museum")));
    insta::assert_snapshot!(told(&faults), @r##"
    3:1 error: it is not said which sheet it is | write sheet = "1962.44", or sheet = "row 7"
    8:19 error: "The Lock" is no key of an impression | write the key of its design and its number, as in "14.7"
    21:1 error: `colour` is no key here | write one of: sheet, is, is_not, why
    24:6 error: a sheet is one impression, not several | write the one that it is, as in is = "14.7"; those that it is not go into is_not
    7:6 error: the catalogue has no impression 12.9 | those of design 12 are 12.1 to 12.3
    8:11 error: the catalogue has no impression 99.1 | the catalogue has no design `99`; write the key of a recorded impression, such as "14.7"
    11:6 error: rows 2, 3 and 7 would be one impression, 12.1 | name the row that it is, as in sheet = "row 2", and write is_not = ["12.1"] of the others
    11:6 error: the sheet is said to be 12.1, and line 33 puts it into design 14 | take the sheet out of the design there, or correct the impression here
    14:6 error: 12.1 is said of two sheets, of A 2 in line 10 first | an impression is one sheet: correct one of the two
    16:9 doubt: this file has no sheet B 7 | it is kept for the next file of this house; take it out if it is a slip
    19:9 error: the sheet a2 stands twice, first in line 10 | take it out of one of the two
    20:6 error: the sheet is said to be 12.2, and line 33 puts it into design 14 | take the sheet out of the design there, or correct the impression here
    27:6 doubt: 12.3 is recorded with the holder `owner-a`, and the sheet is of `museum` | where the sheet has moved, correct the holder in the record; intake leaves it as it is
    27:6 error: the sheet is said to be 12.3 and not to be 12.3 | take it out of `is` or out of `is_not`
    31:6 error: the catalogue has no impression 14.1 | no impression of design 14 is recorded
    31:6 error: the sheet is said to be 14.1, and is left out | take it out of `leave_out`, or say nothing of it here
    "##);
    for text in [
        "sheets = 3",
        "sheets = [3]",
        "[[sheets]]\nsheet = 3\nis = 4\nis_not = {}",
    ] {
        assert!(!settings::read(text).1.is_empty(), "{text}");
    }
}
