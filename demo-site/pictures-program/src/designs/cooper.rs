//! No. 14, the cooper's yard.

use super::etched::{etch, plate_print};
use super::prelude::*;
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
    let mut dice = Dice::new(b.seed);
    let mut k = b.cleared();
    // The shed on the right, its mouth dark.
    let shed = b.line(&[[58.0, 78.0], [58.0, 36.0], [102.0, 28.0], [102.0, 86.0]]);
    let roof = b.line(&[[54.0, 37.5], [70.0, 16.0], [102.0, 8.0], [102.0, 29.0]]);
    for shape in [&shed, &roof] {
        for line in drawn(shape, 3.0, &mut dice) {
            k.leave(&line);
        }
    }
    let slates = tiles(bounds(&roof), 11.0, &mut dice);
    k.within(&roof, |p| p.leave_all(&slates));
    tone(&mut k, &roof, 1, 8.0, 0.22, &mut dice);
    for i in 0..9 {
        let x = 59.0 + 5.0 * i as f32;
        k.within(&shed, |p| {
            p.leave(&bitten(
                &b.line(&[[x, 34.0], [x + 0.2, 86.0]]),
                2.0,
                &mut dice,
            ));
        });
    }
    let mouth = b.line(&[[86.0, 80.0], [86.0, 44.0], [102.0, 42.0], [102.0, 84.0]]);
    k.cut(&mouth);
    tone(&mut k, &mouth, 3, 4.6, 0.12, &mut dice);
    shade(
        &mut k,
        &mouth,
        Hatch {
            turn: 0.0,
            gap: 5.0,
            width: 2.0,
            stray: 0.6,
        },
        &mut dice,
    );
    let pane = b.area(63.0, 41.0, 72.0, 48.0);
    k.cut(&pane);
    tone(&mut k, &pane, 2, 4.0, 0.1, &mut dice);
    for line in drawn(&pane, 2.6, &mut dice) {
        k.leave(&line);
    }
    // Beyond: a wall, chimneys, and the mast of something in the basin.
    for line in drawn(
        &b.line(&[
            [-2.0, 40.0],
            [20.0, 38.0],
            [44.0, 38.4],
            [58.0, 37.6],
            [58.0, 62.0],
            [-2.0, 62.0],
        ]),
        2.2,
        &mut dice,
    ) {
        k.leave(&line);
    }
    tone(
        &mut k,
        &b.line(&[[-2.0, 40.0], [58.0, 38.0], [58.0, 56.0], [-2.0, 58.0]]),
        1,
        9.0,
        0.02,
        &mut dice,
    );
    for line in crate::parts::boats::mast(b.at(44.0, 38.4), b.y(28.0), 4.6, 46.0) {
        k.leave(&line);
    }
    for (x, y) in [(10.0, 24.0), (26.0, 28.0)] {
        let stack = b.line(&[[x, 39.0], [x + 0.4, y], [x + 4.0, y], [x + 4.4, 39.0]]);
        k.cut(&stack);
        for line in drawn(&stack, 2.0, &mut dice) {
            k.leave(&line);
        }
        tone(
            &mut k,
            &b.line(&[[x + 2.2, y], [x + 4.0, y], [x + 4.4, 39.0], [x + 2.2, 39.0]]),
            2,
            4.0,
            0.1,
            &mut dice,
        );
    }
    fire(&mut k, b, &mut dice);
    // Lying barrels in a pyramid, then standing ones before them.
    for (row, count, x0) in [(0, 4, 6.0), (1, 3, 12.5), (2, 2, 19.0)] {
        for i in 0..count {
            let at = b.at(x0 + 13.0 * i as f32, 69.0 - 8.6 * row as f32);
            lying(&mut k, at, b.x(6.4), &mut dice);
        }
    }
    for (x, y, w, h) in [
        (8.0, 91.0, 15.0, 17.5),
        (26.0, 95.0, 17.0, 19.5),
        (72.0, 90.0, 13.0, 15.0),
    ] {
        standing(&mut k, b.at(x, y), b.x(w), b.y(h), &mut dice);
    }
    cat(&mut k, b.at(26.0, 75.2), b.x(9.0));
    if look.has_or("hoops", look.state > 0) {
        for i in 0..4 {
            let c = b.at(73.0 + 1.5 * i as f32, 60.5 - 0.3 * i as f32);
            let ring = arc(c[0], c[1], b.x(7.6), b.y(9.6), 0.0, 1.01);
            k.cut(&bar(&ring, 5.0));
            k.leave(&bitten(&ring, 3.4, &mut dice));
            let inner = arc(c[0], c[1], b.x(7.0), b.y(9.0), 0.0, 1.01);
            k.leave(&bitten(&inner, 1.6, &mut dice));
        }
    }
    cobbled(&mut k, b, &mut dice);
    etch(b, k, look)
}

fn lying(k: &mut Plane, at: Pt, radius: f32, dice: &mut Dice) {
    let (rim, inner, joints) = barrel_end(at, radius);
    k.cut(&rim);
    for line in drawn(&rim, 2.6, dice) {
        k.leave(&line);
    }
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
    for line in drawn(&body, 3.0, dice) {
        k.leave(&line);
    }
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
    let put = |points: &[Pt]| -> Path {
        points
            .iter()
            .map(|p| [at[0] + p[0] * s, at[1] + p[1] * s])
            .collect()
    };
    let body = blob(&put(&[
        [-0.28, 0.0],
        [-0.34, -0.35],
        [-0.20, -0.68],
        [-0.05, -0.80],
        [0.10, -0.66],
        [0.24, -0.36],
        [0.32, 0.0],
    ]));
    k.cut(&outline(&body, 5.0));
    k.leave(&body);
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
    for puff in smoke(&plume, 12.0, 62.0, dice) {
        k.cut(&puff);
    }
    for curl in curls(&plume, 14.0, 60.0, 30, dice) {
        k.leave(&curl);
    }
    let cresset = b.line(&[[51.0, 70.0], [61.0, 70.0], [59.0, 79.0], [53.0, 79.0]]);
    k.cut(&cresset);
    for line in drawn(&cresset, 2.8, dice) {
        k.leave(&line);
    }
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
    let mut y = 80.0;
    while y < 101.0 {
        let t = (y - 80.0) / 21.0;
        let size = mix(12.0, 34.0, t);
        let mut x = -dice.roll() * size;
        while x < b.w {
            let l = size * dice.between(0.8, 1.25);
            let seat = [x + l / 2.0, b.y(y)];
            if dice.chance(0.8) {
                k.leave(&bitten(
                    &arc(
                        seat[0],
                        seat[1] + size * 0.2,
                        l * 0.44,
                        size * 0.26,
                        0.5,
                        1.02,
                    ),
                    1.7,
                    dice,
                ));
            }
            x += l;
        }
        y += mix(1.2, 2.9, t);
    }
}
