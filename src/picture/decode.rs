//! From a file to pixels: the header is judged before anything is unpacked, and says how much memory unpacking
//! takes.
//!
//! The kind of picture is recognised by content, never by the ending of its name. All kinds become
//! 8-bit RGB; what is transparent is laid on white, as paper would show it.
//!
//! Not here: turning the picture upright and converting its colours, which cost less once the
//! picture is small (`derive`, `colour`).

use std::io::Read;

use image::metadata::Orientation;
use image::{GrayImage, ImageFormat, RgbImage};

use crate::embedded::EmbeddedProfile;
use crate::extent::Extent;
use crate::fault::{Fault, MemoryCause};
use crate::gather::{self, Rows};
use crate::jpeg::{self, Jpeg};
use crate::png::{self, Png};
use crate::scaling::{self, scale};
use crate::source::PictureFile;
use crate::tiff::{self, Tiff};
use crate::webp::{self, WebP};

/// A picture whose header was accepted; no pixel is unpacked yet.
pub struct Opened<'a> {
    source: Source<'a>,
    /// Its size as stored.
    pub stored: Extent,
    /// How to turn the pixels to see the picture upright.
    pub orientation: Orientation,
    /// The embedded ICC profile, where it is left to apply.
    pub profile: EmbeddedProfile,
    /// Bytes that the conversion of colours takes.
    conversion: u64,
}

enum Source<'a> {
    Jpeg(Box<Jpeg<'a>>),
    Png(Box<Png<'a>>),
    Tiff(Box<Tiff<'a>>),
    WebP(Box<WebP<'a>>),
}

/// Reads the header of a picture; refuses a file that is not a picture, is not whole, or is above
/// the limit of pixels.
///
/// # Errors
/// Every [`Fault`] that a header can show.
pub fn open(file: &PictureFile, pixel_limit: u64) -> Result<Opened<'_>, Fault> {
    if file.bytes() == 0 {
        return Err(Fault::Empty);
    }
    let opened = match kind(file)? {
        ImageFormat::Jpeg => {
            let mut jpeg = jpeg::open(file)?;
            Opened {
                stored: jpeg.stored,
                orientation: jpeg.orientation,
                conversion: jpeg.conversion,
                profile: std::mem::replace(&mut jpeg.profile, EmbeddedProfile::None),
                source: Source::Jpeg(Box::new(jpeg)),
            }
        }
        ImageFormat::Png => {
            let mut png = png::open(file)?;
            Opened {
                stored: png.stored,
                orientation: png.orientation,
                conversion: png.profile.memory(),
                profile: std::mem::replace(&mut png.profile, EmbeddedProfile::None),
                source: Source::Png(Box::new(png)),
            }
        }
        ImageFormat::Tiff => {
            let mut tiff = tiff::open(file)?;
            Opened {
                stored: tiff.stored,
                orientation: tiff.orientation,
                conversion: tiff.conversion,
                profile: std::mem::replace(&mut tiff.profile, EmbeddedProfile::None),
                source: Source::Tiff(Box::new(tiff)),
            }
        }
        ImageFormat::WebP => {
            let mut webp = webp::open(file)?;
            Opened {
                stored: webp.stored,
                orientation: webp.orientation,
                conversion: webp.profile.memory(),
                profile: std::mem::replace(&mut webp.profile, EmbeddedProfile::None),
                source: Source::WebP(Box::new(webp)),
            }
        }
        ImageFormat::Gif => return Err(Fault::OtherKind("GIF")),
        ImageFormat::Bmp => return Err(Fault::OtherKind("BMP")),
        ImageFormat::Avif => return Err(Fault::OtherKind("AVIF")),
        ImageFormat::OpenExr => return Err(Fault::OtherKind("OpenEXR")),
        _ => return Err(Fault::NotAPicture),
    };
    let Extent { width, height } = opened.stored;
    let pixels = u64::from(width) * u64::from(height);
    if pixels == 0 {
        return Err(Fault::Damaged(
            "it states a width or height of nothing".into(),
        ));
    }
    if pixels > pixel_limit {
        return Err(Fault::TooManyPixels {
            width,
            height,
            limit: pixel_limit,
        });
    }
    Ok(opened)
}

/// The kind of picture that the first bytes show.
fn kind(file: &PictureFile) -> Result<ImageFormat, Fault> {
    let mut first = Vec::new();
    let read = file.reader()?.take(64).read_to_end(&mut first);
    read.map_err(|error| Fault::Unopened(error.to_string()))?;
    // BigTIFF has 43 where TIFF has 42.
    if first.starts_with(b"II\x2B\0") || first.starts_with(b"MM\0\x2B") {
        return Ok(ImageFormat::Tiff);
    }
    image::guess_format(&first).map_err(|_| Fault::NotAPicture)
}

impl Opened<'_> {
    /// Bytes of memory that [`Opened::pixels`] takes at most.
    pub fn memory(&self, to: Extent) -> u64 {
        let held = 3 * self.stored.pixels() as u64;
        let scaled = if to == self.stored {
            0
        } else {
            scaling::memory(self.stored, to)
        };
        let unpacking = match &self.source {
            Source::Jpeg(jpeg) => jpeg.memory().max(held + scaled),
            Source::WebP(webp) => webp.memory().max(held + scaled),
            Source::Png(png) if png.is_interlaced => png.memory() + held + scaled,
            Source::Png(png) => png.memory() + gather::memory(png.samples(), self.stored, to),
            Source::Tiff(tiff) => {
                tiff.memory()
                    .saturating_add(gather::memory(tiff.samples(), self.stored, to))
            }
        };
        // The scaler's weights and other small things.
        unpacking.saturating_add(self.conversion + (1 << 20))
    }

    /// Bytes that the conversion of colours takes.
    pub fn conversion_memory(&self) -> u64 {
        self.conversion
    }

    /// Bytes of memory that [`Opened::grey`] takes at most.
    pub fn grey_memory(&self) -> u64 {
        let pixels = self.stored.pixels() as u64;
        let flat = Extent {
            height: 1,
            ..self.stored
        };
        match &self.source {
            Source::Png(png) if !png.is_interlaced => {
                png.memory() + gather::memory(png.samples(), self.stored, flat) + pixels
            }
            Source::Tiff(tiff) => tiff
                .memory()
                .saturating_add(gather::memory(tiff.samples(), self.stored, flat) + pixels),
            _ => self.memory(self.stored),
        }
    }

    /// What makes it take so much memory.
    pub fn cause(&self) -> MemoryCause {
        match &self.source {
            Source::Jpeg(jpeg) if jpeg.holds_coefficients() => MemoryCause::Scans,
            Source::Png(png) if png.is_interlaced => MemoryCause::Interlaced,
            Source::Tiff(tiff) if tiff.holds_blocks() => MemoryCause::Blocks,
            Source::WebP(webp) if webp.is_lossless() => MemoryCause::LosslessWebP,
            _ => MemoryCause::Size,
        }
    }

    /// Unpacks the pixels, scaled to `to`: 8-bit RGB in the file's own colour space.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn pixels(self, to: Extent) -> Result<RgbImage, Fault> {
        let pixels = match self.source {
            Source::Jpeg(jpeg) => jpeg.decode()?,
            Source::WebP(webp) => webp.decode()?,
            Source::Png(png) if png.is_interlaced => png.interlaced()?,
            Source::Png(mut png) => return gather::rgb(&mut *png, self.stored, to),
            Source::Tiff(mut tiff) => return gather::rgb(&mut *tiff, self.stored, to),
        };
        if to == self.stored {
            return Ok(pixels);
        }
        scale(self.stored, pixels.as_raw(), to)
    }

    /// Unpacks the pixels and drops them. Takes no more memory than scaling them to any size.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn examine(self) -> Result<(), Fault> {
        let stored = self.stored;
        match self.source {
            Source::Png(mut png) if !png.is_interlaced => gather::examine(&mut *png, stored),
            Source::Tiff(mut tiff) => gather::examine(&mut *tiff, stored),
            _ => self.pixels(stored).map(|_| ()),
        }
    }

    /// Unpacks the pixels as grey: the encoded colours weighted by their brightness to the eye (ITU-R BT.601).
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn grey(self) -> Result<GrayImage, Fault> {
        let stored = self.stored;
        let grey = match self.source {
            Source::Png(mut png) if !png.is_interlaced => {
                gather::grey(&mut *png, stored, brightness)?
            }
            Source::Tiff(mut tiff) => gather::grey(&mut *tiff, stored, brightness)?,
            _ => grey_of(self.pixels(stored)?),
        };
        GrayImage::from_raw(stored.width, stored.height, grey)
            .ok_or_else(|| Fault::Damaged("its size is not the one it states".into()))
    }
}

/// The grey of RGB pixels, made in their place.
pub fn grey_of(pixels: RgbImage) -> Vec<u8> {
    let mut bytes = pixels.into_raw();
    let count = bytes.len() / 3;
    for at in 0..count {
        bytes[at] = brightness(&bytes[at * 3..at * 3 + 3]);
    }
    bytes.truncate(count);
    bytes
}

fn brightness(rgb: &[u8]) -> u8 {
    let sum = 77 * u32::from(rgb[0]) + 150 * u32::from(rgb[1]) + 29 * u32::from(rgb[2]);
    u8::try_from((sum + 128) >> 8).unwrap_or(u8::MAX)
}
