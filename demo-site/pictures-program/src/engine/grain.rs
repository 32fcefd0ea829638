//! What a surface of wood, lino or metal does to ink, the same at every pull.
//!
//! Each function gives the *lack* of ink at a design point: 0 where the surface takes ink fully,
//! 1 where it takes none. The grain belongs to the block: it depends on the block's seed and on
//! nothing of the impression, so that sheets from one block can be laid over each other.

use super::noise::{cloud, smooth, step, unit};
use super::shape::Pt;

/// What a block is made of.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Surface {
    /// Side-grain plank with its rings and fibres along the long side.
    Plank,
    /// Side-grain plank, the fibres running down the sheet.
    PlankUpright,
    /// Soft, coarse-ringed wood whose grain is meant to print.
    Pine,
    /// End grain: nearly even, for small engraved work.
    EndGrain,
    /// Linoleum: no grain, a slight orange-peel mottle.
    Lino,
    /// Metal: nothing but a faint tooth.
    Copper,
}

impl Surface {
    /// The lack of ink at a point, before what differs from pull to pull.
    pub fn lack(self, p: Pt, seed: u32) -> f32 {
        match self {
            Self::Plank => plank(p, seed, 9.0),
            Self::PlankUpright => plank([p[1], p[0]], seed, 9.0),
            Self::Pine => (plank(p, seed, 19.0) * 1.5).min(1.0),
            Self::EndGrain => 0.25 * cloud(p[0] / 5.0, p[1] / 5.0, 2, seed),
            Self::Lino => {
                let mottle = cloud(p[0] / 3.4, p[1] / 3.4, 2, seed);
                0.5 * step(0.45, 0.85, mottle)
            }
            Self::Copper => 0.1 * smooth(p[0] / 3.0, p[1] / 3.0, seed),
        }
    }
}

/// Rings `ring` units apart, bent round two or three knots, with fine fibres between them.
fn plank(p: Pt, seed: u32, ring: f32) -> f32 {
    let (mut across, mut knot_heart) = (p[1], 0.0_f32);
    for i in 0..3 {
        let centre = [
            unit(i, 1, seed) * 1200.0 - 100.0,
            unit(i, 2, seed) * 1000.0 - 100.0,
        ];
        let size = 9.0 + 15.0 * unit(i, 3, seed);
        let (dx, dy) = ((p[0] - centre[0]) / (size * 5.0), (p[1] - centre[1]) / size);
        let near = 1.0 / (1.0 + dx * dx + dy * dy * 0.35);
        across += near * near * (p[1] - centre[1]).signum() * -size * 0.6;
        let heart = dx * dx * 16.0 + dy * dy;
        knot_heart = knot_heart.max(1.0 - step(0.15, 1.3, heart));
    }
    let drift = 46.0 * (cloud(p[0] / 520.0, across / 190.0, 2, seed) - 0.5)
        + 9.0 * (smooth(p[0] / 140.0, across / 46.0, seed ^ 3) - 0.5);
    let phase = (across + drift) / ring + 2.2 * smooth(0.5, across / 70.0, seed ^ 5);
    let place = phase - phase.floor();
    let which = phase.floor() as i32;
    let strength = 0.35 + 0.65 * unit(which, 9, seed);
    let late = step(0.30, 0.86, place) * (1.0 - step(0.90, 1.0, place)) * strength;
    let fibre = smooth(p[0] / 58.0, across / 1.9 + drift * 0.4, seed ^ 11);
    let long_fibre = smooth(p[0] / 160.0, (across + drift) / 4.2, seed ^ 13);
    let pores = step(0.66, 0.98, fibre) * 0.8;
    (0.62 * late * (0.45 + 0.55 * fibre) + 0.34 * pores + 0.25 * step(0.5, 0.95, long_fibre))
        .mul_add(1.0 - knot_heart, knot_heart * 0.55)
        .clamp(0.0, 1.0)
}
