//! Writing JPEG.
//!
//! Every file is a baseline JPEG, 4:2:0, of pixels alone, so nothing else of the original can be in
//! it. Colour is averaged over each square of four pixels: taking the nearest, the encoder's own
//! choice, leaves coloured steps along the edges of blocks. Tables fitted to the picture would save a
//! twentieth of the bytes, but with them the encoder writes one colour after another, which `jpeg` has
//! to refuse and browsers can only show once all has arrived.

use image::RgbImage;

use super::derive::{Extent, Rendered};
use super::fault::Fault;

/// What writes the files, for the keys of the cache: the two do not write the same bytes.
pub const ENCODER: &str = if cfg!(feature = "turbojpeg") {
    "turbojpeg"
} else {
    "jpeg-encoder"
};

/// Encodes 8-bit RGB pixels, row by row.
///
/// # Errors
/// Where the encoder refuses, which a decoded picture gives it no reason to do.
#[cfg(not(feature = "turbojpeg"))]
pub fn encode(rgb: &[u8], width: u32, height: u32, quality: u8) -> Result<Vec<u8>, Fault> {
    use jpeg_encoder::{ChromaSubsamplingMethod, ColorType, Encoder, SamplingFactor};
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

/// Encodes 8-bit RGB pixels, row by row.
///
/// # Errors
/// Where the encoder refuses, which a decoded picture gives it no reason to do.
#[cfg(feature = "turbojpeg")]
pub fn encode(rgb: &[u8], width: u32, height: u32, quality: u8) -> Result<Vec<u8>, Fault> {
    use turbojpeg::{Compressor, Image, PixelFormat, Subsamp};
    let write = || {
        let mut compressor = Compressor::new()?;
        compressor.set_quality(i32::from(quality.clamp(1, 100)))?;
        compressor.set_subsamp(Subsamp::Sub2x2)?;
        compressor.compress_to_vec(Image {
            pixels: rgb,
            width: width as usize,
            pitch: width as usize * 3,
            height: height as usize,
            format: PixelFormat::RGB,
        })
    };
    write().map_err(|_: turbojpeg::Error| refused())
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

fn refused() -> Fault {
    Fault::Damaged("it cannot be saved as JPEG".into())
}
