//! A plane of numbers in `0..1`: how much of each pixel a block's surface covers.
//!
//! A plane has the window of the design that it shows, and a scale, so the same drawing code serves
//! a whole impression and a detail. Outlines are filled with exact area coverage: each edge
//! leaves its signed area in an accumulation row, and a running sum turns that into coverage.

use super::shape::{Path, Pt};

/// Which part of the design a plane shows, and at what scale.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Window {
    /// Left edge in design units.
    pub x: f32,
    /// Top edge in design units.
    pub y: f32,
    /// Pixels across.
    pub w: usize,
    /// Pixels down.
    pub h: usize,
    /// Pixels to a design unit.
    pub scale: f32,
}

impl Window {
    /// The design point at the centre of a pixel.
    pub fn at(&self, px: usize, py: usize) -> Pt {
        [
            self.x + (px as f32 + 0.5) / self.scale,
            self.y + (py as f32 + 0.5) / self.scale,
        ]
    }

    fn pixel(&self, p: Pt) -> Pt {
        [(p[0] - self.x) * self.scale, (p[1] - self.y) * self.scale]
    }
}

/// Coverage over a [`Window`], row by row.
#[derive(Clone)]
pub struct Plane {
    /// What the plane shows.
    pub window: Window,
    /// Coverage, `0..1`.
    pub data: Vec<f32>,
}

impl Plane {
    /// A surface cut away everywhere.
    pub fn cleared(window: Window) -> Self {
        Self {
            window,
            data: vec![0.0; window.w * window.h],
        }
    }

    /// A surface not yet cut.
    pub fn uncut(window: Window) -> Self {
        Self {
            window,
            data: vec![1.0; window.w * window.h],
        }
    }

    /// A plane of the same window from a function of the design point.
    pub fn drawn(window: Window, value: impl Fn(Pt) -> f32) -> Self {
        let mut plane = Self::cleared(window);
        for py in 0..window.h {
            for px in 0..window.w {
                plane.data[py * window.w + px] = value(window.at(px, py));
            }
        }
        plane
    }

    /// Leaves the shape standing.
    pub fn leave(&mut self, shape: &[Pt]) {
        self.fill(shape, |old, cover| old + (1.0 - old) * cover);
    }

    /// Leaves several shapes standing.
    pub fn leave_all(&mut self, shapes: &[Path]) {
        for shape in shapes {
            self.leave(shape);
        }
    }

    /// Cuts the shape away.
    pub fn cut(&mut self, shape: &[Pt]) {
        self.fill(shape, |old, cover| old * (1.0 - cover));
    }

    /// Cuts several shapes away.
    pub fn cut_all(&mut self, shapes: &[Path]) {
        for shape in shapes {
            self.cut(shape);
        }
    }

    /// Brings the shape to a tone between cut away and standing.
    pub fn tone(&mut self, shape: &[Pt], tone: f32) {
        self.fill(shape, |old, cover| old + (tone - old) * cover);
    }

    /// Works on a copy that is blank, then leaves what was drawn there within `region`.
    pub fn within(&mut self, region: &[Pt], work: impl FnOnce(&mut Plane)) {
        let mut other = Plane::cleared(self.window);
        work(&mut other);
        other.keep(region);
        self.add(&other);
    }

    /// Works on a blank copy, then cuts away within `region` what was drawn there.
    pub fn cut_within(&mut self, region: &[Pt], work: impl FnOnce(&mut Plane)) {
        let mut other = Plane::cleared(self.window);
        work(&mut other);
        other.keep(region);
        self.take(&other);
    }

    /// Clears all that lies outside the shape.
    pub fn keep(&mut self, shape: &[Pt]) {
        let mut stencil = Plane::cleared(self.window);
        stencil.leave(shape);
        for (a, b) in self.data.iter_mut().zip(&stencil.data) {
            *a *= b;
        }
    }

    /// Leaves standing whatever stands on the other plane too.
    pub fn add(&mut self, other: &Plane) {
        for (a, b) in self.data.iter_mut().zip(&other.data) {
            *a += (1.0 - *a) * b;
        }
    }

    /// Cuts away whatever stands on the other plane.
    pub fn take(&mut self, other: &Plane) {
        for (a, b) in self.data.iter_mut().zip(&other.data) {
            *a *= 1.0 - b;
        }
    }

    /// Multiplies by a function of the design point: gradations of tone, worn places.
    pub fn weigh(&mut self, value: impl Fn(Pt) -> f32) {
        for py in 0..self.window.h {
            for px in 0..self.window.w {
                let cell = &mut self.data[py * self.window.w + px];
                if *cell > 0.0 {
                    *cell *= value(self.window.at(px, py));
                }
            }
        }
    }

    /// A copy softened by a box of about `radius` pixels, twice: edges of ink and of shadow.
    pub fn softened(&self, radius: usize) -> Self {
        let mut out = self.clone();
        for _ in 0..2 {
            blur_rows(&mut out.data, self.window.w, radius);
            blur_columns(&mut out.data, self.window.w, self.window.h, radius);
        }
        out
    }

    /// The value at a pixel position that may lie between pixels or outside (0 there).
    pub fn sample(&self, x: f32, y: f32) -> f32 {
        let (x, y) = (x - 0.5, y - 0.5);
        let (fx, fy) = (x.floor(), y.floor());
        let (ix, iy) = (fx as isize, fy as isize);
        let (u, v) = (x - fx, y - fy);
        let top = self.cell(ix, iy) * (1.0 - u) + self.cell(ix + 1, iy) * u;
        let low = self.cell(ix, iy + 1) * (1.0 - u) + self.cell(ix + 1, iy + 1) * u;
        top * (1.0 - v) + low * v
    }

    fn cell(&self, x: isize, y: isize) -> f32 {
        if x < 0 || y < 0 || x as usize >= self.window.w || y as usize >= self.window.h {
            return 0.0;
        }
        self.data[y as usize * self.window.w + x as usize]
    }

    fn fill(&mut self, shape: &[Pt], blend: impl Fn(f32, f32) -> f32) {
        if shape.len() < 3 {
            return;
        }
        let pixels: Vec<Pt> = shape.iter().map(|&p| self.window.pixel(p)).collect();
        let Some(area) = Area::covering(&pixels, self.window.w, self.window.h) else {
            return;
        };
        let mut sums = vec![0.0_f32; (area.w + 2) * area.h];
        for i in 0..pixels.len() {
            let (a, b) = (pixels[i], pixels[(i + 1) % pixels.len()]);
            area.edge(&mut sums, a, b);
        }
        for row in 0..area.h {
            let mut run = 0.0;
            for column in 0..area.w {
                run += sums[row * (area.w + 2) + column];
                let cover = run.abs().min(1.0);
                if cover > 0.002 {
                    let cell = &mut self.data[(area.y + row) * self.window.w + area.x + column];
                    *cell = blend(*cell, cover);
                }
            }
        }
    }
}

/// The pixels that a shape touches, clipped to the plane.
struct Area {
    x: usize,
    y: usize,
    w: usize,
    h: usize,
}

impl Area {
    fn covering(pixels: &[Pt], w: usize, h: usize) -> Option<Self> {
        let mut low = [f32::MAX; 2];
        let mut high = [f32::MIN; 2];
        for p in pixels {
            for axis in 0..2 {
                low[axis] = low[axis].min(p[axis]);
                high[axis] = high[axis].max(p[axis]);
            }
        }
        let x = low[0].floor().clamp(0.0, w as f32) as usize;
        let y = low[1].floor().clamp(0.0, h as f32) as usize;
        let right = high[0].ceil().clamp(0.0, w as f32) as usize;
        let bottom = high[1].ceil().clamp(0.0, h as f32) as usize;
        (right > x && bottom > y).then_some(Self {
            x,
            y,
            w: right - x,
            h: bottom - y,
        })
    }

    /// Leaves the signed area of one edge in the sums.
    fn edge(&self, sums: &mut [f32], a: Pt, b: Pt) {
        let (ox, oy) = (self.x as f32, self.y as f32);
        let (direction, top, low) = if a[1] <= b[1] {
            (1.0, a, b)
        } else {
            (-1.0, b, a)
        };
        let (x0, y0, x1, y1) = (top[0] - ox, top[1] - oy, low[0] - ox, low[1] - oy);
        if y1 - y0 < 1e-6 {
            return;
        }
        let slope = (x1 - x0) / (y1 - y0);
        let first = y0.max(0.0);
        let last = y1.min(self.h as f32);
        let mut y = first;
        while y < last {
            let row = y.floor();
            let next = (row + 1.0).min(last);
            let (xa, xb) = (x0 + (y - y0) * slope, x0 + (next - y0) * slope);
            let at = (row as usize).min(self.h - 1) * (self.w + 2);
            self.row(
                &mut sums[at..at + self.w + 2],
                direction * (next - y),
                xa,
                xb,
            );
            if next <= y {
                break;
            }
            y = next;
        }
    }

    /// One edge within one row: `rise` is the height it spans, signed by its direction.
    fn row(&self, sums: &mut [f32], rise: f32, xa: f32, xb: f32) {
        // Left of the area counts as its left edge; right of it changes nothing that is seen.
        let wide = self.w as f32;
        let (low, high) = if xa < xb { (xa, xb) } else { (xb, xa) };
        let (low, high) = (low.clamp(0.0, wide), high.clamp(0.0, wide));
        let first = low.floor() as usize;
        let last = (high.ceil() as usize).max(first + 1);
        if last == first + 1 {
            let middle = 0.5 * (low + high) - first as f32;
            sums[first] += rise * (1.0 - middle);
            sums[first + 1] += rise * middle;
            return;
        }
        let per = rise / (high - low);
        let mut before = 0.0;
        for (column, sum) in sums.iter_mut().enumerate().take(last).skip(first) {
            let left = low.max(column as f32);
            let right = high.min(column as f32 + 1.0);
            let part = per * (right - left);
            let middle = 0.5 * (left + right) - column as f32;
            *sum += before + part * (1.0 - middle);
            before = part * middle;
        }
        sums[last.min(self.w + 1)] += before;
    }
}

fn blur_rows(data: &mut [f32], w: usize, radius: usize) {
    let mut line = vec![0.0; w];
    for row in data.chunks_exact_mut(w) {
        blur_line(row, &mut line, radius);
        row.copy_from_slice(&line);
    }
}

fn blur_columns(data: &mut [f32], w: usize, h: usize, radius: usize) {
    let mut column = vec![0.0; h];
    let mut out = vec![0.0; h];
    for x in 0..w {
        for y in 0..h {
            column[y] = data[y * w + x];
        }
        blur_line(&column, &mut out, radius);
        for y in 0..h {
            data[y * w + x] = out[y];
        }
    }
}

fn blur_line(line: &[f32], out: &mut [f32], radius: usize) {
    let n = line.len();
    let span = (2 * radius + 1) as f32;
    let at = |i: isize| line[i.clamp(0, n as isize - 1) as usize];
    let r = radius as isize;
    let mut sum: f32 = (-r..=r).map(at).sum();
    for i in 0..n as isize {
        out[i as usize] = sum / span;
        sum += at(i + r + 1) - at(i - r);
    }
}
