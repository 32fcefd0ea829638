//! What the columns of invented museums' files hold. Tests only.

use std::fmt::Write as _;

use super::*;
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::lexicon::samples::lexicon;
use crate::exchange::intake::reading::sizes::Unit;
use crate::exchange::intake::table::{Table, tables};
use crate::model::certainty::Certainty;
use crate::model::words::ClosedList;

fn table(text: &str) -> Table {
    tables(text.as_bytes()).unwrap().remove(0)
}

fn told(proposal: &ColumnProposal) -> Vec<String> {
    let columns = proposal.columns.iter();
    columns
        .map(|c| format!("{}: {} {}", c.heading, c.holds, c.sure))
        .collect()
}

#[test]
fn german_headings_are_read_with_their_units() {
    let table = table(
        "Inv.-Nr.;Titel;Datierung;Technik;Höhe (cm);Breite (cm);Erwerbung;Zustand;Bemerkungen\n\
         HM 1970.12;Schleuse;um 1912;Farbholzschnitt;24,1;17,8;Schenkung A. Brook, 1970;fleckig;\n\
         HM 1971.3;Wehr;1925;Radierung auf Bütten;30;20,5;Ankauf 1971;;gerahmt\n",
    );
    let proposal = columns(&table, &lexicon());
    assert_eq!(
        told(&proposal),
        [
            "Inv.-Nr.: accession certain",
            "Titel: title certain",
            "Datierung: date certain",
            "Technik: medium certain",
            "Höhe (cm): height certain",
            "Breite (cm): width certain",
            "Erwerbung: credit certain",
            "Zustand: condition certain",
            "Bemerkungen: remarks certain",
        ]
    );
    assert_eq!(proposal.columns[4].assumed.unit, Some(Unit::Centimetre));
    assert_eq!(
        (proposal.columns[7].filled, proposal.columns[7].distinct),
        (1, 1)
    );
    assert_eq!(proposal.doubts, []);
}

/// Numeric columns of one museum were exchanged in every row that tells (measured on 12,237 records).
#[test]
fn exchanged_heights_and_widths_are_told() {
    let mut text = "accession,title,dimensions,height,width\n".to_owned();
    for row in 0..20 {
        let (high, wide) = (150 + row, 240 + row);
        writeln!(text, "P{row},Lock,image: {high} x {wide} mm,{wide},{high}").unwrap();
    }
    let proposal = columns(&table(&text), &lexicon());
    assert_eq!(
        proposal.doubts,
        [ColumnDoubt::HeightAndWidthExchanged {
            height: 3,
            width: 4,
            dimensions: 2,
            exchanged: 20,
            of: 20,
        }]
    );
}

#[test]
fn accession_numbers_that_repeat_or_are_missing_are_told() {
    let proposal = columns(
        &table("Inv. No.,Title\nP1,Lock\nP2,Weir\nP1,Mill\n"),
        &lexicon(),
    );
    assert_eq!(
        proposal.doubts,
        [ColumnDoubt::AccessionRepeats {
            column: 0,
            numbers: vec![("P1".to_owned(), vec![2, 4])],
            count: 1,
        }]
    );
    let proposal = columns(&table("Title,Year\nLock,1925\nWeir,1926\n"), &lexicon());
    assert_eq!(proposal.doubts, [ColumnDoubt::NoAccession]);
}

#[test]
fn cells_tell_what_an_unknown_heading_does_not() {
    let proposal = columns(
        &table(
            "a,b,c,d,e\n\
             P.1,Etching on paper,24 x 18 cm,https://example.org/1,1.jpg\n\
             P.2,Woodcut,30 x 20 cm,https://example.org/2,2.jpg\n\
             P.3,Lithograph,9 1/2 x 7 in.,https://example.org/3,3.tif\n",
        ),
        &lexicon(),
    );
    assert_eq!(
        told(&proposal),
        [
            "a: accession possible",
            "b: medium possible",
            "c: dimensions possible",
            "d: web possible",
            "e: photograph possible",
        ]
    );
    for column in &proposal.columns {
        assert_eq!(column.why, [Ground::Cells { fit: 3, of: 3 }]);
    }
}

#[test]
fn cells_like_numbers_are_no_accession_numbers_where_a_heading_names_those() {
    let text = "x,Inv. No.\nA 1,P1\nA 2,P2\nA 3,P3\n";
    let proposal = columns(&table(text), &lexicon());
    assert_eq!(
        told(&proposal),
        ["x: unknown certain", "Inv. No.: accession certain"]
    );
}

/// A heading that the cells contradict stays as it is, and is only possible.
#[test]
fn cells_that_contradict_the_heading_lower_how_sure_it_is() {
    let proposal = columns(
        &table("Inv.,Date\nP1,blue\nP2,green\nP3,red\n"),
        &Lexicon::default(),
    );
    let date = &proposal.columns[1];
    assert_eq!((date.holds, date.sure), (Holds::Date, Certainty::Possible));
    assert_eq!(
        date.why,
        [Ground::HeadingIs, Ground::Cells { fit: 0, of: 3 }]
    );
}

/// Under one heading one museum names itself, another the drawer.
#[test]
fn a_place_in_the_house_is_not_taken_for_the_holder() {
    let of_standort = |cells: [&str; 2]| {
        let [one, other] = cells;
        let text = format!("Inv.-Nr.;Titel;Standort\nP1;Wehr;{one}\nP2;Schleuse;{other}\n");
        let proposal = columns(&table(&text), &lexicon());
        told(&proposal).remove(2)
    };
    assert_eq!(
        of_standort(["Depot 2, Schrank 4", "Depot 2, Schrank 5"]),
        "Standort: remarks certain"
    );
    assert_eq!(
        of_standort(["Hafenmuseum", "Stadtarchiv"]),
        "Standort: holder certain"
    );
    // Nothing to tell by.
    assert_eq!(of_standort(["", ""]), "Standort: holder probable");
    // In our own forms it is the holder, as their notes say.
    let form = "Inv.-Nr.;Zustand in diesem Verzeichnis;Standort\nP1;ii;Nordhafen\n";
    let proposal = columns(&table(form), &lexicon());
    assert_eq!(told(&proposal).remove(2), "Standort: holder certain");
}

#[test]
fn every_ground_and_doubt_has_words() {
    let grounds = [
        Ground::HeadingIs,
        Ground::PathIs,
        Ground::HeadingHas,
        Ground::Cells { fit: 1, of: 2 },
        Ground::Houses { fit: 1, of: 2 },
        Ground::AlreadyHeld { by: 0 },
        Ground::NoCells,
        Ground::Nothing,
        Ground::ByHand,
        Ground::Before,
    ];
    let messages: std::collections::BTreeSet<String> =
        grounds.iter().map(Ground::message).collect();
    assert_eq!(messages.len(), grounds.len());
    for holds in Holds::ALL {
        assert_eq!(Holds::from_word(holds.word()), Some(*holds));
    }
}
