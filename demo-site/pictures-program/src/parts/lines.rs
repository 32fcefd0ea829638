//! Lines in numbers (hatching, gouge marks, stipple), outlines, bitten line and aquatint.

use crate::engine::noise::{Dice, mix, smooth, step};
use crate::engine::plane::Plane;
use crate::engine::shape::{Path, Pt, bar, curve, ellipse, even, gouged, stroke};

/// The box round a shape: left, top, right, bottom.
pub fn bounds(shape: &[Pt]) -> [f32; 4] {
    shape
        .iter()
        .fold([f32::MAX, f32::MAX, f32::MIN, f32::MIN], |b, p| {
            [
                b[0].min(p[0]),
                b[1].min(p[1]),
                b[2].max(p[0]),
                b[3].max(p[1]),
            ]
        })
}

/// The shape's outline as a line of one width.
pub fn outline(shape: &[Pt], width: f32) -> Path {
    let mut closed = shape.to_vec();
    closed.extend(shape.first());
    bar(&closed, width)
}

/// How a hatching is laid.
#[derive(Clone, Copy)]
pub struct Hatch {
    /// Direction in turns: 0 runs across, 0.25 down.
    pub turn: f32,
    /// Distance between lines.
    pub gap: f32,
    /// Width of a line.
    pub width: f32,
    /// How far the lines stray from straight.
    pub stray: f32,
}

/// Parallel lines over the shape's box, straying and broken a little; clip them to the shape.
pub fn hatch(shape: &[Pt], how: Hatch, dice: &mut Dice) -> Vec<Path> {
    let b = bounds(shape);
    let centre = [(b[0] + b[2]) / 2.0, (b[1] + b[3]) / 2.0];
    let reach = 0.5 * ((b[2] - b[0]).powi(2) + (b[3] - b[1]).powi(2)).sqrt() + 4.0;
    let angle = how.turn * core::f32::consts::TAU;
    let (sin, cos) = (libm::sinf(angle), libm::cosf(angle));
    let mut lines = Vec::new();
    let mut across = -reach;
    while across < reach {
        let mut along = -reach + dice.roll() * how.gap * 4.0;
        while along < reach {
            let length = dice.between(0.5, 1.2) * (60.0 + how.gap * 14.0);
            let place = |a: f32, s: f32| {
                let o = across + s;
                [centre[0] + a * cos - o * sin, centre[1] + a * sin + o * cos]
            };
            let line = [
                place(along, dice.about(how.stray)),
                place(along + length * 0.5, dice.about(how.stray)),
                place(along + length, dice.about(how.stray)),
            ];
            let width = how.width * dice.between(0.75, 1.2);
            let fine = even(&curve(&line), 9.0);
            lines.push(stroke(&fine, |t| {
                width * (0.55 + 0.45 * libm::sinf(3.0 * t + 0.1))
            }));
            along += length * dice.between(0.9, 1.0) + how.gap * 0.3;
        }
        across += how.gap * dice.between(0.86, 1.14);
    }
    lines
}

/// Hatching clipped to the shape and left standing.
pub fn shade(plane: &mut Plane, shape: &[Pt], how: Hatch, dice: &mut Dice) {
    let lines = hatch(shape, how, dice);
    plane.within(shape, |p| p.leave_all(&lines));
}

/// Hatching over a part of the shape, clipped to both and left standing.
pub fn shade_part(plane: &mut Plane, shape: &[Pt], part: &[Pt], how: Hatch, dice: &mut Dice) {
    let lines = hatch(part, how, dice);
    plane.within(shape, |p| {
        p.leave_all(&lines);
        p.keep(part);
    });
}

/// Clears the shape and leaves its outline as a line of one width.
pub fn outlined(plane: &mut Plane, shape: &[Pt], width: f32) {
    plane.cut(shape);
    plane.leave(&outline(shape, width));
}

/// Leaves the shape standing, set off from what lies behind by a cleared line of one width.
pub fn set_off(plane: &mut Plane, shape: &[Pt], clearance: f32) {
    plane.cut(&outline(shape, clearance));
    plane.leave(shape);
}

/// Hatching clipped to the shape and cut away.
pub fn clear(plane: &mut Plane, shape: &[Pt], how: Hatch, dice: &mut Dice) {
    let lines = hatch(shape, how, dice);
    plane.cut_within(shape, |p| p.leave_all(&lines));
}

/// Short gouge marks over a box, all in nearly one direction, as on a cleared ground.
pub fn pecks(area: [f32; 4], count: usize, length: f32, turn: f32, dice: &mut Dice) -> Vec<Path> {
    (0..count)
        .map(|_| {
            let p = [
                dice.between(area[0], area[2]),
                dice.between(area[1], area[3]),
            ];
            let a = (turn + dice.about(0.03)) * core::f32::consts::TAU;
            let l = length * dice.between(0.5, 1.3);
            let end = [p[0] + l * libm::cosf(a), p[1] + l * libm::sinf(a)];
            gouged(&[p, end], l * 0.075 + 1.5)
        })
        .collect()
}

/// Dots over a box.
pub fn stipple(area: [f32; 4], count: usize, radius: f32, dice: &mut Dice) -> Vec<Path> {
    (0..count)
        .map(|_| {
            let r = radius * dice.between(0.5, 1.3);
            ellipse(
                dice.between(area[0], area[2]),
                dice.between(area[1], area[3]),
                r,
                r * 0.85,
            )
        })
        .collect()
}

/// Lines that pass over from one edge to another: `count` curves between two lines, as an
/// engraver models a sail or a hull.
pub fn between(a: &[Pt], b: &[Pt], count: usize, width: f32, dice: &mut Dice) -> Vec<Path> {
    const SPANS: usize = 16;
    let along = |line: &[Pt], t: f32| -> Pt {
        let at = t * (line.len() - 1) as f32;
        let i = (at as usize).min(line.len() - 2);
        let f = at - i as f32;
        [
            line[i][0] + (line[i + 1][0] - line[i][0]) * f,
            line[i][1] + (line[i + 1][1] - line[i][1]) * f,
        ]
    };
    if a.len() < 2 || b.len() < 2 {
        return Vec::new();
    }
    (0..count)
        .map(|i| {
            let share = (i as f32 + 0.5 + dice.about(0.25)) / count as f32;
            let line: Path = (0..=SPANS)
                .map(|s| {
                    let t = s as f32 / SPANS as f32;
                    let (p, q) = (along(a, t), along(b, t));
                    [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share]
                })
                .collect();
            gouged(&line, width * dice.between(0.7, 1.3))
        })
        .collect()
}

/// A line as acid bites it: uneven in width, slightly shaky.
pub fn bitten(line: &[Pt], width: f32, dice: &mut Dice) -> Path {
    let fine = even(line, 4.0);
    let lift = dice.roll() * 90.0;
    let shaky: Path = fine
        .iter()
        .enumerate()
        .map(|(i, p)| {
            let t = i as f32 * 0.23 + lift;
            [
                p[0] + 1.3 * (smooth(t, 0.0, 3) - 0.5),
                p[1] + 1.3 * (smooth(t, 9.0, 5) - 0.5),
            ]
        })
        .collect();
    stroke(&shaky, |t| {
        let ends = (t * 14.0).min((1.0 - t) * 14.0).clamp(0.35, 1.0);
        width * ends * (0.65 + 0.7 * smooth(t * 17.0 + lift, 2.0, 7))
    })
}

/// An outline drawn twice with slight differences, as in an etching.
pub fn drawn(shape: &[Pt], width: f32, dice: &mut Dice) -> Vec<Path> {
    let mut closed = shape.to_vec();
    if let Some(&first) = shape.first() {
        closed.push(first);
    }
    vec![
        bitten(&closed, width, dice),
        bitten(&closed, width * 0.55, dice),
    ]
}

/// Turns a plane of tones into aquatint: acid stops round each grain of resin.
pub fn resin(plane: &mut Plane, seed: u32) {
    let window = plane.window;
    for py in 0..window.h {
        for px in 0..window.w {
            let cell = &mut plane.data[py * window.w + px];
            if *cell > 0.003 {
                let p = window.at(px, py);
                let grain = 0.6 * smooth(p[0] / 2.1, p[1] / 2.1, seed)
                    + 0.4 * smooth(p[0] / 1.1, p[1] / 1.1, seed ^ 5);
                let bitten = step(grain - 0.24, grain + 0.24, *cell);
                *cell = 0.35 * *cell + 0.65 * bitten;
            }
        }
    }
}

/// A point on the way from one point to another.
pub fn toward(a: Pt, b: Pt, t: f32) -> Pt {
    [mix(a[0], b[0], t), mix(a[1], b[1], t)]
}

/// Cross-hatching: one set of lines, or two, or three, as the tone asks.
pub fn tone(k: &mut Plane, shape: &[Pt], depth: usize, gap: f32, turn: f32, dice: &mut Dice) {
    for i in 0..depth {
        let how = Hatch {
            turn: turn + 0.11 * i as f32,
            gap: gap * (1.0 + 0.12 * i as f32),
            width: 1.35,
            stray: 1.1,
        };
        shade(k, shape, how, dice);
    }
}
