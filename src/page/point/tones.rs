//! The tones of a point on each photograph, with a caution.
//!
//! They are shown on the page of the point only, and no study uses them (`docs/definitions.md`, "Strips
//! and tones").

use serde::Serialize;

use crate::model::design::Design;
use crate::model::point::Point;
use crate::page::phrases::readings;
use crate::page::plates::strips::DetailSource;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::Tone;
use crate::picture::tone::cielab::{Lab, ciede2000};

/// The table.
#[derive(Serialize)]
pub(super) struct Tones {
    /// "ΔE₀₀ from 7.5".
    from: CleanHtml,
    rows: Vec<Row>,
}

#[derive(Serialize)]
struct Row {
    sheet: CleanHtml,
    reading: CleanHtml,
    /// L*, a*, b*, each with its spread: "52.3 ± 4.1".
    channels: Vec<String>,
    /// The difference from the sheet of comparison; empty for that sheet.
    apart: String,
    paper: String,
}

/// The tones of a point; `None` where none was measured. Differences are from the reference picture, or
/// from the first sheet where that has no tone.
pub(super) fn table(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    sources: &[DetailSource<'_>],
) -> Option<Tones> {
    let tones = &here.book.alignments.tones;
    let measured: Vec<(&DetailSource<'_>, Tone)> = sources
        .iter()
        .filter_map(|s| Some((s, *tones.get(&s.key)?.get(&point.key.value)?)))
        .collect();
    let reference = design.reference_picture.as_ref().map(|key| &key.value);
    let (against, base) = measured
        .iter()
        .find(|(source, _)| Some(&source.key) == reference)
        .or_else(|| measured.first())?;
    let words = here.words();
    let rows = measured.iter().map(|(source, tone)| Row {
        sheet: here.impression(&source.impression.key),
        reading: readings::short(here, design, source.impression),
        channels: tone
            .mean
            .iter()
            .zip(tone.spread)
            .map(|(mean, spread)| format!("{} ± {}", number(*mean), number(spread)))
            .collect(),
        apart: if source.key == against.key {
            String::new()
        } else {
            number(ciede2000(Lab(base.mean), Lab(tone.mean)))
        },
        paper: words
            .word(if tone.paper_is_given {
                "paper-given"
            } else {
                "paper-found"
            })
            .to_owned(),
    });
    let handle = here.impression(&against.impression.key);
    Some(Tones {
        from: words.html("tone-difference", None, &[("sheet", &handle)]),
        rows: rows.collect(),
    })
}

/// A number with one decimal and a true minus sign.
fn number(value: f64) -> String {
    let text = format!("{value:.1}");
    match text.strip_prefix('-') {
        Some("0.0") => "0.0".to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_set_as_in_tables() {
        assert_eq!(number(52.34), "52.3");
        assert_eq!(number(-7.96), "−8.0");
        assert_eq!(number(-0.04), "0.0");
    }
}
