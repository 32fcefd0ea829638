//! Sizes: millimetres, height before width, as print rooms give them.

use std::fmt;

use super::certainty::Statements;

/// A length in millimetres.
///
/// Invariant: above 0 and at most 20,000, which no print reaches.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Mm(f64);

impl Mm {
    /// A length of `mm` millimetres; `None` where it is not a possible one.
    #[must_use]
    pub fn new(mm: f64) -> Option<Mm> {
        (mm > 0.0 && mm <= 20_000.0).then_some(Mm(mm))
    }

    /// The number of millimetres.
    #[must_use]
    pub(crate) fn get(self) -> f64 {
        self.0
    }
}

impl fmt::Display for Mm {
    /// Whole millimetres without a point, tenths where there are any: `212`, `211.5`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = (self.0 * 10.0).round() / 10.0;
        write!(f, "{tenths}")
    }
}

/// Height and width, in that order (Library of Congress, *Graphic Materials*, 3D).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Height.
    pub height: Mm,
    /// Width.
    pub width: Mm,
}

impl Size {
    /// The height in millimetres.
    #[must_use]
    pub fn height_mm(&self) -> f64 {
        self.height.get()
    }

    /// The width in millimetres.
    #[must_use]
    pub fn width_mm(&self) -> f64 {
        self.width.get()
    }

    /// The smaller height and the smaller width of two sizes.
    #[must_use]
    pub fn least(&self, other: &Size) -> Size {
        let smaller = |a: Mm, b: Mm| if b < a { b } else { a };
        Size {
            height: smaller(self.height, other.height),
            width: smaller(self.width, other.width),
        }
    }

    /// The larger height and the larger width of two sizes.
    #[must_use]
    pub fn most(&self, other: &Size) -> Size {
        let larger = |a: Mm, b: Mm| if b > a { b } else { a };
        Size {
            height: larger(self.height, other.height),
            width: larger(self.width, other.width),
        }
    }
}

impl fmt::Display for Size {
    /// `212 × 301`, without the unit.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} × {}", self.height, self.width)
    }
}

/// The sizes recorded for a design, a state or a printing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sizes {
    /// The image.
    pub image: Statements<Size>,
    /// The block, plate, stone or screen.
    pub matrix: Statements<Size>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_millimetres_are_written_without_a_point() {
        let size = Size {
            height: Mm::new(212.0).unwrap(),
            width: Mm::new(300.54).unwrap(),
        };
        assert_eq!(size.to_string(), "212 × 300.5");
    }

    #[test]
    fn a_length_is_above_nothing_and_below_a_room() {
        for mm in [0.0, -1.0, f64::NAN, f64::INFINITY, 20_000.1] {
            assert_eq!(Mm::new(mm), None);
        }
    }
}
