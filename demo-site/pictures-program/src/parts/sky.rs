//! Clouds, smoke, rain, wind, stars.

use crate::engine::noise::Dice;
use crate::engine::shape::{Path, Pt, blob, curve, ellipse, gouged, stroke};

/// A long cloud drawn out by wind, tapering at both ends.
pub fn streak(left: Pt, width: f32, thick: f32, dice: &mut Dice) -> Path {
    let n = 9;
    let (mut top, mut low) = (vec![left], Vec::new());
    let tilt = dice.about(0.04);
    for i in 1..n {
        let t = i as f32 / n as f32;
        let swell = libm::sinf(t * core::f32::consts::PI);
        let x = left[0] + width * t;
        let y = left[1] + width * t * tilt;
        top.push([x, y - thick * swell * dice.between(0.35, 0.75)]);
        low.push([
            x + dice.about(width * 0.02),
            y + thick * swell * dice.between(0.15, 0.5),
        ]);
    }
    top.push([left[0] + width, left[1] + width * tilt]);
    low.reverse();
    top.extend(low);
    blob(&top)
}

/// A heap of cloud: bulges of the given size along an outline from left to right, flat below.
pub fn heap(ridge: &[Pt], base: f32, bulge: f32, dice: &mut Dice) -> Path {
    let line = crate::engine::shape::even(&curve(ridge), bulge);
    let mut out = Vec::new();
    for pair in line.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        let swell = dice.between(0.28, 0.62);
        let normal = [(b[1] - a[1]) * swell, -(b[0] - a[0]) * swell];
        for i in 0..8 {
            let t = i as f32 / 8.0;
            let round = libm::sinf(t * core::f32::consts::PI).sqrt();
            out.push([
                a[0] + (b[0] - a[0]) * t + normal[0] * round,
                a[1] + (b[1] - a[1]) * t + normal[1] * round,
            ]);
        }
    }
    if let (Some(&first), Some(&last)) = (line.first(), line.last()) {
        out.push(last);
        out.push([last[0], base]);
        out.push([first[0], base]);
    }
    out
}

/// Smoke as overlapping rounds along a line, growing from `from` to `to`.
pub fn smoke(line: &[Pt], from: f32, to: f32, dice: &mut Dice) -> Vec<Path> {
    let path = curve(line);
    let mut out = Vec::new();
    let mut i = 0.0;
    while (i as usize) < path.len() {
        let t = i / path.len() as f32;
        let p = path[i as usize];
        let r = from + (to - from) * t;
        let points: Vec<Pt> = (0..8)
            .map(|k| {
                let a = k as f32 / 8.0 * core::f32::consts::TAU;
                let rr = r * dice.between(0.8, 1.15);
                [
                    p[0] + rr * libm::cosf(a) * 1.2,
                    p[1] + rr * libm::sinf(a) * 0.85,
                ]
            })
            .collect();
        out.push(blob(&points));
        i += (r / 6.0).max(1.0);
    }
    out
}

/// Curls that give smoke its roundness: arcs to be cut or drawn over it.
pub fn curls(line: &[Pt], from: f32, to: f32, count: usize, dice: &mut Dice) -> Vec<Path> {
    let path = curve(line);
    (0..count)
        .map(|i| {
            let t = (i as f32 + 0.5) / count as f32;
            let p = path[((t * path.len() as f32) as usize).min(path.len() - 1)];
            let r = (from + (to - from) * t) * dice.between(0.5, 0.9);
            let (dx, dy) = (dice.about(r * 0.5), dice.about(r * 0.4));
            let start = dice.between(0.4, 0.7);
            let a =
                crate::engine::shape::arc(p[0] + dx, p[1] + dy, r, r * 0.75, start, start + 0.42);
            gouged(&a, r * 0.14 + 0.8)
        })
        .collect()
}

/// Slanting strokes over a box: rain where they are cut, hail where they are short.
pub fn rain(
    area: [f32; 4],
    count: usize,
    length: f32,
    lean: f32,
    width: f32,
    dice: &mut Dice,
) -> Vec<Path> {
    (0..count)
        .map(|_| {
            let p = [
                dice.between(area[0], area[2]),
                dice.between(area[1], area[3]),
            ];
            let l = length * dice.between(0.4, 1.2);
            gouged(
                &[p, [p[0] + lean * l, p[1] + l]],
                width * dice.between(0.6, 1.3),
            )
        })
        .collect()
}

/// Stars pricked with the point of the knife.
pub fn star(at: Pt, size: f32) -> Path {
    (0..8)
        .map(|i| {
            let a = i as f32 / 8.0 * core::f32::consts::TAU;
            let r = if i % 2 == 0 { size } else { size * 0.38 };
            [at[0] + r * libm::cosf(a), at[1] + r * libm::sinf(a)]
        })
        .collect()
}

/// A disc.
pub fn disc(at: Pt, radius: f32) -> Path {
    ellipse(at[0], at[1], radius, radius)
}

/// Long lines bending with the wind, for a key block.
pub fn wind(from: Pt, length: f32, rise: f32, width: f32, dice: &mut Dice) -> Path {
    let (a, b) = (dice.about(rise), dice.about(rise));
    let line = curve(&[
        from,
        [from[0] + length * 0.33, from[1] - rise + a],
        [from[0] + length * 0.66, from[1] - rise * 0.4 + b],
        [from[0] + length, from[1] - rise * 1.5],
    ]);
    let fine = crate::engine::shape::even(&line, 6.0);
    stroke(&fine, |t| {
        width * libm::sinf(core::f32::consts::PI * (0.04 + 0.93 * t))
    })
}
