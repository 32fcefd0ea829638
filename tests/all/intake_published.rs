//! Records made of rows that others hand in, in a catalogue that is audited and compiled.

use std::fmt::Write as _;
use std::path::Path;

use keyblock::exchange::intake::columns::columns;
use keyblock::exchange::intake::handing::HandingIn;
use keyblock::exchange::intake::reading::Lexicon;
use keyblock::exchange::intake::record::RecordMaker;
use keyblock::exchange::intake::rows::{RowReader, rows};
use keyblock::exchange::intake::table::tables;
use keyblock::exchange::intake::values::{SettledValues, Values};
use keyblock::model::edtf::Date;
use keyblock::model::finding::Severity;
use keyblock::model::key::{ImpressionKey, Key};
use keyblock::press::{PictureWork, judge};

use crate::program::{bytes_below, compile};
use crate::small::{lay_down, sound};

const GROUND: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
technique = ["woodcut"]
-- records/holders/owner-a.toml
name = "Mrs Querlin Zabeldorn"
kind = "private"
place = "Farholm"
-- records/holders/north-museum.toml
name = "North Museum"
kind = "museum"
"#;

/// A listing of an invented house, as its registrar exports it: mixed units, remarks and a column of the house's own.
const LISTING: &str = "\
    Inv. No.;Title;Medium;Dimensions;Acquisition;Inscription;Collector's marks;State;Condition;Provenance;Remarks;Insured with;Seen by\n\
    P 1;The Ferry;Woodcut on japan paper;image: 24.1 x 17.8 cm;Given by Mrs Querlin Zabeldorn, 1970;\
    signed Zabeldorn on the verso;stamp of Mrs Zabeldorn;ii/iii;foxed, with a tear at the left;\
    Mrs Querlin Zabeldorn, Farholm;kept at the owner's house in Farholm;Harbour and Sons of Anyport;Dora Quay\n\
    P 2;The Ferry;\"Etching; woodcut on japan paper\";sight 9 1/2 x 7 in.;;\"\"\"=1+1\"\"\";;;<b>torn</b>;;;;\n";

fn handing(holder: &str) -> HandingIn {
    let key: Key = holder.parse().unwrap();
    HandingIn {
        name: Some(key.clone()),
        holder: Some(key.clone()),
        by: Some("north-museum".parse().unwrap()),
        source: None,
        seen: Some(Date::parse("2026-01").unwrap()),
    }
}

/// The catalogue with the records of a listing in it.
fn accepted(listing: &str, handing: &HandingIn) -> tempfile::TempDir {
    let before = lay_down(&[GROUND]);
    let catalogue = sound(before.path());
    let lexicon = Lexicon::of_catalogue(&catalogue);
    let table = tables(listing.as_bytes()).unwrap().remove(0);
    let proposal = columns(&table, &lexicon);
    let columns = &proposal.columns;
    let values = Values::of(&table, columns, &lexicon, &SettledValues::default());
    let reader = RowReader::of(columns, &proposal.doubts, &values, &lexicon);
    let maker = RecordMaker::of(columns, handing, &catalogue, &lexicon.names);
    let design: Key = "1".parse().unwrap();
    let technique = maker.technique_of(&design);
    let mut records = String::new();
    let read = rows(&table, &reader);
    for ((row, view), number) in read.iter().zip(table.rows()).zip(1..) {
        let key = ImpressionKey {
            design: design.clone(),
            number,
        };
        let cell = |column: usize| view.cell(column);
        let text = maker.draft(row, &cell, key, &technique).text();
        writeln!(
            records,
            "-- records/designs/1/impressions/{number}.toml\n{text}"
        )
        .unwrap();
    }
    lay_down(&[GROUND, &records])
}

fn errors(dir: &Path) -> Vec<String> {
    let judged = judge(dir, &PictureWork::ReadOnly(&|_, _| {}));
    let found = judged.findings.iter();
    let errors = found.filter(|finding| finding.severity() == Severity::Error);
    errors.map(|finding| finding.message.clone()).collect()
}

#[test]
fn the_records_of_a_listing_are_sound_and_its_remarks_stay_with_the_editors() {
    let listing = LISTING
        .replace("Mrs Querlin Zabeldorn", "Ada Brook")
        .replace("Zabeldorn", "Brook");
    let folder = accepted(
        &listing.replace("Farholm", "Anyport"),
        &handing("north-museum"),
    );
    assert_eq!(errors(folder.path()), Vec::<String>::new());
    compile(folder.path());
    let site = bytes_below(&folder.path().join("web"));
    let has = |words: &str| {
        let mut files = site.values();
        files.any(|bytes| String::from_utf8_lossy(bytes).contains(words))
    };
    assert!(has("Given by Ada Brook, 1970"));
    for kept in [
        "Harbour and Sons",
        "owner&#39;s house",
        "owner's house",
        "Dora Quay",
    ] {
        assert!(!has(kept), "{kept}");
    }
}

#[test]
fn the_name_of_a_private_owner_is_nowhere_in_the_site() {
    let listing = LISTING.replace("P 1;The Ferry", "Z 1;The Ferry");
    let folder = accepted(&listing, &handing("owner-a"));
    assert_eq!(errors(folder.path()), Vec::<String>::new());
    compile(folder.path());
    for (path, bytes) in bytes_below(&folder.path().join("web")) {
        let text = String::from_utf8_lossy(&bytes).to_lowercase();
        assert!(
            !text.contains("zabeldorn") && !text.contains("farholm"),
            "{}",
            path.display()
        );
    }
}
