//! Scales pictures: 8-bit RGB for pages, 8-bit grey for alignment.
//!
//! Values are scaled as they are encoded, not in linear light: the usual choice for photographs, though dense black
//! hatching comes out a shade darker than it looks from afar.
//!
//! A crate of its own for the time it takes to build: the scaler's code is compiled once for each kind of pixel and
//! each of 30 precisions wherever it is called. In `picture`, which tests compile twice, it was about half of the
//! code that is generated.

use fast_image_resize as fir;
use fir::images::{TypedImage, TypedImageRef};
use fir::pixels::{U8, U8x3};

/// Width and height, px.
pub type Size = (u32, u32);

/// The scaler refused a picture: its pixels do not fill its size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ScalingRefused;

/// Scales RGB pixels of size `from` into `pixels` of size `to`, rows from the top, with Lanczos of three lobes.
///
/// # Errors
/// Where a buffer does not have 3 bytes for each pixel of its size.
pub fn rgb(from: Size, rgb: &[u8], to: Size, pixels: &mut [u8]) -> Result<(), ScalingRefused> {
    let source = TypedImageRef::<U8x3>::from_buffer(from.0, from.1, rgb).map_err(refused)?;
    let mut scaled = TypedImage::<U8x3>::from_buffer(to.0, to.1, pixels).map_err(refused)?;
    fir::Resizer::new()
        .resize_typed(&source, &mut scaled, &options(fir::FilterType::Lanczos3))
        .map_err(refused)
}

/// Scales grey pixels of size `from` into `pixels` of size `to`, rows from the top, with the cubic filter of Catmull
/// and Rom.
///
/// `grey` is only read. It is `&mut` because source and result of one type halve the code that is compiled.
///
/// # Errors
/// Where a buffer does not have a byte for each pixel of its size.
pub fn grey(
    from: Size,
    grey: &mut [u8],
    to: Size,
    pixels: &mut [u8],
) -> Result<(), ScalingRefused> {
    let source = TypedImage::<U8>::from_buffer(from.0, from.1, grey).map_err(refused)?;
    let mut scaled = TypedImage::<U8>::from_buffer(to.0, to.1, pixels).map_err(refused)?;
    fir::Resizer::new()
        .resize_typed(&source, &mut scaled, &options(fir::FilterType::CatmullRom))
        .map_err(refused)
}

fn options(filter: fir::FilterType) -> fir::ResizeOptions {
    fir::ResizeOptions::new().resize_alg(fir::ResizeAlg::Convolution(filter))
}

fn refused<E>(_: E) -> ScalingRefused {
    ScalingRefused
}
