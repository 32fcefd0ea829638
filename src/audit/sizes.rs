//! Rules on measurements: two of one block or plate that disagree, and an image larger than its sheet.
//!
//! The tolerances are in `study::tolerance` (docs/definitions.md, "Measurements").

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Certainty, Statements};
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::place::Placed;
use crate::model::point::{PointKind, RestsOn};
use crate::model::size::Size;
use crate::study::Studies;
use crate::study::allowed::shown_values;
use crate::study::candidates::candidates;
use crate::study::census::is_counted;
use crate::study::tolerance::{SizeAgreement, compare_lengths};

use super::dates::taken_as;

/// The image or platemark of a sheet has another size than that of the design.
pub(super) fn disagree(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let is_fragment = impression
            .kind
            .own()
            .is_some_and(|kind| kind.as_str() == "fragment");
        if is_fragment || !is_counted(design, impression) {
            continue;
        }
        let sheet = &impression.sheet;
        for (measured, of_design, what) in [
            (&sheet.image, &design.image, "image"),
            (&sheet.platemark, &design.matrix_size, "platemark"),
        ] {
            findings.extend(against_design(
                design, impression, measured, of_design, what,
            ));
        }
    }
}

fn against_design(
    design: &Design,
    impression: &Impression,
    measured: &Statements<Size>,
    of_design: &Statements<Size>,
    what: &str,
) -> Option<Finding> {
    let own = measured.0.first()?;
    let recorded = of_design.0.first()?;
    if own.claim.certainty() != Certainty::Certain
        || recorded.claim.certainty() != Certainty::Certain
    {
        return None;
    }
    let cut_lengths = lengths_shown(design, impression);
    let worst = [Size::height_mm, Size::width_mm]
        .into_iter()
        .map(|side| {
            let length = side(&own.is.value);
            let of_design = of_design.iter().map(|claim| side(&claim.is.value));
            let nearest = of_design
                .chain(cut_lengths.iter().copied())
                .map(|known| compare_lengths(length, known))
                .min()
                .unwrap_or(SizeAgreement::Agree);
            // A sheet trimmed within the image shows only a part of it.
            let is_trimmed = impression.sheet.size.iter().any(|sheet| {
                compare_lengths(side(&sheet.is.value), length) == SizeAgreement::Agree
                    && length < side(&recorded.is.value)
            });
            if is_trimmed {
                SizeAgreement::Agree
            } else {
                nearest
            }
        })
        .max()?;
    let (code, help) = match worst {
        SizeAgreement::Agree => return None,
        SizeAgreement::Near => (
            Code::SizesNear,
            "paper shrinks and stretches; measure again if the sheet is at hand",
        ),
        SizeAgreement::Far => (
            Code::SizesDisagree,
            "measure again; if both are right, the matrix was cut down or is another one",
        ),
    };
    Some(
        Finding::new(
            code,
            own.is.place,
            format!(
                "the {what} of {} measures {} mm, that of design {} {} mm",
                impression.key, own.is.value, design.key, recorded.is.value
            ),
        )
        .saying("this sheet")
        .beside(recorded.is.place, "the design")
        .help(help),
    )
}

/// The lengths, in mm, that the states which the sheet may be of show at points resting on the matrix: a
/// block that was cut down has another size in later states.
fn lengths_shown(design: &Design, impression: &Impression) -> Vec<f64> {
    let mut allowed = taken_as(design, impression);
    if allowed.is_empty() {
        allowed = candidates(design);
    }
    design
        .points
        .iter()
        .filter(|p| p.rests_on.value == RestsOn::Matrix)
        .filter(|p| matches!(&p.kind, PointKind::Measure { unit, .. } if unit == "mm"))
        .flat_map(|point| {
            allowed
                .iter()
                .filter_map(|c| shown_values(&c.state?.shows, point))
                .flatten()
                .filter_map(crate::model::point::Value::number)
        })
        .collect()
}

/// The image or platemark is larger than the sheet.
pub(super) fn larger_than_sheet(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        let sheet = &impression.sheet;
        let Some(whole) = sheet.size.0.first().map(|s| &s.is) else {
            continue;
        };
        for (part, what) in [(&sheet.image, "image"), (&sheet.platemark, "platemark")] {
            let Some(part) = part.0.first().map(|s| &s.is) else {
                continue;
            };
            if is_larger(part, whole) {
                findings.push(
                    Finding::new(
                        Code::ImageLargerThanSheet,
                        part.place,
                        format!(
                            "the {what} of {} measures {} mm, the whole sheet {} mm",
                            impression.key, part.value, whole.value
                        ),
                    )
                    .saying(what)
                    .beside(whole.place, "the sheet")
                    .help("measure again; sizes are height before width, and the sheet is the whole piece of paper"),
                );
            }
        }
    }
}

/// Whether a part is larger by more than 1 mm, to which print rooms round.
fn is_larger(part: &Placed<Size>, whole: &Placed<Size>) -> bool {
    let exceeds = |side: fn(&Size) -> f64| side(&part.value) > side(&whole.value) + 1.0;
    exceeds(Size::height_mm) || exceeds(Size::width_mm)
}
