//! Printing inks and profiles made of tables.

use image::{DynamicImage, Rgb, RgbImage};
use jpeg_encoder::{ColorType, Encoder};
use moxcms::{ColorProfile, Layout, TransformOptions};

use super::profiles;
use super::samples::*;
use super::tiffs::Written;
use crate::srgb::Encoder as ToSrgb;
use crate::tables::Tables;
use crate::{Colour, Fault};

/// Every value of a few steps of each channel, and some between them.
fn colours(channels: u32) -> Vec<u8> {
    let steps: [u8; 6] = [0, 37, 96, 128, 201, 255];
    (0..6_u32.pow(channels))
        .flat_map(|place| {
            (0..channels).map(move |channel| steps[(place / 6_u32.pow(channel) % 6) as usize])
        })
        .collect()
}

fn converted(profile: &[u8]) -> Vec<u8> {
    let tables = Tables::new(&ColorProfile::new_from_slice(profile).unwrap()).unwrap();
    let colours = colours(u32::try_from(tables.channels()).unwrap());
    let mut found = vec![0; colours.len() / tables.channels() * 3];
    tables.convert(&colours, &mut found);
    found
}

/// The formula from which the table was made, at its nodes and between them.
#[test]
fn inks_become_the_colours_that_their_profile_states() {
    let encoder = ToSrgb::new();
    for profile in [profiles::inks(), profiles::inks_of_8_bits()] {
        let is_curved = profile == profiles::inks();
        let colours = colours(4);
        let found = converted(&profile);
        let mut furthest = 0;
        for (inks, found) in colours.chunks_exact(4).zip(found.chunks_exact(3)) {
            let amounts = inks.iter().map(|&ink| {
                let amount = f64::from(ink) / 255.0;
                if is_curved {
                    libm::pow(amount, 0.8)
                } else {
                    amount
                }
            });
            let expected = encoder.lab(profiles::lab_of_inks(&amounts.collect::<Vec<_>>()));
            for (found, expected) in found.iter().zip(expected) {
                furthest = furthest.max(found.abs_diff(expected));
            }
        }
        // Nine nodes a channel follow the formula no closer; Little CMS is compared in tests/reference.
        assert!(furthest <= 9, "{furthest}");
    }
}

/// The library `moxcms` as an independent implementation of the same tables.
#[test]
fn a_reference_library_finds_the_same_colours() {
    for (profile, layout) in [
        (profiles::inks(), Layout::Rgba),
        (profiles::inks_of_8_bits(), Layout::Rgba),
        (profiles::scanner(), Layout::Rgb),
        (profiles::scanner_of_version_4(), Layout::Rgb),
    ] {
        let ours = converted(&profile);
        let colours = colours(u32::try_from(layout.channels()).unwrap());
        let mut theirs = vec![0; ours.len()];
        let options = TransformOptions {
            prefer_fixed_point: false,
            ..TransformOptions::default()
        };
        ColorProfile::new_from_slice(&profile)
            .unwrap()
            .create_transform_8bit(layout, &ColorProfile::new_srgb(), Layout::Rgb, options)
            .unwrap()
            .transform(&colours, &mut theirs)
            .unwrap();
        let apart = ours.iter().zip(&theirs).map(|(a, b)| a.abs_diff(*b));
        let (most, sum) = apart.fold((0, 0), |(most, sum), by| {
            (most.max(by), sum + usize::from(by))
        });
        // It divides the cube of nodes in another way, and keeps another table of results.
        assert!(
            most <= 8 && sum < ours.len(),
            "{layout:?}: at most {most}, {sum} in {} values",
            ours.len()
        );
    }
}

/// Values computed on x86-64; every processor must give the same.
#[test]
fn every_processor_finds_the_same_bytes() {
    let found = [
        profiles::inks(),
        profiles::inks_of_8_bits(),
        profiles::scanner(),
        profiles::scanner_of_version_4(),
    ]
    .map(|profile| blake3::hash(&converted(&profile)).to_hex()[..16].to_owned());
    assert_eq!(
        found,
        [
            "8e93459ce30bdba4",
            "adfcf6d034d690df",
            "a1942033761b9e58",
            "a636f4e089381ebd"
        ]
    );
}

/// A JPEG of one colour of inks, as Adobe's programs write it: 255 is no ink.
fn jpeg_of_inks(inks: [u8; 4], kind: ColorType, profile: Option<&[u8]>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 100);
    if let Some(profile) = profile {
        encoder.add_icc_profile(profile).unwrap();
    }
    encoder.encode(&inks.repeat(32 * 32), 32, 32, kind).unwrap();
    bytes
}

const INKS: [[u8; 4]; 4] = [
    [0, 0, 0, 0],
    [180, 20, 60, 10],
    [20, 200, 200, 0],
    [90, 80, 70, 200],
];

fn expected(inks: [u8; 4]) -> [u8; 3] {
    let tables = Tables::new(&ColorProfile::new_from_slice(&profiles::inks()).unwrap()).unwrap();
    let mut rgb = [0; 3];
    tables.convert(&inks, &mut rgb);
    rgb
}

#[test]
fn a_jpeg_of_inks_is_converted_through_its_profile() {
    for inks in INKS {
        for kind in [ColorType::Cmyk, ColorType::CmykAsYcck] {
            let file = jpeg_of_inks(inks, kind, Some(&profiles::inks()));
            assert_eq!(prepare(&file).unwrap().0.colour, Colour::Converted);
            let found = unguarded(&file, whole().limits).unwrap();
            assert_near(found.get_pixel(16, 16).0, expected(inks), 3);
        }
    }
}

#[test]
fn a_tiff_of_inks_is_converted_through_its_profile() {
    for inks in INKS {
        for (bits, scale) in [(8, 1), (16, 257)] {
            let samples = inks.map(|ink| u16::from(ink) * scale).repeat(24 * 20);
            let file = Written {
                compression: 5,
                profile: Some(profiles::inks()),
                ..Written::new((24, 20), 5, bits, 4, samples)
            };
            assert_eq!(prepare(&file.bytes()).unwrap().0.colour, Colour::Converted);
            let found = unguarded(&file.bytes(), whole().limits).unwrap();
            assert_eq!(found.get_pixel(16, 16).0, expected(inks));
        }
    }
}

#[test]
fn inks_that_no_profile_explains_are_refused() {
    let rgb = moxcms::ColorProfile::new_display_p3().encode().unwrap();
    let mut broken = profiles::inks();
    broken.truncate(4000);
    for kind in [ColorType::Cmyk, ColorType::CmykAsYcck] {
        for profile in [None, Some(&rgb[..]), Some(&broken[..])] {
            let file = jpeg_of_inks(INKS[1], kind, profile);
            assert_eq!(prepare(&file), Err(Fault::InksWithoutProfile));
        }
    }
    for profile in [None, Some(rgb), Some(broken)] {
        let file = Written {
            profile,
            ..Written::new((16, 16), 5, 8, 4, vec![9; 1024])
        };
        assert_eq!(prepare(&file.bytes()), Err(Fault::InksWithoutProfile));
    }
    // Without the marker of Adobe nothing says how inks are counted.
    let file = jpeg_of_inks(INKS[1], ColorType::Cmyk, Some(&profiles::inks()));
    let adobe = file.windows(5).position(|part| part == b"Adobe").unwrap();
    let mut unsaid = file;
    unsaid[adobe] = b'X';
    assert_eq!(prepare(&unsaid), Err(Fault::InksOfUnknownSense));
}

#[test]
fn a_scanner_of_tables_is_followed() {
    let patch = RgbImage::from_pixel(16, 16, Rgb([180, 120, 60]));
    for profile in [profiles::scanner(), profiles::scanner_of_version_4()] {
        let tables = Tables::new(&ColorProfile::new_from_slice(&profile).unwrap()).unwrap();
        let mut expected = [0; 3];
        tables.convert(&[180, 120, 60], &mut expected);
        let file = png_with(&DynamicImage::ImageRgb8(patch.clone()), profile);
        assert_eq!(prepare(&file).unwrap().0.colour, Colour::Converted);
        assert_near(seen(&file).get_pixel(8, 8).0, expected, 3);
        assert!(
            expected[0].abs_diff(180) > 3,
            "the profile changes the colour: {expected:?}"
        );
    }
}

#[test]
fn a_picture_of_light_with_a_profile_of_inks_is_told() {
    let patch = DynamicImage::ImageRgb8(RgbImage::from_pixel(16, 16, Rgb([90, 140, 90])));
    let file = png_with(&patch, profiles::inks());
    assert_eq!(prepare(&file).unwrap().0.colour, Colour::ProfileUnusable);
}
