//! `values.toml` of an invented museum. Tests only.

use std::convert::Infallible;

use super::{read, write};
use crate::exchange::intake::cell::Extent;
use crate::exchange::intake::columns::columns;
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::lexicon::samples;
use crate::exchange::intake::settings::SettingFault;
use crate::exchange::intake::table::{Table, tables};
use crate::exchange::intake::values::Values;

const FILE: &str = "Inv.-Nr.;Titel;Datierung;Technik;Masse;Bemerkungen;Haus\n\
    HM 1;Schleuse;um 1912;Farbholzschnitt auf Japanpapier;24,1 x 17,8 cm;;Hafenmuseum\n\
    HM 2;Schleuse;um 1912;Radierung auf Bütten;24,1 x 17,8 cm;x;Hafenmuseum\n\
    HM 3;[Wehr], Probedruck;irgendwann;Radierung;24 x 18;=1+1;Stadthaus\n\
    HM 4;Mühle;1905-07;Radierung;24 x 18;;Hafenmuseum\n";

fn lexicon() -> Lexicon {
    let mut lexicon = samples::lexicon();
    let key = "hafenmuseum".parse().unwrap();
    lexicon.names.holders.add(&key, "Hafenmuseum");
    lexicon
}

fn table(text: &str) -> Table {
    tables(text.as_bytes()).unwrap().remove(0)
}

/// The values of a file, with what a text corrects.
fn run(text: &str, file: &str) -> (Values, Vec<SettingFault>) {
    let lexicon = lexicon();
    let table = table(file);
    let (settled, faults) = read(text, &lexicon);
    let columns = columns(&table, &lexicon).columns;
    (Values::of(&table, &columns, &lexicon, &settled), faults)
}

fn told(faults: &[SettingFault]) -> Vec<String> {
    let told = faults.iter().map(|fault| {
        let help = fault.help.as_deref().unwrap_or_default();
        format!("{}:{} {} ({help})", fault.line, fault.column, fault.message)
    });
    told.collect()
}

/// The date that a value of the third column reads, how sure, and whether by hand.
fn date(values: &Values, text: &str) -> String {
    let column = &values.columns()[1];
    let value = column.values().iter().find(|v| &*v.text == text).unwrap();
    let reading = value.reading();
    assert_eq!(values.reading(2, text).as_ref(), Some(&reading));
    let dates = reading.facts.dates.iter();
    let dates: Vec<String> = dates
        .map(|d| {
            format!(
                "{} {}",
                d.act,
                d.when.date().map_or("", |date| date.as_str())
            )
        })
        .collect();
    format!("{} {} {}", dates.join(", "), value.sure(), value.rows)
}

/// The text of `values.toml`.
fn written(values: &Values) -> String {
    let mut text = Vec::new();
    let put = &mut |piece: &[u8]| {
        text.extend_from_slice(piece);
        Ok::<(), Infallible>(())
    };
    let Ok(()) = write(values, put);
    String::from_utf8(text).unwrap()
}

#[test]
fn the_first_run_lists_every_value_once_the_unsure_first() {
    let (values, _) = run("", FILE);
    insta::assert_snapshot!(written(&values), @r###"
    # What the values of the file say: each text once, with its reading. The unsure ones stand first, then the frequent ones.
    #
    # Where a reading is wrong, correct `reads` and run intake again: it is then so in every row that has the text, also in
    # the next file of this house (`sure = "by-hand"`). Where it is right though unsure, write `sure = "by-hand"`.
    # `reads = {}` says that the text tells nothing. A value without a correction may be deleted: it comes back.
    #
    # Dates are EDTF ("1912~" is about 1912), also "later" and "not-known". Sizes are [height, width] in millimetres.
    # `rows` and `digest` are written by Keyblock; leave them as they are.

    [[columns]]
    heading = "Titel"
    holds = "title"

    [[columns.values]]
    is = "Schleuse"
    rows = 2
    reads = { title = "Schleuse" }
    sure = "certain"
    digest = "3b491547"

    [[columns.values]]
    is = "Mühle"
    rows = 1
    reads = { title = "Mühle" }
    sure = "certain"
    digest = "41448996"

    [[columns.values]]
    is = "[Wehr], Probedruck"
    rows = 1
    reads = { title = "Wehr", supplied = true, kind = "proof" }
    sure = "certain"
    digest = "e257fd21"

    [[columns]]
    heading = "Datierung"
    holds = "date"

    [[columns.values]]
    is = "irgendwann"
    rows = 1
    reads = {}
    sure = "unread"
    # left over: "irgendwann"
    digest = "f8c49eab"

    [[columns.values]]
    is = "1905-07"
    rows = 1
    reads = { created = "1905/1907" }
    sure = "possible"
    # doubtful: the number after the hyphen is a month or the end of a span
    digest = "a1d27b57"

    [[columns.values]]
    is = "um 1912"
    rows = 2
    reads = { created = "1912~" }
    sure = "certain"
    digest = "3cc936e2"

    [[columns]]
    heading = "Technik"
    holds = "medium"

    [[columns.values]]
    is = "Radierung"
    rows = 2
    reads = { technique = "etching" }
    sure = "certain"
    digest = "4bbda11a"

    [[columns.values]]
    is = "Farbholzschnitt auf Japanpapier"
    rows = 1
    reads = { technique = "colour-woodcut", paper = "japan-paper" }
    sure = "certain"
    digest = "8106406c"

    [[columns.values]]
    is = "Radierung auf Bütten"
    rows = 1
    reads = { technique = "etching", paper = "handmade-paper" }
    sure = "certain"
    digest = "aaac1f6a"

    [[columns]]
    heading = "Masse"
    holds = "dimensions"

    [[columns.values]]
    is = "24 x 18"
    rows = 2
    reads = {}
    sure = "unread"
    # doubtful: no unit is written
    # doubtful: it is not written what was measured
    # left over: "24 x 18"
    digest = "f8c49eab"

    [[columns.values]]
    is = "24,1 x 17,8 cm"
    rows = 2
    reads = { unsaid = [241, 178] }
    sure = "possible"
    # doubtful: it is not written what was measured
    digest = "ce2dae87"

    [[columns]]
    heading = "Haus"
    holds = "holder"

    [[columns.values]]
    is = "Stadthaus"
    rows = 1
    reads = {}
    sure = "unread"
    # left over: "Stadthaus"
    digest = "f8c49eab"

    [[columns.values]]
    is = "Hafenmuseum"
    rows = 3
    reads = { holder = "hafenmuseum" }
    sure = "certain"
    digest = "9770ee66"
    "###);
    let text = written(&values);
    assert!(text.parse::<toml::Table>().is_ok());
    let (again, faults) = run(&text, FILE);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(written(&again), text);
}

#[test]
fn a_corrected_value_is_so_in_every_row_and_stays_so() {
    let text = written(&run("", FILE).0)
        .replace(
            "reads = { created = \"1912~\" }",
            "reads = { created = \"1913\", printed = \"1920\" }",
        )
        // The reading is right, only unsure: the word for how sure is enough.
        .replace(
            "reads = { created = \"1905/1907\" }\nsure = \"possible\"",
            "reads = { created = \"1905/1907\" }\nsure = \"by-hand\"",
        );
    let (values, faults) = run(&text, FILE);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(
        date(&values, "um 1912"),
        "created 1913, printed 1920 by-hand 2"
    );
    assert_eq!(date(&values, "1905-07"), "created 1905/1907 by-hand 1");
    assert_eq!(date(&values, "irgendwann"), " unread 1");
    let reading = values.reading(2, "1905-07").unwrap();
    assert_eq!((reading.extent(), reading.doubts.len()), (Extent::Whole, 0));
    let again = written(&values);
    assert!(again.contains(
        "is = \"um 1912\"\nrows = 2\nreads = { created = \"1913\", printed = \"1920\" }\nsure = \"by-hand\"\n\
         # Keyblock reads: { created = \"1912~\" }\n"
    ));
    // The next file: the value in one row more, a new one, and one that is not there.
    let next =
        "Inv.-Nr.;Titel;Datierung\nHM 5;a;um 1912\nHM 6;a;um 1912\nHM 7;a;um 1912\nHM 8;a;1930\n";
    let (values, faults) = run(&again, next);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(
        date(&values, "um 1912"),
        "created 1913, printed 1920 by-hand 3"
    );
    assert_eq!(date(&values, "1930"), "created 1930 certain 1");
    let kept = written(&values);
    assert!(kept.contains("is = \"1905-07\"\nrows = 0\n"));
    // What an earlier file had still reads as the editor says: records made from it are compared by it.
    let earlier = values.reading(2, "1905-07").unwrap();
    assert_eq!(earlier.facts.dates.len(), 1);
    assert_eq!(values.reading(2, "irgendwann"), None);
    let (values, _) = run(&kept, FILE);
    assert_eq!(date(&values, "1905-07"), "created 1905/1907 by-hand 1");
    assert_eq!(written(&values), again);
}

/// Another way of writing the same reading is none of the editor's.
#[test]
fn a_file_that_was_only_formatted_corrects_nothing() {
    let text = written(&run("", FILE).0);
    let formatted = text
        .replace(
            "reads = { created = \"1912~\" }",
            "reads   = {created='1912~'} # about",
        )
        .replace("[[columns.values]]\n", "[[columns.values]]\n\n# a note\n");
    assert_ne!(formatted, text);
    let (values, faults) = run(&formatted, FILE);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(written(&values), text);
}

/// A mistake in a correction leaves the program's reading, and is told where it stands.
#[test]
fn a_faulty_correction_is_told_and_does_not_count() {
    let text = written(&run("", FILE).0);
    let line = |needle: &str, text: &str| {
        let before = text.split(needle).next().unwrap();
        before.lines().count() + 1
    };
    for (wrong, column, message) in [
        (
            "reads = { created = \"1912 circa\" }",
            26,
            "\"1912 circa\" is not a date",
        ),
        (
            "reads = { creatd = \"1912\" }",
            11,
            "a reading has no key `creatd`",
        ),
        (
            "reads = { technique = \"eching\" }",
            23,
            "`eching` is no technique",
        ),
        (
            "read = { created = \"1912\" }",
            1,
            "a value has no key `read`",
        ),
        ("reads = { created = \"1912\"", 9, "closed"),
    ] {
        let faulty = text.replace("reads = { created = \"1912~\" }", wrong);
        let (values, faults) = run(&faulty, FILE);
        assert_eq!(
            date(&values, "um 1912"),
            "created 1912~ certain 2",
            "{wrong}"
        );
        let fault = &faults[0];
        assert!(
            fault.message.contains(message),
            "{wrong}: {}",
            fault.message
        );
        assert_eq!(
            (fault.line, fault.column),
            (line(wrong, &faulty), column),
            "{wrong}"
        );
        assert!(fault.is_error);
    }
    let headless = text.replacen("[[columns.values]]", "[[columns.value]]", 1);
    let (_, faults) = run(&format!("a = 1\n{headless}"), FILE);
    let told = told(&faults);
    assert!(
        told[0].starts_with("1:1 this stands above the first [[columns]]"),
        "{told:?}"
    );
    assert!(
        told[1]
            .contains("`[[columns.value]]` is no header of this file (write [[columns.values]];")
    );
}

/// A correction is of its column; it counts for another only where its own is not in the file.
#[test]
fn a_correction_is_of_its_column() {
    let two = "Inv.-Nr.;Blattmass;Plattenmass\nHM 1;24 x 18 cm;24 x 18 cm\n";
    let text = written(&run("", two).0);
    let text = text.replacen(
        "sheet = { size = [240, 180], within = 5 }",
        "sheet = [245, 185]",
        1,
    );
    let heights = |values: &Values| {
        let sizes = (1..3).filter_map(|column| values.reading(column, "24 x 18 cm"));
        let sizes = sizes.flat_map(|reading| reading.facts.sizes.clone());
        sizes.map(|size| size.height.mm).collect::<Vec<f64>>()
    };
    let (values, faults) = run(&text, two);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(heights(&values), [245.0, 240.0]);
    let text = written(&values);
    let renamed = two.replace("Blattmass", "Blattgrösse");
    let (values, _) = run(&text, &renamed);
    assert_eq!(heights(&values), [245.0, 245.0]);
    assert_eq!(values.kept(), []);
    let swapped = "Inv.-Nr.;Blattmass;Plattenmass\nHM 1;20 x 18 cm;24 x 18 cm\n";
    let (values, _) = run(&text, swapped);
    // The text stands in the other column alone, which has its own reading; that of an earlier file is kept beside.
    assert_eq!(heights(&values), [245.0, 240.0]);
    assert_eq!(values.columns()[0].values().len(), 1);
    assert_eq!(values.kept().len(), 1);
}

/// Cells that spreadsheets run as formulas, or that try to leave their text, are only texts.
#[test]
fn values_are_only_texts() {
    let file = "Inv.-Nr.;Titel;Datierung\n\
        1;\"=HYPERLINK(\"\"http://example.org\"\")\";\"a\"\"\n[[columns.values]]\nis = \"\"b\"\n\
        2;@SUM(1);\"x\n# y\u{7}\u{202e}\"\n\
        3;'''\"\"\";\\u0041\n";
    let (values, _) = run("", file);
    let text = written(&values);
    let parsed: toml::Table = text.parse().unwrap();
    let columns = parsed["columns"].as_array().unwrap();
    for (column, parsed) in values.columns().iter().zip(columns) {
        let mut written: Vec<&str> = parsed["values"]
            .as_array()
            .unwrap()
            .iter()
            .map(|value| value["is"].as_str().unwrap())
            .collect();
        written.sort_unstable();
        let texts: Vec<&str> = column.values().iter().map(|v| &*v.text).collect();
        assert_eq!(written, texts);
    }
    assert!(text.chars().all(|sign| sign == '\n' || !sign.is_control()));
    let (again, faults) = run(&text, file);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(written(&again), text);
}
