//! What a cell says of a size.

use crate::exchange::intake::reading::words::Span;
use crate::model::size::{Mm, Size};
use crate::model::words::closed_list;

closed_list! {
    /// What was measured.
    Measured {
        /// The printed picture.
        Image = "image",
        /// The whole piece of paper.
        Sheet = "sheet",
        /// The edge of the plate in the paper.
        Platemark = "platemark",
        /// The block or stone.
        Block = "block",
        /// What the image is on, paper or other.
        Support = "support",
        /// The mount.
        Mount = "mount",
        /// The frame.
        Frame = "frame",
        /// The object as it is shown.
        Displayed = "displayed",
        /// The object, not said of which part of it.
        Object = "object",
        /// Not said.
        Unsaid = "unsaid",
    }
}

closed_list! {
    /// A unit of length.
    Unit {
        /// Millimetres.
        Millimetre = "mm",
        /// Centimetres.
        Centimetre = "cm",
        /// Metres.
        Metre = "m",
        /// Inches.
        Inch = "in",
        /// Feet.
        Foot = "ft",
        /// Japanese feet.
        Shaku = "shaku",
        /// Tenths of a Japanese foot.
        Sun = "sun",
    }
}

impl Unit {
    /// Its length in millimetres.
    ///
    /// An inch is 25.4 mm exactly and a foot twelve inches (agreement on the yard and pound of 1959; NIST SP 811,
    /// appendix B). A shaku is 10/33 m (docs/trade.md, "Tables that others hand in").
    #[must_use]
    pub fn mm(self) -> f64 {
        match self {
            Unit::Millimetre => 1.0,
            Unit::Centimetre => 10.0,
            Unit::Metre => 1000.0,
            Unit::Inch => 25.4,
            Unit::Foot => 304.8,
            Unit::Shaku => 10_000.0 / 33.0,
            Unit::Sun => 1_000.0 / 33.0,
        }
    }
}

closed_list! {
    /// Which of two lengths stands first.
    Order {
        /// The height, as print rooms write.
        HeightFirst = "height-first",
        /// The width.
        WidthFirst = "width-first",
    }
}

/// What a cell need not say because its column does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Assumed {
    /// The unit of numbers without one.
    pub unit: Option<Unit>,
    /// What was measured, where the cell does not say it.
    pub of: Option<Measured>,
    /// The order of lengths without words for height and width.
    pub order: Option<Order>,
}

/// A length as written, within its rounding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Length {
    /// Millimetres.
    pub mm: f64,
    /// Half of what the last figure, or the finest fraction, stands for, in millimetres.
    pub tolerance_mm: f64,
}

impl Length {
    /// Whether two lengths may be one.
    #[must_use]
    pub fn agrees(self, other: Length) -> bool {
        // The hundredth absorbs that 25.4 times a fraction is no binary number.
        (self.mm - other.mm).abs() <= self.tolerance_mm + other.tolerance_mm + 0.01
    }
}

/// One measurement of a cell.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measurement {
    /// What was measured: several where one size is given for all.
    pub of: Vec<Measured>,
    /// Whether it is the size of each of several.
    pub is_of_each: bool,
    /// Whether it was measured within a mount or frame.
    pub is_sight: bool,
    /// Whether it is said to be approximate.
    pub is_approximate: bool,
    /// Whether the shape is said to be irregular, so that the lengths are the longest.
    pub is_irregular: bool,
    /// The unit; `None` where none is written or known, and then no length is given.
    pub unit: Option<Unit>,
    /// The numbers as written, in the order height, width, depth where that is known.
    pub figures: Vec<f64>,
    /// The height.
    pub height: Option<Length>,
    /// The width.
    pub width: Option<Length>,
    /// The depth, of frames and mounts.
    pub depth: Option<Length>,
    /// The diameter.
    pub diameter: Option<Length>,
    /// Where the lengths stand in the cell.
    pub at: Span,
}

impl Measurement {
    /// The size of the records; `None` where the height, the width or the unit is missing.
    #[must_use]
    pub fn size(&self) -> Option<Size> {
        Some(Size {
            height: Mm::new(self.height?.mm)?,
            width: Mm::new(self.width?.mm)?,
        })
    }

    /// Its lengths, each axis in a place of its own.
    pub(super) fn axes(&self) -> [Option<Length>; 4] {
        [self.height, self.width, self.depth, self.diameter]
    }
}
