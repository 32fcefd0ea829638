//! From a photograph's colour space to sRGB (IEC 61966-2-1), which every browser assumes.
//!
//! Colours are converted after scaling. Scaling works on encoded values in either space, and neither space
//! gives better results.
//!
//! Nearly every photograph's profile is made of curves and a matrix; those are converted by `profile`, in whole
//! numbers, so that every processor gives the same bytes. `moxcms` reads the profile, and converts those made
//! of tables.

use std::sync::Arc;

use moxcms::{ColorProfile, DataColorSpace, Layout, Transform8BitExecutor, TransformOptions};

use crate::fault::Fault;
use crate::prepared::Colour;
use crate::profile::{Greys, Shaper};

/// A conversion of pixels to sRGB.
#[derive(Clone)]
pub struct ToSrgb(Conversion);

#[derive(Clone)]
enum Conversion {
    Shaper(Arc<Shaper>),
    Greys(Arc<Greys>),
    /// Tables of several dimensions, for three channels or for grey.
    Tables(Arc<Transform8BitExecutor>, Layout),
}

/// How the colours of a photograph are understood, given the ICC profile found in the file, and the
/// conversion to sRGB where one is needed.
///
/// A profile that cannot be used (it does not parse, or describes inks) changes nothing. Rendering is
/// perceptual where the profile offers a choice, as usual for photographs; profiles made of a matrix
/// offer none.
pub fn read(profile: Option<&[u8]>) -> (Colour, Option<ToSrgb>) {
    let Some(profile) = profile else {
        return (Colour::Untagged, None);
    };
    match conversion(profile) {
        Some(conversion) => (Colour::Converted, Some(ToSrgb(conversion))),
        None => (Colour::ProfileUnusable, None),
    }
}

fn conversion(profile: &[u8]) -> Option<Conversion> {
    let profile = ColorProfile::new_from_slice(profile).ok()?;
    let layout = match profile.color_space {
        DataColorSpace::Rgb => Layout::Rgb,
        DataColorSpace::Gray => Layout::Gray,
        _ => return None,
    };
    if let Some(shaper) = Shaper::new(&profile) {
        return Some(Conversion::Shaper(Arc::new(shaper)));
    }
    if let Some(greys) = Greys::new(&profile) {
        return Some(Conversion::Greys(Arc::new(greys)));
    }
    let tables = profile
        .create_transform_8bit(
            layout,
            &ColorProfile::new_srgb(),
            Layout::Rgb,
            TransformOptions::default(),
        )
        .ok()?;
    // Some faults of a profile show only when it is used.
    tables
        .transform(&[0; 3][..layout.channels()], &mut [0; 3])
        .ok()?;
    Some(Conversion::Tables(tables, layout))
}

impl ToSrgb {
    /// The same pixels, 8-bit RGB, in sRGB.
    ///
    /// # Errors
    /// Where the profile proves unusable.
    pub fn convert(&self, rgb: &[u8]) -> Result<Vec<u8>, Fault> {
        let mut converted = vec![0; rgb.len()];
        match &self.0 {
            Conversion::Shaper(shaper) => shaper.convert(rgb, &mut converted),
            Conversion::Greys(greys) => greys.convert(rgb, &mut converted),
            Conversion::Tables(tables, layout) => {
                let done = if *layout == Layout::Gray {
                    // Grey was spread over three equal channels when it was unpacked.
                    let grey: Vec<u8> = rgb.iter().copied().step_by(3).collect();
                    tables.transform(&grey, &mut converted)
                } else {
                    tables.transform(rgb, &mut converted)
                };
                done.map_err(|_| Fault::Damaged("its colours cannot be converted".into()))?;
            }
        }
        Ok(converted)
    }
}
