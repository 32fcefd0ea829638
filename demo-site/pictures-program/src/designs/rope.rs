//! No. 5, the rope walk.

use super::prelude::*;
use crate::parts::boats::mast;
use crate::parts::figures::{Pose, figure};
use crate::parts::houses::row;

pub const ART: Art = Art {
    key: "5",
    cut: rope_cut,
    print: rope_print,
};

fn rope_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
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
    let streaks = [
        (40.0, 22.0, 42.0, 12.0),
        (62.0, 32.0, 44.0, 14.0),
        (54.0, 42.0, 50.0, 9.0),
        (70.0, 12.0, 34.0, 10.0),
    ];
    cut_streaks(&mut e, b, &streaks, 1.4, dice);
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
        dice,
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
        dice,
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
        clear(
            &mut k,
            &bay,
            Hatch {
                turn: 0.25,
                gap: 7.0 * (1.0 - t) + 2.2,
                width: 3.4 * (1.0 - t) + 1.0,
                stray: 0.4,
            },
            dice,
        );
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
        b.bounds(60.0, 70.0, 100.0, 100.0),
        40,
        30.0,
        0.01,
        dice,
    ));
    b.cuts([("evening", e), ("roof", r), ("key", k)])
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
        Pass::block("evening", ink(colour)).charged(evenly(look, "evening", 0.95, fall)),
        Pass::block("roof", ink(0x9c_54_3c)),
        Pass::block("key", ink(0x2b_22_1f)).charged(|_| 1.03),
    ]
}
