//! Files that would harm: each is refused with a reason, or read and told, and nothing in it is carried out.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use super::archive::{SHEET, packed, workbook};
use super::{CATALOGUE, document, inbox, inbox_text, intake, intake_file, records};
use crate::program::{keyblock, text};
use crate::small::lay_down;

/// Entities that unfold to three gigabytes (the "billion laughs").
fn laughs(root: &str) -> String {
    let mut text = format!("<?xml version=\"1.0\"?>\n<!DOCTYPE {root} [\n<!ENTITY a0 \"lol\">\n");
    for n in 1..10 {
        let of = format!("&a{};", n - 1).repeat(10);
        let _ = writeln!(text, "<!ENTITY a{n} \"{of}\">");
    }
    text.push_str("<!ENTITY file SYSTEM \"file:///etc/passwd\">\n]>\n");
    text
}

/// Asserts that a file is refused with a reason and something to do, and that nothing was written.
#[track_caller]
fn is_refused(file: &str, bytes: &[u8], reason: &str) {
    let catalogue = lay_down(&[CATALOGUE]);
    let ran = intake(catalogue.path(), file, bytes, "harbour");
    assert_eq!(ran.code, Some(1), "{file}: {}", ran.err);
    assert!(ran.err.contains(reason), "{file}: {}", ran.err);
    // The fault, and below it what to do.
    assert!(
        ran.err.lines().any(|line| line.starts_with("  ")),
        "{file}: {}",
        ran.err
    );
    assert_eq!(ran.out, "", "{file}");
    assert!(!catalogue.path().join("records/inbox").exists(), "{file}");
}

/// Takes a table in, which must succeed; gives the catalogue. Nothing but the inbox changes.
#[track_caller]
fn is_read(file: &str, bytes: &[u8]) -> tempfile::TempDir {
    let catalogue = lay_down(&[CATALOGUE]);
    let before = records(catalogue.path());
    let ran = intake(catalogue.path(), file, bytes, "harbour");
    document(&ran);
    assert!(records(catalogue.path()) == before);
    // The files that editors correct can be read again, and say the same.
    let first = crate::program::bytes_below(catalogue.path());
    let again = intake(catalogue.path(), file, bytes, "harbour");
    assert_eq!(document(&again), document(&ran), "{}", again.err);
    let second = crate::program::bytes_below(catalogue.path());
    let changed: Vec<_> = first
        .iter()
        .filter(|(path, bytes)| second.get(*path) != Some(bytes))
        .collect();
    assert!(
        changed.is_empty() && first.len() == second.len(),
        "{:?}",
        changed.iter().map(|c| c.0).collect::<Vec<_>>()
    );
    for file in [
        "columns.toml",
        "values.toml",
        "designs.toml",
        "proposed.toml",
    ] {
        let text = inbox_text(catalogue.path(), "harbour", file);
        assert!(text.parse::<toml::Table>().is_ok(), "{file}");
        let hidden = |c: &char| {
            (c.is_control() && *c != '\n')
                || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
        };
        assert_eq!(
            text.chars().find(hidden),
            None,
            "{file} holds a character that editors do not show"
        );
    }
    catalogue
}

#[test]
fn entities_are_never_unfolded() {
    let lido = laughs("lidoWrap")
        + "<lido:lidoWrap xmlns:lido=\"http://www.lido-schema.org\"><lido:lido><lido:lidoRecID>&a9;&file;</lido:lidoRecID>\
           </lido:lido></lido:lidoWrap>";
    is_refused("laughs.xml", lido.as_bytes(), "declares entities");
    let sheet = laughs("worksheet")
        + "<worksheet><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&a9;</t></is></c></row></sheetData></worksheet>";
    let bytes = workbook(packed(SHEET, sheet.as_bytes()));
    is_refused("laughs.xlsx", &bytes, "declares entities");
}

#[test]
fn json_nested_a_hundred_thousand_deep_is_refused() {
    let deep = "[".repeat(100_000) + &"]".repeat(100_000);
    let deep =
        format!("{{\"@context\": \"https://linked.art/ns/v1/linked-art.json\", \"part\": {deep}}}");
    is_refused("deep.json", deep.as_bytes(), "deep.json:");
    is_refused(
        "open.json",
        "{\"a\":".repeat(100_000).as_bytes(),
        "open.json:",
    );
}

#[test]
fn files_without_a_table_are_refused() {
    is_refused("empty.csv", b"", "has no cells");
    is_refused("blank.csv", b"\n\n  \n", "has no cells");
    is_refused(
        "old.xls",
        b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1rest",
        "which is not read",
    );
    is_refused("list.pdf", b"%PDF-1.7\n", "which is not read");
    is_refused("nul.csv", b"Title,Date\nThe \0Ferry,1912\n", "no text");
    is_refused("torn.xlsx", b"PK\x03\x04torn", "torn.xlsx:");
}

#[test]
fn what_is_no_file_is_refused() {
    let catalogue = lay_down(&[CATALOGUE]);
    let ran = intake_file(catalogue.path(), catalogue.path(), "harbour");
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    assert!(ran.err.contains("is no file"), "{}", ran.err);
    let none = catalogue.path().join("none.csv");
    let ran = intake_file(catalogue.path(), &none, "harbour");
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;

        // Opened, it would never answer.
        let socket = catalogue.path().join("list.csv");
        let _listener = std::os::unix::net::UnixListener::bind(&socket).unwrap();
        let ran = intake_file(catalogue.path(), &socket, "harbour");
        assert_eq!(ran.code, Some(2), "{}", ran.err);
        let locked = catalogue.path().join("locked.csv");
        fs::write(&locked, "Title\nx\n").unwrap();
        fs::set_permissions(&locked, fs::Permissions::from_mode(0o0)).unwrap();
        // The superuser may read it all the same.
        if fs::read(&locked).is_err() {
            let ran = intake_file(catalogue.path(), &locked, "harbour");
            assert_eq!(ran.code, Some(1), "{}", ran.err);
            assert!(ran.err.contains("cannot be read"), "{}", ran.err);
        }
    }
    assert!(!catalogue.path().join("records/inbox").exists());
}

#[test]
fn names_that_lead_out_of_the_inbox_are_refused() {
    let catalogue = lay_down(&[CATALOGUE]);
    for name in ["../x", "..", "/etc", "a/b", "CON ", "", "x\n", ".x.next"] {
        let ran = intake(catalogue.path(), "list.csv", b"Title\nThe Ferry\n", name);
        assert_eq!(ran.code, Some(2), "{name:?}: {}", ran.err);
    }
    assert!(!catalogue.path().join("records/inbox").exists());
}

#[cfg(unix)]
#[test]
fn an_inbox_that_is_a_link_is_not_written_to() {
    let catalogue = lay_down(&[CATALOGUE]);
    let elsewhere = tempfile::tempdir().unwrap();
    fs::create_dir_all(catalogue.path().join("records/inbox")).unwrap();
    let link = catalogue.path().join("records/inbox/harbour");
    std::os::unix::fs::symlink(elsewhere.path(), &link).unwrap();
    let ran = intake(
        catalogue.path(),
        "list.csv",
        b"Title\nThe Ferry\n",
        "harbour",
    );
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 0);
}

/// Texts that a spreadsheet, a browser, a terminal or a TOML file would take for something else.
const CELLS: &[&str] = &[
    "=cmd|'/C calc'!A0",
    "=HYPERLINK(\"https://evil.example\",\"x\")",
    "+1+cmd|'/C calc'!A0",
    "-2+3+cmd|'/C calc'!A0",
    "@SUM(1+1)*cmd|'/C calc'!A0",
    "\t=1+1",
    "\r=1+1",
    "＝1+1",
    "'=1+1",
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "\"><svg onload=alert(1)>",
    "{{ 1 + 1 }}{% include \"/etc/passwd\" %}",
    "[link](javascript:alert(1))",
    "]]>",
    "\"\"\"\nprivate = []\n\"\"\"",
    "'''\n[rows]\n'''",
    "\\u0000\\",
    "\u{1b}[2J\u{1b}]0;title\u{7}",
    "abc\u{202e}fed\u{2066}x",
    "e\u{301}\u{301}\u{301}\u{301}",
    "\u{feff}bom",
    "../../x",
    "..\\..\\x",
    "C:\\Windows\\x",
    "/etc/passwd",
    "~/.ssh/id_rsa",
    "$(touch x)`touch x`",
    "%s%n%00",
];

fn quoted(cell: &str) -> String {
    format!("\"{}\"", cell.replace('"', "\"\""))
}

/// A table with each of these texts under each of the usual headings.
fn of_cells(cells: &[&str]) -> String {
    let headings = [
        "Accession number",
        "Title",
        "Artist",
        "Date",
        "Medium",
        "Dimensions",
        "Edition",
        "State",
        "Catalogue raisonné",
        "Credit line",
        "Inscription",
        "File name",
        "URL",
        "Remarks",
    ];
    let mut text = headings.join(",") + "\n";
    for at in 0..cells.len() {
        let row: Vec<String> = (0..headings.len())
            .map(|column| quoted(cells[(at + column) % cells.len()]))
            .collect();
        let _ = writeln!(text, "{}", row.join(","));
    }
    text
}

#[test]
fn cells_that_programs_would_carry_out_stay_texts() {
    let catalogue = is_read("cells.csv", of_cells(CELLS).as_bytes());

    // A spreadsheet program takes a cell for a formula by its first character.
    let report = inbox_text(catalogue.path(), "harbour", "report.csv");
    let tables = keyblock::exchange::intake::open::tables(report.as_bytes()).unwrap();
    for row in tables[0].rows() {
        for cell in row.cells() {
            let first = cell.chars().next();
            let is_formula = first.is_some_and(|c| "=+-@\t\r".contains(c));
            assert!(!is_formula, "{cell:?}");
        }
    }
    let page = inbox_text(catalogue.path(), "harbour", "report.html").to_lowercase();
    for harm in [
        "<script",
        "<img",
        "<svg onload",
        "<iframe",
        "href=\"javascript:",
        "onerror=\"",
        "href=\"http",
    ] {
        assert!(!page.contains(harm), "report.html has {harm}");
    }
    assert!(page.contains("&lt;script"));
}

#[test]
fn the_terminal_is_sent_no_control_characters_of_cells() {
    let catalogue = lay_down(&[CATALOGUE]);
    let file = catalogue.path().join("cells.csv");
    fs::write(&file, of_cells(CELLS)).unwrap();
    let ran = keyblock(&["intake", text(&file), "--in", text(catalogue.path())]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told = ran.out + &ran.err;
    let harm = |c: &char| (c.is_control() && *c != '\n') || ('\u{202a}'..='\u{202e}').contains(c);
    assert_eq!(told.chars().find(harm), None, "{told}");
}

#[test]
fn accession_numbers_that_are_paths_name_no_file() {
    let list = "Accession number,Title,Medium,File name\n../../x,The Ferry,Woodcut,../../../etc/passwd\n\
                /etc/passwd,The Ferry,Woodcut,/etc/passwd\n";
    let catalogue = is_read("paths.csv", list.as_bytes());
    let parent = catalogue.path().join("records");
    assert!(!parent.join("x").exists() && !catalogue.path().join("x").exists());
}

#[test]
fn a_sheet_with_formulas_merged_cells_and_empty_rows_is_told_of() {
    let cell =
        |at: &str, text: &str| format!("<c r=\"{at}\" t=\"inlineStr\"><is><t>{text}</t></is></c>");
    let rows = format!(
        "<row r=\"1\">{}{}{}</row><row r=\"2\"/><row r=\"3\">{}{}<c r=\"C3\"><f>cmd|'/C calc'!A0</f></c></row>\
         <row r=\"9\">{}{}<c r=\"C9\"><f>HYPERLINK(\"https://evil.example\")</f><v>12</v></c></row>",
        cell("A1", "Accession number"),
        cell("B1", "Title"),
        cell("C1", "Remarks"),
        cell("A3", "HM 1930.1"),
        cell("B3", "The Ferry"),
        cell("A9", "HM 1930.2"),
        cell("B9", "The Ferry"),
    );
    let sheet = format!(
        "<worksheet><sheetData>{rows}</sheetData><mergeCells count=\"2\"><mergeCell ref=\"B3:B9\"/>\
         <mergeCell ref=\"A1:XFD1048576\"/></mergeCells></worksheet>"
    );
    let catalogue = is_read("list.xlsx", &workbook(packed(SHEET, sheet.as_bytes())));
    let page = inbox_text(catalogue.path(), "harbour", "report.html");
    assert!(
        page.contains("formula") && page.contains("merged"),
        "{page}"
    );
    assert!(!page.contains("evil.example"));
}

#[test]
fn tables_of_odd_shapes_are_read() {
    // 300 columns; headings that repeat, are empty, or mean something in TOML.
    let mut headings: Vec<String> = [
        "Accession number",
        "Title",
        "Title",
        "title",
        "TITLE",
        "",
        "",
        "[[columns]]",
        "is = 1",
        "private",
        "\"\"\"",
        "'''",
        "#",
        "a.b",
        "inf",
        "nan",
        "true",
        "1979-05-27",
        "__proto__",
        "=1+1",
        "\u{202e}Titel",
        "row",
        "further",
    ]
    .map(str::to_owned)
    .to_vec();
    headings.extend((headings.len()..300).map(|n| format!("Column {n}")));
    let mut text = String::new();
    for row in [
        &headings,
        &(0..300)
            .map(|n| format!("cell {n}"))
            .collect::<Vec<String>>(),
    ] {
        let cells: Vec<String> = row.iter().map(|cell| quoted(cell)).collect();
        let _ = writeln!(text, "{}", cells.join(";"));
    }
    let catalogue = is_read("wide.csv", text.as_bytes());
    let columns = inbox_text(catalogue.path(), "harbour", "columns.toml");
    assert!(columns.contains("Column 299"));

    // No heading; one column; rows longer than the heading; only a heading.
    is_read("list.csv", b"1,2,3\n4,5,6\n");
    is_read("list.csv", b"Title\nThe Ferry\nNight Quay\n");
    is_read("list.csv", b"Title\nThe Ferry,1912,Woodcut\n");
    is_read("list.csv", b"Title,Date,Medium\n");
}

#[test]
fn a_cell_of_a_megabyte_is_read_or_refused() {
    let catalogue = lay_down(&[CATALOGUE]);
    for long in [
        "x".repeat(1 << 20),
        "1 ".repeat(1 << 19),
        "(".repeat(1 << 20),
        "1912, ".repeat(1 << 17),
    ] {
        for heading in [
            "Title",
            "Date",
            "Medium",
            "Dimensions",
            "Credit line",
            "Artist",
            "Edition",
            "Catalogue raisonné",
        ] {
            let list = format!(
                "Accession number,{heading}\nHM 1,{}\n",
                quoted(&long[..long.len() / 8])
            );
            let ran = intake(catalogue.path(), "long.csv", list.as_bytes(), "harbour");
            assert!(matches!(ran.code, Some(0 | 1)), "{heading}: {}", ran.err);
            let _ = fs::remove_dir_all(inbox(catalogue.path(), "harbour", ""));
        }
    }
    let list = format!("Accession number,Title\nHM 1,{}\n", "x".repeat(1 << 20));
    let ran = intake(catalogue.path(), "long.csv", list.as_bytes(), "harbour");
    assert!(matches!(ran.code, Some(0 | 1)), "{}", ran.err);
}

#[test]
fn a_catalogue_that_is_none_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let ran = intake(
        Path::new(folder.path()),
        "list.csv",
        b"Title\nThe Ferry\n",
        "harbour",
    );
    assert_eq!(ran.code, Some(2), "{}", ran.err);
}
