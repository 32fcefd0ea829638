//! One impression: its inks, what is worn, missing or shifted, and the damage to the sheet.

use super::blocks::{self, Block, Blocks, SHEET};
use super::{Chance, Class};

/// How an impression was printed, and its condition.
pub struct Impression {
    paper: f64,
    key_ink: f64,
    /// The grey of each tone block's ink; `None` where the block was left out.
    tone_inks: Vec<Option<f64>>,
    /// How far each tone block sits from its place, px. A sheet of 360 mm is 1180 px wide: 1.5 mm are 5.
    tone_shifts: Vec<(isize, isize)>,
    /// Whether the sky is wiped from light to dark upwards or downwards, or not at all.
    gradation: Option<bool>,
    /// The share of key lines that no longer print.
    wear: f64,
    spots: usize,
    stamps: usize,
    /// The part of the sheet that is left: left, top, right and bottom, px.
    pub kept: [f64; 4],
    seed: u64,
}

impl Impression {
    pub fn of(class: Class, blocks: &Blocks, chance: &mut Chance) -> Impression {
        let is_hard = class == Class::Hard;
        // Light ink on a dark ground, or paper under plate tone.
        let inverted = is_hard && chance.happens(0.35);
        let (paper, key_ink) = if inverted {
            (chance.between(60.0, 110.0), chance.between(150.0, 215.0))
        } else {
            let ink = match class {
                Class::Easy => chance.between(25.0, 60.0),
                Class::Medium => chance.between(25.0, 110.0),
                Class::Hard => chance.between(25.0, 140.0),
            };
            (chance.between(205.0, 240.0), ink)
        };
        let misregister = match class {
            Class::Easy => 0.0,
            Class::Medium => 3.0,
            Class::Hard => 5.0,
        };
        let missing = match class {
            Class::Easy => 0.0,
            Class::Medium => 0.15,
            Class::Hard => 0.4,
        };
        let tone_inks = blocks.tones.iter().map(|_| {
            let ink = chance.between(95.0, 195.0);
            (!chance.happens(missing)).then_some(ink)
        });
        let tone_inks = tone_inks.collect();
        let shift =
            |chance: &mut Chance| chance.between(-misregister, misregister).round() as isize;
        let tone_shifts = blocks.tones.iter().map(|_| (shift(chance), shift(chance)));
        let tone_shifts = tone_shifts.collect();
        let trim = if class == Class::Easy { 12.0 } else { 44.0 };
        let (wide, high) = (SHEET.0 as f64, SHEET.1 as f64);
        Impression {
            paper,
            key_ink,
            tone_inks,
            tone_shifts,
            gradation: chance.happens(0.5).then(|| chance.happens(0.5)),
            wear: match class {
                Class::Easy => 0.0,
                Class::Medium => chance.between(0.0, 0.15),
                Class::Hard => chance.between(0.1, 0.35),
            },
            spots: if class == Class::Easy {
                0
            } else {
                chance.below(60)
            },
            stamps: chance.below(if class == Class::Easy { 2 } else { 4 }),
            kept: [
                chance.between(0.0, trim),
                chance.between(0.0, trim),
                wide - chance.between(0.0, trim),
                high - chance.between(0.0, trim),
            ],
            seed: chance.below(1 << 30) as u64,
        }
    }

    /// The sheet, grey.
    pub fn pull(&self, blocks: &Blocks) -> Vec<f32> {
        let mut chance = Chance::new(self.seed);
        let (width, height) = SHEET;
        let mut sheet = vec![self.paper as f32; width * height];
        let layers = blocks
            .tones
            .iter()
            .zip(&self.tone_inks)
            .zip(&self.tone_shifts);
        for (at, ((block, ink), shift)) in layers.enumerate() {
            let Some(ink) = ink else { continue };
            for y in 0..height {
                let wiped = match (at, self.gradation) {
                    (0, Some(true)) => 1.0 - y as f32 / height as f32,
                    (0, Some(false)) => y as f32 / height as f32 * 1.8,
                    _ => 0.8,
                };
                let from = y.saturating_add_signed(-shift.1).min(height - 1);
                for x in 0..width {
                    let column = x.saturating_add_signed(-shift.0).min(width - 1);
                    let cover = block[from * width + column] * wiped.min(1.0);
                    let to = &mut sheet[y * width + x];
                    // Inks are transparent: they darken what lies under them.
                    *to -= cover * (*to - *ink as f32).max(0.0) * 0.8;
                }
            }
        }
        let worn = self.worn(&mut chance);
        for (at, to) in sheet.iter_mut().enumerate() {
            let (x, y) = (at % width, at / width);
            let prints = worn[(y / 12) * (width / 12 + 1) + x / 12];
            *to += blocks.key[at] * prints * (self.key_ink as f32 - *to);
        }
        self.age(&mut sheet, &mut chance);
        sheet
    }

    /// How much the key block still prints, in squares of 12 px.
    fn worn(&self, chance: &mut Chance) -> Vec<f32> {
        let squares = (SHEET.0 / 12 + 1) * (SHEET.1 / 12 + 1);
        let worn = (0..squares).map(|_| if chance.happens(self.wear) { 0.1 } else { 1.0 });
        worn.collect()
    }

    /// Foxing and collectors' stamps.
    fn age(&self, sheet: &mut [f32], chance: &mut Chance) {
        let (width, height) = SHEET;
        for _ in 0..self.spots {
            let (cx, cy) = (chance.below(width) as f32, chance.below(height) as f32);
            let (radius, depth) = (
                chance.between(2.0, 11.0) as f32,
                chance.between(15.0, 70.0) as f32,
            );
            let reach = radius as usize + 1;
            for y in (cy as usize).saturating_sub(reach)..(cy as usize + reach).min(height) {
                for x in (cx as usize).saturating_sub(reach)..(cx as usize + reach).min(width) {
                    let (dx, dy) = (x as f32 - cx, y as f32 - cy);
                    let inside = (1.0 - (dx * dx + dy * dy) / (radius * radius)).max(0.0);
                    sheet[y * width + x] -= depth * inside;
                }
            }
        }
        let mut stamp: Block = vec![0.0; width * height];
        for _ in 0..self.stamps {
            let middle = (
                chance.between(60.0, width as f64 - 60.0),
                chance.between(60.0, height as f64 - 60.0),
            );
            let reach = chance.between(12.0, 30.0);
            for (from, to) in [((-1.0, -1.0), (1.0, -1.0)), ((1.0, -1.0), (1.0, 1.0))] {
                for sign in [1.0, -1.0] {
                    let place = |p: (f64, f64)| {
                        (middle.0 + sign * p.0 * reach, middle.1 + sign * p.1 * reach)
                    };
                    blocks::stroke(&mut stamp, place(from), place(to), 2.5);
                }
            }
            blocks::glyph(&mut stamp, middle, reach * 0.8, chance);
        }
        if self.stamps > 0 {
            for (to, cover) in sheet.iter_mut().zip(&stamp) {
                *to += cover * 0.8 * (90.0 - *to);
            }
        }
    }
}
