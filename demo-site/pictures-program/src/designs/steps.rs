//! No. 3, gulls over the fish steps.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{basket, stones};
use crate::parts::houses::row;
use crate::parts::sea::{broken, ripples};

pub const ART: Art = Art {
    key: "3",
    cut: steps_cut,
    print: steps_print,
};

fn steps_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let flock: [(f32, f32, f32, f32, f32); 9] = [
        (40.0, 17.0, 96.0, 0.9, 0.03),
        (58.0, 27.0, 76.0, 0.5, -0.05),
        (71.0, 15.0, 66.0, 1.0, 0.05),
        (84.0, 30.0, 54.0, 0.8, -0.02),
        (49.0, 37.0, 44.0, 0.6, 0.06),
        (66.0, 39.0, 36.0, 0.9, 0.0),
        (24.0, 12.0, 58.0, 0.7, -0.07),
        (27.0, 24.0, 46.0, 1.0, 0.02),
        (33.0, 33.0, 34.0, 0.6, 0.08),
    ];
    let gulls: Vec<Path> = flock
        .iter()
        .take(look.count("gulls", 6))
        .map(|g| gull(b.at(g.0, g.1), g.2, g.3, g.4))
        .collect();
    let houses = row([-20.0, b.w + 20.0], b.y(53.0), b.y(15.0), b.x(8.0), dice);
    let wedge = knifed(
        &b.line(&[
            [38.0, 101.0],
            [50.0, 88.0],
            [62.0, 76.5],
            [76.0, 65.5],
            [92.0, 56.0],
            [101.0, 52.0],
            [101.0, 101.0],
        ]),
        1.6,
        b.seed,
    );

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 53.0));
    let streaks = [
        (-6.0, 34.0, 58.0, 36.0),
        (40.0, 30.0, 50.0, 23.4),
        (8.0, 41.0, 70.0, 21.6),
    ];
    cut_streaks(&mut s, b, &streaks, 1.6, dice);
    s.cut_all(&gulls);
    // The sky block prints the stone in half light too.
    s.leave_all(&houses);
    let treads = treads(b);
    for (tread, riser) in &treads {
        s.leave(riser);
        s.tone(tread, 0.0);
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 53.0, 102.0, 101.0));
    w.cut_all(&ripples(b.below(56.0), 90, 150.0, 8.0, dice));
    for i in 0..16 {
        let x = b.x(4.0 + 6.0 * i as f32);
        w.leave_all(&broken(
            x - 22.0,
            x + 16.0,
            b.y(53.5),
            b.y(64.0 + dice.about(4.0)),
            dice,
        ));
    }
    w.cut(&wedge);
    w.within(&wedge, |p| {
        for (_, riser) in &treads {
            p.leave(&moved(riser, 0.0, 3.0));
        }
    });
    w.leave(&b.line(&[[92.0, 43.0], [101.0, 42.0], [101.0, 54.0], [95.0, 57.0]]));

    let mut k = b.cleared();
    warehouses(&mut k, &houses, b, dice);
    for x in [8.0, 15.0, 34.0] {
        k.leave_all(&mast(b.at(x, 53.5), b.y(24.0), 4.6, 34.0));
    }
    k.cut_all(&gulls);
    for g in &gulls {
        k.leave(&outline(g, 1.1));
    }
    let barge = hull(b.at(5.0, 53.0), b.x(34.0), b.y(5.0), 9.0);
    k.leave(&knifed(&barge, 0.8, 3));
    k.leave_all(&broken(b.x(6.0), b.x(38.0), b.y(58.8), b.y(66.0), dice));
    k.cut(&wedge);
    fish_steps(&mut k, &treads, &wedge, b, dice);
    k.leave_all(&ripples(
        b.bounds(0.0, 70.0, 46.0, 100.0),
        24,
        110.0,
        4.5,
        dice,
    ));
    b.cuts([("sky", s), ("water", w), ("key", k)])
}

/// The wedge of steps: each with its lit tread and its riser, the lowest first.
fn treads(b: &Bench) -> Vec<(Path, Path)> {
    (0..9)
        .map(|i| {
            let i = i as f32;
            let (x, y) = (38.0 + 6.6 * i - 0.10 * i * i, 97.5 - 5.3 * i);
            let tread = b.line(&[
                [x, y],
                [101.0, y - 1.5 - i * 0.1],
                [101.0, y + 0.9],
                [x - 2.4, y + 2.6],
            ]);
            let riser = b.line(&[
                [x - 2.4, y + 2.6],
                [101.0, y + 0.9],
                [101.0, y + 3.9],
                [x - 2.6, y + 5.8],
            ]);
            (knifed(&tread, 1.0, 3), knifed(&riser, 1.0, 3))
        })
        .collect()
}

fn warehouses(k: &mut Plane, houses: &[Path], b: &Bench, dice: &mut Dice) {
    for house in houses {
        k.leave(&outline(house, 2.2));
        let m = bounds(house);
        shade(
            k,
            &rect(
                m[2] - (m[2] - m[0]) * 0.4,
                m[1],
                (m[2] - m[0]) * 0.4,
                m[3] - m[1],
            )
            .iter()
            .map(|p| [p[0], p[1].max(m[1] + 18.0)])
            .collect::<Path>(),
            Hatch {
                turn: 0.25,
                gap: 5.5,
                width: 2.0,
                stray: 0.4,
            },
            dice,
        );
        let columns = ((m[2] - m[0]) / 17.0) as usize;
        for c in 0..columns {
            for r in 0..3 {
                let (x, y) = (m[0] + 6.0 + 17.0 * c as f32, m[3] - 18.0 - 19.0 * r as f32);
                if y > m[1] + 32.0 && dice.chance(0.85) {
                    k.leave(&rect(x, y, 6.5, 9.5));
                }
            }
        }
    }
    k.leave(&b.area(-1.0, 52.4, 101.0, 53.9));
}

fn fish_steps(k: &mut Plane, treads: &[(Path, Path)], wedge: &Path, b: &Bench, dice: &mut Dice) {
    for (tread, riser) in treads {
        k.within(wedge, |p| p.leave(&outline(tread, 2.6)));
        let m = bounds(riser);
        let lines = pecks([m[0], m[1], m[2], m[3] - 6.0], 44, 16.0, 0.25, dice);
        k.within(riser, |p| p.leave_all(&lines));
        let joints: Vec<Path> = (0..4)
            .map(|_| {
                let x = dice.between(m[0], m[2]);
                bar(&[[x, m[1] - 4.0], [x + 2.0, m[3]]], 2.2)
            })
            .collect();
        k.within(riser, |p| p.leave_all(&joints));
    }
    for (x, y, w) in [
        (66.0, 92.0, 62.0),
        (76.0, 96.5, 74.0),
        (88.0, 92.5, 66.0),
        (82.0, 78.0, 46.0),
        (93.0, 70.5, 40.0),
        (57.0, 98.5, 60.0),
    ] {
        let (body, mouth) = basket(b.at(x, y), w);
        k.cut(&body);
        k.cut(&mouth);
        k.leave(&outline(&body, 2.8));
        shade(
            k,
            &body,
            Hatch {
                turn: 0.07,
                gap: 5.0,
                width: 1.7,
                stray: 0.4,
            },
            dice,
        );
        shade(
            k,
            &body,
            Hatch {
                turn: -0.07,
                gap: 5.0,
                width: 1.7,
                stray: 0.4,
            },
            dice,
        );
        outlined(k, &mouth, 3.0);
        let m = bounds(&mouth);
        let fish: Vec<Path> = (0..9)
            .map(|_| {
                let p = [dice.between(m[0], m[2]), dice.between(m[1], m[3])];
                gouged(
                    &curve(&[p, [p[0] + 10.0, p[1] - 3.0], [p[0] + 20.0, p[1] + 1.0]]),
                    4.0,
                )
            })
            .collect();
        k.within(&mouth, |p| p.leave_all(&fish));
    }
    for (x, y, h, pose, face) in [
        (72.5, 79.5, 92.0, Pose::Carrying, -1.0),
        (86.0, 64.5, 74.0, Pose::Standing, -1.0),
    ] {
        let person = figure(b.at(x, y), h, pose, face);
        for part in &person {
            k.cut(&outline(part, 3.0));
        }
        k.leave_all(&person);
    }
    k.leave_all(&stones(
        [b.x(93.0), b.y(44.0), b.w + 9.0, b.y(55.0)],
        22.0,
        2.0,
        dice,
    ));
}

fn steps_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0xc9_a5_9d)).charged(evenly(
            look,
            "sky",
            0.86,
            Fall {
                from: -20.0,
                to: 330.0,
                rest: 0.25,
            },
        )),
        Pass::block("water", ink(0x4f_86_88)),
        Pass::block("key", ink(0x2f_24_1e)).charged(|_| 1.04),
    ]
}
