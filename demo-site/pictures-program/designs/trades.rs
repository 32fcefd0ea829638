//! Nos. 11 to 14: the sail loft, the tide mill in two plates, the caulkers, the cooper's yard.

use super::etched::{aquatint, etch, plate_print, scratch};
use super::prelude::*;
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{barrel, barrel_end};
use crate::parts::houses::tiles;
use crate::parts::land::willow;
use crate::parts::lines::{between, bitten, drawn, resin};
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::{curls, smoke};

pub const ART: &[Art] = &[
    Art {
        key: "11",
        cut: loft_cut,
        print: plate_print,
    },
    Art {
        key: "12",
        cut: mill_cut,
        print: plate_print,
    },
    Art {
        key: "12a",
        cut: small_mill_cut,
        print: plate_print,
    },
    Art {
        key: "13",
        cut: caulkers_cut,
        print: plate_print,
    },
    Art {
        key: "14",
        cut: cooper_cut,
        print: plate_print,
    },
];

/// Cross-hatching: one set of lines, or two, or three, as the tone asks.
fn tone(k: &mut Plane, shape: &[Pt], depth: usize, gap: f32, turn: f32, dice: &mut Dice) {
    for i in 0..depth {
        let how = Hatch {
            turn: turn + 0.11 * i as f32,
            gap: gap * (1.0 + 0.12 * i as f32),
            width: 1.35,
            stray: 1.1,
        };
        shade(k, shape, how, dice);
    }
}

fn loft_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    let end = b.at(54.0, 47.0);
    // Floorboards and roof run to one point at the far gable.
    let gable = b.line(&[
        [38.0, 62.0],
        [38.0, 40.0],
        [54.0, 24.0],
        [70.0, 40.0],
        [70.0, 62.0],
    ]);
    for i in 0..15 {
        let foot = b.at(-30.0 + 11.5 * i as f32, 101.0);
        let t = (foot[1] - b.y(62.0)) / (foot[1] - end[1]);
        k.leave(&bitten(
            &[foot, [mix(foot[0], end[0], t), b.y(62.0)]],
            1.6,
            &mut dice,
        ));
    }
    let slope_left = b.line(&[
        [-2.0, 52.0],
        [-2.0, -2.0],
        [30.0, -2.0],
        [54.0, 24.0],
        [38.0, 40.0],
    ]);
    let slope_right = b.line(&[
        [102.0, 50.0],
        [102.0, -2.0],
        [72.0, -2.0],
        [54.0, 24.0],
        [70.0, 40.0],
    ]);
    let skylight = b.line(&[[8.0, 12.0], [24.0, 3.0], [37.0, 18.0], [22.0, 27.0]]);
    tone(&mut k, &slope_left, 2, 7.5, 0.09, &mut dice);
    tone(&mut k, &slope_right, 3, 6.4, -0.10, &mut dice);
    aquatint(&mut a, &slope_right, 0.62);
    aquatint(&mut a, &slope_left, 0.40);
    for plane in [&mut k, &mut a] {
        plane.cut(&skylight);
    }
    for line in drawn(&skylight, 3.6, &mut dice) {
        k.leave(&line);
    }
    for t in [0.33, 0.66] {
        let p = [
            mix(skylight[0][0], skylight[1][0], t),
            mix(skylight[0][1], skylight[1][1], t),
        ];
        let q = [
            mix(skylight[3][0], skylight[2][0], t),
            mix(skylight[3][1], skylight[2][1], t),
        ];
        k.leave(&bitten(&[p, q], 3.0, &mut dice));
    }
    for line in drawn(&gable, 2.4, &mut dice) {
        k.leave(&line);
    }
    tone(&mut k, &gable, 1, 6.0, 0.25, &mut dice);
    let far_window = b.area(50.0, 34.0, 58.0, 44.0);
    k.cut(&far_window);
    for line in drawn(&far_window, 2.2, &mut dice) {
        k.leave(&line);
    }
    trusses(&mut k, b, &mut dice);
    // Light from the skylight lies in a slant across the room.
    let shaft = b.line(&[[10.0, 14.0], [36.0, 18.0], [64.0, 101.0], [16.0, 101.0]]);
    let floor = b.line(&[
        [38.0, 62.0],
        [70.0, 62.0],
        [102.0, 88.0],
        [102.0, 101.0],
        [-2.0, 101.0],
        [-2.0, 86.0],
    ]);
    tone(
        &mut k,
        &b.line(&[
            [70.0, 62.0],
            [102.0, 84.0],
            [102.0, 101.0],
            [62.0, 101.0],
            [52.0, 66.0],
        ]),
        2,
        8.0,
        0.02,
        &mut dice,
    );
    aquatint(&mut a, &floor, 0.22);
    sails(&mut k, &mut a, b, &mut dice);
    let mut light = b.cleared();
    light.tone(&shaft, 0.75);
    for (cell, l) in a.data.iter_mut().zip(&light.data) {
        *cell *= 1.0 - l;
    }
    bench(&mut k, b, &mut dice);
    if look.has("aquatint") {
        resin(&mut a, b.seed);
        k.add(&a);
    }
    etch(b, k, look)
}

fn trusses(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    for (left, right, foot, peak, wide) in [
        (38.0, 70.0, 40.5, 24.0, 5.0),
        (27.0, 82.0, 40.0, 11.0, 9.0),
        (6.0, 104.0, 38.0, -14.0, 17.0),
    ] {
        let beams = [
            vec![b.at(left, foot), b.at(right, foot)],
            vec![b.at(left, foot), b.at(54.0, peak)],
            vec![b.at(right, foot), b.at(54.0, peak)],
            vec![b.at(54.0, peak), b.at(54.0, foot)],
            vec![
                b.at(mix(left, 54.0, 0.5), mix(foot, peak, 0.5)),
                b.at(54.0, foot),
            ],
            vec![
                b.at(mix(right, 54.0, 0.5), mix(foot, peak, 0.5)),
                b.at(54.0, foot),
            ],
        ];
        for beam in beams {
            let body = bar(&beam, wide);
            k.cut(&body);
            for line in drawn(&body, 1.8, dice) {
                k.leave(&line);
            }
            let under: Path = beam
                .iter()
                .map(|p| [p[0] + wide * 0.12, p[1] + wide * 0.25])
                .collect();
            shade(
                k,
                &bar(&under, wide * 0.5),
                Hatch {
                    turn: 0.14,
                    gap: 3.6,
                    width: 1.5,
                    stray: 0.3,
                },
                dice,
            );
        }
    }
}

fn sails(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let hung = [
        (
            b.line(&[[66.0, 30.0], [70.0, 45.0], [66.0, 60.0], [70.0, 76.0]]),
            b.line(&[[95.0, 18.0], [90.0, 42.0], [97.0, 66.0], [93.0, 88.0]]),
            17,
        ),
        (
            b.line(&[[44.0, 36.0], [42.0, 48.0], [46.0, 58.0], [42.0, 68.0]]),
            b.line(&[[66.0, 32.0], [60.0, 46.0], [64.0, 60.0], [58.0, 71.0]]),
            11,
        ),
        (
            b.line(&[[-2.0, 40.0], [7.0, 52.0], [2.0, 68.0], [10.0, 82.0]]),
            b.line(&[[33.0, 38.0], [27.0, 54.0], [33.0, 70.0], [26.0, 80.0]]),
            15,
        ),
    ];
    for (i, (left, right, count)) in hung.into_iter().enumerate() {
        let (left, right) = (curve(&left), curve(&right));
        let mut cloth = left.clone();
        let foot = curve(&[
            left[left.len() - 1],
            [
                (left[left.len() - 1][0] + right[right.len() - 1][0]) / 2.0,
                left[left.len() - 1][1] + 34.0,
            ],
            right[right.len() - 1],
        ]);
        cloth.extend(foot);
        cloth.extend(right.iter().rev());
        k.cut(&cloth);
        a.cut(&cloth);
        for line in drawn(&cloth, 2.6, dice) {
            k.leave(&line);
        }
        let folds = between(&left, &right, count, 2.2, dice);
        k.within(&cloth, |p| p.leave_all(&folds));
        // Shade gathers on the side away from the skylight.
        let shady: Path = right
            .iter()
            .map(|p| [p[0] - b.x(9.0), p[1]])
            .chain(right.iter().rev().copied())
            .collect();
        k.within(&cloth, |p| {
            tone(p, &shady, 2, 7.0, 0.02, dice);
            p.keep(&shady);
        });
        let deep = 0.32 + 0.12 * i as f32;
        let mut stop = Plane::cleared(a.window);
        aquatint(&mut stop, &shady, deep);
        stop.keep(&cloth);
        a.add(&stop);
        k.leave(&bar(&[left[0], right[0]], 4.0));
        k.leave(&bitten(
            &[left[0], [left[0][0] + 10.0, left[0][1] - b.y(30.0)]],
            2.0,
            dice,
        ));
        k.leave(&bitten(
            &[right[0], [right[0][0] - 8.0, right[0][1] - b.y(30.0)]],
            2.0,
            dice,
        ));
    }
}

fn bench(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let cloth = blob(&b.line(&[
        [14.0, 86.0],
        [26.0, 82.0],
        [44.0, 83.0],
        [60.0, 87.0],
        [72.0, 93.0],
        [64.0, 99.0],
        [40.0, 97.5],
        [22.0, 99.0],
        [12.0, 93.0],
    ]));
    k.cut(&cloth);
    for line in drawn(&cloth, 2.4, dice) {
        k.leave(&line);
    }
    for i in 0..9 {
        let x = 17.0 + 6.0 * i as f32;
        let fold = curve(&b.line(&[[x, 86.0], [x + 4.0, 90.0], [x + 1.0, 94.0], [x + 6.0, 98.0]]));
        k.within(&cloth, |p| p.leave(&bitten(&fold, 2.0, dice)));
    }
    for (x, y, h, pose, face) in [
        (30.0, 88.5, 150.0, Pose::Bent, 1.0),
        (57.0, 88.0, 138.0, Pose::Bent, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            k.cut(&part);
            tone(k, &part, 3, 3.6, 0.12, dice);
            for line in drawn(&part, 2.0, dice) {
                k.leave(&line);
            }
        }
    }
    let seat = b.area(22.0, 88.0, 66.0, 89.6);
    k.cut(&seat);
    tone(k, &seat, 2, 3.4, 0.0, dice);
    for x in [25.0, 62.0] {
        k.leave(&bitten(&b.line(&[[x, 89.6], [x - 0.6, 97.0]]), 4.5, dice));
    }
}

fn mill_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    mill(&mut k, &mut a, b, &mut dice);
    pond(&mut k, &mut a, b, &mut dice);
    if look.has("aquatint") {
        let mut sky = Plane::cleared(b.window);
        for i in 0..5 {
            let y = 3.0 + 7.0 * i as f32;
            aquatint(
                &mut sky,
                &curve(&b.line(&[
                    [56.0, y],
                    [72.0, y - 2.0],
                    [88.0, y + 1.5],
                    [102.0, y - 2.0],
                    [102.0, y + 6.0],
                    [86.0, y + 7.5],
                    [70.0, y + 4.0],
                    [58.0, y + 6.0],
                ])),
                0.46 - 0.06 * i as f32,
            );
        }
        aquatint(&mut sky, &b.area(-2.0, -2.0, 102.0, 9.0), 0.34);
        sky.cut(&b.line(&[
            [16.0, 40.0],
            [20.0, 24.0],
            [38.0, 8.0],
            [58.0, 24.0],
            [60.0, 40.0],
        ]));
        a.add(&sky);
        resin(&mut a, b.seed);
        k.add(&a);
    }
    if look.has("heron") {
        heron_on_post(&mut k, b, &mut dice);
    }
    if look.stage("scratch") > 0 {
        scratch(&mut k, b, [6.0, 78.0], [42.0, 74.0], look.stage("scratch"));
    }
    etch(b, k, look)
}

fn heron_on_post(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let bird = crate::parts::birds::heron(b.at(84.6, 56.4), b.y(10.0));
    k.cut(&outline(&bird.body, 4.0));
    k.cut(&bird.body);
    for line in drawn(&bird.body, 1.7, dice) {
        k.leave(&line);
    }
    tone(k, &bird.body, 2, 3.0, 0.1, dice);
    k.leave(&bird.head);
    for leg in &bird.legs {
        k.leave(&bar(leg, 1.8));
    }
}

fn mill(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let wall = b.line(&[
        [18.0, 66.0],
        [18.0, 40.0],
        [26.0, 27.0],
        [34.0, 40.0],
        [34.0, 66.0],
    ]);
    let side = b.line(&[[34.0, 66.0], [34.0, 40.0], [58.0, 40.0], [58.0, 66.0]]);
    let roof = b.line(&[[26.0, 27.0], [51.0, 26.0], [59.5, 40.6], [34.0, 40.6]]);
    let hoist = b.line(&[
        [40.0, 27.0],
        [40.0, 21.0],
        [45.0, 18.0],
        [50.0, 21.0],
        [50.0, 30.0],
        [42.0, 32.0],
    ]);
    for shape in [&wall, &side, &roof, &hoist] {
        for line in drawn(shape, 2.6, dice) {
            k.leave(&line);
        }
    }
    // Weatherboards, each with its line of shadow.
    for i in 0..17 {
        let y = 28.5 + 2.25 * i as f32;
        let half = ((y - 27.0) / 13.0 * 8.0).min(8.0);
        k.leave(&bitten(
            &b.line(&[[26.0 - half, y], [26.0 + half, y]]),
            1.7,
            dice,
        ));
        if y > 40.5 {
            k.leave(&bitten(&b.line(&[[34.0, y], [58.0, y + 0.1]]), 1.6, dice));
        }
    }
    tone(k, &side, 2, 5.2, 0.13, dice);
    tone(k, &roof, 1, 5.0, 0.21, dice);
    let slates = tiles(bounds(&roof), 7.0, dice);
    k.within(&roof, |p| p.leave_all(&slates));
    tone(
        k,
        &b.line(&[[45.0, 18.0], [50.0, 21.0], [50.0, 30.0], [46.0, 31.0]]),
        2,
        4.5,
        0.2,
        dice,
    );
    aquatint(a, &side, 0.42);
    aquatint(a, &roof, 0.30);
    for (x, y) in [
        (22.0, 45.0),
        (28.0, 45.0),
        (39.0, 46.0),
        (51.0, 46.0),
        (25.0, 35.0),
    ] {
        let pane = b.area(x, y, x + 2.6, y + 4.6);
        k.cut(&pane);
        tone(k, &pane, 3, 2.8, 0.05, dice);
        for line in drawn(&pane, 1.8, dice) {
            k.leave(&line);
        }
    }
    let door = b.area(43.0, 52.0, 48.0, 63.0);
    k.cut(&door);
    tone(k, &door, 3, 3.2, 0.25, dice);
    wheel(k, b, dice);
    // The sluice under the mill: black water between piles.
    let race = b.line(&[[18.0, 66.0], [56.0, 66.0], [56.0, 71.5], [18.0, 71.0]]);
    tone(k, &race, 3, 3.8, 0.0, dice);
    aquatint(a, &race, 0.7);
    for i in 0..9 {
        let x = 18.0 + 4.7 * i as f32;
        let pile = b.area(x, 65.0, x + 1.2, 72.0);
        k.cut(&pile);
        for line in drawn(&pile, 1.8, dice) {
            k.leave(&line);
        }
    }
}

fn wheel(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let c = b.at(63.0, 60.5);
    let r = b.y(11.6);
    k.cut(&ellipse(c[0], c[1], r * 0.98, r));
    for share in [1.0, 0.90, 0.24] {
        k.leave(&bitten(
            &arc(c[0], c[1], r * share * 0.98, r * share, 0.0, 1.01),
            2.6,
            dice,
        ));
    }
    for i in 0..16 {
        let t = i as f32 / 16.0 * core::f32::consts::TAU + 0.1;
        let (sin, cos) = (libm::sinf(t), libm::cosf(t));
        if i % 2 == 0 {
            k.leave(&bitten(
                &[
                    [c[0] + cos * r * 0.1, c[1] + sin * r * 0.1],
                    [c[0] + cos * r * 0.9, c[1] + sin * r * 0.9],
                ],
                2.8,
                dice,
            ));
        }
        k.leave(&bar(
            &[
                [c[0] + cos * r * 0.86, c[1] + sin * r * 0.86],
                [c[0] + cos * r * 1.07, c[1] + sin * r * 1.07],
            ],
            5.0,
        ));
    }
    let lower = arc(c[0], c[1], r * 0.96, r * 0.96, 0.02, 0.48);
    shade(
        k,
        &lower,
        Hatch {
            turn: 0.1,
            gap: 4.2,
            width: 1.3,
            stray: 0.6,
        },
        dice,
    );
    let water = b.line(&[[55.0, 69.0], [72.0, 69.0], [72.0, 74.0], [55.0, 74.0]]);
    k.cut(&water);
    k.leave_all(&ripples(
        [b.x(54.0), b.y(68.6), b.x(74.0), b.y(74.0)],
        40,
        46.0,
        2.6,
        dice,
    ));
}

fn pond(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    // The causeway, and willows behind it.
    let bank = curve(&b.line(&[
        [58.0, 66.0],
        [66.0, 66.5],
        [76.0, 65.0],
        [88.0, 64.0],
        [102.0, 62.5],
    ]));
    k.leave(&bitten(&bank, 3.0, dice));
    k.leave(&bitten(
        &curve(&b.line(&[[70.0, 70.0], [80.0, 69.0], [90.0, 69.5], [102.0, 68.0]])),
        2.4,
        dice,
    ));
    let near = b.line(&[[72.0, 66.5], [102.0, 63.5], [102.0, 69.0], [72.0, 70.5]]);
    tone(k, &near, 2, 5.0, 0.18, dice);
    for (x, y, r) in [(92.0, 40.0, 128.0), (79.0, 46.0, 84.0), (7.0, 48.0, 90.0)] {
        for line in willow(b.at(x, y), r, 60, dice) {
            k.leave(&bitten(&line, 1.5, dice));
        }
        let trunk = curve(&b.line(&[[x + 1.0, 65.0], [x, 56.0], [x + 0.8, y]]));
        k.leave(&tapered(&trunk, 10.0, 4.0));
        aquatint(a, &ellipse(b.x(x), b.y(y + 4.0), r * 0.7, r * 0.55), 0.24);
    }
    for (x, top) in [(75.0, 57.5), (79.5, 57.0), (84.5, 56.4)] {
        let post = b.area(x - 0.7, top, x + 0.9, 70.0);
        k.cut(&post);
        tone(k, &b.area(x + 0.1, top, x + 0.9, 70.0), 2, 2.6, 0.25, dice);
        for line in drawn(&post, 2.0, dice) {
            k.leave(&line);
        }
    }
    k.leave(&bitten(&b.line(&[[74.0, 60.5], [86.0, 60.0]]), 4.4, dice));
    k.leave(&bitten(&b.line(&[[74.0, 64.0], [86.0, 63.5]]), 3.6, dice));
    // Reflections: the mill stands on its head, in broken level lines.
    for i in 0..46 {
        let y = 72.0 + 0.6 * i as f32 + dice.about(0.2);
        let reach = if y < 88.0 {
            (18.0, 58.0)
        } else {
            (22.0 + (y - 88.0) * 0.6, 54.0 - (y - 88.0) * 0.8)
        };
        let line = b.line(&[
            [reach.0 + dice.about(2.0), y],
            [(reach.0 + reach.1) / 2.0, y + dice.about(0.2)],
            [reach.1 + dice.about(2.5), y],
        ]);
        k.leave(&bitten(&line, 2.0, dice));
    }
    for x in [75.0, 79.5, 84.5] {
        k.leave_all(&broken(
            b.x(x) - 6.0,
            b.x(x) + 7.0,
            b.y(70.5),
            b.y(84.0),
            dice,
        ));
    }
    k.leave_all(&ripples(
        [-10.0, b.y(72.0), b.w, b.h],
        120,
        100.0,
        2.2,
        dice,
    ));
    aquatint(
        a,
        &b.line(&[[14.0, 72.0], [60.0, 72.0], [56.0, 99.0], [20.0, 99.0]]),
        0.36,
    );
    aquatint(a, &b.area(-2.0, 84.0, 102.0, 102.0), 0.22);
    for i in 0..26 {
        let x = -2.0 + 1.1 * i as f32 + dice.about(0.8);
        let p = b.at(x, 101.0);
        k.leave(&tapered(
            &curve(&[
                p,
                [p[0] + dice.about(10.0), p[1] - 46.0],
                [p[0] + dice.about(34.0), p[1] - dice.between(70.0, 130.0)],
            ]),
            3.0,
            0.7,
        ));
    }
}

fn small_mill_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut k = b.cleared();
    let wall = b.line(&[
        [66.0, 74.0],
        [66.0, 55.0],
        [73.0, 44.0],
        [80.0, 55.0],
        [80.0, 74.0],
    ]);
    let side = b.line(&[[38.0, 74.0], [38.0, 56.0], [66.0, 55.0], [66.0, 74.0]]);
    let roof = b.line(&[[66.0, 55.4], [73.0, 44.0], [45.0, 45.0], [36.8, 56.4]]);
    for shape in [&wall, &side, &roof] {
        for line in drawn(shape, 3.6, &mut dice) {
            k.leave(&line);
        }
    }
    for (shape, depth, gap, turn) in [
        (&side, 2, 9.0, 0.13),
        (&roof, 1, 8.0, 0.2),
        (&wall, 1, 10.0, 0.0),
    ] {
        for i in 0..depth {
            shade(
                &mut k,
                shape,
                Hatch {
                    turn: turn + 0.1 * i as f32,
                    gap,
                    width: 2.2,
                    stray: 1.4,
                },
                &mut dice,
            );
        }
    }
    for (x, y) in [(44.0, 60.0), (56.0, 60.0), (71.0, 60.0)] {
        k.leave(&b.area(x, y, x + 3.4, y + 5.6));
    }
    let c = b.at(31.0, 69.0);
    let r = b.y(12.0);
    k.leave(&bitten(&arc(c[0], c[1], r, r, 0.0, 1.01), 4.2, &mut dice));
    k.leave(&bitten(
        &arc(c[0], c[1], r * 0.84, r * 0.84, 0.0, 1.01),
        2.6,
        &mut dice,
    ));
    for i in 0..8 {
        let t = i as f32 / 8.0 * core::f32::consts::TAU + 0.2;
        k.leave(&bitten(
            &[c, [c[0] + r * libm::cosf(t), c[1] + r * libm::sinf(t)]],
            3.0,
            &mut dice,
        ));
    }
    k.cut(&b.line(&[[20.0, 76.0], [40.0, 75.0], [40.0, 84.0], [20.0, 84.0]]));
    k.leave(&bitten(
        &curve(&b.line(&[[-2.0, 73.0], [14.0, 74.0], [24.0, 75.0]])),
        3.4,
        &mut dice,
    ));
    k.leave(&bitten(
        &curve(&b.line(&[[80.0, 74.0], [90.0, 73.4], [102.0, 72.0]])),
        3.4,
        &mut dice,
    ));
    for line in willow(b.at(9.0, 58.0), 130.0, 34, &mut dice) {
        k.leave(&bitten(&line, 2.3, &mut dice));
    }
    k.leave_all(&ripples(
        [-10.0, b.y(78.0), b.w, b.h],
        60,
        140.0,
        3.4,
        &mut dice,
    ));
    for i in 0..13 {
        let y = 78.5 + 1.25 * i as f32;
        let wide = 20.0 - 0.9 * i as f32;
        let line = b.line(&[
            [59.0 - wide + dice.about(2.0), y],
            [59.0, y + dice.about(0.3)],
            [59.0 + wide + dice.about(2.0), y],
        ]);
        k.leave(&bitten(&line, 2.4, &mut dice));
    }
    // Much sky: a few long lines, and birds far off.
    for (x, y, l) in [
        (10.0, 16.0, 360.0),
        (48.0, 9.0, 420.0),
        (30.0, 24.0, 300.0),
        (66.0, 28.0, 300.0),
        (4.0, 33.0, 240.0),
    ] {
        k.leave(&bitten(
            &curve(&[
                b.at(x, y),
                [b.x(x) + l * 0.5, b.y(y - 3.0)],
                [b.x(x) + l, b.y(y)],
            ]),
            2.2,
            &mut dice,
        ));
    }
    for (x, y) in [(58.0, 20.0), (63.0, 17.0), (69.0, 22.0)] {
        let p = b.at(x, y);
        k.leave(&bitten(
            &curve(&[[p[0] - 15.0, p[1] - 6.0], p, [p[0] + 17.0, p[1] - 8.0]]),
            3.0,
            &mut dice,
        ));
    }
    etch(b, k, look)
}

fn caulkers_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    let top = curve(&b.line(&[
        [-3.0, 4.0],
        [22.0, 10.0],
        [48.0, 12.0],
        [76.0, 7.0],
        [103.0, -4.0],
    ]));
    let keel = curve(&b.line(&[
        [-3.0, 40.0],
        [18.0, 62.0],
        [42.0, 70.0],
        [68.0, 66.0],
        [86.0, 50.0],
        [98.0, 22.0],
        [103.0, -3.0],
    ]));
    let mut belly = top.clone();
    belly.extend(keel.iter().rev());
    for line in between(&top, &keel, 22, 3.0, &mut dice) {
        k.leave(&line);
    }
    // Butts of the planks, trenails in pairs.
    for _ in 0..70 {
        let p = b.at(dice.between(0.0, 96.0), dice.between(10.0, 66.0));
        k.within(&belly, |q| {
            q.leave(&bar(&[[p[0], p[1] - 7.0], [p[0] + 4.0, p[1] + 7.0]], 2.0));
        });
    }
    k.within(&belly, |q| {
        q.leave_all(&stipple(
            [0.0, 0.0, b.w, b.y(72.0)],
            180,
            1.5,
            &mut Dice::new(b.seed ^ 9),
        ));
    });
    let under: Path = keel
        .iter()
        .copied()
        .chain(
            keel.iter()
                .rev()
                .map(|p| [p[0] - b.x(2.0), p[1] - b.y(22.0)]),
        )
        .collect();
    k.within(&belly, |q| {
        tone(q, &under, 3, 6.0, 0.10, &mut dice);
        q.keep(&under);
    });
    let middle: Path = top
        .iter()
        .map(|p| [p[0], p[1] + b.y(16.0)])
        .chain(keel.iter().rev().copied())
        .collect();
    k.within(&belly, |q| {
        tone(q, &middle, 1, 8.0, 0.19, &mut dice);
        q.keep(&middle);
    });
    let mut hold = Plane::cleared(b.window);
    aquatint(&mut hold, &belly, 0.28);
    aquatint(&mut hold, &under, 0.62);
    hold.keep(&belly);
    a.add(&hold);
    k.leave(&bitten(&top, 3.6, &mut dice));
    k.leave(&bitten(&keel, 5.0, &mut dice));
    // Ground and far sheds under the hull.
    let ground = curve(&b.line(&[[-3.0, 86.0], [30.0, 83.0], [60.0, 84.0], [103.0, 82.0]]));
    k.leave(&bitten(&ground, 2.4, &mut dice));
    for shed in [
        b.line(&[
            [76.0, 80.0],
            [76.0, 70.0],
            [84.0, 62.0],
            [92.0, 70.0],
            [92.0, 80.0],
        ]),
        b.line(&[[92.0, 80.0], [92.0, 66.0], [102.0, 60.0], [102.0, 80.0]]),
    ] {
        k.cut(&shed);
        for line in drawn(&shed, 2.0, &mut dice) {
            k.leave(&line);
        }
        tone(&mut k, &shed, 1, 6.0, 0.25, &mut dice);
        aquatint(&mut a, &shed, 0.24);
    }
    for (foot, head, y) in [
        (6.0, 12.0, 52.0),
        (22.0, 25.0, 65.0),
        (40.0, 40.0, 70.0),
        (60.0, 56.0, 69.0),
        (78.0, 70.0, 64.0),
    ] {
        let prop = bar(&b.line(&[[foot, 88.0], [head, y]]), 13.0);
        k.cut(&prop);
        a.cut(&prop);
        tone(
            &mut k,
            &bar(&b.line(&[[foot + 0.5, 88.0], [head + 0.5, y]]), 6.0),
            2,
            3.4,
            0.2,
            &mut dice,
        );
        for line in drawn(&prop, 2.6, &mut dice) {
            k.leave(&line);
        }
        tone(
            &mut k,
            &b.area(foot - 2.6, 87.0, foot + 2.8, 90.0),
            2,
            3.6,
            0.0,
            &mut dice,
        );
    }
    // The staging and the four at work.
    let plank = b.line(&[[10.0, 76.0], [64.0, 77.5], [64.0, 79.2], [10.0, 77.8]]);
    k.cut(&plank);
    for line in drawn(&plank, 2.6, &mut dice) {
        k.leave(&line);
    }
    for x in [13.0, 30.0, 48.0, 61.0] {
        k.leave(&bitten(
            &b.line(&[[x, 77.6], [x - 1.6, 88.0]]),
            4.2,
            &mut dice,
        ));
        k.leave(&bitten(
            &b.line(&[[x, 77.6], [x + 1.8, 88.0]]),
            4.2,
            &mut dice,
        ));
    }
    for (x, y, h, pose, face) in [
        (17.0, 76.2, 104.0, Pose::Swinging, 1.0),
        (33.0, 76.8, 98.0, Pose::Swinging, -1.0),
        (50.0, 77.2, 100.0, Pose::Bent, 1.0),
        (71.0, 89.0, 112.0, Pose::Bent, 1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            a.cut(&outline(&part, 5.0));
            k.cut(&outline(&part, 5.0));
            a.cut(&part);
            k.cut(&part);
            tone(&mut k, &part, 3, 3.2, 0.13, &mut dice);
            for line in drawn(&part, 1.8, &mut dice) {
                k.leave(&line);
            }
        }
    }
    pitch_pot(&mut k, &mut a, b, &mut dice);
    for i in 0..90 {
        let p = b.at(dice.between(-2.0, 100.0), dice.between(87.0, 100.0));
        k.leave(&bitten(
            &[p, [p[0] + dice.between(10.0, 46.0), p[1] + dice.about(3.0)]],
            1.6,
            &mut dice,
        ));
        if i % 6 == 0 {
            k.leave(&bitten(
                &curve(&[p, [p[0] + 7.0, p[1] - 5.0], [p[0] + 16.0, p[1]]]),
                2.0,
                &mut dice,
            ));
        }
    }
    // These tones were bitten from the first.
    resin(&mut a, b.seed);
    k.add(&a);
    foul(&mut k, b, look.stage("foul"));
    etch(b, k, look)
}

fn pitch_pot(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let plume = [
        b.at(83.5, 80.0),
        b.at(86.0, 72.0),
        b.at(84.0, 60.0),
        b.at(90.0, 46.0),
        b.at(87.0, 32.0),
    ];
    for puff in smoke(&plume, 9.0, 46.0, dice) {
        k.cut(&puff);
        a.cut(&puff);
    }
    for curl in curls(&plume, 10.0, 44.0, 26, dice) {
        k.leave(&curl);
    }
    let pot = blob(&b.line(&[
        [78.5, 82.5],
        [83.5, 81.2],
        [88.5, 82.5],
        [88.0, 87.5],
        [83.5, 90.0],
        [79.0, 87.5],
    ]));
    k.cut(&pot);
    tone(k, &pot, 3, 3.0, 0.08, dice);
    for line in drawn(&pot, 3.0, dice) {
        k.leave(&line);
    }
    for (x0, x1) in [(77.0, 83.5), (90.0, 83.5), (83.5, 83.5)] {
        k.leave(&bitten(&b.line(&[[x0, 94.0], [x1, 74.0]]), 3.2, dice));
    }
    for i in 0..12 {
        let x = 79.0 + 0.8 * i as f32;
        let p = b.at(x, 94.5);
        let flame = curve(&[
            p,
            [p[0] + dice.about(8.0), p[1] - 14.0],
            [p[0] + dice.about(6.0), p[1] - dice.between(20.0, 34.0)],
        ]);
        k.leave(&bitten(&flame, 2.2, dice));
    }
    for (p, q) in [([76.0, 95.0], [91.0, 93.6]), ([78.0, 93.2], [90.0, 95.8])] {
        k.leave(&bitten(&b.line(&[p, q]), 6.0, dice));
    }
}

/// Foul biting: acid that came through the ground, first in spots, then in a patch.
fn foul(k: &mut Plane, b: &Bench, stage: usize) {
    let mut dice = Dice::new(b.seed ^ 0xF0);
    let area = [b.x(86.5), b.y(2.0), b.x(97.5), b.y(11.5)];
    if stage >= 1 {
        k.leave_all(&stipple(area, 46, 1.9, &mut dice));
    }
    if stage >= 2 {
        let mut patch = Plane::cleared(k.window);
        aquatint(
            &mut patch,
            &ellipse(
                (area[0] + area[2]) / 2.0,
                (area[1] + area[3]) / 2.0,
                b.x(5.0),
                b.y(4.2),
            ),
            0.7,
        );
        patch.weigh(|p| cloud(p[0] / 9.0, p[1] / 9.0, 3, 77) * 1.5);
        resin(&mut patch, b.seed ^ 4);
        k.add(&patch);
        k.leave_all(&stipple(area, 90, 2.2, &mut dice));
    }
}

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
