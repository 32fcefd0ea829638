//! Writes a list with the readings of its references: every column of the list, then ours (CSV, RFC 4180).

use std::io::{self, Write};

use super::document::{ReadingEntry, entries};
use super::list::List;
use crate::press::references::ResolvedCatalogue;
use crate::study::resolve::reading::Reading;

/// Our columns: the likeliest reading, and the addresses of the others with spaces between them.
pub(super) const COLUMNS: [&str; 9] = [
    "reading_certainty",
    "reading_address",
    "reading_label",
    "reading_kind",
    "reading_key",
    "reading_state",
    "reading_printing",
    "reading_why",
    "other_readings",
];

/// Writes the list, with the delimiter that it has.
pub(super) fn write(
    catalogue: &ResolvedCatalogue,
    list: &List,
    results: &[(&str, Vec<Reading>)],
    out: &mut impl Write,
) -> io::Result<()> {
    let mut table = csv::WriterBuilder::new()
        .delimiter(list.delimiter())
        .terminator(csv::Terminator::CRLF)
        .from_writer(out);
    if let Some(headings) = list.headings() {
        table.write_record(padded(headings, list.width()).chain(COLUMNS))?;
    }
    for (row, (_, readings)) in list.rows().zip(results) {
        let ours = cells(entries(catalogue, readings));
        let ours = ours.iter().map(String::as_str);
        table.write_record(padded(row, list.width()).chain(ours))?;
    }
    table.flush()
}

/// A row with as many cells as the widest has, so that our columns stand below their headings.
fn padded(row: &csv::StringRecord, width: usize) -> impl Iterator<Item = &str> {
    let missing = width.saturating_sub(row.len());
    row.iter().chain(std::iter::repeat_n("", missing))
}

fn cells(readings: Vec<ReadingEntry>) -> [String; 9] {
    let mut readings = readings.into_iter();
    let Some(first) = readings.next() else {
        return Default::default();
    };
    let others: Vec<String> = readings.map(|reading| reading.address).collect();
    [
        first.certainty.to_owned(),
        first.address,
        harmless(first.label),
        first.kind.to_owned(),
        first.key,
        first.state.unwrap_or_default(),
        first.printing.unwrap_or_default(),
        harmless(first.why),
        others.join(" "),
    ]
}

/// The text in a form that no spreadsheet takes for a formula: with an apostrophe before what begins like one (common
/// practice, no source).
fn harmless(text: String) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text
    }
}
