//! Scaling whole pictures.
//!
//! Lanczos with three lobes on the encoded values, not in linear light: the usual choice for photographs,
//! though dense black hatching comes out a shade darker than it looks from afar.

use fast_image_resize as fir;
use fir::images::{TypedImage, TypedImageRef};
use fir::pixels::U8x3;
use image::RgbImage;

use crate::extent::Extent;
use crate::fault::Fault;

/// Scales RGB pixels.
///
/// # Errors
/// Where the scaler fails, which is not expected for a decoded picture.
pub fn scale(from: Extent, rgb: &[u8], to: Extent) -> Result<RgbImage, Fault> {
    let mut pixels = vec![0; to.pixels() * 3];
    scale_into(from, rgb, to, &mut pixels)?;
    RgbImage::from_raw(to.width, to.height, pixels).ok_or_else(refused)
}

/// Bytes of memory that [`scale`] takes beside the pixels it is given: what is scaled in one direction, and the
/// result.
pub fn memory(from: Extent, to: Extent) -> u64 {
    3 * (u64::from(from.width) * u64::from(to.height) + to.pixels() as u64)
}

/// Scales RGB pixels into `pixels`, which are of size `to`.
///
/// # Errors
/// As [`scale`].
pub fn scale_into(from: Extent, rgb: &[u8], to: Extent, pixels: &mut [u8]) -> Result<(), Fault> {
    // One kind of pixel, named here: otherwise the code for every kind is compiled into this crate.
    let source =
        TypedImageRef::<U8x3>::from_buffer(from.width, from.height, rgb).map_err(|_| refused())?;
    let mut scaled =
        TypedImage::<U8x3>::from_buffer(to.width, to.height, pixels).map_err(|_| refused())?;
    let options = fir::ResizeOptions::new()
        .resize_alg(fir::ResizeAlg::Convolution(fir::FilterType::Lanczos3));
    fir::Resizer::new()
        .resize_typed(&source, &mut scaled, &options)
        .map_err(|_| refused())
}

fn refused() -> Fault {
    Fault::Damaged("it cannot be scaled".into())
}
