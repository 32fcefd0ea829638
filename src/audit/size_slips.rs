//! Rules on slips of measuring and copying: exchanged sides, and inches or centimetres taken for millimetres.
//!
//! The slips are found by `study::size_slip` (docs/definitions.md, "Measurements"). [`super::sizes`] names them where a
//! sheet disagrees with its design; the rules here compare a sheet with its image, the figures of other sources with
//! the catalogue's own, and the image of a design with its matrix.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Statements;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::place::Placed;
use crate::model::size::{Size, Sizes};
use crate::study::Studies;
use crate::study::size_slip::{SizeSlip, contains, slip, slip_of_whole};
use crate::study::sizes::{Part, measured_parts, of_sheet, states_of};

/// The code of a slip.
pub(super) fn code(slip: SizeSlip) -> Code {
    if slip.is_of_unit() {
        Code::SizeUnitMistaken
    } else {
        Code::SizeSidesSwapped
    }
}

/// What to look for, with the size as it would be without the slip.
pub(super) fn help(slip: SizeSlip, size: &Size) -> String {
    let likely = match slip {
        SizeSlip::SidesSwapped => "height and width are probably swapped",
        SizeSlip::Inches => "inches were probably taken for millimetres (1 in = 25.4 mm)",
        SizeSlip::Centimetres => "centimetres were probably taken for millimetres (1 cm = 10 mm)",
        SizeSlip::TakenForInches => {
            "millimetres were probably multiplied by 25.4 as if they were inches"
        }
        SizeSlip::TakenForCentimetres => {
            "millimetres were probably multiplied by 10 as if they were centimetres"
        }
    };
    let repaired = slip.repaired(size);
    repaired.map_or_else(
        || likely.to_owned(),
        |size| {
            format!(
                "{likely}: that gives [{}, {}]; look at the source",
                size.height, size.width
            )
        },
    )
}

/// A sheet is so much larger than its image that its figures were probably converted twice.
pub(super) fn sheets(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(whole) = impression.sheet.size.0.first().map(|s| &s.is) else {
            continue;
        };
        let Some((part, what)) = part_within(design, impression) else {
            continue;
        };
        let likely = slip_of_whole(&whole.value, &part.value);
        let Some(slip) = likely.filter(|_| contains(&whole.value, &part.value)) else {
            continue;
        };
        let message = format!(
            "the sheet of {} measures {} mm, its {what} {} mm",
            design.sheet_number(impression),
            whole.value,
            part.value
        );
        findings.push(
            Finding::new(code(slip), whole.place, message)
                .saying("the sheet")
                .beside(part.place, what)
                .help(help(slip, &whole.value)),
        );
    }
}

/// The image or platemark of a sheet: as it was measured on the sheet, else as its state, its printing or the design
/// has it.
fn part_within<'a>(
    design: &'a Design,
    impression: &'a Impression,
) -> Option<(&'a Placed<Size>, &'static str)> {
    let parts = measured_parts(impression);
    let measured = parts
        .iter()
        .find_map(|(measured, _, what)| Some((&measured.0.first()?.is, *what)));
    measured.or_else(|| {
        parts.iter().find_map(|(_, part, what)| {
            let recorded = of_sheet(design, impression, *part);
            let largest = recorded.iter().filter_map(|said| said.0.first());
            let largest = largest.max_by(|a, b| {
                let area = |size: &Size| size.height_mm() * size.width_mm();
                area(&a.is.value).total_cmp(&area(&b.is.value))
            })?;
            Some((&largest.is, *what))
        })
    })
}

/// A figure of another source is the catalogue's own after a slip is repaired. A figure that is the size of some
/// state has none.
pub(super) fn other_figures(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let parts: [(Part, &str); 2] = [(|s| &s.image, "image"), (|s| &s.matrix, "matrix")];
        for (part, what) in parts {
            for (_, sizes) in tables(design) {
                other_figures_of(part(sizes), what, findings, |size| {
                    !states_of(design, part, size).is_empty()
                });
            }
        }
        for impression in design.impressions.values() {
            other_figures_of(&impression.sheet.size, "sheet", findings, |_| false);
            for (measured, _, what) in measured_parts(impression) {
                other_figures_of(measured, what, findings, |_| false);
            }
        }
    }
}

fn other_figures_of(
    said: &Statements<Size>,
    what: &str,
    findings: &mut Vec<Finding>,
    is_of_state: impl Fn(&Size) -> bool,
) {
    let Some(own) = said.0.first() else {
        return;
    };
    for other in said.others() {
        let likely = slip(&other.is.value, &own.is.value);
        let Some(slip) = likely.filter(|_| !is_of_state(&other.is.value)) else {
            continue;
        };
        let message = format!(
            "another source gives {} mm for the {what}, the catalogue {} mm",
            other.is.value, own.is.value
        );
        findings.push(
            Finding::new(code(slip), other.is.place, message)
                .saying("the other source")
                .beside(own.is.place, "the catalogue")
                .help(help(slip, &other.is.value)),
        );
    }
}

/// The image of a design, a state or a printing does not lie within its matrix, and a slip explains it.
pub(super) fn parts(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        for (of, sizes) in tables(design) {
            let (Some(image), Some(matrix)) = (sizes.image.0.first(), sizes.matrix.0.first())
            else {
                continue;
            };
            let (image, matrix) = (&image.is, &matrix.is);
            let Some(slip) = slip_of_whole(&matrix.value, &image.value) else {
                continue;
            };
            let message = format!(
                "the image of {of} measures {} mm, its matrix {} mm",
                image.value, matrix.value
            );
            findings.push(
                Finding::new(code(slip), matrix.place, message)
                    .saying("the matrix")
                    .beside(image.place, "the image")
                    .help(help(slip, &matrix.value)),
            );
        }
    }
}

/// The size tables of a design, its states and its printings, each with the name of what it is of.
fn tables(design: &Design) -> impl Iterator<Item = (String, &Sizes)> {
    let states = design.states.iter().map(|state| {
        let name = format!("state `{}` of design {}", state.key.value, design.number);
        (name, &state.size)
    });
    let printings = design.printings.iter().map(|printing| {
        let name = format!(
            "printing `{}` of design {}",
            printing.key.value, design.number
        );
        (name, &printing.size)
    });
    std::iter::once((format!("design {}", design.number), &design.size))
        .chain(states)
        .chain(printings)
}
