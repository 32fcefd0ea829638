//! No. 14, the cooper's yard.

use super::etched::{etch, modelled, plate_print};
use super::prelude::*;
use super::shared::{Pavement, pave};
use crate::parts::boats::mast;
use crate::parts::harbour::{barrel, barrel_end};
use crate::parts::houses::tiles;
use crate::parts::lines::{bitten, drawn};
use crate::parts::sky::{curls, smoke};

pub const ART: Art = Art {
    key: "14",
    cut: cooper_cut,
    print: plate_print,
};

fn cooper_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    // The shed on the right, its mouth dark.
    let shed = b.line(&[[58.0, 78.0], [58.0, 36.0], [102.0, 28.0], [102.0, 86.0]]);
    let roof = b.line(&[[54.0, 37.5], [70.0, 16.0], [102.0, 8.0], [102.0, 29.0]]);
    for shape in [&shed, &roof] {
        k.leave_all(&drawn(shape, 3.0, dice));
    }
    let slates = tiles(bounds(&roof), 11.0, dice);
    k.within(&roof, |p| p.leave_all(&slates));
    tone(&mut k, &roof, 1, 8.0, 0.22, dice);
    for i in 0..9 {
        let x = 59.0 + 5.0 * i as f32;
        k.within(&shed, |p| {
            p.leave(&bitten(&b.line(&[[x, 34.0], [x + 0.2, 86.0]]), 2.0, dice));
        });
    }
    let mouth = b.line(&[[86.0, 80.0], [86.0, 44.0], [102.0, 42.0], [102.0, 84.0]]);
    k.cut(&mouth);
    tone(&mut k, &mouth, 3, 4.6, 0.12, dice);
    shade(
        &mut k,
        &mouth,
        Hatch {
            turn: 0.0,
            gap: 5.0,
            width: 2.0,
            stray: 0.6,
        },
        dice,
    );
    let pane = b.area(63.0, 41.0, 72.0, 48.0);
    modelled(&mut k, &pane, (2, 4.0, 0.1), 2.6, dice);
    // Beyond: a wall, chimneys, and the mast of something in the basin.
    k.leave_all(&drawn(
        &b.line(&[
            [-2.0, 40.0],
            [20.0, 38.0],
            [44.0, 38.4],
            [58.0, 37.6],
            [58.0, 62.0],
            [-2.0, 62.0],
        ]),
        2.2,
        dice,
    ));
    tone(
        &mut k,
        &b.line(&[[-2.0, 40.0], [58.0, 38.0], [58.0, 56.0], [-2.0, 58.0]]),
        1,
        9.0,
        0.02,
        dice,
    );
    k.leave_all(&mast(b.at(44.0, 38.4), b.y(28.0), 4.6, 46.0));
    for (x, y) in [(10.0, 24.0), (26.0, 28.0)] {
        let stack = b.line(&[[x, 39.0], [x + 0.4, y], [x + 4.0, y], [x + 4.4, 39.0]]);
        k.cut(&stack);
        k.leave_all(&drawn(&stack, 2.0, dice));
        tone(
            &mut k,
            &b.line(&[[x + 2.2, y], [x + 4.0, y], [x + 4.4, 39.0], [x + 2.2, 39.0]]),
            2,
            4.0,
            0.1,
            dice,
        );
    }
    fire(&mut k, b, dice);
    // Lying barrels in a pyramid, then standing ones before them.
    for (row, count, x0) in [(0, 4, 6.0), (1, 3, 12.5), (2, 2, 19.0)] {
        for i in 0..count {
            let at = b.at(x0 + 13.0 * i as f32, 69.0 - 8.6 * row as f32);
            lying(&mut k, at, b.x(6.4), dice);
        }
    }
    for (x, y, w, h) in [
        (8.0, 91.0, 15.0, 17.5),
        (26.0, 95.0, 17.0, 19.5),
        (72.0, 90.0, 13.0, 15.0),
    ] {
        standing(&mut k, b.at(x, y), b.x(w), b.y(h), dice);
    }
    cat(&mut k, b.at(26.0, 75.2), b.x(9.0));
    if look.has_or("hoops", look.state > 0) {
        for i in 0..4 {
            let c = b.at(73.0 + 1.5 * i as f32, 60.5 - 0.3 * i as f32);
            let ring = arc(c[0], c[1], b.x(7.6), b.y(9.6), 0.0, 1.01);
            k.cut(&bar(&ring, 5.0));
            k.leave(&bitten(&ring, 3.4, dice));
            let inner = arc(c[0], c[1], b.x(7.0), b.y(9.0), 0.0, 1.01);
            k.leave(&bitten(&inner, 1.6, dice));
        }
    }
    cobbled(&mut k, b, dice);
    etch(b, k, look)
}

fn lying(k: &mut Plane, at: Pt, radius: f32, dice: &mut Dice) {
    let (rim, inner, joints) = barrel_end(at, radius);
    k.cut(&rim);
    k.leave_all(&drawn(&rim, 2.6, dice));
    k.leave(&bitten(&inner, 1.6, dice));
    for joint in &joints {
        k.leave(&bitten(joint, 1.5, dice));
    }
    let dark: Path = arc(at[0], at[1], radius, radius, -0.12, 0.42);
    k.within(&rim, |p| {
        tone(p, &dark, 2, 4.4, 0.1, dice);
    });
}

fn standing(k: &mut Plane, foot: Pt, width: f32, height: f32, dice: &mut Dice) {
    let (body, hoops, staves) = barrel(foot, width, height);
    k.cut(&body);
    k.leave_all(&drawn(&body, 3.0, dice));
    for stave in &staves {
        k.leave(&bitten(stave, 1.6, dice));
    }
    let dark: Path = rect(
        foot[0] + width * 0.12,
        foot[1] - height,
        width * 0.5,
        height * 1.05,
    );
    k.within(&body, |p| {
        tone(p, &dark, 3, 5.2, 0.22, dice);
        p.keep(&dark);
    });
    for hoop in &hoops {
        k.cut(&bar(hoop, height * 0.045));
        let low: Path = hoop.iter().map(|p| [p[0], p[1] + height * 0.022]).collect();
        let high: Path = hoop.iter().map(|p| [p[0], p[1] - height * 0.022]).collect();
        k.leave(&bitten(&low, 2.4, dice));
        k.leave(&bitten(&high, 1.6, dice));
    }
}

fn cat(k: &mut Plane, at: Pt, s: f32) {
    let put = |points: &[Pt]| placed(points, at[0], at[1], s);
    let body = blob(&put(&[
        [-0.28, 0.0],
        [-0.34, -0.35],
        [-0.20, -0.68],
        [-0.05, -0.80],
        [0.10, -0.66],
        [0.24, -0.36],
        [0.32, 0.0],
    ]));
    set_off(k, &body, 5.0);
    k.leave(&ellipse(
        at[0] - 0.06 * s,
        at[1] - 0.90 * s,
        0.17 * s,
        0.15 * s,
    ));
    k.leave(&put(&[
        [-0.21, -0.92],
        [-0.19, -1.12],
        [-0.06, -1.01],
        [0.06, -1.12],
        [0.10, -0.92],
    ]));
    k.leave(&tapered(
        &curve(&put(&[
            [0.26, -0.06],
            [0.46, 0.10],
            [0.40, 0.42],
            [0.50, 0.60],
        ])),
        s * 0.11,
        s * 0.05,
    ));
}

fn fire(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let plume = [
        b.at(56.0, 66.0),
        b.at(53.0, 54.0),
        b.at(57.0, 40.0),
        b.at(50.0, 24.0),
        b.at(53.0, 6.0),
    ];
    k.cut_all(&smoke(&plume, 12.0, 62.0, dice));
    k.leave_all(&curls(&plume, 14.0, 60.0, 30, dice));
    let cresset = b.line(&[[51.0, 70.0], [61.0, 70.0], [59.0, 79.0], [53.0, 79.0]]);
    k.cut(&cresset);
    k.leave_all(&drawn(&cresset, 2.8, dice));
    for i in 0..5 {
        let t = i as f32 / 4.0;
        k.leave(&bitten(
            &b.line(&[[mix(51.0, 61.0, t), 70.0], [mix(53.0, 59.0, t), 79.0]]),
            2.8,
            dice,
        ));
    }
    k.leave(&bitten(&b.line(&[[52.0, 74.5], [60.0, 74.5]]), 2.8, dice));
    for (x, y) in [(52.0, 88.0), (56.0, 90.0), (60.0, 88.0)] {
        k.leave(&bitten(&b.line(&[[56.0, 79.0], [x, y]]), 3.6, dice));
    }
    for i in 0..16 {
        let p = b.at(51.5 + 0.6 * i as f32, 70.0);
        let flame = curve(&[
            p,
            [p[0] + dice.about(14.0), p[1] - 24.0],
            [p[0] + dice.about(9.0), p[1] - dice.between(34.0, 74.0)],
        ]);
        k.leave(&bitten(&flame, 2.4, dice));
    }
}

fn cobbled(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let cobbles = Pavement {
        top: 80.0,
        size: [12.0, 34.0],
        longest: 1.25,
        gap: [1.2, 2.9],
    };
    pave(b, cobbles, dice, |stone, dice| {
        if dice.chance(0.8) {
            let ([x, y], size) = (stone.at, stone.size);
            let edge = arc(
                x,
                y + size * 0.2,
                stone.length * 0.44,
                size * 0.26,
                0.5,
                1.02,
            );
            k.leave(&bitten(&edge, 1.7, dice));
        }
    });
}
