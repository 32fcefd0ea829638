//! Handwriting, stamps and seals: marks as lines in millimetres.
//!
//! Figures can be read, for a numbering must agree with its record. Names cannot: they are loops
//! and strokes of the right length, as a signature often is.

use super::colour::hex;
use super::noise::Dice;
use super::plane::{Plane, Window};
use super::shape::{Path, Pt, arc, bar, curve, ellipse, rect, stroke, turned};
use super::sheet::{Mark, graphite};

/// A line of pencil writing from `at` (left end of the baseline), letters `height` tall.
pub fn pencil(window: Window, text: &str, at: Pt, height: f32, seed: u32) -> Mark {
    let mut plane = Plane::cleared(window);
    let mut dice = Dice::new(seed);
    let mut x = at[0];
    let slope = dice.about(0.02);
    for letter in text.chars() {
        let y = at[1] + (x - at[0]) * slope;
        let strokes = glyph(letter, &mut dice);
        let wide = advance(letter) * height;
        for line in strokes {
            let placed: Path = line
                .iter()
                .map(|p| {
                    [
                        x + (p[0] + 0.25 * (1.0 - p[1])) * height * 0.62,
                        y - p[1] * height,
                    ]
                })
                .collect();
            let smooth = curve(&placed);
            plane.tone(&stroke(&smooth, |t| 0.30 + 0.14 * (1.0 - t)), 0.78);
        }
        x += wide + dice.about(0.05) * height;
    }
    Mark {
        cover: plane,
        colour: graphite(),
        dry: 0.75,
    }
}

/// The width that [`pencil`] will take, mm.
pub fn width_of(text: &str, height: f32) -> f32 {
    text.chars().map(|c| advance(c) * height).sum()
}

fn advance(letter: char) -> f32 {
    match letter {
        ' ' => 0.35,
        '1' | 'i' | 'l' | '.' | ',' => 0.32,
        'm' | 'w' => 0.75,
        c if c.is_uppercase() => 0.72,
        _ => 0.52,
    }
}

/// Strokes in a box one high: figures true, letters a hurried hand.
fn glyph(letter: char, dice: &mut Dice) -> Vec<Path> {
    let fixed: &[&[Pt]] = match letter {
        '0' => &[&[
            [0.5, 1.0],
            [0.1, 0.6],
            [0.3, 0.0],
            [0.75, 0.3],
            [0.7, 0.9],
            [0.45, 1.0],
        ]],
        '1' => &[&[[0.15, 0.75], [0.4, 1.0], [0.38, 0.0]]],
        '2' => &[
            &[[0.1, 0.8], [0.4, 1.0], [0.7, 0.75], [0.1, 0.0]],
            &[[0.1, 0.0], [0.8, 0.03]],
        ],
        '3' => &[&[
            [0.1, 0.9],
            [0.6, 1.0],
            [0.35, 0.55],
            [0.7, 0.25],
            [0.1, 0.02],
        ]],
        '4' => &[
            &[[0.5, 1.0], [0.1, 0.35], [0.8, 0.38]],
            &[[0.6, 0.7], [0.52, -0.05]],
        ],
        '5' => &[
            &[[0.25, 1.0], [0.2, 0.55], [0.7, 0.4], [0.1, 0.0]],
            &[[0.25, 1.0], [0.75, 1.0]],
        ],
        '6' => &[&[[0.6, 1.0], [0.15, 0.4], [0.4, 0.0], [0.7, 0.3], [0.2, 0.4]]],
        '7' => &[&[[0.1, 0.95], [0.75, 1.0], [0.3, 0.0]]],
        '8' => &[&[
            [0.6, 0.85],
            [0.3, 1.0],
            [0.2, 0.7],
            [0.65, 0.3],
            [0.35, 0.0],
            [0.15, 0.3],
            [0.6, 0.85],
        ]],
        '9' => &[&[
            [0.65, 0.75],
            [0.3, 1.0],
            [0.2, 0.6],
            [0.65, 0.75],
            [0.5, 0.0],
        ]],
        '/' => &[&[[0.0, -0.15], [0.7, 1.1]]],
        ' ' => &[],
        '.' | ',' => &[&[[0.2, 0.02], [0.26, 0.0], [0.24, -0.05]]],
        _ => return scribble(letter, dice),
    };
    fixed.iter().map(|line| line.to_vec()).collect()
}

fn scribble(letter: char, dice: &mut Dice) -> Vec<Path> {
    let tall = if letter.is_uppercase() {
        1.15
    } else if "bdfhklt".contains(letter) || dice.chance(0.15) {
        0.9
    } else {
        0.42
    };
    let mut r = |v: f32| v + dice.about(0.12);
    if letter.is_uppercase() {
        return vec![
            vec![
                [r(0.1), r(0.1)],
                [r(0.25), tall],
                [r(0.55), r(0.5)],
                [r(0.3), r(0.0)],
                [r(1.0), 0.15],
            ],
            vec![[r(0.0), tall * 0.8], [r(0.5), tall], [r(0.95), tall * 0.75]],
        ];
    }
    vec![vec![
        [-0.1, 0.12],
        [r(0.2), tall],
        [r(0.35), r(0.2)],
        [r(0.4), r(0.0)],
        [r(0.6), tall * 0.6],
        [0.85, r(0.08)],
    ]]
}

/// A square seal, `size` mm, with the two letters left white.
pub fn seal(window: Window, at: Pt, size: f32, colour: u32, seed: u32) -> Mark {
    let mut plane = Plane::cleared(window);
    let mut dice = Dice::new(seed);
    let tilt = dice.about(0.012);
    let body = rect(at[0] - size / 2.0, at[1] - size / 2.0, size, size);
    plane.tone(
        &turned(&super::shape::knifed(&body, 0.35, seed), at, tilt),
        0.92,
    );
    for line in monogram() {
        let placed: Path = line
            .iter()
            .map(|p| [at[0] + p[0] * size * 0.40, at[1] + p[1] * size * 0.40])
            .collect();
        plane.cut(&turned(&bar(&placed, size * 0.085), at, tilt));
    }
    Mark {
        cover: plane,
        colour: hex(colour),
        dry: 0.35,
    }
}

/// The printmaker's two letters, О and П, in a box from -1 to 1.
pub fn monogram() -> Vec<Path> {
    vec![
        arc(-0.45, 0.0, 0.34, 0.72, 0.0, 1.02),
        vec![[0.15, 0.75], [0.15, -0.72], [0.85, -0.72], [0.85, 0.75]],
    ]
}

/// An oval stamp, 22 by 14 mm.
pub fn oval(window: Window, at: Pt, colour: u32, seed: u32) -> Mark {
    let mut plane = Plane::cleared(window);
    let mut dice = Dice::new(seed);
    let tilt = dice.about(0.03);
    let ring = |rx: f32, ry: f32| bar(&arc(at[0], at[1], rx, ry, 0.0, 1.01), 0.75);
    plane.tone(&turned(&ring(11.0, 7.0), at, tilt), 0.95);
    plane.tone(&turned(&ring(9.0, 5.2), at, tilt), 0.8);
    for line in monogram() {
        let placed: Path = line
            .iter()
            .map(|p| [at[0] + p[0] * 4.6, at[1] + p[1] * 3.0])
            .collect();
        plane.tone(&turned(&bar(&placed, 0.95), at, tilt), 0.95);
    }
    Mark {
        cover: plane,
        colour: hex(colour),
        dry: 0.35,
    }
}

/// A collector's mark: a letter in a circle, or a lozenge.
pub fn collector(window: Window, at: Pt, colour: u32, lozenge: bool) -> Mark {
    let mut plane = Plane::cleared(window);
    if lozenge {
        let outline = [
            [0.0, -3.6],
            [2.6, 0.0],
            [0.0, 3.6],
            [-2.6, 0.0],
            [0.0, -3.6],
        ];
        let placed: Path = outline
            .iter()
            .map(|p| [at[0] + p[0], at[1] + p[1]])
            .collect();
        plane.tone(&bar(&placed, 0.5), 0.85);
        plane.tone(&ellipse(at[0], at[1], 0.8, 1.0), 0.8);
    } else {
        plane.tone(&bar(&arc(at[0], at[1], 3.5, 3.5, 0.0, 1.01), 0.5), 0.85);
        let v = [[-1.5, -1.4], [0.0, 1.7], [1.5, -1.4]];
        let placed: Path = v.iter().map(|p| [at[0] + p[0], at[1] + p[1]]).collect();
        plane.tone(&bar(&placed, 0.6), 0.85);
    }
    Mark {
        cover: plane,
        colour: hex(colour),
        dry: 0.5,
    }
}

/// A facsimile signature from a stamp: the hand of a pencil line, in flat grey ink.
pub fn stamped(window: Window, text: &str, at: Pt, height: f32) -> Mark {
    let mut mark = pencil(
        window,
        text,
        at,
        height,
        super::noise::seed(&["facsimile", text]),
    );
    mark.colour = hex(0x3a_3a_40);
    mark.dry = 0.25;
    mark
}

/// A circle pressed blind into the paper: a light and a dark crescent.
pub fn blind(window: Window, at: Pt, radius: f32) -> [Mark; 2] {
    let mut dark = Plane::cleared(window);
    dark.tone(
        &bar(&arc(at[0], at[1], radius, radius, 0.45, 0.98), 0.55),
        0.5,
    );
    dark.tone(
        &bar(
            &arc(at[0], at[1], radius * 0.6, radius * 0.6, 0.5, 0.9),
            0.4,
        ),
        0.4,
    );
    dark.tone(
        &bar(
            &arc(at[0], at[1], radius * 0.75, radius * 0.75, -0.05, 0.4),
            0.4,
        ),
        0.3,
    );
    let mut deeper = Plane::cleared(window);
    deeper.tone(&ellipse(at[0], at[1], radius, radius), 0.10);
    [
        Mark {
            cover: dark,
            colour: hex(0xa8_a2_98),
            dry: 0.0,
        },
        Mark {
            cover: deeper,
            colour: hex(0xb8_b2_a8),
            dry: 0.0,
        },
    ]
}

/// An inky thumb.
pub fn thumb(window: Window, at: Pt, seed: u32) -> Mark {
    let mut plane = Plane::cleared(window);
    for i in 0..9 {
        let r = 0.9 + i as f32 * 0.85;
        plane.tone(
            &bar(&arc(at[0], at[1], r * 0.75, r, 0.05 * i as f32, 0.9), 0.42),
            0.34,
        );
    }
    plane.weigh(|p| {
        super::noise::step(
            0.25,
            0.7,
            super::noise::smooth(p[0] / 2.5, p[1] / 2.5, seed),
        )
    });
    Mark {
        cover: plane,
        colour: hex(0x33_32_36),
        dry: 0.6,
    }
}
