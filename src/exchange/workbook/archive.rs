//! ZIP archives (APPNOTE 6.3, PKWARE), written: no ZIP64, no encryption, one date for all files.
//!
//! In: parts, each packed once. Out: the bytes of an archive. The same parts give the same bytes: the date is that with
//! which the format begins, 1 January 1980.

use std::io::Write as _;
use std::sync::Arc;

use flate2::write::DeflateEncoder;
use flate2::{Compression, Crc};

/// A file of an archive, packed.
#[derive(Clone)]
pub(in crate::exchange) struct Part {
    name: String,
    method: u16,
    crc: u32,
    unpacked: u32,
    bytes: Arc<[u8]>,
}

const STORED: u16 = 0;
const DEFLATED: u16 = 8;

impl Part {
    /// A part that is packed as small as it goes: for one that stands in many archives.
    pub fn packed(name: &str, bytes: &[u8]) -> Part {
        let mut encoder = DeflateEncoder::new(Vec::new(), Compression::best());
        // Writing to memory cannot fail.
        let _ = encoder.write_all(bytes);
        let packed = encoder.finish().unwrap_or_default();
        Part::new(name, DEFLATED, bytes, packed)
    }

    /// A part that stands as it is: for a small one, since starting to pack costs more than it saves.
    pub fn stored(name: &str, bytes: &[u8]) -> Part {
        Part::new(name, STORED, bytes, bytes.to_vec())
    }

    fn new(name: &str, method: u16, bytes: &[u8], written: Vec<u8>) -> Part {
        let mut crc = Crc::new();
        crc.update(bytes);
        Part {
            name: name.to_owned(),
            method,
            crc: crc.sum(),
            unpacked: size(bytes.len()),
            bytes: written.into(),
        }
    }

    /// What the local header and the directory say alike (APPNOTE 4.3.7, from "version needed" to "extra field length").
    fn header(&self) -> Vec<u8> {
        let mut header = Vec::with_capacity(26);
        for field in [20, 0, self.method, 0, DAY] {
            header.extend_from_slice(&field.to_le_bytes());
        }
        for field in [self.crc, size(self.bytes.len()), self.unpacked] {
            header.extend_from_slice(&field.to_le_bytes());
        }
        for field in [u16::try_from(self.name.len()).unwrap_or(u16::MAX), 0] {
            header.extend_from_slice(&field.to_le_bytes());
        }
        header
    }
}

/// 1 January 1980 as MS-DOS writes a date.
const DAY: u16 = 1 << 5 | 1;

/// The archive of some parts, in their order.
pub(in crate::exchange) fn archive<'p>(parts: impl IntoIterator<Item = &'p Part>) -> Vec<u8> {
    let mut file = Vec::new();
    let mut directory = Vec::new();
    let mut count: u16 = 0;
    for part in parts {
        let at = size(file.len());
        let header = part.header();
        file.extend_from_slice(b"PK\x03\x04");
        file.extend_from_slice(&header);
        file.extend_from_slice(part.name.as_bytes());
        file.extend_from_slice(&part.bytes);
        // Made by version 2.0; no comment, first disk, no attributes.
        directory.extend_from_slice(b"PK\x01\x02\x14\x00");
        directory.extend_from_slice(&header);
        directory.extend_from_slice(&[0; 10]);
        directory.extend_from_slice(&at.to_le_bytes());
        directory.extend_from_slice(part.name.as_bytes());
        count += 1;
    }
    let at = size(file.len());
    file.extend_from_slice(&directory);
    file.extend_from_slice(b"PK\x05\x06\0\0\0\0");
    file.extend_from_slice(&count.to_le_bytes());
    file.extend_from_slice(&count.to_le_bytes());
    file.extend_from_slice(&size(directory.len()).to_le_bytes());
    file.extend_from_slice(&at.to_le_bytes());
    file.extend_from_slice(&[0, 0]);
    file
}

/// A length as the format writes it; workbooks are far below 4 GB.
fn size(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}
