//! Readings to TOML and back: for every text of the grammars' own tests, and for facts made at random. Tests only.

use std::sync::{Arc, LazyLock};

use proptest::option::of as maybe;
use proptest::prelude::*;

use super::{READS, node, written};
use crate::exchange::intake::cell::{CellContext, cell, is_read_by_grammar};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::{
    DatedAct, Facts, GivenMaker, GivenSize, GivenTitle, shared, shared_credit,
};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::dates::{Act, When};
use crate::exchange::intake::reading::lexicon::samples;
use crate::exchange::intake::reading::sizes::{Assumed, Length, Measured, Unit};
use crate::exchange::intake::reading::states::{CatalogueSaid, SaidState, StateRemark};
use crate::model::certainty::Basis;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList as _;
use crate::read::alone;
use crate::read::shape::{Shape, Takes, may, unpublished};

/// The vocabularies and two records of each kind that cells can name.
static LEXICON: LazyLock<Lexicon> = LazyLock::new(|| {
    let mut lexicon = samples::lexicon();
    for (key, name) in [("hafenmuseum", "Hafenmuseum"), ("a-brook", "A. Brook")] {
        let key = key.parse().unwrap();
        lexicon.names.holders.add(&key, name);
        lexicon.names.people.add(&key, name);
        lexicon.names.series.add(&key, name);
    }
    lexicon
});

static VALUE: Shape = unpublished("a value", &[may("reads", Takes::Table(&READS), "")]);

/// What a table reads, and what is wrong in it.
fn read(table: &str, text: &str) -> (Option<Facts>, Vec<String>) {
    let toml = format!("reads = {table}");
    let (facts, findings) = alone(&toml, &VALUE, |fields| {
        fields.one("reads", |faults, reads| node(faults, reads, text, &LEXICON))
    });
    let told = findings.into_iter().map(|f| f.message).collect();
    (facts, told)
}

/// The texts in quotes of the files that hold the grammars and their tests: what the tests read, and much besides.
fn texts_of_the_grammars() -> Vec<String> {
    let files = [
        include_str!("../../reading/dates/golden.rs"),
        include_str!("../../reading/sizes/golden.rs"),
        include_str!("../../reading/media.rs"),
        include_str!("../../reading/credit.rs"),
        include_str!("../../reading/numbering.rs"),
        include_str!("../../reading/makers.rs"),
        include_str!("../../reading/titles.rs"),
        include_str!("../../reading/states/tests.rs"),
        include_str!("../../reading/sightings.rs"),
        include_str!("../../reading/properties.rs"),
    ];
    let mut texts = vec!["Hafenmuseum".to_owned(), "A. BROOK".to_owned()];
    for file in files {
        let mut inside = None;
        let mut signs = file.char_indices();
        while let Some((at, sign)) = signs.next() {
            match (sign, inside) {
                ('\\', Some(_)) => {
                    signs.next();
                }
                ('"', None) => inside = Some(at + 1),
                ('"', Some(start)) => {
                    let text = file[start..at].replace("\\\"", "\"");
                    texts.push(text.replace("\\n", "\n"));
                    inside = None;
                }
                _ => {}
            }
        }
    }
    texts
}

/// A length that no print reaches is told where it is read back; nothing else may be.
fn has_impossible_length(facts: &Facts) -> bool {
    facts.sizes.iter().any(|size| size.size().is_none())
}

#[test]
fn every_reading_of_the_grammars_is_written_and_read_back_as_it_was() {
    let texts = texts_of_the_grammars();
    let assumed = Assumed {
        unit: Some(Unit::Centimetre),
        of: Some(Measured::Sheet),
        order: None,
    };
    let mut read_back = 0;
    for holds in Holds::ALL
        .iter()
        .filter(|holds| is_read_by_grammar(**holds))
    {
        // Only sizes are read by what the column says.
        let of_columns = [Assumed::default(), assumed];
        let is_of_sizes = *holds == Holds::Dimensions;
        for assumed in &of_columns[..=usize::from(is_of_sizes)] {
            let context = CellContext {
                assumed: *assumed,
                lexicon: &LEXICON,
            };
            for text in &texts {
                let facts = cell(*holds, text, context).facts;
                if has_impossible_length(&facts) {
                    continue;
                }
                let table = written(&facts, text);
                let (back, told) = read(&table, text);
                assert_eq!(told, [""; 0], "{holds}: {text}: {table}");
                read_back += usize::from(facts != Facts::default());
                assert_eq!(back, Some(facts), "{holds}: {text}: {table}");
            }
        }
    }
    // The texts are there, and the grammars read them.
    assert!(read_back > 2_000, "{read_back}");
}

fn key(list: List) -> impl Strategy<Value = Key> {
    proptest::sample::select(LEXICON.keys(list).to_vec())
}

fn words() -> impl Strategy<Value = String> {
    // Any text that has something in it.
    any::<String>().prop_map(|text| format!("w{text}"))
}

fn size() -> impl Strategy<Value = GivenSize> {
    let length = (
        0.001..20_000.0_f64,
        prop_oneof![Just(0.5), Just(0.05), 0.0..50.0_f64],
    );
    let length = length.prop_map(|(mm, tolerance_mm)| Length { mm, tolerance_mm });
    let whole = (1..20_000_u32).prop_map(|mm| Length {
        mm: f64::from(mm),
        tolerance_mm: 0.5,
    });
    let length = prop_oneof![length, whole];
    let said = prop_oneof![Just("the value".to_owned()), words()];
    let of = proptest::sample::select(Measured::ALL);
    (of, length.clone(), length, any::<bool>(), said).prop_map(
        |(of, height, width, is_sight, said)| GivenSize {
            of,
            height,
            width,
            is_sight,
            said,
        },
    )
}

fn dated() -> impl Strategy<Value = DatedAct> {
    let dates = [
        "1912~",
        "1925",
        "[1927,1929]",
        "1930/1939~",
        "{1925,1926}",
        "../1912",
        "192X",
        "1925-05-03",
    ];
    let date = proptest::sample::select(dates.to_vec())
        .prop_map(|date| When::Date(Date::parse(date).unwrap()));
    let when = prop_oneof![date, Just(When::NotKnown), Just(When::Later)];
    let act = proptest::sample::select(Act::ALL);
    (act, when).prop_map(|(act, when)| DatedAct { act, when })
}

fn reference() -> impl Strategy<Value = CatalogueSaid> {
    let state = (
        proptest::collection::vec(any::<u32>(), 0..3),
        maybe(any::<u32>()),
        maybe(words()),
        maybe(proptest::sample::select(StateRemark::ALL)),
    );
    let state = state.prop_map(|(states, of, printing, remark)| SaidState {
        states,
        of,
        printing,
        remark,
    });
    (maybe(words()), maybe(words()), maybe(state), any::<bool>()).prop_map(
        |(author, number, state, is_not_in)| CatalogueSaid {
            author,
            number,
            state,
            is_not_in,
        },
    )
}

fn credit() -> impl Strategy<Value = Credit> {
    (
        maybe(key(List::Transfers)),
        maybe(words()),
        maybe(words()),
        maybe(0..=9999_u32),
        any::<bool>(),
    )
        .prop_map(|(how, from, through, year, is_joint)| Credit {
            how,
            from,
            through,
            year,
            is_joint,
        })
}

fn facts() -> impl Strategy<Value = Facts> {
    let record = || maybe(Just("hafenmuseum".parse::<Key>().unwrap()));
    let maker = (words(), key(List::Roles)).prop_map(|(name, role)| GivenMaker { name, role });
    let title = (words(), any::<bool>());
    let title = title.prop_map(|(text, is_supplied)| GivenTitle { text, is_supplied });
    let of_the_work = (
        maybe(title),
        proptest::collection::vec(dated(), 0..4),
        proptest::collection::vec(size(), 0..4),
        proptest::collection::vec(key(List::Techniques), 0..3),
        proptest::collection::vec(key(List::Papers), 0..3),
        proptest::collection::vec(maker, 0..3),
    );
    let of_the_sheet = (
        maybe(any::<u32>()),
        maybe(any::<u32>()),
        maybe(any::<u32>()),
        maybe(words()),
        maybe(key(List::Kinds)),
        credit(),
        proptest::collection::vec(reference(), 0..3),
    );
    let of_the_record = (
        (record(), record(), record()),
        maybe(proptest::sample::select(Basis::ALL)),
        maybe(words()),
        any::<bool>(),
    );
    (of_the_work, of_the_sheet, of_the_record).prop_map(|(work, sheet, record)| {
        let (title, mut dates, mut sizes, techniques, papers, makers) = work;
        let (colours, matrices, edition, numbering, kind, credit, references) = sheet;
        let ((holder, series, seen_by), basis, rights, has_more) = record;
        // Of one act or one thing together, as cells give them.
        dates.sort_by_key(|dated| dated.act);
        sizes.sort_by_key(|size| size.of);
        Facts {
            title: title.map(Arc::new),
            dates: shared(dates),
            sizes: shared(sizes),
            techniques,
            papers,
            makers: shared(makers),
            colours,
            matrices,
            edition,
            numbering,
            kind,
            credit: shared_credit(credit),
            references: shared(references),
            holder,
            series,
            seen_by,
            basis,
            rights,
            seen: has_more.then(|| Arc::new(Date::parse("2025-04").unwrap())),
            web: has_more.then(|| "https://example.org/1?a=b#c".to_owned()),
            ..Facts::default()
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn any_facts_are_written_and_read_back_as_they_were(facts in facts()) {
        let table = written(&facts, "the value");
        prop_assert_eq!(table.lines().count(), 1);
        let (back, told) = read(&table, "the value");
        prop_assert_eq!(told, Vec::<String>::new(), "{}", table);
        prop_assert_eq!(back, Some(facts), "{}", table);
    }
}

#[test]
fn readings_are_short_where_they_can_be() {
    let context = CellContext {
        assumed: Assumed::default(),
        lexicon: &LEXICON,
    };
    for (holds, text, table) in [
        (Holds::Date, "um 1912", r#"{ created = "1912~" }"#),
        (
            Holds::Date,
            "c.1830–5, published 1840, 1850",
            r#"{ created = "1830~/1835~", published = "{1840,1850}" }"#,
        ),
        (Holds::Date, "n.d.", r#"{ created = "not-known" }"#),
        (
            Holds::Dimensions,
            "image: 166 x 243 mm",
            r#"{ image = { size = [166, 243], said = "166 x 243 mm" } }"#,
        ),
        (
            Holds::Dimensions,
            "24,1 x 17,8 cm",
            "{ unsaid = [241, 178] }",
        ),
        (
            Holds::Dimensions,
            "9 1/2 x 7 in.",
            "{ unsaid = { size = [241.3, 177.8], within = 6.35 } }",
        ),
        (
            Holds::Medium,
            "Etching on laid paper",
            r#"{ technique = "etching", paper = "laid-paper" }"#,
        ),
        (
            Holds::Credit,
            "Gift of A. Brook through D. Lock, 1925",
            r#"{ how = "gift", from = "A. Brook", through = "D. Lock", year = 1925 }"#,
        ),
        (
            Holds::Numbering,
            "A.P. 12/50",
            r#"{ numbering = "12/50", kind = "artists-proof" }"#,
        ),
        (
            Holds::Title,
            "[The Lock], engraved by C. Mill",
            r#"{ title = "The Lock", supplied = true, makers = [{ name = "C. Mill", role = "engraver" }] }"#,
        ),
        (
            Holds::State,
            "B. 12 ii or iii",
            r#"{ catalogues = [{ after = "B.", number = "12", state = "ii or iii" }] }"#,
        ),
        (
            Holds::Holder,
            "HAFENMUSEUM",
            r#"{ holder = "hafenmuseum" }"#,
        ),
        (Holds::Basis, "im Original", r#"{ basis = "first-hand" }"#),
        (Holds::Seen, "3 May 2025", r#"{ seen = "2025-05-03" }"#),
        (Holds::Seen, "printed 1925", "{}"),
        (Holds::Holder, "Some other house", "{}"),
    ] {
        assert_eq!(
            written(&cell(holds, text, context).facts, text),
            table,
            "{text}"
        );
    }
}

/// A size without `within` is as exact as its figures, and taken from the whole value.
#[test]
fn a_size_by_an_editor_is_as_exact_as_its_figures() {
    let (facts, told) = read("{ sheet = [166.5, 243] }", " 16 1/2 x 24 ");
    assert_eq!(told, [""; 0]);
    let size = facts.unwrap().sizes.remove(0);
    assert_eq!(size.of, Measured::Sheet);
    assert_eq!(size.said, "16 1/2 x 24");
    let length = |mm, tolerance_mm| Length { mm, tolerance_mm };
    assert_eq!(size.height, length(166.5, 0.05));
    assert_eq!(size.width, length(243.0, 0.5));
    let several = "{ image = [[1, 2], { size = [3, 4], within = 5, sight = true }] }";
    let (facts, told) = read(several, "x");
    assert_eq!(told, [""; 0]);
    let sizes = facts.unwrap().sizes;
    assert_eq!((sizes.len(), sizes[1].is_sight), (2, true));
    assert_eq!(sizes[1].width, length(4.0, 5.0));
}

#[test]
fn what_is_wrong_in_a_reading_is_told() {
    for (table, message) in [
        ("{ created = \"um 1912\" }", "\"um 1912\" is not a date"),
        (
            "{ techniqe = \"etching\" }",
            "a reading has no key `techniqe`",
        ),
        (
            "{ technique = \"eching\" }",
            "`eching` is no technique that the vocabulary has",
        ),
        (
            "{ kind = \"Etching\" }",
            "`Etching` is no kind of impression that the vocabulary has",
        ),
        (
            "{ image = [0, 243] }",
            "the height is not a length in millimetres",
        ),
        (
            "{ image = \"166 x 243\" }",
            "`image` takes [height, width], not text",
        ),
        (
            "{ image = { size = [1, 2], within = -1 } }",
            "`within` takes a number of millimetres",
        ),
        (
            "{ holder = \"nobody\" }",
            "the catalogue has no holder `nobody`",
        ),
        (
            "{ catalogues = [{ state = \"third\" }] }",
            "\"third\" is no state",
        ),
        (
            "{ colours = \"three\" }",
            "`colours` takes a whole number, not text",
        ),
        ("{ private = [\"from\"] }", "`private`"),
        ("\"1912\"", "`reads` takes a table, not text"),
    ] {
        let (_, told) = read(table, "x");
        assert!(
            told.iter().any(|told| told.contains(message)),
            "{table}: {told:?}"
        );
        assert_eq!(told.len(), 1, "{table}: {told:?}");
    }
}
