//! Tiles show the photograph upright, in sRGB and never larger than allowed, and hold nothing else.

use std::fs;

use image::{RgbImage, imageops};

use super::reading::stored;
use super::samples::*;
use crate::{Colour, Plan, Prepared, Request, Service, Store, prepare_all, tiles};

/// The files of one photograph's service, by path, in their order.
fn service(bytes: &[u8], plan: &Plan, largest: Option<u32>) -> (Prepared, Vec<(String, Vec<u8>)>) {
    let dir = tempfile::tempdir().unwrap();
    let source = dir.path().join("picture");
    fs::write(&source, bytes).unwrap();
    let request = Request { source, largest };
    let cache = dir.path().join("cache");
    let prepared = prepare_all(&[request], plan, &Store::at(&cache), &|_, _| {})
        .remove(0)
        .unwrap();
    let pack = fs::read(&prepared.service.pack).unwrap();
    let at = |at: u64| usize::try_from(at).unwrap();
    let files = prepared.service.files.iter();
    let files = files
        .map(|file| {
            let bytes = pack[at(file.at.start)..at(file.at.end)].to_vec();
            (file.path.clone(), bytes)
        })
        .collect();
    (prepared, files)
}

fn unpacked(jpeg: &[u8]) -> RgbImage {
    image::load_from_memory(jpeg).unwrap().into_rgb8()
}

/// Each level put together from its tiles, the largest first.
fn levels(service: &Service, files: &[(String, Vec<u8>)]) -> Vec<RgbImage> {
    let size = (service.width, service.height);
    let level = |factor: u32| {
        let (width, height) = tiles::reduced(size, factor);
        let mut level = RgbImage::new(width, height);
        for tile in tiles::tiles(size).iter().filter(|t| t.factor == factor) {
            let tile_path = tile.path(size);
            let file = files.iter().find(|(path, _)| *path == tile_path);
            let [x, y] = [tile.at.0, tile.at.1].map(|n| i64::from(n * tiles::SIDE));
            imageops::replace(&mut level, &unpacked(&file.unwrap().1), x, y);
        }
        level
    };
    tiles::factors(size).into_iter().map(level).collect()
}

/// The picture whole, as the service gives it at most.
fn whole(files: &[(String, Vec<u8>)]) -> RgbImage {
    let file = files
        .iter()
        .find(|(path, _)| path == "full/max/0/default.jpg");
    unpacked(&file.unwrap().1)
}

/// Peak signal-to-noise ratio in dB of 8-bit values.
fn psnr(a: &RgbImage, b: &RgbImage) -> f64 {
    assert_eq!(a.dimensions(), b.dimensions());
    let pairs = a.as_raw().iter().zip(b.as_raw());
    let sum: f64 = pairs.map(|(a, b)| f64::from(a.abs_diff(*b)).powi(2)).sum();
    let mean = sum / f64::from(u32::try_from(a.as_raw().len()).unwrap());
    10.0 * libm::log10(255.0 * 255.0 / mean.max(1e-9))
}

/// A plan in which the largest published form is not scaled.
fn large() -> Plan {
    Plan {
        widths: vec![480, 1400],
        quality: 95,
        largest: 2000,
        limits: crate::Limits {
            pixels: 4_000_000,
            ..crate::Limits::default()
        },
    }
}

#[test]
fn tiles_are_upright_in_every_orientation() {
    let upright = quarters(1100, 600);
    for orientation in 1..=8 {
        let file = oriented(&jpeg(&stored(&upright, orientation)), orientation);
        let (prepared, files) = service(&file, &large(), None);
        assert_eq!(
            (prepared.service.width, prepared.service.height),
            (1100, 600)
        );
        let levels = levels(&prepared.service, &files);
        assert_eq!(levels.len(), 3);
        for made in levels.iter().chain([&whole(&files)]) {
            assert_quarters(made, [RED, GREEN, BLUE, PALE]);
        }
    }
}

/// No two compressions of the same pixels differ by more than their losses: 38 dB at this quality
/// (common practice, no source).
#[test]
fn tiles_put_together_are_the_photograph() {
    let photograph = RgbImage::from_fn(1301, 777, |x, y| {
        let wave = |n: u32| u8::try_from(100 + (n * n / 997) % 100).unwrap();
        // Grey, because colour is stored at half the resolution.
        image::Rgb([wave(x) / 2 + wave(y) / 2; 3])
    });
    let (prepared, files) = service(&jpeg(&photograph), &large(), None);
    let levels = levels(&prepared.service, &files);
    assert_eq!(levels.len(), 3);
    let near = psnr(&whole(&files), &photograph);
    assert!(near > 38.0, "whole: {near:.1} dB");
    let mut expected = photograph;
    for made in levels {
        let near = psnr(&made, &expected);
        assert!(near > 38.0, "{} px wide: {near:.1} dB", made.width());
        let (width, height) = expected.dimensions();
        expected = RgbImage::from_fn(width.div_ceil(2), height.div_ceil(2), |x, y| {
            let at = |dx: u32, dy: u32| {
                let x = (2 * x + dx).min(width - 1);
                let y = (2 * y + dy).min(height - 1);
                expected.get_pixel(x, y).0.map(u16::from)
            };
            let four = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
            let mean = |channel: usize| four.iter().map(|p| p[channel]).sum::<u16>() / 4;
            image::Rgb([0, 1, 2].map(|channel| u8::try_from(mean(channel)).unwrap()))
        });
    }
}

#[test]
fn no_tile_shows_more_than_the_catalogue_or_the_picture_allows() {
    let file = jpeg(&busy(1400, 700, 5));
    for (catalogue, own, size) in [
        (1200, None, (1200, 600)),
        (1200, Some(600), (600, 300)),
        (500, Some(600), (500, 250)),
    ] {
        let plan = Plan {
            largest: catalogue,
            ..large()
        };
        let (prepared, files) = service(&file, &plan, own);
        let service = &prepared.service;
        assert_eq!((service.width, service.height), size);
        assert_eq!((prepared.width, prepared.height), (1400, 700));
        for (path, jpeg) in files {
            let picture = unpacked(&jpeg);
            assert!(
                picture.width() <= size.0 && picture.height() <= size.1,
                "{path}"
            );
        }
    }
}

#[test]
fn tiles_are_in_srgb_and_carry_nothing_but_pixels() {
    let profile = moxcms::ColorProfile::new_display_p3().encode().unwrap();
    let mut file = jpeg(&quarters(700, 520));
    file = with_segment(
        &file,
        0xE2,
        &[&b"ICC_PROFILE\0\x01\x01"[..], &profile].concat(),
    );
    file = with_segment(&file, 0xFE, b"kept by OWNER-SECRET");
    let (prepared, files) = service(&file, &large(), None);
    assert_eq!(prepared.colour, Colour::Converted);
    let shown = red_of_display_p3();
    for (path, jpeg) in &files {
        let picture = unpacked(jpeg);
        // Every file's first pixels are those of the red quarter, brought to sRGB.
        if path.starts_with("0,0,") || path.starts_with("full/") {
            assert_near(picture.get_pixel(8, 8).0, shown, 4);
        }
        let mut at = 2;
        while jpeg[at + 1] != 0xDA {
            let marker = jpeg[at + 1];
            // JFIF, tables, frame.
            assert!(matches!(marker, 0xE0 | 0xDB | 0xC0 | 0xC4), "{marker:X}");
            at += 2 + usize::from(u16::from_be_bytes([jpeg[at + 2], jpeg[at + 3]]));
        }
        assert!(jpeg.ends_with(&[0xFF, 0xD9]));
    }
}

/// The red of Display P3 in sRGB, converted independently here.
fn red_of_display_p3() -> [u8; 3] {
    let transform = moxcms::ColorProfile::new_display_p3()
        .create_transform_8bit(
            moxcms::Layout::Rgb,
            &moxcms::ColorProfile::new_srgb(),
            moxcms::Layout::Rgb,
            moxcms::TransformOptions::default(),
        )
        .unwrap();
    let mut shown = [0; 3];
    transform.transform(&RED, &mut shown).unwrap();
    shown
}

#[test]
fn grey_and_deep_pictures_are_cut_too() {
    let grey = image::ImageBuffer::from_pixel(600, 20, image::Luma([77_u8]));
    let deep = image::ImageBuffer::from_pixel(600, 20, image::Rgb([0x8000_u16, 0xFFFF, 0x0101]));
    for (picture, colour) in [
        (image::DynamicImage::ImageLuma8(grey), [77; 3]),
        (image::DynamicImage::ImageRgb16(deep), [128, 255, 1]),
    ] {
        let file = saved(picture, image::ImageFormat::Png);
        let (_, files) = service(&file, &large(), None);
        // The whole, two tiles, and the level below them.
        assert_eq!(files.len(), 4);
        for (_, jpeg) in files {
            assert_near(unpacked(&jpeg).get_pixel(8, 8).0, colour, 3);
        }
    }
}
