//! Photographs of invented prints, in pairs with an exactly known map from one to the other.
//!
//! A print is cut in blocks (`blocks`: key lines, tone areas, border and title), an impression is pulled
//! from them in its own inks, worn, shifted, foxed and trimmed (`impression`), and photographed on its mount
//! (`camera`). All of it follows from seeds.

#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::many_single_char_names,
    reason = "drawing turns coordinates into pixels and back all the time"
)]

pub mod blocks;
pub mod camera;
pub mod impression;

use image::GrayImage;
use keyblock::model::registration::Homography;

use blocks::Blocks;
use camera::Camera;
use impression::Impression;

/// How hard a pair is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    Easy,
    Medium,
    Hard,
}

/// Two photographs, and the map from the picture to the reference.
pub struct TruePair {
    pub reference: GrayImage,
    pub picture: GrayImage,
    pub truth: Homography,
}

/// Two impressions of one design, by two cameras.
pub fn pair(class: Class, seed: u64) -> TruePair {
    let blocks = Blocks::cut(seed, None);
    let mut chance = Chance::new(seed ^ 0x7061_6972);
    let scale = match class {
        Class::Easy => chance.between(0.9, 1.1),
        Class::Medium => chance.between(0.75, 1.33),
        Class::Hard => chance.between(0.6, 1.6),
    };
    // Where the picture shows the sheet larger, the reference leaves more of the mount around it.
    let fill = chance.between(0.86, 0.95);
    let (of_reference, of_picture) = (fill / scale.max(1.0), fill * scale.min(1.0));
    let first = Impression::of(Class::Easy, &blocks, &mut chance);
    let second = Impression::of(class, &blocks, &mut chance);
    let before = Camera::of(Class::Easy, of_reference, &mut chance);
    let after = Camera::of(class, of_picture, &mut chance);
    let (reference, onto) = before.photograph(&first.pull(&blocks), &first);
    let (picture, from) = after.photograph(&second.pull(&blocks), &second);
    let truth = from.inverse().unwrap().then(&onto).unwrap();
    TruePair {
        reference,
        picture,
        truth,
    }
}

/// A photograph of one design. Designs of one series share format, border and title.
pub fn photograph(class: Class, seed: u64, series: Option<u64>) -> GrayImage {
    let blocks = Blocks::cut(seed, series);
    let mut chance = Chance::new(seed ^ 0x7068_6f74);
    let fill = chance.between(0.75, 0.95);
    let impression = Impression::of(class, &blocks, &mut chance);
    let camera = Camera::of(class, fill, &mut chance);
    camera.photograph(&impression.pull(&blocks), &impression).0
}

/// The error of `found` against the exact map: the mean over the picture's corners, carried back into the picture,
/// px.
pub fn corner_error(pair: &TruePair, found: &Homography) -> f64 {
    let (width, height) = pair.picture.dimensions();
    let (right, bottom) = (f64::from(width) - 1.0, f64::from(height) - 1.0);
    let back = pair.truth.inverse().unwrap();
    let corners = [(0.0, 0.0), (right, 0.0), (0.0, bottom), (right, bottom)];
    let sum: f64 = corners
        .into_iter()
        .map(|(x, y)| {
            let carried = found.apply(x, y).and_then(|(u, v)| back.apply(u, v));
            carried.map_or(1e9, |(u, v)| libm::hypot(u - x, v - y))
        })
        .sum();
    sum / 4.0
}

/// Pseudo-random numbers from a seed: SplitMix64.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Chance {
        // Mixed first: neighbouring seeds would otherwise give the same numbers, one step apart.
        let mut chance = Chance(seed.wrapping_mul(0xd134_2543_de82_ef95));
        chance.part();
        Chance(chance.0 ^ chance.part().to_bits().wrapping_mul(0xff51_afd7_ed55_8ccd))
    }

    /// From 0 to 1.
    pub fn part(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.part()
    }

    pub fn happens(&mut self, probability: f64) -> bool {
        self.part() < probability
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.part() * end as f64) as usize
    }

    /// About normal: the sum of four.
    pub fn noise(&mut self) -> f64 {
        (self.part() + self.part() + self.part() + self.part() - 2.0) * 1.732
    }
}
