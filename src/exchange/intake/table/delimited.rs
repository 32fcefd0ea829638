//! Delimited texts: comma-separated values (RFC 4180) and the same with semicolons, tabs or bars.
//!
//! The delimiter is the one with which most rows have the same number of cells. Line breaks in quoted cells are kept. A
//! row with more or fewer cells than the heading is read and told. Cells are text: what looks like a formula is a text.

use csv::{ReaderBuilder, StringRecord};

use super::encoding::Decoded;
use super::fault::TableFault;
use super::limits::NAMED_ROWS;
use super::sheet::{Table, TableNote, TableWriter, Taken};

/// The delimiters that are tried, the likeliest first where they do equally well.
const DELIMITERS: [u8; 4] = [b'\t', b';', b',', b'|'];

/// The table of a delimited text; `None` where no row has cells.
///
/// # Errors
/// A text that is too large.
pub(super) fn table(decoded: &Decoded<'_>) -> Result<Option<Table>, TableFault> {
    // A first line "sep=;" says the delimiter to spreadsheet programs and is no row of the table.
    let said = decoded.text.strip_prefix("sep=").and_then(|rest| {
        let delimiter = rest.bytes().next().filter(u8::is_ascii)?;
        let line_end = rest.find('\n')?;
        (rest[1..line_end].trim().is_empty()).then_some((delimiter, line_end + 1 + 4))
    });
    let (delimiter, text, lines_before) = match said {
        Some((delimiter, start)) => (delimiter, &decoded.text[start..], 1),
        None => (delimiter(&decoded.text), &*decoded.text, 0),
    };
    let mut writer = TableWriter::new("", Taken::default());
    if let Some(encoding) = decoded.assumed {
        writer.note(TableNote::ReadAs(encoding));
    }
    if decoded.unreadable > 0 {
        writer.note(TableNote::UnreadableBytes {
            count: decoded.unreadable,
        });
    }
    let mut reader = reader(text, delimiter);
    let mut record = StringRecord::new();
    let mut row = lines_before;
    let mut widths: Vec<(u32, usize)> = Vec::new();
    let mut last_start = 0;
    while reader.read_record(&mut record).unwrap_or(false) {
        let start = record.position().map_or(0, csv::Position::byte);
        last_start = usize::try_from(start).unwrap_or(0);
        row += 1 + blank_lines(text, last_start);
        widths.push((row, record.len()));
        writer.row(row)?;
        for (column, cell) in (0..).zip(&record) {
            writer.cell(column, cell)?;
        }
    }
    if has_open_quote(text, last_start, delimiter) {
        writer.note(TableNote::OpenQuote { row });
    }
    let (table, _) = writer.finish();
    Ok(table.map(|mut table| {
        tell_ragged(&mut table, &widths);
        table
    }))
}

fn reader(text: &str, delimiter: u8) -> csv::Reader<&[u8]> {
    ReaderBuilder::new()
        .delimiter(delimiter)
        .has_headers(false)
        .flexible(true)
        .from_reader(text.as_bytes())
}

/// The lines without a sign before a record, which the reader passes over and a spreadsheet program counts.
fn blank_lines(text: &str, start: usize) -> u32 {
    let mut rest = text.as_bytes().get(start..).unwrap_or_default();
    // The reader ends a record at the first half of CRLF.
    let is_half = start > 0 && text.as_bytes().get(start - 1) == Some(&b'\r');
    if is_half && rest.first() == Some(&b'\n') {
        rest = &rest[1..];
    }
    let breaks = rest.iter().take_while(|b| **b == b'\n' || **b == b'\r');
    let breaks: Vec<u8> = breaks.copied().collect();
    let pairs = breaks.windows(2).filter(|pair| *pair == b"\r\n").count();
    u32::try_from(breaks.len() - pairs).unwrap_or(0)
}

/// The delimiter with which most of the first rows have the same number of cells, more than one.
fn delimiter(text: &str) -> u8 {
    let score = |delimiter: u8| {
        let mut reader = reader(text, delimiter);
        let mut record = StringRecord::new();
        let mut widths: Vec<usize> = Vec::new();
        while widths.len() < 200 && reader.read_record(&mut record).unwrap_or(false) {
            widths.push(record.len());
        }
        widths.sort_unstable();
        let runs = widths.chunk_by(|a, b| a == b);
        let usual = runs
            .filter(|run| run[0] > 1)
            .map(|run| (run.len(), run[0]))
            .max();
        usual.unwrap_or((0, 0))
    };
    let mut best = (b',', (0, 0));
    for delimiter in DELIMITERS {
        let score = score(delimiter);
        if score > best.1 {
            best = (delimiter, score);
        }
    }
    best.0
}

/// Whether the last record opens a quoted cell and never closes it: its quotation marks are odd in number.
fn has_open_quote(text: &str, start: usize, delimiter: u8) -> bool {
    let rest = text.as_bytes().get(start..).unwrap_or_default();
    let opens =
        rest.first() == Some(&b'"') || rest.windows(2).any(|pair| pair == [delimiter, b'"']);
    opens && rest.iter().filter(|byte| **byte == b'"').count() % 2 == 1
}

/// Tells the rows whose number of cells is not that of the heading.
fn tell_ragged(table: &mut Table, widths: &[(u32, usize)]) {
    let heading = table.heading_row();
    let named = widths.iter().find(|(row, _)| *row == heading);
    let Some((_, named)) = named else { return };
    let others = widths
        .iter()
        .filter(|(row, width)| *row > heading && width != named);
    let rows: Vec<u32> = others.map(|(row, _)| *row).collect();
    table
        .notes
        .retain(|note| !matches!(note, TableNote::Ragged { .. }));
    if !rows.is_empty() {
        let count = u32::try_from(rows.len()).unwrap_or(u32::MAX);
        let rows = rows.into_iter().take(NAMED_ROWS).collect();
        table.notes.push(TableNote::Ragged { count, rows });
    }
}
