//! Office Open XML workbooks, XLSX (ECMA-376, part 1, chapter 18).
//!
//! Read are the sheets, the texts they share, and which formats show dates. A formula is not read: the value stored
//! beside it is. Phonetic readings of Japanese texts are left out.

use std::collections::BTreeMap;

use super::fault::TableFault;
use super::limits::{SHARED_TEXTS, TEXT_BYTES};
use super::nodes::{Node, walk};
use super::number_format::{Shown, built_in, custom, date};
use super::package::Package;
use super::sheet::{CellPlace, Table, TableNote, TableWriter, Taken};

const WORKBOOK: &str = "xl/workbook.xml";

/// A sheet as the workbook lists it.
struct Listed {
    name: String,
    path: String,
    is_hidden: bool,
}

/// The tables of a workbook.
///
/// # Errors
/// A part that is damaged or too large.
pub(super) fn tables(package: &Package<'_>) -> Result<Vec<Table>, TableFault> {
    let (sheets, is_from_1904) = workbook(package)?;
    let shared = shared_texts(package)?;
    let formats = formats(package)?;
    let mut tables = Vec::new();
    let mut taken = Taken::default();
    for listed in sheets {
        if !package.has(&listed.path) {
            continue;
        }
        let mut writer = TableWriter::new(&listed.name, taken);
        if listed.is_hidden {
            writer.note(TableNote::Hidden);
        }
        let values = Values {
            shared: &shared,
            formats: &formats,
            is_from_1904,
        };
        sheet(package, &listed.path, &values, &mut writer)?;
        let (table, now) = writer.finish();
        taken = now;
        tables.extend(table);
    }
    Ok(tables)
}

fn workbook(package: &Package<'_>) -> Result<(Vec<Listed>, bool), TableFault> {
    let mut targets: BTreeMap<String, String> = BTreeMap::new();
    let relations = "xl/_rels/workbook.xml.rels";
    walk(package.file(relations)?, relations, |node| {
        if let Node::Open(element) = node
            && element.name == "Relationship"
            && let (Some(id), Some(target)) = (element.attribute("Id"), element.attribute("Target"))
        {
            let path = match target.strip_prefix('/') {
                Some(absolute) => absolute.to_owned(),
                None => format!("xl/{target}"),
            };
            targets.insert(id, path);
        }
        Ok(())
    })?;
    let mut sheets = Vec::new();
    let mut is_from_1904 = false;
    walk(package.file(WORKBOOK)?, WORKBOOK, |node| {
        if let Node::Open(element) = node {
            match element.name {
                "workbookPr" => {
                    let value = element.attribute("date1904");
                    is_from_1904 = value.is_some_and(|v| v == "1" || v == "true");
                }
                "sheet" => {
                    let path = element
                        .attribute("id")
                        .and_then(|id| targets.get(&id).cloned());
                    if let Some(path) = path {
                        sheets.push(Listed {
                            name: element.attribute("name").unwrap_or_default(),
                            path,
                            is_hidden: element.attribute("state").is_some_and(|s| s != "visible"),
                        });
                    }
                }
                _ => {}
            }
        }
        Ok(())
    })?;
    Ok((sheets, is_from_1904))
}

/// The texts that cells share: one text, and where each ends.
#[derive(Default)]
struct SharedTexts {
    text: String,
    ends: Vec<u32>,
}

impl SharedTexts {
    fn get(&self, index: usize) -> Option<&str> {
        let end = *self.ends.get(index)? as usize;
        let start = match index.checked_sub(1) {
            Some(before) => self.ends[before] as usize,
            None => 0,
        };
        self.text.get(start..end)
    }
}

fn shared_texts(package: &Package<'_>) -> Result<SharedTexts, TableFault> {
    let path = "xl/sharedStrings.xml";
    let mut shared = SharedTexts::default();
    if !package.has(path) {
        return Ok(shared);
    }
    let mut is_text = false;
    let mut phonetic = 0_u32;
    walk(package.file(path)?, path, |node| {
        match node {
            Node::Open(element) => match element.name {
                "t" => is_text = true,
                "rPh" => phonetic += 1,
                _ => {}
            },
            Node::Close(name) => match name {
                "t" => is_text = false,
                "rPh" => phonetic = phonetic.saturating_sub(1),
                "si" => {
                    if shared.ends.len() as u64 >= SHARED_TEXTS {
                        return Err(TableFault::TooLarge {
                            what: "the number of different texts",
                            limit: SHARED_TEXTS,
                            unit: "texts",
                        });
                    }
                    let end = u32::try_from(shared.text.len()).unwrap_or(u32::MAX);
                    shared.ends.push(end);
                }
                _ => {}
            },
            Node::Text(text) => {
                if is_text && phonetic == 0 {
                    if (shared.text.len() + text.len()) as u64 > TEXT_BYTES {
                        return Err(TableFault::TooLarge {
                            what: "the text of all cells",
                            limit: TEXT_BYTES,
                            unit: "bytes",
                        });
                    }
                    shared.text.push_str(text);
                }
            }
        }
        Ok(())
    })?;
    Ok(shared)
}

/// How each format of cells shows numbers.
fn formats(package: &Package<'_>) -> Result<Vec<Shown>, TableFault> {
    let path = "xl/styles.xml";
    let mut customs: BTreeMap<u32, Shown> = BTreeMap::new();
    let mut formats = Vec::new();
    if !package.has(path) {
        return Ok(formats);
    }
    let mut is_of_cells = false;
    walk(package.file(path)?, path, |node| {
        match node {
            Node::Open(element) => match element.name {
                "numFmt" => {
                    if let (Some(id), Some(code)) =
                        (element.number("numFmtId"), element.attribute("formatCode"))
                    {
                        customs.insert(id, custom(&code));
                    }
                }
                "cellXfs" => is_of_cells = true,
                "xf" if is_of_cells && formats.len() < 100_000 => {
                    let id = element.number("numFmtId").unwrap_or(0);
                    let shown = customs.get(&id).copied().or_else(|| built_in(id));
                    formats.push(shown.unwrap_or_default());
                }
                _ => {}
            },
            Node::Close("cellXfs") => is_of_cells = false,
            _ => {}
        }
        Ok(())
    })?;
    Ok(formats)
}

/// What gives stored values their text.
struct Values<'v> {
    shared: &'v SharedTexts,
    formats: &'v [Shown],
    is_from_1904: bool,
}

/// A cell that is being read.
#[derive(Default)]
struct OpenCell {
    column: u32,
    kind: String,
    format: usize,
    value: String,
    is_value: bool,
    phonetic: u32,
}

fn sheet(
    package: &Package<'_>,
    path: &str,
    values: &Values<'_>,
    writer: &mut TableWriter,
) -> Result<(), TableFault> {
    let mut cell: Option<OpenCell> = None;
    let mut next_column = 0;
    let mut merged = 0;
    walk(package.file(path)?, path, |node| {
        match node {
            Node::Open(element) => match element.name {
                "row" => {
                    let following = writer.last_row().unwrap_or(0) + 1;
                    writer.row(element.number("r").unwrap_or(following))?;
                    next_column = 0;
                }
                "c" => {
                    let place = element.attribute("r");
                    let column = place.and_then(|r| column_of(&r)).unwrap_or(next_column);
                    next_column = column.saturating_add(1);
                    cell = Some(OpenCell {
                        column,
                        kind: element.attribute("t").unwrap_or_default(),
                        format: element.number("s").unwrap_or(0) as usize,
                        ..OpenCell::default()
                    });
                }
                "v" | "t" => {
                    if let Some(cell) = &mut cell {
                        cell.is_value = true;
                    }
                }
                "rPh" => {
                    if let Some(cell) = &mut cell {
                        cell.phonetic += 1;
                    }
                }
                "f" => {
                    if let Some(cell) = &cell {
                        writer.formula(cell.column);
                    }
                }
                "mergeCell" => {
                    if let Some(note) = element.attribute("ref").and_then(|r| merged_note(&r)) {
                        merged += 1;
                        if merged <= 1_000 {
                            writer.note(note);
                        }
                    }
                }
                _ => {}
            },
            Node::Text(text) => {
                if let Some(cell) = cell.as_mut().filter(|c| c.is_value && c.phonetic == 0) {
                    cell.value.push_str(text);
                }
            }
            Node::Close(name) => match name {
                "v" | "t" => {
                    if let Some(cell) = &mut cell {
                        cell.is_value = false;
                    }
                }
                "rPh" => {
                    if let Some(cell) = &mut cell {
                        cell.phonetic = cell.phonetic.saturating_sub(1);
                    }
                }
                "c" => {
                    if let Some(cell) = cell.take() {
                        if cell.kind == "e" {
                            writer.error(cell.column);
                        }
                        let text = values.text(&cell);
                        writer.cell(cell.column, text.as_deref().unwrap_or(&cell.value))?;
                    }
                }
                _ => {}
            },
        }
        Ok(())
    })
}

impl Values<'_> {
    /// The text of a cell where it is not the stored value itself.
    fn text(&self, cell: &OpenCell) -> Option<String> {
        match cell.kind.as_str() {
            "s" => {
                let index = cell.value.trim().parse().ok()?;
                Some(self.shared.get(index).unwrap_or_default().to_owned())
            }
            "b" => Some(
                if cell.value.trim() == "1" {
                    "TRUE"
                } else {
                    "FALSE"
                }
                .to_owned(),
            ),
            "" | "n" => {
                let number: f64 = cell.value.trim().parse().ok()?;
                let shown = self.formats.get(cell.format).copied().unwrap_or_default();
                // Written the shortest way that is the same number: 24.100000000000001 is 24.1.
                date(number, shown, self.is_from_1904).or_else(|| Some(number.to_string()))
            }
            _ => None,
        }
    }
}

/// The column of `B12`, from 0.
fn column_of(place: &str) -> Option<u32> {
    Some(place_of(place)?.column)
}

fn place_of(place: &str) -> Option<CellPlace> {
    let letters = place.bytes().take_while(u8::is_ascii_alphabetic).count();
    let (letters, row) = place.split_at(letters);
    if letters.is_empty() || letters.len() > 3 {
        return None;
    }
    let column = letters.bytes().fold(0, |sum, letter| {
        sum * 26 + u32::from(letter.to_ascii_uppercase() - b'A') + 1
    });
    Some(CellPlace {
        row: row.parse().ok()?,
        column: column - 1,
    })
}

fn merged_note(range: &str) -> Option<TableNote> {
    let (first, last) = range.split_once(':')?;
    Some(TableNote::Merged {
        first: place_of(first)?,
        last: place_of(last)?,
    })
}
