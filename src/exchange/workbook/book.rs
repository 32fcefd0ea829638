//! The parts that tie sheets together: types, relations, styles, the workbook with its names.

use super::archive::Part;
use super::notes;
use super::sheet::Sheet;
use super::{MAIN, PACKAGE, RELATIONS};
use crate::exchange::xml::Xml;

/// Whether a sheet is in sight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::exchange) enum Visibility {
    /// It is.
    Shown,
    /// It is not until a reader asks for it.
    Hidden,
}

/// A sheet as the workbook lists it; its part is `xl/worksheets/sheetN.xml`, N its place from 1.
#[derive(Clone, Debug)]
pub(in crate::exchange) struct SheetEntry {
    /// Its name: at most 31 signs, none of `[ ] : * ? / \` (from memory).
    pub name: String,
    /// Whether it is in sight.
    pub visibility: Visibility,
}

/// A name for cells, by which lists are found.
#[derive(Clone, Debug)]
pub(in crate::exchange) struct DefinedName {
    /// The name.
    pub name: String,
    /// The sheet alone for which it is, by its place from 0.
    pub of_sheet: Option<usize>,
    /// The cells: `'Lists'!$A$2:$A$9`.
    pub cells: String,
}

/// The parts that do not depend on what the sheets hold: `form` is the first sheet, whose notes are among them.
pub(in crate::exchange) fn shared_parts(form: &Sheet, author: &str, sheets: usize) -> Vec<Part> {
    vec![
        Part::packed("[Content_Types].xml", &types(sheets)),
        Part::packed(
            "_rels/.rels",
            &relations(&[("officeDocument", "xl/workbook.xml")]),
        ),
        Part::packed("xl/_rels/workbook.xml.rels", &sheet_relations(sheets)),
        Part::packed("xl/styles.xml", STYLES.as_bytes()),
        Part::packed(
            "xl/worksheets/_rels/sheet1.xml.rels",
            &relations(&[
                ("vmlDrawing", "../drawings/vmlDrawing1.vml"),
                ("comments", "../comments1.xml"),
            ]),
        ),
        Part::packed("xl/comments1.xml", &notes::texts(form, author)),
        Part::packed("xl/drawings/vmlDrawing1.vml", &notes::boxes(form)),
    ]
}

/// The part that lists the sheets and names.
pub(in crate::exchange) fn workbook_part(sheets: &[SheetEntry], names: &[DefinedName]) -> Vec<u8> {
    let mut xml = Xml::document();
    let spaces = [("xmlns", MAIN), ("xmlns:r", RELATIONS)];
    xml.element("workbook", &spaces, |xml| {
        xml.element("sheets", &[], |xml| {
            for (sheet, at) in sheets.iter().zip(1..) {
                let (id, relation) = (format!("{at}"), format!("rId{at}"));
                let mut attributes = vec![("name", sheet.name.as_str()), ("sheetId", &id)];
                if sheet.visibility == Visibility::Hidden {
                    attributes.push(("state", "hidden"));
                }
                attributes.push(("r:id", &relation));
                xml.element("sheet", &attributes, |_| {});
            }
        });
        xml.element("definedNames", &[], |xml| {
            for name in names {
                let of_sheet = name.of_sheet.map(|at| at.to_string());
                let mut attributes = vec![("name", name.name.as_str())];
                attributes.extend(of_sheet.as_deref().map(|at| ("localSheetId", at)));
                xml.text("definedName", &attributes, &name.cells);
            }
        });
    });
    xml.bytes()
}

fn types(sheets: usize) -> Vec<u8> {
    const SPREADSHEET: &str = "application/vnd.openxmlformats-officedocument.spreadsheetml";
    let mut xml = Xml::document();
    let space = "http://schemas.openxmlformats.org/package/2006/content-types";
    xml.element("Types", &[("xmlns", space)], |xml| {
        for (extension, kind) in [
            (
                "rels",
                "application/vnd.openxmlformats-package.relationships+xml",
            ),
            ("xml", "application/xml"),
            (
                "vml",
                "application/vnd.openxmlformats-officedocument.vmlDrawing",
            ),
        ] {
            let attributes = [("Extension", extension), ("ContentType", kind)];
            xml.element("Default", &attributes, |_| {});
        }
        let mut part = |name: &str, kind: &str| {
            let kind = format!("{SPREADSHEET}.{kind}+xml");
            let attributes = [("PartName", name), ("ContentType", &kind)];
            xml.element("Override", &attributes, |_| {});
        };
        part("/xl/workbook.xml", "sheet.main");
        part("/xl/styles.xml", "styles");
        part("/xl/comments1.xml", "comments");
        for at in 1..=sheets {
            part(&format!("/xl/worksheets/sheet{at}.xml"), "worksheet");
        }
    });
    xml.bytes()
}

fn sheet_relations(sheets: usize) -> Vec<u8> {
    let targets: Vec<String> = (1..=sheets)
        .map(|at| format!("worksheets/sheet{at}.xml"))
        .collect();
    let mut all: Vec<(&str, &str)> = targets
        .iter()
        .map(|to| ("worksheet", to.as_str()))
        .collect();
    all.push(("styles", "styles.xml"));
    relations(&all)
}

/// A file of relations, numbered from `rId1`.
fn relations(targets: &[(&str, &str)]) -> Vec<u8> {
    let mut xml = Xml::document();
    xml.element("Relationships", &[("xmlns", PACKAGE)], |xml| {
        for ((kind, target), at) in targets.iter().zip(1..) {
            let (id, kind) = (format!("rId{at}"), format!("{RELATIONS}/{kind}"));
            let attributes = [("Id", id.as_str()), ("Type", &kind), ("Target", target)];
            xml.element("Relationship", &attributes, |_| {});
        }
    });
    xml.bytes()
}

/// The formats of cells, in the order of `style` in `sheet`; 49 is the built-in format "text" (ECMA-376, part 1,
/// 18.8.30), the fills 0 and 1 are reserved.
const STYLES: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="3"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font><font><b/><sz val="11"/><name val="Calibri"/><family val="2"/></font><font><sz val="8"/><color rgb="FF808080"/><name val="Calibri"/><family val="2"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFEEEBE4"/><bgColor indexed="64"/></patternFill></fill></fills><borders count="2"><border><left/><right/><top/><bottom/><diagonal/></border><border><left/><right/><top/><bottom style="thin"><color rgb="FF808080"/></bottom><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf><xf numFmtId="49" fontId="1" fillId="2" borderId="1" xfId="0" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf><xf numFmtId="49" fontId="2" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>
"#;
