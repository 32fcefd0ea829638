//! Writing JPEG.
//!
//! Every file is a baseline JPEG, 4:2:0, of pixels alone, so nothing else of the original can be in
//! it. The encoder averages colour over each square of four pixels: taking the nearest would leave coloured
//! steps along the edges of blocks. Tables fitted to the picture would save a
//! twentieth of the bytes, but with them the encoder writes one colour after another, which `jpeg` has
//! to refuse and browsers cannot show until the whole file has arrived.

use image::RgbImage;
use rusty_jpeg::encode::{ImageBuffer, JpegColorType, rgb_to_ycbcr};
use rusty_jpeg::{Encoder, SamplingFactor};

use crate::extent::Extent;
use crate::fault::Fault;

/// The encoder, for the keys of the cache: no two encoders write the same bytes.
pub const ENCODER: &str = "rusty_jpeg 0.3.3, no vector code";

/// A picture as a JPEG file, not yet kept.
#[derive(Debug)]
pub struct EncodedPicture {
    pub extent: Extent,
    pub jpeg: Vec<u8>,
}

/// Encodes 8-bit RGB pixels, row by row.
///
/// # Errors
/// Where the encoder fails, which is not expected for a decoded picture.
pub fn encode(rgb: &[u8], width: u32, height: u32, quality: u8) -> Result<Vec<u8>, Fault> {
    let wide = u16::try_from(width).map_err(|_| refused())?;
    let high = u16::try_from(height).map_err(|_| refused())?;
    // About a fifth of a byte each pixel at the usual quality.
    let mut jpeg = Vec::with_capacity(rgb.len() / 12 + 1024);
    let mut encoder = Encoder::new(&mut jpeg, quality.clamp(1, 100));
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder
        .encode_image(Pixels { rgb, wide, high })
        .map_err(|_| refused())?;
    Ok(jpeg)
}

/// RGB pixels as the encoder asks for them.
///
/// It has such types of its own, but whoever calls for one has its code for all nine compiled.
struct Pixels<'a> {
    rgb: &'a [u8],
    wide: u16,
    high: u16,
}

impl ImageBuffer for Pixels<'_> {
    fn get_jpeg_color_type(&self) -> JpegColorType {
        JpegColorType::Ycbcr
    }

    fn width(&self) -> u16 {
        self.wide
    }

    fn height(&self) -> u16 {
        self.high
    }

    fn fill_buffers(&self, y: u16, buffers: &mut [Vec<u8>; 4]) {
        let wide = usize::from(self.wide);
        let Some(row) = self.rgb.chunks_exact(wide * 3).nth(usize::from(y)) else {
            return;
        };
        let (pixels, _) = row.as_chunks::<3>();
        // Grown once a row: a `push` would ask for room at each pixel.
        let [brightness, blue, red, _] = buffers;
        let from = brightness.len();
        for buffer in [&mut *brightness, &mut *blue, &mut *red] {
            buffer.resize(from + wide, 0);
        }
        let planes = brightness[from..]
            .iter_mut()
            .zip(&mut blue[from..])
            .zip(&mut red[from..]);
        for (&[r, g, b], ((y, cb), cr)) in pixels.iter().zip(planes) {
            (*y, *cb, *cr) = rgb_to_ycbcr(r, g, b);
        }
    }
}

/// Encodes a picture, with its size beside it.
///
/// # Errors
/// As [`encode`].
pub fn encode_picture(picture: &RgbImage, quality: u8) -> Result<EncodedPicture, Fault> {
    let extent = Extent::of(picture);
    let jpeg = encode(picture.as_raw(), extent.width, extent.height, quality)?;
    Ok(EncodedPicture { extent, jpeg })
}

fn refused() -> Fault {
    Fault::Damaged("it cannot be saved as JPEG".into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use jpeg_encoder::ChromaSubsamplingMethod;

    /// Many tones in lines, washes and grain.
    fn busy(width: u32, height: u32) -> RgbImage {
        RgbImage::from_fn(width, height, |x, y| {
            let grain = (x * 7919 + y * 104_729 + x * y * 31) % 23;
            let line = if (3 * x + y) % 61 < 5 { 90 } else { 0 };
            let wash = (x * x / 97 + y * y / 89) % 120;
            let value = |less: u32| u8::try_from(230 - wash - line / 2 - less - grain).unwrap();
            image::Rgb([value(0), value(9), value(31)])
        })
    }

    /// Sizes and qualities.
    const CASES: [((u32, u32), u8); 6] = [
        ((512, 512), 85),
        ((300, 511), 85),
        ((1, 1), 85),
        ((17, 3), 40),
        ((640, 200), 95),
        ((129, 64), 100),
    ];

    /// Found on x86-64 without vector code. With its AVX2 code the same encoder wrote files that hash to
    /// `9a5266f0…`.
    #[test]
    fn every_processor_writes_the_same_bytes() {
        let mut hasher = blake3::Hasher::new();
        for ((width, height), quality) in CASES {
            let picture = busy(width, height);
            hasher.update(&encode(picture.as_raw(), width, height, quality).unwrap());
        }
        let found = hasher.finalize().to_hex();
        assert_eq!(&found[..32], "0c29bd998ae2df122a7efd101e7b1c10");
    }

    /// The crate `jpeg-encoder` (0.7), from which `rusty_jpeg` branched off, makes the same picture but for
    /// roundings, at any size and quality.
    #[test]
    fn another_encoder_makes_the_same_picture() {
        for ((width, height), quality) in CASES {
            let picture = busy(width, height);
            let ours = encode(picture.as_raw(), width, height, quality).unwrap();
            let mut theirs = Vec::new();
            let mut encoder = jpeg_encoder::Encoder::new(&mut theirs, quality);
            encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
            encoder.set_chroma_subsampling_method(ChromaSubsamplingMethod::Average);
            let (wide, high) = (width.try_into().unwrap(), height.try_into().unwrap());
            encoder
                .encode(picture.as_raw(), wide, high, jpeg_encoder::ColorType::Rgb)
                .unwrap();
            let pixels = |jpeg: &[u8]| image::load_from_memory(jpeg).unwrap().into_rgb8();
            let (ours, theirs) = (pixels(&ours), pixels(&theirs));
            assert_eq!(ours.dimensions(), (width, height));
            let apart = ours.iter().zip(theirs.iter()).map(|(a, b)| a.abs_diff(*b));
            let square = apart.map(|d| f64::from(d) * f64::from(d)).sum::<f64>();
            let mean = square / f64::from(width * height * 3);
            // 60 dB: one value in fifteen may be off by one.
            assert!(
                mean < 255.0 * 255.0 / 1e6,
                "{width} × {height} px at {quality}: {mean}"
            );
        }
    }
}
