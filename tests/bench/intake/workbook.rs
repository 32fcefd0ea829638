//! A table as a workbook (Office Open XML, ECMA-376).

use std::collections::HashMap;
use std::fmt::Write as _;

use super::archive::{SHEET, archive, packed};

/// The rows of a CSV as a workbook, with the texts shared and the numbers as numbers, as spreadsheet programs write them.
pub fn workbook(csv: &str) -> Vec<u8> {
    let mut places: HashMap<String, usize> = HashMap::new();
    let (mut shared, mut sheet) = (
        String::from("<sst>"),
        String::from("<worksheet><sheetData>"),
    );
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(csv.as_bytes());
    for (number, record) in reader.records().enumerate() {
        let _ = write!(sheet, "<row r=\"{}\">", number + 1);
        for (column, cell) in record.unwrap().iter().enumerate() {
            let place = format!("{}{}", char::from(b'A' + column as u8), number + 1);
            if cell.is_empty() {
                continue;
            }
            if cell.bytes().all(|b| b.is_ascii_digit()) {
                let _ = write!(sheet, "<c r=\"{place}\"><v>{cell}</v></c>");
                continue;
            }
            let next = places.len();
            let at = *places.entry(cell.to_owned()).or_insert_with(|| {
                let text = cell.replace('&', "&amp;").replace('<', "&lt;");
                let _ = write!(shared, "<si><t>{text}</t></si>");
                next
            });
            let _ = write!(sheet, "<c r=\"{place}\" t=\"s\"><v>{at}</v></c>");
        }
        sheet.push_str("</row>");
    }
    sheet.push_str("</sheetData></worksheet>");
    shared.push_str("</sst>");
    archive(&[
        packed(
            "xl/workbook.xml",
            b"<workbook xmlns:r=\"r\"><sheets><sheet name=\"List\" r:id=\"rId1\"/></sheets></workbook>",
        ),
        packed(
            "xl/_rels/workbook.xml.rels",
            b"<Relationships><Relationship Id=\"rId1\" Type=\"worksheet\" Target=\"worksheets/sheet1.xml\"/>\
              <Relationship Id=\"rId2\" Type=\"sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>",
        ),
        packed("xl/sharedStrings.xml", shared.as_bytes()),
        packed(SHEET, sheet.as_bytes()),
    ])
}
