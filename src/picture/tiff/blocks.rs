//! Strips and tiles, unpacked into rows.
//!
//! In: where they lie in the file, and how they are compressed. Out: the rows of the picture in order. Strips whose
//! compression is read here are unpacked row by row; tiles, and planes one after another, a row of tiles or strips at
//! once. JPEG and fax compression is left to the library.

use std::io::{Cursor, ErrorKind, Read};
use std::ops::Range;

use ::tiff::TiffError;
use ::tiff::decoder::{Decoder, Limits};

use crate::extent::Extent;
use crate::fault::Fault;
use crate::jpeg;
use crate::samples::Samples;
use crate::source::{FileReader, PictureFile};
use crate::unpack::{Compression, Unpacked, add_differences};

/// Strips or tiles, and which of their rows come next.
pub(super) struct Blocks<'a> {
    pub(super) file: &'a PictureFile,
    /// The size of the picture as stored.
    pub(super) stored: Extent,
    pub(super) reading: Reading<'a>,
    /// Width and height of one, the last and the rightmost not cut off.
    pub(super) block: Extent,
    /// Whether the rows of a row of blocks are unpacked together.
    pub(super) in_bands: bool,
    /// How many planes there are, one after another, and how many blocks each has.
    pub(super) planes: usize,
    pub(super) of_plane: usize,
    /// How many lie beside each other.
    pub(super) across: u32,
    /// The next row of the picture.
    pub(super) next: u32,
    /// The rows of the current row of blocks, where they are unpacked together.
    pub(super) band: Vec<u8>,
}

/// How blocks are unpacked.
pub(super) enum Reading<'a> {
    /// Row by row.
    ByRow {
        compression: Compression,
        has_differences: bool,
        /// Where each block lies, and how long it is.
        places: Vec<(u64, u64)>,
        /// The strip that is being unpacked.
        strip: Option<Unpacked<'a>>,
    },
    /// By the library, which opens the file when the first block is asked for.
    ByBlock {
        decoder: Option<Box<Decoder<FileReader<'a>>>>,
        /// Whether each pixel is one bit.
        is_bits: bool,
        /// Where each block lies, and how long it is, where it is a JPEG.
        jpegs: Vec<(u64, u64)>,
    },
}

impl Blocks<'_> {
    /// Reads the next row as it is stored.
    ///
    /// # Errors
    /// Cut short or damaged.
    pub(super) fn next_row(&mut self, samples: &Samples, row: &mut [u8]) -> Result<(), Fault> {
        let within = self.next % self.block.height;
        if let Reading::ByRow {
            compression,
            has_differences,
            places,
            strip,
        } = &mut self.reading
            && !self.in_bands
        {
            if within == 0 {
                let number = (self.next / self.block.height) as usize;
                // One reader of the file at a time.
                *strip = None;
                *strip = Some(unpacked(self.file, *compression, places, number)?);
            }
            let unpacked = strip.as_mut().ok_or(Fault::CutShort)?;
            unpacked.read_exact(row).map_err(|error| io_fault(&error))?;
            if *has_differences {
                add_differences(row, samples.depth, samples.count);
            }
            self.next += 1;
            return Ok(());
        }
        if within == 0 {
            self.read_band(samples)?;
        }
        let from = within as usize * row.len();
        row.copy_from_slice(&self.band[from..from + row.len()]);
        self.next += 1;
        Ok(())
    }

    /// Unpacks the blocks of one row of them into the band.
    fn read_band(&mut self, samples: &Samples) -> Result<(), Fault> {
        let Samples { depth, count, .. } = *samples;
        let pixel = samples.bytes();
        let row = self.stored.width as usize * pixel;
        let high = self.block.height.min(self.stored.height - self.next);
        self.band.resize(row * high as usize, 0);
        let first = (self.next / self.block.height * self.across) as usize;
        for column in 0..self.across {
            let left = column * self.block.width;
            let wide = self.block.width.min(self.stored.width - left) as usize;
            let left = left as usize * pixel;
            let number = first + column as usize;
            let within = left..left + wide * pixel;
            match &mut self.reading {
                Reading::ByRow {
                    compression,
                    has_differences,
                    places,
                    ..
                } => {
                    for plane in 0..self.planes {
                        let number = plane * self.of_plane + number;
                        let mut unpacked = unpacked(self.file, *compression, places, number)?;
                        let count = count / self.planes;
                        // Tiles at the right edge are stored in full width.
                        let width = self.block.width as usize;
                        let mut whole = vec![0; width * count * depth.bytes()];
                        for part in parts(&mut self.band, row, within.clone()) {
                            unpacked
                                .read_exact(&mut whole)
                                .map_err(|error| io_fault(&error))?;
                            if *has_differences {
                                add_differences(&mut whole, depth, count);
                            }
                            let size = count * depth.bytes();
                            let pixels = part.chunks_exact_mut(pixel);
                            for (to, from) in pixels.zip(whole.chunks_exact(size)) {
                                to[plane * size..(plane + 1) * size].copy_from_slice(from);
                            }
                        }
                    }
                }
                Reading::ByBlock {
                    decoder,
                    is_bits,
                    jpegs,
                } => {
                    if let Some(&(offset, length)) = jpegs.get(number) {
                        fits(self.file, offset, length, self.block)?;
                    }
                    let decoder = match decoder {
                        Some(decoder) => decoder,
                        None => decoder.insert(library(self.file)?),
                    };
                    let number = u32::try_from(number).unwrap_or(u32::MAX);
                    let layout = decoder
                        .image_chunk_buffer_layout(number)
                        .map_err(|error| fault(&error))?;
                    let mut block = vec![0; layout.complete_len.max(layout.len)];
                    decoder
                        .read_chunk_bytes(number, &mut block)
                        .map_err(|error| fault(&error))?;
                    let stride = layout.row_stride.map_or(0, std::num::NonZeroUsize::get);
                    for (y, part) in parts(&mut self.band, row, within.clone()).enumerate() {
                        let stored = block.get(y * stride..).unwrap_or_default();
                        copy_row(stored, part, *is_bits)?;
                    }
                }
            }
        }
        Ok(())
    }
}

/// The parts of a band's rows that a block fills.
fn parts(band: &mut [u8], row: usize, part: Range<usize>) -> impl Iterator<Item = &mut [u8]> {
    let rows = band.chunks_exact_mut(row);
    rows.filter_map(move |row| row.get_mut(part.clone()))
}

/// Copies a row that the library unpacked; of bits, each becomes a byte.
fn copy_row(stored: &[u8], row: &mut [u8], is_bits: bool) -> Result<(), Fault> {
    let damaged = || Fault::Damaged("its strips or tiles are smaller than it states".into());
    if is_bits {
        for (x, out) in row.iter_mut().enumerate() {
            let byte = stored.get(x / 8).ok_or_else(damaged)?;
            *out = if byte >> (7 - x % 8) & 1 == 1 { 255 } else { 0 };
        }
        return Ok(());
    }
    row.copy_from_slice(stored.get(..row.len()).ok_or_else(damaged)?);
    Ok(())
}

/// Checks that the JPEG of a block is no larger than the block: the library unpacks what the JPEG states.
fn fits(file: &PictureFile, offset: u64, length: u64, block: Extent) -> Result<(), Fault> {
    let mut jpeg = Vec::new();
    // Frames come before the data; what is cut off by damage is found when it is unpacked.
    file.part(offset, length)?
        .read_to_end(&mut jpeg)
        .map_err(|error| io_fault(&error))?;
    let outline = jpeg::outline(&mut Cursor::new(jpeg));
    match outline.frame {
        Some(frame) if frame.extent.width <= block.width && frame.extent.height <= block.height => {
            Ok(())
        }
        _ => Err(Fault::Damaged(
            "its strips or tiles are not as large as it states".into(),
        )),
    }
}

/// The library at the first picture of a file. What it takes is reckoned in `stated::by_block_memory`.
fn library(file: &PictureFile) -> Result<Box<Decoder<FileReader<'_>>>, Fault> {
    let decoder = Decoder::new(file.reader()?).map_err(|error| fault(&error))?;
    Ok(Box::new(decoder.with_limits(Limits::unlimited())))
}

/// A strip or tile, to be unpacked row by row.
fn unpacked<'a>(
    file: &'a PictureFile,
    compression: Compression,
    places: &[(u64, u64)],
    number: usize,
) -> Result<Unpacked<'a>, Fault> {
    let &(offset, length) = places
        .get(number)
        .ok_or_else(|| Fault::Damaged("it lacks strips or tiles".into()))?;
    Ok(compression.reader(file.part(offset, length)?))
}

fn io_fault(error: &std::io::Error) -> Fault {
    match error.kind() {
        ErrorKind::UnexpectedEof => Fault::CutShort,
        _ => Fault::Damaged(error.to_string()),
    }
}

fn fault(error: &TiffError) -> Fault {
    match error {
        TiffError::IoError(error) => io_fault(error),
        TiffError::UnsupportedError(what) => Fault::Unsupported(what.to_string()),
        TiffError::LimitsExceeded => {
            Fault::Damaged("it would unpack to more than its size allows".into())
        }
        other => Fault::Damaged(other.to_string()),
    }
}
