//! A grey plane of bytes, its smaller levels, and reading it between pixels.

use keyblock_model::registration::Homography;

/// Width times height bytes, row by row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plane {
    pub width: usize,
    pub height: usize,
    pub values: Vec<u8>,
}

impl Plane {
    /// Half as wide and high, each value the mean of four; an odd last row or column is left out.
    pub fn halved(&self) -> Plane {
        let (width, height) = (self.width / 2, self.height / 2);
        let mut values = Vec::with_capacity(width * height);
        for rows in self.values.chunks_exact(2 * self.width.max(1)).take(height) {
            let (upper, lower) = rows.split_at(self.width);
            let pairs = upper.chunks_exact(2).zip(lower.chunks_exact(2));
            values.extend(pairs.map(|(u, l)| {
                let sum = u16::from(u[0]) + u16::from(u[1]) + u16::from(l[0]) + u16::from(l[1]);
                ((sum + 2) / 4) as u8
            }));
        }
        Plane {
            width,
            height,
            values,
        }
    }

    /// The part of `map`'s target that lies under a frame of `width` times `height`, with `pad` more
    /// on every side: value `(x, y)` of the frame is this plane at `map(x - pad, y - pad)`,
    /// interpolated bilinearly between pixels, and the value of the edge beyond it.
    pub fn under(&self, map: &Homography, width: usize, height: usize, pad: usize) -> Vec<i16> {
        let (wide, high) = (width + 2 * pad, height + 2 * pad);
        let mut out = Vec::with_capacity(wide * high);
        if self.width < 2 || self.height < 2 {
            out.resize(wide * high, 0);
            return out;
        }
        let pad = pad as f64;
        for row in 0..high {
            let y = row as f64 - pad;
            let mut done = 0;
            // A mild perspective is straight over so few pixels, to a hundredth of one.
            while done < wide {
                let count = SEGMENT.min(wide - done);
                let first = done as f64 - pad;
                let ends = map
                    .apply(first, y)
                    .zip(map.apply(first + count as f64, y))
                    .unwrap_or(((-1e6, -1e6), (-1e6, -1e6)));
                self.segment(ends, count, &mut out);
                done += count;
            }
        }
        out
    }

    /// `count` values along a line from one point to (not including) another.
    fn segment(&self, (from, to): ((f64, f64), (f64, f64)), count: usize, out: &mut Vec<i16>) {
        let step = 1.0 / count as f64;
        let (step_x, step_y) = ((to.0 - from.0) * step, (to.1 - from.1) * step);
        // Positions in 1/256 px, kept inside the plane by whole steps of its last cell.
        let (limit_x, limit_y) = (
            ((self.width - 1) * 256 - 1) as i32,
            ((self.height - 1) * 256 - 1) as i32,
        );
        for k in 0..count {
            let k = k as f64;
            let x = (((from.0 + step_x * k) * 256.0) as i32).clamp(0, limit_x);
            let y = (((from.1 + step_y * k) * 256.0) as i32).clamp(0, limit_y);
            let at = (y >> 8) as usize * self.width + (x >> 8) as usize;
            let (fx, fy) = (x & 255, y & 255);
            let upper = &self.values[at..at + 2];
            let lower = &self.values[at + self.width..at + self.width + 2];
            let along = |pair: &[u8]| i32::from(pair[0]) * (256 - fx) + i32::from(pair[1]) * fx;
            let value = (along(upper) * (256 - fy) + along(lower) * fy + (1 << 15)) >> 16;
            out.push(value as i16);
        }
    }
}

/// Pixels between two exact points of a map.
const SEGMENT: usize = 16;

/// The maps from working size to a level (0 working size, each next one half of it) and back.
pub fn level(depth: usize) -> (Homography, Homography) {
    let factor = 1.0 / f64::from(1_u32 << depth.min(8));
    let made = |factor: f64| Homography::scaling(factor, factor).unwrap_or(Homography::IDENTITY);
    (made(factor), made(1.0 / factor))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ramp() -> Plane {
        let values = (0..20).flat_map(|y| (0..30).map(move |x| x * 5 + y * 3));
        Plane {
            width: 30,
            height: 20,
            values: values.collect(),
        }
    }

    #[test]
    fn a_slope_is_read_between_pixels() {
        let map = Homography::new([1.0, 0.0, 2.6, 0.0, 1.0, 3.2, 0.0, 0.0, 1.0]).unwrap();
        let read = ramp().under(&map, 10, 8, 2);
        // At (5, 4) of the frame: the plane at (5 - 2 + 2.6, 4 - 2 + 3.2) = (5.6, 5.2).
        assert_eq!(read[4 * 14 + 5], 44); // 5.6 · 5 + 5.2 · 3 = 43.6
        assert_eq!(read.len(), 14 * 12);
    }

    #[test]
    fn what_is_halved_keeps_its_place() {
        let half = ramp().halved();
        assert_eq!((half.width, half.height), (15, 10));
        let (to, _) = level(1);
        // The mean of four pixels lies at their common corner.
        assert_eq!(to.apply(4.5, 6.5).unwrap(), (2.0, 3.0));
        assert_eq!(half.values[3 * 15 + 2], 42); // 4.5 · 5 + 6.5 · 3
    }
}
