//! Bare paper: where the record does not say, the margin beside the printed image is searched.
//!
//! Small windows are laid round the image, close to it, so that they lie on the sheet wherever it has
//! a margin. Those that are smooth, bright and not burnt out vote; the colour that most of them share
//! is taken for the paper's. No paper is found where few agree, where they agree on one side only, or where
//! something printed is lighter: the windows then probably show a mount, a table or a shadow.
//!
//! Not recognised: a sheet trimmed to the image and laid on a smooth ground lighter than anything on it. A
//! record can say where the paper is bare.

use image::RgbImage;
use keyblock_model::registration::Homography;

use super::cielab::{Lab, Linear, ciede2000};
use crate::area::Area;

/// The side of a window and its distances from the image, in parts of the image's long side.
const WINDOW: f64 = 0.012;
const DISTANCES: [f64; 3] = [0.018, 0.028, 0.038];

/// How many windows stand along a side at each distance, and how many samples across a window.
const ALONG: u32 = 24;
const SAMPLES: u32 = 8;

/// A window is smooth where the standard deviation of L* is no more than this; laid lines and the
/// grain of a photograph stay below.
const ROUGHEST: f64 = 2.5;

/// No paper is darker than this L* in a usable photograph, toned or not.
const DARKEST: f64 = 62.0;

/// A channel above this is burnt out: its true value is not known.
const BURNT: u8 = 252;

/// Windows within this CIEDE2000 of each other count as the same paper.
const ALIKE: f64 = 4.0;

/// The least share of all windows that must agree, and on how many sides.
const LEAST_SHARE: f64 = 0.15;
const LEAST_SIDES: usize = 2;

/// How much lighter in L* than the paper the lightest twentieth of the image may be.
const LIGHTER: f64 = 5.0;

/// The mean light of a part of the picture: the paper, where a record says it is bare there. `None`
/// where it is burnt out or lies outside.
#[must_use]
pub fn given(picture: &RgbImage, area: Area) -> Option<Linear> {
    let window = Window::at(picture, |u, v| {
        Some((
            area.left + u * area.width - 0.5,
            area.top + v * area.height - 0.5,
        ))
    })?;
    (window.burnt < 0.5).then_some(window.light)
}

/// The paper beside a printed image, whose edges are those of `image` in some frame (the reference
/// picture, or the picture itself), which `from_frame` maps onto the picture.
#[must_use]
pub fn beside(picture: &RgbImage, image: Area, from_frame: &Homography) -> Option<Linear> {
    let unit = image.width.max(image.height);
    let side = WINDOW * unit;
    let mut met: Vec<(usize, Window)> = Vec::new();
    let mut all = 0u32;
    for distance in DISTANCES {
        for place in 0..ALONG {
            let along = (f64::from(place) + 0.5) / f64::from(ALONG);
            let (x, y) = (
                image.left + along * image.width,
                image.top + along * image.height,
            );
            let away = distance * unit;
            let middles = [
                (x, image.top - away),
                (image.left + image.width + away, y),
                (x, image.top + image.height + away),
                (image.left - away, y),
            ];
            for (edge, middle) in middles.into_iter().enumerate() {
                all += 1;
                let window = Window::at(picture, |u, v| {
                    from_frame.apply(
                        middle.0 + (u - 0.5) * side - 0.5,
                        middle.1 + (v - 0.5) * side - 0.5,
                    )
                });
                met.extend(window.filter(Window::may_be_paper).map(|w| (edge, w)));
            }
        }
    }
    let alike = |one: &Window| {
        let near = met
            .iter()
            .filter(move |(_, w)| ciede2000(one.lab, w.lab) <= ALIKE);
        near.collect::<Vec<_>>()
    };
    // The first of the largest groups, so that equal votes are settled by place.
    let mut group: Vec<&(usize, Window)> = Vec::new();
    for (_, window) in &met {
        let near = alike(window);
        if near.len() > group.len() {
            group = near;
        }
    }
    let mut sides: Vec<usize> = group.iter().map(|(edge, _)| *edge).collect();
    sides.sort_unstable();
    sides.dedup();
    let votes = f64::from(u32::try_from(group.len()).unwrap_or(u32::MAX));
    if sides.len() < LEAST_SIDES || votes < LEAST_SHARE * f64::from(all) {
        return None;
    }
    let mut light = [0.0; 3];
    for (_, window) in &group {
        for (sum, channel) in light.iter_mut().zip(window.light.0) {
            *sum += channel / votes;
        }
    }
    let paper = Linear(light);
    let Lab([lightness, ..]) = paper.to_lab();
    let lightest = lightest_printed(picture, image, from_frame)?;
    (lightest <= lightness + LIGHTER).then_some(paper)
}

/// The L* that a twentieth of the printed image exceeds.
fn lightest_printed(picture: &RgbImage, image: Area, from_frame: &Homography) -> Option<f64> {
    const GRID: u32 = 64;
    let mut met = Vec::new();
    for row in 0..GRID {
        for column in 0..GRID {
            let within = |at: u32| (f64::from(at) + 0.5) / f64::from(GRID);
            let place = from_frame.apply(
                image.left + within(column) * image.width - 0.5,
                image.top + within(row) * image.height - 0.5,
            );
            let pixel = place.and_then(|place| nearest(picture, place));
            met.extend(pixel.map(|rgb| Linear::from_srgb(rgb).to_lab().0[0]));
        }
    }
    met.sort_unstable_by(f64::total_cmp);
    met.get(met.len() * 19 / 20).copied()
}

/// The measurements of one window.
struct Window {
    light: Linear,
    lab: Lab,
    /// The standard deviation of L*.
    roughness: f64,
    /// The share of samples that are burnt out.
    burnt: f64,
}

impl Window {
    /// A window whose places, from 0 to 1 across and down, `place` finds on the picture; `None` where
    /// any lies outside.
    fn at(picture: &RgbImage, place: impl Fn(f64, f64) -> Option<(f64, f64)>) -> Option<Window> {
        let count = f64::from(SAMPLES * SAMPLES);
        let (mut light, mut sum, mut squares, mut burnt) = ([0.0; 3], 0.0, 0.0, 0.0);
        for row in 0..SAMPLES {
            for column in 0..SAMPLES {
                let within = |at: u32| (f64::from(at) + 0.5) / f64::from(SAMPLES);
                let rgb = nearest(picture, place(within(column), within(row))?)?;
                let sample = Linear::from_srgb(rgb);
                for (sum, channel) in light.iter_mut().zip(sample.0) {
                    *sum += channel / count;
                }
                let Lab([lightness, ..]) = sample.to_lab();
                sum += lightness;
                squares += lightness * lightness;
                if rgb.iter().any(|channel| *channel >= BURNT) {
                    burnt += 1.0 / count;
                }
            }
        }
        let mean = sum / count;
        let light = Linear(light);
        Some(Window {
            light,
            lab: light.to_lab(),
            roughness: (squares / count - mean * mean).max(0.0).sqrt(),
            burnt,
        })
    }

    fn may_be_paper(&self) -> bool {
        self.roughness <= ROUGHEST && self.lab.0[0] >= DARKEST && self.burnt <= 0.02
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "checked to lie on the picture"
)]
fn nearest(picture: &RgbImage, (x, y): (f64, f64)) -> Option<[u8; 3]> {
    let (x, y) = (x.round(), y.round());
    let inside =
        x >= 0.0 && y >= 0.0 && x < f64::from(picture.width()) && y < f64::from(picture.height());
    inside.then(|| picture.get_pixel(x as u32, y as u32).0)
}
