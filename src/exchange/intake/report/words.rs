//! Columns, doubts and notes in the words of a print room: English, as the commands are.

use crate::exchange::intake::columns::{Ground, Holds};
use crate::exchange::intake::facts::Contradiction;
use crate::exchange::intake::proposal::RowDoubt;
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::table::TableNote;

/// What a column holds.
pub(super) fn holds(holds: Holds) -> &'static str {
    match holds {
        Holds::Accession => "accession number",
        Holds::FormerAccession => "former number",
        Holds::Title => "title",
        Holds::Maker => "makers and their roles",
        Holds::Date => "date",
        Holds::Medium => "technique and material",
        Holds::Paper => "paper",
        Holds::Watermark => "watermark",
        Holds::Dimensions => "sizes",
        Holds::Height => "height",
        Holds::Width => "width",
        Holds::Depth => "depth",
        Holds::Unit => "unit of length",
        Holds::Credit => "credit line",
        Holds::Acquisition => "how it was acquired",
        Holds::Inscription => "inscriptions",
        Holds::Signature => "signature",
        Holds::State => "state, by an earlier catalogue",
        Holds::Design => "number in this catalogue",
        Holds::OwnState => "state in this catalogue",
        Holds::Printing => "printing in this catalogue",
        Holds::Impression => "impression in this catalogue",
        Holds::Kind => "kind of impression",
        Holds::Numbering => "number and edition",
        Holds::CatalogueNumber => "number in an earlier catalogue",
        Holds::Provenance => "provenance",
        Holds::Marks => "stamps and collectors’ marks",
        Holds::Condition => "condition",
        Holds::Photograph => "photograph",
        Holds::Seen => "day on which it was seen",
        Holds::SeenBy => "who saw it",
        Holds::Basis => "how it was seen",
        Holds::Web => "the holder’s own page",
        Holds::Id => "identifier",
        Holds::Department => "department",
        Holds::Holder => "holder",
        Holds::Series => "series",
        Holds::Literature => "literature",
        Holds::Exhibition => "exhibitions",
        Holds::Rights => "rights in the picture",
        Holds::Publish => "whether the picture may be published",
        Holds::Status => "whether the sheet is located",
        Holds::Remarks => "remarks",
        Holds::Unknown => "not known",
    }
}

/// On what ground a column was read.
pub(super) fn grounds(grounds: &[Ground]) -> String {
    let grounds: Vec<String> = grounds.iter().map(Ground::message).collect();
    grounds.join("; ")
}

/// What a date is of.
pub(super) fn act(act: Act) -> &'static str {
    match act {
        Act::Created => "date of the design",
        Act::Published => "published",
        Act::FirstPublished => "first published",
        Act::Printed => "printed",
        Act::Reprinted => "printed again",
        Act::Reproduced => "reproduced",
        Act::Enlarged => "made in another size",
        Act::Pulled => "this sheet pulled",
    }
}

/// What was measured.
pub(super) fn measured(of: Measured) -> &'static str {
    match of {
        Measured::Image => "image",
        Measured::Sheet => "sheet",
        Measured::Platemark => "platemark",
        Measured::Block => "block or stone",
        Measured::Support => "support",
        Measured::Mount => "mount",
        Measured::Frame => "frame",
        Measured::Displayed => "as displayed",
        Measured::Object => "object",
        Measured::Unsaid => "size, of what not said",
    }
}

/// A doubt, after the name of its column where it is of one.
pub(super) fn doubt(doubt: &RowDoubt, columns: &[String]) -> String {
    let name = |column: usize| columns.get(column).map_or("", String::as_str);
    match doubt {
        RowDoubt::Cell { column, doubt } => format!("{}: {}", name(*column), doubt.message()),
        RowDoubt::Contradiction { column, of } => {
            format!("{}: {}", name(*column), contradiction(*of))
        }
        RowDoubt::Against { said, .. } | RowDoubt::Said(said) => said.clone(),
    }
}

fn contradiction(of: Contradiction) -> String {
    let what = match of {
        Contradiction::Date(Act::Created) => "the date of the design".to_owned(),
        Contradiction::Date(of) => format!("the date when it was {}", done(of)),
        Contradiction::Size(of) => format!("the size of the {}", measured(of)),
        Contradiction::Numbering => "the number of the sheet".to_owned(),
        Contradiction::Edition => "the size of the edition".to_owned(),
        Contradiction::Kind => "the kind of impression".to_owned(),
        Contradiction::State => "the state".to_owned(),
        Contradiction::Holder => "the holder".to_owned(),
        Contradiction::Series => "the series".to_owned(),
        Contradiction::Sighting => "when, by whom or how it was seen".to_owned(),
        Contradiction::Rights => "the rights in the picture".to_owned(),
        Contradiction::Credit => "the acquisition".to_owned(),
        Contradiction::Colours => "the number of colours or blocks".to_owned(),
    };
    format!("{what} is another one in an earlier column")
}

/// What happened, after "it was".
fn done(act: Act) -> &'static str {
    match act {
        Act::Created => "made",
        Act::Pulled => "pulled",
        act => self::act(act),
    }
}

/// What a registrar should know of the file.
pub(super) fn note(note: &TableNote, columns: &[String]) -> String {
    let name = |column: u32| columns.get(column as usize).map_or("", String::as_str);
    match note {
        TableNote::Merged { first, last } => {
            format!("cells {first} to {last} are merged; the text counts for {first} alone")
        }
        TableNote::Formulas { count, first } => {
            format!(
                "{} with formulas, the first {first}; the values stored beside them were read",
                cells(*count)
            )
        }
        TableNote::ErrorValues { count, first } => {
            format!(
                "{} with an error of the spreadsheet program, the first {first}",
                cells(*count)
            )
        }
        TableNote::Ragged { count, rows } => format!(
            "{count} {} other cells than the heading: {}",
            if *count == 1 { "row has" } else { "rows have" },
            numbers(rows, *count)
        ),
        TableNote::EmptyRows { count: 1 } => "1 row between others is empty".to_owned(),
        TableNote::EmptyRows { count } => format!("{count} rows between others are empty"),
        TableNote::AboveHeading { texts } => {
            let texts: Vec<String> = texts.iter().map(|(_, text)| format!("“{text}”")).collect();
            format!("above the heading stands {}", texts.join(", "))
        }
        TableNote::NoHeading { column } => format!("{} has no heading", name(*column)),
        TableNote::SameHeading { first, second } => format!(
            "{} and {} have the same heading",
            name(*first),
            name(*second)
        ),
        TableNote::UnreadableBytes { count } => {
            format!(
                "{count} bytes are no letters in the encoding of the file; they read as \u{fffd}"
            )
        }
        TableNote::ReadAs(encoding) => {
            format!("the file does not name its encoding; it was read as {encoding}")
        }
        TableNote::OpenQuote { row } => format!(
            "a quotation mark opens in row {row} and never closes: all that follows was read as one cell"
        ),
        TableNote::Records(note) => note.message(),
        TableNote::Hidden => "the sheet is hidden in the file".to_owned(),
    }
}

fn cells(count: u32) -> String {
    if count == 1 {
        "1 cell".to_owned()
    } else {
        format!("{count} cells")
    }
}

/// "rows 3, 7 and others".
fn numbers(rows: &[u32], count: u32) -> String {
    let told: Vec<String> = rows.iter().map(u32::to_string).collect();
    let more = if (rows.len() as u64) < u64::from(count) {
        " and others"
    } else {
        ""
    };
    format!("{}{more}", told.join(", "))
}

/// "1 row", "2 rows".
pub(super) fn counted(n: usize, one: &str, many: &str) -> String {
    let shown = grouped(n);
    format!("{shown} {}", if n == 1 { one } else { many })
}

/// A number with its thousands set apart: `50,000`.
pub(super) fn grouped(n: usize) -> String {
    let digits = n.to_string();
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_are_set_apart() {
        let set = [7, 999, 1000, 50_000, 1_234_567].map(grouped);
        assert_eq!(set, ["7", "999", "1,000", "50,000", "1,234,567"]);
    }
}
