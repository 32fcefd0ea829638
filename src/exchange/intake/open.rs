//! The tables of a file that was handed in, whatever its kind.

use super::records;
use super::sighting_form::sighting_forms;
use super::table::encoding::decoded;
use super::table::{self, Table, TableFault, TableKind};

/// The longest text that is searched for sighting forms, in bytes: a mail, not a table.
const MAIL_BYTES: usize = 1 << 20;

/// The tables of a file: of records of LIDO, Linked Art or IIIF, of sighting forms in a mail, else its sheets. What the
/// file is follows from its content, never from its name.
///
/// # Errors
/// [`TableFault`] where the file is of another kind, damaged, encrypted, empty or too large.
pub fn tables(bytes: &[u8]) -> Result<Vec<Table>, TableFault> {
    if let Some(tables) = records::tables(bytes)? {
        return Ok(tables);
    }
    if let Some(forms) = forms(bytes) {
        return Ok(vec![forms]);
    }
    table::tables(bytes)
}

/// The forms in a mail; `None` where the file is none.
fn forms(bytes: &[u8]) -> Option<Table> {
    if bytes.len() > MAIL_BYTES || bytes.starts_with(b"PK") {
        return None;
    }
    let mut table = sighting_forms(&decoded(bytes)?.text)?;
    table.kind = TableKind::SightingForm;
    Some(table)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mail_with_a_form_is_a_row_and_a_table_stays_one() {
        let mail = "Dear editors,\r\n\r\nNumber in this catalogue: 14\r\nSeen on: 1971\r\nSeen by: A. Brook\r\n\
                    Holder: Harbour Museum\r\n";
        let of_mail = tables(mail.as_bytes()).unwrap();
        assert_eq!(of_mail[0].kind, TableKind::SightingForm);
        assert_eq!(of_mail[0].rows().next().unwrap().cell(0), "14");
        let of_table = tables(b"Number,Title\n1,A\n2,B\n").unwrap();
        assert_eq!(
            (of_table[0].kind, of_table[0].rows().len()),
            (TableKind::Sheet, 2)
        );
    }
}
