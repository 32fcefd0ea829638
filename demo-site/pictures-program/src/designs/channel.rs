//! No. 27, the swept channel.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::sea::{broken, far, lens, ripples};

pub const ART: Art = Art {
    key: "27",
    cut: channel_cut,
    print: channel_print,
};

fn channel_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let horizon = 40.0;
    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, horizon));
    let streaks = [
        (-6.0, 30.0, 70.0, 22.0),
        (30.0, 35.0, 76.0, 12.0),
        (44.0, 17.0, 62.0, 24.0),
        (-8.0, 12.0, 46.0, 14.0),
        (10.0, 22.0, 40.0, 8.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.8, dice);
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
    w.cut_all(&far([0.0, b.w], b.y(43.0), dice));
    w.cut_all(&far([0.0, b.w], b.y(48.0), dice));
    w.cut_all(&ripples(b.below(50.0), 110, 120.0, 6.0, dice));
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
    k.leave_all(&far([0.0, b.w], b.y(45.0), dice));
    k.leave_all(&ripples(b.below(46.0), 90, 110.0, 4.4, dice));
    for (p, l) in sweepers {
        sweeper(&mut k, &mut w, p, l, dice);
    }
    // Dan buoys with flags, along the swept channel to the horizon.
    for i in 0..8 {
        let t = 1.0 - libm::powf(0.66, i as f32);
        let p = b.at(mix(12.0, 34.0, t), mix(88.0, 40.5, t));
        let h = mix(190.0, 9.0, t);
        dan(&mut k, &mut s, &mut w, p, h, dice);
    }
    for (x, y, span, lift) in birds {
        k.leave(&outline(&gull(b.at(x, y), span, lift, 0.02), 0.9));
    }
    b.cuts([("sky", s), ("sea", w), ("key", k)])
}

fn sweeper(k: &mut Plane, w: &mut Plane, at: Pt, l: f32, dice: &mut Dice) {
    let put = |points: &[Pt]| placed(points, at[0], at[1], l);
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
        // Smoke, level behind the ship.
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
    outlined(k, &flag, 0.8 + h * 0.014);
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
        Pass::block("sky", ink(0xd0_b6_b2)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: -20.0,
                to: 290.0,
                rest: 0.25,
            },
        )),
        Pass::block("sea", ink(0x62_80_98)).charged(|p| mix(0.72, 1.05, step(270.0, 680.0, p[1]))),
        Pass::block("key", ink(0x22_28_30)).charged(|_| 1.03),
    ]
}
