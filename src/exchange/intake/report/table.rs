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
use super::row;
use crate::exchange::intake::pieces::pieces;
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::spreadsheet::Spreadsheet;
use crate::model::vocabulary::List;

const HEADS: [&str; 21] = [
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
];

/// The table, given piece by piece to `put`.
///
/// # Errors
/// What `put` gives; then the rest is not made.
pub fn table<E>(
    reported: &Reported<'_>,
    put: &mut dyn FnMut(&[u8]) -> Result<(), E>,
) -> Result<(), E> {
    put(&Spreadsheet::marked(HEADS).bytes())?;
    let columns = reported.column_names();
    let piece = |_, rows: &[ProposedRow]| {
        let mut sheet = Spreadsheet::without_heads();
        for row in rows {
            sheet.row(
                cells(reported, &columns, row)
                    .each_ref()
                    .map(String::as_str),
            );
        }
        sheet.bytes()
    };
    pieces(&reported.proposal.rows, piece, put)
}

fn cells(reported: &Reported<'_>, columns: &[String], row: &ProposedRow) -> [String; 21] {
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
    let changes = row::changes(reported, &row.standing, |correction| !correction.is_kept);
    let changes = changes
        .iter()
        .map(|change| format!("{}: {} → {}", change.label, change.is, change.would_be));
    let differences = row::changes(reported, &row.standing, |correction| correction.is_kept);
    let differences = differences
        .iter()
        .map(|change| format!("{}: {} ≠ {}", change.label, change.is, change.would_be));
    [
        row.row.to_string(),
        row.accession.clone().unwrap_or_default(),
        standing_word(&row.standing).to_owned(),
        row::standing(reported, &row.standing),
        row::design_of(reported, row),
        facts::title(facts),
        joined(dates),
        facts::terms(reported, List::Techniques, &facts.techniques),
        facts::terms(reported, List::Papers, &facts.papers),
        joined(sizes),
        facts::terms(reported, List::Kinds, &kinds),
        facts::numbering(facts),
        facts::makers(reported, facts),
        joined(facts.references.iter().map(|said| facts::reference(said))),
        facts::credit(reported, facts.credit()),
        joined(row::unread(row, columns).iter().map(labelled)),
        joined(row::doubts(row, columns).into_iter()),
        row::missing(reported, row).join(", "),
        joined(row::may_be(reported, row).into_iter()),
        joined(changes),
        joined(differences),
    ]
}

fn labelled(of: &Understood) -> String {
    format!("{}: {}", of.label, of.text)
}

fn joined(texts: impl Iterator<Item = String>) -> String {
    let texts: Vec<String> = texts.collect();
    texts.join(" | ")
}
