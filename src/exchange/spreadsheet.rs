//! Tables for other programs: comma-separated values (RFC 4180) in UTF-8; the first row has the heads.
//!
//! In: rows of text. Out: the bytes of a file.

use std::borrow::Cow;

/// A table of `N` columns that is being written.
pub(super) struct Spreadsheet<const N: usize>(csv::Writer<Vec<u8>>);

impl<const N: usize> Spreadsheet<N> {
    /// A table with these heads and no row yet.
    pub fn new(heads: [&str; N]) -> Spreadsheet<N> {
        let mut table = Spreadsheet(writer());
        table.row(heads);
        table
    }

    /// The same, with a byte order mark at its head: spreadsheet programs take a file without one for the letters of their
    /// country.
    pub fn marked(heads: [&str; N]) -> Spreadsheet<N> {
        let mut table = Spreadsheet(writer_after("\u{feff}".as_bytes().to_vec()));
        table.row(heads);
        table
    }

    /// Further rows of a table whose heads stand already.
    pub fn without_heads() -> Spreadsheet<N> {
        Spreadsheet(writer())
    }

    /// Adds a row; no cell of it can be taken for a formula. This cannot fail, because it writes to memory
    /// and every row has `N` cells.
    pub fn row(&mut self, cells: [&str; N]) {
        let _ = self
            .0
            .write_record(cells.map(harmless).iter().map(|cell| cell.as_bytes()));
    }

    /// The bytes of the file.
    pub fn bytes(self) -> Vec<u8> {
        self.0.into_inner().unwrap_or_default()
    }
}

/// A writer of the format, for tables whose columns are declared elsewhere.
pub(super) fn writer() -> csv::Writer<Vec<u8>> {
    writer_after(Vec::new())
}

/// The same behind what stands at the head of the file.
fn writer_after(head: Vec<u8>) -> csv::Writer<Vec<u8>> {
    csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(head)
}

/// The text in a form that no spreadsheet takes for a formula: a text that begins like a formula gets an
/// apostrophe before it (common practice, no source).
pub(super) fn harmless(text: &str) -> Cow<'_, str> {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠']) {
        Cow::Owned(format!("'{text}"))
    } else {
        Cow::Borrowed(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_never_a_formula() {
        assert_eq!(harmless("=HYPERLINK(\"x\")"), "'=HYPERLINK(\"x\")");
        assert_eq!(
            harmless("Harbour Museum - Annexe"),
            "Harbour Museum - Annexe"
        );
    }

    /// RFC 4180, section 2, rules 1 and 5 to 7: lines end in CRLF, a field with a comma, a quote or a line
    /// break is quoted, a quote in it doubled.
    #[test]
    fn a_table_is_written_as_the_standard_says() {
        let mut table = Spreadsheet::new(["name", "n"]);
        table.row(["Old \"Lock\", the\nsecond", "2"]);
        let text = String::from_utf8(table.bytes()).unwrap();
        assert_eq!(text, "name,n\r\n\"Old \"\"Lock\"\", the\nsecond\",2\r\n");
    }
}
