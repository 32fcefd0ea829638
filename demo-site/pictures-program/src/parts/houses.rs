//! Gables, roofs, windows, skylines.

use crate::engine::noise::Dice;
use crate::engine::shape::{Path, Pt, rect};

/// How a gable ends against the sky.
#[derive(Clone, Copy, PartialEq)]
pub enum Gable {
    /// In steps.
    Stepped,
    /// In a plain point.
    Pointed,
    /// In a bell: two curves and a small flat top.
    Bell,
}

/// A house front: left, right, eaves, top of the gable, ground.
pub fn front(left: f32, right: f32, eaves: f32, top: f32, ground: f32, gable: Gable) -> Path {
    let middle = (left + right) / 2.0;
    let mut out = vec![[left, ground], [left, eaves]];
    match gable {
        Gable::Pointed => out.push([middle, top]),
        Gable::Stepped => {
            let steps = 4;
            let (dx, dy) = (
                (middle - left) / (steps as f32 + 0.5),
                (eaves - top) / steps as f32,
            );
            for i in 0..steps {
                let i = i as f32;
                out.push([left + dx * i, eaves - dy * (i + 1.0)]);
                out.push([left + dx * (i + 1.0), eaves - dy * (i + 1.0)]);
            }
            for i in (0..steps).rev() {
                let i = i as f32;
                out.push([right - dx * (i + 1.0), eaves - dy * (i + 1.0)]);
                out.push([right - dx * i, eaves - dy * (i + 1.0)]);
            }
        }
        Gable::Bell => {
            let (w, h) = (middle - left, eaves - top);
            for (x, y) in [
                (0.12, 0.06),
                (0.22, 0.3),
                (0.45, 0.5),
                (0.66, 0.66),
                (0.72, 0.92),
                (0.72, 1.0),
            ] {
                out.push([left + w * x, eaves - h * y]);
            }
            for (x, y) in [
                (0.72, 1.0),
                (0.72, 0.92),
                (0.66, 0.66),
                (0.45, 0.5),
                (0.22, 0.3),
                (0.12, 0.06),
            ] {
                out.push([right - w * x, eaves - h * y]);
            }
        }
    }
    out.push([right, eaves]);
    out.push([right, ground]);
    out
}

/// A window and its glazing bars.
pub fn window(left: f32, top: f32, width: f32, height: f32) -> (Path, Vec<Path>) {
    let bar = width * 0.09;
    let bars = vec![
        rect(left + width / 2.0 - bar / 2.0, top, bar, height),
        rect(left, top + height * 0.33 - bar / 2.0, width, bar),
        rect(left, top + height * 0.67 - bar / 2.0, width, bar),
    ];
    (rect(left, top, width, height), bars)
}

/// A row of warehouses or houses from left to right: `(fronts, roofs seen from the side)`.
pub fn row(x: [f32; 2], ground: f32, height: f32, width: f32, dice: &mut Dice) -> Vec<Path> {
    let mut out = Vec::new();
    let mut left = x[0];
    while left < x[1] {
        let w = width * dice.between(0.7, 1.35);
        let h = height * dice.between(0.72, 1.1);
        let eaves = ground - h * 0.62;
        let gable = match (dice.roll() * 4.0) as u32 {
            0 => Gable::Stepped,
            1 => Gable::Bell,
            _ => Gable::Pointed,
        };
        if dice.chance(0.3) {
            // A roof along the street instead of a gable.
            out.push(vec![
                [left, ground],
                [left, eaves],
                [left + w * 0.08, ground - h],
                [left + w * 0.92, ground - h],
                [left + w, eaves],
                [left + w, ground],
            ]);
        } else {
            out.push(front(left, left + w, eaves, ground - h, ground, gable));
        }
        if dice.chance(0.5) {
            let cx = left + w * dice.between(0.25, 0.75);
            out.push(rect(cx, ground - h * 1.06, w * 0.09, h * 0.4));
        }
        left += w;
    }
    out
}

/// A church spire.
pub fn spire(foot: Pt, height: f32, width: f32) -> Path {
    let [x, y] = foot;
    vec![
        [x - width / 2.0, y],
        [x - width / 2.0, y - height * 0.45],
        [x - width * 0.6, y - height * 0.47],
        [x - width * 0.22, y - height * 0.62],
        [x, y - height],
        [x + width * 0.22, y - height * 0.62],
        [x + width * 0.6, y - height * 0.47],
        [x + width / 2.0, y - height * 0.45],
        [x + width / 2.0, y],
    ]
}

/// Tiles over a roof's outline box: rows of short level strokes.
pub fn tiles(area: [f32; 4], gap: f32, dice: &mut Dice) -> Vec<Path> {
    let mut out = Vec::new();
    let mut y = area[1] + gap;
    while y < area[3] {
        let mut x = area[0] + dice.roll() * gap * 3.0;
        while x < area[2] {
            let l = gap * dice.between(1.6, 4.5);
            out.push(crate::engine::shape::gouged(
                &[[x, y], [x + l, y + dice.about(0.5)]],
                gap * 0.26,
            ));
            x += l + gap * dice.between(0.5, 2.0);
        }
        y += gap * dice.between(0.9, 1.1);
    }
    out
}
