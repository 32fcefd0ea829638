//! Details, tested on pictures whose exact maps and colours are known.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use image::{ImageReader, Rgb, RgbImage};
use jpeg_encoder::{ColorType, Encoder};

use keyblock_model::boxes::PercentBox;
use keyblock_model::key::Key;
use keyblock_model::registration::Homography;

use super::cut::{HIGHEST, WIDEST, detail};
use super::*;
use super::{cut, refine};
use crate::area::Area;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::plan::Plan;
use crate::tone::{self, Tone, paper};

/// A scene that can be seen at any place of the reference, px of its master: soft waves of several
/// directions, and rings that repeat nowhere.
fn scene(x: f64, y: f64) -> f64 {
    let wave = |a: f64, b: f64, turn: f64| libm::sin(x * a + y * b + turn);
    let mut grey = 150.0 + 25.0 * wave(0.022, 0.046, 0.4) + 20.0 * wave(-0.062, 0.034, 1.9);
    for at in 0..40 {
        let at = f64::from(at);
        let (cx, cy) = (
            600.0 * fraction(0.618_034 * at + 0.13),
            450.0 * fraction(0.754_878 * at + 0.57),
        );
        let radius = 5.0 + 13.0 * fraction(0.569_840 * at);
        if (x - cx).abs() > radius + 12.0 || (y - cy).abs() > radius + 12.0 {
            continue;
        }
        let from_ring = ((x - cx).hypot(y - cy) - radius).abs();
        grey -= 110.0 / (1.0 + libm::exp((from_ring - 2.0) * 1.4));
    }
    grey.clamp(0.0, 255.0)
}

fn fraction(x: f64) -> f64 {
    x - x.floor()
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn drawn(width: u32, height: u32, at: impl Fn(f64, f64) -> Option<f64>) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        let grey = at(f64::from(x), f64::from(y)).unwrap_or(30.0).round() as u8;
        Rgb([grey, grey, grey.saturating_sub(20)])
    })
}

static REFERENCE: LazyLock<RgbImage> = LazyLock::new(|| drawn(600, 450, |x, y| Some(scene(x, y))));

/// The scene as a camera held askew saw it, by [`bent`].
static PHOTOGRAPH: LazyLock<RgbImage> = LazyLock::new(|| seen_through(&bent()));

fn seen_through(onto_reference: &Homography) -> RgbImage {
    drawn(700, 550, |x, y| {
        let (x, y) = onto_reference.apply(x, y)?;
        let inside = (-0.5..599.5).contains(&x) && (-0.5..449.5).contains(&y);
        inside.then(|| scene(x, y))
    })
}

/// The photograph in other tones.
fn toned(tone: impl Fn(f64) -> f64) -> RgbImage {
    let mut photograph = PHOTOGRAPH.clone();
    for channel in photograph.iter_mut() {
        *channel = u8_of(tone(f64::from(*channel)));
    }
    photograph
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn u8_of(grey: f64) -> u8 {
    grey.round().clamp(0.0, 255.0) as u8
}

/// A turn of about four degrees, a little larger, in perspective.
fn bent() -> Homography {
    Homography::new([0.93, 0.065, -30.0, -0.06, 0.94, -10.0, 5e-5, -3e-5, 1.0]).unwrap()
}

fn psnr(one: &RgbImage, other: &RgbImage) -> f64 {
    assert_eq!(one.dimensions(), other.dimensions());
    let squares: f64 = one
        .as_raw()
        .iter()
        .zip(other.as_raw())
        .map(|(a, b)| (f64::from(*a) - f64::from(*b)).powi(2))
        .sum();
    let mean = squares / f64::from(u32::try_from(one.as_raw().len()).unwrap());
    10.0 * libm::log10(255.0 * 255.0 / mean.max(1e-9))
}

const BOX: Area = Area {
    left: 210.0,
    top: 150.0,
    width: 120.0,
    height: 90.0,
};

#[test]
fn a_part_of_a_bent_photograph_is_that_of_the_reference() {
    let (ours, theirs) = (&*REFERENCE, &*PHOTOGRAPH);
    let to = BOX.fitted(WIDEST, HIGHEST);
    for extent in [to, BOX.scaled(1.0), BOX.scaled(0.4)] {
        let plain = cut::cut(ours, &Homography::IDENTITY, BOX, extent);
        let found = cut::cut(theirs, &bent().inverse().unwrap(), BOX, extent);
        assert!(found.share() > 0.9999);
        let likeness = psnr(&plain.pixels, &found.pixels);
        assert!(likeness > 34.0, "{extent:?}: {likeness} dB");
    }
}

#[test]
fn a_plain_cut_of_the_reference_is_its_own_pixels() {
    let found = cut::cut(&REFERENCE, &Homography::IDENTITY, BOX, BOX.scaled(1.0));
    let view = image::imageops::crop_imm(&*REFERENCE, 210, 150, 120, 90).to_image();
    assert_eq!(found.pixels, view);
}

#[test]
fn a_mirrored_photograph_is_turned_over() {
    let over = Homography::new([-1.0, 0.0, 599.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0]).unwrap();
    let theirs = seen_through(&over);
    let plain = cut::cut(&REFERENCE, &Homography::IDENTITY, BOX, BOX.scaled(1.0));
    let found = cut::cut(&theirs, &over.inverse().unwrap(), BOX, BOX.scaled(1.0));
    assert_eq!(plain.pixels, found.pixels);
}

/// The shift that `refine` finds for a photograph whose map is wrong by `off`, in px of the
/// reference.
fn refined(off: (f64, f64), tone: impl Fn(f64) -> f64) -> (f64, f64) {
    let theirs = toned(tone);
    let wrong = Homography::new([1.0, 0.0, off.0, 0.0, 1.0, off.1, 0.0, 0.0, 1.0]).unwrap();
    let onto_reference = bent().then(&wrong).unwrap();
    refine::shift(
        (&*REFERENCE, &Homography::IDENTITY),
        (&theirs, &onto_reference.inverse().unwrap()),
        BOX,
        600.0,
    )
}

#[test]
fn a_part_is_moved_to_where_its_lines_lie() {
    for off in [(0.0, 0.0), (3.0, -2.0), (-4.5, 1.5), (0.0, 5.0)] {
        for tone in [
            |grey: f64| grey,
            |grey| 250.0 - 0.7 * grey,
            |grey| 60.0 + 0.3 * grey,
        ] {
            let (x, y) = refined(off, tone);
            let (dx, dy) = (x - off.0, y - off.1);
            assert!(dx.abs() < 0.6 && dy.abs() < 0.6, "{off:?}: {x}, {y}");
        }
    }
}

#[test]
#[allow(clippy::float_cmp, reason = "nothing moved is exactly nothing")]
fn what_cannot_be_found_is_left_where_the_map_puts_it() {
    // Blank, beyond the search, and a pattern that repeats every 5 px.
    assert_eq!(refined((3.0, 2.0), |_| 180.0), (0.0, 0.0));
    assert_eq!(refined((40.0, 0.0), |grey| grey), (0.0, 0.0));
    let hatched = |shift: f64| {
        drawn(300, 300, move |x, y| {
            let line = |at: f64| 60.0 * libm::sin(at * std::f64::consts::TAU / 5.0);
            Some(128.0 + line(x + shift) + line(y))
        })
    };
    let area = Area {
        left: 100.0,
        top: 100.0,
        width: 90.0,
        height: 90.0,
    };
    let map = Homography::IDENTITY;
    let moved = refine::shift((&hatched(0.0), &map), (&hatched(2.0), &map), area, 300.0);
    assert_eq!(moved, (0.0, 0.0));
    // A single straight line holds a part across, not along.
    let ruled = |at: f64| {
        drawn(300, 300, move |_, y| {
            Some(if y < at { 60.0 } else { 200.0 })
        })
    };
    let moved = refine::shift((&ruled(145.0), &map), (&ruled(147.0), &map), area, 300.0);
    assert_eq!(moved, (0.0, 0.0));
}

#[test]
fn a_part_is_never_larger_than_the_photograph_gives() {
    let small = Homography::scaling(0.25, 0.25).unwrap();
    let theirs = drawn(150, 113, |x, y| Some(scene(4.0 * x, 4.0 * y)));
    let found = detail(&theirs, &small, BOX).unwrap();
    assert_eq!(found.pixels.dimensions(), (30, 23));
    let whole = detail(&REFERENCE, &Homography::IDENTITY, BOX).unwrap();
    assert_eq!(whole.pixels.dimensions(), (120, 90));
}

#[test]
fn what_is_trimmed_is_ground_and_too_much_of_it_no_detail() {
    // The photograph ends in the middle of the part.
    let cut_at = |width: u32| drawn(width, 450, |x, y| Some(scene(x, y)));
    let two_thirds = detail(&cut_at(290), &Homography::IDENTITY, BOX).unwrap();
    assert!((two_thirds.share() - 2.0 / 3.0).abs() < 0.01);
    assert_eq!(two_thirds.pixels.get_pixel(119, 45).0, cut::GROUND);
    assert!(detail(&cut_at(260), &Homography::IDENTITY, BOX).is_none());
    assert!(detail(&cut_at(100), &Homography::IDENTITY, BOX).is_none());
}

/// A sheet of paper of one colour on a dark table, on it an image of another; 1000 × 800 px, the
/// image from 20 to 80 percent.
fn sheet(paper: [u8; 3], printed: [u8; 3], sheet_from: u32) -> RgbImage {
    RgbImage::from_fn(1000, 800, |x, y| {
        let within = |at: u32, side: u32, from: u32| {
            (side * from / 100..side * (100 - from) / 100).contains(&at)
        };
        Rgb(if within(x, 1000, 20) && within(y, 800, 20) {
            printed
        } else if within(x, 1000, sheet_from) && within(y, 800, sheet_from) {
            paper
        } else {
            [42, 40, 44]
        })
    })
}

fn image_box() -> PercentBox {
    PercentBox::new(20.0, 20.0, 60.0, 60.0).unwrap()
}

fn found_paper(picture: &RgbImage) -> Option<[u8; 3]> {
    let image = Area::on(image_box(), Extent::of(picture));
    paper::beside(picture, image, &Homography::IDENTITY).map(tone::cielab::Linear::to_srgb)
}

#[test]
fn bare_paper_is_found_beside_the_image_or_not_at_all() {
    let toned = [222, 208, 176];
    assert_eq!(found_paper(&sheet(toned, [90, 110, 130], 8)), Some(toned));
    // Trimmed to the image: only the table is beside it.
    assert_eq!(found_paper(&sheet(toned, [90, 110, 130], 20)), None);
    // Burnt out.
    assert_eq!(found_paper(&sheet([255; 3], [90, 110, 130], 8)), None);
    // Something printed is lighter than what surrounds it: a mount, not the paper.
    assert_eq!(found_paper(&sheet([165; 3], [235, 230, 220], 8)), None);
    // A chequered cloth is not smooth.
    let mut cloth = sheet(toned, [90, 110, 130], 8);
    for (x, y, pixel) in cloth.enumerate_pixels_mut() {
        if pixel.0 == toned && (x / 3 + y / 3) % 2 == 0 {
            *pixel = Rgb([180, 170, 150]);
        }
    }
    assert_eq!(found_paper(&cloth), None);
}

struct Folder(tempfile::TempDir);

impl Folder {
    fn new() -> Folder {
        Folder(tempfile::tempdir().unwrap())
    }

    fn keep(&self, name: &str, picture: &RgbImage) -> PathBuf {
        let mut bytes = Vec::new();
        let side = |side: u32| u16::try_from(side).unwrap();
        Encoder::new(&mut bytes, 95)
            .encode(
                picture.as_raw(),
                side(picture.width()),
                side(picture.height()),
                ColorType::Rgb,
            )
            .unwrap();
        let path = self.0.path().join(name);
        fs::write(&path, bytes).unwrap();
        path
    }

    fn details(&self, requests: &[DetailRequest]) -> Vec<Result<Detailed, Fault>> {
        let cache = self.0.path().join("cache");
        details_all(
            requests,
            &Plan::default(),
            &crate::Store::at(&cache),
            &|_, _| (),
        )
    }
}

fn key(key: &str) -> Key {
    key.parse().unwrap()
}

fn part(point: &str, percent: [f64; 4]) -> PointRequest {
    let [left, top, width, height] = percent;
    PointRequest {
        point: key(point),
        area: PercentBox::new(left, top, width, height).unwrap(),
        has_tone: point == "sky",
    }
}

fn request(source: &Path, reference: &Path, onto_reference: Homography) -> DetailRequest {
    DetailRequest {
        source: source.to_owned(),
        largest: None,
        reference: reference.to_owned(),
        onto_reference,
        points: vec![
            part("moon", [35.0, 30.0, 20.0, 20.0]),
            part("sky", [30.0, 30.0, 15.0, 20.0]),
        ],
        paper: Paper::BesideReferenceImage(image_box()),
    }
}

#[test]
fn details_of_two_sheets_line_up_and_are_found_again() {
    let folder = Folder::new();
    let first = folder.keep("a.jpg", &REFERENCE);
    let second = folder.keep("b.jpg", &toned(|grey| 255.0 - 0.8 * grey));
    let requests = [
        request(&first, &first, Homography::IDENTITY),
        request(&second, &first, bent()),
    ];
    let made = folder.details(&requests);
    for detailed in &made {
        let detailed = detailed.as_ref().unwrap();
        assert!(detailed.made);
        assert_eq!(detailed.details.keys().len(), 2);
        let moon = &detailed.details[&key("moon")];
        let opened = ImageReader::open(&moon.file).unwrap().decode().unwrap();
        assert_eq!((opened.width(), opened.height()), (moon.width, moon.height));
        // 120 × 90 px of the reference; the photograph shows them on a few more.
        assert!((120..135).contains(&moon.width), "{moon:?}");
        assert!((moon.width * 3).abs_diff(moon.height * 4) <= 3, "{moon:?}");
    }
    let again = folder.details(&requests);
    for (before, after) in made.into_iter().zip(again) {
        let (before, after) = (before.unwrap(), after.unwrap());
        assert!(!after.made);
        assert_eq!(before.details, after.details);
        assert_eq!(before.tones, after.tones);
    }
}

#[test]
fn a_limit_on_the_published_size_holds_for_details_too() {
    let folder = Folder::new();
    let path = folder.keep("a.jpg", &REFERENCE);
    let mut limited = request(&path, &path, Homography::IDENTITY);
    limited.largest = Some(300);
    let made = folder.details(&[limited]).remove(0).unwrap();
    // A fifth of 300 px across.
    assert_eq!(made.details[&key("moon")].width, 60);
}

#[test]
fn tones_are_relative_to_the_paper_and_need_one() {
    let folder = Folder::new();
    // One sheet under two exposures of its light, in the ratio of 2 to 3.
    let linear = |rgb: [u8; 3]| tone::cielab::Linear::from_srgb(rgb);
    let under = |rgb: [u8; 3]| tone::cielab::Linear(linear(rgb).0.map(|c| c / 1.5)).to_srgb();
    let (paper, ink) = ([238, 226, 205], [92, 104, 150]);
    let light = folder.keep("light.jpg", &sheet(paper, ink, 8));
    let dark = folder.keep("dark.jpg", &sheet(under(paper), under(ink), 8));
    let trimmed = folder.keep("trimmed.jpg", &sheet(paper, ink, 20));
    let made: Vec<Detailed> = folder
        .details(&[
            request(&light, &light, Homography::IDENTITY),
            request(&dark, &light, Homography::IDENTITY),
            request(&trimmed, &light, Homography::IDENTITY),
        ])
        .into_iter()
        .map(Result::unwrap)
        .collect();
    let tone = |at: usize| made[at].tones.get(&key("sky")).copied();
    let (one, other) = (tone(0).unwrap(), tone(1).unwrap());
    let lab = |tone: Tone| tone::cielab::Lab(tone.mean);
    let apart = tone::cielab::ciede2000(lab(one), lab(other));
    // The difference that 8 bits and JPEG leave; without dividing by the paper they would differ
    // far more.
    assert!(apart < 1.5, "{apart}: {one:?} {other:?}");
    let plain = tone::cielab::ciede2000(linear(ink).to_lab(), linear(under(ink)).to_lab());
    assert!(plain > 6.0, "{plain}");
    assert!(one.mean[0] < 60.0 && one.mean[2] < -20.0, "{one:?}");
    assert!(one.spread[0] < 1.0 && !one.paper_is_given);
    assert_eq!(tone(2), None);
    assert!(!made[0].tones.contains_key(&key("moon")), "nobody asked");
}

#[test]
fn paper_that_the_record_gives_is_taken() {
    let folder = Folder::new();
    let path = folder.keep("a.jpg", &sheet([210, 200, 180], [90, 110, 130], 8));
    let mut given = request(&path, &path, Homography::IDENTITY);
    given.paper = Paper::Given(PercentBox::new(10.0, 10.0, 6.0, 6.0).unwrap());
    let tone = folder.details(&[given]).remove(0).unwrap().tones[&key("sky")];
    assert!(tone.paper_is_given);
    let expected = tone::measured(
        [Rgb([90, 110, 130])].into_iter(),
        tone::cielab::Linear::from_srgb([210, 200, 180]),
    )
    .unwrap()
    .0;
    for (found, expected) in tone.mean.iter().zip(expected) {
        assert!((found - expected).abs() < 1.0, "{tone:?} {expected:?}");
    }
}

#[test]
fn the_number_of_threads_changes_nothing() {
    let folder = Folder::new();
    let first = folder.keep("a.jpg", &REFERENCE);
    let others: Vec<PathBuf> = (0..2u8)
        .map(|n| {
            let tone = move |grey: f64| grey - 10.0 * f64::from(n);
            folder.keep(&format!("{n}.jpg"), &toned(tone))
        })
        .collect();
    let requests: Vec<DetailRequest> = others
        .iter()
        .map(|other| request(other, &first, bent()))
        .collect();
    let files = |threads: usize| {
        let cache = folder.0.path().join(format!("cache-{threads}"));
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        let made = pool.unwrap().install(|| {
            details_all(
                &requests,
                &Plan::default(),
                &crate::Store::at(&cache),
                &|_, _| (),
            )
        });
        let files = made.into_iter().flat_map(|made| made.unwrap().details);
        files
            .map(|(_, d)| (d.name, fs::read(d.file).unwrap()))
            .collect::<Vec<_>>()
    };
    assert_eq!(files(1), files(3));
}

#[test]
fn a_reference_that_cannot_be_read_is_a_fault_of_each_that_needs_it() {
    let folder = Folder::new();
    let path = folder.keep("a.jpg", &REFERENCE);
    let nowhere = folder.0.path().join("none.jpg");
    let made = folder.details(&[request(&path, &nowhere, Homography::IDENTITY)]);
    assert_eq!(made, [Err(Fault::Missing)]);
}
