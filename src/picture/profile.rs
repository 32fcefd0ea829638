//! ICC profiles made of a curve a channel and, for colours, a matrix (ICC.1:2022, F.3): conversion to 8-bit
//! sRGB in whole numbers.
//!
//! In: a profile as `moxcms` reads it. Out: pixels that are the same on every processor, which those of
//! `moxcms` are not: depending on the processor it computes with 12 bits, with 30 or with floating-point
//! numbers. Curves and matrix are multiplied out beforehand: for each of the 256 values of a channel, the
//! amount that it adds to linear red, green and blue of sRGB. A pixel is three look-ups, six additions, three
//! look-ups.

use moxcms::{ColorProfile, DataColorSpace, ToneReprCurve};

use crate::srgb::{COARSE, SRGB, encode, inverse, steps};

/// Linear light as a whole number: 1 is `1 << FINE`. Three channels, each beyond 1 where a matrix has
/// negative parts, stay far below the limit of an `i32`.
const FINE: u32 = 24;

/// A conversion from three channels.
pub struct Shaper {
    /// For each channel and value, the amount it adds to each linear channel of sRGB.
    adds: [Vec<[i32; 3]>; 3],
    /// The 8-bit value of each step of linear light.
    encoded: Box<[u8]>,
}

impl Shaper {
    /// The conversion of a profile; `None` where it is not one of three curves and a matrix alone.
    pub fn new(profile: &ColorProfile) -> Option<Shaper> {
        if profile.color_space != DataColorSpace::Rgb || !is_of_curves(profile) {
            return None;
        }
        let to_linear_srgb = inverse(SRGB);
        let channel = |curve: &Option<ToneReprCurve>, xyz: [f64; 3]| {
            let curve = values(curve.as_ref()?)?;
            let primary =
                to_linear_srgb.map(|row| row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2]);
            // A colorant of a photograph's profile lies far within this; one that does not is a fault.
            let is_sound = primary.iter().all(|part| part.abs() < 8.0);
            let adds = curve.iter().map(|light| {
                let add = |part: f64| whole(part * light, 1 << FINE);
                primary.map(add)
            });
            is_sound.then(|| adds.collect())
        };
        let [red, green, blue] = [
            profile.red_colorant,
            profile.green_colorant,
            profile.blue_colorant,
        ]
        .map(|colorant| [colorant.x, colorant.y, colorant.z]);
        // `moxcms` reads a profile without a matrix as one whose colorants are all 0.
        if [red, green, blue].contains(&[0.0; 3]) {
            return None;
        }
        Some(Shaper {
            adds: [
                channel(&profile.red_trc, red)?,
                channel(&profile.green_trc, green)?,
                channel(&profile.blue_trc, blue)?,
            ],
            encoded: steps(),
        })
    }

    /// Converts pixels of three channels.
    pub fn convert(&self, from: &[u8], to: &mut [u8]) {
        const STEP: u32 = FINE - COARSE;
        let [red, green, blue] = &self.adds;
        for (from, to) in from.chunks_exact(3).zip(to.chunks_exact_mut(3)) {
            let (r, g, b) = (
                &red[usize::from(from[0])],
                &green[usize::from(from[1])],
                &blue[usize::from(from[2])],
            );
            for (at, value) in to.iter_mut().enumerate() {
                let light = (r[at] + g[at] + b[at] + (1 << (STEP - 1))) >> STEP;
                let light = light.clamp(0, 1 << COARSE).cast_unsigned();
                *value = self.encoded[light as usize];
            }
        }
    }
}

/// A conversion from grey.
pub struct Greys(Vec<u8>);

impl Greys {
    /// The conversion of a profile; `None` where it is not one of a single curve.
    pub fn new(profile: &ColorProfile) -> Option<Greys> {
        if profile.color_space != DataColorSpace::Gray || !is_of_curves(profile) {
            return None;
        }
        // The curve gives the share of the white's light, and white becomes white.
        let light = values(profile.gray_trc.as_ref()?)?;
        Some(Greys(light.iter().copied().map(encode).collect()))
    }

    /// Converts pixels of three equal channels, as grey is unpacked.
    pub fn convert(&self, from: &[u8], to: &mut [u8]) {
        for (from, to) in from.iter().zip(to) {
            *to = self.0[usize::from(*from)];
        }
    }
}

/// Whether a profile leads to XYZ by curves (and a matrix) alone. One that also has tables means those to be
/// used (ICC.1:2022, 9.2.1).
fn is_of_curves(profile: &ColorProfile) -> bool {
    profile.pcs == DataColorSpace::Xyz
        && profile.lut_a_to_b_perceptual.is_none()
        && profile.lut_a_to_b_colorimetric.is_none()
        && profile.lut_a_to_b_saturation.is_none()
}

/// The linear light, 0 to 1, of each of the 256 values by a curve; `None` where the curve is not valid.
fn values(curve: &ToneReprCurve) -> Option<Vec<f64>> {
    sampled_curve(curve, 256)
}

/// A curve at `count` places at equal distances from 0 to 1, its values kept within 0 and 1; `None` where it
/// is not valid.
pub fn sampled_curve(curve: &ToneReprCurve, count: u16) -> Option<Vec<f64>> {
    let last = f64::from(count.max(2) - 1);
    let each = |light: &dyn Fn(f64) -> f64| {
        let values = (0..count).map(|place| light(f64::from(place) / last));
        values
            .map(|light| (!light.is_nan()).then(|| light.clamp(0.0, 1.0)))
            .collect()
    };
    match curve {
        // ICC.1:2022, 10.6: no number is no change, one is an exponent in 256ths, more are samples.
        ToneReprCurve::Lut(samples) => match samples[..] {
            [] => each(&|x| x),
            [exponent] => each(&|x| libm::pow(x, f64::from(exponent) / 256.0)),
            _ => each(&|x| sampled(samples, x)),
        },
        ToneReprCurve::Parametric(numbers) => {
            let numbers: Vec<f64> = numbers.iter().copied().map(f64::from).collect();
            each(&parametric(&numbers)?)
        }
    }
}

/// A curve through samples at equal distances, each of 65535, straight between them.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a place among at most 40,000 samples"
)]
fn sampled(samples: &[u16], x: f64) -> f64 {
    let place = x * (samples.len() - 1) as f64;
    let before = (place as usize).min(samples.len() - 2);
    let share = place - before as f64;
    let [from, to] = [before, before + 1].map(|at| f64::from(samples[at]));
    (from + (to - from) * share) / 65535.0
}

/// The functions of ICC.1:2022, 10.18, table 68, by how many numbers each takes.
#[allow(clippy::many_single_char_names, reason = "the names of the standard")]
fn parametric(numbers: &[f64]) -> Option<impl Fn(f64) -> f64 + use<>> {
    let (g, a, b, c, d, e, f) = match *numbers {
        [g] => (g, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0),
        [g, a, b] => (g, a, b, 0.0, -b / a, 0.0, 0.0),
        [g, a, b, c] => (g, a, b, 0.0, -b / a, c, c),
        [g, a, b, c, d] => (g, a, b, c, d, 0.0, 0.0),
        [g, a, b, c, d, e, f] => (g, a, b, c, d, e, f),
        _ => return None,
    };
    Some(move |x: f64| {
        if x >= d {
            libm::pow(a * x + b, g) + e
        } else {
            c * x + f
        }
    })
}

/// `value` times `one`, rounded to the nearest whole number.
#[allow(
    clippy::cast_possible_truncation,
    reason = "callers keep within the limits"
)]
fn whole(value: f64, one: i32) -> i32 {
    (value * f64::from(one)).round() as i32
}

#[cfg(test)]
mod tests {
    use moxcms::{Layout, TransformOptions};

    use super::*;

    /// Every seventeenth value of each channel: 4096 colours, black, white and the greys among them.
    fn colours() -> Vec<u8> {
        let steps = || (0..=255_u8).step_by(17);
        steps()
            .flat_map(|r| steps().flat_map(move |g| steps().flat_map(move |b| [r, g, b])))
            .collect()
    }

    fn converted(profile: &ColorProfile) -> Vec<u8> {
        let colours = colours();
        let mut ours = vec![0; colours.len()];
        Shaper::new(profile).unwrap().convert(&colours, &mut ours);
        ours
    }

    /// The reader `moxcms` as an independent implementation of the same standard. It encodes light in 4096
    /// steps, which near black are nearly a level wide.
    #[test]
    fn a_reference_library_finds_the_same_colours() {
        for profile in [
            ColorProfile::new_adobe_rgb(),
            ColorProfile::new_display_p3(),
            ColorProfile::new_pro_photo_rgb(),
            ColorProfile::new_bt2020(),
            ColorProfile::new_srgb(),
        ] {
            // As a file has it: numbers rounded, the profile's own description of its curves alone.
            let profile = ColorProfile::new_from_slice(&profile.encode().unwrap()).unwrap();
            let colours = colours();
            let mut theirs = vec![0; colours.len()];
            profile
                .create_transform_8bit(
                    Layout::Rgb,
                    &ColorProfile::new_srgb(),
                    Layout::Rgb,
                    TransformOptions {
                        prefer_fixed_point: false,
                        ..TransformOptions::default()
                    },
                )
                .unwrap()
                .transform(&colours, &mut theirs)
                .unwrap();
            let ours = converted(&profile);
            for (at, (ours, theirs)) in ours.iter().zip(&theirs).enumerate() {
                let pixel = at / 3 * 3;
                assert!(
                    ours.abs_diff(*theirs) <= 1,
                    "{:?}: {ours} and {theirs}",
                    &colours[pixel..pixel + 3]
                );
            }
        }
    }

    #[test]
    fn srgb_stays_what_it_is() {
        // moxcms derives its colorants from chromaticities, which gives other fifth places.
        let found = converted(&ColorProfile::new_srgb());
        assert!(
            found
                .iter()
                .zip(colours())
                .all(|(found, colour)| found.abs_diff(colour) <= 1)
        );
    }

    /// Values computed on x86-64; every processor must give the same.
    #[test]
    fn every_processor_finds_the_same_bytes() {
        let found = [
            ColorProfile::new_adobe_rgb(),
            ColorProfile::new_display_p3(),
            ColorProfile::new_pro_photo_rgb(),
        ]
        .map(|profile| blake3::hash(&converted(&profile)).to_hex()[..16].to_owned());
        assert_eq!(
            found,
            ["a4679d4ff5047755", "9ecead46cf4f36e7", "3a34ef6b7324d864"]
        );
    }

    #[test]
    fn curves_follow_the_standard() {
        let near = |curve: &ToneReprCurve, value: usize, light: f64| {
            let found = values(curve).unwrap()[value];
            assert!((found - light).abs() < 1e-6, "{curve:?}: {found}");
        };
        near(&ToneReprCurve::Lut(vec![]), 51, 0.2);
        // 563/256 is the exponent 2.19921875 of Adobe RGB (1998).
        near(&ToneReprCurve::Lut(vec![563]), 255, 1.0);
        near(&ToneReprCurve::Lut(vec![512]), 51, 0.04);
        near(&ToneReprCurve::Lut(vec![0, 0, 65535]), 51, 0.0);
        near(&ToneReprCurve::Lut(vec![0, 0, 65535]), 204, 0.6);
        near(&ToneReprCurve::Parametric(vec![2.0]), 51, 0.04);
        // (x/2 + 1/2)², above -1 everywhere.
        near(&ToneReprCurve::Parametric(vec![2.0, 0.5, 0.5]), 51, 0.36);
        near(
            &ToneReprCurve::Parametric(vec![2.0, 0.5, 0.5, 0.1]),
            51,
            0.46,
        );
        // Straight below 0.5, then the power.
        let two_parts = vec![2.0, 1.0, 0.0, 0.25, 0.5];
        near(&ToneReprCurve::Parametric(two_parts.clone()), 51, 0.05);
        near(&ToneReprCurve::Parametric(two_parts), 204, 0.64);
        let raised = vec![2.0, 1.0, 0.0, 0.25, 0.5, 0.125, 0.0625];
        near(&ToneReprCurve::Parametric(raised.clone()), 51, 0.1125);
        near(&ToneReprCurve::Parametric(raised), 204, 0.765);
        assert!(values(&ToneReprCurve::Parametric(vec![1.0, 2.0])).is_none());
        // The root of a negative number.
        assert!(values(&ToneReprCurve::Parametric(vec![0.5, -1.0, 0.0, 0.0, 0.0])).is_none());
    }

    #[test]
    fn a_profile_of_tables_is_left_to_others() {
        let mut grey = ColorProfile::new_gray_with_gamma(2.2);
        assert!(Greys::new(&grey).is_some() && Shaper::new(&grey).is_none());
        grey.pcs = DataColorSpace::Lab;
        assert!(Greys::new(&grey).is_none());
    }
}
