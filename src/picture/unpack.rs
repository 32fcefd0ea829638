//! The compressions of TIFF strips and tiles that can be unpacked row by row (TIFF 6.0, sections 9 and 13; its
//! supplement 2 for Deflate).

use std::io::{self, BufRead, ErrorKind, Read, Take};

use flate2::bufread::ZlibDecoder;

use crate::samples::Depth;
use crate::source::FileReader;

/// A way of compressing that is unpacked row by row.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Compression {
    /// None at all.
    None,
    /// Lempel-Ziv & Welch.
    Lzw,
    /// The format of zlib.
    Deflate,
    /// Runs of bytes.
    PackBits,
}

impl Compression {
    /// The compression that a value of the tag Compression names; `None` for one that is not read here.
    pub fn of(tag: u64) -> Option<Compression> {
        match tag {
            1 => Some(Compression::None),
            5 => Some(Compression::Lzw),
            8 | 32946 => Some(Compression::Deflate),
            32773 => Some(Compression::PackBits),
            _ => None,
        }
    }

    /// Reads a strip or tile, unpacked.
    pub fn reader(self, packed: Take<FileReader<'_>>) -> Unpacked<'_> {
        match self {
            Compression::None => Unpacked::None(packed),
            Compression::Lzw => Unpacked::Lzw(
                packed,
                Box::new(
                    weezl::decode::Configuration::with_tiff_size_switch(weezl::BitOrder::Msb, 8)
                        .with_yield_on_full_buffer(true)
                        .build(),
                ),
            ),
            Compression::Deflate => Unpacked::Deflate(Box::new(ZlibDecoder::new(packed))),
            Compression::PackBits => Unpacked::PackBits(packed, Run::Literal(0)),
        }
    }
}

/// A strip or tile that is being unpacked.
pub enum Unpacked<'a> {
    None(Take<FileReader<'a>>),
    Lzw(Take<FileReader<'a>>, Box<weezl::decode::Decoder>),
    Deflate(Box<ZlibDecoder<Take<FileReader<'a>>>>),
    PackBits(Take<FileReader<'a>>, Run),
}

/// What is left of a run of PackBits.
pub enum Run {
    /// So many bytes as they stand.
    Literal(usize),
    /// One byte so many times.
    Repeated(u8, usize),
}

impl Read for Unpacked<'_> {
    fn read(&mut self, out: &mut [u8]) -> io::Result<usize> {
        match self {
            Unpacked::None(packed) => packed.read(out),
            Unpacked::Deflate(decoder) => decoder.read(out),
            Unpacked::Lzw(packed, decoder) => unpack_lzw(packed, decoder, out),
            Unpacked::PackBits(packed, run) => unpack_bits(packed, run, out),
        }
    }
}

fn unpack_lzw(
    packed: &mut impl BufRead,
    decoder: &mut weezl::decode::Decoder,
    out: &mut [u8],
) -> io::Result<usize> {
    loop {
        let done = decoder.decode_bytes(packed.fill_buf()?, out);
        packed.consume(done.consumed_in);
        match done.status {
            Ok(weezl::LzwStatus::Ok) if done.consumed_out == 0 => {}
            Ok(weezl::LzwStatus::Ok | weezl::LzwStatus::Done) => return Ok(done.consumed_out),
            Ok(weezl::LzwStatus::NoProgress) => return Err(ErrorKind::UnexpectedEof.into()),
            Err(error) => return Err(io::Error::new(ErrorKind::InvalidData, error)),
        }
    }
}

fn unpack_bits(packed: &mut impl BufRead, run: &mut Run, out: &mut [u8]) -> io::Result<usize> {
    loop {
        match run {
            Run::Literal(0) | Run::Repeated(_, 0) => {
                let mut head = [0];
                if packed.read(&mut head)? == 0 {
                    return Ok(0);
                }
                // A number from 0 to 127: so many bytes and one more follow. From -1 to -127: the next byte,
                // so many times and once more. -128: nothing.
                *run = match head[0].cast_signed() {
                    count @ 0.. => Run::Literal(usize::from(count.unsigned_abs()) + 1),
                    -128 => Run::Literal(0),
                    count => {
                        packed.read_exact(&mut head)?;
                        Run::Repeated(head[0], usize::from(count.unsigned_abs()) + 1)
                    }
                };
            }
            Run::Literal(left) => {
                let most = out.len().min(*left);
                let read = packed.read(&mut out[..most])?;
                *left -= read;
                return Ok(read);
            }
            Run::Repeated(byte, left) => {
                let count = out.len().min(*left);
                out[..count].fill(*byte);
                *left -= count;
                return Ok(count);
            }
        }
    }
}

/// Undoes the horizontal predictor (section 14): each sample was stored as its difference from that of the pixel
/// before.
pub fn add_differences(row: &mut [u8], depth: Depth, count: usize) {
    let step = count * depth.bytes();
    if depth == Depth::Eight {
        for at in step..row.len() {
            row[at] = row[at].wrapping_add(row[at - step]);
        }
        return;
    }
    let (from, to): (fn([u8; 2]) -> u16, fn(u16) -> [u8; 2]) = match depth {
        Depth::SixteenLittle => (u16::from_le_bytes, u16::to_le_bytes),
        _ => (u16::from_be_bytes, u16::to_be_bytes),
    };
    let mut at = step;
    while at + 1 < row.len() {
        let before = from([row[at - step], row[at - step + 1]]);
        let sum = from([row[at], row[at + 1]]).wrapping_add(before);
        row[at..at + 2].copy_from_slice(&to(sum));
        at += 2;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_of_bytes_are_unpacked() {
        // The example of section 9.
        let packed = [
            0xFE, 0xAA, 0x02, 0x80, 0x00, 0x2A, 0xFD, 0xAA, 0x03, 0x80, 0x00, 0x2A, 0x22, 0xF7,
            0xAA,
        ];
        let unpacked = [
            0xAA, 0xAA, 0xAA, 0x80, 0x00, 0x2A, 0xAA, 0xAA, 0xAA, 0xAA, 0x80, 0x00, 0x2A, 0x22,
            0xAA, 0xAA, 0xAA, 0xAA, 0xAA, 0xAA, 0xAA, 0xAA, 0xAA, 0xAA,
        ];
        for piece in [1, 2, 5, 24] {
            let (mut from, mut run) = (&packed[..], Run::Literal(0));
            let mut found = Vec::new();
            let mut buffer = vec![0; piece];
            loop {
                let read = unpack_bits(&mut from, &mut run, &mut buffer).unwrap();
                if read == 0 {
                    break;
                }
                found.extend_from_slice(&buffer[..read]);
            }
            assert_eq!(found, unpacked, "{piece} bytes at once");
        }
    }

    #[test]
    fn differences_are_added_up_in_the_order_of_the_file() {
        let mut row = [10, 20, 1, 255, 2, 2];
        add_differences(&mut row, Depth::Eight, 2);
        assert_eq!(row, [10, 20, 11, 19, 13, 21]);
        let mut row = [0x00, 0xFF, 0x00, 0x01];
        add_differences(&mut row, Depth::SixteenBig, 1);
        assert_eq!(row, [0x00, 0xFF, 0x01, 0x00]);
        let mut row = [0xFF, 0x00, 0x01, 0x00];
        add_differences(&mut row, Depth::SixteenLittle, 1);
        assert_eq!(row, [0xFF, 0x00, 0x00, 0x01]);
    }
}
