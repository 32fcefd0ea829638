//! A camera over a sheet on its mount: turn, scale, perspective, light, blur, noise and a JPEG.

use image::GrayImage;
use image::codecs::jpeg::JpegEncoder;
use keyblock::model::registration::Homography;

use super::blocks::SHEET;
use super::impression::Impression;
use super::{Chance, Class};

/// The longest side of every photograph, px: the working size.
const SIDE: u32 = 1000;

/// The position and settings of a camera.
pub struct Camera {
    size: (u32, u32),
    /// From the sheet to the photograph.
    sees: Homography,
    mount: f64,
    /// Whether a ruler lies below the sheet, the same on every photograph that has one.
    has_ruler: bool,
    /// How light falls off to the right and downwards.
    light: (f64, f64),
    blur_px: f64,
    noise: f64,
    /// Of the JPEG it writes, 1 to 100.
    quality: u8,
    seed: u64,
}

impl Camera {
    /// A camera that shows the sheet over `fill` of its frame.
    pub fn of(class: Class, fill: f64, chance: &mut Chance) -> Camera {
        let (turn, tilt, light, blur, noise, quality): (f64, f64, f64, f64, f64, u8) = match class {
            Class::Easy => (1.5, 1e-5, 0.06, 0.6, 2.0, 92),
            Class::Medium => (4.0, 6e-5, 0.2, 1.0, 5.0, 80),
            Class::Hard => (6.0, 1.2e-4, 0.4, 1.7, 9.0, 60),
        };
        let size = (
            SIDE,
            (f64::from(SIDE) * chance.between(0.7, 0.78)).round() as u32,
        );
        let scale = fill * f64::from(SIDE) / SHEET.0 as f64;
        let angle = chance.between(-turn, turn).to_radians();
        let (sin, cos) = (libm::sin(angle) * scale, libm::cos(angle) * scale);
        let room = (1.0 - fill) * 0.4;
        let middle = (
            f64::from(size.0) * (0.5 + chance.between(-room, room)),
            f64::from(size.1) * (0.5 + chance.between(-room, room)),
        );
        let centred = Homography::new([
            1.0,
            0.0,
            -(SHEET.0 as f64) / 2.0,
            0.0,
            1.0,
            -(SHEET.1 as f64) / 2.0,
            0.0,
            0.0,
            1.0,
        ]);
        let tilted = [
            cos,
            -sin,
            0.0,
            sin,
            cos,
            0.0,
            chance.between(-tilt, tilt),
            chance.between(-tilt, tilt),
            1.0,
        ];
        let placed = Homography::new([1.0, 0.0, middle.0, 0.0, 1.0, middle.1, 0.0, 0.0, 1.0]);
        let sees = centred
            .unwrap()
            .then(&Homography::new(tilted).unwrap())
            .unwrap()
            .then(&placed.unwrap())
            .unwrap();
        Camera {
            size,
            sees,
            mount: chance.between(50.0, 235.0),
            has_ruler: chance.happens(0.4),
            light: (chance.between(-light, light), chance.between(-light, light)),
            blur_px: chance.between(0.4, blur),
            noise: chance.between(0.5, noise),
            quality,
            seed: chance.below(1 << 30) as u64,
        }
    }

    /// The photograph, and the map from the sheet to it.
    pub fn photograph(&self, sheet: &[f32], impression: &Impression) -> (GrayImage, Homography) {
        let mut chance = Chance::new(self.seed);
        let (width, height) = (self.size.0 as usize, self.size.1 as usize);
        let back = self.sees.inverse().unwrap();
        let mut seen = Vec::with_capacity(width * height);
        for y in 0..height {
            for x in 0..width {
                let mut sum = 0.0;
                for aside in [-0.25, 0.25] {
                    sum += self.at(&back, sheet, impression, x as f64 + aside, y as f64 + aside);
                }
                seen.push(sum / 2.0);
            }
        }
        let blurred = blurred(&seen, width, height, self.blur_px);
        let photograph = GrayImage::from_fn(self.size.0, self.size.1, |x, y| {
            let (right, down) = (
                f64::from(x) / f64::from(self.size.0) - 0.5,
                f64::from(y) / f64::from(self.size.1) - 0.5,
            );
            let lit = 1.0 + self.light.0 * right + self.light.1 * down;
            let value = f64::from(blurred[y as usize * width + x as usize]) * lit;
            image::Luma([(value + chance.noise() * self.noise).clamp(0.0, 255.0) as u8])
        });
        (self.through_jpeg(&photograph), self.sees)
    }

    /// The photograph as decoded from its file.
    fn through_jpeg(&self, photograph: &GrayImage) -> GrayImage {
        let mut file = Vec::new();
        let encoder = JpegEncoder::new_with_quality(&mut file, self.quality);
        photograph.write_with_encoder(encoder).unwrap();
        image::load_from_memory(&file).unwrap().into_luma8()
    }

    /// The grey at a place of the photograph: of the sheet, the ruler or the mount.
    fn at(&self, back: &Homography, sheet: &[f32], impression: &Impression, x: f64, y: f64) -> f32 {
        let [left, top, right, bottom] = impression.kept;
        let Some((u, v)) = back.apply(x, y) else {
            return self.mount as f32;
        };
        let (wide, high) = (SHEET.0 as f64 - 1.0, SHEET.1 as f64 - 1.0);
        if u >= left && v >= top && u < right.min(wide) && v < bottom.min(high) {
            let (column, row) = (u as usize, v as usize);
            let (fx, fy) = ((u - column as f64) as f32, (v - row as f64) as f32);
            let at = row * SHEET.0 + column;
            let along = |at: usize| sheet[at] * (1.0 - fx) + sheet[at + 1] * fx;
            return along(at) * (1.0 - fy) + along(at + SHEET.0) * fy;
        }
        let from_bottom = f64::from(self.size.1) - y;
        if self.has_ruler && from_bottom < 26.0 && x > 200.0 && x < 800.0 {
            let tick = (x as usize).is_multiple_of(8) && from_bottom > 12.0;
            return if tick { 20.0 } else { 225.0 };
        }
        self.mount as f32
    }
}

/// A Gaussian blur of `sigma` px.
fn blurred(seen: &[f32], width: usize, height: usize, sigma: f64) -> Vec<f32> {
    let reach = (sigma * 2.5).ceil() as isize;
    let taps: Vec<f32> = (-reach..=reach)
        .map(|k| libm::exp(-0.5 * (k as f64 / sigma) * (k as f64 / sigma)) as f32)
        .collect();
    let sum: f32 = taps.iter().sum();
    let pass = |from: &[f32], step: usize, side: usize, at: &dyn Fn(usize) -> usize| {
        let mut out = vec![0.0; from.len()];
        for (place, to) in out.iter_mut().enumerate() {
            let here = at(place);
            for (tap, k) in taps.iter().zip(-reach..) {
                let moved = (here as isize + k).clamp(0, side as isize - 1) as usize;
                *to += tap / sum * from[place - here * step + moved * step];
            }
        }
        out
    };
    let across = pass(seen, 1, width, &|place| place % width);
    pass(&across, width, height, &|place| place / width)
}
