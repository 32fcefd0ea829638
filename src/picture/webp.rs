//! WebP files (RFC 9649). The library unpacks them whole.

use std::io::{BufRead, ErrorKind, Read, Seek};

use image::codecs::webp::WebPDecoder;
use image::error::ImageError;
use image::metadata::Orientation;
use image::{ImageDecoder, RgbImage};

use crate::embedded::{self, EXIF_LIMIT, EmbeddedProfile};
use crate::extent::Extent;
use crate::fault::Fault;
use crate::samples::{Depth, Meaning, Samples};
use crate::source::{FileReader, PictureFile};

/// A WebP whose header was accepted.
pub struct WebP<'a> {
    decoder: WebPDecoder<FileReader<'a>>,
    file_bytes: u64,
    /// Bytes of the chunks that are packed without loss, and of frames, which may hold such chunks.
    lossless_bytes: u64,
    /// Its size as stored.
    pub stored: Extent,
    /// Its colour profile.
    pub profile: EmbeddedProfile,
    /// How to turn it upright.
    pub orientation: Orientation,
}

/// Opens a WebP.
///
/// # Errors
/// A header that is cut short, damaged, or contradicts itself.
pub fn open(file: &PictureFile) -> Result<WebP<'_>, Fault> {
    let chunks = Chunks::read(&mut file.reader()?, file.bytes())?;
    let decoder = WebPDecoder::new(file.reader()?).map_err(|error| fault(&error))?;
    let (width, height) = decoder.dimensions();
    Ok(WebP {
        decoder,
        file_bytes: file.bytes(),
        lossless_bytes: chunks.lossless_bytes,
        stored: Extent { width, height },
        profile: chunks.profile,
        orientation: chunks.orientation,
    })
}

/// Bytes of memory that the library's tables of codes take at most for each byte of a lossless chunk.
///
/// A chunk may hold 65,536 groups of five prefix codes (RFC 9649, section 6.2), and the library has all in memory at
/// once, whatever the size of the picture. A code whose longest word has 10 bits takes a table of 4 KiB, and no fewer
/// than 82 bits of the file. A symbol with a longer word takes 32 bytes more, and half a bit of the file.
const TABLES_PER_BYTE: u64 = 512;

impl WebP<'_> {
    /// Whether the tables of codes may take more than the pixels.
    pub fn is_lossless(&self) -> bool {
        self.lossless_bytes * TABLES_PER_BYTE > 12 * self.stored.pixels() as u64
    }

    /// Bytes that unpacking takes at most.
    pub fn memory(&self) -> u64 {
        let pixels = self.stored.pixels() as u64;
        // Four bytes a pixel for what is handed out, the picture as the library holds it, and its opacity, which
        // is a picture of its own; one frame more where it moves.
        let frames = if self.decoder.has_animation() { 20 } else { 12 };
        frames * pixels + 2 * self.file_bytes + TABLES_PER_BYTE * self.lossless_bytes + (8 << 20)
    }

    /// Unpacks the pixels; the first frame of a picture that moves.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub fn decode(self) -> Result<RgbImage, Fault> {
        let Extent { width, height } = self.stored;
        let has_alpha = self.decoder.color_type().has_alpha();
        let samples = Samples {
            meaning: if has_alpha {
                Meaning::RgbAlpha
            } else {
                Meaning::Rgb
            },
            depth: Depth::Eight,
            count: if has_alpha { 4 } else { 3 },
            inverted: false,
        };
        let mut pixels = vec![0; self.stored.pixels() * samples.count];
        self.decoder
            .read_image(&mut pixels)
            .map_err(|error| fault(&error))?;
        if has_alpha {
            let mut rgb = vec![0; self.stored.pixels() * 3];
            samples.to_rgb(&pixels, &mut rgb);
            pixels = rgb;
        }
        RgbImage::from_raw(width, height, pixels)
            .ok_or_else(|| Fault::Damaged("its size is not the one it states".into()))
    }
}

/// What the chunks of a file say beside the pixels.
struct Chunks {
    /// From the chunk `ICCP`.
    profile: EmbeddedProfile,
    /// From the chunk `EXIF`.
    orientation: Orientation,
    /// Bytes of `VP8L`, `ALPH` and the first `ANMF`, the only one that is unpacked.
    lossless_bytes: u64,
}

impl Chunks {
    /// Reads the chunks.
    ///
    /// # Errors
    /// Cut short where a chunk does not lie inside the file (RFC 9649, section 2.3): the library reserves room for a
    /// chunk before it looks whether it is there.
    fn read(reader: &mut (impl BufRead + Seek), file_bytes: u64) -> Result<Chunks, Fault> {
        let mut chunks = Chunks {
            profile: EmbeddedProfile::None,
            orientation: Orientation::NoTransforms,
            lossless_bytes: 0,
        };
        let mut has_frame = false;
        let cut_short = |_| Fault::CutShort;
        let mut head = [0; 12];
        reader.read_exact(&mut head).map_err(cut_short)?;
        let announced = length_in(&head) + 8;
        if announced > file_bytes {
            return Err(Fault::CutShort);
        }
        let mut at: u64 = 12;
        let mut head = [0; 8];
        while at + 8 <= announced {
            reader.read_exact(&mut head).map_err(cut_short)?;
            let length = length_in(&head);
            // Chunks are padded to an even length; the padding of the last may be missing.
            if at + 8 + length > announced {
                return Err(Fault::CutShort);
            }
            let mut content = (&mut *reader).take(length);
            match &head[..4] {
                b"ICCP" if chunks.profile == EmbeddedProfile::None => {
                    chunks.profile = EmbeddedProfile::read(&mut content, length);
                }
                b"EXIF" => {
                    let mut exif = Vec::new();
                    let read = content.by_ref().take(EXIF_LIMIT).read_to_end(&mut exif);
                    if read.is_ok() {
                        chunks.orientation = embedded::orientation(&exif);
                    }
                }
                b"VP8L" | b"ALPH" => chunks.lossless_bytes += length,
                b"ANMF" if !has_frame => {
                    has_frame = true;
                    chunks.lossless_bytes += length;
                }
                _ => {}
            }
            let left = content.limit() + length % 2;
            reader
                .seek_relative(left.cast_signed())
                .map_err(cut_short)?;
            at += 8 + length + length % 2;
        }
        Ok(chunks)
    }
}

/// The length that the head of a chunk states.
fn length_in(head: &[u8]) -> u64 {
    match head {
        [_, _, _, _, a, b, c, d, ..] => u64::from(u32::from_le_bytes([*a, *b, *c, *d])),
        _ => 0,
    }
}

fn fault(error: &ImageError) -> Fault {
    match error {
        ImageError::IoError(io) if io.kind() == ErrorKind::UnexpectedEof => Fault::CutShort,
        ImageError::Unsupported(unsupported) => Fault::Unsupported(unsupported.to_string()),
        ImageError::Limits(_) => {
            Fault::Damaged("it would unpack to more than its size allows".into())
        }
        ImageError::Decoding(decoding) => {
            let reason = std::error::Error::source(decoding).map(ToString::to_string);
            Fault::Damaged(reason.unwrap_or_else(|| decoding.to_string()))
        }
        other => Fault::Damaged(other.to_string()),
    }
}
