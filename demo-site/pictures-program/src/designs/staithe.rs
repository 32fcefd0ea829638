//! No. 2, the coal staithe.

use super::prelude::*;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::wagon;
use crate::parts::sea::ripples;
use crate::parts::sky::{curls, smoke, streak};

pub const ART: Art = Art {
    key: "2",
    cut: staithe_cut,
    print: staithe_print,
};

fn staithe_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let plume = [
        b.at(80.0, 13.0),
        b.at(72.0, 10.0),
        b.at(58.0, 13.5),
        b.at(42.0, 12.5),
        b.at(24.0, 17.0),
    ];
    let smoke = smoke(&plume, 26.0, 80.0, dice);
    let mut t = b.block();
    // The sky is cleared in level strokes to a half tone; the smoke prints solid.
    clear(
        &mut t,
        &b.area(-2.0, -2.0, 102.0, 48.0),
        Hatch {
            turn: 0.0,
            gap: 9.5,
            width: 5.4,
            stray: 0.7,
        },
        dice,
    );
    t.cut(&knifed(
        &streak(b.at(-8.0, 37.0), b.x(70.0), 44.0, dice),
        2.0,
        4,
    ));
    t.cut(&knifed(
        &streak(b.at(30.0, 31.5), b.x(50.0), 22.0, dice),
        2.0,
        5,
    ));
    t.leave_all(&smoke);
    if look.has("rifts") {
        for i in 0..9 {
            let i = i as f32;
            let p = b.at(
                23.0 + 5.7 * i + dice.about(1.2),
                20.0 - 0.9 * i + dice.about(4.4),
            );
            let line = curve(&[p, [p[0] + 27.0, p[1] - 13.0], [p[0] + 66.0, p[1] - 12.0]]);
            t.cut(&gouged(&line, 9.0));
        }
    }
    t.cut_all(&ripples(b.below(64.0), 70, 120.0, 7.0, dice));
    t.cut(&knifed(
        &b.line(&[[62.0, 62.0], [101.0, 60.5], [101.0, 64.5], [66.0, 66.0]]),
        2.0,
        6,
    ));

    let mut k = b.cleared();
    k.leave_all(&curls(&plume, 26.0, 74.0, 30, dice));
    // Far shore with chimneys.
    k.leave(&knifed(
        &b.line(&[
            [-1.0, 46.0],
            [10.0, 44.5],
            [22.0, 45.6],
            [34.0, 44.0],
            [46.0, 45.5],
            [60.0, 44.8],
            [101.0, 45.5],
            [101.0, 48.0],
            [-1.0, 48.0],
        ]),
        1.6,
        3,
    ));
    for x in [8.0, 12.5, 30.0] {
        k.leave(&b.line(&[[x, 45.0], [x + 0.3, 38.0], [x + 1.2, 38.0], [x + 1.5, 45.0]]));
    }
    staithe(&mut k, b, dice);
    collier(&mut k, b, dice);
    k.leave_all(&ripples(b.below(84.0), 44, 150.0, 6.0, dice));
    k.leave_all(&ripples(
        b.bounds(60.0, 66.0, 100.0, 86.0),
        26,
        90.0,
        4.5,
        dice,
    ));
    b.cuts([("tone", t), ("key", k)])
}

fn staithe(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    k.leave(&knifed(
        &b.line(&[[-1.0, 47.5], [101.0, 46.5], [101.0, 50.0], [-1.0, 51.0]]),
        1.2,
        2,
    ));
    for i in 0..15 {
        let x = -1.0 + 7.2 * i as f32;
        k.leave(&knifed(
            &b.line(&[[x, 50.0], [x + 1.5, 50.0], [x + 1.8, 66.0], [x - 0.2, 66.0]]),
            1.0,
            9,
        ));
        let cross = if i % 2 == 0 {
            [[x + 1.0, 51.5], [x + 7.6, 62.5]]
        } else {
            [[x + 7.6, 51.5], [x + 1.0, 62.5]]
        };
        k.leave(&b.bar(&cross, 5.0));
    }
    k.leave(&b.bar(&[[-1.0, 57.0], [101.0, 56.4]], 4.6));
    for i in 0..6 {
        let (body, wheels) = wagon(b.at(4.0 + 11.6 * i as f32, 47.0), b.x(9.6));
        k.leave(&knifed(&body, 1.0, 7));
        k.leave_all(&wheels);
        let m = bounds(&body);
        k.cut_all(&pecks(
            [m[0] + 8.0, m[1] + 5.0, m[2] - 12.0, m[3] - 6.0],
            7,
            15.0,
            0.0,
            dice,
        ));
        let heap: Path = vec![
            [m[0] + 4.0, m[1]],
            [m[0] + 30.0, m[1] - 13.0],
            [m[0] + 60.0, m[1] - 9.0],
            [m[2] - 4.0, m[1]],
        ];
        k.leave(&knifed(&heap, 4.0, 7));
    }
    // The hoist: a braced tower with a house on top and the spout down to the hold.
    for side in [75.0, 87.6] {
        k.leave(&b.line(&[
            [side, 22.0],
            [side + 1.4, 22.0],
            [side + 1.7, 66.0],
            [side - 0.3, 66.0],
        ]));
    }
    for i in 0..4 {
        let y = 23.0 + 6.2 * i as f32;
        k.leave(&b.bar(&[[75.4, y], [88.4, y + 6.2]], 4.0));
        k.leave(&b.bar(&[[88.4, y], [75.4, y + 6.2]], 4.0));
        k.leave(&b.bar(&[[75.4, y], [88.4, y]], 4.6));
    }
    k.leave(&knifed(
        &b.line(&[
            [73.0, 22.5],
            [73.0, 17.5],
            [82.0, 14.0],
            [91.0, 17.5],
            [91.0, 22.5],
        ]),
        1.2,
        4,
    ));
    k.cut(&b.area(76.0, 18.6, 78.4, 21.2));
    k.cut(&b.area(85.6, 18.6, 88.0, 21.2));
    k.leave(&b.line(&[[79.0, 15.5], [79.2, 10.8], [80.8, 10.8], [81.0, 15.0]]));
    k.leave(&b.line(&[[74.0, 50.0], [76.0, 52.0], [60.0, 64.0], [58.0, 62.6]]));
}

fn collier(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let side = knifed(&hull(b.at(4.0, 65.0), b.x(56.0), b.y(19.0), 14.0), 1.4, 3);
    k.cut(&moved(&side, 0.0, -5.0));
    k.leave(&side);
    k.cut(&bar(
        &b.curve(&[[4.6, 67.2], [20.0, 68.8], [42.0, 68.8], [60.4, 66.2]]),
        4.2,
    ));
    k.cut_all(&pecks(b.bounds(8.0, 71.0, 54.0, 82.0), 60, 46.0, 0.0, dice));
    k.leave(&b.area(10.0, 58.0, 19.0, 66.5));
    k.cut_all(
        &(0..4)
            .map(|i| b.area(11.0 + 1.9 * i as f32, 60.0, 12.0 + 1.9 * i as f32, 61.8))
            .collect::<Vec<_>>(),
    );
    k.leave(&b.line(&[[13.0, 58.0], [13.4, 51.0], [16.6, 51.0], [17.0, 58.0]]));
    k.cut(&b.line(&[[13.2, 53.4], [16.8, 53.4], [16.9, 55.2], [13.1, 55.2]]));
    for x in [26.0, 47.0] {
        k.leave_all(&mast(b.at(x, 66.5), b.y(23.0), 6.0, 62.0));
    }
    for i in 0..3 {
        let p = figure(
            b.at(30.0 + 6.0 * i as f32, 67.2),
            32.0,
            if i == 1 { Pose::Bent } else { Pose::Standing },
            1.0,
        );
        k.leave_all(&p);
    }
}

fn staithe_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::block("tone", ink(0xa4_8e_74)).from(Surface::Lino, 0.45),
        Pass::block("key", ink(0x22_20_20))
            .from(Surface::Lino, 0.45)
            .charged(|_| 1.04),
    ]
}
