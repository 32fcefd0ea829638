//! `columns.toml` of an invented museum. Tests only.

use super::{ColumnSettings, joined, read, written};
use crate::exchange::intake::columns::{ColumnDoubt, Ground, Holds, columns};
use crate::exchange::intake::reading::lexicon::samples::lexicon;
use crate::exchange::intake::reading::sizes::Unit;
use crate::exchange::intake::settings::SettingFault;
use crate::exchange::intake::table::{Table, tables};
use crate::model::certainty::Certainty;

const FILE: &str = "Inv.-Nr.;Titel;Datierung;Technik;Höhe (cm);Breite (cm);Zustand;Ort;Bemerkungen\n\
    HM 1970.12;Schleuse;um 1912;Farbholzschnitt;24,1;17,8;fleckig;Regal 3;\n\
    HM 1971.3;Wehr;1925;Radierung auf Bütten;30;20,5;;Regal 4;gerahmt\n\
    HM 1971.4;Mühle;o. J.;Radierung;30;20;;Regal 4;=HYPERLINK(\"x\")\n";

fn table(text: &str) -> Table {
    tables(text.as_bytes()).unwrap().remove(0)
}

/// The settings that a text and a table give, and the faults of both.
fn run(text: &str, file: &str) -> (ColumnSettings, Vec<SettingFault>) {
    let table = table(file);
    let (settings, mut faults) = read(text);
    let (settings, more) = joined(settings, &table, columns(&table, &lexicon()));
    faults.extend(more);
    (settings, faults)
}

fn told(faults: &[SettingFault]) -> Vec<String> {
    let told = faults.iter().map(|fault| {
        let help = fault.help.as_deref().unwrap_or_default();
        let mark = if fault.is_error { "error" } else { "hint" };
        format!(
            "{}:{} {mark}: {} ({help})",
            fault.line, fault.column, fault.message
        )
    });
    told.collect()
}

fn held(settings: &ColumnSettings) -> Vec<String> {
    let columns = settings.columns.iter();
    columns
        .map(|c| format!("{} {} {} {:?}", c.heading, c.holds, c.sure, c.why))
        .collect()
}

#[test]
fn the_first_run_writes_what_the_headings_and_cells_tell() {
    let (settings, faults) = run("", FILE);
    assert_eq!(told(&faults), [""; 0]);
    // Without the words that `holds` takes, which are those of `Holds`.
    let text = written(&settings);
    let lines: Vec<&str> = text.lines().filter(|l| !l.starts_with("#   ")).collect();
    insta::assert_snapshot!(lines.join("\n"), @r###"
    # What each column of the file holds, as its heading and its cells tell.
    #
    # Where it is wrong, correct `holds`, `unit`, `of` or `order`, and run intake again. Where it is right though unsure, write
    # `sure = "by-hand"`. What you wrote stands, also for the next file of this house, wherever the column is there. A column
    # that holds "unknown" is kept with the sheet as it is given, and is not read.
    #
    # `holds` takes one of:

    # whose sheets these are, where no column says it: the key of a holder
    # holder = ""
    # who hands in and is credited: the key of a person or holder
    # by = ""
    # where the file was taken from: words, or an address on the web
    # source = ""
    # when the holder's description was seen: a date such as "2025-04"
    # seen = ""

    [[columns]]
    heading = "Inv.-Nr."
    holds = "accession"
    sure = "certain"
    why = "the heading says so; 3 of 3 cells look like it"
    digest = "ed12549b"
    # 3 cells, 3 different: "HM 1970.12", "HM 1971.3", "HM 1971.4"

    [[columns]]
    heading = "Titel"
    holds = "title"
    sure = "certain"
    why = "the heading says so"
    digest = "71e05d76"
    # 3 cells, 3 different: "Schleuse", "Wehr", "Mühle"

    [[columns]]
    heading = "Datierung"
    holds = "date"
    sure = "certain"
    why = "the heading says so; 3 of 3 cells look like it"
    digest = "6a0f6a68"
    # 3 cells, 3 different: "um 1912", "1925", "o. J."

    [[columns]]
    heading = "Technik"
    holds = "medium"
    sure = "certain"
    why = "the heading says so; 3 of 3 cells look like it"
    digest = "15118e68"
    # 3 cells, 3 different: "Farbholzschnitt", "Radierung auf Bütten", "Radierung"

    [[columns]]
    heading = "Höhe (cm)"
    holds = "height"
    sure = "certain"
    why = "the heading says so; 3 of 3 cells look like it"
    unit = "cm"
    digest = "bd33e339"
    # 3 cells, 2 different: "24,1", "30"

    [[columns]]
    heading = "Breite (cm)"
    holds = "width"
    sure = "certain"
    why = "the heading says so; 3 of 3 cells look like it"
    unit = "cm"
    digest = "650f07c6"
    # 3 cells, 3 different: "17,8", "20,5", "20"

    [[columns]]
    heading = "Zustand"
    holds = "condition"
    sure = "certain"
    why = "the heading says so"
    digest = "665f5eb8"
    # 1 cells, 1 different: "fleckig"

    [[columns]]
    heading = "Ort"
    holds = "unknown"
    sure = "unread"
    why = "neither the heading nor the cells are known"
    digest = "b483d61c"
    # 3 cells, 2 different: "Regal 3", "Regal 4"

    [[columns]]
    heading = "Bemerkungen"
    holds = "remarks"
    sure = "certain"
    why = "the heading says so"
    digest = "7929aadb"
    # 2 cells, 2 different: "gerahmt", '=HYPERLINK("x")'
    "###);
}

#[test]
fn a_file_that_nobody_edited_is_written_as_it_was() {
    let (settings, _) = run("", FILE);
    let text = written(&settings);
    assert!(text.parse::<toml::Table>().is_ok());
    let (again, faults) = run(&text, FILE);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(again.columns, settings.columns);
    assert_eq!(written(&again), text);
}

/// The second run knows what an editor changed, the third what was changed before the second.
#[test]
fn an_editor_is_believed_and_remembered() {
    let text = written(&run("", FILE).0)
        .replace("holds = \"condition\"", "holds = \"state\"")
        .replace("# by = \"\"", "by = \"hafenmuseum\"")
        .replace("# seen = \"\"", "seen = \"2025-04\"")
        .replacen("unit = \"cm\"", "unit = \"mm\"", 1)
        .replace(
            "holds = \"unknown\"\nsure = \"unread\"",
            "holds = \"unknown\"\nsure = \"by-hand\"",
        );
    let (settings, faults) = run(&text, FILE);
    assert_eq!(told(&faults), [""; 0]);
    let column = |at: usize| &settings.columns[at];
    for at in [4, 6, 7] {
        assert_eq!(column(at).why, [Ground::ByHand], "{at}");
        assert_eq!(column(at).sure, Certainty::Certain);
    }
    assert_eq!(column(6).holds, Holds::State);
    assert_eq!(column(4).assumed.unit, Some(Unit::Millimetre));
    assert_eq!(column(5).assumed.unit, Some(Unit::Centimetre));
    // What is not of the editor is not called so.
    assert_eq!(column(0).why[0], Ground::HeadingIs);
    assert_eq!(
        settings.handing.by.as_ref().unwrap().as_str(),
        "hafenmuseum"
    );
    let again = written(&settings);
    assert!(again.contains("heading = \"Zustand\"\nholds = \"state\"\nsure = \"by-hand\"\n"));
    let (third, faults) = run(&again, FILE);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(
        (&third.columns, &third.handing),
        (&settings.columns, &settings.handing)
    );
    assert_eq!(written(&third), again);
}

/// The next export has the columns in another order, one more and one less.
#[test]
fn the_next_file_is_read_by_the_headings_that_are_settled() {
    let text = written(&run("", FILE).0).replace(
        "heading = \"Ort\"\nholds = \"unknown\"",
        "heading = \"Ort\"\nholds = \"department\"",
    );
    let next =
        "Titel;Ort;Inv.-Nr.;Signatur;Datierung\nSchleuse;Regal 3;HM 1980.1;rechts unten;1913\n";
    let (settings, faults) = run(&text, next);
    assert_eq!(
        held(&settings),
        [
            "Titel title certain [HeadingIs]",
            "Ort department certain [ByHand]",
            "Inv.-Nr. accession certain [HeadingIs, Cells { fit: 1, of: 1 }]",
            "Signatur signature certain [HeadingIs]",
            "Datierung date certain [HeadingIs, Cells { fit: 1, of: 1 }]",
        ]
    );
    assert_eq!(settings.added, [3]);
    let absent: Vec<&str> = settings.absent.iter().map(|c| c.heading.as_str()).collect();
    assert_eq!(
        absent,
        [
            "Technik",
            "Höhe (cm)",
            "Breite (cm)",
            "Zustand",
            "Bemerkungen"
        ]
    );
    assert_eq!(faults.len(), 5);
    assert!(faults.iter().all(|fault| !fault.is_error));
    // Nothing of the house is lost: the file after that has them again.
    let (back, faults) = run(&written(&settings), FILE);
    assert_eq!(
        told(&faults)[0].split_once(' ').unwrap().1,
        "hint: the file has no column \"Signatur\" (it is kept for the next file; remove it if no file will have it)"
    );
    assert_eq!(back.columns[7].holds, Holds::Department);
}

/// A column that was recognised stays so where the next file alone would not tell it.
#[test]
fn what_an_editor_left_stands_for_the_next_file() {
    let first = "x;Titel\nA 1;a\nA 2;b\nA 3;c\n";
    let text = written(&run("", first).0);
    let (settings, _) = run(&text, "x;Titel\nA 9;d\n");
    assert_eq!(held(&settings)[0], "x accession possible [Before]");
    // Written again it is still the program's word, and lasts.
    let (settings, _) = run(&written(&settings), "x;Titel\nA 9;d\n");
    assert_eq!(held(&settings)[0], "x accession possible [Before]");
    let (settings, _) = run(&written(&settings), first);
    assert_eq!(
        held(&settings)[0],
        "x accession possible [Cells { fit: 3, of: 3 }]"
    );
}

#[test]
fn an_accession_column_named_by_an_editor_is_the_only_one() {
    let file = "x;Nr\nA 1;eins\nA 2;zwei\nA 3;drei\n";
    let text = written(&run("", file).0);
    assert!(text.contains("heading = \"x\"\nholds = \"accession\""));
    let text = text.replace(
        "heading = \"Nr\"\nholds = \"unknown\"",
        "heading = \"Nr\"\nholds = \"accession\"",
    );
    let (settings, _) = run(&text, file);
    assert_eq!(
        held(&settings),
        [
            "x unknown certain [AlreadyHeld { by: 1 }]",
            "Nr accession certain [ByHand]"
        ]
    );
    assert_eq!(settings.doubts, []);
}

#[test]
fn doubts_stand_beside_their_columns_and_go_when_the_column_is_corrected() {
    let file = "Inv. No.,dimensions,height,width\nP1,10 x 20 mm,20,10\nP2,11 x 21 mm,21,11\nP1,12 x 22 mm,22,12\n";
    let (settings, _) = run("", file);
    let text = written(&settings);
    assert!(text.contains(
        "# DOUBT: an accession number stands in several rows\n[[columns]]\nheading = \"Inv. No.\""
    ));
    assert!(text.contains("the columns may be exchanged\n[[columns]]\nheading = \"height\""));
    let text = text
        .replace(
            "heading = \"height\"\nholds = \"height\"",
            "heading = \"height\"\nholds = \"width!\"",
        )
        .replace(
            "heading = \"width\"\nholds = \"width\"",
            "heading = \"width\"\nholds = \"height\"",
        )
        .replace("width!", "width");
    let (settings, faults) = run(&text, file);
    assert_eq!(told(&faults), [""; 0]);
    let of_sizes = |doubt: &&ColumnDoubt| !matches!(doubt, ColumnDoubt::AccessionRepeats { .. });
    assert_eq!(settings.doubts.iter().find(of_sizes), None);
}

#[test]
fn faults_are_told_with_line_and_column() {
    let text = "\
holdr = \"x\"
seen = \"April\"

[[columns]]
heading = \"Titel\"
holds = \"titel\"

[[columns]]
heading = \"Datirung\"
holds = \"date\"
colour = \"red\"

[[columns]]
heading = \"Technik
holds = \"medium\"

[[colums]]
heading = \"Höhe (cm)\"
";
    let (settings, faults) = run(text, FILE);
    let told = told(&faults);
    let short: Vec<String> = told
        .iter()
        .map(|told| match told.split_once("it takes accession") {
            Some((before, _)) => format!("{before}it takes …)"),
            None => told.clone(),
        })
        .collect();
    insta::assert_snapshot!(short.join("\n"), @r###"
    1:1 error: the head of columns.toml has no key `holdr` (did you mean `holder`?)
    2:9 error: "April" is not a date: a year has four digits, with X for one that is not known (write "1927", "1927-03", "1927~" (about), "1927?" (uncertain), "192X" (the 1920s), "1927/1931" (from, to))
    6:9 error: `holds` cannot be "titel" (did you mean "title"? it takes …)
    11:1 error: a column has no key `colour` (it takes heading, holds, sure, why, unit, of, order, digest)
    14:19 error: this text is not closed (close it with the quote that opens it)
    17:1 error: `[[colums]]` is no header of this file (write [[columns]]; what stands below it was not read)
    9:11 hint: the file has no column "Datirung" (did you mean "Datierung"?)
    "###);
    // What is sound is read.
    assert_eq!(settings.absent.len(), 1);
    assert_eq!(settings.columns.len(), 9);
}

#[test]
fn columns_with_one_heading_or_none_keep_their_order() {
    let file = "Inv. No.;Date;Date;\nP1;1925;1926;x\n";
    let text = written(&run("", file).0);
    let at = text.rfind("heading = \"Date\"\nholds = \"date\"").unwrap();
    let text = format!(
        "{}{}",
        &text[..at],
        text[at..].replacen("\"date\"", "\"seen\"", 1)
    );
    let (settings, faults) = run(&text, file);
    assert_eq!(told(&faults), [""; 0]);
    let holds: Vec<Holds> = settings.columns.iter().map(|c| c.holds).collect();
    assert_eq!(holds[1..3], [Holds::Date, Holds::Seen]);
    assert_eq!(settings.absent, []);
}

/// A heading or a cell cannot leave its text and become a key.
#[test]
fn headings_and_cells_are_only_texts() {
    let file = "Inv. No.,\"a\"\"\n[[columns]]\nholds = \"\"title\",Titel\nP1,\"x\n# y = 1\u{7}\u{202e}\",t\n";
    let (settings, _) = run("", file);
    let text = written(&settings);
    let parsed: toml::Table = text.parse().unwrap();
    assert_eq!(
        parsed["columns"].as_array().unwrap().len(),
        settings.columns.len()
    );
    assert!(text.chars().all(|sign| sign == '\n' || !sign.is_control()));
    assert!(!text.contains('\u{202e}'));
    let (again, faults) = run(&text, file);
    assert_eq!(told(&faults), [""; 0]);
    assert_eq!(again.columns, settings.columns);
}
