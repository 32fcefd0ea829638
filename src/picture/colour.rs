//! From a photograph's colour space to sRGB (IEC 61966-2-1), which every browser assumes.
//!
//! Done once the picture has been scaled, where it is: scaling happens in the encoded values of either
//! space, and neither is better for it.

use std::sync::Arc;

use moxcms::{ColorProfile, DataColorSpace, Layout, Transform8BitExecutor, TransformOptions};

use super::Colour;
use super::fault::Fault;

/// What brings pixels to sRGB.
#[derive(Clone)]
pub struct ToSrgb {
    transform: Arc<Transform8BitExecutor>,
    is_grey: bool,
}

/// How the colours of a photograph are understood, given the ICC profile found in the file, and what
/// brings them to sRGB where something must.
///
/// A profile that cannot be used (it does not parse, or speaks of inks) changes nothing. Rendering is
/// perceptual where the profile offers a choice, as usual for photographs; profiles made of a matrix
/// offer none.
pub fn read(profile: Option<&[u8]>) -> (Colour, Option<ToSrgb>) {
    let Some(profile) = profile else {
        return (Colour::Untagged, None);
    };
    match transform(profile) {
        Some(to_srgb) => (Colour::Converted, Some(to_srgb)),
        None => (Colour::ProfileUnusable, None),
    }
}

fn transform(profile: &[u8]) -> Option<ToSrgb> {
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
    let to_srgb = ToSrgb {
        transform,
        is_grey: layout == Layout::Gray,
    };
    to_srgb.convert(&[0; 3]).ok().map(|_| to_srgb)
}

impl ToSrgb {
    /// The same pixels, 8-bit RGB, in sRGB.
    ///
    /// # Errors
    /// Where the profile turns out to be useless after all.
    pub fn convert(&self, rgb: &[u8]) -> Result<Vec<u8>, Fault> {
        let mut converted = vec![0; rgb.len()];
        let done = if self.is_grey {
            // Grey was spread over three equal channels when it was unpacked.
            let grey: Vec<u8> = rgb.iter().copied().step_by(3).collect();
            self.transform.transform(&grey, &mut converted)
        } else {
            self.transform.transform(rgb, &mut converted)
        };
        done.map_err(|_| Fault::Damaged("its colours cannot be converted".into()))?;
        Ok(converted)
    }
}
