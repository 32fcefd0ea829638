//! The files in a ZIP archive (APPNOTE 6.3, PKWARE): found by the directory at its end, unpacked as they are read.
//!
//! What the directory says of sizes is checked before anything is unpacked, and a file that turns out larger than the
//! directory says is refused as it passes that size. So no archive unpacks to more than its declared total. Archives of
//! 4 GB and more (ZIP64), split archives and encrypted files are refused.

use std::io::{self, BufRead, BufReader, Cursor, Read};

use flate2::read::DeflateDecoder;

use super::fault::TableFault;
use super::limits::{NODE_BYTES, PACKED_FILES, UNPACKED_BYTES};

/// An archive.
#[derive(Debug)]
pub(super) struct Package<'b> {
    bytes: &'b [u8],
    files: Vec<PackedFile>,
}

/// A file as the directory lists it.
#[derive(Debug)]
struct PackedFile {
    name: String,
    method: u16,
    packed: usize,
    unpacked: u64,
    at: usize,
}

const DIRECTORY_END: &[u8] = b"PK\x05\x06";
const DIRECTORY_FILE: &[u8] = b"PK\x01\x02";
const LOCAL_FILE: &[u8] = b"PK\x03\x04";

impl<'b> Package<'b> {
    /// Reads the directory of an archive.
    ///
    /// # Errors
    /// Where there is none, where it lists too much, or where a file is encrypted.
    pub fn open(bytes: &'b [u8]) -> Result<Package<'b>, TableFault> {
        let broken = || TableFault::damaged("", "the list of files in the archive is broken");
        // The comment behind the directory has at most 65,535 bytes.
        let tail = bytes.len().saturating_sub(22 + 0xffff);
        let end = bytes[tail..]
            .windows(4)
            .rposition(|window| window == DIRECTORY_END)
            .map(|at| tail + at)
            .ok_or_else(broken)?;
        let count = number(bytes, end + 10, 2).ok_or_else(broken)?;
        let mut at = usize::try_from(number(bytes, end + 16, 4).ok_or_else(broken)?)
            .map_err(|_| broken())?;
        if count > PACKED_FILES {
            return Err(TableFault::TooLarge {
                what: "the number of files in the archive",
                limit: PACKED_FILES,
                unit: "files",
            });
        }
        let mut files = Vec::new();
        let mut total: u64 = 0;
        for _ in 0..count {
            if bytes.get(at..at + 4) != Some(DIRECTORY_FILE) {
                return Err(broken());
            }
            let field = |offset: usize, length: usize| number(bytes, at + offset, length);
            let (Some(flags), Some(method), Some(packed), Some(unpacked)) =
                (field(8, 2), field(10, 2), field(20, 4), field(24, 4))
            else {
                return Err(broken());
            };
            let (Some(name), Some(extra), Some(comment), Some(local)) =
                (field(28, 2), field(30, 2), field(32, 2), field(42, 4))
            else {
                return Err(broken());
            };
            if flags & 1 != 0 {
                return Err(TableFault::Encrypted);
            }
            total += unpacked;
            if total > UNPACKED_BYTES {
                return Err(TableFault::TooLarge {
                    what: "the unpacked archive",
                    limit: UNPACKED_BYTES,
                    unit: "bytes",
                });
            }
            let length = |value: u64| usize::try_from(value).unwrap_or(usize::MAX);
            let start = at + 46;
            let bytes_of_name = bytes.get(start..start + length(name)).ok_or_else(broken)?;
            files.push(PackedFile {
                name: String::from_utf8_lossy(bytes_of_name).into_owned(),
                method: u16::try_from(method).unwrap_or(u16::MAX),
                packed: length(packed),
                unpacked,
                at: length(local),
            });
            at = start + length(name) + length(extra) + length(comment);
        }
        Ok(Package { bytes, files })
    }

    /// Whether the archive has a file of this name.
    pub fn has(&self, name: &str) -> bool {
        self.files.iter().any(|file| file.name == name)
    }

    /// A file, unpacked as it is read.
    ///
    /// # Errors
    /// Where the archive has no such file, or packed it in a way that is not read.
    pub fn file(&self, name: &str) -> Result<impl BufRead + use<'b>, TableFault> {
        let file = self.files.iter().find(|file| file.name == name);
        let file = file.ok_or_else(|| TableFault::damaged(name, "it is missing"))?;
        let broken = || TableFault::damaged(name, "its entry in the archive is broken");
        if self.bytes.get(file.at..file.at.saturating_add(4)) != Some(LOCAL_FILE) {
            return Err(broken());
        }
        let name_length = number(self.bytes, file.at + 26, 2).ok_or_else(broken)?;
        let extra_length = number(self.bytes, file.at + 28, 2).ok_or_else(broken)?;
        let start = usize::try_from(name_length + extra_length).map_err(|_| broken())?;
        let start = file.at + 30 + start;
        let packed = start
            .checked_add(file.packed)
            .and_then(|end| self.bytes.get(start..end))
            .ok_or_else(broken)?;
        let unpacked: Box<dyn Read> = match file.method {
            0 => Box::new(Cursor::new(packed)),
            8 => Box::new(DeflateDecoder::new(packed)),
            _ => {
                return Err(TableFault::damaged(
                    name,
                    "it is packed in a way that is not read",
                ));
            }
        };
        Ok(Bounded {
            inner: BufReader::with_capacity(1 << 16, unpacked),
            left: file.unpacked,
            since_node: 0,
        })
    }
}

/// A little-endian number of `length` bytes.
fn number(bytes: &[u8], at: usize, length: usize) -> Option<u64> {
    let field = bytes.get(at..at.checked_add(length)?)?;
    Some(
        field
            .iter()
            .rev()
            .fold(0, |sum, byte| sum << 8 | u64::from(*byte)),
    )
}

/// A stream that fails when it is longer than declared, or when no element begins within [`NODE_BYTES`]: a parser holds
/// each element and each text whole.
struct Bounded<R> {
    inner: BufReader<R>,
    left: u64,
    since_node: u64,
}

impl<R: Read> Read for Bounded<R> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let available = self.fill_buf()?;
        let count = available.len().min(into.len());
        into[..count].copy_from_slice(&available[..count]);
        self.consume(count);
        Ok(count)
    }
}

impl<R: Read> BufRead for Bounded<R> {
    fn fill_buf(&mut self) -> io::Result<&[u8]> {
        if self.since_node > NODE_BYTES {
            return Err(io::Error::other("a text is too long"));
        }
        let buffer = self.inner.fill_buf()?;
        if buffer.len() as u64 > self.left {
            return Err(io::Error::other("longer than the archive says"));
        }
        Ok(buffer)
    }

    fn consume(&mut self, amount: usize) {
        let taken = &self.inner.buffer()[..amount.min(self.inner.buffer().len())];
        match taken.iter().rposition(|byte| *byte == b'<') {
            Some(at) => self.since_node = (taken.len() - at) as u64,
            None => self.since_node += taken.len() as u64,
        }
        self.left = self.left.saturating_sub(amount as u64);
        self.inner.consume(amount);
    }
}
