//! Writing a line of words: type, a typewriter, an unjoined hand and a joined one.

use super::alphabet::{Stroke, joined, upright};
use crate::engine::noise::Dice;
use crate::engine::plane::Plane;
use crate::engine::shape::{Path, Pt, curve, distance, ellipse};

/// How words are written. Lengths are in millimetres.
#[derive(Clone, Copy)]
pub struct Style {
    /// The tool and the habit.
    pub way: Way,
    /// The height of a small `x`.
    pub x_height: f32,
    /// The broad stroke.
    pub broad: f32,
    /// The fine stroke.
    pub fine: f32,
    /// How far letters lean to the right: the shift across over the height.
    pub lean: f32,
    /// Space added after every letter.
    pub spaced: f32,
    /// How wide letters are, 1 being the alphabet's own width.
    pub wide: f32,
}

/// The tool and the habit.
#[derive(Clone, Copy, PartialEq)]
pub enum Way {
    /// Printed from type.
    Type,
    /// A typewriter: every letter as wide as the others.
    Typewriter,
    /// A pen that is lifted after every letter.
    Unjoined,
    /// A pen that is lifted after every word.
    Joined,
}

/// The width of a typewriter's letter over the height of its small `x`.
const PITCH: f32 = 1.26;

/// Writes a line with its left end at `at`, on the baseline, and returns where it ended.
pub fn write(plane: &mut Plane, style: &Style, text: &str, at: Pt, dice: &mut Dice) -> f32 {
    let mut pen = Pen {
        plane,
        style: *style,
        unit: style.x_height / 50.0,
        x: at[0],
        y: at[1],
    };
    let start = at[0];
    let drift = if style.way == Way::Joined || style.way == Way::Unjoined {
        dice.about(0.008)
    } else {
        0.0
    };
    for word in text.split_inclusive(' ') {
        if style.way == Way::Joined {
            pen.word(word, dice);
        } else {
            for letter in word.chars() {
                pen.letter(letter, dice);
            }
        }
        pen.y = at[1] + (pen.x - start) * drift + pen.wander(dice);
    }
    pen.x
}

/// How wide a line will be.
pub fn width(style: &Style, text: &str) -> f32 {
    let unit = style.x_height / 50.0;
    let letters = text.chars().map(|letter| match style.way {
        Way::Typewriter => PITCH * style.x_height,
        Way::Joined => joined(letter).map_or_else(
            || capital_width(letter) * 1.12 * unit * style.wide,
            |(wide, ..)| wide * unit * style.wide,
        ),
        Way::Type | Way::Unjoined => {
            upright(letter).map_or(0.0, |l| l.wide) * unit * style.wide + style.spaced
        }
    });
    letters.sum()
}

fn capital_width(letter: char) -> f32 {
    upright(letter).map_or(0.0, |l| l.wide)
}

struct Pen<'a> {
    plane: &'a mut Plane,
    style: Style,
    unit: f32,
    x: f32,
    y: f32,
}

impl Pen<'_> {
    /// How far off the line the next word stands.
    fn wander(&self, dice: &mut Dice) -> f32 {
        match self.style.way {
            Way::Joined | Way::Unjoined => dice.about(0.10) * self.style.x_height,
            Way::Type | Way::Typewriter => 0.0,
        }
    }

    fn letter(&mut self, letter: char, dice: &mut Dice) {
        let Some(drawn) = upright(letter) else {
            return;
        };
        let mut scale = [self.unit * self.style.wide, self.unit];
        let mut shift = [0.0, 0.0];
        let mut ink = 1.0;
        let step = match self.style.way {
            Way::Typewriter => {
                let cell = PITCH * self.style.x_height;
                let most = cell * 0.97;
                scale[0] = self.unit.min(most / drawn.wide);
                shift = [
                    (cell - drawn.wide * scale[0]) * 0.5 + dice.about(0.06),
                    dice.about(0.13),
                ];
                ink = 0.90 + dice.about(0.13);
                cell
            }
            Way::Type => drawn.wide * scale[0] + self.style.spaced,
            Way::Unjoined | Way::Joined => {
                let big = 1.0 + dice.about(0.07);
                scale = scale.map(|s| s * big);
                shift = [dice.about(0.04) * self.style.x_height, 0.0];
                let wide = drawn.wide * self.unit * self.style.wide;
                wide * (1.0 + dice.about(0.06)) + self.style.spaced
            }
        };
        let at = [self.x + shift[0], self.y + shift[1]];
        for stroke in &drawn.strokes {
            match stroke {
                Stroke::Line(line) => {
                    let placed = self.placed(line, at, scale);
                    self.line(&placed, true, ink, dice);
                    if matches!(self.style.way, Way::Type | Way::Typewriter) {
                        self.serifs(letter.is_lowercase(), line, at, scale, ink);
                    }
                }
                Stroke::Dot(p) => self.dot(self.placed(&[*p], at, scale)[0], ink),
            }
        }
        self.x += step;
    }

    /// The letters of a word in one stroke; capitals, figures and signs apart, dots and crosses at the end.
    fn word(&mut self, word: &str, dice: &mut Dice) {
        let scale = [self.unit * self.style.wide, self.unit];
        let mut line: Path = Vec::new();
        let mut after = Vec::new();
        let mut high = false;
        for letter in word.chars() {
            let Some((wide, body, extra)) = joined(letter) else {
                self.pull(&mut line, dice);
                let unit = self.unit;
                if letter.is_uppercase() {
                    self.unit *= 1.18;
                }
                self.letter(letter, dice);
                self.unit = unit;
                high = false;
                continue;
            };
            let big = 1.0 + dice.about(0.07);
            let grown = scale.map(|s| s * big);
            let at = [self.x, self.y];
            // After a letter that ends high the way up from the baseline falls away.
            let skip = usize::from(high);
            let mut body = self.placed(&body[skip..], at, grown);
            for p in &mut body {
                p[0] += dice.about(0.02) * self.style.x_height;
                p[1] += dice.about(0.02) * self.style.x_height;
            }
            high = "bovw".contains(letter);
            if !line.is_empty() {
                line.pop();
            }
            line.extend(body);
            for stroke in extra {
                after.push(match stroke {
                    Stroke::Line(l) => Stroke::Line(self.placed(&l, at, grown)),
                    Stroke::Dot(p) => Stroke::Dot(self.placed(&[p], at, grown)[0]),
                });
            }
            self.x += wide * scale[0] * (1.0 + dice.about(0.05)) + self.style.spaced;
        }
        self.pull(&mut line, dice);
        for stroke in after {
            match stroke {
                Stroke::Line(l) => self.line(&l, true, 1.0, dice),
                Stroke::Dot(p) => self.dot([p[0] + dice.about(0.3), p[1] + dice.about(0.2)], 1.0),
            }
        }
    }

    /// Draws what has been joined so far.
    fn pull(&mut self, line: &mut Path, dice: &mut Dice) {
        if line.len() > 2 {
            // `curve` takes steps of four units at the least, so it works on an enlarged line.
            let large: Path = line.iter().map(|p| [p[0] * 24.0, p[1] * 24.0]).collect();
            let smooth: Path = curve(&large)
                .iter()
                .map(|p| [p[0] / 24.0, p[1] / 24.0])
                .collect();
            self.line(&smooth, false, 1.0, dice);
        }
        line.clear();
    }

    /// Letter units onto the sheet.
    fn placed(&self, line: &[Pt], at: Pt, scale: [f32; 2]) -> Path {
        let place = |p: &Pt| {
            let (x, y) = (p[0] * scale[0], p[1] * scale[1]);
            [at[0] + x + y * self.style.lean, at[1] - y]
        };
        line.iter().map(place).collect()
    }

    /// A line whose breadth follows its direction: type is broad in its stems, a pen on its way down. `stem`: the
    /// alphabet does not say in which direction the stroke is drawn, so every stem is drawn downwards.
    fn line(&mut self, line: &[Pt], stem: bool, ink: f32, dice: &mut Dice) {
        let Style {
            broad, fine, way, ..
        } = self.style;
        let press = match way {
            Way::Joined | Way::Unjoined => 1.0 + dice.about(0.10),
            Way::Type | Way::Typewriter => 1.0,
        };
        let mut before = None;
        for pair in line.windows(2) {
            let length = distance(pair[0], pair[1]);
            if length < 1e-5 {
                continue;
            }
            let down = (pair[1][1] - pair[0][1]) / length;
            let share = match way {
                Way::Type => down.abs(),
                Way::Typewriter => 0.7,
                Way::Joined | Way::Unjoined if stem => down.abs() * 0.9,
                Way::Joined | Way::Unjoined => down.max(0.0),
            };
            let now = (fine + (broad - fine) * share) * press;
            // A pen's breadth changes over some of its way.
            let from = before.map_or(now, |b: f32| b + (now - b) * 0.5);
            self.capsule(pair[0], pair[1], from, now, ink);
            before = Some(from + (now - from) * 0.6);
        }
    }

    /// A straight piece with round ends.
    fn capsule(&mut self, a: Pt, b: Pt, from: f32, to: f32, ink: f32) {
        let length = distance(a, b);
        let along = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
        let across = [-along[1], along[0]];
        let point = |p: Pt, r: f32, u: f32, v: f32| {
            [
                p[0] + (along[0] * u + across[0] * v) * r * 0.5,
                p[1] + (along[1] * u + across[1] * v) * r * 0.5,
            ]
        };
        let shape = [
            point(a, from, 0.0, 1.0),
            point(b, to, 0.0, 1.0),
            point(b, to, 0.7, 0.7),
            point(b, to, 1.0, 0.0),
            point(b, to, 0.7, -0.7),
            point(b, to, 0.0, -1.0),
            point(a, from, 0.0, -1.0),
            point(a, from, -0.7, -0.7),
            point(a, from, -1.0, 0.0),
            point(a, from, -0.7, 0.7),
        ];
        if ink >= 1.0 {
            self.plane.leave(&shape);
        } else {
            let mut faint = shape.to_vec();
            faint.push(shape[0]);
            self.plane.tone(&faint, ink);
        }
    }

    fn dot(&mut self, at: Pt, ink: f32) {
        let r = self.style.broad * 0.62;
        self.plane.tone(&ellipse(at[0], at[1], r, r), ink.min(1.0));
    }

    /// Short strokes across the ends of stems.
    fn serifs(&mut self, small: bool, line: &[Pt], at: Pt, scale: [f32; 2], ink: f32) {
        let n = line.len();
        if n < 2 {
            return;
        }
        for (end, next) in [(line[0], line[1]), (line[n - 1], line[n - 2])] {
            let steep = (end[0] - next[0]).abs() < 0.62 * (end[1] - next[1]).abs();
            let level = [0.0, 48.0, 50.0, 72.0, -20.0]
                .iter()
                .any(|y| (end[1] - y).abs() < 0.7);
            if !steep || !level || distance(end, next) < 20.0 {
                continue;
            }
            let reach = if self.style.way == Way::Typewriter {
                9.5
            } else {
                8.0
            };
            // Small letters have the upper serif of a stem to the left alone.
            let to_left_alone =
                small && end[1] > next[1] && n == 2 && (end[0] - next[0]).abs() < 1.0;
            let right = if to_left_alone { 0.5 } else { reach };
            let bar = [[end[0] - reach, end[1]], [end[0] + right, end[1]]];
            let placed = self.placed(&bar, at, scale);
            let thin = match self.style.way {
                Way::Typewriter => self.style.broad * 0.86,
                _ => self.style.fine,
            };
            self.capsule(placed[0], placed[1], thin, thin, ink);
        }
    }
}
