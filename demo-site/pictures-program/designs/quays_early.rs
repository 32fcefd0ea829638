//! Nos. 1 to 4: the two linocuts, the fish steps, the cranes.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{basket, crane, hook, stones, wagon};
use crate::parts::houses::{Gable, front, row, window};
use crate::parts::land::floe;
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::{curls, smoke, streak};

pub const ART: &[Art] = &[
    Art {
        key: "1",
        cut: ice_cut,
        print: ice_print,
    },
    Art {
        key: "2",
        cut: staithe_cut,
        print: staithe_print,
    },
    Art {
        key: "3",
        cut: steps_cut,
        print: steps_print,
    },
    Art {
        key: "4",
        cut: cranes_cut,
        print: cranes_print,
    },
];

fn ice_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut k = b.block();
    // The sky: gouged level, closer towards the roofs, so that evening pales downwards.
    for i in 0..30 {
        let t = i as f32 / 29.0;
        let y = b.y(1.5 + 41.0 * t);
        k.cut_all(&pecks(
            [-20.0, y, b.w, y + 8.0],
            5 + (15.0 * t) as usize,
            70.0 + 60.0 * t,
            0.0,
            &mut dice,
        ));
    }
    for (x, h, w) in [(14.0, 33.0, 5.0), (22.0, 36.0, 5.6), (31.0, 27.0, 4.4)] {
        k.leave_all(&mast(b.at(x, 47.0), b.y(h), w, 46.0));
    }
    k.leave_all(&row(
        [-10.0, b.x(58.0)],
        b.y(49.0),
        b.y(11.0),
        b.x(9.0),
        &mut dice,
    ));
    for i in 0..13 {
        let at = b.at(2.0 + 4.3 * i as f32, 45.6 + dice.about(0.6));
        k.cut(&rect(at[0], at[1], 6.0, 9.0));
    }
    tollhouse(&mut k, b, &mut dice);
    // Water, then the steps over it, then ice.
    k.leave(&b.area(-2.0, 49.0, 62.0, 101.0));
    k.cut_all(&ripples(
        [0.0, b.y(50.0), b.x(50.0), b.y(72.0)],
        46,
        70.0,
        3.6,
        &mut dice,
    ));
    for i in 0..8 {
        let i = i as f32;
        let y = 47.0 + i * 3.7;
        let left = 63.0 - i * 4.7;
        k.leave(&b.line(&[
            [left, y],
            [101.0, y - 1.6],
            [101.0, y + 4.0],
            [left - 2.0, y + 4.0],
        ]));
        k.cut(&knifed(
            &b.line(&[
                [left, y],
                [101.0, y - 1.6],
                [101.0, y - 0.1],
                [left - 1.7, y + 1.6],
            ]),
            1.6,
            b.seed,
        ));
        let riser = b.line(&[
            [left - 1.5, y + 1.8],
            [101.0, y],
            [101.0, y + 1.9],
            [left - 2.0, y + 3.7],
        ]);
        let marks = pecks(bounds(&riser), 44, 13.0, 0.26, &mut dice);
        k.cut_within(&riser, |p| p.leave_all(&marks));
    }
    k.leave(&b.area(-2.0, 77.0, 102.0, 101.0));
    k.cut_all(&ripples(
        [0.0, b.y(76.0), b.w, b.h],
        60,
        90.0,
        3.4,
        &mut dice,
    ));
    for (x, y, rx, ry) in [
        (12.0, 63.0, 8.0, 2.4),
        (27.0, 71.0, 9.0, 3.0),
        (7.0, 76.0, 9.0, 3.2),
        (46.0, 80.5, 13.0, 3.6),
        (22.0, 84.5, 13.0, 4.2),
        (76.0, 83.0, 12.0, 3.6),
        (60.0, 91.0, 17.0, 4.8),
        (14.0, 95.0, 15.0, 4.6),
        (90.0, 94.0, 12.0, 4.4),
    ] {
        ice_plate(
            &mut k,
            &floe(b.at(x, y), b.x(rx), b.y(ry), &mut dice),
            &mut dice,
        );
    }
    match look.stage("corner") {
        0 => {}
        1 => k.cut(&knifed(
            &[
                [-9.0, -9.0],
                [26.0, -9.0],
                [20.0, 9.0],
                [8.0, 24.0],
                [-9.0, 27.0],
            ],
            4.0,
            8,
        )),
        _ => k.cut(&knifed(
            &[
                [-9.0, -9.0],
                [94.0, -9.0],
                [80.0, 8.0],
                [44.0, 38.0],
                [30.0, 62.0],
                [-9.0, 84.0],
            ],
            6.0,
            8,
        )),
    }
    Cuts::from([("block", b.trimmed(k))])
}

fn ice_plate(k: &mut Plane, plate: &[Pt], dice: &mut Dice) {
    let low = moved(plate, 4.0, 13.0);
    k.cut(&low);
    shade(
        k,
        &low,
        Hatch {
            turn: 0.22,
            gap: 5.5,
            width: 2.6,
            stray: 0.6,
        },
        dice,
    );
    k.leave(&outline(plate, 4.0));
    k.cut(&knifed(plate, 1.4, 3));
    let marks = pecks(bounds(plate), 7, 34.0, 0.02, dice);
    k.within(plate, |p| p.leave_all(&marks));
}

fn tollhouse(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let house = front(
        b.x(57.0),
        b.x(97.0),
        b.y(22.0),
        b.y(6.0),
        b.y(49.5),
        Gable::Stepped,
    );
    k.leave(&outline(&house, 9.0));
    k.cut(&knifed(&house, 1.8, b.seed));
    let shadow = b.line(&[[84.0, 4.0], [101.0, 4.0], [101.0, 50.0], [88.0, 50.0]]);
    let lines = crate::parts::lines::hatch(
        &shadow,
        Hatch {
            turn: 0.24,
            gap: 8.0,
            width: 4.4,
            stray: 0.8,
        },
        dice,
    );
    k.within(&house, |p| {
        p.leave_all(&lines);
        p.keep(&shadow);
    });
    let joints = pecks(
        [b.x(58.0), b.y(10.0), b.x(84.0), b.y(47.0)],
        26,
        20.0,
        0.0,
        dice,
    );
    k.within(&house, |p| p.leave_all(&joints));
    for x in [64.0, 78.0] {
        let (pane, bars) = window(b.x(x), b.y(25.5), b.x(9.0), b.y(9.0));
        k.leave(&outline(&pane, 6.0));
        k.leave(&pane);
        k.cut_all(&bars);
    }
    k.leave(&ellipse(b.x(77.0), b.y(16.0), 20.0, 20.0));
    k.cut(&ellipse(b.x(77.0), b.y(16.0), 12.0, 12.0));
    let mut door = curve(&b.line(&[
        [70.0, 41.5],
        [72.5, 38.5],
        [77.0, 37.2],
        [81.5, 38.5],
        [84.0, 41.5],
    ]));
    door.extend(b.line(&[[84.0, 50.0], [70.0, 50.0]]));
    k.leave(&door);
    k.cut_all(&pecks(
        [b.x(71.0), b.y(40.0), b.x(83.0), b.y(49.0)],
        22,
        24.0,
        0.25,
        dice,
    ));
    // The bracket lamp, dark on the pale sky.
    k.cut(&ellipse(b.x(50.5), b.y(31.0), 40.0, 40.0));
    k.leave(&bar(&b.line(&[[57.0, 27.0], [50.5, 27.5]]), 6.0));
    k.leave(&bar(
        &curve(&b.line(&[[57.0, 31.0], [54.0, 29.5], [51.5, 27.5]])),
        4.0,
    ));
    k.leave(&b.line(&[[48.4, 29.4], [52.6, 29.4], [51.8, 34.0], [49.2, 34.0]]));
    k.cut(&b.line(&[[49.4, 30.0], [51.6, 30.0], [51.1, 33.2], [49.9, 33.2]]));
    k.leave(&b.line(&[[47.9, 29.4], [50.5, 27.4], [53.1, 29.4]]));
}

fn ice_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::new("block", "block", ink(0x1d_2a_44))
            .from(Surface::Lino, 0.5)
            .charged(|_| 1.05),
    ]
}

fn staithe_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let plume = [
        b.at(80.0, 13.0),
        b.at(72.0, 10.0),
        b.at(58.0, 13.5),
        b.at(42.0, 12.5),
        b.at(24.0, 17.0),
    ];
    let smoke = smoke(&plume, 26.0, 80.0, &mut dice);
    let mut t = b.block();
    // Sky combed level: half a tone, against which the smoke stands whole.
    clear(
        &mut t,
        &b.area(-2.0, -2.0, 102.0, 48.0),
        Hatch {
            turn: 0.0,
            gap: 9.5,
            width: 5.4,
            stray: 0.7,
        },
        &mut dice,
    );
    t.cut(&knifed(
        &streak(b.at(-8.0, 37.0), b.x(70.0), 44.0, &mut dice),
        2.0,
        4,
    ));
    t.cut(&knifed(
        &streak(b.at(30.0, 31.5), b.x(50.0), 22.0, &mut dice),
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
    t.cut_all(&ripples(
        [0.0, b.y(64.0), b.w, b.h],
        70,
        120.0,
        7.0,
        &mut dice,
    ));
    t.cut(&knifed(
        &b.line(&[[62.0, 62.0], [101.0, 60.5], [101.0, 64.5], [66.0, 66.0]]),
        2.0,
        6,
    ));

    let mut k = b.cleared();
    k.leave_all(&curls(&plume, 26.0, 74.0, 30, &mut dice));
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
    staithe(&mut k, b, &mut dice);
    collier(&mut k, b, &mut dice);
    k.leave_all(&ripples(
        [0.0, b.y(84.0), b.w, b.h],
        44,
        150.0,
        6.0,
        &mut dice,
    ));
    k.leave_all(&ripples(
        [b.x(60.0), b.y(66.0), b.w, b.y(86.0)],
        26,
        90.0,
        4.5,
        &mut dice,
    ));
    Cuts::from([("tone", b.trimmed(t)), ("key", b.trimmed(k))])
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
        k.leave(&bar(&b.line(&cross), 5.0));
    }
    k.leave(&bar(&b.line(&[[-1.0, 57.0], [101.0, 56.4]]), 4.6));
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
        k.leave(&bar(&b.line(&[[75.4, y], [88.4, y + 6.2]]), 4.0));
        k.leave(&bar(&b.line(&[[88.4, y], [75.4, y + 6.2]]), 4.0));
        k.leave(&bar(&b.line(&[[75.4, y], [88.4, y]]), 4.6));
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
        &curve(&b.line(&[[4.6, 67.2], [20.0, 68.8], [42.0, 68.8], [60.4, 66.2]])),
        4.2,
    ));
    k.cut_all(&pecks(
        [b.x(8.0), b.y(71.0), b.x(54.0), b.y(82.0)],
        60,
        46.0,
        0.0,
        dice,
    ));
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
        Pass::new("tone", "tone", ink(0xa4_8e_74)).from(Surface::Lino, 0.45),
        Pass::new("key", "key", ink(0x22_20_20))
            .from(Surface::Lino, 0.45)
            .charged(|_| 1.04),
    ]
}

fn steps_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
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
    let houses = row(
        [-20.0, b.w + 20.0],
        b.y(53.0),
        b.y(15.0),
        b.x(8.0),
        &mut dice,
    );
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
    for (x, y, w, h) in [
        (-6.0, 34.0, 58.0, 20.0),
        (40.0, 30.0, 50.0, 13.0),
        (8.0, 41.0, 70.0, 12.0),
    ] {
        s.cut(&knifed(
            &streak(b.at(x, y), b.x(w), h * 1.8, &mut dice),
            1.6,
            3,
        ));
    }
    s.cut_all(&gulls);
    // The sky's colour serves again for stone in half light.
    s.leave_all(&houses);
    let treads = treads(b);
    for (tread, riser) in &treads {
        s.leave(riser);
        s.tone(tread, 0.0);
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 53.0, 102.0, 101.0));
    w.cut_all(&ripples(
        [0.0, b.y(56.0), b.w, b.h],
        90,
        150.0,
        8.0,
        &mut dice,
    ));
    for i in 0..16 {
        let x = b.x(4.0 + 6.0 * i as f32);
        w.leave_all(&broken(
            x - 22.0,
            x + 16.0,
            b.y(53.5),
            b.y(64.0 + dice.about(4.0)),
            &mut dice,
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
    warehouses(&mut k, &houses, b, &mut dice);
    for x in [8.0, 15.0, 34.0] {
        k.leave_all(&mast(b.at(x, 53.5), b.y(24.0), 4.6, 34.0));
    }
    k.cut_all(&gulls);
    for g in &gulls {
        k.leave(&outline(g, 1.1));
    }
    let barge = hull(b.at(5.0, 53.0), b.x(34.0), b.y(5.0), 9.0);
    k.leave(&knifed(&barge, 0.8, 3));
    k.leave_all(&broken(
        b.x(6.0),
        b.x(38.0),
        b.y(58.8),
        b.y(66.0),
        &mut dice,
    ));
    k.cut(&wedge);
    fish_steps(&mut k, &treads, &wedge, b, &mut dice);
    k.leave_all(&ripples(
        [0.0, b.y(70.0), b.x(46.0), b.h],
        24,
        110.0,
        4.5,
        &mut dice,
    ));
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("water", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
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
        k.cut(&mouth);
        k.leave(&outline(&mouth, 3.0));
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
        Pass::new("sky", "sky", ink(0xc9_a5_9d)).charged(evenly(
            look,
            "sky",
            0.86,
            Fall {
                from: -20.0,
                to: 330.0,
                rest: 0.25,
            },
        )),
        Pass::new("water", "water", ink(0x4f_86_88)),
        Pass::new("key", "key", ink(0x2f_24_1e)).charged(|_| 1.04),
    ]
}

fn cranes_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
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
    let smoke = smoke(&plume, 9.0, 40.0, &mut dice);
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
    for (x, y, w, h) in [
        (-5.0, 22.0, 44.0, 34.0),
        (20.0, 33.0, 60.0, 26.0),
        (60.0, 10.0, 50.0, 26.0),
        (-4.0, 45.0, 50.0, 18.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.8, 3));
    }
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
        &mut dice,
    ));
    r.leave(&chimney);
    r.cut_all(&pecks(
        [b.x(61.0), b.y(28.0), b.w, b.y(72.0)],
        60,
        20.0,
        0.0,
        &mut dice,
    ));
    r.leave(&moved(&barge, 0.0, 0.0));
    r.cut(&moved(&barge, 0.0, 34.0));
    let split_at = |from: f32| -> Path {
        let line: Path = (0..60)
            .map(|i| {
                let t = i as f32 / 59.0;
                [
                    b.x(mix(101.0, from, t)),
                    b.y(50.0) + 3.0 * (smooth(t * 8.0, 0.0, b.seed) - 0.5),
                ]
            })
            .collect();
        tapered(&line, 3.6, 1.4)
    };
    match look.stage("split") {
        0 => {}
        1 => r.cut(&split_at(88.0)),
        _ => r.cut(&split_at(60.0)),
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 72.0, 102.0, 101.0));
    w.cut_all(&ripples(
        [0.0, b.y(76.0), b.w, b.h],
        60,
        120.0,
        7.0,
        &mut dice,
    ));
    w.cut(&barge);
    w.leave(&b.line(&[[-1.0, 70.5], [101.0, 74.0], [101.0, 76.0], [-1.0, 73.0]]));

    let mut k = b.cleared();
    if look.has_or("smoke", look.state < 2) {
        k.leave_all(&curls(&plume, 9.0, 38.0, 12, &mut dice));
    }
    cranes_key(&mut k, look, b, &cranes, &mut dice);
    brickwork(&mut k, b, &wall, &mut dice);
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
        &mut dice,
    );
    k.leave(&knifed(&quay, 1.0, 3));
    k.cut_all(&stones(
        [0.0, b.y(71.5), b.w, b.y(76.0)],
        14.0,
        1.6,
        &mut dice,
    ));
    k.cut(&moved(&barge, 0.0, -4.0));
    k.leave(&outline(&barge, 3.4));
    k.within(&barge, |p| p.leave(&b.area(0.0, 83.2, 100.0, 90.0)));
    k.leave(&b.area(16.0, 75.0, 25.0, 80.6));
    k.cut(&b.area(18.0, 76.4, 20.0, 78.2));
    k.leave_all(&mast(b.at(44.0, 80.5), b.y(13.0), 5.0, 60.0));
    k.leave_all(&figure(b.at(58.0, 80.6), 46.0, Pose::Standing, -1.0));
    k.leave_all(&broken(
        b.x(11.0),
        b.x(69.0),
        b.y(88.6),
        b.y(99.5),
        &mut dice,
    ));
    for x in [44.0, 20.0] {
        k.leave_all(&broken(
            b.x(x) - 3.0,
            b.x(x) + 3.0,
            b.y(88.0),
            b.y(99.0),
            &mut dice,
        ));
    }
    k.leave_all(&ripples(
        [0.0, b.y(78.0), b.w, b.h],
        22,
        80.0,
        4.0,
        &mut dice,
    ));
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("brick", b.trimmed(r)),
        ("water", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
}

fn cranes_key(
    k: &mut Plane,
    look: &Look,
    b: &Bench,
    cranes: &[crate::parts::harbour::Crane; 3],
    dice: &mut Dice,
) {
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
            k.cut(&crate_box);
            k.leave(&outline(&crate_box, 4.0));
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
    k.leave_all(&crate::parts::lines::pecks(
        [0.0, b.y(66.0), b.x(46.0), b.y(70.0)],
        24,
        18.0,
        0.0,
        dice,
    ));
}

fn brickwork(k: &mut Plane, b: &Bench, wall: &Path, dice: &mut Dice) {
    k.cut(wall);
    k.leave(&outline(wall, 3.0));
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
            let mut door =
                curve(&b.line(&[[x, y - up], [x + 2.9, y - 1.9 - up], [x + 5.8, y - up]]));
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
    k.leave(&bar(&b.line(&[[82.0, 24.0], [71.0, 25.2]]), 6.0));
    k.leave(&bar(&b.line(&[[71.5, 25.0], [71.5, 46.0]]), 1.8));
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
        Pass::new("sky", "sky", ink(0xe2_c5_84)).charged(graded(
            look,
            Fall {
                from: -60.0,
                to: 900.0,
                rest: 0.45,
            },
        )),
        Pass::new("brick", "brick", ink(0xa4_52_3a)),
        Pass::new("water", "water", ink(0x6f_8a_80)).charged(evenly(
            look,
            "water",
            0.95,
            Fall {
                from: 1000.0,
                to: 700.0,
                rest: 0.5,
            },
        )),
        Pass::new("key", "key", ink(0x23_21_22)).charged(|_| 1.04),
    ]
}
