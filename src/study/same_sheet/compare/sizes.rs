//! Sizes: whether the measurements in two records can be of one sheet, its image or platemark, and its paper.
//!
//! In: two records. Out: reasons, by the tolerances of [`tolerance`](crate::tolerance). No single length
//! excludes: a sheet that measured larger later in both height and width is another sheet; where only one is
//! larger, a measurement may be wrong, or have been taken in the frame.

use crate::index::SheetAt;
use crate::same_sheet::days::{days, inspected};
use crate::same_sheet::reason::{Bearing, Evidence, MeasuredPart, Reason};
use crate::same_sheet::record::ComparedRecord;
use crate::same_sheet::size_index::{SizeIndex, own};
use crate::tolerance::{PaperMeasure, SizeAgreement, compare_sizes, grown, sheets_agree};
use keyblock_model::certainty::Statement;
use keyblock_model::edtf::Day;
use keyblock_model::impression::Impression;
use keyblock_model::sheet::Sheet;
use keyblock_model::size::Size;

/// Compares what the two records measure.
pub(super) fn compare(
    size_index: &SizeIndex,
    sheets: [SheetAt; 2],
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    let (a, b) = (&one.impression.sheet, &other.impression.sheet);
    papers(a, b, reasons);
    reasons.extend(whole_sheets(size_index, sheets, one, other));
    for (part, a, b) in [
        (MeasuredPart::Image, &a.image, &b.image),
        (MeasuredPart::Platemark, &a.platemark, &b.platemark),
    ] {
        if let (Some(a), Some(b)) = (own(a), own(b)) {
            let sizes = [a.is.value, b.is.value];
            let (bearing, evidence) = match compare_sizes(&sizes[0], &sizes[1]) {
                SizeAgreement::Agree => (Bearing::Fits, Evidence::MatrixAlike(part, sizes)),
                SizeAgreement::Near => (Bearing::Weighs, Evidence::MatrixNear(part, sizes)),
                SizeAgreement::Far => (Bearing::Contradicts, Evidence::MatrixFar(part, sizes)),
            };
            let places = [a.is.place, b.is.place];
            reasons.push(Reason::new(bearing, evidence, places));
        }
    }
}

/// Compares what was measured of the papers.
fn papers(one: &Sheet, other: &Sheet, reasons: &mut Vec<Reason>) {
    for (measure, a, b) in [
        (
            PaperMeasure::ChainLines,
            &one.chain_lines,
            &other.chain_lines,
        ),
        (PaperMeasure::LaidLines, &one.laid_lines, &other.laid_lines),
        (PaperMeasure::Thickness, &one.thickness, &other.thickness),
    ] {
        let (Some(a), Some(b)) = (a, b) else { continue };
        let values = [a.value, b.value];
        let (bearing, evidence) = match measure.compare(a.value, b.value) {
            SizeAgreement::Agree => (Bearing::Fits, Evidence::PaperAlike(measure, values)),
            SizeAgreement::Near => continue,
            SizeAgreement::Far => (Bearing::Weighs, Evidence::PaperApart(measure, values)),
        };
        reasons.push(Reason::new(bearing, evidence, [a.place, b.place]));
    }
}

/// Compares two sizes of whole sheets. A sheet cannot have grown; where it is not known which was measured
/// first, either may have been.
fn whole_sheets(
    size_index: &SizeIndex,
    sheets: [SheetAt; 2],
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
) -> Option<Reason> {
    let (a, b) = (
        own(&one.impression.sheet.size)?,
        own(&other.impression.sheet.size)?,
    );
    let sizes = [a.is.value, b.is.value];
    let places = [a.is.place, b.is.place];
    let reason = |bearing, evidence| Some(Reason::new(bearing, evidence, places));
    let are_sights = [one, other].map(|record| record.impression.sheet.measuring.sight);
    if are_sights == [false, false] && sheets_agree(&sizes[0], &sizes[1]) {
        let alone = size_index.are_alone(sheets, [&sizes[0], &sizes[1]]);
        let bearing = if alone {
            Bearing::Speaks
        } else {
            Bearing::Fits
        };
        return reason(bearing, Evidence::SheetAlike { sizes, alone });
    }
    let when = [measured(one.impression, a), measured(other.impression, b)];
    // A sheet that was measured within a mount may have been larger than what showed.
    let grown_from = |first: usize, then: usize| {
        if are_sights[first] {
            0
        } else {
            grown(&sizes[first], &sizes[then])
        }
    };
    let lengths = match when {
        [Some((_, first)), Some((then, _))] if first < then => grown_from(0, 1),
        [Some((then, _)), Some((_, first))] if first < then => grown_from(1, 0),
        _ => grown_from(0, 1).min(grown_from(1, 0)),
    };
    if lengths == 0 {
        return None;
    }
    let both_ways = lengths > 1;
    let bearing = if both_ways {
        Bearing::Excludes
    } else {
        Bearing::Contradicts
    };
    reason(bearing, Evidence::Grown { sizes, both_ways })
}

/// When a size was taken: as it or its sheet says, or when the sheet was last looked at.
fn measured(impression: &Impression, size: &Statement<Size>) -> Option<(Day, Day)> {
    let own = size.claim.date.as_ref();
    let date = own.or(impression.sheet.measuring.date.as_ref());
    let said = date.and_then(|date| days(&date.value));
    said.or_else(|| inspected(impression))
}
