//! Pictures of every kind with bytes changed, cut, moved and forged: each is read or refused, without a panic and
//! within the limits.
//!
//! Every round follows from its number alone. 640 rounds are run; `KEYBLOCK_MUTATIONS=20000 cargo test --release -p
//! keyblock-picture --lib mutated_pictures -- --nocapture` runs more, and prints how many were read and refused.

use std::collections::BTreeMap;

use image::{DynamicImage, ImageFormat, RgbaImage};
use jpeg_encoder::ColorType;

use super::hostile::png_chunk;
use super::profiles;
use super::samples::*;
use super::tiffs::Written;
use crate::Limits;

/// Numbers that follow from a seed (xorshift, Marsaglia 2003).
pub struct Numbers(u64);

impl Numbers {
    pub fn new(seed: u64) -> Numbers {
        Numbers(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    pub fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 16).unwrap_or(0) % limit.max(1)
    }

    fn byte(&mut self) -> u8 {
        u8::try_from(self.below(256)).unwrap()
    }
}

/// A sound file of every kind and form that is read.
pub fn sound() -> Vec<(&'static str, Vec<u8>)> {
    let picture = busy(48, 40, 7);
    let grey: Vec<u16> = (0..48 * 40).map(|n| n % 256).collect();
    let glass = RgbaImage::from_fn(48, 40, |x, y| {
        image::Rgba([200, 100, 0, u8::try_from((x * y) % 256).unwrap()])
    });
    let deep = DynamicImage::ImageRgb8(picture.clone()).into_rgb16();
    let rgb: Vec<u16> = picture.as_raw().iter().map(|&v| v.into()).collect();
    let tiff = |compression, tiles, is_big_tiff| {
        Written {
            compression,
            tiles,
            is_big_tiff,
            has_differences: compression != 1,
            profile: Some(profiles::scanner()),
            ..Written::new((48, 40), 2, 8, 3, rgb.clone())
        }
        .bytes()
    };
    let inks: Vec<u8> = (0..48 * 40 * 4_u32)
        .map(|n| u8::try_from(n % 251).unwrap())
        .collect();
    let mut cmyk = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut cmyk, 90);
    encoder
        .add_icc_profile(&profiles::inks_of_8_bits())
        .unwrap();
    encoder
        .encode(&inks, 48, 40, ColorType::CmykAsYcck)
        .unwrap();
    vec![
        ("jpeg", oriented(&jpeg(&picture), 6)),
        ("progressive jpeg", progressive_jpeg(&picture)),
        ("jpeg of inks", cmyk),
        (
            "png",
            png_with(
                &DynamicImage::ImageRgb8(picture.clone()),
                profiles::scanner(),
            ),
        ),
        (
            "deep png",
            saved(DynamicImage::ImageRgb16(deep), ImageFormat::Png),
        ),
        ("png with opacity", saved(glass.clone(), ImageFormat::Png)),
        ("interlaced png", interlaced(&picture)),
        ("tiff", tiff(1, None, false)),
        ("tiff with LZW", tiff(5, None, false)),
        ("tiff with Deflate", tiff(8, Some((16, 16)), false)),
        ("tiff with PackBits", tiff(32773, None, true)),
        (
            "tiff in planes",
            Written {
                is_planar: true,
                ..Written::new((48, 40), 2, 8, 3, rgb.clone())
            }
            .bytes(),
        ),
        (
            "tiff of CIELAB",
            Written {
                compression: 5,
                ..Written::new((48, 40), 9, 8, 3, rgb.clone())
            }
            .bytes(),
        ),
        ("grey tiff", Written::new((48, 40), 0, 16, 1, grey).bytes()),
        ("webp", saved(picture, ImageFormat::WebP)),
        ("webp with opacity", saved(glass, ImageFormat::WebP)),
    ]
}

/// A PNG in seven passes, not compressed (RFC 1950, RFC 1951 section 3.2.4).
pub fn interlaced(picture: &image::RgbImage) -> Vec<u8> {
    let (width, height) = picture.dimensions();
    let mut rows = Vec::new();
    for (left, top, across, down) in [
        (0, 0, 8, 8),
        (4, 0, 8, 8),
        (0, 4, 4, 8),
        (2, 0, 4, 4),
        (0, 2, 2, 4),
        (1, 0, 2, 2),
        (0, 1, 1, 2),
    ] {
        for y in (top..height).step_by(down) {
            let row: Vec<u8> = (left..width)
                .step_by(across)
                .flat_map(|x| picture.get_pixel(x, y).0)
                .collect();
            if !row.is_empty() {
                rows.push(0);
                rows.extend(row);
            }
        }
    }
    let mut encoder = flate2::write::ZlibEncoder::new(Vec::new(), flate2::Compression::fast());
    std::io::Write::write_all(&mut encoder, &rows).unwrap();
    let head = [
        &width.to_be_bytes()[..],
        &height.to_be_bytes(),
        &[8, 2, 0, 0, 1],
    ]
    .concat();
    [
        b"\x89PNG\r\n\x1A\n".to_vec(),
        png_chunk(*b"IHDR", &head),
        png_chunk(*b"IDAT", &encoder.finish().unwrap()),
        png_chunk(*b"IEND", &[]),
    ]
    .concat()
}

/// Checksums of a PNG made right again, so that what was changed is looked at.
fn with_checksums(bytes: &[u8]) -> Vec<u8> {
    let mut mended = bytes[..8.min(bytes.len())].to_vec();
    let mut at = 8;
    while let Some(head) = bytes.get(at..at + 8) {
        let length = u32::from_be_bytes([head[0], head[1], head[2], head[3]]) as usize;
        let Some(content) = bytes.get(at + 8..at.saturating_add(8).saturating_add(length)) else {
            break;
        };
        mended.extend(png_chunk([head[4], head[5], head[6], head[7]], content));
        at += 12 + length;
    }
    mended.extend(bytes.get(at..).unwrap_or_default());
    mended
}

/// Changes a sound file in one of nine ways.
fn mutated(sound: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    let mut bytes = sound.to_vec();
    let length = bytes.len();
    match numbers.below(9) {
        // Single bytes, anywhere, then in the head alone.
        0 => {
            for _ in 0..=numbers.below(6) {
                bytes[numbers.below(length)] = numbers.byte();
            }
        }
        1 | 2 => {
            for _ in 0..=numbers.below(4) {
                bytes[numbers.below(length.min(200))] = numbers.byte();
            }
        }
        // Single bits.
        3 => {
            for _ in 0..=numbers.below(8) {
                bytes[numbers.below(length)] ^= 1 << numbers.below(8);
            }
        }
        // Cut.
        4 => bytes.truncate(numbers.below(length)),
        // A part left out, doubled, or exchanged with another.
        5 => {
            let (from, to) = (numbers.below(length), numbers.below(length));
            bytes.drain(from.min(to)..from.max(to));
        }
        6 => {
            let (from, to) = (numbers.below(length), numbers.below(length));
            let part = bytes[from.min(to)..from.max(to)].to_vec();
            let at = numbers.below(length);
            bytes.splice(at..at, part);
        }
        7 => {
            let (a, b) = (numbers.below(length), numbers.below(length));
            for step in 0..numbers.below(64).min(length - a.max(b)) {
                bytes.swap(a + step, b + step);
            }
        }
        // Numbers that are absurdly large, where numbers stand: lengths, sizes, counts, offsets.
        _ => {
            for _ in 0..=numbers.below(3) {
                let at = numbers.below(length.saturating_sub(4).min(400));
                let number =
                    [0xFFFF_FFFF_u32, 0x7FFF_FFFF, 0xFFFF, 0, 0x0001_0000][numbers.below(5)];
                let part = if numbers.below(2) == 0 {
                    number.to_be_bytes()
                } else {
                    number.to_le_bytes()
                };
                bytes[at..at + 4].copy_from_slice(&part);
            }
        }
    }
    if bytes.starts_with(b"\x89PNG\r\n\x1A\n") && numbers.below(4) > 0 {
        bytes = with_checksums(&bytes);
    }
    bytes
}

#[test]
fn mutated_pictures_are_read_or_refused() {
    let rounds = std::env::var("KEYBLOCK_MUTATIONS")
        .ok()
        .and_then(|rounds| rounds.parse().ok());
    let sound = sound();
    let limits = Limits {
        pixels: 1_000_000,
        memory: 32 << 20,
    };
    for (kind, bytes) in &sound {
        assert!(
            unguarded(bytes, limits).is_ok(),
            "{kind}: {:?}",
            unguarded(bytes, limits)
        );
    }
    let mut outcomes: BTreeMap<&str, usize> = BTreeMap::new();
    let mut panics = Vec::new();
    for round in 0..rounds.unwrap_or(640) {
        let mut numbers = Numbers::new(round);
        let (kind, bytes) = &sound[usize::try_from(round).unwrap() % sound.len()];
        let bytes = mutated(bytes, &mut numbers);
        let found = std::panic::catch_unwind(|| unguarded(&bytes, limits));
        let outcome = match found {
            Ok(Ok(_)) => "read",
            Ok(Err(_)) => "refused",
            Err(_) => {
                panics.push(format!("{kind}, round {round}"));
                "panicked"
            }
        };
        *outcomes.entry(outcome).or_default() += 1;
    }
    println!("{outcomes:?}");
    // Decoders of others may panic, which is caught where pictures are prepared; here each is known by name.
    assert_eq!(panics, Vec::<String>::new());
    assert!(
        outcomes["refused"] > 100 && outcomes["read"] > 50,
        "{outcomes:?}"
    );
}
