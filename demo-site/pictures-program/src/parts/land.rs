//! Trees, reeds, rock, ice.

use crate::engine::noise::Dice;
use crate::engine::shape::{Path, Pt, blob, curve, tapered};

/// The outline of a poplar.
pub fn poplar(foot: Pt, height: f32, dice: &mut Dice) -> Path {
    let w = height * 0.13;
    let mut points = vec![[foot[0] - w * 0.2, foot[1]]];
    for i in 0..7 {
        let t = i as f32 / 7.0;
        let wide =
            w * (0.55 + 0.75 * libm::sinf((0.15 + t * 0.85) * 3.0)) * dice.between(0.85, 1.15);
        points.push([foot[0] - wide, foot[1] - height * (0.08 + 0.86 * t)]);
    }
    points.push([foot[0], foot[1] - height]);
    for i in (0..7).rev() {
        let t = i as f32 / 7.0;
        let wide =
            w * (0.55 + 0.75 * libm::sinf((0.15 + t * 0.85) * 3.0)) * dice.between(0.85, 1.15);
        points.push([foot[0] + wide, foot[1] - height * (0.08 + 0.86 * t)]);
    }
    points.push([foot[0] + w * 0.2, foot[1]]);
    blob(&points)
}

/// A willow's hanging shoots, as open lines from its crown.
pub fn willow(crown: Pt, radius: f32, count: usize, dice: &mut Dice) -> Vec<Path> {
    (0..count)
        .map(|i| {
            let t = i as f32 / count as f32 * 2.0 - 1.0;
            let x = crown[0] + t * radius * 0.5 + dice.about(radius * 0.1);
            let y = crown[1] - radius * (0.5 - 0.35 * t * t) + dice.about(radius * 0.12);
            let out = t * radius * dice.between(0.5, 0.9);
            curve(&[
                [x, y],
                [x + out * 0.7, y + radius * 0.05],
                [x + out, y + radius * 0.45],
                [x + out * 1.05, y + radius * dice.between(0.8, 1.5)],
            ])
        })
        .collect()
}

/// One reed: a bending stem with a plume or a blade, as closed strokes.
pub fn reed(foot: Pt, height: f32, lean: f32, dice: &mut Dice) -> Vec<Path> {
    let top = [foot[0] + lean, foot[1] - height];
    let stem = curve(&[foot, [foot[0] + lean * 0.25, foot[1] - height * 0.5], top]);
    let mut out = vec![tapered(&stem, height * 0.016 + 1.0, 1.6)];
    let plume = height * 0.15;
    out.push(blob(&[
        [top[0] - plume * 0.10, top[1] + plume * 0.4],
        [top[0] - plume * 0.16, top[1] - plume * 0.3],
        [top[0] + plume * 0.10, top[1] - plume],
        [top[0] + plume * 0.34, top[1] - plume * 0.8],
        [top[0] + plume * 0.20, top[1] - plume * 0.1],
        [top[0] + plume * 0.06, top[1] + plume * 0.5],
    ]));
    for i in 0..2 {
        let t = 0.3 + 0.3 * i as f32 + dice.about(0.06);
        let at = stem[((t * stem.len() as f32) as usize).min(stem.len() - 1)];
        let side = if i == 0 { 1.0 } else { -1.0 };
        let reach = height * dice.between(0.14, 0.24) * side;
        let blade = curve(&[
            at,
            [at[0] + reach * 0.6, at[1] - height * 0.12],
            [at[0] + reach, at[1] - height * 0.06],
        ]);
        out.push(crate::engine::shape::gouged(&blade, height * 0.022 + 0.8));
    }
    out
}

/// An angular plate of ice about a centre, flattened by the distance.
pub fn floe(at: Pt, rx: f32, ry: f32, dice: &mut Dice) -> Path {
    let n = 5 + (dice.roll() * 3.0) as usize;
    let start = dice.roll();
    (0..n)
        .map(|i| {
            let a = (start + (i as f32 + dice.about(0.28)) / n as f32) * core::f32::consts::TAU;
            let r = dice.between(0.8, 1.12);
            [
                at[0] + rx * r * libm::cosf(a),
                at[1] + ry * r * libm::sinf(a),
            ]
        })
        .collect()
}

/// The side of a floe below its top, `thick` deep: the lower edge doubled.
pub fn thickness(floe: &[Pt], thick: f32) -> Path {
    let middle = floe.iter().map(|p| p[1]).sum::<f32>() / floe.len().max(1) as f32;
    let mut lower: Path = floe
        .iter()
        .filter(|p| p[1] >= middle - 1.0)
        .copied()
        .collect();
    lower.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut out = lower.clone();
    out.extend(lower.iter().rev().map(|p| [p[0], p[1] + thick]));
    out
}

/// A far shore or range of hills: closed down to `base`.
pub fn hills(x: [f32; 2], base: f32, height: f32, humps: usize, dice: &mut Dice) -> Path {
    let mut ridge = Vec::new();
    for i in 0..=humps {
        let t = i as f32 / humps as f32;
        ridge.push([
            x[0] + (x[1] - x[0]) * t,
            base - height * dice.between(0.35, 1.0),
        ]);
    }
    let mut out = curve(&ridge);
    out.push([x[1], base]);
    out.push([x[0], base]);
    out
}
