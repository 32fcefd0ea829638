//! Paper: its colour, its mould, and its damage. All lengths in millimetres.

use super::colour::{Colour, hex, scaled, times};
use super::noise::{Dice, cloud, mix, smooth, step, unit};
use super::shape::Pt;

/// How a sheet was made.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Make {
    /// Ribbed by the wires of the mould.
    Laid,
    /// Long-fibred and soft, with flecks.
    Japan,
    /// Even, slightly cloudy.
    Wove,
}

/// One sheet's paper.
pub struct Paper {
    /// How it was made.
    pub make: Make,
    /// Its colour when bare.
    pub tone: Colour,
    /// Uneven edges from the mould.
    pub deckle: bool,
    /// Brown spots: place, radius, strength.
    foxing: Vec<(Pt, f32, f32)>,
    /// Fibres: start, direction, length, bend, lightness.
    fibres: Vec<Fibre>,
    /// The mount's opening that has marked the sheet: left, top, right, bottom, strength.
    pub burn: Option<([f32; 4], f32)>,
    /// A tide line's height from the foot, or none.
    pub tide: Option<f32>,
    /// A fold across the middle.
    pub fold: bool,
    /// Thin creases: their two ends.
    pub creases: Vec<(Pt, Pt)>,
    seed: u32,
}

struct Fibre {
    start: Pt,
    angle: f32,
    length: f32,
    bend: f32,
    shade: f32,
}

impl Paper {
    /// A clean sheet of the given size (width, height).
    pub fn new(make: Make, tone: u32, size: Pt, seed: u32) -> Self {
        let mut dice = Dice::new(seed ^ 0x9A9E);
        let count = match make {
            Make::Japan => (size[0] * size[1] / 420.0) as usize,
            Make::Laid => (size[0] * size[1] / 2600.0) as usize,
            Make::Wove => (size[0] * size[1] / 6000.0) as usize,
        };
        let fibres = (0..count.min(900))
            .map(|_| Fibre {
                start: [dice.roll() * size[0], dice.roll() * size[1]],
                angle: dice.roll() * core::f32::consts::TAU,
                length: dice.between(2.0, 9.0),
                bend: dice.about(0.25),
                shade: if dice.chance(0.7) {
                    -dice.between(0.03, 0.10)
                } else {
                    0.05
                },
            })
            .collect();
        Self {
            make,
            tone: hex(tone),
            deckle: false,
            foxing: Vec::new(),
            fibres,
            burn: None,
            tide: None,
            fold: false,
            creases: Vec::new(),
            seed,
        }
    }

    /// Scatters foxing: about `count` spots, gathered within the box where one is given
    /// (left, top, right, bottom).
    pub fn fox(&mut self, count: usize, region: [f32; 4]) {
        let mut dice = Dice::new(self.seed ^ 0xF0C5);
        for _ in 0..count {
            let place = [
                dice.between(region[0], region[2]),
                dice.between(region[1], region[3]),
            ];
            let big = dice.chance(0.18);
            let radius = if big {
                dice.between(1.6, 3.6)
            } else {
                dice.between(0.4, 1.3)
            };
            self.foxing.push((place, radius, dice.between(0.25, 0.8)));
        }
    }

    /// The sheet's fibres as short lines, each with its shade.
    pub fn fibre_lines(&self) -> Vec<(Vec<Pt>, f32)> {
        self.fibres
            .iter()
            .map(|f| {
                let line = (0..=6)
                    .map(|i| {
                        let t = i as f32 / 6.0;
                        let a = f.angle + f.bend * t * 4.0;
                        [
                            f.start[0] + libm::cosf(a) * f.length * t,
                            f.start[1] + libm::sinf(a) * f.length * t,
                        ]
                    })
                    .collect();
                (line, f.shade)
            })
            .collect()
    }

    /// The bare paper's colour at a place on the sheet.
    pub fn at(&self, p: Pt) -> Colour {
        let mut light = 1.0 + 0.030 * (cloud(p[0] / 24.0, p[1] / 24.0, 3, self.seed) - 0.5);
        light += match self.make {
            Make::Laid => self.ribs(p),
            Make::Japan => 0.05 * (smooth(p[0] / 1.3, p[1] / 2.2, self.seed ^ 2) - 0.5),
            Make::Wove => 0.045 * (cloud(p[0] / 1.7, p[1] / 1.7, 2, self.seed ^ 2) - 0.5),
        };
        scaled(self.aged(p), light)
    }

    fn ribs(&self, p: Pt) -> f32 {
        let wander = 0.5 * smooth(p[0] / 60.0, p[1] / 90.0, self.seed ^ 4);
        let fine = libm::sinf((p[1] + wander) * core::f32::consts::TAU / 1.15);
        let chain = (p[0] + 1.6 * smooth(0.3, p[1] / 80.0, self.seed ^ 6)) / 26.0;
        let near = (chain - chain.floor() - 0.5).abs() * 26.0;
        let line = 1.0 - step(0.2, 0.9, near);
        let beside = 1.0 - step(0.5, 3.2, near);
        0.014 * fine - 0.030 * line + 0.014 * beside
    }

    fn aged(&self, p: Pt) -> Colour {
        let mut tone = self.tone;
        if let Some((opening, strength)) = self.burn {
            let dx = (opening[0] - p[0]).max(p[0] - opening[2]);
            let dy = (opening[1] - p[1]).max(p[1] - opening[3]);
            let outside = dx.max(dy) + 0.8 * (smooth(p[0] / 9.0, p[1] / 9.0, self.seed) - 0.5);
            let band = step(-5.0, 0.0, outside) * (1.0 - step(0.0, 2.5, outside));
            let exposed = 1.0 - step(-1.0, 1.0, outside);
            let brown = strength * (0.85 * band + 0.35 * exposed);
            tone = times(
                tone,
                [1.0 - 0.10 * brown, 1.0 - 0.22 * brown, 1.0 - 0.42 * brown],
            );
        }
        if let Some(height) = self.tide {
            let edge = p[1] - height + 7.0 * (cloud(p[0] / 34.0, 0.5, 3, self.seed ^ 21) - 0.5);
            let line = (1.0 - step(0.0, 2.2, edge.abs())) * 0.5 + 0.18 * step(0.0, 1.0, edge);
            tone = times(
                tone,
                [1.0 - 0.10 * line, 1.0 - 0.17 * line, 1.0 - 0.30 * line],
            );
        }
        for &(place, radius, strength) in &self.foxing {
            let (dx, dy) = (p[0] - place[0], p[1] - place[1]);
            let d2 = dx * dx + dy * dy;
            if d2 < radius * radius * 4.0 {
                let ragged = 1.0 + 0.7 * (smooth(p[0] / 0.7, p[1] / 0.7, self.seed ^ 31) - 0.5);
                let spot = strength * (1.0 - step(0.1, 1.0, d2.sqrt() / radius * ragged));
                let halo = 0.22 * strength * (1.0 - step(0.5, 2.0, d2.sqrt() / radius));
                let brown = spot.max(halo);
                tone = times(
                    tone,
                    [1.0 - 0.25 * brown, 1.0 - 0.46 * brown, 1.0 - 0.68 * brown],
                );
            }
        }
        tone
    }

    /// Where the sheet ends: the distance (mm) that its edge strays inwards at a place along it.
    pub fn edge_stray(&self, along: f32, side: i32) -> f32 {
        if self.deckle {
            let wave = cloud(along / 23.0, side as f32 * 7.7, 5, self.seed ^ 41);
            mix(0.0, 2.9, wave)
        } else {
            0.25 * smooth(along / 40.0, side as f32 * 7.7, self.seed ^ 41)
        }
    }

    /// The paper's tooth at a place: how much a pencil or a dry ink skips, `0..1`.
    pub fn tooth(&self, p: Pt) -> f32 {
        let scale = if self.make == Make::Laid { 0.55 } else { 0.42 };
        let fine = smooth(p[0] / scale, p[1] / scale, self.seed ^ 51);
        mix(
            fine,
            unit((p[0] * 5.0) as i32, (p[1] * 5.0) as i32, self.seed ^ 52),
            0.3,
        )
    }
}
