//! From the bytes of a file to pixels: the header is judged before anything is unpacked.
//!
//! The kind of picture is recognised by content, never by the ending of its name. All kinds become
//! 8-bit RGB; what is transparent is laid on white, as paper would show it.
//!
//! Not here: turning the picture upright and converting its colours, which cost less once the
//! picture is small (`derive`, `colour`).

use std::io::{Cursor, ErrorKind};

use image::error::{LimitErrorKind, UnsupportedErrorKind};
use image::metadata::Orientation;
use image::{
    ColorType, DynamicImage, ExtendedColorType, ImageDecoder, ImageError, ImageFormat, ImageReader,
    Limits, Rgb, RgbImage,
};

use crate::fault::Fault;
use crate::jpeg::{self, Jpeg};
use crate::master::Master;

/// A picture whose header was accepted; no pixel is unpacked yet.
pub struct Opened<'a> {
    source: Source<'a>,
    /// Width in px, as stored.
    pub width: u32,
    /// Height in px, as stored.
    pub height: u32,
    /// Bytes of memory that unpacking will take at most, the file itself not counted.
    pub memory: u64,
}

enum Source<'a> {
    Jpeg(Box<Jpeg<'a>>),
    Other(Box<dyn ImageDecoder + 'a>),
}

/// Reads the header of a picture; refuses a file that is not a picture, is not whole, or is above
/// the limit.
///
/// # Errors
/// Every [`Fault`] that a header can show.
pub fn open(bytes: &[u8], pixel_limit: u64) -> Result<Opened<'_>, Fault> {
    if bytes.is_empty() {
        return Err(Fault::Empty);
    }
    let kind = image::guess_format(bytes).map_err(|_| Fault::NotAPicture)?;
    let (source, width, height, bytes_per_pixel) = match kind {
        ImageFormat::Jpeg => {
            let jpeg = jpeg::open(bytes)?;
            let (width, height, cost) = (jpeg.width, jpeg.height, jpeg.bytes_per_pixel);
            (Source::Jpeg(Box::new(jpeg)), width, height, cost)
        }
        ImageFormat::Png | ImageFormat::Tiff | ImageFormat::WebP => {
            if kind == ImageFormat::WebP && !webp_is_whole(bytes) {
                return Err(Fault::CutShort);
            }
            let decoder = open_other(bytes, kind, pixel_limit)?;
            let (width, height) = decoder.dimensions();
            // The decoder's buffer, what it hands out, and the 8-bit RGB made of that.
            let cost = 2 * u64::from(decoder.color_type().bytes_per_pixel()) + 3;
            (Source::Other(decoder), width, height, cost)
        }
        ImageFormat::Gif => return Err(Fault::OtherKind("GIF")),
        ImageFormat::Bmp => return Err(Fault::OtherKind("BMP")),
        ImageFormat::Avif => return Err(Fault::OtherKind("AVIF")),
        ImageFormat::OpenExr => return Err(Fault::OtherKind("OpenEXR")),
        _ => return Err(Fault::NotAPicture),
    };
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
    Ok(Opened {
        source,
        width,
        height,
        memory: pixels.saturating_mul(bytes_per_pixel),
    })
}

impl Opened<'_> {
    /// Unpacks the pixels.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn decode(self) -> Result<Master, Fault> {
        let mut decoder = match self.source {
            Source::Jpeg(jpeg) => return jpeg.decode(),
            Source::Other(decoder) => decoder,
        };
        // A picture with a broken orientation tag is still used.
        let orientation = match decoder.orientation() {
            Ok(Orientation::NoTransforms) | Err(_) => exif_with_prefix(&mut decoder),
            Ok(stated) => stated,
        };
        let profile = decoder.icc_profile().unwrap_or_default();
        let picture = DynamicImage::from_decoder(decoder).map_err(|error| fault(&error))?;
        Ok(Master {
            pixels: on_white(picture),
            orientation,
            profile,
        })
    }
}

/// Opens a picture that is not a JPEG.
fn open_other<'a>(
    bytes: &'a [u8],
    kind: ImageFormat,
    pixel_limit: u64,
) -> Result<Box<dyn ImageDecoder + 'a>, Fault> {
    let mut limits = Limits::default();
    // Two buffers of the widest pixel, RGBA of 16 bits a channel, and room for tags and profiles.
    limits.max_alloc = Some(pixel_limit.saturating_mul(16).saturating_add(64 << 20));
    let mut reader = ImageReader::with_format(Cursor::new(bytes), kind);
    reader.limits(limits);
    let decoder = reader.into_decoder().map_err(|error| fault(&error))?;
    match decoder.original_color_type() {
        ExtendedColorType::Cmyk8 | ExtendedColorType::Cmyk16 => return Err(Fault::Cmyk),
        _ => {}
    }
    match decoder.color_type() {
        ColorType::Rgb32F | ColorType::Rgba32F => Err(Fault::Unsupported(
            "floating-point numbers for colours".into(),
        )),
        _ => Ok(Box::new(decoder)),
    }
}

/// The orientation of an Exif block that still carries the prefix it has in JPEG files, as some
/// programs write it into WebP.
fn exif_with_prefix(decoder: &mut dyn ImageDecoder) -> Orientation {
    decoder
        .exif_metadata()
        .ok()
        .flatten()
        .and_then(|exif| Orientation::from_exif_chunk(exif.strip_prefix(b"Exif\0\0")?))
        .unwrap_or(Orientation::NoTransforms)
}

/// 8-bit RGB of any picture, transparent parts on white.
fn on_white(picture: DynamicImage) -> RgbImage {
    if !picture.color().has_alpha() {
        return picture.into_rgb8();
    }
    let rgba = picture.into_rgba8();
    let mut rgb = RgbImage::new(rgba.width(), rgba.height());
    for (out, pixel) in rgb.pixels_mut().zip(rgba.pixels()) {
        let [r, g, b, alpha] = pixel.0;
        *out = Rgb([r, g, b].map(|channel| over_white(channel, alpha)));
    }
    rgb
}

/// One channel of a partly transparent pixel laid on white, rounded to nearest.
fn over_white(channel: u8, alpha: u8) -> u8 {
    let (channel, alpha) = (u32::from(channel), u32::from(alpha));
    let sum = channel * alpha + 255 * (255 - alpha);
    u8::try_from((sum + 127) / 255).unwrap_or(u8::MAX)
}

/// Whether every chunk that a WebP announces lies inside the file (RFC 9649, section 2.3). The
/// decoder reserves room for a chunk before it looks whether it is there.
fn webp_is_whole(bytes: &[u8]) -> bool {
    let Some(&[a, b, c, d]) = bytes.get(4..8) else {
        return false;
    };
    let announced = u64::from(u32::from_le_bytes([a, b, c, d])) + 8;
    if announced > bytes.len() as u64 {
        return false;
    }
    let mut at: u64 = 12;
    while at + 8 <= announced {
        let size = usize::try_from(at)
            .ok()
            .and_then(|at| bytes.get(at + 4..at + 8));
        let Some(&[a, b, c, d]) = size else {
            return false;
        };
        let size = u64::from(u32::from_le_bytes([a, b, c, d]));
        // Chunks are padded to an even length; the padding of the last may be missing.
        if at + 8 + size > announced {
            return false;
        }
        at += 8 + size + size % 2;
    }
    true
}

fn fault(error: &ImageError) -> Fault {
    match error {
        ImageError::IoError(io) if io.kind() == ErrorKind::UnexpectedEof => Fault::CutShort,
        ImageError::Unsupported(unsupported) => Fault::Unsupported(match unsupported.kind() {
            UnsupportedErrorKind::Color(_) => "an unusual way of storing colours".into(),
            _ => unsupported.to_string(),
        }),
        ImageError::Limits(limit) => Fault::Damaged(match limit.kind() {
            LimitErrorKind::DimensionError => "its sides are too long".into(),
            _ => "it would unpack to more than its size allows".into(),
        }),
        ImageError::Decoding(decoding) => {
            let reason = std::error::Error::source(decoding).map(ToString::to_string);
            Fault::Damaged(reason.unwrap_or_else(|| decoding.to_string()))
        }
        other => Fault::Damaged(other.to_string()),
    }
}
