//! The gradient image: edges only, equally strong in pale and in dark ink, on every level.
//!
//! Grey is blurred (σ about 1.4 px), its Scharr gradient taken, and the magnitude divided by its own
//! mean nearby plus a floor, so that most of tone, ink, uneven light and inversion drop out (in the
//! manner of Haber & Modersitzki, *Intensity Gradient Based Registration and Fusion*, 2006).

use image::GrayImage;

use super::plane::Plane;

/// The floor added to the mean magnitude nearby, in grey values a pixel, so that grain of the paper
/// and noise of the camera stay faint.
const FLOOR: f32 = 2.5;

/// Half the side of the square over which the mean is taken, twice: about a Gaussian of 20 px.
const NEARBY: usize = 24;

/// The value of an edge as strong as its surroundings; four times as strong is the most.
const UNIT: f32 = 63.0;

/// The gradient image of a photograph at working size, and twice halved.
pub struct Edges {
    levels: [Plane; 3],
}

impl Edges {
    pub fn of(grey: &GrayImage) -> Edges {
        let finest = gradient(grey);
        let half = finest.halved();
        let quarter = half.halved();
        Edges {
            levels: [finest, half, quarter],
        }
    }

    /// The level of a depth: 0 working size, 1 half, 2 and more a quarter.
    pub fn level(&self, depth: usize) -> &Plane {
        &self.levels[depth.min(2)]
    }

    /// The coarsest level.
    pub fn coarse(&self) -> &Plane {
        &self.levels[2]
    }

    /// Width and height at working size, px.
    pub fn size(&self) -> (usize, usize) {
        (self.levels[0].width, self.levels[0].height)
    }
}

fn gradient(grey: &GrayImage) -> Plane {
    let (width, height) = (grey.width() as usize, grey.height() as usize);
    if width < 3 || height < 3 {
        return Plane {
            width,
            height,
            values: vec![0; width * height],
        };
    }
    let blurred = blurred(grey.as_raw(), width, height);
    let magnitude = scharr(&blurred, width, height);
    let once = box_mean(&magnitude, width, height, NEARBY);
    let nearby = box_mean(&once, width, height, NEARBY);
    let values = magnitude.iter().zip(&nearby).map(|(&strength, &mean)| {
        let relative = strength / (mean + FLOOR);
        (relative * UNIT).min(252.0) as u8
    });
    Plane {
        width,
        height,
        values: values.collect(),
    }
}

/// Seven taps of a Gaussian of 1.4 px, one way and the other.
fn blurred(grey: &[u8], width: usize, height: usize) -> Vec<f32> {
    const TAPS: [f32; 4] = [0.290_25, 0.224_89, 0.104_61, 0.025_375];
    let mut across = vec![0.0_f32; width * height];
    let mut line = vec![0.0_f32; width + 6];
    for (row, out) in grey.chunks_exact(width).zip(across.chunks_exact_mut(width)) {
        for (to, &value) in line[3..].iter_mut().zip(row) {
            *to = f32::from(value);
        }
        let (first, last) = (line[3], line[width + 2]);
        line[..3].fill(first);
        line[width + 3..].fill(last);
        for (x, to) in out.iter_mut().enumerate() {
            let near = &line[x..x + 7];
            *to = near[3] * TAPS[0]
                + (near[2] + near[4]) * TAPS[1]
                + (near[1] + near[5]) * TAPS[2]
                + (near[0] + near[6]) * TAPS[3];
        }
    }
    let mut out = vec![0.0_f32; width * height];
    for (y, to) in out.chunks_exact_mut(width).enumerate() {
        let row = |offset: isize| {
            let y = (y as isize + offset).clamp(0, height as isize - 1) as usize;
            &across[y * width..(y + 1) * width]
        };
        let rows = [row(-3), row(-2), row(-1), row(0), row(1), row(2), row(3)];
        for (x, to) in to.iter_mut().enumerate() {
            *to = rows[3][x] * TAPS[0]
                + (rows[2][x] + rows[4][x]) * TAPS[1]
                + (rows[1][x] + rows[5][x]) * TAPS[2]
                + (rows[0][x] + rows[6][x]) * TAPS[3];
        }
    }
    out
}

/// The magnitude of the gradient by Scharr's operator, in grey values a pixel; 0 on the rim.
fn scharr(grey: &[f32], width: usize, height: usize) -> Vec<f32> {
    let mut out = vec![0.0_f32; width * height];
    for y in 1..height - 1 {
        let above = &grey[(y - 1) * width..y * width];
        let here = &grey[y * width..(y + 1) * width];
        let below = &grey[(y + 1) * width..(y + 2) * width];
        let to = &mut out[y * width..(y + 1) * width];
        for x in 1..width - 1 {
            let across = 3.0 * (above[x + 1] - above[x - 1] + below[x + 1] - below[x - 1])
                + 10.0 * (here[x + 1] - here[x - 1]);
            let down = 3.0 * (below[x - 1] - above[x - 1] + below[x + 1] - above[x + 1])
                + 10.0 * (below[x] - above[x]);
            to[x] = (across * across + down * down).sqrt() / 32.0;
        }
    }
    out
}

/// The mean over a square of `2 * reach + 1`, clipped at the rim.
fn box_mean(values: &[f32], width: usize, height: usize, reach: usize) -> Vec<f32> {
    let mut across = vec![0.0_f32; width * height];
    let mut sums = vec![0.0_f64; width + 1];
    for (row, out) in values
        .chunks_exact(width)
        .zip(across.chunks_exact_mut(width))
    {
        let mut sum = 0.0_f64;
        for (to, &value) in sums[1..].iter_mut().zip(row) {
            sum += f64::from(value);
            *to = sum;
        }
        for (x, to) in out.iter_mut().enumerate() {
            let (from, until) = (x.saturating_sub(reach), (x + reach + 1).min(width));
            *to = ((sums[until] - sums[from]) / (until - from) as f64) as f32;
        }
    }
    let mut out = vec![0.0_f32; width * height];
    let mut column = vec![0.0_f32; width];
    let mut held = 0_usize;
    for row in across.chunks_exact(width).take(reach) {
        add(&mut column, row);
        held += 1;
    }
    for (y, to) in out.chunks_exact_mut(width).enumerate() {
        if y + reach < height {
            add(
                &mut column,
                &across[(y + reach) * width..(y + reach + 1) * width],
            );
            held += 1;
        }
        if y > reach {
            let gone = y - reach - 1;
            subtract(&mut column, &across[gone * width..(gone + 1) * width]);
            held -= 1;
        }
        let share = 1.0 / held.max(1) as f32;
        for (to, &sum) in to.iter_mut().zip(&column) {
            *to = sum * share;
        }
    }
    out
}

fn add(sums: &mut [f32], row: &[f32]) {
    for (sum, value) in sums.iter_mut().zip(row) {
        *sum += value;
    }
}

fn subtract(sums: &mut [f32], row: &[f32]) {
    for (sum, value) in sums.iter_mut().zip(row) {
        *sum -= value;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::Luma;

    fn stripes(dark: u8, light: u8) -> GrayImage {
        GrayImage::from_fn(200, 120, |x, _| {
            Luma([if x / 20 % 2 == 0 { dark } else { light }])
        })
    }

    #[test]
    fn pale_and_inverted_edges_look_alike() {
        let strong = gradient(&stripes(20, 220));
        let inverted = gradient(&stripes(220, 20));
        let pale = gradient(&stripes(120, 200));
        assert_eq!(strong, inverted);
        let differ = strong.values.iter().zip(&pale.values);
        let worst = differ.map(|(a, b)| a.abs_diff(*b)).max().unwrap();
        assert!(worst < 60, "{worst}");
        assert!(pale.values.iter().any(|value| *value > 180));
    }

    #[test]
    fn blank_paper_has_no_edges() {
        let blank = gradient(&GrayImage::from_pixel(100, 80, Luma([230])));
        assert!(blank.values.iter().all(|value| *value == 0));
    }
}
