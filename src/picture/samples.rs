//! Rows of samples as files store them, made 8-bit RGB.
//!
//! In: the bytes of a row, and how they are to be understood. Out: three bytes a pixel; what is transparent lies
//! on white, as paper would show it. Inks and CIELAB become sRGB here, because only 8-bit RGB is scaled; all
//! others keep the colours of their file, which are converted once the picture is small (`colour`).

use std::sync::Arc;

use crate::srgb::Encoder;
use crate::tables::Tables;

/// How a pixel is stored.
#[derive(Clone)]
pub struct Samples {
    /// What its samples mean.
    pub meaning: Meaning,
    /// How each is stored.
    pub depth: Depth,
    /// How many samples a pixel has, with those that are left aside.
    pub count: usize,
    /// Whether 0 is the lightest value.
    pub inverted: bool,
}

/// What the samples of a pixel mean.
#[derive(Clone)]
pub enum Meaning {
    /// Brightness.
    Grey,
    /// Brightness and opacity.
    GreyAlpha,
    /// Red, green, blue.
    Rgb,
    /// Red, green, blue, opacity.
    RgbAlpha,
    /// Cyan, magenta, yellow, black: how much ink, converted by their profile.
    Inks(Arc<Tables>),
    /// CIELAB under D50.
    Lab(LabEncoding, Arc<Encoder>),
}

/// How a sample is stored.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Depth {
    /// One byte.
    Eight,
    /// Two bytes, the higher first.
    SixteenBig,
    /// Two bytes, the lower first.
    SixteenLittle,
}

/// How a TIFF stores CIELAB.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum LabEncoding {
    /// TIFF 6.0, section 23 (photometric interpretation 8): a* and b* signed.
    Signed,
    /// Adobe Photoshop TIFF Technical Notes (2002), ICC L*a*b* (photometric interpretation 9): a* and b* from
    /// -128, and with 16 bits L* 100 as 0xFF00.
    FromMinus128,
}

impl Depth {
    /// Two bytes as this machine orders them.
    pub fn sixteen_native() -> Depth {
        if cfg!(target_endian = "big") {
            Depth::SixteenBig
        } else {
            Depth::SixteenLittle
        }
    }

    /// How many bytes a sample takes.
    pub fn bytes(self) -> usize {
        if self == Depth::Eight { 1 } else { 2 }
    }

    /// The sample at a place.
    fn wide(self, row: &[u8], at: usize) -> u16 {
        let [first, second] = [row[at * 2], row[at * 2 + 1]];
        match self {
            Depth::SixteenLittle => u16::from_le_bytes([first, second]),
            _ => u16::from_be_bytes([first, second]),
        }
    }
}

impl Samples {
    /// How many bytes a pixel takes.
    pub fn bytes(&self) -> usize {
        self.count * self.depth.bytes()
    }

    /// Makes a row, or several, 8-bit RGB.
    pub fn to_rgb(&self, row: &[u8], rgb: &mut [u8]) {
        if let Meaning::Lab(encoding, encoder) = &self.meaning {
            return self.lab(*encoding, encoder, row, rgb);
        }
        let pixels = row.chunks_exact(self.bytes()).zip(rgb.chunks_exact_mut(3));
        match &self.meaning {
            Meaning::Grey => pixels.for_each(|(from, to)| to.fill(self.at(from, 0))),
            Meaning::GreyAlpha => pixels.for_each(|(from, to)| {
                to.fill(over_white(self.at(from, 0), self.alpha(from, 1)));
            }),
            Meaning::Rgb if self.depth == Depth::Eight && !self.inverted => {
                pixels.for_each(|(from, to)| to.copy_from_slice(&from[..3]));
            }
            Meaning::Rgb => pixels.for_each(|(from, to)| {
                for (at, to) in to.iter_mut().enumerate() {
                    *to = self.at(from, at);
                }
            }),
            Meaning::RgbAlpha => pixels.for_each(|(from, to)| {
                let alpha = self.alpha(from, 3);
                for (at, to) in to.iter_mut().enumerate() {
                    *to = over_white(self.at(from, at), alpha);
                }
            }),
            Meaning::Inks(tables) => {
                let mut inks = Vec::with_capacity(row.len() / self.bytes() * 4);
                for (from, _) in pixels {
                    inks.extend([0, 1, 2, 3].map(|at| self.at(from, at)));
                }
                tables.convert(&inks, rgb);
            }
            Meaning::Lab(..) => {}
        }
    }

    fn lab(&self, encoding: LabEncoding, encoder: &Encoder, row: &[u8], rgb: &mut [u8]) {
        let (mut last, mut colour): (&[u8], [u8; 3]) = (&[], [0; 3]);
        for (from, to) in row.chunks_exact(self.bytes()).zip(rgb.chunks_exact_mut(3)) {
            if from != last {
                colour = encoder.lab(self.lab_of(encoding, from));
                last = from;
            }
            to.copy_from_slice(&colour);
        }
    }

    /// L*, a*, b* of a pixel.
    fn lab_of(&self, encoding: LabEncoding, pixel: &[u8]) -> [f64; 3] {
        if self.depth == Depth::Eight {
            let signed = |value: u8| match encoding {
                LabEncoding::Signed => f64::from(value.cast_signed()),
                LabEncoding::FromMinus128 => f64::from(value) - 128.0,
            };
            return [
                f64::from(pixel[0]) * 100.0 / 255.0,
                signed(pixel[1]),
                signed(pixel[2]),
            ];
        }
        let [lightness, a, b] = [0, 1, 2].map(|at| self.depth.wide(pixel, at));
        match encoding {
            LabEncoding::Signed => [
                f64::from(lightness) * 100.0 / 65535.0,
                f64::from(a.cast_signed()) / 256.0,
                f64::from(b.cast_signed()) / 256.0,
            ],
            LabEncoding::FromMinus128 => [
                f64::from(lightness) * 100.0 / 65280.0,
                f64::from(a) / 256.0 - 128.0,
                f64::from(b) / 256.0 - 128.0,
            ],
        }
    }

    /// A sample as 8 bits.
    fn at(&self, pixel: &[u8], at: usize) -> u8 {
        let value = self.alpha(pixel, at);
        if self.inverted { 255 - value } else { value }
    }

    /// A sample as 8 bits, not inverted.
    fn alpha(&self, pixel: &[u8], at: usize) -> u8 {
        if self.depth == Depth::Eight {
            pixel[at]
        } else {
            narrowed(self.depth.wide(pixel, at))
        }
    }
}

/// 16 bits as 8, rounded to nearest.
fn narrowed(value: u16) -> u8 {
    u8::try_from((u32::from(value) + 128) / 257).unwrap_or(u8::MAX)
}

/// One channel of a partly transparent pixel laid on white, rounded to nearest.
pub fn over_white(channel: u8, alpha: u8) -> u8 {
    let (channel, alpha) = (u32::from(channel), u32::from(alpha));
    let sum = channel * alpha + 255 * (255 - alpha);
    u8::try_from((sum + 127) / 255).unwrap_or(u8::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rgb(meaning: Meaning, depth: Depth, count: usize, inverted: bool, row: &[u8]) -> Vec<u8> {
        let samples = Samples {
            meaning,
            depth,
            count,
            inverted,
        };
        let mut rgb = vec![0; row.len() / samples.bytes() * 3];
        samples.to_rgb(row, &mut rgb);
        rgb
    }

    #[test]
    fn sixteen_bits_are_rounded_to_the_nearest_of_eight() {
        // 255 of 255 are 65535 of 65535: a step is 257.
        for (wide, narrow) in [
            (0, 0),
            (128, 0),
            (129, 1),
            (257, 1),
            (0x8000, 128),
            (65535, 255),
        ] {
            assert_eq!(narrowed(wide), narrow, "{wide}");
        }
        for value in 0..=u16::MAX {
            let exact = f64::from(value) / 257.0;
            assert!((f64::from(narrowed(value)) - exact).abs() <= 0.5);
        }
    }

    #[test]
    fn samples_that_mean_nothing_are_left_aside() {
        assert_eq!(
            rgb(
                Meaning::Rgb,
                Depth::Eight,
                4,
                false,
                &[1, 2, 3, 99, 4, 5, 6, 99]
            ),
            [1, 2, 3, 4, 5, 6]
        );
        assert_eq!(
            rgb(Meaning::Grey, Depth::SixteenLittle, 2, true, &[0, 0, 9, 9]),
            [255; 3]
        );
        assert_eq!(
            rgb(Meaning::Grey, Depth::SixteenBig, 1, false, &[0x80, 0]),
            [128; 3]
        );
    }

    /// The same colour, L* 50, a* -20, b* 30, in each of the four encodings.
    #[test]
    fn every_encoding_of_cielab_gives_the_colour() {
        let encoder = Arc::new(Encoder::new());
        let expected = encoder.lab([50.0, -20.0, 30.0]);
        let lab = |encoding, depth, row: &[u8]| {
            rgb(
                Meaning::Lab(encoding, Arc::clone(&encoder)),
                depth,
                3,
                false,
                row,
            )
        };
        let eight_signed = lab(LabEncoding::Signed, Depth::Eight, &[128, 236, 30]);
        let eight = lab(LabEncoding::FromMinus128, Depth::Eight, &[128, 108, 158]);
        let signed = [0x80, 0x00, 0xEC, 0x00, 0x1E, 0x00];
        let sixteen_signed = lab(LabEncoding::Signed, Depth::SixteenBig, &signed);
        let sixteen = lab(
            LabEncoding::FromMinus128,
            Depth::SixteenLittle,
            &[0x80, 0x7F, 0x00, 0x6C, 0x00, 0x9E],
        );
        for found in [eight_signed, eight, sixteen_signed, sixteen] {
            assert!(
                (0..3).all(|at| found[at].abs_diff(expected[at]) <= 1),
                "{found:?}, not {expected:?}"
            );
        }
    }
}
