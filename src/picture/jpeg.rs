//! JPEG files: read with the strict decoder, and only if they are whole.
//!
//! Decoders forgive a JPEG that ends too early and paint the rest grey. A catalogue must not: the
//! grey part would pass for the sheet. So the markers of ISO/IEC 10918-1 (Annex B) are walked first. The same
//! walk finds the colour profile, the orientation, and what unpacking will take.

use std::io::{BufRead, Seek};
use std::sync::Arc;

use image::RgbImage;
use image::metadata::Orientation;
use rayon::prelude::*;
use zune_jpeg::JpegDecoder;
use zune_jpeg::errors::DecodeErrors;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use crate::embedded::{self, EmbeddedProfile, PROFILE_LIMIT};
use crate::extent::Extent;
use crate::fault::Fault;
use crate::source::PictureFile;
use crate::tables::Tables;

/// A JPEG whose markers have been read and whose end has been seen; no pixel is unpacked yet.
pub struct Jpeg<'a> {
    file: &'a PictureFile,
    outline: Outline,
    /// The conversion of inks, where its colours are inks.
    inks: Option<Arc<Tables>>,
    /// Its size as stored.
    pub stored: Extent,
    /// Its colour profile.
    pub profile: EmbeddedProfile,
    /// Bytes that the conversion of colours takes.
    pub conversion: u64,
    /// How to turn it upright.
    pub orientation: Orientation,
}

/// Reads the markers.
///
/// # Errors
/// Cut short, inks that cannot be converted, or a header that contradicts itself.
pub fn open(file: &PictureFile) -> Result<Jpeg<'_>, Fault> {
    let mut outline = outline(&mut file.reader()?);
    if !outline.ended {
        return Err(Fault::CutShort);
    }
    let Some(frame) = &outline.frame else {
        return Err(if outline.other_frame {
            unusual_coding()
        } else {
            Fault::Damaged("it has no header".into())
        });
    };
    let stored = frame.extent;
    let channels = frame.channels.len();
    if outline.is_split() && frame.is_subsampled() {
        // Valid, but the decoder (zune-jpeg 0.5.15) combines the wrong colours and reports no error.
        return Err(Fault::Unsupported(
            "a JPEG that stores one colour after another".into(),
        ));
    }
    let mut profile = std::mem::take(&mut outline.profile).joined();
    let conversion = profile.memory();
    let mut inks = None;
    match channels {
        1 | 3 => {}
        4 => {
            // Only the marker of Adobe says how inks are counted (ITU-T T.872).
            if outline.adobe_transform.is_none() {
                return Err(Fault::InksOfUnknownSense);
            }
            inks = Some(Arc::new(Tables::of_inks(&profile)?));
            profile = EmbeddedProfile::Applied;
        }
        _ => {
            return Err(Fault::Unsupported(format!("a JPEG of {channels} channels")));
        }
    }
    Ok(Jpeg {
        file,
        inks,
        stored,
        profile,
        conversion,
        orientation: outline.orientation.unwrap_or(Orientation::NoTransforms),
        outline,
    })
}

impl Jpeg<'_> {
    /// Whether every coefficient is held until the last scan.
    pub fn holds_coefficients(&self) -> bool {
        self.outline.is_progressive || self.outline.is_split()
    }

    /// Bytes that unpacking takes at most: the file, the metadata that the decoder copies, the pixels, and
    /// the coefficients where all are held.
    pub fn memory(&self) -> u64 {
        let Some(frame) = &self.outline.frame else {
            return 0;
        };
        let pixels = self.stored.pixels() as u64 * frame.channels.len().max(3) as u64;
        let coefficients = if self.holds_coefficients() {
            2 * frame.samples()
        } else {
            0
        };
        self.file
            .bytes()
            .saturating_add(2 * self.outline.metadata)
            .saturating_add(pixels)
            .saturating_add(coefficients)
            .saturating_add(frame.row_of_blocks())
            .saturating_add(1 << 20)
    }

    /// Unpacks the pixels.
    ///
    /// # Errors
    /// Data that contradict the header.
    pub fn decode(self) -> Result<RgbImage, Fault> {
        let Extent { width, height } = self.stored;
        let bytes = self.file.whole()?;
        let mut decoder = JpegDecoder::new_with_options(ZCursor::new(&bytes[..]), options());
        decoder.decode_headers().map_err(|error| fault(&error))?;
        let differs = || Fault::Damaged("its size is not the one it states".into());
        let dimensions = decoder.dimensions().ok_or_else(differs)?;
        if dimensions != (width as usize, height as usize) {
            return Err(differs());
        }
        let colours = decoder.input_colorspace().ok_or_else(differs)?;
        if let Some(inks) = &self.inks {
            if !matches!(colours, ColorSpace::CMYK | ColorSpace::YCCK) {
                return Err(Fault::InksOfUnknownSense);
            }
            // As they are stored: the decoder's own conversion to RGB takes inks for light.
            decoder.set_options(options().jpeg_set_out_colorspace(colours));
            let stored = decoder.decode().map_err(|error| fault(&error))?;
            drop(decoder);
            drop(bytes);
            let rgb = inks_to_rgb(stored, width as usize, colours == ColorSpace::YCCK, inks);
            return RgbImage::from_raw(width, height, rgb).ok_or_else(differs);
        }
        if !matches!(
            colours,
            ColorSpace::YCbCr | ColorSpace::RGB | ColorSpace::Luma
        ) {
            return Err(Fault::Unsupported(
                "an unusual way of storing colours".into(),
            ));
        }
        let rgb = decoder.decode().map_err(|error| fault(&error))?;
        RgbImage::from_raw(width, height, rgb).ok_or_else(differs)
    }
}

fn options() -> DecoderOptions {
    DecoderOptions::default()
        .set_strict_mode(true)
        .set_max_width(usize::from(u16::MAX))
        .set_max_height(usize::from(u16::MAX))
        .jpeg_set_out_colorspace(ColorSpace::RGB)
}

/// Converts four bytes a pixel, as Adobe's programs store inks: 255 is no ink. Row by row in their own place.
fn inks_to_rgb(mut stored: Vec<u8>, width: usize, is_ycck: bool, inks: &Tables) -> Vec<u8> {
    let convert = |row: &mut [u8]| {
        for pixel in row.chunks_exact_mut(4) {
            if is_ycck {
                // The three inks as Y, Cb, Cr of the light that they leave.
                let light = rgb_of_ycc([pixel[0], pixel[1], pixel[2]]);
                pixel[..3].copy_from_slice(&light);
            } else {
                // What is left of light becomes what there is of ink.
                for ink in &mut pixel[..3] {
                    *ink = 255 - *ink;
                }
            }
            pixel[3] = 255 - pixel[3];
        }
        let mut rgb = vec![0; row.len() / 4 * 3];
        inks.convert(row, &mut rgb);
        row[..rgb.len()].copy_from_slice(&rgb);
    };
    // See `gather`: a thread of the pool must not wait for others here.
    if rayon::current_thread_index().is_some() {
        stored.chunks_exact_mut(width * 4).for_each(convert);
    } else {
        stored.par_chunks_exact_mut(width * 4).for_each(convert);
    }
    let rows = stored.len() / (width * 4);
    for row in 1..rows {
        let from = row * width * 4;
        stored.copy_within(from..from + width * 3, row * width * 3);
    }
    stored.truncate(rows * width * 3);
    stored
}

/// ITU-T T.871, 7, in 16 bits after the point.
fn rgb_of_ycc([y, cb, cr]: [u8; 3]) -> [u8; 3] {
    let (y, cb, cr) = (i32::from(y) << 16, i32::from(cb) - 128, i32::from(cr) - 128);
    let light = [
        y + 91_881 * cr,
        y - 22_554 * cb - 46_802 * cr,
        y + 116_130 * cb,
    ];
    light.map(|light| {
        let rounded = (light + (1 << 15)) >> 16;
        u8::try_from(rounded.clamp(0, 255)).unwrap_or(u8::MAX)
    })
}

fn unusual_coding() -> Fault {
    Fault::Unsupported("a JPEG with arithmetic or lossless coding".into())
}

fn fault(error: &DecodeErrors) -> Fault {
    match error {
        DecodeErrors::ExhaustedData | DecodeErrors::IoErrors(_) => Fault::CutShort,
        DecodeErrors::Unsupported(_) => unusual_coding(),
        other => Fault::Damaged(other.to_string()),
    }
}

/// The outline of a JPEG by its markers.
#[derive(Debug, Default)]
pub struct Outline {
    /// Whether the image's own end marker was reached.
    ended: bool,
    is_progressive: bool,
    /// The first frame.
    pub frame: Option<Frame>,
    /// Whether there is a frame of a kind that is not read.
    other_frame: bool,
    /// How many channels the first scan holds.
    in_first_scan: Option<u8>,
    /// What the marker of Adobe says of the colours.
    adobe_transform: Option<u8>,
    orientation: Option<Orientation>,
    profile: ProfileParts,
    /// Bytes of segments that are no part of the picture.
    metadata: u64,
}

/// A frame (B.2.2).
#[derive(Debug)]
pub struct Frame {
    /// Width and height in px.
    pub extent: Extent,
    /// How many samples of each channel are stored across and down, for the others of the frame.
    channels: Vec<(u8, u8)>,
}

impl Frame {
    fn read(content: &[u8]) -> Option<Frame> {
        let [_, h1, h2, w1, w2, _, each @ ..] = content else {
            return None;
        };
        let each = each.chunks_exact(3);
        Some(Frame {
            extent: Extent {
                width: u16::from_be_bytes([*w1, *w2]).into(),
                height: u16::from_be_bytes([*h1, *h2]).into(),
            },
            channels: each
                .map(|c| ((c[1] >> 4).max(1), (c[1] & 15).max(1)))
                .collect(),
        })
    }

    fn is_subsampled(&self) -> bool {
        self.channels
            .iter()
            .any(|c| Some(c) != self.channels.first())
    }

    /// The most samples across and down that a channel has in a unit.
    fn unit(&self) -> (u64, u64) {
        let across = self.channels.iter().map(|c| c.0).max().unwrap_or(1);
        let down = self.channels.iter().map(|c| c.1).max().unwrap_or(1);
        (across.into(), down.into())
    }

    /// How many units there are across and down.
    fn units(&self) -> (u64, u64) {
        let (across, down) = self.unit();
        (
            u64::from(self.extent.width).div_ceil(8 * across),
            u64::from(self.extent.height).div_ceil(8 * down),
        )
    }

    /// How many samples all channels have, filled up to whole units.
    fn samples(&self) -> u64 {
        let (across, down) = self.units();
        let unit = self
            .channels
            .iter()
            .map(|c| u64::from(c.0) * u64::from(c.1) * 64);
        across * down * unit.sum::<u64>()
    }

    /// Bytes that a row of units takes while it is unpacked: as 16 bits, and again at full resolution.
    fn row_of_blocks(&self) -> u64 {
        let (across, down) = self.unit();
        let row = self.units().0 * across * 8 * down * 8;
        row * self.channels.len() as u64 * 2 * 4
    }
}

/// The parts of a colour profile (ICC.1:2022, B.4), each with its number and how many there are.
#[derive(Debug, Default)]
struct ProfileParts(Vec<(u8, u8, Vec<u8>)>);

impl ProfileParts {
    fn note(&mut self, content: &[u8]) {
        if let Some([number, count, part @ ..]) = content.strip_prefix(b"ICC_PROFILE\0")
            // One more than there can be is enough to see that they are not sound.
            && self.0.len() < 256
        {
            self.0.push((*number, *count, part.to_vec()));
        }
    }

    fn joined(mut self) -> EmbeddedProfile {
        if self.0.is_empty() {
            return EmbeddedProfile::None;
        }
        self.0.sort_by_key(|(number, ..)| *number);
        let count = self.0.len();
        let numbered = self.0.iter().zip(1..);
        let is_sound = numbered.fold(true, |is_sound, ((number, of, _), place)| {
            is_sound && usize::from(*number) == place && usize::from(*of) == count
        });
        let profile: Vec<u8> = self.0.into_iter().flat_map(|(.., part)| part).collect();
        if is_sound && profile.len() as u64 <= PROFILE_LIMIT {
            EmbeddedProfile::Icc(profile)
        } else {
            EmbeddedProfile::Unusable
        }
    }
}

impl Outline {
    /// Whether the channels of a sequential picture follow one another instead of running together.
    fn is_split(&self) -> bool {
        let channels = self.frame.as_ref().map_or(0, |frame| frame.channels.len());
        !self.is_progressive
            && self
                .in_first_scan
                .is_some_and(|scan| usize::from(scan) < channels)
    }

    /// Adds what a segment states, given its content without the length.
    fn note(&mut self, marker: u8, content: &[u8]) {
        match marker {
            0xC0..=0xC2 => {
                self.is_progressive |= marker == 0xC2;
                if self.frame.is_none() {
                    self.frame = Frame::read(content);
                }
            }
            0xC3 | 0xC5..=0xC7 | 0xC9..=0xCB | 0xCD..=0xCF => self.other_frame = true,
            // Scans (B.2.3).
            0xDA => {
                if let Some(channels) = content.first() {
                    self.in_first_scan.get_or_insert(*channels);
                }
            }
            _ if self.in_first_scan.is_some() => {}
            0xE1 => {
                if let Some(exif) = content.strip_prefix(b"Exif\0\0") {
                    self.orientation = Some(embedded::orientation(exif));
                }
            }
            0xE2 => self.profile.note(content),
            0xEE => {
                if let [
                    b'A',
                    b'd',
                    b'o',
                    b'b',
                    b'e',
                    _,
                    _,
                    _,
                    _,
                    _,
                    _,
                    transform,
                    ..,
                ] = content
                {
                    self.adobe_transform = Some(*transform);
                }
            }
            _ => {}
        }
    }
}

/// Walks the markers from the start of the image to its end (B.1.1). Segments are skipped by their
/// length, so that the end marker of a thumbnail inside one is not taken for the picture's.
pub fn outline(reader: &mut (impl BufRead + Seek)) -> Outline {
    let mut outline = Outline::default();
    // A fault of the disk shows as a picture without an end, and again when it is unpacked.
    let _ = walk(reader, &mut outline);
    outline
}

fn walk(reader: &mut (impl BufRead + Seek), outline: &mut Outline) -> std::io::Result<()> {
    const END_OF_IMAGE: u8 = 0xD9;
    let mut byte = [0];
    let mut content = Vec::new();
    // Entropy-coded data run to the next 0xFF that is not stuffed with a zero.
    while reader.skip_until(0xFF)? > 0 {
        byte[0] = 0xFF;
        // Fill bytes may stand before any marker.
        while byte[0] == 0xFF {
            reader.read_exact(&mut byte)?;
        }
        match byte[0] {
            END_OF_IMAGE => {
                outline.ended = true;
                return Ok(());
            }
            // A stuffed zero, a marker for private use without length, a restart, the start.
            0x00 | 0x01 | 0xD0..=0xD8 => {}
            marker => {
                let mut length = [0; 2];
                reader.read_exact(&mut length)?;
                let length = u16::from_be_bytes(length).saturating_sub(2);
                if marker >= 0xE0 {
                    outline.metadata += u64::from(length);
                }
                // Frames, scans, and the segments that carry what is read.
                if matches!(marker, 0xC0..=0xCF | 0xDA | 0xE1 | 0xE2 | 0xEE) {
                    content.resize(length.into(), 0);
                    reader.read_exact(&mut content)?;
                    outline.note(marker, &content);
                } else {
                    reader.seek_relative(length.into())?;
                }
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use super::*;

    #[test]
    fn the_end_marker_inside_a_thumbnail_is_not_the_end() {
        let head = [0xFF, 0xD8, 0xFF, 0xE1, 0x00, 0x06, 0xFF, 0xD9, 0xFF, 0xD9];
        assert!(!outline(&mut Cursor::new(&head)).ended);
        let stuffed = [&head[..], &[0xFF, 0xC2, 0, 2, 7, 0xFF, 0x00, 0xFF, 0xD3, 9]].concat();
        assert!(!outline(&mut Cursor::new(&stuffed)).ended);
        let whole = [&stuffed[..], &[0xFF, 0xFF, 0xD9]].concat();
        assert!(outline(&mut Cursor::new(&whole)).ended);
    }

    #[test]
    fn walking_never_leaves_the_file() {
        for bytes in [
            &[][..],
            &[0xFF],
            &[0xFF, 0xE0],
            &[0xFF, 0xE0, 0xFF],
            &[0xFF, 0xE0, 0xFF, 0xFF],
        ] {
            assert!(!outline(&mut Cursor::new(bytes)).ended);
        }
    }
}
