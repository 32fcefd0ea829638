//! Pictures made for the tests, and ways to prepare one and look at the outcome.

use std::fs;
use std::io::{Cursor, Write as _};

use image::codecs::png::PngEncoder;
use image::{DynamicImage, ImageEncoder as _, ImageFormat, Rgb, RgbImage};
use jpeg_encoder::{ColorType, Encoder};

use crate::{Fault, Limits, Plan, Prepared, Request, Store, prepare_all};

pub const RED: [u8; 3] = [220, 40, 40];
pub const GREEN: [u8; 3] = [40, 200, 60];
pub const BLUE: [u8; 3] = [40, 60, 220];
pub const PALE: [u8; 3] = [240, 240, 230];

/// Red and green above, blue and pale below: no two of the eight orientations look alike.
pub fn quarters(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        Rgb(match (x < width / 2, y < height / 2) {
            (true, true) => RED,
            (false, true) => GREEN,
            (true, false) => BLUE,
            (false, false) => PALE,
        })
    })
}

/// A picture with something in every block, so that a loss anywhere is a loss of data.
pub fn busy(width: u32, height: u32, seed: u32) -> RgbImage {
    let mut state = seed.wrapping_mul(2_654_435_761).max(1);
    RgbImage::from_fn(width, height, |x, y| {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        let [noise, ..] = state.to_le_bytes();
        let ramp = (x * 2 + y * 3) % 256;
        Rgb([noise / 4 + 60, u8::try_from(ramp).unwrap(), 200 - noise / 8])
    })
}

/// A baseline JPEG of high quality with full colour.
pub fn jpeg(picture: &RgbImage) -> Vec<u8> {
    jpeg_with(picture, false)
}

pub fn progressive_jpeg(picture: &RgbImage) -> Vec<u8> {
    jpeg_with(picture, true)
}

fn jpeg_with(picture: &RgbImage, progressive: bool) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 97);
    encoder.set_progressive(progressive);
    let (width, height) = (picture.width(), picture.height());
    encoder
        .encode(
            picture.as_raw(),
            u16::try_from(width).unwrap(),
            u16::try_from(height).unwrap(),
            ColorType::Rgb,
        )
        .unwrap();
    bytes
}

/// The picture in one of the kinds that `image` can write.
pub fn saved(picture: impl Into<DynamicImage>, kind: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture.into().write_to(&mut bytes, kind).unwrap();
    bytes.into_inner()
}

/// Puts a segment right behind the start of a JPEG.
pub fn with_segment(jpeg: &[u8], marker: u8, content: &[u8]) -> Vec<u8> {
    let length = u16::try_from(content.len() + 2).unwrap().to_be_bytes();
    [&jpeg[..2], &[0xFF, marker], &length, content, &jpeg[2..]].concat()
}

/// An Exif block holding one entry: the orientation (tag 0x0112, SHORT, CIPA DC-008).
pub fn exif(orientation: u8) -> Vec<u8> {
    let mut block = b"II\x2A\0\x08\0\0\0".to_vec();
    block.extend([1, 0]);
    block.extend([0x12, 0x01, 3, 0, 1, 0, 0, 0, orientation, 0, 0, 0]);
    block.extend([0; 4]);
    block
}

/// The JPEG with an Exif segment that states the orientation.
pub fn oriented(jpeg: &[u8], orientation: u8) -> Vec<u8> {
    with_segment(
        jpeg,
        0xE1,
        &[b"Exif\0\0".to_vec(), exif(orientation)].concat(),
    )
}

/// An uncompressed TIFF of 8-bit samples in one strip (TIFF 6.0, section 2).
pub fn tiff(
    (width, height): (u16, u16),
    photometric: u16,
    orientation: u16,
    samples: &[u8],
) -> Vec<u8> {
    let per_pixel =
        u16::try_from(samples.len() / usize::from(width) / usize::from(height)).unwrap();
    let short = |tag: u16, value: u16| {
        [
            tag.to_le_bytes(),
            3u16.to_le_bytes(),
            [1, 0],
            [0, 0],
            value.to_le_bytes(),
            [0, 0],
        ]
        .concat()
    };
    let long = |tag: u16, count: u32, value: u32, kind: u16| {
        let mut entry = [tag.to_le_bytes(), kind.to_le_bytes()].concat();
        entry.extend(count.to_le_bytes());
        entry.extend(value.to_le_bytes());
        entry
    };
    let entries = 10;
    let after = 8 + 2 + entries * 12 + 4;
    let data = after + 8;
    let mut bytes = b"II\x2A\0\x08\0\0\0".to_vec();
    bytes.extend(u16::try_from(entries).unwrap().to_le_bytes());
    bytes.extend(short(256, width));
    bytes.extend(short(257, height));
    // Up to two depths are in the entry itself, more of them after the directory.
    bytes.extend(if per_pixel == 1 {
        short(258, 8)
    } else {
        long(258, u32::from(per_pixel), after, 3)
    });
    bytes.extend(short(259, 1));
    bytes.extend(short(262, photometric));
    bytes.extend(long(273, 1, data, 4));
    bytes.extend(short(274, orientation));
    bytes.extend(short(277, per_pixel));
    bytes.extend(short(278, height));
    bytes.extend(long(279, 1, u32::try_from(samples.len()).unwrap(), 4));
    bytes.extend([0; 4]);
    bytes.extend([8, 0, 8, 0, 8, 0, 8, 0]);
    bytes.extend(samples);
    bytes
}

/// A plan that makes one file as large as the picture, in the best quality.
pub fn whole() -> Plan {
    Plan {
        widths: vec![10_000],
        quality: 98,
        largest: 10_000,
        limits: Limits {
            pixels: 1_000_000,
            ..Limits::default()
        },
    }
}

/// Prepares the files, each under its name in a fresh folder.
pub fn prepare_files(files: &[(&str, &[u8])], plan: &Plan) -> Vec<Result<Prepared, Fault>> {
    let dir = tempfile::tempdir().unwrap();
    let requests: Vec<Request> = files
        .iter()
        .map(|(name, bytes)| {
            let source = dir.path().join(name);
            fs::write(&source, bytes).unwrap();
            Request {
                source,
                largest: None,
            }
        })
        .collect();
    prepare_all(
        &requests,
        plan,
        &Store::at(&dir.path().join("cache")),
        &|_, _| {},
    )
}

/// The result of one file: the prepared picture, and the bytes of its largest derivative.
pub fn prepare(bytes: &[u8]) -> Result<(Prepared, Vec<u8>), Fault> {
    let dir = tempfile::tempdir().unwrap();
    let source = dir.path().join("picture");
    fs::write(&source, bytes).unwrap();
    let request = Request {
        source,
        largest: None,
    };
    let prepared = prepare_all(
        &[request],
        &whole(),
        &Store::at(&dir.path().join("cache")),
        &|_, _| {},
    )
    .pop()
    .unwrap()?;
    let made = fs::read(&prepared.derivatives.last().unwrap().file).unwrap();
    Ok((prepared, made))
}

/// The largest derivative of one file, unpacked.
pub fn seen(bytes: &[u8]) -> RgbImage {
    let (_, made) = prepare(bytes).unwrap();
    image::load_from_memory_with_format(&made, ImageFormat::Jpeg)
        .unwrap()
        .into_rgb8()
}

/// Asserts that the middle of each quarter has its colour, read by rows.
#[track_caller]
pub fn assert_quarters(picture: &RgbImage, colours: [[u8; 3]; 4]) {
    let (width, height) = (picture.width(), picture.height());
    for (place, colour) in colours.into_iter().enumerate() {
        let (right, below) = (place % 2 == 1, place >= 2);
        let x = if right { width * 3 / 4 } else { width / 4 };
        let y = if below { height * 3 / 4 } else { height / 4 };
        assert_near(picture.get_pixel(x, y).0, colour, 4);
    }
}

/// Asserts that no channel is further off than `by`, which leaves room for JPEG's rounding.
#[track_caller]
pub fn assert_near(found: [u8; 3], expected: [u8; 3], by: u8) {
    let near = found
        .iter()
        .zip(expected)
        .all(|(&a, b)| a.abs_diff(b) <= by);
    assert!(near, "{found:?} is not within {by} of {expected:?}");
}

/// Opens a file and unpacks it, without the guard that catches a decoder's panic in a batch.
pub fn unguarded(bytes: &[u8], limits: Limits) -> Result<RgbImage, Fault> {
    let mut file = tempfile::NamedTempFile::new().unwrap();
    file.write_all(bytes).unwrap();
    let file = crate::source::PictureFile::open(file.path(), limits.pixels)?;
    let opened = crate::decode::open(&file, limits.pixels)?;
    let stored = opened.stored;
    let needed = opened.memory(stored);
    if needed > limits.memory {
        return Err(Fault::TooMuchMemory {
            needed,
            limit: limits.memory,
            cause: opened.cause(),
        });
    }
    opened.pixels(stored)
}

/// A PNG with a colour profile.
pub fn png_with(picture: &DynamicImage, profile: Vec<u8>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = PngEncoder::new(&mut bytes);
    encoder.set_icc_profile(profile).unwrap();
    picture.write_with_encoder(encoder).unwrap();
    bytes
}
