//! The file that is reported.

use super::words;
use crate::exchange::intake::columns::{ColumnDoubt, Holds};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::photographs::Photographs;
use crate::exchange::intake::proposal::Proposal;
use crate::exchange::intake::table::Table;
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;
use crate::page::Words;

/// A file that was handed in, with what it proposes.
#[derive(Clone, Copy)]
pub struct Reported<'r> {
    /// The folder of the inbox: the house that hands in.
    pub name: &'r Key,
    /// The name of the file.
    pub file: &'r str,
    /// The table that was read.
    pub table: &'r Table,
    /// The other tables of the file, with how many rows each has.
    pub others: &'r [(String, usize)],
    /// What it proposes.
    pub proposal: &'r Proposal,
    /// Which of the photographs that came with it are of which rows.
    pub photographs: &'r Photographs,
    /// The names of the photographs.
    pub photograph_names: &'r [String],
    /// Who hands in.
    pub handing: &'r HandingIn,
    /// The catalogue.
    pub catalogue: &'r Catalogue,
    /// The words of pages, in English: reports are in the language of the commands.
    pub words: &'r Words,
}

impl Reported<'_> {
    /// The name by which each column is told: its heading; its letter too where it has none or shares it.
    #[must_use]
    pub fn column_names(&self) -> Vec<String> {
        let columns = &self.proposal.columns;
        let name = |at: usize, heading: &str| {
            let letter = letters(at);
            let is_shared = columns.iter().filter(|c| c.heading == heading).count() > 1;
            match (heading.is_empty(), is_shared) {
                (true, _) => format!("column {letter}"),
                (false, true) => format!("{heading} (column {letter})"),
                (false, false) => heading.to_owned(),
            }
        };
        let names = columns.iter().map(|c| name(c.column, &c.heading));
        names.collect()
    }

    /// What should be looked at in the file as a whole, a sentence each.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let names = self.column_names();
        let proposal = self.proposal;
        let mut notes: Vec<String> = proposal
            .column_doubts
            .iter()
            .map(ColumnDoubt::message)
            .collect();
        notes.extend(proposal.notes.iter().map(|note| words::note(note, &names)));
        notes.extend(self.photograph_notes());
        if !self.others.is_empty() {
            let others = self.others.iter().map(|(name, rows)| {
                let rows = words::counted(*rows, "row", "rows");
                format!("“{name}” ({rows})")
            });
            let others: Vec<String> = others.collect();
            notes.push(format!(
                "only the sheet “{}” was read, not {}",
                self.table.name,
                others.join(", ")
            ));
        }
        notes
    }

    /// What should be looked at in the photographs, a sentence each; none where none came and none is named.
    fn photograph_notes(&self) -> Vec<String> {
        let Photographs {
            matches,
            unmatched,
            ambiguous,
            missing,
        } = self.photographs;
        let name = |file: &usize| self.photograph_names.get(*file).map_or("", String::as_str);
        let row = |place: &usize| self.proposal.rows.get(*place).map_or(0, |row| row.row);
        let mut notes = Vec::new();
        if !self.photograph_names.is_empty() {
            let all = words::counted(self.photograph_names.len(), "photograph", "photographs");
            notes.push(format!(
                "{all} came with the file; {} belong to rows",
                matches.len()
            ));
        }
        if !unmatched.is_empty() {
            let names: Vec<String> = unmatched.iter().map(|file| name(file).to_owned()).collect();
            notes.push(format!("of no row: {}", first_few(&names)));
        }
        for (file, rows) in ambiguous.iter().take(FEW) {
            let rows: Vec<String> = rows.iter().map(|place| row(place).to_string()).collect();
            notes.push(format!(
                "{} may be of rows {}",
                name(file),
                first_few(&rows)
            ));
        }
        if !missing.is_empty() {
            let named = missing
                .iter()
                .map(|(place, name)| format!("{name} (row {})", row(place)));
            let named: Vec<String> = named.collect();
            notes.push(format!(
                "photographs that rows name did not come: {}",
                first_few(&named)
            ));
        }
        notes
    }

    /// The names of the photographs of a row, by its place.
    #[must_use]
    pub fn photographs_of(&self, place: usize) -> Vec<&str> {
        // The matches are in the order of their rows.
        let matches = &self.photographs.matches;
        let first = matches.partition_point(|found| found.row < place);
        let of_row = matches[first..]
            .iter()
            .take_while(|found| found.row == place);
        of_row
            .filter_map(|found| self.photograph_names.get(found.file).map(String::as_str))
            .collect()
    }

    /// Whether neither the file as a whole nor a column says who keeps the sheets.
    #[must_use]
    pub fn has_no_holder(&self) -> bool {
        let mut columns = self.proposal.columns.iter();
        self.handing.holder.is_none() && !columns.any(|column| column.holds == Holds::Holder)
    }
}

/// How many names a note lists.
const FEW: usize = 6;

/// The first few of some names, and how many more there are.
fn first_few(names: &[String]) -> String {
    let shown = names[..names.len().min(FEW)].join(", ");
    match names.len().saturating_sub(FEW) {
        0 => shown,
        more => format!("{shown} and {} more", words::grouped(more)),
    }
}

/// A column as spreadsheet programs name it: `A`, `AB`.
fn letters(column: usize) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        rest -= 1;
        letters.push(char::from(b'A' + u8::try_from(rest % 26).unwrap_or(0)));
        rest /= 26;
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_named_as_spreadsheet_programs_name_them() {
        let named: Vec<String> = [0, 25, 26, 701, 702].map(letters).into();
        assert_eq!(named, ["A", "Z", "AA", "ZZ", "AAA"]);
    }
}
