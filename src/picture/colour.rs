//! From a photograph's colour space to sRGB (IEC 61966-2-1), which every browser assumes.
//!
//! Done once the picture has been scaled, on a few pixels instead of millions: scaling happens in
//! the encoded values of either space, and neither is better for it.

use image::RgbImage;
use moxcms::{ColorProfile, DataColorSpace, Layout, TransformOptions};

use super::Colour;

/// Converts the picture in place and says how its colours were understood.
///
/// `profile` is the ICC profile found in the file. Where it cannot be used (it does not parse, or
/// speaks of inks) the picture stays as it is. Rendering is perceptual where the profile offers a
/// choice, as usual for photographs; profiles made of a matrix offer none.
pub fn to_srgb(picture: &mut RgbImage, profile: Option<&[u8]>) -> Colour {
    let Some(profile) = profile else {
        return Colour::Untagged;
    };
    match convert(picture, profile) {
        Some(()) => Colour::Converted,
        None => Colour::ProfileUnusable,
    }
}

/// How the colours of a photograph with this profile are understood, without converting it: what a
/// profile can be used for does not depend on the pixels.
pub fn understood(profile: Option<&[u8]>) -> Colour {
    to_srgb(&mut RgbImage::new(1, 1), profile)
}

fn convert(picture: &mut RgbImage, profile: &[u8]) -> Option<()> {
    let profile = ColorProfile::new_from_slice(profile).ok()?;
    let layout = match profile.color_space {
        DataColorSpace::Rgb => Layout::Rgb,
        DataColorSpace::Gray => Layout::Gray,
        _ => return None,
    };
    let transform = profile
        .create_transform_8bit(
            layout,
            &ColorProfile::new_srgb(),
            Layout::Rgb,
            TransformOptions::default(),
        )
        .ok()?;
    let original: Vec<u8> = match layout {
        // Grey was spread over three equal channels when it was unpacked.
        Layout::Gray => picture.pixels().map(|pixel| pixel.0[0]).collect(),
        _ => picture.as_raw().clone(),
    };
    let mut converted = vec![0; picture.as_raw().len()];
    transform.transform(&original, &mut converted).ok()?;
    picture.copy_from_slice(&converted);
    Some(())
}
