//! Files that come again, and the records that they meet. Tests only.

use std::fmt::Write as _;

use proptest::prelude::*;

use super::*;
use crate::exchange::intake::columns::columns;
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::known::CatalogueNames;
use crate::exchange::intake::proposal::Correction;
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::record::tests::{catalogue, handing, in_full, key, read_back};
use crate::exchange::intake::record::{RecordDraft, RecordMaker};
use crate::exchange::intake::rows::RowReader;
use crate::exchange::intake::table::tables;
use crate::exchange::intake::values::{SettledValues, Values};
use crate::model::edtf::Date;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::study::Studies;

/// What the only row of a table proposes for impression 1.1, and what it changes in the record with this text.
fn again(listing: &str, record: &str, handing: &HandingIn) -> (RecordDraft, Vec<Correction>) {
    let catalogue = catalogue(&[]);
    let studies = Studies::of(&catalogue);
    let names = CatalogueNames::of(&catalogue, &studies);
    let lexicon = Lexicon::of_catalogue(&catalogue);
    let table = tables(listing.as_bytes()).unwrap().remove(0);
    let columns = columns(&table, &lexicon).columns;
    let values = Values::of(&table, &columns, &lexicon, &SettledValues::default());
    let reader = RowReader::of(&columns, &[], &values, &lexicon);
    let maker = RecordMaker::of(&columns, handing, &catalogue, &lexicon.names);
    let view = table.rows().next().unwrap();
    let mut row = reader.row(view.number(), |column| view.cell(column));
    row.named = names.parts(&key("1"), &row.facts);
    let cell = |column: usize| view.cell(column);
    let number = ImpressionKey {
        design: key("1"),
        number: 1,
    };
    let draft = maker.draft(&row, &cell, number, &[key("woodcut")]);
    let reintake = Reintake {
        reader: &reader,
        maker: &maker,
        names: &names,
    };
    let corrections = match one(record) {
        Some(recorded) => reintake.corrections(&recorded, &draft.impression),
        None => Vec::new(),
    };
    (draft, corrections)
}

fn one(record: &str) -> Option<Impression> {
    let (mut read, _) = read_back(&[record.to_owned()]);
    (!record.is_empty()).then(|| read.remove(0))
}

fn first(listing: &str) -> String {
    again(listing, "", &handing()).0.text()
}

/// The record with the corrections that a listing proposes.
fn corrected(listing: &str, record: &str, handing: &HandingIn) -> String {
    let (draft, corrections) = again(listing, record, handing);
    applied(record, &one(record).unwrap(), &draft, &corrections).unwrap()
}

fn told(corrections: &[Correction]) -> Vec<String> {
    let told = corrections.iter().map(|correction| {
        let Correction {
            key,
            is,
            would_be,
            is_kept,
        } = correction;
        let is = is.as_deref().unwrap_or("nothing");
        let would_be = would_be.as_deref().unwrap_or("nothing");
        let kept = if *is_kept { ", kept" } else { "" };
        format!("{key}: {is} -> {would_be}{kept}")
    });
    told.collect()
}

fn later() -> HandingIn {
    HandingIn {
        seen: Some(Date::parse("2027-02").unwrap()),
        ..handing()
    }
}

const HEADING: &str = "accession,title,dimensions,credit line,condition,state,signature";
const ROW: &str =
    "P 1,Lock,image: 24.1 x 17.8 cm,\"Given by Ada Brook, 1970\",foxed,ii,signed in pencil";

fn listing(row: &str) -> String {
    format!("{HEADING}\n{row}\n")
}

#[test]
fn the_same_file_again_proposes_nothing() {
    let record = first(&listing(ROW));
    assert_eq!(
        told(&again(&listing(ROW), &record, &handing()).1),
        Vec::<String>::new()
    );
    // Nor does it a year later.
    assert_eq!(
        told(&again(&listing(ROW), &record, &later()).1),
        Vec::<String>::new()
    );
}

#[test]
fn a_corrected_file_proposes_the_corrections_only() {
    let record = first(&listing(ROW));
    let record = record.replacen(
        "condition = \"foxed\"",
        "condition = \"foxed\" # seen in 2026\n# The sheet is in box 4.",
        1,
    );
    let row = ROW
        .replace("24.1", "24.3")
        .replace("1970", "1971")
        .replace(",ii,", ",iii,");
    let (_, corrections) = again(&listing(&row), &record, &later());
    let proposed = told(&corrections).join("\n");
    let now = corrected(&listing(&row), &record, &later());
    let kept: Vec<&str> = record
        .lines()
        .filter(|line| now.lines().any(|l| l == *line))
        .collect();
    assert!(kept.contains(&"condition = \"foxed\" # seen in 2026"));
    assert!(kept.contains(&"# The sheet is in box 4."));
    let changed: Vec<&str> = now
        .lines()
        .filter(|line| !record.lines().any(|l| l == *line))
        .collect();
    insta::assert_snapshot!(format!("{proposed}\n---\n{}", changed.join("\n")), @r#"
    credit: Given by Ada Brook, 1970 -> Given by Ada Brook, 1971
    sheet.image: [241, 178] -> [243, 178]
    sheet.said: image: 24.1 x 17.8 cm -> image: 24.3 x 17.8 cm
    opinions: { said = "ii", by = "kelder" } -> { said = "iii", by = "kelder" }
    provenance: { owner = "kelder", from = "1970", how = "gift", direct = true } -> { owner = "kelder", from = "1971", how = "gift", direct = true }
    sightings: nothing -> { date = "2027-02", by = "kelder", basis = "report" }
    as_given.seen: 2026-01 -> 2027-02
    as_given.dimensions: image: 24.1 x 17.8 cm -> image: 24.3 x 17.8 cm
    as_given."credit line": Given by Ada Brook, 1970 -> Given by Ada Brook, 1971
    as_given.state: ii -> iii
    ---
    credit = "Given by Ada Brook, 1971"
    said = "iii"
    date = "2027-02"
    image = [243, 178]
    said = "image: 24.3 x 17.8 cm"
    seen = "2027-02"
    dimensions = "image: 24.3 x 17.8 cm"
    "credit line" = "Given by Ada Brook, 1971"
    state = "iii"
    from = "1971"
    date = "2027-02"
    "#);
    // It is what the row proposes, but for the sighting of the year before, which stays.
    let (draft, corrections) = again(&listing(&row), &now, &later());
    assert_eq!(told(&corrections), Vec::<String>::new());
    let mut read = one(&now).unwrap();
    assert_eq!(read.sightings.len(), 2);
    read.sightings.remove(0);
    for opinion in &mut read.opinions {
        opinion.reading.claim.date = Some(crate::model::place::Placed::new(
            Date::parse("2027-02").unwrap(),
            crate::model::place::Place::default(),
        ));
    }
    assert_eq!(in_full(&read), in_full(&draft.impression));
}

#[test]
fn what_a_scholar_wrote_is_never_overwritten() {
    let record = first(&listing(ROW))
        .replacen("condition = \"foxed\"", "condition = \"light-struck\"", 1)
        .replace("image = [241, 178]", "image = [240, 177]");
    let row = ROW
        .replace("foxed", "foxed; a tear")
        .replace("24.1", "24.3");
    let (_, corrections) = again(&listing(&row), &record, &handing());
    let kept: Vec<String> = told(&corrections)
        .into_iter()
        .filter(|t| t.ends_with("kept"))
        .collect();
    assert_eq!(
        kept,
        [
            "condition: light-struck -> foxed; a tear, kept",
            "sheet.image: [240, 177] -> [243, 178], kept"
        ]
    );
    let now = corrected(&listing(&row), &record, &handing());
    assert!(now.contains("condition = \"light-struck\""), "{now}");
    assert!(now.contains("image = [240, 177]"), "{now}");
    assert!(now.contains("condition = \"foxed; a tear\""), "{now}");
}

#[test]
fn a_key_that_a_scholar_left_out_stays_out_until_the_file_changes() {
    let record = first(&listing(ROW)).replacen("condition = \"foxed\"\n", "", 1);
    assert_eq!(
        told(&again(&listing(ROW), &record, &handing()).1),
        Vec::<String>::new()
    );
    let row = ROW.replace("foxed", "foxed; a tear");
    let told = told(&again(&listing(&row), &record, &handing()).1);
    assert!(
        told.contains(&"condition: nothing -> foxed; a tear, kept".to_owned()),
        "{told:?}"
    );
}

#[test]
fn a_record_entered_by_hand_gets_what_it_lacks() {
    let record = "# By hand.\nholder = \"kelder\"\naccession = \"P.1\"\nstatus = \"located\"\n\
                  condition = \"clean\"\nsheet = { image = [241, 178], paper = \"wove-paper\" }\n\
                  marks = [{ kind = \"signature\", text = \"Brook\" }]\n";
    let (_, corrections) = again(&listing(ROW), record, &handing());
    let now = corrected(&listing(ROW), record, &handing());
    insta::assert_snapshot!(format!("{}\n---\n{now}", told(&corrections).join("\n")), @r#"
    credit: nothing -> Given by Ada Brook, 1970
    condition: clean -> foxed, kept
    opinions: nothing -> { said = "ii", by = "kelder" }
    marks: nothing -> { kind = "signature", note = "signed in pencil" }, kept
    provenance: nothing -> { owner = "brook" }
    provenance: nothing -> { owner = "kelder", from = "1970", how = "gift", direct = true }
    sightings: nothing -> { date = "2026-01", by = "kelder", basis = "report" }
    as_given.seen: nothing -> 2026-01
    as_given.source: nothing -> https://kelder.example.org/list
    as_given.accession: nothing -> P 1
    as_given.title: nothing -> Lock
    as_given.dimensions: nothing -> image: 24.1 x 17.8 cm
    as_given."credit line": nothing -> Given by Ada Brook, 1970
    as_given.condition: nothing -> foxed
    as_given.state: nothing -> ii
    as_given.signature: nothing -> signed in pencil
    ---
    # By hand.
    holder = "kelder"
    accession = "P.1"
    status = "located"
    condition = "clean"
    sheet = { image = [241, 178], paper = "wove-paper" }
    marks = [{ kind = "signature", text = "Brook" }]
    credit = "Given by Ada Brook, 1970"

    [[opinions]]
    said = "ii"
    by = "kelder"
    date = "2026-01"

    [[provenance]]
    owner = "brook"

    [[provenance]]
    owner = "kelder"
    from = "1970"
    how = "gift"
    direct = true

    [[sightings]]
    date = "2026-01"
    by = "kelder"
    basis = "report"

    [as_given]
    seen = "2026-01"
    source = "https://kelder.example.org/list"
    accession = "P 1"
    title = "Lock"
    dimensions = "image: 24.1 x 17.8 cm"
    "credit line" = "Given by Ada Brook, 1970"
    condition = "foxed"
    state = "ii"
    signature = "signed in pencil"
    "#);
    // Everything that differs was told once, and is not told again.
    assert_eq!(
        told(&again(&listing(ROW), &now, &handing()).1),
        Vec::<String>::new()
    );
}

#[test]
fn words_that_a_holder_took_back_leave_the_description_alone() {
    let record = first(&listing(ROW));
    let row = ROW.replace("foxed", "");
    let (_, corrections) = again(&listing(&row), &record, &handing());
    assert_eq!(
        told(&corrections),
        [
            "condition: foxed -> nothing, kept",
            "as_given.condition: foxed -> nothing"
        ]
    );
    let now = corrected(&listing(&row), &record, &handing());
    assert_eq!(
        now,
        record.replacen("condition = \"foxed\"\nstate", "state", 1)
    );
    // Without the column nothing is taken back.
    let shorter = "accession,title\nP 1,Lock\n";
    let (_, corrections) = again(shorter, &record, &handing());
    assert!(!corrections.is_empty() && !changes_something(&corrections));
}

#[test]
fn what_is_added_is_as_private_as_it_would_have_been() {
    let record = first("accession,title\nP 1,Lock\n");
    let listing = "accession,title,remarks,insured\nP 1,Lock,from a lender,4000\n";
    let now = corrected(listing, &record, &handing());
    assert!(
        now.contains("private = [\"remarks\", \"insured\"]"),
        "{now}"
    );
    let by_hand = record.replace("[as_given]\n", "[as_given]\nprivate = \"title\"\n");
    let now = corrected(listing, &by_hand, &handing());
    assert!(
        now.contains("private = [\"title\", \"remarks\", \"insured\"]"),
        "{now}"
    );
}

/// Records in the forms in which people write them.
fn written_otherwise(record: &str, form: usize) -> String {
    match form {
        0 => record.to_owned(),
        1 => record.replace('\n', "\r\n"),
        2 => record
            .replace(" = ", "   =  ")
            .replace("\n[", "\n\n# A table.\n["),
        3 => {
            // Dotted keys in place of a table.
            let mut sheet = false;
            let (mut root, mut rest) = (String::new(), String::new());
            let mut is_root = true;
            for line in record.lines() {
                if line.starts_with('[') {
                    is_root = false;
                    sheet = line == "[sheet]";
                    if sheet {
                        continue;
                    }
                }
                if sheet && line.contains(" = ") {
                    let _ = writeln!(root, "sheet.{line} # dotted");
                } else if is_root {
                    let _ = writeln!(root, "{line}");
                } else {
                    let _ = writeln!(rest, "{line}");
                }
            }
            format!("{root}{rest}")
        }
        _ => format!("{record}\n# The end, without a line break."),
    }
}

const VALUES: [[&str; 4]; 7] = [
    ["P 1", "P 1", "P 1", "P 1"],
    ["Lock", "The Lock", "", "Lock \"at night\""],
    [
        "image: 24.1 x 17.8 cm",
        "image: 243 x 180 mm, sheet: 300 x 200 mm",
        "",
        "unconfirmed: 24 x 18 cm",
    ],
    [
        "Given by Ada Brook, 1970",
        "Purchased 1971",
        "",
        "Bequeathed by Clara Quay, 1970",
    ],
    ["foxed", "", "foxed\na tear", "clean 'as new'"],
    ["ii", "iii", "", "ii/iii"],
    ["signed in pencil", "unsigned", "", "\"Brook\""],
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever a file changes, the corrected record says it, nothing else of the record changes, and the same file again
    /// proposes nothing.
    #[test]
    fn corrections_change_what_they_say_and_nothing_else(
        before in prop::collection::vec(0_usize..4, 7),
        after in prop::collection::vec(0_usize..4, 7),
        by_hand in prop::collection::vec(any::<bool>(), 3),
        form in 0_usize..5,
    ) {
        let cells = |chosen: &[usize]| {
            let cells = VALUES.iter().zip(chosen).map(|(values, at)| values[*at]);
            let cells: Vec<String> =
                cells.map(|cell| format!("\"{}\"", cell.replace('"', "\"\""))).collect();
            listing(&cells.join(","))
        };
        let mut record = first(&cells(&before));
        if by_hand[0] {
            record = record.replacen("status = \"located\"", "status = \"located\"\nnumbering = \"3/9\" # by hand", 1);
        }
        if by_hand[1] {
            record = record.replace("image = [241, 178]", "image = [200, 100]");
        }
        if by_hand[2] {
            record.push_str("\n[[marks]]\nkind = \"seal\" # red\ntext = \"B\"\n");
        }
        let record = written_otherwise(&record, form);
        let old = one(&record).unwrap();
        let (draft, corrections) = again(&cells(&after), &record, &later());
        let now = applied(&record, &old, &draft, &corrections);
        let now = now.map_err(|fault| TestCaseError::fail(format!("{fault}\n{record}")))?;
        if !changes_something(&corrections) {
            prop_assert_eq!(&now, &record);
        }
        // Comments stay.
        for comment in record.lines().filter_map(|line| line.split_once('#')) {
            prop_assert!(now.contains(comment.1.trim()), "{} in\n{}", comment.1, now);
        }
        let new = one(&now).unwrap();
        prop_assert_eq!(new.numbering.clone(), old.numbering.clone());
        let seals = |of: &Impression| of.marks.iter().filter(|mark| mark.text.as_deref() == Some("B")).count();
        prop_assert_eq!(seals(&new), seals(&old));
        prop_assert_eq!(
            in_full_given(&new), in_full_given(&draft.impression), "{}", now
        );
        let (_, again) = again(&cells(&after), &now, &later());
        prop_assert!(again.is_empty(), "{:?}\n{}", told(&again), now);
    }
}

/// The holder's words of an impression, field by field.
fn in_full_given(impression: &Impression) -> Vec<(String, String)> {
    let given = impression.as_given.iter().flat_map(|given| &given.fields);
    let mut fields: Vec<_> = given
        .map(|field| (field.name.value.clone(), field.text.value.clone()))
        .collect();
    fields.sort();
    fields
}
