//! A sheet: headings with notes, columns with lists to choose from, rows of text.
//!
//! Out: the XML of the sheet, its elements in the order that the schema asks for (ECMA-376, part 1, 18.3.1.99).

use super::{CELL_UNITS, MAIN, RELATIONS};
use crate::exchange::xml::Xml;

/// How a sheet looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::exchange) enum Look {
    /// A table to fill in: its headings stay in sight, and it is printed on A4 across.
    Form,
    /// Text to be read, one paragraph a row.
    Text,
    /// Lists to which other sheets refer.
    Lists,
}

/// A column.
#[derive(Clone, Debug, Default)]
pub(in crate::exchange) struct Column {
    /// Its heading.
    pub heading: String,
    /// What belongs there; empty: nothing is said.
    pub note: String,
    /// Its width in figures.
    pub width: u8,
    /// What can be chosen in it.
    pub choices: Option<Choices>,
}

/// What can be chosen in a column: a formula that gives a list, the name of one or a range.
#[derive(Clone, Debug)]
pub(in crate::exchange) struct Choices {
    /// The formula.
    pub formula: String,
    /// What is said to who writes something that is not in the list; it may stand all the same.
    pub unlisted: String,
}

/// A sheet.
#[derive(Clone, Debug)]
pub(in crate::exchange) struct Sheet {
    /// How it looks.
    pub look: Look,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, below the headings.
    pub rows: Vec<Vec<String>>,
}

/// The formats of cells, by their place in the part of styles.
mod style {
    /// Text, at the top of its cell.
    pub(super) const TEXT: &str = "1";
    /// A heading.
    pub(super) const HEADING: &str = "2";
    /// A remark for programs, small and grey.
    pub(super) const QUIET: &str = "3";
}

/// The last row that has lists to choose from.
const LAST_ROW: u32 = 5_000;

impl Sheet {
    /// The part of the sheet. A form has its notes in parts of their own (`notes`).
    pub fn xml(&self) -> Vec<u8> {
        let mut xml = Xml::document();
        let spaces = [("xmlns", MAIN), ("xmlns:r", RELATIONS)];
        xml.element("worksheet", &spaces, |xml| {
            if self.look == Look::Form {
                xml.element("sheetPr", &[], |xml| {
                    xml.element("pageSetUpPr", &[("fitToPage", "1")], |_| {});
                });
            }
            self.view(xml);
            xml.element("sheetFormatPr", &[("defaultRowHeight", "15")], |_| {});
            self.widths(xml);
            xml.element("sheetData", &[], |xml| self.cells(xml));
            self.lists(xml);
            self.print(xml);
            if self.has_notes() {
                xml.element("legacyDrawing", &[("r:id", "rId1")], |_| {});
            }
        });
        xml.bytes()
    }

    /// Whether a heading has a note.
    pub fn has_notes(&self) -> bool {
        self.columns.iter().any(|column| !column.note.is_empty())
    }

    fn view(&self, xml: &mut Xml) {
        let mut attributes = vec![("workbookViewId", "0")];
        match self.look {
            Look::Form => attributes.insert(0, ("tabSelected", "1")),
            Look::Text => attributes.insert(0, ("showGridLines", "0")),
            Look::Lists => {}
        }
        xml.element("sheetViews", &[], |xml| {
            xml.element("sheetView", &attributes, |xml| {
                if self.look == Look::Form {
                    let frozen = [
                        ("xSplit", "1"),
                        ("ySplit", "1"),
                        ("topLeftCell", "B2"),
                        ("activePane", "bottomRight"),
                        ("state", "frozen"),
                    ];
                    xml.element("pane", &frozen, |_| {});
                    xml.element("selection", &[("pane", "bottomRight")], |_| {});
                }
            });
        });
    }

    /// The widths; whole columns are text, so that what is typed stays as it is.
    fn widths(&self, xml: &mut Xml) {
        xml.element("cols", &[], |xml| {
            for (column, at) in self.columns.iter().zip(1..) {
                let (at, width) = (format!("{at}"), column.width.to_string());
                let attributes = [
                    ("min", at.as_str()),
                    ("max", &at),
                    ("width", &width),
                    ("style", style::TEXT),
                    ("customWidth", "1"),
                ];
                xml.element("col", &attributes, |_| {});
            }
        });
    }

    fn cells(&self, xml: &mut Xml) {
        let headings = self.columns.iter().map(|column| column.heading.as_str());
        let first_style = match self.look {
            Look::Form => style::HEADING,
            Look::Text | Look::Lists => style::QUIET,
        };
        row(xml, 1, headings, first_style);
        for (cells, number) in self.rows.iter().zip(2..) {
            row(xml, number, cells.iter().map(String::as_str), style::TEXT);
        }
    }

    fn lists(&self, xml: &mut Xml) {
        let chosen = self.columns.iter().zip(0..);
        let chosen = chosen.filter_map(|(column, at)| Some((column.choices.as_ref()?, at)));
        let chosen: Vec<(&Choices, u32)> = chosen.collect();
        if chosen.is_empty() {
            return;
        }
        let last = u32::try_from(self.rows.len()).unwrap_or(0) + 1;
        let last = last.max(LAST_ROW);
        let count = chosen.len().to_string();
        xml.element("dataValidations", &[("count", &count)], |xml| {
            for (choices, at) in chosen {
                let range = format!("{}:{}", cell_name(at, 2), cell_name(at, last));
                let attributes = [
                    ("type", "list"),
                    // The list is no limit: what a holder writes otherwise may stand.
                    ("errorStyle", "warning"),
                    ("allowBlank", "1"),
                    ("showErrorMessage", "1"),
                    ("error", &choices.unlisted),
                    ("sqref", &range),
                ];
                xml.element("dataValidation", &attributes, |xml| {
                    xml.text("formula1", &[], &choices.formula);
                });
            }
        });
    }

    /// A4 across, for a form three pages wide.
    fn print(&self, xml: &mut Xml) {
        let margins = [
            ("left", "0.5"),
            ("right", "0.5"),
            ("top", "0.6"),
            ("bottom", "0.6"),
            ("header", "0.3"),
            ("footer", "0.3"),
        ];
        xml.element("pageMargins", &margins, |_| {});
        let (orientation, width) = match self.look {
            Look::Form => ("landscape", "3"),
            Look::Text | Look::Lists => ("portrait", "1"),
        };
        let setup = [
            ("paperSize", "9"),
            ("orientation", orientation),
            ("fitToWidth", width),
            ("fitToHeight", "0"),
        ];
        xml.element("pageSetup", &setup, |_| {});
        if self.look == Look::Form {
            xml.element("headerFooter", &[], |xml| {
                xml.text("oddFooter", &[], "&L&A&R&P / &N");
            });
        }
    }
}

fn row<'c>(xml: &mut Xml, number: u32, cells: impl Iterator<Item = &'c str>, style: &str) {
    let row = number.to_string();
    let cells = cells
        .zip(0..)
        .filter(|(text, _)| !text.is_empty() && text.encode_utf16().count() <= CELL_UNITS);
    let mut cells = cells.peekable();
    if cells.peek().is_none() {
        return;
    }
    xml.element("row", &[("r", &row)], |xml| {
        for (text, column) in cells {
            let place = cell_name(column, number);
            let attributes = [("r", place.as_str()), ("s", style), ("t", "inlineStr")];
            xml.element("c", &attributes, |xml| {
                xml.element("is", &[], |xml| {
                    xml.text("t", &[], text);
                });
            });
        }
    });
}

/// The name of a cell, by its column from 0 and its row from 1: `B12`.
pub(in crate::exchange) fn cell_name(column: u32, row: u32) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        rest -= 1;
        letters.push(char::from(b'A' + u8::try_from(rest % 26).unwrap_or(0)));
        rest /= 26;
    }
    let letters: String = letters.iter().rev().collect();
    format!("{letters}{row}")
}
