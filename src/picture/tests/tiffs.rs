//! TIFF files in every order of bytes, compression and division that is read (TIFF 6.0).

use std::io::Write as _;

use flate2::write::ZlibEncoder;

use super::samples::*;
use crate::{Colour, Fault};

/// A TIFF to be written.
#[derive(Clone)]
pub struct Written {
    pub size: (u32, u32),
    /// Photometric interpretation.
    pub photometric: u16,
    /// Bits of a sample, 8 or 16.
    pub bits: u16,
    /// Samples of a pixel.
    pub count: u16,
    pub extra: Option<u16>,
    pub compression: u16,
    pub has_differences: bool,
    /// The size of tiles, or none and the rows of strips.
    pub tiles: Option<(u32, u32)>,
    pub rows: u32,
    pub is_planar: bool,
    pub is_big_endian: bool,
    pub is_big_tiff: bool,
    pub profile: Option<Vec<u8>>,
    /// Samples, pixel by pixel.
    pub samples: Vec<u16>,
}

impl Written {
    /// Uncompressed, in strips of 16 rows, little-endian.
    pub fn new(
        size: (u32, u32),
        photometric: u16,
        bits: u16,
        count: u16,
        samples: Vec<u16>,
    ) -> Self {
        assert_eq!(
            samples.len(),
            (size.0 * size.1) as usize * usize::from(count)
        );
        Written {
            size,
            photometric,
            bits,
            count,
            extra: None,
            compression: 1,
            has_differences: false,
            tiles: None,
            rows: 16,
            is_planar: false,
            is_big_endian: false,
            is_big_tiff: false,
            profile: None,
            samples,
        }
    }

    fn number(&self, value: u64, bytes: usize) -> Vec<u8> {
        if self.is_big_endian {
            value.to_be_bytes()[8 - bytes..].to_vec()
        } else {
            value.to_le_bytes()[..bytes].to_vec()
        }
    }

    /// A sample, 0 beyond the picture's edges.
    fn sample(&self, x: u32, y: u32, sample: u16) -> u16 {
        if x >= self.size.0 || y >= self.size.1 {
            return 0;
        }
        let at = (y * self.size.0 + x) as usize * usize::from(self.count) + usize::from(sample);
        self.samples[at]
    }

    /// A block of some of the samples.
    fn block(&self, (left, top): (u32, u32), (wide, high): (u32, u32), which: &[u16]) -> Vec<u8> {
        let mut bytes = Vec::new();
        for y in top..top + high {
            for x in left..left + wide {
                for &sample in which {
                    let mut value = self.sample(x, y, sample);
                    if self.has_differences && x > left {
                        value = value.wrapping_sub(self.sample(x - 1, y, sample));
                    }
                    let value = u64::from(value) & ((1 << self.bits) - 1);
                    bytes.extend(self.number(value, usize::from(self.bits / 8)));
                }
            }
        }
        self.packed(&bytes)
    }

    fn packed(&self, bytes: &[u8]) -> Vec<u8> {
        match self.compression {
            1 => bytes.to_vec(),
            5 => weezl::encode::Encoder::with_tiff_size_switch(weezl::BitOrder::Msb, 8)
                .encode(bytes)
                .unwrap(),
            8 => {
                let mut encoder = ZlibEncoder::new(Vec::new(), flate2::Compression::fast());
                encoder.write_all(bytes).unwrap();
                encoder.finish().unwrap()
            }
            _ => {
                // PackBits: runs of equal bytes, and others as they stand.
                let mut packed = Vec::new();
                for run in bytes.chunk_by(|a, b| a == b) {
                    for part in run.chunks(128) {
                        let count = u8::try_from(part.len()).unwrap();
                        if count == 1 {
                            packed.extend([0, part[0]]);
                        } else {
                            packed.extend([(count - 1).wrapping_neg(), part[0]]);
                        }
                    }
                }
                packed
            }
        }
    }

    /// The bytes of the file.
    pub fn bytes(&self) -> Vec<u8> {
        let (width, height) = self.size;
        let (wide, high) = self.tiles.unwrap_or((width, self.rows.min(height)));
        let all: Vec<u16> = (0..self.count).collect();
        let planes: Vec<&[u16]> = if self.is_planar {
            all.chunks(1).collect()
        } else {
            vec![&all[..]]
        };
        let mut blocks = Vec::new();
        for plane in planes {
            for top in (0..height).step_by(high as usize) {
                let rows = if self.tiles.is_some() {
                    high
                } else {
                    high.min(height - top)
                };
                for left in (0..width).step_by(wide as usize) {
                    blocks.push(self.block((left, top), (wide, rows), plane));
                }
            }
        }
        // The head, the blocks, what does not fit into entries, the directory.
        let (head, room, counted, entry) = if self.is_big_tiff {
            (16, 8, 8, 20)
        } else {
            (8, 4, 2, 12)
        };
        let mut body = Vec::new();
        let (mut offsets, mut lengths) = (Vec::new(), Vec::new());
        for block in &blocks {
            offsets.push((head + body.len()) as u64);
            lengths.push(block.len() as u64);
            body.extend(block);
        }
        let mut tags: Vec<(u16, u16, Vec<u64>)> = vec![
            (256, 4, vec![width.into()]),
            (257, 4, vec![height.into()]),
            (258, 3, vec![self.bits.into(); self.count.into()]),
            (259, 3, vec![self.compression.into()]),
            (262, 3, vec![self.photometric.into()]),
            (277, 3, vec![self.count.into()]),
            (284, 3, vec![if self.is_planar { 2 } else { 1 }]),
            (317, 3, vec![if self.has_differences { 2 } else { 1 }]),
        ];
        if let Some((wide, high)) = self.tiles {
            tags.push((322, 4, vec![wide.into()]));
            tags.push((323, 4, vec![high.into()]));
            tags.push((324, 4, offsets));
            tags.push((325, 4, lengths));
        } else {
            tags.push((273, 4, offsets));
            tags.push((278, 4, vec![high.into()]));
            tags.push((279, 4, lengths));
        }
        if let Some(extra) = self.extra {
            tags.push((338, 3, vec![extra.into()]));
        }
        if let Some(profile) = &self.profile {
            tags.push((34675, 7, profile.iter().map(|&byte| byte.into()).collect()));
        }
        tags.sort_by_key(|(tag, ..)| *tag);
        let mut directory = self.number(tags.len() as u64, counted);
        for (tag, kind, values) in &tags {
            let width = match kind {
                3 => 2,
                4 => 4,
                _ => 1,
            };
            let mut content: Vec<u8> = values.iter().flat_map(|v| self.number(*v, width)).collect();
            directory.extend(self.number((*tag).into(), 2));
            directory.extend(self.number((*kind).into(), 2));
            directory.extend(self.number(values.len() as u64, room));
            if content.len() > room {
                let at = (head + body.len()) as u64;
                body.extend(&content);
                content = self.number(at, room);
            }
            content.resize(room, 0);
            directory.extend(content);
        }
        assert_eq!(directory.len(), counted + tags.len() * entry);
        directory.extend([0; 8]);
        let mut file = if self.is_big_endian {
            b"MM".to_vec()
        } else {
            b"II".to_vec()
        };
        let at = (head + body.len()) as u64;
        if self.is_big_tiff {
            file.extend(self.number(43, 2));
            file.extend(self.number(8, 2));
            file.extend(self.number(0, 2));
            file.extend(self.number(at, 8));
        } else {
            file.extend(self.number(42, 2));
            file.extend(self.number(at, 4));
        }
        [file, body, directory].concat()
    }
}

/// The samples of a picture, 8 or 16 bits deep.
fn rgb_samples(picture: &image::RgbImage, bits: u16) -> Vec<u16> {
    let deep = |&sample: &u8| u16::from(sample) * if bits == 16 { 257 } else { 1 };
    picture.as_raw().iter().map(deep).collect()
}

#[test]
fn every_division_compression_and_order_of_bytes_gives_the_picture() {
    let picture = busy(75, 53, 3);
    let expected = unguarded(
        &saved(picture.clone(), image::ImageFormat::Png),
        whole().limits,
    );
    let expected = expected.unwrap();
    let mut read = 0;
    for bits in [8, 16] {
        for compression in [1, 5, 8, 32773] {
            for has_differences in [false, true] {
                for (tiles, rows) in [
                    (None, 7),
                    (None, 53),
                    (Some((32, 16)), 0),
                    (Some((128, 64)), 0),
                ] {
                    for is_big_endian in [false, true] {
                        for is_big_tiff in [false, true] {
                            let samples = rgb_samples(&picture, bits);
                            let file = Written {
                                compression,
                                has_differences,
                                tiles,
                                rows,
                                is_big_endian,
                                is_big_tiff,
                                ..Written::new((75, 53), 2, bits, 3, samples)
                            };
                            let found = unguarded(&file.bytes(), whole().limits).unwrap();
                            assert!(
                                found == expected,
                                "{bits} {compression} {has_differences} {tiles:?} {rows} {is_big_endian} {is_big_tiff}"
                            );
                            read += 1;
                        }
                    }
                }
            }
        }
    }
    assert_eq!(read, 256);
}

#[test]
fn planes_one_after_another_are_put_together() {
    let picture = busy(40, 30, 4);
    for bits in [8, 16] {
        for tiles in [None, Some((16, 16))] {
            let file = Written {
                is_planar: true,
                tiles,
                ..Written::new((40, 30), 2, bits, 3, rgb_samples(&picture, bits))
            };
            let found = unguarded(&file.bytes(), whole().limits).unwrap();
            assert!(found == picture, "{bits} {tiles:?}");
        }
    }
}

#[test]
fn a_big_tiff_is_a_picture() {
    let picture = quarters(96, 64);
    let file = Written {
        is_big_tiff: true,
        ..Written::new((96, 64), 2, 8, 3, rgb_samples(&picture, 8))
    };
    assert_quarters(&seen(&file.bytes()), [RED, GREEN, BLUE, PALE]);
}

#[test]
fn samples_beyond_the_colour_are_opacity_or_nothing() {
    let pixel = [200, 100, 0, 51];
    let samples = pixel.repeat(16 * 16);
    // TIFF 6.0, section 18: 2 is opacity, 0 is not said.
    for (extra, expected) in [(2, [244, 224, 204]), (0, [200, 100, 0])] {
        let file = Written {
            extra: Some(extra),
            ..Written::new((16, 16), 2, 8, 4, samples.clone())
        };
        let found = unguarded(&file.bytes(), whole().limits).unwrap();
        assert_eq!(found.get_pixel(8, 8).0, expected, "{extra}");
    }
}

#[test]
fn white_may_be_zero() {
    for (bits, value) in [(8, 55), (16, 55 * 257)] {
        let file = Written::new((16, 16), 0, bits, 1, vec![value; 256]);
        let found = unguarded(&file.bytes(), whole().limits).unwrap();
        assert_eq!(found.get_pixel(8, 8).0, [200; 3], "{bits}");
    }
}

/// CIELAB under D50 of three of sRGB's colours, computed by the CSS Working Group's examples: `red` is
/// lab(54.29% 80.82 69.91), `lime` lab(87.82% -79.29 80.99), `blue` lab(29.57% 68.30 -112.03) (CSS Color 4, 4.6
/// and the tests of its `lab()`).
#[test]
fn cielab_becomes_srgb() {
    let colours = [
        ([54.29, 80.82, 69.91], [255, 0, 0]),
        ([87.82, -79.29, 80.99], [0, 255, 0]),
        ([29.57, 68.30, -112.03], [0, 0, 255]),
        ([53.585, 0.0, 0.0], [128, 128, 128]),
    ];
    for (lab, expected) in colours {
        for (photometric, bits) in [(8, 8), (8, 16), (9, 8), (9, 16)] {
            let file = Written {
                compression: 5,
                has_differences: true,
                ..Written::new(
                    (16, 16),
                    photometric,
                    bits,
                    3,
                    stored_lab(lab, photometric, bits).repeat(256),
                )
            };
            let (prepared, _) = prepare(&file.bytes()).unwrap();
            assert_eq!(prepared.colour, Colour::Converted);
            let found = unguarded(&file.bytes(), whole().limits).unwrap();
            // With 8 bits, half a step of a* or b* is worth up to 10 levels of sRGB where a channel is dark.
            assert_near(
                found.get_pixel(8, 8).0,
                expected,
                if bits == 8 { 10 } else { 1 },
            );
        }
    }
}

/// L*, a*, b* as a TIFF stores them (TIFF 6.0, section 23; Adobe Photoshop TIFF Technical Notes, 2002).
fn stored_lab(lab: [f64; 3], photometric: u16, bits: u16) -> Vec<u16> {
    let whole = |value: f64| -> i32 { format!("{value:.0}").parse().unwrap() };
    let number =
        |value: f64| u16::try_from(whole(value) & if bits == 8 { 0xFF } else { 0xFFFF }).unwrap();
    let [lightness, a, b] = lab;
    let step = if bits == 8 { 1.0 } else { 256.0 };
    let full = match (photometric, bits) {
        (_, 8) => 255.0,
        (8, _) => 65535.0,
        _ => 65280.0,
    };
    let from = if photometric == 8 { 0.0 } else { 128.0 };
    vec![
        number(lightness / 100.0 * full),
        number((a + from) * step),
        number((b + from) * step),
    ]
}

#[test]
fn a_tiff_of_a_kind_that_is_not_read_says_so() {
    let palette = Written::new((16, 16), 3, 8, 1, vec![0; 256]);
    let deep = Written {
        bits: 16,
        ..Written::new((16, 16), 8, 8, 3, vec![0; 768])
    };
    assert!(unguarded(&deep.bytes(), whole().limits).is_ok());
    let found = unguarded(&palette.bytes(), whole().limits);
    assert!(matches!(found, Err(Fault::Unsupported(_))), "{found:?}");
}
