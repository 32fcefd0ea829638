//! A photograph unpacked.

use image::RgbImage;
use image::metadata::Orientation;

/// A photograph unpacked, as its file stores it.
#[derive(Debug)]
pub struct Master {
    /// 8-bit RGB in the file's own colour space.
    pub pixels: RgbImage,
    /// How to turn the pixels to see the picture upright.
    pub orientation: Orientation,
    /// The embedded ICC profile, as it came.
    pub profile: Option<Vec<u8>>,
}
