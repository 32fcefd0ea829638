//! What cells look like: whether the grammar of a column reads them.

use super::holds::Holds;
use crate::exchange::intake::reading::sizes::{Assumed, Unit};
use crate::exchange::intake::reading::{Lexicon, credit, dates, media, numbering, sizes, states};

/// Whether a cell looks like one of a column that holds this; `None` where a cell of such a column can be anything.
pub(super) fn looks_like(holds: Holds, cell: &str, lexicon: &Lexicon) -> Option<bool> {
    let some_unit = Some(Unit::Millimetre);
    Some(match holds {
        Holds::Date => {
            let reading = dates::dates(cell);
            !reading.is.is_empty() && reading.left.is_empty()
        }
        Holds::Dimensions => {
            let assumed = Assumed {
                unit: some_unit,
                ..Assumed::default()
            };
            let reading = sizes::sizes(cell, assumed);
            !reading.is.is_empty()
        }
        Holds::Height | Holds::Width | Holds::Depth => {
            let reading = sizes::length(cell, some_unit);
            reading.is.is_some() && reading.left.is_empty()
        }
        Holds::Unit => [
            "mm", "cm", "m", "in", "in.", "inch", "inches", "zoll", "\"", "ft",
        ]
        .contains(&cell.trim().to_lowercase().as_str()),
        Holds::Medium => {
            let medium = media::medium(cell, lexicon).is;
            !medium.techniques.is_empty() || medium.is_print || medium.is_photograph
        }
        Holds::Paper => !media::medium(cell, lexicon).is.papers.is_empty(),
        Holds::Credit => credit::credit(cell, lexicon).is.how.is_some(),
        Holds::Numbering => {
            let reading = numbering::numbering(cell, lexicon);
            reading.left.is_empty() && !reading.read.is_empty()
        }
        Holds::State => {
            let reading = states::states(cell);
            let has_state = reading.is.iter().any(|said| said.state.is_some());
            (has_state && reading.left.is_empty()) || is_small_number(cell)
        }
        Holds::Web => {
            let cell = cell.trim();
            ["http://", "https://", "www."]
                .iter()
                .any(|begin| cell.starts_with(begin))
        }
        Holds::Photograph => {
            let name = cell.trim().to_lowercase();
            let endings = [".jpg", ".jpeg", ".tif", ".tiff", ".png", ".webp"];
            endings.iter().any(|ending| name.ends_with(ending))
        }
        Holds::Accession => is_like_a_number(cell),
        _ => return None,
    })
}

/// What a column without a heading is looked through for, the most telling first.
pub(super) const TOLD_BY_CELLS: [Holds; 7] = [
    Holds::Web,
    Holds::Photograph,
    Holds::Dimensions,
    Holds::Medium,
    Holds::Credit,
    Holds::Date,
    Holds::Numbering,
];

/// A state may be written as a plain number.
fn is_small_number(cell: &str) -> bool {
    cell.trim()
        .parse::<u8>()
        .is_ok_and(|number| (1..60).contains(&number))
}

/// Whether a text is like an accession number: short, with a figure.
fn is_like_a_number(cell: &str) -> bool {
    let cell = cell.trim();
    cell.chars().count() <= 40
        && cell.chars().any(|c| c.is_ascii_digit())
        && cell.split_whitespace().count() <= 5
}
