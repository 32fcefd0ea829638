//! Slips of measuring and copying: sides exchanged, or a figure in inches or centimetres taken for millimetres.
//!
//! In: a measurement, and the size that it should agree with or the part that it should contain. Out: the slip after
//! whose repair the two fit. A slip is a guess for the cataloguer to check; nothing is corrected.
//! Method: the measurement is turned, or multiplied or divided by 10 and 25.4 (the international inch in millimetres,
//! exact since 1959), and compared again. Turned it must agree; converted it may lie as far off as paper explains,
//! because inches are often rounded to an eighth.
//! Definitions: `docs/definitions.md, "Measurements"`.
//!
//! ```
//! # use keyblock::model::size::{Mm, Size};
//! # use keyblock::study::size_slip::{SizeSlip, slip};
//! let size = |height, width| Size { height: Mm::new(height).unwrap(), width: Mm::new(width).unwrap() };
//! let recorded = size(246.0, 362.0);
//! assert_eq!(slip(&size(362.0, 246.0), &recorded), Some(SizeSlip::SidesSwapped));
//! assert_eq!(slip(&size(9.75, 14.25), &recorded), Some(SizeSlip::Inches));
//! assert_eq!(slip(&size(24.6, 36.2), &recorded), Some(SizeSlip::Centimetres));
//! assert_eq!(slip(&size(232.0, 362.0), &recorded), None);
//! ```

use crate::tolerance::{SizeAgreement, compare_sizes};
use keyblock_model::size::{Mm, Size};

/// Millimetres in an inch.
const INCH: f64 = 25.4;

/// Millimetres in a centimetre.
const CENTIMETRE: f64 = 10.0;

/// By how much a part may be larger than the whole that contains it, in mm: print rooms round to the millimetre
/// (docs/trade.md, "Tolerances").
const ROUNDED_MM: f64 = 1.0;

/// How many times as high and as wide as its part a converted whole may be (ours): where it would be larger, the
/// conversion explains nothing.
const LARGEST_WHOLE: f64 = 4.0;

/// A slip that explains a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeSlip {
    /// Height and width are exchanged.
    SidesSwapped,
    /// Inches stand for millimetres: the figures are 25.4 times too small.
    Inches,
    /// Centimetres stand for millimetres: the figures are 10 times too small.
    Centimetres,
    /// Millimetres were converted as if they were inches: the figures are 25.4 times too large.
    TakenForInches,
    /// Millimetres were converted as if they were centimetres: the figures are 10 times too large.
    TakenForCentimetres,
}

impl SizeSlip {
    /// Whether it is a slip of the unit.
    #[must_use]
    pub fn is_of_unit(self) -> bool {
        self != SizeSlip::SidesSwapped
    }

    /// The size without the slip; `None` where no print has it.
    #[must_use]
    pub fn repaired(self, size: &Size) -> Option<Size> {
        let scaled = |factor: f64| {
            Some(Size {
                height: Mm::new(size.height_mm() * factor)?,
                width: Mm::new(size.width_mm() * factor)?,
            })
        };
        match self {
            SizeSlip::SidesSwapped => Some(Size {
                height: size.width,
                width: size.height,
            }),
            SizeSlip::Inches => scaled(INCH),
            SizeSlip::Centimetres => scaled(CENTIMETRE),
            SizeSlip::TakenForInches => scaled(1.0 / INCH),
            SizeSlip::TakenForCentimetres => scaled(1.0 / CENTIMETRE),
        }
    }
}

/// The slip that explains why a measurement does not agree with the size it should have; `None` where paper
/// explains the difference, or no slip does.
#[must_use]
pub fn slip(measured: &Size, expected: &Size) -> Option<SizeSlip> {
    if compare_sizes(measured, expected) != SizeAgreement::Far {
        return None;
    }
    let fits = |slip: SizeSlip| {
        let furthest = if slip.is_of_unit() {
            SizeAgreement::Near
        } else {
            SizeAgreement::Agree
        };
        let repaired = slip.repaired(measured);
        repaired.is_some_and(|size| compare_sizes(&size, expected) <= furthest)
    };
    [
        SizeSlip::SidesSwapped,
        SizeSlip::Inches,
        SizeSlip::Centimetres,
        SizeSlip::TakenForInches,
        SizeSlip::TakenForCentimetres,
    ]
    .into_iter()
    .find(|slip| fits(*slip))
}

/// Whether a part lies within a whole, as far as rounding allows.
#[must_use]
pub fn contains(whole: &Size, part: &Size) -> bool {
    part.height_mm() <= whole.height_mm() + ROUNDED_MM
        && part.width_mm() <= whole.width_mm() + ROUNDED_MM
}

/// The slip in a whole, a sheet or a plate, that does not fit its part, the image: turned or converted to
/// millimetres it contains the part, or it is so large that it contains it even after the figures are divided by
/// 10 or 25.4. `None` where there is nothing to explain, or no slip explains it.
#[must_use]
pub fn slip_of_whole(whole: &Size, part: &Size) -> Option<SizeSlip> {
    let contained_after = |slip: &SizeSlip| {
        let repaired = slip.repaired(whole);
        repaired.is_some_and(|size| {
            contains(&size, part)
                && size.height_mm() <= part.height_mm() * LARGEST_WHOLE
                && size.width_mm() <= part.width_mm() * LARGEST_WHOLE
        })
    };
    // The smaller factor first where a whole is too small, the larger first where it is too large: the sheet that
    // is nearer to the part is likelier.
    let slips: &[SizeSlip] = if contains(whole, part) {
        &[SizeSlip::TakenForInches, SizeSlip::TakenForCentimetres]
    } else {
        &[
            SizeSlip::SidesSwapped,
            SizeSlip::Centimetres,
            SizeSlip::Inches,
        ]
    };
    slips.iter().copied().find(contained_after)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(height: f64, width: f64) -> Size {
        Size {
            height: Mm::new(height).unwrap(),
            width: Mm::new(width).unwrap(),
        }
    }

    #[test]
    fn both_directions_of_both_units_are_named() {
        let recorded = size(250.0, 370.0);
        let slip_in = |height, width| slip(&size(height, width), &recorded);
        assert_eq!(slip_in(9.875, 14.625), Some(SizeSlip::Inches));
        assert_eq!(slip_in(25.0, 37.0), Some(SizeSlip::Centimetres));
        assert_eq!(slip_in(6350.0, 9398.0), Some(SizeSlip::TakenForInches));
        assert_eq!(slip_in(2500.0, 3700.0), Some(SizeSlip::TakenForCentimetres));
        assert_eq!(slip_in(370.0, 250.0), Some(SizeSlip::SidesSwapped));
    }

    #[test]
    fn an_ordinary_difference_and_a_square_are_no_slips() {
        assert_eq!(slip(&size(240.0, 370.0), &size(250.0, 370.0)), None);
        assert_eq!(slip(&size(250.0, 252.0), &size(252.0, 250.0)), None);
        assert_eq!(slip(&size(125.0, 185.0), &size(250.0, 370.0)), None);
    }

    #[test]
    fn a_sheet_smaller_than_its_image_is_turned_or_converted() {
        let image = size(246.0, 362.0);
        let slip_in = |height, width| slip_of_whole(&size(height, width), &image);
        assert_eq!(slip_in(420.0, 300.0), Some(SizeSlip::SidesSwapped));
        assert_eq!(slip_in(30.0, 42.0), Some(SizeSlip::Centimetres));
        assert_eq!(slip_in(11.75, 16.5), Some(SizeSlip::Inches));
        assert_eq!(slip_in(3000.0, 4200.0), Some(SizeSlip::TakenForCentimetres));
        assert_eq!(slip_in(7620.0, 10_668.0), Some(SizeSlip::TakenForInches));
        assert_eq!(slip_in(300.0, 420.0), None);
        assert_eq!(slip_in(230.0, 360.0), None);
        assert_eq!(slip_in(200.0, 400.0), None);
    }
}
