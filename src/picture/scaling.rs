//! Scaling whole pictures.
//!
//! Lanczos with three lobes on the encoded values, not in linear light: the usual choice for photographs,
//! though dense black hatching comes out a shade darker than it looks from afar.

use fast_image_resize as fir;
use image::RgbImage;

use crate::extent::Extent;
use crate::fault::Fault;

/// Scales RGB pixels.
///
/// # Errors
/// Where the scaler fails, which is not expected for a decoded picture.
pub fn scale(from: Extent, rgb: &[u8], to: Extent) -> Result<RgbImage, Fault> {
    let refused = || Fault::Damaged("it cannot be scaled".into());
    let source = fir::images::ImageRef::new(from.width, from.height, rgb, fir::PixelType::U8x3)
        .map_err(|_| refused())?;
    let mut scaled = fir::images::Image::new(to.width, to.height, fir::PixelType::U8x3);
    let options = fir::ResizeOptions::new()
        .resize_alg(fir::ResizeAlg::Convolution(fir::FilterType::Lanczos3));
    fir::Resizer::new()
        .resize(&source, &mut scaled, &options)
        .map_err(|_| refused())?;
    RgbImage::from_raw(to.width, to.height, scaled.into_vec()).ok_or_else(refused)
}
