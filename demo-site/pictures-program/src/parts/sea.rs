//! Water: breaking crests, calm ripples, reflections.

use crate::engine::noise::Dice;
use crate::engine::shape::{Path, curve, gouged, stroke};

/// One row of breaking waves, travelling to the right.
pub struct Breakers {
    /// Foam on the crests: white.
    pub foam: Vec<Path>,
    /// The dark hollow in front of each crest.
    pub hollows: Vec<Path>,
    /// Contour lines on the back of each wave: dark.
    pub contours: Vec<Path>,
    /// Foam drawn out along the back: thin white lines.
    pub veins: Vec<Path>,
}

/// Waves `length` long and `height` high between two ends of a row at `y`.
pub fn breakers(x: [f32; 2], y: f32, length: f32, height: f32, dice: &mut Dice) -> Breakers {
    let mut out = Breakers {
        foam: Vec::new(),
        hollows: Vec::new(),
        contours: Vec::new(),
        veins: Vec::new(),
    };
    let mut left = x[0] - length * dice.roll();
    while left < x[1] {
        let l = length * dice.between(0.75, 1.3);
        let h = height * dice.between(0.7, 1.15);
        let base = y + dice.about(height * 0.3);
        wave(&mut out, left, base, l, h, dice);
        left += l * 0.93;
    }
    out
}

fn wave(out: &mut Breakers, left: f32, base: f32, l: f32, h: f32, dice: &mut Dice) {
    let at = |x: f32, y: f32| [left + x * l, base - y * h];
    let back = curve(&[
        at(0.0, 0.0),
        at(0.18, 0.10),
        at(0.40, 0.42),
        at(0.56, 0.82),
        at(0.66, 1.0),
    ]);
    // The crest: thin at the back, thick where it curls, its lower edge in scallops.
    let mut foam = curve(&[
        at(0.24, 0.17),
        at(0.42, 0.52),
        at(0.57, 0.93),
        at(0.67, 1.08),
        at(0.76, 1.0),
        at(0.81, 0.80),
    ]);
    let teeth = 5;
    let mut under = vec![at(0.81, 0.80)];
    for i in 0..teeth {
        let t = i as f32 / teeth as f32;
        let x = 0.80 - t * 0.34;
        let y = 0.70 - t * t * 0.30 + 0.06 * libm::sinf(t * 3.1);
        under.push(at(x - 0.02, y + 0.12 + dice.about(0.05)));
        under.push(at(x - 0.05, y - 0.10 + dice.about(0.06)));
    }
    under.push(at(0.36, 0.34));
    foam.extend(under);
    out.foam.push(foam);
    let front = curve(&[
        at(0.80, 0.78),
        at(0.77, 0.52),
        at(0.79, 0.26),
        at(0.88, 0.06),
        at(1.02, -0.02),
    ]);
    let mut hollow = front.clone();
    hollow.extend(curve(&[
        at(0.94, -0.10),
        at(0.76, -0.07),
        at(0.62, 0.10),
        at(0.60, 0.32),
        at(0.68, 0.55),
    ]));
    out.hollows.push(hollow);
    for i in 0..4 {
        let s = 0.16 + 0.17 * i as f32;
        let line: Path = back
            .iter()
            .map(|p| [p[0] + s * l * 0.22, p[1] + s * h * 0.95])
            .collect();
        let cut = line.len() * (9 - i) / 10;
        out.contours
            .push(gouged(&line[line.len() / (7 - i)..cut], 1.0 + h * 0.035));
    }
    for i in 0..3 {
        let x = 0.05 + 0.16 * i as f32 + dice.about(0.05);
        let line = curve(&[
            at(x, -0.02 - 0.08 * i as f32),
            at(x + 0.14, 0.06),
            at(x + 0.30, 0.30 - 0.05 * i as f32),
        ]);
        out.veins.push(gouged(&line, 1.2 + h * 0.03));
    }
}

/// Calm water: lens-shaped strokes that lengthen and thicken towards the foot of the box.
pub fn ripples(
    area: [f32; 4],
    count: usize,
    length: f32,
    width: f32,
    dice: &mut Dice,
) -> Vec<Path> {
    (0..count)
        .map(|_| {
            let t = dice.roll().sqrt();
            let y = area[1] + (area[3] - area[1]) * t;
            let near = 0.3 + 0.7 * t;
            let l = length * near * dice.between(0.4, 1.3);
            let x = dice.between(area[0] - l * 0.5, area[2] - l * 0.5);
            let bow = width * dice.about(0.8);
            let line = curve(&[[x, y], [x + l * 0.5, y + bow], [x + l, y]]);
            gouged(&line, width * near * dice.between(0.6, 1.3))
        })
        .collect()
}

/// What stands at the water's edge between `left` and `right`, mirrored as broken level strokes
/// that lengthen, thin and part the further they reach down.
pub fn broken(left: f32, right: f32, top: f32, bottom: f32, dice: &mut Dice) -> Vec<Path> {
    let mut out = Vec::new();
    let mut y = top;
    let wide = right - left;
    while y < bottom {
        let t = (y - top) / (bottom - top);
        let thick = (2.2 + 3.6 * t) * dice.between(0.8, 1.2);
        let sway = wide * 0.10 * t + 3.0 * t;
        let a = left + dice.about(sway + 1.5) - sway * 0.3;
        let b = right + dice.about(sway + 1.5) + sway * 0.3;
        if dice.chance(1.0 - 0.45 * t) && b > a {
            out.push(lens(a, b, y, thick * (1.0 - 0.35 * t)));
        }
        y += thick * (0.95 + 0.9 * t);
    }
    out
}

/// A level stroke from `a` to `b`, pointed at both ends.
pub fn lens(a: f32, b: f32, y: f32, thick: f32) -> Path {
    let n = 8;
    let line: Path = (0..=n)
        .map(|i| [a + (b - a) * i as f32 / n as f32, y])
        .collect();
    stroke(&line, |t| thick * (4.0 * t * (1.0 - t)).max(0.02).sqrt())
}

/// The tops of far waves: a thin broken row.
pub fn far(x: [f32; 2], y: f32, dice: &mut Dice) -> Vec<Path> {
    let mut out = Vec::new();
    let mut at = x[0];
    while at < x[1] {
        let l = dice.between(10.0, 34.0);
        out.push(lens(
            at,
            at + l,
            y + dice.about(2.0),
            dice.between(1.0, 2.2),
        ));
        at += l + dice.between(4.0, 30.0);
    }
    out
}
