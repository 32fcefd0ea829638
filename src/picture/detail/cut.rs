//! Cutting a part out of a picture along the axes of another: through a map, into upright pixels.

use image::{Rgb, RgbImage};
use keyblock_model::registration::Homography;

use crate::area::Area;
use crate::extent::Extent;

/// The colour where the picture shows nothing: the grey behind plates on pages.
pub const GROUND: [u8; 3] = [0xCF; 3];

/// The most samples along each axis of one pixel: enough for a part that covers the whole of the
/// largest picture published by default.
const MOST_SAMPLES: u32 = 16;

/// A detail fits into this many px: sharp in a strip at twice the density, and on the point's page.
pub const WIDEST: u32 = 640;
pub const HIGHEST: u32 = 384;

/// A part of which the picture shows less than this is left out.
pub const LEAST_SHOWN: f64 = 0.5;

/// A part cut out.
#[derive(Clone, Debug)]
pub struct Cut {
    pub pixels: RgbImage,
    /// Which pixels the picture shows, row by row; the others are ground.
    pub shown: Vec<bool>,
}

impl Cut {
    /// The share of the part that the picture shows, 0 to 1.
    #[allow(clippy::cast_precision_loss, reason = "counts of pixels of one detail")]
    pub fn share(&self) -> f64 {
        let shown = self.shown.iter().filter(|shown| **shown).count();
        shown as f64 / self.shown.len().max(1) as f64
    }

    /// The pixels that the picture shows.
    pub fn seen(&self) -> impl Iterator<Item = Rgb<u8>> + '_ {
        let pixels = self.pixels.pixels().zip(&self.shown);
        pixels.filter_map(|(pixel, shown)| shown.then_some(*pixel))
    }
}

/// One detail; `None` where the picture shows too little of it. It is never larger than what the
/// picture gives.
pub fn detail(picture: &RgbImage, from_reference: &Homography, area: Area) -> Option<Cut> {
    let density = area.density(from_reference)?;
    let fitted = area.fitted(WIDEST, HIGHEST);
    let whole = area.scaled(density);
    let to = if whole.width < fitted.width {
        whole
    } else {
        fitted
    };
    let cut = cut(picture, from_reference, area, to);
    (cut.share() >= LEAST_SHOWN).then_some(cut)
}

/// Cuts `area` out of `picture`; `from_reference` maps px of the reference to px of the picture.
///
/// Where pixels of the picture are finer than those of the cut, every pixel is the mean of samples
/// laid evenly over it, one a pixel of the picture or more; otherwise it is taken by cubic
/// interpolation (Catmull-Rom). Both work on encoded values, as all scaling here does.
pub fn cut(picture: &RgbImage, from_reference: &Homography, area: Area, to: Extent) -> Cut {
    let step = (
        area.width / f64::from(to.width),
        area.height / f64::from(to.height),
    );
    let density = area.density(from_reference).unwrap_or(0.0) * step.0.max(step.1);
    let samples = samples(density);
    let mut pixels = RgbImage::from_pixel(to.width, to.height, Rgb(GROUND));
    let mut shown = Vec::with_capacity(pixels.len() / 3);
    for (x, y, pixel) in pixels.enumerate_pixels_mut() {
        let (mut sum, mut met) = ([0.0; 3], 0u32);
        for row in 0..samples {
            for column in 0..samples {
                let within = |at: u32| (f64::from(at) + 0.5) / f64::from(samples);
                let on_reference = (
                    area.left + (f64::from(x) + within(column)) * step.0 - 0.5,
                    area.top + (f64::from(y) + within(row)) * step.1 - 0.5,
                );
                let Some(at) = from_reference.apply(on_reference.0, on_reference.1) else {
                    continue;
                };
                if !is_inside(picture, at) {
                    continue;
                }
                let sample = if samples == 1 {
                    cubic(picture, at)
                } else {
                    linear(picture, at)
                };
                met += 1;
                for (sum, sample) in sum.iter_mut().zip(sample) {
                    *sum += sample;
                }
            }
        }
        let is_shown = met * 2 >= samples * samples;
        shown.push(is_shown);
        if is_shown {
            *pixel = Rgb(sum.map(|sum| encoded(sum / f64::from(met.max(1)))));
        }
    }
    Cut { pixels, shown }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a few samples"
)]
fn samples(density: f64) -> u32 {
    // A density just above one pixel does not need four samples.
    (density - 0.05).ceil().clamp(1.0, f64::from(MOST_SAMPLES)) as u32
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to 0..=255 before"
)]
fn encoded(value: f64) -> u8 {
    value.round().clamp(0.0, 255.0) as u8
}

/// Whether a place lies on the picture, its outermost pixels whole.
fn is_inside(picture: &RgbImage, (x, y): (f64, f64)) -> bool {
    let within = |at: f64, side: u32| at >= -0.5 && at <= f64::from(side) - 0.5;
    within(x, picture.width()) && within(y, picture.height())
}

/// A pixel, or the nearest one on the picture's edge.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the picture before"
)]
fn at(picture: &RgbImage, x: f64, y: f64) -> [f64; 3] {
    let held = |at: f64, side: u32| at.clamp(0.0, f64::from(side.max(1) - 1)) as u32;
    let pixel = picture.get_pixel(held(x, picture.width()), held(y, picture.height()));
    pixel.0.map(f64::from)
}

fn linear(picture: &RgbImage, (x, y): (f64, f64)) -> [f64; 3] {
    weighted(picture, (x, y), &[0.0, 1.0], |t| [1.0 - t, t])
}

fn cubic(picture: &RgbImage, (x, y): (f64, f64)) -> [f64; 3] {
    weighted(picture, (x, y), &[-1.0, 0.0, 1.0, 2.0], |t| {
        [
            t * (-0.5 + t * (1.0 - 0.5 * t)),
            1.0 + t * t * (1.5 * t - 2.5),
            t * (0.5 + t * (2.0 - 1.5 * t)),
            t * t * (0.5 * t - 0.5),
        ]
    })
}

fn weighted<const N: usize>(
    picture: &RgbImage,
    (x, y): (f64, f64),
    offsets: &[f64; N],
    weights: impl Fn(f64) -> [f64; N],
) -> [f64; 3] {
    let (left, top) = (x.floor(), y.floor());
    let (across, down) = (weights(x - left), weights(y - top));
    let mut sum = [0.0; 3];
    for (row, weight) in offsets.iter().zip(down) {
        for (column, share) in offsets.iter().zip(across) {
            let pixel = at(picture, left + column, top + row);
            for (sum, channel) in sum.iter_mut().zip(pixel) {
                *sum += channel * weight * share;
            }
        }
    }
    sum
}
