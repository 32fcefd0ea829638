//! Registration: the result of aligning a picture to the reference picture.
#![allow(
    clippy::many_single_char_names,
    reason = "the nine numbers of a matrix and two coordinates"
)]

use super::words::closed_list;

/// A plane projective map (a homography) from pixels of one picture to pixels of another, both
/// upright and whole, as masters; pixel centres lie at whole numbers.
///
/// Invariant: nine finite numbers, row by row, that can be inverted; the last is 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Homography([f64; 9]);

impl Homography {
    /// The map that moves nothing.
    pub const IDENTITY: Homography = Homography([1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0]);

    /// A map from its nine numbers, row by row; `None` where they are not finite or make no map
    /// that can be inverted.
    #[must_use]
    pub fn new(rows: [f64; 9]) -> Option<Homography> {
        let last = rows[8];
        let scaled = rows.map(|number| number / last);
        let map = Homography(scaled);
        let is_sound = scaled.iter().all(|n| n.is_finite())
            && map.determinant().is_normal()
            && map.determinant().abs() > 1e-12;
        is_sound.then_some(map)
    }

    /// The map that scales a picture about its edges, not about its first pixel's centre: what
    /// lies at `x` in the original lies at `factor · x + (factor - 1) / 2`.
    #[must_use]
    pub fn scaling(factor_x: f64, factor_y: f64) -> Option<Homography> {
        let shift = |factor: f64| (factor - 1.0) / 2.0;
        let (x, y) = (shift(factor_x), shift(factor_y));
        Homography::new([factor_x, 0.0, x, 0.0, factor_y, y, 0.0, 0.0, 1.0])
    }

    /// The nine numbers, row by row.
    #[must_use]
    pub fn rows(&self) -> [f64; 9] {
        self.0
    }

    /// Where a point goes, in px; `None` where it goes to infinity.
    // Called for single pixels, and from another crate.
    #[must_use]
    #[inline]
    pub fn apply(&self, x: f64, y: f64) -> Option<(f64, f64)> {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        let depth = g * x + h * y + i;
        let to = ((a * x + b * y + c) / depth, (d * x + e * y + f) / depth);
        (to.0.is_finite() && to.1.is_finite() && depth > 0.0).then_some(to)
    }

    /// This map, then `next`.
    #[must_use]
    pub fn then(&self, next: &Homography) -> Option<Homography> {
        let (first, second) = (&self.0, &next.0);
        let entry = |at: usize| {
            let (row, column) = (at / 3 * 3, at % 3);
            (0..3)
                .map(|k| second[row + k] * first[3 * k + column])
                .sum()
        };
        Homography::new(std::array::from_fn(entry))
    }

    /// The inverse map.
    #[must_use]
    pub fn inverse(&self) -> Option<Homography> {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        Homography::new([
            e * i - f * h,
            c * h - b * i,
            b * f - c * e,
            f * g - d * i,
            a * i - c * g,
            c * d - a * f,
            d * h - e * g,
            b * g - a * h,
            a * e - b * d,
        ])
    }

    fn determinant(&self) -> f64 {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
    }
}

/// The result of aligning a picture to its design's reference picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Registration {
    /// It is the reference picture.
    Reference,
    /// It was aligned to the reference picture.
    Aligned(Aligned),
    /// It could not be aligned, or not surely enough.
    Refused(Refused),
}

impl Registration {
    /// The map onto the reference picture, where there is one.
    #[must_use]
    pub fn onto_reference(&self) -> Option<Homography> {
        match self {
            Registration::Reference => Some(Homography::IDENTITY),
            Registration::Aligned(aligned) => Some(aligned.matrix),
            Registration::Refused(_) => None,
        }
    }
}

/// A picture that was aligned to the reference picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aligned {
    /// Pixel of the picture to pixel of the reference, both masters, upright.
    pub matrix: Homography,
    /// The share of places with texture that agree, 0 to 1.
    pub confidence: f64,
    /// The median distance of the places that agree, px of the reference at working size.
    pub residual_px: f64,
    /// Whether the map comes from the ties of the record, not from the program's own search.
    pub by_hand: bool,
}

/// A picture that could not be aligned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Refused {
    /// Why.
    pub why: Refusal,
    /// The share of places with texture that agreed nevertheless, 0 to 1.
    pub confidence: f64,
}

closed_list! {
    /// Why a picture could not be aligned.
    Refusal {
        /// Too little on it to compare: a blank back, a dark or blurred photograph.
        LittleToCompare = "little-to-compare",
        /// No part of it was found on the reference.
        NothingInCommon = "nothing-in-common",
        /// The best fit would bend the picture as no camera does.
        NoPlausibleFit = "no-plausible-fit",
        /// Too few places agree.
        FewAgree = "few-agree",
        /// The places that agree lie in one part only, for example a title that two designs share.
        OnePartOnly = "one-part-only",
        /// The ties of the record contradict the pictures or each other.
        TiesDisagree = "ties-disagree",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(a: (f64, f64), b: (f64, f64)) -> bool {
        (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9
    }

    #[test]
    fn there_and_back_is_where_it_was() {
        let map = Homography::new([1.1, 0.05, 12.0, -0.04, 0.95, -7.0, 1e-5, 2e-5, 1.0]).unwrap();
        let there = map.apply(300.0, 200.0).unwrap();
        let back = map.inverse().unwrap().apply(there.0, there.1).unwrap();
        assert!(near(back, (300.0, 200.0)), "{back:?}");
        let nothing = map.then(&map.inverse().unwrap()).unwrap();
        assert!(near(nothing.apply(5.0, 6.0).unwrap(), (5.0, 6.0)));
    }

    #[test]
    fn scaling_keeps_edges_on_edges() {
        // The edge of the first pixel lies at -1/2 at any scale.
        let half = Homography::scaling(0.5, 0.25).unwrap();
        assert!(near(half.apply(-0.5, -0.5).unwrap(), (-0.5, -0.5)));
        assert!(near(half.apply(99.5, 99.5).unwrap(), (49.5, 24.5)));
    }

    #[test]
    fn what_is_no_map_is_refused() {
        assert!(Homography::new([0.0; 9]).is_none());
        assert!(Homography::new([f64::NAN; 9]).is_none());
        assert!(Homography::new([1.0, 2.0, 0.0, 2.0, 4.0, 0.0, 0.0, 0.0, 1.0]).is_none());
    }
}
