//! TIFF and `BigTIFF` files (TIFF 6.0; its first picture alone).
//!
//! In: a file. Out: a [`Tiff`], whose rows are read in order. `stated` reads what the tags state, `blocks` unpacks the strips
//! or tiles.

mod blocks;
mod stated;

use image::metadata::Orientation;

use crate::embedded::EmbeddedProfile;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::gather::Rows;
use crate::ifd::{self, Tag};
use crate::samples::{Depth, Meaning, Samples};
use crate::source::PictureFile;
use crate::unpack::Compression;

use blocks::{Blocks, Reading};
use stated::{Tags, by_block_memory, colours, division, places, samples};

/// A TIFF whose header was accepted.
pub struct Tiff<'a> {
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

/// JPEG as the compression of strips or tiles (TIFF Technical Note 2).
const JPEG: u64 = 7;

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
    let tags = Tags::of(&directory, &mut reader)?;
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
        stored,
        profile,
        conversion,
        orientation,
        // The decompressors' windows come on top.
        memory: memory.saturating_add(1 << 20),
        samples,
        blocks: Blocks {
            file,
            stored,
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

impl Rows for Tiff<'_> {
    fn samples(&self) -> &Samples {
        &self.samples
    }

    fn next_row(&mut self, row: &mut [u8]) -> Result<(), Fault> {
        self.blocks.next_row(&self.samples, row)
    }
}
