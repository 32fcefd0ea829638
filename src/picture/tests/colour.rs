//! Colours arrive as sRGB. Expected values are computed here from published primaries and curves,
//! not by the library that converts.

use image::{DynamicImage, ImageBuffer, Luma, Rgb, RgbImage};
use moxcms::ColorProfile;

use super::samples::*;
use crate::Colour;

type Matrix = [[f64; 3]; 3];

/// Chromaticities x, y of red, green and blue.
type Primaries = [(f64, f64); 3];

/// IEC 61966-2-1:1999, table 1 (the primaries of ITU-R BT.709).
const SRGB: Primaries = [(0.64, 0.33), (0.30, 0.60), (0.15, 0.06)];
/// Adobe RGB (1998) Color Image Encoding, version 2005-05, section 4.3.1.1.
const ADOBE_RGB: Primaries = [(0.64, 0.33), (0.21, 0.71), (0.15, 0.06)];
/// SMPTE EG 432-1:2010 (P3), with the white of Display P3.
const DISPLAY_P3: Primaries = [(0.680, 0.320), (0.265, 0.690), (0.150, 0.060)];
/// D65, the white of all three (same sources), so none needs adaptation to another.
const WHITE: (f64, f64) = (0.3127, 0.3290);

fn xyz((x, y): (f64, f64)) -> [f64; 3] {
    [x / y, 1.0, (1.0 - x - y) / y]
}

fn times(m: Matrix, v: [f64; 3]) -> [f64; 3] {
    m.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

fn inverse(m: Matrix) -> Matrix {
    let minor = |r: usize, c: usize| {
        let (r1, r2) = ((r + 1) % 3, (r + 2) % 3);
        let (c1, c2) = ((c + 1) % 3, (c + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    let determinant: f64 = (0..3).map(|c| m[0][c] * minor(0, c)).sum();
    [0, 1, 2].map(|r| [0, 1, 2].map(|c| minor(c, r) / determinant))
}

/// Linear RGB to XYZ from primaries and white (SMPTE RP 177-1993).
fn to_xyz(primaries: Primaries) -> Matrix {
    let columns = primaries.map(xyz);
    let matrix = [0, 1, 2].map(|row| [0, 1, 2].map(|column| columns[column][row]));
    let scale = times(inverse(matrix), xyz(WHITE));
    matrix.map(|row| [row[0] * scale[0], row[1] * scale[1], row[2] * scale[2]])
}

/// IEC 61966-2-1, 5.2: from a linear value to 8 bits.
fn srgb_encoded(linear: f64) -> u8 {
    let linear = linear.clamp(0.0, 1.0);
    let encoded = if linear <= 0.003_130_8 {
        12.92 * linear
    } else {
        1.055 * libm::pow(linear, 1.0 / 2.4) - 0.055
    };
    format!("{:.0}", encoded * 255.0).parse().unwrap()
}

/// IEC 61966-2-1, 5.2, the other way.
fn srgb_linear(encoded: f64) -> f64 {
    if encoded <= 0.040_45 {
        encoded / 12.92
    } else {
        libm::pow((encoded + 0.055) / 1.055, 2.4)
    }
}

fn expected(colour: [u8; 3], primaries: Primaries, curve: impl Fn(f64) -> f64) -> [u8; 3] {
    let linear = colour.map(|channel| curve(f64::from(channel) / 255.0));
    times(inverse(to_xyz(SRGB)), times(to_xyz(primaries), linear)).map(srgb_encoded)
}

fn through(colour: [u8; 3], profile: &ColorProfile) -> [u8; 3] {
    let patch = RgbImage::from_pixel(16, 16, Rgb(colour));
    let file = png_with(&patch.into(), profile.encode().unwrap());
    assert_eq!(prepare(&file).unwrap().0.colour, Colour::Converted);
    seen(&file).get_pixel(8, 8).0
}

const PATCHES: [[u8; 3]; 5] = [
    [200, 100, 50],
    [90, 140, 90],
    [60, 80, 150],
    [128, 128, 128],
    [255, 255, 255],
];

#[test]
fn adobe_rgb_becomes_srgb() {
    let profile = ColorProfile::new_adobe_rgb();
    for patch in PATCHES {
        // Adobe RGB (1998), section 4.3.4.2: the exponent is 2.19921875.
        let right = expected(patch, ADOBE_RGB, |value| libm::pow(value, 2.199_218_75));
        assert_near(through(patch, &profile), right, 3);
    }
    // The conversion matters: without it, this patch would be far off.
    assert!(through([90, 140, 90], &profile)[0].abs_diff(90) > 15);
}

#[test]
fn display_p3_becomes_srgb() {
    let profile = ColorProfile::new_display_p3();
    for patch in PATCHES {
        assert_near(
            through(patch, &profile),
            expected(patch, DISPLAY_P3, srgb_linear),
            3,
        );
    }
}

#[test]
fn srgb_with_a_profile_stays_itself() {
    for patch in PATCHES {
        assert_near(through(patch, &ColorProfile::new_srgb()), patch, 3);
    }
}

#[test]
fn a_grey_profile_is_followed() {
    let grey = DynamicImage::ImageLuma8(ImageBuffer::from_pixel(16, 16, Luma([128])));
    let file = png_with(
        &grey,
        ColorProfile::new_gray_with_gamma(1.0).encode().unwrap(),
    );
    assert_near(
        seen(&file).get_pixel(8, 8).0,
        [srgb_encoded(128.0 / 255.0); 3],
        2,
    );
}

#[test]
fn an_untagged_picture_is_srgb() {
    let file = jpeg(&RgbImage::from_pixel(16, 16, Rgb([90, 140, 90])));
    assert_eq!(prepare(&file).unwrap().0.colour, Colour::Untagged);
    assert_near(seen(&file).get_pixel(8, 8).0, [90, 140, 90], 3);
}

#[test]
fn a_profile_that_makes_no_sense_is_told() {
    let patch = DynamicImage::ImageRgb8(RgbImage::from_pixel(16, 16, Rgb([90, 140, 90])));
    for nonsense in [b"not a profile".to_vec(), vec![0; 400]] {
        let file = png_with(&patch, nonsense);
        assert_eq!(prepare(&file).unwrap().0.colour, Colour::ProfileUnusable);
        assert_near(seen(&file).get_pixel(8, 8).0, [90, 140, 90], 3);
    }
}
