//! From colours measured under D50, as ICC profiles give them, to 8-bit sRGB (IEC 61966-2-1).
//!
//! Sums and products of `f64` in a fixed order, without fused operations, and powers from `libm`: the result is
//! the same on every processor.

/// Light is encoded by a table with `1 << COARSE` steps, a fifth of a level each where the curve of sRGB is
/// steepest.
pub const COARSE: u32 = 14;

/// XYZ under D50 of sRGB's red, green and blue, as columns: those of the profiles that the International Color
/// Consortium publishes for it.
pub const SRGB: Matrix = [
    [0.436_065_67, 0.385_147_09, 0.143_066_41],
    [0.222_488_40, 0.716_873_17, 0.060_607_91],
    [0.013_916_02, 0.097_076_42, 0.714_096_07],
];

/// XYZ of the white of the profile connection space, D50 (ICC.1:2022, 7.2.16).
pub const D50: [f64; 3] = [0.9642, 1.0, 0.8249];

/// Three rows.
pub type Matrix = [[f64; 3]; 3];

/// Turns XYZ or CIELAB under D50 into sRGB.
pub struct Encoder {
    to_linear: Matrix,
    /// The 8-bit value of each step of linear light.
    steps: Box<[u8]>,
}

impl Encoder {
    /// Computes its tables.
    pub fn new() -> Encoder {
        Encoder {
            to_linear: inverse(SRGB),
            steps: steps(),
        }
    }

    /// The sRGB of XYZ where white has Y = 1. Colours that sRGB lacks lose what is beyond its range, channel
    /// by channel.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to the table before"
    )]
    pub fn xyz(&self, xyz: [f64; 3]) -> [u8; 3] {
        const STEPS: f64 = (1_u32 << COARSE) as f64;
        self.to_linear.map(|row| {
            let light = row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2];
            // What is not a number counts as 0.
            let step = (light * STEPS + 0.5).clamp(0.0, STEPS) as usize;
            self.steps[step]
        })
    }

    /// The sRGB of L*, a*, b*.
    pub fn lab(&self, lab: [f64; 3]) -> [u8; 3] {
        self.xyz(xyz_of_lab(lab))
    }
}

/// The 8-bit value of each of the `1 << COARSE` steps of linear light and of full light.
pub fn steps() -> Box<[u8]> {
    let step = |step| encode(f64::from(step) / f64::from(1 << COARSE));
    (0..=1 << COARSE).map(step).collect()
}

/// XYZ under D50 of L*, a*, b* (CIE 15; ICC.1:2022, A.3).
fn xyz_of_lab([lightness, a, b]: [f64; 3]) -> [f64; 3] {
    const EDGE: f64 = 6.0 / 29.0;
    let y = (lightness + 16.0) / 116.0;
    let share = |root: f64| {
        if root > EDGE {
            root * root * root
        } else {
            3.0 * EDGE * EDGE * (root - 4.0 / 29.0)
        }
    };
    let roots = [y + a / 500.0, y, y - b / 200.0];
    [0, 1, 2].map(|at| D50[at] * share(roots[at]))
}

/// The inverse of a matrix.
pub fn inverse(m: Matrix) -> Matrix {
    let minor = |r: usize, c: usize| {
        let (r1, r2) = ((r + 1) % 3, (r + 2) % 3);
        let (c1, c2) = ((c + 1) % 3, (c + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    let determinant = m[0][0] * minor(0, 0) + m[0][1] * minor(0, 1) + m[0][2] * minor(0, 2);
    [0, 1, 2].map(|r| [0, 1, 2].map(|c| minor(c, r) / determinant))
}

/// IEC 61966-2-1, 5.2: linear light, 0 to 1, as 8 bits.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a channel that is out of range becomes 255"
)]
pub fn encode(light: f64) -> u8 {
    let value = if light <= 0.003_130_8 {
        12.92 * light
    } else {
        1.055 * libm::pow(light, 1.0 / 2.4) - 0.055
    };
    u8::try_from((value * 255.0).round() as i32).unwrap_or(u8::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The library `palette` as an independent implementation of CIE 15, IEC 61966-2-1 and Bradford's adaptation;
    /// its whites and primaries have other fifth places.
    #[test]
    fn a_reference_library_finds_the_same_colours() {
        use palette::chromatic_adaptation::AdaptIntoUnclamped;
        use palette::convert::FromColorUnclamped;
        use palette::white_point::{D50, D65};
        use palette::{Lab, LinSrgb, Srgb, Xyz};
        let encoder = Encoder::new();
        let steps = |from: i32, to: i32| (from..=to).step_by(10).map(f64::from);
        let mut compared = 0;
        for l in steps(0, 100) {
            for a in steps(-120, 120) {
                for b in steps(-120, 120) {
                    let xyz = Xyz::<D50, f64>::from_color_unclamped(Lab::<D50, f64>::new(l, a, b));
                    let adapted: Xyz<D65, f64> = xyz.adapt_into_unclamped();
                    let linear = LinSrgb::<f64>::from_color_unclamped(adapted);
                    let found = Srgb::<f64>::from_linear(linear);
                    let expected = [found.red, found.green, found.blue]
                        .map(|value| format!("{:.0}", value.clamp(0.0, 1.0) * 255.0));
                    let expected = expected.map(|text| text.parse::<u8>().unwrap());
                    let ours = encoder.lab([l, a, b]);
                    let is_near = (0..3).all(|at| ours[at].abs_diff(expected[at]) <= 2);
                    assert!(is_near, "{l} {a} {b}: {ours:?}, not {expected:?}");
                    compared += 1;
                }
            }
        }
        assert_eq!(compared, 11 * 25 * 25);
    }

    /// CIE 15: L* of a neutral of reflectance Y is 116 ∛Y - 16, so L* 50 is Y 0.18419; IEC 61966-2-1 encodes
    /// that as 118.9. White and black are exact.
    #[test]
    fn neutrals_are_neutral() {
        let encoder = Encoder::new();
        assert_eq!(encoder.lab([100.0, 0.0, 0.0]), [255; 3]);
        assert_eq!(encoder.lab([50.0, 0.0, 0.0]), [119; 3]);
        assert_eq!(encoder.lab([0.0, 0.0, 0.0]), [0; 3]);
        assert_eq!(encoder.xyz([f64::NAN; 3]), [0; 3]);
    }
}
