//! Nos. 21 to 24: hail, ice, swallows, thunderhead.

use super::prelude::*;
use crate::parts::birds::swallow;
use crate::parts::boats::mast;
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::stones;
use crate::parts::houses::{row, spire, tiles};
use crate::parts::land::{floe, hills, poplar, thickness};
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::{curls, heap, streak};

pub const ART: &[Art] = &[
    Art {
        key: "21",
        cut: hail_cut,
        print: hail_print,
    },
    Art {
        key: "22",
        cut: floes_cut,
        print: floes_print,
    },
    Art {
        key: "23",
        cut: swallows_cut,
        print: swallows_print,
    },
    Art {
        key: "24",
        cut: thunder_cut,
        print: thunder_print,
    },
];

fn hail_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let sheds = [
        (
            b.line(&[
                [-1.0, 84.0],
                [-1.0, 46.0],
                [8.0, 44.0],
                [30.0, 52.0],
                [30.0, 80.0],
            ]),
            b.line(&[[-1.0, 48.0], [-1.0, 24.0], [16.0, 27.0], [33.5, 53.5]]),
        ),
        (
            b.line(&[[68.0, 78.0], [68.0, 50.0], [101.0, 48.0], [101.0, 86.0]]),
            b.line(&[[63.5, 52.5], [76.0, 25.0], [101.0, 24.0], [101.0, 50.0]]),
        ),
    ];
    let hail = |dice: &mut Dice, many: usize| -> Vec<Path> {
        (0..many)
            .map(|_| {
                let p = [dice.between(0.0, b.w), dice.between(0.0, b.h)];
                let near = p[1] / b.h;
                let l = mix(7.0, 16.0, dice.roll() * (0.4 + 0.6 * near));
                gouged(
                    &[p, [p[0] - l * 0.35, p[1] + l]],
                    mix(2.6, 5.4, dice.roll()),
                )
            })
            .collect()
    };
    let stones_of_ice = hail(&mut Dice::new(b.seed ^ 0x4A11), 620);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 74.0));
    for (x, y, w, h) in [
        (26.0, 50.0, 50.0, 26.0),
        (20.0, 40.0, 40.0, 14.0),
        (-6.0, 12.0, 50.0, 16.0),
        (52.0, 8.0, 54.0, 13.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 2.0, 3));
    }
    s.leave(&b.line(&[
        [-1.0, 84.0],
        [30.0, 78.0],
        [68.0, 77.0],
        [101.0, 84.0],
        [101.0, 88.0],
        [60.0, 84.0],
        [30.0, 85.0],
        [-1.0, 92.0],
    ]));
    let mut r = b.cleared();
    for (_, roof) in &sheds {
        r.leave(&knifed(roof, 1.2, 3));
    }
    let mut t = b.cleared();
    for (wall, _) in &sheds {
        t.leave(wall);
    }
    let mut k = b.cleared();
    let cloud = heap(
        &b.line(&[
            [-4.0, 13.0],
            [16.0, 6.0],
            [34.0, 9.0],
            [52.0, 3.0],
            [74.0, 7.0],
            [104.0, 2.0],
        ]),
        b.y(24.0),
        66.0,
        &mut dice,
    );
    let lines = crate::parts::lines::hatch(
        &cloud,
        Hatch {
            turn: 0.02,
            gap: 8.5,
            width: 4.0,
            stray: 1.2,
        },
        &mut dice,
    );
    k.within(&cloud, |p| p.leave_all(&lines));
    k.leave_all(&row(
        [b.x(28.0), b.x(72.0)],
        b.y(73.0),
        b.y(7.0),
        b.x(5.0),
        &mut dice,
    ));
    for (x, h) in [(36.0, 24.0), (62.0, 20.0)] {
        k.leave_all(&mast(b.at(x, 73.0), b.y(h), 4.2, 36.0));
    }
    k.leave(&b.area(28.0, 72.4, 72.0, 74.0));
    frame(&mut k, &mut t, b, &mut dice);
    for (i, (wall, roof)) in sheds.iter().enumerate() {
        k.cut(wall);
        k.cut(roof);
        k.leave(&outline(wall, 3.6));
        k.leave(&outline(roof, 4.4));
        let rows = tiles(bounds(roof), 11.0, &mut dice);
        k.within(roof, |p| p.leave_all(&rows));
        let m = bounds(wall);
        let boards = crate::parts::lines::hatch(
            wall,
            Hatch {
                turn: 0.25,
                gap: 12.0,
                width: 2.4,
                stray: 0.5,
            },
            &mut dice,
        );
        k.within(wall, |p| p.leave_all(&boards));
        let mouth = if i == 0 {
            b.line(&[[12.0, 84.0], [12.0, 58.0], [27.0, 60.0], [27.0, 81.0]])
        } else {
            b.line(&[[72.0, 80.0], [72.0, 59.0], [90.0, 57.0], [90.0, 84.0]])
        };
        k.leave(&mouth);
        k.cut_all(&pecks(
            [m[0], b.y(62.0), m[2], b.y(80.0)],
            16,
            24.0,
            0.25,
            &mut dice,
        ));
        k.leave(&mouth);
    }
    for (x, y, h, pose, face) in [
        (22.5, 84.5, 84.0, Pose::Standing, 1.0),
        (76.0, 86.0, 88.0, Pose::Bent, -1.0),
        (80.5, 86.0, 92.0, Pose::Standing, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            k.cut(&outline(&part, 3.0));
            k.leave(&part);
        }
    }
    let ways = [
        b.line(&[[41.0, 84.0], [34.0, 101.0]]),
        b.line(&[[59.0, 84.0], [66.0, 101.0]]),
    ];
    for way in &ways {
        t.leave(&tapered(way, 15.0, 26.0));
        k.leave(&outline(&tapered(way, 15.0, 26.0), 3.0));
    }
    for i in 0..6 {
        let y = 85.5 + 2.7 * i as f32;
        let half = 12.0 + 1.3 * i as f32;
        k.leave(&bar(
            &b.line(&[[50.0 - half, y], [50.0 + half, y + 0.2]]),
            5.0 + i as f32,
        ));
    }
    k.leave_all(&pecks(
        [0.0, b.y(86.0), b.w, b.h],
        90,
        22.0,
        0.01,
        &mut dice,
    ));
    // Hail falls on every block alike: it is paper.
    for plane in [&mut s, &mut r, &mut t, &mut k] {
        plane.cut_all(&stones_of_ice);
    }
    let ground = hail(&mut Dice::new(b.seed ^ 0x6A11), 150);
    for g in &ground {
        let m = bounds(g);
        if m[1] > b.y(86.0) {
            k.leave(&outline(&ellipse(m[0], m[1], 4.0, 3.2), 1.6));
        }
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("roof", b.trimmed(r)),
        ("timber", b.trimmed(t)),
        ("key", b.trimmed(k)),
    ])
}

/// A hull in frame, seen from the bow: keel, ribs, ribbands, shores.
fn frame(k: &mut Plane, t: &mut Plane, b: &Bench, dice: &mut Dice) {
    let stem = b.line(&[[50.0, 86.0], [50.0, 36.0]]);
    for i in (0..7).rev() {
        let f = i as f32;
        let (spread, top, foot) = (7.0 + 2.9 * f, 42.0 - 0.3 * f + 0.25 * f * f, 85.0 - 1.3 * f);
        for side in [-1.0, 1.0] {
            let rib = curve(&b.line(&[
                [50.0, foot],
                [50.0 + side * spread * 0.42, foot - 6.0],
                [50.0 + side * spread * 0.85, foot - 18.0],
                [50.0 + side * spread, top + 6.0],
                [50.0 + side * spread * 0.98, top],
            ]));
            let body = bar(&rib, 13.0 - f * 0.8);
            k.cut(&outline(&body, 2.5));
            t.cut(&outline(&body, 3.0));
            t.leave(&body);
            k.leave(&outline(&body, 2.8));
            let dark: Path = rib.iter().map(|p| [p[0] + 3.4, p[1] + 1.5]).collect();
            k.within(&body, |p| p.leave(&bar(&dark, 5.0)));
        }
    }
    for side in [-1.0, 1.0] {
        for i in 0..4 {
            let y = 50.0 + 8.0 * i as f32;
            let reach = 25.0 - 1.6 * (i * i) as f32;
            let band = curve(&b.line(&[
                [50.0, y + 2.5],
                [50.0 + side * reach * 0.5, y + 1.0],
                [50.0 + side * reach, y - 1.5],
            ]));
            k.leave(&bar(&band, 3.6));
        }
        k.leave(&bar(
            &b.line(&[[50.0 + side * 20.0, 57.0], [50.0 + side * 27.0, 84.0]]),
            7.0,
        ));
        k.leave(&bar(
            &b.line(&[[50.0 + side * 14.0, 70.0], [50.0 + side * 19.0, 86.0]]),
            6.0,
        ));
    }
    let post = bar(&stem, 17.0);
    t.leave(&post);
    k.cut(&post);
    k.leave(&outline(&post, 3.4));
    k.leave(&bar(&b.line(&[[50.5, 86.0], [50.5, 37.0]]), 5.0));
    k.cut_all(&pecks(
        [b.x(40.0), b.y(45.0), b.x(60.0), b.y(84.0)],
        10,
        15.0,
        0.25,
        dice,
    ));
    for (x, y, h, pose, face) in [
        (43.0, 87.5, 74.0, Pose::Swinging, 1.0),
        (60.0, 88.0, 70.0, Pose::Bent, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            k.cut(&outline(&part, 3.0));
            t.cut(&part);
            k.leave(&part);
        }
    }
}

fn hail_print(look: &Look) -> Vec<Pass> {
    let roof = if look.choice("roof") == "brown" {
        0x7c_5a_42
    } else {
        0xb4_50_3c
    };
    vec![
        Pass::new("sky", "sky", ink(0x7b_82_8a)).charged(evenly(
            look,
            "sky",
            0.94,
            Fall {
                from: -30.0,
                to: 560.0,
                rest: 0.3,
            },
        )),
        Pass::new("timber", "timber", ink(0xb9_8e_60)),
        Pass::new("roof", "roof", ink(roof)),
        Pass::new("key", "key", ink(0x23_25_2a)).charged(|_| 1.04),
    ]
}

fn floes_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut w = b.cleared();
    let mut sh = b.cleared();
    let mut s = b.cleared();
    let mut k = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 41.0));
    for (x, y, wd, h) in [
        (-6.0, 18.0, 52.0, 20.0),
        (36.0, 25.0, 50.0, 14.0),
        (60.0, 11.0, 46.0, 16.0),
        (10.0, 31.0, 44.0, 9.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(wd), h, &mut dice), 1.6, 3));
    }
    let line = row([-10.0, b.x(74.0)], b.y(41.0), b.y(9.0), b.x(5.4), &mut dice);
    for h in &line {
        sh.leave(h);
        k.leave(&outline(h, 2.0));
        let m = bounds(h);
        k.within(h, |p| {
            p.leave(&rect(m[0] + (m[2] - m[0]) * 0.55, m[1], m[2], b.h));
        });
        for i in 0..2 {
            k.leave(&rect(m[0] + 7.0 + 11.0 * i as f32, m[3] - 15.0, 4.4, 6.6));
        }
    }
    for (x, h, wd) in [(22.0, 22.0, 15.0), (47.0, 27.0, 17.0)] {
        let tower = spire(b.at(x, 41.0), b.y(h), wd);
        s.leave(&tower);
        k.leave(&knifed(&tower, 0.8, 3));
        k.cut(&rect(b.x(x) - 5.0, b.y(38.0), 3.4, 12.0));
    }
    w.leave(&b.area(-2.0, 40.8, 102.0, 101.0));
    k.leave(&b.area(-1.0, 40.6, 80.0, 41.6));
    w.cut_all(&ripples(
        [0.0, b.y(43.0), b.w, b.h],
        40,
        130.0,
        4.6,
        &mut dice,
    ));
    piers([&mut k, &mut sh, &mut w], b, &mut dice);
    // Ice: small and crowded far off, then plates that rush to the foot.
    let mut plates: Vec<(f32, f32, f32, f32)> = Vec::new();
    for i in 0..46 {
        let t = i as f32 / 45.0;
        plates.push((
            dice.between(0.0, 100.0),
            mix(43.0, 55.0, t),
            mix(1.4, 5.0, t) * dice.between(0.7, 1.2),
            mix(0.5, 1.7, t),
        ));
    }
    plates.extend([
        (10.0, 59.0, 9.0, 3.0),
        (27.0, 57.5, 8.0, 2.8),
        (66.0, 58.0, 8.4, 3.0),
        (84.0, 61.0, 10.0, 3.4),
        (58.0, 70.5, 7.0, 3.2),
        (19.0, 69.0, 13.0, 4.6),
        (74.0, 70.0, 13.0, 4.8),
        (95.0, 72.0, 9.0, 4.4),
        (45.0, 68.0, 15.5, 6.0),
        (5.0, 80.0, 11.0, 5.0),
        (29.0, 81.0, 12.0, 5.4),
        (64.0, 82.0, 16.0, 6.6),
        (90.0, 85.0, 13.0, 6.0),
        (46.0, 90.5, 15.0, 6.0),
        (13.0, 94.0, 17.0, 7.0),
        (75.0, 97.0, 16.0, 6.4),
    ]);
    for (x, y, rx, ry) in plates {
        let top = floe(b.at(x, y), b.x(rx), b.y(ry), &mut dice);
        let thick = 3.0 + b.y(ry) * 0.28;
        ice(&mut [&mut w, &mut sh, &mut k], &top, thick, &mut dice);
    }
    if look.has_or("boat", look.state == 0) {
        upturned(&mut k, &mut sh, b, &mut dice);
    }
    // Spray where plates meet.
    k.leave_all(&pecks(
        [0.0, b.y(56.0), b.w, b.h],
        60,
        15.0,
        -0.06,
        &mut dice,
    ));
    let split = |from: f32| -> Path {
        let line: Path = (0..70)
            .map(|i| {
                let t = i as f32 / 69.0;
                [
                    b.x(mix(101.0, from, t)),
                    b.y(88.0) + 5.0 * (smooth(t * 9.0, 0.0, b.seed) - 0.5),
                ]
            })
            .collect();
        tapered(&line, 4.4, 2.0)
    };
    match look.stage("split") {
        0 => {}
        1 => w.cut(&split(85.0)),
        _ => w.cut(&split(-1.0)),
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("water", b.trimmed(w)),
        ("shade", b.trimmed(sh)),
        ("key", b.trimmed(k)),
    ])
}

/// One plate: white on top, blue on its broken side, a dark line under it.
fn ice(planes: &mut [&mut Plane; 3], top: &Path, thick: f32, dice: &mut Dice) {
    let side = thickness(top, thick);
    let [w, sh, k] = planes;
    for plane in [&mut **w, &mut **sh, &mut **k] {
        plane.cut(&knifed(top, 1.2, 3));
        plane.cut(&side);
    }
    sh.leave(&side);
    let size = bounds(top);
    let wide = size[2] - size[0];
    k.leave(&outline(top, (1.0 + wide / 140.0).min(2.8)));
    let foot: Path = side[side.len() / 2..].to_vec();
    k.leave(&bar(&foot, (1.6 + wide / 60.0).min(6.0)));
    if wide > 70.0 {
        shade(
            k,
            &side,
            Hatch {
                turn: 0.23,
                gap: 6.0,
                width: 1.8,
                stray: 0.5,
            },
            dice,
        );
        let shadow: Path = top
            .iter()
            .map(|p| [p[0] + wide * 0.30, p[1] + (size[3] - size[1]) * 0.34])
            .collect();
        let mut blue = sh.clone();
        blue.data.fill(0.0);
        blue.leave(&shadow);
        blue.keep(top);
        sh.add(&blue);
        let cracks = pecks(size, 4, wide * 0.22, 0.03, dice);
        k.within(top, |p| p.leave_all(&cracks));
    }
}

fn piers(planes: [&mut Plane; 3], b: &Bench, dice: &mut Dice) {
    let [k, sh, w] = planes;
    let deck = b.line(&[[58.0, 34.5], [101.0, 17.0], [101.0, 23.0], [58.0, 37.0]]);
    for (x, top, foot, wide) in [
        (92.0, 22.0, 52.0, 9.0),
        (77.0, 28.0, 47.5, 5.6),
        (66.5, 32.5, 44.5, 3.6),
    ] {
        let pier = b.line(&[
            [x - wide * 0.5, top],
            [x + wide * 0.5, top - 1.0],
            [x + wide * 0.55, foot],
            [x - wide * 0.55, foot],
        ]);
        let breaker = b.line(&[
            [x - wide * 0.55, foot - (foot - top) * 0.55],
            [x - wide * 1.35, foot + 0.8],
            [x - wide * 0.2, foot + 1.4],
        ]);
        for shape in [&pier, &breaker] {
            k.cut(shape);
            sh.cut(shape);
            w.cut(shape);
            k.leave(&outline(shape, 1.6 + wide * 0.24));
        }
        let m = bounds(&pier);
        let joints = stones(m, wide * 2.1, 1.0 + wide * 0.10, dice);
        k.within(&pier, |p| p.leave_all(&joints));
        sh.within(&pier, |p| {
            p.leave(&rect(m[0] + (m[2] - m[0]) * 0.45, m[1], m[2], m[3]));
        });
        shade(
            k,
            &breaker,
            Hatch {
                turn: 0.17,
                gap: 5.0,
                width: 1.4 + wide * 0.14,
                stray: 0.5,
            },
            dice,
        );
    }
    k.cut(&deck);
    k.leave(&knifed(&deck, 1.0, 3));
    k.cut(&bar(&b.line(&[[59.0, 35.6], [101.0, 19.6]]), 3.0));
    for i in 0..12 {
        let t = i as f32 / 11.0;
        let p = b.at(mix(59.0, 100.0, t * t), mix(34.0, 17.4, t * t));
        let h = mix(7.0, 30.0, t * t);
        k.leave(&bar(&[p, [p[0], p[1] - h]], mix(1.2, 4.2, t * t)));
    }
    k.leave(&tapered(&b.line(&[[101.0, 13.2], [59.0, 33.0]]), 4.6, 1.2));
}

fn upturned(k: &mut Plane, sh: &mut Plane, b: &Bench, dice: &mut Dice) {
    let mut keel = curve(&b.line(&[
        [36.5, 66.4],
        [38.5, 62.4],
        [43.0, 59.4],
        [48.0, 59.0],
        [52.0, 61.0],
        [54.4, 64.8],
    ]));
    keel.extend(curve(&b.line(&[
        [54.4, 64.8],
        [50.0, 67.0],
        [43.0, 68.0],
        [36.5, 66.4],
    ])));
    k.cut(&outline(&keel, 6.0));
    sh.cut(&keel);
    k.leave(&knifed(&keel, 0.8, 3));
    for i in 0..4 {
        let d = 0.9 + 1.5 * i as f32;
        let strake = curve(&b.line(&[
            [38.0 + d * 0.4, 65.4 - d * 0.4],
            [43.0, 61.0 + d],
            [48.0, 60.5 + d],
            [53.0, 64.2],
        ]));
        k.cut(&bar(&strake, 3.0));
    }
    k.leave(&bar(
        &curve(&b.line(&[[38.6, 61.8], [43.0, 58.6], [48.0, 58.2], [52.4, 60.4]])),
        5.0,
    ));
    sh.leave(&b.line(&[[36.0, 67.0], [55.0, 65.2], [58.0, 67.4], [42.0, 69.8]]));
    k.leave_all(&pecks(
        [b.x(37.0), b.y(68.0), b.x(57.0), b.y(70.0)],
        12,
        22.0,
        0.0,
        dice,
    ));
}

fn floes_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0xdd_a4_9b)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: 330.0,
                to: -40.0,
                rest: 0.3,
            },
        )),
        Pass::new("shade", "shade", ink(0x8f_ae_c6)),
        Pass::new("water", "water", ink(0x34_4f_4e)),
        Pass::new("key", "key", ink(0x1d_24_28)).charged(|_| 1.04),
    ]
}

fn swallows_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let pier = b.line(&[[58.0, 26.0], [86.0, 25.0], [84.0, 66.0], [60.0, 66.0]]);
    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 62.0));
    for (x, y, w, h) in [
        (-6.0, 44.0, 60.0, 22.0),
        (10.0, 52.0, 50.0, 12.0),
        (80.0, 40.0, 30.0, 18.0),
        (-4.0, 35.0, 36.0, 9.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.8, 3));
    }
    let town = row(
        [-10.0, b.w + 20.0],
        b.y(62.5),
        b.y(8.0),
        b.x(9.0),
        &mut dice,
    );
    let mut r = b.cleared();
    r.leave_all(&town);
    r.leave(&knifed(&pier, 1.4, 3));
    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 62.0, 102.0, 101.0));
    w.leave_all(
        &[moved(&pier, 0.0, 0.0)]
            .iter()
            .map(|p| {
                let m = bounds(p);
                rect(
                    m[0] + (m[2] - m[0]) * 0.62,
                    m[1],
                    (m[2] - m[0]) * 0.36,
                    m[3] - m[1],
                )
            })
            .collect::<Vec<_>>(),
    );
    w.cut_all(&ripples(
        [0.0, b.y(65.0), b.w, b.h],
        70,
        130.0,
        8.0,
        &mut dice,
    ));

    let mut iron = b.cleared();
    let under = b.line(&[
        [-2.0, -2.0],
        [102.0, -2.0],
        [102.0, 15.0],
        [86.0, 21.0],
        [56.0, 24.5],
        [30.0, 20.0],
        [-2.0, 8.0],
    ]);
    iron.leave(&knifed(&under, 1.0, 3));
    // Seen from below: girders run to one side, cross-beams between them, sky through the gaps.
    for i in 0..8 {
        let x = -2.0 + 13.0 * i as f32;
        let gap = b.line(&[
            [x, 1.6],
            [x + 8.6, 2.4],
            [x + 9.6, 7.0 + 0.6 * i as f32],
            [x + 1.6, 5.4 + 0.7 * i as f32],
        ]);
        iron.cut(&knifed(&gap, 1.2, 4));
        let second = b.line(&[
            [x + 2.0, 8.4 + 0.65 * i as f32],
            [x + 9.6, 9.8 + 0.5 * i as f32],
            [x + 10.2, 13.6 + 0.5 * i as f32],
            [x + 3.0, 11.4 + 0.7 * i as f32],
        ]);
        if i > 0 {
            iron.cut(&knifed(&second, 1.2, 4));
        }
    }
    let mut k = b.cleared();
    truss(&mut k, &under, b, &mut dice);
    for h in &town {
        k.leave(&outline(h, 2.2));
        let m = bounds(h);
        shade(
            &mut k,
            &rect(
                m[0] + (m[2] - m[0]) * 0.55,
                m[1],
                (m[2] - m[0]) * 0.45,
                m[3] - m[1],
            ),
            Hatch {
                turn: 0.25,
                gap: 5.0,
                width: 2.0,
                stray: 0.4,
            },
            &mut dice,
        );
    }
    k.leave(&b.area(-1.0, 62.0, 101.0, 63.2));
    for x in [14.0, 26.0, 45.0] {
        k.leave_all(&mast(b.at(x, 62.5), b.y(20.0), 4.6, 36.0));
    }
    k.cut(&pier);
    k.leave(&outline(&pier, 4.4));
    let m = bounds(&pier);
    let joints = stones(m, 26.0, 2.2, &mut dice);
    k.within(&pier, |p| p.leave_all(&joints));
    for i in 0..5 {
        let from = 0.55 + 0.09 * i as f32;
        let strip = rect(
            m[0] + (m[2] - m[0]) * from,
            m[1],
            (m[2] - m[0]) * 0.5,
            m[3] - m[1],
        );
        let lines = crate::parts::lines::hatch(
            &strip,
            Hatch {
                turn: 0.0,
                gap: 11.0,
                width: 3.0,
                stray: 0.6,
            },
            &mut dice,
        );
        k.within(&pier, |p| {
            p.leave_all(&lines);
            p.keep(&strip);
        });
    }
    k.leave(&b.line(&[[55.0, 24.0], [89.0, 22.6], [87.6, 28.6], [56.6, 29.6]]));
    k.cut(&bar(&b.line(&[[56.6, 26.4], [88.0, 25.2]]), 4.0));
    let reflection = crate::engine::shape::reflected(&pier, b.y(66.0), 0.75);
    let mr = bounds(&reflection);
    k.leave_all(&broken(
        mr[0] + 4.0,
        mr[2] - 4.0,
        b.y(66.5),
        b.y(94.0),
        &mut dice,
    ));
    iron.leave_all(&broken(
        mr[0] - 6.0,
        mr[2] + 6.0,
        b.y(67.0),
        b.y(97.0),
        &mut dice,
    ));
    for _ in 0..5 {
        let x = dice.between(0.0, b.x(50.0));
        iron.leave_all(&broken(
            x,
            x + dice.between(60.0, 170.0),
            b.y(84.0),
            b.y(99.5),
            &mut dice,
        ));
    }
    k.leave_all(&ripples(
        [0.0, b.y(66.0), b.w, b.h],
        34,
        120.0,
        5.0,
        &mut dice,
    ));
    let flock = [
        (22.0, 42.0, 62.0, 0.10),
        (38.0, 37.0, 48.0, -0.16),
        (14.0, 55.0, 50.0, 0.22),
        (33.0, 52.0, 72.0, -0.06),
        (46.0, 47.0, 40.0, 0.30),
        (24.0, 65.0, 58.0, -0.22),
        (53.0, 57.0, 54.0, 0.14),
    ];
    for (x, y, span, turn) in flock.into_iter().take(look.count("swallows", 7)) {
        let bird = swallow(b.at(x, y), span, turn);
        k.cut(&outline(&bird, 2.6));
        k.leave(&bird);
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("brick", b.trimmed(r)),
        ("water", b.trimmed(w)),
        ("iron", b.trimmed(iron)),
        ("key", b.trimmed(k)),
    ])
}

fn truss(k: &mut Plane, under: &Path, b: &Bench, dice: &mut Dice) {
    let girder = |k: &mut Plane, p: Pt, q: Pt, w: f32| k.leave(&bar(&b.line(&[p, q]), w));
    for (y0, y1, w) in [(0.6, 0.8, 8.0), (7.2, 11.4, 9.0), (8.2, 24.0, 0.0)] {
        if w > 0.0 {
            girder(k, [-2.0, y0], [102.0, y1], w);
        }
    }
    let lower = curve(&b.line(&[
        [-2.0, 8.4],
        [30.0, 20.2],
        [56.0, 24.6],
        [86.0, 21.2],
        [102.0, 15.0],
    ]));
    k.leave(&bar(&lower, 11.0));
    let upper: Path = lower.iter().map(|p| [p[0], p[1] - b.y(2.6)]).collect();
    k.leave(&bar(&upper, 4.0));
    for i in 0..22 {
        let at = |t: f32| lower[((t * (lower.len() - 1) as f32) as usize).min(lower.len() - 1)];
        let (p, q) = (at(i as f32 / 22.0), at((i + 1) as f32 / 22.0));
        let lift = b.y(2.6);
        let line = if i % 2 == 0 {
            [p, [q[0], q[1] - lift]]
        } else {
            [[p[0], p[1] - lift], q]
        };
        k.leave(&bar(&line, 3.6));
    }
    for i in 0..9 {
        let x = -4.0 + 13.0 * i as f32;
        k.within(under, |q| {
            q.leave(&bar(&b.line(&[[x, -2.0], [x + 5.0, 26.0]]), 10.0));
            q.leave(&bar(&b.line(&[[x + 5.0, 2.0], [x + 12.0, 12.0]]), 3.6));
            q.leave(&bar(&b.line(&[[x + 12.0, 2.0], [x + 4.0, 12.0]]), 3.6));
        });
    }
    for p in lower.iter().step_by(3) {
        k.cut(&ellipse(p[0], p[1], 1.7, 1.7));
    }
    shade(
        k,
        &b.line(&[
            [56.0, 20.0],
            [102.0, 9.0],
            [102.0, 15.0],
            [86.0, 21.0],
            [56.0, 24.5],
        ]),
        Hatch {
            turn: 0.2,
            gap: 5.5,
            width: 2.2,
            stray: 0.6,
        },
        dice,
    );
}

fn swallows_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0xf0_da_98)).charged(evenly(
            look,
            "sky",
            0.92,
            Fall {
                from: 640.0,
                to: 60.0,
                rest: 0.35,
            },
        )),
        Pass::new("brick", "brick", ink(0xbd_7a_5a)),
        Pass::new("water", "water", ink(0x6c_93_ae)),
        Pass::new("iron", "iron", ink(0x4a_5a_52)),
        Pass::new("key", "key", ink(0x1f_24_26)).charged(|_| 1.04),
    ]
}

fn thunder_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    // A tower that leaves the frame at the right, its anvil driven out to the left overhead.
    let ridge = [
        [-4.0, 67.0],
        [6.0, 63.0],
        [13.0, 64.5],
        [19.0, 56.0],
        [15.5, 48.0],
        [24.0, 42.0],
        [21.0, 33.0],
        [30.0, 27.0],
        [27.0, 19.5],
        [35.0, 14.5],
        [30.0, 10.0],
        [17.0, 8.0],
        [9.0, 5.0],
        [22.0, 2.0],
        [46.0, -3.0],
    ];
    let mut tower = heap(&b.line(&ridge), b.y(-4.0), 52.0, &mut dice);
    tower.truncate(tower.len() - 2);
    tower.extend(b.line(&[[104.0, -4.0], [104.0, 73.0], [-4.0, 74.0]]));
    let inner = [
        heap(
            &b.line(&[
                [20.0, 62.0],
                [18.0, 50.0],
                [30.0, 42.0],
                [40.0, 46.0],
                [46.0, 56.0],
            ]),
            b.y(66.0),
            50.0,
            &mut dice,
        ),
        heap(
            &b.line(&[
                [38.0, 44.0],
                [36.0, 30.0],
                [48.0, 20.0],
                [62.0, 24.0],
                [68.0, 36.0],
            ]),
            b.y(46.0),
            56.0,
            &mut dice,
        ),
        heap(
            &b.line(&[
                [60.0, 60.0],
                [62.0, 46.0],
                [74.0, 36.0],
                [88.0, 42.0],
                [92.0, 56.0],
            ]),
            b.y(64.0),
            54.0,
            &mut dice,
        ),
    ];
    let shore = b.y(80.0);

    let mut c = b.cleared();
    c.leave(&knifed(&tower, 1.6, 3));
    // The lit side of each bulge is cut down to the paper, stroke by stroke.
    for (i, bulge) in inner.iter().enumerate() {
        let lit: Path = bulge.iter().map(|p| [p[0] - 20.0, p[1] - 15.0]).collect();
        let mut rim = Plane::cleared(b.window);
        rim.leave(&lit);
        rim.cut(bulge);
        let strokes = pecks(bounds(&lit), 260, 36.0, 0.58 + 0.04 * i as f32, &mut dice);
        let mut cuts = Plane::cleared(b.window);
        cuts.leave_all(&strokes);
        for (a, (r, s)) in c.data.iter_mut().zip(rim.data.iter().zip(&cuts.data)) {
            *a *= 1.0 - (0.85 * r + 0.0 * s).min(1.0) * s.max(0.55);
        }
    }
    let left_edge = b.line(&[
        [2.0, 66.0],
        [12.0, 58.0],
        [12.0, 46.0],
        [18.0, 32.0],
        [24.0, 18.0],
        [30.0, 10.0],
        [6.0, 6.0],
        [24.0, 0.0],
        [50.0, 0.0],
        [42.0, 14.0],
        [37.0, 28.0],
        [32.0, 42.0],
        [26.0, 56.0],
        [20.0, 68.0],
    ]);
    c.cut_within(&left_edge, |p| {
        p.leave_all(&pecks(bounds(&left_edge), 320, 40.0, 0.60, &mut dice));
    });
    // The base is torn into falling rain.
    let rain_area = b.line(&[[24.0, 70.0], [103.0, 68.0], [103.0, 81.0], [12.0, 81.0]]);
    c.within(&rain_area, |p| {
        p.leave_all(&crate::parts::sky::rain(
            [b.x(24.0), b.y(66.0), b.w + 40.0, b.y(76.0)],
            240,
            70.0,
            -0.3,
            5.0,
            &mut dice,
        ));
    });
    let fork: Path = b.line(&[
        [63.2, 44.0],
        [61.4, 52.0],
        [63.6, 53.0],
        [60.4, 61.0],
        [62.6, 62.2],
        [59.4, 70.0],
        [60.6, 70.6],
        [58.2, 78.0],
        [61.6, 69.6],
        [60.8, 69.0],
        [64.4, 61.4],
        [62.4, 60.4],
        [65.4, 52.2],
        [63.4, 51.4],
        [64.8, 44.0],
    ]);
    let branch = tapered(
        &b.line(&[[61.6, 61.0], [64.0, 65.0], [63.2, 68.0], [65.6, 73.0]]),
        6.0,
        1.2,
    );
    let bolt = look.has_or("bolt", look.state >= 1);
    if bolt {
        c.cut(&fork);
        c.cut(&branch);
    }
    let mut l = b.cleared();
    l.leave(&b.area(-2.0, -2.0, 102.0, 80.0));
    for (x, y, w, h) in [
        (-8.0, 30.0, 26.0, 14.0),
        (-6.0, 14.0, 34.0, 16.0),
        (84.0, 6.0, 26.0, 12.0),
        (-6.0, 63.0, 28.0, 12.0),
    ] {
        l.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.8, 3));
    }
    for bulge in &inner {
        let lit: Path = bulge.iter().map(|p| [p[0] - 20.0, p[1] - 15.0]).collect();
        let mut rim = Plane::cleared(b.window);
        rim.leave(&lit);
        rim.cut(bulge);
        rim.weigh(|_| 0.6);
        l.take(&rim);
    }
    if bolt {
        l.cut(&fork);
        l.cut(&branch);
    }
    let field = b.line(&[
        [20.0, 86.6],
        [44.0, 84.0],
        [56.0, 86.4],
        [50.0, 91.0],
        [24.0, 92.0],
    ]);
    l.leave(&field);

    let mut sea = b.cleared();
    sea.leave(&b.area(-2.0, 79.6, 102.0, 85.0));
    sea.cut_all(&ripples(
        [0.0, b.y(80.2), b.w, b.y(85.0)],
        46,
        70.0,
        4.0,
        &mut dice,
    ));
    let mut land = b.cleared();
    let mut near = hills([-20.0, b.w + 20.0], b.y(92.0), b.y(8.0), 6, &mut dice);
    near.extend([[b.w + 20.0, b.h + 20.0], [-20.0, b.h + 20.0]]);
    let near = b
        .line(&[
            [-1.0, 86.5],
            [20.0, 85.2],
            [44.0, 83.6],
            [62.0, 84.6],
            [82.0, 83.4],
            [101.0, 85.6],
            [101.0, 101.0],
            [-1.0, 101.0],
        ])
        .into_iter()
        .chain(near.into_iter().take(0))
        .collect::<Path>();
    land.leave(&knifed(&near, 2.0, 3));
    land.cut(&knifed(&field, 1.6, 3));
    for i in 0..5 {
        let y = 90.0 + 2.3 * i as f32;
        land.cut_all(&pecks(
            [0.0, b.y(y), b.w, b.y(y + 1.4)],
            26,
            70.0,
            0.005,
            &mut dice,
        ));
    }
    let port = row(
        [b.x(34.0), b.x(88.0)],
        b.y(84.4),
        b.y(4.8),
        b.x(3.2),
        &mut dice,
    );
    let mut r = b.cleared();
    for h in &port {
        let m = bounds(h);
        r.within(h, |p| {
            p.leave(&rect(m[0], m[1], m[2] - m[0], (m[3] - m[1]) * 0.45));
        });
    }
    let farm = b.line(&[
        [12.0, 93.0],
        [12.0, 90.4],
        [14.0, 87.8],
        [20.0, 87.6],
        [22.0, 90.2],
        [22.0, 93.0],
    ]);
    r.leave(&b.line(&[[11.4, 90.6], [14.0, 87.6], [20.0, 87.4], [22.4, 90.4]]));
    land.cut(&farm);

    let mut k = b.cleared();
    for bulge in &inner {
        let m = bounds(bulge);
        k.leave_all(&curls(
            &[
                [m[0] + 20.0, m[3] - 50.0],
                [(m[0] + m[2]) / 2.0, m[1] + 34.0],
                [m[2] - 20.0, m[3] - 60.0],
            ],
            26.0,
            40.0,
            11,
            &mut dice,
        ));
    }
    let dark = b.line(&[
        [30.0, 62.0],
        [60.0, 58.0],
        [103.0, 56.0],
        [103.0, 73.0],
        [60.0, 76.0],
        [26.0, 74.0],
    ]);
    let lines = crate::parts::lines::hatch(
        &dark,
        Hatch {
            turn: 0.30,
            gap: 9.0,
            width: 3.4,
            stray: 1.2,
        },
        &mut dice,
    );
    k.within(&tower, |p| {
        p.leave_all(&lines);
        p.keep(&dark);
    });
    if bolt {
        k.cut(&outline(&fork, 3.0));
        k.cut(&fork);
        k.cut(&branch);
    }
    for h in &port {
        k.leave(&outline(h, 1.5));
        let m = bounds(h);
        k.within(h, |p| {
            p.leave(&rect(m[0] + (m[2] - m[0]) * 0.6, m[1] + 6.0, m[2], m[3]));
        });
    }
    for x in [46.0, 71.0] {
        k.leave(&spire(b.at(x, 84.0), b.y(8.4), 9.0));
    }
    for x in [38.0, 52.0, 57.0, 78.0, 84.0] {
        k.leave_all(&mast(b.at(x, 84.0), b.y(5.6), 2.2, 12.0));
    }
    k.leave(&b.area(33.0, 84.2, 89.0, 84.8));
    k.leave(&gouged(
        &[[-10.0, shore - 2.0], [b.w + 10.0, shore - 1.0]],
        2.4,
    ));
    k.leave(&outline(&farm, 2.4));
    k.leave(&b.area(15.6, 90.6, 17.4, 93.0));
    for (x, h) in [
        (9.0, 8.4),
        (24.0, 7.2),
        (26.6, 8.8),
        (94.0, 9.0),
        (97.0, 7.0),
    ] {
        k.leave(&poplar(b.at(x, 93.4), b.y(h), &mut dice));
    }
    for i in 0..7 {
        let x = 4.0 + 15.0 * i as f32;
        let hedge = curve(&b.line(&[[x - 6.0, 101.0], [x - 1.0, 96.0], [x + 4.0, 92.6]]));
        k.leave(&tapered(&hedge, 6.0, 2.0));
    }
    k.leave_all(&pecks(
        [0.0, b.y(93.0), b.w, b.h],
        90,
        28.0,
        0.01,
        &mut dice,
    ));
    Cuts::from([
        ("light", b.trimmed(l)),
        ("cloud", b.trimmed(c)),
        ("sea", b.trimmed(sea)),
        ("land", b.trimmed(land)),
        ("roof", b.trimmed(r)),
        ("key", b.trimmed(k)),
    ])
}

fn thunder_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("light", "light", ink(0xec_d6_a2)),
        Pass::new("cloud", "cloud", ink(0x5b_54_72)).charged(evenly(
            look,
            "cloud",
            0.92,
            Fall {
                from: 600.0,
                to: -60.0,
                rest: 0.42,
            },
        )),
        Pass::new("sea", "sea", ink(0x3c_58_7c)),
        Pass::new("land", "land", ink(0x6b_83_54)),
        Pass::new("roof", "roof", ink(0xb8_5c_42)),
        Pass::new("key", "key", ink(0x22_22_2e)).charged(|_| 1.03),
    ]
}
