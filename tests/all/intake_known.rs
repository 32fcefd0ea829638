//! What rows of others' listings name in the catalogue, and which sheets of the census they are.

use keyblock::exchange::intake::columns::Holds::{self, CatalogueNumber, Title};
use keyblock::exchange::intake::grouping::settings::DesignSettings;
use keyblock::exchange::intake::handing::HandingIn;
use keyblock::exchange::intake::proposal::{DesignIs, ProposedDesign, ProposedRow, RowStanding};
use keyblock::exchange::intake::reading::Lexicon;
use keyblock::model::key::Key;
use keyblock::study::Studies;

use crate::intake_rows::{demonstration, doubts, ground, groups, listing, proposed, row};

/// What the pairs of the record above mean, worked out by hand: the first list has three states, of which the second was
/// split in 2016; the second has four and does not number the first and the lamps. Its second is the moonlit one alone; the
/// lamps are not split from anything.
#[test]
fn an_earlier_state_is_carried_through_the_concordance() {
    let ground = ground();
    for (said, after, states, printings) in [
        ("Willem 3 i", "first-list", &["dark"][..], &[][..]),
        ("Willem 3 ii/iii", "first-list", &["lamps", "moonlit"], &[]),
        ("Willem 3 iii/iii", "first-list", &["cut-down"], &[]),
        (
            "Willem 3 ii or iii",
            "first-list",
            &["lamps", "moonlit", "cut-down"],
            &[],
        ),
        (
            "Willem 3, between I and III",
            "first-list",
            &["lamps", "moonlit"],
            &[],
        ),
        ("Orme W 4 ii", "second", &["moonlit"], &[]),
        ("Orme W 4 iv/b", "second", &["cut-down"], &["late"]),
        ("Orme W 4 iii", "second", &[], &[]),
        ("Willem 3, undescribed state", "first-list", &[], &[]),
    ] {
        let mut rows = listing(&ground.lexicon, &[&[(CatalogueNumber, said)]]);
        let designs = ground.proposed(&mut rows);
        assert_eq!(groups(&designs, &rows), ["12: 1"], "{said}");
        let [opinion] = &rows[0].named.opinions[..] else {
            panic!("{said}: {:?}", rows[0].named)
        };
        let keys = |keys: &[Key]| keys.iter().map(Key::to_string).collect::<Vec<_>>();
        assert_eq!(opinion.after.as_str(), after, "{said}");
        assert_eq!(keys(&opinion.states), states, "{said}");
        assert_eq!(keys(&opinion.printings), printings, "{said}");
    }
    let mut rows = listing(&ground.lexicon, &[&[(CatalogueNumber, "Willem 3 ii/iii")]]);
    ground.proposed(&mut rows);
    assert_eq!(
        doubts(&rows[0]),
        ["Willem 1950 ii/iii is state ii or iii here"]
    );
}

#[test]
fn a_reference_without_its_catalogue_is_of_none() {
    let ground = ground();
    let mut rows = listing(
        &ground.lexicon,
        &[
            &[(Title, "The Lock, second state")],
            &[(CatalogueNumber, "W. 3 ii")],
            &[(CatalogueNumber, "W 4")],
            &[(CatalogueNumber, "Baker 3")],
        ],
    );
    let designs = ground.proposed(&mut rows);
    assert_eq!(
        groups(&designs, &rows),
        ["12: 1 2", "12|14|15: 3", "new: 4"]
    );
    assert_eq!(rows[0].named.opinions, []);
    assert!(
        doubts(&rows[0])
            .iter()
            .any(|d| d.contains("not said after which catalogue"))
    );
    assert!(
        doubts(&rows[1])
            .iter()
            .any(|d| d.contains("was taken for Willem 1950"))
    );
    // 4 of Willem, and W 4 of Orme.
    assert!(
        doubts(&rows[2])[0].contains("may be of Willem 1950 or Orme 1969"),
        "{:?}",
        rows[2].doubts
    );
    assert!(doubts(&rows[3])[0].contains("no work of the literature"));
}

#[test]
fn own_states_and_printings_are_named_by_numeral_name_and_key() {
    let ground = ground();
    for (state, printing, states, printings) in [
        ("iii", "late", &["moonlit"][..], &["late"][..]),
        ("III/IV", "The late edition", &["moonlit"], &["late"]),
        ("2", "own", &["lamps"], &["own"]),
        (
            "ii or iii",
            "Printed by the Artist",
            &["lamps", "moonlit"],
            &["own"],
        ),
        ("cut-down", "third", &["cut-down"], &[]),
        ("vii", "own", &[], &["own"]),
    ] {
        let cells = [
            (Holds::Design, "12"),
            (Holds::OwnState, state),
            (Holds::Printing, printing),
        ];
        let mut rows = listing(&ground.lexicon, &[&cells]);
        ground.proposed(&mut rows);
        let keys = |keys: &[Key]| keys.iter().map(Key::to_string).collect::<Vec<_>>();
        assert_eq!(keys(&rows[0].named.states), states, "{state}");
        assert_eq!(keys(&rows[0].named.printings), printings, "{printing}");
    }
}

#[test]
fn rows_find_their_records_by_number_and_former_number() {
    let ground = ground();
    let row = |cells: &[(Holds, &str)]| {
        let mut rows = vec![row(1, &ground.lexicon, cells)];
        ground.proposed(&mut rows);
        rows.remove(0)
    };
    let key = |text: &str| text.parse().unwrap();
    let told = |row: &ProposedRow| {
        let told = row
            .may_be
            .iter()
            .map(|may_be| format!("{}: {}", may_be.impression, may_be.why));
        told.collect::<Vec<_>>()
    };
    for number in ["1962.44", "1962/44", " 1962-44"] {
        let found = row(&[(Holds::Accession, number)]);
        assert_eq!(
            found.standing,
            RowStanding::Unchanged(key("12.1")),
            "{number}"
        );
        assert_eq!(found.may_be, []);
    }
    let whole = row(&[(Holds::Accession, "1962.45, sheet 2")]);
    assert_eq!(whole.standing, RowStanding::Unchanged(key("12.2")));
    let of_parts = row(&[(Holds::Accession, "1962.45")]);
    assert_eq!(of_parts.standing, RowStanding::New);
    assert!(told(&of_parts)[0].starts_with("12.2: it is a part of the number"));
    let former = row(&[(Holds::Accession, "P 207")]);
    assert!(
        told(&former)[0].contains("a former number of it"),
        "{:?}",
        told(&former)
    );
    let renumbered = row(&[
        (Holds::Accession, "2001.7"),
        (Holds::FormerAccession, "1962.44"),
    ]);
    assert_eq!(renumbered.standing, RowStanding::New);
    assert!(told(&renumbered)[0].contains("gives 1962.44 as a former number"));
    // Near misses: another number, another holder, a number that only looks like it.
    for cells in [
        &[(Holds::Accession, "1962.4.4")][..],
        &[(Holds::Accession, "1962.44"), (Holds::Holder, "gallery")],
        &[(Holds::Accession, "1962.440")],
        &[(Holds::Accession, "1962.45, sheet 1")],
    ] {
        let found = row(cells);
        assert_eq!(found.standing, RowStanding::New, "{cells:?}");
        assert_eq!(
            found
                .may_be
                .iter()
                .filter(|m| !m.why.contains("otherwise"))
                .count(),
            0,
            "{cells:?} {:?}",
            found.may_be
        );
    }
}

#[test]
fn what_a_record_keeps_private_is_not_for_those_who_hand_in() {
    let ground = ground();
    let cells = [
        (Holds::Accession, "A 9"),
        (Holds::Design, "12"),
        (Holds::Printing, "late"),
        (Holds::Numbering, "12/50"),
    ];
    let mut rows = vec![row(1, &ground.lexicon, &cells)];
    ground.proposed(&mut rows);
    let [may_be] = &rows[0].may_be[..] else {
        panic!("{:?}", rows[0].may_be)
    };
    assert_eq!(may_be.impression.to_string(), "12.3");
    assert!(may_be.is_private);
    assert!(may_be.why.contains("numbered 12 of 50"), "{}", may_be.why);
}

#[test]
fn rows_of_one_number_and_rows_of_one_sheet_are_told() {
    let ground = ground();
    let sheet = |number, accession, holder| {
        let cells = [
            (Holds::Accession, accession),
            (Holds::Holder, holder),
            (Holds::Design, "12"),
            (Holds::Printing, "late"),
            (Holds::Numbering, "13/50"),
        ];
        row(number, &ground.lexicon, &cells)
    };
    let mut rows = vec![
        sheet(1, "A 1", "museum"),
        sheet(2, "", "museum"),
        sheet(3, "A 1", "museum"),
    ];
    ground.proposed(&mut rows);
    let has = |at: usize, said: &str| doubts(&rows[at]).iter().any(|doubt| doubt.contains(said));
    assert!(
        has(0, "row 2 may be the same sheet: both are numbered 13 of 50"),
        "{:?}",
        rows[0].doubts
    );
    assert!(has(1, "row 1 may be the same sheet"));
    assert!(has(0, "the number A 1 stands in row 3 too"));
    assert!(!has(1, "stands in row"));
    assert!(!has(0, "row 3 may be the same sheet"));
}

/// Rows made from the records of the demonstration: what their holders would hand in.
#[test]
fn each_sheet_of_the_demonstration_finds_its_record() {
    let catalogue = keyblock::read::read(&demonstration()).catalogue;
    let studies = Studies::of(&catalogue);
    let lexicon = Lexicon::of(&catalogue.vocabularies);
    let mut rows = Vec::new();
    let mut expected = Vec::new();
    for (design, sheet) in catalogue.impressions() {
        let (Some(holder), Some(accession)) = (&sheet.holder, sheet.accession_and_part()) else {
            continue;
        };
        if sheet.standing.is_withdrawn() {
            continue;
        }
        let title = design.titles.last().unwrap();
        let number = u32::try_from(rows.len() + 1).unwrap();
        let cells = [
            (Holds::Accession, accession.as_str()),
            (Holds::Holder, holder.value.as_str()),
            (Title, title.text.value.as_str()),
        ];
        rows.push(row(number, &lexicon, &cells));
        expected.push(RowStanding::Unchanged(sheet.key.clone()));
    }
    assert!(rows.len() > 80, "{}", rows.len());
    let nobody = HandingIn::default();
    let designs = proposed(
        &mut rows,
        &catalogue,
        &studies,
        &nobody,
        &DesignSettings::default(),
    );
    let standings: Vec<RowStanding> = rows.iter().map(|row| row.standing.clone()).collect();
    assert_eq!(standings, expected);
    for design in &designs {
        assert!(matches!(design.is, DesignIs::Recorded(_)), "{design:?}");
    }
    // With other numbers the same rows are found by title alone, and by nothing in the census.
    for row in &mut rows {
        row.accession = row.accession.take().map(|number| format!("Z {number} Z"));
        row.standing = RowStanding::New;
        row.may_be.clear();
        row.doubts.clear();
    }
    let by_title = proposed(
        &mut rows,
        &catalogue,
        &studies,
        &nobody,
        &DesignSettings::default(),
    );
    assert!(rows.iter().all(|row| row.standing == RowStanding::New));
    let of = |designs: &[ProposedDesign]| designs.iter().map(|d| d.is.clone()).collect::<Vec<_>>();
    assert_eq!(of(&by_title), of(&designs));
}

/// The states of design 7 of the demonstration beside those of two earlier catalogues, by hand from its record: Dreyloft 9
/// has two states, Ambry W 4 three; the dark sky was split from the beam in 2016, after both.
#[test]
fn the_states_of_the_demonstration_are_translated_by_hand_alike() {
    let catalogue = keyblock::read::read(&demonstration()).catalogue;
    let studies = Studies::of(&catalogue);
    let lexicon = Lexicon::of(&catalogue.vocabularies);
    for (said, states) in [
        ("Dreyloft 9 i", &["dark-sky", "beam-cut"][..]),
        ("Dreyloft 9 ii/ii", &["buoy-gone"]),
        ("Ambry W 4 i/iii", &["dark-sky", "beam-cut"]),
        ("Ambry W 4 ii/iii", &["buoy-gone"]),
        ("Ambry W 4 iii/iii", &["cut-down", "monogram-gone"]),
        ("W 4, II. Zustand", &["buoy-gone"]),
        ("Dreyloft 1936, no. 9 iii", &[]),
    ] {
        let mut rows = listing(&lexicon, &[&[(CatalogueNumber, said)]]);
        let nobody = HandingIn::default();
        let designs = proposed(
            &mut rows,
            &catalogue,
            &studies,
            &nobody,
            &DesignSettings::default(),
        );
        assert_eq!(groups(&designs, &rows), ["7: 1"], "{said}");
        let opinion = &rows[0].named.opinions[0];
        let keys: Vec<&str> = opinion.states.iter().map(Key::as_str).collect();
        assert_eq!(keys, states, "{said}");
    }
}
