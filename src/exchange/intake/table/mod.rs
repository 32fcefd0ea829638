//! Tables that museums and dealers hand in: XLSX, ODS, CSV, TSV.
//!
//! In: the bytes of a file. Out: its tables ([`Table`]), cells as text, each with the row and column in which a
//! spreadsheet program shows it, and what a registrar should know of the file ([`TableNote`]). Formulas are never
//! computed: the value stored beside a formula counts. What is unpacked is bounded before it is held
//! ([`TableFault::TooLarge`]), documents that declare entities are refused, and no link in a file is followed.
//!
//! | file | subject |
//! |---|---|
//! | `fault` | why a file cannot be read |
//! | `kind` | from what a table was made; notes on files of records |
//! | `limits` | how large files, rows and texts may be |
//! | `sheet` | a table: one text for all cells, its heading, notes |
//! | `package` | the files in a ZIP archive, unpacked within their declared size |
//! | `nodes` | the elements and texts of an XML document |
//! | `number_format` | whether a number of a spreadsheet is a date, and which |
//! | `xlsx` | Office Open XML workbooks (ECMA-376) |
//! | `ods` | OpenDocument spreadsheets (OASIS, ISO/IEC 26300) |
//! | `encoding` | bytes to text: UTF-8, UTF-16, Windows-1252 |
//! | `delimited` | comma-separated values and their kin (RFC 4180) |
//! | `open` | which of these a file is |

mod delimited;
pub(super) mod encoding;
mod fault;
mod kind;
pub(super) mod limits;
pub(super) mod nodes;
mod number_format;
mod ods;
mod open;
mod package;
mod sheet;
#[cfg(test)]
mod tests;
mod xlsx;

pub use fault::TableFault;
pub use kind::{RecordNote, TableKind};
pub use limits::FILE_BYTES;
pub use open::tables;
pub use sheet::{CellPlace, HELPER_MARK, RowView, Table, TableNote};
pub(super) use sheet::{TableWriter, Taken, of_rows};
