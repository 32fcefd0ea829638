//! Cells: small windows of the reference, each found again on the picture near where a map puts it.
//!
//! The likeness of two windows is their zero-mean normalised correlation. Sums are of whole numbers, so
//! their order does not matter and each likeness is exact.

use keyblock_model::registration::Homography;

use super::plane::Plane;

/// How an image is divided into cells, in px of its level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grid {
    /// Cells along the longest side.
    pub along: usize,
    /// The side of a cell's window, a multiple of 8.
    pub window: usize,
    /// How far a cell is searched, each way.
    pub reach: usize,
}

impl Grid {
    pub const fn new(along: usize, window: usize, reach: usize) -> Grid {
        Grid {
            along,
            window,
            reach,
        }
    }
}

/// Where a cell was found.
#[derive(Clone, Copy, Debug)]
pub struct Shift {
    /// The centre of the cell on the reference, px of its level.
    pub x: f64,
    /// The same, downwards.
    pub y: f64,
    /// How much further right it lies than the map puts it, px.
    pub dx: f64,
    /// The same, downwards.
    pub dy: f64,
    /// The likeness there, -1 to 1.
    pub likeness: f32,
}

/// Below this likeness a cell was not found.
pub const LEAST_LIKENESS: f32 = 0.18;

/// The least standard deviation of a window with texture, in values of the gradient image.
const LEAST_DEVIATION: i64 = 16;

/// The cells of `reference` with texture that `map` puts inside `picture`, each with its best shift.
/// `map` leads from the reference to the picture, both at one level.
pub fn shifts(reference: &Plane, picture: &Plane, map: &Homography, grid: Grid) -> Vec<Shift> {
    let (window, reach) = (grid.window, grid.reach);
    let places = places(reference, grid);
    if places.is_empty() {
        return Vec::new();
    }
    let under = picture.under(map, reference.width, reference.height, reach);
    let wide = reference.width + 2 * reach;
    let sums = Sums::of(&under, wide);
    let mut template = Vec::with_capacity(window * window);
    let mut found = Vec::new();
    let mut likenesses = vec![0.0_f32; (2 * reach + 1) * (2 * reach + 1)];
    for (left, top) in places {
        if !lies_inside(picture, map, left, top, window) {
            continue;
        }
        let Some(of_template) = cut(reference, left, top, window, &mut template) else {
            continue;
        };
        for down in 0..=2 * reach {
            for right in 0..=2 * reach {
                let (x, y) = (left + right, top + down);
                let product = dot(&template, window, &under[y * wide + x..], wide);
                let (sum, squares) = sums.window(x, y, window);
                likenesses[down * (2 * reach + 1) + right] =
                    of_template.likeness(product, sum, squares);
            }
        }
        let (dx, dy, likeness) = peak(&likenesses, reach);
        let middle = (window - 1) as f64 / 2.0;
        found.push(Shift {
            x: left as f64 + middle,
            y: top as f64 + middle,
            dx,
            dy,
            likeness,
        });
    }
    found
}

/// How many cells of an image have texture.
pub fn textured(plane: &Plane, grid: Grid) -> usize {
    let mut template = Vec::new();
    places(plane, grid)
        .into_iter()
        .filter(|&(left, top)| cut(plane, left, top, grid.window, &mut template).is_some())
        .count()
}

/// The upper left corners of the cells, evenly spaced from edge to edge.
fn places(plane: &Plane, grid: Grid) -> Vec<(usize, usize)> {
    let longest = plane.width.max(plane.height);
    if plane.width.min(plane.height) <= grid.window || grid.along < 2 {
        return Vec::new();
    }
    let step = (longest - grid.window) as f64 / (grid.along - 1) as f64;
    let starts = |side: usize| {
        let room = (side - grid.window) as f64;
        let count = (room / step).round().max(1.0) as usize;
        (0..=count).map(move |k| (room * k as f64 / count as f64).round() as usize)
    };
    starts(plane.height)
        .flat_map(|top| starts(plane.width).map(move |left| (left, top)))
        .collect()
}

/// Whether a map puts a whole window inside the picture.
fn lies_inside(picture: &Plane, map: &Homography, left: usize, top: usize, window: usize) -> bool {
    let (right, bottom) = ((left + window - 1) as f64, (top + window - 1) as f64);
    let (left, top) = (left as f64, top as f64);
    let corners = [(left, top), (right, top), (left, bottom), (right, bottom)];
    corners.into_iter().all(|(x, y)| {
        map.apply(x, y).is_some_and(|(x, y)| {
            x >= 0.0
                && y >= 0.0
                && x <= (picture.width - 1) as f64
                && y <= (picture.height - 1) as f64
        })
    })
}

/// Values of a window that are computed once, before it is searched for.
struct OfTemplate {
    pixels: i64,
    sum: i64,
    variance: f64,
}

impl OfTemplate {
    fn likeness(&self, product: i64, sum: i64, squares: i64) -> f32 {
        let variance = self.pixels * squares - sum * sum;
        if variance <= 0 {
            return 0.0;
        }
        let covariance = self.pixels * product - self.sum * sum;
        (covariance as f64 / (self.variance * variance as f64).sqrt()) as f32
    }
}

/// Copies a window, and sums it; `None` where it has no texture.
fn cut(
    plane: &Plane,
    left: usize,
    top: usize,
    window: usize,
    out: &mut Vec<i16>,
) -> Option<OfTemplate> {
    out.clear();
    for row in plane
        .values
        .chunks_exact(plane.width)
        .skip(top)
        .take(window)
    {
        out.extend(row[left..left + window].iter().map(|&v| i16::from(v)));
    }
    let pixels = (window * window) as i64;
    let sum: i64 = out.iter().map(|&v| i64::from(v)).sum();
    let squares: i64 = out.iter().map(|&v| i64::from(v) * i64::from(v)).sum();
    let variance = pixels * squares - sum * sum;
    (variance > LEAST_DEVIATION * LEAST_DEVIATION * pixels * pixels).then_some(OfTemplate {
        pixels,
        sum,
        variance: variance as f64,
    })
}

/// The sum of products of a window with the part of a wider image that begins at `image[0]`.
///
/// Most of the time is spent here. The optimiser makes vector instructions of a plain loop; in builds
/// without optimisation, as tests have them, eight products written out save a loop over each. Sums of
/// whole numbers are the same either way.
fn dot(template: &[i16], window: usize, image: &[i16], wide: usize) -> i64 {
    let mut total = 0_i32;
    for (row, line) in template.chunks_exact(window).zip(image.chunks(wide)) {
        total += if cfg!(debug_assertions) {
            products_by_eight(row, line)
        } else {
            let products = row.iter().zip(&line[..window]);
            products.map(|(a, b)| i32::from(*a) * i32::from(*b)).sum()
        };
    }
    i64::from(total)
}

#[allow(
    clippy::cast_lossless,
    reason = "a call for each number where nothing is optimised"
)]
fn products_by_eight(row: &[i16], line: &[i16]) -> i32 {
    let mut total = 0_i32;
    for (a, b) in row.as_chunks::<8>().0.iter().zip(line.as_chunks::<8>().0) {
        total += (a[0] as i32 * b[0] as i32 + a[1] as i32 * b[1] as i32)
            + (a[2] as i32 * b[2] as i32 + a[3] as i32 * b[3] as i32)
            + (a[4] as i32 * b[4] as i32 + a[5] as i32 * b[5] as i32)
            + (a[6] as i32 * b[6] as i32 + a[7] as i32 * b[7] as i32);
    }
    total
}

/// Sums of an image and of its squares over any upright rectangle.
struct Sums {
    wide: usize,
    sums: Vec<u32>,
    squares: Vec<u64>,
}

impl Sums {
    fn of(values: &[i16], wide: usize) -> Sums {
        let high = values.len() / wide.max(1);
        let stride = wide + 1;
        let mut sums = vec![0_u32; stride * (high + 1)];
        let mut squares = vec![0_u64; stride * (high + 1)];
        for (y, row) in values.chunks_exact(wide).enumerate() {
            let (mut sum, mut square) = (0_u32, 0_u64);
            let above = y * stride;
            let here = above + stride;
            for (x, &value) in row.iter().enumerate() {
                sum += value as u32;
                square += u64::from(value as u32 * value as u32);
                sums[here + x + 1] = sums[above + x + 1] + sum;
                squares[here + x + 1] = squares[above + x + 1] + square;
            }
        }
        Sums {
            wide: stride,
            sums,
            squares,
        }
    }

    fn window(&self, x: usize, y: usize, side: usize) -> (i64, i64) {
        let upper = y * self.wide + x;
        let lower = upper + side * self.wide;
        let sum = i64::from(self.sums[lower + side])
            - i64::from(self.sums[lower])
            - i64::from(self.sums[upper + side])
            + i64::from(self.sums[upper]);
        let squares = self.squares[lower + side] as i64
            - self.squares[lower] as i64
            - self.squares[upper + side] as i64
            + self.squares[upper] as i64;
        (sum, squares)
    }
}

/// The best shift, between pixels where it does not lie at the end of the search.
fn peak(likenesses: &[f32], reach: usize) -> (f64, f64, f32) {
    let side = 2 * reach + 1;
    let mut best = 0;
    for (at, likeness) in likenesses.iter().enumerate() {
        if *likeness > likenesses[best] {
            best = at;
        }
    }
    let (row, column) = (best / side, best % side);
    let here = likenesses[best];
    let between = |before: f32, after: f32| {
        let bend = 2.0 * here - before - after;
        if bend > 1e-6 {
            f64::from((after - before) / (2.0 * bend)).clamp(-0.5, 0.5)
        } else {
            0.0
        }
    };
    let across = if column > 0 && column + 1 < side {
        between(likenesses[best - 1], likenesses[best + 1])
    } else {
        0.0
    };
    let down = if row > 0 && row + 1 < side {
        between(likenesses[best - side], likenesses[best + side])
    } else {
        0.0
    };
    let whole = |at: usize| at as f64 - reach as f64;
    (whole(column) + across, whole(row) + down, here)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grain(x: usize, y: usize) -> u8 {
        // Scattered by the low bits of a product: no shift repeats it.
        ((x * 7919 + y * 104_729 + x * x * y * 31 + y * y * 17) % 251) as u8
    }

    fn plane(width: usize, height: usize, moved: (usize, usize)) -> Plane {
        let values = (0..height)
            .flat_map(|y| (0..width).map(move |x| grain((x + moved.0) / 3, (y + moved.1) / 3)));
        Plane {
            width,
            height,
            values: values.collect(),
        }
    }

    #[test]
    fn cells_are_found_where_they_were_moved() {
        let reference = plane(160, 120, (10, 10));
        // A place at (x, y) on the reference is at (x + 3, y - 2) on the picture.
        let picture = plane(160, 120, (7, 12));
        let grid = Grid::new(4, 32, 6);
        let found = shifts(&reference, &picture, &Homography::IDENTITY, grid);
        assert!(found.len() >= 9, "{}", found.len());
        let inner: Vec<&Shift> = found
            .iter()
            .filter(|s| s.x > 40.0 && s.x < 120.0 && s.y > 30.0 && s.y < 90.0)
            .collect();
        assert!(!inner.is_empty());
        for shift in inner {
            assert!(
                (shift.dx - 3.0).abs() < 0.3 && (shift.dy + 2.0).abs() < 0.3,
                "{shift:?}"
            );
            assert!(shift.likeness > 0.95, "{shift:?}");
        }
    }

    #[test]
    fn products_by_eight_are_the_same_sum() {
        let row: Vec<i16> = (0..48).map(|k| (k * 37 % 253) as i16).collect();
        let line: Vec<i16> = (0..60).map(|k| (k * 91 % 251) as i16).collect();
        let plain: i32 = row
            .iter()
            .zip(&line)
            .map(|(a, b)| i32::from(*a) * i32::from(*b))
            .sum();
        assert_eq!(products_by_eight(&row, &line), plain);
    }

    #[test]
    fn blank_paper_has_no_cells() {
        let blank = Plane {
            width: 160,
            height: 120,
            values: vec![9; 160 * 120],
        };
        assert_eq!(textured(&blank, Grid::new(4, 32, 6)), 0);
    }
}
