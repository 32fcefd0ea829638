//! Which kind of file it is, by its first bytes, and its tables.

use super::fault::TableFault;
use super::limits::FILE_BYTES;
use super::package::Package;
use super::sheet::Table;
use super::{delimited, encoding, ods, xlsx};

/// The tables of a file that have cells, in its order; without the sheets of our own forms that are there to help.
///
/// # Errors
/// [`TableFault`] where the file is of another kind, damaged, encrypted, empty or too large.
pub fn tables(bytes: &[u8]) -> Result<Vec<Table>, TableFault> {
    if bytes.len() as u64 > FILE_BYTES {
        return Err(TableFault::TooLarge {
            what: "the file",
            limit: FILE_BYTES,
            unit: "bytes",
        });
    }
    let mut tables = if bytes.starts_with(b"PK") {
        let package = Package::open(bytes)?;
        if package.has("xl/workbook.xml") {
            xlsx::tables(&package)?
        } else if package.has("xl/workbook.bin") {
            return Err(TableFault::OtherKind("a binary workbook"));
        } else if package.has("content.xml") {
            ods::tables(&package)?
        } else {
            return Err(TableFault::OtherKind("an archive without a spreadsheet"));
        }
    } else if bytes.starts_with(b"\xd0\xcf\x11\xe0") {
        // Compound files hold workbooks of before 2007, and encrypted ones of today.
        return Err(TableFault::OtherKind("an old or an encrypted workbook"));
    } else if bytes.starts_with(b"%PDF") {
        return Err(TableFault::OtherKind("a PDF document"));
    } else {
        let decoded =
            encoding::decoded(bytes).ok_or(TableFault::OtherKind("no text and no spreadsheet"))?;
        delimited::table(&decoded)?.into_iter().collect()
    };
    tables.retain(|table| !table.is_helper());
    if tables.is_empty() {
        return Err(TableFault::Empty);
    }
    Ok(tables)
}
