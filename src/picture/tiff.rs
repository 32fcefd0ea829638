//! TIFF and `BigTIFF` files (TIFF 6.0; its first picture alone).
//!
//! Strips that are not compressed, or with LZW, Deflate or `PackBits`, are unpacked row by row; tiles, and planes
//! one after another, a row of tiles or strips at once. JPEG and fax compression is left to the library.

use std::io::{Cursor, ErrorKind, Read};
use std::ops::Range;
use std::sync::Arc;

use ::tiff::TiffError;
use ::tiff::decoder::{Decoder, Limits};
use image::metadata::Orientation;

use crate::embedded::EmbeddedProfile;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::gather::Rows;
use crate::ifd::{self, Directory, Order, Tag};
use crate::jpeg;
use crate::samples::{Depth, LabEncoding, Meaning, Samples};
use crate::source::{FileReader, PictureFile};
use crate::srgb::Encoder;
use crate::tables::Tables;
use crate::unpack::{Compression, Unpacked, add_differences};

/// A TIFF whose header was accepted.
pub struct Tiff<'a> {
    file: &'a PictureFile,
    samples: Samples,
    blocks: Blocks<'a>,
    /// Its size as stored.
    pub stored: Extent,
    /// Its colour profile.
    pub profile: EmbeddedProfile,
    /// Bytes that the conversion of colours takes.
    pub conversion: u64,
    /// How to turn it upright.
    pub orientation: Orientation,
    memory: u64,
}

/// Strips or tiles, and which of their rows come next.
struct Blocks<'a> {
    reading: Reading<'a>,
    /// Width and height of one, the last and the rightmost not cut off.
    block: Extent,
    /// Whether the rows of a row of blocks are unpacked together.
    in_bands: bool,
    /// How many planes there are, one after another, and how many blocks each has.
    planes: usize,
    of_plane: usize,
    /// How many lie beside each other.
    across: u32,
    /// The next row of the picture.
    next: u32,
    /// The rows of the current row of blocks, where they are unpacked together.
    band: Vec<u8>,
}

/// How blocks are unpacked.
enum Reading<'a> {
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

/// What the tags of a TIFF say of its samples.
struct Tags {
    compression: u64,
    photometric: u64,
    bits: u64,
    /// Samples of a pixel.
    count: u64,
    /// The first of the samples beyond those of the colour.
    extra: Option<u64>,
    is_planar: bool,
    predictor: u64,
    is_unsigned: bool,
}

/// How the picture is divided.
struct Division {
    is_tiled: bool,
    /// Width and height of a strip or tile.
    block: Extent,
    /// How many lie beside each other.
    across: u32,
    /// How many there are of each plane.
    count: usize,
}

/// JPEG as the compression of strips or tiles (TIFF Technical Note 2).
const JPEG: u64 = 7;

/// The most strips or tiles that are read: those of 200 million pixels in tiles of 16 × 16.
const MOST_BLOCKS: u64 = 1 << 20;

/// Opens a TIFF.
///
/// # Errors
/// A header that is cut short, damaged, or contradicts itself; colours that are not read.
pub fn open(file: &PictureFile) -> Result<Tiff<'_>, Fault> {
    let mut reader = file.reader()?;
    let directory = ifd::first(&mut reader)?;
    let mut number = |tag, otherwise| -> Result<u64, Fault> {
        let found = directory.number(&mut reader, tag)?;
        Ok(found.unwrap_or(otherwise))
    };
    let side = |side: u64| {
        u32::try_from(side).map_err(|_| Fault::Damaged("its sides are too long".into()))
    };
    let stored = Extent {
        width: side(number(Tag::Width, 0)?)?,
        height: side(number(Tag::Height, 0)?)?,
    };
    let tags = Tags {
        compression: number(Tag::Compression, 1)?,
        photometric: number(Tag::Photometric, u64::MAX)?,
        bits: number(Tag::BitsPerSample, 1)?,
        count: number(Tag::SamplesPerPixel, 1)?,
        is_planar: number(Tag::PlanarConfiguration, 1)? == 2,
        predictor: number(Tag::Predictor, 1)?,
        is_unsigned: number(Tag::SampleFormat, 1)? == 1,
        extra: directory.number(&mut reader, Tag::ExtraSamples)?,
    };
    if stored.width == 0 || stored.height == 0 {
        return Err(Fault::Damaged(
            "it states a width or height of nothing".into(),
        ));
    }
    let orientation = directory.number(&mut reader, Tag::Orientation).ok();
    let orientation = orientation
        .flatten()
        .and_then(|code| Orientation::from_exif(u8::try_from(code).ok()?))
        .unwrap_or(Orientation::NoTransforms);
    let profile = directory.profile(&mut reader);
    let conversion = profile.memory();
    let (mut samples, profile) = samples(&tags, profile, directory.order)?;
    let division = division(&directory, &mut reader, stored)?;
    let row = u64::from(stored.width) * samples.bytes() as u64;
    let band = row.saturating_mul(u64::from(division.block.height.min(stored.height)));
    let planes = if tags.is_planar { samples.count } else { 1 };
    // Where blocks lie and how long they are.
    let mut memory = (division.count * planes) as u64 * 16;
    let compression = Compression::of(tags.compression);
    let reading = if let Some(compression) = compression
        && tags.bits >= 8
        && tags.predictor <= 2
    {
        if division.is_tiled || tags.is_planar {
            memory = memory
                .saturating_add(band)
                .saturating_add(u64::from(division.block.width) * samples.bytes() as u64);
        }
        Reading::ByRow {
            compression,
            has_differences: tags.predictor == 2,
            places: places(&directory, &mut reader, &division, planes)?,
            strip: None,
        }
    } else {
        if tags.is_planar || matches!(samples.meaning, Meaning::Lab(..)) {
            return Err(Fault::Unsupported(
                "a TIFF whose planes or CIELAB are compressed as JPEG".into(),
            ));
        }
        // The library gives samples in the order of the machine, turns brightness over itself, and leaves out
        // what is beyond the colour.
        if samples.depth != Depth::Eight {
            samples.depth = Depth::sixteen_native();
        }
        samples.inverted = false;
        samples.count = colours(&samples.meaning);
        let places = places(&directory, &mut reader, &division, 1)?;
        let longest = places.iter().map(|(_, length)| *length).max().unwrap_or(0);
        let block = by_block_memory(&tags, &division);
        memory = memory
            .saturating_add(band)
            .saturating_add(block)
            .saturating_add(longest.min(file.bytes()).saturating_mul(3));
        Reading::ByBlock {
            decoder: None,
            is_bits: tags.bits == 1,
            jpegs: if tags.compression == JPEG {
                places
            } else {
                Vec::new()
            },
        }
    };
    Ok(Tiff {
        file,
        stored,
        profile,
        conversion,
        orientation,
        // The decompressors' windows come on top.
        memory: memory.saturating_add(1 << 20),
        samples,
        blocks: Blocks {
            reading,
            in_bands: division.is_tiled || tags.is_planar,
            planes,
            of_plane: division.count,
            block: division.block,
            across: division.across,
            next: 0,
            band: Vec::new(),
        },
    })
}

impl Tiff<'_> {
    /// Whether strips or tiles have to be unpacked whole.
    pub fn holds_blocks(&self) -> bool {
        self.blocks.in_bands || matches!(self.blocks.reading, Reading::ByBlock { .. })
    }

    /// Bytes that are held while rows are read.
    pub fn memory(&self) -> u64 {
        self.memory
    }
}

/// How samples are to be understood, and the profile that is left to apply.
fn samples(
    tags: &Tags,
    profile: EmbeddedProfile,
    order: Order,
) -> Result<(Samples, EmbeddedProfile), Fault> {
    let unusual = || Fault::Unsupported("an unusual way of storing colours".into());
    if !tags.is_unsigned && tags.photometric != 8 {
        return Err(Fault::Unsupported(
            "floating-point or negative numbers for colours".into(),
        ));
    }
    let depth = match (tags.bits, order) {
        (8, _) => Depth::Eight,
        (16, Order::Big) => Depth::SixteenBig,
        (16, Order::Little) => Depth::SixteenLittle,
        // Bits are made bytes as they are unpacked.
        (1, _) if tags.photometric <= 1 && tags.count == 1 => Depth::Eight,
        _ => return Err(unusual()),
    };
    // ExtraSamples (TIFF 6.0, section 18): 1 and 2 are opacity.
    let has_alpha = matches!(tags.extra, Some(1 | 2));
    let mut profile = profile;
    let meaning = match (tags.photometric, tags.count) {
        (0 | 1, 1) => Meaning::Grey,
        (2, 4..) if has_alpha || tags.extra.is_none() => Meaning::RgbAlpha,
        (2, 3..) => Meaning::Rgb,
        (5, 4..) => {
            let tables = Tables::of_inks(&profile)?;
            profile = EmbeddedProfile::Applied;
            Meaning::Inks(Arc::new(tables))
        }
        (8 | 9, 3..) => {
            profile = EmbeddedProfile::Applied;
            let encoding = if tags.photometric == 8 {
                LabEncoding::Signed
            } else {
                LabEncoding::FromMinus128
            };
            Meaning::Lab(encoding, Arc::new(Encoder::new()))
        }
        _ => return Err(unusual()),
    };
    let samples = Samples {
        meaning,
        depth,
        count: usize::try_from(tags.count)
            .ok()
            .filter(|count| *count <= 64)
            .ok_or_else(unusual)?,
        inverted: tags.photometric == 0,
    };
    Ok((samples, profile))
}

/// How many samples the colour of a pixel has.
fn colours(meaning: &Meaning) -> usize {
    match meaning {
        Meaning::Grey => 1,
        Meaning::GreyAlpha => 2,
        Meaning::Rgb | Meaning::Lab(..) => 3,
        Meaning::RgbAlpha | Meaning::Inks(_) => 4,
    }
}

/// How the picture is divided into strips or tiles.
fn division(
    directory: &Directory,
    reader: &mut FileReader<'_>,
    stored: Extent,
) -> Result<Division, Fault> {
    let damaged = || Fault::Damaged("its strips or tiles make no sense".into());
    let mut number = |tag, otherwise| -> Result<u32, Fault> {
        let found = directory.number(reader, tag)?;
        found.map_or(Ok(otherwise), |number| {
            // Some programs write the largest number where they mean the whole height.
            Ok(u32::try_from(number).unwrap_or(u32::MAX))
        })
    };
    let is_tiled = directory.has(Tag::TileOffsets);
    let block = if is_tiled {
        Extent {
            width: number(Tag::TileWidth, 0)?,
            height: number(Tag::TileHeight, 0)?,
        }
    } else {
        Extent {
            width: stored.width,
            height: number(Tag::RowsPerStrip, u32::MAX)?.min(stored.height),
        }
    };
    if block.width == 0 || block.height == 0 {
        return Err(damaged());
    }
    let across = stored.width.div_ceil(block.width);
    let count = u64::from(across) * u64::from(stored.height.div_ceil(block.height));
    if count > MOST_BLOCKS {
        return Err(Fault::Unsupported(format!(
            "a TIFF in {count} strips or tiles"
        )));
    }
    Ok(Division {
        is_tiled,
        block,
        across,
        count: usize::try_from(count).map_err(|_| damaged())?,
    })
}

/// Where strips or tiles lie in the file, and how long each is, plane after plane.
fn places(
    directory: &Directory,
    reader: &mut FileReader<'_>,
    division: &Division,
    planes: usize,
) -> Result<Vec<(u64, u64)>, Fault> {
    let (offsets, lengths) = if division.is_tiled {
        (Tag::TileOffsets, Tag::TileByteCounts)
    } else {
        (Tag::StripOffsets, Tag::StripByteCounts)
    };
    let count = division.count * planes;
    let offsets = directory.numbers(reader, offsets, count)?;
    let lengths = directory.numbers(reader, lengths, count)?;
    Ok(offsets.into_iter().zip(lengths).collect())
}

/// Bytes that the library takes where it unpacks a block at once.
fn by_block_memory(tags: &Tags, division: &Division) -> u64 {
    let Extent { width, height } = division.block;
    let unpacked = u64::from(width)
        .saturating_mul(u64::from(height))
        .saturating_mul(tags.count)
        .saturating_mul(tags.bits.div_ceil(8));
    // As unpacked by JPEG, as handed out, and up to twice as much for coefficients; what is packed is smaller
    // than that and held twice. Then 100 bytes of lists for each block.
    let blocks = division.count as u64 * tags.count * 100;
    unpacked.saturating_mul(6).saturating_add(blocks)
}

impl Rows for Tiff<'_> {
    fn samples(&self) -> &Samples {
        &self.samples
    }

    fn next_row(&mut self, row: &mut [u8]) -> Result<(), Fault> {
        let blocks = &mut self.blocks;
        let within = blocks.next % blocks.block.height;
        if let Reading::ByRow {
            compression,
            has_differences,
            places,
            strip,
        } = &mut blocks.reading
            && !blocks.in_bands
        {
            if within == 0 {
                let number = (blocks.next / blocks.block.height) as usize;
                // One reader of the file at a time.
                *strip = None;
                *strip = Some(unpacked(self.file, *compression, places, number)?);
            }
            let unpacked = strip.as_mut().ok_or(Fault::CutShort)?;
            unpacked.read_exact(row).map_err(|error| io_fault(&error))?;
            if *has_differences {
                add_differences(row, self.samples.depth, self.samples.count);
            }
            blocks.next += 1;
            return Ok(());
        }
        if within == 0 {
            self.read_band()?;
        }
        let blocks = &mut self.blocks;
        let from = within as usize * row.len();
        row.copy_from_slice(&blocks.band[from..from + row.len()]);
        blocks.next += 1;
        Ok(())
    }
}

impl Tiff<'_> {
    /// Unpacks the blocks of one row of them into the band.
    fn read_band(&mut self) -> Result<(), Fault> {
        let Samples { depth, count, .. } = self.samples;
        let pixel = self.samples.bytes();
        let row = self.stored.width as usize * pixel;
        let blocks = &mut self.blocks;
        let high = blocks.block.height.min(self.stored.height - blocks.next);
        blocks.band.resize(row * high as usize, 0);
        let first = (blocks.next / blocks.block.height * blocks.across) as usize;
        for column in 0..blocks.across {
            let left = column * blocks.block.width;
            let wide = blocks.block.width.min(self.stored.width - left) as usize;
            let left = left as usize * pixel;
            let number = first + column as usize;
            let within = left..left + wide * pixel;
            match &mut blocks.reading {
                Reading::ByRow {
                    compression,
                    has_differences,
                    places,
                    ..
                } => {
                    for plane in 0..blocks.planes {
                        let number = plane * blocks.of_plane + number;
                        let mut unpacked = unpacked(self.file, *compression, places, number)?;
                        let count = count / blocks.planes;
                        // Tiles at the right edge are stored in full width.
                        let width = blocks.block.width as usize;
                        let mut whole = vec![0; width * count * depth.bytes()];
                        for part in parts(&mut blocks.band, row, within.clone()) {
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
                        fits(self.file, offset, length, blocks.block)?;
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
                    for (y, part) in parts(&mut blocks.band, row, within.clone()).enumerate() {
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

/// The library at the first picture of a file. What it takes is reckoned in [`by_block_memory`].
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
