//! Cutting a part out of a picture along the axes of another: through a map, into upright pixels.

use image::{Rgb, RgbImage};
use keyblock_model::registration::Homography;

use crate::derive::Extent;

/// What stands where the picture shows nothing: the grey of the ground under plates.
pub const GROUND: [u8; 3] = [0xCF; 3];

/// The most samples along each axis of one pixel: enough for a part that covers the whole of the
/// largest picture published by default.
const MOST_SAMPLES: u32 = 16;

/// A part of the reference picture, in px of its master, edge to edge: the edge of the first pixel
/// lies at 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// From the left edge, in px.
    pub left: f64,
    /// From the top edge, in px.
    pub top: f64,
    /// Its width in px.
    pub width: f64,
    /// Its height in px.
    pub height: f64,
}

impl Area {
    /// The same, moved in px of the reference.
    #[must_use]
    pub fn moved(self, (x, y): (f64, f64)) -> Area {
        Area {
            left: self.left + x,
            top: self.top + y,
            ..self
        }
    }

    /// The same with `margin` px of the reference on every side.
    #[must_use]
    pub fn with_margin(self, margin: f64) -> Area {
        Area {
            left: self.left - margin,
            top: self.top - margin,
            width: self.width + 2.0 * margin,
            height: self.height + 2.0 * margin,
        }
    }

    /// The largest extent of this shape that fits into `width` × `height` px.
    pub fn fitted(self, width: u32, height: u32) -> Extent {
        let scale = (f64::from(width) / self.width).min(f64::from(height) / self.height);
        self.scaled(scale)
    }

    /// Its extent where a px of the reference takes `scale` px; no side under 1.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to what a JPEG can hold"
    )]
    pub fn scaled(self, scale: f64) -> Extent {
        let side = |length: f64| (length * scale).round().clamp(1.0, f64::from(u16::MAX)) as u32;
        Extent {
            width: side(self.width),
            height: side(self.height),
        }
    }

    /// How many px of the picture one px of the reference takes at the middle of the part, by area;
    /// `None` where the part lies at infinity.
    pub fn density(self, from_reference: &Homography) -> Option<f64> {
        let (x, y) = (
            self.left + self.width / 2.0 - 0.5,
            self.top + self.height / 2.0 - 0.5,
        );
        let middle = from_reference.apply(x, y)?;
        let right = from_reference.apply(x + 1.0, y)?;
        let below = from_reference.apply(x, y + 1.0)?;
        let area = (right.0 - middle.0) * (below.1 - middle.1)
            - (right.1 - middle.1) * (below.0 - middle.0);
        Some(area.abs().sqrt())
    }
}

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

/// Cuts `area` out of `picture`, of which `from_reference` says where each px of the reference lies.
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
    // A hair above one pixel is not worth four samples.
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
