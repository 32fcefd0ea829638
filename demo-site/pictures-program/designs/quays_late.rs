//! Nos. 5, 6, 8, 9 and 10: the rope walk, the chandlers, the bridge, the snow, the oranges.

use super::prelude::*;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{bollard, coil, lamp, stones, wagon};
use crate::parts::houses::{Gable, front, row, tiles, window};
use crate::parts::land::poplar;
use crate::parts::sea::{broken, lens, ripples};
use crate::parts::sky::streak;

pub const ART: &[Art] = &[
    Art {
        key: "5",
        cut: rope_cut,
        print: rope_print,
    },
    Art {
        key: "6",
        cut: shops_cut,
        print: shops_print,
    },
    Art {
        key: "8",
        cut: nets_cut,
        print: nets_print,
    },
    Art {
        key: "9",
        cut: snow_cut,
        print: snow_print,
    },
    Art {
        key: "10",
        cut: oranges_cut,
        print: oranges_print,
    },
];

/// A point on the way from one point to another.
fn toward(a: Pt, b: Pt, t: f32) -> Pt {
    [mix(a[0], b[0], t), mix(a[1], b[1], t)]
}

fn rope_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let end = b.at(72.0, 52.0);
    let from_left = |y: f32, t: f32| toward(b.at(-2.0, y), end, t);
    // Left of the vanishing point runs the long shed, its open side towards us.
    let roof: Path = vec![
        from_left(4.0, 0.0),
        from_left(30.0, 0.0),
        from_left(30.0, 0.965),
        from_left(8.0, 0.965),
    ];
    let eaves: Path = vec![
        from_left(26.0, 0.0),
        from_left(33.0, 0.0),
        from_left(33.0, 0.965),
        from_left(26.0, 0.965),
    ];
    let inside: Path = vec![
        from_left(33.0, 0.0),
        from_left(80.0, 0.0),
        from_left(80.0, 0.965),
        from_left(33.0, 0.965),
    ];
    let floor: Path = vec![
        from_left(80.0, 0.0),
        b.at(-2.0, 102.0),
        b.at(102.0, 102.0),
        b.at(102.0, 62.0),
        b.at(73.0, 52.5),
    ];

    let mut e = b.cleared();
    e.leave(&b.area(-2.0, -2.0, 102.0, 54.0));
    e.leave(&floor);
    for (x, y, w, h) in [
        (40.0, 22.0, 42.0, 12.0),
        (62.0, 32.0, 44.0, 14.0),
        (54.0, 42.0, 50.0, 9.0),
        (70.0, 12.0, 34.0, 10.0),
    ] {
        e.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.4, 3));
    }
    e.cut(&ellipse(b.x(84.0), b.y(47.0), 24.0, 24.0));
    e.cut(&roof);
    for i in 0..24 {
        let t = 1.0 - libm::powf(0.86, i as f32);
        let x = toward(b.at(-2.0, 84.0), b.at(72.0, 53.0), t);
        let next = toward(b.at(9.0, 84.0), b.at(72.0, 53.0), t);
        e.cut(&[
            x,
            next,
            toward(next, b.at(72.0, 53.0), -0.20),
            toward(x, b.at(72.0, 53.0), -0.20),
        ]);
    }

    let mut r = b.cleared();
    r.leave(&roof);
    r.leave_all(&row(
        [b.x(74.0), b.w + 20.0],
        b.y(60.0),
        b.y(15.0),
        b.x(4.4),
        &mut dice,
    ));
    r.leave(&inside);
    for i in 0..70 {
        let t0 = dice.roll();
        let y = mix(5.0, 29.0, dice.roll());
        let (p, q) = (
            from_left(y, t0 * 0.9),
            from_left(y, (t0 * 0.9 + 0.05).min(0.96)),
        );
        if i % 2 == 0 {
            r.cut(&gouged(&[p, q], 2.2));
        }
    }

    let mut k = b.cleared();
    k.leave_all(&row(
        [b.x(90.0), b.w + 20.0],
        b.y(62.0),
        b.y(12.0),
        b.x(5.0),
        &mut dice,
    ));
    k.leave_all(&mast(b.at(80.0, 58.0), b.y(40.0), 3.4, 16.0));
    k.leave_all(&mast(b.at(85.5, 58.0), b.y(46.0), 3.6, 18.0));
    k.leave(&eaves);
    for i in 0..9 {
        let y = mix(6.0, 28.0, i as f32 / 8.0);
        k.leave(&gouged(&[from_left(y, 0.0), from_left(y, 0.95)], 1.8));
    }
    k.leave(&inside);
    // Light falls into the shed between the posts, on a boarded back wall.
    for i in 0..15 {
        let t = 1.0 - libm::powf(0.80, i as f32);
        let t2 = 1.0 - libm::powf(0.80, i as f32 + 0.72);
        let bay: Path = vec![
            from_left(38.0, t),
            from_left(38.0, t2),
            from_left(72.0, t2),
            from_left(72.0, t),
        ];
        let boards = crate::parts::lines::hatch(
            &bay,
            Hatch {
                turn: 0.25,
                gap: 7.0 * (1.0 - t) + 2.2,
                width: 3.4 * (1.0 - t) + 1.0,
                stray: 0.4,
            },
            &mut dice,
        );
        k.cut_within(&bay, |p| p.leave_all(&boards));
        let wide = 15.0 * (1.0 - t) + 1.2;
        k.leave(&bar(&[from_left(33.0, t), from_left(81.0, t)], wide));
        k.leave(&bar(
            &[from_left(46.0, t), from_left(34.0, (t + t2) / 2.0)],
            wide * 0.5,
        ));
    }
    for i in 0..5 {
        let x = 8.0 + 13.0 * i as f32;
        let line = [
            b.at(x + 6.0, 102.0),
            toward(b.at(x + 6.0, 102.0), end, 0.97),
        ];
        k.leave(&tapered(&line, 6.5, 0.9));
        e.cut(&tapered(
            &[
                [line[0][0] + 9.0, line[0][1]],
                [line[1][0] + 1.0, line[1][1]],
            ],
            5.0,
            0.6,
        ));
    }
    for i in 0..6 {
        let t = 1.0 - libm::powf(0.72, i as f32 + 0.4);
        let (p, q) = (
            toward(b.at(4.0, 98.0), end, t),
            toward(b.at(72.0, 98.0), end, t),
        );
        k.leave(&bar(&[p, q], 5.0 * (1.0 - t) + 1.0));
        for s in [p, q] {
            k.leave(&bar(
                &[
                    [s[0], s[1] - 30.0 * (1.0 - t)],
                    [s[0], s[1] + 26.0 * (1.0 - t)],
                ],
                6.0 * (1.0 - t) + 1.0,
            ));
        }
    }
    for (x, y, h, pose, face) in [
        (38.0, 88.0, 118.0, Pose::Bent, 1.0),
        (52.5, 74.0, 66.0, Pose::Standing, -1.0),
        (61.5, 65.0, 36.0, Pose::Standing, 1.0),
        (66.5, 60.0, 19.0, Pose::Standing, -1.0),
    ] {
        k.leave_all(&figure(b.at(x, y), h, pose, face));
    }
    k.leave_all(&pecks(
        [b.x(60.0), b.y(70.0), b.w, b.h],
        40,
        30.0,
        0.01,
        &mut dice,
    ));
    k.cut(&ellipse(b.x(84.0), b.y(47.0), 0.1, 0.1));
    Cuts::from([
        ("evening", b.trimmed(e)),
        ("roof", b.trimmed(r)),
        ("key", b.trimmed(k)),
    ])
}

fn rope_print(look: &Look) -> Vec<Pass> {
    let colour = match look.choice("evening") {
        "rose" => 0xd9_86_84,
        _ => 0xe3_95_45,
    };
    let fall = Fall {
        from: 190.0,
        to: -40.0,
        rest: 0.05,
    };
    vec![
        Pass::new("evening", "evening", ink(colour)).charged(evenly(look, "evening", 0.95, fall)),
        Pass::new("roof", "roof", ink(0x9c_54_3c)),
        Pass::new("key", "key", ink(0x2b_22_1f)).charged(|_| 1.03),
    ]
}

/// The three shopfronts: left, right, eaves, top, gable.
const SHOPS: [(f32, f32, f32, f32, Gable); 3] = [
    (3.0, 35.0, 24.0, 7.0, Gable::Stepped),
    (35.0, 66.0, 20.0, 3.0, Gable::Bell),
    (66.0, 98.0, 26.0, 9.0, Gable::Stepped),
];

fn panes(b: &Bench) -> Vec<Path> {
    let mut all = Vec::new();
    for (row, y) in [20.0, 30.5, 41.0, 59.0].into_iter().enumerate() {
        for column in 0..6 {
            let x = 7.0 + 15.6 * column as f32 + if column % 2 == 1 { -1.8 } else { 0.6 };
            let tall = if row == 3 { 13.0 } else { 7.0 };
            let (pane, _) = window(b.x(x), b.y(y), b.x(8.2), b.y(tall));
            all.push(pane);
        }
    }
    all
}

fn shops_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let fronts: Vec<Path> = SHOPS
        .iter()
        .map(|s| front(b.x(s.0), b.x(s.1), b.y(s.2), b.y(s.3), b.y(77.5), s.4))
        .collect();
    let panes = panes(b);
    // Which windows burn: the last two of the list are the gable lights that were put out.
    let burning = [19, 20, 22, 9, 17, 0, 1];
    let lit: Vec<&Path> = burning
        .iter()
        .take(look.count("windows", 7))
        .filter_map(|&i| panes.get(i))
        .collect();
    let board = b.area(43.5, 39.5, 56.5, 51.0);
    let anchor = anchor(b.at(50.0, 45.2), b.y(4.4));
    let has_anchor = look.has_or("anchor", look.state == 0);

    let mut n = b.cleared();
    n.leave(&b.area(-2.0, -2.0, 102.0, 78.0));
    n.cut_all(&pecks(
        [0.0, 0.0, b.w, b.y(24.0)],
        70,
        34.0,
        0.02,
        &mut dice,
    ));
    for pane in &lit {
        n.cut(pane);
    }
    n.cut(&board);
    let glow = b.at(50.0, 56.0);
    n.cut(&ellipse(glow[0], glow[1], 20.0, 24.0));
    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 77.0, 102.0, 101.0));
    for f in &fronts {
        w.leave(f);
    }
    for pane in &lit {
        w.cut(pane);
    }
    w.cut(&board);
    w.cut_all(&lights(&lit, b, &mut dice));

    let mut l = b.cleared();
    for pane in &lit {
        l.leave(pane);
    }
    l.leave(&ellipse(glow[0], glow[1], 13.0, 17.0));
    l.leave(&board);
    l.leave_all(&lights(&lit, b, &mut dice));
    for x in [22.0, 73.0] {
        l.leave(&b.area(x, 68.4, x + 2.6, 71.4));
    }

    let mut r = b.cleared();
    if has_anchor {
        r.leave_all(&anchor);
    }
    r.leave(&b.area(35.6, 54.8, 46.0, 57.6));
    r.leave(&b.area(54.0, 54.8, 65.4, 57.6));
    r.leave(&b.line(&[[67.0, 55.6], [97.0, 55.6], [97.6, 58.2], [66.4, 58.2]]));
    r.leave(&b.area(13.6, 60.0, 19.4, 77.0));

    let mut k = b.cleared();
    for (f, s) in fronts.iter().zip(SHOPS) {
        k.leave(&outline(f, 4.2));
        let side = b.line(&[[s.1 - 6.0, s.3], [s.1, s.3], [s.1, 77.5], [s.1 - 4.0, 77.5]]);
        let lines = crate::parts::lines::hatch(
            &side,
            Hatch {
                turn: 0.24,
                gap: 6.5,
                width: 2.8,
                stray: 0.6,
            },
            &mut dice,
        );
        k.within(f, |p| {
            p.leave_all(&lines);
            p.keep(&side);
        });
        let bricks = pecks(bounds(f), 90, 15.0, 0.0, &mut dice);
        k.within(f, |p| p.leave_all(&bricks));
        k.leave(&b.area(s.0 + 2.0, 53.4, s.1 - 2.0, 54.8));
    }
    for (i, pane) in panes.iter().enumerate() {
        k.cut(pane);
        k.leave(&outline(pane, 3.6));
        let m = bounds(pane);
        let (_, bars) = window(m[0], m[1], m[2] - m[0], m[3] - m[1]);
        if lit.iter().any(|p| **p == *pane) {
            k.leave_all(&bars);
            if i > 17 {
                goods(&mut k, m, &mut dice);
            }
        } else {
            k.leave(&knifed(pane, 0.6, 3));
            k.cut_all(&pecks(
                [m[0] + 4.0, m[1] + 4.0, m[2] - 10.0, m[3] - 8.0],
                4,
                18.0,
                0.12,
                &mut dice,
            ));
        }
    }
    k.cut(&board);
    k.leave(&outline(&board, 5.0));
    k.leave(&bar(&b.line(&[[42.0, 38.0], [58.0, 38.0]]), 5.0));
    k.leave(&bar(&b.line(&[[45.0, 38.0], [45.0, 39.6]]), 2.6));
    k.leave(&bar(&b.line(&[[55.0, 38.0], [55.0, 39.6]]), 2.6));
    if has_anchor {
        for part in &anchor {
            k.leave(&outline(part, 1.8));
        }
    }
    k.leave(&bar(&b.line(&[[50.0, 52.0], [50.0, 54.0]]), 2.6));
    k.leave(&b.line(&[[47.4, 53.6], [52.6, 53.6], [51.6, 52.4], [48.4, 52.4]]));
    k.leave(&outline(&b.area(48.0, 53.6, 52.0, 58.4), 2.4));
    doors(&mut k, b, &mut dice);
    cobbles(&mut k, b, &mut dice);
    for (x, y, r, n) in [
        (27.0, 79.0, 44.0, 4),
        (60.5, 79.6, 38.0, 4),
        (88.0, 79.0, 34.0, 3),
    ] {
        k.cut(&ellipse(b.x(x), b.y(y), r * 1.04, r * 0.42));
        k.leave_all(&coil(b.at(x, y), r, n));
    }
    Cuts::from([
        ("night", b.trimmed(n)),
        ("wet", b.trimmed(w)),
        ("lamp", b.trimmed(l)),
        ("red", b.trimmed(r)),
        ("key", b.trimmed(k)),
    ])
}

fn anchor(at: Pt, size: f32) -> Vec<Path> {
    let [x, y] = at;
    let s = size;
    vec![
        bar(&[[x, y - s * 0.75], [x, y + s * 0.95]], s * 0.17),
        bar(
            &[[x - s * 0.42, y - s * 0.48], [x + s * 0.42, y - s * 0.48]],
            s * 0.15,
        ),
        bar(
            &arc(x, y - s * 0.88, s * 0.15, s * 0.15, 0.0, 1.01),
            s * 0.1,
        ),
        bar(
            &arc(x, y + s * 0.25, s * 0.72, s * 0.68, 0.03, 0.47),
            s * 0.18,
        ),
        vec![
            [x - s * 0.92, y + s * 0.45],
            [x - s * 0.66, y + s * 0.10],
            [x - s * 0.48, y + s * 0.52],
        ],
        vec![
            [x + s * 0.92, y + s * 0.45],
            [x + s * 0.66, y + s * 0.10],
            [x + s * 0.48, y + s * 0.52],
        ],
    ]
}

/// Silhouettes of goods in a lit shop window.
fn goods(k: &mut Plane, m: [f32; 4], dice: &mut Dice) {
    let base = m[3] - 4.0;
    let mut x = m[0] + 6.0;
    while x < m[2] - 12.0 {
        let h = dice.between(10.0, 32.0);
        if dice.chance(0.5) {
            k.leave(&rect(x, base - h, 9.0, h));
        } else {
            k.leave(&ellipse(x + 5.0, base - h * 0.4, 6.0, h * 0.4));
        }
        x += 14.0;
    }
    k.leave(&bar(
        &[[m[0] + 4.0, m[1] + 20.0], [m[2] - 4.0, m[1] + 26.0]],
        1.8,
    ));
    for i in 0..3 {
        let x = m[0] + 10.0 + 15.0 * i as f32;
        k.leave(&ellipse(x, m[1] + 32.0, 4.0, 7.0));
    }
}

/// Lit windows thrown down on the wet stones.
fn lights(lit: &[&Path], b: &Bench, dice: &mut Dice) -> Vec<Path> {
    lit.iter()
        .flat_map(|pane| {
            let m = bounds(pane);
            let high = m[1] < b.y(50.0);
            let reach = if high { 90.0 } else { 99.5 };
            broken(
                m[0] + 2.0,
                m[2] - 2.0,
                b.y(if high { 84.0 } else { 79.5 }),
                b.y(reach),
                dice,
            )
        })
        .collect()
}

fn doors(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    for x in [13.6, 47.0, 78.6] {
        let door = b.area(x, 60.0, x + 5.8, 77.2);
        k.leave(&outline(&door, 4.0));
        let lines = crate::parts::lines::hatch(
            &door,
            Hatch {
                turn: 0.25,
                gap: 6.0,
                width: 2.4,
                stray: 0.3,
            },
            dice,
        );
        k.within(&door, |p| p.leave_all(&lines));
        k.leave(&b.area(x + 0.8, 61.6, x + 5.0, 65.0));
        k.leave(&b.area(x - 1.0, 76.6, x + 7.0, 78.4));
    }
    for x in [22.0, 73.0] {
        k.leave(&outline(&b.area(x, 68.4, x + 2.6, 71.4), 2.2));
        k.leave(&b.line(&[[x - 0.4, 68.4], [x + 1.3, 67.2], [x + 3.0, 68.4]]));
        k.leave(&bar(&b.line(&[[x + 1.3, 66.0], [x + 1.3, 67.4]]), 2.0));
    }
    k.leave_all(&figure(b.at(43.0, 80.5), 108.0, Pose::Standing, 1.0));
}

fn cobbles(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let mut y = 79.0;
    while y < 101.0 {
        let t = (y - 79.0) / 22.0;
        let size = mix(9.0, 30.0, t);
        let mut x = -dice.roll() * size;
        while x < b.w {
            let l = size * dice.between(0.8, 1.3);
            let top = arc(
                x + l / 2.0,
                b.y(y) + size * 0.3,
                l * 0.46,
                size * 0.3,
                0.52,
                0.98,
            );
            k.leave(&gouged(&top, 1.4 + 2.2 * t));
            x += l;
        }
        y += mix(1.1, 3.0, t);
    }
}

fn shops_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("lamp", "lamp", ink(0xf0_bf_4a)).from(Surface::Plank, 0.2),
        Pass::new("red", "red", ink(0xc4_43_30)).from(Surface::Plank, 0.25),
        Pass::new("wet", "wet", ink(0x8b_93_9f)).charged(evenly(
            look,
            "rain",
            0.9,
            Fall {
                from: 0.0,
                to: 1000.0,
                rest: 0.5,
            },
        )),
        Pass::new("night", "night", ink(0x35_4a_7c)).charged(graded(
            look,
            Fall {
                from: -40.0,
                to: 1000.0,
                rest: 0.6,
            },
        )),
        Pass::new("key", "key", ink(0x1b_1f_2c)).charged(|_| 1.05),
    ]
}

fn nets_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let deck = b.line(&[
        [-1.0, 46.6],
        [30.0, 44.6],
        [70.0, 44.6],
        [101.0, 46.6],
        [101.0, 51.6],
        [70.0, 49.8],
        [30.0, 49.8],
        [-1.0, 51.6],
    ]);
    let piers = [
        b.line(&[[21.0, 49.0], [32.0, 49.0], [33.0, 79.0], [20.0, 79.0]]),
        b.line(&[[69.0, 49.0], [80.0, 49.0], [81.0, 79.0], [68.0, 79.0]]),
    ];
    let nets = [
        net(b, 8.0, 38.0, 77.0, 3, &mut dice),
        net(b, 38.0, 64.0, 70.0, 2, &mut dice),
        net(b, 64.0, 93.0, 79.0, 3, &mut dice),
    ];
    let trees = [
        poplar(b.at(12.0, 47.0), b.y(37.0), &mut dice),
        poplar(b.at(19.0, 47.0), b.y(31.0), &mut dice),
    ];
    let roofs = row(
        [b.x(34.0), b.w + 30.0],
        b.y(47.0),
        b.y(15.0),
        b.x(9.0),
        &mut dice,
    );

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 60.0));
    for (x, y, w, h) in [
        (30.0, 14.0, 52.0, 30.0),
        (-8.0, 24.0, 44.0, 24.0),
        (58.0, 27.0, 50.0, 20.0),
        (6.0, 7.0, 36.0, 12.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 2.2, 3));
    }
    let holes = [
        (72.0, 12.0),
        (84.0, 18.0),
        (78.0, 23.5),
        (66.0, 7.5),
        (91.0, 9.0),
    ];
    for (x, y) in holes.into_iter().take([0, 2, 5][look.stage("worm").min(2)]) {
        s.cut(&ellipse(b.x(x), b.y(y), 3.0, 2.8));
    }

    let mut n = b.cleared();
    for (shape, _, _) in &nets {
        n.leave(shape);
    }
    n.leave_all(&roofs);
    n.leave(&deck);
    n.cut_all(&pecks(
        [0.0, b.y(45.0), b.w, b.y(50.0)],
        40,
        40.0,
        0.0,
        &mut dice,
    ));
    for p in &piers {
        n.leave(&b.line(&[[0.0, 0.0]]));
        let m = bounds(p);
        n.within(p, |q| {
            q.leave(&rect(m[0], m[1], (m[2] - m[0]) * 0.45, m[3] - m[1]));
        });
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 58.0, 102.0, 101.0));
    w.leave_all(&trees);
    w.cut_all(&ripples(
        [0.0, b.y(62.0), b.w, b.h],
        70,
        110.0,
        6.5,
        &mut dice,
    ));
    for p in &piers {
        w.cut(p);
    }
    w.cut_all(&broken(
        b.x(36.0),
        b.x(62.0),
        b.y(82.0),
        b.y(99.0),
        &mut dice,
    ));

    let mut k = b.cleared();
    k.leave(&b.area(-1.0, 57.0, 101.0, 58.6));
    k.leave_all(&row([-20.0, b.w], b.y(58.0), b.y(5.0), b.x(6.0), &mut dice));
    for t in &trees {
        shade(
            &mut k,
            t,
            Hatch {
                turn: 0.23,
                gap: 6.5,
                width: 2.6,
                stray: 1.2,
            },
            &mut dice,
        );
        let m = bounds(t);
        k.within(t, |p| {
            p.leave(&rect((m[0] + m[2]) / 2.0, m[1], m[2] - m[0], m[3] - m[1]));
        });
        k.cut_within(t, |p| p.leave_all(&pecks(m, 30, 15.0, 0.24, &mut dice)));
    }
    for h in &roofs {
        k.leave(&outline(h, 2.2));
        let m = bounds(h);
        let lines = tiles(
            [m[0], m[1], m[2], m[1] + (m[3] - m[1]) * 0.42],
            6.0,
            &mut dice,
        );
        k.within(h, |p| p.leave_all(&lines));
        for i in 0..3 {
            let x = m[0] + 14.0 + i as f32 * 26.0;
            if x + 10.0 < m[2] {
                k.leave(&rect(x, m[3] - 32.0, 8.0, 12.0));
            }
        }
    }
    bridge(&mut k, b, &deck, &piers, &mut dice);
    for (shape, lines, floats) in &nets {
        k.leave(&outline(shape, 2.4));
        k.within(shape, |p| p.leave_all(lines));
        for f in floats {
            k.leave(f);
        }
    }
    for p in &piers {
        let m = bounds(p);
        k.leave_all(&broken(
            m[0] - 4.0,
            m[2] + 4.0,
            b.y(79.5),
            b.y(99.0),
            &mut dice,
        ));
    }
    k.leave_all(&ripples(
        [0.0, b.y(80.0), b.w, b.h],
        30,
        90.0,
        4.4,
        &mut dice,
    ));
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("net", b.trimmed(n)),
        ("water", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
}

/// A net hung from the rail in scallops: its outline, its meshes, its floats.
fn net(
    b: &Bench,
    left: f32,
    right: f32,
    foot: f32,
    swags: usize,
    dice: &mut Dice,
) -> (Path, Vec<Path>, Vec<Path>) {
    let mut outline = b.line(&[[left, 41.8], [right, 41.8]]);
    let mut lower = Vec::new();
    for i in 0..=swags * 4 {
        let t = i as f32 / (swags * 4) as f32;
        let x = mix(right - 0.6, left + 0.6, t);
        let sag = libm::sinf(t * swags as f32 * core::f32::consts::PI).abs();
        lower.push(b.at(x, foot - 13.0 + 13.0 * sag + dice.about(0.9)));
    }
    outline.extend(curve(&lower));
    let m = bounds(&outline);
    let mut lines = Vec::new();
    let gap = 13.0;
    let mut x = m[0] - (m[3] - m[1]);
    while x < m[2] {
        let bend = dice.about(7.0);
        lines.push(bar(
            &curve(&[
                [x, m[1]],
                [x + 42.0 + bend, (m[1] + m[3]) / 2.0],
                [x + 58.0, m[3]],
            ]),
            1.5,
        ));
        x += gap;
    }
    let mut x = m[0];
    while x < m[2] + (m[3] - m[1]) {
        let bend = dice.about(7.0);
        lines.push(bar(
            &curve(&[
                [x, m[1]],
                [x - 42.0 + bend, (m[1] + m[3]) / 2.0],
                [x - 58.0, m[3]],
            ]),
            1.5,
        ));
        x += gap;
    }
    let floats = lower
        .iter()
        .map(|p| ellipse(p[0], p[1], 5.2, 4.4))
        .collect();
    (outline, lines, floats)
}

fn bridge(k: &mut Plane, b: &Bench, deck: &Path, piers: &[Path; 2], dice: &mut Dice) {
    k.leave(&outline(deck, 3.6));
    k.leave(&b.line(&[
        [-1.0, 49.6],
        [30.0, 47.8],
        [70.0, 47.8],
        [101.0, 49.6],
        [101.0, 51.6],
        [70.0, 49.8],
        [30.0, 49.8],
        [-1.0, 51.6],
    ]));
    for i in 0..26 {
        let x = -0.5 + 4.0 * i as f32;
        let rise = if x < 30.0 {
            (30.0 - x) / 30.0 * 2.0
        } else if x > 70.0 {
            (x - 70.0) / 30.0 * 2.0
        } else {
            0.0
        };
        k.leave(&bar(&b.line(&[[x, 41.2 + rise], [x, 45.0 + rise]]), 3.0));
    }
    k.leave(&bar(
        &b.line(&[[-1.0, 43.2], [30.0, 41.2], [70.0, 41.2], [101.0, 43.2]]),
        4.0,
    ));
    for (pier, x) in piers.iter().zip([26.5, 74.5]) {
        k.cut(pier);
        k.leave(&outline(pier, 4.0));
        let m = bounds(pier);
        let joints = stones(m, 20.0, 2.2, dice);
        k.within(pier, |p| p.leave_all(&joints));
        shade(
            k,
            &rect(
                m[0] + (m[2] - m[0]) * 0.62,
                m[1],
                (m[2] - m[0]) * 0.36,
                m[3] - m[1],
            ),
            Hatch {
                turn: 0.0,
                gap: 5.0,
                width: 2.4,
                stray: 0.5,
            },
            dice,
        );
        // The lifting beams that stand over the piers.
        k.leave(&b.line(&[
            [x - 1.6, 45.0],
            [x - 1.0, 20.0],
            [x + 1.0, 20.0],
            [x + 1.6, 45.0],
        ]));
        let far_end = if x < 50.0 { 49.0 } else { 51.0 };
        let back = if x < 50.0 { 14.0 } else { 86.0 };
        k.leave(&bar(
            &b.line(&[[back, 24.0], [x, 20.5], [far_end, 18.0]]),
            6.0,
        ));
        k.leave(&bar(&b.line(&[[far_end, 18.0], [far_end, 44.6]]), 2.4));
        k.leave(&b.line(&[
            [back - 2.0, 23.0],
            [back + 2.0, 23.0],
            [back + 2.0, 28.0],
            [back - 2.0, 28.0],
        ]));
        k.leave(&bar(
            &b.line(&[[x - 1.0, 33.0], [x + (far_end - x) * 0.4, 19.6]]),
            3.4,
        ));
    }
    k.leave_all(&figure(b.at(53.0, 45.2), 40.0, Pose::Bent, -1.0));
    k.leave_all(&figure(b.at(45.0, 45.2), 42.0, Pose::Standing, 1.0));
}

fn nets_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0xa9_c3_d0)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: -30.0,
                to: 420.0,
                rest: 0.2,
            },
        )),
        Pass::new("water", "water", ink(0x66_8c_70)).charged(graded(
            look,
            Fall {
                from: 800.0,
                to: 300.0,
                rest: 0.6,
            },
        )),
        Pass::new("net", "net", ink(0xb8_8a_56)),
        Pass::new("key", "key", ink(0x2a_27_24)).charged(|_| 1.03),
    ]
}

fn snow_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let roofs = row(
        [b.x(38.0), b.w + 20.0],
        b.y(49.0),
        b.y(15.0),
        b.x(17.0),
        &mut dice,
    );
    let heap = curve(&b.line(&[
        [-3.0, 64.0],
        [4.0, 52.0],
        [12.0, 44.5],
        [18.0, 42.0],
        [25.0, 46.0],
        [32.0, 52.0],
        [40.0, 57.5],
        [46.0, 61.0],
    ]));
    let mut coal = heap.clone();
    coal.extend(b.line(&[[30.0, 66.0], [-3.0, 72.0]]));
    let caps = curve(&b.line(&[
        [-3.0, 60.0],
        [5.0, 50.0],
        [12.0, 43.0],
        [18.0, 40.6],
        [24.0, 43.0],
        [31.0, 50.0],
        [22.0, 49.0],
        [17.0, 46.5],
        [12.0, 50.5],
        [4.0, 58.0],
        [-3.0, 66.0],
    ]));
    let quay_edge = curve(&b.line(&[
        [20.0, 101.0],
        [34.0, 84.0],
        [44.0, 72.0],
        [52.0, 61.0],
        [57.0, 52.0],
    ]));

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 50.0));
    // Water right of the quay, and the blue of shadowed snow.
    let mut basin = quay_edge.clone();
    basin.extend(b.line(&[[101.0, 50.0], [101.0, 101.0]]));
    s.leave(&basin);
    s.cut_all(&ripples(
        [b.x(40.0), b.y(62.0), b.w, b.h],
        40,
        90.0,
        7.0,
        &mut dice,
    ));
    for h in &roofs {
        let m = bounds(h);
        s.cut(&knifed(
            &[
                [m[0] - 3.0, m[1] + (m[3] - m[1]) * 0.4],
                [(m[0] + m[2]) / 2.0, m[1] - 4.0],
                [m[2] + 3.0, m[1] + (m[3] - m[1]) * 0.4],
            ],
            2.0,
            3,
        ));
    }
    s.cut(&caps);
    for (x, y, l) in [
        (6.0, 76.0, 120.0),
        (2.0, 84.0, 150.0),
        (10.0, 92.0, 130.0),
        (24.0, 72.0, 70.0),
        (4.0, 97.0, 160.0),
    ] {
        let p = b.at(x, y);
        s.leave(&gouged(
            &curve(&[p, [p[0] + l * 0.4, p[1] - 10.0], [p[0] + l, p[1] - 26.0]]),
            9.0,
        ));
    }

    let mut o = b.cleared();
    let mut k = b.cleared();
    quay_far(&mut k, &mut o, &roofs, b, &mut dice);
    k.leave(&knifed(&coal, 5.0, 3));
    k.cut(&knifed(&caps, 4.0, 4));
    let sparkle = pecks(
        [0.0, b.y(46.0), b.x(44.0), b.y(70.0)],
        90,
        15.0,
        0.1,
        &mut dice,
    );
    k.cut_within(&coal, |p| p.leave_all(&sparkle));
    k.leave_all(&figure(b.at(33.0, 63.0), 60.0, Pose::Bent, -1.0));
    k.leave(&tapered(&quay_edge, 13.0, 3.0));
    let shadow_side: Path = quay_edge
        .iter()
        .map(|p| [p[0] + 12.0, p[1] + 6.0])
        .collect();
    let mut wall = quay_edge.clone();
    wall.extend(shadow_side.iter().rev().map(|p| [p[0] + 14.0, p[1] + 20.0]));
    shade(
        &mut k,
        &wall,
        Hatch {
            turn: 0.25,
            gap: 5.5,
            width: 3.4,
            stray: 0.5,
        },
        &mut dice,
    );
    for (x, y, size) in [
        (24.5, 92.5, 74.0),
        (35.0, 79.0, 54.0),
        (43.0, 69.5, 40.0),
        (48.5, 62.0, 29.0),
        (52.0, 56.6, 20.0),
    ] {
        let (body, cap) = bollard(b.at(x, y), size);
        k.cut(&outline(&body, 6.0));
        k.leave(&knifed(&body, 0.9, 3));
        let m = bounds(&body);
        k.cut_all(&pecks(
            [
                m[0] + size * 0.1,
                m[1] + size * 0.3,
                m[0] + size * 0.32,
                m[3] - 8.0,
            ],
            5,
            size * 0.3,
            0.25,
            &mut dice,
        ));
        k.cut(&cap);
        s.cut(&cap);
        k.leave(&outline(&cap, 1.6));
        s.cut(&body);
    }
    if look.has_or("wagon", look.state == 0) {
        let (body, wheels) = wagon(b.at(54.0, 71.5), b.x(24.0));
        for part in std::iter::once(&body).chain(&wheels) {
            s.cut(&outline(part, 5.0));
            k.cut(&outline(part, 6.0));
        }
        k.leave(&knifed(&body, 0.8, 3));
        k.leave_all(&wheels);
        let m = bounds(&body);
        let cover = blob(&[
            [m[0] - 4.0, m[1] + 6.0],
            [m[0] + 30.0, m[1] - 26.0],
            [m[0] + 90.0, m[1] - 36.0],
            [m[2] - 30.0, m[1] - 24.0],
            [m[2] + 5.0, m[1] + 7.0],
            [m[2] - 60.0, m[1] + 16.0],
        ]);
        k.cut(&cover);
        s.cut(&cover);
        o.leave(&cover);
        k.leave(&outline(&cover, 3.0));
        shade(
            &mut k,
            &cover,
            Hatch {
                turn: 0.11,
                gap: 8.0,
                width: 2.0,
                stray: 1.0,
            },
            &mut dice,
        );
        k.cut_all(&pecks(
            [m[0] + 10.0, m[1] + 22.0, m[2] - 20.0, m[3] - 20.0],
            10,
            26.0,
            0.0,
            &mut dice,
        ));
    }
    for x in [12.0, 46.0] {
        let high = if x < 20.0 { 48.0 } else { 27.0 };
        let y = if x < 20.0 { 87.0 } else { 63.0 };
        let (post, glass) = lamp(b.at(x, y), b.y(high));
        s.cut(&glass);
        k.cut(&glass);
        o.leave(&glass);
        k.leave_all(&post);
        k.leave(&outline(&glass, 2.4));
        let m = bounds(&glass);
        s.cut(&ellipse(
            (m[0] + m[2]) / 2.0,
            (m[1] + m[3]) / 2.0,
            (m[2] - m[0]) * 1.1,
            (m[2] - m[0]) * 1.2,
        ));
    }
    let tracks = [
        curve(&b.line(&[[4.0, 101.0], [20.0, 82.0], [34.0, 68.0], [44.0, 58.0]])),
        curve(&b.line(&[[-1.0, 92.0], [12.0, 80.0], [26.0, 68.0], [40.0, 57.0]])),
    ];
    for t in &tracks {
        k.leave(&tapered(t, 3.4, 1.2));
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("ochre", b.trimmed(o)),
        ("key", b.trimmed(k)),
    ])
}

fn quay_far(k: &mut Plane, o: &mut Plane, roofs: &[Path], b: &Bench, dice: &mut Dice) {
    for h in roofs {
        let m = bounds(h);
        let face = rect(
            m[0],
            m[1] + (m[3] - m[1]) * 0.38,
            m[2] - m[0],
            (m[3] - m[1]) * 0.62,
        );
        k.leave(&outline(h, 3.0));
        k.within(h, |p| p.leave(&face));
        k.cut_all(&pecks(bounds(&face), 16, 15.0, 0.0, dice));
        for i in 0..3 {
            let pane = rect(m[0] + 16.0 + 40.0 * i as f32, m[3] - 46.0, 11.0, 15.0);
            if dice.chance(0.45) {
                k.cut(&pane);
                o.leave(&pane);
            }
        }
    }
    k.leave(&b.area(38.0, 48.4, 101.0, 50.0));
    for (x, h) in [(68.0, 39.0), (80.0, 45.0), (92.0, 36.0)] {
        k.leave_all(&mast(b.at(x, 58.0), b.y(h), 7.0, 74.0));
        let side = hull(b.at(x - 9.0, 55.5), b.x(17.0), b.y(4.4), 6.0);
        k.leave(&knifed(&side, 0.8, 3));
        k.cut(&bar(&[b.at(x - 8.6, 55.2), b.at(x + 8.0, 55.2)], 3.0));
        k.leave_all(&broken(
            b.x(x) - 4.0,
            b.x(x) + 3.0,
            b.y(61.0),
            b.y(84.0),
            dice,
        ));
    }
    o.leave(&b.area(63.0, 45.0, 65.6, 48.6));
}

fn snow_print(look: &Look) -> Vec<Pass> {
    let flecked = look.choice("sky") == "flecked";
    let turn = look.number as f32 * 11.0;
    vec![
        Pass::new("sky", "sky", ink(0x85_86_a2)).charged(move |p| {
            let base = 1.02 - 0.35 * step(0.0, 480.0, p[1]);
            if flecked && p[1] < 500.0 {
                let dab = smooth(p[0] / 7.5 + turn, p[1] / 7.5, 51);
                base * (1.05 - 0.95 * step(0.70, 0.80, dab))
            } else {
                base
            }
        }),
        Pass::new("ochre", "ochre", ink(0xdc_a1_43)).from(Surface::Plank, 0.25),
        Pass::new("key", "key", ink(0x1f_25_38)).charged(|_| 1.04),
    ]
}

fn oranges_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut ship = curve(&b.line(&[[-1.0, 26.0], [14.0, 26.5], [30.0, 24.0], [46.5, 18.0]]));
    ship.extend(curve(&b.line(&[
        [46.5, 18.0],
        [43.5, 34.0],
        [40.5, 52.0],
        [37.5, 68.0],
        [35.0, 80.0],
    ])));
    ship.extend(b.line(&[[-1.0, 81.0]]));
    let arc_lamp = b.at(58.0, 16.0);
    let cone: Path = vec![
        [arc_lamp[0] - 9.0, arc_lamp[1] + 10.0],
        [arc_lamp[0] + 9.0, arc_lamp[1] + 10.0],
        b.at(90.0, 82.0),
        b.at(40.0, 82.0),
    ];
    let quay = b.line(&[
        [33.0, 80.5],
        [44.0, 73.0],
        [101.0, 70.0],
        [101.0, 101.0],
        [-1.0, 101.0],
        [-1.0, 82.0],
    ]);
    let open = look.count("crates", 5);
    let boxes: Vec<(Path, Path)> = [
        (61.0, 71.5, 13.0),
        (77.0, 70.5, 13.0),
        (69.0, 80.5, 15.0),
        (86.0, 79.5, 14.5),
        (56.0, 87.5, 16.0),
    ]
    .iter()
    .take(open)
    .map(|&(x, y, w)| crate_of(b, x, y, w))
    .collect();

    let mut n = b.cleared();
    n.leave(&b.area(-2.0, -2.0, 102.0, 101.0));
    n.cut(&knifed(&cone, 1.4, 3));
    let rays: Vec<Path> = (0..26)
        .map(|i| {
            let t = i as f32 / 25.0;
            let foot = b.at(mix(30.0, 99.0, t), 84.0);
            gouged(
                &[
                    toward(arc_lamp, foot, dice.between(0.15, 0.45)),
                    toward(arc_lamp, foot, dice.between(0.7, 1.0)),
                ],
                3.0,
            )
        })
        .collect();
    n.cut_all(&rays);
    n.cut(&ellipse(arc_lamp[0], arc_lamp[1] + 4.0, 34.0, 34.0));
    n.cut(&b.line(&[
        [36.0, 80.5],
        [46.0, 74.0],
        [94.0, 71.5],
        [101.0, 78.0],
        [101.0, 92.0],
        [50.0, 97.0],
        [30.0, 88.0],
    ]));
    n.cut(&ship);
    n.cut_all(&pecks([0.0, 0.0, b.w, b.y(20.0)], 36, 30.0, 0.0, &mut dice));

    let mut h = b.cleared();
    h.leave(&knifed(&ship, 1.4, 3));
    h.cut(&bar(
        &curve(&b.line(&[[-1.0, 33.0], [14.0, 33.5], [30.0, 31.0], [45.4, 26.0]])),
        4.0,
    ));
    h.cut_all(&pecks(
        [0.0, b.y(40.0), b.x(40.0), b.y(78.0)],
        40,
        60.0,
        0.0,
        &mut dice,
    ));
    let lit_side = b.line(&[[38.0, 30.0], [46.5, 20.0], [35.5, 80.0], [29.0, 80.0]]);
    h.cut_within(&lit_side, |p| {
        p.leave_all(&pecks(bounds(&lit_side), 46, 40.0, 0.26, &mut dice));
    });

    let mut d = b.cleared();
    d.leave(&quay);
    d.leave(&b.line(&[[-1.0, 18.0], [20.0, 18.0], [20.0, 26.5], [-1.0, 26.5]]));
    d.cut_all(&pecks(
        [b.x(36.0), b.y(74.0), b.w, b.h],
        46,
        60.0,
        0.0,
        &mut dice,
    ));
    let mut o = b.cleared();
    let mut l = b.cleared();
    l.leave(&ellipse(arc_lamp[0], arc_lamp[1] + 4.0, 12.0, 12.0));
    l.leave(&cone);
    for i in 0..5 {
        l.leave(&ellipse(
            b.x(4.0 + 7.0 * i as f32),
            b.y(43.0 - 0.4 * i as f32),
            7.5,
            7.5,
        ));
        h.cut(&ellipse(
            b.x(4.0 + 7.0 * i as f32),
            b.y(43.0 - 0.4 * i as f32),
            8.0,
            8.0,
        ));
    }
    l.leave(&b.area(4.0, 20.0, 7.0, 23.0));
    l.leave(&b.area(11.0, 20.0, 14.0, 23.0));

    let mut k = b.cleared();
    steamer(&mut k, b, &ship, arc_lamp, &mut dice);
    k.leave(&outline(&quay, 3.4));
    k.leave_all(&stones(
        [b.x(0.0), b.y(90.0), b.w, b.h],
        26.0,
        2.0,
        &mut dice,
    ));
    for (x, y, hgt, pose, face) in [
        (46.0, 84.0, 74.0, Pose::Carrying, 1.0),
        (52.5, 79.0, 62.0, Pose::Standing, -1.0),
        (94.5, 77.0, 60.0, Pose::Carrying, -1.0),
        (42.0, 94.0, 84.0, Pose::Bent, 1.0),
    ] {
        let person = figure(b.at(x, y), hgt, pose, face);
        k.leave_all(&person);
        d.leave(&lens(b.x(x) - 10.0, b.x(x) + 46.0, b.y(y) + 2.0, 6.0));
    }
    // Closed crates behind, then the open ones with their fruit.
    for (x, y, w) in [(66.0, 63.0, 11.0), (78.0, 62.0, 11.0), (89.0, 63.5, 11.0)] {
        let shut = b.area(x, y, x + w, y + 8.5);
        k.cut(&shut);
        k.leave(&outline(&shut, 2.6));
        shade(
            &mut k,
            &shut,
            Hatch {
                turn: 0.0,
                gap: 8.0,
                width: 2.2,
                stray: 0.4,
            },
            &mut dice,
        );
        d.leave(&shut);
        n.cut(&shut);
    }
    for (front_face, top) in &boxes {
        for plane in [&mut n, &mut d, &mut k, &mut o] {
            plane.cut(front_face);
            plane.cut(top);
        }
        k.leave(&outline(front_face, 3.0));
        let m = bounds(front_face);
        for i in 1..3 {
            let y = mix(m[1], m[3], i as f32 / 3.0);
            k.leave(&bar(&[[m[0], y], [m[2], y]], 2.6));
        }
        shade(
            &mut k,
            &rect(m[0], m[1], (m[2] - m[0]) * 0.3, m[3] - m[1]),
            Hatch {
                turn: 0.25,
                gap: 5.0,
                width: 2.0,
                stray: 0.4,
            },
            &mut dice,
        );
        d.within(front_face, |p| {
            p.leave(&rect(m[0], m[1], (m[2] - m[0]) * 0.5, m[3] - m[1]));
        });
        k.leave(&knifed(top, 0.8, 3));
        for fruit in fruits(top) {
            let mm = bounds(&fruit);
            let (cx, cy, r) = (
                (mm[0] + mm[2]) / 2.0,
                (mm[1] + mm[3]) / 2.0,
                (mm[2] - mm[0]) / 2.0,
            );
            k.cut(&ellipse(cx, cy, r, r));
            o.leave(&fruit);
            k.leave(&gouged(&arc(cx, cy, r, r, 0.02, 0.45), 2.2));
        }
        k.leave(&outline(top, 3.0));
    }
    // Two oranges that rolled away.
    for (x, y) in [(50.0, 91.5), (74.5, 95.0)] {
        let p = b.at(x, y);
        let round = ellipse(p[0], p[1], 8.0, 8.0);
        d.cut(&round);
        o.leave(&round);
        k.leave(&gouged(&arc(p[0], p[1], 8.0, 8.0, 0.0, 0.5), 2.4));
    }
    Cuts::from([
        ("night", b.trimmed(n)),
        ("hull", b.trimmed(h)),
        ("deck", b.trimmed(d)),
        ("lamp", b.trimmed(l)),
        ("orange", b.trimmed(o)),
        ("key", b.trimmed(k)),
    ])
}

fn crate_of(b: &Bench, x: f32, y: f32, w: f32) -> (Path, Path) {
    let deep = w * 0.42;
    let tall = w * 0.62;
    (
        knifed(&b.area(x, y, x + w, y + tall), 0.7, 3),
        b.line(&[
            [x, y],
            [x + w, y],
            [x + w * 0.9 + 1.6, y - deep],
            [x + w * 0.1 + 1.6, y - deep],
        ]),
    )
}

fn fruits(top: &Path) -> Vec<Path> {
    let m = bounds(top);
    let r = (m[2] - m[0]) / 11.0;
    let mut out = Vec::new();
    for line in 0..3 {
        let t = line as f32 / 2.0;
        let y = mix(m[1] + r * 1.1, m[3] - r * 0.9, t);
        let inset = mix(0.13, 0.03, t) * (m[2] - m[0]) + r;
        let many = 4 + line;
        for i in 0..many {
            let x = mix(m[0] + inset, m[2] - inset, i as f32 / (many - 1) as f32);
            out.push(ellipse(x, y, r * 0.84, r * 0.84));
        }
    }
    out
}

fn steamer(k: &mut Plane, b: &Bench, ship: &Path, lamp_at: Pt, dice: &mut Dice) {
    k.leave(&outline(ship, 5.0));
    let dark = b.line(&[
        [-1.0, 62.0],
        [20.0, 60.0],
        [33.0, 54.0],
        [35.5, 80.0],
        [-1.0, 81.0],
    ]);
    k.within(ship, |p| p.leave(&dark));
    k.cut_within(&dark, |p| {
        p.leave_all(&pecks(bounds(&dark), 50, 50.0, 0.0, dice));
    });
    for i in 0..7 {
        let y = 34.0 + 5.5 * i as f32;
        let line = curve(&b.line(&[
            [-1.0, y],
            [16.0, y],
            [30.0, y - 2.5],
            [44.0 - 0.9 * i as f32, y - 7.5],
        ]));
        k.within(ship, |p| p.leave(&tapered(&line, 1.8, 1.2)));
    }
    for i in 0..5 {
        k.leave(&bar(
            &arc(
                b.x(4.0 + 7.0 * i as f32),
                b.y(43.0 - 0.4 * i as f32),
                9.0,
                9.0,
                0.0,
                1.01,
            ),
            2.6,
        ));
    }
    // Anchor in its hawse, and the rail.
    k.leave_all(&anchor(b.at(38.5, 40.0), b.y(5.0)));
    for i in 0..12 {
        let t = i as f32 / 11.0;
        let x = mix(-1.0, 45.0, t);
        let y = 26.0 - 7.4 * (t - 0.3).max(0.0) * 1.3;
        k.leave(&bar(&b.line(&[[x, y - 4.0], [x, y]]), 2.0));
    }
    k.leave(&bar(
        &curve(&b.line(&[[-1.0, 22.0], [14.0, 22.4], [30.0, 19.8], [46.5, 13.8]])),
        2.4,
    ));
    k.leave(&outline(&b.area(-2.0, 12.0, 18.0, 25.0), 3.0));
    k.leave(&b.area(-2.0, 11.0, 19.5, 12.8));
    k.leave(&b.line(&[[3.0, 11.0], [3.4, -2.0], [11.6, -2.0], [12.0, 11.0]]));
    k.cut(&b.area(3.3, 2.0, 11.8, 4.6));
    k.leave(&tapered(&b.line(&[[26.0, 24.0], [26.6, -2.0]]), 11.0, 8.0));
    k.leave(&tapered(&b.line(&[[26.4, 20.0], [72.0, 5.0]]), 8.0, 5.0));
    k.leave(&bar(&b.line(&[[26.6, 2.0], [72.0, 5.0]]), 1.8));
    k.leave(&bar(&b.line(&[[72.0, 5.0], [72.0, 47.0]]), 2.0));
    k.leave(&outline(
        &b.line(&[
            [69.0, 52.0],
            [72.0, 47.0],
            [75.0, 52.0],
            [75.0, 57.0],
            [69.0, 57.0],
        ]),
        2.4,
    ));
    k.leave(&bar(&b.line(&[[69.0, 54.5], [75.0, 54.5]]), 2.0));
    k.leave(&b.line(&[
        [56.0, 14.6],
        [58.0, 12.4],
        [60.0, 14.6],
        [59.4, 16.0],
        [56.6, 16.0],
    ]));
    k.leave(&bar(&[[lamp_at[0], -5.0], [lamp_at[0], b.y(13.0)]], 2.4));
}

fn oranges_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("lamp", "lamp", ink(0xf6_dc_8e))
            .from(Surface::Plank, 0.2)
            .charged(|p| mix(1.15, 0.45, step(120.0, 620.0, p[1]))),
        Pass::new("orange", "orange", ink(0xe8_7f_25)).from(Surface::Plank, 0.2),
        Pass::new("deck", "deck", ink(0xa2_a2_a0)),
        Pass::new("hull", "hull", ink(0x3c_69_58)),
        Pass::new("night", "night", ink(0x2c_3a_5c)).charged(evenly(
            look,
            "night",
            0.96,
            Fall {
                from: -60.0,
                to: 700.0,
                rest: 0.55,
            },
        )),
        Pass::new("key", "key", ink(0x18_1b_24)).charged(|_| 1.05),
    ]
}
