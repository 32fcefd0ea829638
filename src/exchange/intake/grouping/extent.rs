//! How large what the matrix printed is: the size by which sheets of one design are known.
//!
//! In: the sizes of a row, or those recorded for a design. Out: [`Extent`]s, and whether two agree: in height and width
//! within 3 % of the larger, or within the rounding of the measurements where that is more. Images are compared with
//! images, platemarks with platemarks and blocks; never sheets, which are trimmed, and never what a mount or frame leaves
//! to see. Common practice, no source; FORMS of real listings: titles with images within 3 % tell half as many designs
//! again as titles alone.

use crate::exchange::intake::facts::{Facts, GivenSize};
use crate::exchange::intake::reading::sizes::Measured;
use crate::model::design::Design;
use crate::model::size::{Size, Sizes};

/// How far two images of one design may lie apart, of the larger: paper shrinks and stretches, and people measure to
/// different edges.
const ALIKE: f64 = 0.03;

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Part {
    /// The image.
    Image,
    /// The platemark, plate or block.
    Matrix,
}

impl Part {
    pub(super) fn word(self) -> &'static str {
        match self {
            Part::Image => "image",
            Part::Matrix => "platemark or block",
        }
    }

    fn words(self) -> &'static str {
        match self {
            Part::Image => "images",
            Part::Matrix => "platemarks or blocks",
        }
    }
}

/// A measured part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Extent {
    /// Which part.
    pub part: Part,
    /// Its height, in millimetres.
    pub height: f64,
    /// Its width, in millimetres.
    pub width: f64,
    /// Half of what the last figure of the measurement stands for, in millimetres.
    pub tolerance: f64,
}

impl Extent {
    /// The image of a row, else its platemark or block; `None` where neither is told once and without a mount.
    pub(super) fn of_row(facts: &Facts) -> Option<Extent> {
        let parts = [
            (Part::Image, Measured::Image),
            (Part::Matrix, Measured::Platemark),
            (Part::Matrix, Measured::Block),
        ];
        parts.into_iter().find_map(|(part, of)| {
            let size = facts.size_of(of).filter(|size| !size.is_sight)?;
            Some(Extent::given(part, size))
        })
    }

    fn given(part: Part, size: &GivenSize) -> Extent {
        Extent {
            part,
            height: size.height.mm,
            width: size.width.mm,
            tolerance: size.height.tolerance_mm.max(size.width.tolerance_mm),
        }
    }

    fn recorded(part: Part, size: &Size) -> Extent {
        Extent {
            part,
            height: size.height_mm(),
            width: size.width_mm(),
            tolerance: 0.0,
        }
    }

    /// Those of a design: its own, those of its states and printings, else those measured on its sheets.
    pub(super) fn all_of(design: &Design) -> Vec<Extent> {
        let states = design.standing_states().map(|state| &state.size);
        let printings = design.standing_printings().map(|printing| &printing.size);
        let mut found = Vec::new();
        for sizes in std::iter::once(&design.size).chain(states).chain(printings) {
            found.extend(of_sizes(sizes));
        }
        if found.is_empty() {
            for sheet in design
                .impressions
                .values()
                .filter(|sheet| !sheet.sheet.measuring.sight)
            {
                let image = sheet.sheet.image.iter();
                let plate = sheet.sheet.platemark.iter();
                found.extend(image.map(|s| Extent::recorded(Part::Image, &s.is.value)));
                found.extend(plate.map(|s| Extent::recorded(Part::Matrix, &s.is.value)));
            }
        }
        found
    }

    /// Whether the two may be of one design; `None` where different parts were measured.
    pub(super) fn agrees(&self, other: &Extent) -> Option<bool> {
        let rounding = self.tolerance + other.tolerance + 0.01;
        let alike = |one: f64, other: f64| {
            (one - other).abs() <= f64::max(one.max(other) * ALIKE, rounding)
        };
        let is_alike = alike(self.height, other.height) && alike(self.width, other.width);
        (self.part == other.part).then_some(is_alike)
    }

    /// By how much the two lie apart, in millimetres: the larger of the differences in height and width.
    pub(super) fn apart(&self, other: &Extent) -> f64 {
        let (height, width) = (self.height - other.height, self.width - other.width);
        height.abs().max(width.abs())
    }

    /// "166 × 243".
    pub(super) fn in_mm(&self) -> String {
        format!("{} × {}", rounded(self.height), rounded(self.width))
    }

    /// "images 166 × 243 and 167 × 243 mm agree within 3 %".
    pub(super) fn agreement(&self, other: &Extent) -> String {
        let parts = self.part.words();
        if self.in_mm() == other.in_mm() {
            return format!("{parts} {} mm on both", self.in_mm());
        }
        let within = |one: f64, other: f64| (one - other).abs() <= one.max(other) * ALIKE;
        let is_within = within(self.height, other.height) && within(self.width, other.width);
        let how = if is_within { "3 %" } else { "their rounding" };
        format!(
            "{parts} {} and {} mm agree within {how}",
            self.in_mm(),
            other.in_mm()
        )
    }

    /// "the image is 40 mm larger (210 × 243 beside 170 × 243 mm)".
    pub(super) fn difference(&self, other: &Extent) -> String {
        let part = self.part.word();
        let (height, width) = (self.height - other.height, self.width - other.width);
        let apart = rounded(self.apart(other));
        let how = if height.min(width) >= 0.0 {
            format!("{apart} mm larger")
        } else if height.max(width) <= 0.0 {
            format!("{apart} mm smaller")
        } else {
            "of another shape".to_owned()
        };
        format!(
            "the {part} is {how} ({} beside {} mm)",
            self.in_mm(),
            other.in_mm()
        )
    }
}

fn of_sizes(sizes: &Sizes) -> impl Iterator<Item = Extent> {
    let image = sizes.image.iter();
    let matrix = sizes.matrix.iter();
    let image = image.map(|s| Extent::recorded(Part::Image, &s.is.value));
    image.chain(matrix.map(|s| Extent::recorded(Part::Matrix, &s.is.value)))
}

/// Millimetres with at most one decimal.
fn rounded(mm: f64) -> String {
    let text = format!("{mm:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn image(height: f64, width: f64) -> Extent {
        Extent {
            part: Part::Image,
            height,
            width,
            tolerance: 0.5,
        }
    }

    #[test]
    fn images_agree_within_three_per_cent_in_height_and_width() {
        assert_eq!(image(166.0, 243.0).agrees(&image(167.0, 243.0)), Some(true));
        // 3 % of 103 is 3.09.
        assert_eq!(image(100.0, 243.0).agrees(&image(103.0, 243.0)), Some(true));
        assert_eq!(
            image(100.0, 243.0).agrees(&image(104.0, 243.0)),
            Some(false)
        );
        assert_eq!(
            image(166.0, 243.0).agrees(&image(166.0, 283.0)),
            Some(false)
        );
        let plate = Extent {
            part: Part::Matrix,
            ..image(166.0, 243.0)
        };
        assert_eq!(image(166.0, 243.0).agrees(&plate), None);
        // Small prints measured in whole centimetres: 5 cm may be 4.5 to 5.5.
        let in_cm = Extent {
            tolerance: 5.0,
            ..image(50.0, 40.0)
        };
        assert_eq!(in_cm.agrees(&image(53.0, 42.0)), Some(true));
        assert_eq!(
            image(166.0, 243.0).agreement(&image(167.0, 243.0)),
            "images 166 × 243 and 167 × 243 mm agree within 3 %"
        );
        assert_eq!(
            image(206.5, 243.0).difference(&image(166.0, 243.0)),
            "the image is 40.5 mm larger (206.5 × 243 beside 166 × 243 mm)"
        );
    }
}
