//! The distinct values of invented tables. Tests only.

use std::fmt::Write as _;

use super::*;
use crate::exchange::intake::columns::columns;
use crate::exchange::intake::reading::lexicon::samples::lexicon;
use crate::exchange::intake::table::tables;

#[test]
fn each_text_is_read_once_and_counted() {
    let mut text = "Inv. No.,Title,Date,Condition\n".to_owned();
    for row in 0..3_000 {
        let year = 1900 + row % 30;
        writeln!(text, "P{row},Lock {row},{year},good").unwrap();
    }
    let table = tables(text.as_bytes()).unwrap().remove(0);
    let lexicon = lexicon();
    let held = columns(&table, &lexicon).columns;
    let values = Values::of(&table, &held, &lexicon, &SettledValues::default());
    let counts: Vec<(usize, usize)> = values
        .columns()
        .iter()
        .map(|column| (column.column, column.values().len()))
        .collect();
    // The condition is no column that is read, nor are the accession numbers.
    assert_eq!(counts, [(1, 3_000), (2, 30)]);
    assert!(
        values.columns()[1]
            .values()
            .iter()
            .all(|value| value.rows == 100)
    );
    let reading = values.reading(1, "Lock 2999").unwrap();
    assert_eq!(reading.facts.title.as_ref().unwrap().text, "Lock 2999");
    assert_eq!(values.reading(3, "good"), None);
    assert_eq!(values.reading(1, "Weir"), None);
}

/// What a value takes beside its texts: a file of 50,000 rows may have half a million values.
#[test]
fn a_value_is_small() {
    let bytes = size_of::<DistinctValue>();
    assert!(bytes <= 96, "{bytes}");
}

#[test]
fn every_sureness_has_a_place() {
    use crate::model::words::ClosedList as _;
    for sure in Sureness::ALL {
        let again = Sureness::of(sure.certainty());
        let is_program = *sure != Sureness::ByHand;
        assert_eq!(again == *sure, is_program);
    }
}
