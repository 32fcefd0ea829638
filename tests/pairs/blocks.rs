//! The blocks of a print: key lines, tone areas, border and title, as planes of how much ink they take.

use super::Chance;

/// Width and height of every sheet, px.
pub const SHEET: (usize, usize) = (1180, 840);

/// How much ink each place of a block takes, 0 to 1.
pub type Block = Vec<f32>;

/// The blocks of one design.
pub struct Blocks {
    pub key: Block,
    pub tones: Vec<Block>,
}

impl Blocks {
    /// Cuts the blocks of a design. A design of a series has the series' border and title.
    pub fn cut(seed: u64, series: Option<u64>) -> Blocks {
        let mut chance = Chance::new(seed);
        let mut key = vec![0.0; SHEET.0 * SHEET.1];
        let mut shared = Chance::new(series.unwrap_or(seed) ^ 0x7365_7269_6573);
        let frame = frame(&mut key, &mut shared);
        let tones = scene(&mut key, &frame, &mut chance);
        Blocks { key, tones }
    }
}

/// The part inside the border.
struct Frame {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
    title: [f64; 4],
}

impl Frame {
    fn point(&self, chance: &mut Chance) -> (f64, f64) {
        (
            chance.between(self.left, self.right),
            chance.between(self.top, self.bottom),
        )
    }
}

/// Draws border and title.
fn frame(key: &mut Block, chance: &mut Chance) -> Frame {
    let margin = chance.between(45.0, 80.0);
    let (right, bottom) = (SHEET.0 as f64 - margin, SHEET.1 as f64 - margin);
    let lines = if chance.happens(0.5) { 2 } else { 1 };
    for line in 0..lines {
        let inset = f64::from(line) * 9.0;
        let (l, t) = (margin + inset, margin + inset);
        let (r, b) = (right - inset, bottom - inset);
        for (from, to) in [
            ((l, t), (r, t)),
            ((r, t), (r, b)),
            ((r, b), (l, b)),
            ((l, b), (l, t)),
        ] {
            stroke(key, from, to, 2.2);
        }
    }
    let (wide, high) = (chance.between(46.0, 70.0), chance.between(130.0, 210.0));
    let x = if chance.happens(0.5) {
        margin + 30.0
    } else {
        right - 30.0 - wide
    };
    let y = margin + 30.0;
    for (from, to) in [
        ((x, y), (x + wide, y)),
        ((x + wide, y), (x + wide, y + high)),
        ((x + wide, y + high), (x, y + high)),
        ((x, y + high), (x, y)),
    ] {
        stroke(key, from, to, 1.8);
    }
    let mut down = y + 14.0;
    while down < y + high - 14.0 {
        glyph(key, (x + wide / 2.0, down + 8.0), 11.0, chance);
        down += 26.0;
    }
    Frame {
        left: margin + 20.0,
        top: margin + 20.0,
        right: right - 20.0,
        bottom: bottom - 20.0,
        title: [x, y, x + wide, y + high],
    }
}

/// A few strokes in a square, like an illegible character.
pub fn glyph(block: &mut Block, middle: (f64, f64), reach: f64, chance: &mut Chance) {
    for _ in 0..3 + chance.below(4) {
        let from = (
            middle.0 + chance.between(-reach, reach),
            middle.1 + chance.between(-reach, reach),
        );
        let to = if chance.happens(0.5) {
            (middle.0 + chance.between(-reach, reach), from.1)
        } else {
            (from.0, middle.1 + chance.between(-reach, reach))
        };
        stroke(block, from, to, 2.4);
    }
}

/// Hills, trees, water, a sun, figures and rain; gives the tone blocks under them.
fn scene(key: &mut Block, frame: &Frame, chance: &mut Chance) -> Vec<Block> {
    let mut tones = Vec::new();
    let mut sky = vec![0.0; SHEET.0 * SHEET.1];
    let horizon = chance.between(0.3, 0.55) * SHEET.1 as f64;
    fill(&mut sky, frame, |_, y| y < horizon);
    tones.push(sky);

    let hills = 2 + chance.below(3);
    for hill in 0..hills {
        let base = horizon + f64::from(hill as u32) * chance.between(35.0, 80.0);
        let waves: Vec<(f64, f64, f64)> = (0..4)
            .map(|k| {
                let length = chance.between(0.004, 0.014) * f64::from(k + 1);
                (
                    length,
                    chance.between(0.0, std::f64::consts::TAU),
                    chance.between(8.0, 42.0) / f64::from(k + 1),
                )
            })
            .collect();
        let ridge = move |x: f64| -> f64 {
            base - waves
                .iter()
                .map(|(length, from, height)| libm::sin(x * length + from) * height)
                .sum::<f64>()
        };
        let mut x = frame.left;
        while x < frame.right {
            stroke(key, (x, ridge(x)), (x + 6.0, ridge(x + 6.0)), 2.0);
            x += 6.0;
        }
        if chance.happens(0.7) {
            let mut tone = vec![0.0; SHEET.0 * SHEET.1];
            let depth = chance.between(60.0, 180.0);
            fill(&mut tone, frame, |x, y| {
                y > ridge(x) && y < ridge(x) + depth
            });
            tones.push(tone);
        }
        let slope = chance.between(-0.8, 0.8);
        for _ in 0..30 + chance.below(50) {
            let x = chance.between(frame.left, frame.right);
            let y = ridge(x) + chance.between(4.0, 60.0);
            let length = chance.between(8.0, 30.0);
            stroke(key, (x, y), (x + length * slope, y + length), 1.3);
        }
    }
    for _ in 0..2 + chance.below(5) {
        let (x, y) = frame.point(chance);
        let height = chance.between(50.0, 190.0);
        tree(key, (x, y), -1.57, height, chance);
    }
    for _ in 0..3 + chance.below(6) {
        let (x, y) = frame.point(chance);
        house(key, (x, y), chance.between(18.0, 60.0), chance);
    }
    for _ in 0..chance.below(3) {
        let middle = frame.point(chance);
        ring(key, middle, chance.between(20.0, 60.0));
    }
    // A pattern that repeats: waves, rain, or the grain of the wood.
    let from = chance.between(0.6, 0.8) * SHEET.1 as f64;
    let spacing = chance.between(11.0, 19.0);
    match chance.below(3) {
        0 => {
            let mut y = from;
            while y < frame.bottom {
                let mut x = frame.left + chance.between(0.0, spacing);
                while x < frame.right - 14.0 {
                    stroke(key, (x, y), (x + 6.0, y - 4.0), 1.4);
                    stroke(key, (x + 6.0, y - 4.0), (x + 12.0, y), 1.4);
                    x += spacing * 1.5;
                }
                y += spacing;
            }
        }
        1 => {
            let lean = chance.between(-0.3, 0.3);
            for _ in 0..140 {
                let (x, y) = frame.point(chance);
                let length = chance.between(30.0, 110.0);
                stroke(key, (x, y), (x + lean * length, y + length), 1.0);
            }
        }
        _ => {
            let mut y = from;
            while y < frame.bottom {
                let mut x = frame.left;
                while x < frame.right {
                    let bend = |x: f64| y + 3.0 * libm::sin(x * 0.02 + y * 0.1);
                    stroke(key, (x, bend(x)), (x + 16.0, bend(x + 16.0)), 1.1);
                    x += 16.0;
                }
                y += spacing * 0.7;
            }
        }
    }
    for _ in 0..6 + chance.below(10) {
        let (x, y) = frame.point(chance);
        glyph(key, (x, y), chance.between(10.0, 24.0), chance);
    }
    // Tone blocks print nothing under the title.
    for tone in &mut tones {
        clear(tone, &frame.title);
    }
    tones
}

fn tree(key: &mut Block, from: (f64, f64), towards: f64, length: f64, chance: &mut Chance) {
    let to = (
        from.0 + libm::cos(towards) * length,
        from.1 + libm::sin(towards) * length,
    );
    stroke(key, from, to, (length / 22.0).clamp(1.2, 5.0));
    if length > 14.0 {
        for _ in 0..2 + chance.below(2) {
            let turn = chance.between(-0.9, 0.9);
            tree(
                key,
                to,
                towards + turn,
                length * chance.between(0.45, 0.7),
                chance,
            );
        }
    }
}

fn house(key: &mut Block, (x, y): (f64, f64), size: f64, chance: &mut Chance) {
    let high = size * chance.between(0.5, 0.9);
    let corners = [
        (x, y),
        (x + size, y),
        (x + size, y - high),
        (x + size / 2.0, y - high - size * 0.4),
        (x, y - high),
        (x, y),
    ];
    for ends in corners.windows(2) {
        stroke(key, ends[0], ends[1], 1.9);
    }
    let beams = 1 + chance.below(4);
    for beam in 1..=beams {
        let at = x + size * beam as f64 / (beams + 1) as f64;
        stroke(key, (at, y), (at, y - high * 0.8), 1.4);
    }
}

fn ring(key: &mut Block, middle: (f64, f64), radius: f64) {
    for step in 0..40 {
        let at = |k: i32| {
            let angle = f64::from(k) * 0.157_08;
            (
                middle.0 + radius * libm::cos(angle),
                middle.1 + radius * libm::sin(angle),
            )
        };
        stroke(key, at(step), at(step + 1), 2.0);
    }
}

/// A line with soft edges.
pub fn stroke(block: &mut Block, from: (f64, f64), to: (f64, f64), width: f64) {
    let half = width / 2.0;
    let least = |a: f64, b: f64| (a.min(b) - half - 1.0).max(0.0) as usize;
    let most = |a: f64, b: f64, side: usize| ((a.max(b) + half + 2.0).max(0.0) as usize).min(side);
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let squared = (dx * dx + dy * dy).max(1e-9);
    for y in least(from.1, to.1)..most(from.1, to.1, SHEET.1) {
        for x in least(from.0, to.0)..most(from.0, to.0, SHEET.0) {
            let (px, py) = (x as f64 - from.0, y as f64 - from.1);
            let along = ((px * dx + py * dy) / squared).clamp(0.0, 1.0);
            let (ax, ay) = (px - along * dx, py - along * dy);
            let away = (ax * ax + ay * ay).sqrt();
            let cover = (half + 0.5 - away).clamp(0.0, 1.0) as f32;
            let at = y * SHEET.0 + x;
            block[at] = block[at].max(cover);
        }
    }
}

fn fill(block: &mut Block, frame: &Frame, within: impl Fn(f64, f64) -> bool) {
    for y in frame.top as usize..frame.bottom as usize {
        for x in frame.left as usize..frame.right as usize {
            if within(x as f64, y as f64) {
                block[y * SHEET.0 + x] = 1.0;
            }
        }
    }
}

fn clear(block: &mut Block, title: &[f64; 4]) {
    for y in title[1] as usize..title[3] as usize {
        for x in title[0] as usize..title[2] as usize {
            block[y * SHEET.0 + x] = 0.0;
        }
    }
}
