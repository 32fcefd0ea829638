//! From a photograph's colour space to sRGB (IEC 61966-2-1), which every browser assumes.
//!
//! Colours are converted after scaling. Scaling works on encoded values in either space, and neither space
//! gives better results.
//!
//! Nearly every photograph's profile is made of curves and a matrix, which `profile` converts; those of some
//! scanners and of all presses are made of tables, which `tables` converts. `moxcms` reads the profile; its own
//! conversions give other bytes on processors with vector code.

use std::sync::Arc;

use moxcms::{ColorProfile, DataColorSpace};

use crate::embedded::EmbeddedProfile;
use crate::prepared::Colour;
use crate::profile::{Greys, Shaper};
use crate::tables::Tables;

/// A conversion of pixels to sRGB.
#[derive(Clone)]
pub struct ToSrgb(Conversion);

#[derive(Clone)]
enum Conversion {
    Shaper(Arc<Shaper>),
    Greys(Arc<Greys>),
    /// Tables for three channels or for grey.
    Tables(Arc<Tables>),
}

/// How the colours of a photograph are understood, given the ICC profile found in the file, and the
/// conversion to sRGB where one is needed.
///
/// A profile that cannot be used (it does not parse, or describes inks where the picture has none) changes
/// nothing. Rendering is perceptual where the profile offers a choice, as usual for photographs; profiles made
/// of a matrix offer none.
pub fn read(profile: &EmbeddedProfile) -> (Colour, Option<ToSrgb>) {
    match profile {
        EmbeddedProfile::None => (Colour::Untagged, None),
        EmbeddedProfile::Applied => (Colour::Converted, None),
        EmbeddedProfile::Unusable => (Colour::ProfileUnusable, None),
        EmbeddedProfile::Icc(profile) => match conversion(profile) {
            Some(conversion) => (Colour::Converted, Some(ToSrgb(conversion))),
            None => (Colour::ProfileUnusable, None),
        },
    }
}

fn conversion(profile: &[u8]) -> Option<Conversion> {
    let profile = ColorProfile::new_from_slice(profile).ok()?;
    if !matches!(
        profile.color_space,
        DataColorSpace::Rgb | DataColorSpace::Gray
    ) {
        return None;
    }
    if let Some(shaper) = Shaper::new(&profile) {
        return Some(Conversion::Shaper(Arc::new(shaper)));
    }
    if let Some(greys) = Greys::new(&profile) {
        return Some(Conversion::Greys(Arc::new(greys)));
    }
    Tables::new(&profile).map(|tables| Conversion::Tables(Arc::new(tables)))
}

impl ToSrgb {
    /// The same pixels, 8-bit RGB, in sRGB.
    pub fn convert(&self, rgb: &[u8]) -> Vec<u8> {
        let mut converted = vec![0; rgb.len()];
        match &self.0 {
            Conversion::Shaper(shaper) => shaper.convert(rgb, &mut converted),
            Conversion::Greys(greys) => greys.convert(rgb, &mut converted),
            Conversion::Tables(tables) if tables.channels() == 1 => {
                // Grey was spread over three equal channels when it was unpacked.
                let grey: Vec<u8> = rgb.iter().copied().step_by(3).collect();
                tables.convert(&grey, &mut converted);
            }
            Conversion::Tables(tables) => tables.convert(rgb, &mut converted),
        }
        converted
    }
}
