//! Writing JPEG: single files, and one file from the bands of a large picture.
//!
//! Every file is a baseline JPEG, 4:2:0, of pixels alone, so nothing else of the original can be in
//! it. Colour is averaged over each square of four pixels: taking the nearest, the encoder's own
//! choice, leaves coloured steps along the edges of blocks. Tables fitted to the picture would save a
//! twentieth of the bytes, but with them the encoder writes one colour after another, which `jpeg` has
//! to refuse and browsers can only show once all has arrived.

use image::RgbImage;
use jpeg_encoder::{ChromaSubsamplingMethod, ColorType, Encoder, SamplingFactor};

use super::derive::{Extent, Rendered};
use super::fault::Fault;

/// The side in px of the squares in which a 4:2:0 picture is stored: two blocks of eight.
const UNIT: u32 = 16;

/// Encodes 8-bit RGB pixels, row by row.
///
/// # Errors
/// Where the encoder refuses, which a decoded picture gives it no reason to do.
pub fn encode(rgb: &[u8], width: u32, height: u32, quality: u8) -> Result<Vec<u8>, Fault> {
    let wide = u16::try_from(width).map_err(|_| refused())?;
    let high = u16::try_from(height).map_err(|_| refused())?;
    // About a fifth of a byte each pixel at the usual quality.
    let mut jpeg = Vec::with_capacity(rgb.len() / 12 + 1024);
    let mut encoder = Encoder::new(&mut jpeg, quality.clamp(1, 100));
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder.set_chroma_subsampling_method(ChromaSubsamplingMethod::Average);
    encoder
        .encode(rgb, wide, high, ColorType::Rgb)
        .map_err(|_| refused())?;
    Ok(jpeg)
}

/// Encodes a picture, with its size beside it.
///
/// # Errors
/// As [`encode`].
pub fn encode_picture(picture: &RgbImage, quality: u8) -> Result<Rendered, Fault> {
    let extent = Extent::of(picture);
    let jpeg = encode(picture.as_raw(), extent.width, extent.height, quality)?;
    Ok(Rendered { extent, jpeg })
}

/// How many rows a band of a picture `width` px wide may have at most: as many as one restart
/// interval can count (ISO/IEC 10918-1, B.2.4.4), a whole number of tiles' fractions.
pub fn band_rows(width: u32, most: u32) -> u32 {
    let units = width.div_ceil(UNIT);
    let mut rows = most;
    while rows > UNIT && units * (rows / UNIT) > u32::from(u16::MAX) {
        rows /= 2;
    }
    rows
}

/// Joins bands of one picture, each encoded by itself with `rows` rows (the last may have fewer),
/// into one file of `height` rows.
///
/// A restart marker sets a decoder back to where it stood at the start of a picture (ISO/IEC 10918-1,
/// E.1.4), so the data of the bands can follow one another with such markers between. This is how one
/// large picture is encoded by several threads, and without being held in memory whole.
///
/// # Errors
/// Where a band is no JPEG of this encoder's.
pub fn joined(bands: &[Vec<u8>], width: u32, rows: u32, height: u32) -> Result<Vec<u8>, Fault> {
    let interval = width.div_ceil(UNIT) * rows.div_ceil(UNIT);
    let interval = u16::try_from(interval).map_err(|_| refused())?;
    let height = u16::try_from(height).map_err(|_| refused())?;
    let mut jpeg = Vec::with_capacity(bands.iter().map(Vec::len).sum());
    for (place, band) in bands.iter().enumerate() {
        let parts = Parts::of(band).ok_or_else(refused)?;
        if place == 0 {
            jpeg.extend_from_slice(parts.before_scan);
            let high = parts.height_at.and_then(|at| jpeg.get_mut(at..at + 2));
            high.ok_or_else(refused)?
                .copy_from_slice(&height.to_be_bytes());
            jpeg.extend_from_slice(&[0xFF, 0xDD, 0, 4]);
            jpeg.extend_from_slice(&interval.to_be_bytes());
            jpeg.extend_from_slice(parts.scan_header);
        } else {
            // Restarts are numbered from 0 to 7, over and over.
            let number = u8::try_from((place - 1) % 8).unwrap_or(0);
            jpeg.extend_from_slice(&[0xFF, 0xD0 + number]);
        }
        jpeg.extend_from_slice(parts.scan);
    }
    jpeg.extend_from_slice(&[0xFF, 0xD9]);
    Ok(jpeg)
}

/// A JPEG of one scan, taken apart.
struct Parts<'a> {
    before_scan: &'a [u8],
    /// Where in that the frame states the height.
    height_at: Option<usize>,
    scan_header: &'a [u8],
    scan: &'a [u8],
}

impl Parts<'_> {
    fn of(jpeg: &[u8]) -> Option<Parts<'_>> {
        let mut at = 2;
        let mut height_at = None;
        loop {
            let &[0xFF, marker, high, low] = jpeg.get(at..at + 4)? else {
                return None;
            };
            let end = at + 2 + usize::from(u16::from_be_bytes([high, low]));
            match marker {
                // A frame: its length, its precision, its height.
                0xC0 => height_at = Some(at + 5),
                0xDA => {
                    return Some(Parts {
                        before_scan: jpeg.get(..at)?,
                        height_at,
                        scan_header: jpeg.get(at..end)?,
                        scan: jpeg.strip_suffix(&[0xFF, 0xD9])?.get(end..)?,
                    });
                }
                _ => {}
            }
            at = end;
        }
    }
}

fn refused() -> Fault {
    Fault::Damaged("it cannot be saved as JPEG".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decoded(jpeg: &[u8]) -> image::RgbImage {
        image::load_from_memory(jpeg).unwrap().into_rgb8()
    }

    #[test]
    fn bands_make_the_same_picture_as_the_whole() {
        // Eleven bands, so that the numbers of restarts begin again; the last is not full.
        let (width, height, rows) = (70, 10 * 16 + 5, 16);
        let rgb: Vec<u8> = (0..width * height * 3)
            .map(|n| u8::try_from((n * n / 7 + n) % 251).unwrap())
            .collect();
        let whole = encode(&rgb, width, height, 90).unwrap();
        let stride = width as usize * 3;
        let bands: Vec<_> = rgb
            .chunks(stride * rows as usize)
            .map(|band| {
                encode(band, width, u32::try_from(band.len() / stride).unwrap(), 90).unwrap()
            })
            .collect();
        assert_eq!(bands.len(), 11);
        let joined = joined(&bands, width, rows, height).unwrap();
        assert_eq!(decoded(&joined), decoded(&whole));
    }

    #[test]
    fn a_band_never_counts_more_units_than_an_interval_can() {
        for width in [1, 512, 4096, 32_752, 32_753, 65_535] {
            let rows = band_rows(width, 512);
            assert!(width.div_ceil(16) * (rows / 16) <= 65_535, "{width}");
        }
        assert_eq!(band_rows(4096, 128), 128);
        assert_eq!(band_rows(65_535, 512), 128);
    }
}
