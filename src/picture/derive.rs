//! The smaller files that pages show: how large, and made how.
//!
//! Scaling is Lanczos with three lobes on the encoded values, not in linear light: the usual choice
//! for photographs, though dense black hatching comes out a shade darker than it would seen from
//! afar. Every file is a fresh JPEG of pixels alone, so nothing else of the original can be in it.

use fast_image_resize as fir;
use image::metadata::Orientation;
use image::{DynamicImage, RgbImage};
use jpeg_encoder::{ChromaSubsamplingMethod, ColorType, Encoder, SamplingFactor};

use super::decode::Master;
use super::fault::Fault;
use super::{Colour, Plan, colour};

/// Width and height in px.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Extent {
    pub width: u32,
    pub height: u32,
}

impl Extent {
    pub(super) fn of(picture: &RgbImage) -> Self {
        Self {
            width: picture.width(),
            height: picture.height(),
        }
    }

    pub(super) fn turned(self) -> Self {
        Self {
            width: self.height,
            height: self.width,
        }
    }

    /// The same shape at another width, at least a pixel high.
    fn at_width(self, width: u32) -> Self {
        let height = (u64::from(self.height) * u64::from(width) + u64::from(self.width) / 2)
            / u64::from(self.width.max(1));
        Self {
            width,
            height: u32::try_from(height).unwrap_or(u32::MAX).max(1),
        }
    }

    /// The same shape with no side above `largest`; unchanged where none is.
    pub(super) fn within(self, largest: u32) -> Self {
        let longest = self.width.max(self.height);
        if longest <= largest {
            return self;
        }
        // Rounded down, so that the height that follows from it stays within as well.
        let width = u64::from(self.width) * u64::from(largest) / u64::from(longest);
        let fitted = self.at_width(u32::try_from(width).unwrap_or(u32::MAX).max(1));
        Self {
            width: fitted.width,
            height: fitted.height.min(largest),
        }
    }
}

/// A derivative before it is kept.
#[derive(Debug)]
pub struct Rendered {
    pub extent: Extent,
    pub jpeg: Vec<u8>,
}

/// All that is made of one photograph.
#[derive(Debug)]
pub struct Rendering {
    /// The photograph upright, in full.
    pub master: Extent,
    pub colour: Colour,
    /// Smallest first.
    pub files: Vec<Rendered>,
}

/// The longest side that anything made of a picture may have, in px.
pub fn longest_side(plan: &Plan, largest: Option<u32>) -> u32 {
    // A JPEG cannot state a longer side than this.
    let allowed = plan.largest.min(u32::from(u16::MAX));
    largest.map_or(allowed, |own| own.min(allowed)).max(1)
}

/// The widths a plan asks for, rising, each once.
pub fn widths(plan: &Plan) -> Vec<u32> {
    let mut widths: Vec<u32> = plan
        .widths
        .iter()
        .copied()
        .filter(|&width| width > 0)
        .collect();
    widths.sort_unstable();
    widths.dedup();
    widths
}

/// The sizes to make of a photograph, smallest first, never empty.
///
/// Those widths of the plan that the picture reaches without being enlarged and without a side above
/// `longest`. A picture that falls between two widths is also given at the largest it may have, and
/// then a width within a tenth of that is left out: it would cost a file and show nothing more.
fn extents(master: Extent, widths: &[u32], longest: u32) -> Vec<Extent> {
    let most = master.within(longest);
    let top = match widths.last() {
        Some(&widest) if widest < most.width => most.at_width(widest),
        _ => most,
    };
    let spared = u64::from(top.width) * 9;
    let mut extents: Vec<Extent> = widths
        .iter()
        .filter(|&&width| u64::from(width) * 10 < spared)
        .map(|&width| most.at_width(width))
        .collect();
    extents.push(top);
    extents
}

/// Makes the derivatives of a photograph.
///
/// # Errors
/// Where the scaler or the encoder refuses, which a decoded picture gives it no reason to do.
pub fn render(master: Master, plan: &Plan, largest: Option<u32>) -> Result<Rendering, Fault> {
    let Master {
        pixels,
        orientation,
        profile,
    } = master;
    let stored = Extent::of(&pixels);
    let upright = if on_its_side(orientation) {
        stored.turned()
    } else {
        stored
    };
    let mut extents = extents(upright, &widths(plan), longest_side(plan, largest));
    let top = extents.pop().unwrap_or(upright);

    // The largest is scaled from the photograph, then turned and converted; the others are scaled
    // from it. So the millions of pixels are visited once.
    let as_stored = if on_its_side(orientation) {
        top.turned()
    } else {
        top
    };
    let scaled = if as_stored == stored {
        pixels
    } else {
        scale(&pixels, as_stored)?
    };
    let mut turned = DynamicImage::ImageRgb8(scaled);
    turned.apply_orientation(orientation);
    let mut largest_made = turned.into_rgb8();
    let colour = colour::to_srgb(&mut largest_made, profile.as_deref());

    let mut files = Vec::with_capacity(extents.len() + 1);
    for extent in extents {
        files.push(encode(&scale(&largest_made, extent)?, plan.quality)?);
    }
    files.push(encode(&largest_made, plan.quality)?);
    Ok(Rendering {
        master: upright,
        colour,
        files,
    })
}

/// Whether turning the picture upright exchanges width and height.
pub(super) fn on_its_side(orientation: Orientation) -> bool {
    matches!(
        orientation,
        Orientation::Rotate90
            | Orientation::Rotate270
            | Orientation::Rotate90FlipH
            | Orientation::Rotate270FlipH
    )
}

pub(super) fn scale(picture: &RgbImage, to: Extent) -> Result<RgbImage, Fault> {
    let refused = || Fault::Damaged("it cannot be scaled".into());
    let source = fir::images::ImageRef::new(
        picture.width(),
        picture.height(),
        picture.as_raw(),
        fir::PixelType::U8x3,
    )
    .map_err(|_| refused())?;
    let mut scaled = fir::images::Image::new(to.width, to.height, fir::PixelType::U8x3);
    let options = fir::ResizeOptions::new()
        .resize_alg(fir::ResizeAlg::Convolution(fir::FilterType::Lanczos3));
    fir::Resizer::new()
        .resize(&source, &mut scaled, &options)
        .map_err(|_| refused())?;
    RgbImage::from_raw(to.width, to.height, scaled.into_vec()).ok_or_else(refused)
}

/// A baseline JPEG, 4:2:0. Colour is averaged over each square of four pixels: taking the nearest,
/// the encoder's own choice, leaves coloured steps along the edges of blocks. Tables fitted to the
/// picture would save a twentieth of the bytes, but with them the encoder writes one colour after
/// another, which `jpeg` has to refuse and browsers can only show once all has arrived.
pub(super) fn encode(picture: &RgbImage, quality: u8) -> Result<Rendered, Fault> {
    let refused = || Fault::Damaged("it cannot be saved as JPEG".into());
    let extent = Extent::of(picture);
    let width = u16::try_from(extent.width).map_err(|_| refused())?;
    let height = u16::try_from(extent.height).map_err(|_| refused())?;
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, quality.clamp(1, 100));
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder.set_chroma_subsampling_method(ChromaSubsamplingMethod::Average);
    encoder
        .encode(picture.as_raw(), width, height, ColorType::Rgb)
        .map_err(|_| refused())?;
    Ok(Rendered { extent, jpeg })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn widths_of(master: (u32, u32), longest: u32) -> Vec<(u32, u32)> {
        let master = Extent {
            width: master.0,
            height: master.1,
        };
        extents(master, &[480, 960, 1920], longest)
            .into_iter()
            .map(|extent| (extent.width, extent.height))
            .collect()
    }

    #[test]
    fn a_large_picture_is_given_in_every_width() {
        assert_eq!(
            widths_of((6000, 4000), 9000),
            [(480, 320), (960, 640), (1920, 1280)]
        );
    }

    #[test]
    fn a_picture_is_never_enlarged() {
        assert_eq!(widths_of((700, 350), 9000), [(480, 240), (700, 350)]);
        assert_eq!(widths_of((300, 200), 9000), [(300, 200)]);
        assert_eq!(widths_of((480, 1), 9000), [(480, 1)]);
    }

    #[test]
    fn a_width_close_to_the_largest_is_spared() {
        assert_eq!(widths_of((1000, 500), 9000), [(480, 240), (1000, 500)]);
    }

    #[test]
    fn no_side_goes_above_the_largest_allowed() {
        assert_eq!(widths_of((6000, 4000), 1000), [(480, 320), (1000, 667)]);
        // Upright: the height is the longest side.
        assert_eq!(widths_of((4000, 6000), 1000), [(480, 720), (666, 999)]);
        assert_eq!(widths_of((10, 60_000), 1000), [(1, 1000)]);
    }
}
