//! What the tags of a TIFF state: how its samples are to be understood, and how it is divided.
//!
//! In: the directory of its first picture. Out: [`Tags`], [`Samples`] and a [`Division`], each checked; and where the strips or
//! tiles lie.

use std::sync::Arc;

use crate::embedded::EmbeddedProfile;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::ifd::{Directory, Order, Tag};
use crate::samples::{Depth, LabEncoding, Meaning, Samples};
use crate::source::FileReader;
use crate::srgb::Encoder;
use crate::tables::Tables;

/// The most strips or tiles that are read: those of 200 million pixels in tiles of 16 × 16.
const MOST_BLOCKS: u64 = 1 << 20;

/// What the tags of a TIFF say of its samples.
pub(super) struct Tags {
    pub(super) compression: u64,
    pub(super) photometric: u64,
    pub(super) bits: u64,
    /// Samples of a pixel.
    pub(super) count: u64,
    /// The first of the samples beyond those of the colour.
    pub(super) extra: Option<u64>,
    pub(super) is_planar: bool,
    pub(super) predictor: u64,
    pub(super) is_unsigned: bool,
}

impl Tags {
    pub(super) fn of(directory: &Directory, reader: &mut FileReader<'_>) -> Result<Tags, Fault> {
        let mut number = |tag, otherwise| -> Result<u64, Fault> {
            let found = directory.number(reader, tag)?;
            Ok(found.unwrap_or(otherwise))
        };
        Ok(Tags {
            compression: number(Tag::Compression, 1)?,
            photometric: number(Tag::Photometric, u64::MAX)?,
            bits: number(Tag::BitsPerSample, 1)?,
            count: number(Tag::SamplesPerPixel, 1)?,
            is_planar: number(Tag::PlanarConfiguration, 1)? == 2,
            predictor: number(Tag::Predictor, 1)?,
            is_unsigned: number(Tag::SampleFormat, 1)? == 1,
            extra: directory.number(reader, Tag::ExtraSamples)?,
        })
    }
}

/// How the picture is divided.
pub(super) struct Division {
    pub(super) is_tiled: bool,
    /// Width and height of a strip or tile.
    pub(super) block: Extent,
    /// How many lie beside each other.
    pub(super) across: u32,
    /// How many there are of each plane.
    pub(super) count: usize,
}

/// How samples are to be understood, and the profile that is left to apply.
pub(super) fn samples(
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
pub(super) fn colours(meaning: &Meaning) -> usize {
    match meaning {
        Meaning::Grey => 1,
        Meaning::GreyAlpha => 2,
        Meaning::Rgb | Meaning::Lab(..) => 3,
        Meaning::RgbAlpha | Meaning::Inks(_) => 4,
    }
}

/// How the picture is divided into strips or tiles.
pub(super) fn division(
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
pub(super) fn places(
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
pub(super) fn by_block_memory(tags: &Tags, division: &Division) -> u64 {
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
