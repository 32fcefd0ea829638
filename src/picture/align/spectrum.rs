//! Turn, scale and shift of one image against another by their spectra.
//!
//! The magnitude of a spectrum does not depend on shift; in log-polar coordinates a turn and a scale are
//! shifts of it, and a shift is found by phase correlation (Reddy & Chatterji, *An FFT-Based Technique
//! for Translation, Rotation, and Scale-Invariant Image Registration*, 1996).

use keyblock_model::registration::Homography;
use rustfft::algorithm::Radix4;
use rustfft::num_complex::Complex;
use rustfft::{Fft, FftDirection};

use super::plane::Plane;

/// The side of the square in which spectra are taken, px.
const SIDE: usize = 256;

/// The radii between which a spectrum is compared, in waves a square: smaller radii show the window's
/// own shape, larger ones the grain.
const RADII: (f64, f64) = (5.0, 110.0);

/// How far a picture may be turned, degrees, and scaled.
const MOST_TURN: f64 = 12.0;
const MOST_SCALE: f64 = 1.9;

type Wave = Complex<f32>;

/// The spectra of one image.
pub struct Spectrum {
    image: Plane,
    /// Of the windowed image.
    of_image: Vec<Wave>,
    /// Of its log-polar magnitude.
    of_magnitude: Vec<Wave>,
}

/// A turn, a scale and a shift, and how sharply they stood out.
#[derive(Clone, Copy, Debug)]
pub struct Guess {
    /// From the reference to the picture, px of the images compared.
    pub map: Homography,
    /// The height of the peak.
    pub sharpness: f32,
}

impl Spectrum {
    /// Of an image with no side above 256 px.
    pub fn of(image: &Plane) -> Spectrum {
        let transform = Transform::new();
        let of_image = transform.forward(&windowed(image, &Homography::IDENTITY, image));
        let polar = log_polar(&of_image);
        let of_magnitude = transform.forward(&polar);
        Spectrum {
            image: image.clone(),
            of_image,
            of_magnitude,
        }
    }

    /// The likeliest ways in which `picture` lies on this reference, the sharpest first.
    pub fn likely(&self, picture: &Spectrum) -> Vec<Guess> {
        let transform = Transform::new();
        let polar = correlated(&transform, &self.of_magnitude, &picture.of_magnitude, 60.0);
        let mut found: Vec<Guess> = polar_peaks(&polar)
            .into_iter()
            .filter_map(|(turn, scale)| self.shifted(&transform, picture, turn, scale))
            .collect();
        found.sort_by(|a, b| b.sharpness.total_cmp(&a.sharpness));
        found
    }

    /// Undoes a turn (radians) and a scale of the picture, and finds the shift that is left.
    fn shifted(
        &self,
        transform: &Transform,
        picture: &Spectrum,
        turn: f64,
        scale: f64,
    ) -> Option<Guess> {
        let about = |shift: (f64, f64)| {
            let (sin, cos) = (libm::sin(turn) * scale, libm::cos(turn) * scale);
            let (from, to) = (middle(&self.image), middle(&picture.image));
            // From the middle of the one to the middle of the other, the shift added on the first.
            let (x, y) = (shift.0 - from.0, shift.1 - from.1);
            Homography::new([
                cos,
                -sin,
                to.0 + cos * x - sin * y,
                sin,
                cos,
                to.1 + sin * x + cos * y,
                0.0,
                0.0,
                1.0,
            ])
        };
        let undone = windowed(&picture.image, &about((0.0, 0.0))?, &self.image);
        let of_undone = transform.forward(&undone);
        let correlation = correlated(transform, &self.of_image, &of_undone, 48.0);
        let mut best = 0;
        for (at, value) in correlation.iter().enumerate() {
            if *value > correlation[best] {
                best = at;
            }
        }
        let shift = (signed(best % SIDE), signed(best / SIDE));
        Some(Guess {
            map: about(shift)?,
            sharpness: correlation[best],
        })
    }
}

fn middle(plane: &Plane) -> (f64, f64) {
    (
        (plane.width as f64 - 1.0) / 2.0,
        (plane.height as f64 - 1.0) / 2.0,
    )
}

/// A place on a circle of [`SIDE`] as a step of at most half of it either way.
fn signed(at: usize) -> f64 {
    if at < SIDE / 2 {
        at as f64
    } else {
        at as f64 - SIDE as f64
    }
}

/// The image as `map` brings it under `frame`, less its mean, faded out towards the frame's edge, and
/// laid in the middle of the square.
fn windowed(image: &Plane, map: &Homography, frame: &Plane) -> Vec<Wave> {
    let (width, height) = (frame.width.min(SIDE), frame.height.min(SIDE));
    let values = image.under(map, width, height, 0);
    let mean = values.iter().map(|&v| f64::from(v)).sum::<f64>() / values.len().max(1) as f64;
    let (across, down) = (fading(width), fading(height));
    let (left, top) = ((SIDE - width) / 2, (SIDE - height) / 2);
    let mut square = vec![Wave::new(0.0, 0.0); SIDE * SIDE];
    for (y, row) in values.chunks_exact(width.max(1)).enumerate() {
        let out = &mut square[(top + y) * SIDE + left..][..width];
        for (x, &value) in row.iter().enumerate() {
            out[x].re = (f32::from(value) - mean as f32) * across[x] * down[y];
        }
    }
    square
}

/// A window that rises and falls as a sine over an eighth at either end.
fn fading(length: usize) -> Vec<f32> {
    let slope = (length as f64 / 8.0).max(1.0);
    (0..length)
        .map(|at| {
            let from_edge = (at.min(length - 1 - at) as f64 + 0.5) / slope;
            libm::sin(from_edge.min(1.0) * std::f64::consts::FRAC_PI_2) as f32
        })
        .collect()
}

/// The logarithm of a spectrum's magnitude in log-polar coordinates: a row for each angle of half a
/// turn, a column for each radius, less the mean of its column.
fn log_polar(spectrum: &[Wave]) -> Vec<Wave> {
    let magnitude: Vec<f32> = spectrum
        .iter()
        .map(|wave| libm::log1pf(wave.norm_sqr().sqrt()))
        .collect();
    let radii: Vec<f64> = (0..SIDE)
        .map(|column| RADII.0 * libm::exp(step() * column as f64))
        .collect();
    let fade = fading(SIDE);
    let mut values = vec![0.0_f32; SIDE * SIDE];
    for (row, out) in values.chunks_exact_mut(SIDE).enumerate() {
        let angle = std::f64::consts::PI * row as f64 / SIDE as f64;
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        for (radius, to) in radii.iter().zip(out) {
            *to = at(&magnitude, cos * radius, sin * radius);
        }
    }
    let mut waves = vec![Wave::new(0.0, 0.0); SIDE * SIDE];
    for column in 0..SIDE {
        let sum: f64 = (0..SIDE)
            .map(|row| f64::from(values[row * SIDE + column]))
            .sum();
        let mean = (sum / SIDE as f64) as f32;
        for row in 0..SIDE {
            waves[row * SIDE + column].re = (values[row * SIDE + column] - mean) * fade[column];
        }
    }
    waves
}

/// How much the logarithm of the radius grows from one column to the next.
fn step() -> f64 {
    libm::log(RADII.1 / RADII.0) / SIDE as f64
}

/// A spectrum's value between its places, `x` and `y` from its origin.
fn at(magnitude: &[f32], x: f64, y: f64) -> f32 {
    let (left, top) = (x.floor(), y.floor());
    let (fx, fy) = ((x - left) as f32, (y - top) as f32);
    let wrapped = |at: f64| (at as i32).rem_euclid(SIDE as i32) as usize;
    let (x0, y0) = (wrapped(left), wrapped(top));
    let (x1, y1) = ((x0 + 1) % SIDE, (y0 + 1) % SIDE);
    let along = |y: usize| magnitude[y * SIDE + x0] * (1.0 - fx) + magnitude[y * SIDE + x1] * fx;
    along(y0) * (1.0 - fy) + along(y1) * fy
}

/// Phase correlation: how far `second` is shifted against `first`, as a plane with a peak there. Waves
/// are weighted by a Gaussian of `band` waves a square, since the finest ones carry only noise.
fn correlated(transform: &Transform, first: &[Wave], second: &[Wave], band: f64) -> Vec<f32> {
    let weights: Vec<f32> = (0..SIDE)
        .map(|at| libm::exp(-0.5 * (signed(at) / band) * (signed(at) / band)) as f32)
        .collect();
    let mut product = vec![Wave::new(0.0, 0.0); SIDE * SIDE];
    for (row, out) in product.chunks_exact_mut(SIDE).enumerate() {
        let from = row * SIDE;
        for (column, to) in out.iter_mut().enumerate() {
            let cross = second[from + column] * first[from + column].conj();
            let strength = cross.norm_sqr().sqrt();
            if strength > 1e-9 {
                *to = cross * (weights[row] * weights[column] / strength);
            }
        }
    }
    transform
        .backward(product)
        .into_iter()
        .map(|wave| wave.re / (SIDE * SIDE) as f32)
        .collect()
}

/// Turns (radians) and scales of the highest peaks within reason, each apart from the others.
fn polar_peaks(plane: &[f32]) -> Vec<(f64, f64)> {
    let a_row = std::f64::consts::PI / SIDE as f64;
    let rows = (MOST_TURN.to_radians() / a_row).ceil() as isize;
    let columns = (libm::log(MOST_SCALE) / step()).ceil() as isize;
    let side = SIDE as isize;
    let value = |row: isize, column: isize| {
        plane[(row.rem_euclid(side) * side + column.rem_euclid(side)) as usize]
    };
    let mut places: Vec<(f32, isize, isize)> = Vec::new();
    for row in -rows..=rows {
        for column in -columns..=columns {
            let here = value(row, column);
            let is_peak =
                (-1..=1).all(|dy| (-1..=1).all(|dx| here >= value(row + dy, column + dx)));
            if is_peak {
                places.push((here, row, column));
            }
        }
    }
    places.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut kept: Vec<(isize, isize)> = Vec::new();
    for (_, row, column) in places {
        let is_apart = kept
            .iter()
            .all(|(r, c)| (r - row).abs() > 3 || (c - column).abs() > 3);
        if is_apart {
            kept.push((row, column));
        }
        if kept.len() == PEAKS {
            break;
        }
    }
    kept.into_iter()
        .map(|(row, column)| (row as f64 * a_row, libm::exp(-step() * column as f64)))
        .collect()
}

/// How many turns and scales are tried.
const PEAKS: usize = 4;

/// The Fourier transform of the square, both ways. The side is a power of four, so the algorithm is named
/// here: a planner gives the same numbers and brings every other algorithm into the program.
struct Transform {
    forward: Radix4<f32>,
    backward: Radix4<f32>,
}

impl Transform {
    fn new() -> Transform {
        Transform {
            forward: Radix4::new(SIDE, FftDirection::Forward),
            backward: Radix4::new(SIDE, FftDirection::Inverse),
        }
    }

    fn forward(&self, square: &[Wave]) -> Vec<Wave> {
        both_ways(&self.forward, square.to_vec())
    }

    fn backward(&self, square: Vec<Wave>) -> Vec<Wave> {
        both_ways(&self.backward, square)
    }
}

fn both_ways(fft: &dyn Fft<f32>, mut square: Vec<Wave>) -> Vec<Wave> {
    fft.process(&mut square);
    let mut turned = transposed(&square);
    fft.process(&mut turned);
    transposed(&turned)
}

fn transposed(square: &[Wave]) -> Vec<Wave> {
    let mut out = vec![Wave::new(0.0, 0.0); SIDE * SIDE];
    for (row, line) in square.chunks_exact(SIDE).enumerate() {
        for (column, &wave) in line.iter().enumerate() {
            out[column * SIDE + row] = wave;
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::fit::SplitMix;
    use super::*;

    /// Two hundred small squares of chance strength.
    fn scattered() -> Plane {
        let mut chance = SplitMix::new(11);
        let mut plane = Plane {
            width: 250,
            height: 190,
            values: vec![20; 250 * 190],
        };
        for _ in 0..200 {
            let (x, y) = (chance.below(240), chance.below(180));
            let (wide, high) = (2 + chance.below(8), 2 + chance.below(8));
            let value = 60 + chance.below(190) as u8;
            for row in y..(y + high).min(190) {
                for column in x..(x + wide).min(250) {
                    plane.values[row * 250 + column] = value;
                }
            }
        }
        plane
    }

    #[test]
    fn a_turned_scaled_and_shifted_picture_is_found() {
        let reference = scattered();
        for (degrees, scale, shift) in [
            (0.0, 1.0, (9.0, -14.0)),
            (5.0, 0.8, (30.0, 12.0)),
            (-6.0, 1.25, (-40.0, 5.0)),
        ] {
            let turn = f64::to_radians(degrees);
            let (sin, cos) = (libm::sin(turn) * scale, libm::cos(turn) * scale);
            // From the reference to the picture.
            let truth =
                Homography::new([cos, -sin, shift.0, sin, cos, shift.1, 0.0, 0.0, 1.0]).unwrap();
            let values = reference.under(&truth.inverse().unwrap(), 250, 190, 0);
            let picture = Plane {
                width: 250,
                height: 190,
                values: values.into_iter().map(|v| v as u8).collect(),
            };
            let likely = Spectrum::of(&reference).likely(&Spectrum::of(&picture));
            let found = likely[0].map;
            for (x, y) in [(60.0, 50.0), (190.0, 50.0), (60.0, 140.0), (190.0, 140.0)] {
                let (u, v) = found.apply(x, y).unwrap();
                let (tu, tv) = truth.apply(x, y).unwrap();
                let away = libm::hypot(u - tu, v - tv);
                assert!(away < 3.0, "{degrees}° ×{scale}: {away} px at {x}, {y}");
            }
        }
    }
}
