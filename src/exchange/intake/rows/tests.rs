//! Rows of invented museums' tables. Tests only.

use std::fmt::Write as _;

use super::*;
use crate::exchange::intake::columns::columns;
use crate::exchange::intake::facts::Contradiction;
use crate::exchange::intake::proposal::{ProposedRow, RowDoubt, RowStanding};
use crate::exchange::intake::reading::Doubt;
use crate::exchange::intake::reading::lexicon::samples::lexicon;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::table::tables;
use crate::exchange::intake::values::{SettledValues, Values};

fn read(text: &str) -> Vec<ProposedRow> {
    let lexicon = lexicon();
    let table = tables(text.as_bytes()).unwrap().remove(0);
    let proposal = columns(&table, &lexicon);
    let values = Values::of(
        &table,
        &proposal.columns,
        &lexicon,
        &SettledValues::default(),
    );
    let reader = RowReader::of(&proposal.columns, &proposal.doubts, &values, &lexicon);
    rows(&table, &reader)
}

fn said(row: &ProposedRow) -> Vec<&str> {
    let doubts = row.doubts.iter().filter_map(|doubt| match doubt {
        RowDoubt::Said(words) | RowDoubt::Against { said: words, .. } => Some(words.as_str()),
        _ => None,
    });
    doubts.collect()
}

fn size(row: &ProposedRow, of: Measured) -> Option<(f64, f64, &str)> {
    let size = row.facts.size_of(of)?;
    Some((size.height.mm, size.width.mm, size.said.as_str()))
}

#[test]
fn a_row_is_read_from_all_its_cells() {
    let rows = read(
        "Inv.-Nr.;Alte Nr.;Titel;Künstler;Datierung;Technik;Höhe;Breite;Einheit;Erwerbung;Nummerierung;Zustand\n\
         HM 1970.12;G 7;Schleuse;Ada Brook;um 1912, gedruckt 1925;Farbholzschnitt;24,1;17,8;cm;Schenkung Clara Mill, 1970;12/50;fleckig\n",
    );
    let [row] = rows.as_slice() else {
        panic!("{rows:?}")
    };
    assert_eq!((row.row, row.accession.as_deref()), (2, Some("HM 1970.12")));
    assert_eq!(row.standing, RowStanding::New);
    assert_eq!(row.facts.title.as_ref().unwrap().text, "Schleuse");
    assert_eq!(row.facts.dates.len(), 2);
    assert_eq!(row.facts.techniques[0].as_str(), "colour-woodcut");
    assert_eq!(row.facts.numbering.as_deref(), Some("12/50"));
    assert_eq!(row.facts.credit().year, Some(1970));
    assert_eq!(
        size(row, Measured::Unsaid),
        Some((241.0, 178.0, "24,1 × 17,8 cm"))
    );
    assert_eq!(
        row.facts
            .texts
            .get(crate::exchange::intake::columns::Holds::Condition),
        Some("fleckig")
    );
    assert_eq!(row.unread, []);
}

#[test]
fn cells_that_contradict_each_other_are_told() {
    let rows = read("accession,numbering,edition\nP1,12/50,13/50\n");
    let told = rows[0].doubts.iter().any(|doubt| {
        matches!(
            doubt,
            RowDoubt::Contradiction {
                column: 2,
                of: Contradiction::Numbering
            }
        )
    });
    assert!(told, "{:?}", rows[0].doubts);
    assert_eq!(rows[0].facts.numbering.as_deref(), Some("12/50"));
}

/// Numeric columns of one museum were exchanged in every row that tells (measured on 12,237 records).
#[test]
fn the_words_win_where_height_and_width_are_exchanged() {
    let mut text = "accession,title,dimensions,height,width\n".to_owned();
    for row in 0..9 {
        let _ = writeln!(text, "P{row},Lock,image: 15{row} x 240 mm,240,15{row}");
    }
    text.push_str("P9,Weir,,300,200\n");
    let rows = read(&text);
    assert_eq!(
        size(&rows[0], Measured::Image),
        Some((150.0, 240.0, "150 x 240 mm"))
    );
    assert_eq!(rows[0].facts.sizes.len(), 1);
    assert!(said(&rows[0])[0].contains("the other way round"));
    // Both cells were understood; they say otherwise than the words.
    assert_eq!(rows[0].unread, []);
    // Without words nothing tells, so nothing is taken, and both cells are told.
    assert_eq!(rows[9].facts.sizes, []);
    assert!(
        rows[9].doubts.iter().any(|doubt| matches!(
            doubt,
            RowDoubt::Cell {
                doubt: Doubt::UnitUnsaid,
                ..
            }
        )) || said(&rows[9])[0].contains("exchanged in most rows")
    );
    let unread: Vec<_> = rows[9]
        .unread
        .iter()
        .map(|(c, t)| (*c, t.as_str()))
        .collect();
    assert_eq!(unread, [(3, "300"), (4, "200")]);
}

#[test]
fn columns_that_agree_with_the_words_add_nothing() {
    let rows =
        read("accession,dimensions,height (cm),width (cm)\nP1,image: 241 x 178 mm,24.1,17.8\n");
    assert_eq!(rows[0].facts.sizes.len(), 1);
    assert_eq!(rows[0].unread, []);
    assert!(said(&rows[0]).is_empty());
    let rows = read("accession,dimensions,height (cm),width (cm)\nP1,image: 241 x 178 mm,30,20\n");
    assert_eq!(rows[0].facts.sizes.len(), 2);
    assert!(said(&rows[0])[0].contains("are not those of the size in words"));
}

#[test]
fn rows_that_no_record_could_hold_are_kept_with_their_words() {
    let rows = read(
        "accession,title,remarks\nP1,Lock,\naccession,title,remarks\n,,checked on 3 May\nP2,Weir,\n",
    );
    let nothing: Vec<_> = rows
        .iter()
        .map(|row| row.standing == RowStanding::Nothing)
        .collect();
    assert_eq!(nothing, [false, true, true, false]);
    assert_eq!(rows[1].unread.len(), 3);
    assert_eq!(rows[2].unread, [(2, "checked on 3 May".to_owned())]);
    assert_eq!((rows[1].row, rows[3].row), (3, 5));
}
