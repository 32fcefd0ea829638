//! Nos. 26 and 27, and r1, which is not hers and is cut accordingly.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::boats::{hull, mast};
use crate::parts::harbour::{lamp, stones};
use crate::parts::houses::row;
use crate::parts::sea::{broken, far, lens, ripples};
use crate::parts::sky::{star, streak};

pub const ART: &[Art] = &[
    Art {
        key: "26",
        cut: lamps_cut,
        print: lamps_print,
    },
    Art {
        key: "27",
        cut: channel_cut,
        print: channel_print,
    },
    Art {
        key: "r1",
        cut: lantern_cut,
        print: lantern_print,
    },
];

fn lamps_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut n = b.block();
    for (x, y, s) in [
        (12.0, 8.0, 8.0),
        (27.0, 15.0, 5.0),
        (40.0, 6.0, 6.0),
        (52.0, 18.0, 9.0),
        (64.0, 9.0, 5.0),
        (78.0, 14.0, 7.0),
        (90.0, 7.0, 6.0),
        (86.0, 26.0, 5.0),
        (35.0, 28.0, 5.0),
        (19.0, 30.0, 7.0),
        (68.0, 29.0, 6.0),
        (50.0, 33.0, 4.5),
    ] {
        n.cut(&star(b.at(x, y), s));
    }
    n.cut_all(&ripples(
        [0.0, b.y(74.0), b.w, b.h],
        46,
        80.0,
        4.4,
        &mut dice,
    ));
    n.cut_all(&pecks(
        [0.0, b.y(36.0), b.w, b.y(41.0)],
        40,
        60.0,
        0.0,
        &mut dice,
    ));
    let mut k = b.cleared();
    let back = row(
        [-20.0, b.w + 20.0],
        b.y(60.0),
        b.y(20.0),
        b.x(15.0),
        &mut dice,
    );
    for h in &back {
        k.leave(&outline(h, 2.6));
        shade(
            &mut k,
            h,
            Hatch {
                turn: 0.25,
                gap: 6.5,
                width: 3.4,
                stray: 0.6,
            },
            &mut dice,
        );
    }
    let front = row(
        [-20.0, b.x(46.0)],
        b.y(73.0),
        b.y(30.0),
        b.x(19.0),
        &mut dice,
    );
    let right = row(
        [b.x(70.0), b.w + 30.0],
        b.y(73.0),
        b.y(38.0),
        b.x(22.0),
        &mut dice,
    );
    for h in front.iter().chain(&right) {
        k.cut(&outline(h, 5.0));
        k.leave(&knifed(h, 1.0, 3));
        let m = bounds(h);
        // One moonless edge of each roof is all the light there is.
        let edge: Path = h.iter().map(|p| [p[0] - 4.0, p[1] + 5.0]).collect();
        let mut rim = b.cleared();
        rim.leave(h);
        rim.cut(&edge);
        let strokes = pecks(m, ((m[2] - m[0]) * 0.8) as usize, 15.0, 0.18, &mut dice);
        let mut cuts = b.cleared();
        cuts.leave_all(&strokes);
        for (a, (r, c)) in k.data.iter_mut().zip(rim.data.iter().zip(&cuts.data)) {
            *a *= 1.0 - r * c;
        }
        for i in 0..3 {
            let pane = rect(m[0] + 18.0 + 34.0 * i as f32, m[3] - 74.0, 15.0, 21.0);
            k.cut_within(h, |p| p.leave(&outline(&pane, 1.8)));
        }
    }
    k.leave(&knifed(
        &b.line(&[[-1.0, 72.0], [101.0, 72.6], [101.0, 78.0], [-1.0, 76.6]]),
        1.2,
        3,
    ));
    k.cut_all(&stones(
        [0.0, b.y(73.2), b.w, b.y(76.8)],
        17.0,
        1.6,
        &mut dice,
    ));
    for (x, y, h) in [(52.0, 73.0, 40.0), (64.0, 72.8, 30.0), (38.0, 78.0, 62.0)] {
        let (post, glass) = lamp(b.at(x, y), b.y(h));
        for part in &post {
            k.cut(&outline(part, 4.0));
        }
        n.cut(&outline(&glass, 2.0));
        k.cut(&glass);
        k.leave_all(&post);
        k.leave(&outline(&glass, 3.0));
    }
    let barge = knifed(&hull(b.at(44.0, 84.0), b.x(52.0), b.y(7.6), 9.0), 1.0, 3);
    k.cut(&outline(&barge, 5.0));
    n.cut(&outline(&barge, 2.0));
    k.leave(&barge);
    k.cut(&bar(
        &curve(&b.line(&[[45.0, 85.4], [62.0, 86.4], [80.0, 86.4], [96.0, 84.6]])),
        2.8,
    ));
    k.leave(&b.area(49.0, 80.4, 60.0, 85.4));
    k.leave(&b.line(&[[62.0, 85.4], [66.0, 82.4], [84.0, 82.4], [88.0, 85.4]]));
    k.leave_all(&mast(b.at(70.0, 84.0), b.y(17.0), 5.0, 50.0));
    k.leave_all(&broken(
        b.x(45.0),
        b.x(96.0),
        b.y(92.4),
        b.y(100.0),
        &mut dice,
    ));
    for x in [38.0, 52.0, 10.0] {
        k.leave_all(&broken(
            b.x(x) - 5.0,
            b.x(x) + 6.0,
            b.y(79.0),
            b.y(96.0),
            &mut dice,
        ));
    }
    k.leave_all(&ripples(
        [0.0, b.y(78.0), b.w, b.h],
        40,
        70.0,
        4.4,
        &mut dice,
    ));
    Cuts::from([("night", b.trimmed(n)), ("key", b.trimmed(k))])
}

fn lamps_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::new("night", "night", ink(0x5c_4e_46))
            .from(Surface::Pine, 0.5)
            .charged(|p| mix(1.1, 0.8, step(0.0, 700.0, p[1]))),
        Pass::new("key", "key", ink(0x1c_1a_1a))
            .from(Surface::Plank, 0.4)
            .charged(|_| 1.03),
    ]
}

fn channel_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let horizon = 40.0;
    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, horizon));
    for (x, y, w, h) in [
        (-6.0, 30.0, 70.0, 22.0),
        (30.0, 35.0, 76.0, 12.0),
        (44.0, 17.0, 62.0, 24.0),
        (-8.0, 12.0, 46.0, 14.0),
        (10.0, 22.0, 40.0, 8.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.8, 3));
    }
    let birds = [
        (68.0, 12.0, 34.0, 0.8),
        (73.0, 9.0, 26.0, 0.6),
        (78.0, 14.0, 22.0, 1.0),
        (62.0, 16.0, 20.0, 0.7),
        (83.0, 10.5, 18.0, 0.8),
    ];
    for (x, y, span, lift) in birds {
        s.cut(&gull(b.at(x, y), span, lift, 0.02));
    }
    let mut w = b.cleared();
    w.leave(&b.area(-2.0, horizon, 102.0, 101.0));
    let sweepers = [(b.at(63.0, 56.0), 210.0), (b.at(38.5, 45.6), 106.0)];
    // Wakes: two long wedges opening towards us.
    for (p, l) in sweepers {
        for (dx, dy, wide) in [(-1.7, 0.62, 0.16), (-1.5, 0.95, 0.10), (-0.9, 0.46, 0.07)] {
            let line = curve(&[
                [p[0] - l * 0.40, p[1]],
                [p[0] + l * dx * 0.5, p[1] + l * dy * 0.36],
                [p[0] + l * dx, p[1] + l * dy],
            ]);
            w.cut(&knifed(&tapered(&line, 2.0, l * wide), 2.0, 3));
        }
        w.cut(&lens(
            p[0] - l * 0.62,
            p[0] + l * 0.68,
            p[1] + 1.0,
            l * 0.05,
        ));
    }
    w.cut_all(&far([0.0, b.w], b.y(43.0), &mut dice));
    w.cut_all(&far([0.0, b.w], b.y(48.0), &mut dice));
    w.cut_all(&ripples(
        [0.0, b.y(50.0), b.w, b.h],
        110,
        120.0,
        6.0,
        &mut dice,
    ));
    let mut k = b.cleared();
    k.leave(&b.area(-1.0, horizon - 0.3, 101.0, horizon + 0.4));
    k.leave(&knifed(
        &b.line(&[
            [70.0, horizon],
            [78.0, 38.6],
            [90.0, 38.2],
            [101.0, 38.8],
            [101.0, horizon],
        ]),
        1.0,
        3,
    ));
    k.leave_all(&far([0.0, b.w], b.y(45.0), &mut dice));
    k.leave_all(&ripples(
        [0.0, b.y(46.0), b.w, b.h],
        90,
        110.0,
        4.4,
        &mut dice,
    ));
    for (p, l) in sweepers {
        sweeper(&mut k, &mut w, p, l, &mut dice);
    }
    // Dan buoys, each with its flag, down the swept line to the horizon.
    for i in 0..8 {
        let t = 1.0 - libm::powf(0.66, i as f32);
        let p = b.at(mix(12.0, 34.0, t), mix(88.0, 40.5, t));
        let h = mix(190.0, 9.0, t);
        dan(&mut k, &mut s, &mut w, p, h, &mut dice);
    }
    for (x, y, span, lift) in birds {
        k.leave(&outline(&gull(b.at(x, y), span, lift, 0.02), 0.9));
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("sea", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
}

fn sweeper(k: &mut Plane, w: &mut Plane, at: Pt, l: f32, dice: &mut Dice) {
    let put = |points: &[Pt]| -> Path {
        points
            .iter()
            .map(|p| [at[0] + p[0] * l, at[1] + p[1] * l])
            .collect()
    };
    let mut side = curve(&put(&[
        [-0.52, -0.10],
        [-0.2, -0.085],
        [0.2, -0.10],
        [0.54, -0.21],
    ]));
    side.extend(curve(&put(&[
        [0.54, -0.21],
        [0.47, -0.03],
        [0.40, 0.02],
        [-0.46, 0.02],
        [-0.50, -0.04],
        [-0.52, -0.10],
    ])));
    let house = put(&[
        [-0.06, -0.10],
        [-0.06, -0.25],
        [0.0, -0.25],
        [0.0, -0.33],
        [0.16, -0.33],
        [0.16, -0.25],
        [0.20, -0.25],
        [0.20, -0.10],
    ]);
    let funnel = put(&[
        [-0.16, -0.09],
        [-0.155, -0.29],
        [-0.075, -0.29],
        [-0.07, -0.09],
    ]);
    for shape in [&side, &house, &funnel] {
        k.cut(&outline(shape, 3.0));
        k.cut(shape);
        w.cut(shape);
        k.leave(&outline(shape, 1.2 + l / 120.0));
    }
    k.within(&side, |p| {
        p.leave(&put(&[
            [-0.54, -0.055],
            [0.52, -0.10],
            [0.5, 0.05],
            [-0.5, 0.05],
        ]));
    });
    w.leave(&side);
    w.leave(&funnel);
    k.leave(&put(&[
        [-0.158, -0.29],
        [-0.157, -0.24],
        [-0.073, -0.24],
        [-0.075, -0.29],
    ]));
    for i in 0..3 {
        let x = 0.02 + 0.045 * i as f32;
        k.leave(&put(&[
            [x, -0.30],
            [x + 0.03, -0.30],
            [x + 0.03, -0.27],
            [x, -0.27],
        ]));
    }
    let dark = put(&[[0.10, -0.25], [0.20, -0.25], [0.20, -0.10], [0.10, -0.10]]);
    shade(
        k,
        &dark,
        Hatch {
            turn: 0.25,
            gap: 3.6,
            width: 1.5,
            stray: 0.2,
        },
        dice,
    );
    for (x, h) in [(0.30, 0.56), (-0.30, 0.44)] {
        k.leave(&tapered(
            &put(&[[x, -0.10], [x + 0.01, -h - 0.1]]),
            l * 0.016,
            l * 0.007,
        ));
        k.leave(&bar(&put(&[[x, -h], [x + 0.22 * x.signum(), -0.13]]), 1.0));
        k.leave(&bar(&put(&[[x, -h], [x - 0.2 * x.signum(), -0.12]]), 1.0));
    }
    k.leave(&bar(&put(&[[-0.30, -0.16], [-0.46, -0.30]]), l * 0.012));
    k.leave(&bar(&put(&[[0.31, -0.6], [-0.29, -0.5]]), 0.9));
    for i in 0..5 {
        // Smoke, drawn out flat astern.
        let x = -0.12 - 0.16 * i as f32;
        k.leave(&gouged(
            &curve(&put(&[
                [x, -0.33 - 0.012 * i as f32],
                [x - 0.08, -0.37 - 0.02 * i as f32],
                [x - 0.2, -0.36 - 0.03 * i as f32],
            ])),
            l * 0.02,
        ));
    }
    k.leave_all(&broken(
        at[0] - l * 0.45,
        at[0] + l * 0.4,
        at[1] + l * 0.05,
        at[1] + l * 0.22,
        dice,
    ));
}

fn dan(k: &mut Plane, s: &mut Plane, w: &mut Plane, p: Pt, h: f32, dice: &mut Dice) {
    let lean = h * dice.between(-0.02, 0.07);
    let top = [p[0] + lean, p[1] - h];
    let flag = curve(&[
        [top[0], top[1]],
        [top[0] + h * 0.14, top[1] + h * 0.03],
        [top[0] + h * 0.27, top[1] - h * 0.01],
        [top[0] + h * 0.25, top[1] + h * 0.14],
        [top[0] + h * 0.13, top[1] + h * 0.18],
        [top[0] - h * 0.005, top[1] + h * 0.16],
    ]);
    for plane in [&mut *s, &mut *w] {
        plane.cut(&flag);
    }
    k.cut(&flag);
    k.leave(&outline(&flag, 0.8 + h * 0.014));
    let m = bounds(&flag);
    k.within(&flag, |q| {
        q.leave(&rect(m[0] + (m[2] - m[0]) * 0.5, m[1], m[2], m[3]));
    });
    k.leave(&tapered(&[p, top], h * 0.026 + 0.7, h * 0.014 + 0.6));
    let float = blob(&[
        [p[0] - h * 0.09, p[1] - h * 0.02],
        [p[0], p[1] - h * 0.10],
        [p[0] + h * 0.10, p[1] - h * 0.02],
        [p[0] + h * 0.05, p[1] + h * 0.05],
        [p[0] - h * 0.06, p[1] + h * 0.05],
    ]);
    w.cut(&outline(&float, 3.0));
    k.leave(&float);
    if h > 30.0 {
        k.leave_all(&broken(
            p[0] - h * 0.08,
            p[0] + h * 0.10,
            p[1] + h * 0.09,
            p[1] + h * 0.5,
            dice,
        ));
    }
}

fn channel_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0xd0_b6_b2)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: -20.0,
                to: 290.0,
                rest: 0.25,
            },
        )),
        Pass::new("sea", "sea", ink(0x62_80_98))
            .charged(|p| mix(0.72, 1.05, step(270.0, 680.0, p[1]))),
        Pass::new("key", "key", ink(0x22_28_30)).charged(|_| 1.03),
    ]
}

fn lantern_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let tower = b.line(&[[36.0, 84.0], [38.5, 36.0], [61.5, 36.0], [64.0, 84.0]]);
    let mut t = b.cleared();
    t.leave(&b.area(0.0, 0.0, 100.0, 100.0));
    t.cut(&b.line(&[[36.0, 84.0], [38.5, 36.0], [52.0, 36.0], [52.0, 84.0]]));
    t.cut(&b.area(42.0, 21.0, 58.0, 32.0));
    let mut k = b.cleared();
    // Sky ruled level, water ruled level: a stiff hand.
    let mut y = 5.0;
    while y < 70.0 {
        k.leave(&bar(&b.line(&[[3.0, y], [97.0, y]]), 3.0));
        y += 1.55;
    }
    let lantern = b.line(&[
        [40.0, 36.0],
        [40.0, 33.6],
        [42.0, 33.0],
        [42.0, 20.6],
        [39.5, 20.6],
        [50.0, 10.0],
        [60.5, 20.6],
        [58.0, 20.6],
        [58.0, 33.0],
        [60.0, 33.6],
        [60.0, 36.0],
    ]);
    for shape in [&tower, &lantern] {
        k.cut(&outline(shape, 8.0));
        k.cut(shape);
        k.leave(&outline(shape, 6.0));
    }
    let joints = stones(
        [b.x(34.0), b.y(37.0), b.x(66.0), b.y(84.0)],
        34.0,
        3.4,
        &mut dice,
    );
    k.within(&tower, |p| p.leave_all(&joints));
    let dark = b.line(&[[55.0, 36.0], [62.0, 36.0], [65.0, 84.0], [55.0, 84.0]]);
    let lines = crate::parts::lines::hatch(
        &dark,
        Hatch {
            turn: 0.0,
            gap: 9.0,
            width: 5.0,
            stray: 0.1,
        },
        &mut dice,
    );
    k.within(&tower, |p| {
        p.leave_all(&lines);
        p.keep(&dark);
    });
    k.leave(&b.line(&[[39.5, 20.6], [50.0, 10.0], [60.5, 20.6]]));
    k.leave(&bar(&b.line(&[[50.0, 10.0], [50.0, 5.4]]), 6.0));
    for x in [45.3, 50.0, 54.7] {
        k.leave(&bar(&b.line(&[[x, 21.0], [x, 33.0]]), 4.0));
    }
    k.leave(&b.area(38.0, 33.4, 62.0, 36.0));
    for y in [45.0, 58.0] {
        k.leave(&b.area(46.4, y, 50.4, y + 6.0));
    }
    k.leave(&b.line(&[
        [45.0, 84.0],
        [45.0, 74.0],
        [48.5, 71.5],
        [52.0, 74.0],
        [52.0, 84.0],
    ]));
    k.cut(&b.area(3.0, 70.0, 34.0, 84.0));
    k.leave(&b.area(3.0, 69.4, 37.0, 70.4));
    k.leave(&b.area(63.0, 69.4, 97.0, 70.4));
    for side in [(3.0, 36.4), (63.8, 97.0)] {
        let mut y = 72.0;
        while y < 84.0 {
            k.leave(&bar(&b.line(&[[side.0, y], [side.1, y]]), 5.0));
            y += 1.8;
        }
    }
    let quay = b.area(3.0, 83.6, 97.0, 97.0);
    k.cut(&quay);
    k.leave_all(&stones(
        [b.x(3.0), b.y(83.6), b.x(97.0), b.y(97.0)],
        40.0,
        4.0,
        &mut dice,
    ));
    k.leave(&outline(&quay, 6.0));
    // The heavy border that she never used.
    for edge in [
        b.area(0.0, 0.0, 100.0, 2.6),
        b.area(0.0, 97.4, 100.0, 100.0),
        b.area(0.0, 0.0, 3.8, 100.0),
        b.area(96.2, 0.0, 100.0, 100.0),
    ] {
        k.leave(&edge);
    }
    Cuts::from([("tone", b.trimmed(t)), ("key", b.trimmed(k))])
}

fn lantern_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::new("tone", "tone", ink(0xa2_9c_6a)).from(Surface::PlankUpright, 0.4),
        Pass::new("key", "key", ink(0x22_22_20)).from(Surface::EndGrain, 0.4),
    ]
}
