//! `proposed.toml`: for each row the record as it would be written, what is doubtful, and what was not understood.
//!
//! Made anew by each run. Nobody edits it: what is corrected is in `columns.toml`, `values.toml` and `designs.toml`.

use std::fmt::Write as _;

use super::document::standing_word;
use super::reported::Reported;
use super::row;
use crate::exchange::intake::pieces::pieces;
use crate::exchange::intake::proposal::{DesignIs, ProposedRow, RowStanding};
use crate::exchange::intake::toml_text::text_value as quoted;

const HEAD: &str = "\
# What the file proposes: for each row the record as it would be written. Every run of `keyblock intake` makes this file
# anew: correct columns.toml, values.toml or designs.toml, never this file.
";

/// The text of `proposed.toml`, given piece by piece to `put`: of 50,000 rows it has some 70 MB. `record` writes the record
/// of a row by its place in the proposal, where it proposes one.
///
/// # Errors
/// What `put` gives; then the rest is not made.
pub fn proposed<E>(
    reported: &Reported<'_>,
    record: &(dyn Fn(usize) -> Option<String> + Sync),
    put: &mut dyn FnMut(&[u8]) -> Result<(), E>,
) -> Result<(), E> {
    put(format!("{HEAD}file = {}\n", quoted(reported.file)).as_bytes())?;
    let columns = reported.column_names();
    let piece = |first: usize, rows: &[ProposedRow]| {
        let mut text = String::new();
        for (at, row) in rows.iter().enumerate() {
            write_row(reported, &columns, row, &mut text);
            if let Some(record) = record(first + at) {
                text.push_str("record = ");
                write_block(&mut text, &record);
                text.push('\n');
            }
        }
        text
    };
    pieces(&reported.proposal.rows, piece, put)
}

fn write_row(reported: &Reported<'_>, columns: &[String], row: &ProposedRow, text: &mut String) {
    let _ = write!(text, "\n[[rows]]\nrow = {}\n", row.row);
    if let Some(accession) = &row.accession {
        let _ = writeln!(text, "accession = {}", quoted(accession));
    }
    let _ = writeln!(text, "is = \"{}\"", standing_word(&row.standing));
    if let RowStanding::Unchanged(key) | RowStanding::Corrected(key, _) = &row.standing {
        let _ = writeln!(text, "impression = \"{key}\"");
    }
    let designs = &reported.proposal.designs;
    match row.design.and_then(|at| designs.get(at)) {
        None => {}
        Some(design) => match &design.is {
            DesignIs::Recorded(key) => {
                let _ = writeln!(text, "design = \"{key}\"");
            }
            DesignIs::OneOf(keys) => {
                let keys: Vec<String> = keys.iter().map(|key| format!("\"{key}\"")).collect();
                let _ = writeln!(text, "one_of = [{}]", keys.join(", "));
            }
            DesignIs::New => {
                let title = design.title.as_deref().unwrap_or_default();
                let _ = writeln!(text, "new_design = {}", quoted(title));
            }
        },
    }
    let doubts = row::doubts(row, columns);
    if !doubts.is_empty() {
        let _ = writeln!(text, "doubts = [");
        for doubt in doubts {
            let _ = writeln!(text, "  {},", quoted(&doubt));
        }
        let _ = writeln!(text, "]");
    }
    for other in &row.may_be {
        let _ = writeln!(
            text,
            "may_be.\"{}\" = {}",
            other.impression,
            quoted(&other.why)
        );
    }
    for (column, words) in &row.unread {
        let name = columns.get(*column).map_or("", String::as_str);
        let _ = writeln!(text, "unread.{} = {}", quoted(name), quoted(words));
    }
    if let RowStanding::Corrected(_, corrections) = &row.standing {
        let _ = writeln!(text, "changes = [");
        for correction in corrections {
            let mut parts = vec![format!("key = {}", quoted(&correction.key))];
            let texts = [("is", &correction.is), ("would_be", &correction.would_be)];
            for (name, value) in texts {
                if let Some(value) = value {
                    parts.push(format!("{name} = {}", quoted(value)));
                }
            }
            if correction.is_kept {
                parts.push("kept = true".to_owned());
            }
            let _ = writeln!(text, "  {{ {} }},", parts.join(", "));
        }
        let _ = writeln!(text, "]");
    }
}

/// Writes a text over several lines as it stands, where TOML can hold it so.
fn write_block(out: &mut String, text: &str) {
    let is_plain = |c: char| c == '\n' || c == '\t' || !c.is_control();
    if text.contains("'''") || text.ends_with('\'') || !text.chars().all(is_plain) {
        out.push_str(&quoted(text));
    } else {
        out.push_str("'''\n");
        out.push_str(text);
        out.push_str("'''");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_record_in_it_is_read_back_as_it_was() {
        let records = [
            "status = \"located\"\n",
            "notes = '''three'''\n",
            "credit = \"Gift\"\nends = '",
            "a\u{1}b\r\n\\",
        ];
        for record in records {
            let mut text = "record = ".to_owned();
            write_block(&mut text, record);
            let table: toml::Table = text.parse().unwrap();
            assert_eq!(table["record"].as_str(), Some(record));
        }
    }
}
