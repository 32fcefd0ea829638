//! Corrects the place of a detail by the last few pixels, which one map of the whole picture cannot: paper
//! cockles and lenses distort.
//!
//! Around a point a picture is moved so that its lines lie on those of the reference. Gradients are compared,
//! not tones, which differ with ink, light and wiping; by zero-mean normalised correlation. Where no shift
//! clearly fits better than the map alone, the picture is not moved: the part may be blank, its pattern may
//! repeat, or this state may not have the detail.

use image::RgbImage;
use keyblock_model::registration::Homography;

use super::cut;
use crate::area::Area;
use crate::extent::Extent;

/// How far a part may be moved, in px of the reference at [`WORKING`] px.
const FARTHEST: f64 = 6.0;

/// The long side of the reference in px at which the search is made.
pub const WORKING: f64 = 1000.0;

/// A part longer than this at working size is searched on fewer pixels: one shift of a large part
/// is known well enough from them.
const LONGEST: f64 = 256.0;

/// How much around a point is compared too, px at working size on every side. It helps above all where the
/// point itself is what changed.
const SURROUND: f64 = 16.0;

/// The least mean steepness of a part, in steps of 8-bit grey a px: below that nothing is drawn there.
const LEAST_STEEPNESS: f64 = 0.5;

/// The least correlation of a fit that is used.
const LEAST_FIT: f64 = 0.35;

/// How much better than the map alone a fit must be.
const LEAST_GAIN: f64 = 0.05;

/// The amount that each px of shift takes from a fit, so that of two nearly equal fits the nearer is taken.
const COST_OF_A_PX: f64 = 0.006;

/// How much better than any other a fit must be where the other lies 3 px or more away: otherwise the
/// pattern repeats, or consists of parallel lines, and its place is not determined.
const LEAST_LEAD: f64 = 0.03;

/// How far, in px of the reference's master, `area` must be moved for `picture` to show there what
/// the reference shows; nothing where that is not clear.
///
/// `reference` is the reference picture with the map from its master to it; `from_reference` leads
/// from that master to `picture`. `master` is the long side of the master in px.
pub fn shift(
    reference: (&RgbImage, &Homography),
    picture: (&RgbImage, &Homography),
    area: Area,
    master: f64,
) -> (f64, f64) {
    search(reference, picture, area, master).unwrap_or((0.0, 0.0))
}

fn search(
    reference: (&RgbImage, &Homography),
    picture: (&RgbImage, &Homography),
    area: Area,
    master: f64,
) -> Option<(f64, f64)> {
    let working = (WORKING / master).min(1.0);
    let around = area.with_margin(SURROUND / working);
    let longest = around.width.max(around.height) * working;
    let scale = working * (LONGEST / longest).min(1.0);
    let reach = reach(FARTHEST * scale / working);

    let ours = Steepness::of(reference, around, scale, 0)?;
    let theirs = Steepness::of(picture, around, scale, reach)?;
    if ours.mean < LEAST_STEEPNESS || theirs.mean < LEAST_STEEPNESS {
        return None;
    }
    let side = 2 * reach + 1;
    let mut fits = Vec::with_capacity(side * side);
    for y in 0..side {
        for x in 0..side {
            fits.push(ours.correlation(&theirs, x, y));
        }
    }
    let fit = |x: usize, y: usize| fits.get(y * side + x).copied().unwrap_or(-1.0);
    let from_middle = |at: usize| at.abs_diff(reach);
    let cost = |x: usize, y: usize| {
        let away = distance(from_middle(x), from_middle(y));
        away * COST_OF_A_PX * working / scale
    };
    let mut best = (reach, reach);
    for y in 0..side {
        for x in 0..side {
            if fit(x, y) - cost(x, y) > fit(best.0, best.1) - cost(best.0, best.1) {
                best = (x, y);
            }
        }
    }
    let top = fit(best.0, best.1);
    // The likeness still rises at the edge of the search, so a better fit may lie outside.
    let is_at_the_edge = [best.0, best.1]
        .iter()
        .any(|at| *at == 0 || *at == side - 1);
    let is_clear = (0..side * side).all(|at| {
        let (x, y) = (at % side, at / side);
        let is_near = distance(x.abs_diff(best.0), y.abs_diff(best.1)) < 3.0;
        is_near || fit(x, y) + LEAST_LEAD <= top
    });
    let gained = top - fit(reach, reach);
    if is_at_the_edge
        || !is_clear
        || top < LEAST_FIT
        || (best != (reach, reach) && gained < LEAST_GAIN)
    {
        return None;
    }
    let x = offset(best.0, reach) + peak(fit(best.0 - 1, best.1), top, fit(best.0 + 1, best.1));
    let y = offset(best.1, reach) + peak(fit(best.0, best.1 - 1), top, fit(best.0, best.1 + 1));
    Some((x / scale, y / scale))
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a few pixels"
)]
fn reach(px: f64) -> usize {
    px.ceil().clamp(1.0, FARTHEST) as usize
}

#[allow(clippy::cast_precision_loss, reason = "a few pixels")]
fn distance(x: usize, y: usize) -> f64 {
    ((x * x + y * y) as f64).sqrt()
}

#[allow(clippy::cast_precision_loss, reason = "a few pixels")]
fn offset(at: usize, middle: usize) -> f64 {
    at as f64 - middle as f64
}

/// Where between pixels a parabola through three neighbours is highest, from the middle one.
fn peak(before: f64, middle: f64, after: f64) -> f64 {
    let bend = before - 2.0 * middle + after;
    if bend < -1e-9 {
        ((before - after) / (2.0 * bend)).clamp(-0.5, 0.5)
    } else {
        0.0
    }
}

/// The steepness of a part, pixel by pixel, limited above so that one hard edge does not outweigh all else.
struct Steepness {
    width: usize,
    height: usize,
    values: Vec<f32>,
    /// The mean before it was limited, in steps of grey a px.
    mean: f64,
}

impl Steepness {
    /// Of `area` in a picture, `scale` px for one of the reference's master, with `reach` px more on
    /// every side; `None` where the picture does not show all of it.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        reason = "grey of 8 bits; a few thousand pixels"
    )]
    fn of(
        (picture, map): (&RgbImage, &Homography),
        area: Area,
        scale: f64,
        reach: usize,
    ) -> Option<Steepness> {
        let inner = area.scaled(scale);
        // One px more, where differences need neighbours; whole px, so that both grids agree.
        let margin = reach as f64 + 1.0;
        let step = (
            area.width / f64::from(inner.width),
            area.height / f64::from(inner.height),
        );
        let outer = Area {
            left: area.left - margin * step.0,
            top: area.top - margin * step.1,
            width: area.width + 2.0 * margin * step.0,
            height: area.height + 2.0 * margin * step.1,
        };
        let more = 2 * u32::try_from(reach + 1).ok()?;
        let extent = Extent {
            width: inner.width + more,
            height: inner.height + more,
        };
        let cut = cut::cut(picture, map, outer, extent);
        if cut.share() < 0.98 {
            return None;
        }
        let grey: Vec<f32> = cut
            .pixels
            .pixels()
            .map(|p| {
                let [r, g, b] = p.0.map(f32::from);
                0.299 * r + 0.587 * g + 0.114 * b
            })
            .collect();
        let wide = extent.width as usize;
        let (width, height) = (wide - 2, extent.height as usize - 2);
        let mut values = Vec::with_capacity(width * height);
        for y in 0..height {
            for x in 0..width {
                // Scharr's differences, which turn with the picture better than Sobel's.
                let at = |dx: usize, dy: usize| {
                    grey.get((y + dy) * wide + x + dx).copied().unwrap_or(0.0)
                };
                let across = 3.0 * (at(2, 0) - at(0, 0))
                    + 10.0 * (at(2, 1) - at(0, 1))
                    + 3.0 * (at(2, 2) - at(0, 2));
                let down = 3.0 * (at(0, 2) - at(0, 0))
                    + 10.0 * (at(1, 2) - at(1, 0))
                    + 3.0 * (at(2, 2) - at(2, 0));
                values.push((across * across + down * down).sqrt() / 32.0);
            }
        }
        let sum: f64 = values.iter().map(|v| f64::from(*v)).sum();
        let mean = sum / values.len().max(1) as f64;
        let floor = mean as f32 + 1e-3;
        for value in &mut values {
            *value /= *value + floor;
        }
        Some(Steepness {
            width,
            height,
            values,
            mean,
        })
    }

    /// The zero-mean normalised correlation with the part of `other` whose corner lies at `x`, `y`:
    /// -1 to 1.
    #[allow(clippy::cast_precision_loss, reason = "a few thousand pixels")]
    fn correlation(&self, other: &Steepness, x: usize, y: usize) -> f64 {
        let (mut a, mut b, mut aa, mut bb, mut ab) = (0.0, 0.0, 0.0, 0.0, 0.0);
        let ours = self.values.chunks_exact(self.width.max(1));
        let theirs = other.values.chunks_exact(other.width.max(1)).skip(y);
        for (ours, theirs) in ours.zip(theirs) {
            let theirs = theirs.get(x..).unwrap_or_default();
            for (one, two) in ours.iter().zip(theirs) {
                let (one, two) = (f64::from(*one), f64::from(*two));
                a += one;
                b += two;
                aa += one * one;
                bb += two * two;
                ab += one * two;
            }
        }
        let count = (self.width * self.height).max(1) as f64;
        let spread = (aa - a * a / count) * (bb - b * b / count);
        if spread > 1e-9 {
            (ab - a * b / count) / spread.sqrt()
        } else {
            0.0
        }
    }
}
