//! What several sheets are compared by beside points: their sizes, paper, watermarks, margins, numbers, marks, condition.
//!
//! In: sheets, of one design or of several. Out: a row for each of these that some sheet has. Tolerances:
//! `study::tolerance` (docs/definitions.md, "Measurements").

use super::rows::{Measure, Measured, Row, measurements, not_recorded, texts};
use crate::model::certainty::{Certainty, Statement};
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::sheet::Sheet;
use crate::model::size::Size;
use crate::page::phrases::claims;
use crate::page::phrases::enumeration;
use crate::page::phrases::papers;
use crate::page::phrases::sizes;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::sheet::marks;
use crate::study::tolerance;

/// A sheet with its design.
pub(crate) type ComparedSheet<'d> = (&'d Design, &'d Impression);

/// The rows.
pub(super) fn rows(here: &Here<'_>, sheets: &[ComparedSheet<'_>]) -> Vec<Row> {
    let words = here.words();
    let mut rows: Vec<Option<Row>> = Vec::new();
    for (word, of) in papers::SIZES {
        rows.push(size_row(here, sheets, word, of));
    }
    let told = |word: &str, tell: &dyn Fn(&Impression) -> CleanHtml| {
        let cells = sheets.iter().map(|(_, sheet)| tell(sheet)).collect();
        texts(
            here,
            words.word(word).to_owned(),
            cells,
            &not_recorded(here),
        )
    };
    rows.push(told("paper", &|i| {
        capitalised(&papers::paper(here, &i.sheet))
    }));
    rows.push(told("paper-colour", &|i| {
        capitalised(&papers::colour(&i.sheet))
    }));
    for (word, of, measure) in PAPER {
        let measured = sheets.iter().map(|(_, sheet)| match of(&sheet.sheet) {
            None => Measured::Nothing,
            Some(value) => {
                let shown = format!("{value} {}", measure.unit);
                Measured::Lengths(CleanHtml::text(shown.trim_end()), vec![value])
            }
        });
        let ask = words.word(word).to_owned();
        rows.push(measurements(here, ask, measure, measured.collect()));
    }
    rows.push(told("watermark-alone", &|i| {
        let marks = i.sheet.watermark.iter();
        let marks: Vec<_> = marks
            .map(|mark| papers::watermark_alone(here, mark))
            .collect();
        capitalised(&CleanHtml::join(&marks, "; "))
    }));
    rows.push(told("inks", &|i| {
        let inks = i.sheet.inks.iter().map(|ink| CleanHtml::text(&ink.value));
        capitalised(&enumeration::together(here, &inks.collect::<Vec<_>>()))
    }));
    rows.push(told("margins-alone", &|i| {
        capitalised(&CleanHtml::text(
            i.sheet.margins.as_deref().unwrap_or_default(),
        ))
    }));
    rows.push(told("number", &|i| {
        let number = i.numbering.as_ref();
        CleanHtml::text(number.map_or("", |number| number.value.as_str()))
    }));
    rows.push(told("marks", &|i| {
        let lines: Vec<_> = i.marks.iter().map(|mark| marks::line(here, mark)).collect();
        CleanHtml::join(&lines, "; ")
    }));
    rows.push(told("condition", &|i| {
        CleanHtml::join(&papers::condition(here, i), "; ")
    }));
    rows.push(told("mounted-on-alone", &|i| {
        capitalised(&CleanHtml::text(
            i.sheet.mounted_on.as_deref().unwrap_or_default(),
        ))
    }));
    rows.into_iter().flatten().collect()
}

/// What is measured of the paper, with the word for it.
const PAPER: [(&str, fn(&Sheet) -> Option<f64>, Measure); 3] = [
    (
        "chain-lines-apart",
        |sheet| sheet.chain_lines.as_deref().copied(),
        Measure {
            tolerance: tolerance::CHAIN_LINES_ALIKE_MM,
            share: 0.0,
            unit: "mm",
        },
    ),
    (
        "laid-lines-in-a-centimetre",
        |sheet| sheet.laid_lines.as_deref().copied(),
        Measure {
            tolerance: tolerance::LAID_LINES_ALIKE,
            share: 0.0,
            unit: "",
        },
    ),
    (
        "thickness-of-the-paper",
        |sheet| sheet.thickness.as_deref().copied(),
        Measure {
            tolerance: 0.0,
            share: tolerance::THICKNESS_ALIKE,
            unit: "mm",
        },
    ),
];

/// The row of one of the sizes.
fn size_row(
    here: &Here<'_>,
    sheets: &[ComparedSheet<'_>],
    word: &str,
    of: papers::SizeOf,
) -> Option<Row> {
    let is_outside = matches!(word, "of-mount" | "of-frame");
    let measured = sheets.iter().map(|(_, impression)| {
        let sheet = &impression.sheet;
        let own = of(sheet).0.first();
        own.map_or(Measured::Nothing, |own| {
            size_of(here, own, sheet.measuring.sight && !is_outside)
        })
    });
    let measured = measured.collect();
    let words = here.words();
    let ask = format!("{} ({})", words.word("size"), words.word(word));
    let share = match word {
        "of-image" | "of-platemark" => tolerance::MATRIX_ALIKE,
        _ => 0.0,
    };
    let measure = Measure {
        tolerance: tolerance::SHEET_ALIKE_MM,
        share,
        unit: "mm",
    };
    measurements(here, ask, measure, measured)
}

fn size_of(here: &Here<'_>, own: &Statement<Size>, seen_in_mount: bool) -> Measured {
    let size = &own.is.value;
    let shown = claims::doubted(here, sizes::size(size), &own.claim);
    if seen_in_mount {
        let sight = here.words().word("measured-sight");
        return Measured::Unsure(shown.then(" (").then(sight).then(")"));
    }
    match own.claim.certainty() {
        Certainty::Certain => Measured::Lengths(shown, vec![size.height_mm(), size.width_mm()]),
        Certainty::Probable | Certainty::Possible => Measured::Unsure(shown),
    }
}
