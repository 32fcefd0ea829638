//! No. 8, the nets by the bridge.

use super::prelude::*;
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::stones;
use crate::parts::houses::{row, tiles};
use crate::parts::land::poplar;
use crate::parts::sea::{broken, ripples};

pub const ART: Art = Art {
    key: "8",
    cut: nets_cut,
    print: nets_print,
};

fn nets_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
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
        net(b, 8.0, 38.0, 77.0, 3, dice),
        net(b, 38.0, 64.0, 70.0, 2, dice),
        net(b, 64.0, 93.0, 79.0, 3, dice),
    ];
    let trees = [
        poplar(b.at(12.0, 47.0), b.y(37.0), dice),
        poplar(b.at(19.0, 47.0), b.y(31.0), dice),
    ];
    let roofs = row(
        [b.x(34.0), b.w + 30.0],
        b.y(47.0),
        b.y(15.0),
        b.x(9.0),
        dice,
    );

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 60.0));
    let streaks = [
        (30.0, 14.0, 52.0, 30.0),
        (-8.0, 24.0, 44.0, 24.0),
        (58.0, 27.0, 50.0, 20.0),
        (6.0, 7.0, 36.0, 12.0),
    ];
    cut_streaks(&mut s, b, &streaks, 2.2, dice);
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
        b.bounds(0.0, 45.0, 100.0, 50.0),
        40,
        40.0,
        0.0,
        dice,
    ));
    for p in &piers {
        let m = bounds(p);
        n.within(p, |q| {
            q.leave(&rect(m[0], m[1], (m[2] - m[0]) * 0.45, m[3] - m[1]));
        });
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 58.0, 102.0, 101.0));
    w.leave_all(&trees);
    w.cut_all(&ripples(b.below(62.0), 70, 110.0, 6.5, dice));
    for p in &piers {
        w.cut(p);
    }
    w.cut_all(&broken(b.x(36.0), b.x(62.0), b.y(82.0), b.y(99.0), dice));

    let mut k = b.cleared();
    k.leave(&b.area(-1.0, 57.0, 101.0, 58.6));
    k.leave_all(&row([-20.0, b.w], b.y(58.0), b.y(5.0), b.x(6.0), dice));
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
            dice,
        );
        let m = bounds(t);
        k.within(t, |p| {
            p.leave(&rect((m[0] + m[2]) / 2.0, m[1], m[2] - m[0], m[3] - m[1]));
        });
        k.cut_within(t, |p| p.leave_all(&pecks(m, 30, 15.0, 0.24, dice)));
    }
    for h in &roofs {
        k.leave(&outline(h, 2.2));
        let m = bounds(h);
        let lines = tiles([m[0], m[1], m[2], m[1] + (m[3] - m[1]) * 0.42], 6.0, dice);
        k.within(h, |p| p.leave_all(&lines));
        for i in 0..3 {
            let x = m[0] + 14.0 + i as f32 * 26.0;
            if x + 10.0 < m[2] {
                k.leave(&rect(x, m[3] - 32.0, 8.0, 12.0));
            }
        }
    }
    bridge(&mut k, b, &deck, &piers, dice);
    for (shape, lines, floats) in &nets {
        k.leave(&outline(shape, 2.4));
        k.within(shape, |p| p.leave_all(lines));
        for f in floats {
            k.leave(f);
        }
    }
    for p in &piers {
        let m = bounds(p);
        k.leave_all(&broken(m[0] - 4.0, m[2] + 4.0, b.y(79.5), b.y(99.0), dice));
    }
    k.leave_all(&ripples(b.below(80.0), 30, 90.0, 4.4, dice));
    b.cuts([("sky", s), ("net", n), ("water", w), ("key", k)])
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
        k.leave(&b.bar(&[[x, 41.2 + rise], [x, 45.0 + rise]], 3.0));
    }
    k.leave(&b.bar(
        &[[-1.0, 43.2], [30.0, 41.2], [70.0, 41.2], [101.0, 43.2]],
        4.0,
    ));
    for (pier, x) in piers.iter().zip([26.5, 74.5]) {
        outlined(k, pier, 4.0);
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
        k.leave(&b.bar(&[[back, 24.0], [x, 20.5], [far_end, 18.0]], 6.0));
        k.leave(&b.bar(&[[far_end, 18.0], [far_end, 44.6]], 2.4));
        k.leave(&b.line(&[
            [back - 2.0, 23.0],
            [back + 2.0, 23.0],
            [back + 2.0, 28.0],
            [back - 2.0, 28.0],
        ]));
        k.leave(&b.bar(&[[x - 1.0, 33.0], [x + (far_end - x) * 0.4, 19.6]], 3.4));
    }
    k.leave_all(&figure(b.at(53.0, 45.2), 40.0, Pose::Bent, -1.0));
    k.leave_all(&figure(b.at(45.0, 45.2), 42.0, Pose::Standing, 1.0));
}

fn nets_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0xa9_c3_d0)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: -30.0,
                to: 420.0,
                rest: 0.2,
            },
        )),
        Pass::block("water", ink(0x66_8c_70)).charged(graded(
            look,
            Fall {
                from: 800.0,
                to: 300.0,
                rest: 0.6,
            },
        )),
        Pass::block("net", ink(0xb8_8a_56)),
        Pass::block("key", ink(0x2a_27_24)).charged(|_| 1.03),
    ]
}
