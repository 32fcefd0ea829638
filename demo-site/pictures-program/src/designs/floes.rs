//! No. 22, the ice goes out.

use super::prelude::*;
use super::shared::Split;
use crate::parts::harbour::stones;
use crate::parts::houses::{row, spire};
use crate::parts::land::{floe, thickness};
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "22",
    cut: floes_cut,
    print: floes_print,
};

fn floes_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut w = b.cleared();
    let mut sh = b.cleared();
    let mut s = b.cleared();
    let mut k = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 41.0));
    let streaks = [
        (-6.0, 18.0, 52.0, 20.0),
        (36.0, 25.0, 50.0, 14.0),
        (60.0, 11.0, 46.0, 16.0),
        (10.0, 31.0, 44.0, 9.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.6, dice);
    let line = row([-10.0, b.x(74.0)], b.y(41.0), b.y(9.0), b.x(5.4), dice);
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
    w.cut_all(&ripples(b.below(43.0), 40, 130.0, 4.6, dice));
    piers([&mut k, &mut sh, &mut w], b, dice);
    // Ice: small and crowded far off, in large plates near the foot.
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
        let top = floe(b.at(x, y), b.x(rx), b.y(ry), dice);
        let thick = 3.0 + b.y(ry) * 0.28;
        ice(&mut [&mut w, &mut sh, &mut k], &top, thick, dice);
    }
    if look.has_or("boat", look.state == 0) {
        upturned(&mut k, &mut sh, b, dice);
    }
    // Spray where plates meet.
    k.leave_all(&pecks(b.below(56.0), 60, 15.0, -0.06, dice));
    let split = |reach: f32| {
        let split = Split {
            reach,
            level: 88.0,
            sway: 5.0,
            waves: 9.0,
            points: 70,
        };
        tapered(&split.line(b), 4.4, 2.0)
    };
    match look.stage("split") {
        0 => {}
        1 => w.cut(&split(85.0)),
        _ => w.cut(&split(-1.0)),
    }
    b.cuts([("sky", s), ("water", w), ("shade", sh), ("key", k)])
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
    k.cut(&b.bar(&[[59.0, 35.6], [101.0, 19.6]], 3.0));
    for i in 0..12 {
        let t = i as f32 / 11.0;
        let p = b.at(mix(59.0, 100.0, t * t), mix(34.0, 17.4, t * t));
        let h = mix(7.0, 30.0, t * t);
        k.leave(&bar(&[p, [p[0], p[1] - h]], mix(1.2, 4.2, t * t)));
    }
    k.leave(&tapered(&b.line(&[[101.0, 13.2], [59.0, 33.0]]), 4.6, 1.2));
}

fn upturned(k: &mut Plane, sh: &mut Plane, b: &Bench, dice: &mut Dice) {
    let mut keel = b.curve(&[
        [36.5, 66.4],
        [38.5, 62.4],
        [43.0, 59.4],
        [48.0, 59.0],
        [52.0, 61.0],
        [54.4, 64.8],
    ]);
    keel.extend(b.curve(&[[54.4, 64.8], [50.0, 67.0], [43.0, 68.0], [36.5, 66.4]]));
    k.cut(&outline(&keel, 6.0));
    sh.cut(&keel);
    k.leave(&knifed(&keel, 0.8, 3));
    for i in 0..4 {
        let d = 0.9 + 1.5 * i as f32;
        let strake = b.curve(&[
            [38.0 + d * 0.4, 65.4 - d * 0.4],
            [43.0, 61.0 + d],
            [48.0, 60.5 + d],
            [53.0, 64.2],
        ]);
        k.cut(&bar(&strake, 3.0));
    }
    k.leave(&bar(
        &b.curve(&[[38.6, 61.8], [43.0, 58.6], [48.0, 58.2], [52.4, 60.4]]),
        5.0,
    ));
    sh.leave(&b.line(&[[36.0, 67.0], [55.0, 65.2], [58.0, 67.4], [42.0, 69.8]]));
    k.leave_all(&pecks(
        b.bounds(37.0, 68.0, 57.0, 70.0),
        12,
        22.0,
        0.0,
        dice,
    ));
}

fn floes_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0xdd_a4_9b)).charged(evenly(
            look,
            "sky",
            0.9,
            Fall {
                from: 330.0,
                to: -40.0,
                rest: 0.3,
            },
        )),
        Pass::block("shade", ink(0x8f_ae_c6)),
        Pass::block("water", ink(0x34_4f_4e)),
        Pass::block("key", ink(0x1d_24_28)).charged(|_| 1.04),
    ]
}
