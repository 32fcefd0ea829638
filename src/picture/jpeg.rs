//! JPEG files: read with the strict decoder, and only if they are whole.
//!
//! Decoders forgive a JPEG that ends too early and paint the rest grey. A catalogue must not: the
//! grey part would pass for the sheet. So the markers of ISO/IEC 10918-1 (Annex B) are walked first.

use image::RgbImage;
use image::metadata::Orientation;
use zune_jpeg::JpegDecoder;
use zune_jpeg::errors::DecodeErrors;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use crate::fault::Fault;
use crate::master::Master;

/// A JPEG whose header has been read and whose end has been seen; no pixel is unpacked yet.
pub struct Jpeg<'a> {
    decoder: JpegDecoder<ZCursor<&'a [u8]>>,
    /// Width in px, as stored.
    pub width: u32,
    /// Height in px, as stored.
    pub height: u32,
    /// Bytes that unpacking takes for each pixel: a progressive file keeps its coefficients, 2 bytes
    /// for each of up to 3 channels, beside the 3 bytes of the pixel.
    pub bytes_per_pixel: u64,
}

/// Reads the header.
///
/// # Errors
/// Cut short, CMYK, or a header that contradicts itself.
pub fn open(bytes: &[u8]) -> Result<Jpeg<'_>, Fault> {
    let options = DecoderOptions::default()
        .set_strict_mode(true)
        .set_max_width(usize::from(u16::MAX))
        .set_max_height(usize::from(u16::MAX))
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    let header = decoder.decode_headers();
    let outline = outline(bytes);
    if !outline.ended {
        return Err(Fault::CutShort);
    }
    header.map_err(|error| fault(&error))?;
    let (Some(info), Some(colours)) = (decoder.info(), decoder.input_colorspace()) else {
        return Err(Fault::Damaged("it has no header".into()));
    };
    if info.components == 4 || matches!(colours, ColorSpace::CMYK | ColorSpace::YCCK) {
        return Err(Fault::Cmyk);
    }
    if outline.split() && outline.subsampled {
        // Valid, but the decoder (zune-jpeg 0.5.15) combines the wrong colours and reports no error.
        return Err(Fault::Unsupported(
            "a JPEG that stores one colour after another".into(),
        ));
    }
    Ok(Jpeg {
        decoder,
        width: u32::from(info.width),
        height: u32::from(info.height),
        bytes_per_pixel: if outline.progressive { 9 } else { 3 },
    })
}

impl Jpeg<'_> {
    /// Unpacks the pixels.
    ///
    /// # Errors
    /// Data that contradict the header.
    pub fn decode(mut self) -> Result<Master, Fault> {
        let rgb = self.decoder.decode().map_err(|error| fault(&error))?;
        let pixels = RgbImage::from_raw(self.width, self.height, rgb)
            .ok_or_else(|| Fault::Damaged("its size is not the one it states".into()))?;
        let orientation = self
            .decoder
            .exif()
            .and_then(|exif| Orientation::from_exif_chunk(exif));
        Ok(Master {
            pixels,
            orientation: orientation.unwrap_or(Orientation::NoTransforms),
            profile: self.decoder.icc_profile(),
        })
    }
}

fn fault(error: &DecodeErrors) -> Fault {
    match error {
        DecodeErrors::ExhaustedData | DecodeErrors::IoErrors(_) => Fault::CutShort,
        DecodeErrors::Unsupported(_) => {
            Fault::Unsupported("a JPEG with arithmetic or lossless coding".into())
        }
        other => Fault::Damaged(other.to_string()),
    }
}

/// The outline of a JPEG by its markers.
#[derive(Debug, Default, PartialEq, Eq)]
struct Outline {
    /// Whether the image's own end marker was reached.
    ended: bool,
    progressive: bool,
    /// Whether some channel is stored at a lower resolution than another.
    subsampled: bool,
    /// How many channels the frame has.
    channels: u8,
    /// How many of them the first scan holds.
    in_first_scan: Option<u8>,
}

impl Outline {
    /// Whether the channels of a sequential picture follow one another instead of running together.
    fn split(&self) -> bool {
        !self.progressive
            && self
                .in_first_scan
                .is_some_and(|channels| channels < self.channels)
    }

    /// Adds what a segment states, given its content without the length.
    fn note(&mut self, marker: u8, content: &[u8]) {
        match (marker, content) {
            // Frames (B.2.2): precision, height, width, then three bytes a channel, the second of
            // which holds its sampling factors.
            (0xC0..=0xC2, [_, _, _, _, _, channels, each @ ..]) => {
                self.progressive = marker == 0xC2;
                self.channels = *channels;
                self.subsampled = each.chunks_exact(3).any(|channel| channel[1] != each[1]);
            }
            // Scans (B.2.3).
            (0xDA, [channels, ..]) => {
                self.in_first_scan.get_or_insert(*channels);
            }
            _ => {}
        }
    }
}

/// Walks the markers from the start of the image to its end (B.1.1). Segments are skipped by their
/// length, so that the end marker of a thumbnail inside one is not taken for the picture's.
fn outline(bytes: &[u8]) -> Outline {
    const END_OF_IMAGE: u8 = 0xD9;
    let mut outline = Outline::default();
    let mut at = 0;
    // Entropy-coded data run to the next 0xFF that is not stuffed with a zero.
    while let Some(found) = bytes
        .get(at..)
        .and_then(|rest| rest.iter().position(|&b| b == 0xFF))
    {
        at += found + 1;
        match bytes.get(at).copied() {
            None => break,
            Some(END_OF_IMAGE) => {
                outline.ended = true;
                break;
            }
            // A fill byte, which may stand before any marker: the next round looks at it again.
            Some(0xFF) => {}
            // A stuffed zero, a marker for private use without length, a restart, the start.
            Some(0x00 | 0x01 | 0xD0..=0xD8) => at += 1,
            Some(marker) => {
                let Some(&[high, low]) = bytes.get(at + 1..at + 3) else {
                    break;
                };
                let end = at + 1 + usize::from(u16::from_be_bytes([high, low])).max(2);
                outline.note(marker, bytes.get(at + 3..end).unwrap_or_default());
                at = end;
            }
        }
    }
    outline
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_end_marker_inside_a_thumbnail_is_not_the_end() {
        let head = [0xFF, 0xD8, 0xFF, 0xE1, 0x00, 0x06, 0xFF, 0xD9, 0xFF, 0xD9];
        assert!(!outline(&head).ended);
        let stuffed = [&head[..], &[0xFF, 0xC2, 0, 2, 7, 0xFF, 0x00, 0xFF, 0xD3, 9]].concat();
        assert!(!outline(&stuffed).ended);
        let whole = [&stuffed[..], &[0xFF, 0xFF, 0xD9]].concat();
        assert!(outline(&whole).ended);
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
            assert!(!outline(bytes).ended);
        }
    }
}
