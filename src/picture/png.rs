//! PNG files, read row by row (Portable Network Graphics, third edition).
//!
//! The decoder is told to leave texts and the colour profile aside, because it unpacks them up to the limit of
//! all its memory; the profile is read here, under its own limit.

use std::io::{BufRead, Read, Seek};

use ::png::{BitDepth, ColorType, DecodingError, Limits, Reader, Transformations};
use image::RgbImage;
use image::metadata::Orientation;

use crate::embedded::{self, EXIF_LIMIT, EmbeddedProfile};
use crate::extent::Extent;
use crate::fault::Fault;
use crate::gather::Rows;
use crate::samples::{Depth, Meaning, Samples};
use crate::source::{FileReader, PictureFile};

/// A PNG whose header was accepted.
pub struct Png<'a> {
    reader: Reader<FileReader<'a>>,
    samples: Samples,
    /// Its size as stored.
    pub stored: Extent,
    /// Whether its rows come in seven passes.
    pub is_interlaced: bool,
    /// Its colour profile.
    pub profile: EmbeddedProfile,
    /// How to turn it upright.
    pub orientation: Orientation,
}

/// Bytes that chunks other than pixels may take in the decoder.
const CHUNK_LIMIT: usize = 16 << 20;

/// Opens a PNG.
///
/// # Errors
/// A header that is cut short, damaged, or contradicts itself.
pub fn open(file: &PictureFile) -> Result<Png<'_>, Fault> {
    let (profile, orientation) = beside_pixels(&mut file.reader()?);
    let mut decoder = ::png::Decoder::new(file.reader()?);
    decoder.set_ignore_text_chunk(true);
    decoder.set_ignore_iccp_chunk(true);
    // Palettes and depths below 8 bits are looked up, one transparent colour becomes opacity.
    decoder.set_transformations(Transformations::EXPAND);
    let info = decoder.read_header_info().map_err(|error| fault(&error))?;
    let stored = Extent {
        width: info.width,
        height: info.height,
    };
    // Two rows, of 8 bytes a pixel at most, beside the chunks.
    let rows = (stored.width as usize).saturating_mul(16);
    decoder.set_limits(Limits {
        bytes: CHUNK_LIMIT.saturating_add(rows),
    });
    let reader = decoder.read_info().map_err(|error| fault(&error))?;
    let info = reader.info();
    if let Some(frame) = info.frame_control
        && (frame.width, frame.height) != (info.width, info.height)
    {
        return Err(Fault::Damaged(
            "its first frame is not as large as the picture".into(),
        ));
    }
    let (colours, depth) = reader.output_color_type();
    let meaning = match colours {
        ColorType::Grayscale => Meaning::Grey,
        ColorType::GrayscaleAlpha => Meaning::GreyAlpha,
        ColorType::Rgb => Meaning::Rgb,
        ColorType::Rgba => Meaning::RgbAlpha,
        ColorType::Indexed => {
            return Err(Fault::Unsupported(
                "an unusual way of storing colours".into(),
            ));
        }
    };
    let samples = Samples {
        meaning,
        depth: if depth == BitDepth::Sixteen {
            Depth::SixteenBig
        } else {
            Depth::Eight
        },
        count: colours.samples(),
        inverted: false,
    };
    Ok(Png {
        is_interlaced: info.interlaced,
        samples,
        stored,
        profile,
        orientation,
        reader,
    })
}

impl Png<'_> {
    /// Bytes that the decoder holds while rows are read: rows as stored and unpacked, and its window of what
    /// was unpacked before.
    pub fn memory(&self) -> u64 {
        // Measured: seven rows of the widest pixel and 600 KB.
        8 * u64::from(self.stored.width) * 8 + (2 << 20)
    }

    /// Unpacks an interlaced picture: each pass has the pixels of a coarser grid.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn interlaced(mut self) -> Result<RgbImage, Fault> {
        let Extent { width, height } = self.stored;
        let mut pixels = vec![0; self.stored.pixels() * 3];
        let mut raw = vec![0; width as usize * self.samples.bytes()];
        let mut rgb = vec![0; width as usize * 3];
        for [left, top, across, down] in PASSES {
            if left >= width {
                continue;
            }
            let columns = (width - left).div_ceil(across) as usize;
            for y in (top..height).step_by(down as usize) {
                let raw = self.row(&mut raw, columns)?;
                let rgb = &mut rgb[..columns * 3];
                self.samples.to_rgb(raw, rgb);
                let places = (left..width).step_by(across as usize);
                for (x, pixel) in places.zip(rgb.chunks_exact(3)) {
                    let at = (y as usize * width as usize + x as usize) * 3;
                    pixels[at..at + 3].copy_from_slice(pixel);
                }
            }
        }
        self.finish()?;
        RgbImage::from_raw(width, height, pixels)
            .ok_or_else(|| Fault::Damaged("its size is not the one it states".into()))
    }

    fn row<'b>(&mut self, raw: &'b mut [u8], columns: usize) -> Result<&'b [u8], Fault> {
        let read = self.reader.read_row(raw).map_err(|error| fault(&error))?;
        if read.is_none() {
            return Err(Fault::CutShort);
        }
        Ok(&raw[..columns * self.samples.bytes()])
    }
}

/// The first column and row of each pass, and the distances between its columns and rows (PNG, 8.1).
const PASSES: [[u32; 4]; 7] = [
    [0, 0, 8, 8],
    [4, 0, 8, 8],
    [0, 4, 4, 8],
    [2, 0, 4, 4],
    [0, 2, 2, 4],
    [1, 0, 2, 2],
    [0, 1, 1, 2],
];

impl Rows for Png<'_> {
    fn samples(&self) -> &Samples {
        &self.samples
    }

    fn next_row(&mut self, row: &mut [u8]) -> Result<(), Fault> {
        let columns = self.stored.width as usize;
        self.row(row, columns).map(|_| ())
    }

    fn finish(&mut self) -> Result<(), Fault> {
        // Reads what is left of the pixels' chunks, so that a file that ends there is noticed.
        let after = self
            .reader
            .read_row(&mut [])
            .map_err(|error| fault(&error))?;
        match after {
            None => Ok(()),
            Some(_) => Err(Fault::Damaged("it has more rows than it states".into())),
        }
    }
}

/// The colour profile and the orientation, from the chunks `iCCP` and `eXIf` (11.3.2.3 and 11.3.5.6). Other
/// chunks are skipped by their length.
fn beside_pixels(reader: &mut (impl BufRead + Seek)) -> (EmbeddedProfile, Orientation) {
    let (mut profile, mut orientation) = (EmbeddedProfile::None, Orientation::NoTransforms);
    let mut head = [0; 8];
    let mut pixels_seen = false;
    // The signature comes first, as long as the head of a chunk.
    if reader.read_exact(&mut head).is_err() {
        return (profile, orientation);
    }
    while reader.read_exact(&mut head).is_ok() {
        let [a, b, c, d, kind @ ..] = head;
        let length = u64::from(u32::from_be_bytes([a, b, c, d]));
        let mut content = (&mut *reader).take(length);
        match &kind {
            b"IEND" => break,
            b"IDAT" => pixels_seen = true,
            b"iCCP" if !pixels_seen => {
                // A name of up to 79 bytes, a zero, the method of compression.
                let named = content.by_ref().take(81).skip_until(0);
                let mut method = [0xFF];
                let is_zlib =
                    named.is_ok() && content.read_exact(&mut method).is_ok() && method == [0];
                profile = if is_zlib {
                    EmbeddedProfile::inflated(&mut content)
                } else {
                    EmbeddedProfile::Unusable
                };
            }
            b"eXIf" => {
                let mut exif = Vec::new();
                if content
                    .by_ref()
                    .take(EXIF_LIMIT)
                    .read_to_end(&mut exif)
                    .is_ok()
                {
                    orientation = embedded::orientation(&exif);
                }
            }
            _ => {}
        }
        // What is left of the chunk, and its checksum.
        let left = content.limit() + 4;
        if reader.seek_relative(left.cast_signed()).is_err() {
            break;
        }
    }
    (profile, orientation)
}

fn fault(error: &DecodingError) -> Fault {
    match error {
        DecodingError::IoError(io) if io.kind() == std::io::ErrorKind::UnexpectedEof => {
            Fault::CutShort
        }
        DecodingError::LimitsExceeded => {
            Fault::Damaged("it would unpack to more than its size allows".into())
        }
        other => Fault::Damaged(other.to_string()),
    }
}
