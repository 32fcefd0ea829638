//! The report as a table (CSV), one row for each row of the file, which may be sent back with the page.
//!
//! Columns: `row`, `accession`, `is` (`new`, `corrected`, `unchanged`, `nothing`), `census` (the same in words, with the
//! number of the impression), `design`, `title`, `date`, `technique`, `paper`, `sizes`, `kind`, `number`, `makers`,
//! `earlier_catalogues`, `acquired`, `unread`, `doubts`, `missing`, `may_be`, `would_change`, `differs` (the record stays). Dates, terms and sizes are in
//! words; several in one cell stand apart by ` | `. A cell that begins like a formula has an apostrophe before it
//! (`spreadsheet`). The file begins with a byte order mark, since spreadsheet programs take one without it for the
//! letters of their country, and this one goes to them.

use super::document::standing_word;
use super::facts::{self, Understood};
use super::reported::Reported;
use super::row::RowView;
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::spreadsheet::Spreadsheet;
use crate::model::vocabulary::List;

/// The table.
#[must_use]
pub fn table(reported: &Reported<'_>) -> Vec<u8> {
    let columns = reported.column_names();
    let mut sheet = Spreadsheet::marked([
        "row",
        "accession",
        "is",
        "census",
        "design",
        "title",
        "date",
        "technique",
        "paper",
        "sizes",
        "kind",
        "number",
        "makers",
        "earlier_catalogues",
        "acquired",
        "unread",
        "doubts",
        "missing",
        "may_be",
        "would_change",
        "differs",
    ]);
    let cells = |row: &ProposedRow| -> [String; 21] {
        let view = RowView::of(reported, &columns, row);
        let facts = &row.facts;
        let kinds: Vec<_> = facts.kind.iter().cloned().collect();
        let dates = facts.dates.iter().map(|dated| {
            let what = super::words::act(dated.act);
            format!("{what}: {}", facts::when(reported, &dated.when))
        });
        let sizes = facts.sizes.iter().map(|size| {
            let what = super::words::measured(size.of);
            format!("{what}: {}", facts::millimetres(size))
        });
        let changes = view
            .changes
            .iter()
            .map(|change| format!("{}: {} → {}", change.label, change.is, change.would_be));
        let differences = view
            .differences
            .iter()
            .map(|change| format!("{}: {} ≠ {}", change.label, change.is, change.would_be));
        [
            row.row.to_string(),
            view.accession.clone(),
            standing_word(&row.standing).to_owned(),
            view.standing.clone(),
            view.design.clone(),
            view.title.clone(),
            joined(dates),
            facts::terms(reported, List::Techniques, &facts.techniques),
            facts::terms(reported, List::Papers, &facts.papers),
            joined(sizes),
            facts::terms(reported, List::Kinds, &kinds),
            facts::numbering(facts),
            facts::makers(reported, facts),
            joined(facts.references.iter().map(facts::reference)),
            facts::credit(reported, &facts.credit),
            joined(view.unread.iter().map(labelled)),
            joined(view.doubts.iter().cloned()),
            view.missing.join(", "),
            joined(view.may_be.iter().cloned()),
            joined(changes),
            joined(differences),
        ]
    };
    for row in &reported.proposal.rows {
        sheet.row(cells(row).each_ref().map(String::as_str));
    }
    sheet.bytes()
}

fn labelled(of: &Understood) -> String {
    format!("{}: {}", of.label, of.text)
}

fn joined(texts: impl Iterator<Item = String>) -> String {
    let texts: Vec<String> = texts.collect();
    texts.join(" | ")
}
