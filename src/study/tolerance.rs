//! How far two measurements of one thing may lie apart.
//!
//! In: two lengths or sizes, in millimetres. Out: whether they agree. Of a block or plate: up to 2 mm or 1 %
//! two measurements agree; up to 3 % the paper, which was printed damp, can explain the difference; beyond
//! that the matrix is another, was cut, or a measurement is wrong. Of the sheet, which may be trimmed but
//! never grows: up to 2 mm two measurements agree; a later one may be smaller by any amount, and larger by up
//! to 3 mm. These limits are a proposal (common practice, no source): `docs/trade.md, "Tolerances"`;
//! `docs/definitions.md, "Measurements"`.
//!
//! ```
//! # use keyblock::study::tolerance::{SizeAgreement, compare_lengths};
//! assert_eq!(compare_lengths(500.0, 504.9), SizeAgreement::Agree);
//! assert_eq!(compare_lengths(500.0, 510.0), SizeAgreement::Near);
//! assert_eq!(compare_lengths(500.0, 520.0), SizeAgreement::Far);
//! ```

use keyblock_model::size::Size;

/// How far apart two measurements of one length of a block or plate lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SizeAgreement {
    /// They agree.
    Agree,
    /// Paper can explain it.
    Near,
    /// Only another matrix, a cut or a mistake can explain it.
    Far,
}

/// How far apart two lengths of a block or plate may lie, as a share of the larger.
pub const MATRIX_ALIKE: f64 = 0.01;

/// How far apart the chain lines of two sheets of one paper may lie, in millimetres.
pub const CHAIN_LINES_ALIKE_MM: f64 = 1.0;

/// By how many two counts of the laid lines in a centimetre of one paper may differ.
pub const LAID_LINES_ALIKE: f64 = 1.0;

/// How far apart the thickness of two sheets of one paper may lie, as a share of the larger.
pub const THICKNESS_ALIKE: f64 = 0.15;

/// How far apart two measurements of one sheet may lie, in millimetres.
pub const SHEET_ALIKE_MM: f64 = 2.0;

/// How much larger than before a sheet may be measured, in millimetres.
pub(crate) const SHEET_GROWN_MM: f64 = 3.0;

/// A measurement of the paper that does not change when a sheet is trimmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaperMeasure {
    /// From one chain line to the next, in millimetres.
    ChainLines,
    /// Laid lines in a centimetre.
    LaidLines,
    /// The thickness, in millimetres.
    Thickness,
}

impl PaperMeasure {
    /// How far two measurements of one paper may lie apart, and how far they lie apart on two papers for certain: chain
    /// lines of one mould are not evenly spaced, laid lines are counted by eye, and paper is not equally thick
    /// throughout. Between the two nothing is said.
    fn bounds(self, larger: f64) -> [f64; 2] {
        match self {
            PaperMeasure::ChainLines => [CHAIN_LINES_ALIKE_MM, 2.0],
            PaperMeasure::LaidLines => [LAID_LINES_ALIKE, 2.0],
            PaperMeasure::Thickness => [larger * THICKNESS_ALIKE, larger * 0.4],
        }
    }

    /// How far apart two measurements lie.
    #[must_use]
    pub fn compare(self, one: f64, other: f64) -> SizeAgreement {
        let [alike, apart] = self.bounds(one.max(other));
        let difference = (one - other).abs();
        if difference <= alike {
            SizeAgreement::Agree
        } else if difference <= apart {
            SizeAgreement::Near
        } else {
            SizeAgreement::Far
        }
    }
}

/// How far apart two lengths of a block or plate lie, in millimetres.
#[must_use]
pub fn compare_lengths(one: f64, other: f64) -> SizeAgreement {
    let difference = (one - other).abs();
    let larger = one.max(other);
    if difference <= f64::max(2.0, larger * MATRIX_ALIKE) {
        SizeAgreement::Agree
    } else if difference <= larger * 0.03 {
        SizeAgreement::Near
    } else {
        SizeAgreement::Far
    }
}

/// How far apart two sizes of a block or plate lie: as far as the worse of height and width.
#[must_use]
pub(crate) fn compare_sizes(one: &Size, other: &Size) -> SizeAgreement {
    let height = compare_lengths(one.height_mm(), other.height_mm());
    height.max(compare_lengths(one.width_mm(), other.width_mm()))
}

/// Whether two sizes of whole sheets agree: neither length lies further apart than measuring explains.
#[must_use]
pub(crate) fn sheets_agree(one: &Size, other: &Size) -> bool {
    let agree = |one: f64, other: f64| (one - other).abs() <= SHEET_ALIKE_MM;
    agree(one.height_mm(), other.height_mm()) && agree(one.width_mm(), other.width_mm())
}

/// In how many of its two lengths a sheet measures larger `later` than `earlier` by more than measuring
/// explains.
#[must_use]
pub(crate) fn grown(earlier: &Size, later: &Size) -> usize {
    let has_grown = |earlier: f64, later: f64| usize::from(later - earlier > SHEET_GROWN_MM);
    has_grown(earlier.height_mm(), later.height_mm())
        + has_grown(earlier.width_mm(), later.width_mm())
}

#[cfg(test)]
mod tests {
    use super::*;
    use keyblock_model::size::Mm;

    fn size(height: f64, width: f64) -> Size {
        Size {
            height: Mm::new(height).unwrap(),
            width: Mm::new(width).unwrap(),
        }
    }

    #[test]
    fn measurements_agree_within_two_millimetres_or_one_percent() {
        // docs/trade.md, "Tolerances"; common practice, no source.
        assert_eq!(compare_lengths(100.0, 102.0), SizeAgreement::Agree);
        assert_eq!(compare_lengths(100.0, 102.5), SizeAgreement::Near);
        assert_eq!(compare_lengths(500.0, 504.9), SizeAgreement::Agree);
        assert_eq!(compare_lengths(500.0, 510.0), SizeAgreement::Near);
        assert_eq!(compare_lengths(500.0, 520.0), SizeAgreement::Far);
        assert_eq!(compare_lengths(50.0, 53.0), SizeAgreement::Far);
        assert_eq!(
            compare_sizes(&size(100.0, 50.0), &size(100.0, 53.0)),
            SizeAgreement::Far
        );
    }

    #[test]
    fn paper_is_alike_within_what_moulds_and_eyes_vary() {
        // docs/trade.md, "Tolerances"; common practice, no source.
        let chain = |one, other| PaperMeasure::ChainLines.compare(one, other);
        assert_eq!(chain(25.0, 26.0), SizeAgreement::Agree);
        assert_eq!(chain(25.0, 26.5), SizeAgreement::Near);
        assert_eq!(chain(25.0, 27.5), SizeAgreement::Far);
        let thickness = |one, other| PaperMeasure::Thickness.compare(one, other);
        assert_eq!(thickness(0.10, 0.11), SizeAgreement::Agree);
        assert_eq!(thickness(0.10, 0.13), SizeAgreement::Near);
        assert_eq!(thickness(0.10, 0.25), SizeAgreement::Far);
    }

    #[test]
    fn paper_can_be_trimmed_but_does_not_grow() {
        // docs/trade.md, "Tolerances"; common practice, no source.
        assert_eq!(grown(&size(340.0, 470.0), &size(300.0, 400.0)), 0);
        assert_eq!(grown(&size(340.0, 470.0), &size(343.0, 473.0)), 0);
        assert_eq!(grown(&size(340.0, 470.0), &size(343.5, 400.0)), 1);
        assert_eq!(grown(&size(340.0, 470.0), &size(344.0, 474.0)), 2);
        assert!(sheets_agree(&size(310.0, 425.0), &size(308.0, 424.0)));
        assert!(!sheets_agree(&size(310.0, 425.0), &size(307.5, 424.0)));
    }
}
