//! Passages that several designs have in common.

use super::Bench;
use crate::engine::noise::{Dice, mix, smooth};
use crate::engine::plane::Plane;
use crate::engine::shape::{Path, Pt, bar, knifed};
use crate::parts::boats::Sailer;
use crate::parts::lines::outlined;
use crate::parts::sky::streak;

/// Cuts long clouds drawn out by wind into a block. Each has the percents of its left end, its length
/// in percent of the image's width, and its thickness in design units; `stray` is the knife's.
pub fn cut_streaks(
    block: &mut Plane,
    b: &Bench,
    streaks: &[(f32, f32, f32, f32)],
    stray: f32,
    dice: &mut Dice,
) {
    for &(x, y, length, thick) in streaks {
        let cloud = streak(b.at(x, y), b.x(length), thick, dice);
        block.cut(&knifed(&cloud, stray, 3));
    }
}

/// A split along the grain of a block, from its right edge to a percent of the width.
pub struct Split {
    /// The percent of the width that it reaches.
    pub reach: f32,
    /// The percent of the height at which it runs.
    pub level: f32,
    /// How far it strays from that level, in design units.
    pub sway: f32,
    /// How many waves it makes.
    pub waves: f32,
    /// How many points the line has.
    pub points: usize,
}

impl Split {
    /// The open line along which the block has split.
    pub fn line(&self, b: &Bench) -> Path {
        let last = (self.points - 1) as f32;
        (0..self.points)
            .map(|i| {
                let t = i as f32 / last;
                let stray = self.sway * (smooth(t * self.waves, 0.0, b.seed) - 0.5);
                [b.x(mix(101.0, self.reach, t)), b.y(self.level) + stray]
            })
            .collect()
    }
}

/// Cuts a boat under sail on a key block: pale sails in outlines `sail` wide, seams where a width is
/// given, dark spars and hull with a pale strake.
pub fn under_sail(k: &mut Plane, boat: &Sailer, sail: f32, seam: Option<f32>) {
    for shape in &boat.sails {
        outlined(k, shape, sail);
    }
    if let Some(width) = seam {
        for line in &boat.seams {
            k.leave(&bar(line, width));
        }
    }
    k.leave_all(&boat.spars);
    k.leave(&boat.hull);
    k.cut(&boat.strake);
}

/// How a pavement of cobbles lies, from the percent of the height where it begins to the foot.
#[derive(Clone, Copy)]
pub struct Pavement {
    /// Percent of the height where it begins.
    pub top: f32,
    /// Size of a stone there and at the foot, in design units.
    pub size: [f32; 2],
    /// The longest stone of a row, as a share of its size; the shortest is 0.8.
    pub longest: f32,
    /// Distance between rows there and at the foot, in percent of the height.
    pub gap: [f32; 2],
}

/// One stone of a pavement.
pub struct Stone {
    /// Its middle, in design units.
    pub at: Pt,
    /// Its length in design units.
    pub length: f32,
    /// The size of the row's stones in design units.
    pub size: f32,
    /// How near it lies: 0 at the top of the pavement, 1 at the foot.
    pub near: f32,
}

/// Lays the stones row by row and hands each to `draw`.
pub fn pave(b: &Bench, how: Pavement, dice: &mut Dice, mut draw: impl FnMut(&Stone, &mut Dice)) {
    let mut y = how.top;
    while y < 101.0 {
        let near = (y - how.top) / (101.0 - how.top);
        let size = mix(how.size[0], how.size[1], near);
        let mut x = -dice.roll() * size;
        while x < b.w {
            let length = size * dice.between(0.8, how.longest);
            let at = [x + length / 2.0, b.y(y)];
            draw(
                &Stone {
                    at,
                    length,
                    size,
                    near,
                },
                dice,
            );
            x += length;
        }
        y += mix(how.gap[0], how.gap[1], near);
    }
}
