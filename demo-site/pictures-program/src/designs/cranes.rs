//! No. 4, the cranes of the old basin.

use super::prelude::*;
use super::shared::Split;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{Crane, crane, hook, stones};
use crate::parts::houses::row;
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::{curls, smoke};

pub const ART: Art = Art {
    key: "4",
    cut: cranes_cut,
    print: cranes_print,
};

fn cranes_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let cranes = [
        crane(b.at(8.0, 55.0), b.at(20.0, 13.0), b.y(17.0), 15.0),
        crane(b.at(24.0, 58.0), b.at(40.0, 9.0), b.y(29.0), 17.0),
        crane(b.at(41.0, 63.0), b.at(61.0, 6.0), b.y(23.0), 20.0),
    ];
    let wall = b.line(&[[61.0, 30.0], [101.0, 24.0], [101.0, 74.0], [61.0, 71.0]]);
    let chimney = b.line(&[[46.9, 55.0], [47.3, 31.0], [49.4, 31.0], [49.8, 55.0]]);
    let plume = [
        b.at(48.5, 29.5),
        b.at(52.0, 25.5),
        b.at(59.0, 23.0),
        b.at(70.0, 18.5),
        b.at(84.0, 17.0),
    ];
    let smoke = smoke(&plume, 9.0, 40.0, dice);
    let barge = knifed(&hull(b.at(10.0, 79.0), b.x(60.0), b.y(8.5), 12.0), 1.2, 3);
    let quay = b.line(&[
        [-1.0, 70.0],
        [62.0, 70.5],
        [101.0, 74.0],
        [101.0, 77.0],
        [-1.0, 73.5],
    ]);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 72.0));
    let streaks = [
        (-5.0, 22.0, 44.0, 34.0),
        (20.0, 33.0, 60.0, 26.0),
        (60.0, 10.0, 50.0, 26.0),
        (-4.0, 45.0, 50.0, 18.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.8, dice);
    s.leave(&barge);
    if look.has_or("smoke", look.state < 2) {
        s.cut_all(&smoke);
    }

    let mut r = b.cleared();
    r.leave(&knifed(&wall, 1.6, b.seed));
    r.leave_all(&row(
        [-10.0, b.x(47.0)],
        b.y(71.0),
        b.y(13.0),
        b.x(13.0),
        dice,
    ));
    r.leave(&chimney);
    r.cut_all(&pecks(
        b.bounds(61.0, 28.0, 100.0, 72.0),
        60,
        20.0,
        0.0,
        dice,
    ));
    r.leave(&barge);
    r.cut(&moved(&barge, 0.0, 34.0));
    let split = |reach: f32| {
        let split = Split {
            reach,
            level: 50.0,
            sway: 3.0,
            waves: 8.0,
            points: 60,
        };
        tapered(&split.line(b), 3.6, 1.4)
    };
    match look.stage("split") {
        0 => {}
        1 => r.cut(&split(88.0)),
        _ => r.cut(&split(60.0)),
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 72.0, 102.0, 101.0));
    w.cut_all(&ripples(b.below(76.0), 60, 120.0, 7.0, dice));
    w.cut(&barge);
    w.leave(&b.line(&[[-1.0, 70.5], [101.0, 74.0], [101.0, 76.0], [-1.0, 73.0]]));

    let mut k = b.cleared();
    if look.has_or("smoke", look.state < 2) {
        k.leave_all(&curls(&plume, 9.0, 38.0, 12, dice));
    }
    cranes_key(&mut k, look, b, &cranes, dice);
    brickwork(&mut k, b, &wall, dice);
    k.leave(&outline(&chimney, 2.2));
    shade(
        &mut k,
        &b.line(&[[48.6, 31.0], [49.4, 31.0], [49.8, 55.0], [48.7, 55.0]]),
        Hatch {
            turn: 0.0,
            gap: 4.0,
            width: 2.0,
            stray: 0.3,
        },
        dice,
    );
    k.leave(&knifed(&quay, 1.0, 3));
    k.cut_all(&stones(b.bounds(0.0, 71.5, 100.0, 76.0), 14.0, 1.6, dice));
    k.cut(&moved(&barge, 0.0, -4.0));
    k.leave(&outline(&barge, 3.4));
    k.within(&barge, |p| p.leave(&b.area(0.0, 83.2, 100.0, 90.0)));
    k.leave(&b.area(16.0, 75.0, 25.0, 80.6));
    k.cut(&b.area(18.0, 76.4, 20.0, 78.2));
    k.leave_all(&mast(b.at(44.0, 80.5), b.y(13.0), 5.0, 60.0));
    k.leave_all(&figure(b.at(58.0, 80.6), 46.0, Pose::Standing, -1.0));
    k.leave_all(&broken(b.x(11.0), b.x(69.0), b.y(88.6), b.y(99.5), dice));
    for x in [44.0, 20.0] {
        k.leave_all(&broken(
            b.x(x) - 3.0,
            b.x(x) + 3.0,
            b.y(88.0),
            b.y(99.0),
            dice,
        ));
    }
    k.leave_all(&ripples(b.below(78.0), 22, 80.0, 4.0, dice));
    b.cuts([("sky", s), ("brick", r), ("water", w), ("key", k)])
}

fn cranes_key(k: &mut Plane, look: &Look, b: &Bench, cranes: &[Crane; 3], dice: &mut Dice) {
    for (i, c) in cranes.iter().enumerate() {
        for part in &c.body {
            k.leave(&knifed(part, 0.8, 5));
        }
        k.leave_all(&c.lines);
        let m = bounds(&c.body[0]);
        k.cut(&rect(
            m[0] + 6.0,
            m[1] + 8.0,
            (m[2] - m[0]) * 0.32,
            (m[3] - m[1]) * 0.32,
        ));
        k.leave(&hook(c.hook, 18.0));
        if i == 2 && look.has_or("load", look.state == 0) {
            let at = [c.hook[0], c.hook[1] + 34.0];
            let crate_box = rect(at[0] - 40.0, at[1], 80.0, 62.0);
            k.leave(&bar(&[[at[0], at[1] - 16.0], [at[0] - 38.0, at[1]]], 2.4));
            k.leave(&bar(&[[at[0], at[1] - 16.0], [at[0] + 38.0, at[1]]], 2.4));
            outlined(k, &crate_box, 4.0);
            for j in 1..5 {
                let y = at[1] + 12.4 * j as f32;
                k.leave(&bar(&[[at[0] - 40.0, y], [at[0] + 40.0, y]], 2.0));
            }
            k.leave(&bar(
                &[[at[0] - 38.0, at[1] + 2.0], [at[0] + 38.0, at[1] + 60.0]],
                5.0,
            ));
            shade(
                k,
                &rect(at[0] + 8.0, at[1], 32.0, 62.0),
                Hatch {
                    turn: 0.25,
                    gap: 5.0,
                    width: 2.4,
                    stray: 0.4,
                },
                dice,
            );
        }
    }
    k.leave_all(&pecks(b.bounds(0.0, 66.0, 46.0, 70.0), 24, 18.0, 0.0, dice));
}

fn brickwork(k: &mut Plane, b: &Bench, wall: &Path, dice: &mut Dice) {
    outlined(k, wall, 3.0);
    k.leave(&knifed(
        &b.line(&[
            [59.4, 30.2],
            [81.0, 25.0],
            [101.0, 20.5],
            [101.0, 24.6],
            [61.0, 30.8],
        ]),
        1.0,
        3,
    ));
    let mut courses = Vec::new();
    for i in 0..34 {
        let y = 31.0 + 1.25 * i as f32;
        for _ in 0..5 {
            let x = dice.between(61.0, 96.0);
            let drop = -(x - 61.0) * 0.10 * (1.0 - i as f32 / 34.0);
            let p = b.at(x, y + drop);
            courses.push(gouged(
                &[p, [p[0] + dice.between(10.0, 34.0), p[1] - 2.0]],
                1.7,
            ));
        }
    }
    k.within(wall, |p| p.leave_all(&courses));
    for (r, y) in [36.0, 48.5, 61.0].into_iter().enumerate() {
        for (c, x) in [66.0, 79.0, 92.0].into_iter().enumerate() {
            let up = (x - 61.0) * 0.09 * (1.0 - r as f32 * 0.42);
            let mut door = b.curve(&[[x, y - up], [x + 2.9, y - 1.9 - up], [x + 5.8, y - up]]);
            door.extend(b.line(&[[x + 5.8, y + 7.4 - up], [x, y + 7.4 - up]]));
            k.leave(&knifed(&door, 0.7, 3));
            if (r + c) % 2 == 0 {
                k.cut(&b.area(x + 0.8, y + 0.8 - up, x + 2.6, y + 6.6 - up));
                k.leave(&b.line(&[
                    [x + 5.8, y - up],
                    [x + 7.6, y - 0.4 - up],
                    [x + 7.6, y + 7.0 - up],
                    [x + 5.8, y + 7.4 - up],
                ]));
            } else {
                k.cut_all(&pecks(
                    [b.x(x), b.y(y - up), b.x(x + 5.4), b.y(y + 7.0 - up)],
                    8,
                    22.0,
                    0.25,
                    dice,
                ));
            }
        }
    }
    k.leave(&b.bar(&[[82.0, 24.0], [71.0, 25.2]], 6.0));
    k.leave(&b.bar(&[[71.5, 25.0], [71.5, 46.0]], 1.8));
    shade(
        k,
        &b.line(&[[94.0, 25.0], [101.0, 24.0], [101.0, 74.0], [95.0, 73.4]]),
        Hatch {
            turn: 0.2,
            gap: 6.0,
            width: 2.2,
            stray: 0.6,
        },
        dice,
    );
}

fn cranes_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0xe2_c5_84)).charged(graded(
            look,
            Fall {
                from: -60.0,
                to: 900.0,
                rest: 0.45,
            },
        )),
        Pass::block("brick", ink(0xa4_52_3a)),
        Pass::block("water", ink(0x6f_8a_80)).charged(evenly(
            look,
            "water",
            0.95,
            Fall {
                from: 1000.0,
                to: 700.0,
                rest: 0.5,
            },
        )),
        Pass::block("key", ink(0x23_21_22)).charged(|_| 1.04),
    ]
}
