//! No. 16, the salt pans.

use super::etched::{etch, plate_print};
use super::prelude::*;
use crate::parts::lines::{bitten, drawn};
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "16",
    cut: pans_cut,
    print: plate_print,
};

fn pans_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut lines: Vec<Path> = Vec::new();
    let eye = b.at(46.0, 36.0);
    lines.push(wandering(b.at(-1.0, 36.0), b.at(101.0, 35.6), 9, 1.4, dice));
    // Dykes: levels closer to the horizon, and slants to one point.
    for i in 0..8 {
        let y = 36.0 + 66.0 * libm::powf(0.66, (7 - i) as f32 + 0.2);
        lines.push(wandering(
            b.at(-1.0, y),
            b.at(101.0, y + dice.about(0.6)),
            7,
            2.0,
            dice,
        ));
        lines.push(wandering(
            b.at(-1.0, y + 0.5 + 0.02 * y),
            b.at(101.0, y + 0.9),
            7,
            2.0,
            dice,
        ));
    }
    for i in 0..12 {
        let foot = b.at(-70.0 + 21.0 * i as f32, 101.0);
        let t = dice.between(0.80, 0.93);
        let end = [mix(foot[0], eye[0], t), mix(foot[1], eye[1], t)];
        lines.push(vec![foot, end]);
        lines.push(vec![[foot[0] + 20.0, foot[1]], end]);
    }
    let mut heavy: Vec<Path> = Vec::new();
    // Cones of salt, each with its shaded side.
    let cones = [
        (9.0, 92.0, 84.0),
        (30.0, 82.0, 66.0),
        (52.0, 88.0, 76.0),
        (76.0, 80.0, 62.0),
        (93.0, 93.0, 86.0),
        (17.0, 62.0, 38.0),
        (39.0, 58.0, 30.0),
        (63.0, 60.0, 34.0),
        (86.0, 57.0, 30.0),
        (28.0, 48.0, 17.0),
        (52.0, 46.0, 14.0),
        (72.0, 47.0, 16.0),
    ];
    let mut shades = Vec::new();
    let mut bodies = Vec::new();
    for (x, y, s) in cones {
        let p = b.at(x, y);
        let body = curve(&[
            [p[0] - s * 0.8, p[1]],
            [p[0] - s * 0.3, p[1] - s * 0.52],
            [p[0], p[1] - s * 0.82],
            [p[0] + s * 0.32, p[1] - s * 0.5],
            [p[0] + s * 0.85, p[1]],
        ]);
        let mut shade = curve(&[
            [p[0] + s * 0.02, p[1] - s * 0.8],
            [p[0] + s * 0.32, p[1] - s * 0.5],
            [p[0] + s * 0.85, p[1]],
        ]);
        shade.push([p[0] + s * 0.2, p[1]]);
        shades.push(shade);
        heavy.push(body.clone());
        bodies.push(body);
    }
    let mut k = b.cleared();
    let mut burr = b.cleared();
    for line in &lines {
        k.leave(&bitten(line, 1.7, dice));
    }
    for i in 0..6 {
        // Pans that hold water are shaded with level strokes.
        let y = 42.0 + 9.0 * i as f32;
        k.leave_all(&ripples(
            [
                dice.between(-50.0, 300.0),
                b.y(y),
                dice.between(500.0, b.w),
                b.y(y + 6.0),
            ],
            26,
            80.0,
            1.8,
            dice,
        ));
    }
    for body in &bodies {
        k.cut(body);
    }
    for line in &heavy {
        let stroke = bitten(line, 2.4, dice);
        k.leave(&stroke);
        burr.leave(&bar(line, 5.0));
    }
    for shape in &shades {
        for turn in [0.17, 0.21] {
            shade(
                &mut k,
                shape,
                Hatch {
                    turn,
                    gap: 4.4,
                    width: 1.5,
                    stray: 0.8,
                },
                dice,
            );
        }
        burr.tone(shape, 0.75);
    }
    windpumps(&mut k, &mut burr, b, dice);
    for (x, y, l) in [
        (4.0, 9.0, 330.0),
        (34.0, 15.0, 380.0),
        (60.0, 7.0, 340.0),
        (10.0, 22.0, 240.0),
        (70.0, 22.0, 280.0),
    ] {
        let line = wandering(b.at(x, y), [b.x(x) + l, b.y(y - 2.0)], 6, 5.0, dice);
        k.leave(&bitten(&line, 1.5, dice));
        burr.leave(&bar(&line, 2.6));
    }
    // The burr thrown up beside a drypoint line holds ink, until printing has worn it away.
    let width = (b.window.scale * 3.2).round().max(1.0) as usize;
    let soft = burr.softened(width);
    let weight = [0.95, 0.35, 0.0][look.stage("burr").min(2)];
    for (a, s) in k.data.iter_mut().zip(&soft.data) {
        let velvet = (s * 1.25 * weight).min(1.0);
        *a += (1.0 - *a) * velvet;
        if weight == 0.0 {
            *a *= 0.72;
        }
    }
    etch(b, k, look)
}

fn windpumps(k: &mut Plane, burr: &mut Plane, b: &Bench, dice: &mut Dice) {
    for (x, h) in [
        (12.0, 20.0),
        (24.0, 15.0),
        (35.0, 12.0),
        (58.0, 12.0),
        (68.0, 16.0),
        (81.0, 23.0),
        (93.0, 14.0),
    ] {
        let foot = b.at(x, 37.0);
        let s = b.y(h);
        let head = [foot[0], foot[1] - s];
        for leg in [-0.18, 0.18] {
            k.leave(&bitten(&[[foot[0] + leg * s, foot[1]], head], 2.2, dice));
            burr.leave(&bar(&[[foot[0] + leg * s, foot[1]], head], 4.0));
        }
        k.leave(&bitten(
            &[
                [foot[0] - s * 0.09, foot[1] - s * 0.5],
                [foot[0] + s * 0.09, foot[1] - s * 0.5],
            ],
            1.8,
            dice,
        ));
        let turn = dice.roll();
        for i in 0..4 {
            let a = (turn + i as f32 * 0.25) * core::f32::consts::TAU;
            let tip = [
                head[0] + libm::cosf(a) * s * 0.55,
                head[1] + libm::sinf(a) * s * 0.55,
            ];
            let side = [
                tip[0] - libm::sinf(a) * s * 0.13,
                tip[1] + libm::cosf(a) * s * 0.13,
            ];
            let vane = vec![
                [mix(head[0], tip[0], 0.25), mix(head[1], tip[1], 0.25)],
                tip,
                side,
                [mix(head[0], side[0], 0.3), mix(head[1], side[1], 0.3)],
            ];
            k.leave_all(&drawn(&vane, 1.8, dice));
            shade(
                k,
                &vane,
                Hatch {
                    turn: 0.1,
                    gap: 3.0,
                    width: 1.3,
                    stray: 0.3,
                },
                dice,
            );
            burr.tone(&vane, 0.7);
        }
    }
}
