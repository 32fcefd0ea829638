//! The first directory of a TIFF or `BigTIFF` (TIFF 6.0, section 2; the `BigTIFF` specification of Aware Systems).
//!
//! Read here and not by the library, which holds 32 bytes for each number of a list, up to 256 MB of them, before
//! anyone can say how much it may take.

use std::io::{BufRead, Seek, SeekFrom};

use crate::embedded::EmbeddedProfile;
use crate::fault::Fault;

/// The order of the bytes of a number.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Order {
    /// The highest first: `MM`.
    Big,
    /// The lowest first: `II`.
    Little,
}

/// The tags that are read.
#[derive(Clone, Copy)]
#[repr(u16)]
pub enum Tag {
    Width = 256,
    Height = 257,
    BitsPerSample = 258,
    Compression = 259,
    Photometric = 262,
    StripOffsets = 273,
    Orientation = 274,
    SamplesPerPixel = 277,
    RowsPerStrip = 278,
    StripByteCounts = 279,
    PlanarConfiguration = 284,
    Predictor = 317,
    TileWidth = 322,
    TileHeight = 323,
    TileOffsets = 324,
    TileByteCounts = 325,
    ExtraSamples = 338,
    SampleFormat = 339,
    IccProfile = 34675,
}

/// A directory.
pub struct Directory {
    /// The order of its bytes, and of those of samples.
    pub order: Order,
    entries: Vec<Entry>,
    is_big: bool,
}

struct Entry {
    tag: u16,
    kind: u16,
    count: u64,
    /// The values, or where they lie.
    value: [u8; 8],
}

/// More entries than any program writes.
const MOST_ENTRIES: u64 = 4096;

/// Reads the first directory.
///
/// # Errors
/// Cut short, or no TIFF.
pub fn first(reader: &mut (impl BufRead + Seek)) -> Result<Directory, Fault> {
    let mut head = [0; 8];
    read(reader, &mut head)?;
    let order = match head[..2] {
        [b'M', b'M'] => Order::Big,
        [b'I', b'I'] => Order::Little,
        _ => return Err(Fault::NotAPicture),
    };
    let (is_big, offset) = match order.number(&head[2..4]) {
        42 => (false, order.number(&head[4..8])),
        43 if order.number(&head[4..6]) == 8 => {
            read(reader, &mut head)?;
            (true, order.number(&head))
        }
        _ => return Err(Fault::NotAPicture),
    };
    reader
        .seek(SeekFrom::Start(offset))
        .map_err(|_| Fault::CutShort)?;
    let (counted, width) = if is_big { (8, 20) } else { (2, 12) };
    read(reader, &mut head[..counted])?;
    let count = order.number(&head[..counted]);
    if count > MOST_ENTRIES {
        return Err(Fault::Damaged(format!("it has {count} tags")));
    }
    let mut entries = Vec::new();
    for _ in 0..count {
        let mut entry = [0; 20];
        read(reader, &mut entry[..width])?;
        let number = entry[4..].split_at(width / 2 - 2).0;
        let mut value = [0; 8];
        value[..width / 2 - 2].copy_from_slice(&entry[width / 2 + 2..width]);
        entries.push(Entry {
            tag: u16::try_from(order.number(&entry[..2])).unwrap_or(0),
            kind: u16::try_from(order.number(&entry[2..4])).unwrap_or(0),
            count: order.number(number),
            value,
        });
    }
    Ok(Directory {
        order,
        entries,
        is_big,
    })
}

impl Order {
    /// The number that up to 8 bytes stand for.
    fn number(self, bytes: &[u8]) -> u64 {
        let add = |number: u64, &byte: &u8| number << 8 | u64::from(byte);
        match self {
            Order::Big => bytes.iter().fold(0, add),
            Order::Little => bytes.iter().rev().fold(0, add),
        }
    }
}

impl Directory {
    fn entry(&self, tag: Tag) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.tag == tag as u16)
    }

    /// Whether it has a tag.
    pub fn has(&self, tag: Tag) -> bool {
        self.entry(tag).is_some()
    }

    /// How many values a tag has.
    pub fn count(&self, tag: Tag) -> u64 {
        self.entry(tag).map_or(0, |entry| entry.count)
    }

    /// The first value of a tag; `None` where it is missing.
    ///
    /// # Errors
    /// Cut short, or not a number.
    pub fn number(
        &self,
        reader: &mut (impl BufRead + Seek),
        tag: Tag,
    ) -> Result<Option<u64>, Fault> {
        if self.count(tag) == 0 {
            return Ok(None);
        }
        Ok(self.numbers(reader, tag, 1)?.first().copied())
    }

    /// The first `count` values of a tag.
    ///
    /// # Errors
    /// Cut short, or fewer, or not numbers.
    pub fn numbers(
        &self,
        reader: &mut (impl BufRead + Seek),
        tag: Tag,
        count: usize,
    ) -> Result<Vec<u64>, Fault> {
        let damaged = || Fault::Damaged(format!("its tag {} makes no sense", tag as u16));
        let entry = self.entry(tag).ok_or_else(damaged)?;
        // BYTE and UNDEFINED, SHORT, LONG, LONG8.
        let width: usize = match entry.kind {
            1 | 7 => 1,
            3 => 2,
            4 => 4,
            16 => 8,
            _ => return Err(damaged()),
        };
        if entry.count < count as u64 {
            return Err(damaged());
        }
        if let Some(inside) = self.inside(entry, width) {
            let values = inside.chunks_exact(width).take(count);
            return Ok(values.map(|bytes| self.order.number(bytes)).collect());
        }
        self.seek(reader, entry)?;
        let mut values = Vec::new();
        let mut bytes = [0; 8];
        for _ in 0..count {
            let bytes = &mut bytes[..width];
            read(reader, bytes)?;
            values.push(self.order.number(bytes));
        }
        Ok(values)
    }

    /// The colour profile.
    pub fn profile(&self, reader: &mut (impl BufRead + Seek)) -> EmbeddedProfile {
        match self.entry(Tag::IccProfile) {
            None => EmbeddedProfile::None,
            // No profile is as short as the entry itself.
            Some(entry) if self.inside(entry, 1).is_none() && self.seek(reader, entry).is_ok() => {
                EmbeddedProfile::read(reader, entry.count)
            }
            Some(_) => EmbeddedProfile::Unusable,
        }
    }

    /// The values, where they are so few that they stand in the entry.
    fn inside<'a>(&self, entry: &'a Entry, width: usize) -> Option<&'a [u8]> {
        let room = if self.is_big { 8 } else { 4 };
        let bytes = entry.count.checked_mul(width as u64)?;
        let bytes = usize::try_from(bytes).ok()?;
        (bytes <= room).then(|| &entry.value[..bytes])
    }

    fn seek(&self, reader: &mut impl Seek, entry: &Entry) -> Result<(), Fault> {
        let room = if self.is_big { 8 } else { 4 };
        let offset = self.order.number(&entry.value[..room]);
        reader
            .seek(SeekFrom::Start(offset))
            .map(|_| ())
            .map_err(|_| Fault::CutShort)
    }
}

fn read(reader: &mut impl BufRead, bytes: &mut [u8]) -> Result<(), Fault> {
    reader.read_exact(bytes).map_err(|_| Fault::CutShort)
}
