//! Tables as they are handed in, sound and hostile. Tests only.
//!
//! `tests/intake/` has a workbook written by openpyxl and a spreadsheet written by odfpy (PyPI), so that files are read
//! that were not written here; the others are made below.

use std::fmt::Write as _;
use std::io::Write as _;

use flate2::write::DeflateEncoder;
use flate2::{Compress, Compression, FlushCompress};

use super::*;

/// A file of an archive: its name, its packed bytes, what the directory says it unpacks to, whether it is deflated.
struct Packed {
    name: &'static str,
    packed: Vec<u8>,
    says: u32,
}

fn deflated(name: &'static str, text: &str) -> Packed {
    let mut encoder = DeflateEncoder::new(Vec::new(), Compression::fast());
    encoder.write_all(text.as_bytes()).unwrap();
    Packed {
        name,
        packed: encoder.finish().unwrap(),
        says: u32::try_from(text.len()).unwrap(),
    }
}

/// An archive (APPNOTE 6.3): local files, the directory, its end.
fn archive(files: &[Packed]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut directory = Vec::new();
    for file in files {
        let at = u32::try_from(bytes.len()).unwrap();
        let packed = u32::try_from(file.packed.len()).unwrap();
        let name = u16::try_from(file.name.len()).unwrap();
        let mut common = Vec::new();
        for part in [20_u16, 0, 8, 0, 0] {
            common.extend(part.to_le_bytes());
        }
        for part in [0_u32, packed, file.says] {
            common.extend(part.to_le_bytes());
        }
        common.extend(name.to_le_bytes());
        common.extend(0_u16.to_le_bytes());
        bytes.extend(b"PK\x03\x04");
        bytes.extend(&common);
        bytes.extend(file.name.as_bytes());
        bytes.extend(&file.packed);
        directory.extend(b"PK\x01\x02");
        directory.extend(20_u16.to_le_bytes());
        directory.extend(&common);
        directory.extend([0; 10]);
        directory.extend(at.to_le_bytes());
        directory.extend(file.name.as_bytes());
    }
    let at = u32::try_from(bytes.len()).unwrap();
    let length = u32::try_from(directory.len()).unwrap();
    let count = u16::try_from(files.len()).unwrap();
    bytes.extend(directory);
    bytes.extend(b"PK\x05\x06\0\0\0\0");
    bytes.extend(count.to_le_bytes());
    bytes.extend(count.to_le_bytes());
    bytes.extend(length.to_le_bytes());
    bytes.extend(at.to_le_bytes());
    bytes.extend([0, 0]);
    bytes
}

/// A workbook of one sheet with these rows, and texts that its cells share.
fn workbook(rows: &str, shared: &str) -> Vec<u8> {
    archive(&workbook_files(rows, shared))
}

fn workbook_files(rows: &str, shared: &str) -> Vec<Packed> {
    let sheet = format!("<worksheet><sheetData>{rows}</sheetData></worksheet>");
    vec![
        deflated(
            "xl/workbook.xml",
            "<workbook xmlns:r=\"r\"><sheets><sheet name=\"Blätter\" r:id=\"rId1\"/></sheets></workbook>",
        ),
        deflated(
            "xl/_rels/workbook.xml.rels",
            "<Relationships><Relationship Id=\"rId1\" Target=\"worksheets/sheet1.xml\"/></Relationships>",
        ),
        deflated("xl/sharedStrings.xml", &format!("<sst>{shared}</sst>")),
        deflated("xl/worksheets/sheet1.xml", &sheet),
    ]
}

fn spreadsheet(table: &str) -> Vec<u8> {
    let content = format!(
        "<o:document-content xmlns:o=\"o\" xmlns:table=\"t\" xmlns:text=\"x\"><o:body><o:spreadsheet>\
         <table:table table:name=\"Sheets\">{table}</table:table></o:spreadsheet></o:body></o:document-content>"
    );
    archive(&[deflated("content.xml", &content)])
}

/// A table in lines: its heading, then each row with its number.
fn told(table: &Table) -> Vec<String> {
    let heading: Vec<&str> = table.heading().collect();
    let mut lines = vec![heading.join("|")];
    for row in table.rows() {
        let cells: Vec<&str> = row.cells().collect();
        lines.push(format!("{}: {}", row.number(), cells.join("|")));
    }
    lines
}

fn one(bytes: &[u8]) -> Table {
    let mut tables = tables(bytes).unwrap();
    assert_eq!(tables.len(), 1);
    tables.remove(0)
}

#[test]
fn comma_separated_values_are_read_with_the_rows_of_a_spreadsheet_program() {
    // Quoted cells with a comma, a line break and a doubled quotation mark: RFC 4180, section 2.
    let table =
        one(b"Inv.,Title,Size\r\n1,\"Lock, the\nsecond\",\"9\"\" x 7\"\"\"\r\n\r\n3,=1+1,-\r\n");
    assert_eq!(
        told(&table),
        [
            "Inv.|Title|Size",
            "2: 1|Lock, the\nsecond|9\" x 7\"",
            "4: 3|=1+1|-"
        ]
    );
    assert_eq!(table.notes, [TableNote::EmptyRows { count: 1 }]);
}

#[test]
fn every_delimiter_is_found() {
    for text in [
        "Inv.;Grösse\n1;24,1 x 17\n2;30,5 x 20\n",
        "Inv.\tGrösse\n1\t24,1 x 17\n2\t30,5 x 20\n",
        "Inv.|Grösse\n1|24,1 x 17\n2|30,5 x 20\n",
        "sep=;\nInv.;Grösse\n1;24,1 x 17\n2;30,5 x 20\n",
    ] {
        let table = one(text.as_bytes());
        let cells: Vec<&str> = table.rows().map(|row| row.cell(1)).collect();
        assert_eq!(cells, ["24,1 x 17", "30,5 x 20"], "{text}");
    }
}

#[test]
fn windows_1252_is_read_and_told() {
    let table = one(b"Inv.;Gr\xf6sse\n1;24 \x96 25 cm\n");
    assert_eq!(told(&table), ["Inv.|Grösse", "2: 1|24 – 25 cm"]);
    assert_eq!(table.notes, [TableNote::ReadAs("Windows-1252")]);
}

#[test]
fn ragged_rows_and_open_quotes_are_told_and_nothing_is_lost() {
    let table = one(b"a,b\n1\n1,2,3\n4,5\n");
    assert_eq!(told(&table), ["a|b|", "2: 1", "3: 1|2|3", "4: 4|5"]);
    let ragged = TableNote::Ragged {
        count: 2,
        rows: vec![2, 3],
    };
    assert!(table.notes.contains(&ragged), "{:?}", table.notes);
    let table = one(b"a,b\n1,2\n3,\"open\n5,6\n");
    assert!(table.notes.contains(&TableNote::OpenQuote { row: 3 }));
    assert_eq!(told(&table), ["a|b", "2: 1|2", "3: 3|open\n5,6"]);
}

#[test]
fn the_heading_is_found_below_a_title_and_its_faults_are_told() {
    let table =
        one(b"Prints of the Harbour Museum,,\n,,\nInv.,Title,Title\n1,Lock,Mill\n2,Weir,Quay\n");
    assert_eq!(table.heading_row(), 3);
    assert_eq!(told(&table)[1..], ["4: 1|Lock|Mill", "5: 2|Weir|Quay"]);
    let above = TableNote::AboveHeading {
        texts: vec![(1, "Prints of the Harbour Museum".to_owned())],
    };
    let same = TableNote::SameHeading {
        first: 1,
        second: 2,
    };
    assert_eq!(table.notes, [above, same]);
}

#[test]
fn a_workbook_is_read_with_shared_texts_dates_and_stored_values() {
    let rows = "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"C1\" t=\"inlineStr\"><is><t>Maße</t></is></c></row>\
                <row r=\"3\"><c r=\"A3\"><v>12</v></c><c r=\"B3\"><f>1+1</f><v>24.100000000000001</v></c>\
                <c r=\"C3\" t=\"str\"><v>a &lt; b &#252;</v></c></row>\
                <row r=\"4\"><c t=\"b\"><v>1</v></c><c t=\"e\"><v>#REF!</v></c></row>";
    let shared = "<si><r><t>Inv</t></r><r><t>.-Nr.</t></r><rPh><t>reading</t></rPh></si>";
    let table = one(&workbook(rows, shared));
    assert_eq!(table.name, "Blätter");
    assert_eq!(
        told(&table),
        ["Inv.-Nr.||Maße", "3: 12|24.1|a < b ü", "4: TRUE|#REF!"]
    );
    let first = CellPlace { row: 3, column: 1 };
    assert!(
        table
            .notes
            .contains(&TableNote::Formulas { count: 1, first })
    );
    let first = CellPlace { row: 4, column: 1 };
    assert!(
        table
            .notes
            .contains(&TableNote::ErrorValues { count: 1, first })
    );
    assert!(table.notes.contains(&TableNote::NoHeading { column: 1 }));
    assert!(table.notes.contains(&TableNote::EmptyRows { count: 1 }));
}

#[test]
fn merged_cells_are_told() {
    let rows = "<row r=\"1\"><c r=\"A1\" t=\"str\"><v>a</v></c><c r=\"B1\" t=\"str\"><v>b</v></c></row>\
                <row r=\"2\"><c r=\"A2\" t=\"str\"><v>c</v></c></row></sheetData>\
                <mergeCells><mergeCell ref=\"A2:B3\"/></mergeCells><sheetData>";
    let table = one(&workbook(rows, ""));
    let [TableNote::Merged { first, last }] = &table.notes[..] else {
        panic!("{:?}", table.notes);
    };
    assert_eq!(format!("{first}:{last}"), "A2:B3");
}

#[test]
fn a_spreadsheet_is_read_with_repeats_and_stored_values() {
    let table = one(&spreadsheet(
        "<table:table-row><table:table-cell><text:p>Inv.</text:p></table:table-cell>\
         <table:table-cell><text:p>Size</text:p></table:table-cell></table:table-row>\
         <table:table-row table:number-rows-repeated=\"2\"><table:table-cell office:value-type=\"float\" \
         office:value=\"24.1\"><text:p>24,10</text:p></table:table-cell>\
         <table:table-cell><text:p>a<text:s text:c=\"2\"/>b</text:p><text:p>c</text:p>\
         <office:annotation><text:p>a comment</text:p></office:annotation></table:table-cell>\
         <table:table-cell table:number-columns-repeated=\"16382\"/></table:table-row>\
         <table:table-row table:number-rows-repeated=\"1048000\"><table:table-cell/></table:table-row>",
    ));
    assert_eq!(
        told(&table),
        ["Inv.|Size", "2: 24.1|a  b\nc", "3: 24.1|a  b\nc"]
    );
}

/// Files that other programs wrote: the same rows, with a formula, a merged range, dates and German headings.
#[test]
fn files_of_other_programs_are_read() {
    let workbook = one(include_bytes!("../../../../tests/intake/openpyxl.xlsx"));
    let spreadsheet = one(include_bytes!("../../../../tests/intake/odfpy.ods"));
    let rows = [
        "Inv.-Nr.|Titel|Höhe (cm)|Breite (cm)|Datierung|Erworben",
        "2: HM 1970.12|Schleuse \"am Kai\"|24.1|17.8|um 1912|1970-03-01",
        "3: HM 1971.3|Wehr & Mühle|30|20.5|1925|1971-12-24",
        "5: HM 1972.1|[Ohne Titel]|9.5|7",
    ];
    assert_eq!(told(&workbook), rows);
    assert_eq!(told(&spreadsheet), rows);
    let merged = |notes: &[TableNote]| {
        notes
            .iter()
            .any(|note| matches!(note, TableNote::Merged { first, .. } if first.row == 5))
    };
    assert!(merged(&workbook.notes) && merged(&spreadsheet.notes));
    let formulas = |notes: &[TableNote]| {
        notes
            .iter()
            .any(|note| matches!(note, TableNote::Formulas { count: 1, .. }))
    };
    assert!(formulas(&workbook.notes));
}

/// A gigabyte of spaces in a megabyte, whether the directory of the archive says so or lies.
#[test]
fn an_archive_that_unpacks_to_a_gigabyte_is_refused() {
    let mut files = workbook_files("<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>", "");
    let mut bomb = Vec::new();
    let chunk = vec![b' '; 1 << 20];
    let mut packed = Vec::with_capacity(1 << 16);
    let mut compress = Compress::new(Compression::best(), false);
    compress
        .compress_vec(&chunk, &mut packed, FlushCompress::Sync)
        .unwrap();
    // A block that ends on a byte and refers to nothing before it may be repeated.
    for _ in 0..1024 {
        bomb.extend(&packed);
    }
    bomb.extend([3, 0]);
    assert!(bomb.len() < 4 << 20);
    files[3].packed = bomb;
    files[3].says = 1 << 30;
    let refused = tables(&archive(&files)).unwrap_err();
    assert_eq!(
        refused.message(),
        "the unpacked archive is larger than the 536870912 bytes that are read"
    );
    files[3].says = 1_000;
    let refused = tables(&archive(&files)).unwrap_err();
    assert!(
        refused.message().contains("longer than it may be"),
        "{refused:?}"
    );
    // A text without an end is refused before it is held, though the total is within the limit.
    files[3].says = 500 << 20;
    let refused = tables(&archive(&files)).unwrap_err();
    assert!(
        refused.message().contains("longer than it may be"),
        "{refused:?}"
    );
}

/// Repeats of a cell and of a row: 16,384 × 1,048,576 cells from a few hundred bytes.
#[test]
fn repeats_without_bound_are_refused() {
    let refused = tables(&spreadsheet(
        "<table:table-row table:number-rows-repeated=\"1048576\"><table:table-cell \
         table:number-columns-repeated=\"16384\"><text:p>x</text:p></table:table-cell></table:table-row>",
    ));
    assert!(matches!(
        refused,
        Err(TableFault::TooLarge {
            what: "the number of cells",
            ..
        })
    ));
    let refused = tables(&workbook(
        "<row r=\"1\"><c r=\"XFE1\"><v>1</v></c></row>",
        "",
    ));
    assert!(matches!(
        refused,
        Err(TableFault::TooLarge {
            what: "the number of columns",
            ..
        })
    ));
    let refused = tables(&workbook(
        "<row r=\"1048577\"><c r=\"A1048577\"><v>1</v></c></row>",
        "",
    ));
    assert!(matches!(
        refused,
        Err(TableFault::TooLarge {
            what: "the number of rows",
            ..
        })
    ));
}

/// Entities that grow (a "billion laughs") or name a file are never resolved: a document that declares any is refused.
#[test]
fn declared_entities_are_refused() {
    let mut files = workbook_files("", "");
    files[3] = deflated(
        "xl/worksheets/sheet1.xml",
        "<!DOCTYPE w [<!ENTITY f SYSTEM \"file:///etc/passwd\">]><worksheet><sheetData><row r=\"1\">\
         <c r=\"A1\" t=\"str\"><v>&f;</v></c></row></sheetData></worksheet>",
    );
    let refused = tables(&archive(&files)).unwrap_err();
    assert!(matches!(refused, TableFault::DeclaresEntities { .. }));
}

#[test]
fn other_files_are_refused_with_what_to_do() {
    for (bytes, message) in [
        (&b""[..], "the file has no cells and no records"),
        (b"\n\n", "the file has no cells and no records"),
        (b"%PDF-1.7", "the file is a PDF document, which is not read"),
        (
            b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
            "the file is an old or an encrypted workbook, which is not read",
        ),
        (
            b"\x89PNG\0\0",
            "the file is no text and no spreadsheet, which is not read",
        ),
        (
            b"PK\x03\x04",
            "the file cannot be read: the list of files in the archive is broken",
        ),
    ] {
        let refused = tables(bytes).unwrap_err();
        assert_eq!(refused.message(), message);
        assert!(!refused.help().is_empty());
    }
}

/// 50,000 rows of 20 columns: every cell is kept, in some bytes more than its text.
#[test]
fn a_large_table_is_read_whole() {
    let mut text = String::new();
    for row in 0..50_000 {
        for column in 0..20 {
            write!(text, "{row}.{column},").unwrap();
        }
        text.push('\n');
    }
    let table = one(text.as_bytes());
    assert_eq!(table.rows().len(), 49_999);
    let last = table.rows().last().unwrap();
    assert_eq!(
        (last.number(), last.cell(19), last.cell(20)),
        (50_000, "49999.19", "")
    );
}

mod any_bytes {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

        /// A sound workbook with some bytes changed, and any bytes: a table or a fault, never a panic.
        #[test]
        fn broken_files_are_refused_or_read(
            changes in proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8),
            bytes in proptest::collection::vec(any::<u8>(), 0..300),
        ) {
            let _ = tables(&bytes);
            let rows = "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c></row>";
            for mut file in [
                workbook(rows, "<si><t>a</t></si>"),
                spreadsheet("<table:table-row><table:table-cell><text:p>a</text:p></table:table-cell></table:table-row>"),
                b"Inv.;Title\n1;\"Lock\"\n".to_vec(),
            ] {
                for (at, byte) in &changes {
                    let at = at.index(file.len());
                    file[at] = *byte;
                }
                let _ = tables(&file);
            }
        }

        /// Cells written as CSV are read back, each in its row and column. They have no semicolons: where cells have more
        /// of them than rows have commas, either could divide the cells.
        #[test]
        fn cells_come_back_as_written(
            cells in proptest::collection::vec(proptest::collection::vec("[a-zäß0-9 ,\"\n=+-]{0,9}", 3), 1..9)
        ) {
            let mut writer = csv::Writer::from_writer(Vec::new());
            writer.write_record(["Inv.", "Title", "Size"]).unwrap();
            for row in &cells {
                writer.write_record(row).unwrap();
            }
            let table = one(&writer.into_inner().unwrap());
            let read: Vec<Vec<&str>> = table.rows().map(|row| (0..3).map(|c| row.cell(c)).collect()).collect();
            let written: Vec<Vec<&str>> = cells
                .iter()
                .map(|row| row.iter().map(|cell| cell.trim()).collect::<Vec<_>>())
                .filter(|row| row.iter().any(|cell| !cell.is_empty()))
                .collect();
            prop_assert_eq!(read, written);
        }
    }
}
