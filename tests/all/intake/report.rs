//! The report: the page, the table, the text.

use html5gum::{Token, Tokenizer};

use super::{catalogue, inbox, museum};
use crate::markup::tags;

/// The names of the elements of a page, as a browser's tokenizer reads it, and its text.
fn read(page: &str) -> (Vec<String>, String) {
    let (mut names, mut shown) = (Vec::new(), String::new());
    for token in Tokenizer::new(page).flatten() {
        match token {
            Token::StartTag(tag) => {
                names.push(String::from_utf8_lossy(&tag.name).into_owned());
            }
            Token::String(text) => shown.push_str(&String::from_utf8_lossy(&text)),
            _ => {}
        }
    }
    (names, shown)
}

#[test]
fn the_page_holds_what_was_not_understood_and_runs_nothing() {
    let folder = catalogue();
    museum(folder.path(), &[]);
    let page = inbox(folder.path(), "report.html");
    let (names, shown) = read(&page);
    assert!(!names.iter().any(|name| name == "script"), "{names:?}");
    assert!(shown.contains("<script>alert(1)</script> & Co"));
    assert!(shown.contains("gerahmt") && shown.contains("kurz vor Mittag"));
    let (tags, _) = tags(&page);
    let html = tags.iter().find(|tag| tag.name == "html").unwrap();
    assert_eq!(html.value("lang"), Some("en"));
    // Nothing is loaded and nothing leads away.
    for tag in &tags {
        for (name, value) in &tag.attributes {
            assert!(!name.starts_with("on"), "{tag:?}");
            assert!(
                !["src", "href", "srcset", "action"].contains(&name.as_str()),
                "{value}"
            );
        }
    }
    let policy = tags
        .iter()
        .find_map(|tag| tag.value("content").filter(|c| c.contains("-src")));
    assert!(policy.unwrap().starts_with("default-src 'none'"));
}

#[test]
fn what_a_record_keeps_private_stands_in_neither_page_nor_table() {
    let folder = catalogue();
    let ran = museum(folder.path(), &["--json"]);
    // Row 4 has the numbers of 1.2, which keeps them private. The editors are told.
    let told: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(
        told["rows"][2]["may_be"][0]["impression"], "1.2",
        "{}",
        ran.out
    );
    for file in ["report.html", "report.csv"] {
        let report = inbox(folder.path(), file);
        assert!(!report.contains("Hidden Owner"), "{file}");
        assert!(!report.contains("1.2: "), "{file}");
    }
}

#[test]
fn no_cell_of_the_table_is_a_formula() {
    let folder = catalogue();
    museum(folder.path(), &[]);
    let table = inbox(folder.path(), "report.csv");
    // A byte order mark, so that spreadsheet programs read UTF-8 (Unicode, "FAQ, UTF-8 and BOM").
    let table = table.strip_prefix('\u{feff}').unwrap();
    let mut rows = csv::Reader::from_reader(table.as_bytes());
    let heads = rows.headers().unwrap().clone();
    assert_eq!(heads.get(0), Some("row"));
    let rows: Vec<csv::StringRecord> = rows.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), 4);
    for row in &rows {
        for cell in row {
            assert!(
                !cell.starts_with(['=', '+', '-', '@', '\t', '\r']),
                "{cell}"
            );
        }
    }
    let numbers: Vec<&str> = rows.iter().map(|row| &row[0]).collect();
    assert_eq!(numbers, ["2", "3", "4", "5"]);
}

#[test]
fn the_text_has_a_line_for_each_column_and_says_what_to_do() {
    let folder = catalogue();
    let ran = museum(folder.path(), &[]);
    let lines: Vec<&str> = ran.out.lines().collect();
    assert_eq!(lines[0], "holdings.csv: 4 rows, 9 columns");
    for line in [
        "Column       Holds                           Sure      Whole  Part  Unread  Empty  Against  Unread most often",
        "Datierung    date                            certain       3     –       1      –        –  “kurz vor Mittag”",
        "Technik      technique and material          certain       3     –       –      1        –",
        "Blattmaß     sizes                           certain       3     –       1      –        –  “gerahmt”",
        "Willem 1950  number in an earlier catalogue  probable      1     –       –      3        –",
        "It is in records/inbox/museum; the catalogue was not changed.",
        "Then: keyblock intake --accept museum",
    ] {
        assert!(lines.contains(&line), "{line}\n{}", ran.out);
    }
    assert!(
        lines
            .iter()
            .any(|line| line.starts_with("Rows     3 new, 1 corrected"))
    );
    assert!(
        lines
            .iter()
            .any(|line| line.starts_with("Designs  2 in the catalogue"))
    );
}
