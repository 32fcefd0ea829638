//! Rules on measurements: two of one block or plate that disagree, and an image larger than its sheet.
//!
//! A sheet is compared with the size of its state or printing where that is recorded, else with the design's
//! (`study::sizes`). Slips that explain a disagreement are named by [`super::size_slips`].
//!
//! The tolerances are in `study::tolerance` (docs/definitions.md, "Measurements").

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Certainty, Statement, Statements};
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::point::{PointKind, RestsOn};
use crate::model::size::Size;
use crate::study::Studies;
use crate::study::allowed::shown_values;
use crate::study::candidates::candidates;
use crate::study::census::is_counted;
use crate::study::size_slip::{SizeSlip, contains, slip, slip_of_whole};
use crate::study::sizes::{Part, is_fragment, measured_parts, of_sheet};
use crate::study::tolerance::{SizeAgreement, compare_lengths};

use super::dates::taken_as;
use super::size_slips;

/// The image or platemark of a sheet has another size than its state, its printing or the design.
pub(super) fn disagree(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        if is_fragment(impression) || !is_counted(design, impression) {
            continue;
        }
        for (measured, part, what) in measured_parts(impression) {
            findings.extend(against_recorded(design, impression, measured, part, what));
        }
    }
}

/// The certain size that a part of a sheet should have, from the statement that it lies nearest to; `None` where
/// none is recorded, or one that may apply is not certain.
fn nearest<'a>(
    design: &'a Design,
    impression: &Impression,
    own: &Size,
    part: Part,
) -> Option<(&'a Statement<Size>, SizeAgreement)> {
    let recorded = of_sheet(design, impression, part);
    let certain = |said: &&Statements<Size>| {
        let own = said.0.first();
        own.is_some_and(|own| own.claim.certainty() == Certainty::Certain)
    };
    if !recorded.iter().all(certain) {
        return None;
    }
    let cut_lengths = lengths_shown(design, impression);
    let compare = |known: &Size| {
        [Size::height_mm, Size::width_mm]
            .into_iter()
            .map(|side| {
                let length = side(own);
                // Within a mount only a part of the image may show.
                if impression.sheet.measuring.sight && length < side(known) {
                    return SizeAgreement::Agree;
                }
                // A sheet trimmed within the image shows only a part of it.
                let is_trimmed = impression.sheet.size.iter().any(|sheet| {
                    compare_lengths(side(&sheet.is.value), length) == SizeAgreement::Agree
                        && length < side(known)
                });
                if is_trimmed {
                    return SizeAgreement::Agree;
                }
                let lengths = std::iter::once(side(known)).chain(cut_lengths.iter().copied());
                let agreement = lengths.map(|known| compare_lengths(length, known)).min();
                agreement.unwrap_or(SizeAgreement::Agree)
            })
            .max()
            .unwrap_or(SizeAgreement::Agree)
    };
    recorded
        .into_iter()
        .flatten()
        .map(|known| (known, compare(&known.is.value)))
        .min_by_key(|(_, agreement)| *agreement)
}

/// The slip that explains why a part of a sheet has not the size it should have.
pub(super) fn slip_of_part(
    design: &Design,
    impression: &Impression,
    own: &Size,
    part: Part,
) -> Option<SizeSlip> {
    let (known, agreement) = nearest(design, impression, own, part)?;
    (agreement == SizeAgreement::Far)
        .then(|| slip(own, &known.is.value))
        .flatten()
}

fn against_recorded(
    design: &Design,
    impression: &Impression,
    measured: &Statements<Size>,
    part: Part,
    what: &str,
) -> Option<Finding> {
    let own = measured.0.first()?;
    if own.claim.certainty() != Certainty::Certain {
        return None;
    }
    let (recorded, agreement) = nearest(design, impression, &own.is.value, part)?;
    let likely = slip_of_part(design, impression, &own.is.value, part);
    let (code, help) = match (agreement, likely) {
        (SizeAgreement::Agree, _) => return None,
        (SizeAgreement::Near, _) => (
            Code::SizesNear,
            "paper shrinks and stretches; measure again if the sheet is at hand".to_owned(),
        ),
        (SizeAgreement::Far, Some(slip)) => {
            (size_slips::code(slip), size_slips::help(slip, &own.is.value))
        }
        (SizeAgreement::Far, None) => (
            Code::SizesDisagree,
            "measure again; if both are right, the matrix was cut down (give the state a `size` of its own) or is another one".to_owned(),
        ),
    };
    let is_of_design = part(&design.size)
        .iter()
        .any(|said| said.is.place == recorded.is.place);
    let (of_what, beside) = if is_of_design {
        (format!("that of design {}", design.number), "the design")
    } else {
        (
            format!("that of its state or printing of design {}", design.number),
            "its state or printing",
        )
    };
    Some(
        Finding::new(
            code,
            own.is.place,
            format!(
                "the {what} of {} measures {} mm, {of_what} {} mm",
                design.sheet_number(impression),
                own.is.value,
                recorded.is.value
            ),
        )
        .saying("this sheet")
        .beside(recorded.is.place, beside)
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

/// The image or platemark is larger than the sheet. Where the part itself has a slip that its design shows, only
/// that is reported ([`disagree`]).
pub(super) fn larger_than_sheet(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        // What shows in a mount is not the whole sheet.
        if impression.sheet.measuring.sight {
            continue;
        }
        let Some(whole) = impression.sheet.size.0.first().map(|s| &s.is) else {
            continue;
        };
        for (measured, part_of_design, what) in measured_parts(impression) {
            let Some(part) = measured.0.first().map(|s| &s.is) else {
                continue;
            };
            if contains(&whole.value, &part.value)
                || slip_of_part(design, impression, &part.value, part_of_design).is_some()
            {
                continue;
            }
            let help = slip_of_whole(&whole.value, &part.value).map_or_else(
                || "measure again; sizes are height before width, and the sheet is the whole piece of paper".to_owned(),
                |slip| format!("of the sheet, {}", size_slips::help(slip, &whole.value)),
            );
            findings.push(
                Finding::new(
                    Code::ImageLargerThanSheet,
                    part.place,
                    format!(
                        "the {what} of {} measures {} mm, the whole sheet {} mm",
                        design.sheet_number(impression),
                        part.value,
                        whole.value
                    ),
                )
                .saying(what)
                .beside(whole.place, "the sheet")
                .help(help),
            );
        }
    }
}
