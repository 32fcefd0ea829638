//! Scaling whole pictures.

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
    let size = |extent: Extent| (extent.width, extent.height);
    keyblock_scaler::rgb(size(from), rgb, size(to), pixels).map_err(|_| refused())
}

fn refused() -> Fault {
    Fault::Damaged("it cannot be scaled".into())
}
