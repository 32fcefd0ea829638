//! A broken or forged picture is a fault, never a crash and never a large allocation.

use image::{ImageFormat, RgbImage};

use super::samples::*;
use crate::{Fault, Limits};

/// A chunk of a PNG with its checksum (PNG, third edition, 5.3 and annex D).
pub fn png_chunk(kind: [u8; 4], content: &[u8]) -> Vec<u8> {
    let checked = [&kind[..], content].concat();
    let crc = !checked.iter().fold(u32::MAX, |crc, &byte| {
        (0..8).fold(crc ^ u32::from(byte), |crc, _| {
            if crc & 1 == 1 {
                0xEDB8_8320 ^ (crc >> 1)
            } else {
                crc >> 1
            }
        })
    });
    let length = u32::try_from(content.len()).unwrap().to_be_bytes();
    [&length[..], &checked, &crc.to_be_bytes()].concat()
}

fn fault(bytes: &[u8]) -> Fault {
    prepare(bytes).unwrap_err()
}

#[test]
fn a_jpeg_cut_anywhere_is_cut_short() {
    let picture = busy(120, 90, 1);
    for whole in [
        jpeg(&picture),
        progressive_jpeg(&picture),
        oriented(&jpeg(&picture), 3),
    ] {
        assert!(prepare(&whole).is_ok());
        for length in (3..whole.len())
            .step_by(97)
            .chain([whole.len() - 2, whole.len() - 1])
        {
            assert_eq!(
                fault(&whole[..length]),
                Fault::CutShort,
                "{length} of {}",
                whole.len()
            );
        }
    }
}

#[test]
fn an_end_put_where_the_picture_was_cut_deceives() {
    // DIFFERS: zune-jpeg 0.5.15, strict or not, trusts an end marker that comes too early and
    // fills the rest with grey. So the damage is not found in a file that a program has ended in
    // this way.
    let whole = jpeg(&busy(120, 90, 1));
    let mended = [&whole[..whole.len() / 2], &[0xFF, 0xD9]].concat();
    let picture = seen(&mended);
    assert_near(picture.get_pixel(100, 80).0, picture.get_pixel(60, 88).0, 4);
}

#[test]
fn a_jpeg_that_stores_one_colour_after_another_is_read_rightly_or_refused() {
    let picture = quarters(96, 64);
    let split = |sampling| {
        let mut bytes = Vec::new();
        let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 97);
        encoder.set_sampling_factor(sampling);
        // With tables fitted to the picture the encoder writes a scan for each colour.
        encoder.set_optimized_huffman_tables(true);
        encoder
            .encode(picture.as_raw(), 96, 64, jpeg_encoder::ColorType::Rgb)
            .unwrap();
        bytes
    };
    let whole = split(jpeg_encoder::SamplingFactor::F_1_1);
    assert_quarters(&seen(&whole), [RED, GREEN, BLUE, PALE]);
    let subsampled = split(jpeg_encoder::SamplingFactor::F_2_2);
    assert!(matches!(fault(&subsampled), Fault::Unsupported(_)));
}

#[test]
fn other_kinds_cut_short_are_told() {
    let picture = busy(120, 90, 1);
    for kind in [ImageFormat::Png, ImageFormat::Tiff, ImageFormat::WebP] {
        let whole = saved(picture.clone(), kind);
        for length in [40, whole.len() / 2, whole.len() - 40] {
            let fault = fault(&whole[..length]);
            assert!(
                matches!(fault, Fault::CutShort | Fault::Damaged(_)),
                "{kind:?}: {fault:?}"
            );
        }
    }
}

#[test]
fn what_is_no_picture_is_told() {
    assert_eq!(
        fault(b"My notes on the harbour prints.\n"),
        Fault::NotAPicture
    );
    assert_eq!(fault(b""), Fault::Empty);
    assert_eq!(fault(b"GIF89a\x01\0\x01\0\0\0\0"), Fault::OtherKind("GIF"));
    let text = b"My notes on the harbour prints.\n";
    assert_eq!(
        prepare_files(&[("notes.jpg", text)], &whole()),
        [Err(Fault::NotAPicture)]
    );
}

#[test]
fn a_forged_size_is_refused_before_anything_is_unpacked() {
    let mut png = b"\x89PNG\r\n\x1A\n".to_vec();
    png.extend(png_chunk(
        *b"IHDR",
        &[0, 0, 0xEA, 0x60, 0, 0, 0xEA, 0x60, 8, 2, 0, 0, 0],
    ));
    png.extend(png_chunk(*b"IDAT", &[0x78, 0x01]));
    png.extend(png_chunk(*b"IEND", &[]));
    let refused = |fault| {
        matches!(
            fault,
            Fault::TooManyPixels {
                limit: 1_000_000,
                ..
            }
        )
    };
    assert_eq!(
        fault(&png),
        Fault::TooManyPixels {
            width: 60_000,
            height: 60_000,
            limit: 1_000_000
        }
    );

    let mut forged = jpeg(&quarters(32, 32));
    let frame = forged
        .windows(2)
        .position(|pair| pair == [0xFF, 0xC0])
        .unwrap();
    forged[frame + 5..frame + 9].copy_from_slice(&[0xFF, 0xFF, 0xFF, 0xFF]);
    assert!(refused(fault(&forged)));

    let mut forged = tiff((60_000, 1), 1, 1, &vec![0; 60_000]);
    // Height (tag 257) and rows in the strip (tag 278) agree, so that only the data are missing.
    for tag in [[1, 1, 3, 0], [0x16, 1, 3, 0]] {
        let entry = forged.windows(4).position(|part| part == tag).unwrap();
        forged[entry + 8..entry + 10].copy_from_slice(&[0x60, 0xEA]);
    }
    let found = fault(&forged);
    assert!(refused(found.clone()), "{found:?}");
}

#[test]
fn a_picture_at_the_limit_is_read_and_one_above_is_not() {
    let mut plan = whole();
    plan.limits.pixels = 96 * 64;
    let fits = jpeg(&quarters(96, 64));
    let exceeds = jpeg(&quarters(96, 65));
    let results = prepare_files(&[("a", &fits), ("b", &exceeds)], &plan);
    assert!(results[0].is_ok());
    assert_eq!(
        results[1],
        Err(Fault::TooManyPixels {
            width: 96,
            height: 65,
            limit: 6144
        })
    );
}

#[test]
fn a_webp_that_announces_more_than_it_holds_is_cut_short() {
    let mut bytes = saved(quarters(16, 16), ImageFormat::WebP);
    bytes.extend(*b"ICCP\xF0\xFF\xFF\xFF");
    let announced = u32::try_from(bytes.len() - 8).unwrap().to_le_bytes();
    bytes[4..8].copy_from_slice(&announced);
    assert_eq!(fault(&bytes), Fault::CutShort);
}

#[test]
fn changed_bytes_never_panic() {
    let picture = busy(48, 40, 7);
    let mut state = 0x9E37_79B9_u32;
    let mut next = move || {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        state as usize
    };
    for sound in [
        oriented(&jpeg(&picture), 6),
        progressive_jpeg(&picture),
        saved(picture.clone(), ImageFormat::Png),
        saved(picture.clone(), ImageFormat::Tiff),
        saved(picture, ImageFormat::WebP),
    ] {
        for round in 0..150 {
            let mut bytes = sound.clone();
            // The first half of the rounds aims at headers.
            let within = if round < 75 {
                bytes.len().min(700)
            } else {
                bytes.len()
            };
            for _ in 0..=round % 4 {
                bytes[next() % within] = u8::try_from(next() % 256).unwrap();
            }
            // Without the guard that catches a decoder's panic in a batch.
            let _ = unguarded(
                &bytes,
                Limits {
                    pixels: 100_000,
                    memory: 16 << 20,
                },
            );
        }
    }
}

#[test]
fn a_missing_file_and_a_folder_are_told() {
    let dir = tempfile::tempdir().unwrap();
    let ask = |source: std::path::PathBuf| {
        let request = crate::Request {
            source,
            largest: None,
        };
        crate::prepare_all(
            &[request],
            &whole(),
            &crate::Store::at(&dir.path().join("cache")),
            &|_, _| {},
        )
        .pop()
        .unwrap()
    };
    assert_eq!(ask(dir.path().join("nowhere.jpg")), Err(Fault::Missing));
    assert_eq!(ask(dir.path().to_path_buf()), Err(Fault::NotAFile));
}

#[test]
fn one_pixel_is_a_picture() {
    let picture = seen(&jpeg(&RgbImage::from_pixel(1, 1, image::Rgb(RED))));
    assert_near(picture.get_pixel(0, 0).0, RED, 4);
}
