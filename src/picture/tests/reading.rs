//! Every kind of photograph comes out upright, in 8-bit RGB, and without its metadata.

use image::{DynamicImage, ImageBuffer, ImageFormat, Luma, LumaA, Rgb, RgbImage, Rgba, RgbaImage};

use super::samples::*;
use crate::Colour;

const UPRIGHT: [[u8; 3]; 4] = [RED, GREEN, BLUE, PALE];

/// The pixels as a file with that orientation stores them, by the definition of the tag (CIPA
/// DC-008-2019, section 4.6.4 A, Orientation): which side of the upright picture the first row and
/// the first column lie on.
pub fn stored(upright: &RgbImage, orientation: u8) -> RgbImage {
    let (width, height) = (upright.width(), upright.height());
    let (stored_width, stored_height) = if orientation >= 5 {
        (height, width)
    } else {
        (width, height)
    };
    RgbImage::from_fn(stored_width, stored_height, |column, row| {
        let (x, y) = match orientation {
            1 => (column, row),                          // top, left
            2 => (width - 1 - column, row),              // top, right
            3 => (width - 1 - column, height - 1 - row), // bottom, right
            4 => (column, height - 1 - row),             // bottom, left
            5 => (row, column),                          // left, top
            6 => (width - 1 - row, column),              // right, top
            7 => (width - 1 - row, height - 1 - column), // right, bottom
            _ => (row, height - 1 - column),             // left, bottom
        };
        *upright.get_pixel(x, y)
    })
}

#[test]
fn every_orientation_is_turned_upright() {
    let upright = quarters(96, 64);
    for orientation in 1..=8 {
        let (prepared, made) = prepare(&oriented(
            &jpeg(&stored(&upright, orientation)),
            orientation,
        ))
        .unwrap();
        assert_eq!(
            (prepared.width, prepared.height),
            (96, 64),
            "orientation {orientation}"
        );
        assert_quarters(
            &image::load_from_memory(&made).unwrap().into_rgb8(),
            UPRIGHT,
        );
    }
}

#[test]
fn an_orientation_outside_the_standard_turns_nothing() {
    for nonsense in [0, 9, 200] {
        assert_quarters(
            &seen(&oriented(&jpeg(&quarters(96, 64)), nonsense)),
            UPRIGHT,
        );
    }
}

#[test]
fn a_tiff_is_turned_upright() {
    let stored = stored(&quarters(32, 16), 6);
    let picture = seen(&tiff((16, 32), 2, 6, stored.as_raw()));
    assert_eq!((picture.width(), picture.height()), (32, 16));
    assert_quarters(&picture, UPRIGHT);
}

#[test]
fn a_scaled_picture_is_turned_upright_too() {
    let mut plan = whole();
    plan.widths = vec![24, 48];
    let file = oriented(&jpeg(&stored(&quarters(96, 64), 8)), 8);
    let prepared = prepare_files(&[("a.jpg", &file)], &plan)
        .pop()
        .unwrap()
        .unwrap();
    let sizes: Vec<_> = prepared
        .derivatives
        .iter()
        .map(|d| (d.width, d.height))
        .collect();
    assert_eq!(sizes, [(24, 16), (48, 32)]);
}

#[test]
fn the_kind_is_told_by_content_not_by_name() {
    let picture = quarters(96, 64);
    for bytes in [
        jpeg(&picture),
        progressive_jpeg(&picture),
        saved(picture.clone(), ImageFormat::Png),
        saved(picture.clone(), ImageFormat::Tiff),
        saved(picture.clone(), ImageFormat::WebP),
    ] {
        assert_quarters(&seen(&bytes), UPRIGHT);
        let misnamed = prepare_files(&[("picture.gif", &bytes)], &whole());
        assert!(misnamed[0].is_ok(), "{misnamed:?}");
    }
}

#[test]
fn colours_stored_at_half_the_resolution_are_read() {
    for progressive in [false, true] {
        let mut bytes = Vec::new();
        let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 97);
        encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
        encoder.set_progressive(progressive);
        let picture = quarters(96, 64);
        encoder
            .encode(picture.as_raw(), 96, 64, jpeg_encoder::ColorType::Rgb)
            .unwrap();
        assert_quarters(&seen(&bytes), UPRIGHT);
    }
}

#[test]
fn sixteen_bits_become_eight() {
    let deep = ImageBuffer::from_pixel(16, 16, Rgb([0x8000_u16, 0xFFFF, 0x0101]));
    for kind in [ImageFormat::Png, ImageFormat::Tiff] {
        let picture = seen(&saved(DynamicImage::ImageRgb16(deep.clone()), kind));
        assert_near(picture.get_pixel(8, 8).0, [128, 255, 1], 3);
    }
}

#[test]
fn grey_becomes_three_equal_channels() {
    let grey = ImageBuffer::from_pixel(16, 16, Luma([77_u8]));
    let deep = ImageBuffer::from_pixel(16, 16, Luma([77_u16 * 257]));
    let veiled = ImageBuffer::from_pixel(16, 16, LumaA([77_u8, 255]));
    for picture in [
        DynamicImage::ImageLuma8(grey),
        DynamicImage::ImageLuma16(deep),
        DynamicImage::ImageLumaA8(veiled),
    ] {
        assert_near(
            seen(&saved(picture, ImageFormat::Png)).get_pixel(8, 8).0,
            [77; 3],
            1,
        );
    }
    let mut bytes = Vec::new();
    jpeg_encoder::Encoder::new(&mut bytes, 97)
        .encode(&[77; 256], 16, 16, jpeg_encoder::ColorType::Luma)
        .unwrap();
    assert_near(seen(&bytes).get_pixel(8, 8).0, [77; 3], 1);
}

#[test]
fn a_palette_is_looked_up() {
    // PNG, third edition, 11.2: 16 × 16 of four colours, 2 bits a pixel, all of them index 2.
    let mut bytes = b"\x89PNG\r\n\x1A\n".to_vec();
    let chunk = |kind: &[u8; 4], content: &[u8]| super::hostile::png_chunk(*kind, content);
    bytes.extend(chunk(b"IHDR", &[0, 0, 0, 16, 0, 0, 0, 16, 2, 3, 0, 0, 0]));
    bytes.extend(chunk(b"PLTE", &[RED, GREEN, BLUE, PALE].concat()));
    // Stored, not compressed (RFC 1950, RFC 1951 section 3.2.4): each row a filter byte and 4 bytes.
    let rows = [0, 0xAA, 0xAA, 0xAA, 0xAA].repeat(16);
    let mut data = vec![0x78, 0x01, 1, 80, 0, !80, 0xFF];
    data.extend(&rows);
    let (a, b) = rows.iter().fold((1_u32, 0_u32), |(a, b), &byte| {
        let a = (a + u32::from(byte)) % 65_521;
        (a, (b + a) % 65_521)
    });
    data.extend((b << 16 | a).to_be_bytes());
    bytes.extend(chunk(b"IDAT", &data));
    bytes.extend(chunk(b"IEND", &[]));
    assert_near(seen(&bytes).get_pixel(8, 8).0, BLUE, 4);
}

#[test]
fn what_is_transparent_lies_on_white() {
    for (alpha, expected) in [(0, [255; 3]), (255, [200, 100, 0]), (51, [244, 224, 204])] {
        let glass = RgbaImage::from_pixel(16, 16, Rgba([200, 100, 0, alpha]));
        for kind in [ImageFormat::Png, ImageFormat::WebP] {
            assert_near(
                seen(&saved(glass.clone(), kind)).get_pixel(8, 8).0,
                expected,
                4,
            );
        }
    }
}

#[test]
fn nothing_but_pixels_reaches_the_output() {
    let secret = b"kept by OWNER-SECRET in the study";
    let profile = moxcms::ColorProfile::new_display_p3().encode().unwrap();
    let mut exif = exif(1);
    exif.extend(secret);
    let mut file = jpeg(&quarters(96, 64));
    file = with_segment(&file, 0xE1, &[&b"Exif\0\0"[..], &exif].concat());
    file = with_segment(
        &file,
        0xE1,
        &[&b"http://ns.adobe.com/xap/1.0/\0"[..], secret].concat(),
    );
    file = with_segment(
        &file,
        0xE2,
        &[&b"ICC_PROFILE\0\x01\x01"[..], &profile].concat(),
    );
    file = with_segment(&file, 0xED, &[&b"Photoshop 3.0\0"[..], secret].concat());
    file = with_segment(&file, 0xFE, secret);
    file.extend(secret);

    let (prepared, made) = prepare(&file).unwrap();
    assert_eq!(prepared.colour, Colour::Converted);
    for trace in [
        &b"SECRET"[..],
        b"Exif",
        b"ICC_PROFILE",
        b"ns.adobe",
        b"Photoshop",
        b"acsp",
    ] {
        assert!(
            contains(&file, trace),
            "the sample lacks what is looked for"
        );
        assert!(
            !contains(&made, trace),
            "{}",
            String::from_utf8_lossy(trace)
        );
    }
    // The segments of the output: JFIF, tables, frame and scan, nothing that could carry more.
    let mut at = 2;
    while made[at + 1] != 0xDA {
        assert!(
            matches!(made[at + 1], 0xE0 | 0xDB | 0xC0 | 0xC4),
            "{:X}",
            made[at + 1]
        );
        at += 2 + usize::from(u16::from_be_bytes([made[at + 2], made[at + 3]]));
    }
    assert!(made.ends_with(&[0xFF, 0xD9]));
}

fn contains(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}
