//! Workbooks for spreadsheet programs: Office Open XML, XLSX (ECMA-376, part 1, chapter 18).
//!
//! In: sheets of text with notes and lists to choose from. Out: the parts of a workbook ([`book`]), and the file
//! ([`archive`]). Every cell is an inline string, so no text is a formula, and accession numbers and dates stay as they
//! are written.
//!
//! Parts that several workbooks share are packed once. A library that writes XLSX (`rust_xlsxwriter`) packs each workbook
//! anew, brings ten packages with 17 seconds of processor time to a first build, and makes `flate2` use another
//! implementation in the whole program.
//!
//! | file | subject |
//! |---|---|
//! | `archive` | ZIP archives |
//! | `sheet` | a sheet: headings with notes, columns with lists, rows |
//! | `notes` | the notes of headings, and the boxes in which they are shown |
//! | `book` | the parts that tie sheets together |

mod archive;
mod book;
mod notes;
mod sheet;

pub(super) use archive::{Part, archive};
pub(super) use book::{DefinedName, SheetEntry, Visibility, shared_parts, workbook_part};
pub(super) use sheet::{Choices, Column, Look, Sheet, cell_name};

/// The media type of a workbook (IANA).
pub(super) const MEDIA_TYPE: &str =
    "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/// The longest text of a cell, in UTF-16 units (ECMA-376 leaves it open; programs stop at 32,767, from memory). A longer
/// text is left out rather than cut, for what is cut would come back as a correction.
pub(super) const CELL_UNITS: usize = 32_767;

/// The namespace of sheets.
const MAIN: &str = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
/// The namespace of relations between parts.
const RELATIONS: &str = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
/// The namespace of the files that list relations.
const PACKAGE: &str = "http://schemas.openxmlformats.org/package/2006/relationships";
