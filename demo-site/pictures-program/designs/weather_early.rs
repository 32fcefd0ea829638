//! Nos. 17 to 20: heron, rain, fog bell, moonrise.

use super::prelude::*;
use crate::parts::birds::{gull, heron};
use crate::parts::boats::{cutter, dinghy, lugger};
use crate::parts::land::{hills, reed};
use crate::parts::sea::{breakers, broken, lens, ripples};
use crate::parts::sky::{disc, heap, rain, streak};

pub const ART: &[Art] = &[
    Art {
        key: "17",
        cut: heron_cut,
        print: heron_print,
    },
    Art {
        key: "18",
        cut: rain_cut,
        print: rain_print,
    },
    Art {
        key: "19",
        cut: bell_cut,
        print: bell_print,
    },
    Art {
        key: "20",
        cut: moonrise_cut,
        print: moonrise_print,
    },
];

fn heron_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let bird = heron(b.at(50.0, 82.0), b.y(52.0));
    // Three of the nine reeds were cut away later: the last of the list.
    let stand = [
        (9.0, 88.0, 58.0, 26.0),
        (14.5, 90.0, 64.0, -14.0),
        (20.0, 91.0, 50.0, 40.0),
        (26.0, 92.0, 62.0, 10.0),
        (5.0, 90.0, 42.0, -10.0),
        (29.5, 94.0, 40.0, 44.0),
        (11.5, 95.0, 54.0, 60.0),
        (22.5, 95.0, 58.0, -24.0),
        (17.0, 96.0, 46.0, -40.0),
    ];
    let mut reeds = Vec::new();
    for (i, (x, y, h, lean)) in stand.into_iter().enumerate() {
        let parts = reed(b.at(x, y), b.y(h), lean, &mut dice);
        if i < look.count("reeds", 9) {
            reeds.extend(parts);
        }
    }
    let far_dyke = knifed(
        &b.line(&[
            [-1.0, 61.0],
            [24.0, 60.2],
            [60.0, 60.8],
            [101.0, 59.8],
            [101.0, 63.0],
            [-1.0, 63.2],
        ]),
        1.4,
        3,
    );

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 62.0));
    for (x, y, w, h) in [
        (-8.0, 51.0, 70.0, 22.0),
        (38.0, 46.5, 70.0, 16.0),
        (-6.0, 37.0, 44.0, 12.0),
        (56.0, 33.0, 52.0, 13.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.6, 3));
    }
    if look.has_or("moon", look.state >= 1) {
        s.cut(&knifed(&disc(b.at(77.0, 16.5), b.x(7.2)), 1.6, b.seed));
    }
    crack(&mut s, b, look.stage("crack"));
    // Pools on the flat repeat the sky.
    for (x, y, l, t) in [
        (20.0, 66.0, 420.0, 9.0),
        (54.0, 70.0, 380.0, 11.0),
        (-4.0, 73.5, 330.0, 13.0),
        (48.0, 78.5, 430.0, 16.0),
        (60.0, 87.0, 360.0, 18.0),
    ] {
        s.leave(&knifed(&lens(b.x(x), b.x(x) + l, b.y(y), t * 2.0), 2.0, 3));
    }
    s.cut(&bird.body);
    s.within(&bird.body, |p| p.leave(&wing(&bird.body)));

    let mut f = b.cleared();
    f.leave(&b.area(-2.0, 62.0, 102.0, 101.0));
    f.cut_all(&ripples(
        [0.0, b.y(64.0), b.w, b.h],
        46,
        170.0,
        7.0,
        &mut dice,
    ));
    f.cut_all(&pecks(
        [0.0, b.y(80.0), b.w, b.h],
        260,
        15.0,
        0.21,
        &mut dice,
    ));
    f.leave(&far_dyke);
    f.cut(&bird.body);
    f.within(&bird.body, |p| p.leave(&wing(&bird.body)));

    let mut r = b.cleared();
    r.leave_all(&reeds);
    r.leave(&far_dyke);
    // The bill alone: the crest behind it is black.
    r.leave(&[bird.head[0], bird.head[1], bird.head[5]]);
    for i in 0..30 {
        let p = b.at(dice.between(0.0, 100.0), dice.between(84.0, 100.0));
        let l = dice.between(20.0, 60.0);
        r.leave(&gouged(
            &curve(&[
                p,
                [p[0] + dice.about(9.0), p[1] - l * 0.6],
                [p[0] + dice.about(26.0), p[1] - l],
            ]),
            if i % 3 == 0 { 4.0 } else { 2.6 },
        ));
    }

    let mut k = b.cleared();
    for tree in 0..16 {
        let x = 40.0 + 3.6 * tree as f32 + dice.about(1.5);
        let p = b.at(x, 60.6);
        k.leave(&ellipse(
            p[0],
            p[1] - 7.0,
            dice.between(5.0, 12.0),
            dice.between(7.0, 15.0),
        ));
    }
    k.leave(&b.area(-1.0, 60.9, 101.0, 61.7));
    k.leave(&b.line(&[[83.0, 61.0], [83.4, 52.0], [84.6, 52.0], [85.0, 61.0]]));
    k.cut(&outline(&bird.body, 7.0));
    k.cut(&bird.body);
    heron_key(&mut k, &bird, b, &mut dice);
    for part in &reeds {
        k.leave(&outline(part, 1.3));
        let shadow = moved(part, 2.6, 1.0);
        k.within(part, |p| p.leave(&shadow));
    }
    k.leave_all(&broken(
        b.x(45.0),
        b.x(60.0),
        b.y(82.8),
        b.y(94.0),
        &mut dice,
    ));
    k.leave_all(&ripples(
        [0.0, b.y(66.0), b.w, b.h],
        34,
        110.0,
        4.6,
        &mut dice,
    ));
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("frost", b.trimmed(f)),
        ("reed", b.trimmed(r)),
        ("key", b.trimmed(k)),
    ])
}

/// The folded wing: the back half of the body.
fn wing(body: &Path) -> Path {
    let m = bounds(body);
    let at = |x: f32, y: f32| [mix(m[0], m[2], x), mix(m[1], m[3], y)];
    blob(&[
        at(0.40, 0.47),
        at(0.62, 0.52),
        at(1.02, 0.86),
        at(1.05, 1.05),
        at(0.62, 1.02),
        at(0.40, 0.90),
        at(0.31, 0.66),
    ])
}

fn heron_key(k: &mut Plane, bird: &crate::parts::birds::Heron, b: &Bench, dice: &mut Dice) {
    k.leave(&outline(&bird.body, 3.4));
    let m = bounds(&bird.body);
    let (w, h) = (m[2] - m[0], m[3] - m[1]);
    // Black at the bend of the wing and in the tail; the throat's dashes; the plume.
    let flank = rect(m[0] + w * 0.34, m[1] + h * 0.70, w * 0.7, h * 0.4);
    let feathers = crate::parts::lines::hatch(
        &flank,
        Hatch {
            turn: 0.12,
            gap: 7.5,
            width: 3.8,
            stray: 0.8,
        },
        dice,
    );
    k.within(&bird.body, |p| {
        p.leave_all(&feathers);
        p.keep(&flank);
    });
    for quill in &bird.quills {
        k.within(&bird.body, |p| p.leave(&gouged(&curve(quill), 5.0)));
    }
    for i in 0..7 {
        let y = m[1] + h * (0.16 + 0.055 * i as f32);
        let x = m[0] + w * (0.06 + 0.012 * (i * i) as f32 * 0.5);
        k.leave(&gouged(&[[x + 6.0, y], [x + 11.0, y + 13.0]], 3.6));
    }
    k.leave(&outline(&bird.head, 1.8));
    let crest = bounds(&bird.head);
    k.leave(&tapered(
        &curve(&[
            [m[0] + w * 0.05, m[1] + 9.0],
            [m[0] + w * 0.20, m[1] + 3.0],
            [crest[2], crest[1] + (crest[3] - crest[1]) * 0.7],
        ]),
        9.0,
        1.0,
    ));
    k.leave(&ellipse(m[0] + w * 0.085, m[1] + h * 0.055, 3.4, 3.0));
    for leg in &bird.legs {
        k.leave(&bar(leg, b.w * 0.0085));
    }
}

fn crack(s: &mut Plane, b: &Bench, stage: usize) {
    let reach = match stage {
        0 => return,
        1 => 12.0,
        _ => 101.0,
    };
    let n = 80;
    let line: Path = (0..=n)
        .map(|i| {
            let x = -1.0 + (reach + 1.0) * i as f32 / n as f32;
            [
                b.x(x),
                b.y(43.0) + 5.0 * (smooth(x / 7.0, 0.0, b.seed ^ 77) - 0.5),
            ]
        })
        .collect();
    s.cut(&tapered(&line, 4.0, 2.4));
}

fn heron_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0x7d_95_ad)).charged(evenly(
            look,
            "sky",
            0.92,
            Fall {
                from: -20.0,
                to: 640.0,
                rest: 0.22,
            },
        )),
        Pass::new("frost", "frost", ink(0xc3_c7_cc)),
        Pass::new("reed", "reed", ink(0xc9_95_46)).from(Surface::Plank, 0.3),
        Pass::new("key", "key", ink(0x24_25_2b)).charged(|_| 1.04),
    ]
}

fn rain_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let shower = b.line(&[[34.0, -2.0], [102.0, -2.0], [102.0, 74.0], [14.0, 74.0]]);
    let bank = heap(
        &b.line(&[
            [-4.0, 30.0],
            [8.0, 21.0],
            [20.0, 23.0],
            [31.0, 12.0],
            [44.0, 10.0],
            [60.0, 4.0],
            [104.0, 1.0],
        ]),
        b.y(41.0),
        62.0,
        &mut dice,
    );
    let luggers = [
        lugger(b.at(43.0, 73.6), 116.0, 0.022),
        lugger(b.at(63.0, 72.8), 74.0, 0.018),
    ];

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 72.2));
    s.cut(&knifed(
        &streak(b.at(-8.0, 58.0), b.x(46.0), 40.0, &mut dice),
        2.0,
        3,
    ));
    s.cut(&knifed(
        &streak(b.at(-4.0, 12.0), b.x(36.0), 34.0, &mut dice),
        2.0,
        3,
    ));
    s.cut(&knifed(
        &streak(b.at(-6.0, 46.0), b.x(26.0), 18.0, &mut dice),
        2.0,
        3,
    ));
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(66.0)],
        330,
        150.0,
        -0.42,
        3.1,
        &mut dice,
    );
    s.cut_within(&shower, |p| p.leave_all(&drops));
    for boat in &luggers {
        s.cut(&boat.strake);
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 72.0, 102.0, 101.0));
    let rows = [
        breakers([-30.0, 1030.0], b.y(80.0), 90.0, 18.0, &mut dice),
        breakers([-60.0, 1060.0], b.y(94.0), 170.0, 40.0, &mut dice),
    ];
    for row in &rows {
        w.cut_all(&row.foam);
        w.cut_all(&row.veins);
    }
    w.cut_all(&pecks(
        [b.x(30.0), b.y(73.0), b.w, b.y(90.0)],
        160,
        15.0,
        0.0,
        &mut dice,
    ));
    for boat in &luggers {
        for sail in &boat.sails {
            w.leave(sail);
        }
    }

    let mut k = b.cleared();
    let lines = crate::parts::lines::hatch(
        &bank,
        Hatch {
            turn: 0.31,
            gap: 8.0,
            width: 4.2,
            stray: 1.4,
        },
        &mut dice,
    );
    k.within(&bank, |p| p.leave_all(&lines));
    let core = heap(
        &b.line(&[[38.0, 20.0], [50.0, 13.0], [68.0, 8.0], [104.0, 5.0]]),
        b.y(26.0),
        54.0,
        &mut dice,
    );
    k.leave(&core);
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(60.0)],
        240,
        130.0,
        -0.42,
        3.0,
        &mut dice,
    );
    k.cut_within(&shower, |p| p.leave_all(&drops));
    for row in &rows {
        k.leave_all(&row.hollows);
        k.leave_all(&row.contours);
        k.cut_all(&row.foam);
        for foam in &row.foam {
            k.leave(&outline(foam, 1.4));
        }
    }
    k.leave(&b.area(-1.0, 71.6, 101.0, 72.4));
    for boat in &luggers {
        for sail in &boat.sails {
            k.cut(sail);
            k.leave(&outline(sail, 2.4));
        }
        for seam in &boat.seams {
            k.leave(&bar(seam, 1.2));
        }
        k.leave_all(&boat.spars);
        k.leave(&boat.hull);
        k.cut(&boat.strake);
    }
    beacon(&mut k, b, &mut dice);
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("sea", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
}

fn beacon(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    k.cut(&ellipse(b.x(14.0), b.y(74.0), 82.0, 20.0));
    let bank = curve(&b.line(&[
        [3.0, 76.0],
        [8.0, 73.4],
        [15.0, 72.2],
        [22.0, 73.6],
        [27.0, 76.0],
    ]));
    shade(
        k,
        &bank,
        Hatch {
            turn: 0.0,
            gap: 5.0,
            width: 2.6,
            stray: 0.8,
        },
        dice,
    );
    for (p, q) in [
        ([12.2, 73.6], [13.7, 49.0]),
        ([16.0, 73.6], [14.5, 49.0]),
        ([12.5, 68.0], [15.0, 60.0]),
        ([15.6, 68.0], [13.3, 60.0]),
        ([12.6, 67.4], [15.7, 67.4]),
        ([13.1, 59.4], [15.1, 59.4]),
    ] {
        k.leave(&bar(&b.line(&[p, q]), 5.0));
    }
    k.leave(&b.line(&[[12.2, 49.4], [16.0, 49.4], [15.4, 44.0], [12.8, 44.0]]));
    k.leave(&ellipse(b.x(14.1), b.y(42.0), 13.0, 12.0));
    k.cut(&b.line(&[[13.4, 48.0], [14.8, 48.0], [14.6, 45.4], [13.6, 45.4]]));
    for (x, y) in [(22.0, 55.0), (26.0, 50.0), (7.0, 58.0)] {
        k.leave(&gull(b.at(x, y), 30.0, 0.8, 0.03));
    }
}

fn rain_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("sky", "sky", ink(0x80_88_90)).charged(evenly(
            look,
            "sky",
            0.95,
            Fall {
                from: -20.0,
                to: 480.0,
                rest: 0.3,
            },
        )),
        Pass::new("sea", "sea", ink(0x6c_78_56)),
        Pass::new("key", "key", ink(0x25_29_2e)).charged(|_| 1.03),
    ]
}

fn bell_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let mut f = b.block();
    // Fog thins in long lenses; the sun is a paler round behind it.
    for (x, y, w, h) in [
        (-10.0, 66.0, 70.0, 22.0),
        (50.0, 74.0, 60.0, 26.0),
        (-14.0, 84.0, 90.0, 24.0),
        (40.0, 91.0, 70.0, 20.0),
        (60.0, 38.0, 50.0, 14.0),
        (-8.0, 30.0, 40.0, 14.0),
    ] {
        f.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 2.4, 3));
    }
    let mut k = b.cleared();
    let timber = |p: Pt, q: Pt, w: f32| bar(&b.line(&[p, q]), w);
    let mut beams = vec![
        timber([38.0, 22.0], [33.0, 80.0], 27.0),
        timber([62.0, 22.0], [67.0, 80.0], 27.0),
        timber([33.0, 24.0], [67.0, 24.0], 29.0),
        timber([36.5, 46.0], [63.5, 46.0], 15.0),
        timber([38.0, 38.0], [45.0, 26.0], 13.0),
        timber([62.0, 38.0], [55.0, 26.0], 13.0),
    ];
    for x in [22.0, 42.0, 58.0, 80.0] {
        beams.push(timber([x, 70.0], [x + (x - 50.0) * 0.06, 101.0], 24.0));
    }
    beams.push(timber([12.0, 70.5], [90.0, 70.5], 33.0));
    beams.push(timber([22.0, 92.0], [42.0, 76.0], 11.0));
    beams.push(timber([58.0, 76.0], [80.0, 92.0], 11.0));
    beams.push(timber([18.0, 86.0], [84.0, 86.0], 12.0));
    for beam in &beams {
        k.cut(&outline(beam, 7.0));
        f.leave(beam);
        k.leave(&knifed(beam, 1.4, 3));
        // Light from the left along each timber, and its grain.
        let m = bounds(beam);
        let upright = m[3] - m[1] > m[2] - m[0];
        let cuts = if upright {
            pecks(
                [m[0] + 3.0, m[1], m[0] + (m[2] - m[0]) * 0.42, m[3]],
                ((m[3] - m[1]) / 9.0) as usize,
                34.0,
                0.25,
                &mut dice,
            )
        } else {
            pecks(
                [m[0], m[1] + 3.0, m[2], m[1] + (m[3] - m[1]) * 0.45],
                ((m[2] - m[0]) / 9.0) as usize,
                34.0,
                0.0,
                &mut dice,
            )
        };
        k.cut_within(beam, |p| p.leave_all(&cuts));
    }
    // The roof over the bell.
    let roof = b.line(&[[28.0, 23.0], [40.0, 16.0], [60.0, 16.0], [72.0, 23.0]]);
    k.cut(&outline(&roof, 7.0));
    k.leave(&knifed(&roof, 1.2, 4));
    k.cut_all(&pecks(
        [b.x(32.0), b.y(17.0), b.x(66.0), b.y(22.0)],
        22,
        40.0,
        0.0,
        &mut dice,
    ));
    bell(&mut k, b, &mut dice);
    for (x, side) in [(72.0, 0.0), (77.0, 0.0)] {
        k.leave(&bar(&b.line(&[[x, 72.0], [x + 1.5 + side, 101.0]]), 5.4));
    }
    for i in 0..9 {
        let y = 75.0 + 3.2 * i as f32;
        k.leave(&bar(
            &b.line(&[[72.2 + 0.1 * i as f32, y], [77.2 + 0.1 * i as f32, y]]),
            4.2,
        ));
    }
    perched(&mut k, b.at(46.0, 16.0), b.x(9.0));
    k.leave_all(&ripples(
        [0.0, b.y(90.0), b.w, b.h],
        26,
        90.0,
        4.0,
        &mut dice,
    ));
    // Another pier head, nearly gone.
    for x in [4.0, 9.0, 14.0] {
        f.leave(&b.line(&[[x, 56.0], [x + 1.6, 56.0], [x + 1.6, 72.0], [x, 72.0]]));
    }
    Cuts::from([("fog", b.trimmed(f)), ("key", b.trimmed(k))])
}

fn bell(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let mut body = curve(&b.line(&[
        [38.5, 57.0],
        [40.6, 52.0],
        [41.6, 44.0],
        [44.0, 37.5],
        [47.0, 34.8],
        [53.0, 34.8],
        [56.0, 37.5],
        [58.4, 44.0],
        [59.4, 52.0],
        [61.5, 57.0],
    ]));
    body.extend(curve(&b.line(&[[61.5, 57.0], [50.0, 59.2], [38.5, 57.0]])));
    k.cut(&outline(&body, 9.0));
    k.leave(&knifed(&body, 1.0, 3));
    let glint = curve(&b.line(&[
        [42.6, 53.0],
        [43.4, 45.0],
        [46.0, 38.4],
        [48.0, 36.6],
        [46.4, 42.0],
        [45.4, 53.6],
    ]));
    k.cut_within(&glint, |p| {
        p.leave_all(&pecks(bounds(&glint), 46, 22.0, 0.26, dice));
    });
    for y in [50.4, 52.2] {
        k.cut(&bar(
            &curve(&b.line(&[[40.6, y], [50.0, y + 1.8], [59.4, y]])),
            3.0,
        ));
    }
    k.leave(&bar(&b.line(&[[50.0, 26.0], [50.0, 35.0]]), 10.0));
    k.leave(&b.area(45.6, 32.4, 54.4, 34.6));
    k.leave(&bar(&b.line(&[[50.0, 58.0], [50.0, 61.5]]), 6.0));
    k.leave(&ellipse(b.x(50.0), b.y(62.0), 11.0, 11.0));
    k.leave(&bar(
        &curve(&b.line(&[[50.0, 62.0], [57.0, 65.0], [64.0, 67.0]])),
        2.4,
    ));
}

/// A gull that has folded its wings.
fn perched(k: &mut Plane, at: Pt, s: f32) {
    let put = |points: &[Pt]| -> Path {
        points
            .iter()
            .map(|p| [at[0] + p[0] * s, at[1] + p[1] * s])
            .collect()
    };
    let body = blob(&put(&[
        [-0.42, -0.62],
        [-0.30, -0.74],
        [-0.16, -0.66],
        [-0.08, -0.46],
        [0.20, -0.40],
        [0.66, -0.20],
        [0.20, -0.10],
        [-0.10, -0.10],
        [-0.30, -0.30],
        [-0.36, -0.48],
    ]));
    k.cut(&outline(&body, 4.0));
    k.cut(&body);
    k.leave(&outline(&body, 3.2));
    k.leave(&put(&[[-0.40, -0.60], [-0.58, -0.55], [-0.40, -0.53]]));
    k.leave(&curve(&put(&[
        [-0.05, -0.36],
        [0.25, -0.36],
        [0.68, -0.20],
        [0.30, -0.22],
        [0.05, -0.26],
    ])));
    k.leave(&bar(&put(&[[0.0, -0.10], [0.0, 0.0]]), 2.6));
    k.leave(&bar(&put(&[[0.10, -0.10], [0.10, 0.0]]), 2.6));
}

fn bell_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::new("fog", "fog", ink(0xb5_a9_9b)).charged(evenly(
            look,
            "fog-tone",
            0.9,
            Fall {
                from: 120.0,
                to: 1000.0,
                rest: 0.15,
            },
        )),
        Pass::new("key", "key", ink(0x3a_3a_3e)).charged(|_| 0.98),
    ]
}

fn moonrise_cut(look: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
    let moon = b.at(73.0, 37.0);
    let radius = b.y(6.6);
    let horizon = 47.5;
    let shore = hills(
        [-20.0, b.w + 20.0],
        b.y(horizon + 0.6),
        b.y(5.0),
        9,
        &mut dice,
    );
    // Channels winding towards the light.
    let channel = |points: &[Pt], from: f32, to: f32| tapered(&curve(&b.line(points)), from, to);
    let channels = [
        channel(
            &[
                [60.0, 103.0],
                [50.0, 90.0],
                [64.0, 80.0],
                [50.0, 71.0],
                [62.0, 63.0],
                [68.0, 57.0],
                [72.0, 49.0],
            ],
            120.0,
            16.0,
        ),
        channel(
            &[
                [-4.0, 84.0],
                [14.0, 80.0],
                [30.0, 83.0],
                [46.0, 76.0],
                [55.0, 70.0],
            ],
            44.0,
            14.0,
        ),
        channel(
            &[[104.0, 66.0], [90.0, 63.0], [80.0, 66.0], [70.0, 60.0]],
            26.0,
            9.0,
        ),
        channel(
            &[
                [-4.0, 62.0],
                [10.0, 58.0],
                [24.0, 60.0],
                [40.0, 55.0],
                [56.0, 53.0],
            ],
            18.0,
            6.0,
        ),
        channel(&[[104.0, 54.0], [92.0, 53.0], [82.0, 54.6]], 12.0, 5.0),
    ];
    let smacks = [
        cutter(b.at(20.0, 70.0), 168.0, -0.045),
        cutter(b.at(37.5, 62.5), -112.0, -0.04),
    ];
    let (boat, inside, thwarts) = dinghy(b.at(77.0, 80.0), 128.0);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, horizon + 0.6));
    s.cut(&knifed(&disc(moon, radius), 1.2, 3));
    for (x, y, w, h) in [
        (52.0, 42.4, 54.0, 13.0),
        (80.0, 34.0, 30.0, 8.0),
        (-6.0, 40.0, 52.0, 12.0),
        (34.0, 31.0, 30.0, 8.0),
        (4.0, 20.0, 44.0, 10.0),
    ] {
        s.cut(&knifed(&streak(b.at(x, y), b.x(w), h, &mut dice), 1.4, 3));
    }
    s.leave(&shore);

    let mut m = b.cleared();
    m.leave(&b.area(-2.0, horizon, 102.0, 101.0));
    for c in &channels {
        m.cut(&knifed(c, 3.0, b.seed));
    }
    m.cut_all(&pecks(
        [0.0, b.y(56.0), b.w, b.h],
        130,
        44.0,
        0.0,
        &mut dice,
    ));
    for smack in &smacks {
        m.leave(&smack.hull);
    }
    let mut w = b.cleared();
    for c in &channels {
        w.leave(&knifed(c, 3.0, b.seed));
    }
    w.cut_all(&broken(
        moon[0] - 26.0,
        moon[0] - 2.0,
        b.y(50.0),
        b.y(64.0),
        &mut dice,
    ));
    for c in &channels[..2] {
        let bx = bounds(c);
        let glints = ripples([bx[0], bx[1], bx[2], bx[3]], 36, 70.0, 5.0, &mut dice);
        w.cut_within(c, |p| p.leave_all(&glints));
    }
    let mut l = b.cleared();
    l.leave(&knifed(&disc(moon, radius), 1.2, 3));
    let path = broken(
        moon[0] - 30.0,
        moon[0] + 4.0,
        b.y(49.0),
        b.y(66.0),
        &mut dice,
    );
    for c in &channels {
        l.within(c, |p| p.leave_all(&path));
    }
    for x in [31.0, 52.0, 55.0] {
        l.leave(&b.area(x, horizon - 1.4, x + 0.5, horizon - 0.3));
    }

    let mut k = b.cleared();
    shade(
        &mut k,
        &shore,
        Hatch {
            turn: 0.0,
            gap: 4.2,
            width: 2.6,
            stray: 0.6,
        },
        &mut dice,
    );
    k.leave(&b.area(-1.0, horizon - 0.1, 101.0, horizon + 0.9));
    for c in &channels[..3] {
        let low = moved(c, 0.0, 5.0);
        let mut edge = b.cleared();
        edge.leave(&low);
        edge.cut(&knifed(c, 3.0, b.seed));
        k.add(&edge);
    }
    for smack in &smacks {
        for spar in &smack.spars {
            k.leave(spar);
        }
        k.leave(&smack.hull);
        let mm = bounds(&smack.hull);
        k.cut(&bar(&smack.strake, 1.6));
        // Sails are lowered; the hull lies in its own shadow on the mud.
        k.leave(&knifed(
            &[
                [mm[0] - 10.0, mm[3] - 2.0],
                [mm[2] + 16.0, mm[3] - 4.0],
                [mm[2] - 10.0, mm[3] + 8.0],
                [mm[0] + 10.0, mm[3] + 9.0],
            ],
            2.0,
            3,
        ));
        k.leave_all(&broken(
            mm[0] + 10.0,
            mm[2] - 20.0,
            mm[3] + 12.0,
            mm[3] + 52.0,
            &mut dice,
        ));
    }
    for i in 0..15 {
        // Withies mark the channel.
        let t = i as f32 / 14.0;
        let p = b.at(
            mix(96.0, 71.0, t.sqrt()) - 6.0 * libm::sinf(t * 3.0),
            mix(86.0, 51.0, t),
        );
        let h = mix(92.0, 8.0, t.sqrt());
        k.leave(&tapered(
            &[p, [p[0] + h * 0.06, p[1] - h]],
            mix(5.0, 1.2, t),
            mix(2.2, 0.7, t),
        ));
        k.leave(&gouged(
            &[
                [p[0] + h * 0.05, p[1] - h * 0.94],
                [p[0] + h * 0.17, p[1] - h * 1.05],
            ],
            mix(4.0, 1.0, t),
        ));
    }
    k.leave_all(&pecks([0.0, b.y(66.0), b.w, b.h], 80, 60.0, 0.0, &mut dice));
    if look.has_or("dinghy", look.state == 0) {
        for plane in [&mut m, &mut w, &mut k, &mut l] {
            plane.cut(&outline(&boat, 5.0));
            plane.cut(&boat);
        }
        k.leave(&boat);
        k.cut(&knifed(&inside, 0.8, 3));
        m.leave(&inside);
        k.leave_all(&thwarts);
        k.cut_all(&pecks(
            [b.x(71.0), b.y(80.6), b.x(83.0), b.y(82.6)],
            12,
            40.0,
            0.0,
            &mut dice,
        ));
        k.leave(&bar(
            &curve(&b.line(&[[70.4, 78.6], [68.0, 81.0], [69.0, 84.0]])),
            2.0,
        ));
        k.leave_all(&broken(
            b.x(71.0),
            b.x(84.0),
            b.y(83.6),
            b.y(89.0),
            &mut dice,
        ));
    }
    for (x, y, s) in [(48.0, 22.0, 34.0), (53.5, 18.0, 26.0), (44.0, 27.0, 24.0)] {
        k.leave(&gull(b.at(x, y), s, 0.9, 0.02));
    }
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("mud", b.trimmed(m)),
        ("water", b.trimmed(w)),
        ("moon", b.trimmed(l)),
        ("key", b.trimmed(k)),
    ])
}

fn moonrise_print(look: &Look) -> Vec<Pass> {
    let glow = |p: Pt| {
        let (dx, dy) = (p[0] - 730.0, (p[1] - 254.0) * 1.3);
        1.0 - 0.35 / (1.0 + (dx * dx + dy * dy) / (110.0 * 110.0))
    };
    let brushed = evenly(
        look,
        "sky",
        0.95,
        Fall {
            from: -40.0,
            to: 420.0,
            rest: 0.34,
        },
    );
    vec![
        Pass::new("moon", "moon", ink(0xf4_dc_8c)).from(Surface::Plank, 0.2),
        Pass::new("water", "water", ink(0xaf_bf_c9)),
        Pass::new("mud", "mud", ink(0x6c_58_5e))
            .charged(|p| mix(0.72, 1.1, step(320.0, 680.0, p[1]))),
        Pass::new("sky", "sky", ink(0x3c_56_6c)).charged(move |p| brushed(p) * glow(p)),
        Pass::new("key", "key", ink(0x1e_22_2c)).charged(|_| 1.04),
    ]
}
