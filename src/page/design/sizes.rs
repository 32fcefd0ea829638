//! The sizes at the head of a design: "*i*–*iii* 246 × 362 mm; *iv*–*v* 232 × 362 mm (image)".
//!
//! In: the sizes of the design, its states and its printings; where none of them records one, the range of those
//! measured on its sheets. Out: a fact, with a line for the image and one for the matrix.

use crate::model::certainty::{Statement, Statements};
use crate::model::design::{Design, MatrixKind};
use crate::model::key::Key;
use crate::model::size::Size;
use crate::page::lists::facts::{Fact, Line};
use crate::page::phrases::claims;
use crate::page::phrases::matrices;
use crate::page::phrases::sizes;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::sizes::{MeasuredPart, MeasuredRange, Part, by_state, measured, states_of};

/// The sizes of image and matrix, a line each, with other measurements; `None` where nothing was recorded or
/// measured. Where a design has no size of image or platemark at all, the range of its whole sheets is given.
pub(super) fn fact(here: &Here<'_>, design: &Design) -> Option<Fact> {
    let of_matrix = match matrices::one_kind(&design.matrices) {
        Some(MatrixKind::Block) => "of-block",
        Some(MatrixKind::Plate) => "of-plate",
        Some(MatrixKind::Stone) => "of-stone",
        Some(MatrixKind::Screen) => "of-screen",
        None => "of-matrix",
    };
    let parts: [(Part, MeasuredPart, &str, &str); 2] = [
        (
            |s| &s.image,
            |sheet| &sheet.sheet.image,
            "of-image",
            "of-image",
        ),
        (
            |s| &s.matrix,
            |sheet| &sheet.sheet.platemark,
            of_matrix,
            "of-platemark",
        ),
    ];
    let mut lines = Vec::new();
    let mut others = Vec::new();
    for (part, on_sheet, of, of_measured) in parts {
        let range = || {
            let range = measured(design, on_sheet)?;
            Some(range_line(here, &range, of_measured))
        };
        lines.extend(recorded(here, design, part, of).or_else(range));
        others.extend(other_figures(here, design, part, of));
    }
    if lines.is_empty() {
        let range = measured(design, |sheet| &sheet.sheet.size);
        lines.extend(range.map(|range| range_line(here, &range, "of-sheet")));
    }
    let line = |text| Line {
        id: String::new(),
        text,
    };
    (!lines.is_empty()).then(|| Fact {
        term: CleanHtml::text(here.words().word("size")),
        lines: lines.into_iter().map(line).collect(),
        others,
    })
}

/// The recorded sizes of a part: one for the whole design, or one for each group of states and each printing that
/// has its own.
fn recorded(here: &Here<'_>, design: &Design, part: Part, of: &str) -> Option<CleanHtml> {
    let figure =
        |said: &Statement<Size>| claims::with_claim(here, sizes::size(&said.is.value), &said.claim);
    let groups = by_state(design, part);
    let states = design.standing_states().count();
    let mut figures = Vec::new();
    for group in &groups {
        let figure = figure(group.own);
        if group.states.len() == states {
            figures.push(figure);
        } else {
            figures.push(
                states_range(here, design, &group.states)
                    .then(" ")
                    .and(&figure),
            );
        }
    }
    if groups.is_empty() {
        figures.extend(part(&design.size).0.first().map(figure));
    }
    for printing in design.standing_printings() {
        if let Some(own) = part(&printing.size).0.first() {
            let name = here.printing_name(design, &printing.key.value);
            figures.push(CleanHtml::text(&name).then(" ").and(&figure(own)));
        }
    }
    let of = here.words().word(of);
    (!figures.is_empty()).then(|| {
        CleanHtml::join(&figures, "; ")
            .then(" (")
            .then(of)
            .then(")")
    })
}

/// "*i*–*iii*, *v*": the states of a group, those that follow each other drawn together.
fn states_range(here: &Here<'_>, design: &Design, states: &[&Key]) -> CleanHtml {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    let all: Vec<&Key> = design.standing_states().map(|s| &s.key.value).collect();
    for (at, _) in all.iter().enumerate().filter(|(_, s)| states.contains(s)) {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == at => *last = at,
            _ => runs.push((at, at)),
        }
    }
    let numeral = |at: usize| {
        all.get(at)
            .map_or_else(CleanHtml::empty, |state| here.numeral(&design.key, state))
    };
    let runs: Vec<CleanHtml> = runs
        .into_iter()
        .map(|(first, last)| {
            if first == last {
                numeral(first)
            } else {
                numeral(first).then("–").and(&numeral(last))
            }
        })
        .collect();
    CleanHtml::join(&runs, ", ")
}

/// The figures of other sources. One that is the size of some states, where states differ in size, is said to be
/// theirs: it disagrees with nothing.
fn other_figures(here: &Here<'_>, design: &Design, part: Part, of: &str) -> Vec<CleanHtml> {
    let groups = by_state(design, part);
    let differs = groups.len() > 1;
    let own = |sizes: &Statements<Size>| sizes.others().to_vec();
    let mut said = own(part(&design.size));
    let mut states = design.standing_states();
    if !groups.is_empty() && states.all(|state| !part(&state.size).is_empty()) {
        // No state has the design's own figure, so it stands among the others.
        said.splice(0..0, part(&design.size).0.first().cloned());
    }
    for state in design.standing_states() {
        said.extend(own(part(&state.size)));
    }
    for printing in design.standing_printings() {
        said.extend(own(part(&printing.size)));
    }
    said.iter()
        .map(|other| {
            let size = sizes::with_part(here, &other.is.value, of);
            let figure = claims::with_claim(here, size, &other.claim);
            let states = states_of(design, part, &other.is.value);
            if !differs || states.is_empty() {
                return figure;
            }
            let states = states_range(here, design, &states);
            here.words().html(
                "size-of-states",
                None,
                &[("figure", &figure), ("states", &states)],
            )
        })
        .collect()
}

/// "231.5–246.5 × 361–362 mm (image, measured on 18 sheets)".
fn range_line(here: &Here<'_>, range: &MeasuredRange, of: &str) -> CleanHtml {
    let words = here.words();
    let span = |least: &dyn std::fmt::Display, most: &dyn std::fmt::Display| {
        let (least, most) = (least.to_string(), most.to_string());
        if least == most {
            least
        } else {
            format!("{least}–{most}")
        }
    };
    let (least, most) = (range.least, range.most);
    let text = format!(
        "{} × {} mm",
        span(&least.height, &most.height),
        span(&least.width, &most.width)
    );
    let range_text = CleanHtml::span("size", &CleanHtml::text(&text));
    words.html(
        "size-measured",
        Some(range.sheets),
        &[
            ("range", &range_text),
            ("of", &CleanHtml::text(words.word(of))),
        ],
    )
}
